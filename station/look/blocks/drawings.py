"""Pictures from data: the sheet from its cut file, the part with its tabs, the mailer."""

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QPolygonF,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from station.look import fonts
from station.look.palette import tone
from station.look.texts import text
from station.look.widgets import Label, Send, palette, tight
from station.shop.faces import PartDrawing, SheetDrawing
from station.shop.facts import Placed, Revision, Shape
from station.shop.words import say

TAB = "#9a5b00"
Key = tuple[str, int, int, int, tuple[str, ...]]


class Canvas(QWidget):
    """The sheet itself; a touch on it sends its place in mm."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.block: SheetDrawing | None = None
        self._kept: tuple[Key, QPixmap] | None = None
        self.setMinimumHeight(120)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def set(self, block: SheetDrawing) -> None:
        """Shows a sheet."""
        self.block = block
        self.setAccessibleName(text(say("sheet of cut file {id}", id=block.revision.cut_file)))
        self.update()

    def scale(self) -> float:
        """Pixels a millimetre."""
        revision = self.block.revision if self.block else None
        length, width = (revision.length_mm, revision.width_mm) if revision else (2440.0, 1220.0)
        return min((self.width() - 2) / length, (self.height() - 2) / width)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The kept picture of the sheet, marks over it."""
        if self.block is None:
            return
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._picture(self.block))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for x, y, shade in self.block.spots:
            at = self._at(x, y)
            painter.setPen(QPen(QColor(tone(palette(), shade)), 3))
            painter.drawEllipse(at, 9, 9)

    def _at(self, x_mm: float, y_mm: float) -> QPointF:
        scale = self.scale()
        width = self.block.revision.width_mm if self.block else 0.0
        return QPointF(1 + x_mm * scale, 1 + (width - y_mm) * scale)

    def _picture(self, block: SheetDrawing) -> QPixmap:
        """The sheet drawn once for each share of pieces cut, size and choice."""
        count = round(block.cut * len(block.revision.placed))
        key = (block.revision.id, self.width(), self.height(), count, block.chosen)
        if self._kept is None or self._kept[0] != key:
            picture = QPixmap(self.size())
            picture.fill(Qt.GlobalColor.transparent)
            painter = QPainter(picture)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._draw(painter, block.revision, count)
            painter.end()
            self._kept = (key, picture)
        return self._kept[1]

    def _draw(self, painter: QPainter, revision: Revision, count: int) -> None:
        scale = self.scale()
        sheet = QRectF(1, 1, revision.length_mm * scale, revision.width_mm * scale)
        painter.setPen(QPen(QColor("#c9b98f"), 1))
        painter.setBrush(QColor(palette().wood))
        painter.drawRect(sheet)
        shapes = dict(revision.shapes)
        for n, piece in enumerate(revision.placed):
            shape = shapes.get(piece.part)
            if shape:
                strong = piece.part in self.block.chosen if self.block else False
                self._piece(painter, piece, shape, cut=n < count, strong=strong)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(palette().ink))
        for x, y in revision.hold_downs:
            at = self._at(x, y)
            painter.drawRect(QRectF(at.x() - 5, at.y() - 3, 10, 6))

    def _piece(
        self, painter: QPainter, piece: Placed, shape: Shape, *, cut: bool, strong: bool
    ) -> None:
        turned = turn(piece, shape)
        painter.setPen(
            QPen(QColor(palette().act if cut or strong else palette().quiet), 1.8 if strong else 1)
        )
        painter.setBrush(QColor(palette().piece if cut else palette().paper))
        painter.drawPolygon(self._loop(turned(shape.outline)))
        if len(shape.outline) * self.scale() > 0.5:
            painter.setPen(QPen(QColor(palette().quiet), 0.7))
            for hole in shape.holes:
                painter.drawPolygon(self._loop(turned(hole)))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(TAB))
        for x, y in piece.tabs or turned(shape.tabs):
            painter.drawEllipse(self._at(x, y), 1.8, 1.8)

    def _loop(self, points: list[tuple[float, float]]) -> QPolygonF:
        return QPolygonF([self._at(x, y) for x, y in points])

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Sends the place that was touched, where the face takes one."""
        if self.block is None or not self.block.touch:
            return
        scale, at = self.scale(), event.position()
        x = (at.x() - 1) / scale
        y = self.block.revision.width_mm - (at.y() - 1) / scale
        if 0 <= x <= self.block.revision.length_mm and 0 <= y <= self.block.revision.width_mm:
            self.send(f"@place {x:.0f} {y:.0f}")


class Turn:
    """Puts a shape's points where its piece lies on the sheet."""

    def __init__(self, piece: Placed, shape: Shape) -> None:
        angle = math.radians(piece.turn_deg)
        self.cos, self.sin = math.cos(angle), math.sin(angle)
        self.mirrored, self.piece = piece.mirrored, piece
        corners = [self._turned(p) for p in shape.outline] or [(0.0, 0.0)]
        self.left = min(x for x, _ in corners)
        self.low = min(y for _, y in corners)

    def _turned(self, point: tuple[float, float]) -> tuple[float, float]:
        x, y = point
        x = -x if self.mirrored else x
        return x * self.cos - y * self.sin, x * self.sin + y * self.cos

    def __call__(self, points: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
        """The points on the sheet, mm; the piece's box has its lower left at x_mm, y_mm."""
        return [
            (self.piece.x_mm + x - self.left, self.piece.y_mm + y - self.low)
            for x, y in map(self._turned, points)
        ]


def turn(piece: Placed, shape: Shape) -> Turn:
    """Where a shape's points lie for a piece on the sheet."""
    return Turn(piece, shape)


class SheetBlock(QWidget):
    """The drawn sheet with a note under it."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.canvas, self.note = Canvas(send), Label(13)
        column = QVBoxLayout(self)
        tight(column, 4)
        column.addWidget(self.canvas, 100)
        column.addWidget(self.note)
        column.addStretch(1)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keeps the note right under the sheet."""
        super().resizeEvent(event)
        self._hug()

    def _hug(self) -> None:
        """The canvas is no taller than its sheet is at this width."""
        if self.canvas.block:
            revision = self.canvas.block.revision
            tall = self.width() * revision.width_mm / max(revision.length_mm, 1.0) + 3
            most = max(round(tall), 120)
            self.canvas.setMaximumHeight(most)
            self.setMaximumHeight(most + self.note.heightForWidth(self.width()) + 12)

    def set(self, block: SheetDrawing) -> None:
        """Shows a sheet."""
        self.canvas.set(block)
        self._hug()
        self.note.say(block.note, "quiet")
        self.note.setVisible(bool(self.note.text()))


class PartCanvas(QWidget):
    """A part with arrows where its tabs were, and its two sizes."""

    def __init__(self) -> None:
        super().__init__()
        self.block: PartDrawing | None = None
        self.setMinimumHeight(130)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def set(self, block: PartDrawing) -> None:
        """Shows a part."""
        self.block = block
        self.setAccessibleName(text(say("{part} with its tabs", part=block.part.name)))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Outline, holes, tab arrows, dimension lines."""
        shape = self.block.part.shape if self.block else None
        if shape is None or not shape.outline:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        length, width = shape.box
        scale = min((self.width() - 110) / max(length, 1), (self.height() - 52) / max(width, 1))
        left, top = 24.0, 16.0

        def at(x: float, y: float) -> QPointF:
            return QPointF(left + x * scale, top + (width - y) * scale)

        painter.setPen(QPen(QColor(palette().act), 2))
        painter.setBrush(QColor(palette().piece))
        painter.drawPolygon(QPolygonF([at(*p) for p in shape.outline]))
        painter.setPen(QPen(QColor(palette().act), 1))
        painter.setBrush(QColor(palette().paper))
        for hole in shape.holes:
            painter.drawPolygon(QPolygonF([at(*p) for p in hole]))
        for x, y in shape.tabs:
            _arrow(painter, at(x, y), at(length / 2, width / 2), shape, (x, y))
        self._sizes(painter, QRectF(at(0, width), at(length, 0)), length, width)

    def _sizes(self, painter: QPainter, box: QRectF, length: float, width: float) -> None:
        painter.setPen(QPen(QColor(palette().quiet), 1))
        low, side = box.bottom() + 16, box.right() + 20
        painter.drawLine(QPointF(box.left(), low), QPointF(box.right(), low))
        painter.drawLine(QPointF(side, box.top()), QPointF(side, box.bottom()))
        painter.setFont(fonts.font(13))
        painter.setPen(QColor(palette().ink))
        painter.drawText(
            QRectF(box.left(), low + 1, max(box.width(), 60), 18),
            Qt.AlignmentFlag.AlignHCenter,
            f"{length:g} mm",
        )
        painter.drawText(
            QRectF(side + 4, box.top(), 70, max(box.height(), 18)),
            Qt.AlignmentFlag.AlignVCenter,
            f"{width:g} mm",
        )


def _arrow(
    painter: QPainter, at: QPointF, _middle: QPointF, shape: Shape, tab: tuple[float, float]
) -> None:
    """A triangle outside the outline that points at a tab."""
    length, width = shape.box
    sides = {"left": tab[0], "right": length - tab[0], "low": tab[1], "high": width - tab[1]}
    side = min(sides, key=lambda s: sides[s])
    dx, dy = {"left": (-1, 0), "right": (1, 0), "low": (0, 1), "high": (0, -1)}[side]
    tip = QPointF(at.x() + dx * 2, at.y() + dy * 2)
    back = QPointF(tip.x() + dx * 10, tip.y() + dy * 10)
    across = QPointF(dy * 6, dx * 6)
    painter.save()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(TAB))
    painter.drawPolygon(QPolygonF([tip, back + across, back - across]))
    painter.restore()


class PartBlock(QWidget):
    """The drawn part with a note under it."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.canvas, self.note = PartCanvas(), Label(14)
        column = QVBoxLayout(self)
        tight(column, 2)
        column.addWidget(self.canvas, 1)
        column.addWidget(self.note)
        self.setMaximumHeight(230)

    def set(self, block: PartDrawing) -> None:
        """Shows a part."""
        self.canvas.set(block)
        self.note.say(block.note, "quiet")
