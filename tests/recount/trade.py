"""What the trade asks of the books: what an order still wants, what is held, what is there."""

from collections import Counter
from collections.abc import Iterable

from station.shop.facts import (
    Batch,
    Bed,
    CutFile,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Revision,
    Slip,
)
from tests.recount.books import Books

IN_HOUSE = ("open", "packing", "waiting", "packed")  # an order that has not left
PAPER = ("popping", "trimming", "rework", "held")  # where pieces lie with their batch's paper


def want(books: Books, order: Order) -> Counter[str]:
    """Pieces of each part that an order is to get, less the products that it is sent without."""
    wanted: Counter[str] = Counter()
    for line in order.lines:
        product = books.get(Product, line.product)
        for part, each in product.parts if product else ():
            wanted[part] += each * (line.quantity - line.short)
    return wanted


def want_open(books: Books, order: Order) -> Counter[str]:
    """Pieces of each part that an order is to get, less those in closed packs of it."""
    wanted = want(books, order)
    if order.state in ("open", "packing", "waiting"):
        for pack in packs_of(books, order.id):
            wanted.subtract(dict(pack.contents))
    return Counter({part: max(0, n) for part, n in wanted.items()})


def packs_of(books: Books, order: str) -> list[Pack]:
    """The packs of an order that are not opened again."""
    return books.once("packs", lambda: _sort_packs(books)).get(order, [])


def _sort_packs(books: Books) -> dict[str, list[Pack]]:
    found: dict[str, list[Pack]] = {}
    for pack in books.all(Pack):
        if pack.state != "opened":
            found.setdefault(pack.order, []).append(pack)
    return found


def inside(books: Books, order: str) -> Counter[str]:
    """Pieces that lie in an order's open pack and in its closed ones, on carts and gone too."""
    found: Counter[str] = Counter()
    for _, _, part, n in books.lying(place=f"packing/{order}"):
        found[part] += n
    for pack in packs_of(books, order):
        found.update(dict(pack.contents))
    return found


def to_go(books: Books, order: Order) -> dict[str, int]:
    """Pieces of each part that still go into an order that is to be packed."""
    if order.state not in ("open", "packing", "waiting"):
        return {}
    there = inside(books, order.id)
    return {p: n - there[p] for p, n in want(books, order).items() if n > there[p]}


def not_closed(books: Books, order: Order) -> int:
    """Pieces that an order is to get and that lie in no closed pack of it."""
    closed: Counter[str] = Counter()
    for pack in packs_of(books, order.id):
        closed.update(dict(pack.contents))
    return sum(max(0, n - closed[part]) for part, n in want(books, order).items())


def open_orders(books: Books) -> list[Order]:
    """Orders that are to be packed, by when they are due."""
    found = (o for o in books.all(Order) if o.state in ("open", "packing", "waiting"))
    return sorted(found, key=lambda o: (o.due, o.id))


def promised(books: Books) -> Counter[str]:
    """Pieces of each part that all open orders still want."""
    return books.once("promised", lambda: _sum_promised(books))


def _sum_promised(books: Books) -> Counter[str]:
    total: Counter[str] = Counter()
    for order in open_orders(books):
        total.update(to_go(books, order))
    return total


def racks_of(books: Books, part: str) -> list[RackPlace]:
    """The rack places under a part's master."""
    return [r for r in books.all(RackPlace) if r.part == part]


def why_held(books: Books, batch: Batch | None) -> str:
    """Why a batch may not go on: its own hold or doubt, or that of what it came from."""
    climbed = [batch] if batch else []
    for one in climbed:  # grows while it is walked
        if one.holds or one.doubts:
            return one.holds[-1] if one.holds else one.doubts[-1].text
        above = [b for number in one.parents if (b := books.get(Batch, number))]
        climbed += [b for b in above if b not in climbed]
    return ""


def on_rack(books: Books, part: str, *, free: bool = False) -> int:
    """Pieces of a part on the rack; `free`: those of held batches left out."""
    return books.once(f"rack {free}", lambda: _sum_rack(books, free=free))[part]


def _sum_rack(books: Books, *, free: bool) -> Counter[str]:
    counts: Counter[str] = Counter()
    for _, number, part, n in books.lying(head="rack"):
        if not (free and why_held(books, books.get(Batch, number))):
            counts[part] += n
    return counts


def revision_of(books: Books, batch: Batch) -> Revision | None:
    """The revision that a batch is cut by."""
    return books.get(Revision, f"{batch.cut_file}.{batch.revision}")


def makes(books: Books, batch: Batch) -> Counter[str]:
    """Pieces of each part on one sheet of a batch; a child has no sheets."""
    revision = revision_of(books, batch)
    pieces: Iterable[str] = (p.part for p in revision.placed) if revision else ()
    return Counter(pieces) if has_sheets(batch) else Counter()


