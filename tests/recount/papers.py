"""The figures of papers, counted again: what each must say, and what else it may.

A sentence may run over several lines, and be cut off by an ellipsis where there is no more room.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterator
from datetime import datetime
from typing import NamedTuple

from station.papers.marks import BarsMark, TextMark
from station.papers.page import Page
from station.shop.codes import has_code, write
from station.shop.facts import (
    Batch,
    Cart,
    CutFile,
    Lot,
    Mailer,
    Material,
    Order,
    Pack,
    Part,
    RackPlace,
    Revision,
    Router,
    Shop,
)
from tests.recount import figures as fig
from tests.recount import left, needs_look, parcels, trade
from tests.recount.books import Books
from tests.recount.census import Figure
from tests.recount.read import FIGURE
from tests.recount.tallies import name_rack

DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]
SHORT = 4  # a text of so few signs stands for itself, not for a part of a longer one


class Due(NamedTuple):
    """What a paper says; `must`: it lacks something without it."""

    words: str
    must: bool = True


class Compared(NamedTuple):
    """Every figure of a paper with whether it was counted again, and how the paper differs."""

    figures: list[tuple[Figure, bool]]
    told: list[str]


def texts(page: Page) -> list[str]:
    """Every text of a paper, page by page; its type has no narrow space between thousands."""
    words = (m.words for marks in page.pages for m in marks if isinstance(m, TextMark))
    return [text.replace("\u00a0", "\u202f") for text in words]


def on_day(at: str, *, clock: bool = True) -> str:
    """A time as papers write it: ``Wed 25 Nov 14:00``."""
    if not at:
        return ""
    day = datetime.fromisoformat(at)
    words = f"{DAYS[day.weekday()]} {day.day} {fig.MONTHS[day.month - 1]}"
    return f"{words} {at[11:16]}" if clock else words


def in_full(at: str) -> str:
    """A time with its year: ``Wed 25 Nov 2026 14:00``."""
    return f"{on_day(at, clock=False)} {at[:4]} {at[11:16]}"


def compare_paper(books: Books, kind: str, number: str, page: Page, now: str) -> Compared:
    """Compares a paper with what it must say."""
    due = list(DUES[kind](books, number, now))
    said = texts(page)
    whole = _flatten(" ".join(said))
    cut = list(_list_cut_off(said))
    told = [
        f"{kind} {number}: {d.words!r} is not said: {whole[:500]}"
        for d in due
        if d.must and not _is_said(_flatten(d.words), whole, cut)
    ]
    told += list(CHECKS[kind](books, number, said)) if kind in CHECKS else []
    sentences = {_flatten(d.words) for d in due}
    codes = _read_codes(page)
    figures = [
        (Figure(f"{kind}: {FIGURE.sub('#', text)}", text), _is_due(text, sentences, codes))
        for text in said
        if FIGURE.search(text)
    ]
    return Compared(figures, told)


def _flatten(words: str) -> str:
    return re.sub(r"[ \n]+", " ", words).strip()


def _list_cut_off(said: list[str]) -> Iterator[str]:
    """What a sentence may begin with that is cut off: its last line, with those above it."""
    for n, text in enumerate(said):
        if text.endswith("…"):
            yield from (
                _flatten(" ".join(said[k : n + 1])[:-1]) for k in range(max(0, n - 2), n + 1)
            )


def _is_said(words: str, whole: str, cut: list[str]) -> bool:
    return words in whole or any(words.startswith(text) for text in cut if len(text) > SHORT)


def _is_due(text: str, sentences: set[str], codes: set[str]) -> bool:
    """Says whether a text is a sentence that is due, a line of one, or a code of the page."""
    words = _flatten(text.rstrip("…"))
    if words in sentences or words.replace(" ", "") in codes:
        return True
    return len(words) > SHORT and any(_runs_on(words, s) for s in sentences)


def _runs_on(words: str, sentence: str) -> bool:
    """Says whether a line is of a sentence, or begins with one and says no figure after it."""
    begins = len(sentence) > SHORT and words.startswith(sentence)
    return words in sentence or (begins and not FIGURE.search(words[len(sentence) :]))


def _read_codes(page: Page) -> set[str]:
    """The codes under bars, as they are written; what they mean is read back elsewhere."""
    marks = (m for marks in page.pages for m in marks if isinstance(m, BarsMark))
    return {m.code for m in marks}


# --- travellers


def _traveller(books: Books, number: str, now: str) -> Iterator[Due]:
    batch = books.get(Batch, number)
    assert batch
    revision, file = trade.revision_of(books, batch), books.get(CutFile, batch.cut_file)
    material = books.get(Material, revision.material) if revision else None
    if revision is None or file is None:
        return
    yield Due(batch.id)
    yield Due(f"revision {batch.revision} of cut file {file.name}")
    yield Due(file.words, must=False)
    size = f"{revision.length_mm:g} × {revision.width_mm:g}"
    router = books.get(Router, batch.router)
    if not trade.has_sheets(batch):
        role = (
            "split off" if batch.role == "split" else f"to be made good, try {batch.tries} of 2,"
        )
        words = [f"{role} from batch {fig.joined(list(batch.parents))}"]
        words += [f"revision {batch.revision} of cut file {file.name}"]
        yield Due(" · ".join([*words, material.name if material else size]))
    else:
        words = [f"revision {batch.revision} of cut file {file.name}", _sheets(batch)]
        words += [f"{material.name} {size}" if material else size]
        words += [f"{router.name}, {router.bed}"] if router else []
        yield Due(" · ".join(words))
    yield from _bits_and_sizes(books, batch, revision)
    yield from _why_it_is_cut(books, batch)
    yield from _runs(books, batch, revision)
    yield from _pieces(books, batch, revision)
    yield from _heavy_sheet(books, material if trade.has_sheets(batch) else None)
    yield Due(f"Copy {batch.copy} · printed {in_full(now)}")
    for n in range(1, batch.sheets + 1) if trade.has_sheets(batch) else ():
        yield Due(f"B {batch.id} {batch.copy} · sheet {n} of {batch.sheets}", must=False)
        yield Due(f"No slip prints for sheet {n}: print a new copy.", must=False)
    for words in (f"Batch {batch.id}, copy {batch.copy}: more to count",
                  f"Slips of batch {batch.id}, copy {batch.copy}"):  # fmt: skip
        yield Due(words, must=False)


def _bits_and_sizes(books: Books, batch: Batch, revision: Revision) -> Iterator[Due]:
    """The bits of a sheet, and the limits of each part's sizes, as they were entered."""
    bits = ", ".join(f"{use.number}: {use.diameter_mm:g}" for use in revision.bits)
    yield Due(f"bits {bits} mm", must=False)
    made = dict.fromkeys(placed.part for placed in revision.placed)
    held = count_pieces(books, batch)
    parts = [p for number in made if number in held and (p := books.get(Part, number))]
    sizes = [f"{p.name} {s.name} {s.low_mm:g} to {s.high_mm:g}" for p in parts for s in p.sizes]
    yield Due(f"Check, mm: {'; '.join(sizes)}", must=bool(sizes))
    for part in parts:
        yield Due(f"rack {name_rack(books, part.rack)} · {part.words}", must=False)


