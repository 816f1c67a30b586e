"""Texts and boxes that a widget writes on itself, and how much room they need.

A block is one widget that lays its texts out by itself: a label for each text, laid out
by Qt, took most of the time from a scan to its painted answer.
"""

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QPainter

from station.look.language import Text, translate
from station.look.style import Lettering, Style, find_lettering, text_colour

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
CARET = "|"
CUT_OFF = "…"
AIR = 2  # px that a line is given more than it needs


class PlacedText(NamedTuple):
    """A text in its box on a widget."""

    text: str
    box: QRect
    lettering: Lettering
    colour: str
    flags: int

    def measure(self, width: int = 0) -> tuple[int, int]:
        """Measures the width and height that the text takes at a width, its box's, pixels."""
        return _measure(self.text, self.lettering, width or self.box.width())

    def paint(self, painter: QPainter) -> None:
        """Paints the text."""
        painter.setFont(self.lettering.font)
        painter.setPen(QColor(self.colour))
        painter.drawText(self.box, self.flags, self.text)


def measure_wrapped(shown: str, size: int, width: int, *, bold: bool = False) -> tuple[int, int]:
    """Measures the width and height of a text that is wrapped at a width, pixels."""
    return _measure(shown, find_lettering(size, bold=bold), max(width, 1))


@lru_cache(maxsize=KEPT)
def _measure(shown: str, lettering: Lettering, width: int) -> tuple[int, int]:
    metrics = lettering.metrics
    one_line = metrics.horizontalAdvance(shown)
    if one_line <= width and "\n" not in shown:
        return one_line, metrics.height()
    box = metrics.boundingRect(QRect(0, 0, width, 10_000), WRAP, shown)
    return box.width(), box.height()


class TextLine(NamedTuple):
    """A text in the language and lettering of the screen, measured as it stands unwrapped."""

    text: str
    size: int  # px on the smallest screen
    bold: bool
    lettering: Lettering
    width: int = 0  # px, with a little air; 0 for no text
    height: int = 0


def write_line(words: Text, size: int, *, bold: bool = False) -> TextLine:
    """Writes a text on a line, to be measured first and put on a page then."""
    shown, lettering = translate(words), find_lettering(size, bold=bold)
    if not shown:
        return TextLine("", size, bold, lettering)
    width, height = _measure(shown, lettering, FAR)
    return TextLine(shown, size, bold, lettering, width + AIR, height)


def measure_width(words: Text, size: int, *, bold: bool = False) -> int:
    """Measures the width of a text on one line, pixels."""
    return write_line(words, size, bold=bold).width


def _wrap(line: TextLine, width: int) -> tuple[Lettering, int]:
    """Wraps a line at a width; a long word is set smaller, never cut."""
    size, lettering = line.size, line.lettering
    wide, tall = _measure(line.text, lettering, width)
    while wide > width and size > SMALLEST:
        size -= 1
        lettering = find_lettering(size, bold=line.bold)
        wide, tall = _measure(line.text, lettering, width)
    return lettering, tall


def fit_line(words: Text, size: int, width: int, *, bold: bool = False) -> TextLine:
    """Writes a text on one line; its end is left out where it is too long."""
    line = write_line(words, size, bold=bold)
    shown = line.text
    while line.width - AIR > width and shown:
        shown = shown[:-1].rstrip()
        line = write_line(shown + CUT_OFF, size, bold=bold)
    return line


def write_typed(text: str, caret: int, size: int, width: int, *, bold: bool = False) -> TextLine:
    """Writes what is typed with its caret, on one line: its beginning is left out where long."""
    shown = f"{text[:caret]}{CARET}{text[caret:]}"
    line = write_line(shown, size, bold=bold)
    while line.width - AIR > width and len(shown) > 1:
        keep = shown.index(CARET) > len(shown) // 2
        shown = shown[1:] if keep else shown[:-1]
        line = write_line(shown, size, bold=bold)
    return line


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
        line = write_line(words, size, bold=bold)
        return self.put_line(line, box, tone=tone, flags=flags, high=high)

    def put_line(
        self,
        line: TextLine,
        box: tuple[int, int, int],
        *,
        tone: str = "",
        flags: int = LEFT,
        high: int = 0,
    ) -> int:
        """Puts a line into (left, top, width), wrapped where it is too long for it."""
        if not line.text:
            return high
        left, top, width = box
        lettering, tall = line.lettering, line.height
        if wrapped := line.width - AIR > width or "\n" in line.text:
            lettering, tall = _wrap(line, max(width, 1))
        where = QRect(left, top, max(width, 1), max(tall, high))
        colour = text_colour(tone) if tone else Style.palette.ink
        # One that just fits is not wrapped: Qt would break it for a part of a pixel, and only
        # one line has room.
        flags |= WRAP if wrapped else 0
        self.words.append(PlacedText(line.text, where, lettering, colour, flags))
        return where.height()

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
