"""Decides what a scan, a button or a number means at the cutting bed with the work in hand."""

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from station.floor.loading import new_bit
from station.floor.loading.acts import (
    BreakBit,
    ChangeBit,
    EndSheet,
    EndStop,
    ReadNotice,
    Rehome,
    ReportStop,
    Resurface,
    SetZero,
    SpoilSheet,
    StartDay,
    TakeBatch,
)
from station.floor.loading.needs import (
    MOMENT_S,
    RESTART,
    judge_thickness,
    list_restart_ticks,
    refuse_lot,
    refuse_thickness,
)
from station.floor.loading.preparing import (
    CONFIRMED,
    MOST_SIZES,
    Now,
    close_question,
    find_counted,
    find_missing,
    find_now,
    find_pocket,
    hold_batch,
    is_ready,
    keep_for_next,
    let_go,
    let_go_of_sheet,
    list_confirmed,
    name_sheet,
    open_question,
    refuse_no_next,
    say_next,
    start_next,
    take_off,
    tick_item,
    tick_restart,
    untick_bit,
    untick_items,
    untick_restart,
)
from station.floor.loading.tended_face import say_standing
from station.floor.loading.work import LoadingHand
from station.floor.shared.first_offs import CheckFirstOff, MeasureFirstOff, take_reading
from station.floor.shared.queue import AddSheet
from station.queries.batches import (
    find_hold,
    refuse_unapproved,
    refuse_uncuttable,
    refuse_wrong_paper,
)
from station.queries.routers import find_bed, find_bit_in, name_router
from station.queries.runs import BETWEEN
from station.queries.settings import find_reason
from station.queries.stock import count_in_store
from station.queries.tending import list_tended
from station.shop.acts import Args, good, notice, question, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Batch, Bit, FirstOff, Lot, Revision, Slip
from station.shop.file_requests import ProveText
from station.shop.first_facts import say_reason
from station.shop.rooms import Aside, Do, FileJob, Input, Number, Took
from station.shop.times import count_seconds, is_near
from station.shop.views import View
from station.shop.words import MM, Say, clock, length, say

A_WHILE_S = 600  # the traveller again after this long is a question


def handle_input(hand: LoadingHand, given: Input, view: View) -> Do | Took | FileJob | None:
    """Takes one input at the cutting bed."""
    here = find_now(hand, view)
    if here.mode == "tended" and not _asks_who_next(given):
        here = find_now(close_question(hand), view)
    if isinstance(given, Number):
        return _enter_number(here, given)
    if not isinstance(given, Code):
        return None
    if given.kind == "button":
        card = BY_NUMBER.get(given.number)
        handler = BUTTON_STEPS.get(card.name) if card else None
        return handler(here) if handler else None
    code_handler = CODE_STEPS.get(given.kind)
    return code_handler(here, given) if code_handler else None


def _asks_who_next(given: Input) -> bool:
    """Says whether it is the button that shows which router is next, and hides it again."""
    card = BY_NUMBER.get(given.number) if isinstance(given, Code) else None
    return bool(card and card.name == "who_next")


def _press_who_next(here: Now) -> Took:
    """Shows which router needs the person next; shown already, goes back to the work."""
    hand = replace(here.hand, aside=Aside())
    if here.mode == "tended":
        return Took(close_question(hand), good(say("Back to the work"), say("Scan your work.")))
    if not (tended := list_tended(here.view, here.served, here.hand.now)):
        return Took(hand, refuse(say("The shop has no router"), say("Enter one in the office.")))
    said = say("{router}: {standing}", router=tended[0].name, standing=say_standing(tended[0]))
    return Took(open_question(hand, "tended"), good(said, say("Bring along what stands here.")))


def _enter_number(here: Now, given: Number) -> Do | Took | None:
    """Takes a number: a count, a reading of the first-off, or the thickness of the sheet."""
    if here.mode == "spoil":
        return _enter_survived(here, given)
    if here.mode == "new_bit":
        return new_bit.enter_size(here, given)
    if here.first:
        return _enter_reading(here, here.first, given)
    revision, value = here.revision, given.length
    if revision is None:
        return None
    if last := refuse_no_next(here):
        return Took(here.hand, last)
    if lot := _read_lot(here, revision, given):
        return _scan_lot(here, lot)
    if refused := refuse_thickness(here.view, revision, value):
        return Took(replace(here.hand, work=replace(here.hand.work, reading=0.0)), refused)
    assert value is not None  # or it was refused
    hand = replace(here.hand, work=replace(here.hand.work, reading=value))
    if wrong := judge_thickness(here.view, revision, value):
        return Took(hand, refuse(wrong, say("Not this sheet: measure again, or ask.")))
    return Took(hand, good(say("{mm} mm: within limits", mm=length(value)), say_next(here, hand)))


