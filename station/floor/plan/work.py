"""Holds which line of the plan is looked at."""

from dataclasses import dataclass

from station.shop.rooms import Hand, Work


@dataclass(frozen=True, kw_only=True)
class PlanWork(Work):
    """Holds the key of the line that is chosen; empty: the first."""

    chosen: str = ""


PlanHand = Hand[PlanWork]
WORK = PlanWork
