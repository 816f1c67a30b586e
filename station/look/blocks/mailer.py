"""A mailer lying flat with the stack in it, drawn from its sizes."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from station.look import fonts
from station.look.texts import text
from station.look.widgets import Label, Send, tight
from station.shop.faces import MailerDrawing
from station.shop.words import say


class MailerBlock(QWidget):
    """A mailer lying flat with the stack in it; names that do not fit stand below."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.canvas, self.names = MailerCanvas(), Label(14)
        column = QVBoxLayout(self)
        tight(column, 6)
        column.addWidget(self.canvas)
        column.addWidget(self.names)

    def set(self, block: MailerDrawing) -> None:
        """Shows a mailer."""
        self.canvas.set(block)
        self._hug()
        names = [a.label for a in block.layers if a.label]
        self.names.say("\n".join(f"{n}  {name}" for n, name in enumerate(names, 1)), "quiet")
        self.names.setVisible(bool(names))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keeps the names right under the mailer."""
        super().resizeEvent(event)
        self._hug()

    def _hug(self) -> None:
        """The canvas is as tall as its mailer is at this width, up to a limit."""
        block = self.canvas.block
        if block:
            long = max(block.length_mm, block.width_mm, 1.0)
            tall = self.width() * min(block.length_mm, block.width_mm) / long
            self.canvas.setFixedHeight(max(110, min(230, round(tall) + 6)))


class MailerCanvas(QWidget):
    """The mailer, its flap, the layers of the stack with their numbers."""

    def __init__(self) -> None:
        super().__init__()
        self.block: MailerDrawing | None = None

    def set(self, block: MailerDrawing) -> None:
        """Shows a mailer."""
        if block != self.block:
            self.block = block
            self.setAccessibleName(text(say("mailer {name} and its stack", name=block.name)))
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The mailer, then what lies in it."""
        if self.block is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        long = max(self.block.length_mm, self.block.width_mm, 1.0)
        short = min(self.block.length_mm, self.block.width_mm)
        scale = min((self.width() - 8) / long, (self.height() - 8) / max(short, 1.0))
        body = QRectF(0, 0, long * scale, short * scale)
        body.moveCenter(QRectF(self.rect()).center())
        self._bag(painter, body)
        self._layers(painter, body, scale)

    def _bag(self, painter: QPainter, body: QRectF) -> None:
        """The mailer's outline, its flap and its seam."""
        painter.setPen(QPen(QColor("#8b98a5"), 2))
        painter.setBrush(QColor("#e9edf0"))
        painter.drawRoundedRect(body, 12, 12)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor("#d5dce0"))
        painter.drawRoundedRect(body.adjusted(1, 1, -1, 20 - body.height()), 11, 11)
        painter.setPen(QPen(QColor("#a5afb7"), 1, Qt.PenStyle.DashLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(body.adjusted(8, 26, -8, -8), 8, 8)

    def _layers(self, painter: QPainter, body: QRectF, scale: float) -> None:
        assert self.block is not None
        grounds = ("#cfdde8", "#fffef8", "#cfe3cf", "#f1e3c4")
        layers = sorted(self.block.layers, key=lambda a: a.level)
        length = max((a.x_mm + a.length_mm for a in layers), default=0.0)
        width = max((a.y_mm + a.width_mm for a in layers), default=0.0)
        # the stack lies under the flap, smaller where it would stick out of the drawing
        room = body.adjusted(12, 30, -12, -12)
        scale = min(scale, room.width() / max(length, 1), room.height() / max(width, 1))
        left = room.center().x() - length * scale / 2
        low = room.center().y() + width * scale / 2
        painter.setFont(fonts.font(13, bold=True))
        names = [a.label for a in self.block.layers if a.label]
        for layer in layers:
            box = QRectF(
                left + layer.x_mm * scale,
                low - (layer.y_mm + layer.width_mm) * scale,
                layer.length_mm * scale,
                layer.width_mm * scale,
            )
            painter.setPen(QPen(QColor("#174f7a"), 1.5))
            painter.setBrush(QColor(grounds[layer.level % len(grounds)]))
            painter.drawRoundedRect(box, 3, 3)
            if layer.label:
                number = str(names.index(layer.label) + 1)
                corner = box.adjusted(5, 2, 0, 0)
                painter.drawText(corner, Qt.AlignmentFlag.AlignLeft, number)
