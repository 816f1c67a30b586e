"""What must stand about orders at packing and in the office: what to take, what they wait for."""

import re
from collections.abc import Iterator
from typing import Any

from station.shop.facts import Batch, Cart, Mailer, Order, Pack, Part, Product
from tests.recount import benches, trade
from tests.recount import figures as fig
from tests.recount.books import Books
from tests.recount.rules import At, Look, Rule
from tests.recount.tallies import name_rack

NAMED, MANY = 3, 50  # orders that a part blocks and are named; that are looked through


def in_hand(look: Look) -> Order | None:
    """The order that is packed."""
    return look.books.get(Order, look.hand.subject)


def _rack(at: At) -> str | None:
    """Where a part of the order lies."""
    part = at.books.get(Part, trade.find_part(at.books, at.row[0]))
    return f"rack {name_rack(at.books, part.rack)}" if part and part.rack else "rack no place"


def _lacks(at: At) -> list[str]:
    """What the order in hand lacks of a part: pieces to go that do not lie free on the rack."""
    order = in_hand(at.look)
    to_go = trade.to_go(at.books, order) if order else {}
    lacks = {p: n - trade.on_rack(at.books, p, free=True) for p, n in to_go.items()}
    n = lacks.get(trade.find_part(at.books, at[1]), 0)
    return [f"{fig.n(n)} × {at[1]} short", f"{fig.n(n)} {at[1]} would be owed"] if n > 0 else []


def _assumed(at: At) -> str | None:
    """Whether the batch of a part in the pack is only assumed: more than one it may be from."""
    order, part = in_hand(at.look), at.books.get(Part, trade.find_part(at.books, at.row[0]))
    if order is None or part is None:
        return None
    if (too_many := _too_many(at.books, order, part.id)) > 0:
        return f"{fig.n(too_many)} too many: put back"
    inside = {b for _, b, _, _ in at.books.lying(place=f"packing/{order.id}", part=part.id)}
    lying = {b for _, b, _, _ in at.books.lying(place=f"rack/{part.rack}", part=part.id)}
    if inside and len(inside | lying) > 1:
        return f"{part.words} · ≈ batch assumed"
    return part.words


def _too_many(books: Books, order: Order, part: str) -> int:
    inside = books.count(place=f"packing/{order.id}", part=part)
    return inside - trade.want_open(books, order)[part]


def _put_back(at: At) -> str | None:
    """How many of a part lie in the open pack."""
    order = in_hand(at.look)
    part = trade.find_part(at.books, at.row[0])
    return fig.n(at.books.count(place=f"packing/{order.id}", part=part)) if order else None


def _next(at: At) -> str | None:
    """The next part to take: so many as still go into the order, or as were typed."""
    order, hand = in_hand(at.look), at.look.hand
    work: Any = hand.work
    if order is None and work.walk:
        n = sum(n for _, n in _wanting(at.look).get(trade.find_part(at.books, at[2]), []))
        return f"Next: {fig.n(work.take or n)} × {at[2]}"
    if order is None:
        return None
    n = trade.to_go(at.books, order).get(trade.find_part(at.books, at[2]), 0)
    return f"Next: {fig.n(n if work.take is None else work.take)} × {at[2]}"


def _next_rack(at: At) -> str | None:
    name = at.row[0].partition(" × ")[2]
    part = at.books.get(Part, trade.find_part(at.books, name))
    return f"Rack {name_rack(at.books, part.rack)}" if part and part.rack else None


def _to_go(at: At) -> str | None:
    order = in_hand(at.look)
    return f"Close: {fig.n(sum(trade.to_go(at.books, order).values()))} to go" if order else None


def _leaves(at: At) -> str | None:
    """When the order leaves, whether that is past, and how many products it is sent without."""
    order = in_hand(at.look)
    if order is None:
        return None
    today = order.due[:10] == at.look.now[:10]
    due = f"today {fig.clock(order.due)}" if today else fig.day(order.due)
    short = sum(line.short for line in order.lines)
    leaves = f"late: due {due}" if order.due < at.look.now else f"leaves {due}"
    if packs := sorted(p.id for p in trade.packs_of(at.books, order.id)):
        return f"{leaves} · closed: {fig.joined(packs)}"
    lacks = [
        f"{leaves} · short {fig.n(lacking)} × {trade.name(at.books, part)}"
        for part, n in trade.to_go(at.books, order).items()
        if (lacking := n - trade.on_rack(at.books, part, free=True)) > 0
    ]
    if lacks:
        return f"{lacks[0]} and more" if lacks[1:] else lacks[0]
    return f"{leaves} · {fig.n(short)} owed" if short else f"{leaves} · nothing short"


