"""The pack's label and the cart's list."""

from collections.abc import Iterable, Mapping

from station.papers.page import LEGIBLE, MOST_LINES, Page, measure_code, write_day, write_moment
from station.shop.cautions import CAUTIONS
from station.shop.codes import write
from station.shop.facts import Cart, Order, Pack, Part, Product, Shop
from station.shop.words import say

LABEL = (100.0, 50.0)  # mm
ROW = 19.0  # mm, a pack in a list


def make_pack_label(pack: Pack, order: Order, parts: Mapping[str, Part], *, printed: str) -> Page:
    """Makes a label of 100 × 50 mm: order, what is inside, what is owed, the pack's code."""
    page = Page(*LABEL, f"Pack {pack.id}")
    page.draw_text(5, 6.5, "Order", 9)
    page.draw_fitted(5, 16, 48, order.id, 28, bold=True)
    page.draw_text(95, 6.5, f"leaves {write_day(order.due)}", 10, side="right")
    page.draw_text(95, 11.5, write_weight(pack), 10, side="right")
    _draw_contents(page, [f"{n} × {parts[p].name if p in parts else p}" for p, n in pack.contents])
    short = sum(line.short for line in order.lines)
    if short:
        page.draw_text(95, 17, f"{short} owed", 12, bold=True, side="right")
    _draw_number(page, pack, printed)
    return page


def make_shelf_card(
    pack: Pack, product: Product, parts: Mapping[str, Part], *, printed: str
) -> Page:
    """Makes the card, 100 × 50 mm, of a pack on the shelf: what it is, where it lies."""
    page = Page(*LABEL, f"Pack {pack.id} for the shelf")
    page.draw_text(5, 6.5, "For the shelf", 9)
    page.draw_fitted(5, 16, 60, product.name, 24, bold=True)
    if product.place:
        page.draw_text(95, 6.5, "Place", 9, side="right")
        page.draw_fitted(67, 16, 28, product.place, 20, bold=True)
    page.draw_text(95, 20.5, write_weight(pack), 10, side="right")
    _draw_contents(page, [f"{n} × {parts[p].name if p in parts else p}" for p, n in pack.contents])
    _draw_number(page, pack, printed)
    return page


def _draw_number(page: Page, pack: Pack, printed: str) -> None:
    """Draws a pack's code and number, which copy it is and when it was packed."""
    page.draw_code(1.3, 29.5, write("pack", pack.id), height=14, size=10)
    page.draw_text(95, 38, "Pack", 9, side="right")
    page.draw_text(95, 44, pack.id, 16, bold=True, side="right")
    copy = f"copy {pack.copies} · " if pack.copies > 1 else ""
    page.draw_text(95, 48, f"{copy}packed {write_moment(pack.closed or printed)}", 8, side="right")


def write_weight(pack: Pack) -> str:
    """Writes what a pack weighs: as weighed, about what it should, or nothing if unknown."""
    if pack.scale_g:
        return f"{pack.scale_g:.0f} g"
    return f"about {pack.mass_g:.0f} g" if pack.mass_g else ""


def _draw_contents(page: Page, inside: list[str]) -> None:
    """Draws the contents in two lines, smaller where there are many; says what is left out."""
    for size in (10.0, LEGIBLE):
        if len(page.break_lines(90, ", ".join(inside), size)) <= 2:
            page.draw_wrapped(5, 22.5, 90, ", ".join(inside), size)
            return
    shown = len(inside)
    words = ""
    while shown and (not words or len(page.break_lines(90, words, LEGIBLE)) > 2):
        shown -= 1
        words = f"{', '.join(inside[:shown])} and {len(inside) - shown} more, see the order"
    page.draw_wrapped(5, 22.5, 90, words, LEGIBLE)


def make_cart_list(
    cart: Cart, packs: Iterable[Pack], *, printed: str, shop: Shop, paper: str = "A4"
) -> Page:
    """Makes the list of every pack on a cart, to go with it; a box to tick at the door."""
    page = Page.make(paper, f"List of {cart.name}")
    rows = tuple(packs)
    y = _draw_head(page, cart, len(rows), printed)
    care = f"{CAUTIONS['cart'].line} {shop.caution}"
    y = page.draw_wrapped(page.edge, y, page.inner, care, 9, most=MOST_LINES) + 5
    for n, pack in enumerate(rows):
        if y > page.height - ROW - 4:
            page.turn_page()
            page.draw_text(page.edge, 10, f"{cart.name}, more packs", 11, bold=True)
            y = 14.0
        _draw_pack(page, y, n + 1, pack)
        y += ROW
    page.draw_line(page.edge, y, page.right, y)
    return page


def _draw_pack(page: Page, y: float, number: int, pack: Pack) -> None:
    """Draws one pack: its number, its order, its mass, its code."""
    page.draw_line(page.edge, y, page.right, y)
    page.draw_box(page.edge + 1, y + 6, 6, 6, line=0.4)
    page.draw_text(page.edge + 16, y + 11, str(number), 10, grey=0.3, side="right")
    left = page.edge + 20
    page.draw_text(left, y + 11, pack.id, 18, bold=True)
    code = write("pack", pack.id)
    bars_at = page.right - measure_code(code)
    page.draw_fitted(
        left,
        y + 16.5,
        bars_at - left,
        f"order {pack.order} · {write_weight(pack)}".rstrip(" ·"),
        10,
    )
    page.draw_code(bars_at, y + 1.5, code, size=8)


def _draw_head(page: Page, cart: Cart, count: int, printed: str) -> float:
    code = write("cart", cart.id)
    bars_at = page.right - measure_code(code)
    page.draw_fitted(page.edge, 17, bars_at - page.edge - 2, cart.name, 26, bold=True)
    words = f"{say('{n} {n|pack|packs}', n=count)} · printed {write_moment(printed)}"
    page.draw_fitted(page.edge, 24, bars_at - page.edge - 2, words, 11)
    page.draw_code(bars_at, 8, code)
    return 30.0
