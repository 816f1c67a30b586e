"""Tells of stops and their end, bits, start of day, a resurfaced spoilboard, re-homing."""

from dataclasses import replace

from station.floor.loading.acts import (
    BreakBit,
    ChangeBit,
    EndStop,
    Rehome,
    ReportStop,
    Resurface,
    SetZero,
    StartDay,
)
from station.floor.loading.needs import (
    RESTART,
    list_later_uses,
    list_restart_ticks,
    refuse_no_router,
    wear_bit,
)
from station.floor.loading.rules_first import drop_broken
from station.floor.shared.retired import refuse_retired
from station.queries.routers import (
    count_metres_left,
    count_passes,
    find_bed,
    find_bit_in,
    find_running,
    name_router,
    say_why,
)
from station.queries.settings import find_reason
from station.shop.acts import Act, Answer, Args, ask, attention, calm, good, notice, refuse
from station.shop.facts import Bed, Bit, Fact, Reason
from station.shop.first_facts import say_reason
from station.shop.moves import BOARD, Move, move, tail
from station.shop.times import count_seconds
from station.shop.views import View
from station.shop.words import Say, clock, length, metres, say


def report_stop(act: Act[ReportStop], view: View) -> Answer:
    """Reports that the router stands still; this does not stop it."""
    if wrong := refuse_no_router(act, view):
        return wrong
    bed = find_bed(view, tail(act.subject))
    name = name_router(view, bed.id)
    if bed.state == "stopped":
        return notice(
            say("{router} is stopped since {at}", router=name, at=clock(bed.stopped)),
            say("When it runs again: “{over}”.", over=say("The stop is over")),
        )
    reason = find_reason(view, act.args.reason, "stop")
    if reason is None:
        return ask(
            say("Why does {router} stand still?", router=name),
            say("Use the router's own stop. Then scan a reason."),
            "reason",
        )
    why = f"stop at {clock(act.at)}, {reason.words}"
    stopped = replace(
        bed,
        state="stopped",
        stop=reason.id,
        stopped=act.at,
        first_off=bed.first_off or (why if reason.first_off else ""),
        rehome=bed.rehome or (why if reason.rehome else ""),
    )
    do = (
        say("Never hold parts by hand. This does not stop it.")
        if reason.hold_down
        else say("This does not stop the router: use its own stop.")
    )
    said = say("{router} stopped: {why}", router=name, why=say_reason(reason))
    return attention(said, do, sets=(stopped,))


def end_stop(act: Act[EndStop], view: View) -> Answer:
    """Lets the router run again; the stop is taken off the sheet's time."""
    if wrong := refuse_no_router(act, view):
        return wrong
    bed = find_bed(view, tail(act.subject))
    name = name_router(view, bed.id)
    if bed.state != "stopped":
        return notice(say("{router} is not stopped", router=name), say("Go on."))
    if act.args.since not in ("", bed.stopped):
        return notice(
            say("{router} stopped again at {at}", router=name, at=clock(bed.stopped)),
            say("What was confirmed before is not of this stop."),
        )
    if unsafe := _refuse_restart(act, view, bed):
        return unsafe
    lasted = round(count_seconds(bed.stopped, act.at))
    reason = view.get(Reason, bed.stop)
    lost = f"{reason.words} at {clock(bed.stopped)}" if reason and reason.rehome else ""
    again = replace(
        bed,
        state="cutting" if bed.sheet else "free",
        stop="",
        stopped="",
        paused_s=bed.paused_s + lasted if bed.sheet else 0,
        zero="" if bed.sheet else bed.zero,
        ran_on=(bed.ran_on or lost) if bed.sheet else "",
    )
    do = say("Go on.")
    if bed.first_off:
        do = say("The next sheet is a first-off.")
        if bed.sheet:
            do = say("After this sheet: first-off.")
    said = say("Stop over after {minutes} min", minutes=round(lasted / 60))
    return good(said, do, sets=(again,))


