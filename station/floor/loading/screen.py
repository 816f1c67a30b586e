"""What the screen at the cutting bed shows, state by state."""

from station.floor.loading.before import Now, missing, now, reading, ready
from station.floor.loading.blocks import drawing, header, progress, where
from station.floor.loading.check_list import checks, first_things
from station.floor.loading.face_stop import (
    TITLE,
    reasons,
    spoiling,
    stopped,
    which_bit,
    why_stopped,
)
from station.floor.loading.material import outside
from station.floor.loading.rules_take import unread
from station.floor.loading.side import (
    care,
    cut_today,
    drawer,
    lots,
    meters,
    other_router,
    queue,
    queue_entry,
    router_cards,
    side,
)
from station.queries.batches import refuse_unapproved, refuse_uncuttable
from station.queries.routers import find_bit_in
from station.queries.underway import list_queue
from station.shop.cards import button
from station.shop.faces import Asked, Block, Checks, Face, Hint, Press
from station.shop.facts import Batch, Revision
from station.shop.rooms import Hand
from station.shop.views import View
from station.shop.words import Say, say


def screen(hand: Hand, view: View) -> Face:
    """The screen for the work in hand at this router."""
    here = now(hand, view)
    modes = {"stop": why_stopped, "spoil": spoiling, "broken": which_bit}
    if here.mode == "spoil" and not here.bed.sheet:
        here = here._replace(hand=hand.with_work(mode=None))
    if (asked := modes.get(here.mode)) is not None:
        return asked(here)
    if here.bed.state == "stopped":
        return stopped(here)
    if here.batch and here.revision:
        return _work(here, here.batch, here.revision)
    return _queue(here)


# --- a batch on the router


def _work(here: Now, batch: Batch, revision: Revision) -> Face:
    """The sheet that is cut, or the one that is made ready."""
    cutting = bool(here.bed.sheet)
    if not cutting and batch.cut >= batch.sheets:
        return _cut(here, batch, revision)
    below: tuple[Block, ...] = (progress(here, revision),) if cutting else _asks(here, revision)
    return Face(
        title=TITLE,
        where=where(here),
        main=(header(here, batch, revision), drawing(here, revision), *below),
        beside=(checks(here, batch, revision),),
        presses=_cutting_presses(here) if cutting else _ready_presses(here, batch),
        side=side(here),
    )


def _asks(here: Now, revision: Revision) -> tuple[Block, ...]:
    """The one thing that must be chosen or typed before the next sheet, if any."""
    if first_things(here):
        return ()
    run = here.preparing or revision
    bits = [find_bit_in(here.view, here.bed, u) for u in run.bits[:1]]
    if any(b is None or b.state != "good" for b in bits):
        return (drawer(here, run),)
    if missing(here, here.hand) == "lot":
        return (lots(here, revision),)
    following = here.due
    if following and following.run > 1:
        return ()
    read = reading(here.hand)
    if read and outside(here.view, revision, read) and ready(here, here.hand):
        return (reasons(here, "overrule", say("A supervisor may overrule, with a reason")),)
    typed = here.hand.digits or (f"{read:g}" if read else "")
    return (Asked(question=say("How thick is the sheet?"), typed=typed, unit=say("mm")),)


def _cutting_presses(here: Now) -> tuple[Press, ...]:
    off = say("Sheet {n} is off the bed", n=here.bed.sheet)
    return (
        Press(label=off, code=button("off_bed"), style="primary", wide=2),
        Press(label=say("Sheet spoiled"), code=button("sheet_spoiled")),
        Press(label=say("Report a stop"), code=button("stop")),
        *other_router(here),
    )


