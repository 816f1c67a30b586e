"""What a code means at packing, with an order in hand.

`hand.work`: `part` (chosen last), `take` (a number given before the scan), `picked`
(``[part, pieces]`` of the pick just made, which a number changes), `short` (the part that
was counted short), `scale` (grams read), and `asks`: ``count`` while a rack place is
counted, ``back`` while parts go back, ``scale`` for a weight, ``label`` for a pack.
"""

from dataclasses import replace

from station.floor.packing import buttons, numbers, rows, taking
from station.queries.orders import count_inside, is_ready
from station.shop.acts import notice, refuse
from station.shop.beginning import not_here
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Order, Pack, Part, RackPlace
from station.shop.rooms import Do, Hand, Input, Number, Took, plain_do
from station.shop.views import View
from station.shop.words import say


def handle_input(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """One input at packing."""
    if isinstance(given, Number):
        return numbers.number(hand, given, view) if hand.subject else None
    done = _scanned(hand, given, view) if isinstance(given, Code) else None
    if isinstance(done, Took):  # a number changes the last pick only directly after it
        return done._replace(hand=done.hand.with_work(picked=None))
    return done


def _scanned(hand: Hand, given: Code, view: View) -> Do | Took | None:
    """A code at packing."""
    card = BY_NUMBER.get(given.number) if given.kind == "button" else None
    if card and card.name.startswith("row_"):
        row = rows.row(hand, int(card.name[4:]), view)
        return _code(hand, row, view) if row else _no_row(hand, card.name[4:])
    if card and card.name == "next_order":
        return _next_order(hand, view)
    return buttons.button(hand, card.name, view) if card else _code(hand, given, view)


def _no_row(hand: Hand, number: str) -> Took:
    return Took(hand, refuse(say("There is no row {row}", row=number), say("Choose a row.")))


def _code(hand: Hand, given: Code, view: View) -> Do | Took | None:
    """An order, a pack, or a part of the order in hand."""
    if given.kind == "order":
        asked = hand.work.get("asks") == "label"
        return _label_of(hand, given.number, view) if asked else _claim(hand, given.number)
    if given.kind == "pack":
        return _pack(hand, given.number, view)
    order = view.get(Order, hand.subject) if hand.subject else None
    if order and given.kind in ("part", "rack"):
        return _thing(hand, order, given, view)
    return None


def _claim(hand: Hand, number: str) -> Do:
    fresh = replace(hand.empty(), subject=number)
    args = {"leaving": hand.subject} if hand.subject not in ("", number) else {}
    return plain_do("claim_order", f"order/{number}", args, fresh)


def _next_order(hand: Hand, view: View) -> Do | Took:
    """The first order by due time that can be packed whole; else the first that is free."""
    live = [o for o in view.shelf(Order, "open", 100) if o.id != hand.subject]
    begun = (o for o in live if o.claimed == hand.station and count_inside(view, o))
    if half := next(begun, None):
        return _claim(hand, half.id)
    free = [o for o in live if o.state in ("open", "waiting")]
    whole = (o for o in free if is_ready(view, o))
    mine = (o for o in live if o.claimed == hand.station)
    first = next(whole, None) or next((o for o in free if o.state == "open"), None)
    first = first or next(mine, None)
    if first is None:
        return Took(hand, refuse(say("No order waits to be packed"), say("Help at trimming.")))
    return _claim(hand, first.id)


def _pack(hand: Hand, number: str, view: View) -> Do | Took:
    """A label printed again; else a cancelled order's pack is opened to be put back."""
    pack = view.get(Pack, number)
    if pack is None:
        return Took(hand, refuse(say("There is no such pack"), say("Scan the label again.")))
    if hand.work.get("asks") == "label":
        return plain_do("print_label", pack.key, {}, hand.with_work(asks=None))
    return plain_do("open_pack", pack.key, {}, replace(hand.empty(), subject=pack.order))


def _label_of(hand: Hand, order: str, view: View) -> Do | Took:
    """The label of an order's pack, where the label itself cannot be scanned."""
    past = view.last(f"order/{order}", "close_pack")
    closed = (
        [w.key.partition("/")[2] for w in past.sets if w.key.startswith("pack/")] if past else []
    )
    if not closed:
        do = not_here(view.begins()) or say("Choose a row.")
        return Took(hand, refuse(say("Order {order} has no pack", order=order), do))
    return _pack(hand, closed[0], view)


def part_of(given: Code, view: View) -> Part | None:
    """The part of a part card or of the rack place under its master."""
    if given.kind == "part":
        return view.get(Part, given.number)
    rack = view.get(RackPlace, given.number)
    return view.get(Part, rack.part) if rack else None


def _thing(hand: Hand, order: Order, given: Code, view: View) -> Do | Took:
    """A part scanned: counted, put back or taken."""
    part = part_of(given, view)
    if part is None:
        return Took(hand, refuse(say("Nothing has its place there"), say("Scan the card again.")))
    if hand.work.get("asks") == "count":
        return _count_this(hand, part)
    if rows.back(hand, order):
        return taking.back(hand, part)
    return taking.take(hand, order, part, view)


def _count_this(hand: Hand, part: Part) -> Took:
    return Took(
        hand.with_work(part=part.id),
        notice(say("How many {part} are really there?", part=part.name), say("Enter the number.")),
    )