# --- what waits


def _find_orders(at: At) -> list[Order]:
    """The orders that a row stands for: its own, or those that its part blocks."""
    named = at.row[0].partition(" blocks ")[0]
    if order := at.books.get(Order, named):
        return [order]
    part = trade.find_part(at.books, named)
    stands = benches.stands(at.books)[:MANY]
    other = [o for o, lacks in stands if list(lacks) == [part] and not o.claimed]
    return [o for o in other if o.id != at.look.hand.subject]


def _blocks(at: At) -> str | None:
    part, n = at.row[0].partition(" blocks ")[0], len(_find_orders(at))
    if at[0].endswith((" or more", " or more orders")):  # not all orders are looked through
        n = n if are_many(at.books) else -1
        return f"{part} blocks {n} or more" if at.k == 0 else f"blocks {n} or more orders"
    return f"{part} blocks {fig.n(n)}" if at.k == 0 else f"blocks {fig.of(n, 'order')}"


def are_many(books: Books) -> bool:
    """Says whether more orders are open than packing looks through before it answers a scan."""
    return len(trade.open_orders(books)) > MANY


def _due(at: At) -> str | None:
    """When the first of a row's orders leaves."""
    orders = _find_orders(at)
    if not orders:
        return None
    due = orders[0].due
    if due[:10] != at.look.now[:10]:
        return fig.day(due)
    return f"today {fig.clock(due)}" if at.shown.kind == "cards" else fig.clock(due)


def _stands(at: At) -> str | None:
    """How many lines an order has, and how it stands."""
    order = at.books.get(Order, at.row[0])
    if order is None:
        return None
    lines = f"{fig.of(len(order.lines), 'line')} · "
    return [lines + state for state in tell_state(at.look, order)]  # type: ignore[return-value]


def tell_state(look: Look, order: Order) -> Iterator[str]:
    """How an order may be said to stand: who packs it, what of it is not there."""
    lacks = next((lacks for o, lacks in benches.stands(look.books) if o.id == order.id), {})
    inside = look.books.count(place=f"packing/{order.id}")
    if order.claimed and order.claimed == look.hand.station:
        yield f"{fig.n(inside)} in its pack" if inside else "put down here"
    elif order.claimed:
        yield f"station {order.claimed} packs it"
    elif unknown := [n.product for n in order.lines if not look.books.get(Product, n.product)]:
        yield f"wants {unknown[0]}: not known"
    elif order.state == "waiting":
        name = trade.name(look.books, order.waits)
        yield f"waits for {name}" if lacks else f"{name} is there now"
    elif lacks:
        more = " and more" if len(lacks) > 1 else ""
        for p, n in lacks.items():
            yield f"short {fig.n(n)} × {trade.name(look.books, p)}{more}"
    elif inside:
        yield f"{fig.n(inside)} in its pack"
    else:
        yield "all parts are there"


def _left_out(at: At) -> str | None:
    """How many orders a list leaves out: all that are open but those that stand in it."""
    named = 0
    for row in at.shown.rows:
        words = row[0] if " blocks " in row[0] else f"{row[0]} {row[1]}"
        named += int(words.partition(" blocks ")[2].split()[0]) if " blocks " in words else 1
    if at[0].endswith(" and more") and are_many(at.books):
        return f"{at[1]} · {fig.n(MANY - named - _is_first(at))} and more"
    every = [o for o in trade.open_orders(at.books) if o.id != at.look.hand.subject]
    return f"{at[1]} · {fig.n(len(every) - named)} more"


def _is_first(at: At) -> bool:
    """Says whether the order in hand is one of those that are looked through."""
    first = trade.open_orders(at.books)[:MANY]
    return at.look.hand.subject in [order.id for order in first]


def _blocked_orders(at: At) -> str | None:
    """The first orders that a part blocks, and what is coming of it."""
    orders = _find_orders(at)
    part = trade.find_part(at.books, at.row[0].partition(" blocks ")[0])
    if not part:
        return None
    more = len(orders) > NAMED or are_many(at.books)
    named = ", ".join(o.id for o in orders[:NAMED]) + (" …" if more else "")
    return f"{named} · {say_coming(at.books, part, at.look.now) or 'none under way'}"