def _refuse_restart(act: Act[EndStop], view: View, bed: Bed) -> Answer | None:
    """Refuses to let it run on before what its reason asks for is done and confirmed."""
    run = find_running(view, bed) if bed.sheet else None
    for use in run.bits if run else ():
        bit = find_bit_in(view, bed, use)
        if bit and bit.state == "broken":
            return refuse(
                say("Bit {bit} is broken", bit=bit.id),
                say("Put a new one in and scan it, or report the sheet spoiled."),
            )
    missing = [n for n in list_restart_ticks(view, bed) if n not in act.args.ticks]
    over = say("The stop is over")
    if missing and missing != ["nobody_near"]:
        return refuse(RESTART[missing[0]], say("Look at it, tick it. Then “{over}”.", over=over))
    if bed.rehome:
        return refuse(
            say("Re-home the router first: {why}", why=bed.rehome),
            say("Then “{done}”.", done=say("Router re-homed")),
        )
    if missing:
        return refuse(RESTART["nobody_near"], say("Look, tick it. Then “{over}”.", over=over))
    return None


def change_bit(act: Act[ChangeBit], view: View) -> Answer:
    """Puts another bit in by hand."""
    if wrong := refuse_no_router(act, view):
        return wrong
    bed = find_bed(view, tail(act.subject))
    bit = view.get(Bit, act.args.bit)
    if bit is None:
        do = say("Scan its code again. Is it new? “{new}”.", new=say("New bit"))
        return refuse(say("There is no such bit"), do)
    if wrong := refuse_retired(bit, say("Bit {bit}", bit=bit.id)):
        return wrong
    return refuse_unfit(view, bed, bit) or put_bit_in(act, view, bed, bit, act.args.pocket)


def put_bit_in(act: Act[Args], view: View, bed: Bed, bit: Bit, pocket: int) -> Answer:
    """Puts a bit that fits into the spindle or a pocket; the one there goes to the drawer."""
    known = bit.id in bed.seen
    old = view.get(Bit, dict(bed.bits).get(pocket, ""))
    why = f"new bit {bit.id}"
    changed = replace(
        bed,
        bits=tuple(sorted({**dict(bed.bits), pocket: bit.id}.items())),
        first_off=_name_due(bed, old, why) if known else why,
        zero=why,
        zero_since=bed.zero_since if known else act.at,
        seen=tuple(dict.fromkeys((*bed.seen, bit.id))),
        changes=bed.changes + _is_next(view, bed, bit),
    )
    sets: tuple[Fact, ...] = (changed, replace(bit, router=bed.id))
    if old:
        sets += (replace(old, router=""),)
    said = say("Bit {bit} is in: {words}", bit=bit.id, words=bit.words)
    moves = _wear_so_far(view, bed, old)
    if bed.state == "cutting":
        return replace(_say_change(view, bed, bit, said), moves=moves, sets=sets)
    do = say("Set zero before the next sheet.")
    if changed.first_off:
        do = say("Set zero. Its first sheet is measured.")
    if old and old.state == "good":  # a card scanned to check it may be another bit's
        do = say("{do} Only looked at? Undo.", do=do)
    return good(said, do, moves=moves, sets=sets)


def _name_due(bed: Bed, old: Bit | None, why: str) -> str:
    """Names why a first-off is due: by the bit that is in, not by one that is out again."""
    return why if old and bed.first_off == f"new bit {old.id}" else bed.first_off


def _is_next(view: View, bed: Bed, bit: Bit) -> bool:
    """Tells whether a bit is the one that the file asks for next, by a change by hand.

    In a stop one like that which is in takes its place, for it may have broken.
    """
    revision = find_running(view, bed) if bed.sheet else None
    following = list_later_uses(view, bed, revision) if revision else ()
    if revision is None or not following or bit.diameter_mm != following[0].diameter_mm:
        return False
    now = revision.bits[bed.changes].diameter_mm
    return bed.state == "cutting" or bit.diameter_mm != now