def _read_lot(here: Now, revision: Revision, given: Number) -> Code | None:
    """Reads a number as that of a lot, as it stands on its paper, where one is wanted.

    What can be a thickness is one.
    """
    lot = here.view.get(Lot, given.text)
    if lot is None or lot.material != revision.material or find_missing(here, here.hand) != "lot":
        return None
    return Code("lot", lot.id) if refuse_thickness(here.view, revision, given.length) else None


def _enter_reading(here: Now, first: FirstOff, given: Number) -> Do | Took:
    """Takes a reading of the size of the first-off that is asked for."""
    taken = take_reading(first, here.compared.asked, given)
    if isinstance(taken, MeasureFirstOff):
        return Do(here.subject, taken, here.hand)
    return Took(here.hand, taken)


def _choose_row(here: Now, number: int) -> Do | Took | None:
    """Chooses what a new bit is like, or the size of the first-off that is measured next."""
    if here.mode == "new_bit":
        return new_bit.choose_kind(here, number)
    return _choose_size(here, number)


def _choose_size(here: Now, number: int) -> Took | None:
    sizes = here.compared.shown
    if number > len(sizes):
        return None
    chosen = sizes[number - 1]
    hand = replace(here.hand, work=replace(here.hand.work, size=chosen.name), digits="")
    said = say("{part}, {size}", part=chosen.part.name, size=chosen.size.in_words)
    return Took(hand, good(said, say("Measure it, enter the {unit}.", unit=MM)))


def _enter_survived(here: Now, given: Number) -> Took:
    """Takes a count of what survived, of the part chosen (or the only one)."""
    makes = here.revision.makes() if here.revision else {}
    work, part = here.hand.work, find_counted(here)
    if part not in makes:
        return Took(here.hand, refuse(say("How many of which part?"), say("Touch its row first.")))
    most, count = makes[part], given.whole
    if count is None or count > most:
        left = {p: n for p, n in work.survived.items() if p != part}
        work = replace(work, survived=left, again=part)
        return Took(
            replace(here.hand, work=work),
            refuse(
                say("A sheet has {most} of these", most=most),
                say("Enter a number from 0 to {most}.", most=most),
            ),
        )
    again = "" if work.again == part else work.again
    work = replace(work, survived={**work.survived, part: count}, part=part, again=again)
    hand = replace(here.hand, work=work)
    return Took(
        hand,
        good(
            say("{count} of {most} {count|is|are} whole", count=count, most=most), CONFIRM_SPOILED
        ),
    )


CONFIRM_SPOILED = say("“Sheet spoiled” again when it is complete.")


def _scan_traveller(here: Now, code: Code) -> Do | Took | None:
    """Takes the batch on, starts its sheet, or takes its sheet off."""
    if _is_cut(here, code):
        return None
    if code.sheet:
        return _scan_slip(here, code)
    bed = here.bed
    if bed.batch == code.number and (batch := here.view.get(Batch, code.number)):
        if code.copy not in ("", batch.copy):
            return _take_on(here, code)
        if bed.sheet:
            return take_off(here, copy=code.copy, traveller=True)
        if is_ready(here, here.hand):
            return start_next(here)
        held = refuse_uncuttable(here.view, batch) or refuse_unapproved(here.view, batch)
        again = held or notice(_say_taken(here, batch), say_next(here, here.hand))
        return Took(here.hand, again)
    return _take_on(here, code)


def _is_cut(here: Now, code: Code) -> bool:
    """Says whether loading has nothing to do with a valid paper any more.

    All of it is cut, and no sheet of it was spoiled, which might be made anew.
    """
    batch = here.view.get(Batch, code.number)
    if batch is None or refuse_wrong_paper(code, batch) or not here.hand.is_free:
        return False
    on_beds = {find_bed(here.view, router).batch for router in here.served}
    free = find_hold(here.view, batch.id) is None
    return free and batch.state == "cut" and not batch.spoiled and batch.id not in on_beds


