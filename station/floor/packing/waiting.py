"""Shows what waits at packing: orders to be packed, packs for a cart, labels to print again."""

from station.floor.packing.rows import SUPPLIES, list_orders, list_packs
from station.floor.packing.work import PackingHand
from station.queries.carts import (
    CARTS,
    count_waiting_packs,
    is_loaded,
    list_packs_on,
    say_when,
)
from station.queries.damage import count_by_mailer
from station.queries.handing_over import when_exactly
from station.queries.leaving import WaitingTogether, are_more_open
from station.queries.orders import count_inside, find_unknown, is_late, list_lacking
from station.queries.settings import find_shop
from station.queries.shelf import find_whole, list_ahead
from station.queries.supplies import find_supply, is_used_up, list_supplies
from station.queries.underway import count_underway
from station.shop.cards import button, row_code
from station.shop.cautions import CAUTIONS, say_cautions
from station.shop.codes import write_touch
from station.shop.faces import (
    Block,
    Cards,
    Cell,
    Entry,
    Face,
    Hint,
    Listing,
    Pairs,
    Press,
    Remark,
    Tone,
)
from station.shop.facts import Cart, Concern, Order, Pack, Part
from station.shop.moves import tail
from station.shop.views import View
from station.shop.words import Say, clock, day, say, say_more, when

TITLE = say("Packing")
NAMED = 3  # orders of those that a part blocks
BESIDE = 4  # orders that are listed beside the one in hand
BESIDE_CARTS = 3
LOW = 4  # supplies that run low
TO_PUT_BACK = 3  # cancelled orders
OPEN = 5000  # concerns that are looked through
AHEAD = 4  # products that are packed ahead, beside the orders


def say_where(hand: PackingHand) -> Say | str:
    """Says at which bench this screen stands."""
    return say("Bench {bench}", bench=hand.bench) if hand.bench else ""


# --- orders


def say_lines(order: Order) -> Say:
    """Says how many lines an order has."""
    return say("{n} {n|line|lines}", n=len(order.lines))


def _say_kind(order: Order) -> Say:
    """Says what an order is: what another owes, or how many lines it has."""
    if order.owed_of:
        return say("owed of {order}", order=order.owed_of)
    return say_lines(order)


def say_due(order: Order, now: str) -> Say:
    """Says when an order leaves: today's time, or the day."""
    if order.due[:10] == now[:10]:
        return say("today {at}", at=clock(order.due))
    return say("{day}", day=day(order.due))


def _say_state(order: Order, station: str, view: View) -> tuple[Say, Tone]:
    """Says how an order stands: who packs it, what it waits for, what lacks."""
    if order.claimed == station and order.claimed:
        lying = count_inside(view, order)
        return (say("{n} in its pack", n=lying) if lying else say("put down here")), "attention"
    if order.claimed:
        return say("station {station} packs it", station=order.claimed), "quiet"
    if name := find_unknown(view, order):
        return say("wants {name}: not known", name=name), "stop"
    if pack := find_whole(view, order):
        return say("pack {pack} is on the shelf", pack=pack.id), "good"
    lacking = list_lacking(view, order)
    part = view.get(Part, order.waits)
    if order.state == "waiting" and not lacking:
        return say("{part} is there now", part=part.name if part else order.waits), "good"
    if order.state == "waiting":
        return say("waits for {part}", part=part.name if part else order.waits), "quiet"
    if lacking:
        short = say("short {n} × {part}", n=lacking[0].lacking, part=lacking[0].part.name)
        return say("{short} and more", short=short) if lacking[1:] else short, "attention"
    if lying := count_inside(view, order):  # cut for it, or left by another station
        return say("{n} in its pack", n=lying), "good"
    return say("all parts are there"), "quiet"


def show_orders(hand: PackingHand, view: View) -> Face:
    """Shows the screen with nothing in hand: which order is due first."""
    found, more = list_orders(hand.station, view)
    return Face(
        title=TITLE,
        where=say_where(hand),
        main=(
            Hint(
                title=say("Take the next order"),
                note=say("the first by due time whose parts are all there; or scan or touch one"),
            ),
            Cards(
                title=_say_left_out(say("By what can leave"), more, view),
                entries=tuple(_show_waiting(w, n, hand, view) for n, w in enumerate(found, 1)),
                empty=say("Everything is packed."),
            ),
        ),
        presses=(
            Press(label=say("Next order"), code=button("next_order"), style="primary", wide=2),
            Press(label=say("One walk"), code=button("walk")),
            Press(label=say("Count supplies"), code=button("count_supplies")),
            Press(label=say("Label again"), code=button("label_again")),
        ),
        side=(
            *_list_to_put_back(view),
            *((list_shelf(view),) if list_ahead(view) else ()),
            *list_low(view),
            list_carts(view, hand.now),
            remind_care(view),
        ),
    )


