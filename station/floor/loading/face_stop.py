"""What the screen shows while the router is stopped, or a question is open."""

from station.floor.loading.before import Now, counts
from station.floor.loading.blocks import drawing, where
from station.floor.loading.check_list import first_things
from station.floor.loading.side import care, code_of, other_router, side
from station.queries.settings import list_reasons
from station.shop.cards import button
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
from station.shop.facts import Bit, Part, Reason, Revision
from station.shop.times import count_seconds
from station.shop.words import Say, clock, say

TITLE = say("Loading")
LEAVE = Press(label=say("Leave it"), code=button("put_down"))


def stopped(here: Now) -> Face:
    """The router stands still: since when, why, and what to mind."""
    bed = here.bed
    reason = here.view.get(Reason, bed.stop)
    minutes = round(count_seconds(bed.stopped, here.hand.now) / 60)
    spoil = Press(label=say("Sheet spoiled"), code=button("sheet_spoiled"))
    on_bed = (
        say("Sheet {n} of batch {batch} is on the bed", n=bed.sheet, batch=bed.batch)
        if bed.sheet
        else say("The bed is free")
    )
    over = Press(label=say("The stop is over"), code=button("stop_over"), style="primary", wide=2)
    return Face(
        title=TITLE,
        where=where(here),
        main=(
            Header(label=say("Stopped since"), number=clock(bed.stopped),
                   title=reason.words if reason else bed.stop, note=on_bed,
                   right_label=say("Minutes"), right=str(minutes)),
            _own_stop(hold_down=bool(reason and reason.hold_down)),
            *_due_after(here),
            *((drawing(here, here.revision),) if bed.sheet and here.revision else ()),
        ),
        presses=(
            over,
            *((spoil,) if bed.sheet else ()),
            Press(label=say("Bit broken"), code=button("bit_broken")),
            *other_router(here),
        ),
        side=side(here),
    )  # fmt: skip


def _due_after(here: Now) -> tuple[Block, ...]:
    """What is due before the next sheet once the stop is over."""
    first = first_things(here)
    return (Checks(title=say("Before the next sheet"), items=first),) if first else ()


def _own_stop(*, hold_down: bool = False) -> Remark:
    """That this screen stops nothing."""
    text = say("Use the router's own stop. Hands off until the spindle stands still.")
    if hold_down:
        text = say("Use the router's own stop. Never hold parts by hand.")
    return Remark(tone="stop", title=say("This does not stop the router"), text=text)


def reasons(here: Now, use: str, title: Say = Say()) -> Table:
    """The reasons of one use, to be touched or scanned."""
    rows = tuple(
        Row(title=r.words, code=code_of("reason", r.id)) for r in list_reasons(here.view, use)
    )
    return Table(columns=(say("Reason"),), rows=rows, title=title)


def why_stopped(here: Now) -> Face:
    """Why the router stands still, to be touched or scanned."""
    return Face(
        title=TITLE,
        where=where(here),
        main=(_own_stop(hold_down=False), reasons(here, "stop")),
        presses=(LEAVE,),
        side=(care(here),),
    )


def spoiling(here: Now) -> Face:
    """Why the sheet is spoiled, then what survived of it."""
    chosen = here.view.get(Reason, str(here.hand.work.get("reason") or ""))
    main: tuple[Block, ...] = (reasons(here, "sheet"),)
    presses: tuple[Press, ...] = (LEAVE,)
    if chosen and here.revision:
        label = say("Sheet {n} is spoiled", n=here.bed.sheet)
        main = _survivors(here, here.revision)
        presses = (
            Press(label=label, code=button("sheet_spoiled"), style="primary", wide=2),
            LEAVE,
        )
    head = Hint(
        title=say("Why is sheet {n} spoiled?", n=here.bed.sheet),
        right=chosen.words if chosen else "",
        note=say("What is not counted as whole is lost.") if chosen else "",
        tone="attention",
    )
    sheet = (drawing(here, here.revision),) if here.revision else ()
    return Face(
        title=TITLE, where=where(here), main=(head, *main), presses=presses,
        side=(*sheet, care(here)),
    )  # fmt: skip


def _survivors(here: Now, revision: Revision) -> tuple[Block, ...]:
    """Each part of the sheet: how many there are, whole and lost."""
    makes, counted = revision.makes(), counts(here.hand)
    chosen = str(here.hand.work.get("part") or "") or next(iter(makes), "")
    rows = []
    for name, count in makes.items():
        part, whole = here.view.get(Part, name), counted.get(name, 0)
        cells = tuple(
            Cell(text=say("{n}", n=n), bold=bold)
            for n, bold in ((count, False), (whole, True), (count - whole, False))
        )
        rows.append(Row(title=part.name if part else name, note=part.words if part else "",
                        cells=cells, code=code_of("part", name), selected=name == chosen,
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


def which_bit(here: Now) -> Face:
    """Which of several bits broke."""
    rows = tuple(
        Row(title=bit.words, note=say("no. {bit}", bit=bit.id), code=code_of("bit", bit.id))
        for _, name in here.bed.bits
        if (bit := here.view.get(Bit, name))
    )
    return Face(
        title=TITLE,
        where=where(here),
        main=(_own_stop(), Table(columns=(say("Which bit broke?"),), rows=rows)),
        presses=(LEAVE,),
        side=(care(here),),
    )
