"""Takes a sheet off the bed, whole or spoiled; its parts wait at popping."""

from collections.abc import Mapping
from dataclasses import replace

from station.floor.loading.acts import EndSheet, SpoilSheet
from station.floor.loading.needs import (
    MOMENT_S,
    NO_BATCH,
    changes_by_hand,
    find_batch,
    list_later_uses,
    refuse_void_copy,
    wear_bit,
)
from station.floor.loading.readings import give_minutes
from station.floor.loading.rules_first import drop_broken, hold_uncompared, make_due
from station.queries.batches import find_revision
from station.queries.first_offs import find_what_is_new, list_bits_used
from station.queries.pace import extend_pace
from station.queries.routers import (
    count_cutting_s,
    find_bed,
    find_bit_in,
    find_running,
    name_router,
)
from station.queries.runs import (
    BETWEEN,
    Due,
    count_done,
    find_next,
    find_work,
    list_runs,
    name_run,
)
from station.queries.settings import find_reason
from station.queries.unmade import raise_unmade
from station.shop.acts import Act, Answer, ask, attention, good, notice, refuse
from station.shop.facts import (
    Batch,
    BatchState,
    Bed,
    Bit,
    Concern,
    Fact,
    Pace,
    Ran,
    Reason,
    Revision,
    Slip,
)
from station.shop.moves import BOARD, SHEET, Move, move
from station.shop.times import is_near
from station.shop.views import View
from station.shop.words import Say, clock, length, say

Bits = tuple[Bit | None, ...]  # the bit of each use of a run; None where there is none
# Share of the expected time before which a sheet can't be done: common practice, no source.
TOO_SOON = 0.5


def end_sheet(act: Act[EndSheet], view: View) -> Answer:
    """Ends the sheet on the bed: it is cut."""
    batch = find_batch(act, view)
    if batch is None:
        return NO_BATCH
    bed, revision = find_bed(view, act.args.router), find_revision(view, batch)
    runs = list_runs(view, revision) if revision else ()
    run = runs[bed.run - 1] if bed.run <= len(runs) else None
    wrong = (
        refuse_void_copy(batch, act.args.copy)
        or _refuse_again(act, view, batch, bed)
        or _refuse_not_on_bed(act, view, batch, bed)
        or _ask_for_bit(act, view, bed, run)
        or _ask_too_soon(act, bed)
    )
    if wrong or revision is None:
        return wrong or NO_BATCH
    if bed.run < len(runs):
        off = _keep_for_next_run(act, view, batch, bed, revision, runs)
    else:
        off = _send_to_popping(act, view, batch, bed, revision, run or revision)
    off = replace(off, router=bed.id)
    return _hold_ran_on(act, bed, batch, off) if bed.ran_on else off


def _refuse_again(act: Act[EndSheet], view: View, batch: Batch, bed: Bed) -> Answer | None:
    """Refuses the same slip again: at once it is the trigger, later it is a question."""
    slip = view.get(Slip, f"{batch.id}-{act.args.sheet}")
    on_bed = slip and (bed.batch, bed.sheet) == (batch.id, slip.sheet)
    if slip is None or (slip.state == BETWEEN and on_bed):
        return None
    if is_near(slip.at, act.at, MOMENT_S):
        return notice(
            say("Sheet {sheet} is already off the bed, {at} by worker {by}",
                sheet=slip.sheet, at=clock(slip.at), by=slip.by),
            say("Nothing was counted twice."),
        )  # fmt: skip
    return notice(
        say("Sheet {sheet} came off {at} by worker {by}: next sheet, or a mistake?",
            sheet=slip.sheet, at=clock(slip.at), by=slip.by),
        say("Next sheet: scan its own slip. Nothing was counted."),
    )  # fmt: skip