def _say_left_out(title: Say, more: int, view: View) -> Say:
    """Says over a list how many orders it leaves out, or that these are not all."""
    words = say("{title} · {n} and more") if are_more_open(view) else say("{title} · {n} more")
    return words._replace(values={"title": title, "n": more}) if more else title


def _show_waiting(waiting: WaitingTogether, number: int, hand: PackingHand, view: View) -> Entry:
    """Shows an order, or the part that blocks several of them and what is under way of it."""
    part, order = waiting.blocked_by, waiting.first
    if part is None:
        return _show_order(order, number, hand, view)
    named = [p.order.id for p in waiting.prospects[:NAMED]]
    more = " …" if len(waiting.prospects) > NAMED or are_more_open(view) else ""
    coming = count_underway(view, part.id)
    where = coming.words(hand.now) if coming.all else say("none under way")
    blocks = say("{part} blocks {n} or more") if are_more_open(view) else say("{part} blocks {n}")
    return Entry(
        big=blocks._replace(values={"part": part.name, "n": len(waiting.prospects)}),
        right=say_due(order, hand.now),
        tone="stop" if is_late(order, hand.now) else "attention",
        line1=say("{orders} · {where}", orders=", ".join(named) + more, where=where),
        code=row_code("order", order.id, number),
    )


def _show_order(order: Order, number: int, hand: PackingHand, view: View) -> Entry:
    words, tone = _say_state(order, hand.station, view)
    overdue: Tone = "stop" if is_late(order, hand.now) else ""
    return Entry(
        big=order.id,
        right=say_due(order, hand.now),
        tone=overdue or ("attention" if tone in ("attention", "stop") else ""),
        line1=say("{lines} · {state}", lines=_say_kind(order), state=words),
        code=row_code("order", order.id, number),
    )


def list_waiting_orders(hand: PackingHand, view: View) -> Listing:
    """Lists the other orders by what can leave, and what keeps them."""
    found, more = list_orders(hand.station, view, most=BESIDE, but=hand.subject)
    return Listing(
        title=_say_left_out(say("Waiting to pack"), more, view),
        rows=tuple(_list_waiting(one, hand, view) for one in found),
        empty=say("Nothing waits."),
    )


def _list_waiting(
    waiting: WaitingTogether, hand: PackingHand, view: View
) -> tuple[tuple[Cell, ...], str]:
    """Puts an order on one line, or the part that blocks several."""
    cells, code = _list_order(waiting.first, hand, view)
    part = waiting.blocked_by
    if part is None:
        return cells, code
    blocks = say("blocks {n} {n|order|orders}")
    if are_more_open(view):
        blocks = say("blocks {n} or more orders")
    blocks = blocks._replace(values={"n": len(waiting.prospects)})
    return (Cell(text=part.name, bold=True), Cell(text=blocks, tone="attention"), cells[-1]), code


def _list_order(order: Order, hand: PackingHand, view: View) -> tuple[tuple[Cell, ...], str]:
    """Puts an order on one line: of its due time only what tells it apart."""
    words, tone = _say_state(order, hand.station, view)
    late: Tone = "stop" if is_late(order, hand.now) else "quiet"
    leaves = Cell(text=when(order.due, hand.now), tone=late)
    cells = (Cell(text=order.id, bold=True), Cell(text=words, tone=tone), leaves)
    return cells, write_touch("order", order.id)


def _list_to_put_back(view: View) -> tuple[Block, ...]:
    """Lists the cancelled orders whose parts are still in a pack."""
    about = [tail(c.about) for c in view.shelf(Concern, "open", OPEN) if c.what == "cancelled"]
    closed = [p for p in view.shelf(Pack, "packed", 500) if p.order in about]
    entries = []
    for order in dict.fromkeys(about):
        packs = [("pack", p.id) for p in closed if p.order == order]
        for thing in packs or [("order", order)]:
            cells = (Cell(text=order, bold=True), Cell(text=say("cancelled"), tone="stop"))
            entries.append((cells, write_touch(*thing)))
    if not entries:
        return ()
    title = say_more(say("To put back"), len(entries) - TO_PUT_BACK)
    return (Listing(title=title, rows=tuple(entries[:TO_PUT_BACK])),)


# --- packs


