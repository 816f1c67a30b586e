"""Holds which line of the plan is looked at."""

from dataclasses import dataclass

from station.shop.rooms import Hand, Work


@dataclass(frozen=True, kw_only=True)
class PlanWork(Work):
    """Holds the key of the line that is chosen; empty: the first."""

    chosen: str = ""

    @property
    def is_begun(self) -> bool:
        """Whether something is begun: here things are only looked at."""
        return False


PlanHand = Hand[PlanWork]
WORK = PlanWork
