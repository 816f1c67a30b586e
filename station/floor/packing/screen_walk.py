"""Shows a walk for several orders: what is fetched in the order of the rack, then for whom."""

from station.floor.packing.rows import list_fetch
from station.floor.packing.waiting import TITLE, remind_care, say_due, say_where
from station.floor.packing.work import PackingHand
from station.queries.orders import list_needs
from station.queries.walk import WalkPart, list_walk
from station.shop.cards import button, row_code
from station.shop.codes import write_touch
from station.shop.faces import Block, Cell, Face, Header, Hint, Listing, Press, Row, Table, Tone
from station.shop.facts import Order
from station.shop.views import View
from station.shop.words import say

NAMED = 3  # orders that want a part, or parts of an order


def show_walk(hand: PackingHand, view: View) -> Face:
    """Shows what is still to be fetched; at the bench, what is for which order."""
    found = list_walk(view, hand.work.walk)
    pieces = sum(w.to_go for w in found)
    title = say("{n} {n|piece|pieces} to fetch", n=pieces) if found else say("sort at the bench")
    return Face(
        title=TITLE,
        where=say_where(hand),
        main=(
            Header(
                label=say("On this walk"),
                number=str(len(hand.work.walk)),
                title=title,
                note=say("orders, in the order of the rack"),
            ),
            *_show_rows(hand, found, view),
        ),
        presses=(Press(label=say("Leave the walk"), code=button("put_down")),),
        side=(_list_orders(hand, view, touched=not found), remind_care(view)),
    )


def _show_rows(hand: PackingHand, found: tuple[WalkPart, ...], view: View) -> tuple[Block, ...]:
    if not found:
        note = say("scan the first order; the next order’s scan closes its pack")
        return (Hint(title=say("All parts are fetched"), note=note, tone="good"),)
    rows = tuple(
        Row(
            title=walk.part.name,
            note=_say_wanting(walk),
            code=row_code("part", walk.part.id, n),
            cells=(
                Cell(text=say("rack {place}", place=walk.need.place_name)),
                Cell(text=say("{n}", n=walk.to_go), bold=True),
            ),
            selected=n == 1,
        )
        for n, walk in enumerate(list_fetch(hand, view), 1)
    )
    table = Table(columns=(say("part"), say("take from"), say("for all")), rows=rows)
    take = hand.work.take or found[0].to_go
    hint = Hint(
        title=say("Next: {n} × {part}", n=take, part=found[0].part.name),
        right=say("Rack {place}", place=found[0].need.place_name),
        note=say("scan the card under the master, or touch the row"),
    )
    return (table, hint) if len(rows) < len(found) or len(rows) < 6 else (table,)


def _say_wanting(walk: WalkPart) -> str:
    """Names the orders that want a part, and how many each."""
    named = ", ".join(f"{order.id}: {n}" for order, n in walk.wanting[:NAMED])
    return named + (" …" if len(walk.wanting) > NAMED else "")


def _list_orders(hand: PackingHand, view: View, *, touched: bool) -> Listing:
    """Lists the orders of the walk: what is in each pack, and when it leaves.

    `touched`: they are sorted, so a touch takes one in hand.
    """
    rows = []
    for number in hand.work.walk:
        order = view.get(Order, number)
        if order is None:
            continue
        needs = list_needs(view, order)
        inside = say("{n} of {all}", n=sum(w.inside for w in needs),
                     all=sum(w.wanted for w in needs))  # fmt: skip
        tone: Tone = "quiet" if any(w.to_go for w in needs) else "good"
        cells = (Cell(text=order.id, bold=True), Cell(text=inside, tone=tone),
                 Cell(text=say_due(order, hand.now), tone="quiet"))  # fmt: skip
        rows.append((cells, write_touch("order", order.id) if touched else ""))
    return Listing(title=say("On this walk"), rows=tuple(rows))
