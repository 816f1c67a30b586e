"""The handover sheet: what one shift leaves to the next."""

from collections.abc import Sequence
from typing import NamedTuple

from station.papers.page import MOST_LINES, Page, say_moment_in_full
from station.papers.spoken import Text, join, tell_caution
from station.shop.cautions import CAUTIONS
from station.shop.facts import Shop
from station.shop.words import say

Rows = Sequence[tuple[Text, Text]]  # in bold at the left, the rest of it


class ShiftLeft(NamedTuple):
    """What stands on the sheet, each list in the order to go through it."""

    routers: Rows
    popping: Rows
    trimming: Rows
    packs: Rows
    bits: Rows
    looks: Rows


def make_handover(
    left: ShiftLeft,
    *,
    worker: str,
    printed: str,
    shop: Shop,
    paper: str = "A4",
    witness: str = "",
) -> Page:
    """Makes a list for each question; a short one says that there is nothing.

    `witness` tells where the history ends: kept away from the PC it proves what came before.
    """
    page = Page.make(paper, say("Handover"))
    page.draw_text(page.edge, 20, say("Handover"), 34, bold=True)
    by = say("by worker {worker}", worker=worker) if worker else ""
    ends = say("history to {witness}", witness=witness) if witness else ""
    head = join(say_moment_in_full(printed), by, ends)
    page.draw_fitted(page.edge, 29, page.inner, head, 12)
    care = join(CAUTIONS["paper_shift"].line, tell_caution(shop), by=" ")
    y = page.draw_wrapped(page.edge, 35.0, page.inner, care, 9, most=MOST_LINES) + 5
    for words, rows, empty in (
        (say("Routers"), left.routers, say("There is none.")),
        (say("At popping"), left.popping, say("Nothing waits.")),
        (say("At trimming"), left.trimming, say("Nothing waits.")),
        (say("Open packs"), left.packs, say("None.")),
        (say("Bits near their end"), left.bits, say("None.")),
        (say("Needs a look"), left.looks, say("Nothing.")),
    ):
        y = _draw_list(page, y, words, rows or (("", empty),))
    _draw_signatures(page, y)
    return page


def _draw_list(page: Page, y: float, words: Text, rows: Rows) -> float:
    """Draws a title over its rows, on as many pages as they need; gives where the next begins."""
    y = _find_room(page, y, 18)
    page.draw_text(page.edge, y + 5, words, 14, bold=True)
    y += 7.5
    for mark, rest in rows:
        y = _find_room(page, y, 7.5)
        page.draw_line(page.edge, y, page.right, y, grey=0.5)
        bold = min(page.measure_text(mark, 11, bold=True), page.inner / 2)
        if mark:
            page.draw_fitted(page.edge + 1, y + 5.2, bold, mark, 11, bold=True)
        start = page.edge + max(34.0, bold + 4) if mark else page.edge + 1
        page.draw_fitted(start, y + 5.2, page.right - start, rest, 11)
        y += 7.5
    page.draw_line(page.edge, y, page.right, y, grey=0.5)
    return y + 5


def _draw_signatures(page: Page, y: float) -> None:
    """Draws room for a word, and for both to sign by their numbers."""
    y = _find_room(page, y, 34)
    page.draw_text(page.edge, y + 5, say("To say"), 14, bold=True)
    high = max(10.0, min(40.0, page.height - 24 - y - 8))
    page.draw_box(page.edge, y + 7.5, page.inner, high, line=0.2)
    half = (page.inner - 3) / 2
    for n, words in enumerate((say("hands over: worker, time"), say("takes over: worker, time"))):
        x, top = page.edge + n * (half + 3), y + 7.5 + high + 2.5
        page.draw_box(x, top, half, 12, line=0.2)
        page.draw_text(x + 2, top + 4, words, 9, grey=0.3)


def _find_room(page: Page, y: float, high: float) -> float:
    """Finds where `high` mm have room: here, or at the top of a further page."""
    if y + high <= page.height - 8:
        return y
    page.turn_page()
    page.draw_text(page.edge, 11, say("Handover, further"), 11, bold=True)
    return 16.0