def _sheets(batch: Batch) -> str:
    return f"{batch.sheets} {'sheet' if batch.sheets == 1 else 'sheets'}"


def _why_it_is_cut(books: Books, batch: Batch) -> Iterator[Due]:
    """For which order, or what lacked when; when the first of it leaves."""
    order = books.get(Order, batch.order)
    order = order if order and order.state in ("open", "packing", "waiting") else None
    due = order.due if order else batch.due
    words = batch.why
    if words and batch.released:
        words = f"{words} (as of {on_day(batch.released)})"
    if batch.order:
        words = f"For order {batch.order}"
    leaves = f"first leaves {on_day(due)}" if due else ""
    whole = ", ".join(filter(None, (words, leaves)))
    if whole:
        yield Due(whole)


def _runs(books: Books, batch: Batch, revision: Revision) -> Iterator[Due]:
    runs = trade.runs_of(books, batch)
    if len(runs) < 2 or not trade.has_sheets(batch):
        return
    for n, run in enumerate(runs, 1):
        file = books.get(CutFile, run.cut_file)
        on = f" on router {', '.join(run.routers)}" if run.routers else ""
        yield Due(f"{n} ", must=False)
        yield Due(f"{file.name if file else run.id}{on}", must=False)
        for work in ("cut", "engraved by a laser", "laser", "cut out", "pockets"):
            yield Due(f"{n} {work}: {file.words if file else ''}{on}", must=False)


