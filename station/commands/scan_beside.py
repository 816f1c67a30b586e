"""The text station beside the window: a hand of its own on the file that the window has open."""

import argparse
from typing import TYPE_CHECKING

from station import bootstrap
from station.commands.common import OWN_BUG, make_clock, require_shop
from station.commands.scan import find_where
from station.commands.text_station import TakingLines
from station.desk.desk import Given
from station.desk.replies import line
from station.jobs.process import ProcessJob
from station.window.beside import Reply

if TYPE_CHECKING:
    from station.sharing.loop import Loop

OWN = "beside/"  # begins the names of what its desk keeps


class ScanBeside:
    """Takes lines while the window is open; what takes long runs beside that.

    Its work in hand, and what it can take back, is not the window's. `loop` shares for both.
    """

    def __init__(self, taker: TakingLines, loop: "Loop | None") -> None:
        self._taker, self._desk, self._loop = taker, taker.desk, loop
        self._given: Given | None = None
        self._told = ""  # why the shop is away, as it was said last

    @classmethod
    def begin(cls, options: argparse.Namespace, loop: "Loop | None") -> "ScanBeside":
        """Begins where the options say. Raises CommandError."""
        ledger, clock = bootstrap.HELD[require_shop(options).resolve()], make_clock(options)
        desk = bootstrap.make_desk(ledger, find_where(options), clock, begin=ProcessJob, own=OWN)
        return cls(TakingLines(desk, clock), loop)

    def take(self, text: str) -> None:
        """Takes one line; what it does is shared at once."""
        self._given = self._taker.take(text)
        if self._loop is not None:
            self._loop.kick()

    def reply(self) -> Reply | None:
        """Gives the answer to the newest line; None while something is read or thought for it."""
        desk = self._desk
        if desk.ahead.is_thinking:
            desk.look_ahead()
        if desk.has_ended():
            self._given = self._taker.try_to(desk.went_on, "")
        if desk.ahead.is_thinking or (desk.underway is not None and not desk.question()):
            return None
        given, code = self._given, 0 if self._taker.sound else OWN_BUG
        out = line(given.answer, given.entry, given.moves) + "\n" if given else ""
        return Reply(out, self._tell_away(), code)

    def stop(self) -> None:
        """Ends what is read or thought for a line."""
        if self._desk.underway is not None:
            self._desk.underway.stop()
        self._desk.ahead.stop()

    def _tell_away(self) -> str:
        """Tells once why the shop is away: standard error is all that a text station has."""
        why = self._loop.why if self._loop is not None else ""
        told, self._told = self._told, why
        return f"{why}\n" if why and why != told else ""
