"""What a person who releases by hand decides by: need, rack, the end of each queue, the store."""

from datetime import date
from typing import NamedTuple

from station.planning.gather import gather_queues
from station.planning.hours import Hours
from station.planning.past import USUAL
from station.planning.routers import RouterLoad
from station.queries.settings import find_shop
from station.queries.shortage import Standing, survey_parts
from station.queries.stock import count_in_store
from station.shop.facts import Lot, Revision
from station.shop.views import View

LOTS = 500  # of a material


class QueueEnd(NamedTuple):
    """When the last sheet that waits at a router is off its bed, as long as it runs."""

    ends: str
    stopped: bool


class ByHand(NamedTuple):
    """How the parts of a file stand, each router's queue by its id, and the sheets in the store.

    `in_store` are those that no queued batch takes; None where none were ever received.
    """

    parts: tuple[Standing, ...]
    queues: dict[str, QueueEnd]
    in_store: int | None


def look_by_hand(view: View, revision: Revision, now: str) -> ByHand:
    """Looks at what a release of this revision is decided by."""
    makes = revision.makes()
    every = view.once("by_hand/parts", survey_parts)
    queues = RouterLoad(*gather_queues(view, now))
    hours = _find_hours(view, now)
    ends = {
        r.id: QueueEnd(hours.add_minutes(now, queues.count_busy_at(r)), r.stopped)
        for r in queues.routers
    }
    standing = tuple(s for s in every if s.part.id in makes)
    return ByHand(standing, ends, _count_free(view, revision.material, queues))


def _find_hours(view: View, now: str) -> Hours:
    """Finds the hours that are worked, today too, whatever day it is."""
    shop, today = find_shop(view), date.fromisoformat(now[:10]).weekday()
    closed = tuple(day[:10] for day in shop.closed)
    return Hours(shop.day_starts, shop.day_ends, (*USUAL, today), shop.breaks, closed)


def _count_free(view: View, material: str, load: RouterLoad) -> int | None:
    """Counts the sheets of a material that no batch in a queue takes."""
    lots = view.shelf(Lot, material, LOTS)
    if not lots:
        return None
    queued = (batch for queue in load.queues.values() for batch in queue)
    taken = sum(batch.to_take for batch in queued if batch.material == material)
    return max(0, sum(count_in_store(view, lot.id) for lot in lots) - taken)
