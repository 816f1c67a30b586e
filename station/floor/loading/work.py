"""Holds what was said at the cutting bed about the next sheet, and the question that is open.

The batch in hand is the one that the router has taken on. Which of several routers is looked at
stands in `hand.facing`.
"""

from dataclasses import dataclass, field
from typing import Literal

from station.queries.stock import name_part
from station.shop.rooms import Hand, Work
from station.shop.views import View
from station.shop.words import Say, say, together

# the question that is open: why it stands still, why the sheet is spoiled, which bit broke, what
# a bit that nobody has entered yet is like;
# or only shown: which router needs the person next
Mode = Literal["", "stop", "spoil", "broken", "new_bit", "tended"]


@dataclass(frozen=True, kw_only=True)
class LoadingWork(Work):
    """Holds what is known of the next sheet, and what was answered to the open question."""

    lot: str = ""
    in_hands: str = ""  # a lot of which a sheet was scanned where the book has none left
    reading: float = 0.0  # thickness, mm; 0: not read yet
    ticks: tuple[str, ...] = ()  # what was confirmed
    restart: tuple[str, ...] = ()  # what was confirmed before the router runs on
    restart_of: str = ""  # the stop that it was confirmed in: "2 2026-11-25T10:42:00"
    sheet: int = 0  # the one wanted, where it is not the next in order
    mode: Mode = ""
    reason: str = ""  # why the sheet is spoiled
    part: str = ""  # the one whose survivors are counted
    survived: dict[str, int] = field(default_factory=dict)  # whole pieces of each part
    size: str = ""  # of the first-off, chosen to be measured: "014/A along"
    again: str = ""  # the part whose count was refused: counted before the sheet is booked
    spoils: str = ""  # the sheet on the bed whose survivors these are: "00412/3"

    def tell_counted(self, view: View) -> Say:
        """Tells what was counted of a spoiled sheet that is not booked yet."""
        if self.mode != "spoil":
            return Say()
        return together([
            say("Sheet {sheet}: {n} {part} whole", sheet=self.spoils.partition("/")[2], n=n,
                part=name_part(view, part))
            for part, n in self.survived.items()
        ])  # fmt: skip


LoadingHand = Hand[LoadingWork]
WORK = LoadingWork
