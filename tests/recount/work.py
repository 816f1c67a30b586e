"""What must stand on a screen about the work in hand, counted from the books.

A star stands where something else than a count is written. The counters of a count that is
not recorded yet are the hand's own and are not counted again.
"""

from collections import Counter
from collections.abc import Iterator

from station.shop.facts import (
    Batch,
    Bed,
    Cart,
    Material,
    Order,
    Part,
    Product,
    Reason,
    Slip,
)
from station.shop.rooms import Hand
from tests.recount import benches, routers, trade
from tests.recount import figures as fig
from tests.recount.books import Books
from tests.recount.read import Row

Hands = Hand[object]


# --- loading


def batch_at_loading(books: Books, where: str, hand: Hands) -> Iterator[Row]:
    """The batch that a router has taken, or has just cut to its end: sheets, parts and tabs."""
    bed = books.get(Bed, routers.find_router(books, where))
    batch = books.get(Batch, bed.batch or hand.subject) if bed else None
    revision = trade.revision_of(books, batch) if batch else None
    if not (bed and batch and revision):
        return
    material = books.get(Material, revision.material)
    shapes = dict(revision.shapes)
    tabs = sum(
        len(p.tabs or (shapes[p.part].tabs if p.part in shapes else ())) for p in revision.placed
    )
    note = (
        f"{material.name if material else ''} · {fig.of(batch.sheets, 'sheet')} · "
        f"{fig.of(len(revision.placed), 'part')} a sheet, {fig.of(tabs, 'tab')}"
    )
    sheet = bed.sheet or min(batch.cut + 1, batch.sheets)
    yield batch.id, benches.words(books, batch), note, str(sheet), f"of {batch.sheets}"


def stop_at_loading(books: Books, where: str, now: str) -> Iterator[Row]:
    """Since when a router stands, for how many minutes, with which sheet."""
    bed = books.get(Bed, routers.find_router(books, where))
    if bed and bed.state == "stopped":
        reason = books.get(Reason, bed.stop)
        on_it = f"Sheet {bed.sheet} of batch {bed.batch} is on the bed" if bed.sheet else "*"
        minutes = round(fig.seconds(bed.stopped, now) / 60)
        yield (
            fig.clock(bed.stopped),
            reason.words if reason else "",
            on_it,
            fig.n(minutes),
            "",
        )


# --- popping and trimming


def batch_at_trimming(books: Books, hand: Hands, now: str) -> Iterator[Row]:
    """What lies at the router table of a batch: parts, and tab stubs that are left on them."""
    batch = books.get(Batch, hand.subject)
    if batch is None:
        return
    place = "rework" if batch.role == "rework" else "trimming"
    counts = {part: n for _, _, part, n in books.lying(place=place, batch=batch.id)}
    here, stubs = sum(counts.values()), 0
    for part, n in counts.items():
        fact = books.get(Part, part)
        stubs += n * (len(fact.shape.tabs) if fact and fact.shape else 0)
    noun = "part" if here == 1 else "parts"
    note = f"{fig.n(here)} {noun} here · {fig.of(stubs, 'tab stub')} to trim"
    if place == "rework":
        note = f"to be made good, try {batch.tries} of 2 · {fig.of(here, 'part')}"
    if held := trade.why_held(books, batch):
        note = f"it waits: {held}"
    due = benches.due_or_order(books, batch, batch.due)
    yield batch.id, benches.words(books, batch), note, due, ""


def slips_in_hand(books: Books, hand: Hands) -> list[Slip]:
    """The sheets of the batch in hand that wait at popping."""
    there = (s for s in books.all(Slip) if s.batch == hand.subject and s.state == "popping")
    return [s for s in there if books.count(place=f"popping/{s.sheet}", batch=s.batch)]


def came(books: Books, hand: Hands, place: str) -> dict[str, int]:
    """Pieces of each part of the batch in hand that lie at a kind of place."""
    counts: dict[str, int] = {}
    for _, _, part, n in books.lying(head=place, batch=hand.subject):
        counts[trade.name(books, part)] = counts.get(trade.name(books, part), 0) + n
    return counts


# --- packing


def order_in_hand(books: Books, hand: Hands, now: str) -> Iterator[Row]:
    """The order that is packed: its lines or its one product, its parts."""
    order = books.get(Order, hand.subject)
    if order is None:
        return
    parts = fig.of(sum(trade.want_open(books, order).values()), "part")
    lines = fig.of(len(order.lines), "line")
    if len(order.lines) == 1:
        product, line = books.get(Product, order.lines[0].product), order.lines[0]
        sets = line.quantity - line.short  # what is sent without is not packed
        lines = f"{fig.n(sets)} × {product.name if product else ''}"
    yield order.id, f"{lines}, {parts}", "*", "", ""


def lines_in_hand(books: Books, hand: Hands) -> Iterator[Row]:
    """Each line of the order: what its product is made of, how many are whole in the pack."""
    order = books.get(Order, hand.subject)
    if order is None:
        return
    for line, whole in zip(order.lines, trade.whole_products(books, order), strict=True):
        product = books.get(Product, line.product)
        made = [f"{fig.n(n)} {trade.name(books, p)}" for p, n in product.parts] if product else []
        wanted = line.quantity - line.short
        yield (
            f"{fig.n(wanted)} × {product.name if product else ''}: {fig.joined(made)}",
            f"{whole} of {wanted} whole",
        )


def parts_in_hand(books: Books, hand: Hands) -> Iterator[Row]:
    """Each part of the order: how many of it are in the pack, and of how many."""
    order = books.get(Order, hand.subject)
    if order is None:
        return
    there: Counter[str] = Counter()
    for _, _, part, n in books.lying(place=f"packing/{order.id}"):
        there[part] += n
    for part, n in trade.want_open(books, order).items():
        yield trade.name(books, part), "*", "*", f"{fig.n(there[part])} of {fig.n(n)}"


# --- cart


def cart_in_hand(books: Books, hand: Hands, now: str) -> Iterator[Row]:
    """The cart that is loaded: packs on it, when it goes."""
    cart = books.get(Cart, hand.subject)
    if cart:
        packs = len(benches.packs_on(books, cart))
        yield cart.id, cart.name, "*", fig.n(packs), benches.goes(books, cart, now)
