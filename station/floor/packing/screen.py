"""Shows the order in hand at packing: what to take, how it is packed, what is asked."""

from dataclasses import replace

from station.floor.packing.in_two import find_two, name_unit
from station.floor.packing.rows import find_front, is_putting_back, is_spoiling, list_parts
from station.floor.packing.screen_parcel import show_parcel
from station.floor.packing.screen_shelf import show_ahead
from station.floor.packing.screen_walk import show_walk
from station.floor.packing.waiting import (
    TITLE,
    ask_which_label,
    ask_which_supply,
    list_carts,
    list_waiting_orders,
    remind_care,
    say_due,
    say_lines,
    say_where,
    show_orders,
)
from station.floor.packing.work import PackingHand
from station.queries.batches import keep_held
from station.queries.orders import (
    Need,
    count_closed,
    count_packed,
    is_complete,
    is_late,
    list_needs,
)
from station.queries.short import Ways, list_ways
from station.queries.stock import name_part
from station.shop.cards import button, row_code
from station.shop.faces import (
    Asked,
    Block,
    Cell,
    Face,
    Header,
    Hint,
    Pairs,
    Press,
    Remark,
    Row,
    Table,
)
from station.shop.facts import Order, Part, Product
from station.shop.views import View, by_part
from station.shop.words import Say, day, say, several, together

NAMED = 3  # parts of one set; a set of more is told by its words
SET_HIGH, PART_HIGH, ROOM = 27, 60, 310  # px: a product, a part, and what is left for both
MOST_ASSUMED = 2  # parts whose density is assumed, beside the weight
MOST_NAMED = 4  # parts of the first of two packs
MANY = 5  # rows that stand above what comes next
LEAVE = Press(label=say("Leave it"), code=button("put_down"))
SPOILED = Press(label=say("Spoiled"), code=button("spoiled_piece"))
PART_PACK = Press(label=say("Two packs"), code=button("part_pack"))
PUT_DOWN = Press(label=say("Leave it"), code=button("put_down"))

Pair = tuple[Say | str, Say | str]


def screen(hand: PackingHand, view: View) -> Face:
    """Shows the order in hand; with none, what waits."""
    if hand.work.asks == "label":
        return ask_which_label(hand, view)
    if hand.work.asks == "supplies":
        return ask_which_supply(hand, view)
    if hand.work.shelf:
        return show_ahead(hand, view)
    if hand.work.walk:
        return show_walk(hand, view)
    order = view.get(Order, hand.subject) if hand.subject else None
    if order is None:
        return show_orders(hand, view)
    found = list_needs(view, order)
    return Face(
        title=TITLE,
        where=say_where(hand),
        main=(
            _show_header(order, found, hand.now, view),
            *(_ask_number(hand, found, view) or _show_work(hand, order, found, view)),
        ),
        presses=_offer_presses(hand, order, found, view),
        middle=show_parcel(hand, found, view),
        side=(list_waiting_orders(hand, view), list_carts(view, hand.now), remind_care(view)),
        weights=(48, 27, 25),
    )


def _show_header(order: Order, found: tuple[Need, ...], now: str, view: View) -> Header:
    parts = sum(w.wanted for w in found)
    short = sum(line.short for line in order.lines)
    leaves = say("leaves {due}", due=say_due(order, now))
    if is_late(order, now):
        leaves = say("late: due {due}", due=say_due(order, now))
    lacks = [n for n in found if n.lacking]
    if lacks:
        note = say("{leaves} · short {n} × {part}", leaves=leaves, n=lacks[0].lacking,
                   part=lacks[0].part.name)  # fmt: skip
        note = say("{short} and more", short=note) if lacks[1:] else note
    elif short:
        note = say("{leaves} · {short} owed", leaves=leaves, short=short)
    else:
        note = say("{leaves} · nothing short", leaves=leaves)
    if order.packs:
        note = say("{leaves} · closed: {packs}", leaves=leaves,
                   packs=several([closed.pack for closed in order.packs]))  # fmt: skip
    return Header(
        label=say("Order"),
        number=order.id,
        note=note,
        title=say(
            "{lines}, {parts} {parts|part|parts}", lines=_say_what(order, view), parts=parts
        ),
    )


