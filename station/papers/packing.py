"""The pack's label and the cart's list."""

from collections.abc import Iterable, Mapping

from station.papers.page import (
    LEADING,
    LEGIBLE,
    MM,
    MOST_LINES,
    Page,
    measure_code,
    say_day,
    say_moment,
)
from station.papers.spoken import Text, join, tell, tell_caution
from station.shop.cautions import CAUTIONS
from station.shop.codes import write
from station.shop.facts import LABEL, LABELS, Cart, Order, Pack, Part, Product, Shop
from station.shop.words import Say, mass, say

ROW = 19.0  # mm, a pack in a list
MARGIN = 3.0  # mm, white above the code
BODY = 22.5  # mm, where the contents begin
NARROW = 90.0  # mm; on a narrower label the last line stands below the code
TALL = 90.0  # mm; a higher label has larger words, and bars for a scanner that is farther off


def _begin(size: str, title: Text) -> Page:
    """Begins a label of one of the sizes; the first where it is not known."""
    return Page(*LABELS.get(size, LABELS[LABEL]), title)


def make_pack_label(
    pack: Pack, order: Order, parts: Mapping[str, Part], *, printed: str, size: str = LABEL
) -> Page:
    """Makes a pack's label: order, what is inside, what is owed, the pack's code."""
    page = _begin(size, say("Pack {pack}", pack=pack.id))
    right = page.width - 5
    page.draw_fitted(5, 6.5, page.width * 0.45, join(say("Order"), pack.say_nth()), 9)
    page.draw_fitted(5, 16, page.width * 0.48, order.id, 28, bold=True)
    leaves = say("leaves {day}", day=say_day(order.due))
    page.draw_text(right, 6.5, leaves, 10, side="right")
    page.draw_text(right, 11.5, say_weight(pack), 10, side="right")
    _draw_contents(page, _list_inside(pack, parts))
    short = sum(line.short for line in order.lines)
    if short:
        page.draw_text(right, 17, say("{n} owed", n=short), 12, bold=True, side="right")
    _draw_number(page, pack, printed)
    return page


def make_shelf_card(
    pack: Pack, product: Product, parts: Mapping[str, Part], *, printed: str, size: str = LABEL
) -> Page:
    """Makes the card of a pack on the shelf, as large as a label: what it is, where it lies."""
    page = _begin(size, say("Pack {pack} for the shelf", pack=pack.id))
    right = page.width - 5
    page.draw_text(5, 6.5, say("For the shelf"), 9)
    page.draw_fitted(5, 16, page.width * 0.6, product.name, 24, bold=True)
    if product.place:
        page.draw_text(right, 6.5, say("Place"), 9, side="right")
        page.draw_fitted(right, 16, page.width * 0.28, product.place, 20, bold=True, side="right")
    page.draw_text(right, 20.5, say_weight(pack), 10, side="right")
    _draw_contents(page, _list_inside(pack, parts))
    _draw_number(page, pack, printed)
    return page


def _list_inside(pack: Pack, parts: Mapping[str, Part]) -> list[str]:
    return [f"{n} × {parts[p].name if p in parts else p}" for p, n in pack.contents]


def _find_foot(page: Page) -> float:
    """Finds where the pack's code and number begin, mm."""
    return page.height - (31.0 if page.height > TALL else 20.5)


def _draw_number(page: Page, pack: Pack, printed: str) -> None:
    """Draws a pack's code and number, which copy it is and when it was packed."""
    top, right, narrow = _find_foot(page), page.width - 5, page.width < NARROW
    high = page.height - top - (8.5 if narrow else 6.5)
    page.draw_code(1.3, top, write("pack", pack.id), height=high, size=10)
    last = page.height - (1.2 if narrow else 2.0)
    up = last - 4.0 - (3.8 if narrow else 0.0)
    page.draw_text(right, up - 6.0, say("Pack"), 9, side="right")
    page.draw_text(right, up, pack.id, 16, bold=True, side="right")
    packed = say("packed {time}", time=say_moment(pack.closed or printed))
    copy = say("copy {copy}", copy=pack.copies) if pack.copies > 1 else ""
    page.draw_text(right, last, join(copy, packed), 8, side="right")


