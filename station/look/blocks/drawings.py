"""Pictures from data: the sheet from its cut file, the part with its tabs."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPen, QPixmap, QPolygonF, QTransform

from station.look import style
from station.look.blocks.pieces import (
    draw_board,
    draw_marks,
    draw_numbers,
    draw_pieces,
    draw_recess,
    draw_slugs,
    draw_tabs,
    shade_recess,
)
from station.look.language import translate
from station.look.style import FINGER, palette, px, tone_colour
from station.look.widgets import PaintedBlock, Send
from station.look.written import TextPage
from station.shop.faces import PartDrawing, SheetDrawing
from station.shop.facts import Placed, Revision, Shape, Size
from station.shop.on_sheet import OnSheet
from station.shop.words import length_in_full

PictureKey = tuple[object, ...]
SHEET, PART, PART_MOST = 120, 130, 230  # px high
EDGE = 17  # px around a sheet with marks
NAME = 22  # px, a name over one of two parts
SAME_SHARE = 0.03  # of a length: a size within it is drawn as that length


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
            page.put_below(block.note, 15, tone="quiet")

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
        edge = 2 * self.find_edge()
        return min((self.width() - edge) / length, (high - edge) / width)

    def find_edge(self) -> int:
        """Finds how far within the block the sheet begins: a mark on its corner needs room."""
        return px(EDGE) if self.block and self.block.marks else 1

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the kept picture of the sheet, marks over it."""
        if self.block is None:
            return
        painter.drawPixmap(0, 0, self._make_picture(self.block))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        onto = self._map_onto()
        for x, y, shade in self.block.spots:
            painter.setPen(QPen(QColor(tone_colour(shade)), px(3)))
            painter.drawEllipse(onto.map(QPointF(x, y)), px(9), px(9))
        draw_marks(painter, self.block.marks, onto)

    def _map_onto(self) -> QTransform:
        """Maps mm on the sheet, y upwards, to pixels of the block."""
        scale = self.pixels_per_mm()
        width = self.block.revision.width_mm if self.block else 0.0
        edge = self.find_edge()
        return QTransform(scale, 0, 0, -scale, edge, edge + width * scale)

    def _make_picture(self, block: SheetDrawing) -> QPixmap:
        """Draws the sheet once for each share of pieces cut, size and choice."""
        count = round(block.cut * len(block.revision.placed))
        key = (block.revision, self.width(), self.height(), count, block.chosen, block.slugs,
               block.numbers, block.flying, bool(block.marks))  # fmt: skip
        if self._kept is None or self._kept[0] != key:
            ratio = self.devicePixelRatioF()
            picture = QPixmap(self.size() * ratio)
            picture.setDevicePixelRatio(ratio)
            picture.fill(Qt.GlobalColor.transparent)
            painter = QPainter(picture)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._draw_sheet(painter, block, count)
            painter.end()
            self._kept = (key, picture)
        return self._kept[1]

    def _draw_sheet(self, painter: QPainter, block: SheetDrawing, count: int) -> None:
        """Draws the sheet, what comes off it, and what holds it down."""
        revision, onto, scale = block.revision, self._map_onto(), self.pixels_per_mm()
        painter.save()
        painter.setTransform(onto, combine=True)
        draw_board(painter, revision.length_mm, revision.width_mm)
        draw_pieces(painter, revision, count, block.chosen, block.flying)
        draw_slugs(painter, block.slugs)
        draw_tabs(painter, revision)
        if not block.marks:
            _draw_hold_downs(painter, revision, scale)
        painter.restore()
        draw_numbers(painter, revision, block.numbers, onto)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Sends the place that was touched, where the face takes one."""
        if self.block is None or not self.block.touch:
            return
        place = self._map_onto().inverted()[0].map(event.position())
        x, y = place.x(), place.y()
        if 0 <= x <= self.block.revision.length_mm and 0 <= y <= self.block.revision.width_mm:
            near = px(FINGER) / self.pixels_per_mm()
            self.send(f"@place {x:.0f} {y:.0f} {near:.0f}")


def _draw_hold_downs(painter: QPainter, revision: Revision, scale: float) -> None:
    """Draws a black block for each hold-down, as large on every screen."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(palette().ink))
    wide, high = px(10) / scale, px(6) / scale
    for x, y in revision.hold_downs:
        painter.drawRect(QRectF(x - wide / 2, y - high / 2, wide, high))


