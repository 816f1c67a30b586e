"""Gathers what planning thinks about from the shop as it stands: a view in, plain figures out."""

from collections.abc import Iterable
from datetime import date, timedelta
from typing import NamedTuple

from station.planning.messages import (
    FileNow,
    MaterialNow,
    PartNow,
    Passage,
    PlanCutting,
    QueuedNow,
    RouterNow,
    Stage,
    Wish,
)
from station.queries.batches import find_approved, find_hold, find_revision
from station.queries.pace import correct_router, count_minutes
from station.queries.routers import count_minutes_left, find_bed, list_routers
from station.queries.runs import list_between, list_runs
from station.queries.settings import find_shop
from station.queries.shortage import Standing, survey_parts
from station.queries.stock import count_in_store
from station.queries.underway import list_queue
from station.shop.facts import Batch, Bed, Bit, CutFile, Lot, Material, Revision, Router
from station.shop.moves import NO_PIECES
from station.shop.views import Passed, View

DAYS = 42  # of history that is looked at
MOST = 2000  # cut files, and lots of a material
LEAST_ON = 2  # days of a weekday that work was done on, until it counts as worked
USUAL = (0, 1, 2, 3, 4)  # worked days where nothing is known yet; Monday is 0

# what passes each step and what is lost in it, by kinds of place; the way back counts against it
GOOD = {
    ("cut", "popping"): "cut",
    ("popping", "trimming"): "popping",
    ("trimming", "rack"): "trimming",
    ("trimming", "packing"): "trimming",
    ("rework", "rack"): "trimming",
    ("rework", "packing"): "trimming",
}
LOST = {
    (place, end): step
    for place, step in (
        ("cut", "cut"),
        ("popping", "popping"),
        ("trimming", "trimming"),
        ("rework", "trimming"),
    )
    for end in ("spoiled", "missing")
}


class PartPast(NamedTuple):
    """What a part went through: pieces packed by day, pieces by step that went on or were lost."""

    packed: dict[str, int]
    good: dict[str, int]
    lost: dict[str, int]


def gather_plan(view: View, now: str) -> PlanCutting:
    """Gathers everything at once: orders, rack, work under way, files, routers, store, past."""
    shop, since = find_shop(view), date.fromisoformat(now[:10]) - timedelta(days=DAYS)
    past = view.passed(f"{since.isoformat()}T00", now[:13])
    days = _list_days(past, now[:10])
    parts = _learn_past(past)
    routers = list_routers(view)
    beds = {router.id: find_bed(view, router.id) for router in routers}
    corrected = {router.id: correct_router(view, router) for router in routers}
    return PlanCutting(
        now=now,
        day_starts=shop.day_starts,
        day_ends=shop.day_ends,
        weekdays=_find_weekdays(days),
        parts=tuple(_tell_part(s, parts.get(s.part.id), days) for s in survey_parts(view)),
        files=_list_files(view, corrected),
        routers=tuple(_tell_router(view, r, beds[r.id], now) for r in routers),
        queued=tuple(
            told
            for router in routers
            for batch in list_queue(view, router.id)
            if (told := _tell_batch(view, batch, beds[router.id], corrected[router.id]))
        ),
        materials=tuple(_tell_material(view, m) for m in view.shelf(Material, "all", MOST)),
    )


# --- what happened so far


def _list_days(past: Iterable[Passed], today: str) -> tuple[str, ...]:
    """Lists the days on which anything was packed or cut, before today: today is not over."""
    worked = {p.hour[:10] for p in past if p.to in ("pack", "popping") and p.part not in NO_PIECES}
    return tuple(sorted(worked - {today}))


def _find_weekdays(days: tuple[str, ...]) -> tuple[int, ...]:
    """Finds the days of the week that are worked on."""
    counts: dict[int, int] = {}
    for day in days:
        weekday = date.fromisoformat(day).weekday()
        counts[weekday] = counts.get(weekday, 0) + 1
    found = tuple(sorted(weekday for weekday, n in counts.items() if n >= LEAST_ON))
    return found or USUAL