def _say_change(view: View, bed: Bed, bit: Bit, said: Say) -> Answer:
    """Says of a bit put in where the file stops for it: its metres, and what it must cut."""
    revision = find_running(view, bed)
    uses = revision.bits if revision else ()
    need = uses[bed.changes + 1].cut_mm / 1000 if bed.changes + 1 < len(uses) else 0.0
    left = count_metres_left(view, bit)
    if left < need:
        do = say(
            "{left} m left, {need} m needed. Watch it; set zero first.",
            left=metres(max(0, left)),
            need=metres(need),
        )
        return attention(said, do)
    do = say(
        "Set zero, then go on: {left} m left, {need} m needed.",
        left=metres(left),
        need=metres(need),
    )
    return good(said, do)


def refuse_unfit(view: View, bed: Bed, bit: Bit) -> Answer | None:
    """Refuses a bit that can't go into this router now."""
    if bit.state != "good":
        return refuse(
            say("Bit {bit} is {state}", bit=bit.id, state=bit.state), say("Take another one.")
        )
    if bit.id in dict(bed.bits).values():
        return notice(say("Bit {bit} is in already", bit=bit.id), say("Check it, tick it."))
    if bit.router not in ("", bed.id):
        return refuse(
            say("Bit {bit} is in {router}", bit=bit.id, router=name_router(view, bit.router)),
            say("Take another one, or take it out there first."),
        )
    return _refuse_unasked(view, bed, bit) if bed.state == "cutting" else None


def _refuse_unasked(view: View, bed: Bed, bit: Bit) -> Answer | None:
    """Refuses a bit in the middle of a sheet, but for the one its file asks for next."""
    revision = find_running(view, bed)
    following = list_later_uses(view, bed, revision) if revision else ()
    if not following:
        return refuse(
            say("Sheet {sheet} is being cut", sheet=bed.sheet),
            say("Report a stop and isolate the spindle first."),
        )
    size = length(following[0].diameter_mm)
    if bit.diameter_mm != following[0].diameter_mm:
        return refuse(
            say("Bit {bit} is {size} mm", bit=bit.id, size=length(bit.diameter_mm)),
            say("The file asks for {size} mm next: take that one.", size=size),
        )
    return None


def _wear_so_far(view: View, bed: Bed, old: Bit | None) -> tuple[Move, ...]:
    """Moves what the bit that comes out has cut of the sheet under way, by hand changes."""
    revision = find_running(view, bed)
    if not bed.sheet or old is None or revision is None or len(revision.bits) < 2:
        return ()
    use = revision.bits[min(bed.changes, len(revision.bits) - 1)]
    cut_mm = round(use.cut_mm) if use.diameter_mm == old.diameter_mm else 0
    return (wear_bit(old, cut_mm, bed),) if cut_mm else ()


def break_bit(act: Act[BreakBit], view: View) -> Answer:
    """Marks a bit in this router as broken."""
    if wrong := refuse_no_router(act, view):
        return wrong
    bed = find_bed(view, tail(act.subject))
    bit = view.get(Bit, act.args.bit)
    if bit is None or bit.id not in dict(bed.bits).values():
        return refuse(
            say("That bit is not in {router}", router=name_router(view, bed.id)),
            say("Scan the bit that broke."),
        )
    if bit.state == "broken":
        return notice(say("Bit {bit} is broken already", bit=bit.id), say("Put a new one in."))
    why = f"bit {bit.id} broke"
    left, held = drop_broken(act, view, bed, bit)
    do = say("Spindle isolated? Then put a new bit in and scan it.")
    if bed.sheet:
        do = say("Use the router's own stop. Report the sheet spoiled.")
    return attention(
        say("Bit {bit} is broken", bit=bit.id),
        do,
        sets=(
            replace(bit, state="broken"),
            replace(left, zero=why, zero_since=act.at),
            *held,
        ),
    )


