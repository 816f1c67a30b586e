"""Finds what a sheet needs before it is cut: valid paper, the right lot, thickness and bits.

A tool changer has each bit in its pocket. A router without one holds one bit in its spindle:
the file's first bit must be in before the sheet, and every other one is put in by hand when
the file stops for it; each is checked at its change.
"""

from station.floor.shared.retired import refuse_retired
from station.queries.batches import find_revision
from station.queries.first_offs import find_other_thickness
from station.queries.routers import count_metres_left, find_bit_in, name_router
from station.queries.runs import find_due, name_run
from station.shop.acts import Act, Answer, refuse
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    BitUse,
    Lot,
    Material,
    Notice,
    Reason,
    Revision,
    Router,
)
from station.shop.moves import WEAR, Move, Spot, tail
from station.shop.views import View
from station.shop.words import MM, Say, length, say

MOMENT_S = 5  # the same code again within this time is the trigger pulled twice
USUAL_MM = 6.5  # of a sheet good that the shop does not know
AT_ONCE = 3  # as many are shown, and so read, at a time
NO_BATCH = refuse(say("There is no such batch"), say("Scan the traveller again."))


TICKS: dict[str, Say] = {
    "held_down": say("Not held down or bed not vacuumed yet"),
    "bit": say("The bit is not checked yet"),
    "file": say("The cut file is not checked yet"),
    "zero": say("Zero is not set yet"),
}


# What a reason may ask for before the router runs on, by the name of its field. Usual practice,
# no source; `zero` is asked for where a bit was changed meanwhile.
RESTART: dict[str, Say] = {
    "bit_out": say("The bit is not out of the wood yet"),
    "bed_clear": say("The bed is not clear yet"),
    "sheet_held": say("The sheet is not held down yet"),
    "zero": say("Zero is not set yet"),
    "nobody_near": say("Is nobody at the bed?"),
}
ABOUT_SHEET = ("bit_out", "sheet_held", "zero")  # asked only while a sheet is on the bed


def list_restart_ticks(view: View, bed: Bed) -> tuple[str, ...]:
    """Lists what a person must confirm before a router that is stopped runs on."""
    reason = view.get(Reason, bed.stop) or Reason(id=bed.stop, words="", use="stop")
    asked = {name for name in RESTART if name != "zero" and getattr(reason, name)}
    if bed.zero:
        asked.add("zero")
    return tuple(n for n in RESTART if n in asked and (bed.sheet or n not in ABOUT_SHEET))


def find_batch(act: Act[object], view: View) -> Batch | None:
    """Finds the batch that an act is about (``batch/00412`` or ``slip/00412-3``)."""
    return view.get(Batch, tail(act.subject).partition("-")[0])


def refuse_no_router(act: Act[object], view: View) -> Answer | None:
    """Refuses an act that names no router of the shop."""
    if view.get(Router, tail(act.subject)):
        return None
    return refuse(say("Which router?"), say("Scan the router's code first."))


def find_next_run(view: View, bed: Bed) -> Revision | None:
    """Finds what a router cuts next of the batch that is taken on; None: nothing."""
    batch = view.get(Batch, bed.batch)
    revision = find_revision(view, batch) if batch else None
    following = find_due(view, batch, revision, bed) if batch and revision else None
    return following.file if following else None


def refuse_void_copy(batch: Batch, copy: str) -> Answer | None:
    """Refuses a traveller or slip that is not of the valid copy."""
    if not copy or copy == batch.copy:
        return None
    return refuse(
        say("Void: copy {old} was replaced by copy {new}", old=copy, new=batch.copy),
        say("Throw it away; use copy {new}. Nothing was counted.", new=batch.copy),
    )


def refuse_elsewhere(view: View, batch: Batch, bed: Bed) -> Answer | None:
    """Refuses a router where nothing of the batch that is due can run."""
    revision = find_revision(view, batch)
    if revision is None:
        return None
    here = find_due(view, batch, revision, bed)
    if here and here.file.takes(bed.id):
        return None
    there = find_due(view, batch, revision, bed, anywhere=True)
    if there is None or there.file.takes(bed.id):
        return None
    return refuse(
        say("{router} can't run this cut file", router=name_router(view, bed.id))
        if there.of == 1
        else say("{router} can't run {run}", router=name_router(view, bed.id),
                 run=name_run(view, there.file)),
        say("It runs on router {routers}.", routers=", ".join(there.file.routers)),
    )  # fmt: skip


def list_unread(view: View, router: str) -> tuple[Notice, ...]:
    """Lists what went wrong with a router's parts and was not read yet, oldest first."""
    return view.shelf(Notice, f"router/{router}")


def refuse_unread(view: View, router: str) -> Answer | None:
    """Refuses to go on while something is unread."""
    if not (waiting := list_unread(view, router)):
        return None
    return refuse(
        say("Read first: {text}", text=waiting[0].text),
        say("Then “{read}”.", read=say("I have read it")),
    )


