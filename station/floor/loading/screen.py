"""Shows the cutting bed, state by state: a sheet, the queue, a stop, an open question."""

from dataclasses import replace

from station.floor.loading.first_pane import list_measured, offer_first_off, show_first_off
from station.floor.loading.main_pane import (
    draw_sheet,
    list_first_things,
    show_checks,
    show_header,
    show_progress,
    show_restart,
)
from station.floor.loading.needs import judge_thickness, list_restart_ticks
from station.floor.loading.new_bit import list_kinds
from station.floor.loading.preparing import (
    Now,
    find_counted,
    find_missing,
    find_now,
    is_ready,
    label_start,
    list_confirmed,
)
from station.floor.loading.side_pane import (
    offer_other_router,
    show_care,
    show_drawer,
    show_idle_side,
    show_lots,
    show_queue,
    show_queued,
    show_side,
)
from station.floor.loading.tended_face import hint_tended, show_tended
from station.floor.loading.work import LoadingHand
from station.floor.shared.set_up import say_missing
from station.queries.batches import refuse_unapproved, refuse_uncuttable, say_why
from station.queries.routers import find_bit_in, find_running, name_router
from station.queries.settings import list_reasons
from station.queries.shortage import list_waiting_for
from station.queries.underway import list_queue
from station.queries.unmade import list_unmade
from station.shop.cards import button
from station.shop.codes import write_touch
from station.shop.faces import (
    Asked,
    Block,
    Cell,
    Checks,
    Face,
    Header,
    Hint,
    Press,
    Remark,
    Row,
    Table,
)
from station.shop.facts import Batch, Bit, FirstOff, Part, Reason, Revision
from station.shop.first_facts import say_reason
from station.shop.lengths import write_as_typed
from station.shop.times import count_seconds
from station.shop.views import View
from station.shop.words import MM, Say, clock, length, say

TITLE = say("Loading")
LEAVE = Press(label=say("Leave it"), code=button("put_down"))


def screen(hand: LoadingHand, view: View) -> Face:
    """Shows the work in hand at this router."""
    here = find_now(hand, view)
    modes = {"stop": _ask_why_stopped, "spoil": _ask_why_spoiled, "broken": _ask_which_bit,
             "new_bit": _ask_new_bit}  # fmt: skip
    if here.mode == "tended" and here.served:
        return show_tended(here)
    if here.mode == "spoil" and not here.bed.sheet:
        here = replace(here, hand=replace(hand, work=replace(hand.work, mode="")))
    if (asked := modes.get(here.mode)) is not None:
        return asked(here)
    if here.bed.state == "stopped":
        return _show_stopped(here)
    if here.first:
        return _show_first_off(here, here.first)
    if here.batch and here.revision:
        return _show_work(here, here.batch, here.revision)
    return _show_free(here)


def _say_where(here: Now) -> Say:
    """Says which bed this is: ``Router 3 · clamped bed``."""
    router = here.router
    vacuum = router is not None and router.bed == "vacuum"
    bed = say("vacuum bed") if vacuum else say("clamped bed")
    return say("{router} · {bed}", router=name_router(here.view, here.bed.id), bed=bed)


def _show_work(here: Now, batch: Batch, revision: Revision) -> Face:
    """Shows the sheet that is cut, or the one that is made ready."""
    cutting = bool(here.bed.sheet)
    if not cutting and batch.cut >= batch.sheets:
        return _show_all_cut(here, batch, revision)
    below: tuple[Block, ...] = (
        (show_progress(here, revision),) if cutting else _ask_next(here, revision)
    )
    return Face(
        title=TITLE,
        where=_say_where(here),
        main=(show_header(here, batch, revision), draw_sheet(here, revision), *below),
        beside=(show_checks(here, batch, revision),),
        presses=_offer_while_cutting(here) if cutting else _offer_before_start(here, batch),
        side=show_side(here),
    )


def _show_first_off(here: Now, first: FirstOff) -> Face:
    """Shows the first-off that is settled before anything else is cut here."""
    return Face(
        title=TITLE,
        where=_say_where(here),
        main=show_first_off(here, first),
        beside=(list_measured(here, first),),
        presses=(
            *offer_first_off(here, first),
            Press(label=say("Report a stop"), code=button("stop")),
            Press(label=say("Bit broken"), code=button("bit_broken")),
            *offer_other_router(here),
        ),
        side=show_side(here),
    )