def _say_what(order: Order, view: View) -> Say:
    """Says what an order is: the product of the only line, else how many lines there are."""
    product = view.get(Product, order.lines[0].product) if len(order.lines) == 1 else None
    if product is None:
        return say_lines(order)
    sets = order.lines[0].quantity - order.lines[0].short
    return say("{n} × {product}", n=sets, product=product.name)


def _show_work(
    hand: PackingHand, order: Order, found: tuple[Need, ...], view: View
) -> tuple[Block, ...]:
    """Shows the products above, as far as there is room, and their parts beneath."""
    blocks = _show_parts(hand, order, found, view)
    rows = sum(len(block.rows) for block in blocks if isinstance(block, Table))
    if len(order.lines) * SET_HIGH + rows * PART_HIGH > ROOM:
        return blocks
    return (*_show_sets(order, view), *blocks)


def _show_sets(order: Order, view: View) -> tuple[Block, ...]:
    """Shows each product: how many sets, what one set is, how many are whole in the pack."""
    packed = by_part(view.stock(place=f"packing/{order.id}"))
    closed = count_closed(order)
    packed |= {number: n + packed.get(number, 0) for number, n in closed.items()}
    whole = count_packed(view, order, packed)
    rows: list[Pair] = []
    for line, ready in zip(order.lines, whole, strict=True):
        sets = line.quantity - line.short
        if (product := view.get(Product, line.product)) and sets:
            each = [
                say("{n} {part}", n=n, part=part.name)
                for number, n in product.parts
                if (part := view.get(Part, number))
            ]
            inside = together(each) if len(each) <= NAMED else product.words
            label = say("{n} × {product}: {inside}", n=sets, product=product.name, inside=inside)
            rows.append((label, say("{ready} of {n} whole", ready=ready, n=sets)))
    return (Pairs(rows=tuple(rows)),) if rows else ()


def _ask_number(hand: PackingHand, found: tuple[Need, ...], view: View) -> tuple[Block, ...]:
    """Asks for the weight or the count that the next number is, if any."""
    if hand.work.asks == "scale":
        question = say("What does the scale show?")
        unit = say("{unit}, without wrap", unit=name_unit(hand, view))
        return (Asked(question=question, typed=hand.digits, unit=unit),)
    if hand.work.asks != "count":
        return ()
    part = view.get(Part, hand.work.part)
    place = next((w.place_name for w in found if part and w.part.id == part.id), "")
    question = say("How many {part} are really in rack {place}?", part=part.name if part else "",
                   place=place)  # fmt: skip
    unit = say("{n|part|parts}", n=hand.digits)
    return (Asked(question=question, typed=hand.digits, unit=unit),)


# --- what to take, or to put back


def _show_parts(
    hand: PackingHand, order: Order, found: tuple[Need, ...], view: View
) -> tuple[Block, ...]:
    """Shows what to take or to put back, and the next of it; of many only the rows."""
    back = is_putting_back(hand, order) or is_spoiling(hand)
    rows = list_parts(view, order, back=back)
    table = _tabulate_parts(hand, rows, back=back)
    if back:
        cancelled = is_putting_back(hand, order) and order.state == "cancelled"
        first = _say_cancelled(rows) if cancelled else _ask_what(hand, rows)
        return (first, table) if rows else (first,)
    short = next((w for w in found if w.part.id == hand.work.short and w.lacking), None)
    if short:
        return (table, _show_ways(list_ways(view, order, short, hand.now), short))
    next_ = (
        _show_held(order, view) or _show_share(hand, order, view) or _show_next(hand, found, view)
    )
    if len(rows) == MANY:  # the table leaves room for one line more
        next_ = replace(next_, note="")
    return (table,) if len(rows) > MANY else (table, next_)


