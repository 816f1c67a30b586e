"""Questions about what is bought: what is on its way, what is expected to be sold."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta

from station.shop.facts import BitSize, Mailer, Material, Order, Pack, Purchase, Push
from station.shop.views import View

ALIKE_MM = 0.01  # bits of this difference are one size
MOST = 500  # purchases, pushes, open orders, packs of a day
LONGEST = 60  # days of a push that are looked through


def list_coming(view: View) -> tuple[Purchase, ...]:
    """Lists what is on its way, what is expected first at the head."""
    return view.shelf(Purchase, "coming", MOST)


def name_purchase(view: View, purchase: Purchase) -> str:
    """Names what is on its way; by its number where it is not there any more."""
    kinds = (Material, BitSize, Mailer)
    for kind, number in zip(kinds, purchase.things, strict=True):
        thing: Material | BitSize | Mailer | None = view.get(kind, number)
        if thing:
            return thing.name
    return purchase.id


def note_came(view: View, thing: str, number: str, pieces: int) -> tuple[Purchase, ...]:
    """Notes what came on the purchases of it, the first expected first.

    `thing` is the field of a purchase that names it: material, bit_size, mailer.
    """
    noted = []
    for purchase in list_coming(view):
        here = min(pieces, purchase.coming) if getattr(purchase, thing) == number else 0
        if here:
            pieces -= here
            noted.append(replace(purchase, came=purchase.came + here))
    return tuple(noted)


def note_bit_came(view: View, diameter_mm: float) -> tuple[Purchase, ...]:
    """Notes a bit that came on the purchases of its size."""
    size = find_bit_size(view, diameter_mm)
    return note_came(view, "bit_size", size.id, 1) if size else ()


def find_bit_size(view: View, diameter_mm: float) -> BitSize | None:
    """Finds how bits of a diameter are bought; None where nobody has entered it."""
    sizes = (s for s in view.shelf(BitSize, "all", MOST) if s.active)
    return next((s for s in sizes if abs(s.diameter_mm - diameter_mm) <= ALIKE_MM), None)


def list_pushes(view: View, today: str, until: str) -> tuple[Push, ...]:
    """Lists the pushes that are not over and begin by a day, those that begin first ahead."""
    found = (p for p in view.shelf(Push, "all", MOST) if p.active)
    near = (p for p in found if p.begins[:10] <= until and (p.ends[:10] or today) >= today)
    return tuple(sorted(near, key=lambda p: (p.begins, p.id)))


def count_still_expected(view: View, push: Push, today: str) -> int:
    """Counts the sets of a push that no order has taken yet."""
    begins, ends = push.begins[:10], push.ends[:10] or "9999"
    orders = {
        order.id: order
        for shelf in ("open", "packed")
        for order in view.shelf(Order, shelf, MOST)
        if begins <= order.due[:10] <= ends
    }
    for day in _list_days(begins, today):
        for pack in view.shelf(Pack, f"shipped/{day}", MOST):
            order = view.get(Order, pack.order)
            if order and begins <= order.due[:10] <= ends:
                orders[order.id] = order
    taken = sum(
        line.quantity for o in orders.values() for line in o.lines if line.product == push.product
    )
    return max(0, push.quantity - taken)


def _list_days(begins: str, today: str) -> Iterator[str]:
    """Lists the days from the first one on up to today, the newest of them where it was long."""
    last = date.fromisoformat(today)
    gone = (last - date.fromisoformat(begins)).days
    for back in range(min(gone, LONGEST), -1, -1):
        yield (last - timedelta(days=back)).isoformat()
