"""Decides on a walk along the rack for several orders: claimed, fetched, left."""

from dataclasses import replace

from station.floor.packing.acts import BeginWalk, LeaveWalk, PickForWalk
from station.floor.packing.rules_order import free_order, refuse_elsewhere, refuse_unpackable
from station.floor.packing.rules_take import NO_PART, refuse_too_few
from station.queries.stock import list_free_on_rack, move_in_order, take_in_order
from station.queries.walk import WalkPart, list_walk
from station.shop.acts import Act, Answer, good, refuse
from station.shop.facts import Order, Part
from station.shop.moves import Move, tail
from station.shop.views import View, total
from station.shop.words import Say, say, together

NAMED = 4  # orders, or parts, that an answer names


def begin_walk(act: Act[BeginWalk], view: View) -> Answer:
    """Lets one station fetch several orders; nobody else packs them until it lets go."""
    orders = [o for number in act.args.orders if (o := view.get(Order, number))]
    if not orders:
        return refuse(say("There is no such order"), say("Take the next order."))
    for order in orders:
        if problem := refuse_unpackable(view, order) or refuse_elsewhere(act, order):
            return problem
    claimed = tuple(
        replace(o, state="packing", claimed=act.station, by=act.worker, waits="") for o in orders
    )
    said = say("{n} {n|order|orders} on this walk", n=len(orders))
    done = good(said, say_next_place(list_walk(view, act.args.orders)), sets=claimed)
    return replace(done, certain="needed")


def say_next_place(found: tuple[WalkPart, ...]) -> Say:
    """Says what is fetched next, or that it is sorted at the bench."""
    if not found:
        return say("All parts are fetched: sort them at the bench, order by order.")
    return say("Next: {n} {part} from rack {place}.", n=found[0].to_go, part=found[0].part.name,
               place=found[0].need.place_name)  # fmt: skip


def pick_for_walk(act: Act[PickForWalk], view: View) -> Answer:
    """Fetches a part for all orders of a walk, oldest batch first; the first due has its first."""
    part, walk = view.get(Part, tail(act.subject)), list_walk(view, act.args.orders)
    if part is None:
        return NO_PART
    wanted = next((w for w in walk if w.part.id == part.id), None)
    if wanted is None:
        return _refuse_unwanted(part, walk)
    if not all(o.claimed == act.station for o, _ in wanted.wanting):
        return refuse(
            say("Some of these orders were put down"), say("Leave the walk and begin it again.")
        )
    free = list_free_on_rack(view, part)
    quantity = wanted.to_go if act.args.quantity is None else act.args.quantity
    if not 0 < quantity <= wanted.to_go:
        return refuse(
            say("{n} {part} {n|is|are} wanted", n=wanted.to_go, part=part.name),
            say("Enter a number from 1 to {n}.", n=wanted.to_go),
        )
    if total(free) < quantity:
        return refuse_too_few(wanted.need)
    moves, shares = _deal(view, part, wanted, quantity)
    rest = tuple(w for w in walk if w.part.id != part.id)
    done = good(
        say("{n} × {part}: {shares}", n=quantity, part=part.name, shares=_say_shares(shares)),
        say_next_place(rest),
        moves=moves,
    )
    return replace(done, certain="told") if total(free) == quantity else done


def _deal(
    view: View, part: Part, wanted: WalkPart, quantity: int
) -> tuple[tuple[Move, ...], list[tuple[str, int]]]:
    """Deals pieces to the orders by due time, of the oldest batches first."""
    left, gone = quantity, 0
    moves: list[Move] = []
    shares: list[tuple[str, int]] = []
    free = list_free_on_rack(view, part)
    for order, to_go in wanted.wanting:
        share = min(left, to_go)
        if not share:
            break
        upto = take_in_order(free, gone + share)
        before = {h.batch: h.qty for h in take_in_order(free, gone)}
        own = tuple(h._replace(qty=h.qty - before.get(h.batch, 0)) for h in upto)
        rest = tuple(h for h in own if h.qty)
        moves += move_in_order(rest, share, f"packing/{order.id}")
        shares.append((order.id, share))
        left, gone = left - share, gone + share
    return tuple(moves), shares


def _say_shares(shares: list[tuple[str, int]]) -> Say:
    """Says how many are for which order."""
    if len(shares) > NAMED:
        return say("for {n} {n|order|orders}", n=len(shares))
    return together([say("{n} for {order}", n=n, order=order) for order, n in shares])


def _refuse_unwanted(part: Part, walk: tuple[WalkPart, ...]) -> Answer:
    """Refuses a part that no order of the walk wants, by its name."""
    names = [say("{part}", part=w.part.name) for w in walk]
    return refuse(
        say("{part} is in none of these orders, or fetched already", part=part.name),
        say(
            "They want {parts}. Put the {part} back.", parts=together(names, NAMED), part=part.name
        )
        if names
        else say("Put the {part} back; sort at the bench.", part=part.name),
    )


def leave_walk(act: Act[LeaveWalk], view: View) -> Answer:
    """Frees the orders of a walk with nothing in their packs; the others stay here."""
    orders = [o for number in act.args.orders if (o := view.get(Order, number))]
    mine = [o for o in orders if o.claimed == act.station]
    empty = [o for o in mine if not view.stock(place=f"packing/{o.id}")]
    kept = len(mine) - len(empty)
    do = say("Take the next order.")
    if kept:
        do = say("{n} {n|order stays|orders stay} here: sort them at the bench.", n=kept)
    said = say("{n} {n|order is|orders are} put down", n=len(empty))
    return good(said, do, sets=tuple(free_order(o) for o in empty))
