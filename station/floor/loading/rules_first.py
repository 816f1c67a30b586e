"""Compares the first sheet that a new bit, zero or file has cut with its master."""

from dataclasses import replace

from station.floor.loading.needs import (
    find_next_run,
    list_first_uses,
    refuse_bit,
    refuse_no_router,
)
from station.floor.loading.readings import give_first_off, give_size
from station.floor.shared.first_offs import CheckFirstOff, MeasureFirstOff
from station.queries.first_offs import (
    Measured,
    find_of_file,
    find_unsettled,
    find_what_is_new,
    list_bits_used,
    list_open_sizes,
    list_sizes,
)
from station.queries.readings import ask_if_far
from station.queries.routers import find_bed, find_running, name_router, say_why
from station.queries.settings import find_reason
from station.queries.underway import list_queue
from station.shop.acts import Act, Answer, ask, attention, good, notice, refuse
from station.shop.facts import Batch, Bed, Bit, Concern, Fact, FirstOff, Revision
from station.shop.moves import tail
from station.shop.views import View
from station.shop.words import MM, Say, length, say

MEASURE_AGAIN = say("Measure again: every reading is kept.")  # instead of taking it back
NOT_DUE = notice(say("No first-off is due"), say("Go on."))


# --- when it becomes due


def make_due(view: View, bed: Bed, run: Revision, after: Bed) -> tuple[Bed, bool]:
    """Makes a first-off due of the sheet that was cut, and tells whether anything was new.

    `after` is the bed as the act leaves it. What was cut before a stop says nothing of what
    comes after it: while the router is stopped, what is new stays for the next sheet. After
    it no file counts as it agreed before.
    """
    stopped = bed.state == "stopped"
    bed = replace(bed, first_off="") if stopped else bed
    why = find_what_is_new(view, bed, run)
    if not why:
        return after, False
    bits = list_bits_used(view, bed, run)
    first = FirstOff(file=run.id, bits=bits, zero_since=bed.zero_since, batch=bed.batch,
                     sheet=bed.sheet, why=why)  # fmt: skip
    if not stopped:
        count = after.firsts if not bed.first_off else list_unagreed(after)
        after = replace(after, first_off="", firsts=count)
    return keep_first(after, first), True


def list_unagreed(bed: Bed) -> tuple[FirstOff, ...]:
    """Lists the first-offs of a bed that did not agree."""
    return tuple(f for f in bed.firsts if f.state != "agreed")


def keep_first(bed: Bed, first: FirstOff) -> Bed:
    """Keeps a first-off, the newest, instead of the one before it of the same file.

    Where it is wrong, what agreed with the same bits and zero does not count any more.
    """
    known = list_unagreed(bed) if first.state == "wrong" else bed.firsts
    return replace(bed, firsts=(*(f for f in known if f.file != first.file), first))


def drop_broken(
    act: Act[object], view: View, bed: Bed, bit: Bit, cut: Batch | None = None
) -> tuple[Bed, tuple[Fact, ...]]:
    """Takes back what was due of a bit that broke: nothing it has cut can agree any more.

    What it has cut, and nobody has compared, is held. `cut` is a batch as this act leaves it.
    """
    gone = [f for f in bed.firsts if f.state == "due" and bit.id in f.bits]
    held: tuple[Fact, ...] = ()
    for number, sheet in {f.batch: f.sheet for f in gone}.items():
        batch = cut if cut and cut.id == number else view.get(Batch, number)
        held += hold_uncompared(act, batch, sheet, bit) if batch else ()
    return replace(bed, firsts=tuple(f for f in bed.firsts if f not in gone)), held


def hold_uncompared(act: Act[object], batch: Batch, sheet: int, bit: Bit) -> tuple[Fact, ...]:
    """Holds a batch whose sheet was a first-off that nobody compared before its bit broke."""
    why = f"sheet {sheet}: bit {bit.id} broke before it was compared"
    look = Concern(
        id=f"{act.id}-{batch.id}", what="not-compared", since=act.at, about=batch.key,
        text=say("Batch {batch} is held: {why}", batch=batch.id, why=why),
        choices=("let it go on", "keep it"),
    )  # fmt: skip
    held = replace(batch, holds=(*batch.holds, why), looks=(*batch.looks, look.id))
    return (held, look)


# --- what is found


def measure_first_off(act: Act[MeasureFirstOff], view: View) -> Answer:
    """Takes a reading of one size; the last one that was open settles the first-off."""
    bed = find_bed(view, tail(act.subject))
    first = find_unsettled(bed, act.args.file)
    wrong = refuse_no_router(act, view) or _refuse_now(view, bed, first)
    if wrong or first is None:
        return wrong or NOT_DUE
    asked = f"{act.args.part}/{act.args.size}"
    one = next((m for m in list_sizes(view, first) if m.name == asked), None)
    if one is None:
        return refuse(say("That is not measured here"), say("Choose a size that is shown."))
    if far := ask_if_far(one.size, act.args.reading_mm):
        return far
    return _book_reading(act, view, bed, first, one)


