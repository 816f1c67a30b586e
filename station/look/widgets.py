"""The smallest things on a screen: a label, something to touch, a bar, a picture."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QBoxLayout,
    QLabel,
    QLayout,
    QSizePolicy,
    QWidget,
)

from station.look import fonts
from station.look.palette import LIGHT, Palette, tone
from station.look.texts import Text, text

if TYPE_CHECKING:  # facts take time to load, and a first frame needs none
    from station.shop.facts import Shape

Send = Callable[[str], None]
TARGET = 60  # the least height of what is touched with gloves on
GAP = 12


class Style:
    """The palette in use; one for the program."""

    palette: Palette = LIGHT


def palette() -> Palette:
    """The colours in use."""
    return Style.palette


class Label(QLabel):
    """A text; wraps where it must, never cut."""

    def __init__(self, px: int = 17, *, bold: bool = False, wrap: bool = True) -> None:
        super().__init__()
        self._tone, self._px, self._bold = "", px, bold
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(fonts.font(px, bold=bold))
        self.setWordWrap(wrap)
        self.set_tone("")

    def say(self, words: Text, shade: str = "") -> "Label":
        """Sets the text and its tone; nothing is repainted when both are the same."""
        shown = text(words)
        if shown != self.text():
            self.setText(shown)
        if shade != self._tone:
            self.set_tone(shade)
        return self

    def bold(self, heavy: bool) -> "Label":  # noqa: FBT001 - as Qt's own setBold
        """Makes the text heavy or light."""
        if heavy != self._bold:
            self._bold = heavy
            self.setFont(fonts.font(self._px, bold=heavy))
        return self

    def size_to(self, px: int) -> None:
        """Sets the height of the text."""
        if px != self._px:
            self._px = px
            self.setFont(fonts.font(px, bold=self._bold))

    def set_tone(self, shade: str) -> None:
        """Colours the text by its meaning."""
        self._tone = shade
        self.colour(palette().ochre_text if shade == "attention" else tone(palette(), shade))

    def colour(self, colour: str) -> None:
        """Colours the text."""
        self.setStyleSheet(f"color: {colour}; background: transparent;")


class Touch(QAbstractButton):
    """Something to touch that sends a code; paints its own ground, holds other widgets.

    `code` may be several codes joined by ``|``: each is sent in turn.
    """

    def __init__(self, send: Send, code: str = "", name: str = "") -> None:
        super().__init__()
        self._send, self.code = send, code
        self.ground, self.edge, self.radius = "", "", 8
        self.setMinimumHeight(TARGET)
        # by Tab only: a touch leaves no focus behind that a scanner's Enter would press
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.setAccessibleName(name)
        self.clicked.connect(self._sent)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the focus; every other key is the scanner's."""
        arrows = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)
        if event.key() in arrows:
            super().keyPressEvent(event)
        else:
            event.ignore()

    def _sent(self) -> None:
        for one in filter(None, self.code.split("|")):
            self._send(one)

    def sizeHint(self) -> QSize:
        """As large as what it holds, never under a glove's size."""
        held = self.layout()
        hint = held.sizeHint() if held else QSize(120, TARGET)
        return hint.expandedTo(QSize(60, TARGET))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The ground, a line around it, and a stronger one while it has the focus."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        focus = self.hasFocus() and bool(self.code)
        edge = palette().act if focus else self.edge
        painter.setPen(QPen(QColor(edge), 3 if focus else 2) if edge else Qt.PenStyle.NoPen)
        painter.setBrush(QColor(self.ground) if self.ground else Qt.BrushStyle.NoBrush)
        if self.isDown():
            painter.setBrush(QColor(palette().tint))
        inner = QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -1.5)
        painter.drawRoundedRect(inner, self.radius, self.radius)


class Bar(QWidget):
    """A horizontal bar, filled to a share of its width."""

    def __init__(self, height: int = 14) -> None:
        super().__init__()
        self._share, self._tone = 0.0, "good"
        self.setFixedHeight(height)

    def set(self, share: float, shade: str = "good") -> None:
        """Fills the bar to a share of 0 to 1."""
        share = min(1.0, max(0.0, share))
        if (share, shade) != (self._share, self._tone):
            self._share, self._tone = share, shade
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The empty bar, and the filled part over it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        whole = QRectF(self.rect())
        painter.setBrush(QColor(palette().rest))
        painter.drawRoundedRect(whole, 6, 6)
        good = self._tone in ("", "good")
        painter.setBrush(QColor(palette().fill if good else tone(palette(), self._tone)))
        whole.setWidth(whole.width() * self._share)
        if self._share > 0:
            painter.drawRoundedRect(whole, 6, 6)


class Outline(QWidget):
    """A part's outline, small, as it is recognised beside its name."""

    def __init__(self, width: int = 52, height: int = 40) -> None:
        super().__init__()
        self._shape: Shape | None = None
        self.setFixedSize(width, height)

    def set(self, shape: "Shape | None") -> None:
        """Shows a shape; nothing for None."""
        if shape is not self._shape:
            self._shape = shape
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The outline with its holes, fitted into the widget."""
        if self._shape is None or not self._shape.outline:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        length, width = self._shape.box
        scale = min((self.width() - 6) / max(length, 1), (self.height() - 6) / max(width, 1))
        left, top = (self.width() - length * scale) / 2, (self.height() + width * scale) / 2
        painter.setPen(QPen(QColor(palette().ink), 1.6))
        painter.setBrush(QColor(palette().paper))
        for loop in (self._shape.outline, *self._shape.holes[:24]):
            painter.drawPolygon(
                QPolygonF([QPointF(left + x * scale, top - y * scale) for x, y in loop])
            )
            painter.setPen(QPen(QColor(palette().quiet), 1))


def tight(layout: QBoxLayout | QLayout, gap: int = 4, margin: int = 0) -> None:
    """Sets a layout's gaps and margins."""
    layout.setSpacing(gap)
    layout.setContentsMargins(margin, margin, margin, margin)


def clear(layout: QLayout) -> None:
    """Takes every widget out of a layout and lets it go."""
    while item := layout.takeAt(0):
        if found := item.widget():
            _unfocus(found)
            found.setParent(None)
            found.deleteLater()
        elif inner := item.layout():
            clear(inner)


def _unfocus(leaving: QWidget) -> None:
    """Gives the focus to the window, not to a neighbour that Enter would then press."""
    focus = QApplication.focusWidget()
    if focus and (focus is leaving or leaving.isAncestorOf(focus)):
        focus.window().setFocus()


def mark(painter: QPainter, box: QRectF, shade: str, colour: str, sign: str) -> None:
    """The shape of a tone: a disc with a check, a triangle, a square."""
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
    _sign(painter, box, shade, sign)


def _sign(painter: QPainter, box: QRectF, shade: str, sign: str) -> None:
    """A check, an exclamation mark or a bar inside the shape."""
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
    else:
        painter.drawPolyline(
            [
                QPointF(x + w * 0.28, y + h * 0.52),
                QPointF(x + w * 0.44, y + h * 0.68),
                QPointF(x + w * 0.73, y + h * 0.34),
            ]
        )
