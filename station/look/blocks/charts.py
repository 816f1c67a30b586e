"""Shop today: the areas side by side, the cumulative flow, each router's day."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from station.look import style
from station.look.language import translate
from station.look.style import palette, px
from station.look.widgets import PaintedBlock
from station.look.written import CENTRE, LOW_LEFT, TextPage, measure_width
from station.shop.faces import Band, Bands, Flow, Place, Places
from station.shop.words import say

At = Callable[[float, int], QPointF]
MOST_WAIT = 400  # pieces that fill the column between two areas
WAITING = 92  # px wide
APART = 14  # px, at least, to the name of the next area
PLACES = 96  # px high
CHART = 220  # px, the least height of the flow
NAMES = 150  # px for the names at the right of the flow
BAND = 12  # px high


class PlacesBlock(PaintedBlock[Places]):
    """Shows the work areas side by side, what waits before each as a column between them."""

    def lay_out(self, page: TextPage, block: Places) -> None:
        """Lays out each area's name, count and rate; the number that waits under its column."""
        page.height = px(PLACES)
        for place, left, width in self._list_spans(block, page.width):
            _put_place(page, place, left, width)
            if place.waiting is not None:
                words = say("{count} {count|waits|wait}", count=place.waiting)
                at = (left - px(WAITING + 8), page.height - px(24), px(WAITING))
                tone = "attention" if place.holding_up else "quiet"
                page.put_text(words, at, 15, bold=place.holding_up, tone=tone, flags=CENTRE)

    def _list_spans(self, block: Places, width: int) -> list[tuple[Place, int, int]]:
        """Lists each area with its left and width."""
        gap = px(8)
        # Where nothing waits before an area, its name stands further from the one before.
        before = [px(WAITING) + gap if p.waiting is not None else 2 * gap for p in block.items]
        before[:1] = [px(WAITING) + gap if p.waiting is not None else 0 for p in block.items[:1]]
        count = max(len(block.items), 1)
        each = (width - sum(before) - (count - 1) * gap) // count
        spans, left = [], 0
        for place, apart in zip(block.items, before, strict=True):
            left += apart
            spans.append((place, left, each))
            left += each + gap
        return spans

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the columns of what waits."""
        if self.block is None:
            return
        for place, left, _ in self._list_spans(self.block, self.width()):
            if place.waiting is None:
                continue
            most = self.height() - px(34)
            high = round(max(px(3), min(most, most * place.waiting / MOST_WAIT)))
            shade = palette().attention if place.holding_up else palette().waits
            x = left - px(WAITING + 8) + px(32)
            painter.fillRect(QRect(x, px(4) + most - high, px(28), high), QColor(shade))


def _put_place(page: TextPage, place: Place, left: int, width: int) -> None:
    """Puts one area's name, count and rate on the page."""
    name = measure_width(place.name, 19, bold=True)
    top = page.put_text(place.name, (left, 0, name), 19, bold=True)
    if place.holding_up:
        # as far as the empty side of the next column, so that it stays on one line
        at = (left + name + px(8), 0, width - name + px(22))
        page.put_text(say("▲ holding up"), at, 15, bold=True, tone="attention", high=top)
    top += px(2)
    done = measure_width(place.done, 36, bold=True)
    high = page.put_text(place.done, (left, top, done), 36, bold=True)
    beside = (left + done + px(2), top, width - done - px(2 + APART))
    page.put_text(place.unit, beside, 16, tone="quiet", flags=LOW_LEFT, high=high - px(4))
    top += high + px(2)
    rate = measure_width(place.rate, 16, bold=True)
    page.put_text(place.rate, (left, top, rate), 16, bold=True)
    page.put_text(place.plan, (left + rate + px(12), top, width - rate - px(12)), 16, tone="quiet")


