"""The order list: what to order, how many, by when; a box to tick when it is done."""

from collections.abc import Sequence

from station.papers.page import Page, write_moment
from station.shop.file_requests import OrderRow
from station.shop.words import dated

ROW = 13.0  # mm


def make_order_list(rows: Sequence[OrderRow], *, printed: str, paper: str = "A4") -> Page:
    """Makes a row for each thing to order, the most urgent first."""
    page = Page.make(paper, "Order list")
    page.draw_text(page.edge, 20, "To order", 34, bold=True)
    page.draw_text(page.edge, 29, f"as of {write_moment(printed)} {printed[:4]}", 12)
    y = 36.0
    for row in rows:
        if y + ROW > page.height - 8:
            page.turn_page()
            page.draw_text(page.edge, 11, "Order list, further", 11, bold=True)
            y = 16.0
        _draw_row(page, y, row)
        y += ROW
    page.draw_line(page.edge, y, page.right, y)
    if not rows:
        page.draw_text(page.edge, y + 8, "Nothing is to be ordered soon.", 14, bold=True)
    return page


def _draw_row(page: Page, y: float, row: OrderRow) -> None:
    """Draws a box, how many of what, by when, and from what that follows."""
    page.draw_line(page.edge, y, page.right, y)
    page.draw_box(page.edge + 1, y + 3, 7, 7, line=0.4)
    left, by = page.edge + 12, f"by {dated(row.by)}"
    wide = page.measure_text(by, 14, bold=True)
    page.draw_text(page.right, y + 6, by, 14, bold=True, side="right")
    page.draw_fitted(left, y + 6, page.right - wide - 4 - left, f"{row.quantity} × {row.what}", 14,
                     bold=True)  # fmt: skip
    known = "" if row.lead_known else " (usual, not entered)"
    said = f"lasts {row.lasts_days:g} worked days · an order takes {row.lead_days}{known}"
    page.draw_fitted(left, y + 11, page.right - left, said, 10)
