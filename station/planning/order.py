"""What to order: sheets before the store is empty, bits before the last are worn, mailers.

How many sheets and metres a worked day takes follows from the parts that are used, cut from the
files that make them with the fewest minutes. What is on its way counts as there. Where nobody has
entered how long an order takes, a usual time is taken and said.
"""

import math
from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

from station.planning.hours import Hours
from station.planning.learnt import PartLearnt
from station.planning.messages import Coming, PlanCutting, ToOrder
from station.planning.routers import LOAD_MIN
from station.planning.sheets import SheetFile, count_sheets

AHEAD_DAYS = 20.0  # worked days that an order lasts; of our own choice
SPARE_DAYS = 5.0  # worked days before the last moment from which on it is told
USUAL_LEAD = 5  # worked days; common practice, no source


class BuyableNow(NamedTuple):
    """Something that is bought: how much of it is there, and how much a worked day takes.

    `there` counts in ones as they are bought, a bit that is half worn as a half; `good` counts
    what the mark is held against.
    """

    of: Literal["material", "bit_size", "mailer"]
    id: str
    name: str
    there: float
    good: int
    a_day: float
    lead_days: int
    pack: int
    price: float
    coming: int
    mark: int = 0
    diameter_mm: float = 0.0  # of bits


def count_sheets_a_day(asked: PlanCutting, parts: Mapping[str, PartLearnt]) -> dict[str, float]:
    """Counts the sheets of each cut file that a worked day takes, as far as that can be told."""
    need = {
        part: math.ceil(known.use.mean * AHEAD_DAYS / known.mean)
        for part, known in parts.items()
        if known.use
    }
    files = tuple(
        SheetFile(f.id, min(f.minutes.values()) + LOAD_MIN, f.makes)
        for f in asked.files
        if f.minutes
    )
    found = count_sheets(files, need, seconds=asked.seconds / 4)
    return {file: sheets / AHEAD_DAYS for file, sheets in found.counts.items()}


def list_to_order(
    asked: PlanCutting, a_day: Mapping[str, float], left: Mapping[str, int], hours: Hours
) -> tuple[ToOrder, ...]:
    """Lists what to order soon, the most urgent first; `left` are the sheets in the store.

    `a_day` are the sheets of each cut file that a worked day takes.
    """
    supplies = (
        *_list_sheets(asked, a_day, left),
        *_list_bits(asked, a_day),
        *_list_mailers(asked),
    )
    found = filter(None, (_order(asked, supply, hours) for supply in supplies))
    return tuple(sorted(found, key=lambda o: (o.by, _lasts(o), o.of, o.id, o.diameter_mm)))


def _lasts(order: ToOrder) -> float:
    return math.inf if order.lasts is None else order.lasts


def _list_sheets(
    asked: PlanCutting, a_day: Mapping[str, float], left: Mapping[str, int]
) -> Iterator[BuyableNow]:
    """Lists the sheets of the store, as far as they are counted."""
    used: dict[str, float] = {}
    for file in asked.files:
        used[file.material] = used.get(file.material, 0.0) + a_day.get(file.id, 0.0)
    for m in asked.materials:
        if m.id in left:
            there, each_day = left[m.id], used.get(m.id, 0.0)
            yield BuyableNow(
                of="material", id=m.id, name=m.name, there=there, good=there, a_day=each_day,
                lead_days=m.lead_days, pack=m.pack, price=m.price, coming=_count(m.coming),
            )  # fmt: skip


def _list_bits(asked: PlanCutting, a_day: Mapping[str, float]) -> Iterator[BuyableNow]:
    """Lists the bits by diameter: a new one lasts as many metres as its life says."""
    metres: dict[float, float] = {}
    for file in asked.files:
        for diameter, cut in file.cut_m:
            metres[diameter] = metres.get(diameter, 0.0) + cut * a_day.get(file.id, 0.0)
    for b in asked.bits:
        if b.life_m > 0:
            there, each_day = b.left_m / b.life_m, metres.get(b.diameter_mm, 0.0) / b.life_m
            yield BuyableNow(
                of="bit_size", id=b.size, name=b.name, diameter_mm=b.diameter_mm, there=there,
                good=b.bits, a_day=each_day, mark=b.mark, lead_days=b.lead_days, pack=b.pack,
                price=b.price, coming=_count(b.coming),
            )  # fmt: skip


def _list_mailers(asked: PlanCutting) -> Iterator[BuyableNow]:
    for m in asked.mailers:
        yield BuyableNow(
            of="mailer", id=m.id, name=m.name, there=m.left, good=m.left, a_day=m.a_day,
            mark=m.mark, lead_days=m.lead_days, pack=m.pack, price=m.price,
            coming=_count(m.coming),
        )  # fmt: skip


def _count(coming: tuple[Coming, ...]) -> int:
    return sum(one.pieces for one in coming)


def _order(asked: PlanCutting, supply: BuyableNow, hours: Hours) -> ToOrder | None:
    """Orders what will not last until an order could be there, or lies below its minimum."""
    lead = supply.lead_days or USUAL_LEAD
    there = supply.there + supply.coming
    lasts = there / supply.a_day if supply.a_day else None
    low = supply.mark - supply.good - supply.coming
    ends = lasts is not None and lasts < lead + SPARE_DAYS
    if not ends and low <= 0:
        return None
    quantity = max(low, math.ceil(supply.a_day * (lead + AHEAD_DAYS) - there))
    if supply.pack:
        quantity = math.ceil(quantity / supply.pack) * supply.pack
    spare = 0.0 if low > 0 or lasts is None else lasts - lead
    return ToOrder(
        of=supply.of,
        id=supply.id,
        name=supply.name,
        quantity=quantity,
        by=hours.add_minutes(asked.now, max(0.0, spare) * hours.minutes)[:10],
        lasts=None if lasts is None else round(lasts, 1),
        lead_days=lead,
        lead_known=bool(supply.lead_days),
        expected=hours.add_minutes(asked.now, lead * hours.minutes)[:10],
        a_day=round(supply.a_day, 2),
        diameter_mm=supply.diameter_mm,
        coming=supply.coming,
        price=supply.price,
    )
