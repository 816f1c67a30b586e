"""What a scanned code means at the cutting bed with the work in hand."""

from collections.abc import Callable
from dataclasses import replace

from station.floor.loading.before import (
    Now,
    bare,
    next_sheet,
    no_next,
    off,
    ready,
    routers,
    start,
    tick,
    ticks,
    what_next,
)
from station.floor.loading.common import MOMENT_S
from station.floor.loading.material import wrong_lot
from station.queries.batches import refuse_unapproved, refuse_uncuttable
from station.queries.routers import find_bed, name_router
from station.queries.runs import BETWEEN
from station.queries.settings import find_reason
from station.shop.acts import good, notice, refuse
from station.shop.codes import Code
from station.shop.facts import Batch, Bit, Lot, Router, Slip
from station.shop.rooms import Do, Took
from station.shop.times import count_seconds
from station.shop.words import Say, clock, say

A_WHILE_S = 600  # the traveller again after this long is a question


def _batch_code(here: Now, code: Code) -> Do | Took:
    """A traveller or a slip: take it, start its sheet, or take its sheet off."""
    if code.sheet:
        return _slip(here, code)
    bed = here.bed
    if bed.batch == code.number and (batch := here.view.get(Batch, code.number)):
        if code.copy not in ("", batch.copy):
            return _take(here, code)
        if bed.sheet:
            return off(here, copy=code.copy, traveller=True)
        if ready(here, here.hand):
            return start(here)
        held = refuse_uncuttable(here.view, batch) or refuse_unapproved(here.view, batch)
        again = held or notice(_taken(here, batch), what_next(here, here.hand))
        return Took(here.hand, again)
    return _take(here, code)


def _taken(here: Now, batch: Batch) -> Say:
    """What a traveller says that was scanned before: at once, or much later.

    Once a sheet was cut, its slip tells a sheet twice; the traveller only says what is next.
    """
    load = here.view.last(batch.key, "take_batch")
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


def _take(here: Now, code: Code) -> Do:
    after = replace(here.hand.empty(), subject=code.number)
    args = {"router": here.bed.id, "copy": code.copy}
    return Do("take_batch", f"batch/{code.number}", args, after)


def _slip(here: Now, code: Code) -> Do | Took:
    """A slip ends its sheet, on whichever of this screen's routers it lies.

    One that waits for its next run is wanted next.
    """
    if waiting := _waits(here, code):
        return _want(here, code, waiting)
    router = here.bed.id
    for other in routers(here.hand, here.view):
        if find_bed(here.view, other).batch == code.number:
            router = other
    args = {"router": router, "sheet": code.sheet, "copy": code.copy}
    return Do("off_bed", f"slip/{code.number}-{code.sheet}", args, next_sheet(here, code.number))


def _waits(here: Now, code: Code) -> Slip | None:
    """The sheet of a valid slip, if it lies between two runs and was not put there just now."""
    slip = here.view.get(Slip, f"{code.number}-{code.sheet}")
    if slip is None or slip.state != BETWEEN:
        return None
    batch = here.view.get(Batch, code.number)
    at = [find_bed(here.view, r) for r in {*routers(here.hand, here.view), here.bed.id}]
    on_bed = any((b.batch, b.sheet) == (slip.batch, slip.sheet) for b in at)
    void = batch is None or code.copy not in ("", batch.copy)
    just_now = count_seconds(slip.at, here.hand.now) <= MOMENT_S
    return None if on_bed or void or just_now else slip


def _want(here: Now, code: Code, slip: Slip) -> Do | Took:
    """The sheet of a slip is wanted next; its batch is taken on first."""
    if here.bed.batch != slip.batch:
        return _take(here, code)
    hand = here.hand.with_work(sheet=slip.sheet, ticks=None)
    following = here._replace(hand=hand).due
    if following is None or following.sheet != slip.sheet:
        return Took(
            here.hand,
            refuse(
                say("{router} can't run what is next on sheet {n}", n=slip.sheet,
                    router=name_router(here.view, here.bed.id)),
                say("Take its traveller to the router that does."),
            ),
        )  # fmt: skip
    said = say("Sheet {n} is next: run {run} of {of}", n=slip.sheet, run=following.run,
               of=following.of)  # fmt: skip
    return Took(hand, good(said, what_next(here, hand)))


