"""Finds how a router stands now, and what its next sheet still needs."""

from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple

from station.floor.loading.acts import EndSheet, StartSheet
from station.floor.loading.needs import changes_by_hand, list_needed_ticks, list_unread
from station.floor.loading.work import LoadingHand, LoadingWork, Mode
from station.queries.batches import find_revision, refuse_unapproved
from station.queries.first_offs import Measured, find_asked, list_open_sizes, list_sizes
from station.queries.routers import find_bed, find_running, list_routers
from station.queries.runs import Due, find_due, refuse_unapproved_run
from station.queries.stock import count_in_store
from station.shop.acts import Answer, good, notice, refuse
from station.shop.facts import Batch, Bed, Bit, FirstOff, Notice, Revision, Router
from station.shop.rooms import Do, Took
from station.shop.views import View
from station.shop.words import MM, Say, say

MOST_SIZES = 6  # of a first-off that the screen has room for


class Compared(NamedTuple):
    """What is measured of a first-off: every size, the open ones, the one that is asked for."""

    every: tuple[Measured, ...] = ()
    open: tuple[Measured, ...] = ()
    asked: Measured | None = None

    @property
    def shown(self) -> tuple[Measured, ...]:
        """Lists the sizes that the screen shows: where not all can, the open ones."""
        return (self.every if len(self.every) <= MOST_SIZES else self.open)[:MOST_SIZES]


@dataclass(frozen=True)
class Now:
    """Tells how the station stands now: hand, view, its router's bed, the batch in hand.

    What follows from these is found when it is first asked for, and then holds.
    """

    hand: LoadingHand
    view: View
    bed: Bed
    batch: Batch | None
    served: tuple[str, ...]  # the routers of this screen

    @cached_property
    def router(self) -> Router | None:
        """Finds the router that is looked at."""
        return self.view.get(Router, self.bed.id)

    @cached_property
    def unread(self) -> tuple[Notice, ...]:
        """Lists what went wrong with this router's parts and was not read yet, oldest first."""
        return list_unread(self.view, self.bed.id)

    @cached_property
    def revision(self) -> Revision | None:
        """Finds the revision of the batch in hand."""
        return find_revision(self.view, self.batch) if self.batch else None

    @cached_property
    def due(self) -> Due | None:
        """Finds what this router cuts next of the batch in hand, after the sheet on its bed."""
        if self.batch is None or self.revision is None:
            return None
        return find_due(self.view, self.batch, self.revision, self.bed, self.hand.work.sheet)

    @cached_property
    def running(self) -> Revision | None:
        """Finds what runs on the sheet on the bed, or is made ready to run."""
        if self.bed.sheet:
            return find_running(self.view, self.bed)
        following = self.due
        return following.file if following else self.revision

    @cached_property
    def next_run(self) -> Revision | None:
        """Finds what runs next; while the last sheet is cut, that."""
        following = self.due
        return following.file if following else self.running

    @cached_property
    def first(self) -> FirstOff | None:
        """Finds the first-off that is settled now, once nothing else stands first."""
        bed = self.bed
        if bed.rehome or bed.day != self.hand.now[:10] or self.unread:
            return None
        following = self.next_run if self.batch else None
        return find_asked(self.view, self.bed, following)

    @cached_property
    def compared(self) -> Compared:
        """Tells what is measured of the first-off; asks for the chosen size while it is open."""
        if self.first is None:
            return Compared()
        every = list_sizes(self.view, self.first)
        open_ = list_open_sizes(self.first, every)
        chosen = (m for m in open_ if m.name == self.hand.work.size)
        return Compared(every, open_, next(chosen, open_[0] if open_ else None))

    @property
    def mode(self) -> Mode:
        """Tells the question that is open, or nothing."""
        return self.hand.work.mode

    @property
    def subject(self) -> str:
        """Names the router as an act's subject."""
        return f"router/{self.bed.id}"


def list_served(hand: LoadingHand, view: View) -> tuple[str, ...]:
    """Lists the routers that this screen serves; all of them when none was set up."""
    given = tuple(r for r in hand.router.replace(" ", "").split(",") if r)
    return given or tuple(r.id for r in list_routers(view))


def find_now(hand: LoadingHand, view: View) -> Now:
    """Finds how the station stands at this moment."""
    served = list_served(hand, view)
    faced = hand.facing if hand.facing in served else (served[0] if served else "")
    bed = find_bed(view, faced)
    if hand.work.mode == "spoil" and hand.work.spoils not in ("", name_sheet(bed)):
        hand = close_question(hand)  # that sheet is off the bed: what was counted is of no other
    return Now(hand, view, bed, _find_batch(hand, view, bed), served)


def name_sheet(bed: Bed) -> str:
    """Names the sheet on a bed: ``00412/3``."""
    return f"{bed.batch}/{bed.sheet}"


