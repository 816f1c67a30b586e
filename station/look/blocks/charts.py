"""Shop today: the areas side by side, the cumulative flow, each router's day."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from station.look import fonts
from station.look.texts import text
from station.look.widgets import Label, Send, clear, palette, tight
from station.shop.faces import Band, Bands, Flow, Place, Places
from station.shop.words import say

At = Callable[[float, int], QPointF]
SHADES = ("#174f7a", "#437fa8", "#7fa6a3", "#b4a467")
MOST_WAIT = 400  # pieces that fill the column between two areas


class Waiting(QWidget):
    """What waits before an area, as a column and a number."""

    def __init__(self) -> None:
        super().__init__()
        self.place: Place | None = None
        self.setFixedWidth(92)
        self.setMinimumHeight(90)

    def set(self, place: Place) -> None:
        """Shows what waits."""
        self.place = place
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The column, its number under it."""
        if self.place is None or self.place.waiting is None:
            return
        painter = QPainter(self)
        held = self.place.holding_up
        most = self.height() - 34
        high = max(3, min(most, most * self.place.waiting / MOST_WAIT))
        painter.fillRect(
            QRectF(32, 4 + most - high, 28, high),
            QColor(palette().attention if held else "#b7c2cc"),
        )
        painter.setFont(fonts.font(13, bold=held))
        painter.setPen(QColor(palette().attention if held else palette().quiet))
        painter.drawText(
            QRectF(0, self.height() - 26, self.width(), 22),
            Qt.AlignmentFlag.AlignCenter,
            text(say("{count} {count|waits|wait}", count=self.place.waiting)),
        )


class PlacesBlock(QWidget):
    """The work areas side by side."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.block: Places | None = None
        self.row = QHBoxLayout(self)
        tight(self.row, 8)

    def set(self, block: Places) -> None:
        """Shows the areas."""
        if block == self.block:
            return
        self.block = block
        clear(self.row)
        for place in block.items:
            if place.waiting is not None:
                between = Waiting()
                between.set(place)
                self.row.addWidget(between)
            column = QVBoxLayout()
            tight(column, 0)
            column.addLayout(_place(place))
            column.addStretch(1)
            self.row.addLayout(column, 1)


def _place(place: Place) -> QGridLayout:
    grid = QGridLayout()
    tight(grid, 2)
    name = Label(19, bold=True, wrap=False).say(place.name)
    done, unit = (
        Label(36, bold=True, wrap=False).say(place.done),
        Label(16).say(place.unit, "quiet"),
    )
    head = QHBoxLayout()
    tight(head, 8)
    head.addWidget(name)
    if place.holding_up:
        head.addWidget(Label(15, bold=True, wrap=False).say(say("▲ holding up"), "attention"))
    head.addStretch(1)
    grid.addLayout(head, 0, 0, 1, 2)
    grid.addWidget(done, 1, 0)
    grid.addWidget(unit, 1, 1, Qt.AlignmentFlag.AlignBottom)
    foot = QHBoxLayout()
    tight(foot, 12)
    foot.addWidget(Label(16, bold=True, wrap=False).say(place.rate))
    foot.addWidget(Label(16, wrap=False).say(place.plan, "quiet"))
    foot.addStretch(1)
    grid.addLayout(foot, 2, 0, 1, 2)
    grid.setColumnStretch(1, 1)
    return grid


class FlowCanvas(QWidget):
    """The cumulative flow: areas under lines, hours below, names at the right."""

    def __init__(self) -> None:
        super().__init__()
        self.block: Flow | None = None
        self.setMinimumHeight(220)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def set(self, block: Flow) -> None:
        """Shows a flow."""
        if block != self.block:
            self.block = block
            self.setAccessibleName(", ".join(text(name) for name, _ in block.lines))
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Axis, areas from the highest to the lowest line, labels."""
        if self.block is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        block, right, low = self.block, self.width() - 150, self.height() - 28
        most = max([points[-1][1] for _, points in block.lines if points] + [block.plan or 0, 1])
        span = max(block.end_h - block.start_h, 1.0)

        def at(hour: float, count: int) -> QPointF:
            return QPointF(
                24 + (hour - block.start_h) / span * (right - 24), low - count / most * (low - 16)
            )

        self._axis(painter, at, low)
        for (_, points), shade in zip(block.lines, SHADES, strict=False):
            if points:
                area = [
                    QPointF(at(points[0][0], 0)),
                    *[at(*p) for p in points],
                    at(points[-1][0], 0),
                ]
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(QColor(shade))
                painter.drawPolygon(QPolygonF(area))
        self._plan(painter, at)
        self._names(painter, at)

    def _axis(self, painter: QPainter, at: At, low: float) -> None:
        assert self.block is not None
        painter.setPen(QPen(QColor(palette().quiet), 1))
        painter.drawLine(at(self.block.start_h, 0), at(self.block.end_h, 0))
        painter.setFont(fonts.font(13))
        for hour in range(int(self.block.start_h), int(self.block.end_h) + 1):
            x = at(hour, 0).x()
            painter.drawText(
                QRectF(x - 26, low + 4, 52, 20), Qt.AlignmentFlag.AlignCenter, f"{hour}:00"
            )

    def _plan(self, painter: QPainter, at: At) -> None:
        """The plan for the day as a dashed line with its name."""
        assert self.block is not None
        if not self.block.plan:
            return
        painter.setPen(QPen(QColor(palette().quiet), 2, Qt.PenStyle.DashLine))
        end = at(self.block.end_h, self.block.plan)
        painter.drawLine(at(self.block.start_h, 0), end)
        painter.setFont(fonts.font(14))
        painter.drawText(QPointF(end.x() + 8, end.y() + 5), text(say("plan for the day")))

    def _names(self, painter: QPainter, at: At) -> None:
        """Each line's name at its end, pushed apart where they would overlap."""
        assert self.block is not None
        painter.setFont(fonts.font(15, bold=True))
        taken = -100.0
        for (name, points), shade in zip(self.block.lines, palette().names, strict=False):
            if not points:
                continue
            end = at(*points[-1])
            y = max(end.y() + 12, taken + 19)
            taken = y
            painter.setPen(QColor(shade))
            painter.drawText(QPointF(end.x() + 8, y), text(name))


