"""Starts a sheet, once everything is right that must be before the router cuts."""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from station.floor.loading.acts import StartSheet
from station.floor.loading.needs import (
    NO_BATCH,
    TICKS,
    find_batch,
    find_short_bit,
    find_zero_due,
    judge_thickness,
    list_first_uses,
    list_later_uses,
    list_needed_ticks,
    refuse_bit,
    refuse_elsewhere,
    refuse_lot,
    refuse_thickness,
    refuse_unread,
    refuse_void_copy,
)
from station.floor.loading.readings import give_thickness
from station.queries.batches import find_revision, refuse_unapproved, refuse_uncuttable
from station.queries.first_offs import (
    find_in_the_way,
    find_other_thickness,
    find_unsettled,
    say_in_the_way,
)
from station.queries.hold_downs import find_wrong_on
from station.queries.pace import expect_minutes
from station.queries.routers import (
    count_metres_left,
    count_passes,
    find_bed,
    find_ready_bit,
    name_router,
    say_why,
)
from station.queries.runs import BETWEEN, Due, find_due, refuse_unapproved_run
from station.queries.settings import find_reason
from station.queries.stock import count_in_store
from station.shop.acts import Act, Answer, ask, attention, good, notice, refuse
from station.shop.facts import Batch, Bed, Bit, Concern, Fact, Lot, Reason, Revision, Router, Slip
from station.shop.moves import SHEET, move
from station.shop.times import is_near
from station.shop.views import View
from station.shop.words import MM, Say, clock, length, metres, say


class Sheet(NamedTuple):
    """Holds one sheet about to be started: the act and what it is about."""

    act: Act[StartSheet]
    view: View
    batch: Batch
    due: Due
    bed: Bed

    @property
    def file(self) -> Revision:
        """Tells what runs on it now."""
        return self.due.file

    @property
    def number(self) -> int:
        """Tells which sheet of its batch it is."""
        return self.due.sheet


def start_sheet(act: Act[StartSheet], view: View) -> Answer:
    """Puts a sheet from the store onto the bed, where it is cut.

    For a further run it comes from between the routers, its lot and thickness known.
    """
    batch = find_batch(act, view)
    if batch is None:
        return NO_BATCH
    bed = find_bed(view, act.args.router)
    wrong = refuse_void_copy(batch, act.args.copy) or _refuse_busy_bed(act, view, batch, bed)
    wrong = wrong or refuse_uncuttable(view, batch) or refuse_unapproved(view, batch)
    revision = find_revision(view, batch)
    if wrong or revision is None:
        return wrong or NO_BATCH
    following = find_due(view, batch, revision, bed, act.args.sheet)
    if following is None:
        return refuse_elsewhere(view, batch, bed) or NO_BATCH
    sheet = Sheet(act, view, batch, following, bed)
    for check in CHECKS:
        if refused := check(sheet):
            return refused
    thickness = give_thickness(act, view, batch, sheet.number, sheet.file)
    read = (thickness,) if following.run == 1 else ()
    return replace(_put_on_bed(sheet), router=bed.id, readings=read)


def _refuse_busy_bed(act: Act[StartSheet], view: View, batch: Batch, bed: Bed) -> Answer | None:
    """Refuses when the bed is not free for this batch."""
    name = name_router(view, bed.id)
    if bed.state == "stopped":
        return refuse(
            say("{router} is stopped since {at}", router=name, at=clock(bed.stopped)),
            say("End the stop first."),
        )
    if bed.sheet and bed.batch == batch.id:
        loaded = say(
            "Sheet {sheet} was loaded {at} by worker {by}",
            sheet=bed.sheet,
            at=clock(bed.started),
            by=bed.by,
        )
        if is_near(bed.started, act.at, 59):
            return notice(loaded, say("Nothing was counted twice."))
        return refuse(loaded, say("Take it off the bed first: scan its slip."))
    if bed.sheet:
        return refuse(
            say("Sheet {sheet} of batch {batch} is on the bed", sheet=bed.sheet, batch=bed.batch),
            say("Take it off first."),
        )
    if bed.batch != batch.id:
        return refuse(
            say("Batch {batch} is not on {router}", batch=batch.id, router=name),
            say("Scan its traveller first."),
        )
    return None


