"""The table to count by hand in, only when the screen is down."""

from collections.abc import Mapping
from typing import NamedTuple

from station.papers.page import Page
from station.shop.facts import Batch, Part, Revision

EDGE = 11.0  # mm left and right
HEAD = 12.0  # mm from the top of the table to its first row
COLUMNS = ("popped", "trimmed", "packed", "spoiled")


class Row(NamedTuple):
    """One part: its words, its tabs and how many were cut, as printed."""

    words: str
    tabs: str
    cut: str


def rows(batch: Batch, revision: Revision, parts: Mapping[str, Part]) -> list[Row]:
    """A row for every part a sheet makes; how many a child holds is not on paper."""
    made = []
    for number, count in revision.makes().items():
        part = parts.get(number)
        made.append(
            Row(
                f"{part.name} {part.words}" if part else f"part {number}",
                str(part.tabs) if part else "",
                "" if batch.parent else str(count * batch.sheets),
            )
        )
    return made


def height(page: Page, count: int) -> float:
    """The height of a table of so many rows, mm."""
    return HEAD + count * _high(page)


def draw(page: Page, y: float, given: list[Row], low: float) -> list[Row]:
    """The table from y down, not below `low`; gives the rows that had no room."""
    high = _high(page)
    fits = max(0, int((low - y - HEAD) // high))
    here = given[:fits]
    _title(page, y, more=len(given) > fits)
    for n, row in enumerate(here):
        _row(page, y + HEAD + n * high, row, high)
    bottom = y + HEAD + len(here) * high
    page.line(EDGE, bottom, page.width - EDGE, bottom)
    return given[fits:]


def _high(page: Page) -> float:
    """A row's height, mm."""
    return 8.0 if page.width > 180 else 6.5


def _edges(page: Page) -> list[float]:
    """Where the columns to write in begin, and the right edge."""
    wide = 19.0 if page.width > 180 else 14.5
    return [page.width - EDGE - n * wide for n in range(len(COLUMNS), -1, -1)]


def _title(page: Page, y: float, *, more: bool) -> None:
    words = "Count by hand only if the screen is down"
    page.text(EDGE, y + 4, words + (" · more on a further page" if more else ""), 10, bold=True)
    edges, size = _edges(page), 9 if page.width > 180 else 8
    page.text(EDGE + 2, y + 10, "part", size, grey=0.35)
    page.text(edges[0] - 14, y + 10, "tabs", size, grey=0.35, right=True)
    page.text(edges[0] - 2, y + 10, "cut", size, grey=0.35, right=True)
    for words, x in zip(COLUMNS, edges, strict=False):
        page.text(x + 1.5, y + 10, words, size, grey=0.35)


def _row(page: Page, top: float, row: Row, high: float) -> None:
    edges, foot = _edges(page), top + high - 2.4
    page.line(EDGE, top, page.width - EDGE, top)
    page.fitted(EDGE + 2, foot, edges[0] - EDGE - 25, row.words, 10)
    page.text(edges[0] - 14, foot, row.tabs, 10, right=True)
    page.text(edges[0] - 2, foot, row.cut, 10, right=True)
    for x in edges:
        page.line(x, top, x, top + high)