def _find_batch(hand: LoadingHand, view: View, bed: Bed) -> Batch | None:
    """Finds the batch taken on, or one just cut that may want one more sheet.

    A batch that was cancelled meanwhile leaves the screen once its sheet is off the bed.
    """
    batch = view.get(Batch, bed.batch or hand.subject)
    if batch is None or (batch.state == "cancelled" and not bed.sheet):
        return None
    return batch if bed.batch or batch.state == "cut" else None


def close_question(hand: LoadingHand) -> LoadingHand:
    """Gives the hand without the open question."""
    return replace(
        hand,
        work=replace(hand.work, mode="", reason="", part="", survived={}, again="", spoils=""),
    )


def open_question(hand: LoadingHand, mode: Mode) -> LoadingHand:
    """Gives the hand with a question open, and none of the answers to another."""
    closed = close_question(hand)
    return replace(closed, work=replace(closed.work, mode=mode))


def untick_items(hand: LoadingHand, *names: str) -> LoadingHand:
    """Gives the hand without the ticks of these names."""
    left = tuple(t for t in hand.work.ticks if t not in names)
    return replace(hand, work=replace(hand.work, ticks=left))


def untick_bit(hand: LoadingHand) -> LoadingHand:
    """Gives the hand without what was confirmed of the bit that comes out."""
    return untick_restart(untick_items(hand, "bit", "zero"))


def untick_restart(hand: LoadingHand) -> LoadingHand:
    """Gives the hand without what was confirmed before the router runs on."""
    return replace(hand, work=replace(hand.work, restart=(), restart_of=""))


def tick_restart(hand: LoadingHand, bed: Bed, name: str) -> LoadingHand:
    """Gives the hand with one thing confirmed before a router runs on from the stop it is in."""
    kept = tuple(t for t in list_confirmed(hand, bed) if t != name)
    return replace(
        hand, work=replace(hand.work, restart=(*kept, name), restart_of=_name_stop(bed))
    )


def list_confirmed(hand: LoadingHand, bed: Bed) -> tuple[str, ...]:
    """Lists what was confirmed of the stop that a router is in; of another one it says nothing."""
    return hand.work.restart if hand.work.restart_of == _name_stop(bed) else ()


def _name_stop(bed: Bed) -> str:
    return f"{bed.id} {bed.stopped}"


def let_go(hand: LoadingHand) -> LoadingHand:
    """Gives the hand with nothing that was said, ticked or asked: for what other work follows."""
    return replace(hand, work=LoadingWork(), digits="")


def let_go_of_sheet(hand: LoadingHand) -> LoadingHand:
    """Gives the hand without what is true of one sheet alone; what holds of the router stays."""
    left = replace(untick_items(hand, "held_down"), digits="")
    return replace(left, work=replace(left.work, lot="", in_hands="", reading=0.0))


def hold_batch(hand: LoadingHand, batch: str) -> LoadingHand:
    """Gives the hand with a batch in it."""
    return replace(hand, subject=batch, digits="")


def clear_sheet(hand: LoadingHand) -> LoadingHand:
    """Gives the hand without anything said about the next sheet; lot stays."""
    return replace(hand, work=LoadingWork(lot=hand.work.lot))


def find_counted(here: Now) -> str:
    """Finds the part whose survivors are counted: the chosen one, or the only one; or none."""
    makes = here.revision.makes() if here.revision else {}
    return here.hand.work.part or (next(iter(makes)) if len(makes) == 1 else "")


def knows_lot(here: Now, hand: LoadingHand) -> bool:
    """Tells whether the next sheet's lot is known: the book has one of it, or it was scanned."""
    lot = hand.work.lot
    return bool(lot) and (lot == hand.work.in_hands or count_in_store(here.view, lot) > 0)


def find_missing(here: Now, hand: LoadingHand) -> str:
    """Finds what is still missing before the next sheet; empty when it can start."""
    following = replace(here, hand=hand).due
    if following is None or following.run == 1:
        if not knows_lot(here, hand):
            return "lot"
        if not hand.work.reading:
            return "reading"
    run = following.file if following else here.revision
    needed = list_needed_ticks(here.view, here.bed, run)
    return next((t for t in needed if t not in hand.work.ticks), "")


def needs_free_bed(here: Now, name: str) -> bool:
    """Tells whether this can only be true once the bed is free.

    A bit as well, where the file's bits are changed by hand in the middle of the sheet.
    """
    if name == "bit" and (run := here.next_run):
        return changes_by_hand(here.view, here.bed, run)
    return name in ("held_down", "zero")


def refuse_no_next(here: Now) -> Answer | None:
    """Refuses what is prepared for a next sheet while the last one is cut."""
    batch, bed = here.batch, here.bed
    if batch is None or not bed.sheet or here.due:
        return None
    return notice(
        say("Sheet {n} is the last of batch {batch}", n=bed.sheet, batch=batch.id),
        say("Scan its slip when it is off the bed."),
    )


def is_ready(here: Now, hand: LoadingHand) -> bool:
    """Tells whether everything was said that a start needs."""
    return not find_missing(here, hand)