def _check_unread(sheet: Sheet) -> Answer | None:
    return refuse_unread(sheet.view, sheet.bed.id)


def _check_day(sheet: Sheet) -> Answer | None:
    if sheet.bed.day == sheet.act.at[:10]:
        return None
    name = name_router(sheet.view, sheet.bed.id)
    return refuse(
        say("Start of day is due on {router}", router=name),
        say("Do the checks, then “{done}”.", done=say("Start of day done")),
    )


def _check_rehome(sheet: Sheet) -> Answer | None:
    if not sheet.bed.rehome:
        return None
    return refuse(
        say("Re-home the router first: {why}", why=sheet.bed.rehome),
        say("Then “{done}”.", done=say("Router re-homed")),
    )


def _check_first_off(sheet: Sheet) -> Answer | None:
    """Refuses a sheet while the first one is not compared, or bit and zero may be wrong.

    A further run goes on the same sheet before it is compared.
    """
    bed, first = sheet.bed, find_unsettled(sheet.bed)
    if first and first.state == "due":
        same = (first.batch, first.sheet) == (sheet.batch.id, sheet.number)
        if same and sheet.due.run > 1:
            return None
        return refuse(
            say("First-off is due: batch {batch}, sheet {n}", batch=first.batch, n=first.sheet),
            say("Compare it with the master before sheet {sheet}.", sheet=sheet.number),
        )
    wrong = find_in_the_way(sheet.view, bed, sheet.file)
    return refuse(*say_in_the_way(sheet.view, bed, wrong, sheet.file)) if wrong else None


def _check_router(sheet: Sheet) -> Answer | None:
    routers = sheet.file.routers
    if not routers or sheet.bed.id in routers:
        return None
    return refuse(
        say("{router} can't run this cut file", router=name_router(sheet.view, sheet.bed.id)),
        say("It runs on router {routers}.", routers=", ".join(routers)),
    )


def _check_approved(sheet: Sheet) -> Answer | None:
    return refuse_unapproved_run(sheet.view, sheet.batch, sheet.file)


def _check_lot(sheet: Sheet) -> Answer | None:
    if sheet.due.run > 1:
        return None
    return refuse_lot(sheet.view, sheet.file, sheet.act.args.lot)


def _ask_used_up(sheet: Sheet) -> Answer | None:
    """Asks about a lot that has no sheet left by the book: one that is in hand beats the book."""
    if not _is_used_up(sheet) or sheet.act.args.sure:
        return None
    return ask(
        say("Lot {lot} has no sheet left by the book", lot=sheet.act.args.lot),
        say("Look at the sheet's card: is it of this lot? Then the book is put right."),
        "sure",
    )


def _is_used_up(sheet: Sheet) -> bool:
    return sheet.due.run == 1 and count_in_store(sheet.view, sheet.act.args.lot) < 1


def _check_bits(sheet: Sheet) -> Answer | None:
    """Refuses unless bits that must be in are right and later ones lie in the drawer."""
    view, bed, revision = sheet.view, sheet.bed, sheet.file
    for use in list_first_uses(view, bed, revision):
        if refused := refuse_bit(view, bed, use):
            return refused
    for use in list_later_uses(view, bed, revision):
        if find_ready_bit(view, bed, use) is None:
            return refuse(
                say("No {size} mm bit is in the drawer", size=length(use.diameter_mm)),
                say("The file asks for it later in the sheet: get one first."),
            )
    return None


