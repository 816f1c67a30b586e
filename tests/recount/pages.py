"""What must stand on the page of a thing that was scanned: where all of it is, who takes it."""

import re
from collections.abc import Iterator, Mapping

from station.shop.codes import Unread
from station.shop.codes import read as read_code
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    Cart,
    CutFile,
    Lot,
    Mailer,
    Order,
    Pack,
    Part,
    Product,
    RackPlace,
    Reason,
    Router,
    Slip,
)
from station.shop.places import place_words
from tests.recount import benches, loading, parcels, trade
from tests.recount import figures as fig
from tests.recount.books import NO_PIECES, Books
from tests.recount.orders_said import count_coming, say_coming
from tests.recount.rules import At, Look, Rule
from tests.recount.state import queue

BALANCE = ("cut", "bought", "wear", "found", "recount")  # where pieces only come from
FARTHEST = ("cart", "pack", "packing", "rack", "rework", "held", "trimming", "popping", "between",
            "shipped")  # fmt: skip
MOST_SHEETS = 99
ASKING = ("Batch {batch} waits", "Why ", "Counted ", "PIN ")  # what stands above a page
CUT = 6  # lines of a list; where there are more the last one tells how many
Lines = list[tuple[str, str]]


def name_place(books: Books, place: str) -> str:
    """A place as people call it."""
    kind, _, number = place.partition("/")
    reason = books.get(Reason, number) if kind == "spoiled" else None
    if reason:
        return f"spoiled ({reason.words})"
    rack = books.get(RackPlace, number) if kind == "rack" else None
    return f"rack {rack.name}" if rack else str(place_words(place))


def list_where_lying(books: Books, number: str) -> dict[str, int]:
    """Where a batch's pieces lie and those of what came of it, by place."""
    lying: dict[str, int] = {}
    for one in family(books, number):
        for place, _, _, n in books.lying(batch=one):
            if place.partition("/")[0] in FARTHEST:
                lying[place] = lying.get(place, 0) + n
    return lying


def tell_where(books: Books, number: str, told: str, most: int = 3) -> str:
    """What may be told of where they lie: the first places, the farthest on, and how many more.

    Of places as far on any may be named: they are taken as they were `told`.
    """
    lying = list_where_lying(books, number)
    names = {place: f"{name_place(books, place)}: {fig.n(n)}" for place, n in lying.items()}
    places = sorted(lying, key=lambda place: FARTHEST.index(place.partition("/")[0]))
    heads = [place.partition("/")[0] for place in places[:most]]
    shown = sorted(
        (p for p in places if re.search(rf"(^|, | and ){re.escape(names[p])}($|, | and )", told)),
        key=lambda place: told.index(names[place]),
    )
    right = [place.partition("/")[0] for place in shown] == heads
    more = len(places) - most
    rest = [fig.of(more, "other place")] if more > 0 else []
    return fig.joined([*(names[p] for p in (shown if right else places[:most])), *rest])


def family(books: Books, number: str) -> list[str]:
    """A batch and all that came of it."""
    found = [number]
    for one in found:
        found += [b.id for b in books.all(Batch) if one in b.parents and b.id not in found]
    return found


def find_thing(look: Look) -> object | None:
    """The thing whose page is open."""
    code = read_code(look.hand.aside.code)
    if isinstance(code, Unread):
        return None
    kinds = {"batch": Batch, "part": Part, "rack": RackPlace, "order": Order, "product": Product,
             "pack": Pack, "cart": Cart, "router": Router, "bit": Bit, "lot": Lot,
             "cutfile": CutFile, "mailer": Mailer, "reason": Reason}  # fmt: skip
    kind = kinds.get(code.kind)
    return look.books.get(kind, code.number) if kind else None


# --- where all of it is, line by line


def list_where(look: Look) -> Lines:
    """Every line of where a thing is, in any order."""
    thing, books, now = find_thing(look), look.books, look.now
    match thing:
        case Batch():
            shown = look.find("list", "Where it is")
            told = {row[0]: row[1] for row in shown.rows} if shown else {}
            return list(_batch(books, thing, told))
        case Part():
            return list(_part(books, thing))
        case RackPlace():
            return [(f"{fig.n(n)} of batch {b}", name_place(books, p))
                    for p, b, _, n in books.lying(place=f"rack/{thing.id}")]  # fmt: skip
        case Order():
            return list(_order(books, thing, now))
        case Pack():
            return list(_pack(books, thing, now))
        case Product():
            return [
                (f"{fig.n(each)} × {trade.name(books, p)}",
                 f"{fig.n(trade.on_rack(books, p, free=True))} free on the rack")
                for p, each in thing.parts
            ]  # fmt: skip
        case Cart():
            return [(f"Pack {p.id}", f"order {p.order}") for p in benches.packs_on(books, thing)]
        case _:
            return list(_machine(books, thing, now))


