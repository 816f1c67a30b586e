"""The bar at the top (where, who, when, shared) and the strip at the bottom (the answer)."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from station.look.language import Text
from station.look.marks import draw_mark
from station.look.style import STRIP_GROUNDS, palette, px
from station.look.widgets import Label
from station.look.written import RIGHT, measure_width, measure_wrapped
from station.shop.words import say

if TYPE_CHECKING:  # acts bring the facts along, and a first frame needs none
    from station.shop.acts import Answer

TOP, STRIP = 42, 100  # px high
EDGE, APART, BESIDE = 24, 40, 12  # px
STRIP_GAP, STRIP_MARK = 18, 32  # px
SAID, DO = (39, 18), (39, 16)  # px, the type at most and at least


class ToneMark(QWidget):
    """Shows the shape of a tone on a coloured ground."""

    def __init__(self, parent: QWidget, size: int) -> None:
        super().__init__(parent)
        self.look = ("good", palette().on_bar, palette().bar)
        self.setFixedSize(px(size), px(size))

    def show_tone(self, shade: str, colour: str, sign: str) -> None:
        """Shows a tone's shape in these colours."""
        if self.look != (shade, colour, sign):
            self.look = (shade, colour, sign)
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paints the shape."""
        shade, colour, sign = self.look
        box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        draw_mark(QPainter(self), box, shade, colour, sign)


class Ground(QWidget):
    """Paints one plain colour behind what stands on it."""

    def __init__(self, high: int) -> None:
        super().__init__()
        self.colour = palette().bar
        self.setFixedHeight(px(high))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paints the colour."""
        QPainter(self).fillRect(self.rect(), QColor(self.colour))


class TopBar(Ground):
    """Shows where I am, who I am, the time, and whether what I did is shared."""

    def __init__(self) -> None:
        super().__init__(TOP)
        colour = palette().on_bar
        self.area = Label(self, 28, colour, bold=True)
        self.where, self.worker = Label(self, 18, colour), Label(self, 18, colour)
        self.clock = Label(self, 20, colour, bold=True)
        self.shared, self.mark = Label(self, 18, colour), ToneMark(self, 28)

    def show_texts(
        self, *, area: Text, where: Text, worker: Text, clock: str, shared: Text, shared_ok: bool
    ) -> None:
        """Shows the bar's texts."""
        said = ((self.area, area), (self.where, where), (self.worker, worker),
                (self.clock, clock), (self.shared, shared))  # fmt: skip
        changed = [label.set_words(words) for label, words in said]
        self.mark.setVisible(bool(shared))
        ok = shared_ok
        self.mark.show_tone("good" if ok else "attention", SHARED[ok], palette().bar)
        if any(changed):
            self._place_texts()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Puts the texts into the new width."""
        super().resizeEvent(event)
        self._place_texts()

    def _place_texts(self) -> None:
        """Places from the left area and where; from the right shared, the time, who."""
        left, right = px(EDGE), self.width() - px(EDGE)
        for label in (self.shared, self.mark, self.clock, self.worker):
            wide_ = label.width() if isinstance(label, ToneMark) else label.needed_width()
            top = (self.height() - label.height()) // 2 if label is self.mark else 0
            high = label.height() if label is self.mark else self.height()
            right -= wide_
            label.setGeometry(right, top, wide_, high)
            right -= px(BESIDE if label is self.shared else APART)
        for label in (self.area, self.where):
            wide_ = min(label.needed_width(), max(right - left, 0))
            label.setGeometry(left, 0, wide_, self.height())
            left += wide_ + px(APART)


SHARED = {True: "#8fbf9b", False: "#f0b455"}


class Strip(Ground):
    """Answers the last scan: what happened, what to do now; the code at the right."""

    def __init__(self) -> None:
        super().__init__(STRIP)
        self.mark = ToneMark(self, STRIP_MARK)
        colour = palette().on_bar
        self.said, self.do = Label(self, SAID[0], colour, bold=True), Label(self, DO[0], colour)
        self.last, self.code = Label(self, 14, colour), Label(self, 22, colour, bold=True)
        for label in (self.last, self.code):
            label.align_to(RIGHT)
        self.mark.hide()

    def show_answer(self, answer: "Answer", code: str) -> None:
        """Shows an answer and the code that it answers."""
        self.colour = STRIP_GROUNDS[answer.tone]
        self.mark.show_tone(answer.tone, palette().on_bar, self.colour)
        self.mark.show()
        self.said.set_words(answer.said)
        self.do.set_words(answer.do)
        self.last.set_words(say("last scan") if code else "")
        self.code.set_words(space_scanned(code))
        self.setAccessibleName(f"{self.said.text()}. {self.do.text()}")
        self._place_texts()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fits the sentences into the new width."""
        super().resizeEvent(event)
        self._place_texts()

    def _place_texts(self) -> None:
        """Places the code at the right, the sentences in what is left, smaller if long."""
        side, gap, left = px(STRIP_MARK), px(STRIP_GAP), px(EDGE)
        self.mark.move(left, (self.height() - side) // 2)
        code = max(self.last.needed_width(), self.code.needed_width())
        right = self.width() - left - code
        _stack_labels(right, code, self.height(), self.last, self.code)
        left += side + gap
        free = right - gap - left
        for label, (most, least) in ((self.said, SAID), (self.do, DO)):
            label.set_size(_find_size(label.text(), most, least, free, bold=label is self.said))
        _stack_labels(left, free, self.height(), self.said, self.do)

    def show_typing(self, text: str) -> None:
        """Shows what is being typed in place of the last code."""
        self.last.set_words(say("typing") if text else "")
        self.code.set_words(text[-24:])
        self._place_texts()


def _find_size(text: str, most: int, least: int, free: int, *, bold: bool) -> int:
    """Finds the largest type in which a sentence stands on one line: it is never cut."""
    sizes = (
        size for size in range(most, least, -1) if measure_width(text, size, bold=bold) <= free
    )
    return next(sizes, least)


def _stack_labels(left: int, width: int, height: int, *labels: Label) -> None:
    """Puts two lines into the middle of the strip."""
    highs = [
        measure_wrapped(label.text() or " ", label.size_, width, bold=label.heavy)[1]
        for label in labels
    ]
    top = (height - sum(highs)) // 2
    for label, high in zip(labels, highs, strict=True):
        label.setGeometry(left, top, max(width, 1), high)
        top += high


def space_scanned(code: str) -> str:
    """Writes ``B00412AA`` as ``B 00412 A A``: letters and digits apart, the check last."""
    typed = not any(char.isdigit() for char in code)  # a name, say
    if typed or len(code) < 3 or not code.isalnum() or len(code) > 14 or not code[0].isupper():
        return code[:14]
    groups = [code[0]]
    for char in code[1:-1]:
        if groups[-1][-1].isdigit() and char.isdigit():
            groups[-1] += char
        else:
            groups.append(char)
    return " ".join([*groups, code[-1]])
