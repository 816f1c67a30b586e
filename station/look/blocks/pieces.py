"""What comes off a sheet, drawn in mm: pieces with holes, recesses and tabs, slugs, marks."""

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF, QTransform

from station.look import style
from station.look.style import palette, px, tone_colour
from station.shop.faces import NumberMark
from station.shop.facts import Loop, Placed, Recess, Revision, Shape
from station.shop.on_sheet import OnSheet, Points

KEPT = 8  # sheets whose pieces are kept turned
SHADES = (0.14, 0.5)  # how dark a recess is: the shallowest, one as deep as the sheet
PLATE = 0.75  # of the paper under a number: lines may cross there
ROUND = 13  # px, half of a mark
DOT = 5  # px, a mark that another would cover
DEEP_MM = 6.0  # of a recess that is drawn darkest


class DrawnPiece(NamedTuple):
    """A piece as it lies on the sheet, mm: what it is of, its edge, holes, recesses, tabs."""

    part: str
    edge: QPolygonF
    holes: QPainterPath
    recesses: tuple[tuple[QPainterPath, float], ...]  # with their depth, mm
    tabs: tuple[QPointF, ...]


@lru_cache(maxsize=KEPT)
def place_pieces(revision: Revision) -> tuple[DrawnPiece, ...]:
    """Places every piece of a sheet; turning them takes longer than drawing them."""
    shapes = dict(revision.shapes)
    return tuple(
        _place_piece(piece, shapes[piece.part])
        for piece in revision.placed
        if piece.part in shapes
    )


def _place_piece(piece: Placed, shape: Shape) -> DrawnPiece:
    lies, holes = OnSheet(piece, shape), QPainterPath()
    for hole in shape.holes:
        _add_ring(holes, lies.place(hole))
    edge = QPolygonF([QPointF(*p) for p in lies.place(shape.outline)])
    recesses = tuple((draw_recess(r, lies), r.depth_mm) for r in shape.recesses)
    tabs = piece.tabs or lies.place(shape.tabs)
    return DrawnPiece(piece.part, edge, holes, recesses, tuple(QPointF(*p) for p in tabs))


def draw_recess(recess: Recess, lies: OnSheet) -> QPainterPath:
    """Makes the path of a recess: its outline, its islands left out."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.OddEvenFill)
    for ring in (recess.outline, *recess.islands):
        _add_ring(path, lies.place(ring))
    return path


def _add_ring(path: QPainterPath, ring: Points) -> None:
    path.addPolygon(QPolygonF([QPointF(*p) for p in ring]))
    path.closeSubpath()


def shade_recess(depth_mm: float) -> QColor:
    """Makes the colour of a recess: the deeper, the darker."""
    least, most = SHADES
    colour = QColor(palette().ink)
    colour.setAlphaF(least + (most - least) * min(depth_mm / DEEP_MM, 1.0))
    return colour


class PiecePens(NamedTuple):
    """The pens and brushes that a sheet's pieces are drawn with."""

    strongly: QPen
    cut_edge: QPen
    edge: QPen
    hole: QPen
    flying: QPen
    cut_piece: QColor
    to_come: QColor
    waste: QColor

    @classmethod
    def of_palette(cls) -> "PiecePens":
        """Makes them of the colours in use."""
        colours = palette()
        return cls(
            make_pen(colours.act, 1.8), make_pen(colours.act, 1), make_pen(colours.quiet, 1),
            make_pen(colours.quiet, 0.7), make_pen(colours.stop, 2.4), QColor(colours.piece),
            QColor(colours.paper), QColor(colours.wood),
        )  # fmt: skip


def draw_board(painter: QPainter, length_mm: float, width_mm: float) -> None:
    """Draws the sheet itself."""
    painter.setPen(make_pen(palette().wood_line, 1))
    painter.setBrush(QColor(palette().wood))
    painter.drawRect(QRectF(0, 0, length_mm, width_mm))