def _check_hold_downs(sheet: Sheet) -> Answer | None:
    """Refuses a sheet whose hold-downs, as they are drawn, cannot stand there."""
    router = sheet.view.get(Router, sheet.bed.id)
    if router and router.bed == "vacuum":
        return None
    wrong = find_wrong_on(sheet.view, sheet.batch, sheet.file, router)
    if wrong is None:
        return None
    return refuse(
        say("A hold-down is in the way: {wrong}", wrong=wrong.why),
        say("Do not cut. Have the office move it, and approve the file again."),
    )


def _check_ticks(sheet: Sheet) -> Answer | None:
    for name in list_needed_ticks(sheet.view, sheet.bed, sheet.file):
        if name not in sheet.act.args.ticks:
            why = find_zero_due(sheet.view, sheet.bed, sheet.file) if name == "zero" else ""
            return refuse(
                TICKS[name],
                say("Due: {why}.", why=say_why(why)) if why else say("Check it, tick it."),
            )
    return None


def _check_thickness(sheet: Sheet) -> Answer | None:
    """Asks for a reading within its limits, or a supervisor who overrules with a reason."""
    if sheet.due.run > 1:
        return None
    reading = sheet.act.args.reading
    if reading <= 0:
        return refuse(
            say("How thick is the sheet?"),
            say("Measure it, enter the reading in {unit}.", unit=MM),
        )
    if refused := refuse_thickness(sheet.view, sheet.file, reading):
        return refused
    wrong = judge_thickness(sheet.view, sheet.file, reading)
    if wrong is None:
        return None
    if not sheet.act.args.approved:
        return ask(wrong, say("Another sheet, or a supervisor's badge."), "supervisor")
    reason = find_reason(sheet.view, sheet.act.args.reason, "overrule")
    if reason is None:
        return ask(wrong, say("Scan the reason for overruling it."), "reason")
    return None


CHECKS: tuple[Callable[[Sheet], Answer | None], ...] = (
    _check_unread,
    _check_day,
    _check_rehome,
    _check_first_off,
    _check_router,
    _check_approved,
    _check_lot,
    _check_bits,
    _check_hold_downs,
    _check_ticks,
    _check_thickness,
    _ask_used_up,
)


def _put_on_bed(sheet: Sheet) -> Answer:
    """Puts the sheet on the bed, starts the clock, says what to know while it cuts."""
    act, view, batch, bed = sheet.act, sheet.view, sheet.batch, sheet.bed
    run, slip = sheet.due.run, view.get(Slip, f"{batch.id}-{sheet.number}")
    lot, frm = (act.args.lot, "store") if run == 1 or not slip else (slip.lot, BETWEEN)
    minutes = expect_minutes(view, sheet.file, bed.id)
    loaded = replace(bed, state="cutting", sheet=sheet.number, run=run, lot=lot, started=act.at,
                     minutes=minutes, by=act.worker, paused_s=0, zero="", changes=0)  # fmt: skip
    if thickness := find_other_thickness(view, bed, sheet.file):
        loaded = replace(loaded, zero_since=act.at, first_off=bed.first_off or thickness)
    moves = (move(SHEET, 1, frm, f"bed/{bed.id}", lot),)
    sets: tuple[Fact, ...] = (loaded, replace(batch, state="cutting"))
    if _is_used_up(sheet):
        moves = (move(SHEET, 1, "recount", f"bed/{bed.id}", lot),)
        sets = (*sets, _look_at_lot(sheet))
    said = say("Sheet {sheet} started at {at}", sheet=sheet.number, at=clock(act.at))
    if run > 1:
        said = say("Sheet {sheet}, run {run}, started at {at}", sheet=sheet.number, run=run,
                   at=clock(act.at))  # fmt: skip
    elif wrong := judge_thickness(view, sheet.file, act.args.reading):
        marked = _mark_lot(sheet, wrong)
        do = say("Lot {lot} is marked: {why}.", lot=lot, why=wrong)
        return attention(said, do, moves=moves, sets=(*sets, *marked))
    if short := _find_short(sheet):
        bit, left, need = short
        do = say(
            "Bit {bit}: {left} m left, {need} m needed. Watch it.",
            bit=bit.id,
            left=metres(max(0, left)),
            need=metres(need),
        )
        return attention(said, do, moves=moves, sets=sets)
    if uneven := _say_uneven(sheet):
        return attention(said, uneven, moves=moves, sets=sets)
    return good(said, _say_meanwhile(sheet, minutes), moves=moves, sets=sets)


