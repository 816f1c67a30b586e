"""Decides on an order at packing: one station claims it, puts it down, and closes its pack."""

from dataclasses import replace

from station.floor.packing.acts import ClaimOrder, PutOrderDown
from station.queries.batches import keep_held
from station.queries.orders import (
    Need,
    count_inside,
    find_unknown,
    list_needs,
    list_owed,
)
from station.shop.acts import (
    Act,
    Answer,
    Args,
    ask,
    attention,
    good,
    notice,
    refuse,
)
from station.shop.facts import Order, Product
from station.shop.moves import Held, tail
from station.shop.views import View, total
from station.shop.words import Say, say, several

STATES: dict[str, Say] = {
    "packed": say("packed"),
    "shipped": say("shipped"),
    "owed": say("owed whole"),
}


# --- whose it is, and what comes next


def find_order(act: Act[Args], view: View) -> Order | None:
    """Finds the order that an act is about."""
    return view.get(Order, tail(act.subject))


def refuse_unpackable(view: View, order: Order) -> Answer | None:
    """Refuses an order that nobody can pack."""
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


def refuse_not_in_hand(act: Act[Args], view: View, order: Order) -> Answer | None:
    """Refuses an order that this station cannot work on: it is done with, or not its own."""
    if problem := refuse_unpackable(view, order) or refuse_elsewhere(act, order):
        return problem
    if order.claimed:
        return None
    return refuse(
        say("Order {order} was put down", order=order.id), say("Scan its card, or its row.")
    )


def refuse_elsewhere(act: Act[Args], order: Order) -> Answer | None:
    """Refuses an order that another station packs, or puts back once it is cancelled."""
    if order.claimed in ("", act.station):
        return None
    return refuse(
        say("Station {station} packs order {order}", station=order.claimed, order=order.id),
        say("Take the next order."),
    )


def say_next(view: View, order: Order, done: str = "", inside: int = 0) -> Say:
    """Says what to take next, or that the pack can be closed.

    `done` is a part that this act changes: `inside` of it are in the pack after it.
    """
    for want in list_needs(view, order):
        go = max(0, want.wanted - inside) if want.part.id == done else want.to_go
        if go > 0 and want.part.id != done and want.held and want.on_rack < go:
            return _say_held_there(want)
        if go > want.on_rack > 0:
            return say("Next: {n} {part} from rack {place}, {lacking} short.", n=want.on_rack,
                       part=want.part.name, place=want.place_name,
                       lacking=go - want.on_rack)  # fmt: skip
        if go > 0:
            return say("Next: {n} {part} from rack {place}.", n=go, part=want.part.name,
                       place=want.place_name)  # fmt: skip
    return _say_all_in(view, order, done)


def _say_held_there(want: Need) -> Say:
    """Says of a part that is held where it lies what may be taken, and where the way on is."""
    if want.on_rack:
        return say("Next: {n} {part} from rack {place}; {held} there are held, leave them.",
                   n=want.on_rack, part=want.part.name, place=want.place_name,
                   held=total(want.held))  # fmt: skip
    return say("{part} in rack {place} is held: “Part missing” has the ways on.",
               part=want.part.name, place=want.place_name)  # fmt: skip


def _say_all_in(view: View, order: Order, done: str = "") -> Say:
    """Says that the pack can be closed, or what in it, but for the part `done`, is held."""
    lying = view.stock(place=f"packing/{order.id}")
    held = keep_held(view, tuple(h for h in lying if h.part != done))
    if held:
        return say("{batches}: put {n} of it back, take others.", batches=say_held(held),
                   n=total(held))  # fmt: skip
    return say("All parts are in: close the pack.")


def say_held(lying: tuple[Held, ...]) -> Say:
    """Names the batches of pieces that are held."""
    batches = list(dict.fromkeys(h.batch for h in lying))
    return say(
        "{n|Batch|Batches} {batches} {n|is|are} held", n=len(batches), batches=several(batches)
    )


# --- a claim


