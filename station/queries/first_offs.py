"""Questions about first-offs: the first sheet that a new bit, zero or file has cut on a router.

What agreed holds for the same bits, zero and file, whatever else is cut between, until the
router stops for a reason that asks for a new one.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from station.queries.routers import find_bed, find_bit_in, name_router
from station.queries.runs import find_work, name_run
from station.shop.acts import Answer, refuse
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    FirstOff,
    Lot,
    Material,
    Part,
    Revision,
    Router,
    Size,
    Slip,
)
from station.shop.views import View
from station.shop.words import Say, length, say


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


def find_in_the_way(view: View, bed: Bed, run: Revision) -> FirstOff | None:
    """Finds the newest first-off that is wrong with the bit and zero that a run would be cut with.

    Nobody knows yet whether bit, zero or file made it wrong: while zero is the same, it stands
    in the way of its own file and of every other one that shares a bit with it. Where the next
    zero is set anew, for a sheet of another thickness, it does not.
    """
    if find_other_thickness(view, bed, run):
        return None
    bits = _list_bits_in(view, bed, run)
    wrong = (f for f in bed.firsts[::-1] if f.state == "wrong" and f.zero_since == bed.zero_since)
    return next((f for f in wrong if _shares_cause(f, bits, same=f.file == run.id)), None)


def _shares_cause(first: FirstOff, bits: set[str], *, same: bool) -> bool:
    """Tells whether what may have made a first-off wrong is in again; a laser's zero alone may."""
    return bits <= set(first.bits) if same else not bits or bool(bits & set(first.bits))


def find_other_thickness(view: View, bed: Bed, run: Revision) -> str:
    """Finds how thick a run's sheets are against the last one there; empty: no other than it.

    Zero and hold-downs that were set for the one are wrong for the other.
    """
    before = view.get(Lot, bed.lot)
    was = view.get(Material, before.material) if before else None
    now = view.get(Material, run.material)
    if was is None or now is None or was.thickness_mm == now.thickness_mm:
        return ""
    return str(
        say("{now} mm after {was} mm", now=length(now.thickness_mm), was=length(was.thickness_mm))
    )


def say_in_the_way(view: View, bed: Bed, first: FirstOff, run: Revision | None) -> tuple[Say, Say]:
    """Says that a first-off is wrong on a router, whose it is, and every way on."""
    router = name_router(view, bed.id)
    if run and run.id == first.file:
        said = say("First-off of this file is wrong on {router}", router=router)
    else:
        file = view.get(Revision, first.file)
        said = say("First-off of {file} is wrong on {router}, same bit and zero",
                   file=name_run(view, file) if file else first.file, router=router)  # fmt: skip
    return said, say(
        "Measure it again; or put another bit in, set zero anew; or a supervisor passes it."
    )


class Unmeasured(NamedTuple):
    """A first-off that did not agree, of the sheet whose pieces wait; the bed that has cut it."""

    bed: Bed
    first: FirstOff


def find_unmeasured(view: View, number: str, sheet: int) -> Unmeasured | None:
    """Finds the first-off of a sheet of a batch, or of one that it came from, that is open.

    While it is due, nobody knows whether the pieces of that sheet are right: they wait. One that
    is wrong is measured again as long as its batch is held.
    """
    asked: set[str] = set()
    while number and number not in asked:
        slip = view.get(Slip, f"{number}-{sheet}")
        for router in (slip.router, *(r.router for r in slip.runs)) if slip else ():
            bed = find_bed(view, router)
            for first in bed.firsts:
                if (first.batch, first.sheet) == (number, sheet) and _is_open(view, first):
                    return Unmeasured(bed, first)
        asked.add(number)
        batch = view.get(Batch, number)
        number = batch.parent if batch else ""
    return None


def _is_open(view: View, first: FirstOff) -> bool:
    batch = view.get(Batch, first.batch)
    held = batch is not None and bool(batch.holds)
    return first.state == "due" or (first.state == "wrong" and held)


def refuse_unmeasured(view: View, number: str, sheets: Iterable[int]) -> Answer | None:
    """Refuses to move pieces of a sheet on before its first-off agrees. None: they may go on."""
    for sheet in sheets:
        if waits := find_unmeasured(view, number, sheet):
            said = say("First-off is due of sheet {n}: nothing of it goes on", n=sheet)
            router = name_router(view, waits.bed.id)
            do = say("Measure one of its pieces here, or at {router}.", router=router)
            return refuse(said, do)
    return None


def find_asked(view: View, bed: Bed, run: Revision | None) -> FirstOff | None:
    """Finds the first-off to be settled at a free bed, before this run or with no batch there."""
    if bed.sheet or bed.state == "stopped":
        return None
    first = find_unsettled(bed)
    if first is None or first.state == "due":
        return first
    run = run or view.get(Revision, first.file)
    return find_in_the_way(view, bed, run) if run else None


def find_what_is_new(view: View, bed: Bed, run: Revision) -> str:
    """Finds what was new with the sheet that a run has cut, in words; empty: nothing was."""
    known = find_of_file(bed, run.id)
    if known and known.state == "due":
        return ""
    if known is None or bed.first_off:
        return find_new_before(view, bed, run)
    if known.bits != list_bits_used(view, bed, run):
        return "another bit"
    return "" if known.zero_since == bed.zero_since else "zero set anew"


def find_new_before(view: View, bed: Bed, run: Revision) -> str:
    """Finds what is known to be new before a run is cut, in words; empty: nothing is."""
    if bed.first_off:
        return bed.first_off
    return "" if find_of_file(bed, run.id) else f"first sheet of {name_run(view, run)}"


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
