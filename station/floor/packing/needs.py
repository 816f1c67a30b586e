"""What an order wants, what is in its pack, and where the rest lies."""

from typing import NamedTuple

from station.queries.batches import keep_free, keep_held
from station.shop.facts import Order, Part, Product, RackPlace
from station.shop.moves import Held
from station.shop.views import View, by_part, total
from station.shop.words import Say, say


class Want(NamedTuple):
    """One part of an order: wanted and in the pack; where it lies and how many may be taken.

    `held` are the pieces at its rack place whose batch is held: they stay there.

    `assumed` is the number of batches that its pieces in the pack may be from: the book
    takes the oldest first, though nobody scanned a batch. 0 or 1: there is no doubt.
    """

    part: Part
    wanted: int
    inside: int
    place: RackPlace | None
    on_rack: int
    assumed: int = 0
    held: tuple[Held, ...] = ()

    @property
    def to_go(self) -> int:
        """Pieces that are still to be taken."""
        return max(0, self.wanted - self.inside)

    @property
    def extra(self) -> int:
        """Pieces in the pack that the order does not want."""
        return max(0, self.inside - self.wanted)

    @property
    def lacking(self) -> int:
        """Pieces still to be taken that the rack does not have free."""
        return max(0, self.to_go - self.on_rack)

    @property
    def place_name(self) -> Say | str:
        """The rack place in words."""
        return self.place.name if self.place else say("no place")


def wanted(view: View, order: Order) -> dict[str, int]:
    """Pieces of each part that the order wants, what is owed taken off."""
    sums: dict[str, int] = {}
    for line in order.lines:
        product = view.get(Product, line.product)
        for part, count in product.parts if product else ():
            sums[part] = sums.get(part, 0) + count * (line.quantity - line.short)
    return sums


def wants(view: View, order: Order) -> tuple[Want, ...]:
    """Every part of the order and of its pack, in the order of a walk along the rack."""
    inside = view.stock(place=f"packing/{order.id}")
    counts = by_part(inside)
    found = [
        _want(view, part, count, tuple(h for h in inside if h.part == number))
        for number, count in {**dict.fromkeys(counts, 0), **wanted(view, order)}.items()
        if (part := view.get(Part, number))
    ]
    return tuple(sorted(found, key=_along_the_rack))


def _want(view: View, part: Part, count: int, inside: tuple[Held, ...]) -> Want:
    lying = rack(view, part)
    batches = {h.batch for h in (*inside, *lying)}
    return Want(
        part,
        count,
        sum(h.qty for h in inside),
        view.get(RackPlace, part.rack) if part.rack else None,
        total(keep_free(view, lying)),
        len(batches) if inside else 0,
        keep_held(view, lying),
    )


def _along_the_rack(want: Want) -> tuple[bool, str, str]:
    return (want.place is None, want.place.name if want.place else "", want.part.id)


def want_of(view: View, order: Order, part: str) -> Want | None:
    """What the order wants of one part; None: it is neither wanted nor in the pack."""
    return next((w for w in wants(view, order) if w.part.id == part), None)


def unknown(view: View, order: Order) -> str:
    """A product or part that the order names and nobody has entered, or nothing."""
    for line in order.lines:
        product = view.get(Product, line.product)
        if product is None:
            return line.product
        for part, _ in product.parts:
            if view.get(Part, part) is None:
                return part
    return ""


def rack(view: View, part: Part) -> tuple[Held, ...]:
    """All that lies at a part's rack place, held or not, oldest batch first."""
    if not part.rack:
        return ()
    return tuple(h for h in view.stock(place=f"rack/{part.rack}") if h.part == part.id)


def free_on_rack(view: View, part: Part) -> tuple[Held, ...]:
    """What may be taken from a part's rack place, oldest batch first."""
    return keep_free(view, rack(view, part))


def ready(view: View, order: Order) -> bool:
    """Whether the whole order can be packed now."""
    return not unknown(view, order) and not any(w.lacking for w in wants(view, order))


def in_pack(view: View, order: Order) -> int:
    """Pieces that lie in the order's pack now."""
    return total(view.stock(place=f"packing/{order.id}"))
