"""Gathers what planning thinks about from the shop as it stands: a view in, plain figures out."""

import math
from collections import Counter
from collections.abc import Mapping
from datetime import date, timedelta
from itertools import islice
from statistics import fmean, quantiles, stdev

from msgspec.structs import replace

from station.planning.hours import Hours
from station.planning.messages import (
    BitsNow,
    Coming,
    FileNow,
    LeadSeen,
    MailersNow,
    MaterialNow,
    PartNow,
    Passage,
    PlanCutting,
    QueuedNow,
    RouterNow,
    Stage,
    Wish,
)
from station.planning.past import PartPast, ShopPast, find_day, find_night, list_dates
from station.queries.batches import (
    find_approved,
    find_hold,
    find_order,
    find_revision,
    is_approved,
)
from station.queries.buying import (
    count_still_expected,
    find_bit_size,
    list_coming,
    list_pushes,
)
from station.queries.pace import correct_router, count_minutes
from station.queries.routers import count_metres_left, count_minutes_left, find_bed, list_routers
from station.queries.runs import list_between, list_runs
from station.queries.settings import find_shop
from station.queries.shelf import count_lacking_ahead, count_spare_ahead
from station.queries.shortage import Standing, Taken, survey_parts
from station.queries.stock import count_in_store
from station.queries.supplies import count_left
from station.queries.underway import list_queue
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    Concern,
    CutFile,
    Lot,
    Mailer,
    Material,
    Pack,
    Product,
    RackPlace,
    Revision,
    Router,
    Slip,
)
from station.shop.views import View

MOST = 2000  # cut files, lots of a material, sheets of a router's day
LEAD_DAYS, LEAD_MOST, LEAD_LEAST = (
    5,
    40,
    5,
)  # days and batches that are looked at; batches it takes
USUAL_LEAD = 2.0  # worked days from a release to the rack, until it is observed; our own choice
SHORTEST_LEAD = 0.5
USUAL_SHARE = 0.9  # of the batches, whose way to the rack tells how it varies; our own choice
PUSH_DAYS = 7.0  # worked days before a push begins from which on it is cut for; our own choice
PUSH_LOOK = 30  # days that are looked ahead for one
MAILER_DAYS = 5  # worked days that packs are counted of
LEAST_SERVICE, MOST_SERVICE = (
    0.5,
    0.995,
)  # below it chance would do as well; above, all would lie there


def gather_plan(view: View, now: str, past: ShopPast) -> PlanCutting:
    """Gathers everything at once: orders, rack, work under way, files, routers, store."""
    shop = find_shop(view)
    routers = list_routers(view)
    corrected = {router.id: correct_router(view, router) for router in routers}
    standing, queued = gather_queues(view, now)
    closed = tuple(day[:10] for day in shop.closed)  # some are written with a time
    hours = Hours(shop.day_starts, shop.day_ends, past.weekdays, shop.breaks, closed)
    took = _observe_leads(view, routers, past.days, hours)
    return PlanCutting(
        now=now,
        service=_share(shop.service_percent, LEAST_SERVICE, MOST_SERVICE),
        short_notice=_share(shop.short_notice_percent, 0.0, 1.0),
        lead_days=_find_usual_lead(took),
        lead_seen=_find_lead_seen(took),
        day_starts=shop.day_starts,
        day_ends=shop.day_ends,
        weekdays=past.weekdays,
        parts=_list_parts(view, past, _count_besides(view, now, hours)),
        files=_list_files(view, corrected),
        routers=standing,
        queued=queued,
        materials=tuple(_tell_material(view, m) for m in view.shelf(Material, "all", MOST)),
        bits=_list_bits(view, routers),
        mailers=_list_mailers(view, past.days),
        breaks=shop.breaks,
        closed=closed,
        through={step: past.list_through(step) for step in ("popping", "trimming")},
    )