def _say_taken(here: Now, batch: Batch) -> Say:
    """Says what a traveller means that was scanned before: at once, or much later.

    Once a sheet was cut, its slip tells a sheet twice; the traveller only says what is next.
    """
    load = here.view.last(batch.key, TakeBatch)
    if batch.cut or load is None or count_seconds(load.act.at, here.hand.now) < A_WHILE_S:
        following = here.due
        n = following.sheet if following else batch.sheets
        return say("Batch {batch} is in hand, sheet {n} next", batch=batch.id, n=n)
    return say(
        "Batch {batch} loaded {at} by worker {by}: next sheet, or a mistake?",
        batch=batch.id,
        at=clock(load.act.at),
        by=load.act.worker,
    )


def _take_on(here: Now, code: Code) -> Do:
    after = replace(here.hand.empty(), subject=code.number)
    args = TakeBatch(router=here.bed.id, copy=code.copy)
    return Do(f"batch/{code.number}", args, after, refused=let_go(here.hand))


def _scan_slip(here: Now, code: Code) -> Do | Took:
    """Ends a slip's sheet, on whichever of this screen's routers it lies.

    One that waits for its next run is wanted next.
    """
    if waiting := _find_waiting(here, code):
        return _want_sheet(here, code, waiting)
    router = here.bed.id
    for other in here.served:
        if find_bed(here.view, other).batch == code.number:
            router = other
    args = EndSheet(router=router, sheet=code.sheet, copy=code.copy)
    refused = None if code.number == here.bed.batch else let_go(here.hand)
    after = keep_for_next(here, code.number)
    return Do(f"slip/{code.number}-{code.sheet}", args, after, refused=refused)


def _find_waiting(here: Now, code: Code) -> Slip | None:
    """Finds a valid slip's sheet that lies between two runs, not put there just now."""
    slip = here.view.get(Slip, f"{code.number}-{code.sheet}")
    if slip is None or slip.state != BETWEEN:
        return None
    batch = here.view.get(Batch, code.number)
    at = [find_bed(here.view, r) for r in {*here.served, here.bed.id}]
    on_bed = any((b.batch, b.sheet) == (slip.batch, slip.sheet) for b in at)
    void = batch is None or code.copy not in ("", batch.copy)
    just_now = is_near(slip.at, here.hand.now, MOMENT_S)
    return None if on_bed or void or just_now else slip


def _want_sheet(here: Now, code: Code, slip: Slip) -> Do | Took:
    """Makes the sheet of a slip the next one; its batch is taken on first."""
    if here.bed.batch != slip.batch:
        return _take_on(here, code)
    hand = replace(here.hand, work=replace(here.hand.work, sheet=slip.sheet, ticks=()))
    following = replace(here, hand=hand).due
    if following is None or following.sheet != slip.sheet:
        return Took(
            let_go(here.hand),
            refuse(
                say("{router} can't run what is next on sheet {n}", n=slip.sheet,
                    router=name_router(here.view, here.bed.id)),
                say("Take its traveller to the router that does."),
            ),
        )  # fmt: skip
    said = say("Sheet {n} is next: run {run} of {of}", n=slip.sheet, run=following.run,
               of=following.of)  # fmt: skip
    return Took(hand, good(said, say_next(here, hand)))


def _scan_lot(here: Now, code: Code) -> Took | None:
    revision = here.revision
    if revision is None and here.hand.is_free:
        return None
    if revision is None:
        return Took(here.hand, refuse(say("No batch in hand yet"), say("Scan a traveller first.")))
    if last := refuse_no_next(here):
        return Took(here.hand, last)
    if wrong := refuse_lot(here.view, revision, code.number):
        return Took(let_go_of_sheet(here.hand), wrong)
    used_up = count_in_store(here.view, code.number) < 1
    known = replace(here.hand.work, lot=code.number, in_hands=code.number if used_up else "")
    hand = replace(here.hand, work=known)
    if used_up:
        said = say("Lot {lot} has no sheet left by the book", lot=code.number)
        do = say("Is the sheet in hand of it? Then go on; else scan its lot.")
        return Took(hand, notice(said, do))
    lot = here.view.get(Lot, code.number)
    said = say("Sheet from lot {lot}", lot=code.number)
    if lot and lot.mark:
        return Took(hand, notice(said, say("Look twice: {mark}.", mark=lot.mark)))
    return Took(hand, good(said, say_next(here, hand)))


