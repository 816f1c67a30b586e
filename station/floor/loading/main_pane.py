"""Shows the sheet in hand: what it is, its drawing and time, and the list beside it."""

from dataclasses import replace

from station.floor.loading.needs import (
    AT_ONCE,
    find_zero_due,
    judge_thickness,
    list_first_uses,
    list_later_uses,
    list_restart_ticks,
    name_material,
    refuse_bit,
)
from station.floor.loading.preparing import (
    CONFIRMED,
    Now,
    knows_lot,
    list_confirmed,
    needs_free_bed,
)
from station.queries.batches import describe_batch, find_approved_letter, find_revision
from station.queries.first_offs import find_new_before, find_unsettled
from station.queries.hold_downs import WrongHoldDown, find_wrong_on
from station.queries.pace import find_fit
from station.queries.revisions import count_tabs
from station.queries.routers import (
    count_cutting_s,
    count_metres_left,
    count_minutes_left,
    find_bit_in,
    find_ready_bit,
    name_router,
    say_why,
)
from station.queries.runs import WORK, find_work, name_run, refuse_unapproved_run
from station.queries.settings import find_shop
from station.queries.underway import list_queue
from station.shop.cards import button
from station.shop.faces import (
    Check,
    Checks,
    Header,
    NumberMark,
    Progress,
    SheetDrawing,
    Text,
)
from station.shop.facts import Batch, BitUse, Material, Revision
from station.shop.words import MM, Say, length, metres, say, together


def show_header(here: Now, batch: Batch, revision: Revision) -> Header:
    """Shows what the batch in hand is and which sheet it is at."""
    count = sum(revision.makes().values())
    following = here.due
    n = here.bed.sheet or (following.sheet if following else batch.sheets)
    of = say("of {sheets}", sheets=batch.sheets)
    if len(revision.in_order) > 1:
        run = here.bed.run if here.bed.sheet else following.run if following else 1
        of = say("of {sheets}, run {run} of {runs}", sheets=batch.sheets, run=run,
                 runs=len(revision.in_order))  # fmt: skip
    return Header(
        label=say("Batch"),
        number=batch.id,
        title=describe_batch(here.view, batch),
        note=say(
            "{material} · {sheets} {sheets|sheet|sheets} · {count} {count|part|parts} a sheet, "
            "{tabs} {tabs|tab|tabs}",
            material=name_material(here.view, revision.material),
            sheets=batch.sheets,
            count=count,
            tabs=count_tabs(here.view, revision),
        ),
        right_label=say("Sheet"),
        right=str(n),
        right_small=of,
    )


def draw_sheet(here: Now, revision: Revision) -> SheetDrawing:
    """Draws the sheet, with what is cut by the clock drawn as cut.

    A run that cuts no parts out is drawn on the parts of its sheet.
    """
    run = here.running or revision
    shown = run if run.placed else replace(revision, hold_downs=run.hold_downs)
    marks = _mark_hold_downs(run, _find_wrong_hold_down(here, run))
    return SheetDrawing(
        revision=shown,
        cut=_find_share_cut(here),
        marks=marks,
        note=say("Drawn from the cut file. Dots are tabs, rounds hold-downs; red: in the way.")
        if marks
        else say("Drawn from the cut file. Dots are tabs, black blocks hold-downs."),
    )


def _find_wrong_hold_down(here: Now, run: Revision) -> WrongHoldDown | None:
    """Finds the hold-down in the way, as starting the sheet would; None on a vacuum bed."""
    if here.router is not None and here.router.bed == "vacuum":
        return None
    return find_wrong_on(here.view, here.batch, run, here.router)


def _mark_hold_downs(run: Revision, wrong: WrongHoldDown | None) -> tuple[NumberMark, ...]:
    """Numbers the hold-downs, the one in the way in red; none where all can stand."""
    if wrong is None:
        return ()
    return tuple(
        NumberMark(number=n, x_mm=x, y_mm=y, tone="stop" if n == wrong.number else "good",
                   chosen=n == wrong.number)
        for n, (x, y) in enumerate(run.hold_downs, 1)
    )  # fmt: skip


def _find_share_cut(here: Now) -> float:
    bed = here.bed
    if not bed.sheet or bed.minutes <= 0:
        return 0.0
    return min(1.0, count_cutting_s(bed, here.hand.now) / 60 / bed.minutes)