class PartBlock(PaintedBlock[PartDrawing]):
    """Draws the part: arrows where its tabs were, its two sizes, a note under it."""

    def lay_out(self, page: TextPage, block: PartDrawing) -> None:
        """Keeps room for the least drawing; the note stands at the foot, whatever the height."""
        page.height = px(PART)
        if block.note:
            page.height += px(2)
            page.put_below(block.note, 15, tone="quiet")

    def place_children(self, page: TextPage) -> None:
        """Keeps the note at the foot."""
        page.move_to_foot(self.height())

    def most_height(self, _width: int) -> int:
        """Gives the height that it takes at most."""
        return px(PART_MOST)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the part, and beside it the one that it differs from by little."""
        block = self.block
        shape = block.part.shape if block else None
        if block is None or shape is None or not shape.outline:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        high = self.height() - (self.find_page(self.width()).height - px(PART))
        other = block.beside.shape if block.beside else None
        if other is None or not other.outline:
            _draw_part(painter, QRectF(0, 0, self.width(), high), shape, block.measured)
            return
        half = self.width() / 2
        scale = min(_find_part_scale(half, high - px(NAME), s) for s in (shape, other))
        for n, (each, name) in enumerate(zip((shape, other), block.names, strict=True)):
            box = QRectF(n * half, 0, half, high)
            painter.setFont(style.make_font(15, bold=True))
            painter.setPen(QColor(palette().ink))
            head = QRectF(box.left() + px(24), 0, half - px(24), px(NAME))
            painter.drawText(head, Qt.AlignmentFlag.AlignVCenter, translate(name))
            _draw_part(painter, box.adjusted(0, px(NAME), 0, 0), each, None, scale)


def _find_part_scale(wide: float, high: float, shape: Shape) -> float:
    """Finds the pixels a millimetre at which a part fits, with room for its sizes."""
    length, width = shape.box
    return min((wide - px(110)) / max(length, 1), (high - px(52)) / max(width, 1))


def _draw_part(
    painter: QPainter, box: QRectF, shape: Shape, measured: Size | None, scale: float = 0.0
) -> None:
    """Draws outline, holes, recesses, tab arrows, dimension lines into a box."""
    length, width = shape.box
    scale = scale or _find_part_scale(box.width(), box.height(), shape)
    left, top = box.left() + px(24), box.top() + px(16)
    onto = QTransform(scale, 0, 0, -scale, left, top + width * scale)

    def at(x: float, y: float) -> QPointF:
        return onto.map(QPointF(x, y))

    painter.setPen(QPen(QColor(palette().act), px(2)))
    painter.setBrush(QColor(palette().piece))
    painter.drawPolygon(QPolygonF([at(*p) for p in shape.outline]))
    painter.setPen(Qt.PenStyle.NoPen)
    lies = OnSheet(Placed(part="", x_mm=0.0, y_mm=0.0), shape)
    for recess in shape.recesses:
        painter.setBrush(shade_recess(recess.depth_mm))
        painter.drawPath(onto.map(draw_recess(recess, lies)))
    painter.setPen(QPen(QColor(palette().act), px(1)))
    painter.setBrush(QColor(palette().paper))
    for hole in shape.holes:
        painter.drawPolygon(QPolygonF([at(*p) for p in hole]))
    _draw_arrows(painter, shape, at)
    _draw_sizes(painter, QRectF(at(0, width), at(length, 0)), length, width, measured)


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
    painter.setFont(style.make_font(15))
    painter.setPen(QColor(palette().ink))
    painter.drawText(
        QRectF(box.left(), low + 1, max(box.width(), px(60)), high),
        Qt.AlignmentFlag.AlignHCenter,
        translate(length_in_full(length)),
    )
    painter.drawText(
        QRectF(side + px(4), box.top(), px(70), max(box.height(), high)),
        Qt.AlignmentFlag.AlignVCenter,
        translate(length_in_full(width)),
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
