"""Questions about an order that goes in two packs: whether it should, and what goes in the first.

It goes in two where that is cheaper by the shop's own prices, or where nothing takes it whole.
What both cost is told by the same plans that are packed by (`station.queries.mailers`).
"""

import math
from functools import lru_cache
from typing import Literal, NamedTuple

from station.packs.ship import (
    ShipContainer,
    ShipPart,
    ShipProblem,
    ShipService,
    find_cheapest,
)
from station.queries.mailers import Parcel, lay_out, list_left_mailers, measure_mailer, plan_parcel
from station.queries.orders import list_needs
from station.queries.postage import list_services
from station.queries.settings import find_shop
from station.queries.weights import Pieces, weigh_parts
from station.shop.facts import Order, Part
from station.shop.views import View

CENT = 0.01  # of the shop's currency: what is saved at least
FREE = ShipService("", None, None, None, None, None, ((math.inf, 0.0),))
KEPT = 128  # answers that are kept: a screen asks again at every scan

Why = Literal["cheaper", "heavy", "large"]
Contents = tuple[tuple[str, int], ...]  # part, pieces


class TwoPacks(NamedTuple):
    """Why pieces go in two packs: what goes in the first, how both are packed, what is saved.

    `saved` is in the shop's currency; 0 where one pack does not take them at all.
    """

    why: Why
    first: Contents
    parcels: tuple[Parcel, Parcel]
    saved: float = 0.0


def plan_order(view: View, order: Order) -> TwoPacks | None:
    """Plans what an order wants in its open pack as two packs; None: it goes in one."""
    pieces = [(need.part, need.wanted) for need in list_needs(view, order)]
    return plan_two(view, pieces, plan_parcel(view, pieces))


def plan_two(view: View, pieces: Pieces, one: Parcel) -> TwoPacks | None:
    """Plans pieces as two packs; None: they go in `one`, or not even in two."""
    inside = [(part, count) for part, count in pieces if count > 0]
    if sum(count for _, count in inside) < 2 or any(part.shape is None for part, _ in inside):
        return None
    why: Why = "cheaper"
    if one.mailer is None:
        why = "large"
    elif not one.is_rated:
        return None
    elif one.sent is None:
        why = "heavy"
    problem = _ask(view, inside)
    if problem is None or (why == "cheaper" and 2 * _find_least(problem) >= one.price - CENT):
        return None
    first = _find_first(problem)
    return _compare(view, inside, first, one, why) if first else None


def _compare(
    view: View, inside: list[tuple[Part, int]], first: Contents, one: Parcel, why: Why
) -> TwoPacks | None:
    """Compares two packs with one, each as it is packed; None: one is as cheap."""
    share = dict(first)
    parcels = (
        plan_parcel(view, [(part, share.get(part.id, 0)) for part, _ in inside]),
        plan_parcel(view, [(part, count - share.get(part.id, 0)) for part, count in inside]),
    )
    if not all(p.mailer and (p.sent or not p.is_rated) for p in parcels):
        return None
    if why != "cheaper":
        return TwoPacks(why, first, parcels)
    known = all(p.mailer and p.mailer.price > 0 for p in (one, *parcels))
    saved = one.price - sum(p.price for p in parcels)
    return TwoPacks(why, first, parcels, saved) if known and saved >= CENT else None


def _find_least(problem: ShipProblem) -> float:
    """Finds a cost that no pack is below."""
    steps = [price for service in problem.services for _, price in service.steps]
    return min(c.price for c in problem.containers) + min(steps)


def _ask(view: View, inside: list[tuple[Part, int]]) -> ShipProblem | None:
    """Asks for the cheapest packs; None: there are no mailers.

    Without postage or weights one service takes all, and where a mailer has no price flat area
    stands for it.
    """
    mailers, spare = list_left_mailers(view), find_shop(view).mailer_spare_mm
    if not mailers:
        return None
    weighed = not weigh_parts(view, inside, None).unknown
    services = list_services(view) if weighed else ()
    priced = services or all(m.price > 0 for m in mailers)
    return ShipProblem(
        parts=tuple(
            ShipPart(lay_out(part, count), weigh_parts(view, [(part, 1)], None).grams)
            for part, count in inside
        ),
        containers=tuple(
            ShipContainer(m, spare, price if priced else m.length_mm * m.width_mm)
            for m, price in ((measure_mailer(m), m.price) for m in mailers)
        ),
        services=services or (FREE,),
        most_packs=2,
    )


@lru_cache(maxsize=KEPT)
def _find_first(problem: ShipProblem) -> Contents:
    """Finds what goes in the heavier of the two cheapest packs; empty: one is cheaper, or none."""
    packs = find_cheapest(problem)
    if len(packs) < 2:
        return ()
    counts: dict[str, int] = {}
    for layer in max(packs, key=lambda pack: pack.mass_g).layers:
        for pile in layer.piles:
            counts[pile.part] = counts.get(pile.part, 0) + pile.pieces
    return tuple(sorted(counts.items()))
