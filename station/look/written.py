"""Texts and boxes that a widget writes on itself, and how much room they need.

A block is one widget that lays its texts out by itself: a label for each text, laid out
by Qt, took most of the time from a scan to its painted answer.
"""

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QPainter

from station.look import style
from station.look.language import Text, translate
from station.look.style import palette, px, tone_colour

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


class PlacedText(NamedTuple):
    """A text in its box on a widget; `size` is its height on the smallest screen."""

    text: str
    box: QRect
    size: int
    bold: bool
    colour: str
    flags: int

    def measure(self) -> tuple[int, int]:
        """Measures the width and height that the text takes in a box this wide, pixels."""
        return measure_wrapped(self.text, self.size, self.box.width(), bold=self.bold)

    def paint(self, painter: QPainter) -> None:
        """Paints the text."""
        painter.setFont(style.make_font(self.size, bold=self.bold))
        painter.setPen(QColor(self.colour))
        painter.drawText(self.box, self.flags, self.text)


def measure_wrapped(shown: str, size: int, width: int, *, bold: bool = False) -> tuple[int, int]:
    """Measures the width and height of a text that is wrapped at a width, pixels."""
    return _measure(shown, px(size), max(width, 1), bold)


@lru_cache(maxsize=KEPT)
def _measure(shown: str, high: int, width: int, bold: bool) -> tuple[int, int]:  # noqa: FBT001 - a cache's key
    metrics = style.measure_font(high, bold)
    one_line = metrics.horizontalAdvance(shown)
    if one_line <= width and "\n" not in shown:
        return one_line, metrics.height()
    box = metrics.boundingRect(QRect(0, 0, width, 10_000), WRAP, shown)
    return box.width(), box.height()


def measure_width(words: Text, size: int, *, bold: bool = False) -> int:
    """Measures the width of a text on one line, pixels."""
    shown = translate(words)
    return _measure(shown, px(size), FAR, bold)[0] + 2 if shown else 0


def text_colour(name: str) -> str:
    """Gives the colour of a text by its meaning."""
    return palette().ochre_text if name == "attention" else tone_colour(palette(), name)


class TextPage:
    """Holds what stands on a widget at one width: its texts, and how high it is."""

    def __init__(self, width: int) -> None:
        self.width, self.height = width, 0
        self.words: list[PlacedText] = []
        self.inner: list[tuple[QRect, TextPage]] = []  # rows that are widgets of their own

    def put_text(
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
        """Puts a text into (left, top, width), at least `high`; gives the height it takes."""
        shown = translate(words)
        if not shown:
            return high
        left, top, width = box
        needs = measure_wrapped(shown, size, width, bold=bold)
        while needs[0] > width and size > SMALLEST:  # a long word is set smaller, never cut
            size -= 1
            needs = measure_wrapped(shown, size, width, bold=bold)
        tall = max(needs[1], high)
        where = QRect(left, top, max(width, 1), tall)
        self.words.append(PlacedText(shown, where, size, bold, text_colour(tone), flags | WRAP))
        return tall

    def put_below(self, words: Text, size: int, *, bold: bool = False, tone: str = "") -> None:
        """Puts a text over the whole width below everything so far."""
        at = (0, self.height, self.width)
        self.height += self.put_text(words, at, size, bold=bold, tone=tone)

    def put_page(self, inner: "TextPage", left: int = 0) -> None:
        """Puts a page of its own below everything so far."""
        self.inner.append((QRect(left, self.height, inner.width, inner.height), inner))
        self.height += inner.height

    def stack_texts(self, count: int, least: int, edge: int) -> None:
        """Sets the height, and stacks the first texts in the middle of it."""
        tall = sum(words.box.height() for words in self.words[:count])
        highest = max([tall, *(words.box.height() for words in self.words[count:])])
        self.height = max(least, highest + 2 * edge)
        top = (self.height - tall) // 2
        for words in self.words[:count]:
            words.box.moveTop(top)
            top += words.box.height()

    def move_to_middle(self, first: int = 0) -> None:
        """Moves each text from the `first` on into the middle of the height."""
        for words in self.words[first:]:
            words.box.moveTop((self.height - words.box.height()) // 2)

    def move_to_foot(self, height: int) -> None:
        """Moves each text to the foot of a height."""
        for words in self.words:
            words.box.moveBottom(height - 1)

    def paint(self, painter: QPainter) -> None:
        """Paints every text."""
        for words in self.words:
            words.paint(painter)

    def join_texts(self) -> str:
        """Joins everything that is written, for who cannot see it."""
        return ", ".join(words.text for words in self.words)