def _refuse_not_on_bed(act: Act[EndSheet], view: View, batch: Batch, bed: Bed) -> Answer | None:
    """Refuses when another sheet, or none, is on this bed."""
    if bed.batch != batch.id or not bed.sheet:
        return refuse(
            say("No sheet of batch {batch} is on {router}", batch=batch.id,
                router=name_router(view, bed.id)),
            say("Start the sheet first, or look at the other router."),
        )  # fmt: skip
    if act.args.sheet not in (0, bed.sheet):
        return refuse(
            say("Sheet {sheet} is on the bed, not {slip}", sheet=bed.sheet, slip=act.args.sheet),
            say("Take slip {sheet}.", sheet=bed.sheet),
        )
    if bed.state == "stopped":
        return refuse(
            say("{router} is stopped since {at}", router=name_router(view, bed.id),
                at=clock(bed.stopped)),
            say("End the stop first, or report the sheet spoiled."),
        )  # fmt: skip
    return None


def _ask_for_bit(act: Act[EndSheet], view: View, bed: Bed, run: Revision | None) -> Answer | None:
    """Asks where a bit that the file asks for by hand was not scanned in."""
    missing = list_later_uses(view, bed, run) if run else ()
    if not missing or act.args.sure:
        return None
    return ask(
        say("The {size} mm bit was not scanned in", size=length(missing[0].diameter_mm)),
        say("Scan it if it is in. Spindle stopped, sheet done: scan again."),
        "sure",
    )


def _ask_too_soon(act: Act[EndSheet], bed: Bed) -> Answer | None:
    """Asks when the sheet can hardly be done, or a load may have been meant."""
    traveller = act.args.traveller
    loaded = say(
        "Sheet {sheet} loaded {at} by worker {by}: next sheet, or a mistake?",
        sheet=bed.sheet,
        at=clock(bed.started),
        by=bed.by,
    )
    if traveller and is_near(bed.started, act.at, MOMENT_S):
        return notice(
            say("Sheet {sheet} is loaded already, {at} by worker {by}", sheet=bed.sheet,
                at=clock(bed.started), by=bed.by),
            say("Nothing was counted twice."),
        )  # fmt: skip
    if act.args.sure:
        return None
    if count_cutting_s(bed, act.at) < TOO_SOON * bed.minutes * 60:
        return ask(
            say("Sheet {sheet} started {at}, {minutes} min expected", sheet=bed.sheet,
                at=clock(bed.started), minutes=round(bed.minutes)),
            say("Has the spindle stopped? Scan again if it has."),
            "sure",
        )  # fmt: skip
    if traveller:
        return ask(loaded, say("Off the bed: scan it again. A mistake: go on."), "sure")
    return None


def _send_to_popping(
    act: Act[EndSheet], view: View, batch: Batch, bed: Bed, revision: Revision, run: Revision
) -> Answer:
    n, makes = bed.sheet, revision.makes()
    after, bits = _count_sheet(batch), _find_bits(view, bed, run)
    following = _find_after(view, after, bed, revision)
    moves = _move_whole(batch, n, makes) + _use_up(view, bed) + _wear_out(view, bed, run, bits)
    emptied, after = _empty_bed(view, bed, after, revision, following)
    emptied, first = make_due(view, bed, run, emptied)
    slip = _fill_slip(act, view, bed, run)
    sets: tuple[Fact, ...] = (emptied, after, slip)
    sets += _learn_pace(act, view, bed, run)
    count = sum(makes.values())
    said = say("Sheet {sheet} is off the bed: {count} {count|part|parts}", sheet=n, count=count)
    do, read = _say_after(after, following, first=first), (give_minutes(slip, run),)
    return good(said, do, moves=moves, sets=sets, readings=read)


def _hold_ran_on(act: Act[EndSheet], bed: Bed, batch: Batch, off: Answer) -> Answer:
    """Holds a batch whose sheet ran on after its position may have been lost, till it is seen."""
    why = f"sheet {bed.sheet} ran on after {bed.ran_on}"
    look = Concern(
        id=act.id,
        what="ran-on",
        since=act.at,
        about=batch.key,
        text=say(
            "Batch {batch} is held: {why}. Look at what was cut then", batch=batch.id, why=why
        ),
        choices=("let it go on", "keep it"),
    )
    after = next((f for f in off.sets if isinstance(f, Batch)), batch)
    held = replace(after, holds=(*after.holds, why), looks=(*after.looks, look.id))
    others = tuple(f for f in off.sets if f.key != batch.key)
    do = say("Batch {batch} is held: a supervisor looks at what was cut after the stop.",
             batch=batch.id)  # fmt: skip
    return replace(off, tone="attention", do=do, sets=(*others, held, look))