def count_coming(books: Books, part: str, order: str = "") -> tuple[list[tuple[int, str]], str]:
    """Pieces of a part on their way to the rack by where they are, and when the first are due.

    What is held does not come, nor what is cut for an order that still takes it.
    """
    found: dict[str, int] = dict.fromkeys(("trimming", "rework", "popping", "bed", "queue"), 0)
    dues = []
    for head in ("trimming", "rework", "popping"):
        for _, number, _, n in books.lying(head=head, part=part):
            batch = books.get(Batch, number)
            if _comes(books, batch, order):
                found[head] += n
                dues += [batch.due] if batch and batch.due else []
    for batch in books.all(Batch):
        each = trade.makes(books, batch)[part]
        if batch.state in ("queued", "cutting") and each and _comes(books, batch, order):
            on_bed = int(trade.on_bed(books, batch))
            queued = max(0, trade.count_to_come(books, batch) - on_bed)
            found["bed"] += each * on_bed
            found["queue"] += each * queued
            dues += [batch.due] if batch.due and (on_bed or queued) else []
    words = ("in trimming", "in rework", "at popping", "being cut", "still to be cut")
    return [(n, w) for n, w in zip(found.values(), words, strict=True) if n], min(dues, default="")


def _comes(books: Books, batch: Batch | None, order: str) -> bool:
    if batch is None:
        return True
    if trade.why_held(books, batch):
        return False
    theirs = books.get(Order, batch.order) if batch.order not in ("", order) else None
    return theirs is None or theirs.state in ("packed", "shipped", "cancelled")


def say_coming(books: Books, part: str, now: str) -> str:
    """What is coming of a part, in words; nothing where nothing is."""
    places, due = count_coming(books, part)
    where = fig.joined([f"{fig.n(n)} {words}" for n, words in places])
    return f"{where}, due {fig.at_or_day(due, now)}" if where and due else where


def _closed(at: At) -> str | None:
    """Packs that were closed last: their order, when, by whom."""
    pack = at.books.get(Pack, at.row[0])
    if pack is None:
        return None
    if at.k == 1:
        return f"order {pack.order}"
    return f"closed {fig.with_day(pack.closed, at.look.now)} by worker {pack.by}"


def _for_one_order(at: At) -> str | None:
    """The open orders that a release may be for: when they are due, what they want."""
    order = at.books.get(Order, at.row[0])
    if order is None:
        return None
    if at.k == 1:
        return f"due {fig.day(order.due)} {fig.clock(order.due)}"
    return ", ".join(
        f"{fig.n(line.quantity)} × {product.name if product else line.product}"
        for line in order.lines
        for product in [at.books.get(Product, line.product)]
    )


def say_load(books: Books, packs: list[Pack]) -> str:
    """What lies on a cart, in kg; packs that nobody can weigh are told."""
    weights = [p.scale_g or p.mass_g for p in packs]
    known = [grams for grams in weights if grams]
    kilos = f"{sum(known) / 1000:.1f} kg on it"
    if len(known) == len(packs):
        return f"about {kilos}"
    unknown = len(packs) - len(known)
    if not known:
        return "its weight is not known"
    return f"at least {kilos}, {fig.of(unknown, 'pack')} of unknown weight"


def _on_cart(at: At) -> str | None:
    """The cart in hand: how far its packs were seen at the door, what lies on it."""
    cart = at.books.get(Cart, at.look.hand.subject)
    if cart is None:
        return None
    packs = benches.packs_on(at.books, cart)
    seen = sum(p.seen for p in packs)
    begins = "loading"
    if cart.state == "door":
        begins = f"at the door: {fig.n(seen)} of {fig.n(len(packs))} seen"
    return f"{begins} · {say_load(at.books, packs)}"


def _names_of_packs(at: At) -> str | None:
    """A pack on the cart in hand: its order, its pieces, what it weighs."""
    pack = at.books.get(Pack, at.row[0])
    if pack is None:
        return None
    if at.k == 1:
        return f"order {pack.order}"
    if at.k == 2:
        return fig.of(sum(n for _, n in pack.contents), "part")
    return f"{fig.n(pack.scale_g)} g" if pack.scale_g else f"≈ {fig.n(pack.mass_g)} g"


def _really(at: At) -> str | None:
    """Where the part lies that is counted again."""
    part = at.books.get(Part, trade.find_part(at.books, at[1]))
    rack = name_rack(at.books, part.rack) if part and part.rack else "no place"
    return f"How many {at[1]} are really in rack {rack}?"


