"""What needs a look, counted from the books: what raises itself, what persons are to settle."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterator

from station.shop.facts import (
    Batch,
    BitSize,
    Cart,
    Concern,
    CutFile,
    Mailer,
    Material,
    Order,
    Part,
    Purchase,
    Slip,
)
from tests.recount import benches, trade
from tests.recount import figures as fig
from tests.recount.books import Books

CART = re.compile(r"(.+) should have gone at (\d\d:\d\d)")
NAMED = 3  # of those that are meant


def late_orders(books: Books, now: str) -> list[str]:
    """Orders in the house, packed ones too, whose time has gone; the one due first at first."""
    late = [o for o in books.all(Order) if o.state in trade.IN_HOUSE and o.due < now]
    return [o.id for o in sorted(late, key=lambda o: (o.due, o.id))]


def open_concerns(books: Books) -> list[Concern]:
    """What persons are to settle."""
    return [c for c in books.all(Concern) if not c.settled]


# --- parts that block orders


def list_blocks(books: Books, now: str) -> list[tuple[str, int, int]]:
    """Each part that blocks orders, the number of these, and how many of them are late.

    What lies free and what comes is given out by due time; an order that takes more than is left
    has none of it.
    """
    found = []
    coming = count_coming(books)
    for part, wanted in count_wanted(books).items():
        left = trade.on_rack(books, part, free=True) + coming[part]
        if wanted <= left or not books.get(Part, part):
            continue
        without = []
        for order in trade.open_orders(books):
            takes = find_wants(books, order)[part]
            if takes > left:
                without.append(order)
            else:
                left -= takes
        late = sum(o.due < now for o in without)
        found.append((-late, -len(without), part))
    return [(part, -n, -late) for late, n, part in sorted(found)]


def count_waiting_for(books: Books, batch: Batch) -> int:
    """Orders that cannot have some part without what is still to be cut of a batch."""
    found: set[str] = set()
    makes = {} if trade.why_held(books, batch) else trade.makes(books, batch)
    if theirs := _find_theirs(books, batch):
        takes = any(_find_own(books)[theirs.id][part] for part in makes)
        return int(takes and batch.sheets > batch.cut)
    for part, each in makes.items():
        left = trade.on_rack(books, part, free=True) + count_coming(books)[part]
        left -= each * max(0, batch.sheets - batch.cut)
        for order in trade.open_orders(books):
            takes = find_wants(books, order)[part]
            if takes > left:
                found.add(order.id)
            else:
                left -= takes
    return len(found)


def count_coming(books: Books) -> Counter[str]:
    """Pieces of each part that are under way or to be cut, and not held."""
    return books.once("coming", lambda: _count_coming(books))


def _count_coming(books: Books) -> Counter[str]:
    counts: Counter[str] = Counter()
    for _, part, n in _list_under_way(books):
        counts[part] += n
    for own in _find_own(books).values():
        counts.subtract(own)
    return counts


def _list_under_way(books: Books) -> Iterator[tuple[Batch | None, str, int]]:
    """What is under way or to be cut and not held: batch, part, pieces."""
    for head in ("popping", "trimming", "rework"):
        for _, number, part, n in books.lying(head=head):
            batch = books.get(Batch, number)
            if not trade.why_held(books, batch):
                yield batch, part, n
    for batch in trade.to_be_cut(books):
        if not trade.why_held(books, batch):
            for part, each in trade.makes(books, batch).items():
                yield batch, part, each * trade.count_to_come(books, batch)


def _find_theirs(books: Books, batch: Batch | None) -> Order | None:
    """The order that a batch is cut for alone, as long as it takes pieces."""
    order = books.get(Order, batch.order) if batch and batch.order else None
    return order if order and order.state not in ("packed", "shipped", "cancelled") else None


def find_takes(books: Books, order: Order) -> Counter[str]:
    """Pieces of each part that an order takes; what is held in its open pack may not leave."""
    takes = Counter(trade.to_take(books, order))
    there, ahead = trade.inside(books, order.id), trade.dealt(books).get(order.id, Counter())
    for part, held in count_held_in_pack(books, order).items():
        n = trade.want(books, order).get(part, 0)
        takes[part] = max(0, n - (there[part] - held) - ahead[part])
    return takes


def count_held_in_pack(books: Books, order: Order) -> Counter[str]:
    """Held pieces of each part in the open pack of an order."""
    found: Counter[str] = Counter()
    for _, number, part, n in books.lying(place=f"packing/{order.id}"):
        found[part] += n if trade.why_held(books, books.get(Batch, number)) else 0
    return +found


def _find_own(books: Books) -> dict[str, Counter[str]]:
    """What each order takes of sheets that are cut for it alone."""
    return books.once("own", lambda: _deal_own(books))


def _deal_own(books: Books) -> dict[str, Counter[str]]:
    found: dict[str, Counter[str]] = defaultdict(Counter)
    for batch, part, n in _list_under_way(books):
        if theirs := _find_theirs(books, batch):
            found[theirs.id][part] += n
    for number, pieces in found.items():
        order = books.get(Order, number)
        is_open = order in trade.open_orders(books)
        found[number] = pieces & find_takes(books, order) if order and is_open else Counter()
    return found


def count_own(books: Books) -> Counter[str]:
    """Pieces of each part that orders take of sheets that are cut for them alone."""
    return sum(_find_own(books).values(), Counter[str]())


def find_wants(books: Books, order: Order) -> Counter[str]:
    """Pieces of each part that an order takes of what is cut for all."""
    every = books.once("wants", dict[str, Counter[str]])
    if order.id not in every:
        every[order.id] = find_takes(books, order) - _find_own(books)[order.id]
    return every[order.id]


def count_wanted(books: Books) -> Counter[str]:
    """Pieces of each part that all open orders take of what is cut for all."""
    total: Counter[str] = Counter()
    for order in trade.open_orders(books):
        total.update(find_wants(books, order))
    return total


def say_blocks(books: Books, part: str, orders: int, late: int) -> str:
    """Says that a part blocks so many orders."""
    of_them = f", {fig.n(late)} of them late" if late else ""
    return f"Blocks {fig.of(orders, 'order')}{of_them}: {trade.name(books, part)}"


# --- what raises itself


def list_since(books: Books, now: str) -> Iterator[tuple[str, str]]:
    """Everything that raises itself in its words, and since when; empty: now."""
    if blocks := list_blocks(books, now):
        more = len(blocks) - 1
        words = say_blocks(books, *blocks[0])
        yield f"{words}, and {fig.of(more, 'part')} more" if more else words, ""
    if late := late_orders(books, now):
        are = "order is" if len(late) == 1 else "orders are"
        first = books.get(Order, late[0])
        yield f"{fig.n(len(late))} {are} late: {_name(late)}", first.due if first else ""
    if cart := late_cart(books, now):
        yield f"{cart.name} should have gone at {cart.goes}", f"{now[:10]}T{cart.goes}:00"
    if held := list_held(books):
        are = "batch is" if len(held) == 1 else "batches are"
        yield f"{fig.n(len(held))} {are} held: {_name(held)}", ""
    if stuck := list_stuck(books):
        noun = "batch" if len(stuck) == 1 else "batches"
        words = "can't be cut to the end, another revision is approved"
        yield f"{fig.n(len(stuck))} begun {noun} {words}: {_name(stuck)}", ""
    if late_ones := late_purchases(books, now):
        names = [_name_bought(books, p) for p in late_ones]
        told = f"{fig.of(len(late_ones), 'purchase')} should have come: {_name(names)}"
        yield told, f"{late_ones[0].expected[:10]}T00:00:00"


def list_raised(books: Books, now: str) -> list[str]:
    """Everything that raises itself, in its words."""
    return [words for words, _ in list_since(books, now)]


def _name(numbers: list[str]) -> str:
    if len(numbers) <= NAMED:
        return fig.joined(numbers)
    return f"{', '.join(numbers[:NAMED])} …"


def late_cart(books: Books, now: str) -> Cart | None:
    """The first cart that should have gone today, while packs wait for it."""
    for cart in sorted(books.all(Cart), key=lambda c: (c.goes, c.id)):
        loaded = benches.packs_on(books, cart) or benches.waiting_packs(books)
        if cart.goes and cart.left[:10] != now[:10] and loaded:
            return cart if cart.goes < now[11:16] else None
    return None


def late_purchases(books: Books, now: str) -> list[Purchase]:
    """What should have come before today and has not, the first expected first."""
    late = [p for p in books.all(Purchase) if p.came < p.quantity and p.expected]
    late = [p for p in late if p.expected[:10] < now[:10]]
    return sorted(late, key=lambda p: (p.expected, p.id))


def _name_bought(books: Books, purchase: Purchase) -> str:
    for kind, number in ((Material, purchase.material), (BitSize, purchase.bit_size),
                         (Mailer, purchase.mailer)):  # fmt: skip
        if thing := books.get(kind, number):
            return thing.name
    return purchase.id


def list_held(books: Books) -> list[str]:
    """Held batches in a queue or on their way that no open concern tells of."""
    told = {c.about for c in open_concerns(books)}
    moving = {b for h in ("trimming", "rework") for _, b, _, _ in books.lying(head=h)}
    moving |= {s.batch for s in books.all(Slip) if s.state == "popping"}
    moving |= {b.id for b in trade.to_be_cut(books)}
    batches = (books.get(Batch, number) for number in sorted(moving))
    return [b.id for b in batches if b and (b.holds or b.doubts) and f"batch/{b.id}" not in told]


def list_stuck(books: Books) -> list[str]:
    """Batches that were begun and that nobody may cut on: another revision is approved."""
    found = []
    for batch in trade.to_be_cut(books):
        file = books.get(CutFile, batch.cut_file)
        approved = file.approved if file else ""
        if batch.cut and not (batch.holds or batch.doubts) and approved != batch.revision:
            found.append(batch.id)
    return found


def count_all(books: Books, now: str) -> int:
    """All things that need a look: each part that blocks, each late order, each concern …"""
    return (
        len(list_blocks(books, now))
        + len(late_orders(books, now))
        + bool(late_cart(books, now))
        + len(list_held(books))
        + len(list_stuck(books))
        + len(late_purchases(books, now))
        + len(open_concerns(books))
    )


def count_things(books: Books, now: str, words: str) -> int:
    """How many things a line stands for."""
    if words in {str(c.text) for c in open_concerns(books)}:
        return 1
    if words.startswith("Blocks"):
        return len(list_blocks(books, now))
    read = re.match(r"(\S+) (order|batch|begun|purchase)", words)
    return fig.read(read[1]) if read else 1