def _pieces(books: Books, batch: Batch, revision: Revision) -> Iterator[Due]:
    """The rows of the table: each part's number on the drawing, its tabs, its pieces."""
    for n, (part, count) in enumerate(count_pieces(books, batch).items(), 1):
        fact = books.get(Part, part)
        tabs = len(fact.shape.tabs) if fact and fact.shape else 0
        yield Due(str(count))
        yield Due(trade.name(books, part))
        for words in (str(n), str(tabs), fact.words if fact else ""):
            yield Due(words, must=False)
        if not trade.has_sheets(batch):
            yield Due(f"{count} × {trade.name(books, part)}", must=False)


def count_pieces(books: Books, batch: Batch) -> dict[str, int]:
    """Pieces of each part that a traveller tells: of all its sheets, of a child those here."""
    counts = {p: n * batch.sheets for p, n in trade.makes(books, batch).items()}
    for place, _, part, n in books.lying(batch=batch.id) if not trade.has_sheets(batch) else ():
        if place.partition("/")[0] in trade.PAPER:
            counts[part] = counts.get(part, 0) + n
    return counts


def _heavy_sheet(books: Books, material: Material | None) -> Iterator[Due]:
    shop = books.get(Shop, "shop") or Shop(id="shop")
    yield Due(shop.caution, must=False)
    if material:
        litres = material.length_mm * material.width_mm * material.thickness_mm * 1e-6
        kilos = litres * material.density_kg_m3 / 1000
        yield Due(f"Sheet {kilos:.1f} kg: two people or a lift.", must=kilos >= shop.two_people_kg)


def _check_traveller(books: Books, number: str, said: list[str]) -> Iterator[str]:
    """Tells where a part does not stand beside its pieces, or where a slip lacks."""
    batch = books.get(Batch, number)
    assert batch
    for part, n in count_pieces(books, batch).items():
        name = trade.name(books, part)
        at = said.index(name) if name in said else -1
        if at < 0 or str(n) not in said[at : at + 5]:
            yield f"traveller {number}: {name} is not said with {n}: {said}"
    if trade.has_sheets(batch):
        slips = [t for t in said if re.search(r"sheet \d+ of \d+$", t)]
        due = [f"sheet {n} of {batch.sheets}" for n in range(1, batch.sheets + 1)]
        if [t.partition(" · ")[2] for t in slips] != due:
            yield f"traveller {number}: slips {slips}, counted {due}"


# --- packs, carts, orders


def _nth(pack: Pack) -> str:
    """Which pack of its order it is, where there are several."""
    if not pack.nth:
        return ""
    return f"pack {pack.nth} of {pack.of}" if pack.of else f"pack {pack.nth}, more follow"


def weigh(books: Books, pack: Pack) -> str:
    """What a pack weighs as its papers say it: as weighed, about what it should, or nothing."""
    if pack.scale_g:
        return f"{fig.n(pack.scale_g)} g"
    grams = parcels.weigh_pack(books, pack)
    if grams is not None and round(grams) != round(pack.mass_g) and abs(grams - pack.mass_g) < 1:
        grams = pack.mass_g  # sums of doubles meet at half a gram
    return f"about {fig.n(grams)} g" if grams is not None else ""


