"""Whose turn it is at each router, so that as many orders as can be are packed in time.

A batch stands in its queue by when the first order wants it. Where that makes orders late, other
turns are tried: what is late anyway or takes long waits, until what can still be in time is
through. On one machine that gives the fewest late (Moore and Hodgson 1968, from memory); with
several steps and parts it is tried out. An order that is long overdue keeps its turn.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta
from random import Random

from station.planning.flow import Job, Queues, ShopFlow
from station.planning.routers import LAST

# tries at most, and sheets and orders' parts followed in all of them: fewer leave more orders late
# in simulated shops, and four times as many no fewer
TRIES, EFFORT = 600, 400_000
OVERDUE_DAYS = 5.0  # worked days; an order that is late for longer waits for no other
SEED = 1  # nothing depends on when it runs


def find_turns(flow: ShopFlow, queues: Queues, day: float) -> Queues:
    """Finds the turns with the fewest late orders; `day` are the minutes of a worked day."""
    claims = _give_out(flow, queues)
    dues = [order.due for order in flow.orders]
    kept = sum(due < -OVERDUE_DAYS * day for due in dues)  # the first ones
    best, course = queues, flow.follow(queues)
    turns, chance = list(range(len(dues))), Random(SEED)  # noqa: S311 - which is tried is no secret
    here = course
    for _ in range(_count_tries(flow, queues)):
        late = [n for n in turns[kept:] if here.packed[n] > dues[n]]
        if not late:
            break
        tried = _move(turns, kept, late, chance)
        other = _queue(queues, claims, tried)
        then = flow.follow(other)
        if then[:2] <= here[:2]:
            turns, here = tried, then
        if then[:2] < course[:2]:
            best, course = other, then
    return best


def _count_tries(flow: ShopFlow, queues: Queues) -> int:
    sheets = sum(job.sheets for jobs in queues.values() for job in jobs)
    wanted = sum(len(order.pieces) for order in flow.orders)
    return min(TRIES, EFFORT // (1 + sheets + wanted))


def _move(turns: list[int], kept: int, late: list[int], chance: Random) -> list[int]:
    """Moves one order: a late one to the end or ahead, or any to anywhere."""
    tried, what = turns.copy(), chance.random()
    order = chance.choice(late if what < 0.8 else turns[kept:])
    at = tried.index(order)
    tried.remove(order)
    if what < 0.5:
        tried.append(order)
    else:
        tried.insert(chance.randint(kept, at if what < 0.8 else len(tried)), order)
    return tried


def _queue(queues: Queues, claims: Sequence[Sequence[str]], turns: list[int]) -> Queues:
    """Queues the jobs by the first order that waits for them, in these turns."""
    rank: dict[str, int] = {}
    for turn, order in enumerate(turns):
        for name in claims[order]:
            rank.setdefault(name, turn)
    last = len(turns)
    return {
        router: sorted(jobs, key=lambda job: (not job.begun, rank.get(job.name, last)))
        for router, jobs in queues.items()
    }


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
