"""What an order wants, what is in its pack, and where the rest lies."""

from typing import NamedTuple

from station.shop.facts import Batch, Order, Part, Product, RackPlace
from station.shop.moves import Held
from station.shop.views import View, by_part, total


class Want(NamedTuple):
    """One part of an order: wanted and in the pack; where it lies and how many."""

    part: Part
    wanted: int
    inside: int
    place: RackPlace | None
    on_rack: int

    @property
    def to_go(self) -> int:
        """Pieces that are still to be taken."""
        return max(0, self.wanted - self.inside)

    @property
    def place_name(self) -> str:
        """The rack place in words."""
        return self.place.name if self.place else "no place"


def wanted(view: View, order: Order) -> dict[str, int]:
    """Pieces of each part that the order wants, what is owed taken off."""
    sums: dict[str, int] = {}
    for line in order.lines:
        product = view.get(Product, line.product)
        for part, count in product.parts if product else ():
            sums[part] = sums.get(part, 0) + count * (line.quantity - line.short)
    return sums


def wants(view: View, order: Order) -> tuple[Want, ...]:
    """Every part of the order, in the order of its lines."""
    inside = by_part(view.stock(place=f"packing/{order.id}"))
    found = []
    for number, count in wanted(view, order).items():
        part = view.get(Part, number)
        if part is None:
            continue
        place = view.get(RackPlace, part.rack) if part.rack else None
        found.append(Want(part, count, inside.get(number, 0), place, total(rack(view, part))))
    return tuple(found)


def rack(view: View, part: Part) -> tuple[Held, ...]:
    """What lies at a part's rack place, oldest batch first."""
    if not part.rack:
        return ()
    return tuple(h for h in view.stock(place=f"rack/{part.rack}") if h.part == part.id)


def to_go(view: View, order: Order) -> int:
    """Pieces that are still to be taken."""
    return sum(w.to_go for w in wants(view, order))


def coming(view: View, part: str) -> tuple[int, str]:
    """Pieces of a part that are at trimming, and the earliest due time among them."""
    held = [h for h in view.stock(place="trimming") if h.part == part]
    dues = sorted(b.due for h in held if (b := view.get(Batch, h.batch)) and b.due)
    return sum(h.qty for h in held), dues[0] if dues else ""