def _learn_pace(act: Act[EndSheet], view: View, bed: Bed, revision: Revision) -> tuple[Pace, ...]:
    """Learns the router's time from the sheet, unless it was hardly cut to its end."""
    real_s, file_s = count_cutting_s(bed, act.at), revision.minutes * 60
    if real_s < TOO_SOON * bed.minutes * 60 or file_s <= 0:
        return ()
    return (extend_pace(view.get(Pace, bed.id), bed.id, file_s, real_s),)


def _keep_for_next_run(
    act: Act[EndSheet],
    view: View,
    batch: Batch,
    bed: Bed,
    revision: Revision,
    runs: tuple[Revision, ...],
) -> Answer:
    """Keeps the sheet with its slip for its next run, here or on another router."""
    n, run = bed.sheet, runs[bed.run - 1]
    bits = _find_bits(view, bed, run)
    slip = replace(_fill_slip(act, view, bed, run), state=BETWEEN)
    ran = Ran(revision=run.id, router=bed.id, at=slip.at, minutes=slip.minutes, by=slip.by)
    slip = replace(slip, runs=(*slip.runs, ran))
    moves = (_move_sheet(view, bed, BETWEEN), *_wear_out(view, bed, run, bits))
    free, first = make_due(view, bed, run, _free_bed(bed))
    timed, read = _learn_pace(act, view, bed, run), (give_minutes(slip, run),)
    done = count_done(view, batch, revision) | {n: bed.run}
    following = runs[bed.run]
    said = say("Sheet {n}: run {run} of {of} is done", n=n, run=bed.run, of=len(runs))
    if find_next(batch, runs, free, done):
        do = (
            say("On with it: {run} on its pins.", run=name_run(view, following))
            if following.takes(bed.id)
            else say("Put it aside with its slip; take the next sheet.")
        )
        if first and not following.takes(bed.id):
            do = say("Put it aside with its slip. First-off check, then the next sheet.")
        return good(said, do, moves=moves, sets=(free, slip, *timed), readings=read)
    there = following.routers[0] if following.routers else batch.router
    away = replace(batch, router=there)
    do = say("Sheets, slips and traveller to {router}.", router=name_router(view, there))
    sets = (replace(free, batch=""), away, slip, *timed)
    return good(said, do, moves=moves, sets=sets, readings=read)


def _say_after(batch: Batch, following: Due | None, *, first: bool) -> Say:
    """Says what to do after a sheet."""
    if first and batch.state == "cut":
        return say("First-off check, then all to popping. The batch is cut.")
    if first and (following is None or batch.state == "cancelled"):
        return say("First-off check here. Then slip and parts to popping.")
    if batch.state == "cut":
        return say("Slip and parts to popping. The batch is cut.")
    if batch.state == "cancelled":
        return say("Slip and parts to popping. The batch is cancelled.")
    if following is None:
        return say("Slip and parts to popping. The rest runs on another router.")
    if first:
        return say("Slip to popping. First-off check before sheet {n}.", n=following.sheet)
    return say("Slip and parts to popping. Sheet {n} is next.", n=following.sheet)


def _find_after(view: View, batch: Batch, bed: Bed, revision: Revision) -> Due | None:
    """Finds what this router cuts of the batch once the sheet on its bed is done with."""
    done = count_done(view, batch, revision)
    done.pop(bed.sheet, None)
    return find_next(batch, list_runs(view, revision), _free_bed(bed), done)


def _count_sheet(batch: Batch, spoiled: int = 0) -> Batch:
    """Counts one sheet more as done; a batch that was cancelled stays so."""
    cut = batch.cut + 1
    state: BatchState = "cut" if cut >= batch.sheets else "cutting"
    if batch.state == "cancelled":
        state = batch.state
    return replace(batch, cut=cut, spoiled=batch.spoiled + spoiled, state=state)


def _free_bed(bed: Bed) -> Bed:
    """Gives the bed without its sheet."""
    return replace(
        bed,
        state="stopped" if bed.state == "stopped" else "free",
        sheet=0,
        run=1,
        started="",
        minutes=0.0,
        paused_s=0,
        ran_on="",
    )


