"""Holds what is shown at Shop today; the hand's subject is the concern in hand."""

from dataclasses import dataclass
from typing import Literal

from station.shop.rooms import Hand, Work


@dataclass(frozen=True, kw_only=True)
class TodayWork(Work):
    """Holds which list is shown, and its page."""

    shown: Literal["", "concerns"] = ""  # empty: the day
    page: int = 0
    together: bool = False  # those like the concern in hand are settled with it

    @property
    def is_begun(self) -> bool:
        """Whether something is begun: here things are only looked at."""
        return False


TodayHand = Hand[TodayWork]
WORK = TodayWork