def find_zero_due(view: View, bed: Bed, run: Revision | None) -> str:
    """Finds why zero must be set before a run; empty: it is kept from the last sheet.

    Sheets of another thickness ask for it: common practice, no source.
    """
    return bed.zero or (find_other_thickness(view, bed, run) if run else "")


def list_needed_ticks(view: View, bed: Bed, run: Revision | None) -> tuple[str, ...]:
    """Lists what a person must confirm before each sheet; zero only when it is due.

    A run without a bit, a laser's, asks for none.
    """
    without = {"zero"} if not find_zero_due(view, bed, run) else set()
    if run and not run.bits:
        without.add("bit")
    return tuple(t for t in TICKS if t not in without)


def refuse_lot(view: View, revision: Revision, id: str) -> Answer | None:
    """Refuses a lot that is unknown or of the wrong material."""
    if not id:
        return refuse(say("Which lot is the sheet from?"), say("Scan the lot's code."))
    lot = view.get(Lot, id)
    if lot is None:
        return refuse(say("There is no lot {lot}", lot=id), say("Receive it in the office."))
    if wrong := refuse_retired(lot, say("Lot {lot}", lot=id)):
        return wrong
    if lot.material != revision.material:
        return refuse(
            say("Lot {lot} is {got}", lot=id, got=name_material(view, lot.material)),
            say("This job takes {want}.", want=name_material(view, revision.material)),
        )
    return None


def name_material(view: View, id: str) -> str:
    """Names a material, by its number when the shop does not know it."""
    material = view.get(Material, id)
    return material.name if material else f"material {id}"


def refuse_thickness(view: View, revision: Revision, reading: float | None) -> Answer | None:
    """Refuses a reading that can't be the thickness of this sheet: a length, a count, no number.

    From half to twice what is nominal it may be one (common practice, no source): the wrong
    sheet can still be told by its reading.
    """
    material = view.get(Material, revision.material)
    nominal = material.thickness_mm if material else USUAL_MM
    if reading is not None and nominal / 2 <= reading <= nominal * 2:
        return None
    said = say("That is no thickness")
    if reading is not None:
        said = say("{mm} mm is no thickness of this sheet", mm=length(reading))
    return refuse(
        said, say("Measure it, enter the {unit}: about {mm}.", unit=MM, mm=length(nominal))
    )


def judge_thickness(view: View, revision: Revision, reading: float) -> Say | None:
    """Says what is wrong with a thickness reading, in mm; None: nothing."""
    material = view.get(Material, revision.material)
    if material is None or material.low_mm <= reading <= material.high_mm:
        return None
    return say(
        "{reading} mm read, limits are {low} to {high}",
        reading=length(reading),
        low=length(material.low_mm, 1),
        high=length(material.high_mm, 1),
    )


def changes_by_hand(view: View, bed: Bed, revision: Revision) -> bool:
    """Tells whether this file's bits are changed by hand in the middle of a sheet."""
    router = view.get(Router, bed.id)
    return len(revision.bits) > 1 and not (router and router.changer)


def list_first_uses(view: View, bed: Bed, revision: Revision) -> tuple[BitUse, ...]:
    """Lists the uses whose bit must be there before a sheet starts."""
    return revision.bits[:1] if changes_by_hand(view, bed, revision) else revision.bits


def list_later_uses(view: View, bed: Bed, revision: Revision) -> tuple[BitUse, ...]:
    """Lists the uses whose bit is put in by hand after the one that is in now."""
    if not changes_by_hand(view, bed, revision):
        return ()
    done = bed.changes if bed.sheet else 0
    return revision.bits[1 + done :]


def refuse_bit(view: View, bed: Bed, use: BitUse) -> Answer | None:
    """Refuses when the bit for this use is not there, or not fit to cut."""
    bit = find_bit_in(view, bed, use)
    put_in = say("Put a {size} mm bit in and scan it.", size=length(use.diameter_mm))
    if bit is None:
        router = view.get(Router, bed.id)
        if router and router.changer:
            return refuse(say("Pocket {pocket} is empty", pocket=use.number), put_in)
        return refuse(say("No bit is in the spindle"), put_in)
    if bit.state != "good":
        return refuse(say("Bit {bit} is {state}", bit=bit.id, state=bit.state), put_in)
    if bit.diameter_mm != use.diameter_mm:
        return refuse(
            say("Bit {bit} is {size} mm", bit=bit.id, size=length(bit.diameter_mm)), put_in
        )
    return None


def find_short_bit(view: View, bed: Bed, revision: Revision) -> tuple[Bit, float, float] | None:
    """Finds the bit that will not last a sheet: itself, metres left, metres needed."""
    for use in revision.bits:
        bit = find_bit_in(view, bed, use)
        if bit and bit.diameter_mm == use.diameter_mm:
            left, need = count_metres_left(view, bit), use.cut_mm / 1000
            if left < need:
                return bit, left, need
    return None


def wear_bit(bit: Bit, cut_mm: int, bed: Bed) -> Move:
    """Moves what a bit has cut on this router, mm, onto it."""
    return Move(WEAR, cut_mm, Spot("wear", bed.id), Spot(f"bit/{bit.id}", bed.id))
