"""The figures of papers, counted again: travellers, slips, pack labels, pick and cart lists."""

import re
from collections.abc import Iterator
from datetime import datetime

from station.papers.marks import TextMark
from station.papers.page import Page
from station.shop.facts import Batch, Mailer, Order, Pack, Part
from tests.recount import trade
from tests.recount.books import Books

MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]
DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]


def texts(page: Page) -> list[str]:
    """Every text of a paper, page by page."""
    return [m.words for marks in page.pages for m in marks if isinstance(m, TextMark)]


def on_day(at: str, *, clock: bool = True) -> str:
    """A time as papers write it: ``Wed 25 Nov 14:00``."""
    day = datetime.fromisoformat(at)
    words = f"{DAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}"
    return f"{words} {at[11:16]}" if clock else words


def check_traveller(books: Books, number: str, page: Page) -> Iterator[str]:
    """Tells what a traveller lacks: its sheets, its slips, the pieces of each part, its due."""
    batch = books.get(Batch, number)
    assert batch
    said = texts(page)
    whole = " ".join(said)
    each = trade.makes(books, batch)
    if not batch.parent:
        sheets = f"{batch.sheets} {'sheet' if batch.sheets == 1 else 'sheets'}"
        if f"· {sheets} ·" not in whole:
            yield f"traveller {number}: {sheets} are not said"
        slips = [t for t in said if re.search(r"sheet \d+ of \d+$", t)]
        due = [f"sheet {n} of {batch.sheets}" for n in range(1, batch.sheets + 1)]
        if [t.partition(" · ")[2] for t in slips] != due:
            yield f"traveller {number}: slips {slips}, counted {due}"
    counts = {p: n * batch.sheets for p, n in each.items()}
    for place, _, part, n in books.lying(batch=number) if batch.parent else ():
        if place.partition("/")[0] in trade.PAPER:
            counts[part] = counts.get(part, 0) + n
    for part, n in counts.items():
        name = trade.name(books, part)
        at = said.index(name) if name in said else -1
        if at < 0 or str(n) not in [t.replace("\u2009", "") for t in said[at : at + 5]]:
            yield f"traveller {number}: {name} is not said with {n}: {said}"
    if batch.due and f"leaves {on_day(batch.due)}" not in whole:
        order = books.get(Order, batch.order)
        if not order or f"leaves {on_day(order.due)}" not in whole:
            yield f"traveller {number}: leaves {on_day(batch.due)} is not said: {whole[:300]}"


def weigh(books: Books, pack: Pack) -> float | None:
    """What a pack should weigh in grams, its mailer too; None: a part of it has no weight."""
    total = 0.0
    for part, n in pack.contents:
        fact = books.get(Part, part)
        if fact is None or not fact.mass_g:
            return None
        total += fact.mass_g * n
    mailer = books.get(Mailer, pack.mailer)
    return total + (mailer.mass_g if mailer else 0.0)


def check_label(books: Books, number: str, page: Page) -> Iterator[str]:
    """Tells what a pack's label lacks or says wrongly: its order, its pieces, its weight."""
    pack = books.get(Pack, number)
    order = books.get(Order, pack.order) if pack else None
    assert pack
    assert order
    whole = " ".join(texts(page))
    for part, n in pack.contents:
        if not re.search(rf"\b{n} × {re.escape(trade.name(books, part))}\b", whole):
            yield f"label {number}: {n} × {trade.name(books, part)} is not said: {whole}"
    grams = weigh(books, pack)
    told = re.search(r"(?:about )?([\d.,]+) (k?g)\b", whole)
    if pack.scale_g:
        grams = pack.scale_g
    if grams is None and told:
        yield f"label {number}: {told[0]} though a part has no weight"
    elif grams is not None and (not told or abs(float(told[1].replace(",", "")) - grams) > 1):
        yield f"label {number}: weight {told and told[0]}, counted {grams:.1f} g"
    if f"leaves {on_day(order.due, clock=False)}" not in whole and order.due:
        yield f"label {number}: due {order.due} is not said: {whole}"


def check_pick_list(books: Books, number: str, page: Page) -> Iterator[str]:
    """Tells what a pick list says wrongly: what is to be taken, and what is not there."""
    order = books.get(Order, number)
    assert order
    said = texts(page)
    to_go = trade.to_go(books, order)
    if not any(t.startswith(f"{sum(to_go.values())} to take") for t in said):
        yield f"pick list {number}: {sum(to_go.values())} to take is not said: {said[:6]}"
    for part, n in to_go.items():
        name = trade.name(books, part)
        at = said.index(name) if name in said else -1
        if at < 1 or said[at - 1] != f"{n} ×":
            yield f"pick list {number}: {n} × {name} is not said: {said}"
        there = trade.on_rack(books, part)
        near = said[at : at + 4]
        told = any(f"{there} there" in t or "none" in t for t in near)
        if there < n and not told:
            yield f"pick list {number}: only {there} of {name} there is not said: {near}"


def check_cart_list(books: Books, number: str, page: Page) -> Iterator[str]:
    """Tells packs that a cart's list lacks or says in vain."""
    on_it = {p.id for p in books.all(Pack) if p.state == "cart" and p.cart == number}
    said = {t for t in texts(page) if re.fullmatch(r"\d{5}", t)}
    if on_it and said != on_it:
        yield f"cart list {number}: {sorted(said)[:8]}, counted {sorted(on_it)[:8]}"
