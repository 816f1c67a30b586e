"""The packing screen with no order in hand, and its list of packs for a new label."""

from station.floor.packing.face_side import carts, due, lines, state
from station.floor.packing.rows import list_orders, list_packs
from station.floor.packing.work import PackingHand
from station.queries.orders import is_late
from station.shop.cards import button, row_code
from station.shop.codes import usable, write
from station.shop.faces import Block, Cards, Cell, Entry, Face, Hint, Listing, Press, Remark, Tone
from station.shop.facts import Concern, Order, Pack
from station.shop.moves import tail
from station.shop.views import View
from station.shop.words import clock, say


def empty(hand: PackingHand, view: View) -> Face:
    """Nothing in hand: which order is due first."""
    found = list_orders(view)
    return Face(
        title=say("Packing"),
        where=say("Bench {bench}", bench=hand.bench) if hand.bench else "",
        main=(
            Hint(
                title=say("Take the next order"),
                note=say("the first by due time whose parts are all there; or scan or touch one"),
            ),
            Cards(
                title=say("By due time"),
                entries=tuple(_order(o, n, hand, view) for n, o in enumerate(found, 1)),
                empty=say("Everything is packed."),
            ),
        ),
        presses=(
            Press(label=say("Next order"), code=button("next_order"), style="primary", wide=2),
            Press(label=say("Label again"), code=button("label_again")),
        ),
        side=(*_to_put_back(view), carts(view), _care()),
    )


def _order(order: Order, number: int, hand: PackingHand, view: View) -> Entry:
    words, tone = state(order, hand.station, view)
    overdue: Tone = "stop" if is_late(order, hand.now) else ""
    return Entry(
        big=order.id,
        right=due(order, hand.now),
        tone=overdue or ("attention" if tone in ("attention", "stop") else ""),
        line1=say("{lines} · {state}", lines=lines(order), state=words),
        code=row_code("order", order.id, number),
    )


def _to_put_back(view: View) -> tuple[Block, ...]:
    """Cancelled orders whose parts are still in a pack."""
    about = [tail(c.about) for c in view.shelf(Concern, "open", 50) if c.what == "cancelled"]
    closed = {p.order: p.id for p in view.shelf(Pack, "packed", 500)}
    entries = []
    for order in dict.fromkeys(about):
        kind, number = ("pack", closed[order]) if order in closed else ("order", order)
        code = write(kind, number) if number.isdecimal() and usable(kind, number) else ""
        cells = (Cell(text=order, bold=True), Cell(text=say("cancelled"), tone="stop"))
        entries.append((cells, code))
    if not entries:
        return ()
    return (Listing(title=say("To put back"), rows=tuple(entries[:3])),)


def labels(hand: PackingHand, view: View) -> Face:
    """Which pack's label is printed again."""
    entries = tuple(
        Entry(
            big=p.id,
            right=say("order {order}", order=p.order),
            line1=say("closed {at} by worker {by}", at=clock(p.closed), by=p.by),
            code=row_code("pack", p.id, n),
        )
        for n, p in enumerate(list_packs(view), 1)
    )
    return Face(
        title=say("Packing"),
        where=say("Bench {bench}", bench=hand.bench) if hand.bench else "",
        main=(
            Hint(title=say("Which label?"), note=say("scan the order's card, or touch its pack")),
            Cards(title=say("Closed last"), entries=entries, empty=say("No pack is here.")),
        ),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
        side=(carts(view), _care()),
    )


def _care() -> Remark:
    return Remark(
        tone="attention",
        title=say("Take care"),
        text=say(
            "Lift with the legs, keep the pack close. Knife away from the other hand. Local rules "
            "come first."
        ),
    )