def _ask_next(here: Now, revision: Revision) -> tuple[Block, ...]:
    """Asks the one thing that must be chosen or typed before the next sheet, if any."""
    if list_first_things(here):
        return ()
    run = here.next_run or revision
    bits = [find_bit_in(here.view, here.bed, u) for u in run.bits[:1]]
    if any(b is None or b.state != "good" for b in bits):
        return (show_drawer(here, run),)
    if find_missing(here, here.hand) == "lot":
        return (show_lots(here, revision),)
    following = here.due
    if following and following.run > 1:
        return ()
    read = here.hand.work.reading
    if read and judge_thickness(here.view, revision, read) and is_ready(here, here.hand):
        return (_show_reasons(here, "overrule", say("A supervisor may overrule, with a reason")),)
    typed = here.hand.digits or (write_as_typed(read) if read else "")
    return (Asked(question=say("How thick is the sheet?"), typed=typed, unit=MM),)


def _offer_while_cutting(here: Now) -> tuple[Press, ...]:
    off = say("Sheet {n} is off the bed", n=here.bed.sheet)
    return (
        Press(label=off, code=button("off_bed"), style="primary", wide=2),
        Press(label=say("Sheet spoiled"), code=button("sheet_spoiled")),
        Press(label=say("Report a stop"), code=button("stop")),
        Press(label=say("Bit broken"), code=button("bit_broken")),
        *offer_other_router(here),
    )


def _offer_before_start(here: Now, batch: Batch) -> tuple[Press, ...]:
    first = _offer_first(here)
    if not first:
        start = label_start(here)
        held = refuse_uncuttable(here.view, batch) or refuse_unapproved(here.view, batch)
        style = "primary" if is_ready(here, here.hand) and not held else "off"
        first = (Press(label=start, code=button("start"), style=style, wide=2),)
    more = Press(label=say("One more sheet"), code=button("one_more_sheet"))
    return (
        *first,
        *((more,) if batch.spoiled else ()),
        Press(label=say("Report a stop"), code=button("stop")),
        Press(label=say("Bit broken"), code=button("bit_broken")),
        Press(label=say("Resurfaced"), code=button("resurfaced")),
        *offer_other_router(here),
    )


def _offer_first(here: Now) -> tuple[Press, ...]:
    """Offers the button for what stands before any sheet."""
    bed = here.bed
    if here.unread:
        return (_make_primary("told"),)
    if bed.day != here.hand.now[:10]:
        return (_make_primary("day_done"),)
    if bed.rehome:
        return (_make_primary("rehomed"),)
    return ()


PRIMARY = {
    "told": say("I have read it"),
    "day_done": say("Start of day done"),
    "rehomed": say("Router re-homed"),
}


def _make_primary(name: str) -> Press:
    return Press(label=PRIMARY[name], code=button(name), style="primary", wide=2)


def _show_all_cut(here: Now, batch: Batch, revision: Revision) -> Face:
    """Shows that all sheets are cut; where one is not made good yet, one more is offered."""
    owed = len(list_unmade(here.view, batch))
    label = say("Cut one more sheet")
    more = Press(label=label, code=button("one_more_sheet"), style="primary", wide=2)
    return Face(
        title=TITLE,
        where=_say_where(here),
        main=(
            show_header(here, batch, revision),
            Hint(
                title=say("All {sheets} {sheets|sheet is|sheets are} cut", sheets=batch.sheets),
                right=say("{spoiled} spoiled", spoiled=batch.spoiled),
                note=say("Cut one more to make good, or take the next batch.")
                if owed
                else say("Take the next batch."),
                tone="attention" if owed else "good",
            ),
            show_queue(here, 3, say("Next on this router")),
        ),
        presses=(
            *((more,) if owed else ()),
            Press(label=say("Leave it"), code=button("put_down")),
            *offer_other_router(here),
        ),
        side=show_idle_side(here),
    )