def _label(books: Books, number: str, now: str) -> Iterator[Due]:
    pack = books.get(Pack, number)
    order = books.get(Order, pack.order) if pack else None
    assert pack
    assert order
    yield Due(order.id)
    yield Due(pack.id)
    yield Due(f"leaves {on_day(order.due, clock=False)}")
    yield Due(" · ".join(filter(None, ("Order", _nth(pack)))))
    yield Due(weigh(books, pack))
    inside = [f"{n} × {trade.name(books, part)}" for part, n in pack.contents]
    yield Due(", ".join(inside), must=False)
    for shown in range(1, len(inside)):
        more = f"{', '.join(inside[:shown])} and {len(inside) - shown} more, see the order"
        yield Due(more, must=False)
    short = sum(line.short for line in order.lines)
    if short:
        yield Due(f"{short} owed")
    copy = f"copy {pack.copies} · " if pack.copies > 1 else ""
    yield Due(f"{copy}packed {on_day(pack.closed or now)}")


def _check_label(books: Books, number: str, said: list[str]) -> Iterator[str]:
    """Tells pieces that a label neither says nor says that it leaves out."""
    pack = books.get(Pack, number)
    assert pack
    whole = " ".join(said)
    more = re.search(r"and (\d+) more, see the order", whole)
    lacks = [
        part
        for part, n in pack.contents
        if not re.search(rf"\b{n} × {re.escape(trade.name(books, part))}(,|\s|$)", whole)
    ]
    if len(lacks) != (int(more[1]) if more else 0):
        yield f"label {number}: {lacks} are not said: {whole}"
    if not weigh(books, pack) and re.search(r"\d g\b", whole):
        yield f"label {number}: a weight though a part has none: {whole}"


def _pick_list(books: Books, number: str, now: str) -> Iterator[Due]:
    order = books.get(Order, number)
    assert order
    to_go = trade.to_go(books, order)
    yield Due(order.id)
    yield Due(f"{sum(to_go.values())} to take · leaves {on_day(order.due)}")
    yield Due(f"printed {on_day(now)} · scan each part at its place: the screen counts")
    yield Due(f"Order {order.id}, more to take", must=False)
    for part, n in to_go.items():
        fact = books.get(Part, part)
        yield Due(f"{n} ×")
        yield Due(trade.name(books, part))
        yield Due(name_rack(books, fact.rack) if fact and fact.rack else "no place")
        yield Due(fact.words if fact else "", must=False)
        there = trade.on_rack(books, part, free=True)
        if there < n:
            yield Due(f"only {there} there")


def _check_pick_list(books: Books, number: str, said: list[str]) -> Iterator[str]:
    """Tells where a part does not stand beside its pieces and what lies there."""
    order = books.get(Order, number)
    assert order
    for part, n in trade.to_go(books, order).items():
        name = trade.name(books, part)
        at = said.index(name) if name in said else -1
        if at < 1 or said[at - 1] != f"{n} ×":
            yield f"pick list {number}: {n} × {name} is not said: {said}"
        there = trade.on_rack(books, part, free=True)
        if there < n and f"only {there} there" not in said[at : at + 4]:
            yield f"pick list {number}: only {there} of {name} there is not said: {said}"


def _cart_list(books: Books, number: str, now: str) -> Iterator[Due]:
    cart = books.get(Cart, number)
    assert cart
    packs = packs_of_list(books, cart)
    yield Due(cart.name)
    yield Due(f"{fig.of(len(packs), 'pack')} · printed {on_day(now)}")
    yield Due(f"{cart.name}, more packs", must=False)
    for n, pack in enumerate(packs, 1):
        yield Due(str(n))
        yield Due(pack.id)
        words = (f"order {pack.order}", _nth(pack), weigh(books, pack))
        yield Due(" · ".join(filter(None, words)))


def packs_of_list(books: Books, cart: Cart) -> list[Pack]:
    """The packs on a cart; once it has left, those that it left with."""
    here = [p for p in books.all(Pack) if p.state == "cart" and p.cart == cart.id]
    if here:
        return here
    gone = [e for e in books.entries if e.kind == "leave" and e.subject == cart.key]
    return list(gone[-1].after(Pack)) if gone else []


# --- the handover, and cards


