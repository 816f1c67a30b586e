"""Beside the order in hand: how it is packed, what waits, the carts that stand here."""

from station.floor.packing.rows import list_orders
from station.floor.packing.work import PackingHand
from station.queries.mailers import GAP_MM, Stack, Weight, plan_open_pack, plan_parcel
from station.queries.orders import Need, count_inside, find_lacking, find_unknown, is_late
from station.shop.codes import usable, write
from station.shop.faces import Block, Cell, Layer, Listing, MailerDrawing, Pairs, Remark, Tone
from station.shop.facts import Cart, Order, Pack, Part
from station.shop.views import View
from station.shop.words import Say, clock, day, say, when

Pair = tuple[Say | str, Say | str]


def lines(order: Order) -> Say:
    """How many lines it has."""
    return say("{n} {n|line|lines}", n=len(order.lines))


def due(order: Order, now: str) -> Say:
    """When it leaves: today's time, or the day."""
    if order.due[:10] == now[:10]:
        return say("today {at}", at=clock(order.due))
    return say("{day}", day=day(order.due))


def state(order: Order, station: str, view: View) -> tuple[Say, Tone]:
    """How an order stands, in a few words: who packs it, what it waits for, what lacks."""
    if order.claimed == station and order.claimed:
        lying = count_inside(view, order)
        return (say("{n} in its pack", n=lying) if lying else say("put down here")), "attention"
    if order.claimed:
        return say("station {station} packs it", station=order.claimed), "quiet"
    if name := find_unknown(view, order):
        return say("wants {name}: not known", name=name), "stop"
    lacking = find_lacking(view, order)
    part = view.get(Part, order.waits)
    if order.state == "waiting" and not lacking:
        return say("{part} is there now", part=part.name if part else order.waits), "good"
    if order.state == "waiting":
        return say("waits for {part}", part=part.name if part else order.waits), "quiet"
    if lacking:
        return say("short {n} × {part}", n=lacking.lacking, part=lacking.part.name), "attention"
    return say("all of it is there"), "quiet"


def how_to(hand: PackingHand, found: tuple[Need, ...], view: View) -> tuple[Block, ...]:
    """How to pack it: the stack in the smallest mailer that takes it."""
    pieces = [(w.part, w.wanted) for w in found if w.wanted]
    if not pieces:
        return ()
    made, mailer, weight = plan_parcel(view, pieces)
    length, width = made.flat_mm
    size: tuple[Pair, ...] = (
        (say("stack"), say("large and flat outside")),
        (say("it needs, flat"), say("{l} × {w} mm", l=round(length), w=round(width))),
        (say("thick"), say("{t} mm", t=f"{made.thick_mm:.1f}")),
        (say("wrap"), say("one turn, {m} m", m=f"{made.wrap_m:.1f}")),
    )
    weights = _weights(hand, weight, view)
    if made.guessed:
        text = say("{part} has no outline in the book. Choose by eye.", part=made.guessed)
        return (
            Remark(tone="attention", title=say("Which mailer: can't tell"), text=text),
            Pairs(rows=weights),
        )
    if mailer is None:
        text = say("It needs {l} × {w} mm flat. Split it, or wrap it by hand.",
                   l=round(length), w=round(width))  # fmt: skip
        remark = Remark(tone="attention", title=say("No mailer is large enough"), text=text)
        return (remark, Pairs(rows=(*size[2:], *weights)))
    return (
        MailerDrawing(
            name=mailer.name,
            length_mm=mailer.length_mm,
            width_mm=mailer.width_mm,
            layers=_draw_layers(made),
        ),
        Pairs(title=say("Mailer {name}", name=mailer.name), rows=(*size, *weights)),
    )


def _draw_layers(made: Stack) -> tuple[Layer, ...]:
    """Each level's pieces side by side; those on top of them only in the label."""
    return tuple(
        Layer(
            label=f"{level.part.name} ×{level.pieces}" if n == 0 else "",
            x_mm=n % level.across * (level.length_mm + GAP_MM),
            y_mm=n // level.across * (level.width_mm + GAP_MM),
            length_mm=level.length_mm,
            width_mm=level.width_mm,
            level=number,
        )
        for number, level in enumerate(made.levels)
        for n in range(min(level.pieces, level.beside))
    )


def _weights(hand: PackingHand, whole: Weight, view: View) -> tuple[Pair, ...]:
    """What the whole order should weigh, and what the scale shows of the pack."""
    should = say("{g} g ± {p}", g=round(whole.grams), p=round(whole.plus))
    if whole.unknown:
        should = say("can't tell: {part}", part=whole.unknown)
    read = hand.work.scale
    shown: Say | str = "—"
    if read:
        agrees = plan_open_pack(view, hand.subject).weight.agrees(read)
        shown = say("{g} g: look again", g=round(read))
        if agrees is None:
            shown = say("{g} g: can't tell", g=round(read))
        elif agrees:
            shown = say("{g} g, as it should be", g=round(read))
    return ((say("should weigh, no wrap"), should), (say("on the scale"), shown))


def waiting(view: View, hand: PackingHand) -> Listing:
    """The other orders by due time, and what keeps them."""
    found = [o for o in list_orders(view) if o.id != hand.subject][:5]
    return Listing(
        title=say("Waiting to pack"),
        rows=tuple(_waits(order, hand, view) for order in found),
        empty=say("Nothing waits."),
    )


def _waits(order: Order, hand: PackingHand, view: View) -> tuple[tuple[Cell, ...], str]:
    """An order on one line: of its due time only what tells it apart."""
    words, tone = state(order, hand.station, view)
    leaves = Cell(
        text=when(order.due, hand.now), tone="stop" if is_late(order, hand.now) else "quiet"
    )
    known = order.id.isdecimal() and usable("order", order.id)
    return (
        (Cell(text=order.id, bold=True), Cell(text=words, tone=tone), leaves),
        write("order", order.id) if known else "",
    )


def carts(view: View) -> Block:
    """The carts that stand here, and how many packs lie on each."""
    found: list[Pair] = []
    for cart in view.shelf(Cart, "all", 3):
        packs = len(view.shelf(Pack, f"cart/{cart.id}", 500))
        goes = (
            say("{n} {n|pack|packs}, goes at {at}", n=packs, at=cart.goes)
            if cart.goes
            else say("{n} {n|pack|packs}", n=packs)
        )
        found.append((cart.name, goes))
    found.append((say("packs for a cart"), say("{n}", n=len(view.shelf(Pack, "packed", 500)))))
    return Pairs(title=say("Carts"), rows=tuple(found))
