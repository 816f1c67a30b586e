"""Pictures from data: the sheet from its cut file, the part with its tabs."""

from collections.abc import Callable
from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPainterPath, QPen, QPixmap, QPolygonF

from station.look import style
from station.look.style import palette, px, tone_colour
from station.look.widgets import PaintedBlock, Send
from station.look.written import TextPage
from station.shop.faces import PartDrawing, SheetDrawing
from station.shop.facts import Placed, Revision, Shape, Size
from station.shop.on_sheet import OnSheet

PictureKey = tuple[str, tuple[tuple[float, float], ...], int, int, int, tuple[str, ...]]
SHEET, PART, PART_MOST = 120, 130, 230  # px high
SAME_SHARE = 0.03  # of a length: a size within it is drawn as that length
KEPT = 8  # sheets whose pieces are kept turned


class SheetBlock(PaintedBlock[SheetDrawing]):
    """Draws the sheet with a note under it; a touch on it sends its place in mm."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self._kept: tuple[PictureKey, QPixmap] | None = None

    def lay_out(self, page: TextPage, block: SheetDrawing) -> None:
        """Keeps room for the least drawing; the note stands at the foot, whatever the height."""
        page.height = px(SHEET)
        if block.note:
            page.height += px(4)
            page.put_below(block.note, 13, tone="quiet")

    def most_height(self, width: int) -> int:
        """Gives the height of the sheet at this width."""
        revision = self.block.revision if self.block else None
        share = revision.width_mm / max(revision.length_mm, 1.0) if revision else 0.5
        return max(round(width * share) + 3, px(SHEET)) + self._height_below(width)

    def _height_below(self, width: int) -> int:
        """Gives the height under the drawing."""
        return self.find_page(width).height - px(SHEET)

    def place_children(self, page: TextPage) -> None:
        """Keeps the note at the foot."""
        page.move_to_foot(self.height())

    def pixels_per_mm(self) -> float:
        """Gives the pixels a millimetre."""
        revision = self.block.revision if self.block else None
        length, width = (revision.length_mm, revision.width_mm) if revision else (2440.0, 1220.0)
        high = self.height() - self._height_below(self.width())
        return min((self.width() - 2) / length, (high - 2) / width)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the kept picture of the sheet, marks over it."""
        if self.block is None:
            return
        painter.drawPixmap(0, 0, self._make_picture(self.block))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        scale, width = self.pixels_per_mm(), self.block.revision.width_mm
        for x, y, shade in self.block.spots:
            painter.setPen(QPen(QColor(tone_colour(shade)), px(3)))
            at = QPointF(1 + x * scale, 1 + (width - y) * scale)
            painter.drawEllipse(at, px(9), px(9))

    def _make_picture(self, block: SheetDrawing) -> QPixmap:
        """Draws the sheet once for each share of pieces cut, size and choice."""
        count = round(block.cut * len(block.revision.placed))
        held = block.revision.hold_downs  # its own in each run of a sheet
        key = (block.revision.id, held, self.width(), self.height(), count, block.chosen)
        if self._kept is None or self._kept[0] != key:
            ratio = self.devicePixelRatioF()
            picture = QPixmap(self.size() * ratio)
            picture.setDevicePixelRatio(ratio)
            picture.fill(Qt.GlobalColor.transparent)
            painter = QPainter(picture)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            _draw_sheet(painter, block.revision, self.pixels_per_mm(), count, block.chosen)
            painter.end()
            self._kept = (key, picture)
        return self._kept[1]

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Sends the place that was touched, where the face takes one."""
        if self.block is None or not self.block.touch:
            return
        scale, at = self.pixels_per_mm(), event.position()
        x = (at.x() - 1) / scale
        y = self.block.revision.width_mm - (at.y() - 1) / scale
        if 0 <= x <= self.block.revision.length_mm and 0 <= y <= self.block.revision.width_mm:
            self.send(f"@place {x:.0f} {y:.0f}")


class DrawnPiece(NamedTuple):
    """A piece as it lies on the sheet, mm: what it is of, its edge, its holes, its tabs."""

    part: str
    edge: QPolygonF
    holes: QPainterPath
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
    turned, holes = OnSheet(piece, shape).place, QPainterPath()
    for hole in shape.holes:
        holes.addPolygon(QPolygonF([QPointF(*p) for p in turned(hole)]))
        holes.closeSubpath()
    edge = QPolygonF([QPointF(*p) for p in turned(shape.outline)])
    tabs = piece.tabs or turned(shape.tabs)
    return DrawnPiece(piece.part, edge, holes, tuple(QPointF(*p) for p in tabs))


def _draw_sheet(
    painter: QPainter, revision: Revision, scale: float, count: int, chosen: tuple[str, ...]
) -> None:
    """Draws the sheet, the first `count` pieces as cut, those of `chosen` parts strongly."""
    painter.translate(1, 1 + revision.width_mm * scale)
    painter.scale(scale, -scale)
    colours = palette()
    painter.setPen(_make_pen(colours.wood_line, 1))
    painter.setBrush(QColor(colours.wood))
    painter.drawRect(QRectF(0, 0, revision.length_mm, revision.width_mm))
    strongly, cut_edge = _make_pen(colours.act, 1.8), _make_pen(colours.act, 1)
    edge, hole = _make_pen(colours.quiet, 1), _make_pen(colours.quiet, 0.7)
    cut_piece, piece_to_come = QColor(colours.piece), QColor(colours.paper)
    every = place_pieces(revision)
    for n, piece in enumerate(every):
        cut = n < count
        painter.setPen(strongly if piece.part in chosen else cut_edge if cut else edge)
        painter.setBrush(cut_piece if cut else piece_to_come)
        painter.drawPolygon(piece.edge)
        painter.setPen(hole)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(piece.holes)
    painter.setPen(_make_pen(colours.tab, 3.6, round_=True))
    for piece in every:
        painter.drawPoints(piece.tabs)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colours.ink))
    wide, high = px(10) / scale, px(6) / scale
    for x, y in revision.hold_downs:
        painter.drawRect(QRectF(x - wide / 2, y - high / 2, wide, high))


def _make_pen(colour: str, wide: float, *, round_: bool = False) -> QPen:
    """Makes a pen as wide on the screen as said, whatever the scale of the drawing."""
    pen = QPen(QColor(colour), wide * px(10) / 10)
    pen.setCosmetic(True)
    if round_:
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    return pen


class PartBlock(PaintedBlock[PartDrawing]):
    """Draws the part: arrows where its tabs were, its two sizes, a note under it."""

    def lay_out(self, page: TextPage, block: PartDrawing) -> None:
        """Keeps room for the least drawing; the note stands at the foot, whatever the height."""
        page.height = px(PART)
        if block.note:
            page.height += px(2)
            page.put_below(block.note, 14, tone="quiet")

    def place_children(self, page: TextPage) -> None:
        """Keeps the note at the foot."""
        page.move_to_foot(self.height())

    def most_height(self, _width: int) -> int:
        """Gives the height that it takes at most."""
        return px(PART_MOST)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws outline, holes, tab arrows, dimension lines."""
        block = self.block
        shape = block.part.shape if block else None
        if block is None or shape is None or not shape.outline:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        high = self.height() - (self.find_page(self.width()).height - px(PART))
        length, width = shape.box
        across, along = self.width() - px(110), high - px(52)
        scale = min(across / max(length, 1), along / max(width, 1))
        left, top, colours = px(24), px(16), palette()

        def at(x: float, y: float) -> QPointF:
            return QPointF(left + x * scale, top + (width - y) * scale)

        painter.setPen(QPen(QColor(colours.act), px(2)))
        painter.setBrush(QColor(colours.piece))
        painter.drawPolygon(QPolygonF([at(*p) for p in shape.outline]))
        painter.setPen(QPen(QColor(colours.act), px(1)))
        painter.setBrush(QColor(colours.paper))
        for hole in shape.holes:
            painter.drawPolygon(QPolygonF([at(*p) for p in hole]))
        _draw_arrows(painter, shape, at)
        box = QRectF(at(0, width), at(length, 0))
        _draw_sizes(painter, box, length, width, block.measured)


