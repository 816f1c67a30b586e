"""Backups that the program keeps by itself: of days, weeks and months, each proved once written.

A backup's name tells when it was made and where the history ended: the number of its last entry
and the beginning of its digest. That is the witness of all before it, which `check` can be given.
"""

import hashlib
import logging
import os
import re
import shutil
import sqlite3
from collections.abc import Callable, Iterable
from contextlib import closing, suppress
from datetime import datetime, timedelta
from pathlib import Path
from typing import NamedTuple

from station.ledger import statements
from station.ledger.codec import digest
from station.ledger.faults import NoBackup
from station.ledger.private import make_folder, make_private
from station.ledger.renaming import replace_file
from station.ledger.salvage import BACKUPS, write_uri
from station.ledger.store import Store
from station.shop.times import is_time

log = logging.getLogger(__name__)
Report = Callable[[str, float], None]  # is told the stage, copy or prove, and the part done of it
DAYS, WEEKS, MONTHS = 7, 5, 12  # of each so many are kept, the newest of it
PIECE = 2**20  # bytes that are copied at once
LOCKED, SPARED = 2**30, 512  # bytes: where the locks of a file begin, and how long they are
SHORT = 10  # characters of a digest in a witness: nobody finds another history with these
_NAME = re.compile(r"shop-(\d{4})(\d\d)(\d\d)-(\d\d)(\d\d)-(\d+-[0-9a-f]+)\.db")
_WITNESS = re.compile(rf"(\d+)-([0-9a-f]{{{SHORT}}})")


class Kept(NamedTuple):
    """A backup that is kept: its file, its time to the minute (shop-local), its witness."""

    file: Path
    at: str
    witness: str


def folder_of(path: Path) -> Path:
    """Where the kept backups of a station's file lie."""
    return path.parent / BACKUPS


def write_witness(number: int, link: bytes) -> str:
    """The witness of a history's end: number and short digest, as ``18092-3fa9c1d27b``."""
    return f"{number}-{link.hex()[:SHORT] or '0' * SHORT}"


def read_witness(text: str) -> tuple[int, str] | None:
    """The number and the short digest of a witness; None where a text is none."""
    found = _WITNESS.fullmatch(text.strip().lower())
    return (int(found[1]), found[2]) if found else None


def bears_out(store: Store, witness: tuple[int, str]) -> bool | None:
    """Whether the history has that digest at that number; None where it does not tell any more."""
    number, short = witness
    rows = store.rows(statements.LINK, (number,)) or [
        row[1:2] for row in store.rows(statements.CLOSED_AT) if row[0] == number
    ]
    if rows:
        return bool(write_witness(number, rows[0][0]) == f"{number}-{short}")
    begins = store.rows(statements.CLOSED_AT)
    return None if begins and number < begins[0][0] else False


def list_kept(folder: Path) -> list[Kept]:
    """Lists the kept backups in a folder, the newest first."""
    found = [(file, _NAME.fullmatch(file.name)) for file in folder.glob("shop-*.db")]
    kept = [
        Kept(file, f"{name[1]}-{name[2]}-{name[3]}T{name[4]}:{name[5]}:00", name[6])
        for file, name in found
        if name
    ]
    dated = (one for one in kept if is_time(one.at))  # somebody may have given it another name
    return sorted(dated, key=lambda one: (one.at, one.file.name), reverse=True)


def name_kept(at: str, witness: str) -> str:
    """The name of a backup of that time (shop-local) with that witness."""
    return f"shop-{at[:16].replace('-', '').replace('T', '-').replace(':', '')}-{witness}.db"


def choose_dropped(kept: Iterable[Kept], now: str) -> list[Kept]:
    """Chooses which go: all but the newest of each of the last days, weeks and months.

    One of a later time than now is left, and takes no other's place: a clock was wrong.
    """
    of = {"day": DAYS, "week": WEEKS, "month": MONTHS}
    chosen, spans = set[Path](), {name: set[str]() for name in of}
    dropped = list[Kept]()
    due = (one for one in kept if one.at <= now)
    for one in sorted(due, key=lambda k: (k.at, k.file.name), reverse=True):
        for name, span in _spans(one.at).items():
            if span not in spans[name] and len(spans[name]) < of[name]:
                spans[name].add(span)
                chosen.add(one.file)
        if one.file not in chosen:
            dropped.append(one)
    return dropped


def _spans(at: str) -> dict[str, str]:
    day = datetime.fromisoformat(at)
    year, week, _ = day.isocalendar()
    return {"day": at[:10], "week": f"{year}-{week}", "month": at[:7]}


def last_evening(now: str, day_ends: str) -> str:
    """When the last working day ended, today's end once it has come."""
    today = f"{now[:10]}T{day_ends}:00"
    if today <= now:
        return today
    before = datetime.fromisoformat(now) - timedelta(days=1)
    return f"{before:%Y-%m-%d}T{day_ends}:00"


def copy_whole(source: sqlite3.Connection, to: Path) -> None:
    """Copies a file that is open, with its log, into one file."""
    to.unlink(missing_ok=True)
    target = sqlite3.connect(to)
    try:
        source.backup(target)
        target.execute("PRAGMA journal_mode=DELETE")  # one file, no log beside it
    finally:
        target.close()


