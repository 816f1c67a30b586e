"""Whose turn it is at each router, so that as many orders as can be are packed in time.

A batch stands in its queue by when the first order wants it. Where that makes orders late, other
turns are tried: what is late anyway or takes long waits, until what can still be in time is
through. On one machine that gives the fewest late (Moore and Hodgson 1968, from memory); with
several steps and parts it is tried out. Orders that are long overdue keep their turn for a share
of the day.
"""

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from random import Random

import numpy as np

from station.planning.flow import SPREAD_MIN, Counts, Job, Queues, ShopFlow
from station.planning.routers import LAST

# tries at most, and sheets and orders' parts followed in all of them: fewer leave more orders late
# in simulated shops, and four times as many no fewer
TRIES, EFFORT = 600, 250_000
OVERDUE_DAYS = 5.0  # worked days; an order that is late for longer waits for no other
# of the routers' time that such orders take first, where there are many: else a shop that is far
# behind is late for everybody for ever; of our own choice
OVERDUE_SHARE = 0.5
SEED = 1  # nothing depends on when it runs


def find_turns(flow: ShopFlow, queues: Queues, day: float) -> Queues:
    """Finds the turns with the fewest late orders; `day` are the minutes of a worked day.

    With them the routers of what is planned are chosen again: each goes where it then ends first.
    """
    search, dues = _TriedTurns(flow, queues, day), [order.due for order in flow.orders]
    best, turns, chance = search.laid.routers, list(range(len(dues))), Random(SEED)  # noqa: S311 - which is tried is no secret
    here = course = flow.follow_laid(search.laid, best)
    for _ in range(_count_tries(flow, queues)):
        late = [n for n in turns if here.packed[n] > dues[n] - SPREAD_MIN]
        if not late:
            break
        tried = _move(turns, late, chance)
        other = search.queue(tried)
        then = flow.follow_laid(search.laid, other)
        if then[:2] <= here[:2]:
            turns, here = tried, then
        if then[:2] < course[:2]:
            best, course = other, then
    return queues if best is search.laid.routers else search.tell(best)


class _TriedTurns:
    """The jobs of all queues, and what is known of them before turns are tried."""

    def __init__(self, flow: ShopFlow, queues: Queues, day: float) -> None:
        self.laid = flow.lay(queues)
        self.claims = self._claim(flow, queues)
        self.before = self._put_before(flow, day)
        self.free_in = dict(flow.starts)
        self.take = [self._list_minutes(job) for job in self.laid.jobs]

    def _claim(self, flow: ShopFlow, queues: Queues) -> Counts:
        """Lays out which jobs each order waits for: by orders and jobs, 1 or 0."""
        at = {job.name: n for n, job in enumerate(self.laid.jobs)}
        claims = np.zeros((len(flow.orders) + 1, len(self.laid.jobs)), dtype=np.int64)
        for order, names in enumerate(_give_out(flow, queues)):
            claims[order, [at[name] for name in names]] = 1
        claims[-1] = 1  # in the end somebody waits for every job
        return claims

    def _put_before(self, flow: ShopFlow, day: float) -> list[tuple[int, int]]:
        """Lists the jobs that wait for no other, each with its rank: those begun, then those for
        what is long overdue, as many as fit into its share of the day.
        """
        ranks = {n: -len(self.claims) for n, job in enumerate(self.laid.jobs) if job.begun}
        left = OVERDUE_SHARE * day * len(self.laid.routers)
        for order, open_ in enumerate(flow.orders):
            if open_.due >= -OVERDUE_DAYS * day:
                break
            for n in np.flatnonzero(self.claims[order]).tolist():
                if left > 0 and n not in ranks:
                    ranks[n] = order - len(flow.orders)
                    left -= self.laid.jobs[n].sheets * self.laid.jobs[n].minutes
        return list(ranks.items())

    @staticmethod
    def _list_minutes(job: Job) -> list[tuple[str, float]]:
        """Lists the routers that may take a job, each with the minutes of all its sheets."""
        if not job.others:
            return [(job.router, job.sheets * job.minutes)]
        return [(on.router, on.before + job.sheets * on.minutes) for on in job.others]

    def queue(self, turns: list[int]) -> dict[str, list[int]]:
        """Queues the jobs by the first order that waits for them, in these turns."""
        rank = self.claims[[*turns, -1]].argmax(axis=0)
        for n, first in self.before:
            rank[n] = first
        queues: dict[str, list[int]] = {router: [] for router in self.laid.routers}
        ends = self.free_in.copy()
        for n in np.argsort(rank, kind="stable").tolist():
            take = self.take[n]
            router, minutes = take[0]
            for other, others in take[1:]:
                if ends[other] + others < ends[router] + minutes:
                    router, minutes = other, others
            ends[router] += minutes
            queues[router].append(n)
        return queues

    def tell(self, places: Mapping[str, list[int]]) -> Queues:
        """Gives the jobs of these queues, each on its router."""
        return {
            router: [self._put(self.laid.jobs[n], router) for n in queue]
            for router, queue in places.items()
        }

    @staticmethod
    def _put(job: Job, router: str) -> Job:
        return next((job.move(on) for on in job.others if on.router == router), job)


