"""Tells what stands in the rows of the packing screen, so that a row card means what is shown.

The n-th row is touched, or its card “Row n” scanned; both say the same. Things whose
number makes no printable code are touched by their row card (`row_code`).
"""

from typing import NamedTuple

from station.floor.packing.work import PackingHand
from station.queries.leaving import (
    WaitingTogether,
    gather_waiting,
    list_prospects,
)
from station.queries.orders import Need, list_needs
from station.queries.supplies import list_supplies
from station.queries.walk import WalkPart, list_walk
from station.shop.codes import Code
from station.shop.facts import Cart, Order, Pack
from station.shop.views import View

MOST = 6  # rows of parts or packs on the screen at once
ORDERS = 8  # orders, in two columns
SUPPLIES = 12  # mailers, wrap and labels, when they are counted
KEPT = 2  # rows of those, for orders that are blocked


class Shown(NamedTuple):
    """What waits, as it stands in the rows, and how many of the first orders are left out."""

    rows: tuple[WaitingTogether, ...]
    more: int


def list_orders(station: str, view: View, *, most: int = ORDERS, but: str = "") -> Shown:
    """Lists the orders by what can leave, `but` one; those that one part blocks stand together.

    Where more are ready than there are rows, the last rows are kept for what is blocked.
    """
    found = gather_waiting(p for p in list_prospects(view, station) if p.order.id != but)
    ready = [w for w in found if w.prospects[0].ready]
    blocked = [w for w in found if not w.prospects[0].ready]
    kept = min(len(blocked), max(KEPT, most - len(ready)))
    rows = (*ready[: most - kept], *blocked[:kept])
    return Shown(rows, sum(len(w.prospects) for w in found if w not in rows))


def list_parts(view: View, order: Order, *, back: bool = False) -> tuple[Need, ...]:
    """Lists the parts of an order in hand: what is still to go first where they are many.

    Where something goes `back` on the rack: every part that lies in the pack.
    """
    found = list_needs(view, order)
    if back:
        return tuple(w for w in found if w.inside)
    if len(found) > MOST:
        found = tuple(sorted(found, key=lambda w: not (w.to_go or w.extra)))
    return found[:MOST]


def list_fetch(hand: PackingHand, view: View) -> tuple[WalkPart, ...]:
    """Lists the parts of a walk that are fetched next, in the order of the rack."""
    return list_walk(view, hand.work.walk)[:MOST]


def list_packs(view: View) -> tuple[Pack, ...]:
    """Lists the packs that are still in the house, the one closed last first."""
    found = list(view.shelf(Pack, "packed", 500))
    for cart in view.shelf(Cart, "all", 20):
        found += view.shelf(Pack, f"cart/{cart.id}", 500)
    return tuple(sorted(found, key=lambda p: (p.closed, p.id), reverse=True)[:MOST])


def is_putting_back(hand: PackingHand, order: Order) -> bool:
    """Tells whether parts that are scanned now go back on the rack."""
    return hand.work.asks == "back" or (order.state == "cancelled" and not is_spoiling(hand))


def is_spoiling(hand: PackingHand) -> bool:
    """Tells whether a part that is scanned now is counted out of the pack as spoiled."""
    return hand.work.asks == "spoiled"


def find_row(hand: PackingHand, number: int, view: View) -> Code | None:
    """Finds what the n-th row on the screen is, counted from 1; None: there is no such row."""
    order = view.get(Order, hand.subject) if hand.subject else None
    if hand.work.asks == "label":
        shown = [Code("pack", p.id) for p in list_packs(view)]
    elif hand.work.asks == "supplies":
        shown = [Code("mailer", s.id) for s in list_supplies(view)[:SUPPLIES]]
    elif hand.work.walk:
        shown = [Code("part", w.part.id) for w in list_fetch(hand, view)]
    elif order is None:
        shown = [Code("order", w.first.id) for w in list_orders(hand.station, view).rows]
    else:
        back = is_putting_back(hand, order) or is_spoiling(hand)
        found = list_parts(view, order, back=back)
        shown = [Code("part", w.part.id) for w in found]
    return shown[number - 1] if 0 < number <= len(shown) else None


def find_front(hand: PackingHand, found: tuple[Need, ...]) -> Need | None:
    """Finds the row in front: the part chosen last while more of it is to go, else the first."""
    open_ones = [w for w in found if w.to_go]
    last = (w for w in open_ones if w.part.id == hand.work.part)
    return next(last, open_ones[0] if open_ones else None)
