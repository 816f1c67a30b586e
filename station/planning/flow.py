"""How what is queued flows on to the packs: when each open order is packed, by what is known now.

A router cuts its queue sheet by sheet. Popping and trimming take what comes, the first first, at
the pace of their busy days; where none is known yet, they take no time. Of the orders that have
all their pieces packing packs the one due first. Pieces go to orders by due time, so an order
waits for the n-th piece of a part, however its other parts do.
"""

from collections.abc import Mapping, Sequence
from heapq import heappop, heappush
from typing import NamedTuple

from station.planning.hours import Hours
from station.planning.learnt import PartLearnt
from station.planning.messages import PlanCutting

LEAST_DAYS = 10  # worked days, before a pace can be told
BUSY = 0.9  # of the days were no busier than the one that shows the pace
NEVER = 1e6  # minutes; for what nothing in the queues is enough
POPPING, TRIMMING = ("bed", "popping"), ("trimming", "rework")  # where pieces wait for a step


class Job(NamedTuple):
    """A batch in a router's queue, or one that is planned for it."""

    name: str
    router: str
    sheets: int
    minutes: float  # of the router, a sheet
    makes: Mapping[str, int]
    by: str  # its place in the queue
    begun: bool = False
    planned: bool = False
    forward: bool = False  # it stands farther behind now


class OpenOrder(NamedTuple):
    """An order that waits; `due` are minutes of work from now, below zero where it is late."""

    name: str
    due: float
    pieces: Mapping[str, int]


class Course(NamedTuple):
    """How it goes: orders that end late, minutes late in all, and when each order is packed."""

    late: int
    minutes: float
    packed: list[float]


class StillOpen(NamedTuple):
    """Pieces of a part that the queues must bring for an order and those due before it."""

    pieces: int
    order: int  # its place


Queues = Mapping[str, Sequence[Job]]


def find_pace(days: Sequence[int]) -> float:
    """Finds the pieces of a busy day; 0: can't tell yet."""
    return float(sorted(days)[int(BUSY * (len(days) - 1))]) if len(days) >= LEAST_DAYS else 0.0


def list_orders(asked: PlanCutting, hours: Hours) -> list[OpenOrder]:
    """Lists the open orders by due time."""
    wants: dict[tuple[str, str], dict[str, int]] = {}
    for part in asked.parts:
        for wish in part.wishes:
            pieces = wants.setdefault((wish.due, wish.order), {})
            pieces[part.id] = pieces.get(part.id, 0) + wish.pieces
    left = {due: _count_left(hours, asked.now, due) for due in {due for due, _ in wants}}
    return [OpenOrder(order, left[due], pieces) for (due, order), pieces in sorted(wants.items())]


def _count_left(hours: Hours, now: str, due: str) -> float:
    """Counts the minutes of work until then; below zero, where it is over."""
    if due < now:
        return -hours.count_days(due, now) * hours.minutes
    return hours.count_days(now, due) * hours.minutes


class ShopFlow:
    """The shop as it stands, through which queues are followed."""

    def __init__(self, asked: PlanCutting, parts: Mapping[str, PartLearnt], hours: Hours) -> None:
        self.orders = list_orders(asked, hours)
        self.good = {part: known.mean for part, known in parts.items()}
        self.starts = {r.id: hours.minutes if r.stopped else r.free_in for r in asked.routers}
        used = zip(*(part.use for part in asked.parts if part.use), strict=False)
        days = {**asked.through, "packing": [sum(pieces) for pieces in used]}
        self.each = {  # minutes of a piece
            step: hours.minutes / pace
            for step in ("popping", "trimming", "packing")
            if (pace := find_pace(days.get(step, ())))
        }
        self._ready = [0.0] * len(self.orders)  # for all but what the queues must bring
        self.needs: dict[str, list[StillOpen]] = {}
        self._look_ahead(asked)

    def _look_ahead(self, asked: PlanCutting) -> None:
        """Looks when the pieces that are past the routers are there, and what is open still."""
        to_trim, to_pop = (
            {p.id: sum(p.coming.get(stage, 0) for stage in stages) for p in asked.parts}  # type: ignore[call-overload]
            for stages in (TRIMMING, POPPING)
        )
        popping, trimming = self.each.get("popping", 0.0), self.each.get("trimming", 0.0)
        trimmed = sum(to_trim.values()) * trimming
        self._popped = sum(to_pop.values()) * popping
        self._trimmed = max(self._popped, trimmed + sum(to_pop.values()) * trimming)
        free = {p.id: p.free for p in asked.parts}
        for n, order in enumerate(self.orders):
            for part, pieces in order.pieces.items():
                free[part] -= pieces
                wanted, first, all_ = -free[part], to_trim[part], to_trim[part] + to_pop[part]
                if wanted > all_:
                    self.needs.setdefault(part, []).append(StillOpen(wanted - all_, n))
                # in what order they come is not known: evenly
                elif wanted > first:
                    share = (wanted - first) / to_pop[part]
                    at = trimmed + share * (self._trimmed - trimmed)
                    self._ready[n] = max(self._ready[n], at)
                elif wanted > 0:
                    self._ready[n] = max(self._ready[n], wanted / first * trimmed)

    def follow(self, queues: Queues) -> Course:
        """Follows queues through the shop."""
        ready = self._ready.copy()
        came = self._bring(queues)
        for part, needs in self.needs.items():
            at, there, coming = 0.0, 0.0, iter(came.get(part, ()))
            for need in needs:
                while there < need.pieces and at < NEVER:
                    at, pieces = next(coming, (NEVER, 0.0))
                    there += pieces
                ready[need.order] = max(ready[need.order], at)
        return self._pack(ready)

    def _bring(self, queues: Queues) -> dict[str, list[tuple[float, float]]]:
        """Brings the sheets of the queues to the rack: (minutes from now, good pieces) by part."""
        cut = []
        for router, jobs in queues.items():
            at = self.starts[router]
            for job in jobs:
                cut += [(at + n * job.minutes, job) for n in range(1, job.sheets + 1)]
                at += job.sheets * job.minutes
        cut.sort(key=lambda sheet: sheet[0])
        popping, trimming = self.each.get("popping", 0.0), self.each.get("trimming", 0.0)
        popped, trimmed = self._popped, self._trimmed
        came: dict[str, list[tuple[float, float]]] = {part: [] for part in self.needs}
        for at, job in cut:
            pieces = sum(job.makes.values())
            popped = max(popped, at) + pieces * popping
            trimmed = max(trimmed, popped) + pieces * trimming
            for part, each in job.makes.items():
                if part in came:
                    came[part].append((trimmed, each * self.good[part]))
        return came

    def _pack(self, ready: list[float]) -> Course:
        """Packs the orders: of those that have all their pieces, the one due first."""
        packing, now, late, over = self.each.get("packing", 0.0), 0.0, 0, 0.0
        waiting: list[int] = []
        packed = [0.0] * len(ready)
        come = sorted(range(len(ready)), key=ready.__getitem__, reverse=True)
        while come or waiting:
            if not waiting:
                now = max(now, ready[come[-1]])
            while come and ready[come[-1]] <= now:
                heappush(waiting, come.pop())
            n = heappop(waiting)
            now += sum(self.orders[n].pieces.values()) * packing
            packed[n] = now
            if now > self.orders[n].due:
                late, over = late + 1, over + now - self.orders[n].due
        return Course(late, over, packed)
