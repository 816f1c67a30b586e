"""What the cart's room holds of the work in hand; the hand's subject is the cart."""

from dataclasses import dataclass, replace
from typing import Literal, Self

from station.shop.rooms import Hand, Work

Mode = Literal["", "off", "on"]


@dataclass(frozen=True, kw_only=True)
class CartWork(Work):
    """What the next pack is scanned for, and the page of the list that is shown."""

    mode: Mode = ""  # off: it comes off; on: it goes on at the door; empty: as the list says
    page: int = 0

    def disarm(self) -> Self:
        """Gives the work without what the next pack was scanned for."""
        return replace(self, mode="")


CartHand = Hand[CartWork]
WORK = CartWork
