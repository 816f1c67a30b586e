"""Questions about packs made ahead: which lie on the shelf, which may leave, who takes them."""

from typing import NamedTuple

from station.queries.batches import find_hold, keep_held
from station.queries.orders import MOST
from station.queries.stock import list_free_on_rack
from station.shop.facts import Batch, Order, Pack, Part, Product
from station.shop.views import View, total

PACKS = 500  # of one product that are looked through
PRODUCTS = 500


class Ahead(NamedTuple):
    """A product that is packed ahead: packs that may leave, those that are held, sets to make.

    `can` is how many sets the rack has free now.
    """

    product: Product
    free: tuple[Pack, ...]
    held: tuple[Pack, ...]
    can: int

    @property
    def to_make(self) -> int:
        """Counts the sets that are below the mark, as far as the rack has them."""
        return max(0, min(self.product.mark - len(self.free), self.can))


def look_ahead(view: View, product: Product) -> Ahead:
    """Looks at the packs of a product on the shelf, the oldest first."""
    lying = view.shelf(Pack, f"shelf/{product.id}", PACKS)
    held = tuple(pack for pack in lying if find_hold_in(view, pack))
    free = tuple(pack for pack in lying if pack not in held)
    return Ahead(product, free, held, count_sets(view, product))


def find_hold_in(view: View, pack: Pack) -> Batch | None:
    """Finds the batch whose hold keeps a pack on the shelf; None: it may leave."""
    held = keep_held(view, view.stock(place=f"pack/{pack.id}"))
    return find_hold(view, held[0].batch) if held else None


def count_sets(view: View, product: Product) -> int:
    """Counts the whole sets of a product that the rack has free."""
    found = [(view.get(Part, part), each) for part, each in product.parts]
    return min(
        (total(list_free_on_rack(view, p)) // each if p else 0 for p, each in found), default=0
    )


def list_ahead(view: View) -> tuple[Ahead, ...]:
    """Lists the products that are packed ahead, those with most sets to make first."""

    def look(view: View) -> tuple[Ahead, ...]:
        found = (p for p in view.shelf(Product, "all", PRODUCTS) if p.mark and p.active)
        return tuple(
            sorted((look_ahead(view, p) for p in found), key=lambda a: (-a.to_make, a.product.id))
        )

    return view.once("shelf/ahead", look)


def deal_packs(view: View) -> dict[str, dict[str, int]]:
    """Deals the packs on the shelf to open orders, the first due first.

    Gives for each order the pieces by part that it need not take from the rack.
    """
    return _deal(view)[0]


def count_lacking_ahead(view: View) -> dict[str, int]:
    """Counts the pieces of each part for packs ahead that are below their marks.

    Packs that open orders will take are none that lie there.
    """
    left, lacking = _deal(view)[1], dict[str, int]()
    for ahead in list_ahead(view):
        sets = max(0, ahead.product.mark - left.get(ahead.product.id, 0))
        for part, each in ahead.product.parts:
            lacking[part] = lacking.get(part, 0) + each * sets
    return lacking


def count_spare_ahead(view: View) -> dict[str, int]:
    """Counts by product the packs on the shelf beyond its mark, that no open order will take."""
    left = _deal(view)[1]
    return {
        ahead.product.id: max(0, left.get(ahead.product.id, 0) - ahead.product.mark)
        for ahead in list_ahead(view)
    }


def _deal(view: View) -> tuple[dict[str, dict[str, int]], dict[str, int]]:
    """Deals the packs; gives the pieces by order and part, and the packs left by product."""

    def deal(view: View) -> tuple[dict[str, dict[str, int]], dict[str, int]]:
        left = {a.product.id: len(a.free) for a in list_ahead(view)}
        dealt: dict[str, dict[str, int]] = {}
        for order in view.shelf(Order, "open", MOST) if any(left.values()) else ():
            for line in order.lines:
                sets = min(line.quantity - line.short, left.get(line.product, 0))
                product = view.get(Product, line.product) if sets else None
                begun = order.packs or view.stock(place=f"packing/{order.id}")
                if product is None or begun:
                    continue
                left[line.product] -= sets
                pieces = dealt.setdefault(order.id, {})
                for part, each in product.parts:
                    pieces[part] = pieces.get(part, 0) + each * sets
        return dealt, left

    return view.once("shelf/dealt", deal)


def is_whole_of(view: View, order: Order, pack: Pack) -> bool:
    """Tells whether an order wants just what one pack from the shelf is, and has nothing yet."""
    lines = [line for line in order.lines if line.quantity > line.short]
    wants = [(line.product, line.quantity - line.short) for line in lines]
    begun = order.packs or view.stock(place=f"packing/{order.id}")
    return wants == [(pack.product, 1)] and not begun


def find_whole(view: View, order: Order) -> Pack | None:
    """Finds the oldest pack on the shelf that is all that an order wants; None: there is none."""
    for ahead in list_ahead(view):
        for pack in ahead.free[:1]:
            if is_whole_of(view, order, pack):
                return pack
    return None