def _show_free(here: Now) -> Face:
    """Shows the queue of this router, large, with the first batch suggested."""
    waiting = [b for b in list_queue(here.view, here.bed.id) if not b.holds]
    first = _offer_first(here)
    presses = first
    main: tuple[Block, ...] = ()
    if waiting:
        entry = show_queued(here, waiting[0])
        main = (
            Hint(title=say("Next: batch {batch}", batch=waiting[0].id), right=entry.right,
                 note=say("{why}; {now}. Scan its traveller.",
                          why=say_why(waiting[0]) or entry.line1,
                          now=_say_now(here, waiting[0]))),
        )  # fmt: skip
        take = say("Take batch {batch}", batch=waiting[0].id)
        style = "plain" if first else "primary"
        presses += (Press(label=take, code=entry.code, style=style, wide=2),)
    if missing := say_missing(here.view):
        note = say("{what}. The office shows it, step by step.", what=missing)
        main = (*main, Hint(title=say("Missing before the first sheet"), note=note,
                            tone="attention"))  # fmt: skip
    return Face(
        title=TITLE,
        where=_say_where(here),
        main=(*hint_tended(here), *main, show_queue(here, 5, say("Queue of this router"))),
        beside=_show_first_things(here, say("First on this router")),
        presses=(
            *presses,
            Press(label=say("Report a stop"), code=button("stop")),
            Press(label=say("Resurfaced"), code=button("resurfaced")),
            *offer_other_router(here),
        ),
        side=show_idle_side(here),
    )


def _say_now(here: Now, batch: Batch) -> Say:
    """Says how many orders wait for a batch now: why it was released may hold no more."""
    orders = len(list_waiting_for(here.view, batch))
    if not orders:
        return say("no order waits for it now")
    return say("{n} {n|order waits|orders wait} for it now", n=orders)


def _show_first_things(here: Now, title: Say) -> tuple[Block, ...]:
    """Shows what stands before any sheet, where something does."""
    first = list_first_things(here)
    return (Checks(title=title, items=first),) if first else ()


def _show_stopped(here: Now) -> Face:
    """Shows that the router stands still: since when, why, and what to mind."""
    bed = here.bed
    reason = here.view.get(Reason, bed.stop)
    minutes = round(count_seconds(bed.stopped, here.hand.now) / 60)
    spoil = Press(label=say("Sheet spoiled"), code=button("sheet_spoiled"))
    on_bed = (
        say("Sheet {n} of batch {batch} is on the bed", n=bed.sheet, batch=bed.batch)
        if bed.sheet
        else say("The bed is free")
    )
    confirmed = list_confirmed(here.hand, bed)
    asked = [n for n in list_restart_ticks(here.view, bed) if n not in confirmed]
    style = "off" if asked or bed.rehome else "primary"
    over = Press(label=say("The stop is over"), code=button("stop_over"), style=style, wide=2)
    return Face(
        title=TITLE,
        where=_say_where(here),
        main=(
            Header(label=say("Stopped since"), number=clock(bed.stopped),
                   title=say_reason(reason) if reason else bed.stop, note=on_bed,
                   right_label=say("Minutes"), right=str(minutes)),
            _warn_own_stop(hold_down=bool(reason and reason.hold_down)),
            *_draw_stopped(here),
        ),
        beside=(show_restart(here),),
        presses=(
            over,
            *((spoil,) if bed.sheet else ()),
            Press(label=say("Bit broken"), code=button("bit_broken")),
            Press(label=say("New bit"), code=button("new_bit")),
            *offer_other_router(here),
        ),
        side=show_side(here),
    )  # fmt: skip


def _draw_stopped(here: Now) -> tuple[Block, ...]:
    """Draws the sheet that lies on a stopped bed; under it the bits to put in for a broken one."""
    if not here.bed.sheet or here.revision is None:
        return ()
    run = find_running(here.view, here.bed) or here.revision
    inside = [here.view.get(Bit, name) for _, name in here.bed.bits]
    bad = any(bit is not None and bit.state != "good" for bit in inside)
    return (draw_sheet(here, here.revision), *((show_drawer(here, run),) if bad else ()))


def _warn_own_stop(*, hold_down: bool = False) -> Remark:
    """Warns that this screen stops nothing."""
    text = say("Use the router's own stop. Hands off until the spindle stands still.")
    if hold_down:
        text = say("Use the router's own stop. Never hold parts by hand.")
    return Remark(tone="stop", title=say("This does not stop the router"), text=text)


