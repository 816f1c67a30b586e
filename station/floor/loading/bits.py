"""The bits of a cut file: which must be in, and which come later by hand.

A tool changer has each bit in its pocket. A router without one holds one bit in its spindle:
the file's first bit must be in before the sheet, and every other one is put in by hand when
the file stops for it; each is checked at its change.
"""

from station.queries.routers import count_metres_left, find_bit_in
from station.shop.acts import Answer, refuse
from station.shop.facts import Bed, Bit, BitUse, Revision, Router
from station.shop.views import View
from station.shop.words import say


def by_hand(view: View, bed: Bed, revision: Revision) -> bool:
    """Whether this file's bits are changed by hand in the middle of a sheet."""
    router = view.get(Router, bed.id)
    return len(revision.bits) > 1 and not (router and router.changer)


def at_start(view: View, bed: Bed, revision: Revision) -> tuple[BitUse, ...]:
    """The uses whose bit must be there before a sheet starts."""
    return revision.bits[:1] if by_hand(view, bed, revision) else revision.bits


def later(view: View, bed: Bed, revision: Revision) -> tuple[BitUse, ...]:
    """The uses whose bit is put in by hand after the one that is in now."""
    if not by_hand(view, bed, revision):
        return ()
    bit = view.get(Bit, dict(bed.bits).get(0, ""))
    sizes = [use.diameter_mm for use in revision.bits]
    if not bed.sheet or bit is None or bit.diameter_mm not in sizes:
        return revision.bits[1:]
    return revision.bits[sizes.index(bit.diameter_mm) + 1 :]


def ready_for(view: View, use: BitUse) -> Bit | None:
    """The bit in the drawer that fits a use and lasts longest; None: there is none."""
    fits = [b for b in view.shelf(Bit, "good", 200) if b.diameter_mm == use.diameter_mm]
    return max(fits, key=lambda b: count_metres_left(view, b), default=None)


def wrong_bit(view: View, bed: Bed, use: BitUse) -> Answer | None:
    """A refusal when the bit for this use is not there, or not fit to cut."""
    bit = find_bit_in(view, bed, use)
    put_in = say("Put a {size} mm bit in and scan it.", size=f"{use.diameter_mm:g}")
    if bit is None:
        router = view.get(Router, bed.id)
        if router and router.changer:
            return refuse(say("Pocket {pocket} is empty", pocket=use.number), put_in)
        return refuse(say("No bit is in the spindle"), put_in)
    if bit.state != "good":
        return refuse(say("Bit {bit} is {state}", bit=bit.id, state=bit.state), put_in)
    if bit.diameter_mm != use.diameter_mm:
        return refuse(
            say("Bit {bit} is {size} mm", bit=bit.id, size=f"{bit.diameter_mm:g}"), put_in
        )
    return None


def too_short(view: View, bed: Bed, revision: Revision) -> tuple[Bit, float, float] | None:
    """The bit that will not last a sheet: itself, metres left, metres needed."""
    for use in revision.bits:
        bit = find_bit_in(view, bed, use)
        if bit and bit.diameter_mm == use.diameter_mm:
            left, need = count_metres_left(view, bit), use.cut_mm / 1000
            if left < need:
                return bit, left, need
    return None
