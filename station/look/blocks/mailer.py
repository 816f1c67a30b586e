"""A mailer lying flat with the stack in it, drawn from its sizes."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from station.look import fonts
from station.look.style import palette, px
from station.look.widgets import Painted
from station.look.written import Page
from station.shop.faces import Layer, MailerDrawing

LEAST, MOST = 110, 230  # px high
STEP = 13  # px that a level is drawn to the right of and above the one below it


class MailerBlock(Painted[MailerDrawing]):
    """A mailer with its stack; the names of the layers stand below."""

    def lay(self, page: Page, block: MailerDrawing) -> None:
        """Room for the drawing, then the names by number."""
        long = max(block.length_mm, block.width_mm, 1.0)
        tall = page.width * min(block.length_mm, block.width_mm) / long
        page.height = max(px(LEAST), min(px(MOST), round(tall) + px(6)))
        self._drawn = page.height
        page.height += px(6)
        for n, name in enumerate(_names(block), 1):
            page.down(f"{n}  {name}", 14, tone="quiet")

    def draw(self, painter: QPainter) -> None:
        """The mailer, then what lies in it."""
        if self.block is None:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(0, 0, self.width(), self._drawn)
        long = max(self.block.length_mm, self.block.width_mm, 1.0)
        short = max(min(self.block.length_mm, self.block.width_mm), 1.0)
        scale = min((box.width() - px(8)) / long, (box.height() - px(8)) / short)
        body = QRectF(0, 0, long * scale, short * scale)
        body.moveCenter(box.center())
        self._bag(painter, body)
        # the stack lies under the flap, smaller where it would stick out of the drawing
        room = body.adjusted(px(12), px(30), -px(12), -px(12))
        self._layers(painter, self.block, room, scale)

    def _bag(self, painter: QPainter, body: QRectF) -> None:
        """The mailer's outline, its flap and its seam."""
        painter.setPen(QPen(QColor(palette().quiet), px(2)))
        painter.setBrush(QColor(palette().bag))
        painter.drawRoundedRect(body, px(12), px(12))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(palette().flap))
        flap = body.adjusted(1, 1, -1, px(20) - body.height())
        painter.drawRoundedRect(flap, px(11), px(11))
        painter.setPen(QPen(QColor(palette().quiet), 1, Qt.PenStyle.DashLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        inside = px(8)
        painter.drawRoundedRect(body.adjusted(inside, px(26), -inside, -inside), inside, inside)

    def _layers(self, painter: QPainter, block: MailerDrawing, room: QRectF, scale: float) -> None:
        """Each level a step to the right and up, so that what lies below is seen."""
        layers = sorted(block.layers, key=lambda a: a.level)
        length = max((a.x_mm + a.length_mm for a in layers), default=0.0)
        width = max((a.y_mm + a.width_mm for a in layers), default=0.0)
        steps = max((a.level for a in layers), default=0)
        step = min(px(STEP), room.height() / (2 * steps + 2))
        scale = min(
            scale,
            (room.width() - steps * step) / max(length, 1),
            (room.height() - steps * step) / max(width, 1),
        )
        left = room.center().x() - (length * scale + steps * step) / 2
        low = room.center().y() + (width * scale + steps * step) / 2
        names = _names(block)
        for layer in layers:
            box = QRectF(
                left + layer.x_mm * scale,
                low - (layer.y_mm + layer.width_mm) * scale,
                layer.length_mm * scale,
                layer.width_mm * scale,
            )
            self._layer(painter, box.translated(layer.level * step, -layer.level * step), layer)
        for layer in layers:
            if layer.label:
                number = str(names.index(layer.label) + 1)
                foot = QPointF(left + layer.level * step, low - layer.level * step)
                self._number(painter, foot, number)

    def _layer(self, painter: QPainter, box: QRectF, layer: Layer) -> None:
        grounds = palette().layers
        painter.setPen(QPen(QColor(palette().ink), px(1.5)))
        painter.setBrush(QColor(grounds[layer.level % len(grounds)]))
        painter.drawRoundedRect(box, px(3), px(3))

    def _number(self, painter: QPainter, foot: QPointF, number: str) -> None:
        """A level's number, left of the foot of its first piece."""
        painter.setFont(fonts.font(12, bold=True))
        box = QRectF(foot.x() - px(22), foot.y() - px(16), px(18), px(16))
        painter.drawText(box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, number)


def _names(block: MailerDrawing) -> list[str]:
    return [a.label for a in block.layers if a.label]