def show_progress(here: Now, revision: Revision) -> Progress:
    """Shows the minutes left on the sheet, with a bar that runs on by the clock."""
    bed = here.bed
    left = count_minutes_left(bed, here.hand.now)
    right = _say_times(here, here.running or revision)
    late = left < 0
    return Progress(
        big=say("{minutes} min", minutes=round(abs(left))),
        note=say("longer than expected") if late else say("left on this sheet"),
        right=right,
        fraction=_find_share_cut(here),
        tone="attention" if late else "good",
        until=(bed.started, bed.ends),
    )


def _say_times(here: Now, revision: Revision) -> Say:
    """Says the file's time and what this router makes of it, its spread once it is known."""
    file, real = _write_minutes(revision.minutes), _write_minutes(here.bed.minutes)
    name, found = name_router(here.view, here.bed.id), find_fit(here.view, here.bed.id)
    if found is None:
        return say(
            "file says {file}, {router} runs it in {real}", file=file, router=name, real=real
        )
    return say(
        "file {file}, here {real} ± {spread}",
        file=file,
        real=real,
        spread=_write_minutes(found.spread_s / 60),
    )


def _write_minutes(minutes: float) -> str:
    """Writes minutes and seconds: ``22:10``."""
    whole, seconds = divmod(round(minutes * 60), 60)
    return f"{whole}:{seconds:02d}"


def list_first_things(here: Now) -> tuple[Check, ...]:
    """Lists what stands before any sheet on this router: to be read, or done first."""
    bed, day = here.bed, here.hand.now[:10]
    later = "later" if bed.sheet else "due"
    holds = here.batch.holds if here.batch else ()
    items = [
        Check(label=say("Read this"), text=n.text, code=button("told"))
        for n in here.unread[:AT_ONCE]
    ]
    items += [Check(label=say("This batch is held"), text=why, state="wrong") for why in holds]
    if bed.day != day:
        shop = find_shop(here.view)
        items += [
            Check(label=say("Start of day"), text=each)  # done together, by its button
            for each in shop.day_checks
        ]
    if bed.rehome:
        items.append(Check(label=say("Re-home the router"), text=bed.rehome,
                           code=button("rehomed"), state=later))  # fmt: skip
    first = here.first or find_unsettled(bed)
    if first and (here.first or first.state == "due"):
        said = say("batch {batch}, sheet {n}: {why}", batch=first.batch, n=first.sheet,
                   why=say_why(first.why))  # fmt: skip
        items.append(Check(label=say("First-off against the master"), text=said,
                           state="wrong" if first.state == "wrong" else later))  # fmt: skip
    return tuple(items)


def _show_what_is_new(here: Now) -> tuple[Check, ...]:
    """Shows that the sheet on the bed, or the next one, is a first-off."""
    run = (here.running if here.bed.sheet else here.next_run) or here.revision
    new = find_new_before(here.view, here.bed, run) if run else here.bed.first_off
    if not new:
        return ()
    label = say("After this sheet: first-off") if here.bed.sheet else say("It is a first-off")
    return (Check(label=label, text=say_why(new), state="later"),)


# what is confirmed before a router that is stopped runs on: its card, what it asks
RESTART: dict[str, tuple[str, Say]] = {
    "bit_out": ("bit_out", say("lifted clear of sheet and hold-downs")),
    "bed_clear": ("bed_clear", say("no loose parts or offcuts on it")),
    "sheet_held": ("held_down", say("it lies as before and does not move")),
    "zero": ("zeroed", say("set again for the new bit")),
    "nobody_near": ("nobody_near", say("hands off, everybody clear of it")),
}


def show_restart(here: Now) -> Checks:
    """Shows what is confirmed before the router runs on; it is sent home before the last one."""
    bed, ticked = here.bed, list_confirmed(here.hand, here.bed)
    items = []
    for name in list_restart_ticks(here.view, bed):
        card, text = RESTART[name]
        state = "done" if name in ticked else "due"
        items.append(Check(label=CONFIRMED[name], text=text, code=button(card), state=state))
    if bed.rehome:
        homed = Check(label=say("Re-home the router"), text=bed.rehome, code=button("rehomed"))
        items.insert(max(0, len(items) - 1), homed)
    return Checks(title=say("Before it runs on"), items=tuple(items))


