"""Shapes drawn the same everywhere: a tone's mark, a tick, a bar, a part's outline, a plate."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from station.look.style import Style, palette, px, tone_colour

if TYPE_CHECKING:  # facts take time to load, and a first frame needs none
    from station.shop.facts import Shape


def draw_plate(
    painter: QPainter, box: QRect, ground: str, edge: str = "", line: int = 1, radius: int = 8
) -> None:
    """Draws a rounded box with a ground and, where `edge` is given, a line around it."""
    if radius == 0 and not edge:
        painter.fillRect(box, QColor(ground))
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    scale = Style.scale  # one call a plate would be many a screen
    thick, corner = round(line * scale), round(radius * scale)
    painter.setPen(QPen(QColor(edge), thick) if edge else Qt.PenStyle.NoPen)
    painter.setBrush(QColor(ground) if ground else Qt.BrushStyle.NoBrush)
    half = thick / 2
    inner = QRectF(box).adjusted(half, half, -half, -half)
    painter.drawRoundedRect(inner, corner, corner)


def draw_bar(painter: QPainter, box: QRect, share: float, shade: str = "good") -> None:
    """Draws a horizontal bar, filled to a share of 0 to 1."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    round_, colours = min(px(6), box.height() / 2), palette()
    painter.setBrush(QColor(colours.rest))
    painter.drawRoundedRect(box, round_, round_)
    filled = QRectF(box)
    filled.setWidth(box.width() * min(1.0, max(0.0, share)))
    if filled.width() > 0:
        good = shade in ("", "good")
        painter.setBrush(QColor(colours.fill if good else tone_colour(shade)))
        painter.drawRoundedRect(filled, round_, round_)


def draw_outline(painter: QPainter, box: QRect, shape: "Shape | None") -> None:
    """Draws a part's outline with its holes, small, as it is recognised beside its name."""
    if shape is None or not shape.outline:
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    length, width = shape.box
    edge = px(6)
    scale = min((box.width() - edge) / max(length, 1), (box.height() - edge) / max(width, 1))
    left = box.x() + (box.width() - length * scale) / 2
    low = box.y() + (box.height() + width * scale) / 2
    painter.setPen(QPen(QColor(palette().ink), px(1.6)))
    painter.setBrush(QColor(palette().paper))
    for loop in (shape.outline, *shape.holes[:24]):
        painter.drawPolygon(
            QPolygonF([QPointF(left + x * scale, low - y * scale) for x, y in loop])
        )
        painter.setPen(QPen(QColor(palette().quiet), 1))


def draw_tick(painter: QPainter, box: QRect, state: str) -> None:
    """Draws a filled disc with a check, an empty ring, a dashed ring, or a square."""
    inner, colours = QRectF(box).adjusted(2, 2, -2, -2), palette()
    if state == "done":
        draw_mark(painter, inner, "good", colours.good, colours.paper)
        return
    if state == "wrong":
        draw_mark(painter, inner, "stop", colours.stop, colours.paper)
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    dash = Qt.PenStyle.DashLine if state == "later" else Qt.PenStyle.SolidLine
    painter.setPen(QPen(QColor(colours.quiet), px(3), dash))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawEllipse(inner)


def draw_mark(painter: QPainter, box: QRectF, shade: str, colour: str, sign: str) -> None:
    """Draws the shape of a tone: a disc with a check or a question mark, a triangle, a square."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colour))
    if shade == "attention":
        painter.drawPolygon(
            QPolygonF([QPointF(box.center().x(), box.top()), box.bottomRight(), box.bottomLeft()])
        )
    elif shade == "stop":
        painter.drawRect(box)
    else:
        painter.drawEllipse(box)
    _draw_sign(painter, box, shade, sign)


def _draw_sign(painter: QPainter, box: QRectF, shade: str, sign: str) -> None:
    """Draws a check, a question mark, an exclamation mark or a bar inside the shape."""
    painter.setPen(
        QPen(
            QColor(sign), max(2.0, box.width() / 9), Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap
        )
    )
    painter.setBrush(Qt.BrushStyle.NoBrush)
    w, h, x, y = box.width(), box.height(), box.x(), box.y()
    if shade == "attention":
        painter.drawLine(QPointF(x + w / 2, y + h * 0.42), QPointF(x + w / 2, y + h * 0.66))
        painter.drawPoint(QPointF(x + w / 2, y + h * 0.83))
    elif shade == "stop":
        painter.drawLine(QPointF(x + w * 0.25, y + h / 2), QPointF(x + w * 0.75, y + h / 2))
    elif shade == "ask":
        bow = QRectF(x + w * 0.36, y + h * 0.22, w * 0.28, h * 0.28)
        painter.drawArc(bow, 170 * 16, -260 * 16)  # in sixteenths of a degree
        painter.drawLine(QPointF(x + w / 2, y + h * 0.5), QPointF(x + w / 2, y + h * 0.6))
        painter.drawPoint(QPointF(x + w / 2, y + h * 0.77))
    else:
        painter.drawPolyline(
            [
                QPointF(x + w * 0.28, y + h * 0.52),
                QPointF(x + w * 0.44, y + h * 0.68),
                QPointF(x + w * 0.73, y + h * 0.34),
            ]
        )
