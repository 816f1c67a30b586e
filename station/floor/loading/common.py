"""What every rule and the face of the loading room look up: bed, batch, time, bit metres."""

from datetime import datetime

from station.queries.batches import find_revision
from station.shop.acts import Act
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    BitUse,
    CutFile,
    Fact,
    Lot,
    Material,
    Notice,
    Pace,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
)
from station.shop.moves import BOARD, WEAR, Move, Spot, move, tail
from station.shop.runs import runs_of, work_of
from station.shop.views import View, total

READS: frozenset[type[Fact]] = frozenset(
    {
        Shop,
        Reason,
        Material,
        Lot,
        CutFile,
        Revision,
        Router,
        Bed,
        Pace,
        Bit,
        Notice,
        Pace,
        Batch,
        Slip,
    }
)
MOMENT_S = 5  # the same code again within this time is the trigger pulled twice
TOO_SOON = 0.5  # share of the expected time before which a sheet can't be done
START = "start of batch"  # how the first-off reason of a new batch begins


def text(act: Act, name: str) -> str:
    """An argument as text, empty when it is not there."""
    return str(act.args.get(name) or "")


def bed_at(view: View, router: str) -> Bed:
    """What a router is doing; a router that was never used is free."""
    return view.get(Bed, router) or Bed(id=router)


def router_name(view: View, id: str) -> str:
    """``Router 3``, also for a router that the shop does not know."""
    router = view.get(Router, id)
    return router.name if router else f"Router {id}"


def batch_of(act: Act, view: View) -> Batch | None:
    """The batch that an act is about (``batch/00412`` or ``slip/00412-3``)."""
    return view.get(Batch, tail(act.subject).partition("-")[0])


def running(view: View, bed: Bed) -> Revision | None:
    """What runs on the sheet that is on a bed."""
    batch = view.get(Batch, bed.batch)
    made = find_revision(view, batch) if batch else None
    runs = runs_of(view, made) if made else ()
    return runs[bed.run - 1] if bed.run <= len(runs) else None


def approved_letter(view: View, batch: Batch) -> str:
    """The letter of its cut file that may be cut now; empty when none may."""
    cut_file = view.get(CutFile, batch.cut_file)
    return cut_file.approved if cut_file else ""


def seconds_between(start: str, end: str) -> float:
    """Seconds from one shop time to a later one, at least 0; 0 when one is missing."""
    if not start or not end:
        return 0.0
    gone = datetime.fromisoformat(end) - datetime.fromisoformat(start)
    return max(0.0, gone.total_seconds())


def cutting_s(bed: Bed, now: str) -> float:
    """Seconds that the sheet on the bed has really been cut, stops taken off."""
    end = bed.stopped if bed.state == "stopped" and bed.stopped else now
    return max(0.0, seconds_between(bed.started, end) - bed.paused_s)


def metres_left(view: View, bit: Bit) -> float:
    """Metres that a bit may still cut; below zero when it is past its life."""
    return bit.life_m - total(view.stock(place=f"bit/{bit.id}"), part=WEAR) / 1000


def bit_in(view: View, bed: Bed, use: BitUse) -> Bit | None:
    """The bit that cuts this use: by its pocket in a tool changer, else in the spindle."""
    router = view.get(Router, bed.id)
    place = use.number if router and router.changer else 0
    return view.get(Bit, dict(bed.bits).get(place, ""))


def passes(view: View, router: str) -> int:
    """Sheets that were cut on a spoilboard since it was last flat."""
    return total(view.stock(place=f"spoilboard/{router}"), part=BOARD)


def wear_moves(view: View, bed: Bed, revision: Revision) -> tuple[Move, ...]:
    """The metres of one run on each bit that cut it here, and a pass on the spoilboard.

    A laser, an engraving and a second operation do not cut through into it.
    """
    through = work_of(view, revision) == "parts"
    moves = [move(BOARD, 1, "wear", f"spoilboard/{bed.id}", "")] if through else []
    for use in revision.bits:
        bit = bit_in(view, bed, use)
        if bit and bit.diameter_mm == use.diameter_mm and round(use.cut_mm) > 0:
            moves.append(worn(bit, round(use.cut_mm), bed))
    return tuple(moves)


def worn(bit: Bit, cut_mm: int, bed: Bed) -> Move:
    """What a bit has cut on this router."""
    return Move(WEAR, cut_mm, Spot("wear", bed.id), Spot(f"bit/{bit.id}", bed.id))
