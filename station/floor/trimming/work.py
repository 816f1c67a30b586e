"""Holds the work in hand at trimming; the hand's subject is the batch."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from station.floor.shared.counting import CountingWork
from station.shop.rooms import Hand


@dataclass(frozen=True, kw_only=True)
class TrimmingWork(CountingWork):
    """Holds the count of the batch, and which size of the part is measured."""

    size: int = 0  # counted from 0

    @classmethod
    def renamed(cls, kept: Mapping[str, Any]) -> Mapping[str, Any]:
        """Once how many were measured was kept: what is measured next begins anew."""
        return {name: value for name, value in kept.items() if name != "measured"}


TrimmingHand = Hand[TrimmingWork]
WORK = TrimmingWork
