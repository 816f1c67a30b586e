"""What can go wrong around the history, each as a typed error with one clear sentence.

Faults of the surroundings (`Fault`) are told to the person as they stand. Own bugs
(`OwnBug`) are never swallowed: the act is not recorded and the program says so.
"""

import os
import sqlite3
from pathlib import Path
from typing import NamedTuple

from station.shop.words import moment


class Fault(Exception):  # noqa: N818 - the surroundings' fault, no error of ours
    """The surroundings do not allow it; the text says what happened and what to do."""


class InUse(Fault):
    """Another program holds the file."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"Another program has {path.name} open. Close that one first, or use it instead."
        )


class NotWritable(Fault):
    """The folder or the file cannot be written."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"{path.name} cannot be written in its folder. "
            "Ask who looks after this PC to allow writing there."
        )


class NoFile(Fault):
    """A folder, or something else that is no file, stands where the shop's file belongs."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"{path.name} is no file: something else stands in its place. Ask who looks after "
            "this PC to move that away, and to put a backup there: station restore FILE."
        )


class DiskFull(Fault):
    """No room is left; what was asked is not recorded."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"The disk that holds {path.name} is full. "
            "Nothing was recorded: make room, then do it again."
        )


class DiskFault(Fault):
    """The disk did not read or write; what was asked is not recorded."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"The disk did not take what was written to {path.name}. "
            "Nothing was recorded: look after the disk, then do it again."
        )


class Mended(NamedTuple):
    """What came of mending: how many entries and acts not shared were saved, how many acts are
    missing (-1: nobody knows), and of when; empty where none is.
    """

    kept: int
    lost: int = 0
    since: str = ""
    until: str = ""


class Damaged(Fault):
    """The file is damaged. `aside` is where it was put, and what came of mending it."""

    def __init__(
        self, path: Path, aside: Path | None = None, mended: Mended | None = None
    ) -> None:
        self.aside, self.kept = aside, mended.kept if mended else None
        self.since, self.until = mended[2:] if mended else ("", "")
        super().__init__(_damaged_words(path, aside, mended))


class Empty(Fault):
    """A shop's file with nothing in it, or gone, of which nothing can be read anywhere.

    `aside` is where it was put, `log` where its log was; None: there was none.
    """

    def __init__(
        self, path: Path, aside: Path | None, log: Path | None, mended: Mended = Mended(0)
    ) -> None:
        self.aside, self.log, (self.since, self.until) = aside, log, mended[2:]
        told = f"was empty and is set aside as {aside.name}" if aside else "is gone"
        if log:
            told += f", its log is set aside as {log.name}"
        until = f" Its newest work was of {moment(mended.until)}." if mended.until else ""
        super().__init__(
            f"{path.name} {told}. Nothing of the shop could be read: put a backup in its place "
            "(station restore) before you start again; without one the next start begins anew."
            f"{until}"
        )


class FormatTooNew(Fault):
    """A newer program wrote the file."""

    def __init__(self, path: Path, found: str) -> None:
        super().__init__(
            f"{path.name} was written by a newer program (format {found}). Update this one first."
        )


class NoMembership(Fault):
    """Which station of its shop this PC is can be read nowhere any more."""

    def __init__(self, file: Path) -> None:
        super().__init__(
            f"{file.name} is damaged or gone: which station this PC is stands nowhere else. Ask "
            "who owns the shop's database for a new join card for its number, and say: station "
            "join HOST. What is not shared yet is kept."
        )


class NoBackup(Fault):
    """The file to restore is no sound backup."""

    def __init__(self, file: Path, why: str) -> None:
        super().__init__(f"{file.name} is no sound backup: {why}. Nothing was changed.")


class AnotherShop(Fault):
    """The file to restore is a backup of another shop than the one that is here."""

    def __init__(self, file: Path, theirs: str, ours: str) -> None:
        super().__init__(
            f"{file.name} is a backup of another shop, “{theirs}”. Here is “{ours}”. Nothing was "
            "changed. Where that is meant, say: station restore FILE --another-shop"
        )


class OwnBug(Exception):  # noqa: N818 - the plain word for it
    """A mistake in this program."""


class ReadsWrong(OwnBug):
    """A rule read a kind of fact that it does not list."""


class EffectsWrong(OwnBug):
    """A rule's effects do not hold: the act is not recorded."""


class ArgsWrong(OwnBug):
    """The arguments of an act do not fit its kind."""


class UnknownAct(OwnBug):
    """No rule decides on this kind of act."""


def _damaged_words(path: Path, aside: Path | None, mended: Mended | None) -> str:
    """The sentence for a damaged file, as far as it was dealt with."""
    if mended is None:
        return (
            f"{path.name} is damaged. Close this program and start it again: "
            "it then saves what can be saved."
        )
    told = f"was damaged and is set aside as {aside.name}" if aside else "was gone"
    return (
        f"{path.name} {told}; {mended.kept} entries were saved, {_missing_words(mended)} "
        "Start again to go on with these, and keep the file set aside."
    )


def _missing_words(mended: Mended) -> str:
    """What is missing, from when on, and what brings it back."""
    if not mended.lost and not mended.since:
        return "nothing is missing."
    since, until = moment(mended.since), moment(mended.until)
    when = f"from {since} to {until}" if mended.until else f"from {since} on"
    if not mended.lost:
        return f"what was done {when} needs a look."
    what = f"{mended.lost} done {when} are" if mended.lost > 0 else f"work {when} may be"
    return (
        f"{what} missing. A newer backup brings that back: station restore FILE, or "
        "Restore a backup in the office."
    )


_BY_CODE: dict[int, type[InUse | NotWritable | DiskFault | DiskFull | Damaged]] = {
    sqlite3.SQLITE_PERM: NotWritable,
    sqlite3.SQLITE_BUSY: InUse,
    sqlite3.SQLITE_LOCKED: InUse,
    sqlite3.SQLITE_READONLY: NotWritable,
    sqlite3.SQLITE_IOERR: DiskFault,
    sqlite3.SQLITE_CORRUPT: Damaged,
    sqlite3.SQLITE_FULL: DiskFull,
    sqlite3.SQLITE_CANTOPEN: NotWritable,
    sqlite3.SQLITE_AUTH: NotWritable,
    sqlite3.SQLITE_NOTADB: Damaged,
}


def fault_of(error: sqlite3.Error, path: Path) -> Fault | None:
    """The fault behind a driver's error; None when it is a bug of our own."""
    code = getattr(error, "sqlite_errorcode", None)
    if code is None and isinstance(error, sqlite3.OperationalError):
        return Damaged(path)  # the driver's own: what stands as text cannot be read as text
    kind = _BY_CODE.get(code & 0xFF) if isinstance(code, int) else None
    if kind is DiskFault and path.exists() and not _may_write(path):
        kind = NotWritable  # what SQLite takes for a disk that does not lock
    return kind(path) if kind else None


def _may_write(path: Path) -> bool:
    """Tells whether a file may be written; it is not opened, for closing it would unlock it."""
    return os.access(path, os.W_OK, effective_ids=os.access in os.supports_effective_ids)