def _ready_presses(here: Now, batch: Batch) -> tuple[Press, ...]:
    first = _first_press(here)
    if not first:
        start = _start_label(here, batch)
        held = refuse_uncuttable(here.view, batch) or refuse_unapproved(here.view, batch)
        style = "primary" if ready(here, here.hand) and not held else "off"
        first = (Press(label=start, code=button("start"), style=style, wide=2),)
    more = Press(label=say("One more sheet"), code=button("one_more_sheet"))
    return (
        *first,
        *((more,) if batch.spoiled else ()),
        Press(label=say("Report a stop"), code=button("stop")),
        Press(label=say("Bit broken"), code=button("bit_broken")),
        Press(label=say("Resurfaced"), code=button("resurfaced")),
        *other_router(here),
    )


def _start_label(here: Now, batch: Batch) -> Say:
    following = here.due
    if following and following.run > 1:
        return say("Start sheet {n}, run {run}", n=following.sheet, run=following.run)
    return say("Start sheet {n}", n=following.sheet if following else batch.sheets)


def _first_press(here: Now) -> tuple[Press, ...]:
    """The button for what stands before any sheet."""
    bed = here.bed
    if unread(here.view, bed.id):
        return (_primary("told"),)
    if bed.day != here.hand.now[:10]:
        return (_primary("day_done"),)
    if bed.rehome:
        return (_primary("rehomed"),)
    if bed.first_off:
        wrong = Press(label=say("It is wrong"), code=button("first_off_bad"))
        return (_primary("first_off_good"), wrong)
    return ()


PRIMARY = {
    "told": say("I have read it"),
    "day_done": say("Start of day done"),
    "rehomed": say("Router re-homed"),
    "first_off_good": say("First-off agrees"),
}


def _primary(name: str) -> Press:
    return Press(label=PRIMARY[name], code=button(name), style="primary", wide=2)


def _cut(here: Now, batch: Batch, revision: Revision) -> Face:
    """All sheets are cut, some of them spoiled: one more is offered."""
    return Face(
        title=TITLE,
        where=where(here),
        main=(
            header(here, batch, revision),
            Hint(
                title=say("All {sheets} {sheets|sheet is|sheets are} cut", sheets=batch.sheets),
                right=say("{spoiled} spoiled", spoiled=batch.spoiled),
                note=say("Cut one more to make good, or take the next batch."),
                tone="attention" if batch.spoiled else "good",
            ),
            queue(here, 3, say("Next on this router")),
        ),
        presses=(
            *((_more(),) if batch.spoiled else ()),
            Press(label=say("Put it down"), code=button("put_down")),
            *other_router(here),
        ),
        side=(*router_cards(here), *meters(here), cut_today(here, 5), care(here)),
    )


def _more() -> Press:
    return Press(
        label=say("Cut one more sheet"), code=button("one_more_sheet"), style="primary", wide=2
    )


# --- nothing in hand


def _queue(here: Now) -> Face:
    """The queue of this router, large, with the first batch suggested."""
    waiting = [b for b in list_queue(here.view, here.bed.id) if not b.holds]
    first = _first_press(here)
    presses = first
    main: tuple[Block, ...] = ()
    if waiting:
        entry = queue_entry(here, waiting[0])
        main = (
            Hint(title=say("Next: batch {batch}", batch=waiting[0].id), right=entry.right,
                 note=say("{why}. Scan its traveller.", why=waiting[0].why or entry.line1)),
        )  # fmt: skip
        take = say("Take batch {batch}", batch=waiting[0].id)
        style = "plain" if first else "primary"
        presses += (Press(label=take, code=entry.code, style=style, wide=2),)
    return Face(
        title=TITLE,
        where=where(here),
        main=(*main, queue(here, 5, say("Queue of this router"))),
        beside=_first_block(here),
        presses=(
            *presses,
            Press(label=say("Report a stop"), code=button("stop")),
            Press(label=say("Resurfaced"), code=button("resurfaced")),
            *other_router(here),
        ),
        side=(*router_cards(here), *meters(here), cut_today(here, 5), care(here)),
    )


def _first_block(here: Now) -> tuple[Block, ...]:
    first = first_things(here)
    return (Checks(title=say("First on this router"), items=first),) if first else ()
