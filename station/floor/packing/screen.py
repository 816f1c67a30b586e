"""What the packing screen shows: the order in hand, how to pack it, what waits."""

from dataclasses import replace

from station.floor.packing.face_side import carts, due, how_to, lines, waiting
from station.floor.packing.face_waiting import empty, labels
from station.floor.packing.rows import find_front, is_putting_back, list_parts
from station.floor.packing.work import PackingHand
from station.queries.orders import Need, is_late, list_needs
from station.shop.cards import button, row_code
from station.shop.faces import (
    Asked,
    Block,
    Cell,
    Face,
    Header,
    Hint,
    Press,
    Remark,
    Row,
    Table,
)
from station.shop.facts import Order, Part
from station.shop.views import View
from station.shop.words import Say, say

MANY = 5  # rows that stand above what comes next
LEAVE = Press(label=say("Leave it"), code=button("put_down"))


def screen(hand: PackingHand, view: View) -> Face:
    """The screen at packing."""
    if hand.work.asks == "label":
        return labels(hand, view)
    order = view.get(Order, hand.subject) if hand.subject else None
    if order is None:
        return empty(hand, view)
    found = list_needs(view, order)
    return Face(
        title=say("Packing"),
        where=say("Bench {bench}", bench=hand.bench) if hand.bench else "",
        main=(
            _header(order, found, hand.now),
            *(_asked(hand, found, view) or _work(hand, order, view)),
        ),
        presses=_presses(hand, order, found),
        middle=how_to(hand, found, view),
        side=(waiting(view, hand), carts(view)),
        weights=(48, 27, 25),
    )


def _header(order: Order, found: tuple[Need, ...], now: str) -> Header:
    parts = sum(w.wanted for w in found)
    short = sum(line.short for line in order.lines)
    leaves = say("leaves {due}", due=due(order, now))
    if is_late(order, now):
        leaves = say("late: due {due}", due=due(order, now))
    note = (
        say("{leaves} · {short} owed", leaves=leaves, short=short)
        if short
        else say("{leaves} · nothing short", leaves=leaves)
    )
    return Header(
        label=say("Order"),
        number=order.id,
        note=note,
        title=say("{lines}, {parts} {parts|part|parts}", lines=lines(order), parts=parts),
    )


def _work(hand: PackingHand, order: Order, view: View) -> tuple[Block, ...]:
    """What to take or to put back, and the next of it; of many only the rows."""
    found = list_parts(view, order, back=is_putting_back(hand, order))
    if order.state == "cancelled":
        return (_cancelled(found), *((_table(hand, found, back=True),) if found else ()))
    if is_putting_back(hand, order):
        return (_what_back(hand, found), *((_table(hand, found, back=True),) if found else ()))
    table, next_ = _table(hand, found, back=False), _next(hand, list_needs(view, order))
    if len(found) == MANY:  # the table leaves room for one line more
        next_ = replace(next_, note="")
    return (table,) if len(found) > MANY else (table, next_)


def _table(hand: PackingHand, found: tuple[Need, ...], *, back: bool) -> Table:
    first = None if back else find_front(hand, found)
    place = say("goes to") if back else say("take from")
    return Table(
        columns=(say("part"), place, say("in the pack")),
        rows=tuple(
            Row(
                title=w.part.name,
                note=_note(w),
                code=row_code("part", w.part.id, n),
                cells=(Cell(text=say("rack {place}", place=w.place_name)), _inside(w, back=back)),
                done=None if back else not (w.to_go or w.extra),
                selected=first is not None and w.part.id == first.part.id,
            )
            for n, w in enumerate(found, 1)
        ),
    )


def _note(want: Need) -> Say | str:
    """The part in words; where its batch is only assumed, a mark that says so."""
    if want.extra:
        return say("{n} too many: put back", n=want.extra)
    if want.assumed > 1:
        return say("{words} · ≈ batch assumed", words=want.part.words)
    return want.part.words


def _inside(want: Need, *, back: bool) -> Cell:
    if back:
        return Cell(text=say("{n}", n=want.inside), bold=True)
    return Cell(
        text=say("{n} of {all}", n=want.inside, all=want.wanted),
        bold=True,
        tone="stop" if want.extra else "",
    )


