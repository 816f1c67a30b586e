"""How what is queued flows on to the packs: when each open order is packed, by what is known now.

A router cuts its queue sheet by sheet. Popping and trimming take what comes, the first first, at
the pace of their busy days; where none is known yet, they take no time. Of the orders that have
all their pieces packing packs the one due first. Pieces go to orders by due time, so an order
waits for the n-th piece of a part, however its other parts do.
"""

import math
from collections.abc import Mapping, Sequence
from heapq import heappop, heappush
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from station.planning.hours import Hours
from station.planning.learnt import PartLearnt
from station.planning.messages import PlanCutting

LEAST_DAYS = 10  # worked days, before a pace can be told
BUSY = 0.9  # of the days were no busier than the one that shows the pace
SPREAD_MIN = 60.0  # minutes before and after a due time that it may go either way; own choice
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
    others: tuple["OnRouter", ...] = ()  # the routers that may take it, where that is open still

    def move(self, on: "OnRouter") -> "Job":
        """Moves it to another router."""
        return self._replace(router=on.router, minutes=on.minutes)


class OnRouter(NamedTuple):
    """A router that may take a job: its minutes a sheet, and once before the first."""

    router: str
    minutes: float
    before: float = 0.0


class OpenOrder(NamedTuple):
    """An order that waits; `due` are minutes of work from now, below zero where it is late."""

    name: str
    due: float
    pieces: Mapping[str, int]


class Course(NamedTuple):
    """How it goes: orders late as expected, minutes late in all, and when each order is packed.

    Nobody knows to the minute: what is packed just before its due time may end late as well.
    """

    expected: float
    minutes: float
    late: int  # as it is followed
    packed: list[float]


class StillOpen(NamedTuple):
    """Pieces of a part that the queues must bring for an order and those due before it."""

    pieces: int
    order: int  # its place


Queues = Mapping[str, Sequence[Job]]
Counts = NDArray[np.int64]
Minutes = NDArray[np.float64]
NEAR = 1e-6  # pieces; a sum of doubles can tell no more
UNDATED = "~"  # the due time of an order that has none; sorts behind every time


class Laid(NamedTuple):
    """Jobs of all queues in arrays, by their places there."""

    jobs: list[Job]
    routers: dict[str, list[int]]  # as they stand
    sheets: Counts
    minutes: Minutes  # a sheet, by jobs and routers
    pieces: Minutes  # a sheet, of all parts
    first: Counts  # place of each job's first part in the next two, and of the last one's end
    parts: NDArray[np.int16]  # that orders wait for, by their numbers
    good: Minutes  # pieces a sheet


def find_pace(days: Sequence[int]) -> float:
    """Finds the pieces of a busy day; 0: can't tell yet."""
    return float(sorted(days)[int(BUSY * (len(days) - 1))]) if len(days) >= LEAST_DAYS else 0.0


def list_orders(asked: PlanCutting, hours: Hours) -> list[OpenOrder]:
    """Lists the open orders by due time; one that has none comes last, and is never late."""
    wants: dict[tuple[str, str], dict[str, int]] = {}
    for part in asked.parts:
        for wish in part.wishes:
            pieces = wants.setdefault((wish.due or UNDATED, wish.order), {})
            pieces[part.id] = pieces.get(part.id, 0) + wish.pieces
    left = {due: _count_left(hours, asked.now, due) for due in {due for due, _ in wants}}
    return [OpenOrder(order, left[due], pieces) for (due, order), pieces in sorted(wants.items())]


