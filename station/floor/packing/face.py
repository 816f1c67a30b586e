"""What the packing screen shows: the order in hand, how to pack it, what waits."""

from station.floor.packing import mailers
from station.floor.packing.needs import Want, wants
from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import (
    Asked,
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Header,
    Hint,
    Listing,
    MailerDrawing,
    Pairs,
    Press,
    Remark,
    Row,
    Table,
)
from station.shop.facts import Cart, Mailer, Order, Pack, Part
from station.shop.rooms import Hand
from station.shop.views import View
from station.shop.words import Say, say

MANY = 4  # parts that stand above what comes next
MOST = 6  # parts that stand on the screen at once


def face(hand: Hand, view: View) -> Face:
    """The screen at packing."""
    order = view.get(Order, hand.subject) if hand.subject else None
    if order is None:
        return _empty(hand, view)
    found = wants(view, order)
    return Face(
        title=say("Packing"),
        where=_where(hand),
        main=(
            _header(order, found, hand.now),
            *(_asked(hand, view) or _work(found, order)),
        ),
        presses=_presses(found, hand),
        middle=_how(order, view),
        side=(_waiting(view, hand.now, 5), _cart(view)),
        weights=(47, 29, 24),
    )


def _work(found: tuple[Want, ...], order: Order) -> tuple[Block, ...]:
    """What to take, and the next of it; of a long order what is still to go comes first."""
    if len(found) > MANY:
        return (_table(tuple(sorted(found, key=lambda w: not w.to_go))[:MOST]),)
    return (_table(found), *_next(found, order))


def _where(hand: Hand) -> Say:
    return say("Bench {bench}", bench=hand.bench) if hand.bench else Say()


def _empty(hand: Hand, view: View) -> Face:
    """Nothing in hand: which order is due first."""
    return Face(
        title=say("Packing"),
        where=_where(hand),
        main=(
            Hint(title=say("Take the next order"), note=say("or scan or touch one")),
            _orders(view, hand.now),
        ),
        presses=(Press(label=say("Next order"), code=button("next_order"), style="primary"),),
        side=(_cart(view), _care()),
    )


def _orders(view: View, now: str) -> Cards:
    entries = tuple(
        Entry(
            big=o.id,
            right=_due(o, now),
            tone="attention" if _late(o, now) else "",
            line1=_lines(o),
            line2=_state(o),
            code=write("order", o.id),
        )
        for o in view.shelf(Order, "open", 5)
    )
    return Cards(title=say("By due time"), entries=entries, empty=say("Everything is packed."))


def _lines(order: Order) -> Say:
    return say("{n} {n|line|lines}", n=len(order.lines))


def _state(order: Order) -> Say:
    if order.state == "waiting":
        return say("waits: {what}", what=order.waits)
    return say("station {station} packs it", station=order.claimed) if order.claimed else Say()


def _due(order: Order, now: str) -> Say:
    if order.due[:10] == now[:10]:
        return say("today {at}", at=order.due[11:16])
    return say("{day}", day=f"{order.due[8:10]}.{order.due[5:7]}.")


def _late(order: Order, now: str) -> bool:
    return order.due < now


def _header(order: Order, found: tuple[Want, ...], now: str) -> Header:
    parts = sum(w.wanted for w in found)
    short = sum(line.short for line in order.lines)
    note = (
        say("leaves {due} · {short} owed", due=_due(order, now), short=short)
        if short
        else say("leaves {due} · nothing short", due=_due(order, now))
    )
    return Header(
        label=say("Order"),
        number=order.id,
        note=note,
        title=say("{lines}, {parts} {parts|part|parts}", lines=_lines(order), parts=parts),
    )


def _table(found: tuple[Want, ...]) -> Table:
    return Table(
        columns=(say("part"), say("take from"), say("in the pack")),
        rows=tuple(
            Row(
                title=w.part.name,
                note=w.part.words,
                code=write("part", w.part.id),
                cells=(
                    Cell(text=say("rack {place}", place=w.place_name)),
                    Cell(text=say("{n} of {all}", n=w.inside, all=w.wanted), bold=True),
                ),
                done=not w.to_go,
                selected=False,
            )
            for w in found
        ),
    )