def _lot_code(here: Now, code: Code) -> Took:
    revision = here.revision
    if revision is None:
        return Took(here.hand, refuse(say("No batch in hand yet"), say("Scan a traveller first.")))
    if wrong := no_next(here) or wrong_lot(here.view, revision, code.number):
        return Took(here.hand, wrong)
    hand = here.hand.with_work(lot=code.number)
    lot = here.view.get(Lot, code.number)
    said = say("Sheet from lot {lot}", lot=code.number)
    if lot and lot.mark:
        return Took(hand, notice(said, say("Look twice: {mark}.", mark=lot.mark)))
    return Took(hand, good(said, what_next(here, hand)))


def _bit_code(here: Now, code: Code) -> Do | Took:
    """A bit that is in is ticked; another one is put in; in a question it is the one."""
    bit = here.view.get(Bit, code.number)
    inside = code.number in dict(here.bed.bits).values()
    if here.mode == "broken":
        return Do("bit_broken", here.subject, {"bit": code.number}, bare(here.hand))
    if inside and bit and bit.state == "good":
        return tick(here, "bit")
    pocket = _pocket(here, bit) if bit else 0
    if pocket is None:
        return Took(
            here.hand,
            refuse(
                say("No pocket takes bit {bit}", bit=code.number),
                say("It fits none of the bits in the changer."),
            ),
        )
    args = {"bit": code.number, "pocket": pocket}
    left = [t for t in ticks(here.hand) if t not in ("bit", "zero")]
    return Do("change_bit", here.subject, args, here.hand.with_work(ticks=left or None))


def _pocket(here: Now, bit: Bit) -> int | None:
    """Where a bit goes: the spindle, or the pocket that wants its diameter."""
    router = here.view.get(Router, here.bed.id)
    if router is None or not router.changer:
        return 0
    run = here.running if here.bed.sheet else here.preparing
    for use in run.bits if run else ():
        if use.diameter_mm == bit.diameter_mm:
            return use.number
    held = {p: here.view.get(Bit, b) for p, b in here.bed.bits}
    fits = [p for p, b in held.items() if b and b.diameter_mm == bit.diameter_mm]
    return fits[0] if fits else None


def _router_code(here: Now, code: Code) -> Took:
    if code.number not in routers(here.hand, here.view):
        return Took(
            here.hand,
            refuse(
                say("{router} is not served here", router=name_router(here.view, code.number)),
                say("Go to its own screen."),
            ),
        )
    return look_at(here, code.number)


def look_at(here: Now, router: str) -> Took:
    """The screen turns to another router; what was said of the first one's sheet goes."""
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


def _reason_code(here: Now, code: Code) -> Do | Took | None:
    if here.mode == "stop":
        args = {"reason": code.number}
        return Do("report_stop", here.subject, args, bare(here.hand))
    if here.mode != "spoil":
        return None
    reason = find_reason(here.view, code.number, "sheet")
    if reason is None:
        return Took(
            here.hand,
            refuse(say("That is no reason for a sheet"), say("Scan one of those shown.")),
        )
    return Took(
        here.hand.with_work(reason=reason.id),
        good(
            say("Sheet {n}: {why}", n=here.bed.sheet, why=reason.words),
            say("What survived? Enter whole parts, or confirm."),
        ),
    )


def choose_part(here: Now, number: str) -> Took | None:
    """Which part's survivors are counted next."""
    makes = here.revision.makes() if here.revision else {}
    if here.mode != "spoil":
        return None
    if number not in makes:
        return Took(
            here.hand, refuse(say("That part is not on this sheet"), say("Scan another part."))
        )
    said = say("{most} of these on a sheet", most=makes[number])
    return Took(here.hand.with_work(part=number), good(said, say("How many of them are whole?")))


CODE_STEPS: dict[str, Callable[[Now, Code], Do | Took | None]] = {
    "batch": _batch_code,
    "lot": _lot_code,
    "bit": _bit_code,
    "router": _router_code,
    "reason": _reason_code,
    "part": lambda here, code: choose_part(here, code.number),
}
