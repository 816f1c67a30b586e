"""The bar at the top (where, who, when, shared) and the strip at the bottom (the answer)."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from station.look import fonts
from station.look.texts import Text
from station.look.widgets import Label, mark, palette
from station.shop.words import say

if TYPE_CHECKING:  # acts bring the facts along, and a first frame needs none
    from station.shop.acts import Answer

TOP, STRIP = 58, 72


class Mark(QWidget):
    """The shape of a tone on a coloured ground."""

    def __init__(self, size: int) -> None:
        super().__init__()
        self.shade, self.colour, self.sign = "good", "#9cc5a6", "#ffffff"
        self.setFixedSize(size, size)

    def set(self, shade: str, colour: str, sign: str) -> None:
        """Shows a tone's shape in these colours."""
        self.shade, self.colour, self.sign = shade, colour, sign
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The shape."""
        painter = QPainter(self)
        box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        mark(painter, box, self.shade, self.colour, self.sign)


class Ground(QWidget):
    """A widget with one plain colour behind it."""

    def __init__(self, colour: str) -> None:
        super().__init__()
        self.colour = colour

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The colour."""
        QPainter(self).fillRect(self.rect(), QColor(self.colour))


class TopBar(Ground):
    """Where I am, who I am, the time, and whether what I did is shared."""

    def __init__(self) -> None:
        super().__init__(palette().bar)
        self.setFixedHeight(TOP)
        self.area, self.where = Label(28, bold=True, wrap=False), Label(18, wrap=False)
        self.worker, self.clock = Label(18, wrap=False), Label(20, bold=True, wrap=False)
        self.shared, self.mark = Label(18, wrap=False), Mark(28)
        row = QHBoxLayout(self)
        row.setContentsMargins(24, 0, 24, 0)
        row.setSpacing(40)
        for label in (self.area, self.where):
            row.addWidget(label)
        row.addStretch(1)
        for widget in (self.worker, self.clock):
            row.addWidget(widget)
        together = QHBoxLayout()
        together.setSpacing(12)
        together.addWidget(self.mark)
        together.addWidget(self.shared)
        row.addLayout(together)
        for label in (self.area, self.where, self.worker, self.clock, self.shared):
            label.colour(palette().on_bar)

    def set(
        self, *, area: Text, where: Text, worker: str, clock: str, shared: Text, shared_ok: bool
    ) -> None:
        """Shows the bar's texts."""
        for label, words in (
            (self.area, area),
            (self.where, where),
            (self.worker, worker),
            (self.clock, clock),
            (self.shared, shared),
        ):
            label.say(words)
        self.mark.setVisible(bool(shared))
        self.mark.set(
            "good" if shared_ok else "attention",
            "#8fbf9b" if shared_ok else "#f0b455",
            palette().bar,
        )


class Strip(Ground):
    """Answers the last scan: what happened, what to do now; the code at the right."""

    def __init__(self) -> None:
        super().__init__(palette().bar)
        self.setFixedHeight(STRIP)
        self.mark = Mark(32)
        self.said, self.do = Label(23, bold=True, wrap=False), Label(17, wrap=False)
        self.last, self.code = Label(14, wrap=False), Label(22, bold=True, wrap=False)
        row = QHBoxLayout(self)
        row.setContentsMargins(24, 4, 24, 4)
        row.setSpacing(18)
        row.addWidget(self.mark)
        row.addLayout(_column(self.said, self.do), 1)
        row.addLayout(_column(self.last, self.code))
        for label in (self.last, self.code):
            label.setAlignment(Qt.AlignmentFlag.AlignRight)
        for label in (self.said, self.do):  # a long sentence never widens the window
            label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        for label in (self.said, self.do, self.last, self.code):
            label.colour(palette().on_bar)
        self.mark.hide()

    def set(self, answer: "Answer", code: str) -> None:
        """Shows an answer and the code that it answers."""
        colours = {"good": "#2e6b3e", "attention": "#9a5b00", "stop": "#9e2026"}
        self.colour = colours[answer.tone]
        self.mark.set(answer.tone, "#fffef8", self.colour)
        self.mark.show()
        self.said.say(answer.said)
        self.do.say(answer.do)
        self.last.say(say("last scan") if code else "")
        self.code.say(spaced(code))
        self.setAccessibleName(f"{self.said.text()}. {self.do.text()}")
        self._fit()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fits the sentences into the new width."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """Sets a long sentence smaller, so that it is never cut."""
        room = self.width() - 2 * 24 - 32 - 3 * 18 - self._code_width()
        for label, most, least in ((self.said, 23, 16), (self.do, 17, 13)):
            bold = label is self.said
            sizes = (
                px
                for px in range(most, least, -1)
                if QFontMetrics(fonts.font(px, bold=bold)).horizontalAdvance(label.text()) <= room
            )
            label.size_to(next(sizes, least))

    def _code_width(self) -> int:
        return max(self.last.sizeHint().width(), self.code.sizeHint().width())

    def typing(self, text: str) -> None:
        """Shows what is being typed in place of the last code."""
        self.last.say(say("typing") if text else "")
        self.code.say(text[-24:])


def _column(*labels: Label) -> QVBoxLayout:
    column = QVBoxLayout()
    column.setSpacing(0)
    column.addStretch(1)
    for label in labels:
        column.addWidget(label)
    column.addStretch(1)
    return column


def spaced(code: str) -> str:
    """``B00412AA`` as ``B 00412 A A``: letters and digits apart, the check last."""
    if len(code) < 3 or not code.isalnum() or len(code) > 14 or not code[0].isalpha():
        return code[:14]
    groups = [code[0]]
    for char in code[1:-1]:
        if groups[-1][-1].isdigit() and char.isdigit():
            groups[-1] += char
        else:
            groups.append(char)
    return " ".join([*groups, code[-1]])
