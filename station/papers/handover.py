"""The handover sheet: what one shift leaves to the next."""

from collections.abc import Sequence
from typing import NamedTuple

from station.papers.page import Page, moment

Rows = Sequence[tuple[str, str]]  # in bold at the left, the rest of it


class Left(NamedTuple):
    """What stands on the sheet, each list in the order to go through it."""

    routers: Rows
    popping: Rows
    trimming: Rows
    bits: Rows
    looks: Rows


def handover(left: Left, *, worker: str, printed: str, paper: str = "A4") -> Page:
    """A list for each question; a short one says that there is nothing."""
    page = Page.of(paper, "Handover")
    page.text(page.edge, 20, "Handover", 34, bold=True)
    by = f" · by worker {worker}" if worker else ""
    page.text(page.edge, 29, f"{moment(printed)} {printed[:4]}{by}", 12)
    y = 36.0
    for words, rows, empty in (
        ("Routers", left.routers, "There is none."),
        ("At popping", left.popping, "Nothing waits."),
        ("At trimming", left.trimming, "Nothing waits."),
        ("Bits near their end", left.bits, "None."),
        ("Needs a look", left.looks, "Nothing."),
    ):
        y = _listed(page, y, words, rows or (("", empty),))
    _signed(page, y)
    return page


def _listed(page: Page, y: float, words: str, rows: Rows) -> float:
    """A title over its rows, on as many pages as they need; gives where the next begins."""
    y = _room(page, y, 18)
    page.text(page.edge, y + 5, words, 14, bold=True)
    y += 7.5
    for mark, rest in rows:
        y = _room(page, y, 7.5)
        page.line(page.edge, y, page.right, y, grey=0.5)
        bold = min(page.measure(mark, 11, bold=True), page.inner / 2)
        if mark:
            page.fitted(page.edge + 1, y + 5.2, bold, mark, 11, bold=True)
        start = page.edge + max(34.0, bold + 4) if mark else page.edge + 1
        page.fitted(start, y + 5.2, page.right - start, rest, 11)
        y += 7.5
    page.line(page.edge, y, page.right, y, grey=0.5)
    return y + 5


def _signed(page: Page, y: float) -> None:
    """Room for a word, and for both to sign by their numbers."""
    y = _room(page, y, 34)
    page.text(page.edge, y + 5, "To say", 14, bold=True)
    high = max(10.0, min(40.0, page.height - 24 - y - 8))
    page.box(page.edge, y + 7.5, page.inner, high, line=0.2)
    half = (page.inner - 3) / 2
    for n, words in enumerate(("hands over: worker, time", "takes over: worker, time")):
        x, top = page.edge + n * (half + 3), y + 7.5 + high + 2.5
        page.box(x, top, half, 12, line=0.2)
        page.text(x + 2, top + 4, words, 9, grey=0.3)


def _room(page: Page, y: float, high: float) -> float:
    """Where `high` mm have room: here, or at the top of a further page."""
    if y + high <= page.height - 8:
        return y
    page.turn()
    page.text(page.edge, 11, "Handover, further", 11, bold=True)
    return 16.0
