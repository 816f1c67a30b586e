"""The table to count by hand in, only when the screen is down."""

from collections.abc import Mapping
from typing import NamedTuple

from station.papers.page import Page
from station.papers.spoken import join, tell
from station.shop.facts import Batch, Part, Revision
from station.shop.words import Say, say

TALLEST = 18.0  # mm of a row
HEAD = 12.0  # mm from the top of the table to its first row
CUT, PIECES = say("cut"), say("pieces")
COLUMNS = (say("popped"), say("trimmed"), say("packed"), say("spoiled"))


class CountRow(NamedTuple):
    """One part: its number on the drawing, its words, its tabs, how many there are."""

    number: str
    name: str
    words: str
    tabs: str
    pieces: str


def make_rows(
    batch: Batch,
    revision: Revision,
    parts: Mapping[str, Part],
    pieces: Mapping[str, int],
    racks: Mapping[str, str],
) -> list[CountRow]:
    """Makes a row for every part a sheet makes; of a child for the pieces it holds.

    `racks` names the rack place of each part.
    """
    counts = pieces
    if batch.has_sheets:
        counts = {p: n * batch.sheets for p, n in revision.makes().items()}
    numbers = number_parts(revision)
    made = []
    for number, count in counts.items():
        part = parts.get(number)
        made.append(
            CountRow(
                str(numbers[number]) if batch.has_sheets else "",
                part.name if part else tell(say("part {part}", part=number)),
                _describe_part(part, racks) if part else "",
                str(part.tabs) if part else "",
                str(count),
            )
        )
    return made


def _describe_part(part: Part, racks: Mapping[str, str]) -> str:
    place = racks.get(part.id)
    return join(say("rack {number}", number=place), part.words) if place else part.words


def number_parts(revision: Revision) -> dict[str, int]:
    """Numbers the parts, on the drawing and in the table alike."""
    return {part: n for n, part in enumerate(revision.makes(), 1)}


def measure_table(page: Page, count: int) -> float:
    """Measures the height of a table of so many rows, mm."""
    return HEAD + count * _row_height(page)


def draw_table(
    page: Page, y: float, given: list[CountRow], low: float, held: Say = CUT
) -> list[CountRow]:
    """Draws the table from y down, not below `low`; gives the rows that had no room.

    `held` heads the column of how many there are: cut, or the pieces of a child.
    """
    high = _row_height(page)
    fits = max(0, int((low - y - HEAD) // high))
    here = given[:fits]
    if here and len(here) == len(given):  # what room is left is room to write
        high = min(TALLEST, max(high, (low - y - HEAD) / len(here)))
    _draw_heads(page, y, held, more=len(given) > fits)
    for n, row in enumerate(here):
        _draw_row(page, y + HEAD + n * high, row, high)
    bottom = y + HEAD + len(here) * high
    page.draw_line(page.edge, bottom, page.right, bottom)
    return given[fits:]


def _row_height(page: Page) -> float:
    """Gives a row's height, mm."""
    return 8.0 if page.is_large else 6.5


def _column_edges(page: Page) -> list[float]:
    """Lists where the columns to write in begin, and the right edge."""
    wide = 19.0 if page.is_large else 14.5
    return [page.right - n * wide for n in range(len(COLUMNS), -1, -1)]


def _draw_heads(page: Page, y: float, held: Say, *, more: bool) -> None:
    words = say("Count by hand only if the screen is down")
    said = join(words, say("more on a further page") if more else "")
    page.draw_fitted(page.edge, y + 4, page.inner, said, 10, bold=True)
    edges, size = _column_edges(page), 9 if page.is_large else 8
    page.draw_text(page.edge + 2, y + 10, say("part"), size, grey=0.3)
    page.draw_text(edges[0] - 15, y + 10, say("tabs"), size, grey=0.3, side="right")
    page.draw_text(edges[0] - 2, y + 10, held, size, grey=0.3, side="right")
    for column, x in zip(COLUMNS, edges, strict=False):
        page.draw_text(x + 1.5, y + 10, column, size, grey=0.3)


def _draw_row(page: Page, top: float, row: CountRow, high: float) -> None:
    edges, foot = _column_edges(page), top + high / 2 + 1.6
    page.draw_line(page.edge, top, page.right, top)
    left = page.edge + 2
    if row.number:
        page.draw_text(left, foot, row.number, 9, bold=True)
        left += 6
    _draw_part(page, left, foot, edges[0] - 24 - left, row)
    page.draw_text(edges[0] - 15, foot, row.tabs, 10, side="right")
    page.draw_text(edges[0] - 2, foot, row.pieces, 10, bold=True, side="right")
    for x in edges:
        page.draw_line(x, top, x, top + high)


def _draw_part(page: Page, x: float, y: float, room: float, row: CountRow) -> None:
    """Draws the part's mark in bold, as much of its words behind it as there is room for."""
    mark = min(room, page.measure_text(row.name, 10, bold=True))
    page.draw_fitted(x, y, mark, row.name, 10, bold=True)
    if room - mark > 12 and row.words:
        page.draw_fitted(x + mark + 1.5, y, room - mark - 1.5, row.words, 10)