class FlowBlock(QWidget):
    """The flow under its title and note."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.title, self.note, self.canvas = Label(20, bold=True), Label(14), FlowCanvas()
        column = QVBoxLayout(self)
        tight(column, 4)
        column.addWidget(self.title)
        column.addWidget(self.note)
        column.addWidget(self.canvas, 1)

    def set(self, block: Flow) -> None:
        """Shows the flow."""
        self.title.say(block.title)
        self.note.say(block.note, "quiet")
        self.canvas.set(block)


class BandCanvas(QWidget):
    """One router's day: cutting, stopped, and what lies between."""

    def __init__(self, band: Band, start_h: float, end_h: float) -> None:
        super().__init__()
        self.band, self.start, self.span = band, start_h, max(end_h - start_h, 1.0)
        self.setFixedHeight(10)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The spans."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(palette().rest))
        shades = {"cutting": palette().fill, "stopped": palette().halt}
        for frm, to, what in self.band.spans:
            left = (max(frm, self.start) - self.start) / self.span * self.width()
            wide = max(2.0, (to - max(frm, self.start)) / self.span * self.width())
            painter.fillRect(
                QRectF(left, 0, wide - 1, self.height()), QColor(shades.get(what, palette().quiet))
            )


class BandsBlock(QWidget):
    """Each router's day under its name and what it does now."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.block: Bands | None = None
        self.column = QVBoxLayout(self)
        tight(self.column, 2)

    def set(self, block: Bands) -> None:
        """Shows the bands."""
        if block == self.block:
            return
        self.block = block
        clear(self.column)
        self.column.addWidget(Label(20, bold=True).say(block.title))
        for band in block.items:
            line = QHBoxLayout()
            line.setSpacing(12)
            line.addWidget(Label(16, bold=True, wrap=False).say(band.name))
            line.addWidget(
                Label(15, bold=band.tone in ("attention", "stop")).say(band.state, band.tone), 1
            )
            self.column.addLayout(line)
            self.column.addWidget(BandCanvas(band, block.start_h, block.end_h))
