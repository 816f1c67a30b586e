"""The path of a cut file: looked at closely, by layers of bit and depth, and played."""

from bisect import bisect_left

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, Qt, QTimer
from PySide6.QtGui import QColor, QHideEvent, QMouseEvent, QPainter, QPen, QPolygonF, QWheelEvent
from PySide6.QtWidgets import QGestureEvent, QPinchGesture

from station.look import style
from station.look.blocks.path_view import SheetView
from station.look.blocks.pieces import (
    draw_board,
    draw_marks,
    draw_numbers,
    draw_pieces,
    draw_slugs,
    draw_tabs,
)
from station.look.language import Text, translate
from station.look.marks import draw_bar, draw_tick
from station.look.shop_time import SHOP_TIME
from station.look.style import FINGER, GAP, TARGET, palette, px
from station.look.widgets import PaintedBlock, Send, Touch
from station.look.written import CENTRE, LEFT, TextPage, write_line
from station.shop.faces import PathDrawing
from station.shop.strokes import AIR, RAPID, Stroke
from station.shop.words import length, say

LEAST = 160  # px high, the drawing
CHIP = 132  # px wide at least, a layer's key
TIME = 34  # px high, the time with its line
CLOCK, BAR, LINE = 176, 200, 14  # px: wide for the time, wide at least for its line; its height
SHADES = (0.35, 0.55, 0.75, 1.0)  # how strong a bit's colour is: shallow to deep
SWATCH = 40  # px wide, a bit's colours
THIN = 1.2  # px, a cut is drawn no thinner
CLOSE = 8.0  # times closer than the whole sheet, where a problem is looked at
DRAGGED = 6  # px: what moves less is a touch
EACH_MS = 100  # between two steps while it plays
SPEEDS = (60, 10, 1)  # seconds of the path in a second
STEP = 0.02  # share of the path that one touch goes on or back
ZOOM = 1.6  # times closer with a touch
NOTCH = 120.0  # what a wheel tells for one notch

Layer = tuple[str, int]  # ("bit", its number) or ("band", its number)


