"""Opening a file soundly; a damaged one is set aside, and what can be is saved."""

import gc
from collections.abc import Callable
from datetime import datetime, timedelta
from itertools import count
from pathlib import Path

from station.ledger import closing, statements
from station.ledger.check import check
from station.ledger.codec import digest
from station.ledger.faults import (
    Damaged,
    DiskFault,
    DiskFull,
    Empty,
    Fault,
    Mended,
    NoFile,
    NotWritable,
)
from station.ledger.history import SHOP
from station.ledger.kept_backups import keep_older
from station.ledger.last_recorded import note_of, read_newest
from station.ledger.log_file import keep_log, kept_log_of, log_of
from station.ledger.mending import save
from station.ledger.progress import Progress, tell_nobody
from station.ledger.rebuild import rebuild
from station.ledger.renaming import replace_file
from station.ledger.store import Store, suspect_mark
from station.shop.words import Say

NO_ROOM = 28  # the system's number for a full disk


def open_sound(
    path: Path, station: str = "1", site: str = "", tell: Callable[[Say], None] = tell_nobody
) -> Store:
    """The store of a sound file. Raises Damaged or Empty once one that is not is set aside.

    `station` and `site` say whose file it is, should it not say so itself any more. Mending a
    long history takes a while: who looks on is told how far it is.
    """
    check_is_file(path)
    if not path.exists() and beside(path, "new").exists():
        put_in_place(path)  # the program was stopped between two renamings
    if is_empty(path):
        raise mend(path, station, site, tell)
    if not path.exists():
        _make(path)
    with disk_faults(path):
        keep_log(path)
    store = _opened(path)
    if store is None:
        raise mend(path, station, site, tell)
    return store


def check_is_file(path: Path) -> None:
    """Raises NoFile where something else stands; a pipe would be waited for without an end."""
    if path.exists() and not path.is_file():
        raise NoFile(path)


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
        replace_file(begun, path)


def is_empty(path: Path) -> bool:
    """Whether the file has no content, or is gone and has left its log or its note behind."""
    if path.exists():
        return path.stat().st_size == 0
    return log_of(path).exists() or bool(read_newest(path).id)


def set_empty_aside(path: Path) -> Empty:
    """Renames an empty file, its log and its note out of the way; returns what to tell.

    The log goes first, and under a name of its own: SQLite throws away the log beside an
    empty file as soon as that is opened.
    """
    newest, there, left = read_newest(path), path.exists(), log_of(path).exists()
    log_aside, aside = _stamped(path, "log"), _stamped(path, "empty")
    with disk_faults(path):
        if left:
            replace_file(log_of(path), log_aside)
    _rename_all(path, aside)
    mended = Mended(0, newest.entries or -1, "", newest.at)
    return Empty(path, aside if there else None, log_aside if left else None, mended)


def beside(path: Path, ending: str) -> Path:
    """A file next to the station's file, with a longer name."""
    return path.with_name(f"{path.name}.{ending}")


def _stamped(path: Path, why: str) -> Path:
    """A name beside the file that says why and when it was given, and is not taken yet."""
    now = datetime.now()
    names = (beside(path, f"{why}-{now + timedelta(seconds=n):%Y%m%d-%H%M%S}") for n in count())
    return next(name for name in names if not name.exists())


def _let_go() -> None:
    """Frees what was read from a file that is closed: the file stays open as long."""
    gc.collect()


def set_aside(path: Path, why: str) -> Path:
    """Renames the file and what belongs to it out of the way; returns the new name."""
    aside = _stamped(path, why)
    _let_go()
    _rename_all(path, aside)
    return aside


def put_back(aside: Path, path: Path) -> None:
    """Renames a file that was set aside, and what belongs to it, to what it was."""
    _let_go()
    _rename_all(aside, path)


def put_in_place(path: Path) -> None:
    """Makes the new file beside it the station's file. A log of the old one goes first."""
    _let_go()
    _rename_all(path, _stamped(path, "old"))
    with disk_faults(path):
        replace_file(beside(path, "new"), path)
        suspect_mark(path).unlink(missing_ok=True)


def _rename_all(path: Path, aside: Path) -> None:
    """Renames the file, its log, what is kept of an older log, and the note of its newest act.

    The log goes first: stopped in between, a file without its log is no worse than before.
    """
    log = beside(aside, "log") if is_empty(path) else log_of(aside)  # SQLite would throw it away
    with disk_faults(path):
        if log_of(path).exists():
            replace_file(log_of(path), log)
        for of in (kept_log_of, Path, note_of):
            if of(path).exists():
                replace_file(of(path), of(aside))


def _look_over(store: Store) -> None:
    """Raises Damaged when the newest entries do not hold, or all when there was a doubt."""
    mark = suspect_mark(store.path)
    with store.faults():
        if store.is_older:
            keep_older(store)
            _bring_up(store)
        newest = store.run(statements.NEWEST).fetchone()
        if (mark.exists() and check(store)) or not _ends_as_noted(store):
            raise Damaged(store.path)
        begin = closing.begin_of(store)
        if newest:
            _check_newest(store, newest[0], begin.digest)
    mark.unlink(missing_ok=True)


def _ends_as_noted(store: Store) -> bool:
    """Whether the act is there that was recorded last, as the note beside the file says.

    What the shop has comes from there again.
    """
    newest = store.note.newest
    if not newest.id or (store.values.get(SHOP) and not newest.pending):
        return True
    if newest.entries <= closing.begin_of(store).number:
        return True
    each = (statements.NUMBER_BY_ID, statements.PENDING_BY_ID)
    return any(store.rows(statement, (newest.id,)) for statement in each)


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


def mend(
    path: Path, station: str, site: str, tell: Callable[[Say], None] = tell_nobody
) -> Damaged | Empty:
    """Saves what can be read into a new file in its place; returns what to tell.

    Where nothing can be read anywhere of a file that is empty or gone, it is set aside alone.
    """
    _let_go()
    empty, saving = is_empty(path), beside(path, "saving")
    with disk_faults(path):
        for left in (log_of(saving), saving):
            left.unlink(missing_ok=True)
        mended = save(path, saving, station, site, Progress(tell))
    _let_go()
    if empty and not mended.kept:
        with disk_faults(path):
            saving.unlink()
        return set_empty_aside(path)
    with disk_faults(path):
        replace_file(saving, beside(path, "new"))
    aside = set_aside(path, "damaged")
    put_in_place(path)
    there = (file for file in (aside, beside(aside, "log")) if file.exists())
    return Damaged(path, next(there, None), mended)


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
