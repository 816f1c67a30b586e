"""The pick list: what to take from the rack for one order, in the order of the places."""

from collections.abc import Sequence
from typing import NamedTuple

from station.papers import drawing
from station.papers.page import Page, measure_code, say_moment
from station.papers.spoken import join
from station.shop.codes import has_code, write
from station.shop.facts import Order, Part
from station.shop.words import say


class PickRow(NamedTuple):
    """One part to take: where it lies, how many still to take, how many lie there."""

    part: Part
    place: str
    pieces: int
    there: int


def make_pick_list(
    order: Order, takes: Sequence[PickRow], *, printed: str, paper: str = "A4"
) -> Page:
    """Makes a row for each part, sorted by place: a box to tick, place and count in large."""
    page = Page.make(paper, say("Pick list of order {order}", order=order.id))
    y = _draw_head(page, order, sum(t.pieces for t in takes), printed)
    for take in sorted(takes, key=lambda t: t.place):
        if y + _row_height(page) > page.height - 6:
            page.turn_page()
            page.draw_text(
                page.edge, 11, say("Order {order}, more to take", order=order.id), 12, bold=True
            )
            y = 16.0
        _draw_row(page, y, take)
        y += _row_height(page)
    page.draw_line(page.edge, y, page.right, y)
    if not takes:
        page.draw_text(
            page.edge, y + 8, say("Nothing is left to take: close the pack."), 14, bold=True
        )
    return page


def _row_height(page: Page) -> float:
    """Gives a row's height, mm."""
    return 21.0 if page.is_large else 17.0


def _draw_head(page: Page, order: Order, count: int, printed: str) -> float:
    """Draws the order in large, its code, when it leaves, how many pieces."""
    page.draw_text(page.edge, 13, say("Order"), 11)
    room = page.inner
    if has_code("order", order.id):
        code = write("order", order.id)
        room -= measure_code(code)
        page.draw_code(page.right - measure_code(code), 8, code, height=14, size=11)
    page.draw_fitted(page.edge, 28, room, order.id, 42 if page.is_large else 32, bold=True)
    said = join(say("{n} to take", n=count), say("leaves {time}", time=say_moment(order.due)))
    page.draw_fitted(page.edge, 38, page.inner, said, 15, bold=True)
    foot = join(
        say("printed {time}", time=say_moment(printed)),
        say("scan each part at its place: the screen counts"),
    )
    page.draw_fitted(page.edge, 44, page.inner, foot, 10)
    return 48.0


def _draw_row(page: Page, y: float, take: PickRow) -> None:
    high, large = _row_height(page), page.is_large
    page.draw_line(page.edge, y, page.right, y)
    foot = y + high / 2 + 3.5
    page.draw_box(page.edge + 1, y + high / 2 - 4, 8, 8, line=0.5)
    left = page.edge + 13
    place = 42.0 if large else 32.0
    page.draw_fitted(left, foot, place - 3, take.place, 26 if large else 20, bold=True, least=12)
    left += place
    count = f"{take.pieces} ×"
    page.draw_text(left + 19, foot, count, 26 if large else 20, bold=True, side="right")
    left += 23
    picture = 38.0 if large else 24.0
    room = page.right - picture - 3 - left
    page.draw_fitted(left, y + high / 2 - 0.5, room, take.part.name, 15, bold=True)
    page.draw_fitted(left, y + high / 2 + 4.2, room, take.part.words, 10.5)
    if take.there < take.pieces:
        said = say("only {n} there", n=take.there)
        page.draw_fitted(left, y + high / 2 + 8.4, room, said, 10.5, bold=True)
    if take.part.shape:
        drawing.draw_part(
            page, take.part.shape, page.right - picture, y + 2.5, picture - 1, high - 5
        )
