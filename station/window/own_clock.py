"""Watches this PC's clock: one that was told behind the work stays so until it is past that."""

from station.ledger.ledger import Ledger
from station.shop.times import count_seconds
from station.shop.words import Say, moment, say

CLOCK_OFF = 120  # seconds that a clock may be behind the newest act, or off the server's


class OwnClock:
    """What is wrong with this PC's clock, as far as the work done here tells."""

    def __init__(self, ledger: Ledger) -> None:
        self._ledger = ledger
        first = next(ledger.entries(), None)
        self._began = first.past.act.at if first else ""  # no clock is right before that
        self._behind = ""  # the act that the clock was found behind; what is done since hides it

    def look(self, now: str) -> Say:
        """Describes what is wrong with the clock at that time (shop-local), if anything."""
        newest = self._ledger.newest_at()
        late = max((newest, self._behind, self._began), key=lambda at: count_seconds(now, at))
        if count_seconds(now, late) <= CLOCK_OFF:
            self._behind = ""
            return Say()
        self._behind = late
        return say("This PC's clock is wrong: work was done {at}", at=moment(late))
