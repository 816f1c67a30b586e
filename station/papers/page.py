"""A page to lay out on: type, sizes, wrapped and fitted words, boxes, codes; in millimetres."""

from collections.abc import Sequence
from datetime import datetime

from reportlab.lib.utils import simpleSplit

from station.papers import bars, pdf
from station.papers.marks import BarsMark, DotMark, LineMark, Mark, TextMark
from station.papers.spoken import Text, tell
from station.shop.words import Say, clock, dated, day, say

MM = 72 / 25.4  # points
SIZES = {
    "A4": (210.0, 297.0),  # ISO 216, as everyone cuts them
    "A5": (148.0, 210.0),
    "Letter": (215.9, 279.4),  # ANSI/ASME Y14.1, size A: 8.5 x 11 inches
}
LEGIBLE = 8.0  # points; smaller is not read at arm's length (common practice, no source)
LEADING = 1.22  # from line to line, of the type size
CUT_OFF = "…"
MOST_LINES = 20  # of a caution, which is printed whole
_WEEKDAYS = (
    say("Mon"), say("Tue"), say("Wed"), say("Thu"), say("Fri"), say("Sat"), say("Sun"),
)  # fmt: skip


class Page:
    """Pages of one size; `x` from the left and `y` from the top, in mm."""

    def __init__(self, width: float, height: float, title: Text) -> None:
        self.width, self.height = bars.cut_to_dots(width), bars.cut_to_dots(height)
        self.title = tell(title)
        self.pages: list[list[Mark]] = [[]]

    @classmethod
    def make(cls, paper: str, title: Text) -> "Page":
        """Makes a page of a paper's size (A4 where it is not known)."""
        return cls(*SIZES.get(paper, SIZES["A4"]), title)

    @property
    def is_large(self) -> bool:
        """Says whether there is the room of an A4 page."""
        return self.width > 180

    @property
    def edge(self) -> float:
        """What stays white left and right, mm."""
        return 11.0 if self.is_large else 8.0

    @property
    def inner(self) -> float:
        """The width between the edges, mm."""
        return self.width - 2 * self.edge

    @property
    def right(self) -> float:
        """Where the right edge begins, mm."""
        return self.width - self.edge

    def write_pdf(self) -> bytes:
        """Writes the finished document."""
        return pdf.write_pdf(self.title, self.width, self.height, self.pages)

    def turn_page(self) -> None:
        """Goes on to the next page."""
        self.pages.append([])

    def add_mark(self, mark: Mark) -> None:
        """Adds one mark to the page."""
        self.pages[-1].append(mark)

    def draw_text(
        self,
        x: float,
        y: float,
        words: Text,
        size: float = 10,
        *,
        bold: bool = False,
        grey: float = 0.0,
        side: str = "left",
    ) -> None:
        """Draws one line, its foot at y; x is its left, right or middle."""
        self.add_mark(TextMark(x, y, tell(words), size, bold, grey, side))

    def measure_text(self, words: Text, size: float, *, bold: bool = False) -> float:
        """Measures how wide words stand, mm."""
        return pdf.measure_text(tell(words), size, bold=bold)

    def break_lines(
        self, width: float, words: Text, size: float, *, bold: bool = False
    ) -> list[str]:
        """Breaks words into lines of a width in mm; a word too long is broken too."""
        lines: list[str] = []
        for line in simpleSplit(tell(words), pdf.load_font(bold=bold), size, width * MM):
            rest = line
            while pdf.measure_text(rest, size, bold=bold) > width and len(rest) > 1:
                fits = _count_fitting(rest, width, size, bold=bold)
                lines.append(rest[:fits])
                rest = rest[fits:]
            lines.append(rest)
        return lines

    def draw_wrapped(
        self,
        x: float,
        y: float,
        width: float,
        words: Text,
        size: float = 10,
        *,
        bold: bool = False,
        most: int = 9,
        grey: float = 0.0,
    ) -> float:
        """Draws lines within a width, the first one's foot at y; gives the foot of the last.

        What more than `most` lines would take is cut off, and the last line says so with
        an ellipsis.
        """
        lines = self.break_lines(width, words, size, bold=bold)
        if len(lines) > most:
            last = " ".join(lines[most - 1 :])
            lines = [*lines[: most - 1], shorten_text(last, width, size, bold=bold)]
        step = size * LEADING / MM
        for n, line in enumerate(lines):
            self.draw_text(x, y + n * step, line, size, bold=bold, grey=grey)
        return y + max(0, len(lines) - 1) * step

    def draw_fitted(
        self,
        x: float,
        y: float,
        width: float,
        words: Text,
        size: float,
        *,
        bold: bool = False,
        least: float = LEGIBLE,
        side: str = "left",
    ) -> None:
        """Draws a line small enough for a width, never below `least`: then it is cut off."""
        told = tell(words)
        whole = pdf.measure_text(told, size, bold=bold)
        small = min(size, max(least, size * width / max(whole, 0.1)))
        self.draw_text(
            x, y, shorten_text(told, width, small, bold=bold), small, bold=bold, side=side
        )

    def draw_box(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        *,
        line: float = 0.3,
        dash: bool = False,
        fill: float | None = None,
    ) -> None:
        """Draws a rectangle, its upper left at x, y."""
        corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
        self.add_mark(LineMark(corners, line, closed=True, dash=dash, fill=fill))

    def draw_line(
        self,
        x1: float,
        y1: float,
        x2: float,
        y2: float,
        width: float = 0.25,
        *,
        dash: bool = False,
        grey: float = 0.0,
    ) -> None:
        """Draws a line."""
        self.add_mark(LineMark(((x1, y1), (x2, y2)), width, grey, dash=dash))

    def draw_loop(
        self,
        points: Sequence[tuple[float, float]],
        line: float,
        *,
        grey: float = 0.25,
        fill: float | None = None,
    ) -> None:
        """Draws a closed line through points."""
        if points:
            self.add_mark(LineMark(tuple(points), line, grey, closed=True, fill=fill))

    def draw_dot(self, x: float, y: float, radius: float, *, grey: float = 0.0) -> None:
        """Draws a filled circle."""
        self.add_mark(DotMark(x, y, radius, grey))

    def draw_code(
        self,
        x: float,
        y: float,
        code: str,
        *,
        dots: int = bars.DOTS,
        height: float = 0.0,
        size: float = 9,
        words: Text = "",
    ) -> float:
        """Draws bars with their quiet zone from x, their top at y, the code in words under them.

        Gives the foot of the words, mm.
        """
        high = max(height, bars.find_least_height(code, dots))
        self.add_mark(BarsMark(x + bars.measure_quiet(dots), y, code, dots, high))
        foot = y + high + size * 1.1 / MM
        middle = x + bars.measure_length(code, dots) / 2
        self.draw_text(middle, foot, words or bars.space_code(code), size, side="middle")
        return foot