def _on_the_shelf(at: At) -> list[str]:
    """Packs of a product that were made ahead: those that may leave, of how many; those held."""
    product = next((p for p in at.books.all(Product) if p.name == at.row[0]), None)
    if product is None:
        return []
    free, held = count_ahead(at.books, product)
    return [f"{fig.n(free)} of {fig.n(product.mark)}", f"{fig.n(held)} held"]


def count_ahead(books: Books, product: Product) -> tuple[int, int]:
    """Packs of a product on the shelf: those that may leave, those with a held piece in them."""
    free = held = 0
    for pack in books.all(Pack):
        if pack.state == "shelf" and pack.product == product.id:
            batches = {b for _, b, _, _ in books.lying(place=f"pack/{pack.id}")}
            kept = any(trade.why_held(books, books.get(Batch, b)) for b in batches)
            free, held = free + (not kept), held + kept
    return free, held


# --- several orders on one walk


def _find_walk(look: Look) -> list[Order]:
    """The orders of a walk that are still to be packed, by due time."""
    work: Any = look.hand.work
    found = [o for n in work.walk if (o := look.books.get(Order, n))]
    open_ones = [o for o in found if o.state in ("open", "packing", "waiting")]
    return sorted(open_ones, key=lambda o: (o.due, o.id))


def _wanting(look: Look) -> dict[str, list[tuple[str, int]]]:
    """Who wants how many of each part on the walk."""
    found: dict[str, list[tuple[str, int]]] = {}
    for order in _find_walk(look):
        for part, n in trade.to_go(look.books, order).items():
            found.setdefault(part, []).append((order.id, n))
    return found


def _on_walk(at: At) -> str | None:
    order = at.books.get(Order, at.row[0])
    if order is None:
        return None
    inside = at.books.count(place=f"packing/{order.id}")
    return f"{fig.n(inside)} of {fig.n(trade.want_open(at.books, order).total())}"


def _nth_pack(at: At) -> str | None:
    """Which of its order's packs is packed now: those that are closed come before."""
    order = in_hand(at.look)
    nth = len(trade.packs_of(at.books, order.id)) + 1 if order else 0
    return at[0].replace(at[1], str(nth)) if nth else None


def _share(at: At) -> str | None:
    """What goes in the first of two packs is no more than lies in the open one."""
    order = in_hand(at.look)
    if order is None:
        return None
    for number, name in re.findall(r"(\d+) ([^,]+?)(?:,| and |$)", at[2]):
        part = trade.find_part(at.books, name)
        if int(number) > at.books.count(place=f"packing/{order.id}", part=part):
            return f"{number} {name} do not lie in the pack"
    return str(_nth_pack(at))


def _due_on_walk(at: At) -> str | None:
    order = at.books.get(Order, at.row[0])
    if order is None or at.k == 0:
        return None
    today = order.due[:10] == at.look.now[:10]
    return f"today {fig.clock(order.due)}" if today else fig.day(order.due)


def _walk(at: At) -> list[str]:
    """How many orders are on the walk, and how many pieces are still to be fetched."""
    work: Any = at.look.hand.work
    pieces = sum(n for rows in _wanting(at.look).values() for _, n in rows)
    return [str(len(work.walk)), f"{fig.of(pieces, 'piece')} to fetch"]


def _fetch(at: At) -> list[str] | None:
    """A part of the walk: how many for which orders, in all."""
    rows = _wanting(at.look).get(trade.find_part(at.books, at.row[0]), [])
    if at.k == 1:
        more = " …" if len(rows) > NAMED else ""
        return [", ".join(f"{o}: {n}" for o, n in rows[:NAMED]) + more]
    return [fig.n(sum(n for _, n in rows))] if at.k == 3 else None


def _too_large(at: At) -> str:
    """No mailer takes what an order needs lying flat, and closes over it."""
    pairs = [s.rows for s in at.look.face if s.kind == "pairs"]
    thick = next((float(r[1].split()[0]) for rows in pairs for r in rows if r[0] == "thick"), 0.0)
    long, wide = int(at[1]), int(at[2])
    for mailer in at.books.all(Mailer):
        length, width = mailer.length_mm, mailer.width_mm
        fits = any(a <= length and b <= width for a, b in ((long, wide), (wide, long)))
        if mailer.active and fits and thick <= mailer.thick_mm:
            return f"{mailer.name} takes it"
    return at[0]


def _no_outline(at: At) -> list[str]:
    order = in_hand(at.look)
    parts = [at.books.get(Part, p) for p in trade.want(at.books, order)] if order else []
    return [
        f"{p.name} has no outline in the book. Choose by eye." for p in parts if p and not p.shape
    ]