def _cancelled(found: tuple[Need, ...]) -> Remark:
    text = (
        say("Put everything back on the rack: scan each part, or all of it at once.")
        if found
        else say("Nothing is in its pack. Put the order down.")
    )
    return Remark(tone="stop", title=say("This order is cancelled"), text=text)


def _what_back(hand: PackingHand, found: tuple[Need, ...]) -> Hint:
    if not found:
        return Hint(title=say("Nothing is in the pack yet"), tone="attention")
    take = hand.work.take
    title = say("Put what back?") if take is None else say("Put {n} back", n=take)
    return Hint(
        title=title, note=say("scan its card or touch its row; a number first for some of it")
    )


def _next(hand: PackingHand, found: tuple[Need, ...]) -> Hint:
    want = find_front(hand, found)
    if want is None and any(w.extra for w in found):
        return Hint(title=say("Too much is in"), note=say("Put it back first."), tone="attention")
    if want is None and not any(w.inside for w in found):
        return Hint(title=say("All of it is owed"), note=say("Close it as owed."))
    if want is None:
        return Hint(title=say("All of it is in"), note=_changes(hand, found), tone="good")
    count = want.to_go if hand.work.take is None else hand.work.take
    return Hint(
        title=say("Next: {n} × {part}", n=count, part=want.part.name),
        right=say("Rack {place}", place=want.place_name),
        note=_changes(hand, found),
    )


def _changes(hand: PackingHand, found: tuple[Need, ...]) -> Say:
    """What the next input does: a scan takes, a number changes the pick just made."""
    picked = hand.work.picked
    part = next((w.part for w in found if picked and w.part.id == picked.part), None)
    if picked and part:
        return say("a number now changes the {n} × {part}", n=picked.pieces, part=part.name)
    if any(w.to_go for w in found):
        return say("scan the card under the master, or touch the row")
    if hand.work.scale:
        return say("Weighed: close the pack when it is right.")
    return say("Weigh it, then close the pack.")


def _asked(hand: PackingHand, found: tuple[Need, ...], view: View) -> tuple[Block, ...]:
    if hand.work.asks == "scale":
        question = say("What does the scale show?")
        return (Asked(question=question, typed=hand.digits, unit=say("g, without wrap")),)
    if hand.work.asks != "count":
        return ()
    part = view.get(Part, hand.work.part)
    place = next((w.place_name for w in found if part and w.part.id == part.id), "")
    return (
        Asked(
            question=say(
                "How many {part} are really in rack {place}?",
                part=part.name if part else "",
                place=place,
            ),
            typed=hand.digits,
            unit=say("{n|part|parts}", n=hand.digits),
        ),
    )


def _presses(hand: PackingHand, order: Order, found: tuple[Need, ...]) -> tuple[Press, ...]:
    if hand.work.asks in ("count", "scale"):
        return (LEAVE,)
    if is_putting_back(hand, order):
        return _back_presses(order, found)
    short = next((w for w in found if w.part.id == hand.work.short), None)
    if short and short.lacking:
        return (
            Press(label=say("Wait for it"), code=button("wait"), style="primary"),
            Press(label=say("Send it short"), code=button("send_short")),
            Press(label=say("Put it down"), code=button("put_down")),
        )
    go = sum(w.to_go for w in found)
    back = Press(label=say("Put back"), code=button("take_back"))
    if go:
        close = Press(label=say("Close: {n} to go", n=go), code=button("close_pack"), style="off",
                      wide=2)  # fmt: skip
        return (close, Press(label=say("Missing"), code=button("part_missing")), back)
    whole = any(w.inside for w in found)
    label = say("Close the pack") if whole else say("Close it as owed")
    close = Press(label=label, code=button("close_pack"), style="primary", wide=2)
    return (close, Press(label=say("Weigh"), code=button("scale")), back)


def _back_presses(order: Order, found: tuple[Need, ...]) -> tuple[Press, ...]:
    label = say("Put all of it back")
    style = "primary" if found and any(w.inside for w in found) else "off"
    everything = Press(label=label, code=button("all_of_it"), style=style, wide=2)
    if order.state == "cancelled":
        return (everything, Press(label=say("Put it down"), code=button("put_down")))
    return (everything, LEAVE)