def _scan_bit(here: Now, code: Code) -> Do | Took:
    """Ticks a bit that is in, puts another one in; in a question it is the one."""
    bit = here.view.get(Bit, code.number)
    inside = code.number in dict(here.bed.bits).values()
    if here.mode == "broken":
        after = close_question(here.hand)
        return Do(here.subject, BreakBit(bit=code.number), after)
    if inside and bit and bit.state == "good":
        return tick_item(replace(here, hand=_close_new(here.hand)), "bit")
    pocket = find_pocket(here, bit.diameter_mm) if bit else 0
    unchecked = untick_bit(_close_new(here.hand))
    if pocket is None:
        return Took(
            unchecked,
            refuse(
                say("No pocket takes bit {bit}", bit=code.number),
                say("It fits none of the bits in the changer."),
            ),
        )
    args = ChangeBit(bit=code.number, pocket=pocket)
    return Do(here.subject, args, unchecked, refused=unchecked)


def _close_new(hand: LoadingHand) -> LoadingHand:
    """Closes the question what a new bit is like: one with a card is known."""
    return close_question(hand) if hand.work.mode == "new_bit" else hand


def _scan_router(here: Now, code: Code) -> Took:
    if code.number not in here.served:
        return Took(
            let_go(here.hand),
            refuse(
                say("{router} is not served here", router=name_router(here.view, code.number)),
                say("Go to its own screen."),
            ),
        )
    return _face_router(here, code.number)


def _face_router(here: Now, router: str) -> Took:
    """Turns the screen to another router; what was said of the first one's sheet goes."""
    hand = here.hand if router == here.bed.id else here.hand.empty()
    there = find_bed(here.view, router)
    name = name_router(here.view, router)
    hand = replace(hand, facing=router)
    if there.sheet:
        what = say("Sheet {n} of batch {batch} is on it.", n=there.sheet, batch=there.batch)
    elif there.batch:
        what = say("Batch {batch} is on it.", batch=there.batch)
    else:
        what = say("It is free: scan a traveller.")
    return Took(hand, good(say("{router} is in front of you", router=name), what))


def _scan_reason(here: Now, code: Code) -> Do | Took | None:
    if here.mode == "stop":
        return Do(here.subject, ReportStop(reason=code.number), close_question(here.hand))
    if here.mode != "spoil":
        return None
    reason = find_reason(here.view, code.number, "sheet")
    if reason is None:
        return Took(
            replace(here.hand, work=replace(here.hand.work, reason="")),
            refuse(say("That is no reason for a sheet"), say("Scan one of those shown.")),
        )
    return Took(
        replace(here.hand, work=replace(here.hand.work, reason=reason.id)),
        good(
            say("Sheet {n}: {why}", n=here.bed.sheet, why=say_reason(reason)),
            say("What survived? Enter whole parts, or confirm."),
        ),
    )


def _choose_part(here: Now, number: str) -> Took | None:
    """Chooses the part whose survivors are counted next."""
    makes = here.revision.makes() if here.revision else {}
    if here.mode != "spoil":
        return None
    if number not in makes:
        return Took(
            replace(here.hand, work=replace(here.hand.work, part="")),
            refuse(say("That part is not on this sheet"), say("Scan another part.")),
        )
    said = say("{most} of these on a sheet", most=makes[number])
    hand = replace(here.hand, work=replace(here.hand.work, part=number))
    return Took(hand, good(said, say("How many of them are whole?")))


CODE_STEPS: dict[str, Callable[[Now, Code], Do | Took | None]] = {
    "batch": _scan_traveller,
    "lot": _scan_lot,
    "bit": _scan_bit,
    "router": _scan_router,
    "reason": _scan_reason,
    "part": lambda here, code: _choose_part(here, code.number),
}


def _press_off(here: Now) -> Do | Took:
    if not here.bed.sheet:
        return Took(here.hand, refuse(say("No sheet is on the bed"), say("Start a sheet first.")))
    return take_off(here)


