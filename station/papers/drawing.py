"""The sheet and the part on paper, drawn from their records."""

import math
from collections.abc import Sequence

from reportlab.lib.units import mm

from station.papers.page import Page
from station.shop.facts import Placed, Revision, Shape

Points = Sequence[tuple[float, float]]


def sheet(page: Page, revision: Revision, x: float, y: float, width: float) -> float:
    """Draws a sheet `width` mm wide, its upper left at x, y; gives its height in mm."""
    scale = width / revision.length_mm
    height = revision.width_mm * scale
    page.box(x, y, width, height, line=0.25, fill=0.95)
    shapes = dict(revision.shapes)
    for piece in revision.placed:
        shape = shapes.get(piece.part)
        if shape:
            _piece(page, piece, shape, x, y + height, scale)
    for hx, hy in revision.hold_downs:
        wide, high = 46 * scale, 24 * scale
        top = min(max(y + height - hy * scale - high / 2, y), y + height - high)
        page.box(x + hx * scale - wide / 2, top, wide, high, line=0, fill=0.1)
    return height


def _piece(page: Page, piece: Placed, shape: Shape, left: float, low: float, scale: float) -> None:
    place = turned(piece, shape)
    loop(
        page,
        [(left + px * scale, low - py * scale) for px, py in place(shape.outline)],
        0.18,
        fill=1.0,
    )
    for hole in shape.holes:
        loop(page, [(left + px * scale, low - py * scale) for px, py in place(hole)], 0.08)
    page.canvas.setFillGray(0.25)
    for tx, ty in piece.tabs or place(shape.tabs):
        page.canvas.circle(
            (left + tx * scale) * mm,
            (page.height - low + ty * scale) * mm,
            min(0.45, 8 * scale) * mm,  # smaller on a small drawing
            stroke=0,
            fill=1,
        )


def loop(page: Page, points: Points, line: float, *, fill: float | None = None) -> None:
    """A closed line through points given in mm from the left and the top."""
    if not points:
        return
    path = page.canvas.beginPath()
    path.moveTo(points[0][0] * mm, (page.height - points[0][1]) * mm)
    for px, py in points[1:]:
        path.lineTo(px * mm, (page.height - py) * mm)
    path.close()
    page.canvas.setLineWidth(line * mm)
    page.canvas.setStrokeGray(0.25)
    if fill is not None:
        page.canvas.setFillGray(fill)
    page.canvas.drawPath(path, stroke=1, fill=0 if fill is None else 1)


class turned:  # noqa: N801 - used as a function
    """Puts a shape's points where its piece lies on the sheet (lower left at x_mm, y_mm)."""

    def __init__(self, piece: Placed, shape: Shape) -> None:
        angle = math.radians(piece.turn_deg)
        self.cos, self.sin, self.piece = math.cos(angle), math.sin(angle), piece
        corners = [self._one(p) for p in shape.outline] or [(0.0, 0.0)]
        self.left, self.low = min(c[0] for c in corners), min(c[1] for c in corners)

    def _one(self, point: tuple[float, float]) -> tuple[float, float]:
        px = -point[0] if self.piece.mirrored else point[0]
        return px * self.cos - point[1] * self.sin, px * self.sin + point[1] * self.cos

    def __call__(self, points: Points) -> list[tuple[float, float]]:
        """The points on the sheet, mm."""
        return [
            (self.piece.x_mm + x - self.left, self.piece.y_mm + y - self.low)
            for x, y in map(self._one, points)
        ]


def part(page: Page, shape: Shape, x: float, y: float, width: float, height: float) -> None:
    """A part's outline fitted into a box, its upper left at x, y."""
    long, wide = shape.box
    scale = min(width / max(long, 0.1), height / max(wide, 0.1))
    left, low = x + (width - long * scale) / 2, y + (height + wide * scale) / 2
    for n, points in enumerate((shape.outline, *shape.holes)):
        loop(
            page,
            [(left + px * scale, low - py * scale) for px, py in points],
            0.35 if n == 0 else 0.18,
        )