def gather_queues(view: View, now: str) -> tuple[tuple[RouterNow, ...], tuple[QueuedNow, ...]]:
    """Gathers the routers as they stand, and the batches in their queues."""
    beds = {router.id: find_bed(view, router.id) for router in list_routers(view)}
    queued = (
        _tell_batch(view, batch, beds[router.id], corrected)
        for router in list_routers(view)
        for corrected in (correct_router(view, router),)
        for batch in list_queue(view, router.id)
    )
    standing = (_tell_router(view, r, beds[r.id], now) for r in list_routers(view))
    return tuple(standing), tuple(filter(None, queued))


def _share(percent: float, least: float, most: float) -> float:
    """Gives a typed percentage as a share that can be reckoned with."""
    return min(most, max(least, percent / 100))


def _observe_leads(
    view: View, routers: tuple[Router, ...], days: tuple[str, ...], hours: Hours
) -> list[float]:
    """Observes in how many worked days batches were on the rack, once released.

    None where there are too few to tell.
    """
    newest, night = days[-LEAD_DAYS:], find_night(view)
    slips = (
        slip
        for date_ in list_dates(newest, night)
        for router in routers
        for slip in view.shelf(Slip, f"cut/{router.id}/{date_}", MOST)
        if find_day(slip.at, night) in newest
    )
    took = []
    for number in islice(dict.fromkeys(slip.batch for slip in slips), LEAD_MOST):
        batch, last = view.get(Batch, number), view.last(f"batch/{number}", "put_on_rack")
        if batch and batch.released and last and not last.undone:
            took.append(hours.count_days(batch.released, last.act.at))
    return took if len(took) >= LEAD_LEAST else []


def _find_usual_lead(took: list[float]) -> float:
    """Finds in how many worked days three of four batches were on the rack."""
    return round(max(SHORTEST_LEAD, quantiles(took, n=4)[2]), 2) if took else USUAL_LEAD


def _find_lead_seen(took: list[float]) -> LeadSeen | None:
    """Finds how long they took in the middle, and how much that varied.

    The slowest tenth is left out: a batch that was held for weeks tells nothing of the others.
    """
    if not took:
        return None
    usual = sorted(took)[: math.ceil(USUAL_SHARE * len(took))]
    return LeadSeen(round(max(SHORTEST_LEAD, fmean(usual)), 2), round(stdev(usual), 2))


def _add_days(now: str, days: int) -> str:
    return (date.fromisoformat(now[:10]) + timedelta(days=days)).isoformat()


def _count_besides(view: View, now: str, hours: Hours) -> dict[str, int]:
    """Counts the pieces of each part for packs ahead, and for own pushes that begin soon."""
    besides, spare = dict(count_lacking_ahead(view)), dict(count_spare_ahead(view))
    for push in list_pushes(view, now[:10], _add_days(now, PUSH_LOOK)):
        product = view.get(Product, push.product)
        if product is None or hours.count_days(now, f"{push.begins[:10]}T00:00:00") > PUSH_DAYS:
            continue
        expected = count_still_expected(view, push, now[:10])
        packed = min(expected, spare.get(product.id, 0))
        spare[product.id] = spare.get(product.id, 0) - packed
        sets = expected - packed
        for part, each in product.parts:
            besides[part] = besides.get(part, 0) + each * sets
    return besides


def _list_parts(view: View, past: ShopPast, besides: Mapping[str, int]) -> tuple[PartNow, ...]:
    """Lists the parts as they stand; a recount that nobody has settled is told."""
    unsettled = Counter(c.about for c in view.shelf(Concern, "open", MOST) if c.what == "recount")
    return tuple(
        _tell_part(s, past, besides, view.get(RackPlace, s.part.rack), unsettled)
        for s in survey_parts(view)
    )