def _tell_nobody(_stage: str, _share: float) -> None:
    pass


def copy_still(path: Path, to: Path, report: Report = _tell_nobody) -> None:
    """Copies the file of a program that lets it be (`Ledger.hold_still`), from another process.

    Within that program the file may not be opened twice: closing it would give up its lock.
    """
    size = path.stat().st_size
    with path.open("rb") as source, to.open("wb") as target:
        while piece := source.read(PIECE):
            target.write(piece)
            report("copy", min(1.0, target.tell() / size))
            # there is a page without content, which some systems let nobody read
            if target.tell() == LOCKED:
                source.seek(SPARED, os.SEEK_CUR)
                target.write(bytes(SPARED))
    with closing(sqlite3.connect(to)) as whole:
        whole.execute("PRAGMA journal_mode=DELETE")  # one file, no log beside it


def partial_of(file: Path) -> Path:
    """Where a copy stands until it is proved."""
    return file.with_name(f"{file.name}.partial")


def write_still(
    path: Path, file: Path, number: int, link: bytes, report: Report = _tell_nobody
) -> None:
    """Copies a file that is held still into `file`, and proves that; until then none is there.

    Raises NoBackup, and OSError where the folder takes nothing.
    """
    partial = partial_of(file)
    try:
        copy_still(path, partial, report)
        make_private(partial)
        prove(partial, number, link, report)
        replace_file(partial, file)
    finally:
        partial.unlink(missing_ok=True)


def keep_still(
    path: Path, at: str, number: int, link: bytes, away: str, report: Report = _tell_nobody
) -> Path:
    """Keeps a backup of a file that is held still, in a second folder `away` too if it is named.

    Raises NoBackup, and OSError where a folder takes nothing.
    """
    folder = folder_of(path)
    make_folder(folder)
    file = folder / name_kept(at, write_witness(number, link))
    for left in folder.glob("*.partial"):  # of a program that was broken off
        left.unlink()
    write_still(path, file, number, link, report)
    drop_too_many(folder, at)
    if away:
        keep_away(file, Path(away), at)
    return file


def drop_too_many(folder: Path, now: str) -> None:
    """Drops the kept backups in a folder that are too many, as far as it lets go of them."""
    for one in choose_dropped(list_kept(folder), now):
        with suppress(OSError):
            one.file.unlink()


def keep_away(file: Path, folder: Path, now: str) -> None:
    """Copies a kept backup into a second folder, reads it again, and drops what is too many.

    It is waited for until the stick has all of it, which may be pulled out any time. Raises
    OSError where the folder cannot be written, or does not hold what was written.
    """
    folder.mkdir(parents=True, exist_ok=True)
    partial = folder / f"{file.name}.partial"
    try:
        shutil.copyfile(file, partial)
        make_private(partial)
        with partial.open("r+b") as written:
            os.fsync(written.fileno())
        if _digest_of(partial) != _digest_of(file):
            raise OSError(0, "what was written reads otherwise", str(partial))
        replace_file(partial, folder / file.name)
    finally:
        partial.unlink(missing_ok=True)
    drop_too_many(folder, now)


def _digest_of(file: Path) -> str:
    with file.open("rb") as read:
        return hashlib.file_digest(read, "sha256").hexdigest()


def keep_older(store: Store) -> None:
    """Keeps a file as an older program left it, before its tables are brought up.

    The older program can read that one; it stops no start where it cannot be written.
    """
    begin = store.rows(statements.CLOSED_AT) or [(0, b"", "")]
    number, link, _ = (store.rows(statements.NEWEST) or begin)[0]
    folder, now = folder_of(store.path), datetime.now().isoformat(timespec="minutes")
    file = folder / name_kept(now, write_witness(number, link))
    partial = file.with_suffix(".partial")
    try:
        make_folder(folder)
        copy_whole(store.connection, partial)
        make_private(partial)
        prove(partial, number, link)
        replace_file(partial, file)
    except (NoBackup, OSError, sqlite3.Error):
        log.exception("Not kept before it is brought up")
        with suppress(OSError):
            partial.unlink(missing_ok=True)


def prove(file: Path, number: int, link: bytes, report: Report = _tell_nobody) -> None:
    """Reads a written backup whole. Raises NoBackup where it is not sound, or ends elsewhere."""
    try:
        with closing(sqlite3.connect(write_uri(file.absolute()), uri=True)) as read:
            run = read.execute
            if run("PRAGMA integrity_check(1)").fetchone() != ("ok",):
                raise NoBackup(file, "it is damaged")
            begins = run(statements.CLOSED_AT).fetchall()
            last, made = begins[0][:2] if begins else (0, b"")
            while page := run(statements.CHAIN, (last,)).fetchall():
                for entry, id_, text, beside, *_ in page:
                    made = digest(made, id_, text)
                    if (entry, beside) != (last + 1, made):
                        raise NoBackup(file, f"entry {entry} does not hold")
                    last = entry
                report("prove", min(1.0, last / max(1, number)))
    except (sqlite3.Error, TypeError) as error:
        raise NoBackup(file, "it cannot be read") from error
    if (last, made) != (number, link):
        raise NoBackup(file, f"it ends at entry {last}, the history at {number}")
