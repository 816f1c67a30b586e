"""Questions about routers: what one does now, how long yet, what is in it and how worn."""

import re
from collections.abc import Collection

from station.queries.batches import find_revision
from station.queries.runs import list_runs
from station.queries.settings import find_shop
from station.shop.facts import Batch, Bed, Bit, BitUse, Revision, Router
from station.shop.moves import BOARD, WEAR
from station.shop.times import count_seconds
from station.shop.views import View, by_batch, total
from station.shop.words import Say, say

NEW = "a new router"  # why its zero must be set
# why a zero or a first-off is due, as a bed keeps it: what a screen says
WHYS: dict[str, Say] = {
    NEW: say("this router was never set"),
    "another bit": say("another bit"),
    "zero set anew": say("zero was set anew"),
}
NEW_BIT, FIRST_OF = "new bit ", "first sheet of "
TAKE_OUT = "take it out"  # how a bit that a worker entered is settled, where it is not approved


def list_routers(view: View) -> tuple[Router, ...]:
    """Lists the routers that are in use, by number."""
    return tuple(r for r in view.shelf(Router, "all") if r.active)


def name_router(view: View, id: str) -> str:
    """Names a router, also one that the shop does not know: ``Router 3``."""
    router = view.get(Router, id)
    return router.name if router else f"Router {id}"


def say_why(kept: str) -> Say | str:
    """Says why a zero or a first-off is due, as it is kept, in words for the screen."""
    if kept in WHYS:
        return WHYS[kept]
    if kept.startswith(NEW_BIT):
        return say("new bit {bit}", bit=kept.removeprefix(NEW_BIT))
    if kept.startswith(FIRST_OF):
        return say("first sheet of {run}", run=kept.removeprefix(FIRST_OF))
    if broken := re.fullmatch(r"bit (\S+) broke", kept):
        return say("bit {bit} broke", bit=broken[1])
    return kept


def find_bed(view: View, router: str) -> Bed:
    """Finds what a router does now; one that was never used is free, and its zero is not set."""
    return view.get(Bed, router) or Bed(id=router, zero=NEW)


def list_beds(view: View) -> tuple[tuple[Router, Bed], ...]:
    """Lists every router with what it does now, by number."""

    def look(view: View) -> tuple[tuple[Router, Bed], ...]:
        return tuple((r, find_bed(view, r.id)) for r in view.shelf(Router, "all"))

    return view.once("routers/beds", look)


def find_running(view: View, bed: Bed) -> Revision | None:
    """Finds what runs on the sheet that is on a bed."""
    batch = view.get(Batch, bed.batch)
    made = find_revision(view, batch) if batch else None
    runs = list_runs(view, made) if made else ()
    return runs[bed.run - 1] if bed.run <= len(runs) else None


def count_cutting_s(bed: Bed, now: str) -> float:
    """Counts the seconds that the sheet on a bed has really been cut, stops taken off."""
    end = bed.stopped if bed.state == "stopped" and bed.stopped else now
    return max(0.0, count_seconds(bed.started, end) - bed.paused_s)


def count_minutes_left(bed: Bed, now: str) -> float:
    """Counts the minutes until the sheet on a bed should be done.

    0 without a sheet; below zero once it takes longer than expected.
    """
    return bed.minutes - count_cutting_s(bed, now) / 60 if bed.sheet else 0.0


def find_bit_in(view: View, bed: Bed, use: BitUse) -> Bit | None:
    """Finds the bit that cuts a use: by its pocket in a tool changer, else in the spindle."""
    router = view.get(Router, bed.id)
    place = use.number if router and router.changer else 0
    return view.get(Bit, dict(bed.bits).get(place, ""))


def count_mm_each(view: View, bit: Bit) -> dict[str, int]:
    """Counts the millimetres that a bit has cut, by router."""
    return by_batch(h for h in view.stock(place=f"bit/{bit.id}") if h.part == WEAR)


def count_metres_cut(view: View, bit: Bit) -> float:
    """Counts the metres that a bit has cut, on every router."""
    return sum(count_mm_each(view, bit).values()) / 1000


def count_metres_left(view: View, bit: Bit) -> float:
    """Counts the metres that a bit may still cut; below zero past its life."""
    return bit.life_m - count_metres_cut(view, bit)


def list_worn_bits(view: View) -> tuple[tuple[Bit, float], ...]:
    """Lists the bits in routers that near their end, with the share of life that is cut."""
    inside = (b for r in view.shelf(Router, "all") for b in view.shelf(Bit, f"router/{r.id}"))
    used = ((b, count_metres_cut(view, b) / max(b.life_m, 1)) for b in inside)
    told = find_shop(view).bit_told_at / 100
    return tuple((b, share) for b, share in used if share >= told)


def list_drawer(view: View, bed: Bed) -> tuple[Bit, ...]:
    """Lists the good bits that can be put into a router: of the drawer, and its own beside it."""
    inside = dict(bed.bits).values()
    own = (b for b in view.shelf(Bit, f"router/{bed.id}", 200) if b.id not in inside)
    return (*(b for b in own if b.state == "good"), *view.shelf(Bit, "good", 200))


def find_ready_bit(view: View, bed: Bed, use: BitUse, without: Collection[str] = ()) -> Bit | None:
    """Finds the bit in the drawer that fits a use and lasts longest; None: there is none.

    Those `without` are for somebody else.
    """
    ready = (b for b in list_drawer(view, bed) if b.id not in without)
    fits = [b for b in ready if b.diameter_mm == use.diameter_mm]
    return max(fits, key=lambda b: count_metres_left(view, b), default=None)


def count_passes(view: View, router: str) -> int:
    """Counts the sheets that were cut on a spoilboard since it was last flat."""
    return total(view.stock(place=f"spoilboard/{router}"), part=BOARD)