def _next(found: tuple[Want, ...], order: Order) -> tuple[Block, ...]:
    want = next((w for w in found if w.to_go), None)
    if order.state == "cancelled":
        return (
            Remark(
                tone="stop",
                title=say("This order is cancelled"),
                text=say("Put everything back on the rack."),
            ),
        )
    if want is None:
        return (Hint(title=say("All of it is in"), note=say("Close the pack."), tone="good"),)
    return (
        Hint(
            title=say("Next: {n} × {part}", n=want.to_go, part=want.part.name),
            right=say("Rack {place}", place=want.place_name),
            note=say("scan the card under the master, or touch the row"),
        ),
    )


def _asked(hand: Hand, view: View) -> tuple[Block, ...]:
    if hand.work.get("asks") != "count":
        return ()
    part = view.get(Part, str(hand.work.get("part", "")))
    return (
        Asked(
            question=say("How many {part} are really there?", part=part.name if part else ""),
            typed=hand.digits,
            unit=say("{n|part|parts}", n=hand.digits),
        ),
    )


def _presses(found: tuple[Want, ...], hand: Hand) -> tuple[Press, ...]:
    go = sum(w.to_go for w in found)
    short = next((w for w in found if w.part.id == hand.work.get("short")), None)
    if short and short.to_go > short.on_rack:
        return (
            Press(label=say("Wait for it"), code=button("wait"), style="primary"),
            Press(label=say("Send it short"), code=button("send_short")),
            Press(label=say("Put it down"), code=button("put_down")),
        )
    label = say("Close: {n} to go", n=go) if go else say("Close the pack")
    return (
        Press(label=label, code=button("close_pack"), style="off" if go else "primary", wide=2),
        Press(label=say("Missing"), code=button("part_missing")),
        Press(label=say("Put back"), code=button("take_back")),
    )


def _how(order: Order, view: View) -> tuple[Block, ...]:
    """How to pack it: the stack in the smallest mailer that takes it."""
    pieces = [(w.part, w.wanted) for w in wants(view, order)]
    made = mailers.stack(pieces)
    mailer = mailers.smallest(made, view.shelf(Mailer, "all", 100))
    grams, plus = mailers.weight(made, mailer)
    length, width = mailers.needs_flat(made)
    if mailer is None:
        text = say(
            "It needs {l} × {w} mm flat. Split it, or wrap it by hand.",
            l=round(length),
            w=round(width),
        )
        return (Remark(tone="attention", title=say("No mailer is large enough"), text=text),)
    rows: tuple[tuple[Say | str, Say | str], ...] = (
        (say("stack"), say("large and flat outside")),
        (say("it needs, flat"), say("{l} × {w} mm", l=round(length), w=round(width))),
        (say("thick"), say("{t} mm", t=f"{made.thick_mm:.1f}")),
        (say("should weigh"), say("{g} g ± {p}", g=round(grams), p=round(plus))),
    )
    return (
        MailerDrawing(
            name=mailer.name,
            length_mm=mailer.length_mm,
            width_mm=mailer.width_mm,
            layers=made.layers,
        ),
        Pairs(title=say("Mailer {name}", name=mailer.name), rows=rows),
    )


def _waiting(view: View, now: str, most: int) -> Listing:
    rows = tuple(
        (
            (
                Cell(text=o.id, bold=True),
                Cell(text=_lines(o)),
                Cell(text=_due(o, now), tone="stop" if _late(o, now) else "quiet"),
            ),
            write("order", o.id),
        )
        for o in view.shelf(Order, "open", most)
    )
    return Listing(title=say("Waiting to pack"), rows=rows, empty=say("Nothing waits."))


def _cart(view: View) -> Block:
    """The carts that stand here, and how many packs lie on each."""
    rows: list[tuple[Say | str, Say | str]] = []
    for cart in view.shelf(Cart, "all", 3):
        packs = len(view.shelf(Pack, f"cart/{cart.id}", 500))
        goes = (
            say("{n} {n|pack|packs}, goes at {at}", n=packs, at=cart.goes)
            if cart.goes
            else say("{n} {n|pack|packs}", n=packs)
        )
        rows.append((cart.name, goes))
    rows.append((say("packs for a cart"), say("{n}", n=len(view.shelf(Pack, "packed", 500)))))
    return Pairs(title=say("Carts"), rows=tuple(rows))


def _care() -> Remark:
    return Remark(
        tone="attention",
        title=say("Take care"),
        text=say(
            "Lift with the legs, keep the pack close. Knife away from the other hand. Local rules "
            "come first."
        ),
    )