class FlowBlock(PaintedBlock[Flow]):
    """Shows the cumulative flow: areas under lines, hours below, names at the right."""

    def lay_out(self, page: TextPage, block: Flow) -> None:
        """Lays out title and note; below them room for the chart."""
        page.put_below(block.title, 20, bold=True)
        page.height += px(4)
        page.put_below(block.note, 15, tone="quiet")
        self._top = page.height + px(4)
        page.height = self._top + px(CHART)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws axis, areas from the highest to the lowest line, labels."""
        if self.block is None:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        block, right, low = self.block, self.width() - px(NAMES), self.height() - px(28)
        most = max([points[-1][1] for _, points in block.lines if points] + [block.plan or 0, 1])
        span, left = max(block.end_h - block.start_h, 1.0), px(24)
        tall = low - self._top - px(16)

        def at(hour: float, count: int) -> QPointF:
            across = (hour - block.start_h) / span * (right - left)
            return QPointF(left + across, low - count / most * tall)

        self._draw_axis(painter, block, at, low)
        shaded = [(p, shade) for (_, p), shade in zip(block.lines, palette().flow, strict=False)]
        # The largest first, so that none hides another: packing may take from the rack.
        for points, shade in sorted(shaded, key=lambda s: -s[0][-1][1] if s[0] else 0):
            if points:
                ends = (at(points[0][0], 0), at(points[-1][0], 0))
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(QColor(shade))
                painter.drawPolygon(QPolygonF([ends[0], *[at(*p) for p in points], ends[1]]))
        self._draw_plan(painter, block, at)
        self._draw_names(painter, block, at)

    def _draw_axis(self, painter: QPainter, block: Flow, at: At, low: float) -> None:
        painter.setPen(QPen(QColor(palette().quiet), 1))
        painter.drawLine(at(block.start_h, 0), at(block.end_h, 0))
        painter.setFont(style.make_font(15))
        for hour in range(int(block.start_h), int(block.end_h) + 1):
            box = QRectF(at(hour, 0).x() - px(26), low + px(4), px(52), px(20))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, f"{hour}:00")

    def _draw_plan(self, painter: QPainter, block: Flow, at: At) -> None:
        """Draws all that is cut and still to be cut as a dashed line with its name.

        The name stands above the line's end, where the lines' own names leave room for it.
        """
        if not block.plan:
            return
        painter.setPen(QPen(QColor(palette().quiet), px(2), Qt.PenStyle.DashLine))
        end = at(block.end_h, block.plan)
        painter.drawLine(at(block.start_h, 0), end)
        painter.setFont(style.make_font(15))
        ends = [at(*points[-1]) for _, points in block.lines if points]
        name = QPointF(end.x() + px(8), find_plan_line(ends, end))
        painter.drawText(name, translate(say("with all queued")))

    def _draw_names(self, painter: QPainter, block: Flow, at: At) -> None:
        """Draws each line's name at its end, pushed apart where they would overlap."""
        painter.setFont(style.make_font(15, bold=True))
        taken = -1000.0
        named = zip(block.lines, palette().names, strict=False)
        ends = [(at(*points[-1]), name, shade) for (name, points), shade in named if points]
        ends.sort(key=lambda end: end[0].y())
        lowest = at(block.start_h, 0).y() - px(19) * len(ends)
        for end, name, shade in ends:
            lowest += px(19)
            taken = max(min(end.y() + px(12), lowest), taken + px(19))
            painter.setPen(QColor(shade))
            painter.drawText(QPointF(end.x() + px(8), taken), translate(name))


def find_plan_line(ends: list[QPointF], end: QPointF) -> float:
    """The line, in pixels from the top, that the plan's name is written on.

    Beside its own end, or a line above all ends where the names at those would cover it.
    """
    if any(e.x() + px(NAMES) > end.x() for e in ends):
        return min(e.y() for e in (*ends, end)) - px(12)
    return end.y() + px(5)


class BandsBlock(PaintedBlock[Bands]):
    """Shows each router's day under its name and what it does now."""

    def lay_out(self, page: TextPage, block: Bands) -> None:
        """Lays out the title; for each router a line, and room for its band below."""
        page.put_below(block.title, 20, bold=True)
        self._tops: list[int] = []
        for band in block.items:
            page.height += px(2)
            name = measure_width(band.name, 16, bold=True)
            heavy = band.tone in ("attention", "stop")
            left = name + px(12)
            page.height += max(
                page.put_text(band.name, (0, page.height, name), 16, bold=True),
                page.put_text(
                    band.state,
                    (left, page.height, page.width - left),
                    15,
                    bold=heavy,
                    tone=band.tone,
                ),
            )
            page.height += px(2)
            self._tops.append(page.height)
            page.height += px(BAND)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws each router's spans: cutting, stopped, and what lies between."""
        if self.block is None:
            return
        for band, top in zip(self.block.items, self._tops, strict=True):
            self._draw_band(painter, band, top, self.block)

    def _draw_band(self, painter: QPainter, band: Band, top: int, block: Bands) -> None:
        painter.fillRect(QRect(0, top, self.width(), px(BAND)), QColor(palette().rest))
        shades = {"cutting": palette().fill, "stopped": palette().halt}
        each = self.width() / max(block.end_h - block.start_h, 1.0)
        for frm, to, what in band.spans:
            first = max(frm, block.start_h)
            wide_ = max(2.0, (to - first) * each)
            box = QRectF((first - block.start_h) * each, top, wide_ - 1, px(BAND))
            painter.fillRect(box, QColor(shades.get(what, palette().quiet)))
