"""Holds the work in hand at popping; the hand's subject is the batch."""

from dataclasses import dataclass

from station.floor.shared.counting import CountingWork
from station.shop.rooms import Hand


@dataclass(frozen=True, kw_only=True)
class PoppingWork(CountingWork):
    """Holds the slips that were picked up, and the count of what lies on them."""

    slips: tuple[str, ...] = ()  # ids
    measured: str = ""  # name of the size that was chosen, of the first-off that is due


PoppingHand = Hand[PoppingWork]
WORK = PoppingWork
