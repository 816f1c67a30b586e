"""A page to draw on: type, sizes, wrapped text, boxes; measured in millimetres from the top."""

from datetime import datetime
from functools import cache
from importlib.resources import as_file, files
from io import BytesIO

from reportlab.lib.pagesizes import A4, A5
from reportlab.lib.units import mm
from reportlab.lib.utils import simpleSplit
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFError, TTFont
from reportlab.pdfgen.canvas import Canvas

from station.papers import bars

SIZES = {"A4": A4, "A5": A5}
_DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]
_MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]
PACKAGE = "fontpkg_atkinson_hyperlegible"


@cache
def face(*, bold: bool = False) -> str:
    """The type's name in the PDF; Helvetica where the font package is missing."""
    name = "Hyper-Bold" if bold else "Hyper"
    weight = "Bold" if bold else "Regular"
    try:
        with as_file(files(PACKAGE) / "files" / f"AtkinsonHyperlegible-{weight}.ttf") as path:
            pdfmetrics.registerFont(TTFont(name, str(path)))
    except (ModuleNotFoundError, TTFError, OSError):
        return "Helvetica-Bold" if bold else "Helvetica"
    return name


class Page:
    """Pages of one size; `x` from the left and `y` from the top, in mm."""

    def __init__(self, width: float, height: float, title: str) -> None:
        self.width, self.height = width, height
        self._buffer = BytesIO()
        self.canvas = Canvas(self._buffer, pagesize=(width * mm, height * mm), invariant=1)
        self.canvas.setTitle(title)

    @classmethod
    def of(cls, paper: str, title: str) -> "Page":
        """A page of a paper's size (A4 where it is not known)."""
        width, height = SIZES.get(paper, A4)
        return cls(width / mm, height / mm, title)

    def pdf(self) -> bytes:
        """The finished document."""
        self.canvas.showPage()
        self.canvas.save()
        return self._buffer.getvalue()

    def turn(self) -> None:
        """The next page."""
        self.canvas.showPage()

    def text(
        self,
        x: float,
        y: float,
        words: str,
        size: float = 10,
        *,
        bold: bool = False,
        grey: float = 0.0,
        right: bool = False,
    ) -> None:
        """One line, its foot at y; right-aligned at x where asked."""
        self.canvas.setFont(face(bold=bold), size)
        self.canvas.setFillGray(grey)
        draw = self.canvas.drawRightString if right else self.canvas.drawString
        draw(x * mm, (self.height - y) * mm, words)

    def lines(self, width: float, words: str, size: float, *, bold: bool = False) -> list[str]:
        """The words broken into lines of a width in mm."""
        return list(simpleSplit(words, face(bold=bold), size, width * mm))

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
        """Lines within a width, the first one's foot at y; gives the foot of the last."""
        lines = self.lines(width, words, size, bold=bold)[:most]
        step = size * 1.22 / mm
        for n, line in enumerate(lines):
            self.text(x, y + n * step, line, size, bold=bold, grey=grey)
        return float(y + max(0, len(lines) - 1) * step)

    def fitted(
        self, x: float, y: float, width: float, words: str, size: float, *, bold: bool = False
    ) -> None:
        """One line made small enough for a width."""
        wide = pdfmetrics.stringWidth(words, face(bold=bold), size) / mm
        self.text(x, y, words, size * min(1.0, width / max(wide, 0.1)), bold=bold)

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
        self.canvas.setLineWidth(line * mm)
        self.canvas.setStrokeGray(0)
        self.canvas.setDash([2 * mm, 1.2 * mm] if dash else [])
        if fill is not None:
            self.canvas.setFillGray(fill)
        self.canvas.rect(
            x * mm,
            (self.height - y - height) * mm,
            width * mm,
            height * mm,
            stroke=1 if line else 0,
            fill=0 if fill is None else 1,
        )
        self.canvas.setDash([])

    def line(
        self,
        x1: float,
        y1: float,
        x2: float,
        y2: float,
        width: float = 0.25,
        *,
        dash: bool = False,
    ) -> None:
        """A line."""
        self.canvas.setLineWidth(width * mm)
        self.canvas.setStrokeGray(0)
        self.canvas.setDash([2 * mm, 1.2 * mm] if dash else [])
        self.canvas.line(x1 * mm, (self.height - y1) * mm, x2 * mm, (self.height - y2) * mm)
        self.canvas.setDash([])

    def code(
        self,
        x: float,
        y: float,
        code: str,
        *,
        dots: int = 2,
        height: float = 0.0,
        size: float = 9,
        words: str = "",
    ) -> float:
        """Bars with their quiet zone from x, their top at y, the code in words under them.

        Gives the whole width in mm, quiet zones included.
        """
        high = max(height * mm, bars.least_height(code, dots))
        low = (self.height - y) * mm - high
        wide = bars.draw(self.canvas, code, x * mm, low, dots=dots, height=high)
        self.canvas.setFont(face(), size)
        self.canvas.setFillGray(0)
        self.canvas.drawCentredString(
            x * mm + wide / 2, low - size * 1.1, words or bars.spaced(code)
        )
        return float(wide / mm)


def day(at: str) -> str:
    """``2026-11-25T07:12:00`` as ``Wed 25 Nov``, whatever the PC's language; "" as ""."""
    if not at:
        return ""
    date = datetime.fromisoformat(at)
    return f"{_DAYS[date.weekday()]} {date.day} {_MONTHS[date.month - 1]}"


def code_width(code: str, dots: int = 2) -> float:
    """Width of a code in mm, quiet zones included."""
    return float(bars.length(code, dots) / mm)