def _empty_bed(
    view: View, bed: Bed, batch: Batch, revision: Revision, following: Due | None
) -> tuple[Bed, Batch]:
    """Frees the bed; a batch that is cut, or due elsewhere, leaves the router."""
    done, free = batch.state != "cutting", _free_bed(bed)
    if not done and following is None:
        slips = count_done(view, batch, revision)
        slips.pop(bed.sheet, None)
        there = find_next(batch, list_runs(view, revision), free, slips, anywhere=True)
        routers = there.file.routers if there else ()
        return replace(free, batch=""), replace(batch, router=(*routers, batch.router)[0])
    return replace(free, batch="" if done else bed.batch), batch


def _move_whole(batch: Batch, n: int, counts: Mapping[str, int]) -> tuple[Move, ...]:
    """Moves whole pieces to popping, under the slip of their sheet."""
    return tuple(
        move(part, qty, "cut", f"popping/{n}", batch.id) for part, qty in counts.items() if qty
    )


def _move_lost(batch: Batch, reason: Reason, counts: Mapping[str, int]) -> tuple[Move, ...]:
    """Moves lost pieces to what is spoiled for a reason."""
    to = f"spoiled/{reason.id}"
    return tuple(move(part, qty, "cut", to, batch.id) for part, qty in counts.items() if qty)


def _use_up(view: View, bed: Bed) -> tuple[Move, ...]:
    """Moves the sheet itself to what is used up."""
    return (_move_sheet(view, bed, "used"),)


def _move_sheet(view: View, bed: Bed, to: str) -> Move:
    """Moves the sheet itself off the bed. One that the books have not there is a recount's."""
    on_bed = f"bed/{bed.id}"
    known = any((h.part, h.batch) == (SHEET, bed.lot) for h in view.stock(place=on_bed))
    return move(SHEET, 1, on_bed if known else "recount", to, bed.lot)


def _fill_slip(act: Act[EndSheet | SpoilSheet], view: View, bed: Bed, run: Revision) -> Slip:
    first = next(filter(None, _find_bits(view, bed, run)), None)
    before = view.get(Slip, f"{bed.batch}-{bed.sheet}") if bed.run > 1 else None
    cut_by = (*(before.cut_by if before else ()), *list_bits_used(view, bed, run),
              *((first.id,) if first else ()))  # fmt: skip
    return Slip(
        id=f"{bed.batch}-{bed.sheet}",
        runs=before.runs if before else (),
        batch=bed.batch,
        sheet=bed.sheet,
        router=bed.id,
        at=act.at,
        by=act.worker,
        minutes=round(count_cutting_s(bed, act.at) / 60, 2),
        lot=bed.lot,
        bit=first.id if first else "",
        bits=tuple(dict.fromkeys(cut_by)),
    )


def spoil_sheet(act: Act[SpoilSheet], view: View) -> Answer:
    """Spoils the sheet on the bed."""
    batch = find_batch(act, view)
    if batch is None:
        return NO_BATCH
    bed = find_bed(view, act.args.router)
    revision = find_revision(view, batch)
    if bed.batch != batch.id or not bed.sheet or revision is None:
        return refuse(
            say("No sheet of batch {batch} is on {router}", batch=batch.id,
                router=name_router(view, bed.id)),
            say("A sheet is spoiled while it lies on the bed."),
        )  # fmt: skip
    reason = find_reason(view, act.args.reason, "sheet")
    if reason is None:
        return ask(
            say("Why is sheet {sheet} spoiled?", sheet=bed.sheet),
            say("Scan a reason card for sheets."),
            "reason",
        )
    survived = _check_survived(act, revision)
    if isinstance(survived, Answer):
        return survived
    lost = _lose_sheet(act, view, batch, bed, revision, reason, survived)
    return replace(lost, router=bed.id)


def _check_survived(act: Act[SpoilSheet], revision: Revision) -> dict[str, int] | Answer:
    """Counts what survived of each part, or refuses when there can't be so many."""
    counts, makes = act.args.survived, revision.makes()
    for part, qty in counts.items():
        most = makes.get(part, 0)
        if not 0 <= qty <= most:
            return refuse(
                say("A sheet has {most} of part {part}", most=most, part=part),
                say("Enter a number from 0 to {most}.", most=most),
            )
    return {part: counts.get(part, 0) for part in makes}