def _book_reading(
    act: Act[MeasureFirstOff], view: View, bed: Bed, first: FirstOff, one: Measured
) -> Answer:
    """Books a reading that can be of this size: inside, outside, or the last that was open."""
    mm, size = act.args.reading_mm, one.size
    measured = (give_size(bed, first, one, mm),)
    read = replace(first, readings=(*first.readings, (one.part.id, size.name, mm)))
    said = say("{part} {size}: {mm} mm, limits {low} to {high}", part=one.part.name,
               size=size.name, mm=length(mm), low=length(size.low_mm),
               high=length(size.high_mm))  # fmt: skip
    if not size.allows(mm):
        outside = _find_outside(act, view, bed, read, said)
        return replace(outside, readings=(*measured, *outside.readings))
    open_ = list_open_sizes(read, list_sizes(view, read))
    if not open_:
        agreed = _say_agrees(act, view, bed, read)
        return replace(agreed, readings=(*measured, *agreed.readings))
    do = say("Next: {part}, {size}.", part=open_[0].part.name, size=open_[0].size.in_words)
    if open_[0].name == one.name:
        do = say("Once more the same: two inside in turn count.")
    return good(said, do, sets=(keep_first(bed, read),), readings=measured)


def _refuse_now(view: View, bed: Bed, first: FirstOff | None) -> Answer | None:
    """Refuses to compare what was not cut, not now, or what a bit that broke has cut."""
    if first is None:
        return _refuse_uncut(view, bed)
    if bed.sheet:
        return notice(
            say("Not while sheet {sheet} is cut", sheet=bed.sheet),
            say("Check it when the bed is free."),
        )
    for each in first.bits:
        bit = view.get(Bit, each)
        if bit and bit.state == "broken":
            return refuse(
                say("Bit {bit} is broken", bit=bit.id),
                say("Say that it is wrong; put a new bit in, measure its first sheet."),
            )
    return None


def _refuse_uncut(view: View, bed: Bed) -> Answer:
    """Refuses to compare where nothing new was cut; the way on is a fit bit and its sheet."""
    name = name_router(view, bed.id)
    run = find_next_run(view, bed)
    for use in list_first_uses(view, bed, run) if run else ():
        if wrong := refuse_bit(view, bed, use):
            return wrong
    if bed.first_off:
        return notice(
            say(
                "Nothing was cut on {router} since: {why}", router=name, why=say_why(bed.first_off)
            ),
            say("Cut its first sheet, then measure that."),
        )
    return notice(say("No first-off is due on {router}", router=name), say("Go on."))


def check_first_off(act: Act[CheckFirstOff], view: View) -> Answer:
    """Notes that a first-off agrees with the master, or that it is wrong."""
    bed = find_bed(view, tail(act.subject))
    if wrong := refuse_no_router(act, view):
        return wrong
    first = find_unsettled(bed, act.args.file)
    if not act.args.good:
        return _say_wrong(act, view, bed, first or _find_running(view, bed))
    wrong = _refuse_now(view, bed, first)
    if wrong or first is None:
        return wrong or NOT_DUE
    if first.state == "wrong":
        return _overrule(act, view, bed, first)
    if open_ := list_open_sizes(first, list_sizes(view, first)):
        return refuse(
            say("{part}, {size}, is not measured yet", part=open_[0].part.name,
                size=open_[0].size.in_words),
            say("Enter what you read in {unit}.", unit=MM),
        )  # fmt: skip
    return _say_agrees(act, view, bed, first)


def _find_running(view: View, bed: Bed) -> FirstOff | None:
    """Finds what agreed of the file that is cut now, as of its newest sheet: it may be wrong."""
    batch, run = view.get(Batch, bed.batch), find_running(view, bed) or find_next_run(view, bed)
    known = find_of_file(bed, run.id) if run else None
    if batch is None or known is None:
        return known
    newest = bed.sheet or batch.cut
    return replace(known, batch=batch.id, sheet=newest, readings=()) if newest else known


def _overrule(act: Act[CheckFirstOff], view: View, bed: Bed, first: FirstOff) -> Answer:
    """Lets a supervisor pass a first-off that is wrong, with a reason."""
    said = say("First-off is wrong on {router}", router=name_router(view, bed.id))
    if not act.args.approved:
        return ask(said, say("Measure it again, or a supervisor's badge."), "supervisor")
    if find_reason(view, act.args.reason, "overrule") is None:
        return ask(said, say("Scan the reason for overruling it."), "reason")
    sets = _agree(act, view, bed, first)
    return attention(
        say("First-off is passed on {router} by worker {by}", router=name_router(view, bed.id),
            by=act.args.approved),
        _say_load_next(view, bed),
        sets=sets,
        readings=(give_first_off(bed, first, agrees=False),),
    )  # fmt: skip


