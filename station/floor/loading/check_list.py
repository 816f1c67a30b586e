"""The list beside the sheet: what must be right before the next one, or what comes after."""

from station.floor.loading.before import Now, only_on_free_bed, reading, ticks
from station.floor.loading.bits import at_start, later, ready_for, wrong_bit
from station.floor.loading.material import material_name, outside
from station.floor.loading.rules_take import AT_ONCE, unread
from station.queries.batches import describe_batch, find_approved_letter, find_revision
from station.queries.routers import count_metres_left, find_bit_in
from station.queries.runs import WORK, find_work, name_run, refuse_unapproved_run
from station.queries.settings import find_shop
from station.queries.stock import count_in_store
from station.queries.underway import list_queue
from station.shop.cards import button
from station.shop.faces import Check, Checks, Text
from station.shop.facts import Batch, BitUse, Material, Revision, Router
from station.shop.words import Say, say, several


def first_things(here: Now) -> tuple[Check, ...]:
    """What stands before any sheet on this router: to be read, or done first."""
    bed, day = here.bed, here.hand.now[:10]
    later = "later" if bed.sheet else "due"
    holds = here.batch.holds if here.batch else ()
    items = [
        Check(label=say("Read this"), text=n.text, code=button("told"))
        for n in unread(here.view, bed.id)[:AT_ONCE]
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
    if bed.first_off:
        items.append(Check(label=say("First-off against the master"), text=bed.first_off,
                           code=button("first_off_good"), state=later))  # fmt: skip
    return tuple(items)


def checks(here: Now, batch: Batch, revision: Revision) -> Checks:
    """The list beside the sheet: what stands first, or the checks before the next sheet."""
    first = first_things(here)
    following, cutting = here.due, here.running if here.bed.sheet else None
    n = following.sheet if following else batch.sheets
    if first and not here.bed.sheet:
        return Checks(title=say("First, before sheet {n}", n=n), items=first)
    change = _next_change(here, cutting) if cutting else ()
    if following is None and here.bed.sheet:
        return Checks(title=say("After this last sheet"), items=(*change, *_next_batch(here)))
    run = following.file if following else revision
    further = following is not None and following.run > 1
    title = say("Before sheet {n}", n=n)
    if following and further:
        title = say("Before run {run} of sheet {n}", run=following.run, n=n)
    return Checks(
        title=title,
        items=(
            *change,
            *((_file_of(here, run),) if further else ()),
            *(() if further else (_lot(here, revision), _thickness(here, revision))),
            _hold_down(here, run, further=further),
            *((_bit(here, run),) if run.bits else ()),
            *(() if here.bed.sheet else _by_hand(here, run)),
            _file(here, batch, run),
            _zero(here),
        ),
    )


def _next_change(here: Now, revision: Revision) -> tuple[Check, ...]:
    """The bit that goes in by hand when the file stops for it, on the sheet being cut."""
    following = later(here.view, here.bed, revision)[:1]
    return tuple(
        _laid_ready(here, use, say("When the file stops: scan this bit in"), "due")
        for use in following
    )


def _by_hand(here: Now, revision: Revision) -> tuple[Check, ...]:
    """Bits that are put in by hand in the middle of the sheet: each checked at its change."""
    return tuple(
        _laid_ready(here, use, say("Then, by hand: checked at its change"), "later")
        for use in later(here.view, here.bed, revision)
    )


def _laid_ready(here: Now, use: BitUse, label: Say, state: str) -> Check:
    """The best bit in the drawer for a use, its metres against what it must cut."""
    bit, need = ready_for(here.view, use), use.cut_mm / 1000
    size = f"{use.diameter_mm:g}"
    if bit is None:
        return Check(label=label, text=say("{size} mm: none in the drawer", size=size),
                     state="wrong")  # fmt: skip
    left = count_metres_left(here.view, bit)
    said = say("{size} mm, no. {bit}: {left} m left, {need} m needed", size=size, bit=bit.id,
               left=max(0, round(left)), need=round(need))  # fmt: skip
    return Check(label=label, text=said, state="wrong" if left < need else state)


def _next_batch(here: Now) -> tuple[Check, ...]:
    """What to bring for the batch that comes after this one on the router."""
    queue = list_queue(here.view, here.bed.id)
    batch = next((b for b in queue if b.id != here.bed.batch and not b.holds), None)
    revision = find_revision(here.view, batch) if batch else None
    if batch is None or revision is None:
        return (Check(label=say("Next batch"), text=say("none waits for this router"),
                      state="later"),)  # fmt: skip
    sizes = several([f"{use.diameter_mm:g}" for use in revision.bits])
    name = material_name(here.view, revision.material)
    return (
        Check(label=say("Next batch"), state="later",
              text=say("{batch}, {words}", batch=batch.id,
                       words=describe_batch(here.view, batch))),
        Check(label=say("Bring"), state="later",
              text=say("{n} {n|sheet|sheets} of {material}", n=batch.sheets - batch.cut,
                       material=name)),
        Check(label=say("Bits"), text=say("{sizes} mm", sizes=sizes), state="later"),
    )  # fmt: skip


def _lot(here: Now, revision: Revision) -> Check:
    lot = str(here.hand.work.get("lot") or "")
    if lot and not count_in_store(here.view, lot):
        lot = ""
    name = material_name(here.view, revision.material)
    return Check(
        label=say("Sheet"),
        text=say("{material}, lot {lot}", material=name, lot=lot)
        if lot
        else say("{material}: scan its lot", material=name),
        state="done" if lot else "due",
    )


def _thickness(here: Now, revision: Revision) -> Check:
    read, material = reading(here.hand), here.view.get(Material, revision.material)
    label = say("Thickness")
    if read:
        wrong = outside(here.view, revision, read)
        said = wrong or say("{mm} mm read", mm=f"{read:g}")
        return Check(label=label, text=said, state="wrong" if wrong else "done")
    if material is None:
        return Check(label=label, text=say("measure it, enter mm"))
    low, high = f"{material.low_mm:.1f}", f"{material.high_mm:.1f}"
    return Check(label=label, text=say("measure: {low} to {high} mm", low=low, high=high))


def _ticked(here: Now, name: str) -> str:
    """``later`` for what the bed must be free for, else ``done`` or ``due``."""
    if here.bed.sheet and only_on_free_bed(here, name):
        return "later"
    return "done" if name in ticks(here.hand) else "due"


def _file_of(here: Now, run: Revision) -> Check:
    """What the run is, for whoever puts the sheet on."""
    return Check(
        label=WORK[find_work(here.view, run)], text=name_run(here.view, run), state="later"
    )


def _hold_down(here: Now, revision: Revision, *, further: bool) -> Check:
    router = here.view.get(Router, here.bed.id)
    count = len(revision.hold_downs)
    how: Text = (
        say("{count} {count|hold-down|hold-downs}", count=count)
        if count
        else say("hold-downs set")
    )
    if router and router.bed == "vacuum":
        how = say("vacuum on, gauge steady")
    label = say("Hold-down, bed vacuumed")
    return Check(
        label=say("On its reference pins, held down, bed vacuumed") if further else label,
        text=how,
        code=button("held_down"),
        state=_ticked(here, "held_down"),
    )


def _bit(here: Now, revision: Revision) -> Check:
    uses = at_start(here.view, here.bed, revision)
    if here.bed.sheet and only_on_free_bed(here, "bit"):
        size = f"{uses[0].diameter_mm:g}"
        return Check(label=say("Bit"), text=say("{size} mm again, by hand", size=size),
                     state="later")  # fmt: skip
    for use in uses:
        if wrong := wrong_bit(here.view, here.bed, use):
            said = say("{wrong}: {size} mm needed", wrong=wrong.said, size=f"{use.diameter_mm:g}")
            return Check(label=say("Bit"), text=said, state="wrong")
    found = [b for u in uses if (b := find_bit_in(here.view, here.bed, u))]
    said = (
        say("{words}, no. {bit}", words=found[0].words, bit=found[0].id)
        if len(found) == 1
        else say("no. {bits}", bits=", ".join(b.id for b in found))
    )
    return Check(label=say("Bit"), text=said, code=button("bit_good"), state=_ticked(here, "bit"))


def _file(here: Now, batch: Batch, run: Revision) -> Check:
    approved = find_approved_letter(here.view, batch)
    if run.cut_file != batch.cut_file and approved == batch.revision:
        wrong = refuse_unapproved_run(here.view, batch, run)
        said = say("revision {letter} is approved", letter=run.letter)
        return Check(label=say("Cut file"), text=wrong.said if wrong else said,
                     code="" if wrong else button("file_right"),
                     state="wrong" if wrong else _ticked(here, "file"))  # fmt: skip
    if approved != batch.revision:
        said = say("revision {has}, approved is {is_}", has=batch.revision, is_=approved or "-")
        return Check(label=say("Cut file"), text=said, state="wrong")
    said = say("revision {letter} is approved", letter=approved)
    return Check(
        label=say("Cut file"),
        text=said,
        code=button("file_right"),
        state=_ticked(here, "file"),
    )


def _zero(here: Now) -> Check:
    label, why = say("Zero"), here.bed.zero
    if not why:
        return Check(label=label, text=say("kept from the last sheet"), state="done")
    said = say("set it: {why}", why=why)
    return Check(label=label, text=said, code=button("zeroed"), state=_ticked(here, "zero"))
