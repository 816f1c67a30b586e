"""Holds the work in hand at trimming; the hand's subject is the batch."""

from dataclasses import dataclass

from station.floor.shared.counting import CountingWork
from station.shop.rooms import Hand


@dataclass(frozen=True, kw_only=True)
class TrimmingWork(CountingWork):
    """Holds the count of the batch, and how many pieces were compared with their master."""

    measured: int = 0


TrimmingHand = Hand[TrimmingWork]
WORK = TrimmingWork
