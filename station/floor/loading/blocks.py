"""The blocks that the faces of the loading room are made of."""

from dataclasses import replace

from station.floor.loading.before import Now
from station.floor.loading.material import material_name
from station.queries.batches import describe_batch
from station.queries.pace import find_fit
from station.queries.routers import count_cutting_s, count_minutes_left, name_router
from station.shop.faces import (
    Header,
    Progress,
    SheetDrawing,
)
from station.shop.facts import Batch, Part, Revision, Router
from station.shop.views import View
from station.shop.words import Say, say


def where(here: Now) -> Say:
    """``Router 3 · clamped bed``."""
    router = here.view.get(Router, here.bed.id)
    vacuum = router is not None and router.bed == "vacuum"
    bed = say("vacuum bed") if vacuum else say("clamped bed")
    return say("{router} · {bed}", router=name_router(here.view, here.bed.id), bed=bed)


def header(here: Now, batch: Batch, revision: Revision) -> Header:
    """The batch in hand: what it is and which sheet it is at."""
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
            material=material_name(here.view, revision.material),
            sheets=batch.sheets,
            count=count,
            tabs=tabs(here.view, revision),
        ),
        right_label=say("Sheet"),
        right=str(n),
        right_small=of,
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
    """The sheet, with what is cut by the clock drawn as cut.

    A run that cuts no parts out is drawn on the parts of its sheet.
    """
    run = here.running or revision
    shown = run if run.placed else replace(revision, hold_downs=run.hold_downs)
    return SheetDrawing(
        revision=shown,
        cut=_fraction(here),
        note=say("Drawn from the cut file. Dots are tabs, black blocks hold-downs."),
    )


def _fraction(here: Now) -> float:
    bed = here.bed
    if not bed.sheet or bed.minutes <= 0:
        return 0.0
    return min(1.0, count_cutting_s(bed, here.hand.now) / 60 / bed.minutes)


def progress(here: Now, revision: Revision) -> Progress:
    """Minutes left on the sheet that is cut, with a bar that runs on by the clock."""
    bed = here.bed
    left = count_minutes_left(bed, here.hand.now)
    right = _told(here, here.running or revision)
    late = left < 0
    return Progress(
        big=say("{minutes} min", minutes=round(abs(left))),
        note=say("longer than expected") if late else say("left on this sheet"),
        right=right,
        fraction=_fraction(here),
        tone="attention" if late else "good",
        until=(bed.started, bed.ends),
    )


def _told(here: Now, revision: Revision) -> Say:
    """What the file says, and what this router makes of it: with the spread, once it is known."""
    file, real = _minutes(revision.minutes), _minutes(here.bed.minutes)
    name, found = name_router(here.view, here.bed.id), find_fit(here.view, here.bed.id)
    if found is None:
        return say(
            "file says {file}, {router} runs it in {real}", file=file, router=name, real=real
        )
    return say(
        "file {file}, here {real} ± {spread}",
        file=file,
        real=real,
        spread=_minutes(found.spread_s / 60),
    )


def _minutes(minutes: float) -> str:
    """``22:10``: minutes and seconds."""
    whole, seconds = divmod(round(minutes * 60), 60)
    return f"{whole}:{seconds:02d}"
