"""The sheet and the part on paper, drawn from their records; black on white."""

from collections.abc import Mapping

from station.papers.page import Page
from station.shop.facts import Placed, Revision, Shape
from station.shop.on_sheet import OnSheet, Points

NUMBER = 7.0  # points of a part's number on its pieces


def draw_sheet(
    page: Page,
    revision: Revision,
    x: float,
    y: float,
    width: float,
    numbers: Mapping[str, int] | None = None,
) -> float:
    """Draws a sheet `width` mm wide, its upper left at x, y; gives its height in mm.

    `numbers` stand on the pieces of a part: on every one that has the room, else on one.
    """
    scale = width / revision.length_mm
    height = revision.width_mm * scale
    page.draw_box(x, y, width, height, line=0.3, fill=0.93)
    shapes = dict(revision.shapes)
    for piece in revision.placed:
        shape = shapes.get(piece.part)
        if shape:
            _draw_piece(page, piece, shape, x, y + height, scale)
    for hx, hy in revision.hold_downs:
        wide, high = 46 * scale, 24 * scale
        top = min(max(y + height - hy * scale - high / 2, y), y + height - high)
        page.draw_box(x + hx * scale - wide / 2, top, wide, high, line=0, fill=0.1)
    _draw_numbers(page, revision, x, y + height, scale, numbers or {})
    return height


def _draw_piece(
    page: Page, piece: Placed, shape: Shape, left: float, low: float, scale: float
) -> None:
    place = OnSheet(piece, shape).place

    def on_paper(points: Points) -> Points:
        return [(left + px * scale, low - py * scale) for px, py in points]

    page.draw_loop(on_paper(place(shape.outline)), 0.18, fill=1.0)
    for hole in shape.holes:
        page.draw_loop(on_paper(place(hole)), 0.08)
    for tx, ty in on_paper(piece.tabs or place(shape.tabs)):
        page.draw_dot(tx, ty, min(0.45, 8 * scale), grey=0.25)  # smaller on a small drawing


def _draw_numbers(
    page: Page,
    revision: Revision,
    left: float,
    low: float,
    scale: float,
    numbers: Mapping[str, int],
) -> None:
    """Draws each part's number on a white ground, in the middle of its pieces."""
    shapes, done = dict(revision.shapes), set[str]()
    for piece in revision.placed:
        shape, number = shapes.get(piece.part), numbers.get(piece.part)
        if shape is None or number is None:
            continue
        box = _find_box(OnSheet(piece, shape).place(shape.outline))
        wide, high = (box[2] - box[0]) * scale, (box[3] - box[1]) * scale
        if piece.part in done and min(wide, high) < 4.5:
            continue
        done.add(piece.part)
        x, y = left + (box[0] + box[2]) / 2 * scale, low - (box[1] + box[3]) / 2 * scale
        ground = 1.8 if number < 10 else 3.0
        page.draw_box(x - ground / 2, y - 1.3, ground, 2.6, line=0, fill=1.0)
        page.draw_text(x, y + 0.9, str(number), NUMBER, bold=True, side="middle")


def _find_box(points: Points) -> tuple[float, float, float, float]:
    xs, ys = [p[0] for p in points] or [0.0], [p[1] for p in points] or [0.0]
    return min(xs), min(ys), max(xs), max(ys)


def draw_part(page: Page, shape: Shape, x: float, y: float, width: float, height: float) -> None:
    """Draws a part's outline, holes and tabs fitted into a box, its upper left at x, y."""
    long, wide = shape.box
    scale = min(width / max(long, 0.1), height / max(wide, 0.1))
    left, low = x + (width - long * scale) / 2, y + (height + wide * scale) / 2
    line = 0.5 if width > 40 else 0.3
    for n, points in enumerate((shape.outline, *shape.holes)):
        on_paper = [(left + px * scale, low - py * scale) for px, py in points]
        page.draw_loop(on_paper, line if n == 0 else line / 2, grey=0.0)
    for tx, ty in shape.tabs:
        page.draw_dot(left + tx * scale, low - ty * scale, min(0.9, width / 45))
