"""Reads what a code or a number means at packing on a walk for several orders."""

from dataclasses import replace

from station.floor.packing.acts import BeginWalk, LeaveWalk, PickForWalk
from station.floor.packing.work import PackingHand
from station.queries.walk import choose_walk
from station.shop.acts import question, refuse
from station.shop.codes import Code
from station.shop.facts import Part, RackPlace
from station.shop.rooms import Do, Number, Took
from station.shop.views import View
from station.shop.words import say


def press_walk(hand: PackingHand, view: View) -> Do | Took:
    """Begins a walk for the first orders that can leave whole."""
    orders = choose_walk(view, hand.station)
    if not orders:
        do = say("Take the next order.")
        return Took(hand, refuse(say("No order is ready that nobody packs"), do))
    numbers = tuple(o.id for o in orders)
    work = replace(type(hand.work)(), walk=numbers)
    return Do(orders[0].key, BeginWalk(orders=numbers), replace(hand.empty(), work=work))


def fetch_part(hand: PackingHand, given: Code, view: View) -> Do | Took:
    """Fetches a part for the walk by its card or its rack place's."""
    rack = view.get(RackPlace, given.number) if given.kind == "rack" else None
    part = view.get(Part, rack.part if rack else given.number)
    if part is None:
        return Took(hand, refuse(say("Nothing has its place there"), say("Scan the card again.")))
    args = PickForWalk(orders=hand.work.walk, quantity=hand.work.take)
    return Do(part.key, args, replace(hand, work=replace(hand.work, take=None)))


def read_fetched(hand: PackingHand, given: Number) -> Took:
    """Keeps a number for the part that is scanned next."""
    count = given.whole
    if not count:
        return Took(
            hand, refuse(say("{text} is no count", text=given.text), say("Enter a whole number."))
        )
    after = replace(hand, work=replace(hand.work, take=count))
    return Took(after, question(say("{n} of the next part", n=count), say("Scan its card.")))


def leave_walk(hand: PackingHand) -> Do:
    """Leaves the walk; what was fetched stays here."""
    walk = hand.work.walk
    return Do(f"order/{walk[0]}", LeaveWalk(orders=walk), hand.empty())
