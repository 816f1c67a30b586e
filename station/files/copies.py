"""Copies of the whole history for the office, beside the screen where there is one."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from station.files.backups import Backups, let_go
from station.files.folder import ShopFolder
from station.files.health import Health
from station.floor.office.work import FilesFound, OfficeHand
from station.jobs.copy_history import STAGES
from station.jobs.messages import CopyHistory, Failed, HistoryCopied
from station.ledger.ledger import Ledger
from station.shop.acts import good, notice, refuse
from station.shop.file_requests import BackUp, FindBackups
from station.shop.rooms import LongJob, Took
from station.shop.words import say

AGAIN = say("Back up again in a moment.")


class Copies:
    """Copies the history, and finds the backups that are kept beside it."""

    def __init__(
        self,
        ledger: Ledger,
        folder: ShopFolder,
        clock: Callable[[], str],
        health: Health,
        *,
        beside: bool,
    ) -> None:
        self._ledger, self._folder, self._clock, self._health = ledger, folder, clock, health
        self._beside, self._backups = beside, Backups(ledger, clock)

    def back_up(self, _request: BackUp, hand: OfficeHand) -> Took | LongJob:
        """Copies the whole history into a new file, and makes the backup that is kept here anew.

        Raises a Fault or OSError where that cannot be.
        """
        if self._ledger.is_still:
            return Took(hand, notice(say("The history is being copied already"), AGAIN))
        file = self._folder.name_new("copy", "db")
        if self._beside and (request := self._backups.ask_to_copy(file, keep=True)):
            return self._copy_beside(request, hand, file)
        self._ledger.backup(file)
        self._backups.make(self._clock())
        return self._tell_copied(hand, file)

    def _copy_beside(self, request: CopyHistory, hand: OfficeHand, file: Path) -> LongJob:
        return LongJob(
            request=request,
            hand=hand,
            title=say("The history is being copied"),
            note=say("It counts once it was read again. Esc stops it as well."),
            stop=say("Stop copying"),
            begun=good(say("The history is being copied"), say("The screen stays free.")),
            stopped=good(say("Copying the history was stopped"), AGAIN),
            stages=STAGES,
            end=lambda hand, outcome: self._end(hand, file, outcome),
            is_over=lambda: let_go(self._ledger, file),
        )

    def _end(self, hand: OfficeHand, file: Path, outcome: object) -> Took:
        """Tells what came of the copy that was made beside the screen."""
        if isinstance(outcome, Failed):
            said = say("The history was not copied: {why}", why=outcome.tell())
            return Took(hand, refuse(said, say("Mend that, then back up again.")))
        assert isinstance(outcome, HistoryCopied)
        self._backups.note(outcome.trouble)
        return self._tell_copied(hand, file)

    def _tell_copied(self, hand: OfficeHand, file: Path) -> Took:
        if hand.work.own_pc:  # what is shown of this PC, as it is now
            hand = replace(hand, work=replace(hand.work, own_pc=self._health.look_here()))
        away = say("{file}. Keep a copy away from this PC.", file=file)
        return Took(hand, good(say("The whole history is copied"), away))

    def find_backups(self, _request: FindBackups, hand: OfficeHand) -> Took:
        """Finds the backups that are kept beside the shop's file, the newest first."""
        names = tuple(kept.file.name for kept in self._ledger.list_backups())
        after = replace(hand, work=replace(hand.work, found=FilesFound(names=names)))
        next_ = say("Touch the one to go back to.") if names else say("One is made each evening.")
        return Took(after, good(say("{n} {n|backup|backups}", n=len(names)), next_))
