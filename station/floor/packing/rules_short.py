"""Decides what becomes of an order with too few on the rack: wait, or owe some."""

from dataclasses import replace

from station.floor.packing.acts import AskForSheet, SendShort, TakeFromOrder, WaitForPart
from station.floor.packing.rules_order import (
    find_order,
    refuse_elsewhere,
    refuse_not_in_hand,
    say_next,
)
from station.floor.packing.rules_take import NO_PART, move_back
from station.queries.batches import keep_free
from station.queries.orders import Need, find_need, list_needs
from station.queries.owing import owe
from station.queries.short import find_later_pack
from station.queries.stock import move_in_order
from station.queries.underway import count_underway
from station.shop.acts import Act, Answer, ask_approval, attention, refuse
from station.shop.facts import Concern, Line, Order, Part, Product
from station.shop.moves import Move
from station.shop.views import View, total
from station.shop.words import Say, say, together

# --- wait for it


def _find_lack(
    act: Act[WaitForPart] | Act[AskForSheet], view: View
) -> tuple[Order, Need] | Answer:
    """Finds the order in hand and what it lacks of a part; else why nothing is waited for."""
    order, part = find_order(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return refuse(say("What does it wait for?"), say("Scan the part's card."))
    if problem := refuse_not_in_hand(act, view, order):
        return problem
    want = find_need(view, order, part.id)
    if want is None:
        return NO_PART
    if not want.lacking:
        return refuse(
            say("{part} is not missing", part=part.name),
            say("Take it, or touch “Part missing” to count."),
        )
    return order, want


def wait_for_part(act: Act[WaitForPart], view: View) -> Answer:
    """Lets the order wait for a part; its pack stays as it is, and any station may go on."""
    found = _find_lack(act, view)
    if isinstance(found, Answer):
        return found
    order, part = found[0], found[1].part
    under_way = count_underway(view, part.id, order.id)
    if not under_way.all:
        return refuse(
            say("No {part} are under way", part=part.name),
            say("Send it short, or ask for a sheet."),
        )
    return attention(
        say("Order {order} waits for {part}: {where}", order=order.id, part=part.name,
            where=under_way.words(act.at)),
        say("Leave its pack open on the shelf. Take the next."),
        sets=(replace(order, state="waiting", claimed="", waits=part.id),),
    )  # fmt: skip


def take_from_order(act: Act[TakeFromOrder], view: View) -> Answer:
    """Takes what an order lacks out of the open pack of one that is due later."""
    order, part = find_order(act, view), view.get(Part, act.args.part)
    other = view.get(Order, act.args.other)
    if order is None or part is None or other is None:
        return refuse(say("What does it wait for?"), say("Scan the part's card."))
    if problem := refuse_not_in_hand(act, view, order) or refuse_elsewhere(act, other):
        return problem
    want = find_need(view, order, part.id)
    later = find_later_pack(view, order, want) if want and want.lacking else None
    if want is None or later is None or later.order.id != other.id:
        return refuse(
            say("No later order has so many {part} in its pack", part=part.name),
            say("Wait for it, or send it short."),
        )
    inside = [h for h in view.stock(place=f"packing/{other.id}") if h.part == part.id]
    free = keep_free(view, tuple(inside))
    if total(free) < want.lacking:
        return refuse(
            say("{part} in order {order} is held", part=part.name, order=other.id),
            say("Wait for it, or send it short."),
        )
    return attention(
        say("{n} {part} from order {other} to order {order}", n=want.lacking, part=part.name,
            other=other.id, order=order.id),
        say("Order {other} takes others when they are there. {then}", other=other.id,
            then=say_next(view, order, part.id, want.inside + want.lacking)),
        moves=move_in_order(free, want.lacking, f"packing/{order.id}"),
    )  # fmt: skip


def ask_for_sheet(act: Act[AskForSheet], view: View) -> Answer:
    """Asks for a sheet of a part that is not under way: the office sees it, the order waits."""
    found = _find_lack(act, view)
    if isinstance(found, Answer):
        return found
    order, want = found
    part = want.part
    asked = Concern(
        id=act.id,
        what="sheet-asked",
        since=act.at,
        about=part.key,
        text=say("Order {order} asks for a sheet with {n} × {part}", order=order.id,
                 n=want.lacking, part=part.name),
    )  # fmt: skip
    return attention(
        say("A sheet with {part} is asked for", part=part.name),
        say("Order {order} waits. Leave its pack open on the shelf. Take the next.",
            order=order.id),
        sets=(replace(order, state="waiting", claimed="", waits=part.id), asked),
    )  # fmt: skip


# --- owe some


def send_short(act: Act[SendShort], view: View) -> Answer:
    """Lets an order go with pieces owed, which a supervisor approves."""
    order, part = find_order(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return refuse(say("Which part is short?"), say("Scan the part's card."))
    if problem := refuse_not_in_hand(act, view, order):
        return problem
    want = find_need(view, order, part.id)
    if want is None or not want.lacking:
        return refuse(say("{part} is not short", part=part.name), say("Take it from the rack."))
    if not act.args.approved:
        return ask_approval(say("{n} {part} would be owed", n=want.lacking, part=part.name))
    lines, owed = _shorten_lines(view, order, part.id, want.lacking)
    less, later = replace(order, lines=lines), _owe_lines(view, order, lines)
    moves, back = _move_extra_back(view, less)
    return attention(
        say("{n} {part} {n|is|are} owed to order {order}", n=owed, part=part.name, order=order.id),
        _say_after_owed(less, back),
        moves=moves,
        sets=(less, later, _look_at_owed(act, order, part, owed)),
    )


def _owe_lines(view: View, order: Order, lines: tuple[Line, ...]) -> Order:
    """Makes an order of what is owed by its lines.

    It is due as its order was, so that it comes up as soon as its parts are there.
    """
    more: dict[str, int] = {}
    for was, line in zip(order.lines, lines, strict=True):
        if line.short > was.short:
            more[line.product] = more.get(line.product, 0) + line.short - was.short
    return owe(view, order, more, order.due)


def _shorten_lines(
    view: View, order: Order, part: str, short: int
) -> tuple[tuple[Line, ...], int]:
    """Owes whole products of the lines until `short` pieces of the part are covered.

    Gives the lines, and the pieces of the part that are owed so.
    """
    lines, owed = [], 0
    for line in order.lines:
        product = view.get(Product, line.product)
        each = dict(product.parts).get(part, 0) if product else 0
        more = 0
        if each and short > owed:
            more = min(line.quantity - line.short, -(-(short - owed) // each))
            owed += more * each
        lines.append(replace(line, short=line.short + more))
    return tuple(lines), owed


def _move_extra_back(view: View, order: Order) -> tuple[tuple[Move, ...], Say]:
    """Moves pieces in the pack beyond what is wanted now to the rack; and says which."""
    extra = [want for want in list_needs(view, order) if want.extra and want.part.rack]
    words = [
        say("{n} {part} (rack {place})", n=w.extra, part=w.part.name, place=w.place_name)
        for w in extra
    ]
    moves = (m for w in extra for m in move_back(view, order, w.part, w.extra))
    return tuple(moves), together(words)


def _say_after_owed(order: Order, back: Say) -> Say:
    """Says what to do with an order that owes pieces now: what goes `back`, and that it closes."""
    whole = all(line.short >= line.quantity for line in order.lines)
    if back and whole:
        return say("Put back {parts}. Then close it as owed.", parts=back)
    if back:
        return say("Put back {parts}. Then close the pack.", parts=back)
    if whole:
        return say("Nothing of it is left to pack: close it as owed.")
    return say("Take the rest and close the pack.")


def _look_at_owed(act: Act[SendShort], order: Order, part: Part, owed: int) -> Concern:
    return Concern(
        id=act.id,
        what="short",
        since=act.at,
        about=order.key,
        tone="stop",
        text=say("Order {order} is short of {n} × {part}", order=order.id, n=owed, part=part.name),
    )
