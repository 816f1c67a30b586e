"""A mailer lying flat with the stack in it, drawn from its sizes."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen

from station.look.style import make_font, palette, px
from station.look.widgets import PaintedBlock
from station.look.written import TextPage
from station.shop.faces import MailerDrawing

LEAST, MOST = 100, 230  # px high, where there is little room and where there is enough
SIDE = 0.28  # share of the width that the stack from the side takes
BAR = 18  # px, a level from the side and its name
LEAST_STEP = 3  # px, where a mailer is too slim for more
STEP = 13  # px that a level is drawn to the right of and above the one below it


class MailerBlock(PaintedBlock[MailerDrawing]):
    """Draws a mailer with its stack from above, and below it the stack from the side."""

    def lay_out(self, page: TextPage, block: MailerDrawing) -> None:
        """Keeps room for the drawing, then lays out a line for each level, the bottom one last."""
        page.height = px(LEAST) + px(8)
        left = round(page.width * SIDE) + px(12)
        for name in reversed(_list_names(block)):
            page.height += page.put_text(
                name, (left, page.height, page.width - left), 14, high=px(BAR)
            )

    def most_height(self, width: int) -> int:
        """Gives the height at which the mailer is as wide as the block, or as it is at most."""
        if self.block is None:
            return 0
        long = max(self.block.length_mm, self.block.width_mm, 1.0)
        tall = round(width * min(self.block.length_mm, self.block.width_mm) / long) + px(6)
        drawn = max(px(LEAST), min(px(MOST), tall))
        return drawn + self.find_page(width).height - px(LEAST)

    def place_children(self, page: TextPage) -> None:
        """Keeps the names of the levels at the foot, below each other."""
        low = max((words.box.bottom() for words in page.words), default=0)
        for words in page.words:
            words.box.translate(0, self.height() - 1 - low)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the mailer, then what lies in it."""
        if self.block is None:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        more = self.height() - self.find_page(self.width()).height
        box = QRectF(0, 0, self.width(), px(LEAST) + more)
        long = max(self.block.length_mm, self.block.width_mm, 1.0)
        short = max(min(self.block.length_mm, self.block.width_mm), 1.0)
        scale = min((box.width() - px(8)) / long, (box.height() - px(8)) / short)
        body = QRectF(0, 0, long * scale, short * scale)
        body.moveCenter(box.center())
        self._draw_bag(painter, body)
        self._draw_layers(painter, self.block, body, scale)
        self._draw_side(painter, self.block)

    def _draw_bag(self, painter: QPainter, body: QRectF) -> None:
        """Draws the mailer's outline, its flap and its seam."""
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

    def _draw_layers(
        self, painter: QPainter, block: MailerDrawing, body: QRectF, scale: float
    ) -> None:
        """Draws each level a step to the right and up, so that what lies below is seen."""
        layers = sorted(block.layers, key=lambda a: a.level)
        length = max((a.x_mm + a.length_mm for a in layers), default=0.0)
        width = max((a.y_mm + a.width_mm for a in layers), default=0.0)
        steps = max((a.level for a in layers), default=0)
        room, step, scale = fit_stack(body, (length, width), steps, scale)
        left = room.center().x() - (length * scale + steps * step) / 2
        low = room.center().y() + (width * scale + steps * step) / 2
        for layer in layers:
            box = QRectF(
                left + layer.x_mm * scale,
                low - (layer.y_mm + layer.width_mm) * scale,
                layer.length_mm * scale,
                layer.width_mm * scale,
            )
            box = box.translated(layer.level * step, -layer.level * step)
            _draw_piece(painter, box, layer.level)
            _write_on(painter, box, layer.piece)

    def _draw_side(self, painter: QPainter, block: MailerDrawing) -> None:
        """Draws the levels as bars above each other, each as long as its pieces reach."""
        reach: dict[int, float] = {}
        for layer in block.layers:
            reach[layer.level] = max(reach.get(layer.level, 0.0), layer.x_mm + layer.length_mm)
        whole = self.width() * SIDE
        middles = [words.box.center().y() for words in self.find_page(self.width()).words]
        for middle, level in zip(middles, sorted(reach, reverse=True), strict=False):
            long = whole * reach[level] / max(reach.values())
            bar = QRectF((whole - long) / 2, middle - px(BAR - 4) / 2, long, px(BAR - 4))
            _draw_piece(painter, bar.adjusted(1, 0, -1, 0), level)


def fit_stack(
    body: QRectF, stack: tuple[float, float], steps: int, scale: float
) -> tuple[QRectF, float, float]:
    """Gives the room of a stack (length, width in mm) in a mailer's drawing, its step and scale.

    It lies under the flap where the mailer is wide enough. In a slim one it lies in all of it: a
    stack drawn at another scale than its mailer would look as if it had room. The steps get
    smaller first, the scale (px/mm) last.
    """
    length, width = max(stack[0], 1.0), max(stack[1], 1.0)
    for top, side, most in ((30, 12, STEP), (4, 4, LEAST_STEP)):
        room = body.adjusted(px(side), px(top), -px(side), -px(side))
        step = min(px(most), room.height() / (2 * steps + 2))
        across, up = (room.width() - steps * step) / length, (room.height() - steps * step) / width
        if min(across, up) >= scale:
            break
    return room, step, min(scale, across, up)


def _draw_piece(painter: QPainter, box: QRectF, level: int) -> None:
    """Draws a piece in its level's colour, the same from above and from the side."""
    grounds = palette().layers
    painter.setPen(QPen(QColor(palette().ink), px(1.5)))
    painter.setBrush(QColor(grounds[level % len(grounds)]))
    painter.drawRoundedRect(box, px(3), px(3))


def _write_on(painter: QPainter, box: QRectF, name: str) -> None:
    """Writes what a piece is on it, along its longer side, where there is room."""
    upright = box.height() > box.width()
    long, short = max(box.width(), box.height()), min(box.width(), box.height())
    font = make_font(13, bold=True)
    size = QFontMetricsF(font).size(Qt.TextFlag.TextSingleLine, name)
    if not name or size.width() > long - px(8) or size.height() > short + px(2):
        return
    painter.save()
    painter.setFont(font)
    painter.setPen(QColor(palette().ink))
    painter.translate(box.center())
    painter.rotate(-90 if upright else 0)
    place = QRectF(-long / 2, -short / 2, long, short)
    painter.drawText(place, Qt.AlignmentFlag.AlignCenter, name)
    painter.restore()


def _list_names(block: MailerDrawing) -> list[str]:
    return [a.label for a in block.layers if a.label]
