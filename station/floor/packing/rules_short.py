"""Decides what becomes of an order with too few on the rack: count them, wait, or owe some."""

from dataclasses import replace

from station.floor.packing.acts import RecountPlace, SendShort, WaitForPart
from station.floor.packing.rules_order import find_order, refuse_not_in_hand
from station.floor.packing.rules_take import NO_PART, move_back
from station.queries.batches import find_hold
from station.queries.orders import find_need, list_needs
from station.queries.stock import list_free_on_rack, list_on_rack, move_in_order
from station.queries.underway import count_underway
from station.shop.acts import Act, Answer, ask, attention, good, refuse
from station.shop.facts import Concern, Line, Order, Part, Product
from station.shop.moves import Move, move
from station.shop.views import View, total
from station.shop.words import Say, say, together

MUCH = 50  # pieces more than the book says: a slip of the finger is asked about
MOST = 100_000  # pieces at a rack place


# --- count them


def recount_place(act: Act[RecountPlace], view: View) -> Answer:
    """Corrects the book to what is really at a rack place; the order may then wait.

    Pieces above the book's figure belong to the newest batch that lies there, or to none that
    is known.
    """
    part, counted = view.get(Part, act.args.part), act.args.counted
    if part is None:
        return NO_PART
    if not part.rack:
        return refuse(
            say("{part} has no place on the rack", part=part.name),
            say("The office gives it one first."),
        )
    if not 0 <= counted <= MOST:
        return refuse(say("How many are there?"), say("Enter the number that you counted."))
    by = counted - total(list_on_rack(view, part))
    moves = _correct_book(view, part, by)
    do = _say_after_count(act, view, part, _count_free_after(view, part, moves))
    if by == 0:
        return good(say("Counted {n}: the book agrees", n=counted), do)
    if by > MUCH and not act.args.sure:
        said = say("{n} more than the book says", n=by)
        return ask(said, say("Count again, or say that it is so."), "sure")
    said = say(
        "Corrected: {n} {part} there, {by} by the book", n=counted, part=part.name, by=f"{by:+d}"
    )
    worry = _doubt_book(act, part, counted - by)
    return attention(said, do, moves=moves, sets=(worry,))


def _correct_book(view: View, part: Part, by: int) -> tuple[Move, ...]:
    lying = list_on_rack(view, part)
    if by == 0:
        return ()
    if by < 0:
        return move_in_order(lying, -by, "recount")
    batch = lying[-1].batch if lying else ""
    return (move(part.id, by, "recount", f"rack/{part.rack}", batch),)


def _count_free_after(view: View, part: Part, moves: tuple[Move, ...]) -> int:
    """Counts what may be taken from the rack place once the book is corrected."""
    free = total(list_free_on_rack(view, part))
    for m in moves:
        spot = m.to if m.frm.place == "recount" else m.frm
        if find_hold(view, spot.batch) is None:
            free += m.qty if spot is m.to else -m.qty
    return free


def _doubt_book(act: Act[RecountPlace], part: Part, book: int) -> Concern:
    return Concern(
        id=act.id,
        what="recount",
        since=act.at,
        about=part.key,
        text=say(
            "{part}: {book} by the book, {counted} counted at packing",
            part=part.name,
            book=book,
            counted=act.args.counted,
        ),
    )


def _say_after_count(act: Act[RecountPlace], view: View, part: Part, free: int) -> Say:
    """Says what to do now that so many are free there: take them, wait, or send it short."""
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


# --- wait for it


def wait_for_part(act: Act[WaitForPart], view: View) -> Answer:
    """Lets the order wait for a part; its pack stays as it is, and any station may go on."""
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
    under_way = count_underway(view, part.id, order.id)
    if not under_way.all:
        return refuse(
            say("No {part} are under way", part=part.name),
            say("Send it short, or put the order down."),
        )
    return attention(
        say("Order {order} waits for {part}: {where}", order=order.id, part=part.name,
            where=under_way.words(act.at)),
        say("Leave its pack open on the shelf. Take the next."),
        sets=(replace(order, state="waiting", claimed="", waits=part.id),),
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
        return ask(
            say("{n} {part} would be owed", n=want.lacking, part=part.name),
            say("Supervisor: scan your badge, then enter your PIN."),
            "supervisor",
        )
    lines, owed = _shorten_lines(view, order, part.id, want.lacking)
    less = replace(order, lines=lines)
    moves, back = _move_extra_back(view, less)
    return attention(
        say("{n} {part} {n|is|are} owed to order {order}", n=owed, part=part.name, order=order.id),
        _say_after_owed(less, back),
        moves=moves,
        sets=(less, _look_at_owed(act, order, part, owed)),
    )


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