class LayerKey(Touch):
    """Shows or hides a layer, ticked while it is shown."""

    shown = True

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the tick at the left."""
        side = px(22)
        box = QRect(px(8), (self.height() - side) // 2, side, side)
        draw_tick(painter, box, "done" if self.shown else "due")


class PathBlock(PaintedBlock[PathDrawing]):
    """Shows the drawing, keys for layers over it, the time under it.

    What plays it and brings it closer stands elsewhere, or is a card, and is asked of it.
    """

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.view = SheetView()
        self.hidden: set[Layer] = set()
        self.at_s, self.speed = 0.0, SPEEDS[0]
        self.lines: list[tuple[Stroke, QPolygonF]] = []
        self.layers: list[LayerKey] = []
        self.picture, self.time_line, self._bar = QRect(), QRect(), QRect()
        self.touched: QPointF | None = None  # mm: what comes closer then
        self._moved = False  # by hand: then what is in the middle
        self._since, self._dragged, self._pressed = 0.0, QPointF(), QPointF()
        self._pinched = False  # two fingers: no touch and no drag
        self.timer = QTimer(self, interval=EACH_MS)
        self.timer.timeout.connect(self._go_on)
        self.grabGesture(Qt.GestureType.PinchGesture)

    def show_block(self, block: PathDrawing) -> None:
        """Shows a path: the whole of it, every layer; or does what a card asks of it."""
        before = self.block
        if before is not None and before.strokes == block.strokes:
            self._go_on_with(before, block)
            return
        self.timer.stop()
        self.hidden.clear()
        self.at_s = block.seconds
        self.view, self.touched = SheetView(block.length_mm, block.width_mm), None
        self.lines = [
            (s, QPolygonF([QPointF(x, y) for x, y, _ in s.points])) for s in block.strokes
        ]
        super().show_block(block)

    def _go_on_with(self, before: PathDrawing, block: PathDrawing) -> None:
        """Shows the same path with other marks, or does what a card asks of it."""
        self.block = block
        if block.asked != before.asked:
            self.do_act(block.asked[1])
        if block != before:
            self.place_children(self.find_page(self.width()))
            self.update()

    def lay_out(self, page: TextPage, block: PathDrawing) -> None:
        """Keeps room for the least drawing and the time; the note stands at the foot."""
        page.height = px(TIME) + px(LEAST)
        page.put_below(block.note, 15, tone="quiet")

    def place_children(self, page: TextPage) -> None:
        """Places layers above, the drawing, the time line, the note."""
        if self.block is None:
            return
        page.move_to_foot(self.height())
        low = min((w.box.top() for w in page.words), default=self.height())
        self.time_line = QRect(0, low - px(TIME), self.width(), px(TIME))
        top = self._place_layers(_list_layers(self.block) if self.block.layers else [])
        self.picture = QRect(0, top, self.width(), self.time_line.top() - top)

    def _place_layers(self, found: list[tuple[Layer, Text]]) -> int:
        """Places a key for each layer over the drawing; gives their lower edge."""
        while len(self.layers) < len(found):
            self.layers.append(LayerKey(self, self.do_act, "-"))
        for spare in self.layers[len(found) :]:
            spare.hide()
        top, wide, across = 0, self.width(), _count_across(self.width())
        for first in range(0, len(found), across):
            row = list(zip(self.layers, found, strict=False))[first : first + across]
            for (key, (layer, name)), box in zip(
                row, _list_boxes(wide, top, across), strict=False
            ):
                key.shown = layer not in self.hidden
                key.ground, key.edge = palette().paper, palette().line
                _place_key(key, box, f"{layer[0]} {layer[1]}", name, px(34))
            top += px(TARGET + GAP)
        return top

    def do_act(self, code: str) -> None:
        """Does what is asked of it, or what a layer's key says."""
        name, _, number = code.partition(" ")
        if name == "layer":
            found = _list_layers(self.block)[int(number) - 1 :][:1] if self.block else []
            self.hidden ^= {layer for layer, _ in found}
        elif number:
            self.hidden ^= {(name, int(number))}
        elif name == "play":
            self._play_or_pause()
        elif name == "speed":
            self.speed = SPEEDS[(SPEEDS.index(self.speed) + 1) % len(SPEEDS)]
        elif name in ("back", "on") and self.block:
            self.go_to(self.at_s + self.block.seconds * (STEP if name == "on" else -STEP))
        elif name == "all":
            self.view.show_whole()
            self.touched, self._moved = None, False
        elif name == "look":
            self.touched, self._moved = None, False
            self.view.look_at(self._find_focus(), CLOSE)
        else:
            self.view.move_to(self._find_focus())
            self.view.zoom_by(ZOOM if name == "in" else 1 / ZOOM)
        self.place_children(self.find_page(self.width()))
        self.update()

    def _find_focus(self) -> QPointF:
        """Finds what comes closer: the bit while it is played, the place that was touched, what
        was moved into the middle, the problem that is looked at, the first one.
        """
        point = self.find_point() if self.timer.isActive() else None
        if found := point or self.touched:
            return found
        marks = (
            sorted(self.block.marks, key=lambda m: (not m.chosen, m.number)) if self.block else []
        )
        if not marks or self._moved:
            return self.view.middle
        return QPointF(marks[0].x_mm, marks[0].y_mm)

    def _play_or_pause(self) -> None:
        if self.timer.isActive() or self.block is None:
            self.timer.stop()
            return
        if not self._is_within():
            self.at_s = 0.0
        self._since = SHOP_TIME.now()
        self.timer.start()

    def _is_within(self) -> bool:
        return self.block is not None and self.at_s < self.block.seconds

    def _go_on(self) -> None:
        """Goes on by the clock; at the end it stands."""
        now = SHOP_TIME.now()
        self.go_to(self.at_s + max(now - self._since, 0.0) * self.speed)
        self._since = now
        if not self._is_within():
            self.timer.stop()

    def go_to(self, at_s: float) -> None:
        """Shows the path up to a second of it."""
        self.at_s = min(max(at_s, 0.0), self.block.seconds if self.block else 0.0)
        self.update()

    def find_point(self) -> QPointF | None:
        """Finds where the bit is now, mm on the sheet; nothing before the first stroke."""
        count = bisect_left(self.lines, self.at_s, key=lambda line: line[0].points[0][2])
        if not count:
            return None
        stroke, polygon = self.lines[count - 1]
        return _cut_stroke(stroke, polygon, self.at_s).last()

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the sheet and what comes off it, the strokes, problems, the time line."""
        if self.block is None:
            return
        onto = self.view.map_onto(QRectF(self.picture))
        painter.save()
        painter.setClipRect(self.picture)
        painter.setTransform(onto, combine=True)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw_board(painter, self.block.length_mm, self.block.width_mm)
        if self.block.revision:
            every = len(self.block.revision.placed) if self.block.comes_off else 0
            draw_pieces(painter, self.block.revision, every)
        if self.block.comes_off:
            draw_slugs(painter, self.block.slugs)
        else:
            self._draw_strokes(painter)
        if self.block.revision:
            draw_tabs(painter, self.block.revision)
        if self._is_within() and (at := self.find_point()) is not None:
            painter.setPen(_make_pen(palette().stop, 11, Qt.PenStyle.SolidLine))
            painter.drawPoint(at)
        painter.restore()
        painter.save()
        painter.setClipRect(self.picture)
        if self.block.revision:
            draw_numbers(painter, self.block.revision, self.block.numbers, onto)
        draw_marks(painter, self.block.marks, onto)
        if self.touched is not None:
            _draw_cross(painter, onto.map(self.touched))
        painter.restore()
        self._bar = self._find_bar(self._draw_legend(painter, self.block))
        self._draw_time(painter, self.block.seconds)

    def _draw_strokes(self, painter: QPainter) -> None:
        """Draws strokes of the layers that are shown; those still to come below the others.

        A cut is as wide as its bit, in the colour of its bit, the stronger the deeper.
        """
        faint, pens = _make_pen(palette().waits, 1), self._make_pens()
        shown = [line for line in self.lines if self._is_shown(line[0])]
        painter.setPen(faint)
        for stroke, polygon in shown:
            if stroke.points[-1][2] > self.at_s and stroke.band != RAPID:
                _draw_stroke(painter, polygon)
        done = [line for line in shown if line[0].points[0][2] < self.at_s]
        for stroke, polygon in sorted(done, key=lambda line: line[0].band):
            painter.setPen(pens[stroke.bit, stroke.band])
            _draw_stroke(painter, _cut_stroke(stroke, polygon, self.at_s))

    def _make_pens(self) -> dict[tuple[int, int], QPen]:
        """Makes the pen of each bit at each depth."""
        block = self.block
        if block is None:
            return {}
        thin = THIN * px(10) / 10 / self.view.pixels_per_mm(QRectF(self.picture))
        sizes, colours = dict(block.bits), palette().bits
        order = {number: n for n, (number, _) in enumerate(block.bits)}
        pens = {}
        for bit, band in {(s.bit, s.band) for s, _ in self.lines}:
            if band in (RAPID, AIR):
                pens[bit, band] = _make_band_pen(band)
                continue
            colour = _shade_colour(colours[order.get(bit, 0) % len(colours)], band)
            pen = QPen(colour, max(sizes.get(bit, 0.0), thin))
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
            pens[bit, band] = pen
        return pens

    def _draw_legend(self, painter: QPainter, block: PathDrawing) -> int:
        """Draws each bit's colours by depth with its number, right of the time; gives its width,
        0 for one bit, or for more than there is room for.
        """
        words = [translate(say("Bit {n}", n=number)) for number, _ in block.bits]
        names = [write_line(name, 15, bold=True) for name in words]
        swatch, gap, colours = px(SWATCH), px(GAP), palette().bits
        wide = sum(name.width + swatch + 2 * gap for name in names)
        room = self.width() - px(CLOCK) - px(BAR)
        if block.comes_off or len(block.bits) < 2 or wide > room:
            return 0
        left, line = self.width() - wide, self.time_line
        painter.setFont(style.make_font(15, bold=True))
        for n, name in enumerate(names):
            left += gap
            _draw_shades(painter, QRect(left, line.center().y() - px(7), swatch, px(14)),
                         colours[n % len(colours)])  # fmt: skip
            left += swatch + gap // 2
            painter.setPen(QColor(palette().ink))
            painter.drawText(QRect(left, line.top(), name.width, line.height()), LEFT, name.text)
            left += name.width + gap // 2
        return wide

    def _is_shown(self, stroke: Stroke) -> bool:
        if ("band", stroke.band) in self.hidden:
            return False
        return stroke.band == RAPID or ("bit", stroke.bit) not in self.hidden

    def _draw_time(self, painter: QPainter, whole: float) -> None:
        """Draws the time, and how fast it is played, left of its line."""
        painter.setFont(style.make_font(15))
        painter.setPen(QColor(palette().ink))
        at, whole_ = _write_clock(self.at_s), _write_clock(whole)
        told = say("{at} of {whole} · {n}×", at=at, whole=whole_, n=self.speed)
        painter.drawText(self.time_line, LEFT, translate(told))
        draw_bar(painter, self._bar, self.at_s / whole if whole else 1.0)

    def _find_bar(self, legend: int) -> QRect:
        """Finds the place of the time's line, beside a legend that is so wide."""
        line, high = self.time_line, px(LINE)
        left = px(CLOCK)
        return QRect(left, line.center().y() - high // 2, self.width() - left - legend, high)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begins a drag, or goes to a place on the time line."""
        self._dragged = self._pressed = event.position()
        self._pinched = False
        self.mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Sends the place on the sheet that was touched, where nothing was dragged."""
        at, block = event.position(), self.block
        moved = (at - self._pressed).manhattanLength()
        if block is None or not self.picture.contains(at.toPoint()):
            return
        if moved > px(DRAGGED) or self._pinched:
            self.touched, self._moved = None, self.view.zoom > 1.0
            self.update()
            return
        place = self.view.to_mm(at, QRectF(self.picture))
        if 0 <= place.x() <= block.length_mm and 0 <= place.y() <= block.width_mm:
            self.touched, self._moved = place, False
            self.update()
            near = px(FINGER) / self.view.pixels_per_mm(QRectF(self.picture))
            self.send(f"@place {place.x():.1f} {place.y():.1f} {near:.1f}")

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Moves the sheet, or the time."""
        at = event.position()
        if self.time_line.contains(at.toPoint()) and self.block:
            bar = self._bar
            self.go_to((at.x() - bar.left()) / max(bar.width(), 1) * self.block.seconds)
        elif self.picture.contains(at.toPoint()) and not self._pinched:
            self.view.drag(at - self._dragged, QRectF(self.picture))
            self.update()
        self._dragged = at

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zooms, the place under the pointer staying where it is."""
        notches = event.angleDelta().y() / NOTCH
        self.view.zoom_by(ZOOM ** (notches / 2), event.position(), QRectF(self.picture))
        self.touched, self._moved = None, self.view.zoom > 1.0
        self.update()
        event.accept()

    def event(self, event: QEvent) -> bool:
        """Zooms by two fingers, what lies between them staying there."""
        pinch = (
            event.gesture(Qt.GestureType.PinchGesture)
            if isinstance(event, QGestureEvent)
            else None
        )
        if not isinstance(pinch, QPinchGesture):
            return super().event(event)
        at, before = (
            self.mapFromGlobal(place) for place in (pinch.centerPoint(), pinch.lastCenterPoint())
        )
        self._pinched = True
        self.view.zoom_by(pinch.scaleFactor(), at, QRectF(self.picture))
        if pinch.changeFlags() & QPinchGesture.ChangeFlag.CenterPointChanged:
            self.view.drag(at - before, QRectF(self.picture))
        self.update()
        return True

    def hideEvent(self, event: QHideEvent) -> None:
        """Stops: nobody sees it."""
        super().hideEvent(event)
        self.timer.stop()


def _list_layers(block: PathDrawing) -> list[tuple[Layer, Text]]:
    """Lists the layers that the strokes have, and what they are called."""
    bands = {s.band for s in block.strokes}
    found: list[tuple[Layer, Text]] = [
        (("bit", n), say("Bit {n}, {mm} mm", n=n, mm=length(mm))) for n, mm in block.bits
    ]
    if RAPID in bands:
        found.append((("band", RAPID), say("Rapids")))
    if AIR in bands:
        found.append((("band", AIR), say("Above the sheet")))
    for band, mm in enumerate(block.bands, 1):
        if band in bands:
            last = band == len(block.bands)
            before = block.bands[band - 2] if band > 1 else 0.0
            name = say("Over {mm} mm deep", mm=length(before)) if last else say(
                "{a} to {b} mm deep", a=length(before), b=length(mm)
            )  # fmt: skip
            found.append((("band", band), name))
    return found


def _count_across(width: int) -> int:
    """Counts the layer keys beside each other."""
    return max(1, (width + px(GAP)) // px(CHIP + GAP))


def _list_boxes(width: int, top: int, count: int) -> list[QRect]:
    """Lists boxes of one size over a width."""
    gap = px(GAP)
    wide = (width - (count - 1) * gap) // count
    return [QRect(n * (wide + gap), top, wide, px(TARGET)) for n in range(count)]


def _place_key(key: Touch, box: QRect, code: str, name: Text, left: int = 4) -> None:
    """Puts a key into its place with its name on it."""
    page = TextPage(box.width())
    page.put_text(name, (left, 0, box.width() - left - 4), 15, flags=CENTRE, high=box.height())
    key.set_content(code, translate(name), page)
    key.setGeometry(box)
    key.show()
    key.update()


def _cut_stroke(stroke: Stroke, polygon: QPolygonF, at_s: float) -> QPolygonF:
    """Cuts a stroke off at a second of the path."""
    if stroke.points[-1][2] <= at_s:
        return polygon
    count = max(bisect_left(stroke.points, at_s, key=lambda p: p[2]), 1)
    (x, y, began), (x2, y2, ended) = stroke.points[count - 1], stroke.points[count]
    share = (at_s - began) / (ended - began) if ended > began else 0.0
    short = QPolygonF([QPointF(left, up) for left, up, _ in stroke.points[:count]])
    short.append(QPointF(x + (x2 - x) * share, y + (y2 - y) * share))
    return short


def _draw_stroke(painter: QPainter, polygon: QPolygonF) -> None:
    """Draws a line, or the dot of a bit that goes straight down."""
    if polygon.size() == 2 and polygon.first() == polygon.last():
        painter.drawPoint(polygon.first())
    else:
        painter.drawPolyline(polygon)


def _draw_shades(painter: QPainter, box: QRect, colour: str) -> None:
    """Draws a bit's colour at each depth, the shallowest first."""
    wide = box.width() // len(SHADES)
    for band in range(1, len(SHADES) + 1):
        place = QRect(box.left() + (band - 1) * wide, box.top(), wide, box.height())
        painter.fillRect(place, _shade_colour(colour, band))


def _draw_cross(painter: QPainter, at: QPointF) -> None:
    """Draws a cross of hairs where the drawing comes closer."""
    painter.setPen(_make_pen(palette().ink, 1.4))
    far, near = px(14), px(4)
    for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        way = QPointF(x, y)
        painter.drawLine(at + way * near, at + way * far)


def _make_pen(colour: str, wide: float, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    """Makes a pen as wide on the screen as said, whatever the scale."""
    pen = QPen(QColor(colour), wide * px(10) / 10, style, Qt.PenCapStyle.RoundCap)
    pen.setCosmetic(True)
    return pen


def _make_band_pen(band: int) -> QPen:
    """Makes the pen of what cuts nothing: rapids dotted, feeds above the sheet dashed."""
    if band == RAPID:
        return _make_pen(palette().attention, 1, Qt.PenStyle.DotLine)
    return _make_pen(palette().quiet, 1, Qt.PenStyle.DashLine)


def _shade_colour(colour: str, band: int) -> QColor:
    """Mixes a bit's colour with the board's: the deeper, the stronger."""
    share = SHADES[min(max(band, 1), len(SHADES)) - 1]
    strong, weak = QColor(colour), QColor(palette().wood)
    red, green, blue = (
        round(share * a + (1 - share) * b)
        for a, b in (
            (strong.red(), weak.red()),
            (strong.green(), weak.green()),
            (strong.blue(), weak.blue()),
        )
    )
    return QColor(red, green, blue)


def _write_clock(seconds: float) -> str:
    return f"{int(seconds) // 60}:{int(seconds) % 60:02d}"
