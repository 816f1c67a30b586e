"""Questions about first-offs: the first sheet that a new bit, zero or file has cut on a router.

What agreed holds for the same bits, zero and file, whatever else is cut between, until the
router stops for a reason that asks for a new one.
"""

from collections.abc import Sequence
from typing import NamedTuple

from station.queries.routers import find_bit_in
from station.queries.runs import find_work, name_run
from station.shop.facts import Bed, Bit, FirstOff, Part, Revision, Router, Size
from station.shop.views import View


class Measured(NamedTuple):
    """One size of a part on the first sheet, with what was read of it so far, mm."""

    part: Part
    size: Size
    readings: tuple[float, ...]

    @property
    def name(self) -> str:
        """Names it within its first-off: ``014/A along``."""
        return f"{self.part.id}/{self.size.name}"

    @property
    def was_outside(self) -> bool:
        """Tells whether a reading was outside its limits."""
        return not all(map(self.size.allows, self.readings))


def is_settled(size: Size, readings: Sequence[float], least: int = 1) -> bool:
    """Tells whether a size is right: inside, and twice in turn after one that was outside."""
    inside = [size.allows(mm) for mm in readings]
    return all(inside[-2:]) and len(inside) >= (least if all(inside) else 2)


def list_open_sizes(first: FirstOff, found: tuple[Measured, ...]) -> tuple[Measured, ...]:
    """Lists those `found` of a first-off that are not settled yet, what was outside first.

    Of one that a person said is wrong, each must be inside twice.
    """
    least = 2 if first.state == "wrong" and not any(m.was_outside for m in found) else 1
    open_ = [m for m in found if not is_settled(m.size, m.readings, least)]
    return tuple(sorted(open_, key=lambda m: not m.readings))


def find_of_file(bed: Bed, file: str) -> FirstOff | None:
    """Finds the newest first-off of a file on a router, whatever came of it."""
    return next((f for f in bed.firsts if f.file == file), None)


def find_unsettled(bed: Bed, file: str = "") -> FirstOff | None:
    """Finds what was cut and not compared yet, else one that is wrong; of a file if named."""
    open_ = [f for f in bed.firsts if f.state != "agreed" and file in ("", f.file)]
    return min(open_[::-1], key=lambda f: f.state != "due", default=None)


def find_repeated(view: View, bed: Bed, run: Revision) -> FirstOff | None:
    """Finds the wrong first-off that a run would cut again: same file, bits and zero."""
    known = find_of_file(bed, run.id)
    if known is None or known.state != "wrong" or known.zero_since != bed.zero_since:
        return None
    return known if _list_bits_in(view, bed, run) <= set(known.bits) else None


def find_asked(view: View, bed: Bed, run: Revision | None) -> FirstOff | None:
    """Finds the first-off to be settled at a free bed, before this run or with no batch there."""
    if bed.sheet or bed.state == "stopped":
        return None
    first = find_unsettled(bed)
    if first is None or first.state == "due":
        return first
    run = run or view.get(Revision, first.file)
    return find_repeated(view, bed, run) if run else None


def find_what_is_new(view: View, bed: Bed, run: Revision) -> str:
    """Finds what was new with the sheet that a run has cut, in words; empty: nothing was."""
    known = find_of_file(bed, run.id)
    if known and known.state == "due":
        return ""
    if bed.first_off:
        return bed.first_off
    if known is None:
        return f"first sheet of {name_run(view, run)}"
    if known.bits != list_bits_used(view, bed, run):
        return "another bit"
    return "" if known.zero_since == bed.zero_since else "zero set anew"


def list_bits_used(view: View, bed: Bed, run: Revision) -> tuple[str, ...]:
    """Lists the bits that have cut a run on this router, in the order of its uses."""
    router = view.get(Router, bed.id)
    if router and router.changer:
        return tuple(b.id for use in run.bits if (b := find_bit_in(view, bed, use)))
    names = (*bed.seen, *dict(bed.bits).values())
    known = [b for name in names if (b := view.get(Bit, name))]
    newest = {b.diameter_mm: b.id for b in known if b.state == "good"}
    return tuple(newest[u.diameter_mm] for u in run.bits if u.diameter_mm in newest)


def _list_bits_in(view: View, bed: Bed, run: Revision) -> set[str]:
    """Lists the bits that are in now and that a run would begin with."""
    router = view.get(Router, bed.id)
    uses = run.bits if router and router.changer else run.bits[:1]
    return {b.id for use in uses if (b := find_bit_in(view, bed, use))}


def list_sizes(view: View, first: FirstOff) -> tuple[Measured, ...]:
    """Lists what is measured of a first-off: every size of each part that its file cuts out.

    A second operation, an engraving and a laser's marks are compared by eye.
    """
    file = view.get(Revision, first.file)
    if file is None or find_work(view, file) != "parts":
        return ()
    parts = [p for name in file.makes() if (p := view.get(Part, name))]
    return tuple(
        Measured(p, size, _list_readings(first, p.id, size.name))
        for p in parts
        for size in p.sizes
    )


def _list_readings(first: FirstOff, part: str, size: str) -> tuple[float, ...]:
    return tuple(mm for p, s, mm in first.readings if (p, s) == (part, size))