def _tell_part(
    standing: Standing,
    shop: ShopPast,
    besides: Mapping[str, int],
    place: RackPlace | None,
    unsettled: Mapping[str, int],
) -> PartNow:
    part = standing.part
    past = shop.parts.get(part.id) or PartPast({}, {}, {})
    stages: dict[Stage, int] = {stage: n for stage, n in standing.coming.items() if n}  # type: ignore[misc]
    return PartNow(
        id=part.id,
        name=part.name,
        mark=part.mark,
        free=standing.free,
        kept_back=standing.kept_back,
        besides=besides.get(part.id, 0),
        room=place.room if place else 0,
        unsettled=unsettled[part.key],
        coming=stages,
        wishes=_list_wishes(standing.takers),
        own=_list_wishes(standing.own),
        use=tuple(max(0, past.packed.get(day, 0)) for day in shop.days),
        passed={
            step: Passage(good=max(0, past.good.get(step, 0)), lost=max(0, past.lost.get(step, 0)))
            for step in {*past.good, *past.lost}
        },
    )


def _list_wishes(takers: tuple[Taken, ...]) -> tuple[Wish, ...]:
    return tuple(Wish(taken.order.id, taken.order.due, taken.pieces) for taken in takers)


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
    lying = list_between(view, batch.id) if revision.runs else ()
    between = sum(not (on_bed and slip.sheet == bed.sheet) for slip in lying)
    return QueuedNow(
        id=batch.id,
        file=batch.cut_file,
        router=batch.router,
        sheets=max(0, batch.sheets - batch.cut - on_bed),
        minutes=round(count_minutes(revision, corrected), 2),
        makes=revision.makes(),
        material=revision.material,
        between=between,
        due=batch.due,
        begun=bool(batch.cut or lying or bed.batch == batch.id),
        held=find_hold(view, batch.id) is not None or not is_approved(view, batch),
        order=order.id if (order := find_order(view, batch)) else "",
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
        price=material.price,
        coming=_list_coming(view, material=material.id),
    )


def _list_coming(view: View, **thing: str) -> tuple[Coming, ...]:
    """Lists what is on its way of a material, a bit size or a mailer."""
    ((name, number),) = thing.items()
    return tuple(
        Coming(p.expected[:10], p.coming) for p in list_coming(view) if getattr(p, name) == number
    )


def _list_mailers(view: View, days: tuple[str, ...]) -> tuple[MailersNow, ...]:
    """Lists the mailers that are counted, with the packs that left on the newest worked days."""
    counted = [
        (m, left)
        for m in view.shelf(Mailer, "all", MOST)
        if m.active and ((left := count_left(view, m.id)) or m.mark)
    ]
    newest, night = days[-MAILER_DAYS:] if counted else (), find_night(view)
    packs = Counter(
        pack.mailer
        for date_ in list_dates(newest, night)
        for pack in view.shelf(Pack, f"shipped/{date_}", MOST)
        if find_day(pack.left, night) in newest
    )
    return tuple(
        MailersNow(
            id=m.id, name=m.name, left=left, a_day=packs[m.id] / max(1, len(newest)),
            mark=m.mark, lead_days=m.lead_days, pack=m.pack, price=m.price,
            coming=_list_coming(view, mailer=m.id),
        )
        for m, left in counted
    )  # fmt: skip


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
            _add_buying(view, BitsNow(diameter_mm=diameter, bits=len(left),
                                      left_m=round(sum(left), 1),
                                      life_m=min(b.life_m for b in bits)))
        )  # fmt: skip
    return tuple(found)


def _add_buying(view: View, bits: BitsNow) -> BitsNow:
    """Adds how bits of this diameter are bought, where somebody has entered it."""
    size = find_bit_size(view, bits.diameter_mm)
    if size is None:
        return bits
    return replace(
        bits,
        size=size.id,
        name=size.name,
        mark=size.mark,
        lead_days=size.lead_days,
        pack=size.pack,
        price=size.price,
        coming=_list_coming(view, bit_size=size.id),
    )