def _learn_past(past: Iterable[Passed]) -> dict[str, PartPast]:
    found: dict[str, PartPast] = {}
    for p in past:
        if p.part in NO_PIECES:
            continue
        known = found.setdefault(p.part, PartPast({}, {}, {}))
        for frm, to, qty in ((p.frm, p.to, p.qty), (p.to, p.frm, -p.qty)):  # taken back: less
            if (frm, to) == ("packing", "pack"):
                known.packed[p.hour[:10]] = known.packed.get(p.hour[:10], 0) + qty
            if step := GOOD.get((frm, to)):
                known.good[step] = known.good.get(step, 0) + qty
            if step := LOST.get((frm, to)):
                known.lost[step] = known.lost.get(step, 0) + qty
    return found


def _tell_part(standing: Standing, past: PartPast | None, days: tuple[str, ...]) -> PartNow:
    part = standing.part
    past = past or PartPast({}, {}, {})
    stages: dict[Stage, int] = {stage: n for stage, n in standing.coming.items() if n}  # type: ignore[misc]
    return PartNow(
        id=part.id,
        name=part.name,
        mark=part.mark,
        free=standing.free,
        kept_back=standing.kept_back,
        coming=stages,
        wishes=tuple(Wish(t.order.id, t.order.due, t.pieces) for t in standing.takers),
        use=tuple(max(0, past.packed.get(day, 0)) for day in days),
        passed={
            step: Passage(good=max(0, past.good.get(step, 0)), lost=max(0, past.lost.get(step, 0)))
            for step in {*past.good, *past.lost}
        },
    )


# --- files, routers, sheets


def _list_files(view: View, corrected: dict[str, Router]) -> tuple[FileNow, ...]:
    """Lists the cut files that cut parts out and whose revision is approved."""
    found = []
    for cut_file in view.shelf(CutFile, "all", MOST):
        revision = find_approved(view, cut_file)
        if revision and cut_file.active and cut_file.work == "parts":
            found.append(_tell_file(view, cut_file, revision, corrected))
    return tuple(found)


def _tell_file(
    view: View, cut_file: CutFile, revision: Revision, corrected: dict[str, Router]
) -> FileNow:
    runs = list_runs(view, revision)
    return FileNow(
        id=cut_file.id,
        name=cut_file.name,
        material=revision.material,
        makes=revision.makes(),
        minutes={
            number: round(sum(count_minutes(run, router) for run in runs), 2)
            for number, router in corrected.items()
            if runs[0].takes(number)
        },
        bits_mm=tuple(bit.diameter_mm for bit in revision.bits),
    )


def _tell_router(view: View, router: Router, bed: Bed, now: str) -> RouterNow:
    inside = (view.get(Bit, bit) for _, bit in bed.bits)
    return RouterNow(
        id=router.id,
        name=router.name,
        stopped=bed.state == "stopped",
        free_in=round(max(0.0, count_minutes_left(bed, now)), 1) if bed.state == "cutting" else 0,
        bits_mm=tuple(bit.diameter_mm for bit in inside if bit and bit.state == "good"),
    )


def _tell_batch(view: View, batch: Batch, bed: Bed, corrected: Router) -> QueuedNow | None:
    revision = find_revision(view, batch)
    if revision is None:
        return None
    on_bed = bed.batch == batch.id and bool(bed.sheet) and bed.state != "free"
    between = len(list_between(view, batch.id)) if revision.runs else 0
    return QueuedNow(
        id=batch.id,
        file=batch.cut_file,
        router=batch.router,
        sheets=max(0, batch.sheets - batch.cut - on_bed),
        minutes=round(count_minutes(revision, corrected), 2),
        makes=revision.makes(),
        due=batch.due,
        begun=bool(batch.cut or between or bed.batch == batch.id),
        held=find_hold(view, batch.id) is not None,
        order=batch.order,
    )


def _tell_material(view: View, material: Material) -> MaterialNow:
    lots = view.shelf(Lot, material.id, MOST)
    sheets = sum(count_in_store(view, lot.id) for lot in lots) if lots else None
    return MaterialNow(id=material.id, name=material.name, sheets=sheets)
