"""The order list: what to order, how many, by when; a box to tick when it is done."""

from collections.abc import Sequence

from station.papers.page import Page, say_moment_in_full
from station.papers.spoken import join
from station.shop.file_requests import OrderRow
from station.shop.words import dated, figure, say

ROW = 13.0  # mm


def make_order_list(rows: Sequence[OrderRow], *, at: str, paper: str = "A4") -> Page:
    """Makes a row for each thing to order, the most urgent first; `at` tells of when they are."""
    page = Page.make(paper, say("Order list"))
    page.draw_text(page.edge, 20, say("To order"), 34, bold=True)
    page.draw_text(page.edge, 29, say("as of {time}", time=say_moment_in_full(at)), 12)
    y = 36.0
    for row in rows:
        if y + ROW > page.height - 8:
            page.turn_page()
            page.draw_text(page.edge, 11, say("Order list, further"), 11, bold=True)
            y = 16.0
        _draw_row(page, y, row)
        y += ROW
    page.draw_line(page.edge, y, page.right, y)
    if not rows:
        page.draw_text(page.edge, y + 8, say("Nothing is to be ordered soon."), 14, bold=True)
    return page


def _draw_row(page: Page, y: float, row: OrderRow) -> None:
    """Draws a box, how many of what, by when, and from what that follows."""
    page.draw_line(page.edge, y, page.right, y)
    page.draw_box(page.edge + 1, y + 3, 7, 7, line=0.4)
    left, by = page.edge + 12, say("by {day}", day=dated(row.by))
    wide = page.measure_text(by, 14, bold=True)
    page.draw_text(page.right, y + 6, by, 14, bold=True, side="right")
    page.draw_fitted(left, y + 6, page.right - wide - 4 - left, f"{row.quantity} × {row.what}", 14,
                     bold=True)  # fmt: skip
    lead = say("an order takes {n}", n=row.lead_days)
    if not row.lead_known:
        lead = say("{lead} (usual, not entered)", lead=lead)
    phrases = [lead]
    if row.lasts_days is not None:
        phrases.insert(0, say("lasts {n} worked days", n=figure(row.lasts_days)))
    if row.coming:
        phrases.append(say("{n} on {n|its|their} way", n=row.coming))
    cost = figure(row.price * row.quantity, 2)
    phrases.append(say("costs {n}", n=cost) if row.price else say("no price known"))
    said = join(*phrases)
    page.draw_fitted(left, y + 11, page.right - left, said, 10)