def _press_spoiled(here: Now) -> Do | Took:
    """Opens the question; pressed again, with a reason, it is done."""
    bed = here.bed
    if not bed.sheet:
        return Took(here.hand, refuse(say("No sheet is on the bed"), say("Nothing is spoiled.")))
    if here.mode != "spoil":
        hand = open_question(here.hand, "spoil")
        hand = replace(hand, work=replace(hand.work, spoils=name_sheet(bed)))
        said = say("Why is sheet {n} spoiled?", n=bed.sheet)
        return Took(hand, question(said, say("Scan or touch the reason.")))
    work = here.hand.work
    if work.again:
        said = say("How many are whole?")
        return Took(here.hand, refuse(said, say("Enter a number, then “Sheet spoiled” again.")))
    args = SpoilSheet(router=bed.id, reason=work.reason, survived=work.survived)
    after = hold_batch(close_question(untick_items(here.hand, "bit")), bed.batch)
    return Do(f"batch/{bed.batch}", args, after)


def _press_survived(here: Now) -> Took | None:
    """Goes to the next part of the sheet whose survivors are counted."""
    makes = list(here.revision.makes()) if here.revision else []
    if here.mode != "spoil" or not makes:
        return None
    chosen = here.hand.work.part
    place = makes.index(chosen) + 1 if chosen in makes else 0
    return _choose_part(here, makes[place % len(makes)])


def _press_stop(here: Now) -> Took:
    if here.bed.state == "stopped":
        return Took(
            here.hand,
            notice(
                say("Stopped since {at} already", at=clock(here.bed.stopped)),
                say("When it runs again: “The stop is over”."),
            ),
        )
    hand = open_question(here.hand, "stop")
    return Took(
        hand,
        notice(
            say("This does not stop the router: use its own stop"),
            say("Then scan or touch the reason. Hands off the bed."),
        ),
    )


def _press_broken(here: Now) -> Do | Took:
    inside = [b for _, b in here.bed.bits]
    if len(inside) == 1:
        return Do(
            here.subject,
            BreakBit(bit=inside[0]),
            close_question(untick_items(here.hand, "bit", "zero")),
        )
    hand = open_question(here.hand, "broken")
    return Took(hand, question(say("Which bit broke?"), say("Scan the bit or touch its row.")))


def _press_more(here: Now) -> Do | Took:
    if here.batch is None:
        return Took(here.hand, refuse(say("No batch in hand yet"), say("Scan a traveller first.")))
    return Do(
        here.batch.key,
        AddSheet(router=here.bed.id),
        hold_batch(close_question(here.hand), here.batch.id),
    )


def _press_put_down(here: Now) -> Took | None:
    """Leaves the question that is open; what was said of the next sheet stays."""
    if here.mode in ("", "tended"):
        return None
    left = say("Left; nothing was changed")
    if here.hand.work.survived:
        left = say("Left; sheet {n} is not booked as spoiled", n=here.bed.sheet)
    return Took(close_question(here.hand), good(left, say("Go on with your work.")))


def _press_next_router(here: Now) -> Took:
    served = here.served
    if len(served) < 2:
        return Took(
            here.hand, notice(say("This screen serves one router"), say("Go on with your work."))
        )
    place = served.index(here.bed.id) if here.bed.id in served else -1
    return _face_router(here, served[(place + 1) % len(served)])


def _press_over(here: Now) -> Do:
    """Lets the router run on, with all that was confirmed for it."""
    after = untick_restart(close_question(here.hand))
    ends = EndStop(ticks=list_confirmed(here.hand, here.bed), since=here.bed.stopped)
    return Do(here.subject, ends, after)


def _press_held(here: Now) -> Took:
    """Ticks the hold-down: of the sheet that runs on after a stop, or of the next one."""
    if here.bed.state == "stopped":
        return _tick_restart(here, "sheet_held")
    return tick_item(here, "held_down")


def _press_rehomed(here: Now) -> Do | Took:
    """Notes that it was sent home; with a sheet on the bed, once the bit is out of the wood."""
    wanted = list_restart_ticks(here.view, here.bed) if here.bed.state == "stopped" else ()
    if "bit_out" in wanted and "bit_out" not in list_confirmed(here.hand, here.bed):
        said = RESTART["bit_out"]
        return Took(here.hand, refuse(said, say("Lift it clear, tick it, then send it home.")))
    return Do(here.subject, Rehome(), close_question(here.hand))