def show_checks(here: Now, batch: Batch, revision: Revision) -> Checks:
    """Shows the list beside the sheet: what stands first, or the checks before the next one."""
    first = list_first_things(here)
    following, cutting = here.due, here.running if here.bed.sheet else None
    n = following.sheet if following else batch.sheets
    if first and not here.bed.sheet:
        return Checks(title=say("First, before sheet {n}", n=n), items=first)
    change = _show_change(here, cutting) if cutting else ()
    if following is None and here.bed.sheet:
        return Checks(
            title=say("After this last sheet"),
            items=(*change, *_show_what_is_new(here), *_show_next_batch(here)),
        )
    run = following.file if following else revision
    further = following is not None and following.run > 1
    title = say("Before sheet {n}", n=n)
    if following and further:
        title = say("Before run {run} of sheet {n}", run=following.run, n=n)
    return Checks(
        title=title,
        items=(
            *change,
            *((_show_run(here, run),) if further else ()),
            *(() if further else (_show_lot(here, revision), _show_thickness(here, revision))),
            _show_hold_down(here, run, further=further),
            *((_show_bit(here, run),) if run.bits else ()),
            *(() if here.bed.sheet else _show_by_hand(here, run)),
            _show_file(here, batch, run),
            _show_zero(here),
            *_show_what_is_new(here),
        ),
    )


def _show_change(here: Now, revision: Revision) -> tuple[Check, ...]:
    """Shows the bit that goes in by hand when the file stops for it on this sheet."""
    following = list_later_uses(here.view, here.bed, revision)
    of = len(revision.bits) - 1
    zero: tuple[Check, ...] = ()
    if here.bed.changes and here.bed.zero:
        zero = (Check(label=say("Zero, before it goes on"), text=say("set it: {why}",
                      why=say_why(here.bed.zero)), code=button("zeroed")),)  # fmt: skip
    label = say("Change {n} of {of}, when the file stops: scan this bit in",
                n=of - len(following) + 1, of=of)  # fmt: skip
    return (*zero, *(_show_laid_ready(here, use, label, "due") for use in following[:1]))


def _show_by_hand(here: Now, revision: Revision) -> tuple[Check, ...]:
    """Shows the bits put in by hand in the middle of the sheet: each checked at its change."""
    return tuple(
        _show_laid_ready(here, use, say("Then, by hand: checked at its change"), "later")
        for use in list_later_uses(here.view, here.bed, revision)
    )


def _show_laid_ready(here: Now, use: BitUse, label: Say, state: str) -> Check:
    """Shows the best bit in the drawer for a use, its metres against what it must cut."""
    bit, need = find_ready_bit(here.view, here.bed, use), use.cut_mm / 1000
    size = length(use.diameter_mm)
    if bit is None:
        return Check(label=label, text=say("{size} mm: none in the drawer", size=size),
                     state="wrong")  # fmt: skip
    left = count_metres_left(here.view, bit)
    said = say("{size} mm, no. {bit}: {left} m left, {need} m needed", size=size, bit=bit.id,
               left=metres(max(0, left)), need=metres(need))  # fmt: skip
    return Check(label=label, text=said, state="wrong" if left < need else state)


def _show_next_batch(here: Now) -> tuple[Check, ...]:
    """Shows what to bring for the batch that comes after this one on the router."""
    queue = list_queue(here.view, here.bed.id)
    batch = next((b for b in queue if b.id != here.bed.batch and not b.holds), None)
    revision = find_revision(here.view, batch) if batch else None
    if batch is None or revision is None:
        return (Check(label=say("Next batch"), text=say("none waits for this router"),
                      state="later"),)  # fmt: skip
    sizes = together([length(use.diameter_mm) for use in revision.bits])
    name = name_material(here.view, revision.material)
    return (
        Check(label=say("Next batch"), state="later",
              text=say("{batch}, {words}", batch=batch.id,
                       words=describe_batch(here.view, batch))),
        Check(label=say("Bring"), state="later",
              text=say("{n} {n|sheet|sheets} of {material}", n=batch.sheets - batch.cut,
                       material=name)),
        Check(label=say("Bits"), text=say("{sizes} mm", sizes=sizes), state="later"),
    )  # fmt: skip


def _show_lot(here: Now, revision: Revision) -> Check:
    lot = here.hand.work.lot if knows_lot(here, here.hand) else ""
    name = name_material(here.view, revision.material)
    return Check(
        label=say("Sheet"),
        text=say("{material}, lot {lot}", material=name, lot=lot)
        if lot
        else say("{material}: scan its lot", material=name),
        state="done" if lot else "due",
    )


