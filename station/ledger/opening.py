"""Opening a file soundly; a damaged one is set aside, and what can be is saved."""

import sqlite3
from contextlib import suppress
from datetime import datetime
from pathlib import Path

from station.ledger import tables
from station.ledger.books import rebuild
from station.ledger.check import pages_sound
from station.ledger.codec import digest
from station.ledger.faults import Damaged, DiskFault, DiskFull, LedgerFault, NotWritable
from station.ledger.store import Store, suspect_mark

EntryRow = tuple[int, str, str, str, str, str, str, str, bytes]
NO_ROOM = 28  # the system's number for a full disk


def open_sound(path: Path) -> Store:
    """The store of a sound file. Raises Damaged once a damaged one is set aside."""
    if not path.exists() and beside(path, "new").exists():
        put_in_place(path)  # the program was stopped between two renamings
    try:
        store = Store(path)
        try:
            _look_over(store)
        except BaseException:
            store.close()
            raise
    except Damaged as error:
        raise mend(path) from error
    return store


def beside(path: Path, ending: str) -> Path:
    """A file next to the station's file, with a longer name."""
    return path.with_name(f"{path.name}.{ending}")


def set_aside(path: Path, why: str) -> Path:
    """Renames the file and its log out of the way; returns the new name."""
    aside = beside(path, f"{why}-{datetime.now():%Y%m%d-%H%M%S}")
    with disk_faults(path):
        path.replace(aside)
        _log_aside(path, aside)
    return aside


def put_in_place(path: Path) -> None:
    """Makes the new file beside it the station's file. A log of the old one goes first."""
    with disk_faults(path):
        _log_aside(path, beside(path, "old"))
        beside(path, "new").replace(path)
        suspect_mark(path).unlink(missing_ok=True)


def _log_aside(path: Path, aside: Path) -> None:
    log = path.with_name(path.name + "-wal")
    if log.exists():
        log.replace(aside.with_name(aside.name + "-wal"))


def _look_over(store: Store) -> None:
    """Raises Damaged when the newest entries do not hold, or all when there was a doubt."""
    mark = suspect_mark(store.path)
    with store.faults():
        newest = store.run(tables.NEWEST).fetchone()
        if mark.exists() and not pages_sound(store):
            raise Damaged(store.path)
        if newest:
            _check_newest(store, newest[0])
    mark.unlink(missing_ok=True)


def _check_newest(store: Store, number: int) -> None:
    """The newest two entries must be chained."""
    rows = store.run(tables.CHAIN, (max(number - 2, 0),)).fetchall()
    before = rows[-2][3] if number > 1 else b""
    if rows[-1][0] != number or digest(before, rows[-1][1], rows[-1][2]) != rows[-1][3]:
        raise Damaged(store.path)


def mend(path: Path) -> Damaged:
    """Saves what can be read into a new file in its place; returns what to tell."""
    entries, values = _readable(path)
    new = beside(path, "new")
    new.unlink(missing_ok=True)
    with disk_faults(path):
        _write_new(new, entries, values)
    aside = set_aside(path, "damaged")
    put_in_place(path)
    return Damaged(path, aside, len(entries))


def _write_new(new: Path, entries: list[EntryRow], values: dict[str, str]) -> None:
    store = Store(new)
    try:
        with store.writing() as connection:
            connection.executemany(tables.ADD_ENTRY, entries)
            for key, value in values.items():
                store.put(key, value)
        rebuild(store)
    finally:
        store.close()


def _readable(path: Path) -> tuple[list[EntryRow], dict[str, str]]:
    """The entries whose chain holds, from the first on, and the local values."""
    connection = sqlite3.connect(path, isolation_level=None, timeout=0)
    entries: list[EntryRow] = []
    values: dict[str, str] = {}
    try:
        with suppress(sqlite3.DatabaseError):
            values.update(connection.execute(tables.LOCAL_ALL))
        with suppress(sqlite3.DatabaseError, ValueError):
            _read_chain(connection, entries)
    finally:
        connection.close()
    values["format"] = str(tables.FORMAT)
    return entries, values


def _read_chain(connection: sqlite3.Connection, entries: list[EntryRow]) -> None:
    """Adds every entry up to the first that cannot be read or does not hold."""
    link = b""
    for number, row in enumerate(connection.execute(tables.EVERY_ENTRY), start=1):
        link = digest(link, row[1], row[7])
        if row[0] != number or row[8] != link:
            return
        entries.append(row)


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


def _fault(error: OSError, path: Path) -> LedgerFault:
    if error.errno == NO_ROOM:
        return DiskFull(path)
    return NotWritable(path) if isinstance(error, PermissionError) else DiskFault(path)
