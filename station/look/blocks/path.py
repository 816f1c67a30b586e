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
from station.look.style import GAP, TARGET, palette, px
from station.look.widgets import PaintedBlock, Send, Touch
from station.look.written import CENTRE, LEFT, TextPage
from station.shop.faces import PathDrawing
from station.shop.strokes import AIR, RAPID, Stroke
from station.shop.words import length, say

LEAST = 160  # px high, the drawing
CHIP = 132  # px wide at least, a layer's key
TIME = 40  # px high, the time line with the time over it
SHADES = (0.35, 0.55, 0.75, 1.0)  # how strong a bit's colour is: shallow to deep
THIN = 1.2  # px, a cut is drawn no thinner
CLOSE = 8.0  # times closer than the whole sheet, where a problem is looked at
DRAGGED = 6  # px: what moves less is a touch
EACH_MS = 100  # between two steps while it plays
SPEEDS = (60, 10, 1)  # seconds of the path in a second
STEP = 0.02  # share of the path that one touch goes on or back
ZOOM = 1.6  # times closer with a touch
NOTCH = 120.0  # what a wheel tells for one notch

KEYS = ("play", "back", "on", "speed", "in", "out", "all", "layers", "pieces")

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
    """Shows keys for layers over the drawing; under it what plays it and brings it closer."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.view = SheetView()
        self.hidden: set[Layer] = set()
        self.at_s, self.speed = 0.0, SPEEDS[0]
        self.lines: list[tuple[Stroke, QPolygonF]] = []
        self.layers: list[LayerKey] = []
        self.keys = [self._make_key(code) for code in KEYS]
        self.pieces_shown, self.layers_shown = False, False
        self.picture, self.time_line = QRect(), QRect()
        self._since, self._dragged, self._pressed = 0.0, QPointF(), QPointF()
        self.timer = QTimer(self, interval=EACH_MS)
        self.timer.timeout.connect(self._go_on)
        self.grabGesture(Qt.GestureType.PinchGesture)

    def _make_key(self, code: str) -> Touch:
        key = Touch(self, self.do_act, code)
        key.ground, key.edge = palette().paper, palette().line
        return key

    def show_block(self, block: PathDrawing) -> None:
        """Shows a path: the whole of it, every layer; or does what a card asks of it."""
        before = self.block
        if before is not None and before.strokes == block.strokes:
            self._go_on_with(before, block)
            return
        self.timer.stop()
        self.hidden.clear()
        self.at_s = block.seconds
        self.view = SheetView(block.length_mm, block.width_mm)
        self.lines = [
            (s, QPolygonF([QPointF(x, y) for x, y, _ in s.points])) for s in block.strokes
        ]
        super().show_block(block)

    def _go_on_with(self, before: PathDrawing, block: PathDrawing) -> None:
        """Shows the same path with other marks, or does what a card asks of it."""
        self.block = block
        if block.asked != before.asked:
            self.do_act(block.asked[1])
        chosen = next((m for m in block.marks if m.chosen), None)
        if chosen and chosen not in before.marks:
            self.view.look_at(QPointF(chosen.x_mm, chosen.y_mm), CLOSE)
        if block != before:
            self.update()

    def lay_out(self, page: TextPage, block: PathDrawing) -> None:
        """Keeps room for the keys and the least drawing; the note stands at the foot."""
        page.height = px(TARGET + GAP) + px(TIME) + px(LEAST)
        page.put_below(block.note, 14, tone="quiet")

    def place_children(self, page: TextPage) -> None:
        """Places layers above, the drawing, the time line, the keys, the note."""
        if self.block is None:
            return
        page.move_to_foot(self.height())
        low = min((w.box.top() for w in page.words), default=self.height()) - px(6)
        wide, high, gap = self.width(), px(TARGET), px(GAP)
        for act, box in zip(self.keys, _list_boxes(wide, low - high, len(self.keys)), strict=True):
            act.ground = palette().tint if self._is_on(act.code) else palette().paper
            _place_key(act, box, act.code, self._name_key(act.code))
        self.time_line = QRect(0, low - high - px(TIME), wide, px(TIME))
        top = self._place_layers(_list_layers(self.block)) if self.layers_shown else 0
        for spare in self.layers if not self.layers_shown else ():
            spare.hide()
        self.picture = QRect(0, top, wide, self.time_line.top() - top - gap // 2)

    def _is_on(self, code: str) -> bool:
        """Tells whether a key stands for what is shown now."""
        return {"layers": self.layers_shown, "pieces": self.pieces_shown}.get(code, False)

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

    def _name_key(self, code: str) -> Text:
        names = {
            "play": say("Pause") if self.timer.isActive() else say("Play"),
            "back": say("Back"),
            "on": say("Onward"),
            "speed": say("Speed × {n}", n=self.speed),
            "in": say("Closer"),
            "out": say("Farther"),
            "all": say("Whole sheet"),
            "layers": say("Layers"),
            "pieces": say("As it comes off"),
        }
        return names[code]

    def do_act(self, code: str) -> None:
        """Does what a key says."""
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
        elif name == "layers":
            self.layers_shown = not self.layers_shown
        elif name == "pieces":
            self.pieces_shown = not self.pieces_shown
        elif name == "all":
            self.view.show_whole()
        else:
            self.view.move_to(self._find_focus())
            self.view.zoom_by(ZOOM if name == "in" else 1 / ZOOM)
        self.place_children(self.find_page(self.width()))
        self.update()

    def _find_focus(self) -> QPointF:
        """Finds what comes closer: the bit while it is played, the problem that is looked at."""
        chosen = [m for m in self.block.marks if m.chosen] if self.block else []
        point = self.find_point() if self._is_within() else None
        if point is not None:
            return point
        if chosen:
            return QPointF(chosen[0].x_mm, chosen[0].y_mm)
        return self.view.middle

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
            self.place_children(self.find_page(self.width()))

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
            every = len(self.block.revision.placed) if self.pieces_shown else 0
            draw_pieces(painter, self.block.revision, every)
        if self.pieces_shown:
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
        painter.restore()
        self._draw_legend(painter, self.block)
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

    def _draw_legend(self, painter: QPainter, block: PathDrawing) -> None:
        """Draws the colour and the number of each bit at the drawing's upper left."""
        if self.pieces_shown or len(block.bits) < 2:
            return
        painter.setFont(style.make_font(15, bold=True))
        high, colours = px(22), palette().bits
        left, top = self.picture.left() + px(4), self.picture.top() + px(4)
        for n, (number, _) in enumerate(block.bits):
            row = QRect(left, top + n * high, px(96), high)
            painter.fillRect(row, QColor(palette().paper))
            swatch = QRect(left + px(4), row.top() + px(4), px(22), high - px(8))
            painter.fillRect(swatch, QColor(colours[n % len(colours)]))
            painter.setPen(QColor(palette().ink))
            words = translate(say("Bit {n}", n=number))
            painter.drawText(row.adjusted(px(32), 0, 0, 0), LEFT, words)

    def _is_shown(self, stroke: Stroke) -> bool:
        if ("band", stroke.band) in self.hidden:
            return False
        return stroke.band == RAPID or ("bit", stroke.bit) not in self.hidden

    def _draw_time(self, painter: QPainter, whole: float) -> None:
        """Draws the time line, and the time over it."""
        low = px(20)
        box = self.time_line.adjusted(0, self.time_line.height() - low, 0, -px(4))
        draw_bar(painter, box, self.at_s / whole if whole else 1.0)
        painter.setFont(style.make_font(17))
        painter.setPen(QColor(palette().ink))
        words = translate(
            say("{at} of {whole}", at=_write_clock(self.at_s), whole=_write_clock(whole))
        )
        painter.drawText(self.time_line.adjusted(0, 0, 0, -low), CENTRE, words)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begins a drag, or goes to a place on the time line."""
        self._dragged = self._pressed = event.position()
        self.mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Sends the place on the sheet that was touched, where nothing was dragged."""
        at, block = event.position(), self.block
        moved = (at - self._pressed).manhattanLength()
        if block is None or moved > px(DRAGGED) or not self.picture.contains(at.toPoint()):
            return
        place = self.view.to_mm(at, QRectF(self.picture))
        if 0 <= place.x() <= block.length_mm and 0 <= place.y() <= block.width_mm:
            self.send(f"@place {place.x():.1f} {place.y():.1f}")

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Moves the sheet, or the time."""
        at = event.position()
        if self.time_line.contains(at.toPoint()) and self.block:
            self.go_to(at.x() / max(self.width(), 1) * self.block.seconds)
        elif self.picture.contains(at.toPoint()):
            self.view.drag(at - self._dragged, QRectF(self.picture))
            self.update()
        self._dragged = at

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zooms, the place under the pointer staying where it is."""
        notches = event.angleDelta().y() / NOTCH
        self.view.zoom_by(ZOOM ** (notches / 2), event.position(), QRectF(self.picture))
        self.update()
        event.accept()

    def event(self, event: QEvent) -> bool:
        """Zooms by two fingers."""
        pinch = (
            event.gesture(Qt.GestureType.PinchGesture)
            if isinstance(event, QGestureEvent)
            else None
        )
        if not isinstance(pinch, QPinchGesture):
            return super().event(event)
        self.view.zoom_by(pinch.scaleFactor(), pinch.centerPoint(), QRectF(self.picture))
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