def _count_fitting(words: str, width: float, size: float, *, bold: bool) -> int:
    """Counts the characters that fit into a width, one at least."""
    fits = len(words)
    while fits > 1 and pdf.measure_text(words[:fits], size, bold=bold) > width:
        fits -= 1
    return fits


def shorten_text(words: str, width: float, size: float, *, bold: bool = False) -> str:
    """Shortens words to as many of them as fit a width in mm, with an ellipsis.

    Between words where it can be: half a number is worse than none.
    """
    if pdf.measure_text(words, size, bold=bold) <= width + 0.01:
        return words
    room = width - pdf.measure_text(CUT_OFF, size, bold=bold)
    fits = _count_fitting(words, room, size, bold=bold)
    kept, rest = words[:fits], words[fits:]
    if " " in kept and not rest.startswith(" "):
        kept = kept.rpartition(" ")[0]
    return kept.rstrip(" ,·") + CUT_OFF


def say_day(at: str) -> Say:
    """Says ``2026-11-25T07:12:00`` as ``Wed 25 Nov``; an empty time as nothing."""
    if not at:
        return Say()
    weekday = _WEEKDAYS[datetime.fromisoformat(at).weekday()]
    return say("{weekday} {day}", weekday=weekday, day=day(at))


def say_moment(at: str) -> Say:
    """Says ``2026-11-25T07:12:00`` as ``Wed 25 Nov 07:12``; an empty time as nothing."""
    return say("{day} {at}", day=say_day(at), at=clock(at)) if at else Say()


def say_moment_in_full(at: str) -> Say:
    """Says ``2026-11-25T07:12:00`` as ``Wed 25 Nov 2026 07:12``."""
    weekday = _WEEKDAYS[datetime.fromisoformat(at).weekday()]
    return say("{weekday} {day} {at}", weekday=weekday, day=dated(at), at=clock(at))


def measure_code(code: str, dots: int = bars.DOTS) -> float:
    """Measures the width of a code in mm, quiet zones included."""
    return bars.measure_length(code, dots)
