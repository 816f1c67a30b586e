"""Finds whether the order in hand goes in two packs, for its screen and its dialogue."""

from station.floor.packing.work import PackingHand
from station.queries.mailers import plan_open_pack
from station.queries.orders import is_complete
from station.queries.two_packs import TwoPacks, plan_order
from station.queries.weights import Weight
from station.shop.acts import Answer, refuse
from station.shop.facts import Order
from station.shop.lengths import are_in_inches, name_weight
from station.shop.views import View
from station.shop.words import Say, figure, say


def find_two(hand: PackingHand, order: Order, view: View) -> TwoPacks | None:
    """Finds how an order goes in two packs; None: it goes in one.

    Where two are only cheaper, a person who takes another mailer has one pack.
    """
    two = plan_order(view, order)
    return None if two and hand.work.mailer and two.why == "cheaper" else two


def expect_weight(hand: PackingHand, view: View) -> Weight:
    """Gives what the scale should show now: of all, or of the first of two packs."""
    order = view.get(Order, hand.subject)
    whole = order and hand.work.asks in ("", "scale") and is_complete(view, order)
    two = find_two(hand, order, view) if order and whole else None
    return plan_open_pack(view, hand.subject, two.first if two else ()).weight


def name_unit(hand: PackingHand, view: View) -> str:
    """Names the unit that the scale's number is read in: in which the screen says it."""
    return name_weight(expect_weight(hand, view).grams) if are_in_inches() else "g"


def refuse_as_one(order: Order, two: TwoPacks) -> Answer:
    """Refuses to close all of an order as one pack where it goes in two."""
    return refuse(
        say("Order {order} goes in two packs: {why}", order=order.id, why=say_why(two)),
        say("Close pack {n} of it first.", n=len(order.packs) + 1),
    )


def say_why(two: TwoPacks) -> Say:
    """Says why pieces go in two packs."""
    if two.why == "cheaper":
        return say("{price} cheaper than one", price=figure(two.saved, 2))
    if two.why == "heavy":
        return say("nothing takes it in one")
    return say("too large for one")
