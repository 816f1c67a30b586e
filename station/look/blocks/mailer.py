"""A mailer lying flat with the stack in it, drawn from its sizes."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from station.look.style import palette, px
from station.look.widgets import Painted
from station.look.written import Page
from station.shop.faces import MailerDrawing

LEAST, MOST = 110, 230  # px high
SIDE = 0.5  # share of the width that the stack from the side takes
BAR = 18  # px, a level from the side and its name
STEP = 13  # px that a level is drawn to the right of and above the one below it


class MailerBlock(Painted[MailerDrawing]):
    """A mailer with its stack from above, and below it the stack from the side."""

    def lay(self, page: Page, block: MailerDrawing) -> None:
        """Room for the drawing, then a line for each level, the bottom one last."""
        long = max(block.length_mm, block.width_mm, 1.0)
        tall = page.width * min(block.length_mm, block.width_mm) / long
        page.height = max(px(LEAST), min(px(MOST), round(tall) + px(6)))
        self._drawn = page.height
        page.height += px(8)
        left = round(page.width * SIDE) + px(12)
        self._middles: list[float] = []  # of each level's line, the top level first
        for name in reversed(_names(block)):
            tall = page.put(name, (left, page.height, page.width - left), 14, high=px(BAR))
            self._middles.append(page.height + tall / 2)
            page.height += tall

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
        self._side(painter, self.block)

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
        for layer in layers:
            box = QRectF(
                left + layer.x_mm * scale,
                low - (layer.y_mm + layer.width_mm) * scale,
                layer.length_mm * scale,
                layer.width_mm * scale,
            )
            _piece(painter, box.translated(layer.level * step, -layer.level * step), layer.level)

    def _side(self, painter: QPainter, block: MailerDrawing) -> None:
        """The levels as bars above each other, each as long as its pieces reach."""
        reach: dict[int, float] = {}
        for layer in block.layers:
            reach[layer.level] = max(reach.get(layer.level, 0.0), layer.x_mm + layer.length_mm)
        whole = self.width() * SIDE
        for middle, level in zip(self._middles, sorted(reach, reverse=True), strict=False):
            long = whole * reach[level] / max(reach.values())
            bar = QRectF((whole - long) / 2, middle - px(BAR - 4) / 2, long, px(BAR - 4))
            _piece(painter, bar.adjusted(1, 0, -1, 0), level)


def _piece(painter: QPainter, box: QRectF, level: int) -> None:
    """A piece in its level's colour, the same from above and from the side."""
    grounds = palette().layers
    painter.setPen(QPen(QColor(palette().ink), px(1.5)))
    painter.setBrush(QColor(grounds[level % len(grounds)]))
    painter.drawRoundedRect(box, px(3), px(3))


def _names(block: MailerDrawing) -> list[str]:
    return [a.label for a in block.layers if a.label]
