"""What can go wrong around the history, each as a typed error with one clear sentence.

Faults of the surroundings (`Fault`) are told to the person as they stand. Own bugs
(`OwnBug`) are never swallowed: the act is not recorded and the program says so.
"""

import sqlite3
from pathlib import Path


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


class Damaged(Fault):
    """The file is damaged. `aside` is where it was put, `kept` how many entries were saved."""

    def __init__(self, path: Path, aside: Path | None = None, kept: int | None = None) -> None:
        self.aside, self.kept = aside, kept
        super().__init__(_damaged_words(path, aside, kept))


class Empty(Fault):
    """A shop's file with nothing in it, or gone with its log left behind.

    `aside` is where it was put, `log` where its log was; None: there was none.
    """

    def __init__(self, path: Path, aside: Path | None, log: Path | None) -> None:
        self.aside, self.log = aside, log
        told = f"was empty and is set aside as {aside.name}" if aside else "is gone"
        if log:
            told += f", its log is set aside as {log.name}"
        super().__init__(
            f"{path.name} {told}. Nothing of the shop could be read: put a backup in its place "
            "(station restore) before you start again; without one the next start begins anew."
        )


class FormatTooNew(Fault):
    """A newer program wrote the file."""

    def __init__(self, path: Path, found: str) -> None:
        super().__init__(
            f"{path.name} was written by a newer program (format {found}). Update this one first."
        )


class NoBackup(Fault):
    """The file to restore is no sound backup."""

    def __init__(self, file: Path, why: str) -> None:
        super().__init__(f"{file.name} is no sound backup: {why}. Nothing was changed.")


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


def _damaged_words(path: Path, aside: Path | None, kept: int | None) -> str:
    """The sentence for a damaged file, as far as it was dealt with."""
    if aside is None:
        return (
            f"{path.name} is damaged. Close this program and start it again: "
            "it then saves what can be saved."
        )
    return (
        f"{path.name} was damaged and is set aside as {aside.name}; {kept or 0} entries were "
        "saved. Start again to go on with these, and keep the file set aside."
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
    return kind(path) if kind else None
