"""Pieces from the rack into the pack, and back again."""

from dataclasses import replace

from station.floor.packing.acts import CorrectPick, PickPart, PutPartsBack
from station.floor.packing.common import (
    are_held,
    elsewhere,
    next_to_take,
    no_such_part,
    not_in_hand,
    order_of,
    put_back,
    too_few,
)
from station.queries.batches import keep_held
from station.queries.orders import Need, find_need, list_needs
from station.queries.stock import list_free_on_rack, move_in_order
from station.shop.acts import Act, Answer, good, notice, refuse
from station.shop.facts import Concern, Fact, Order, Part
from station.shop.moves import Held, Move
from station.shop.views import View, by_part
from station.shop.words import Say, say, together


def pick(act: Act[PickPart], view: View) -> Answer:
    """Takes pieces of one part from its rack place, oldest batch first."""
    order, part = order_of(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return no_such_part()
    if problem := not_in_hand(act, view, order):
        return problem
    want = find_need(view, order, part.id)
    if want is None or not want.wanted:
        return wrong(view, order, part)
    quantity = want.to_go if act.args.quantity is None else act.args.quantity
    if not 0 < quantity <= want.to_go:
        return _no_more(want.to_go, part)
    if want.on_rack < quantity:
        return too_few(want)
    done = good(
        say("{n} × {part} in the pack", n=quantity, part=part.name),
        _leaving_held(want, next_to_take(view, order, part.id, want.inside + quantity)),
        moves=move_in_order(list_free_on_rack(view, part), quantity, f"packing/{order.id}"),
    )
    return replace(done, certain="told") if quantity == want.on_rack else done


def _leaving_held(want: Need, then: Say) -> Say:
    """Says first which pieces stay at the rack place that others were just taken from."""
    if not want.held:
        return then
    return say("{batches}: leave them there. {then}", batches=are_held(want.held), then=then)


def wrong(view: View, order: Order, part: Part) -> Answer:
    """Said when a part was scanned that the order does not want."""
    names = [say("{part}", part=w.part.name) for w in list_needs(view, order) if w.to_go][:3]
    return refuse(
        say("{part} is not in order {order}", part=part.name, order=order.id),
        say(
            "It wants {parts}. Put the {part} back.",
            parts=together(names) or say("nothing more"),
            part=part.name,
        ),
    )


def _no_more(to_take: int, part: Part) -> Answer:
    if to_take == 0:
        return refuse(
            say("All {part} are in the pack", part=part.name), say("Take the next part.")
        )
    return refuse(
        say("{n} {part} {n|is|are} wanted", n=to_take, part=part.name),
        say("Enter a number from 1 to {n}.", n=to_take),
    )


def correct_pick(act: Act[CorrectPick], view: View) -> Answer:
    """The pick that was just made really was another number."""
    order, part = order_of(act, view), view.get(Part, act.args.part)
    if order is None or part is None:
        return no_such_part()
    if problem := not_in_hand(act, view, order):
        return problem
    want, was, count = find_need(view, order, part.id), act.args.was, act.args.quantity
    if want is None or not 0 < was <= want.inside:
        return refuse(
            say("The pack has changed since"), say("Put back what is too many, or take more.")
        )
    if not 0 <= count <= was + want.to_go:
        return _no_more(was + want.to_go, part)
    if count == was:
        return notice(say("{n} × {part} it is", n=was, part=part.name), say("Go on."))
    if count - was > want.on_rack:
        return too_few(want)
    after = want.inside + count - was
    if count > was:
        moves = move_in_order(list_free_on_rack(view, part), count - was, f"packing/{order.id}")
        do = _leaving_held(want, next_to_take(view, order, part.id, after))
    else:
        moves = put_back(view, order, part, was - count)
        do = say("{n} {n|stays|stay} in rack {place}.", n=was - count, place=want.place_name)
    return good(
        say("{n} × {part}, not {was}: {inside} in the pack", n=count, part=part.name, was=was,
            inside=after),
        do,
        moves=moves,
    )  # fmt: skip


def take_back(act: Act[PutPartsBack], view: View) -> Answer:
    """Pieces from an order's open pack go back to their rack places."""
    order = order_of(act, view)
    if order is None:
        return refuse(say("There is no such order"), say("Scan its card."))
    if problem := elsewhere(act, order):
        return problem
    inside = by_part(view.stock(place=f"packing/{order.id}"))
    counts = {p: n for p, n in inside.items() if act.args.part in ("", p)}
    if not counts:
        return _not_inside(view, order, act.args.part)
    quantity = sum(counts.values()) if act.args.quantity is None else act.args.quantity
    if not 0 < quantity <= sum(counts.values()):
        return refuse(
            say("{n} {n|is|are} in the pack", n=sum(counts.values())),
            say("Enter a number from 1 to {n}.", n=sum(counts.values())),
        )
    parts = [part for p in counts if (part := view.get(Part, p))]
    if homeless := next((p for p in parts if not p.rack), None):
        return refuse(
            say("{part} has no place on the rack", part=homeless.name),
            say("The office gives it one first."),
        )
    moves = tuple(m for p in parts for m in put_back(view, order, p, min(quantity, counts[p.id])))
    return _put_back(act, view, order, moves, sum(inside.values()) - sum(m.qty for m in moves))


def _not_inside(view: View, order: Order, only: str) -> Answer:
    part = view.get(Part, only)
    if part:
        return refuse(
            say("No {part} are in the pack", part=part.name), say("Scan another part of it.")
        )
    return refuse(
        say("Nothing to put back from order {order}", order=order.id), say("Take the next order.")
    )


def _put_back(
    act: Act[PutPartsBack], view: View, order: Order, moves: tuple[Move, ...], left: int
) -> Answer:
    """What went back where; a cancelled order whose pack is empty is done with."""
    said = say("{n} put back on the rack", n=sum(m.qty for m in moves))
    parts = {m.part for m in moves}
    if len(parts) == 1 and (want := find_need(view, order, next(iter(parts)))):
        said = say(
            "{n} × {part} put back: rack {place}",
            n=sum(m.qty for m in moves),
            part=want.part.name,
            place=want.place_name,
        )
    held = keep_held(view, tuple(Held(*m.to, m.part, m.qty) for m in moves))
    do = say("Under their own masters.")
    if held:
        do = say("{batches}: keep them apart.", batches=are_held(held))
    sets: tuple[Fact, ...] = ()
    if order.state == "cancelled":
        do = say("{n} more to put back.", n=left) if left else say("Take the next order.")
        sets = () if left else _done_with(act, view, order)
    return good(said, do, moves=moves, sets=sets)


def _done_with(act: Act[PutPartsBack], view: View, order: Order) -> tuple[Fact, ...]:
    """A cancelled order that is put back: nobody's, and nothing to look at any more."""
    past = view.last(order.key, "cancel_order")
    worry = view.get(Concern, past.act.id) if past else None
    free = replace(order, claimed="")
    if worry is None or worry.settled:
        return (free,)
    return (free, replace(worry, settled="put back", by=act.worker))


def beyond(view: View, order: Order) -> tuple[tuple[Move, ...], Say]:
    """Pieces in the pack beyond what is wanted now, back to the rack; and that in words."""
    moves: list[Move] = []
    words: list[Say] = []
    for want in list_needs(view, order):
        if want.extra and want.part.rack:
            moves += put_back(view, order, want.part, want.extra)
            words.append(
                say(
                    "{n} {part} (rack {place})",
                    n=want.extra,
                    part=want.part.name,
                    place=want.place_name,
                )
            )
    return tuple(moves), together(words)