NEXT: dict[str, Say] = {
    "lot": say("Scan the lot of the next sheet."),
    "reading": say("Measure the sheet, enter {unit}.", unit=MM),
    "held_down": say("Vacuum the bed, hold the sheet down, tick it."),
    "bit": say("Check the bit: scan it or tick it."),
    "file": say("Check the cut file, tick it."),
    "zero": say("Set zero, tick it."),
}


ON_PINS = say("Set the sheet on its pins, hold it down, tick it.")


def say_next(here: Now, hand: LoadingHand) -> Say:
    """Says what to do now before the next sheet."""
    need = find_missing(here, hand)
    if here.bed.sheet and (not need or needs_free_bed(here, need)):
        return say("Wait for sheet {n}, then scan its slip.", n=here.bed.sheet)
    first = here.first or here.bed.rehome or here.unread
    if first and not here.bed.sheet:
        return say("First what stands on the screen, then the sheet.")
    if need:
        following = replace(here, hand=hand).due
        return ON_PINS if need == "held_down" and following and following.run > 1 else NEXT[need]
    return say("Press “{start}”.", start=label_start(replace(here, hand=hand)))


def label_start(here: Now) -> Say:
    """Labels the key that starts the next sheet, as the strip names it too."""
    following = here.due
    if following and following.run > 1:
        return say("Start sheet {n}, run {run}", n=following.sheet, run=following.run)
    sheets = here.batch.sheets if here.batch else 1
    return say("Start sheet {n}", n=following.sheet if following else sheets)


def find_pocket(here: Now, diameter_mm: float) -> int | None:
    """Finds where a bit of a size goes: the spindle, or the pocket that wants it."""
    router = here.router
    if router is None or not router.changer:
        return 0
    run = here.running if here.bed.sheet else here.next_run
    for use in run.bits if run else ():
        if use.diameter_mm == diameter_mm:
            return use.number
    held = {p: here.view.get(Bit, b) for p, b in here.bed.bits}
    fits = [p for p, b in held.items() if b and b.diameter_mm == diameter_mm]
    return fits[0] if fits else None


def tick_item(here: Now, name: str) -> Took:
    """Confirms something for the next sheet, if it can be true already."""
    if here.batch is None:
        return Took(here.hand, refuse(say("No batch in hand yet"), say("Scan a traveller first.")))
    if last := refuse_no_next(here):
        return Took(here.hand, last)
    if here.bed.sheet and needs_free_bed(here, name):
        return Took(
            here.hand,
            notice(
                say("Not while sheet {n} is on the bed", n=here.bed.sheet),
                say("Tick it when the bed is free."),
            ),
        )
    if name == "file":
        run = here.next_run
        wrong = refuse_unapproved(here.view, here.batch) or (
            refuse_unapproved_run(here.view, here.batch, run) if run else None
        )
        if wrong:
            return Took(untick_items(here.hand, name), wrong)
    ticks = (*(t for t in here.hand.work.ticks if t != name), name)
    hand = replace(here.hand, work=replace(here.hand.work, ticks=ticks))
    return Took(hand, good(TICKED[name], say_next(here, hand)))


TICKED: dict[str, Say] = {
    "held_down": say("Held down, bed vacuumed"),
    "bit": say("Bit is right"),
    "file": say("Cut file is right"),
    "zero": say("Zero is set"),
}


def start_next(here: Now) -> Do | Took:
    """Starts the next sheet, with all that was said about it."""
    batch = here.batch
    if batch is None:
        return Took(here.hand, refuse(say("No batch in hand yet"), say("Scan a traveller first.")))
    work = here.hand.work
    args = StartSheet(
        router=here.bed.id,
        lot=work.lot,
        reading=work.reading,
        ticks=work.ticks,
        sheet=work.sheet,
    )
    return Do(batch.key, args, clear_sheet(here.hand))


def take_off(here: Now, *, copy: str = "", traveller: bool = False) -> Do:
    """Takes the sheet off the bed."""
    bed = here.bed
    args = EndSheet(router=bed.id, sheet=bed.sheet, copy=copy, traveller=traveller)
    subject = f"slip/{here.bed.batch}-{here.bed.sheet}"
    return Do(subject, args, keep_for_next(here, here.bed.batch))


def keep_for_next(here: Now, id: str) -> LoadingHand:
    """Gives the hand after a sheet of a batch: what was said of the next one stays.

    After the last one the batch is put down, unless one more sheet may be wanted.
    """
    batch = here.view.get(Batch, id)
    if batch is None or here.bed.batch != id or here.due:
        return close_question(here.hand)
    after = clear_sheet(here.hand)
    return replace(after, subject=id if batch.spoiled else "")


# what was confirmed before a router that is stopped runs on: names of `needs.RESTART`
CONFIRMED: dict[str, Say] = {
    "bit_out": say("Bit is out of the wood"),
    "bed_clear": say("Bed is clear"),
    "sheet_held": say("Sheet is held down"),
    "zero": say("Zero is set"),
    "nobody_near": say("Nobody is at the bed"),
}