def _batch(books: Books, batch: Batch, told: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    bed, router = books.get(Bed, batch.router), books.get(Router, batch.router)
    name = router.name if router else ""
    on_bed = bool(bed and bed.batch == batch.id and bed.sheet)
    if bed and on_bed:
        yield f"sheet {bed.sheet} of {batch.sheets}", f"on the bed of {name}"
    left = batch.sheets - batch.cut - on_bed
    if batch.state in ("queued", "cutting") and left > 0 and trade.has_sheets(batch):
        yield f"{fig.of(left, 'sheet')} still to be cut", name
    for place, _, part, n in books.lying(batch=batch.id):
        if place.partition("/")[0] not in BALANCE:
            yield f"{fig.n(n)} {trade.name(books, part)}", name_place(books, place)
    for child in family(books, batch.id)[1:]:
        yield f"Batch {child}", tell_where(books, child, told.get(f"Batch {child}", ""))


def _part(books: Books, part: Part) -> Iterator[tuple[str, str]]:
    for place, batch, _, n in books.lying(part=part.id):
        if place.partition("/")[0] in ("rack", "popping", "trimming", "rework", "held"):
            yield f"{fig.n(n)} of batch {batch}", name_place(books, place)
    inside = sum(books.count(place=f"packing/{o.id}", part=part.id) for o in books.all(Order))
    closed = sum(
        dict(p.contents).get(part.id, 0) for p in books.all(Pack) if p.state in ("packed", "cart")
    )
    if inside:
        yield fig.of(inside, "piece"), "in open packs"
    if closed:
        yield fig.of(closed, "piece"), "in closed packs"


def _order(books: Books, order: Order, now: str) -> Iterator[tuple[str, str]]:
    if order.state in ("open", "packing", "waiting"):
        wants = trade.want(books, order)
        lying = [part for _, _, part, _ in books.lying(place=f"packing/{order.id}")]
        for number in dict.fromkeys((*wants, *lying)):
            part = books.get(Part, number)
            inside = books.count(place=f"packing/{order.id}", part=number)
            free = trade.on_rack(books, number, free=True)
            rack = books.get(RackPlace, part.rack) if part else None
            yield (
                f"{fig.n(inside)} of {fig.n(wants[number])} {trade.name(books, number)}",
                f"{fig.n(free)} free on rack {rack.name if rack else 'no place'}",
            )
    for pack in trade.packs_of(books, order.id):
        yield f"Pack {pack.id}", tell_pack(books, pack, now)


def tell_pack(books: Books, pack: Pack, now: str) -> str:
    """Where a pack is."""
    if pack.state == "cart":
        cart = books.get(Cart, pack.cart)
        return f"is on {cart.name if cart else pack.cart}"
    if pack.state == "shipped":
        return f"left {fig.day(pack.left)} {fig.clock(pack.left)}" if pack.left else "left before"
    if pack.state == "opened":
        return "was opened again"
    return f"waits for a cart since {fig.at_or_day(pack.closed, now)}"


def _pack(books: Books, pack: Pack, now: str) -> Iterator[tuple[str, str]]:
    for part, n in pack.contents:
        yield f"{fig.n(n)} {trade.name(books, part)}", tell_pack(books, pack, now)
    mailer = books.get(Mailer, pack.mailer)
    if mailer:
        yield mailer.name, f"{fig.n(pack.scale_g)} g, weighed" if pack.scale_g else ""


def _machine(books: Books, thing: object, now: str) -> Iterator[tuple[str, str]]:
    match thing:
        case Router():
            yield from _router(books, thing)
        case Bit():
            router = books.get(Router, thing.router) if thing.router else None
            yield _metres(books, thing.id), f"in {router.name}" if router else "in the drawer"
        case Lot():
            for place, lies in books.at.items():
                n = lies[thing.id, "sheet"]
                if n > 0 and place.partition("/")[0] not in BALANCE:
                    yield fig.of(n, "sheet"), name_place(books, place)
        case CutFile():
            for batch in _waiting_of(books, thing):
                router = books.get(Router, batch.router)
                due = f", due {fig.at_or_day(batch.due, now)}" if batch.due else ""
                yield f"Batch {batch.id}", f"{router.name if router else ''}{due}"
        case Mailer():
            yield _size(thing), ""
            n = parcels.count_left(books, thing.id)
            yield f"place {thing.hangs}" if thing.hangs else "in the shop", f"{fig.n(n)} left"


def _router(books: Books, router: Router) -> Iterator[tuple[str, str]]:
    bed = books.get(Bed, router.id)
    batch = books.get(Batch, bed.batch) if bed and bed.sheet else None
    if bed and batch:
        for run in trade.runs_of(books, batch):
            yield f"sheet {bed.sheet} of batch {batch.id}", f"file {run.id}"
    for _, number in bed.bits if bed else ():
        yield f"bit {number}", _metres(books, number)


def _size(mailer: Mailer) -> str:
    return f"{mailer.length_mm:g} × {mailer.width_mm:g} mm, closes over {mailer.thick_mm:g} mm"


def _waiting_of(books: Books, file: CutFile) -> list[Batch]:
    return [
        b
        for b in books.all(Batch)
        if b.cut_file == file.id and b.state in ("queued", "cutting") and trade.has_sheets(b)
    ]


def _metres(books: Books, number: str) -> str:
    bit = books.get(Bit, number)
    if bit is None:
        return ""
    cut = bit.life_m - loading.metres_left(books, bit)
    return f"{fig.n(cut)} of {fig.n(bit.life_m)} m cut"


# --- who takes it, what is coming; what it came from


def takers(books: Books, part: str) -> list[tuple[Order, int]]:
    """The orders that still take pieces of a part, by due time."""
    rows = ((o, trade.to_go(books, o).get(part, 0)) for o in trade.open_orders(books))
    return [(order, n) for order, n in rows if n]


def list_promised(look: Look) -> Lines:
    """Every line of who takes a thing and what is coming of it."""
    thing, books, now = find_thing(look), look.books, look.now
    match thing:
        case RackPlace():
            part = books.get(Part, thing.part)
            return list(_promised(books, part, now)) if part else []
        case Part():
            return list(_promised(books, thing, now))
        case Batch():
            order = books.get(Order, thing.order)
            if order and order.state not in ("packed", "shipped", "cancelled"):
                return [(f"for order {order.id}", "")]
            return [("for the rack", f"due {fig.at_or_day(thing.due, now)}")] if thing.due else []
        case Order():
            names = [(line, books.get(Product, line.product)) for line in thing.lines]
            return [(f"{fig.n(line.quantity)} × {p.name if p else line.product}",
                     f"{fig.n(line.short)} owed" if line.short else "")
                    for line, p in names]  # fmt: skip
        case Pack():
            order = books.get(Order, thing.order)
            due = f"due {fig.day(order.due)} {fig.clock(order.due)}" if order else ""
            return [(f"for order {thing.order}", due)]
        case Product():
            return [
                (f"{fig.n(n)} for order {o.id}", f"due {fig.at_or_day(o.due, now)}")
                for o, n in _wanting(books, thing)
            ]
        case Router():
            found = [(n, books.get(Batch, n)) for n in queue(books, thing.id)]
            return [(f"Batch {n}", benches.words(books, b)) for n, b in found if b]
    return []


def _wanting(books: Books, product: Product) -> list[tuple[Order, int]]:
    rows = (
        (o, sum(x.quantity - x.short for x in o.lines if x.product == product.id))
        for o in trade.open_orders(books)
    )
    return [(order, n) for order, n in rows if n]


def _promised(books: Books, part: Part, now: str) -> Iterator[tuple[str, str]]:
    rows = takers(books, part.id)
    lying = list(books.lying(place=f"rack/{part.rack}", part=part.id))
    held = sum(n for _, b, _, n in lying if trade.why_held(books, books.get(Batch, b)))
    rack = books.get(RackPlace, part.rack)
    there = f"rack {rack.name if rack else ''}: {fig.n(sum(n for *_, n in lying))}"
    if held:
        yield f"{fig.n(held)} held", there
    for order, n in rows:
        yield f"{fig.n(n)} for order {order.id}", f"due {fig.at_or_day(order.due, now)}"
    coming, _ = count_coming(books, part.id)
    if coming:
        yield f"{fig.n(sum(n for n, _ in coming))} coming", say_coming(books, part.id, now)


def list_origin(look: Look) -> Lines:
    """What a batch, a sheet or a pack came from: sheets with router, time, lot and bit."""
    thing, books = find_thing(look), look.books
    if isinstance(thing, Batch):
        slips = [s for s in books.all(Slip) if s.batch == thing.id]
        return [*_parent(thing), *(_sheet(books, s) for s in slips)]
    if isinstance(thing, Pack):
        return list(_origin(books, thing))
    return []


def _parent(batch: Batch) -> Lines:
    return [(f"made of batch {number}", "") for number in batch.parents]


def _sheet(books: Books, slip: Slip) -> tuple[str, str]:
    router = books.get(Router, slip.router)
    told = f"{router.name if router else ''}, {fig.day(slip.at)} {fig.clock(slip.at)}"
    told += f", lot {slip.lot}" if slip.lot else ""
    told += "".join(f", bit {bit}" for bit in slip.bits or (slip.bit,) if bit)
    return f"sheet {slip.sheet} of batch {slip.batch}", told


def _origin(books: Books, pack: Pack) -> Iterator[tuple[str, str]]:
    """The pieces of a pack by batch, as the act that closed it has moved them."""
    closed = [e for e in books.done() if any(p.id == pack.id for p in e.after(Pack))]
    counts: dict[tuple[str, str], int] = {}
    for move in next((e.moves for e in reversed(closed) if e.kind == "close_pack"), ()):
        if move.part not in NO_PIECES:
            key = move.part, move.to_batch
            counts[key] = counts.get(key, 0) + move.qty
    for (part, number), n in counts.items():
        batch = books.get(Batch, number)
        told = ""
        slips = trade.cut_of(books, batch) if batch else None
        if batch and slips is not None:
            cut_on = dict.fromkeys(s.router for s in slips) or {batch.router: None}
            routers = [r.name for number in cut_on if (r := books.get(Router, number))]
            lots = dict.fromkeys(f"lot {s.lot}" for s in slips if s.lot)
            bits = dict.fromkeys(f"bit {b}" for s in slips for b in s.bits or (s.bit,) if b)
            told = fig.joined([*routers, *lots, *bits])
        yield f"{fig.n(n)} {trade.name(books, part)} of batch {number}", told


# --- the one sentence of a thing that has no lists


def tell_part(look: Look) -> list[str]:
    """What a part's page says in one line, and what follows."""
    thing, books = find_thing(look), look.books
    part = books.get(Part, thing.part) if isinstance(thing, RackPlace) else thing
    if not isinstance(part, Part):
        return []
    there = books.count(place=f"rack/{part.rack}", part=part.id)
    free = sum(
        n
        for _, b, _, n in books.lying(place=f"rack/{part.rack}", part=part.id)
        if not trade.why_held(books, books.get(Batch, b))
    )
    promised = sum(n for _, n in takers(books, part.id))
    place = name_place(books, f"rack/{part.rack}")
    coming = say_coming(books, part.id, look.now)
    follows = f"Free: {fig.n(free - promised)}. Scan your work to go on."
    if promised > free:
        follows = f"Coming: {coming}." if coming else ""
        follows = follows or f"Lacking: {fig.n(promised - free)}, and nothing is coming."
    return [
        f"{part.name}: {fig.n(there)} on {place}, {fig.n(promised)} promised",
        f"Rack {place.removeprefix('rack ')}: {fig.n(there)} {part.name}",
        follows,
    ]


def tell_thing(look: Look, told: str) -> list[str]:
    """The answers of things without lists, in one line each."""
    thing, books = find_thing(look), look.books
    match thing:
        case Lot():
            used = books.sheets("used", thing.id)
            there = fig.of(books.sheets("store", thing.id), "sheet")
            return [f"Lot {thing.id}: {there} in the store, {fig.n(used)} used"]
        case Mailer():
            return [f"Mailer {thing.name}: {_size(thing)}"]
        case Bit():
            place = _machine(books, thing, look.now)
            left = max(0.0, loading.metres_left(books, thing))
            return [f"Bit {thing.id}: {where}, {metres}" for metres, where in place] + [
                f"Left of its life: {fig.n(left)} m."
            ]
        case CutFile():
            approved = (
                f"revision {thing.approved} is approved"
                if thing.approved
                else "no revision is approved"
            )
            left = sum(b.sheets - b.cut for b in _waiting_of(books, thing))
            return [f"{thing.name}: {approved}, {fig.of(left, 'sheet')} to cut"]
        case Cart():
            return _tell_cart(books, thing)
        case Router():
            return _tell_router(books, thing, look.now)
        case Batch():
            return list(_tell_batch(books, thing, told))
        case Product():
            free = [trade.on_rack(books, p, free=True) // n for p, n in thing.parts]
            wanting = _wanting(books, thing)
            there, wanted = min(free, default=0), sum(n for _, n in wanting)
            return [
                f"{thing.name}: the rack has parts for {fig.n(there)}, {fig.n(wanted)} wanted",
                f"Orders that want it: {fig.n(len(wanting))}.",
            ]
    return tell_part(look)


def _tell_batch(books: Books, batch: Batch, told: str) -> Iterator[str]:
    """Where a batch and its sheets are, and where it goes next."""
    lines = list(_batch(books, batch, {}))
    where = tell_where(books, batch.id, told.partition(": ")[2])
    yield f"Batch {batch.id}: {where or lines[0][0]}"
    router = books.get(Router, batch.router)
    yield f"Next: cut it on {router.name if router else ''}."
    if why := trade.why_held(books, batch):
        yield f"Held: {why}. A supervisor lets it go on."
    cut = {s.sheet: s for s in books.all(Slip) if s.batch == batch.id}
    for n in range(1, MOST_SHEETS + 1):
        if n > batch.sheets:
            yield f"Batch {batch.id} has {fig.of(batch.sheets, 'sheet')}, no sheet {n}"
        elif n not in cut:
            yield f"Sheet {n} of batch {batch.id} is not cut yet"


def _all_batches(at: At) -> list[str] | None:
    """How many batches wait, are under way or cut, and where the pieces of each are."""
    books = at.books
    moving = {b for h in ("trimming", "rework") for _, b, _, _ in books.lying(head=h)}
    moving |= {s.batch for s in books.all(Slip) if s.state == "popping"}
    moving |= {b.id for b in books.all(Batch) if b.role == "cut" and not b.parent
               and b.state in ("queued", "cutting", "cut")}  # fmt: skip
    if at.k < 0:
        n = len(moving)
        return [f"{fig.n(n)} {'batch' if n == 1 else 'batches'}, newest first"]
    return [tell_where(books, at.row[0], at[0], 2)] if at.k == 2 else None


def _tell_cart(books: Books, cart: Cart) -> list[str]:
    packs = benches.packs_on(books, cart)
    states = {"here": "it is here", "door": "it is at the door", "gone": "it left"}
    free = sum(
        n
        for _, b, _, n in books.lying(place=f"cart/{cart.id}")
        if not trade.why_held(books, books.get(Batch, b))
    )
    return [
        f"{cart.name}: {fig.of(len(packs), 'pack')} on it, {states[cart.state]}",
        f"{fig.of(free, 'piece')} may go.",
    ]


def _tell_router(books: Books, router: Router, now: str) -> list[str]:
    bed, waiting = books.get(Bed, router.id), queue(books, router.id)
    doing = "it is free"
    if bed and bed.state == "stopped":
        doing = f"stopped since {fig.at_or_day(bed.stopped, now)}"
    elif bed and bed.sheet:
        left = max(0, round(loading.minutes_left(bed, now)))
        doing = f"sheet {bed.sheet} of batch {bed.batch}, {left} min left"
    elif bed and bed.batch:
        doing = f"it is free, batch {bed.batch} is taken on"
    follows = [f"Next in its queue: batch {waiting[0]}."] if waiting else []
    return [f"{router.name}: {doing}", *follows]


# --- the rules


def _thing(at: At) -> list[str] | None:
    if at.look.hand.aside.what != "find" or at.shown.title.startswith(ASKING):
        return None
    return tell_thing(at.look, at[0])


def _line(name: str, at: At) -> list[str]:
    """A cell of a list: of a line that must stand there, beside what stands beside it."""
    lists = {"where": list_where, "promised": list_promised, "origin": list_origin}
    lines = at.look.once(name, lambda: lists[name](at.look))
    if at.k == 0 and at[0].endswith(" more") and not at.row[1]:
        return [f"{fig.n(len(lines) - CUT + 1)} more"] if len(lines) > CUT else []
    beside = [line for line in lines if line[1 - at.k] == at.row[1 - at.k]]
    return [line[at.k] for line in beside] if at.k < 2 else []


def _note(at: At) -> list[str] | None:
    """The line under the head of a page."""
    thing = find_thing(at.look)
    if (
        at.look.hand.aside.what != "find"
        or at.k == 0
        or (at.k == 1 and not isinstance(thing, Pack))
    ):
        return None
    match thing:
        case Batch():
            due = f"{thing.why} (as of {fig.day(thing.released)} {fig.clock(thing.released)})"
            return [due]
        case Order():
            return [f"due {fig.day(thing.due)} {fig.clock(thing.due)}"]
        case Pack():
            return [tell_pack(at.books, thing, at.look.now), f"Order {thing.order}"]
        case RackPlace():
            batches = {b for _, b, _, _ in at.books.lying(place=f"rack/{thing.id}")}
            noun = "batch" if len(batches) == 1 else "batches"
            return [f"{fig.n(len(batches))} {noun}, the oldest first"]
        case Cart():
            return [benches.goes(at.books, thing, at.look.now)]
    return None


def _under_way(at: At) -> list[str] | None:
    """A batch under way: its pieces that lie with its paper, and where."""
    number = at.row[0]
    lying = [
        (place, n)
        for place, _, _, n in at.books.lying(batch=number)
        if place.partition("/")[0] in trade.PAPER
    ]
    if at.k == 1:
        return [fig.of(sum(n for _, n in lying), "piece")]
    told, places = at.row[3].removesuffix(" …"), {name_place(at.books, p) for p, _ in lying}
    named = set(told.replace(", sheet ", " sheet ").split(", "))
    every = {place.replace(", sheet ", " sheet ") for place in places}
    whole = named <= every and len(named) == min(3, len(every)) and told
    whole = whole and (told != at.row[3]) == (len(every) > 3)
    return [at.row[3]] if whole else sorted(places)


def _could_be(at: At) -> list[str] | None:
    """How many of the part that is looked for a batch has on its way."""
    if at.k != 1:
        return _under_way(at)
    part = at.look.hand.aside.part
    lying = at.books.lying(batch=at.row[0], part=part)
    places = [(p, n) for p, _, _, n in lying if p.partition("/")[0] in trade.PAPER]
    return [fig.of(sum(n for _, n in places), "piece")]


def _by_the_book(at: At) -> list[str] | None:
    """Pieces of a part of the batch that is split, counted again or looked for."""
    batch, part = at.look.hand.aside.batch, trade.find_part(at.books, at.row[0])
    lying = [(p.partition("/")[0], n) for p, _, _, n in at.books.lying(batch=batch, part=part)]
    if at.k < 2 or not batch:
        return None
    heads = {head for head, _ in lying} | {""}
    sums = {sum(n for head, n in lying if head == one) for one in heads}
    sums |= {sum(n for _, n in lying), sum(n for head, n in lying if head in trade.PAPER)}
    return [fig.n(n) for n in sums]


def _to_correct(at: At) -> list[str]:
    """What is there by the book of what the office corrects: sheets of a lot, a rack's pieces."""
    what, _, name = at.shown.whole.partition(" ")
    if what == "Lot":
        return [fig.n(at.books.sheets("store", name))]
    racks = [r for r in at.books.all(RackPlace) if r.name == name]
    part = trade.find_part(at.books, at.row[1].partition(",")[0])
    return [fig.n(at.books.count(place=f"rack/{r.id}", part=part)) for r in racks]


RULES = (
    Rule("list", "Where it is", r".*", lambda at: _line("where", at)),
    Rule("list", "Promised and coming", r".*", lambda at: _line("promised", at)),
    Rule("list", "What it came from", r".*", lambda at: _line("origin", at)),
    Rule("header", "(Batch|Sheet|Order|Pack|Rack place|Cart)", r".*", _note),
    Rule("list", r".*newest first", r".*newest first", _all_batches, "title"),
    Rule("list", r"(.*batches\}, newest first|and)", r".*", _all_batches),
    Rule("hint", "", r".*", _thing),
    Rule("cards", "Under way", r".*(pieces?|popping|trimming|rework|kept).*", _under_way),
    Rule("cards", "Could be theirs", r".*(pieces?|popping|trimming|rework|kept).*", _could_be),
    Rule("table", r"(Rack \{name\}|Lot \{id\})$", r"[\d\u202f]+", _to_correct),
    Rule("table", r"Batch \{batch\}", r"[\d\u202f]+", _by_the_book),
)  # fmt: skip
