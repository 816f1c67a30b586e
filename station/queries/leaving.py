"""Questions about which order can leave next: ready, but for one part, or blocked by more."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from station.queries.orders import MOST, count_wanted
from station.queries.shelf import deal_packs
from station.queries.stock import count_free_on_rack
from station.shop.facts import Order, Part, Product
from station.shop.views import View, by_part

# open orders that a list looks through, a day of them, the first due: a scan waits for it
LOOKED = 50


class Lack(NamedTuple):
    """So many pieces of a part that an order still takes and the rack does not have free."""

    part: Part
    pieces: int


class Prospect(NamedTuple):
    """An order and what it lacks; `known`: every product and part of it is entered."""

    order: Order
    lacks: tuple[Lack, ...]
    known: bool

    @property
    def ready(self) -> bool:
        """Whether the whole of it can be packed now."""
        return self.known and not self.lacks

    @property
    def rank(self) -> int:
        """What can leave first: ready, ready but for one part, blocked by more."""
        return min(len(self.lacks), 2) if self.known else 2


class WaitingTogether(NamedTuple):
    """Orders that wait together: one alone, or several that lack the same part alone."""

    prospects: tuple[Prospect, ...]

    @property
    def first(self) -> Order:
        """The one that is due first."""
        return self.prospects[0].order

    @property
    def blocked_by(self) -> Part | None:
        """The part that several lack; None of one alone."""
        return self.prospects[0].lacks[0].part if len(self.prospects) > 1 else None


def list_prospects(view: View, station: str = "") -> tuple[Prospect, ...]:
    """Lists the first orders by what can leave, then by due time.

    Those that another station packs come last.
    """
    found = view.once("leaving/prospects", _look_over)
    return tuple(sorted(found, key=lambda p: (p.order.claimed not in ("", station), p.rank)))


def are_more_open(view: View) -> bool:
    """Tells whether orders are open that are not looked through: they are due later."""
    return len(view.shelf(Order, "open", LOOKED + 1)) > LOOKED


def walk_ready(view: View, station: str) -> Iterator[Order]:
    """Walks the orders that can be packed whole, by due time, on behind those of the lists."""
    for one in list_prospects(view, station):
        if one.ready:
            yield one.order
    dealt = deal_packs(view)
    for order in view.shelf(Order, "open", MOST)[LOOKED:] if are_more_open(view) else ():
        if _hold_look(view, order.id, dealt.get(order.id, {})).ready:
            yield order


def _look_over(view: View) -> tuple[Prospect, ...]:
    """Looks at each of the first orders, by due time; each is held until it changes itself."""
    dealt, found = deal_packs(view), view.shelf(Order, "open", LOOKED + 1)[:LOOKED]
    return tuple(_hold_look(view, order.id, dealt.get(order.id, {})) for order in found)


def _hold_look(view: View, number: str, ahead: dict[str, int]) -> Prospect:
    """Looks at an order, or gives what was seen while nothing of it has changed."""

    def look(view: View) -> Prospect:
        order = view.get(Order, number)
        assert order is not None, "it stands on a shelf"
        return _look_at(view, order, ahead)

    return view.once(f"leaving/{number}/{sorted(ahead.items())}", look)


def _look_at(view: View, order: Order, ahead: dict[str, int]) -> Prospect:
    """Looks at what an order lacks, the pieces of packs that are ready `ahead` left out."""
    inside, lacks = by_part(view.stock(place=f"packing/{order.id}")), []
    known = all(view.get(Product, line.product) for line in order.lines)
    for number, wanted in count_wanted(view, order).items():
        to_go = wanted - ahead.get(number, 0) - inside.get(number, 0)
        part = view.get(Part, number)
        if part is None:
            known = False
        elif to_go > 0 and (missing := to_go - count_free_on_rack(view, part, to_go)) > 0:
            lacks.append(Lack(part, missing))
    return Prospect(order, tuple(lacks), known=known)


def gather_waiting(prospects: Iterable[Prospect]) -> tuple[WaitingTogether, ...]:
    """Puts the orders together that lack the same part alone; the others stay on their own."""
    found = list(prospects)
    same: dict[str, list[Prospect]] = {}
    for one in found:
        if lacks_one(one):
            same.setdefault(one.lacks[0].part.id, []).append(one)
    waiting = []
    for one in found:
        together = same.get(one.lacks[0].part.id, [one]) if lacks_one(one) else [one]
        if together[0] is one:
            waiting.append(WaitingTogether(tuple(together)))
    return tuple(waiting)


def lacks_one(prospect: Prospect) -> bool:
    """Tells whether an order that nobody packs lacks one part alone."""
    return prospect.known and len(prospect.lacks) == 1 and not prospect.order.claimed