TAKE = r"part \| (take from|goes to)"


def _for_the_shelf(at: At) -> list[str] | None:
    """A set for the shelf: what lies there of it, each part of it, and for all that are left."""
    work: Any = at.look.hand.work
    product = at.books.get(Product, work.shelf)
    if product is None:
        return None
    if at.shown.kind == "header":
        lying, _ = count_ahead(at.books, product)
        there = f"{fig.n(lying)} of {fig.n(product.mark)} there"
        return [f"shelf {product.place}: {there}", there] if at.k == 2 else None
    each = dict(product.parts).get(trade.find_part(at.books, at.row[0]), 0)
    return {3: [fig.n(each)], 4: [fig.n(each * (work.sets - work.made))]}.get(at.k)


def _inside(at: At) -> list[str] | None:
    """What lies in the pack of an order that a question is about."""
    head = at.look.find("header", "Order")
    number = head.rows[0][0] if head else ""
    pieces = [(p, n) for _, _, p, n in at.books.lying(place=f"packing/{number}")]
    if at.shown.kind == "header":
        return [fig.of(sum(n for _, n in pieces), "part")] if at.k == 1 else None
    part = trade.find_part(at.books, at.row[0])
    return [fig.n(sum(n for p, n in pieces if p == part))] if at.k == 2 else None


RULES = (
    Rule("pairs", r"\{n\} × \{part\} short", r"[^ ]+ × (.+) short", _lacks, "title"),
    Rule("hint", r"\{n\} \{part\} would", r"[^ ]+ (.+) would be owed", _lacks),
    Rule("header", "For the shelf", r".* there", _for_the_shelf),
    Rule("table", r"part \| take from \| a set", r"[\d\u202f]+", _for_the_shelf),
    Rule("header", "Order", r"[^ ]+ parts?", _inside),
    Rule("table", r"part \| in the pack$", r"[\d\u202f]+", _inside),
    Rule("table", TAKE, r"rack .*", _rack),
    Rule("table", TAKE, r".* · ≈ batch assumed|.* too many: put back", _assumed),
    Rule("table", r"part \| goes to", r"[\d\u202f]+", _put_back),
    Rule("hint", "Next:", r"Next: ([^ ]+) × (.+)", _next),
    Rule("hint", "Next:", r"Rack .*", _next_rack),
    Rule("buttons", "", r"Close: .* to go", _to_go),
    Rule("header", "Order", r"(leaves|late: due) .* · .*", _leaves),
    Rule("cards|list", "(By what can leave|Waiting to pack)", r"(.* )?blocks .*", _blocks),
    Rule(
        "cards|list",
        "(By what can leave|Waiting to pack)",
        r"(.*) · [^ ]+ (?:and )?more",
        _left_out,
        "title",
    ),
    Rule("cards", "By what can leave", r"(today )?(\d\d:\d\d|\d+ \w+)", _due),
    Rule("cards", "By what can leave", r"[^ ]+ lines? · .*", _stands),
    Rule("cards", "By what can leave", r"[\d, -]+( …)? · .*", _blocked_orders),
    Rule("asked", "", r"How many (.+) are really in rack .*", _really),
    Rule("remark", "Which mailer", r".* has no outline.*", _no_outline),
    Rule("cards", "Closed last", r".*order .*|closed .*", _closed),
    Rule("cards", "For one order", r"due .*|.* × .*", _for_one_order),
    Rule("header", "Cart", r".*\d.* (kg on it|is not known).*", _on_cart),
    Rule("table", "", r"order .*|.* parts?|(≈ )?[^ ]+ g", _names_of_packs),
    Rule("list", "On the shelf", r"[^ ]+ (of [^ ]+|held)", _on_the_shelf),
    Rule("list", "On this walk", r"[^ ]+ of [^ ]+", _on_walk),
    Rule("list", "On this walk", r"(today )?\d+(:\d+| \w+)", _due_on_walk),
    Rule("header", "On this walk", r".*", _walk),
    Rule("table", r"part \| take from \| for all", r".*", _fetch),
    Rule("hint", "Two packs", r"this is pack (\d+)", _nth_pack),
    Rule("hint", "Pack", r"Pack (\d+): (.+)", _share),
    Rule("buttons", "", r"Close pack (\d+)", _nth_pack),
    Rule("remark", "No mailer", r"It needs (\d+) × (\d+) mm flat\..*", _too_large),
)
