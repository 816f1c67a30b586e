"""The pack's label and the cart's list."""

from collections.abc import Iterable, Mapping

from station.papers.page import Page, code_width, day
from station.shop.codes import write
from station.shop.facts import Cart, Order, Pack, Part
from station.shop.words import say

LABEL = (100.0, 50.0)


def pack_label(pack: Pack, order: Order, parts: Mapping[str, Part], *, printed: str) -> bytes:
    """A label of 100 × 50 mm: order, what is inside, the pack's code."""
    page = Page(*LABEL, f"Pack {pack.id}")
    page.text(5, 8, "Order", 9)
    page.text(5, 18, order.id, 26, bold=True)
    page.text(95, 8, f"leaves {day(order.due)}", 10, right=True)
    page.text(95, 13, weight_of(pack), 10, right=True)
    inside = [f"{n} × {parts[p].name if p in parts else p}" for p, n in pack.contents]
    _inside(page, inside)
    short = sum(line.short for line in order.lines)
    if short:
        page.text(95, 18, f"{short} owed", 11, bold=True, right=True)
    code = write("pack", pack.id)
    page.code(3, 31, code, dots=3, height=10, size=9)
    closed = pack.closed or printed
    page.text(95, 47, f"packed {day(closed)} {closed[11:16]}", 8, right=True)
    if pack.copies > 1:
        page.text(95, 43, f"copy {pack.copies}", 8, right=True)
    return page.pdf()


def weight_of(pack: Pack) -> str:
    """What a pack weighs: as weighed, about what it should, or nothing where nobody knows."""
    if pack.scale_g:
        return f"{pack.scale_g:.0f} g"
    return f"about {pack.mass_g:.0f} g" if pack.mass_g else ""


def _inside(page: Page, inside: list[str]) -> None:
    """What is in the pack in two lines, smaller where there is much; what is left out is said."""
    for size in (9.0, 7.0):
        if len(page.lines(90, ", ".join(inside), size)) <= 2:
            page.wrapped(5, 25, 90, ", ".join(inside), size)
            return
    shown = len(inside)
    words = ""
    while shown and (not words or len(page.lines(90, words, 7.0)) > 2):
        shown -= 1
        words = f"{', '.join(inside[:shown])} and {len(inside) - shown} more, see the order"
    page.wrapped(5, 25, 90, words, 7.0)


def cart_list(cart: Cart, packs: Iterable[Pack], *, printed: str, paper: str = "A4") -> bytes:
    """Every pack on a cart, to go with it."""
    page = Page.of(paper, f"List of {cart.name}")
    rows = tuple(packs)
    y = _head(page, cart, len(rows), printed)
    for n, pack in enumerate(rows):
        if y > page.height - 22:
            page.turn()
            y = 14.0
        page.line(11, y, page.width - 11, y)
        page.text(13, y + 9, str(n + 1), 10)
        page.text(24, y + 9, pack.id, 14, bold=True)
        page.text(48, y + 9, f"order {pack.order}", 11)
        page.text(page.width - 62, y + 9, weight_of(pack), 10, right=True)
        code = write("pack", pack.id)
        page.code(page.width - 11 - code_width(code), y + 1.5, code, height=7, size=7)
        y += 15
    return page.pdf()


def _head(page: Page, cart: Cart, count: int, printed: str) -> float:
    page.text(11, 16, cart.name, 22, bold=True)
    page.text(
        11,
        23,
        f"{say('{n} {n|pack|packs}', n=count)} · printed {day(printed)} {printed[11:16]}",
        10,
    )
    code = write("cart", cart.id)
    page.code(page.width - 11 - code_width(code), 8, code, height=9)
    page.text(11, 29, "Push, never pull; see over the load. Local rules come first.", 8.5)
    return 34.0