def _say_load_next(view: View, bed: Bed) -> Say:
    """Says what is loaded next: a sheet of the batch on the router, or the first of another."""
    batch = view.get(Batch, bed.batch)
    if batch and batch.cut < batch.sheets:
        return say("Load the next sheet.")
    if not list_queue(view, bed.id):
        return say("The batch is cut: nothing else waits for this router.")
    return say("The batch is cut: take the next one.")


def _say_agrees(
    act: Act[CheckFirstOff | MeasureFirstOff], view: View, bed: Bed, first: FirstOff
) -> Answer:
    """Says that a first-off agrees: the router is free for the next sheet."""
    return good(
        say("First-off agrees on {router}", router=name_router(view, bed.id)),
        _say_load_next(view, bed),
        sets=_agree(act, view, bed, first),
        readings=(give_first_off(bed, first, agrees=True),),
    )


def _find_outside(
    act: Act[MeasureFirstOff], view: View, bed: Bed, first: FirstOff, said: Say
) -> Answer:
    """Holds the batch while a reading is outside: measured again, it may still agree."""
    sets = _turn_wrong(act, view, bed, first, _name_outside(view, bed))
    do = say("Batch {batch} is held. Measure the same once more, or “{wrong}”.",
             batch=first.batch, wrong=say("It is wrong"))  # fmt: skip
    no = () if first.state == "wrong" else (give_first_off(bed, first, agrees=False),)
    return attention(said, do, sets=sets, readings=no)


def _say_wrong(act: Act[CheckFirstOff], view: View, bed: Bed, first: FirstOff | None) -> Answer:
    """Holds the batch of a first-off that a person says is wrong."""
    if first is None:
        return refuse(
            say("No first sheet of {router} is known", router=name_router(view, bed.id)),
            say("Hold the batch instead: under “More”."),
        )
    why = _name_wrong(view, bed)
    batch = view.get(Batch, first.batch)
    if batch and why in batch.holds and first.state == "wrong":
        return notice(
            say("Batch {batch} is held already", batch=batch.id), say("Call the supervisor.")
        )
    return attention(
        say("Batch {batch} is held: first-off is wrong", batch=first.batch),
        say("Call the supervisor; look at bit, zero and file."),
        sets=_turn_wrong(act, view, bed, first, why),
        readings=(give_first_off(bed, first, agrees=False),),
    )


def _name_outside(view: View, bed: Bed) -> str:
    """Names the hold that goes when it is measured again and agrees."""
    return f"first-off is outside its limits on {name_router(view, bed.id)}"


def _name_wrong(view: View, bed: Bed) -> str:
    """Names the hold that a supervisor alone takes away."""
    return f"first-off is wrong on {name_router(view, bed.id)}"


def _turn_wrong(
    act: Act[CheckFirstOff | MeasureFirstOff], view: View, bed: Bed, first: FirstOff, why: str
) -> tuple[Fact, ...]:
    """Turns a first-off wrong: its batch is held, and a supervisor has it to look at."""
    batch = view.get(Batch, first.batch)
    told = view.get(Concern, first.concern)
    sets: tuple[Fact, ...] = ()
    if told is None or told.settled:
        told = Concern(
            id=act.id,
            what="first-off",
            since=act.at,
            tone="stop",
            about=f"batch/{first.batch}",
            text=say("Batch {batch} is held: {why}", batch=first.batch, why=why),
            choices=("let it go on", "keep it"),
        )
        sets += (told,)
    if batch and why not in batch.holds:
        looks = tuple(dict.fromkeys((*batch.looks, told.id)))
        sets += (replace(batch, holds=(*batch.holds, why), looks=looks),)
    wrong = replace(first, state="wrong", concern=told.id)
    return (keep_first(bed, wrong), *sets)


def _agree(
    act: Act[CheckFirstOff | MeasureFirstOff], view: View, bed: Bed, first: FirstOff
) -> tuple[Fact, ...]:
    """Lets a first-off agree; what was held for a reading is free, the rest by a supervisor."""
    lifted = {_name_outside(view, bed)}
    if act.args.approved:
        lifted.add(_name_wrong(view, bed))
    sets: tuple[Fact, ...] = (keep_first(bed, replace(first, state="agreed", concern="")),)
    batch, told = view.get(Batch, first.batch), view.get(Concern, first.concern)
    left = tuple(why for why in batch.holds if why not in lifted) if batch else ()
    settles = told is not None and not told.settled and _name_wrong(view, bed) not in left
    if batch and left != batch.holds:
        looks = tuple(x for x in batch.looks if not settles or x != first.concern)
        sets += (replace(batch, holds=left, looks=looks),)
    if told and settles:
        sets += (replace(told, settled="measured again", settled_at=act.at,
                         by=act.args.approved or act.worker, reason=act.args.reason),)  # fmt: skip
    return sets
