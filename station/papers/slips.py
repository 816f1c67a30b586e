"""The slips of a traveller: one for each sheet, torn off and gone with its parts."""

from station.papers.page import Page, measure_code
from station.shop.codes import usable, write
from station.shop.facts import Batch
from station.shop.words import say

WIDE, HIGH = 66.0, 19.5  # mm, at least so wide
MARGIN = 4.0  # mm at the foot that a printer may leave white


def list_codes(batch: Batch) -> list[tuple[int, str]]:
    """Lists every sheet's slip; none for a child, it has no sheets of its own."""
    return [
        (n, write("batch", batch.id, batch.copy, n))
        for n in _list_sheets(batch)
        if usable("batch", batch.id, batch.copy, n)
    ]


def list_missing(batch: Batch) -> list[int]:
    """Lists sheets whose slip cannot be printed: its check character would be ``*``."""
    return [n for n in _list_sheets(batch) if not usable("batch", batch.id, batch.copy, n)]


def _list_sheets(batch: Batch) -> range:
    return range(1, batch.sheets + 1 if batch.has_sheets else 1)


def count_across(page: Page) -> int:
    """Counts the slips beside each other."""
    return int(page.width // WIDE)


def count_rows(page: Page, batch: Batch) -> int:
    """Counts the rows of slips on the first page: three at most on A4, two on A5."""
    return min(-(-len(list_codes(batch)) // count_across(page)), 3 if page.is_large else 2)


def find_top(page: Page, batch: Batch) -> float:
    """Finds where the slips at the foot of the first page begin, mm."""
    high = count_rows(page, batch) * HIGH
    return page.height - high - (MARGIN if high else 3)


def draw_first(page: Page, batch: Batch) -> None:
    """Draws the slips at the foot of the first page."""
    some = list_codes(batch)[: count_rows(page, batch) * count_across(page)]
    if some:
        _draw_rows(page, batch, some, find_top(page, batch))


def draw_further(page: Page, batch: Batch) -> None:
    """Draws those that have no room there, on pages of their own."""
    rest = list_codes(batch)[count_rows(page, batch) * count_across(page) :]
    a_page = count_across(page) * int((page.height - 14 - MARGIN) // HIGH)
    while rest:
        page.turn_page()
        page.draw_text(
            page.edge,
            9,
            say("Slips of batch {batch}, copy {copy}", batch=batch.id, copy=batch.copy),
            11,
            bold=True,
        )
        _draw_rows(page, batch, rest[:a_page], 14)
        rest = rest[a_page:]


def _draw_rows(page: Page, batch: Batch, some: list[tuple[int, str]], begin: float) -> None:
    """Draws slips in rows with lines to tear along."""
    wide = page.width / count_across(page)
    for n, (sheet, code) in enumerate(some):
        x, y = n % count_across(page) * wide, begin + n // count_across(page) * HIGH
        page.draw_line(x, y, x + wide, y, dash=True)
        if (n + 1) % count_across(page):  # the page ends at the last one
            page.draw_line(x + wide, y, x + wide, y + HIGH, dash=True)
        words = say(
            "B {batch} {copy} · sheet {sheet} of {sheets}",
            batch=batch.id,
            copy=batch.copy,
            sheet=sheet,
            sheets=batch.sheets,
        )
        page.draw_code(x + (wide - measure_code(code)) / 2, y + 1.8, code, size=9, words=words)
    last = begin + -(-len(some) // count_across(page)) * HIGH
    page.draw_line(0, last, page.width, last, dash=True)