def _refuse_while_cutting(act: Act[object], view: View) -> Answer | None:
    """Refuses what can only be true once the bed is free."""
    if wrong := refuse_no_router(act, view):
        return wrong
    bed = find_bed(view, tail(act.subject))
    if not bed.sheet:
        return None
    return notice(
        say("Not while sheet {sheet} is on the bed", sheet=bed.sheet),
        say("Do it when the bed is free."),
    )


def start_day(act: Act[StartDay], view: View) -> Answer:
    """Notes that the checks the shop lists for the start of the day are done on a router.

    They look at the spoilboard, so the bed must be free.
    """
    if wrong := _refuse_while_cutting(act, view):
        return wrong
    bed = find_bed(view, tail(act.subject))
    name = name_router(view, bed.id)
    if bed.day == act.at[:10]:
        return calm(say("Start of day is already done on {router}", router=name), say("Go on."))
    taken = say("Go on with batch {batch}.", batch=bed.batch)
    return good(
        say("Start of day done on {router}", router=name),
        taken if bed.batch else say("Scan a traveller."),
        sets=(replace(bed, day=act.at[:10]),),
    )


def resurface(act: Act[Resurface], view: View) -> Answer:
    """Notes that the spoilboard was cut flat again: zero is due."""
    if wrong := _refuse_while_cutting(act, view):
        return wrong
    bed = find_bed(view, tail(act.subject))
    if not act.args.sure:
        said = say("Is the spoilboard of {router} cut flat?", router=name_router(view, bed.id))
        return ask(said, say("Then it is worn anew, and zero and a first-off are due."), "sure")
    done, why = count_passes(view, bed.id), "spoilboard resurfaced"
    return good(
        say("Spoilboard of {router} resurfaced", router=name_router(view, bed.id)),
        say("Set zero before the next sheet."),
        moves=(move(BOARD, done, f"spoilboard/{bed.id}", "wear", ""),) if done else (),
        sets=(replace(bed, zero=why, zero_since=act.at, first_off=bed.first_off or why),),
    )


def set_zero(act: Act[SetZero], view: View) -> Answer:
    """Notes that zero was set anew: for the bit put in by hand, or though it was not due.

    What was not due makes the first sheet a first-off.
    """
    bed = find_bed(view, tail(act.subject))
    if bed.sheet and bed.changes and bed.zero:
        said = say("Zero is set for {why}", why=say_why(bed.zero))
        clear = say("Hands away, spindle free: let the router go on.")
        return good(said, clear, sets=(replace(bed, zero=""),))
    if wrong := _refuse_while_cutting(act, view):
        return wrong
    why = bed.first_off or "zero set anew"
    return good(
        say("Zero is set anew on {router}", router=name_router(view, bed.id)),
        say("The first sheet after it is measured."),
        sets=(replace(bed, zero="", zero_since=act.at, first_off=why),),
    )


def rehome(act: Act[Rehome], view: View) -> Answer:
    """Notes that the router was sent to its home switches: in a stop, or at a free bed."""
    bed = find_bed(view, tail(act.subject))
    wrong = refuse_no_router(act, view)
    if bed.state != "stopped":
        wrong = wrong or _refuse_while_cutting(act, view)
    if wrong:
        return wrong
    name = name_router(view, bed.id)
    if not bed.rehome:
        return notice(say("{router} need not be re-homed", router=name), say("Go on."))
    return good(
        say("{router} is re-homed", router=name),
        _say_homed(bed),
        sets=(replace(bed, rehome=""),),
    )


def _say_homed(bed: Bed) -> Say:
    """Says what comes after a router was re-homed."""
    if bed.state == "stopped":
        return say("Then “{over}”.", over=say("The stop is over"))
    return say("The next sheet is a first-off.") if bed.first_off else say("Go on.")