def cut_of(books: Books, batch: Batch) -> list[Slip] | None:
    """The sheets that a batch's pieces were cut of: what came of another was cut with it.

    Of pieces of several batches nobody knows.
    """
    while (parent := books.get(Batch, batch.parent)) and not batch.others:
        batch = parent
    if batch.others:
        return None
    return [s for s in books.all(Slip) if s.batch == batch.id]


def sheets_off(books: Books) -> list[Slip]:
    """Every sheet that came off a bed; what was split off one is no sheet more."""
    found = ((s, books.get(Batch, s.batch)) for s in books.all(Slip))
    return [slip for slip, batch in found if batch is None or has_sheets(batch)]


def whole_products(books: Books, order: Order) -> list[int]:
    """Whole products of each line in an order's packs, given to its lines in their order."""
    rest, found = inside(books, order.id), []
    for line in order.lines:
        product = books.get(Product, line.product)
        parts = product.parts if product else ()
        whole = min((rest[p] // n for p, n in parts), default=0)
        whole = min(whole, line.quantity - line.short)
        for part, n in parts:
            rest[part] -= n * whole
        found.append(whole)
    return found


def name(books: Books, part: str) -> str:
    """What people call a part."""
    found = books.get(Part, part)
    return found.name if found else part


def find_part(books: Books, words: str) -> str:
    """The number of the part that people call so."""
    return books.once("parts by name", lambda: {p.name: p.id for p in books.all(Part)}).get(
        words, ""
    )


def has_sheets(batch: Batch) -> bool:
    """Says whether a batch is cut of sheets: it was not split off, nor is it made good."""
    return batch.role == "cut"


def dealt(books: Books) -> dict[str, Counter[str]]:
    """Pieces of each open order that packs made ahead hold, dealt out by due time.

    An order that has something in its pack takes none; a pack with a held piece stays.
    """
    return books.once("dealt", lambda: _deal(books))


def _deal(books: Books) -> dict[str, Counter[str]]:
    lying: Counter[str] = Counter()
    for pack in books.all(Pack):
        if pack.state == "shelf":
            batches = {b for _, b, _, _ in books.lying(place=f"pack/{pack.id}")}
            held = any(why_held(books, books.get(Batch, b)) for b in batches)
            lying[pack.product] += not held
    found: dict[str, Counter[str]] = {}
    for order in open_orders(books) if lying.total() else ():
        if books.count(place=f"packing/{order.id}"):
            continue
        for line in order.lines:
            product = books.get(Product, line.product)
            marked = product and product.mark and product.active
            sets = min(line.quantity - line.short, lying[line.product]) if marked else 0
            lying[line.product] -= sets
            for part, each in product.parts if product and sets else ():
                found.setdefault(order.id, Counter())[part] += each * sets
    return found


def to_take(books: Books, order: Order) -> dict[str, int]:
    """Pieces of each part that an order still takes from the rack."""
    ahead = dealt(books).get(order.id, Counter())
    rows = to_go(books, order).items()
    return {part: n - ahead[part] for part, n in rows if n > ahead[part]}


def taken(books: Books) -> Counter[str]:
    """Pieces of each part that all open orders still take from the rack."""

    def add() -> Counter[str]:
        total: Counter[str] = Counter()
        for order in open_orders(books):
            total.update(to_take(books, order))
        return total

    return books.once("taken", add)


def runs_of(books: Books, batch: Batch) -> list[Revision]:
    """The files that run on each sheet of a batch, in order; most have one."""
    made = revision_of(books, batch)
    if made is None:
        return []
    found = [books.get(Revision, each) for each in made.in_order] if made.runs else [made]
    return [run for run in found if run]


def to_be_cut(books: Books) -> list[Batch]:
    """The batches that wait in the routers' queues or are being cut."""
    found = (b for b in books.all(Batch) if b.state in ("queued", "cutting") and has_sheets(b))
    return [b for b in found if b.router]


def may_be_cut(books: Books, batch: Batch) -> bool:
    """Whether its revision is the approved one: no other is cut on."""
    file = books.get(CutFile, batch.cut_file)
    return bool(file and file.approved == batch.revision)


def on_bed(books: Books, batch: Batch) -> bool:
    """Whether a sheet of it lies on its router's bed."""
    bed = books.get(Bed, batch.router)
    return bool(bed and bed.batch == batch.id and bed.sheet and bed.state != "free")


def count_to_come(books: Books, batch: Batch) -> int:
    """Sheets of a queued batch that are on the bed, or that may still be cut."""
    left = max(0, batch.sheets - batch.cut)
    return left if may_be_cut(books, batch) else min(left, on_bed(books, batch))
