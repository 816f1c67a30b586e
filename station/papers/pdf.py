"""Marks into a PDF file; bars lie on the grid of a printer with 203 dots an inch."""

from functools import cache
from importlib.resources import as_file, files
from io import BytesIO

from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFError, TTFont
from reportlab.pdfgen.canvas import Canvas

from station.papers import bars
from station.papers.marks import BarsMark, DotMark, LineMark, Mark, TextMark

SLIM = 0.12 * bars.DOT  # mm, taken off either side of a bar
PACKAGE = "fontpkg_atkinson_hyperlegible"


@cache
def load_font(*, bold: bool = False) -> str:
    """Loads the type; gives its name in the PDF, Helvetica where the font package is missing."""
    name = "Hyper-Bold" if bold else "Hyper"
    weight = "Bold" if bold else "Regular"
    try:
        with as_file(files(PACKAGE) / "files" / f"AtkinsonHyperlegible-{weight}.ttf") as path:
            pdfmetrics.registerFont(TTFont(name, str(path)))
    except (ModuleNotFoundError, TTFError, OSError):
        return "Helvetica-Bold" if bold else "Helvetica"
    return name


def measure_text(words: str, size: float, *, bold: bool = False) -> float:
    """Measures the width of words, mm."""
    return float(pdfmetrics.stringWidth(words, load_font(bold=bold), size) / mm)


def write_pdf(title: str, width: float, height: float, pages: list[list[Mark]]) -> bytes:
    """Writes pages of one size in mm as a PDF; the same marks give the same bytes."""
    buffer = BytesIO()
    canvas = Canvas(buffer, pagesize=(width * mm, height * mm), invariant=1)
    canvas.setTitle(title)
    for marks in pages:
        for mark in marks:
            _draw_mark(canvas, height, mark)
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def _draw_mark(canvas: Canvas, height: float, mark: Mark) -> None:
    if isinstance(mark, TextMark):
        _draw_text(canvas, height, mark)
    elif isinstance(mark, LineMark):
        _draw_line(canvas, height, mark)
    elif isinstance(mark, DotMark):
        canvas.setFillGray(mark.grey)
        at = mark.x * mm, (height - mark.y) * mm
        canvas.circle(*at, mark.radius * mm, stroke=0, fill=1)
    else:
        _draw_bars(canvas, height, mark)


def _draw_text(canvas: Canvas, height: float, mark: TextMark) -> None:
    canvas.setFont(load_font(bold=mark.bold), mark.size)
    canvas.setFillGray(mark.grey)
    draw = {
        "left": canvas.drawString,
        "right": canvas.drawRightString,
        "middle": canvas.drawCentredString,
    }[mark.side]
    draw(mark.x * mm, (height - mark.y) * mm, mark.words)


def _draw_line(canvas: Canvas, height: float, mark: LineMark) -> None:
    path = canvas.beginPath()
    for n, (x, y) in enumerate(mark.points):
        (path.lineTo if n else path.moveTo)(x * mm, (height - y) * mm)
    if mark.closed:
        path.close()
    canvas.setLineWidth(mark.wide * mm)
    canvas.setStrokeGray(mark.grey)
    canvas.setDash([2 * mm, 1.2 * mm] if mark.dash else [])
    if mark.fill is not None:
        canvas.setFillGray(mark.fill)
    canvas.drawPath(path, stroke=int(mark.wide > 0), fill=int(mark.fill is not None))


def _draw_bars(canvas: Canvas, height: float, mark: BarsMark) -> None:
    """Draws bars on the dot grid, which begins at the page's lower left.

    What turns a PDF into dots paints every dot that a shape touches, so that a bar which
    reaches its neighbour by a rounding error grows by a dot; each is drawn a little slimmer.
    """
    left = round(mark.x / bars.DOT) * bars.DOT
    low = round((height - mark.y - mark.high) / bars.DOT) * bars.DOT
    module = mark.dots * bars.DOT
    canvas.setFillGray(0)
    for start, run in bars.list_bars(bars.encode_modules(mark.code)):
        x, wide_mm = left + start * module + SLIM, run * module - 2 * SLIM
        canvas.rect(x * mm, low * mm, wide_mm * mm, mark.high * mm, stroke=0, fill=1)
