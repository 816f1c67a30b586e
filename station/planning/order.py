"""What to order: sheets, before the store is empty.

How many sheets a worked day takes follows from the parts that are used, cut from the files that
make them with the fewest minutes. Where nobody has entered how long an order takes, a usual time
is taken and said.
"""

import math
from collections.abc import Mapping

from station.planning.hours import Hours
from station.planning.learnt import PartLearnt
from station.planning.messages import PlanCutting, ToOrder
from station.planning.routers import LOAD_MIN
from station.planning.sheets import SheetFile, count_sheets

AHEAD_DAYS = 20.0  # worked days that an order lasts; of our own choice
SPARE_DAYS = 5.0  # worked days before the last moment from which on it is told
USUAL_LEAD = 5  # worked days; common practice, no source


def count_sheets_a_day(asked: PlanCutting, parts: Mapping[str, PartLearnt]) -> dict[str, float]:
    """Counts the sheets of each material that a worked day uses, as far as that can be told."""
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
    materials = {f.id: f.material for f in asked.files}
    used: dict[str, float] = {}
    for file, sheets in found.counts.items():
        used[materials[file]] = used.get(materials[file], 0.0) + sheets / AHEAD_DAYS
    return used


def list_to_order(
    asked: PlanCutting, parts: Mapping[str, PartLearnt], left: Mapping[str, int], hours: Hours
) -> tuple[ToOrder, ...]:
    """Lists the sheets to order soon, the most urgent first; `left` are those in the store."""
    used, found = count_sheets_a_day(asked, parts), []
    for material in asked.materials:
        a_day = used.get(material.id, 0.0)
        if material.id not in left or not a_day:
            continue
        lead, lasts = material.lead_days or USUAL_LEAD, left[material.id] / a_day
        if lasts >= lead + SPARE_DAYS:
            continue
        sheets = math.ceil(a_day * (lead + AHEAD_DAYS) - left[material.id])
        if material.pack:
            sheets = math.ceil(sheets / material.pack) * material.pack
        one = ToOrder(
            material=material.id,
            name=material.name,
            sheets=sheets,
            by=hours.add_minutes(asked.now, max(0.0, lasts - lead) * hours.minutes)[:10],
            lasts=round(lasts, 1),
            lead_days=lead,
            lead_known=bool(material.lead_days),
            a_day=round(a_day, 2),
        )
        found.append(one)
    return tuple(sorted(found, key=lambda o: (o.by, o.lasts, o.material)))
