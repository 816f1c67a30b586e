"""``station state --json``, counted again."""

from collections.abc import Iterator
from typing import Any

from station.shop.facts import (
    Batch,
    Bed,
    Cart,
    Concern,
    CutFile,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Router,
    Size,
)
from tests.recount import today, trade
from tests.recount.books import Books

Json = dict[str, Any]


def count_state(books: Books, now: str) -> Json:
    """The shop as the command gives it; `look` has here what persons are to settle alone."""
    return {
        "batches": [_batch(books, b) for b in books.all(Batch)],
        "rack": [_rack(books, r) for r in books.all(RackPlace)],
        "orders": [_order(books, o) for o in books.all(Order)],
        "carts": [_cart(books, c) for c in books.all(Cart)],
        "routers": [_router(books, r) for r in books.all(Router)],
        "look": [
            {"kind": c.what, "text": str(c.text), "since": c.since, "about": c.about}
            for c in books.all(Concern)
            if not c.settled
        ],
        "firsts": list(_firsts(books)),
        "not_shared": 0,
        "today": {"packs_left": today.packs_left(books, now), "parts": _parts(books, now)},
    }


def _parts(books: Books, now: str) -> dict[str, int]:
    """Pieces that each work area has passed on today, and those that left."""
    shipped = books.moved(now[:10], now, ("cart", "shipped"))
    return {**today.flow(books, now), "shipped": shipped}


def _batch(books: Books, batch: Batch) -> Json:
    cut_file = books.get(CutFile, batch.cut_file)
    each = trade.makes(books, batch)
    places: dict[str, dict[str, int]] = {part: {} for part in each}
    for place, _, part, n in books.lying(batch=batch.id):
        row = places.setdefault(part, {})
        row[place] = row.get(place, 0) + n
    holds = list(batch.holds)
    old = cut_file is not None and batch.revision != cut_file.approved
    if old and batch.state in ("queued", "cutting"):
        left = batch.sheets - batch.cut
        sheets = "sheet" if left == 1 else "sheets"
        holds.append(f"revision {batch.revision} is not approved: {left} {sheets} held")
    return {
        "batch": batch.id,
        "cut_file": cut_file.name if cut_file else batch.cut_file,
        "revision": batch.revision,
        "router": f"R{batch.router}" if batch.router else "",
        "parent": batch.parent or None,
        "copy": batch.copy,
        "sheets": {"planned": batch.sheets, "cut": batch.cut, "spoiled": batch.spoiled},
        "parts": {
            trade.name(books, part): {"expected": each[part] * batch.sheets, "places": found}
            for part, found in places.items()
        },
        "holds": holds,
    }


def _rack(books: Books, rack: RackPlace) -> Json:
    part = books.get(Part, rack.part)
    return {
        "place": rack.name,
        "part": trade.name(books, rack.part),
        "on_hand": books.count(place=f"rack/{rack.id}"),
        "promised": trade.promised(books)[rack.part],
        "mark": part.mark if part else 0,
    }


def _order(books: Books, order: Order) -> Json:
    whole = trade.whole_products(books, order)
    lines = []
    for line, packed in zip(order.lines, whole, strict=True):
        product = books.get(Product, line.product)
        lines.append(
            {
                "product": product.name if product else line.product,
                "quantity": line.quantity,
                "packed": packed,
                "short": line.short,
            }
        )
    return {"order": order.id, "due": order.due, "state": order.state, "lines": lines}


def _cart(books: Books, cart: Cart) -> Json:
    on_it = [p.id for p in books.all(Pack) if p.state == "cart" and p.cart == cart.id]
    return {"cart": cart.id, "packs": on_it, "state": cart.state}


def _router(books: Books, router: Router) -> Json:
    bed = books.get(Bed, router.id)
    return {
        "router": f"R{router.id}",
        "state": bed.state if bed else "free",
        "queue": queue(books, router.id),
    }


def queue(books: Books, router: str) -> list[str]:
    """The batches that a router has still to cut: what is being cut, then by due time."""
    waits = [
        b
        for b in books.all(Batch)
        if b.router == router and b.state in ("queued", "cutting") and trade.has_sheets(b)
    ]
    return [b.id for b in sorted(waits, key=lambda b: (b.state, b.due or "9999", b.id))]


def _firsts(books: Books) -> Iterator[Json]:
    """Sizes that a first-off is still to be measured at, then parts in doubt."""
    for bed in books.all(Bed):
        for first in bed.firsts:
            if first.state == "agreed":
                continue
            about = {"router": f"R{bed.id}", "batch": first.batch, "sheet": first.sheet,
                     "state": first.state}  # fmt: skip
            batch = books.get(Batch, first.batch)
            parts = trade.makes(books, batch) if batch else ()
            done = {(part, size): mm for part, size, mm in first.readings}
            due = [
                (part, size.name)
                for part in parts
                for size in _sizes(books, part)
                if not _is_inside(size, done.get((part, size.name)))
            ]
            for part, size in due or [("", "")]:
                yield {**about, "part": part, "dimension": size}
    for batch in books.all(Batch):
        for doubt in batch.doubts:
            yield {"router": "", "batch": batch.id, "sheet": 0, "state": "doubt",
                   "part": doubt.part, "dimension": doubt.size}  # fmt: skip


def _sizes(books: Books, part: str) -> tuple[Size, ...]:
    found = books.get(Part, part)
    return found.sizes if found else ()


def _is_inside(size: Size, mm: float | None) -> bool:
    return mm is not None and size.low_mm <= mm <= size.high_mm
