"""A page to lay out on: type, sizes, wrapped and fitted words, boxes, codes; in millimetres."""

from collections.abc import Sequence
from datetime import datetime

from reportlab.lib.utils import simpleSplit

from station.papers import bars, pdf
from station.papers.marks import Bars, Dot, Line, Mark, Words

MM = 72 / 25.4  # points
SIZES = {"A4": (210.0, 297.0), "A5": (148.0, 210.0)}  # ISO 216, as everyone cuts them
LEGIBLE = 8.0  # points; smaller is not read at arm's length (common practice, no source)
LEADING = 1.22  # from line to line, of the type size
CUT_OFF = "…"
_DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]
_MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]


class Page:
    """Pages of one size; `x` from the left and `y` from the top, in mm."""

    def __init__(self, width: float, height: float, title: str) -> None:
        self.width, self.height, self.title = bars.whole(width), bars.whole(height), title
        self.pages: list[list[Mark]] = [[]]

    @classmethod
    def of(cls, paper: str, title: str) -> "Page":
        """A page of a paper's size (A4 where it is not known)."""
        return cls(*SIZES.get(paper, SIZES["A4"]), title)

    @property
    def large(self) -> bool:
        """Whether there is the room of an A4 page."""
        return self.width > 180

    @property
    def edge(self) -> float:
        """What stays white left and right, mm."""
        return 11.0 if self.large else 8.0

    @property
    def inner(self) -> float:
        """The width between the edges, mm."""
        return self.width - 2 * self.edge

    @property
    def right(self) -> float:
        """Where the right edge begins, mm."""
        return self.width - self.edge

    def pdf(self) -> bytes:
        """The finished document."""
        return pdf.written(self.title, self.width, self.height, self.pages)

    def turn(self) -> None:
        """The next page."""
        self.pages.append([])

    def put(self, mark: Mark) -> None:
        """One mark on the page."""
        self.pages[-1].append(mark)

    def text(
        self,
        x: float,
        y: float,
        words: str,
        size: float = 10,
        *,
        bold: bool = False,
        grey: float = 0.0,
        side: str = "left",
    ) -> None:
        """One line, its foot at y; x is its left, right or middle."""
        self.put(Words(x, y, words, size, bold, grey, side))

    def measure(self, words: str, size: float, *, bold: bool = False) -> float:
        """How wide words stand, mm."""
        return pdf.wide(words, size, bold=bold)

    def lines(self, width: float, words: str, size: float, *, bold: bool = False) -> list[str]:
        """The words broken into lines of a width in mm; a word too long is broken too."""
        lines: list[str] = []
        for line in simpleSplit(words, pdf.face(bold=bold), size, width * MM):
            rest = line
            while pdf.wide(rest, size, bold=bold) > width and len(rest) > 1:
                fits = _fitting(rest, width, size, bold=bold)
                lines.append(rest[:fits])
                rest = rest[fits:]
            lines.append(rest)
        return lines

    def wrapped(
        self,
        x: float,
        y: float,
        width: float,
        words: str,
        size: float = 10,
        *,
        bold: bool = False,
        most: int = 9,
        grey: float = 0.0,
    ) -> float:
        """Lines within a width, the first one's foot at y; gives the foot of the last.

        What more than `most` lines would take is cut off, and the last line says so with
        an ellipsis.
        """
        lines = self.lines(width, words, size, bold=bold)
        if len(lines) > most:
            last = " ".join(lines[most - 1 :])
            lines = [*lines[: most - 1], shortened(last, width, size, bold=bold)]
        step = size * LEADING / MM
        for n, line in enumerate(lines):
            self.text(x, y + n * step, line, size, bold=bold, grey=grey)
        return y + max(0, len(lines) - 1) * step

    def fitted(
        self,
        x: float,
        y: float,
        width: float,
        words: str,
        size: float,
        *,
        bold: bool = False,
        least: float = LEGIBLE,
        side: str = "left",
    ) -> None:
        """One line made small enough for a width, never below `least`: then it is cut off."""
        whole = pdf.wide(words, size, bold=bold)
        small = min(size, max(least, size * width / max(whole, 0.1)))
        self.text(x, y, shortened(words, width, small, bold=bold), small, bold=bold, side=side)

    def box(
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
        """A rectangle, its upper left at x, y."""
        corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
        self.put(Line(corners, line, closed=True, dash=dash, fill=fill))

    def line(
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
        """A line."""
        self.put(Line(((x1, y1), (x2, y2)), width, grey, dash=dash))

    def loop(
        self,
        points: Sequence[tuple[float, float]],
        line: float,
        *,
        grey: float = 0.25,
        fill: float | None = None,
    ) -> None:
        """A closed line through points."""
        if points:
            self.put(Line(tuple(points), line, grey, closed=True, fill=fill))

    def dot(self, x: float, y: float, radius: float, *, grey: float = 0.0) -> None:
        """A filled circle."""
        self.put(Dot(x, y, radius, grey))

    def code(
        self,
        x: float,
        y: float,
        code: str,
        *,
        dots: int = bars.DOTS,
        height: float = 0.0,
        size: float = 9,
        words: str = "",
    ) -> float:
        """Bars with their quiet zone from x, their top at y, the code in words under them.

        Gives the foot of the words, mm.
        """
        high = max(height, bars.least_height(code, dots))
        self.put(Bars(x + bars.quiet(dots), y, code, dots, high))
        foot = y + high + size * 1.1 / MM
        middle = x + bars.length(code, dots) / 2
        self.text(middle, foot, words or bars.spaced(code), size, side="middle")
        return foot


def _fitting(words: str, width: float, size: float, *, bold: bool) -> int:
    """How many characters fit into a width, one at least."""
    fits = len(words)
    while fits > 1 and pdf.wide(words[:fits], size, bold=bold) > width:
        fits -= 1
    return fits


def shortened(words: str, width: float, size: float, *, bold: bool = False) -> str:
    """The words, or as many of them as fit a width in mm, with an ellipsis.

    Between words where it can be: half a number is worse than none.
    """
    if pdf.wide(words, size, bold=bold) <= width + 0.01:
        return words
    room = width - pdf.wide(CUT_OFF, size, bold=bold)
    fits = _fitting(words, room, size, bold=bold)
    kept, rest = words[:fits], words[fits:]
    if " " in kept and not rest.startswith(" "):
        kept = kept.rpartition(" ")[0]
    return kept.rstrip(" ,·") + CUT_OFF


def day(at: str) -> str:
    """``2026-11-25T07:12:00`` as ``Wed 25 Nov``, whatever the PC's language; "" as ""."""
    if not at:
        return ""
    date = datetime.fromisoformat(at)
    return f"{_DAYS[date.weekday()]} {date.day} {_MONTHS[date.month - 1]}"


def moment(at: str) -> str:
    """``2026-11-25T07:12:00`` as ``Wed 25 Nov 07:12``."""
    return f"{day(at)} {at[11:16]}".strip()


def code_width(code: str, dots: int = bars.DOTS) -> float:
    """Width of a code in mm, quiet zones included."""
    return bars.length(code, dots)
