"""Holds which line of the plan is looked at, and which order list was written."""

from dataclasses import dataclass

from station.shop.rooms import Hand, Work


@dataclass(frozen=True, kw_only=True)
class PlanWork(Work):
    """Holds which line is chosen, and which order list was written."""

    chosen: str = ""  # its key; empty: the first
    listed: str = ""  # the time of the plan whose order list was written last

    @property
    def is_begun(self) -> bool:
        """Whether something is begun: here things are only looked at."""
        return False


PlanHand = Hand[PlanWork]
WORK = PlanWork