def _count_left(hours: Hours, now: str, due: str) -> float:
    """Counts the minutes of work until then; below zero, where it is over."""
    if due == UNDATED:
        return math.inf
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
        packing = self.each.get("packing", 0.0)
        self._packing = [sum(order.pieces.values()) * packing for order in self.orders]
        flat = [(need.pieces, part, need.order)
                for part, needs in enumerate(self.needs.values()) for need in needs]  # fmt: skip
        pieces, numbers, orders = zip(*flat, strict=True) if flat else ((), (), ())
        self._needs = (
            np.array(pieces, dtype=np.float64),
            np.array(numbers, dtype=np.int16),
            np.array(orders, dtype=np.int64),
        )

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
        laid = self.lay(queues)
        return self.follow_laid(laid, laid.routers)

    def lay(self, queues: Queues) -> "Laid":
        """Lays queues out in arrays, so that other turns of the same jobs are soon followed."""
        jobs = [job for jobs in queues.values() for job in jobs]
        rows = {part: n for n, part in enumerate(self.needs)}
        made = [
            [
                (rows[part], each * self.good[part])
                for part, each in job.makes.items()
                if part in rows
            ]
            for job in jobs
        ]
        places, routers = iter(range(len(jobs))), dict[str, list[int]]()
        for router, queue in queues.items():
            routers[router] = [next(places) for _ in queue]
        minutes = np.full((len(jobs), len(queues)), np.nan)
        for n, job in enumerate(jobs):
            for on in (*job.others, OnRouter(job.router, job.minutes)):
                minutes[n, list(queues).index(on.router)] = on.minutes
        return Laid(
            jobs=jobs,
            routers=routers,
            sheets=np.array([job.sheets for job in jobs], dtype=np.int64),
            minutes=minutes,
            pieces=np.array([float(sum(job.makes.values())) for job in jobs]),
            first=np.cumsum([0, *map(len, made)]),
            parts=np.array([row for makes in made for row, _ in makes], dtype=np.int16),
            good=np.array([pieces for makes in made for _, pieces in makes]),
        )

    def follow_laid(self, laid: "Laid", turns: Mapping[str, list[int]]) -> Course:
        """Follows laid jobs in these turns at each router."""
        jobs, at = self._bring(laid, turns)
        counts = laid.first[jobs + 1] - laid.first[jobs]
        ends = np.cumsum(counts)
        which = np.repeat(laid.first[jobs] - (ends - counts), counts) + np.arange(counts.sum())
        by_part = np.argsort(laid.parts[which], kind="stable")
        parts, at = laid.parts[which][by_part], np.repeat(at, counts)[by_part]
        there = np.cumsum(np.append(0.0, laid.good[which][by_part]))
        pieces, needed, orders = self._needs
        first, end = (np.searchsorted(parts, needed, side=side) for side in ("left", "right"))
        last = np.searchsorted(there, there[first] + pieces - NEAR) - 1
        ready = np.array(self._ready)
        came = np.append(at, NEVER)[np.where(last < end, last, len(at))]
        np.maximum.at(ready, orders, came)
        return self._pack(ready.tolist())

    def _bring(self, laid: "Laid", turns: Mapping[str, list[int]]) -> tuple[Counts, Minutes]:
        """Brings the sheets to the rack one after another: the job of each, minutes from now."""
        cut, begun = [np.zeros(0, dtype=np.int64)], [np.zeros(0)]
        for n, (router, queue) in enumerate(turns.items()):
            jobs = np.repeat(np.array(queue, dtype=np.int64), laid.sheets[queue])
            cut.append(jobs)
            begun.append(self.starts[router] + np.cumsum(laid.minutes[jobs, n]))
        jobs, at = np.concatenate(cut), np.concatenate(begun)
        order = np.argsort(at, kind="stable")
        jobs, at = jobs[order], at[order]
        pieces = laid.pieces[jobs]
        popped = _pass(at, pieces * self.each.get("popping", 0.0), self._popped)
        return jobs, _pass(popped, pieces * self.each.get("trimming", 0.0), self._trimmed)

    def _pack(self, ready: list[float]) -> Course:
        """Packs the orders: of those that have all their pieces, the one due first."""
        now, late, over, expected, orders = 0.0, 0, 0.0, 0.0, self.orders
        waiting: list[int] = []
        packed = [0.0] * len(ready)
        come = sorted(range(len(ready)), key=ready.__getitem__, reverse=True)
        while come or waiting:
            if not waiting:
                now = max(now, ready[come[-1]])
            while come and ready[come[-1]] <= now:
                heappush(waiting, come.pop())
            n = heappop(waiting)
            now += self._packing[n]
            packed[n] = now
            if (beyond := now - orders[n].due) > -SPREAD_MIN:
                expected += min(1.0, (beyond + SPREAD_MIN) / (2 * SPREAD_MIN))
                if beyond > 0:
                    late, over = late + 1, over + beyond
        return Course(expected, over, late, packed)


def _pass(come: Minutes, takes: Minutes, free: float) -> Minutes:
    """Passes what comes through a step, one after another, once the step is free."""
    ends = np.cumsum(takes)
    return np.maximum.accumulate(np.maximum(come, free) - (ends - takes)) + ends