def _handover(books: Books, number: str, now: str) -> Iterator[Due]:
    """What one shift leaves to the next, list by list."""
    by = f" · by worker {number}" if number else ""
    yield Due(f"{in_full(now)}{by}")
    last = books.entries[-1] if books.entries else None
    yield Due(f"{in_full(now)}{by} · history to {last.id if last else ''}", must=False)
    for name, words in left.on_beds(books, now):
        yield from (Due(name), Due(words))
    for batch, sheet, count in left.at_popping(books):
        yield from (Due(batch), Due(f"{sheet}, {count}"))
    for place, more in (("trimming", ""), ("rework", ", to be made good")):
        counts: Counter[str] = Counter()
        for _, batch, _, n in books.lying(place=place):
            counts[batch] += n
        for batch, n in counts.items():
            yield from (Due(batch), Due(f"{fig.of(n, 'piece')}{more}"))
    for order, words in left.open_packs(books):
        yield from (Due(order.capitalize()), Due(words))
    for bit, used in left.share_used(books):
        yield from (Due(f"Bit {bit.id}"), Due(f"{bit.words}, {round(100 * used)} % of its life"))
    yield from _looks(books, now)


def _looks(books: Books, now: str) -> Iterator[Due]:
    for words, since in needs_look.list_since(books, now):
        yield from (Due(on_day(since or now)), Due(words))
    for concern in needs_look.open_concerns(books):
        yield from (Due(on_day(concern.since)), Due(str(concern.text)))


def _part_cards(books: Books, _number: str, _now: str) -> Iterator[Due]:
    """A card for each part that has a place: its name, its place, its mark."""
    for rack in books.all(RackPlace):
        part = books.get(Part, rack.part)
        if part:
            yield Due(rack.name, must=False)
            yield Due(part.name, must=False)
            yield Due(part.words, must=False)
            yield Due(str(part.mark), must=False)
            yield from (Due(f"part {c}", must=False) for c in _codes_of("part", part.id))
            yield from (Due(f"place {c}", must=False) for c in _codes_of("rack", rack.id))


def _codes_of(kind: str, number: str) -> list[str]:
    return [write(kind, number)] if has_code(kind, number) else []


def _check_part_cards(books: Books, _number: str, said: list[str]) -> Iterator[str]:
    """Tells cards whose mark is not that of their part."""
    for n, text in enumerate(said):
        if text == "cut more below":
            names = {name: p.mark for p in books.all(Part) for name in (p.name,)}
            part = next((t for t in reversed(said[:n]) if t.rstrip("…") in names), "")
            if part and str(names[part]) != said[n + 1]:
                yield f"part card of {part}: mark {said[n + 1]}, counted {names[part]}"


def _cards(books: Books, _number: str, _now: str) -> Iterator[Due]:
    """Cards of things and people: their numbers and names."""
    for fact in books.facts.values():
        name = getattr(fact, "name", "") or getattr(fact, "words", "")
        number = f"{fact.kind.capitalize()} {fact.id}"
        for words in (str(name), f"{fact.id} {name}", number, f"{number} · {name}"):
            yield Due(words, must=False)
        if isinstance(fact, Mailer):
            yield Due(f"mailer, {fact.length_mm:g} × {fact.width_mm:g} mm", must=False)
        if isinstance(fact, Lot):
            good = books.get(Material, fact.material)
            came = f" · {fig.day(fact.received)} {fact.received[:4]}" if fact.received else ""
            yield Due(f"{good.name if good else fact.material}{came}", must=False)
        if isinstance(fact, Cart) and fact.goes:
            yield Due(f"cart, goes at {fact.goes}", must=False)


DUES: dict[str, Callable[[Books, str, str], Iterator[Due]]] = {
    "traveller": _traveller,
    "label": _label,
    "pick_list": _pick_list,
    "cart_list": _cart_list,
    "handover": _handover,
    "part_cards": _part_cards,
    "thing_cards": _cards,
    "badges": _cards,
}
CHECKS: dict[str, Callable[[Books, str, list[str]], Iterator[str]]] = {
    "traveller": _check_traveller,
    "label": _check_label,
    "pick_list": _check_pick_list,
    "part_cards": _check_part_cards,
}
