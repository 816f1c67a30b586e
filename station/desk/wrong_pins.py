"""Wrong PINs at this PC: how many there were, and how long none is taken.

They are counted once for a PC, whoever asks for a PIN there: its screen, a text station beside
that, a command.
"""

import math
from datetime import datetime, timedelta
from typing import NamedTuple

from station.ledger.ledger import Ledger

MOST = 5  # wrong PINs before the question is dropped, and one has to wait
# From then on each wrong PIN makes the wait twice as long: common practice, no source.
FIRST_WAIT = timedelta(minutes=1)
LONGEST_WAIT = timedelta(hours=1)
WRONG = "wrong pins"  # local: those since the last right one
MANY = "many wrong pins"  # local: as many as there were when one last had to wait, and when


class WrongPins(NamedTuple):
    """How many PINs were wrong, and when the newest was (shop-local; empty: none was)."""

    number: int = 0
    at: str = ""

    def find_wait(self, now: str) -> timedelta:
        """Finds how long no PIN is taken; nothing: one is."""
        over = self.number - MOST
        if over < 0 or not self.at:
            return timedelta()
        wait = min(LONGEST_WAIT, FIRST_WAIT * (1 << min(over, 10)))
        gone = datetime.fromisoformat(now) - datetime.fromisoformat(self.at)
        return max(timedelta(), wait - max(gone, timedelta()))

    def count_wrong(self, now: str) -> "WrongPins":
        """Counts one more."""
        return WrongPins(self.number + 1, now)

    def start_waiting(self, now: str) -> "WrongPins":
        """Begins the wait anew where the clock was set back, or it would be a long one."""
        return self._replace(at=min(self.at, now))


def read_wrong_pins(ledger: Ledger, name: str = WRONG) -> WrongPins:
    """Reads what is kept under a local name."""
    wrong, _, at = (ledger.local(name) or "").partition(" ")
    return WrongPins(int(wrong), at) if wrong.isdecimal() else WrongPins()


def keep_wrong_pins(ledger: Ledger, pins: WrongPins) -> None:
    """Keeps them, and for long where there were many; no right PIN takes that away."""
    if pins == read_wrong_pins(ledger):
        return
    ledger.set_local(WRONG, f"{pins.number} {pins.at}")
    if pins.number >= MOST:
        ledger.set_local(MANY, f"{pins.number} {pins.at}")


def count_minutes(wait: timedelta) -> int:
    """Counts a wait in whole minutes, the begun one too."""
    return math.ceil(wait / timedelta(minutes=1))
