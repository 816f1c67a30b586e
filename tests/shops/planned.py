"""Puts a simulated shop's morning before the planner, as its record shows it."""

from collections import Counter
from datetime import datetime, timedelta
from math import inf

from msgspec.structs import replace

from station.planning.learnt import find_service_of_marks
from station.planning.messages import (
    FileNow,
    MaterialNow,
    PartNow,
    Passage,
    PlanCutting,
    QueuedNow,
    RouterNow,
    Wish,
)
from station.planning.think import run
from tests.shops.days import STEPS, Floor
from tests.shops.judge import Plan, find_short_notice, observe_lead
from tests.shops.shop import DAY

FIRST = datetime(2026, 1, 5, 7)  # a Monday
SHEET = "ply"
SECONDS = 1.0  # as the program takes
LOADING = 5.0  # minutes of a sheet's; planning adds them itself, as a record tells running alone
SPARE = 0.75  # of what the marks ask for: sheets come whole, which fills the rack further


def plan(floor: Floor) -> Plan:
    """What the planner says on this morning."""
    told = run(set_service(floor, ask(floor)), lambda _stage, _share: None)
    releases = dict.fromkeys(b.release for b in told.blocked if b.release)
    return Plan(
        blocked=frozenset(b.part for b in told.blocked),
        releases=tuple(
            (r.file, r.sheets, r.router, read_time(r.by) if r.by else inf)
            for r in (*releases, *told.then)
            if r.router
        ),
        take_back=tuple(t.batch for t in told.take_back),
        forward=tuple((f.batch, read_time(f.by)) for f in told.forward),
        marks=tuple((m.part, m.should) for m in told.marks),
    )


def set_service(floor: Floor, asked: PlanCutting) -> PlanCutting:
    """Sets the service level as a shop does that wants less on its rack than its marks ask."""
    parts = tuple(replace(p, mark=round(SPARE * floor.shop.marks[p.id])) for p in asked.parts)
    return replace(asked, service=find_service_of_marks(replace(asked, parts=parts)))


def ask(floor: Floor) -> PlanCutting:
    """The morning as planning is asked for it."""
    shop = floor.shop
    return PlanCutting(
        now=tell_time(floor.day * DAY),
        lead_days=observe_lead(floor),
        short_notice=find_short_notice(floor),
        parts=tuple(tell_part(floor, part) for part in shop.parts),
        files=tuple(
            FileNow(
                id=f.name, name=f.name, material=SHEET, makes=f.makes,
                minutes={r: minutes - LOADING for r, minutes in f.minutes.items()},
            )
            for f in shop.files.values()
        ),
        routers=tuple(RouterNow(id=r, name=r, stopped=r in floor.stopped) for r in shop.routers),
        queued=tuple(
            QueuedNow(
                id=b.name, file=b.file, router=b.router, sheets=b.sheets,
                minutes=shop.files[b.file].minutes[b.router] - LOADING,
                makes=shop.files[b.file].makes,
                due="" if b.due == inf else tell_time(b.due), begun=b.begun,
            )
            for b in floor.list_queued()
        ),
        materials=(MaterialNow(id=SHEET, name=SHEET),),
        through={step: tuple(day[step] for day in floor.through) for step in STEPS[1:]},
        seconds=SECONDS,
    )  # fmt: skip


def tell_part(floor: Floor, part: str) -> PartNow:
    """A part as the record shows it."""
    coming = Counter(queue=floor.count_queued(part))
    coming["popping"] = sum(load.pieces[part] for load in floor.popping)
    coming["trimming"] = sum(load.pieces[part] for load in floor.trimming)
    return PartNow(
        id=part, name=part, mark=floor.marks[part], free=floor.rack[part],
        coming={stage: n for stage, n in coming.items() if n},
        wishes=tuple(Wish(o.name, tell_time(o.due), o.wants[part])
                     for o in floor.open if part in o.wants),
        use=tuple(day[part] for day in floor.use),
        passed={s: Passage(good=floor.good[s][part], lost=floor.gone[s][part]) for s in STEPS},
    )  # fmt: skip


def tell_time(minutes: float) -> str:
    """Minutes of work since the first morning, as a time: nobody works on Saturday and Sunday."""
    day, minute = divmod(minutes, DAY)
    weeks, weekday = divmod(int(day), 5)
    return (FIRST + timedelta(days=7 * weeks + weekday, minutes=minute)).isoformat()


def read_time(text: str) -> float:
    """The same, back again."""
    passed = datetime.fromisoformat(text) - FIRST
    weeks, weekday = divmod(passed.days, 7)
    return (weeks * 5 + weekday) * DAY + passed.seconds / 60
