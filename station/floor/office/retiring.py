"""What keeps a thing from being retired: it is still in use, and what to do first shows from it.

A retired thing stays in the books and in its list, last and quiet; it is on no screen of a work
area any more, and comes back when it is set to be in use again.
"""

from collections.abc import Callable, Mapping
from typing import Any

from station.queries.routers import list_beds
from station.queries.shelf import look_ahead
from station.queries.stock import name_place
from station.queries.underway import list_all_batches, list_queue, list_waiting
from station.shop.facts import (
    Bit,
    Cart,
    CutFile,
    Fact,
    Lot,
    Material,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Revision,
    Router,
)
from station.shop.moves import head
from station.shop.views import View, total
from station.shop.words import Say, say

MOST = 5000  # facts of a shelf that are looked through
SHEETS_LIE = ("store", "bed", "between")


def find_use(fact: Fact, view: View) -> Say | None:
    """Finds what a thing that is to be retired is in use for; None: for nothing."""
    look = _LOOKS.get(type(fact))
    before = view.get(type(fact), fact.id)
    if look is None or before is None or not before.in_use or fact.in_use:
        return None
    return look(before, view)


def _find_use_of_material(material: Material, view: View) -> Say | None:
    for lot in view.shelf(Lot, material.id, MOST):
        if use := _find_use_of_lot(lot, view):
            return use
    for cut_file in _list_files(view):
        revision = view.get(Revision, Revision.id_of(cut_file.id, cut_file.approved))
        if revision and revision.material == material.id:
            return say("{file} is cut from it", file=cut_file.name)
    return None


def _find_use_of_lot(lot: Lot, view: View) -> Say | None:
    lying = next((h for h in view.stock(batch=lot.id) if head(h.place) in SHEETS_LIE), None)
    return lying and say(
        "{n} {n|sheet|sheets} of lot {lot} {n|lies|lie} there: {place}",
        n=lying.qty,
        lot=lot.id,
        place=name_place(view, lying.place),
    )


def _find_use_of_bit(bit: Bit, view: View) -> Say | None:
    for router, bed in list_beds(view):
        if bit.id in dict(bed.bits).values():
            return say("it is in {router}", router=router.name)
    return None


def _find_use_of_cart(cart: Cart, view: View) -> Say | None:
    count = len(view.shelf(Pack, f"cart/{cart.id}", MOST))
    return say("{n} {n|pack|packs} on it", n=count) if count else None


def _find_use_of_place(place: RackPlace, view: View) -> Say | None:
    if lying := total(view.stock(place=f"rack/{place.id}")):
        return say("{n} {n|part lies|parts lie} there", n=lying)
    part = view.get(Part, place.part)
    if part and part.in_use and part.rack == place.id:
        return say("{part} has its place there", part=part.name)
    return None


def _find_use_of_part(part: Part, view: View) -> Say | None:
    if lying := total(h for h in view.stock(place=f"rack/{part.rack}") if h.part == part.id):
        return say("{n} {n|lies|lie} on the rack", n=lying)
    if waiting := total(h for h in list_waiting(view) if h.part == part.id):
        return say("{n} {n|waits|wait} in a work area", n=waiting)
    for product in view.shelf(Product, "all", MOST):
        if product.active and part.id in dict(product.parts):
            return say("it belongs to {product}", product=product.name)
    return None


def _find_use_of_product(product: Product, view: View) -> Say | None:
    for order in view.shelf(Order, "open", MOST):
        if any(line.product == product.id for line in order.lines):
            return say("order {order} wants it", order=order.id)
    ahead = look_ahead(view, product)
    count = len(ahead.free) + len(ahead.held)
    return say("{n} {n|pack|packs} of it on the shelf", n=count) if count else None


def _find_use_of_file(cut_file: CutFile, view: View) -> Say | None:
    for batch in list_all_batches(view):
        if batch.cut_file == cut_file.id:
            return say("batch {batch} is cut from it", batch=batch.id)
    return None


def _find_use_of_router(router: Router, view: View) -> Say | None:
    bed = next((b for r, b in list_beds(view) if r.id == router.id), None)
    if bed and bed.batch:
        return say("batch {batch} is on it", batch=bed.batch)
    if waiting := list_queue(view, router.id):
        return say("{n} {n|batch waits|batches wait} for it", n=len(waiting))
    if bed and bed.bits:
        return say("bit {bit} is in it", bit=bed.bits[0][1])
    return None


def _list_files(view: View) -> list[CutFile]:
    """Lists the cut files that are in use and may be cut."""
    return [f for f in view.shelf(CutFile, "all", MOST) if f.active and f.approved]


_LOOKS: Mapping[type[Fact], Callable[[Any, View], Say | None]] = {
    Material: _find_use_of_material,
    Lot: _find_use_of_lot,
    Bit: _find_use_of_bit,
    Cart: _find_use_of_cart,
    RackPlace: _find_use_of_place,
    Part: _find_use_of_part,
    Product: _find_use_of_product,
    CutFile: _find_use_of_file,
    Router: _find_use_of_router,
}
