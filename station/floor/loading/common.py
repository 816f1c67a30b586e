"""What every rule and the face of the loading room look up: bed, batch, time, bit metres."""

from station.queries.routers import find_bit_in
from station.queries.runs import find_work
from station.shop.acts import Act
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
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
from station.shop.views import View

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


def batch_of(act: Act, view: View) -> Batch | None:
    """The batch that an act is about (``batch/00412`` or ``slip/00412-3``)."""
    return view.get(Batch, tail(act.subject).partition("-")[0])


def wear_moves(view: View, bed: Bed, revision: Revision) -> tuple[Move, ...]:
    """The metres of one run on each bit that cut it here, and a pass on the spoilboard.

    A laser, an engraving and a second operation do not cut through into it.
    """
    through = find_work(view, revision) == "parts"
    moves = [move(BOARD, 1, "wear", f"spoilboard/{bed.id}", "")] if through else []
    for use in revision.bits:
        bit = find_bit_in(view, bed, use)
        if bit and bit.diameter_mm == use.diameter_mm and round(use.cut_mm) > 0:
            moves.append(worn(bit, round(use.cut_mm), bed))
    return tuple(moves)


def worn(bit: Bit, cut_mm: int, bed: Bed) -> Move:
    """What a bit has cut on this router."""
    return Move(WEAR, cut_mm, Spot("wear", bed.id), Spot(f"bit/{bit.id}", bed.id))
