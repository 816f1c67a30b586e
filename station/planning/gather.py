"""Gathers what planning thinks about from the shop as it stands: a view in, plain figures out."""

from itertools import islice
from statistics import quantiles

from station.planning.hours import Hours
from station.planning.messages import (
    BitsNow,
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
from station.planning.past import PartPast, ShopPast
from station.queries.batches import find_approved, find_hold, find_revision
from station.queries.pace import correct_router, count_minutes
from station.queries.routers import count_metres_left, count_minutes_left, find_bed, list_routers
from station.queries.runs import list_between, list_runs
from station.queries.settings import find_shop
from station.queries.shortage import Standing, survey_parts
from station.queries.stock import count_in_store
from station.queries.underway import list_queue
from station.shop.facts import Batch, Bed, Bit, CutFile, Lot, Material, Revision, Router, Slip
from station.shop.views import View

MOST = 2000  # cut files, lots of a material, sheets of a router's day
LEAD_DAYS, LEAD_MOST, LEAD_LEAST = (
    5,
    40,
    5,
)  # days and batches that are looked at; batches it takes
USUAL_LEAD = 2.0  # worked days from a release to the rack, until it is observed; our own choice
SHORTEST_LEAD = 0.5
LEAST_SERVICE, MOST_SERVICE = (
    0.5,
    0.995,
)  # below it chance would do as well; above, all would lie there


def gather_plan(view: View, now: str, past: ShopPast) -> PlanCutting:
    """Gathers everything at once: orders, rack, work under way, files, routers, store."""
    shop = find_shop(view)
    routers = list_routers(view)
    beds = {router.id: find_bed(view, router.id) for router in routers}
    corrected = {router.id: correct_router(view, router) for router in routers}
    hours = Hours(shop.day_starts, shop.day_ends, past.weekdays)
    return PlanCutting(
        now=now,
        service=_share(shop.service_percent, LEAST_SERVICE, MOST_SERVICE),
        short_notice=_share(shop.short_notice_percent, 0.0, 1.0),
        lead_days=_observe_lead(view, routers, past.days, hours),
        day_starts=shop.day_starts,
        day_ends=shop.day_ends,
        weekdays=past.weekdays,
        parts=tuple(_tell_part(standing, past) for standing in survey_parts(view)),
        files=_list_files(view, corrected),
        routers=tuple(_tell_router(view, r, beds[r.id], now) for r in routers),
        queued=tuple(
            told
            for router in routers
            for batch in list_queue(view, router.id)
            if (told := _tell_batch(view, batch, beds[router.id], corrected[router.id]))
        ),
        materials=tuple(_tell_material(view, m) for m in view.shelf(Material, "all", MOST)),
        bits=_list_bits(view, routers),
    )


def _share(percent: float, least: float, most: float) -> float:
    """Gives a typed percentage as a share that can be reckoned with."""
    return min(most, max(least, percent / 100))


def _observe_lead(
    view: View, routers: tuple[Router, ...], days: tuple[str, ...], hours: Hours
) -> float:
    """Observes in how many worked days three of four batches were on the rack, once released."""
    slips = (
        slip
        for day in reversed(days[-LEAD_DAYS:])
        for router in routers
        for slip in view.shelf(Slip, f"cut/{router.id}/{day}", MOST)
    )
    took = []
    for number in islice(dict.fromkeys(slip.batch for slip in slips), LEAD_MOST):
        batch, last = view.get(Batch, number), view.last(f"batch/{number}", "put_on_rack")
        if batch and batch.released and last and not last.undone:
            took.append(hours.count_days(batch.released, last.act.at))
    if len(took) < LEAD_LEAST:
        return USUAL_LEAD
    return round(max(SHORTEST_LEAD, quantiles(took, n=4)[2]), 2)


def _tell_part(standing: Standing, shop: ShopPast) -> PartNow:
    part = standing.part
    past = shop.parts.get(part.id) or PartPast({}, {}, {})
    stages: dict[Stage, int] = {stage: n for stage, n in standing.coming.items() if n}  # type: ignore[misc]
    return PartNow(
        id=part.id,
        name=part.name,
        mark=part.mark,
        free=standing.free,
        kept_back=standing.kept_back,
        coming=stages,
        wishes=tuple(Wish(t.order.id, t.order.due, t.pieces) for t in standing.takers),
        use=tuple(max(0, past.packed.get(day, 0)) for day in shop.days),
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
        cut_m=tuple((b.diameter_mm, round(b.cut_mm / 1000, 2)) for run in runs for b in run.bits),
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
    return MaterialNow(
        id=material.id,
        name=material.name,
        sheets=sheets,
        lead_days=material.lead_days,
        pack=material.pack_sheets,
    )


def _list_bits(view: View, routers: tuple[Router, ...]) -> tuple[BitsNow, ...]:
    """Lists the bits by diameter; of a worn or broken one the life tells what a new one lasts."""
    shelves = ("good", "worn", "broken", *(f"router/{router.id}" for router in routers))
    by_size: dict[float, list[Bit]] = {}
    for shelf in shelves:
        for bit in view.shelf(Bit, shelf, MOST):
            by_size.setdefault(bit.diameter_mm, []).append(bit)
    found = []
    for diameter, bits in sorted(by_size.items()):
        left = [max(0.0, count_metres_left(view, b)) for b in bits if b.state == "good"]
        found.append(
            BitsNow(diameter_mm=diameter, bits=len(left), left_m=round(sum(left), 1),
                    life_m=min(b.life_m for b in bits))
        )  # fmt: skip
    return tuple(found)
