"""Too few on the rack: count what is there, and let the order go with pieces owed."""

from dataclasses import replace

from station.floor.packing.acts import RecountPlace, SendShort
from station.floor.packing.common import no_such_part, not_in_hand, order_of
from station.floor.packing.rules_take import beyond
from station.queries.batches import find_hold
from station.queries.orders import find_need
from station.queries.stock import list_free_on_rack, list_on_rack, move_in_order
from station.queries.underway import count_underway
from station.shop.acts import Act, Answer, ask, attention, good, refuse
from station.shop.facts import Concern, Line, Order, Part, Product
from station.shop.moves import Move, move
from station.shop.views import View, total
from station.shop.words import Say, say

MUCH = 50  # pieces more than the book says: a slip of the finger is asked about


def recount_place(act: Act[RecountPlace], view: View) -> Answer:
    """What is really at a rack place replaces the book's figure; the order may then wait.

    Pieces above the book's figure belong to the newest batch that lies there, or to none that
    is known.
    """
    part, counted = view.get(Part, act.args.part), act.args.counted
    if part is None:
        return no_such_part()
    if not part.rack:
        return refuse(
            say("{part} has no place on the rack", part=part.name),
            say("The office gives it one first."),
        )
    if not 0 <= counted <= 100_000:
        return refuse(say("How many are there?"), say("Enter the number that you counted."))
    by = counted - total(list_on_rack(view, part))
    moves = _corrected(view, part, by)
    do = _after_count(act, view, part, _free_after(view, part, moves))
    if by == 0:
        return good(say("Counted {n}: the book agrees", n=counted), do)
    if by > MUCH and not act.args.sure:
        return ask(
            say("{n} more than the book says", n=by), say("Count again, or say that it is so."),
            "sure",
        )  # fmt: skip
    said = say(
        "Corrected: {n} {part} there, {by} by the book", n=counted, part=part.name, by=f"{by:+d}"
    )
    worry = _recounted(act, part, counted - by, counted)
    return attention(said, do, moves=moves, sets=(worry,))


def _corrected(view: View, part: Part, by: int) -> tuple[Move, ...]:
    lying = list_on_rack(view, part)
    if by == 0:
        return ()
    if by < 0:
        return move_in_order(lying, -by, "recount")
    batch = lying[-1].batch if lying else ""
    return (move(part.id, by, "recount", f"rack/{part.rack}", batch),)


def _free_after(view: View, part: Part, moves: tuple[Move, ...]) -> int:
    """Pieces that may be taken from the rack place once the count is corrected."""
    free = total(list_free_on_rack(view, part))
    for m in moves:
        spot = m.to if m.frm.place == "recount" else m.frm
        if find_hold(view, spot.batch) is None:
            free += m.qty if spot is m.to else -m.qty
    return free


def _recounted(act: Act[RecountPlace], part: Part, book: int, counted: int) -> Concern:
    return Concern(
        id=act.id,
        what="recount",
        since=act.at,
        about=part.key,
        text=say(
            "{part}: {book} by the book, {counted} counted at packing",
            part=part.name,
            book=book,
            counted=counted,
        ),
    )


def _after_count(act: Act[RecountPlace], view: View, part: Part, free: int) -> Say:
    """What to do now that so many are free there: take them, wait, or send it short."""
    order = view.get(Order, act.args.order)
    want = find_need(view, order, part.id) if order else None
    if order is None or want is None or not want.to_go:
        return say("Go on.")
    if free >= want.to_go:
        return say("Enough: take {n} from rack {place}.", n=want.to_go, place=want.place_name)
    under_way = count_underway(view, part.id, order.id)
    if under_way.all:
        return say("Under way: {where}. Wait, or send it short.", where=under_way.words(act.at))
    return say("No more are under way: send it short, or put it down.")


def send_short(act: Act[SendShort], view: View) -> Answer:
    """A supervisor lets an order go with pieces owed."""
    order, part = order_of(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return refuse(say("Which part is short?"), say("Scan the part's card."))
    if problem := not_in_hand(act, view, order):
        return problem
    want = find_need(view, order, part.id)
    if want is None or not want.lacking:
        return refuse(say("{part} is not short", part=part.name), say("Take it from the rack."))
    if not act.args.approved:
        return ask(
            say("{n} {part} would be owed", n=want.lacking, part=part.name),
            say("Supervisor: scan your badge, then enter your PIN."),
            "supervisor",
        )
    return _owed(act, view, order, part, want.lacking)


def _owed(act: Act[SendShort], view: View, order: Order, part: Part, short: int) -> Answer:
    lines, owed = _shorten(view, order, part.id, short)
    less = replace(order, lines=lines)
    moves, back = beyond(view, less)
    worry = Concern(
        id=act.id,
        what="short",
        since=act.at,
        about=order.key,
        tone="stop",
        text=say("Order {order} is short of {n} × {part}", order=order.id, n=owed, part=part.name),
    )
    do = say("Take the rest and close the pack.")
    if whole := all(line.short >= line.quantity for line in lines):
        do = say("Nothing of it is left to pack: close it as owed.")
    if back:
        do = say("Put back {parts}. Then close the pack.", parts=back)
        do = say("Put back {parts}. Then close it as owed.", parts=back) if whole else do
    return attention(
        say("{n} {part} {n|is|are} owed to order {order}", n=owed, part=part.name, order=order.id),
        do,
        moves=moves,
        sets=(less, worry),
    )


def _shorten(view: View, order: Order, part: str, short: int) -> tuple[tuple[Line, ...], int]:
    """Lines with whole products owed until `short` pieces of the part are covered."""
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