def draw_pieces(
    painter: QPainter,
    revision: Revision,
    count: int,
    chosen: tuple[str, ...] = (),
    flying: frozenset[int] = frozenset(),
) -> None:
    """Draws the pieces, the first `count` as cut, those of `chosen` parts strongly."""
    pens, every = PiecePens.of_palette(), place_pieces(revision)
    for n, piece in enumerate(every):
        cut = n < count
        pen = pens.strongly if piece.part in chosen else pens.cut_edge if cut else pens.edge
        painter.setPen(pens.flying if n in flying else pen)
        painter.setBrush(pens.cut_piece if cut else pens.to_come)
        painter.drawPolygon(piece.edge)
        painter.setPen(Qt.PenStyle.NoPen)
        for path, depth in piece.recesses:
            painter.setBrush(shade_recess(depth))
            painter.drawPath(path)
        painter.setPen(pens.hole)
        painter.setBrush(pens.waste)
        painter.drawPath(piece.holes)


def draw_tabs(painter: QPainter, revision: Revision) -> None:
    """Draws a dot for each tab."""
    painter.setPen(make_pen(palette().tab, 3.6, round_=True))
    for piece in place_pieces(revision):
        painter.drawPoints(piece.tabs)


def draw_slugs(painter: QPainter, slugs: Iterable[Loop]) -> None:
    """Draws what comes loose and is no part: hatched."""
    painter.setPen(make_pen(palette().attention, 0.8))
    brush = QColor(palette().attention)
    hatch = painter.brush()
    hatch.setColor(brush)
    hatch.setStyle(Qt.BrushStyle.BDiagPattern)
    hatch.setTransform(painter.transform().inverted()[0])  # as fine at every scale
    painter.setBrush(hatch)
    for ring in slugs:
        painter.drawPolygon(QPolygonF([QPointF(*p) for p in ring]))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def draw_numbers(
    painter: QPainter, revision: Revision, numbers: tuple[int, ...], onto: QTransform
) -> None:
    """Writes a number on each piece that is large enough on the screen; in pixels."""
    painter.setFont(style.make_font(13, bold=True))
    painter.setPen(QColor(palette().ink))
    room, ground = px(26), QColor(palette().paper)
    ground.setAlphaF(PLATE)
    for piece, number in zip(place_pieces(revision), numbers, strict=False):
        box = onto.mapRect(piece.edge.boundingRect())
        if box.width() < room or box.height() < px(15):
            continue
        half = px(6) + px(4) * (len(str(number)) - 1)
        place = QRectF(box.center().x() - half, box.center().y() - px(8), 2 * half, px(16))
        painter.fillRect(place, ground)
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, str(number))


def draw_marks(painter: QPainter, marks: Iterable[NumberMark], onto: QTransform) -> None:
    """Draws numbered rounds at their places, the chosen one filled; in pixels.

    Where one would cover a mark before it, it is a dot until the drawing is closer.
    """
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    taken: list[tuple[QRectF, NumberMark]] = []
    for mark in sorted(marks, key=lambda m: (not m.chosen, m.number)):
        at = onto.map(QPointF(mark.x_mm, mark.y_mm))
        box = _find_mark_box(at, mark)
        if any(box.intersects(other) for other, _ in taken):
            painter.setPen(make_pen(tone_colour(mark.tone), DOT, round_=True))
            painter.drawPoint(at)
            continue
        taken.append((box, mark))
    for box, mark in taken:
        _draw_mark(painter, box, mark)


def _find_mark_box(at: QPointF, mark: NumberMark) -> QRectF:
    """Finds the box of a round, wider for a longer number."""
    size = px(ROUND + 3 if mark.chosen else ROUND)
    wide = size + px(5) * (len(str(mark.number)) - 1)
    return QRectF(at.x() - wide, at.y() - size, 2 * wide, 2 * size)


def _draw_mark(painter: QPainter, box: QRectF, mark: NumberMark) -> None:
    """Draws one round with its number."""
    colour = QColor(tone_colour(mark.tone))
    painter.setPen(QPen(colour, px(3)))
    painter.setBrush(colour if mark.chosen else QColor(palette().paper))
    painter.drawRoundedRect(box, box.height() / 2, box.height() / 2)
    painter.setPen(QColor(palette().on_bar if mark.chosen else palette().ink))
    painter.setFont(style.make_font(15, bold=True))
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, str(mark.number))


def make_pen(colour: str, wide: float, *, round_: bool = False) -> QPen:
    """Makes a pen as wide on the screen as said, whatever the scale of the drawing."""
    pen = QPen(QColor(colour), wide * px(10) / 10)
    pen.setCosmetic(True)
    if round_:
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    return pen