def list_low(view: View) -> tuple[Block, ...]:
    """Lists the mailers, wrap and labels that are below their marks."""
    rows = [
        (
            (Cell(text=low.name, bold=True),
             Cell(text=say("{n} of {mark}", n=low.left, mark=low.mark) if low.left
                  else say("0 left"), tone="attention" if low.left else "stop")),
            "",
        )
        for low in list_supplies(view)
        if low.is_low or is_used_up(view, low.id)
    ]  # fmt: skip
    title = say_more(say("Running low"), len(rows) - LOW)
    return (Listing(title=title, rows=tuple(rows[:LOW])),) if rows else ()


def ask_which_supply(hand: PackingHand, view: View) -> Face:
    """Asks what is counted of mailers, wrap and labels, then how many there are."""
    damaged = count_by_mailer(view)
    entries = tuple(
        Entry(
            big=supply.name,
            right=say("minimum {n}", n=supply.mark) if supply.mark else "",
            tone="attention" if supply.is_low else "",
            line1=_say_left(supply.left, damaged[supply.id]),
            code=row_code("mailer", supply.id, n),
        )
        for n, supply in enumerate(list_supplies(view)[:SUPPLIES], 1)
    )
    chosen = find_supply(view, hand.work.supply)
    title = say("What is counted?")
    if chosen:
        title = say("How many are there: {name}?", name=chosen.name)
    return Face(
        title=TITLE,
        where=say_where(hand),
        main=(
            Hint(title=title, note=say("scan the mailer’s card or touch it; then the number")),
            Cards(title=say("What packs take"), entries=entries),
        ),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
        side=(list_carts(view, hand.now), remind_care(view)),
    )


def _say_left(left: int, damaged: int) -> Say:
    """Says how many are left of a supply, and how many packs in such a mailer were damaged."""
    if not damaged:
        return say("{n} by the book", n=left)
    return say("{n} by the book · {d} {d|pack|packs} damaged", n=left, d=damaged)


def list_shelf(view: View) -> Listing:
    """Lists the products that are packed ahead: how many lie there; a touch packs more."""
    rows, found = [], list_ahead(view)
    for product, free, held, _ in found[:AHEAD]:
        there = say("{n} of {mark}", n=len(free), mark=product.mark)
        tone: Tone = "attention" if len(free) < product.mark else "quiet"
        kept = Cell(text=say("{n} held", n=len(held)) if held else "", tone="stop")
        cells = (Cell(text=product.name, bold=True), kept, Cell(text=there, tone=tone))
        rows.append((cells, write_touch("product", product.id)))
    title = say_more(say("On the shelf"), len(found) - AHEAD)
    return Listing(title=title, rows=tuple(rows), empty=say("Nothing is kept."))


def list_carts(view: View, now: str) -> Block:
    """Lists the first carts, and how many packs lie on each."""
    found: list[tuple[Say | str, Say | str]] = []
    carts = view.shelf(Cart, "all", CARTS)
    for cart in carts[:BESIDE_CARTS]:
        packs = say("{n} {n|pack|packs}", n=len(list_packs_on(view, cart)))
        goes = say_when(cart, now, loaded=is_loaded(view, cart))
        found.append(
            (cart.name, say("{packs}, {goes}", packs=packs, goes=goes) if goes else packs)
        )
    if (more := len(carts) - BESIDE_CARTS) > 0:
        found.append((say("{n} more", n=more), ""))
    found.append((say("packs for a cart"), say("{n}", n=count_waiting_packs(view))))
    return Pairs(title=say("Carts"), rows=tuple(found))


def ask_which_label(hand: PackingHand, view: View) -> Face:
    """Asks which pack's label is printed again."""
    entries = tuple(
        Entry(
            big=p.id,
            right=say("order {order}", order=p.order),
            line1=say("closed {at} by worker {by}", at=when_exactly(p.closed, hand.now), by=p.by),
            code=row_code("pack", p.id, n),
        )
        for n, p in enumerate(list_packs(view), 1)
    )
    return Face(
        title=TITLE,
        where=say_where(hand),
        main=(
            Hint(title=say("Which label?"), note=say("scan the order's card, or touch its pack")),
            Cards(title=say("Closed last"), entries=entries, empty=say("No pack is here.")),
        ),
        presses=(Press(label=say("Leave it"), code=button("put_down")),),
        side=(list_carts(view, hand.now), remind_care(view)),
    )


def remind_care(view: View) -> Remark:
    """Reminds of knife and back; a touch shows all of it."""
    title = say("Take care: {at}", at=CAUTIONS["pack"].at)
    text = say_cautions(("pack", "pack_lift"), find_shop(view))
    return Remark(tone="attention", title=title, text=text, code=button("care"))
