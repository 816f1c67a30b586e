"""The backups that this PC keeps by itself: each evening, and before a newer program goes on.

They lie in ``backups`` beside the shop's file, and in a second folder or on a stick where the
shop has set one. What keeps one from being made is kept as this station's own, and told.
"""

import hashlib
import logging
import os
import shutil
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from station import VERSION
from station.files.folder import find_folder
from station.ledger.faults import Fault
from station.ledger.kept_backups import choose_dropped, last_evening, list_kept
from station.ledger.ledger import Ledger
from station.ledger.private import make_private
from station.ledger.renaming import replace_file
from station.queries.settings import find_shop

PROGRAM = "program"  # local: the version that worked with the file last
TROUBLE = "backup trouble"  # local: why the newest backup could not be made
log = logging.getLogger(__name__)


class Backups:
    """The kept backups of one ledger."""

    def __init__(self, ledger: Ledger, clock: Callable[[], str]) -> None:
        self._ledger, self._clock = ledger, clock
        self._looked = ""  # the minute in which it was looked whether one is due

    def step(self) -> None:
        """Makes the evening's backup once it is due; looks once a minute."""
        now = self._clock()
        if now[:16] != self._looked:
            self._looked = now[:16]
            if self.is_due(now):
                self.make(now)

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
        with suppress(Fault):
            if why != (self._ledger.local(TROUBLE) or ""):
                self._ledger.set_local(TROUBLE, why)
        return not why

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
        if _digest(partial) != _digest(file):
            raise OSError(0, "what was written reads otherwise", str(partial))
        replace_file(partial, folder / file.name)
    finally:
        partial.unlink(missing_ok=True)
    for one in choose_dropped(list_kept(folder), now):
        with suppress(OSError):
            one.file.unlink()


def _digest(file: Path) -> str:
    with file.open("rb") as read:
        return hashlib.file_digest(read, "sha256").hexdigest()


def keep_before_update(ledger: Ledger, now: str) -> None:
    """Keeps a backup where another program worked with the file last; it never stops a start."""
    if ledger.local(PROGRAM) != VERSION:
        if ledger.count():
            Backups(ledger, lambda: now).make(now)
        with suppress(Fault):
            ledger.set_local(PROGRAM, VERSION)
