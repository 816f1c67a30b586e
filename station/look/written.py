"""Texts and boxes that a widget writes on itself, and how much room they need.

A block is one widget that lays its texts out by itself: a label for each text, laid out
by Qt, took most of the time from a scan to its painted answer.
"""

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QPainter

from station.look import style
from station.look.language import Text, text
from station.look.style import palette, px, tone

Align = Qt.AlignmentFlag
LEFT = int(Align.AlignLeft | Align.AlignVCenter)
RIGHT = int(Align.AlignRight | Align.AlignVCenter)
CENTRE = int(Align.AlignCenter)
TOP_RIGHT = int(Align.AlignRight | Align.AlignTop)
LOW_LEFT = int(Align.AlignLeft | Align.AlignBottom)
LOW_RIGHT = int(Align.AlignRight | Align.AlignBottom)
WRAP = int(Qt.TextFlag.TextWordWrap)
SMALLEST = 12  # px on the smallest screen
KEPT = 4096  # measured texts
FAR = 100_000  # px, wider than any line


class Words(NamedTuple):
    """A text in its box on a widget; `size` is its height on the smallest screen."""

    text: str
    box: QRect
    size: int
    bold: bool
    colour: str
    flags: int

    def needs(self) -> tuple[int, int]:
        """The width and height that the text takes in a box this wide, pixels."""
        return room(self.text, self.size, self.box.width(), bold=self.bold)

    def write(self, painter: QPainter) -> None:
        """Writes the text."""
        painter.setFont(style.font(self.size, bold=self.bold))
        painter.setPen(QColor(self.colour))
        painter.drawText(self.box, self.flags, self.text)


def room(shown: str, size: int, width: int, *, bold: bool = False) -> tuple[int, int]:
    """The width and height of a text that is wrapped at a width, pixels."""
    return _room(shown, px(size), max(width, 1), bold)


@lru_cache(maxsize=KEPT)
def _room(shown: str, high: int, width: int, bold: bool) -> tuple[int, int]:  # noqa: FBT001 - a cache's key
    metrics = style.metrics_of(high, bold)
    one_line = metrics.horizontalAdvance(shown)
    if one_line <= width and "\n" not in shown:
        return one_line, metrics.height()
    box = metrics.boundingRect(QRect(0, 0, width, 10_000), WRAP, shown)
    return box.width(), box.height()


def wide(words: Text, size: int, *, bold: bool = False) -> int:
    """The width of a text on one line, pixels."""
    shown = text(words)
    return _room(shown, px(size), FAR, bold)[0] + 2 if shown else 0


def shade(name: str) -> str:
    """The colour of a text by its meaning."""
    return palette().ochre_text if name == "attention" else tone(palette(), name)


class Page:
    """What stands on a widget at one width: its texts, and how high it is."""

    def __init__(self, width: int) -> None:
        self.width, self.height = width, 0
        self.words: list[Words] = []
        self.inner: list[tuple[QRect, Page]] = []  # rows that are widgets of their own

    def put(
        self,
        words: Text,
        box: tuple[int, int, int],
        size: int,
        *,
        bold: bool = False,
        tone: str = "",
        flags: int = LEFT,
        high: int = 0,
    ) -> int:
        """Writes a text into (left, top, width), at least `high`; gives the height it takes."""
        shown = text(words)
        if not shown:
            return high
        left, top, width = box
        needs = room(shown, size, width, bold=bold)
        while needs[0] > width and size > SMALLEST:  # a long word is set smaller, never cut
            size -= 1
            needs = room(shown, size, width, bold=bold)
        tall = max(needs[1], high)
        where = QRect(left, top, max(width, 1), tall)
        self.words.append(Words(shown, where, size, bold, shade(tone), flags | WRAP))
        return tall

    def down(self, words: Text, size: int, *, bold: bool = False, tone: str = "") -> None:
        """Writes a text over the whole width below everything so far."""
        at = (0, self.height, self.width)
        self.height += self.put(words, at, size, bold=bold, tone=tone)

    def hold(self, inner: "Page", left: int = 0) -> None:
        """Puts a page of its own below everything so far."""
        self.inner.append((QRect(left, self.height, inner.width, inner.height), inner))
        self.height += inner.height

    def stack(self, count: int, least: int, edge: int) -> None:
        """Sets the height, and stacks the first texts in the middle of it."""
        tall = sum(words.box.height() for words in self.words[:count])
        highest = max([tall, *(words.box.height() for words in self.words[count:])])
        self.height = max(least, highest + 2 * edge)
        top = (self.height - tall) // 2
        for words in self.words[:count]:
            words.box.moveTop(top)
            top += words.box.height()

    def middle(self, first: int = 0) -> None:
        """Moves each text from the `first` on into the middle of the height."""
        for words in self.words[first:]:
            words.box.moveTop((self.height - words.box.height()) // 2)

    def sink(self, height: int) -> None:
        """Moves each text to the foot of a height."""
        for words in self.words:
            words.box.moveBottom(height - 1)

    def write(self, painter: QPainter) -> None:
        """Writes every text."""
        for words in self.words:
            words.write(painter)

    def said(self) -> str:
        """Everything that is written, for who cannot see it."""
        return ", ".join(words.text for words in self.words)
