"""Blocks of text: header, steps, pairs, hint, remark, meter, listing."""

from PySide6.QtCore import QPointF, QRect, QRectF
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QWidget

from station.look.marks import draw_bar, draw_mark, draw_plate
from station.look.style import TARGET, palette, px, tone_colour
from station.look.widgets import PaintedBlock, RowsBlock, Send, Touch
from station.look.written import (
    CENTRE,
    LEFT,
    RIGHT,
    TOP_RIGHT,
    TextLine,
    TextPage,
    write_line,
)
from station.shop.faces import (
    Cell,
    Header,
    Hint,
    Listing,
    Meter,
    Pairs,
    Remark,
    Steps,
    Tone,
)
from station.shop.words import say


class HeaderBlock(PaintedBlock[Header]):
    """Shows the large head of the work in hand."""

    def lay_out(self, page: TextPage, block: Header) -> None:
        """Lays number at the left, title and note beside it, a value at the right."""
        gap = px(32)
        number, label = write_line(block.number, 44, bold=True), write_line(block.label, 15)
        wide = max(number.width, label.width)
        right = self._put_value(page, block)
        left = wide + gap
        room = page.width - left - (right + gap if right else 0)
        first = page.put_line(label, (0, 0, wide), tone="quiet")
        first += page.put_line(number, (0, first, wide))
        second = page.put_text(block.title, (left, 0, room), 23, bold=True)
        second += page.put_text(block.note, (left, second, room), 17, tone="quiet")
        page.height = max(page.height, first, second)

    def _put_value(self, page: TextPage, block: Header) -> int:
        """Puts the value under its label, what it is out of beside it; gives its width."""
        value = write_line(block.right, 44 if block.right_small else 23, bold=True)
        small = write_line(block.right_small, 22, bold=True)
        label = write_line(block.right_label, 15)
        both = value.width + (small.width + px(12) if small.width else 0)
        width = max(both, label.width)
        at = (page.width - width, 0, width)
        top = page.put_line(label, at, tone="quiet", flags=TOP_RIGHT)
        high = page.put_line(value, (page.width - both, top, value.width))
        beside = (page.width - small.width, top + high // 6, small.width)
        page.put_line(small, beside, tone="quiet", high=high * 5 // 6)
        page.height = top + high
        return width


class StepsBlock(PaintedBlock[Steps]):
    """Shows the way through the shop as a line with stations."""

    def lay_out(self, page: TextPage, block: Steps) -> None:
        """Lays the name and the note of each step into the middle of its share."""
        each = page.width // max(len(block.items), 1)
        for n, (name, note, state) in enumerate(block.items):
            shade = "quiet" if state == "next" else ""
            at = (n * each, px(30), each)
            heavy = state == "now"
            page.put_text(name, at, 16, bold=heavy, tone=shade, flags=CENTRE, high=px(20))
            page.put_text(
                note, (n * each, px(50), each), 13, tone=shade, flags=CENTRE, high=px(20)
            )
        page.height = px(70)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the line, a disc for each step."""
        if self.block is None:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        each = self.width() / len(self.block.items)
        for n, (_, _, state) in enumerate(self.block.items[1:], 1):
            done = state in ("done", "now")
            painter.setPen(QPen(QColor(palette().good if done else palette().line), px(4)))
            painter.drawLine(QPointF(each * (n - 0.5), px(15)), QPointF(each * (n + 0.5), px(15)))
        for n, (_, _, state) in enumerate(self.block.items):
            disc = QRectF(each * (n + 0.5) - px(12), px(3), px(24), px(24))
            self._draw_disc(painter, disc, state)

    def _draw_disc(self, painter: QPainter, disc: QRectF, state: str) -> None:
        if state == "done":
            draw_mark(painter, disc, "good", palette().good, palette().paper)
            return
        now = state == "now"
        painter.setPen(QPen(QColor(palette().act if now else palette().quiet), px(4)))
        painter.setBrush(QColor(palette().act if now else palette().paper))
        painter.drawEllipse(disc.adjusted(2, 2, -2, -2))


class PairsBlock(PaintedBlock[Pairs]):
    """Shows label and value, a line each."""

    def lay_out(self, page: TextPage, block: Pairs) -> None:
        """Lays out the title, then a line for each pair; a long value wraps."""
        page.put_below(block.title, 20, bold=True)
        for name, value in block.rows:
            page.height += px(6) if page.height else 0
            label = write_line(name, 16)
            left = min(label.width, page.width * 3 // 5)
            room = page.width - left - px(6)
            right = (left + px(6), page.height, room)
            page.height += max(
                page.put_line(label, (0, page.height, left), tone="quiet"),
                page.put_text(value, right, 17, bold=True, flags=RIGHT),
            )


class HintBlock(PaintedBlock[Hint]):
    """Shows the one thing to do next."""

    def lay_out(self, page: TextPage, block: Hint) -> None:
        """Lays out title and what stands at its right, the note below."""
        edge = px(16)
        inner = page.width - 2 * edge
        beside = write_line(block.right, 23, bold=True)
        right = min(beside.width, inner * 3 // 5)
        room = inner - right - (px(12) if right else 0)
        at = (page.width - edge - right, edge, right)
        high = max(
            page.put_text(block.title, (edge, edge, room), 23, bold=True, tone=block.tone),
            page.put_line(beside, at, flags=RIGHT),
        )
        page.height = edge + high
        if block.note:
            page.height += px(4)
            page.height += page.put_text(block.note, (edge, page.height, inner), 17, tone="quiet")
        page.height += edge

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the box."""
        draw_plate(painter, self.rect(), palette().tint, palette().tint_line)


class RemarkBox(Touch):
    """A boxed remark with its sign; one with a code can be touched."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.ground, self.edge = palette().care, palette().care_line
        self.tone: Tone = ""

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the sign."""
        edge = px(15)
        box = QRectF(edge, edge, px(24), px(22))
        draw_mark(painter, box, self.tone, tone_colour(self.tone), palette().care)


class RemarkBlock(RowsBlock[Remark, RemarkBox]):
    """Shows a boxed remark: "Take care"."""

    def lay_out(self, page: TextPage, block: Remark) -> None:
        """Lays the title beside its sign, the text below, all of it in one box."""
        inner, edge, left = TextPage(page.width), px(14), px(14 + 26 + 6)
        more = write_line(say("read all") if block.code else "", 15)
        at = (left, edge, page.width - left - edge - more.width)
        inner.put_line(more, (page.width - edge - more.width, edge, more.width), flags=RIGHT)
        inner.height = edge
        inner.height += inner.put_text(
            block.title, at, 17, bold=True, tone=block.tone, high=px(24)
        )
        inner.height += px(6)
        below = (edge, inner.height, page.width - 2 * edge)
        inner.height += inner.put_text(block.text, below, 15) + edge
        page.inner.append((QRect(0, 0, page.width, inner.height), inner))
        page.height = inner.height

    def make_row(self) -> RemarkBox:
        """Makes its box."""
        return RemarkBox(self, self.send)

    def fill_row(self, _number: int, row: RemarkBox, page: TextPage) -> None:
        """Shows the remark."""
        if self.block:
            row.tone = self.block.tone
            row.set_content(self.block.code, page.join_texts(), page)


class MeterBlock(PaintedBlock[Meter]):
    """Shows a value with a bar: a bit's metres."""

    def lay_out(self, page: TextPage, block: Meter) -> None:
        """Lays out the title, the value and what is said to it, room for the bar."""
        edge, gap = px(14), px(6)
        inner = page.width - 2 * edge
        page.height = edge
        shade = block.tone if block.tone != "good" else "quiet"
        if block.left or not self._lay_beside(page, block, shade):
            title = page.put_text(block.title, (edge, edge, inner), 19, bold=True)
            page.height += title + gap
            at_left = write_line(block.left, 17)
            left = at_left.width
            right = (edge + left + gap, page.height, inner - left - gap)
            page.height += max(
                page.put_line(at_left, (edge, page.height, left)),
                page.put_text(block.right, right, 16, bold=True, tone=shade, flags=RIGHT),
            )
        page.height += gap + px(12) + edge

    def _lay_beside(self, page: TextPage, block: Meter, shade: str) -> bool:
        """Lays what is said beside the title; False where the two have no room on a line."""
        edge, apart = px(14), px(24)
        title = write_line(block.title, 19, bold=True)
        right = write_line(block.right, 16, bold=True)
        left = edge + title.width + apart
        width = page.width - edge - left
        if right.width > width:
            return False
        page.height += max(
            page.put_line(title, (edge, edge, title.width)),
            page.put_line(right, (left, edge, width), tone=shade, flags=RIGHT),
        )
        return True

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the box and the bar."""
        if self.block is None:
            return
        edge, high, colours = px(14), px(12), palette()
        draw_plate(painter, self.rect(), colours.paper, colours.line)
        box = QRect(edge, self.height() - edge - high, self.width() - 2 * edge, high)
        draw_bar(painter, box, self.block.fraction, self.block.tone or "good")


class ListingRow(Touch):
    """A thin row with a line along its foot."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.radius = 0

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the line."""
        foot = QRect(0, self.height() - 1, self.width(), 1)
        painter.fillRect(foot, QColor(palette().line))


class ListingBlock(RowsBlock[Listing, ListingRow]):
    """Shows thin rows of cells under a title; those with a code are tall enough to touch."""

    def lay_out(self, page: TextPage, block: Listing) -> None:
        """Lays out the title; below it the rows, each a page of its own."""
        page.put_below(block.title, 20, bold=True)
        if not block.rows:
            page.put_below(block.empty, 16, tone="quiet")
        rows = [[write_line(c.text, 16, bold=c.bold) for c in cells] for cells, _ in block.rows]
        spans = _find_spans(rows, page.width)
        for lines, (cells, code) in zip(rows, block.rows, strict=True):
            page.put_page(_make_line_page(lines, cells, code, spans, page.width))

    def make_row(self) -> ListingRow:
        """Makes one more row."""
        return ListingRow(self, self.send)

    def fill_row(self, number: int, row: ListingRow, page: TextPage) -> None:
        """Shows a row's cells."""
        if self.block:
            row.set_content(self.block.rows[number][1], page.join_texts(), page)


SHORT = 110  # px; a column no wider than this never wraps
APART = 16  # px between columns


def _make_line_page(
    lines: list[TextLine],
    cells: tuple[Cell, ...],
    code: str,
    spans: list[tuple[int, int]],
    width: int,
) -> TextPage:
    """Makes one row's cells; a narrow last column stands at the right."""
    page, last, short = TextPage(width), len(cells) - 1, px(SHORT)
    narrow = [room <= short for _, room in spans]
    for n, (line, cell) in enumerate(zip(lines, cells, strict=True)):
        left, room = spans[n]
        if n == last and n < len(spans) - 1:  # a shorter row: its last cell takes the rest
            room = width - px(4) - left
        flags = RIGHT if n == last and n and narrow[n] else LEFT
        page.put_line(line, (left, 0, room), tone=cell.tone, flags=flags)
    tallest = max((w.box.height() for w in page.words), default=0)
    page.height = max(px(TARGET if code else 36), tallest + px(4)) + 1
    page.move_to_middle()
    return page


def _find_spans(rows: list[list[TextLine]], width: int) -> list[tuple[int, int]]:
    """Finds left and width of each column: short ones fit their longest cell, others share."""
    longest = _measure_longest(rows)
    if not longest:
        return []
    edge, gap, short = px(4), px(APART), px(SHORT)
    free = width - 2 * edge - gap * (len(longest) - 1)
    fixed = sum(w for w in longest if w <= short)
    long = sum(longest) - fixed
    rest = max(free - fixed, 0)
    widths = [w if w <= short else rest * w // long for w in longest]
    if not long:  # all are short: what is left stands before the last
        widths[max(len(widths) - 2, 0)] += rest
    spans, left = [], edge
    for each in widths:
        spans.append((left, each))
        left += each + gap
    return spans


def _measure_longest(rows: list[list[TextLine]]) -> list[int]:
    """Measures each column's longest cell, px."""
    most = max(map(len, rows), default=0)
    return [max(lines[n].width for lines in rows if n < len(lines)) for n in range(most)]
