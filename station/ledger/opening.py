"""Opening a file soundly; a damaged one is set aside, and what can be is saved."""

import gc
import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import suppress
from datetime import datetime, timedelta
from itertools import count
from pathlib import Path
from typing import Any

from station.ledger import closing, statements
from station.ledger.books import instead
from station.ledger.check import check
from station.ledger.codec import digest
from station.ledger.effects import EntryRow, entry_row
from station.ledger.faults import (
    Damaged,
    DiskFault,
    DiskFull,
    Empty,
    Fault,
    NotWritable,
    fault_of,
)
from station.ledger.rebuild import rebuild
from station.ledger.sound import LEFT_OUT, taken_in
from station.ledger.store import LAYOUT_NAME, Store, suspect_mark

MENDED = "mended"  # local: entries are missing that the acts not shared yet stand on
NO_ROOM = 28  # the system's number for a full disk


def open_sound(path: Path) -> Store:
    """The store of a sound file. Raises Damaged or Empty once one that is not is set aside."""
    if not path.exists() and beside(path, "new").exists():
        put_in_place(path)  # the program was stopped between two renamings
    if is_empty(path):
        raise set_empty_aside(path)
    if not path.exists():
        _make(path)
    store = _opened(path)
    if store is None:
        raise mend(path)
    return store


def _opened(path: Path) -> Store | None:
    """The store of the file, looked over; None where it is damaged.

    Not mended here: while an error is handled its trace holds what was read last, and that
    the file, which Windows then does not let anybody rename.
    """
    try:
        store = Store(path)
        try:
            _look_over(store)
        except BaseException:
            store.close()
            raise
    except Damaged:
        return None
    return store


def _make(path: Path) -> None:
    """Makes a new file under another name first: one that is empty is never our own making."""
    begun = beside(path, "begun")
    store = _opened(begun)
    if store is None:  # it was left half made
        _let_go()
        with disk_faults(path):
            for left in (log_of(begun), suspect_mark(begun), begun):
                left.unlink(missing_ok=True)
        store = Store(begun)
    try:
        with store.faults():
            store.run("PRAGMA wal_checkpoint(TRUNCATE)")
    finally:
        store.close()
    with disk_faults(path):
        begun.replace(path)


def is_empty(path: Path) -> bool:
    """Whether the file has no content, or is gone and has left its log behind."""
    if path.exists():
        return path.stat().st_size == 0
    return log_of(path).exists()


def set_empty_aside(path: Path) -> Empty:
    """Renames an empty file and its log out of the way; returns what to tell.

    The log goes first, and under a name of its own: SQLite throws away the log beside an
    empty file as soon as that is opened.
    """
    aside, log_aside = _stamped(path, "empty"), _stamped(path, "log")
    with disk_faults(path):
        left = log_of(path).exists()
        if left:
            log_of(path).replace(log_aside)
        there = path.exists()
        if there:
            path.replace(aside)
    return Empty(path, aside if there else None, log_aside if left else None)


def beside(path: Path, ending: str) -> Path:
    """A file next to the station's file, with a longer name."""
    return path.with_name(f"{path.name}.{ending}")


def log_of(path: Path) -> Path:
    """Where SQLite keeps what is not in the file yet."""
    return path.with_name(path.name + "-wal")


def _stamped(path: Path, why: str) -> Path:
    """A name beside the file that says why and when it was given, and is not taken yet."""
    now = datetime.now()
    names = (beside(path, f"{why}-{now + timedelta(seconds=n):%Y%m%d-%H%M%S}") for n in count())
    return next(name for name in names if not name.exists())


def _let_go() -> None:
    """Frees what was read from a file that is closed: the file stays open as long."""
    gc.collect()


def set_aside(path: Path, why: str) -> Path:
    """Renames the file and its log out of the way; returns the new name."""
    aside = _stamped(path, why)
    _let_go()
    with disk_faults(path):
        path.replace(aside)
        _log_aside(path, aside)
    return aside


def put_in_place(path: Path) -> None:
    """Makes the new file beside it the station's file. A log of the old one goes first."""
    _let_go()
    with disk_faults(path):
        _log_aside(path, beside(path, "old"))
        beside(path, "new").replace(path)
        suspect_mark(path).unlink(missing_ok=True)


def _log_aside(path: Path, aside: Path) -> None:
    if log_of(path).exists():
        log_of(path).replace(log_of(aside))


def _look_over(store: Store) -> None:
    """Raises Damaged when the newest entries do not hold, or all when there was a doubt."""
    mark = suspect_mark(store.path)
    with store.faults():
        if store.is_older:
            _bring_up(store)
        newest = store.run(statements.NEWEST).fetchone()
        if mark.exists() and check(store):
            raise Damaged(store.path)
        begin = closing.begin_of(store)
        if newest:
            _check_newest(store, newest[0], begin.digest)
    mark.unlink(missing_ok=True)


