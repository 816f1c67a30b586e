"""The blocks that the faces of the loading room are made of."""

from station.floor.loading.before import Now, reading, ticks
from station.floor.loading.common import (
    approved_letter,
    bit_in,
    cutting_s,
    in_store,
    router_name,
)
from station.floor.loading.rules_sheet import material_name, outside, wrong_bit
from station.floor.loading.rules_take import AT_ONCE, unread
from station.shop.cards import button
from station.shop.faces import (
    Check,
    Checks,
    Header,
    Progress,
    SheetDrawing,
    Text,
)
from station.shop.facts import Batch, CutFile, Material, Part, Revision, Router, Shop
from station.shop.views import View
from station.shop.words import Say, say


def where(here: Now) -> Say:
    """``Router 3 · clamped bed``."""
    router = here.view.get(Router, here.bed.id)
    vacuum = router is not None and router.bed == "vacuum"
    bed = say("vacuum bed") if vacuum else say("clamped bed")
    return say("{router} · {bed}", router=router_name(here.view, here.bed.id), bed=bed)


def header(here: Now, batch: Batch, revision: Revision) -> Header:
    """The batch in hand: what it is and which sheet it is at."""
    cut_file = here.view.get(CutFile, batch.cut_file)
    count = sum(revision.makes().values())
    n = here.bed.sheet or min(batch.cut + 1, batch.sheets)
    return Header(
        label=say("Batch"),
        number=batch.id,
        title=cut_file.words if cut_file else batch.cut_file,
        note=say(
            "{material} · {sheets} {sheets|sheet|sheets} · {count} {count|part|parts} a sheet, "
            "{tabs} {tabs|tab|tabs}",
            material=material_name(here.view, revision.material),
            sheets=batch.sheets,
            count=count,
            tabs=tabs(here.view, revision),
        ),
        right_label=say("Sheet"),
        right=str(n),
        right_small=say("of {sheets}", sheets=batch.sheets),
    )


def tabs(view: View, revision: Revision) -> int:
    """Tabs on one sheet: as placed, else as the part's outline has them."""
    shapes = dict(revision.shapes)
    each = {p: len(shapes[p].tabs) if p in shapes else 0 for p in revision.makes()}
    for name, count in each.items():
        part = view.get(Part, name)
        each[name] = count or (part.tabs if part else 0)
    return sum(len(p.tabs) or each[p.part] for p in revision.placed)


def drawing(here: Now, revision: Revision) -> SheetDrawing:
    """The sheet, with what is cut by the clock drawn as cut."""
    return SheetDrawing(
        revision=revision,
        cut=_fraction(here),
        note=say("Drawn from the cut file. Dots are tabs, black blocks hold-downs."),
    )


def _fraction(here: Now) -> float:
    bed = here.bed
    if not bed.sheet or bed.minutes <= 0:
        return 0.0
    return min(1.0, cutting_s(bed, here.hand.now) / 60 / bed.minutes)


def progress(here: Now, revision: Revision) -> Progress:
    """Minutes left on the sheet that is cut, with a bar that runs on by the clock."""
    bed = here.bed
    left = bed.minutes - cutting_s(bed, here.hand.now) / 60
    right = say(
        "file says {file}, {router} runs it in {real}",
        file=_minutes(revision.minutes),
        router=router_name(here.view, bed.id),
        real=_minutes(bed.minutes),
    )
    late = left < 0
    return Progress(
        big=say("{minutes} min", minutes=round(abs(left))),
        note=say("longer than expected") if late else say("left on this sheet"),
        right=right,
        fraction=_fraction(here),
        tone="attention" if late else "good",
        until=(bed.started, bed.ends),
    )


def _minutes(minutes: float) -> str:
    """``22:10``: minutes and seconds."""
    whole, seconds = divmod(round(minutes * 60), 60)
    return f"{whole}:{seconds:02d}"


# --- what must be right before a sheet


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
        shop = here.view.get(Shop, "shop") or Shop(id="shop")
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
    n = batch.cut + (2 if here.bed.sheet else 1)
    if first and not here.bed.sheet:
        return Checks(title=say("First, before sheet {n}", n=n), items=first)
    title = say("Before sheet {n}", n=n)
    return Checks(
        title=title,
        items=(
            _lot(here, revision),
            _thickness(here, revision),
            _hold_down(here, revision),
            _bit(here, revision),
            _file(here, batch),
            _zero(here),
        ),
    )


def _lot(here: Now, revision: Revision) -> Check:
    lot = str(here.hand.work.get("lot") or "")
    if lot and not in_store(here.view, lot):
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
    if here.bed.sheet and name in ("held_down", "zero"):
        return "later"
    return "done" if name in ticks(here.hand) else "due"


def _hold_down(here: Now, revision: Revision) -> Check:
    router = here.view.get(Router, here.bed.id)
    count = len(revision.hold_downs)
    how: Text = (
        say("{count} {count|hold-down|hold-downs}", count=count)
        if count
        else say("hold-downs set")
    )
    if router and router.bed == "vacuum":
        how = say("vacuum on, gauge steady")
    return Check(
        label=say("Hold-down, bed vacuumed"),
        text=how,
        code=button("held_down"),
        state=_ticked(here, "held_down"),
    )


def _bit(here: Now, revision: Revision) -> Check:
    changer = (r := here.view.get(Router, here.bed.id)) is not None and r.changer
    uses = revision.bits if changer else revision.bits[:1]
    for use in uses:
        if wrong := wrong_bit(here.view, here.bed, use):
            said = say("{wrong}: {size} mm needed", wrong=wrong.said, size=f"{use.diameter_mm:g}")
            return Check(label=say("Bit"), text=said, state="wrong")
    found = [b for u in uses if (b := bit_in(here.view, here.bed, u))]
    said = (
        say("{words}, no. {bit}", words=found[0].words, bit=found[0].id)
        if len(found) == 1
        else say("no. {bits}", bits=", ".join(b.id for b in found))
    )
    return Check(label=say("Bit"), text=said, code=button("bit_good"), state=_ticked(here, "bit"))


def _file(here: Now, batch: Batch) -> Check:
    approved = approved_letter(here.view, batch)
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
