"""Backup into one file, and restoring it: what was there is set aside, never lost."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, suppress
from pathlib import Path

from station.ledger import check as checking
from station.ledger import statements
from station.ledger.codec import read_body, read_fact
from station.ledger.faults import AnotherShop, Damaged, Fault, FormatTooNew, NoBackup, fault_of
from station.ledger.history import SHOP
from station.ledger.kept_backups import copy_whole, prove
from station.ledger.log_file import keep_log, log_of
from station.ledger.numbers import LEAP, LEAPING
from station.ledger.opening import (
    beside,
    check_is_file,
    disk_faults,
    is_empty,
    put_in_place,
    set_aside,
    set_empty_aside,
)
from station.ledger.private import make_private
from station.ledger.rebuild import closed, fill, rebuild
from station.ledger.renaming import replace_file
from station.ledger.store import MENDED, Store, suspect_mark
from station.ledger.supply import ASKED, OWN, SPARE
from station.shop.facts import Shop

OF_ANOTHER = "it is of another shop"
PIECE = 2**20  # bytes that are copied at once
_WORKED = (
    "SELECT 1 FROM (SELECT body FROM main.entry UNION ALL SELECT body FROM main.pending)"
    """ WHERE body GLOB '*"worker":"[^"]*' LIMIT 1"""
)
_IN_COMMON = (
    "SELECT 1 FROM (SELECT id FROM there.entry UNION ALL SELECT id FROM there.pending) there"
    " WHERE id IN (SELECT id FROM main.entry) OR id IN (SELECT id FROM main.pending) LIMIT 1"
)
_IDS = "SELECT id FROM entry UNION ALL SELECT id FROM pending"
_NAMES = (
    "SELECT (SELECT body FROM there.fact WHERE key = 'shop/shop'),"
    " (SELECT body FROM main.fact WHERE key = 'shop/shop')"
)


def backup(store: Store, file: Path, number: int, link: bytes) -> None:
    """Writes the whole file as it stands, and proves what was written by its last entry.

    What was at `file` stays until then.
    """
    if file.resolve() == store.path.resolve():
        raise NoBackup(file, "it is the shop's own file")
    partial = beside(file, "partial")
    try:
        with disk_faults(file):
            store.settle()
            copy_whole(store.connection, partial)
            make_private(partial)
            prove(partial, number, link)
            replace_file(partial, file)
    except sqlite3.Error as error:
        fault = fault_of(error, file)
        if fault is None:
            raise
        raise fault from error
    finally:
        with suppress(OSError):
            partial.unlink(missing_ok=True)


def restore(file: Path, path: Path, site: str = "", *, another: bool = False) -> None:
    """Puts a backup in the place of a station's file, once it is proved to be sound.

    `site` is the shop that this PC shares with, if it does: no other shop's backup is taken.
    On a single PC `another` says that another shop's is meant.
    """
    if not file.is_file():
        raise NoBackup(file, "there is no such file")
    if file.stat().st_size == 0:
        raise NoBackup(file, "it is empty")
    check_is_file(path)
    empty = is_empty(path)
    if not empty:
        _unused(path)
    new = beside(path, "restoring")  # stopped before it is whole, it is never taken for the shop
    try:
        _copy(file, new, path)
        is_proved = _prepare(new, file, site)
        if path.exists() and not empty:
            if not is_proved:
                _hold_against(path, new, file, site, another=another)
            _bring_along(path, new, site)
        with disk_faults(path):
            replace_file(new, beside(path, "new"))
    except BaseException:
        for left in (new, log_of(new), suspect_mark(new)):
            with suppress(OSError):
                left.unlink(missing_ok=True)
        raise
    if empty:
        set_empty_aside(path)
    elif path.exists():
        set_aside(path, "before")
    put_in_place(path)


def _unused(path: Path) -> None:
    """Raises InUse while a program holds the file; a damaged one may be replaced.

    SQLite drops what stands in the log behind the first damage: a copy of that is set aside too.
    """
    if path.exists():
        with disk_faults(path):
            keep_log(path)
        with suppress(Damaged):
            Store(path).close()


def _copy(file: Path, new: Path, path: Path) -> None:
    """Copies a backup for the shop at `path`, and the log that a PC left beside it."""
    with disk_faults(path):
        log_of(new).unlink(missing_ok=True)
        for source, target in ((log_of(file), log_of(new)), (file, new)):
            if source.exists():
                with target.open("wb") as to:
                    for piece in _read_pieces(source, file):
                        to.write(piece)


def _read_pieces(source: Path, file: Path) -> Iterator[bytes]:
    """Reads a file piece by piece. Raises NoBackup where a disk or stick does not give it."""
    try:
        with source.open("rb") as read:
            while piece := read.read(PIECE):
                yield piece
    except OSError as error:
        raise NoBackup(file, "it cannot be read") from error


def _holds_history(file: Path) -> bool:
    """Tells whether a file has the table of entries; without it a shop would begin anew."""
    try:
        with closing(sqlite3.connect(file)) as tables:
            tables.execute("SELECT 1 FROM entry LIMIT 1")
    except sqlite3.DatabaseError as error:
        return "no such table" not in str(error)  # any other fault is told in a moment
    return True


def _hold_against(path: Path, new: Path, file: Path, site: str, *, another: bool) -> None:
    """Raises where a backup shares no act with what is here: it is of another shop.

    What is damaged, or nobody has worked with, is held against nothing.
    """
    try:
        with closing(sqlite3.connect(path)) as here:
            here.execute("ATTACH ? AS there", (str(new),))
            worked = here.execute(_WORKED).fetchone()
            if not worked or here.execute(_IN_COMMON).fetchone():
                return
            names = here.execute(_NAMES).fetchone()
    except sqlite3.DatabaseError:
        return
    if site:
        raise NoBackup(file, OF_ANOTHER)
    if not another:
        raise AnotherShop(file, *map(_read_name, names))


def _bring_along(path: Path, new: Path, site: str) -> None:
    """Takes along what the shop does not have yet; what that stands on comes from it.

    A PC that shares with nobody has nothing of the kind, and a damaged file was saved as it was
    opened.
    """
    if not site:
        return
    try:
        with closing(sqlite3.connect(path)) as here:
            rows = here.execute(statements.ALL_PENDING).fetchall()
    except sqlite3.DatabaseError:
        return
    store = Store(new)
    try:
        known = {row[0] for row in store.rows(_IDS)}
        if left := [row for row in rows if row[1] not in known]:
            with store.writing() as connection:
                connection.executemany(statements.ADD_PENDING, ((None, *row[1:]) for row in left))
                store.put(MENDED, "yes")
                books = closed(store)
                for (text,) in store.rows(statements.PENDING):
                    books.take(read_body(text), trusted=True)
                fill(connection, books)
    finally:
        store.close()


def _read_name(text: str | None) -> str:
    """Reads a shop's name."""
    return (read_fact(Shop, text) if text else Shop(id="shop")).name


def _prepare(new: Path, file: Path, site: str) -> bool:
    """Checks the copy; its number blocks are given up, for they may have been used since.

    Tells whether it is proved to be of the site's shop.
    """
    if not _holds_history(new):
        raise NoBackup(file, "it holds no history")
    try:
        store = Store(new)
    except Damaged as error:
        raise NoBackup(file, "it is damaged") from error
    except FormatTooNew as error:
        raise NoBackup(file, "a newer program wrote it, so update this one first") from error
    try:
        if site and store.values.get(SHOP, site) != site:
            raise NoBackup(file, OF_ANOTHER)
        with store.faults():
            rebuild(store)
            problems = checking.check(store)
        if problems:
            raise NoBackup(file, problems[0])
        _give_up_numbers(store)
        return bool(site) and store.values.get(SHOP) == site
    except Damaged as error:
        raise NoBackup(file, "it is damaged") from error
    finally:
        with suppress(Fault):
            store.close()


def _give_up_numbers(store: Store) -> None:
    with store.writing() as connection:
        for key in store.values:
            if key.startswith((OWN, SPARE, ASKED)):
                connection.execute(statements.DROP_LOCAL, (key,))
        store.put(LEAP, ",".join(LEAPING))
