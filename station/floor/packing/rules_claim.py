"""Whose order it is: one station takes it, puts it down again, or lets it wait."""

from dataclasses import replace

from station.floor.packing.acts import ClaimOrder, PutOrderDown, WaitForPart
from station.floor.packing.common import (
    elsewhere,
    no_such_part,
    not_in_hand,
    order_of,
    unpackable,
)
from station.queries.orders import find_need, list_needs
from station.queries.underway import count_underway
from station.shop.acts import Act, Answer, ask, attention, good, notice, refuse
from station.shop.facts import Order, Part, Product
from station.shop.views import View, total
from station.shop.words import Say, say


def claim_order(act: Act[ClaimOrder], view: View) -> Answer:
    """One station packs an order; nobody else does until it lets go.

    The order that was in hand here before is free again with nothing in its pack. A supervisor
    takes over what another station claimed.
    """
    order = order_of(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Touch a row or scan its card."))
    if order.state == "owed":
        order = _wanted_again(view, order)
    cancelled = order.state == "cancelled" and view.stock(place=f"packing/{order.id}")
    if not cancelled and (problem := unpackable(view, order)):
        return problem
    if elsewhere(act, order) and not act.args.approved:
        return _theirs(order)
    left = _left(act, view, order)
    if cancelled:
        return attention(
            say("Order {order} is cancelled", order=order.id),
            say("Put back what is in its pack."),
            sets=(replace(order, claimed=act.station, by=act.worker), *left),
        )
    claimed = replace(order, state="packing", claimed=act.station, by=act.worker, waits="")
    done = good(
        say("Order {order} is yours", order=order.id), _first(view, order), sets=(claimed, *left)
    )
    return done if order.claimed == act.station else replace(done, certain="needed")


def _wanted_again(view: View, order: Order) -> Order:
    """An order that was owed whole, open again once one product of it can be packed."""
    again = replace(order, lines=tuple(replace(line, short=0) for line in order.lines))
    there = {w.part.id: w.on_rack + w.inside for w in list_needs(view, again)}
    products = [p for line in order.lines if (p := view.get(Product, line.product))]
    can = any(all(there.get(part, 0) >= n for part, n in p.parts) for p in products)
    return replace(again, state="open") if can else order


def _theirs(order: Order) -> Answer:
    return ask(
        say("Station {station} packs order {order}", station=order.claimed, order=order.id),
        say("Take another. Only if that station is out of use a supervisor takes it over."),
        "supervisor",
    )


def _left(act: Act[ClaimOrder], view: View, order: Order) -> tuple[Order, ...]:
    """The order that was in hand before: free again if nothing is in its pack."""
    before = view.get(Order, act.args.leaving)
    if before is None or before.id == order.id or before.claimed != act.station:
        return ()
    return () if view.stock(place=f"packing/{before.id}") else (free_again(before),)


def free_again(order: Order) -> Order:
    """An order that no station packs any more."""
    return replace(order, state="open" if order.state == "packing" else order.state, claimed="")


def _first(view: View, order: Order) -> Say:
    first = next((w for w in list_needs(view, order) if w.to_go), None)
    if first is None:
        return say("All of it is in: close the pack.")
    return say(
        "First: {n} {part} from rack {place}.",
        n=first.to_go,
        part=first.part.name,
        place=first.place_name,
    )


def put_order_down(act: Act[PutOrderDown], view: View) -> Answer:
    """An order with nothing in its pack is free for every station again."""
    order = order_of(act, view)
    if order is None or order.claimed != act.station:
        return refuse(say("That order is not in hand here"), say("Take the next order."))
    lying = total(view.stock(place=f"packing/{order.id}"))
    if lying:
        return stays(order, lying)
    return good(
        say("Order {order} is put down: anybody can take it", order=order.id),
        say("Take the next order."),
        sets=(free_again(order),),
    )


def stays(order: Order, lying: int) -> Answer:
    """Said when an order is put down with pieces in its pack."""
    if order.state == "cancelled":
        return notice(
            say("Cancelled order {order} has {n} in its pack", order=order.id, n=lying),
            say("It stays with this station until they are put back."),
        )
    return notice(
        say("Order {order} stays with this station: {n} in its pack", order=order.id, n=lying),
        say("Go on with it later, or put them back first."),
    )


def wait_for(act: Act[WaitForPart], view: View) -> Answer:
    """The order waits for a part; its pack stays as it is, and any station may go on."""
    order, part = order_of(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return refuse(say("What does it wait for?"), say("Scan the part's card."))
    if problem := not_in_hand(act, view, order):
        return problem
    want = find_need(view, order, part.id)
    if want is None:
        return no_such_part()
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
    waiting = replace(order, state="waiting", claimed="", waits=part.id)
    return attention(
        say(
            "Order {order} waits for {part}: {where}",
            order=order.id,
            part=part.name,
            where=under_way.words(act.at),
        ),
        say("Leave its pack open on the shelf. Take the next."),
        sets=(waiting,),
    )
