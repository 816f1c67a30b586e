"""What the rules of packing share: whose order it is, what comes next, how pieces move."""

from station.queries.batches import keep_free, keep_held
from station.queries.orders import Need, find_unknown, list_needs
from station.queries.stock import move_in_order
from station.shop.acts import Act, Answer, Args, refuse
from station.shop.facts import Order, Part
from station.shop.moves import Held, Move, tail
from station.shop.views import View, total
from station.shop.words import Say, say, several


def order_of(act: Act[Args], view: View) -> Order | None:
    """The order that an act is about."""
    return view.get(Order, tail(act.subject))


def no_such_part() -> Answer:
    """Said when a part is not known."""
    return refuse(say("There is no such part"), say("Scan the card under the master."))


def unpackable(view: View, order: Order) -> Answer | None:
    """Why nobody can pack this order."""
    if order.state == "cancelled":
        return refuse(
            say("Order {order} is cancelled", order=order.id), say("Put back what is in its pack.")
        )
    if not order.to_pack:
        return refuse(
            say("Order {order} is {state} already", order=order.id, state=STATES[order.state]),
            say("Take the next order."),
        )
    if name := find_unknown(view, order):
        return refuse(
            say("Order {order} wants {name}, which nobody entered", order=order.id, name=name),
            say("The office enters it. Take the next order."),
        )
    return None


STATES: dict[str, Say] = {
    "packed": say("packed"),
    "shipped": say("shipped"),
    "owed": say("owed whole"),
}


def not_in_hand(act: Act[Args], view: View, order: Order) -> Answer | None:
    """Why this station cannot work on the order: it is done with, or another's."""
    if problem := unpackable(view, order):
        return problem
    return elsewhere(act, order) or (None if order.claimed else _nobodys(order))


def elsewhere(act: Act[Args], order: Order) -> Answer | None:
    """Said when another station packs an order, or puts a cancelled one back."""
    if order.claimed in ("", act.station):
        return None
    return refuse(
        say("Station {station} packs order {order}", station=order.claimed, order=order.id),
        say("Take the next order."),
    )


def _nobodys(order: Order) -> Answer:
    return refuse(
        say("Order {order} was put down", order=order.id), say("Scan its card, or its row.")
    )


def too_few(want: Need) -> Answer:
    """Said when fewer of a part may be taken from the rack than are wanted."""
    if want.held:
        return refuse(
            say("{batches}: {n} {part} in {place} {n|stays|stay} there",
                batches=are_held(want.held), n=total(want.held), part=want.part.name,
                place=want.place_name),
            say("Take the other {n}; a supervisor lets the rest go on.", n=want.on_rack)
            if want.on_rack
            else say("Take the next part. A supervisor lets them go on."),
        )  # fmt: skip
    return refuse(
        say("Only {n} {part} in {place} by the book", n=want.on_rack, part=want.part.name,
            place=want.place_name),
        say("Touch “Part missing” to count them."),
    )  # fmt: skip


def put_back(view: View, order: Order, part: Part, quantity: int) -> tuple[Move, ...]:
    """Pieces of one part out of the pack: held ones, then the newest batch as if never taken."""
    inside = [h for h in view.stock(place=f"packing/{order.id}") if h.part == part.id]
    newest = tuple(reversed(inside))
    first = (*keep_held(view, newest), *keep_free(view, newest))
    return move_in_order(first, quantity, f"rack/{part.rack}")


def are_held(lying: tuple[Held, ...]) -> Say:
    """Names the batches of pieces that are held."""
    batches = list(dict.fromkeys(h.batch for h in lying))
    return say(
        "{n|Batch|Batches} {batches} {n|is|are} held", n=len(batches), batches=several(batches)
    )


def next_to_take(view: View, order: Order, done: str = "", inside: int = 0) -> Say:
    """What to take next, or that the pack can be closed.

    `done` is a part that this act changes: `inside` of it are in the pack after it.
    """
    for want in list_needs(view, order):
        go = max(0, want.wanted - inside) if want.part.id == done else want.to_go
        if go > 0:
            return say(
                "Next: {n} {part} from rack {place}.",
                n=go,
                part=want.part.name,
                place=want.place_name,
            )
    return say("All of it is in: close the pack.")