def _tick_restart(here: Now, name: str) -> Took:
    """Confirms something before a router that is stopped runs on."""
    if here.bed.state != "stopped":
        said = say("{router} is not stopped", router=name_router(here.view, here.bed.id))
        return Took(here.hand, notice(said, say("Go on.")))
    asked = list_restart_ticks(here.view, here.bed)
    if name not in asked:
        return Took(here.hand, notice(say("That is not asked for after this stop"), say("Go on.")))
    hand = tick_restart(here.hand, here.bed, name)
    left = [n for n in asked if n not in hand.work.restart]
    do = say("{n} more, then “{over}”.", n=len(left), over=OVER)
    if not left:
        do = say("Press “{over}”.", over=OVER)
    if here.bed.rehome:
        do = say("Re-home it, then “{over}”.", over=OVER)
    return Took(hand, good(CONFIRMED[name], do))


OVER = say("The stop is over")


def _do_plainly(args: Args) -> Callable[[Now], Do]:
    """Makes a button that is one act about the router and leaves the hand as it is."""

    def press(here: Now) -> Do:
        return Do(here.subject, args, close_question(here.hand))

    return press


def _judge_first_off(*, agrees: bool) -> Callable[[Now], Do]:
    def press(here: Now) -> Do:
        args = CheckFirstOff(good=agrees, file=here.first.file if here.first else "")
        return Do(here.subject, args, close_question(here.hand))

    return press


def _press_zeroed(here: Now) -> Do | Took:
    """Ticks zero for the next sheet; where a first-off is wrong, zero is a new one."""
    first = here.first
    if here.bed.state == "stopped" and here.bed.sheet:
        return _tick_restart(here, "zero")
    if here.bed.sheet and here.bed.changes and here.bed.zero:
        return Do(here.subject, SetZero(), here.hand)
    if first is None or first.state != "wrong" or here.bed.zero:
        return tick_item(here, "zero")
    after = close_question(untick_items(here.hand, "held_down"))
    return Do(here.subject, SetZero(), after)


def _tick_plainly(name: str) -> Callable[[Now], Took]:
    return lambda here: tick_item(here, name)


def _tick_bit(here: Now) -> Took:
    """Ticks the bit by hand, when the right one is in."""
    run = here.next_run
    for use in run.bits[:1] if run else ():
        bit = find_bit_in(here.view, here.bed, use)
        if bit is None or bit.state != "good" or bit.diameter_mm != use.diameter_mm:
            size = length(use.diameter_mm)
            return Took(
                untick_items(here.hand, "bit"),
                refuse(say("A {size} mm bit is needed", size=size), say("Put it in and scan it.")),
            )
    return tick_item(here, "bit")


def _tick_file(here: Now) -> Took | FileJob:
    """Ticks the file; where the router's folder is known, its texts are read first."""
    ticked, revision = tick_item(here, "file"), here.next_run
    router = here.router
    if ticked.answer.tone != "good" or not (router and router.folder and revision):
        return ticked
    if not revision.digest:
        return ticked
    proof = ProveText(
        folder=router.folder, digest=revision.digest, letter=revision.letter, proven=ticked
    )
    return FileJob(proof, untick_items(here.hand, "file"))


BUTTON_STEPS: dict[str, Callable[[Now], Do | Took | FileJob | None]] = {
    "start": start_next,
    "off_bed": _press_off,
    "sheet_spoiled": _press_spoiled,
    "survived": _press_survived,
    "stop": _press_stop,
    "stop_over": _press_over,
    "bed_clear": partial(_tick_restart, name="bed_clear"),
    "bit_out": partial(_tick_restart, name="bit_out"),
    "nobody_near": partial(_tick_restart, name="nobody_near"),
    "held_down": _press_held,
    "bit_good": _tick_bit,
    "file_right": _tick_file,
    "zeroed": _press_zeroed,
    "first_off_good": _judge_first_off(agrees=True),
    "first_off_bad": _judge_first_off(agrees=False),
    "day_done": _do_plainly(StartDay()),
    "resurfaced": lambda here: Do(
        here.subject, Resurface(), close_question(untick_items(here.hand, "held_down", "zero"))
    ),
    "rehomed": _press_rehomed,
    "told": _do_plainly(ReadNotice()),
    "bit_broken": _press_broken,
    "one_more_sheet": _press_more,
    "next_router": _press_next_router,
    "put_down": _press_put_down,
    "who_next": _press_who_next,
    "new_bit": new_bit.press_new_bit,
    **{f"row_{n}": partial(_choose_row, number=n) for n in range(1, MOST_SIZES + 1)},
}
