"""Reads what is counted of mailers, wrap and labels at packing, and the mailer that is chosen."""

from dataclasses import replace

from station.floor.packing.acts import CountSupplies
from station.floor.packing.work import PackingHand
from station.queries.mailers import plan_parcel
from station.queries.orders import list_needs
from station.queries.supplies import WRAP, find_supply, is_used_up, to_tenths
from station.queries.two_packs import plan_order
from station.shop.acts import attention, good, question, refuse
from station.shop.facts import Mailer, Order
from station.shop.rooms import Do, Number, Took
from station.shop.views import View
from station.shop.words import say


def ask_which_supply(hand: PackingHand) -> Took:
    """Asks what is counted."""
    work = replace(type(hand.work)(), asks="supplies")
    asked = question(say("What is counted?"), say("Scan the mailer's card, or touch a row."))
    return Took(replace(hand.empty(), work=work), asked)


def choose_supply(hand: PackingHand, number: str, view: View) -> Took:
    """Asks how many of a mailer, wrap or labels there are."""
    supply = find_supply(view, number)
    if supply is None:
        return Took(hand, refuse(say("Packs take no such thing"), say("Touch a row.")))
    work = replace(hand.work, supply=number)
    said = say("How many are there: {name}?", name=supply.name)
    return Took(replace(hand, work=work), question(said, say("Enter the number.")))


def read_supply(hand: PackingHand, given: Number) -> Do | Took:
    """Reads how many there are of what was chosen."""
    if not hand.work.supply or given.whole is None:
        return Took(
            hand, refuse(say("What is counted?"), say("Touch a row, then enter a number."))
        )
    tenths = to_tenths(given.whole) if hand.work.supply == WRAP else None
    args = CountSupplies(counted=given.whole, tenths=tenths)
    return Do(f"mailer/{hand.work.supply}", args, hand.empty())


def _plan_mailer(order: Order, view: View) -> Mailer | None:
    """Finds the mailer that the screen shows for an order, or for the first of its two packs."""
    if two := plan_order(view, order):
        return two.parcels[0].mailer
    return plan_parcel(view, [(w.part, w.wanted) for w in list_needs(view, order)]).mailer


def choose_mailer(hand: PackingHand, number: str, view: View) -> Took:
    """Takes another mailer than was worked out; closing then asks why."""
    mailer = view.get(Mailer, number)
    order = view.get(Order, hand.subject)
    planned = _plan_mailer(order, view) if order else None
    if mailer is None or not mailer.active:
        return Took(hand, refuse(say("There is no such mailer"), say("Take the one shown.")))
    if planned and planned.id == number:
        after = replace(hand, work=replace(hand.work, mailer=""))
        return Took(after, good(say("{name} it is", name=mailer.name), say("Go on.")))
    after = replace(hand, work=replace(hand.work, mailer=number))
    said = say("{name} instead of {other}", name=mailer.name,
               other=planned.name if planned else say("none"))  # fmt: skip
    if is_used_up(view, number):
        said = say("{name}: 0 left by the book", name=mailer.name)
        return Took(after, attention(said, say("Are some there? Count them after this pack.")))
    return Took(after, attention(said, say("Closing the pack asks why.")))
