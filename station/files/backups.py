"""The backups that this PC keeps by itself: each evening, and before a newer program goes on.

The evening's is made beside the screen: of 100,000 entries it takes 1.5 s. They lie in
``backups`` beside the shop's file, and in a second folder or on a stick where the shop has set
one. What keeps one from being made is kept as this station's own, and told.
"""

import logging
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Protocol

from station import VERSION
from station.files.folder import find_folder
from station.jobs.messages import CopyHistory, Failed, KeepBackup, Outcome
from station.ledger.faults import Fault
from station.ledger.kept_backups import keep_away, last_evening, partial_of
from station.ledger.ledger import Ledger
from station.queries.settings import find_shop

PROGRAM = "program"  # local: the version that worked with the file last
TROUBLE = "backup trouble"  # local: why the newest backup could not be made
log = logging.getLogger(__name__)


class BackupJob(Protocol):
    """Work beside the screen, as `ProcessJob` does it."""

    def is_over(self) -> bool:
        """Tells whether it has ended, well or not."""
        ...

    def outcome(self) -> Outcome:
        """Gives what came of it. Raises RuntimeError where it broke off."""
        ...

    def stop(self) -> None:
        """Ends it at once."""
        ...


Begin = Callable[[KeepBackup], BackupJob]


class Backups:
    """The kept backups of one ledger."""

    def __init__(
        self, ledger: Ledger, clock: Callable[[], str], begin: "Begin | None" = None
    ) -> None:
        """`begin` begins a job beside the screen; without one it is done here and now."""
        self._ledger, self._clock, self._begin = ledger, clock, begin
        self._looked = ""  # the minute in which it was looked whether one is due
        self._job: BackupJob | None = None

    def step(self) -> None:
        """Makes the evening's backup once it is due; looks once a minute."""
        if self._job is not None:
            if self._job.is_over():
                self._end(self._job)
            return
        now = self._clock()
        if now[:16] != self._looked and not self._ledger.is_still:  # else one is being copied
            self._looked = now[:16]
            if self.is_due(now) and not (self._begin and self._make_beside(self._begin, now)):
                self.make(now)

    def stop(self) -> None:
        """Breaks off what is made beside the screen: the ledger may be closed."""
        if self._job is not None:
            self._job.stop()
            self._let_go()

    def _make_beside(self, begin: "Begin", now: str) -> bool:
        """Begins to make a backup beside the screen; gives whether it could."""
        try:
            end = self._ledger.hold_still()
            if end is None:
                return False
            self._job = begin(self._ask_to_keep(now, end))
        except (OSError, Fault):  # where it is made here and now, it is told why not
            self._let_go()
            return False
        except BaseException:
            self._let_go()
            raise
        return True

    def _ask_to_keep(self, now: str, end: tuple[int, bytes]) -> KeepBackup:
        away = find_shop(self._ledger.view).backup_folder.strip()
        return KeepBackup(
            path=str(self._ledger.path),
            at=now,
            number=end[0],
            digest=end[1].hex(),
            away=str(self._find_away(away)) if away else "",
        )

    def ask_to_copy(self, to: Path, *, keep: bool = False) -> CopyHistory | None:
        """Asks for a copy beside the screen, and whether a backup is kept anew with it.

        The file is held still from now on, until the ledger is told to go on. None: it cannot be.
        """
        end = self._ledger.hold_still()
        if end is None:
            return None
        try:
            kept = self._ask_to_keep(self._clock(), end) if keep else None
        except OSError:  # where it is kept here and now, it is told why not
            self._ledger.go_on()
            return None
        path, digest = str(self._ledger.path), end[1].hex()
        return CopyHistory(path=path, to=str(to), number=end[0], digest=digest, keep=kept)

    def _end(self, job: "BackupJob") -> None:
        """Keeps what came of the backup that was made beside the screen."""
        try:
            outcome = job.outcome()
            why = outcome.tell() if isinstance(outcome, Failed) else ""
        except RuntimeError as broken:
            log.error("No backup: %s", broken)  # noqa: TRY400 - what it said is its trace
            why = "The program that makes it broke off"
        finally:
            self._let_go()
        self.note(why)

    def _let_go(self) -> None:
        self._job = None
        self._ledger.go_on()

    def is_due(self, now: str) -> bool:
        """Tells whether something was done since the newest backup, and an evening has come."""
        evening = last_evening(now, find_shop(self._ledger.view).day_ends)
        newest = self._ledger.find_backup(now)
        if newest is None:
            done_at = self._ledger.newest_at()
            return "" < done_at < evening or done_at > now
        done = self._ledger.witness() != newest.witness or self._ledger.not_shared() > 0
        return done and newest.at < evening

    def make(self, now: str) -> bool:
        """Makes a backup in both folders; gives whether all went well. Trouble is kept."""
        why = self._make(now)
        self.note(why)
        return not why

    def note(self, why: str) -> None:
        """Keeps what hinders backups; nothing: none does."""
        why = why.encode(errors="replace").decode()  # a folder's name may be no text
        with suppress(Fault):
            if why != (self._ledger.local(TROUBLE) or ""):
                self._ledger.set_local(TROUBLE, why)

    def _make(self, now: str) -> str:
        try:
            file = self._ledger.keep_backup(now)
            if folder := find_shop(self._ledger.view).backup_folder.strip():
                keep_away(file, self._find_away(folder), now)
        except OSError as fault:
            log.exception("No backup")
            return f"{fault.strerror or fault}: {fault.filename or 'backups'}"
        except Fault as fault:
            log.exception("No backup")
            return str(fault)
        return ""

    def _find_away(self, written: str) -> Path:
        """Finds the second folder: where PCs share, it may be one for all, and each has its own
        in it. Raises OSError.
        """
        folder = find_folder(written)
        return folder / f"station-{self._ledger.station}" if self._ledger.shared else folder


def let_go(ledger: Ledger, to: Path) -> None:
    """Lets a file that was copied beside the screen go on; nothing half made stays at `to`."""
    ledger.go_on()
    with suppress(OSError):
        partial_of(to).unlink(missing_ok=True)


def keep_before_update(ledger: Ledger, now: str) -> None:
    """Keeps a backup where another program worked with the file last; it never stops a start."""
    if ledger.local(PROGRAM) != VERSION:
        if ledger.count():
            Backups(ledger, lambda: now).make(now)
        with suppress(Fault):
            ledger.set_local(PROGRAM, VERSION)