def _lose_sheet(
    act: Act[SpoilSheet],
    view: View,
    batch: Batch,
    bed: Bed,
    revision: Revision,
    reason: Reason,
    survived: dict[str, int],
) -> Answer:
    n, makes = bed.sheet, revision.makes()
    after = _count_sheet(batch, spoiled=1)
    lost = {part: qty - survived[part] for part, qty in makes.items()}
    run = find_running(view, bed) or revision
    bits = _find_bits(view, bed, run)
    moves = _move_whole(batch, n, survived) + _use_up(view, bed) + _wear_out(view, bed, run, bits)
    moves += _move_lost(batch, reason, lost)
    following = _find_after(view, after, bed, revision)
    emptied, after = _empty_bed(view, bed, after, revision, following)
    if reason.breaks_bit:
        whole = any(survived.values())
        sets = _break_bit_in(act, view, bed, run, emptied, after, whole=whole)
    else:
        if any(survived.values()):
            emptied, _ = make_due(view, bed, run, emptied)
        due = f"sheet spoiled: {reason.words}" if reason.first_off else ""
        sets = (replace(emptied, first_off=emptied.first_off or due), after)
    slip = _fill_slip(act, view, bed, run)
    if any(survived.values()):
        sets += (slip,)
    elif bed.run > 1:  # its slip waits for a run that does not come
        sets += (replace(slip, state="spoiled"),)
    if batch.state != "cancelled":
        sets += (raise_unmade(batch, n, sum(lost.values()), id=act.id, at=act.at),)
    return attention(
        say("Sheet {sheet} spoiled: {kept} whole, {lost} lost", sheet=n,
            kept=sum(survived.values()), lost=sum(lost.values())),
        say("Whole ones to popping. “{more}” makes good.", more=say("Cut one more sheet")),
        moves=moves,
        sets=sets,
    )  # fmt: skip


def _break_bit_in(
    act: Act[SpoilSheet],
    view: View,
    bed: Bed,
    revision: Revision,
    after: Bed,
    batch: Batch,
    *,
    whole: bool,
) -> tuple[Fact, ...]:
    """Marks the bit that broke, and the bed with its zero due.

    The batch is held where pieces are left `whole` of a sheet that was to be compared.
    """
    uses = [b for use in revision.bits if (b := find_bit_in(view, bed, use))]
    named = view.get(Bit, act.args.bit)
    bit = named if named and named.id in dict(bed.bits).values() else next(iter(uses), None)
    why = f"bit {bit.id} broke" if bit else "a bit broke"
    due = replace(after, zero=why, zero_since=act.at)
    if bit is None:
        return (due, batch)
    due, held = drop_broken(act, view, due, bit, batch)
    if whole and not held and find_what_is_new(view, bed, revision):
        held = hold_uncompared(act, batch, bed.sheet, bit)
    facts = (due, replace(bit, state="broken"), batch, *held)
    return tuple({fact.key: fact for fact in facts}.values())


def _find_bits(view: View, bed: Bed, run: Revision) -> Bits:
    """Finds the bit of each use of a run, as they are in now."""
    return tuple(find_bit_in(view, bed, use) for use in run.bits)


def _wear_out(view: View, bed: Bed, run: Revision, bits: Bits) -> tuple[Move, ...]:
    """Moves the metres of one run onto each bit that cut it, and a pass onto the spoilboard.

    A laser, an engraving and a second operation do not cut through into it.
    """
    through = find_work(view, run) == "parts"
    moves = [move(BOARD, 1, "wear", f"spoilboard/{bed.id}", "")] if through else []
    pairs = tuple(zip(run.bits, bits, strict=True))
    if changes_by_hand(view, bed, run):  # the others' metres were moved at their changes
        pairs = pairs[bed.changes : bed.changes + 1]
    for use, bit in pairs:
        if bit and bit.diameter_mm == use.diameter_mm and round(use.cut_mm) > 0:
            moves.append(wear_bit(bit, round(use.cut_mm), bed))
    return tuple(moves)
