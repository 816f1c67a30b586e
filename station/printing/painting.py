"""Paints marks onto a printer through Qt, bars in whole dots of that printer."""

from PySide6.QtCore import QMarginsF, QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QPageLayout,
    QPageSize,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)
from PySide6.QtPrintSupport import QPrinter

from station.look import style
from station.papers import bars
from station.papers.marks import BarsMark, DotMark, LineMark, Mark, TextMark
from station.papers.page import Page

DESIGN = 100  # pixels of the type that words are outlined in, before they are scaled
SLIM = 0.12  # of a dot off either side of a bar, as in the PDF


def print_page(page: Page, printer: QPrinter) -> bool:
    """Prints every page at its own size; False where the printer does not begin or end."""
    printer.setFullPage(True)
    size = QPageSize(QSizeF(page.width, page.height), QPageSize.Unit.Millimeter, page.title)
    layout = QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF())
    layout.setMode(QPageLayout.Mode.FullPageMode)
    printer.setPageLayout(layout)
    printer.setDocName(page.title)
    painter = QPainter()
    if not painter.begin(printer):
        return False
    for n, marks in enumerate(page.pages):
        if n and not printer.newPage():
            painter.end()
            return False
        for mark in marks:
            _draw_mark(painter, printer.resolution() / 25.4, mark)
    return painter.end()


def _draw_mark(painter: QPainter, scale: float, mark: Mark) -> None:
    """Draws one mark; `scale` is dots a millimetre."""
    if isinstance(mark, TextMark):
        _draw_text(painter, scale, mark)
    elif isinstance(mark, LineMark):
        _draw_line(painter, scale, mark)
    elif isinstance(mark, DotMark):
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(_make_grey(mark.grey))
        radius = mark.radius * scale
        painter.drawEllipse(QPointF(mark.x * scale, mark.y * scale), radius, radius)
    else:
        _draw_bars(painter, scale, mark)


def _make_grey(level: float) -> QColor:
    return QColor.fromRgbF(level, level, level)


def _draw_text(painter: QPainter, scale: float, mark: TextMark) -> None:
    """Draws words as outlines: one shape at every resolution, no font asked of the printer."""
    font = QFont(style.load_family())
    font.setPixelSize(DESIGN)
    font.setBold(mark.bold)
    wide = QFontMetricsF(font).horizontalAdvance(mark.words)
    path = QPainterPath()
    path.addText(
        -wide * {"left": 0.0, "middle": 0.5, "right": 1.0}[mark.side], 0, font, mark.words
    )
    shrink = mark.size / 72 * 25.4 * scale / DESIGN
    painter.save()
    painter.translate(mark.x * scale, mark.y * scale)
    painter.scale(shrink, shrink)
    painter.fillPath(path, _make_grey(mark.grey))
    painter.restore()


def _draw_line(painter: QPainter, scale: float, mark: LineMark) -> None:
    pen = QPen(_make_grey(mark.grey), mark.wide * scale) if mark.wide else QPen(Qt.PenStyle.NoPen)
    if mark.wide and mark.dash:
        pen.setDashPattern([2 / mark.wide, 1.2 / mark.wide])  # in pen widths
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush if mark.fill is None else _make_grey(mark.fill))
    points = QPolygonF([QPointF(x * scale, y * scale) for x, y in mark.points])
    if mark.closed:
        painter.drawPolygon(points)
    else:
        painter.drawPolyline(points)


def _draw_bars(painter: QPainter, scale: float, mark: BarsMark) -> None:
    """Draws bars of whole dots: a module is the number nearest to what was laid out."""
    module = max(1, round(mark.dots * bars.DOT * scale))
    left, top = round(mark.x * scale), round(mark.y * scale)
    high = round(mark.high * scale)
    for start, run in bars.list_bars(bars.encode_modules(mark.code)):
        bar = QRectF(left + start * module + SLIM, top, run * module - 2 * SLIM, high)
        painter.fillRect(bar, Qt.GlobalColor.black)
