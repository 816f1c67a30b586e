"""Holds what was given at packing for the order in hand, and the question that is open.

The order is the subject of the hand.
"""

from dataclasses import dataclass, replace
from typing import Literal, NamedTuple, Self

from station.shop.rooms import Hand, Work

# what the next input is: the count of a rack place, what goes back, what is spoiled, a weight,
# whose label
Question = Literal["", "count", "back", "spoiled", "scale", "label", "supplies"]


class Picked(NamedTuple):
    """The pick that was just made, which a number changes."""

    part: str
    pieces: int


@dataclass(frozen=True, kw_only=True)
class PackingWork(Work):
    """Holds the open question, and what was chosen, picked and weighed for the order."""

    asks: Question = ""
    part: str = ""  # chosen last
    take: int | None = None  # a number that was given before the scan
    picked: Picked | None = None
    short: str = ""  # the part that was counted short
    scale: float | None = None  # what the scale showed, g, since the pack changed
    mailer: str = ""  # that a person chose for the order in hand
    supply: str = ""  # what is counted of the supplies: a mailer, wrap, labels
    walk: tuple[str, ...] = ()  # the orders that are fetched on one walk
    shelf: str = ""  # the product that is packed ahead; then there is no order in hand
    sets: int = 0  # of it that are to be made
    made: int = 0  # of these that are made already

    def disarm(self) -> Self:
        """Gives the work without its open question, and without the number before a scan."""
        return replace(self, asks="", take=None, picked=None, supply="")


PackingHand = Hand[PackingWork]
WORK = PackingWork