def _bring_up(store: Store) -> None:
    """Derives all anew that an older program derived. Raises Damaged where it cannot be."""
    try:
        rebuild(store)
    except (closing.ClosingWrong, ArithmeticError, LookupError, TypeError, ValueError) as error:
        raise Damaged(store.path) from error


def _check_newest(store: Store, number: int, before: bytes) -> None:
    """The newest two entries must be chained."""
    rows = store.run(statements.CHAIN, (max(number - 2, 0),)).fetchall()
    try:
        before = rows[-2][3] if len(rows) > 1 else before
        sound = rows[-1][0] == number and digest(before, *rows[-1][1:3]) == rows[-1][3]
    except (IndexError, TypeError):  # rows that are missing, or nothing where something must be
        sound = False
    if not sound:
        raise Damaged(store.path)


def mend(path: Path) -> Damaged:
    """Saves what can be read into a new file in its place; returns what to tell."""
    kept = _saved_from(path)
    aside = set_aside(path, "damaged")
    put_in_place(path)
    return Damaged(path, aside, kept)


def _saved_from(path: Path) -> int:
    """Saves what can be read into the new file beside it; returns how many entries."""
    new = beside(path, "new")
    try:
        damaged = sqlite3.connect(path, isolation_level=None, timeout=0)
    except sqlite3.Error as error:
        raise fault_of(error, path) or DiskFault(path) from error
    try:
        with disk_faults(path):
            new.unlink(missing_ok=True)
        return _save(damaged, new)
    finally:
        damaged.close()


def _save(damaged: sqlite3.Connection, new: Path) -> int:
    """Copies what can be read into a new file; returns how many entries that are."""
    store = Store(new)
    try:
        with store.writing() as connection:
            begin = _closed(damaged, store)
            connection.executemany(statements.ADD_ENTRY, _chained(damaged, begin))
            _add(connection, statements.ADD_PENDING, _unshared(damaged))
            _add(connection, statements.PUT_LOCAL, _readable(damaged, statements.LOCAL_ALL))
            store.put(MENDED, "yes")
            store.put(LAYOUT_NAME, str(statements.LAYOUT))
        rebuild(store)
        newest = store.rows(statements.NEWEST) or [closing.begin_of(store)]
    finally:
        store.close()
    return int(newest[0][0])


def _add(connection: sqlite3.Connection, statement: str, rows: Iterable[tuple[Any, ...]]) -> None:
    """Adds the rows that still are what their table holds; a spoilt page gives others too."""
    for row in rows:
        with suppress(sqlite3.IntegrityError):
            connection.execute(statement, row)


def _unshared(damaged: sqlite3.Connection) -> Iterator[tuple[Any, ...]]:
    """Acts not shared yet that still can be read."""
    for row in _readable(damaged, statements.ALL_PENDING):
        if not taken_in(row[1], row[4])[1]:
            yield row


def _readable(damaged: sqlite3.Connection, query: str) -> Iterator[tuple[Any, ...]]:
    """Rows up to the first that cannot be read."""
    with suppress(sqlite3.DatabaseError):
        yield from damaged.execute(query)


def _closed(damaged: sqlite3.Connection, store: Store) -> closing.Begin:
    """What the history begins behind; its closing is copied, where it can be read and holds."""
    rows = list(_readable(damaged, statements.EVERY_CLOSING))
    with suppress(closing.ClosingWrong, TypeError):
        for number, link, _, books in rows:
            begin, _ = closing.opened(closing.Closing(number, link, books))
            closing.keep(store, begin, books)
            return begin
    return closing.Begin()


def _chained(damaged: sqlite3.Connection, begin: closing.Begin) -> Iterator[EntryRow]:
    """Entries up to the first that does not hold. What follows from the body is made anew."""
    before, link, at = begin
    for number, row in enumerate(_readable(damaged, statements.EVERY_ENTRY), start=before + 1):
        id_, kind, text = row[1], row[3], row[6]
        link = digest(link, id_, text)
        if row[0] != number or row[7] != link:
            return
        body, why = taken_in(id_, text, at)
        at = body.act.at
        if why or kind == LEFT_OUT:
            body = instead(body, why)
        yield entry_row(number, body, text, link)


class disk_faults:  # noqa: N801 - reads as a statement
    """Turns the system's errors on files into faults with a sentence."""

    def __init__(self, path: Path) -> None:
        self.path = path

    def __enter__(self) -> None:
        """Nothing to prepare."""

    def __exit__(self, _kind: object, error: BaseException | None, _trace: object) -> None:
        """An OSError becomes a fault."""
        if isinstance(error, OSError):
            raise _fault(error, self.path) from error


def _fault(error: OSError, path: Path) -> Fault:
    if error.errno == NO_ROOM:
        return DiskFull(path)
    return NotWritable(path) if isinstance(error, PermissionError) else DiskFault(path)
