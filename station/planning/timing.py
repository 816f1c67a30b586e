"""When each release starts and ends, and its place in its queue, once all turns are known."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from msgspec.structs import replace

from station.planning.flow import Job, OnRouter, Queues, ShopFlow
from station.planning.hours import Hours
from station.planning.learnt import PartLearnt
from station.planning.messages import FileNow, PlanCutting, QueuedNow, Release
from station.planning.routers import BIT_MIN, LAST, LOAD_MIN, RouterLoad, is_bit_missing
from station.planning.turns import find_turns, set_places
from station.planning.waiting import Wanted


class TimedTurns(NamedTuple):
    """The releases with their routers, places and times, and what comes of them."""

    releases: list[Release]
    places: dict[str, str]  # of the batches that are queued
    busy: float  # minutes until the last router that works is through


def take_turns(
    asked: PlanCutting,
    parts: Mapping[str, PartLearnt],
    hours: Hours,
    releases: Sequence[Release],
    wanted: Mapping[str, Wanted],
) -> TimedTurns:
    """Gives the releases their routers, places and times, and the batches queued their places.

    `wanted` are the queued batches that orders wait for.
    """
    queues = _queue(asked, releases, wanted)
    turns = find_turns(ShopFlow(asked, parts, hours), queues, hours.minutes)
    places = {job.name: job.by for jobs in queues.values() for job in jobs}
    for router, jobs in turns.items():
        if jobs != queues[router]:
            places |= set_places(jobs, queues[router])
    starts = {router.id: router.free_in for router in asked.routers}
    timed = {
        job.name: (job, behind, at)
        for router, jobs in turns.items()
        for behind, (job, at) in enumerate(_list_starts(jobs, starts[router]))
    }
    beside = _Beside(asked, hours, turns, places)
    return TimedTurns(
        [
            beside.tell(_time(asked, hours, release, places[_name(n)], *timed[_name(n)]))
            if release.router
            else release
            for n, release in enumerate(releases)
        ],
        places,
        beside.load.count_busy(),
    )


class _Beside:
    """The other routers of each release, with their queues as they are planned."""

    def __init__(
        self, asked: PlanCutting, hours: Hours, turns: Queues, places: Mapping[str, str]
    ) -> None:
        self.files = {file.id: file for file in asked.files}
        self.now, self.hours = asked.now, hours
        self.load = RouterLoad(asked.routers, ())
        for router, jobs in turns.items():
            for job in jobs:
                self.load.queues[router].append(_make_queued(job, places.get(job.name, "")))

    def tell(self, release: Release) -> Release:
        """Tells where else a release would end first, and when."""
        slots = self.load.list_slots(self.files[release.file], release.sheets, release.by or LAST)
        other = next((slot for slot in slots if slot.router.id != release.router), None)
        if other is None:
            return release
        ends = self.hours.add_minutes(self.now, other.ends_in)
        return replace(release, next_router=other.router.name, next_ends=ends)


def _make_queued(job: Job, place: str) -> QueuedNow:
    """Makes a job one of a router's queue again, at its place."""
    return QueuedNow(
        id=job.name, file="", router=job.router, sheets=job.sheets,
        minutes=job.minutes - LOAD_MIN, makes={}, due=place, begun=job.begun,
    )  # fmt: skip


def _queue(
    asked: PlanCutting, releases: Sequence[Release], wanted: Mapping[str, Wanted]
) -> dict[str, list[Job]]:
    """Queues what is queued and what is planned, each by when the first order wants it."""
    queues: dict[str, list[Job]] = {router.id: [] for router in asked.routers}
    for b in asked.queued:
        if b.router in queues and b.sheets and not b.held:
            due, minutes = b.due or LAST, b.minutes + LOAD_MIN
            wish = wanted[b.id].wish.due if b.id in wanted and not b.begun else LAST
            makes = {} if b.order else b.makes  # it brings the others nothing
            job = Job(b.id, b.router, b.sheets, minutes, makes, min(due, wish),
                      begun=b.begun, forward=wish < due)  # fmt: skip
            queues[b.router].append(job)
    files = {file.id: file for file in asked.files}
    for n, r in enumerate(releases):
        if r.router:
            file, minutes = files[r.file], r.minutes / r.sheets + LOAD_MIN
            job = Job(_name(n), r.router, r.sheets, minutes, file.makes, r.by or LAST,
                      planned=True, others=_list_others(asked, file))  # fmt: skip
            queues[r.router].append(job)
    return {router: sorted(jobs, key=_rank) for router, jobs in queues.items()}


def _list_others(asked: PlanCutting, file: FileNow) -> tuple[OnRouter, ...]:
    """Lists the routers that may take a file, in their order."""
    return tuple(
        OnRouter(r.id, file.minutes[r.id] + LOAD_MIN, BIT_MIN * is_bit_missing(r, file))
        for r in sorted(asked.routers, key=lambda r: r.id)
        if r.id in file.minutes and not r.stopped
    )


def _rank(job: Job) -> tuple[bool, str, bool]:
    """Ranks a job in its queue; what comes forward stands behind what is due with it."""
    return not job.begun, job.by, job.forward


def _name(number: int) -> str:
    """Names a release by its number, as no batch is called."""
    return f"+{number}"


def _list_starts(jobs: Sequence[Job], at: float) -> Iterator[tuple[Job, float]]:
    """Lists the jobs of a queue with the minutes until each begins."""
    for job in jobs:
        yield job, at
        at += job.sheets * job.minutes


def _time(
    asked: PlanCutting,
    hours: Hours,
    release: Release,
    place: str,
    job: Job,
    behind: int,
    starts_in: float,
) -> Release:
    """Writes its router and turn into a release."""
    router = next(r for r in asked.routers if r.id == job.router)
    file = next(f for f in asked.files if f.id == release.file)
    missing = is_bit_missing(router, file)
    starts_in += BIT_MIN * missing
    ends_in = starts_in + job.sheets * job.minutes
    return replace(
        release,
        router=router.id,
        router_name=router.name,
        minutes=job.sheets * file.minutes[router.id],
        bit_missing=missing,
        by="" if place == LAST else place,
        behind=behind,
        starts=hours.add_minutes(asked.now, starts_in),
        ends=hours.add_minutes(asked.now, ends_in),
    )