def _tabulate_parts(hand: PackingHand, found: tuple[Need, ...], *, back: bool) -> Table:
    first = None if back else find_front(hand, found)
    place = say("goes to") if back else say("take from")
    return Table(
        columns=(say("part"), place, say("in the pack")),
        rows=tuple(
            Row(
                title=w.part.name,
                note=_say_note(w),
                code=row_code("part", w.part.id, n),
                cells=(
                    Cell(text=say("rack {place}", place=w.place_name)),
                    _count_inside(w, back=back),
                ),
                done=None if back else not (w.to_go or w.extra),
                selected=first is not None and w.part.id == first.part.id,
            )
            for n, w in enumerate(found, 1)
        ),
    )


def _say_note(want: Need) -> Say | str:
    """Says the part in words; where its batch is only assumed, a mark that says so."""
    if want.extra:
        return say("{n} too many: put back", n=want.extra)
    if want.assumed > 1:
        return say("{words} · ≈ batch assumed", words=want.part.words)
    return want.part.words


def _count_inside(want: Need, *, back: bool) -> Cell:
    if back:
        return Cell(text=say("{n}", n=want.inside), bold=True)
    return Cell(
        text=say("{n} of {all}", n=want.inside, all=want.wanted),
        bold=True,
        tone="stop" if want.extra else "",
    )


def _say_cancelled(found: tuple[Need, ...]) -> Remark:
    text = (
        say("Put everything back on the rack: scan each part, or all at once.")
        if found
        else say("Nothing is in its pack. Put the order down.")
    )
    return Remark(tone="stop", title=say("This order is cancelled"), text=text)


def _ask_what(hand: PackingHand, found: tuple[Need, ...]) -> Hint:
    """Asks what goes back on the rack, or is spoiled."""
    if not found:
        return Hint(title=say("Nothing is in the pack yet"), tone="attention")
    take = hand.work.take
    if is_spoiling(hand):
        title = say("{n} of it {n|is|are} spoiled", n=take) if take else say("What is spoiled?")
        note = say("scan its card or touch its row; a number first for several")
        return Hint(title=title, note=note, tone="attention")
    title = say("Put what back?") if take is None else say("Put {n} back", n=take)
    return Hint(
        title=title, note=say("scan its card or touch its row; a number first for some of it")
    )


def _show_held(order: Order, view: View) -> Hint | None:
    """Says which pieces in the pack are of a batch that is held; None: none are."""
    held = keep_held(view, view.stock(place=f"packing/{order.id}"))
    if not held:
        return None
    names = several([name_part(view, part) for part in by_part(held)])
    note = say("touch “Put back”, scan {parts}; then take others", parts=names)
    return Hint(title=say("Held pieces are in it"), note=note, tone="stop")


def _show_next(hand: PackingHand, found: tuple[Need, ...], view: View) -> Hint:
    want = find_front(hand, found)
    if want is None and any(w.extra for w in found):
        return Hint(title=say("Too much is in"), note=say("Put it back first."), tone="attention")
    if want is None and not any(w.inside for w in found):
        return Hint(title=say("All parts are owed"), note=say("Close it as owed."))
    if want is None:
        follows = _say_what_follows(hand, found, view)
        return Hint(title=say("All parts are in"), note=follows, tone="good")
    count = want.to_go if hand.work.take is None else hand.work.take
    return Hint(
        title=say("Next: {n} × {part}", n=count, part=want.part.name),
        right=say("Rack {place}", place=want.place_name),
        note=_say_what_follows(hand, found, view),
    )


def _show_share(hand: PackingHand, order: Order, view: View) -> Hint | None:
    """Says what goes in the first of two packs once all parts are there; None: it goes in one."""
    two = find_two(hand, order, view) if is_complete(view, order) else None
    if two is None:
        return None
    parts = together(
        [say("{n} {part}", n=n, part=name_part(view, part)) for part, n in two.first], MOST_NAMED
    )
    title = say("Pack {n}: {parts}", n=len(order.packs) + 1, parts=parts)
    return Hint(title=title, note=say("The rest goes in another. Close this one."), tone="good")