def _look_at_lot(sheet: Sheet) -> Concern:
    """Asks for a look at a lot of which more sheets were there than the book says."""
    lot = sheet.act.args.lot
    text = say("Lot {lot} had no sheet left by the book, yet one is cut: count it", lot=lot)
    return Concern(
        id=sheet.act.id, what="recount", since=sheet.act.at, about=f"lot/{lot}", text=text
    )


def _find_short(sheet: Sheet) -> tuple[Bit, float, float] | None:
    """Finds the first bit, in place or put in later, that will not last: left, needed (m)."""
    view, bed, revision = sheet.view, sheet.bed, sheet.file
    for use in list_later_uses(view, bed, revision):
        bit, need = find_ready_bit(view, bed, use), use.cut_mm / 1000
        if bit and (left := count_metres_left(view, bit)) < need:
            return bit, left, need
    return find_short_bit(view, bed, revision)


def _say_uneven(sheet: Sheet) -> Say | None:
    """Warns of a spoilboard that bears more sheets than it should."""
    router, done = sheet.view.get(Router, sheet.bed.id), count_passes(sheet.view, sheet.bed.id)
    if router is None or not router.flat_after or done < router.flat_after:
        return None
    return say(
        "{n} {n|sheet|sheets} since the spoilboard was flat. Cut it flat after this one.", n=done
    )


def _say_meanwhile(sheet: Sheet, minutes: float) -> Say:
    """Says what to do while the sheet is cut."""
    for use in list_later_uses(sheet.view, sheet.bed, sheet.file):
        if bit := find_ready_bit(sheet.view, sheet.bed, use):
            return say(
                "Lay bit {bit} ready, {size} mm: scan it at the change.",
                bit=bit.id,
                size=length(use.diameter_mm),
            )
    if _find_following(sheet) is None:
        return say(
            "About {minutes} min on this router. It is the last sheet.", minutes=round(minutes)
        )
    return say("About {minutes} min on this router. Bring the next sheet.", minutes=round(minutes))


def _find_following(sheet: Sheet) -> Due | None:
    """Finds what this router cuts after the sheet that is started now."""
    revision = find_revision(sheet.view, sheet.batch)
    loaded = replace(sheet.bed, sheet=sheet.number, run=sheet.due.run)
    return find_due(sheet.view, sheet.batch, revision, loaded) if revision else None


def _mark_lot(sheet: Sheet, wrong: Say) -> tuple[Lot | Concern, ...]:
    """Marks the lot, and gives the supervisor something to look at."""
    act, view = sheet.act, sheet.view
    lot = view.get(Lot, act.args.lot)
    reason = view.get(Reason, act.args.reason)
    assert lot is not None
    assert reason is not None
    name = name_router(view, sheet.bed.id)
    mark = str(say("{mm} mm read on {router}", mm=length(act.args.reading), router=name))
    concern = Concern(
        id=act.id,
        what="thickness",
        since=act.at,
        about=lot.key,
        text=say(
            "Lot {lot}, batch {batch}: {wrong}; worker {by}: {why}",
            lot=lot.id,
            batch=sheet.batch.id,
            wrong=wrong,
            by=act.args.approved,
            why=reason.words,
        ),
        reason=reason.id,
        choices=("keep the lot", "send it back"),
    )
    return (replace(lot, mark=mark), concern)