def _show_thickness(here: Now, revision: Revision) -> Check:
    read, material = here.hand.work.reading, here.view.get(Material, revision.material)
    label = say("Thickness")
    if read:
        wrong = judge_thickness(here.view, revision, read)
        said = wrong or say("{mm} mm read", mm=length(read))
        return Check(label=label, text=said, state="wrong" if wrong else "done")
    if material is None:
        return Check(label=label, text=say("measure it, enter {unit}", unit=MM))
    low, high = length(material.low_mm, 1), length(material.high_mm, 1)
    return Check(label=label, text=say("measure: {low} to {high} mm", low=low, high=high))


def _find_state(here: Now, name: str) -> str:
    """Finds whether a check waits for a free bed (``later``), is ``done`` or ``due``."""
    if here.bed.sheet and needs_free_bed(here, name):
        return "later"
    return "done" if name in here.hand.work.ticks else "due"


def _show_run(here: Now, run: Revision) -> Check:
    """Shows what the run is, for whoever puts the sheet on."""
    return Check(
        label=WORK[find_work(here.view, run)], text=name_run(here.view, run), state="later"
    )


def _show_hold_down(here: Now, revision: Revision, *, further: bool) -> Check:
    router = here.router
    vacuum = router is not None and router.bed == "vacuum"
    count = len(revision.hold_downs)
    how: Text = (
        say("{count} {count|hold-down|hold-downs}", count=count)
        if count
        else say("hold-downs set")
    )
    if vacuum:
        how = say("vacuum on, gauge steady")
    label = say("Hold-down, bed vacuumed")
    if wrong := _find_wrong_hold_down(here, revision):
        said = say("{wrong}: have the office move it", wrong=wrong.why)
        return Check(label=say("A hold-down is in the way"), text=said, state="wrong")
    return Check(
        label=say("On its reference pins, held down, bed vacuumed") if further else label,
        text=how,
        code=button("held_down"),
        state=_find_state(here, "held_down"),
    )


def _show_bit(here: Now, revision: Revision) -> Check:
    uses = list_first_uses(here.view, here.bed, revision)
    if here.bed.sheet and needs_free_bed(here, "bit"):
        size = length(uses[0].diameter_mm)
        return Check(label=say("Bit"), text=say("{size} mm again, by hand", size=size),
                     state="later")  # fmt: skip
    for use in uses:
        if wrong := refuse_bit(here.view, here.bed, use):
            said = say("{wrong}: {size} mm needed", wrong=wrong.said, size=length(use.diameter_mm))
            return Check(label=say("Bit"), text=said, state="wrong")
    found = [b for u in uses if (b := find_bit_in(here.view, here.bed, u))]
    said = (
        say("{words}, no. {bit}", words=found[0].words, bit=found[0].id)
        if len(found) == 1
        else say("no. {bits}", bits=", ".join(b.id for b in found))
    )
    return Check(
        label=say("Bit"), text=said, code=button("bit_good"), state=_find_state(here, "bit")
    )


def _say_approved(run: Revision) -> Say:
    """Says which file is opened at the router, where its name is known, and its revision."""
    if run.file:
        return say("{file}: revision {letter} is approved", file=run.file, letter=run.letter)
    return say("revision {letter} is approved", letter=run.letter)


def _show_file(here: Now, batch: Batch, run: Revision) -> Check:
    approved = find_approved_letter(here.view, batch)
    if run.cut_file != batch.cut_file and approved == batch.revision:
        wrong = refuse_unapproved_run(here.view, batch, run)
        said = _say_approved(run)
        return Check(label=say("Cut file"), text=wrong.said if wrong else said,
                     code="" if wrong else button("file_right"),
                     state="wrong" if wrong else _find_state(here, "file"))  # fmt: skip
    if approved != batch.revision:
        said = say("revision {has}, approved is {is_}", has=batch.revision, is_=approved or "-")
        return Check(label=say("Cut file"), text=said, state="wrong")
    said = _say_approved(run)
    return Check(
        label=say("Cut file"),
        text=said,
        code=button("file_right"),
        state=_find_state(here, "file"),
    )


def _show_zero(here: Now) -> Check:
    label, why = say("Zero"), find_zero_due(here.view, here.bed, here.next_run)
    if not why:
        return Check(label=label, text=say("kept from the last sheet"), state="done")
    said = say("set it: {why}", why=say_why(why))
    return Check(label=label, text=said, code=button("zeroed"), state=_find_state(here, "zero"))
