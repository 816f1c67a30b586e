"""What needs a look by itself: worked out now, and gone once it is mended.

Nobody raised these and nobody settles them: late orders, parts that block orders, batches that
are held without anything to settle, a cart that should have gone. One line for each of these.
"""

from itertools import takewhile
from typing import NamedTuple

from station.queries.buying import list_coming, name_purchase
from station.queries.carts import find_next_cart, is_loaded
from station.queries.health import list_troubles
from station.queries.orders import MOST, is_late
from station.queries.shortage import list_blocking
from station.queries.underway import list_queued, list_waiting_batches
from station.queries.unmade import UNMADE, list_uncuttable
from station.shop.facts import Batch, Concern, Order
from station.shop.views import View
from station.shop.words import Say, name_first, say

NAMED = 3  # orders and batches that are named
OPEN = 5000  # concerns


class Raised(NamedTuple):
    """One line: of what kind, in words, how many things; since when, empty: now.

    `press` is the name of the button that leads to where it is mended.
    """

    kind: str
    words: Say
    things: int
    press: str
    since: str = ""


def list_alike(view: View, concern: Concern) -> tuple[Concern, ...]:
    """Lists what is open for the same reason and can be settled in the same ways; it stands first.

    Where stations were of two minds the reason is what would be said now.
    """
    return (
        concern,
        *(
            other
            for other in view.shelf(Concern, "open", OPEN)
            if other.id != concern.id
            and (other.what, other.choices) == (concern.what, concern.choices)
            and str(other.now) == str(concern.now)
        ),
    )


def list_raised(view: View, now: str) -> tuple[Raised, ...]:
    """Lists what needs a look by itself, the worst first."""
    found = (
        _find_blocking(view, now),
        _find_late_orders(view, now),
        _find_late_cart(view, now),
        view.once("looks/held", _find_held),
        view.once("looks/uncuttable", _find_uncuttable),
        _find_late_purchases(view, now),
    )
    unwell = (Raised("health", t.words, 1, "area_office", t.since) for t in list_troubles(view))
    return (*(raised for raised in found if raised), *unwell)


def _find_blocking(view: View, now: str) -> Raised | None:
    """Finds the part that blocks most; where to cut shows the others."""
    blocking = list_blocking(view, now)
    if not blocking:
        return None
    words, more = blocking[0].words, len(blocking) - 1
    if more:
        words = say("{words}, and {n} {n|part|parts} more", words=words, n=more)
    return Raised("blocks", words, len(blocking), "area_plan")


def _find_late_orders(view: View, now: str) -> Raised | None:
    """Finds the orders that should have left, packed ones too."""
    late = [
        order
        for shelf in ("open", "packed")
        for order in takewhile(lambda o: is_late(o, now), view.shelf(Order, shelf, MOST))
    ]
    if not late:
        return None
    late.sort(key=lambda order: (order.due, order.id))
    words = say(
        "{n} {n|order is|orders are} late: {names}",
        n=len(late),
        names=name_first([order.id for order in late], NAMED),
    )
    return Raised("late", words, len(late), "area_packing", late[0].due)


def _find_late_cart(view: View, now: str) -> Raised | None:
    cart = find_next_cart(view, now)
    if cart is None or now[11:16] <= cart.goes or not is_loaded(view, cart):
        return None
    words = say("{cart} should have gone at {at}", cart=cart.name, at=cart.goes)
    return Raised("cart", words, 1, "area_cart", f"{now[:10]}T{cart.goes}:00")


def _find_held(view: View) -> Raised | None:
    """Finds held batches in a queue or on their way that nothing open tells of."""
    told = {c.about for c in view.shelf(Concern, "open", OPEN)}
    waiting = (view.get(Batch, number) for number in list_waiting_batches(view))
    batches = {b.id: b for b in (*list_queued(view), *waiting) if b}
    held = sorted(b.id for b in batches.values() if b.why_held and b.key not in told)
    if not held:
        return None
    words = say(
        "{n} {n|batch is|batches are} held: {names}", n=len(held), names=name_first(held, NAMED)
    )
    return Raised("held", words, len(held), "release")


def _find_uncuttable(view: View) -> Raised | None:
    """Finds begun batches whose other sheets nobody may cut: another revision is approved."""
    stuck = sorted(b.id for b in list_uncuttable(view))
    if not stuck:
        return None
    words = say(
        "{n} begun {n|batch|batches} can't be cut to the end, another revision is approved: "
        "{names}",
        n=len(stuck),
        names=name_first(stuck, NAMED),
    )
    return Raised(UNMADE, words, len(stuck), "area_office")


def _find_late_purchases(view: View, now: str) -> Raised | None:
    """Finds what should have come before today; planning counts it as on its way."""
    late = [p for p in list_coming(view) if p.expected and p.expected[:10] < now[:10]]
    if not late:
        return None
    words = say("{n} {n|purchase|purchases} should have come: {names}", n=len(late),
                names=name_first([name_purchase(view, p) for p in late], NAMED))  # fmt: skip
    return Raised("purchase", words, len(late), "area_office", f"{late[0].expected[:10]}T00:00:00")
