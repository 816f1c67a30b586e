"""What to order: sheets before the store is empty, bits before the last ones are worn.

How many sheets and metres a worked day takes follows from the parts that are used, cut from the
files that make them with the fewest minutes. Where nobody has entered how long an order takes, a
usual time is taken and said.
"""

import math
from collections.abc import Mapping

from station.planning.hours import Hours
from station.planning.learnt import PartLearnt
from station.planning.messages import BitsToOrder, PlanCutting, ToOrder
from station.planning.routers import LOAD_MIN
from station.planning.sheets import SheetFile, count_sheets

AHEAD_DAYS = 20.0  # worked days that an order lasts; of our own choice
SPARE_DAYS = 5.0  # worked days before the last moment from which on it is told
USUAL_LEAD = 5  # worked days; common practice, no source


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
    """Lists the sheets to order soon, the most urgent first; `left` are those in the store.

    `a_day` are the sheets of each cut file that a worked day takes.
    """
    used: dict[str, float] = {}
    found = []
    for file in asked.files:
        used[file.material] = used.get(file.material, 0.0) + a_day.get(file.id, 0.0)
    for material in asked.materials:
        taken = used.get(material.id, 0.0)
        if material.id not in left or not taken:
            continue
        lead, lasts = material.lead_days or USUAL_LEAD, left[material.id] / taken
        if lasts >= lead + SPARE_DAYS:
            continue
        sheets = math.ceil(taken * (lead + AHEAD_DAYS) - left[material.id])
        if material.pack:
            sheets = math.ceil(sheets / material.pack) * material.pack
        one = ToOrder(
            material=material.id,
            name=material.name,
            sheets=sheets,
            by=_find_day(asked, lasts - lead, hours),
            lasts=round(lasts, 1),
            lead_days=lead,
            lead_known=bool(material.lead_days),
            a_day=round(taken, 2),
        )
        found.append(one)
    return tuple(sorted(found, key=lambda o: (o.by, o.lasts, o.material)))


def _find_day(asked: PlanCutting, days: float, hours: Hours) -> str:
    """Finds the day after so many worked days from now; today where there is no time left."""
    return hours.add_minutes(asked.now, max(0.0, days) * hours.minutes)[:10]


def list_bits_to_order(
    asked: PlanCutting, a_day: Mapping[str, float], hours: Hours
) -> tuple[BitsToOrder, ...]:
    """Lists the bits to order soon, the most urgent first; `a_day` as for the sheets."""
    metres: dict[float, float] = {}
    for file in asked.files:
        for diameter, cut in file.cut_m:
            metres[diameter] = metres.get(diameter, 0.0) + cut * a_day.get(file.id, 0.0)
    found = []
    for bits in asked.bits:
        cut = metres.get(bits.diameter_mm, 0.0)
        if not cut or bits.life_m <= 0:
            continue
        lasts = bits.left_m / cut
        if lasts >= USUAL_LEAD + SPARE_DAYS:
            continue
        lacking = cut * (USUAL_LEAD + AHEAD_DAYS) - bits.left_m
        one = BitsToOrder(
            diameter_mm=bits.diameter_mm,
            bits=math.ceil(lacking / bits.life_m),
            by=_find_day(asked, lasts - USUAL_LEAD, hours),
            lasts=round(lasts, 1),
            lead_days=USUAL_LEAD,
            a_day_m=round(cut, 1),
        )
        found.append(one)
    return tuple(sorted(found, key=lambda o: (o.by, o.lasts, o.diameter_mm)))
