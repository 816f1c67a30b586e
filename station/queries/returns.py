"""Questions about what has left and may come back: of a part, a product, an order or a pack."""

from datetime import datetime, timedelta

from station.queries.batches import find_approved
from station.queries.stock import take_in_order
from station.queries.whereabouts_orders import find_pack
from station.shop.facts import Batch, CutFile, Order, Pack, Part, Product
from station.shop.moves import Held, head, tail
from station.shop.views import View, by_part, total

MOST = 1000  # cut files that are looked through
DAYS = 60  # that packs are listed of once they left
PACKS = 500  # of one day


def find_what_left(view: View, subject: str) -> str:
    """Finds what a scanned thing's pieces left as: an order's as its pack; the others as it is.

    `subject` is a key (``pack/00001``); empty where nobody knows it, or an order is in no pack.
    """
    kind = {"part": Part, "product": Product, "pack": Pack}.get(head(subject))
    if kind:
        return subject if view.get(kind, tail(subject)) else ""
    order = view.get(Order, tail(subject)) if head(subject) == "order" else None
    pack = find_pack(view, order) if order else None
    return pack.key if pack else ""


def count_gone(view: View, subject: str) -> dict[str, int]:
    """Counts by part what may come back of a part, a product or a pack: no more than left."""
    gone = by_part(view.stock(place="shipped"))
    pack = view.get(Pack, tail(subject)) if head(subject) == "pack" else None
    if pack:
        back = dict(pack.returned)
        left = {part: n - back.get(part, 0) for part, n in pack.contents}
        left = left if pack.state == "shipped" else {}
        return {part: min(n, gone.get(part, 0)) for part, n in left.items()}
    product = view.get(Product, tail(subject)) if head(subject) == "product" else None
    parts = [part for part, _ in product.parts] if product else [tail(subject)]
    return {part: gone.get(part, 0) for part in parts}


def list_left_packs(view: View, now: str, most: int) -> tuple[Pack, ...]:
    """Lists the packs that left in the last days and are not back whole, the newest first."""
    day, found = datetime.fromisoformat(now[:10]), list[Pack]()
    for n in range(DAYS):
        left = view.shelf(Pack, f"shipped/{(day - timedelta(n)).date()}", PACKS)
        away = [p for p in left if any(count_gone(view, p.key).values())]
        found += sorted(away, key=lambda p: (p.left, p.id), reverse=True)
        if len(found) >= most:
            break
    return tuple(found[:most])


def draw_gone(view: View, subject: str, part: str, quantity: int) -> tuple[Held, ...]:
    """Draws so many pieces from those that left: first those that its pack took along.

    Of all others the newest batches are taken to be those that came back.
    """
    gone = [h for h in view.stock(place="shipped") if h.part == part][::-1]
    own = _count_loaded(view, subject, part)
    first = [h._replace(qty=min(h.qty, own[h.batch])) for h in gone if own.get(h.batch)]
    found = take_in_order(tuple(first), quantity)
    others = tuple(h for h in gone if not own.get(h.batch))
    return (*found, *take_in_order(others, quantity - total(found)))


def _count_loaded(view: View, subject: str, part: str) -> dict[str, int]:
    """Counts by batch the pieces of a part that a pack took onto its cart."""
    loaded = view.last(subject, "load_cart") if head(subject) == "pack" else None
    counts: dict[str, int] = {}
    for m in loaded.moves if loaded else ():
        if m.part == part:
            counts[m.frm.batch] = counts.get(m.frm.batch, 0) + m.qty
    return counts


def find_origin(view: View, drawn: tuple[Held, ...]) -> Batch | None:
    """Finds the batch that pieces of one part are of; of several the first that was drawn.

    Where nobody wrote it down, what lay on the rack before the books began is taken to be of the
    cut file that makes it. None: no cut file does.
    """
    if known := next((batch for h in drawn if (batch := view.get(Batch, h.batch))), None):
        return known
    for cut_file in view.shelf(CutFile, "all", MOST):
        revision = find_approved(view, cut_file)
        if revision and drawn[0].part in revision.makes():
            return Batch(id=drawn[0].batch, cut_file=cut_file.id, revision=revision.letter)
    return None


def list_other_origins(view: View, drawn: tuple[Held, ...], origin: Batch) -> tuple[str, ...]:
    """Lists the batches beside its origin that pieces drawn together are of, as drawn."""
    numbers = dict.fromkeys(h.batch for h in drawn)
    return tuple(n for n in numbers if n != origin.id and view.get(Batch, n))
