"""Questions about several orders that are fetched on one walk along the rack."""

from collections.abc import Iterable
from typing import NamedTuple

from station.queries.leaving import walk_ready
from station.queries.orders import Need, list_needs, rank_along_the_rack
from station.queries.shelf import find_whole
from station.shop.facts import Order, Part
from station.shop.views import View

MOST = 10  # orders on one walk


class WalkPart(NamedTuple):
    """A part that orders of a walk still want: how many each of them, the first due first."""

    need: Need
    wanting: tuple[tuple[Order, int], ...]

    @property
    def part(self) -> Part:
        """The part itself."""
        return self.need.part

    @property
    def to_go(self) -> int:
        """Pieces that are still to be fetched."""
        return sum(n for _, n in self.wanting)


def choose_walk(view: View, station: str) -> tuple[Order, ...]:
    """Chooses the orders of a walk: the first that can be packed whole and that nobody packs."""
    found = walk_ready(view, station)
    free = (o for o in found if not o.claimed and not find_whole(view, o))
    return tuple(o for o, _ in zip(free, range(MOST), strict=False))


def list_walk(view: View, numbers: Iterable[str]) -> tuple[WalkPart, ...]:
    """Lists what orders of a walk still want, in the order of the rack."""
    orders = sorted(
        (o for n in numbers if (o := view.get(Order, n)) and o.to_pack),
        key=lambda o: (o.due, o.id),
    )
    needs: dict[str, Need] = {}
    wanting: dict[str, list[tuple[Order, int]]] = {}
    for order in orders:
        for need in list_needs(view, order):
            if need.to_go:
                needs.setdefault(need.part.id, need)
                wanting.setdefault(need.part.id, []).append((order, need.to_go))
    ranked = sorted(needs.values(), key=rank_along_the_rack)
    return tuple(WalkPart(need, tuple(wanting[need.part.id])) for need in ranked)
