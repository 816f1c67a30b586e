"""Holds which line of the plan is looked at, and what the order list says that was written."""

from dataclasses import dataclass

from station.floor.plan.acts import Bought
from station.shop.rooms import Hand, Work


@dataclass(frozen=True, kw_only=True)
class PlanWork(Work):
    """Holds which line is chosen, and what the order list says that was written last."""

    chosen: str = ""  # its key; empty: the first
    on_list: tuple[Bought, ...] = ()

    @property
    def is_begun(self) -> bool:
        """Whether something is begun: here things are only looked at."""
        return False


PlanHand = Hand[PlanWork]
WORK = PlanWork