def _draw_sizes(
    painter: QPainter, box: QRectF, length: float, width: float, measured: Size | None
) -> None:
    """Draws dimension lines below and at the right; the one that is measured stands out."""
    low, side, high = box.bottom() + px(16), box.right() + px(20), px(18)
    along = measured is not None and _is_about(measured, length)
    across = measured is not None and not along and _is_about(measured, width)
    _set_line(painter, strong=along)
    painter.drawLine(QPointF(box.left(), low), QPointF(box.right(), low))
    _set_line(painter, strong=across)
    painter.drawLine(QPointF(side, box.top()), QPointF(side, box.bottom()))
    painter.setFont(style.make_font(13))
    painter.setPen(QColor(palette().ink))
    painter.drawText(
        QRectF(box.left(), low + 1, max(box.width(), px(60)), high),
        Qt.AlignmentFlag.AlignHCenter,
        f"{length:g} mm",
    )
    painter.drawText(
        QRectF(side + px(4), box.top(), px(70), max(box.height(), high)),
        Qt.AlignmentFlag.AlignVCenter,
        f"{width:g} mm",
    )


def _is_about(size: Size, length: float) -> bool:
    """Tells whether a size is this length of the part."""
    return abs(size.nominal_mm - length) <= SAME_SHARE * length


def _set_line(painter: QPainter, *, strong: bool) -> None:
    """Sets the pen for a dimension line."""
    colour = palette().act if strong else palette().quiet
    painter.setPen(QPen(QColor(colour), px(4) if strong else 1))


def _draw_arrows(painter: QPainter, shape: Shape, at: Callable[[float, float], QPointF]) -> None:
    """Draws a triangle outside the outline for each tab, that points at it."""
    length, width = shape.box
    apart, long, half = px(2), px(10), px(6)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(palette().tab))
    for x, y in shape.tabs:
        sides = {(-1, 0): x, (1, 0): length - x, (0, 1): y, (0, -1): width - y}
        dx, dy = min(sides, key=lambda side: sides[side])
        outward, across = QPointF(dx, dy), QPointF(dy, dx) * half
        tip = at(x, y) + outward * apart
        back = tip + outward * long
        painter.drawPolygon(QPolygonF([tip, back + across, back - across]))