def say_weight(pack: Pack) -> Say:
    """Says what a pack weighs: as weighed, about what it should, or nothing if unknown."""
    if pack.scale_g:
        return say("{g} g", g=mass(pack.scale_g))
    return say("about {g} g", g=mass(pack.mass_g)) if pack.mass_g else Say()


def _draw_contents(page: Page, inside: list[str]) -> None:
    """Draws the contents: a line each where there is room, smaller where there are many.

    What has no room is counted, and told where it stands.
    """
    for size in (20.0, 16.0, 12.0, 10.0):
        if len(inside) <= _count_lines(page, size) and _is_narrower(page, inside, size):
            _draw_lines(page, inside, size)
            return
    for size in (10.0, LEGIBLE):
        lines = _break_between(page, inside, size)
        if len(lines) <= _count_lines(page, size):
            _draw_lines(page, lines, size)
            return
    shown = len(inside)
    while len(lines) > _count_lines(page, LEGIBLE) and shown:
        shown -= 1
        rest = tell(say("and {n} more, see the order", n=len(inside) - shown))
        lines = _break_between(page, [*inside[:shown], rest], LEGIBLE)
    _draw_lines(page, lines, LEGIBLE)


def _count_lines(page: Page, size: float) -> int:
    """Counts the lines of a size that the contents have room for."""
    room = _find_foot(page) - MARGIN - BODY
    return 1 + int(room // (size * LEADING / MM))


def _is_narrower(page: Page, lines: list[str], size: float) -> bool:
    return all(page.measure_text(line, size) <= page.width - 10 for line in lines)


def _break_between(page: Page, inside: list[str], size: float) -> list[str]:
    """Breaks the contents into lines, between two parts: none is torn from its count."""
    lines = [""]
    for part in inside:
        longer = f"{lines[-1]}, {part}".removeprefix(", ")
        if lines[-1] and page.measure_text(longer, size) > page.width - 10:
            lines.append(part)
        else:
            lines[-1] = longer
    return lines


def _draw_lines(page: Page, lines: list[str], size: float) -> None:
    first = BODY + max(0.0, size - 12) / MM  # the foot of a larger line is lower
    for n, line in enumerate(lines):
        page.draw_fitted(5, first + n * size * LEADING / MM, page.width - 10, line, size)


def make_cart_list(
    cart: Cart, packs: Iterable[Pack], *, printed: str, shop: Shop, paper: str = "A4"
) -> Page:
    """Makes the list of every pack on a cart, to go with it; a box to tick at the door."""
    page = Page.make(paper, say("List of {cart}", cart=cart.name))
    rows = tuple(packs)
    y = _draw_head(page, cart, len(rows), printed)
    care = join(CAUTIONS["cart"].line, tell_caution(shop), by=" ")
    y = page.draw_wrapped(page.edge, y, page.inner, care, 9, most=MOST_LINES) + 5
    for n, pack in enumerate(rows):
        if y > page.height - ROW - 4:
            page.turn_page()
            page.draw_text(page.edge, 10, say("{cart}, more packs", cart=cart.name), 11, bold=True)
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
        join(say("order {order}", order=pack.order), pack.say_nth(), say_weight(pack)),
        10,
    )
    page.draw_code(bars_at, y + 1.5, code, size=8)


def _draw_head(page: Page, cart: Cart, count: int, printed: str) -> float:
    code = write("cart", cart.id)
    bars_at = page.right - measure_code(code)
    page.draw_fitted(page.edge, 17, bars_at - page.edge - 2, cart.name, 26, bold=True)
    packs, at = say("{n} {n|pack|packs}", n=count), say_moment(printed)
    words = join(packs, say("printed {time}", time=at))
    page.draw_fitted(page.edge, 24, bars_at - page.edge - 2, words, 11)
    page.draw_code(bars_at, 8, code)
    return 30.0