def claim_order(act: Act[ClaimOrder], view: View) -> Answer:
    """Lets one station pack an order; nobody else does until it lets go.

    The order that was in hand here before is free again with nothing in its pack. A supervisor
    takes over what another station claimed.
    """
    order = find_order(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Touch a row or scan its card."))
    if order.state == "owed" and (owed := list_owed(view, order)):
        return refuse(
            say("What order {order} owes is order {owed}", order=order.id, owed=owed[-1].id),
            say("Scan that, or touch its row: it comes up when its parts are there."),
        )
    if order.state == "owed":
        order = _open_again(view, order)
    cancelled = order.state == "cancelled" and view.stock(place=f"packing/{order.id}")
    if not cancelled and (problem := refuse_unpackable(view, order)):
        return problem
    if refuse_elsewhere(act, order) and not act.args.approved:
        return _ask_to_take_over(order)
    left = _free_left(act, view, order)
    if cancelled:
        return attention(
            say("Order {order} is cancelled", order=order.id),
            say("Put back what is in its pack."),
            sets=(replace(order, claimed=act.station, by=act.worker), *left),
        )
    claimed = replace(order, state="packing", claimed=act.station, by=act.worker, waits="")
    done = good(
        say("Order {order} is yours", order=order.id), _say_first(view, order),
        sets=(claimed, *left),
    )  # fmt: skip
    return done if order.claimed == act.station else replace(done, certain="needed")


def _open_again(view: View, order: Order) -> Order:
    """Opens an order that was owed whole, once one product of it can be packed."""
    again = replace(order, lines=tuple(replace(line, short=0) for line in order.lines))
    there = {w.part.id: w.on_rack + w.inside for w in list_needs(view, again)}
    products = [p for line in order.lines if (p := view.get(Product, line.product))]
    can = any(all(there.get(part, 0) >= n for part, n in p.parts) for p in products)
    return replace(again, state="open") if can else order


def _ask_to_take_over(order: Order) -> Answer:
    return ask(
        say("Station {station} packs order {order}", station=order.claimed, order=order.id),
        say("Take another. Only if that station is out of use a supervisor takes it over."),
        "supervisor",
    )


def _free_left(act: Act[ClaimOrder], view: View, order: Order) -> tuple[Order, ...]:
    """Frees the order that was in hand before, if nothing is in its pack."""
    before = view.get(Order, act.args.leaving)
    if before is None or before.id == order.id or before.claimed != act.station:
        return ()
    return () if view.stock(place=f"packing/{before.id}") else (free_order(before),)


def free_order(order: Order) -> Order:
    """Gives an order as nobody's."""
    return replace(order, state="open" if order.state == "packing" else order.state, claimed="")


def _say_first(view: View, order: Order) -> Say:
    first = next((w for w in list_needs(view, order) if w.to_go), None)
    if first is None:
        return _say_all_in(view, order)
    if first.held and first.lacking:
        return _say_held_there(first)
    if first.lacking and not first.on_rack:
        return say("{n} {part} are short: “Part missing” has the ways on.", n=first.lacking,
                   part=first.part.name)  # fmt: skip
    if first.lacking:
        return say("First: {n} {part} from rack {place}, {lacking} short.", n=first.on_rack,
                   part=first.part.name, place=first.place_name,
                   lacking=first.lacking)  # fmt: skip
    return say("First: {n} {part} from rack {place}.", n=first.to_go, part=first.part.name,
               place=first.place_name)  # fmt: skip


def put_order_down(act: Act[PutOrderDown], view: View) -> Answer:
    """Frees an order with nothing in its pack for every station."""
    order = find_order(act, view)
    if order is None or order.claimed != act.station:
        return refuse(say("That order is not in hand here"), say("Take the next order."))
    if lying := count_inside(view, order):
        return tell_stays(order, lying)
    return good(
        say("Order {order} is put down: anybody can take it", order=order.id),
        say("Take the next order."),
        sets=(free_order(order),),
    )


def tell_stays(order: Order, lying: int) -> Answer:
    """Tells that an order with pieces in its pack stays with the station that puts it down."""
    if order.state == "cancelled":
        return notice(
            say("Cancelled order {order} has {n} in its pack", order=order.id, n=lying),
            say("It stays with this station until they are put back."),
        )
    return notice(
        say("Order {order} stays with this station: {n} in its pack", order=order.id, n=lying),
        say("Go on with it later, or put them back first."),
    )