def _show_reasons(here: Now, use: str, title: Say = Say()) -> Table:
    """Shows the reasons of one use, to be touched or scanned."""
    rows = tuple(
        Row(title=say_reason(r), code=write_touch("reason", r.id))
        for r in list_reasons(here.view, use)
    )
    return Table(columns=(say("Reason"),), rows=rows, title=title)


def _ask_why_stopped(here: Now) -> Face:
    """Asks why the router stands still, to be touched or scanned."""
    return Face(
        title=TITLE,
        where=_say_where(here),
        main=(_warn_own_stop(hold_down=False), _show_reasons(here, "stop")),
        presses=(LEAVE,),
        side=(show_care(here),),
    )


def _ask_why_spoiled(here: Now) -> Face:
    """Asks why the sheet is spoiled, then what survived of it."""
    chosen = here.view.get(Reason, here.hand.work.reason)
    main: tuple[Block, ...] = (_show_reasons(here, "sheet"),)
    presses: tuple[Press, ...] = (LEAVE,)
    if chosen and here.revision:
        label = say("Sheet {n} is spoiled", n=here.bed.sheet)
        main = _show_survivors(here, here.revision)
        presses = (
            Press(label=label, code=button("sheet_spoiled"), style="primary", wide=2),
            LEAVE,
        )
    head = Hint(
        title=say("Why is sheet {n} spoiled?", n=here.bed.sheet),
        right=say_reason(chosen) if chosen else "",
        note=say("What is not counted as whole is lost.") if chosen else "",
        tone="attention",
    )
    sheet = (draw_sheet(here, here.revision),) if here.revision else ()
    return Face(
        title=TITLE, where=_say_where(here), main=(head, *main), presses=presses,
        side=(*sheet, show_care(here)),
    )  # fmt: skip


def _show_survivors(here: Now, revision: Revision) -> tuple[Block, ...]:
    """Shows each part of the sheet: how many there are, whole and lost."""
    makes, counted = revision.makes(), here.hand.work.survived
    chosen = find_counted(here)
    rows = []
    for name, count in makes.items():
        part, whole = here.view.get(Part, name), counted.get(name, 0)
        cells = tuple(
            Cell(text=say("{n}", n=n), bold=bold)
            for n, bold in ((count, False), (whole, True), (count - whole, False))
        )
        rows.append(Row(title=part.name if part else name, note=part.words if part else "",
                        cells=cells, code=write_touch("part", name), selected=name == chosen,
                        shape=part.shape if part else None))  # fmt: skip
    columns = (say("Part"), say("on the sheet"), say("whole"), say("lost"))
    question = say("How many are whole?")
    return (
        Table(columns=columns, rows=tuple(rows)),
        Asked(
            question=question,
            typed=here.hand.digits,
            unit=say("{n|piece|pieces}", n=here.hand.digits),
        ),
    )


def _ask_which_bit(here: Now) -> Face:
    """Asks which of several bits broke."""
    rows = tuple(
        Row(title=bit.words, note=say("no. {bit}", bit=bit.id), code=write_touch("bit", bit.id))
        for _, name in here.bed.bits
        if (bit := here.view.get(Bit, name))
    )
    return Face(
        title=TITLE,
        where=_say_where(here),
        main=(_warn_own_stop(), Table(columns=(say("Which bit broke?"),), rows=rows)),
        presses=(LEAVE,),
        side=(show_care(here),),
    )


def _ask_new_bit(here: Now) -> Face:
    """Asks what a bit that nobody has entered yet is like."""
    rows = tuple(
        Row(title=bit.words, note=say("{size} mm", size=length(bit.diameter_mm)),
            code=button(f"row_{n}"))
        for n, bit in enumerate(list_kinds(here), 1)
    )  # fmt: skip
    asked = Asked(question=say("Its diameter?"), typed=here.hand.digits, unit=MM)
    title = say("What is the new bit? A supervisor looks at it later.")
    return Face(
        title=TITLE,
        where=_say_where(here),
        main=(Table(columns=(say("One like"),), rows=rows, title=title), asked),
        presses=(LEAVE,),
        side=(show_care(here),),
    )