def _say_what_follows(hand: PackingHand, found: tuple[Need, ...], view: View) -> Say:
    """Says what the next input does: a scan takes, a number changes the pick just made."""
    picked = hand.work.picked
    part = next((w.part for w in found if picked and w.part.id == picked.part), None)
    all_in = not any(w.to_go for w in found)
    if picked and part and all_in:
        return say("A number up to {n}: how many {part} are in. A larger one: the weight, {unit}.",
                   n=picked.pieces, part=part.name, unit=name_unit(hand, view))  # fmt: skip
    if picked and part:
        return say("a number now changes the {n} × {part}", n=picked.pieces, part=part.name)
    if not all_in:
        return say("scan the card under the master, or touch the row")
    if hand.work.scale:
        return say("Weighed: close the pack when it is right.")
    return say("A number is the weight, {unit}. Then close the pack.", unit=name_unit(hand, view))


# --- the buttons


def _offer_presses(
    hand: PackingHand, order: Order, found: tuple[Need, ...], view: View
) -> tuple[Press, ...]:
    if hand.work.asks in ("count", "scale", "spoiled"):
        return (LEAVE,)
    if is_putting_back(hand, order):
        return _offer_all_back(order, found)
    short = next((w for w in found if w.part.id == hand.work.short), None)
    if short and short.lacking:
        return (*_offer_ways(list_ways(view, order, short, hand.now)), PUT_DOWN)
    go = sum(w.to_go for w in found)
    back = Press(label=say("Put back"), code=button("take_back"))
    if go:
        close = Press(label=say("Close: {n} to go", n=go), code=button("close_pack"), style="off",
                      wide=2)  # fmt: skip
        missing = Press(label=say("Part missing"), code=button("part_missing"))
        some = any(w.inside for w in found)
        return (close, missing, back, *((PART_PACK,) if some else ()))
    whole = any(w.inside for w in found)
    label = say("Close the pack") if whole else say("Close it as owed")
    if whole and find_two(hand, order, view):
        label = say("Close pack {n}", n=len(order.packs) + 1)
    style, held = "primary", _show_held(order, view)
    if held:
        label, style = say("Close: held pieces in it"), "off"
    close = Press(label=label, code=button("close_pack"), style=style, wide=2)
    spoiled = (SPOILED,) if whole else ()
    return (close, Press(label=say("Weigh"), code=button("scale")), back, *spoiled)


def _offer_ways(ways: Ways) -> tuple[Press, ...]:
    """Offers what can be done about a part that lacks."""
    wait = Press(label=say("Wait for it"), code=button("wait"), style="primary")
    ask = Press(label=say("Ask for a sheet"), code=button("ask_sheet"), style="primary")
    later = Press(label=say("From a later one"), code=button("take_from"))
    owe = Press(label=say("Send it short"), code=button("send_short"))
    return (wait if ways.wait else ask, *((later,) if ways.later else ()), owe)


def _show_ways(ways: Ways, short: Need) -> Pairs:
    """Shows the day on which the order would leave, for each way."""
    rows: list[Pair] = []
    if ways.wait:
        rows.append((say("wait for it"), say("leaves {day}", day=day(ways.wait))))
    if ways.later:
        rows.append(
            (say("from order {order}", order=ways.later.order.id),
             say("leaves {day}", day=day(ways.now)))
        )  # fmt: skip
    follows = ways.wait or ways.sheet
    rows.append(
        (say("send it short"),
         say("leaves {day}, the rest {then}", day=day(ways.now), then=day(follows)))
    )  # fmt: skip
    if ways.sheet:
        rows.append((say("ask for a sheet"), say("leaves about {day}", day=day(ways.sheet))))
    title = say("{n} × {part} short", n=short.lacking, part=short.part.name)
    return Pairs(title=title, rows=tuple(rows))


def _offer_all_back(order: Order, found: tuple[Need, ...]) -> tuple[Press, ...]:
    style = "primary" if found and any(w.inside for w in found) else "off"
    label = say("Put all back")
    everything = Press(label=label, code=button("all_of_it"), style=style, wide=2)
    return (everything, SPOILED, PUT_DOWN if order.state == "cancelled" else LEAVE)