def _count_tries(flow: ShopFlow, queues: Queues) -> int:
    sheets = sum(job.sheets for jobs in queues.values() for job in jobs)
    wanted = sum(len(order.pieces) for order in flow.orders)
    return min(TRIES, EFFORT // (1 + sheets + wanted))


def _move(turns: list[int], late: list[int], chance: Random) -> list[int]:
    """Moves one order: a late one to the end or ahead, or any to anywhere."""
    tried, what = turns.copy(), chance.random()
    order = chance.choice(late if what < 0.8 else turns)
    at = tried.index(order)
    tried.remove(order)
    if what < 0.5:
        tried.append(order)
    else:
        tried.insert(chance.randint(0, at if what < 0.8 else len(tried)), order)
    return tried


def _give_out(flow: ShopFlow, queues: Queues) -> list[list[str]]:
    """Gives the jobs to the orders as they stand: those that each waits for, by its place."""
    claims: list[list[str]] = [[] for _ in flow.orders]
    jobs = sorted(
        (job for jobs in queues.values() for job in jobs), key=lambda job: (not job.begun, job.by)
    )
    for part, needs in flow.needs.items():
        makers = [job for job in jobs if part in job.makes]
        there, at = 0.0, 0
        for need in needs:
            while there < need.pieces and at < len(makers):
                there += makers[at].sheets * makers[at].makes[part] * flow.good[part]
                at += 1
            claims[need.order] += [job.name for job in makers[:at]]
    return claims


def set_places(jobs: Sequence[Job], before: Sequence[Job]) -> dict[str, str]:
    """Sets each job's place in a queue that goes by due time, so that it is as listed.

    What is queued already only comes forward; `before` is how it stood. Gives the places of all
    that is not begun.
    """
    stood = {job.name: n for n, job in enumerate(before)}
    places: dict[str, str] = {}
    following, last = "", ""
    for job in reversed(jobs):
        if not job.begun and not job.planned:
            over = following and (job.by, stood[job.name]) > (following, stood[last])
            places[job.name] = following = _shift(following, -1) if over else job.by
            last = job.name
    ahead, waiting = "", [job for job in jobs if not job.begun]
    for n, job in enumerate(waiting):
        if job.planned:
            after = (places[other.name] for other in waiting[n:] if not other.planned)
            cap, place = next(after, ""), job.by if job.by >= ahead else _shift(ahead, 1)
            places[job.name] = _shift(cap, -1) if cap and place >= cap else place
        ahead = places[job.name]
    return places


def _shift(place: str, seconds: int) -> str:
    """Gives the place just before or behind another."""
    if place >= LAST:
        return place
    return (datetime.fromisoformat(place) + timedelta(seconds=seconds)).isoformat()
