"""The slips of a traveller: one for each sheet, torn off and gone with its parts."""

from station.papers.page import Page, code_width
from station.shop.codes import usable, write
from station.shop.facts import Batch

WIDE, HIGH = 66.0, 19.5  # mm, at least so wide
MARGIN = 4.0  # mm at the foot that a printer may leave white


def codes(batch: Batch) -> list[tuple[int, str]]:
    """Every sheet's slip; none for a child, it has no sheets of its own."""
    return [
        (n, write("batch", batch.id, batch.copy, n))
        for n in _sheets(batch)
        if usable("batch", batch.id, batch.copy, n)
    ]


def missing(batch: Batch) -> list[int]:
    """Sheets whose slip cannot be printed: its check character would be ``*``."""
    return [n for n in _sheets(batch) if not usable("batch", batch.id, batch.copy, n)]


def _sheets(batch: Batch) -> range:
    return range(1, 1 if batch.parent else batch.sheets + 1)


def across(page: Page) -> int:
    """Slips beside each other."""
    return int(page.width // WIDE)


def rows(page: Page, batch: Batch) -> int:
    """Rows of slips on the first page: three at most on A4, two on A5."""
    return min(-(-len(codes(batch)) // across(page)), 3 if page.large else 2)


def top(page: Page, batch: Batch) -> float:
    """Where the slips at the foot of the first page begin, mm."""
    high = rows(page, batch) * HIGH
    return page.height - high - (MARGIN if high else 3)


def first(page: Page, batch: Batch) -> None:
    """The slips at the foot of the first page."""
    some = codes(batch)[: rows(page, batch) * across(page)]
    if some:
        _lay(page, batch, some, top(page, batch))


def further(page: Page, batch: Batch) -> None:
    """Those that have no room there, on pages of their own."""
    rest = codes(batch)[rows(page, batch) * across(page) :]
    a_page = across(page) * int((page.height - 14 - MARGIN) // HIGH)
    while rest:
        page.turn()
        page.text(page.edge, 9, f"Slips of batch {batch.id}, copy {batch.copy}", 11, bold=True)
        _lay(page, batch, rest[:a_page], 14)
        rest = rest[a_page:]


def _lay(page: Page, batch: Batch, some: list[tuple[int, str]], begin: float) -> None:
    """Slips in rows with lines to tear along."""
    wide = page.width / across(page)
    for n, (sheet, code) in enumerate(some):
        x, y = n % across(page) * wide, begin + n // across(page) * HIGH
        page.line(x, y, x + wide, y, dash=True)
        if (n + 1) % across(page):  # the page ends at the last one
            page.line(x + wide, y, x + wide, y + HIGH, dash=True)
        words = f"B {batch.id} {batch.copy} · sheet {sheet} of {batch.sheets}"
        page.code(x + (wide - code_width(code)) / 2, y + 1.8, code, size=9, words=words)
    last = begin + -(-len(some) // across(page)) * HIGH
    page.line(0, last, page.width, last, dash=True)
