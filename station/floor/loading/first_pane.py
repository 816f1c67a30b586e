"""Shows a first-off: the part with the size that is asked for, what was read, and the ways on."""

from station.floor.loading.preparing import Now
from station.queries.batches import describe_batch, find_revision
from station.queries.first_offs import Measured
from station.queries.revisions import find_as_cut
from station.queries.routers import say_why
from station.shop.cards import button
from station.shop.faces import Asked, Block, Check, Checks, Header, Hint, PartDrawing, Press
from station.shop.facts import Batch, FirstOff, Part
from station.shop.words import MM, Say, length, say, together

WRONG = say("It is wrong")
SHOWN = 6  # parts beside the drawing


def show_first_off(here: Now, first: FirstOff) -> tuple[Block, ...]:
    """Shows which sheet is compared, and asks for one size of one of its parts."""
    batch = here.view.get(Batch, first.batch)
    header = Header(
        label=say("First-off"),
        number=first.batch,
        title=describe_batch(here.view, batch) if batch else "",
        note=say("{why}: compared with its master before the next sheet", why=say_why(first.why)),
        right_label=say("Sheet"),
        right=str(first.sheet),
    )
    asked = here.compared.asked
    if asked is None:
        drawn = tuple(PartDrawing(part=p) for p in list_by_eye(here, first)[:1])
        return (header, _say_by_eye(first), *drawn)
    question = say("{part}: {size}", part=asked.part.name, size=asked.size.in_words)
    return (
        header,
        PartDrawing(part=asked.part, note=_say_limits(asked), measured=asked.size),
        Asked(question=question, typed=here.hand.digits, unit=MM),
    )


def _say_by_eye(first: FirstOff) -> Hint:
    """Says that there is nothing to measure."""
    return Hint(
        title=say("Compare it with its master"),
        note=say("No size of it is measured: look at it closely."),
        tone="stop" if first.state == "wrong" else "attention",
    )


def _say_limits(one: Measured) -> Say:
    return say("{size}: right from {low} to {high} mm", size=one.size.name,
               low=length(one.size.low_mm), high=length(one.size.high_mm))  # fmt: skip


def list_by_eye(here: Now, first: FirstOff) -> list[Part]:
    """Lists the parts of the sheet that is compared, as they were cut: none has a size to read."""
    batch = here.view.get(Batch, first.batch)
    revision = find_revision(here.view, batch) if batch else None
    found = [here.view.get(Part, name) for name in (revision.makes() if revision else ())]
    return [find_as_cut(here.view, part, batch) for part in found if part and batch]


def _say_drawn(part: Part) -> Say:
    """Says the size of a part as its cut file draws it."""
    if part.shape is None:
        return say("look at it")
    a, b = sorted(part.shape.box, reverse=True)
    return say("{a} × {b} mm as drawn", a=length(a), b=length(b))


def list_measured(here: Now, first: FirstOff) -> Checks:
    """Lists every size with what was read of it; a touch asks for that one.

    Where nothing is to be measured, each part with its size as drawn.
    """
    open_, asked = here.compared.open, here.compared.asked
    items = []
    for n, one in enumerate(here.compared.shown, 1):
        state = "done" if one not in open_ else "wrong" if one.was_outside else "due"
        read = together([length(mm) for mm in one.readings])
        text = say("{read} mm read", read=read) if read else say("measure it")
        if one == asked:
            text = say("{read} mm: once more", read=read) if read else say("measure it now")
        label = say("{part}: {size}", part=one.part.name, size=one.size.in_words)
        items.append(Check(label=label, text=text, code=button(f"row_{n}"), state=state))
    if not items:
        parts = list_by_eye(here, first)[:SHOWN]
        items = [Check(label=p.name, text=_say_drawn(p), state="later") for p in parts]
    return Checks(title=say("Against the master"), items=tuple(items))


def offer_first_off(here: Now, first: FirstOff) -> tuple[Press, ...]:
    """Offers what can be said of a first-off: it agrees, is wrong, or something was changed."""
    wrong = Press(label=WRONG, code=button("first_off_bad"))
    if first.state == "wrong":
        passed = Press(label=say("A supervisor passes it"), code=button("first_off_good"))
        zero = Press(label=say("Zero is set anew"), code=button("zeroed"))
        return (wrong, zero, passed)
    if here.compared.open:
        return (wrong,)
    agrees = Press(
        label=say("First-off agrees"), code=button("first_off_good"), style="primary", wide=2
    )
    return (agrees, wrong)
