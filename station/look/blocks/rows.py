"""Blocks to touch: table and checks."""

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from station.look import marks
from station.look.blocks.columns import Columns
from station.look.language import translate
from station.look.style import FEWEST_ROWS, GAP, TARGET, count_rows, palette, px
from station.look.widgets import InnerPress, Key, RowsBlock, Send, Sign, Touch, make_keys
from station.look.written import (
    CENTRE,
    LEFT,
    RIGHT,
    PlacedText,
    TextPage,
    fit_line,
    write_line,
    write_typed,
)
from station.shop.faces import Check, Checks, Row, Table
from station.shop.words import say

UNTOUCHED = 46  # px, the height of a check that no touch ticks
THIN = 37  # px, the height of a row of one line
BAR = 14  # px high


class TableRow(Touch):
    """One row: outline, title and note, cells, a tick or a bar at its end."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.send = send
        self._shown: tuple[Row | None, str] = (None, "")
        self.columns: Columns | None = None
        self.keys: list[Key] = []
        self.press: InnerPress | None = None
        self._typed = ("", 0)

    def show_typing(self, text: str, caret: int) -> None:
        """Shows what is being typed in its last cell, where it is to stand there."""
        if (text, caret) != self._typed:
            self._typed = (text, caret)
            self.update()

    def list_words(self) -> list[PlacedText]:
        """Lists its texts; what is typed stands in place of the last cell's."""
        row, columns = self._shown[0], self.columns
        words = super().list_words()
        text, caret = self._typed
        if row is None or row.known is None or not columns or not row.cells or not text:
            return words
        kept, (left, width) = words[:1], columns.cells[len(row.cells) - 1]
        named = kept[0].box.left() + kept[0].measure()[0] + px(GAP) if kept else left
        left, width = min(left, named), width + max(left - named, 0)
        line = write_typed(text, caret, 19, width)
        flags = LEFT if len(row.cells) - 1 in columns.words else RIGHT
        box = QRect(left, 0, width, self.height())
        return [*kept, PlacedText(line.text, box, line.lettering, palette().ink, flags)]

    def show_row(self, row: Row, columns: Columns, page: TextPage, ground: str) -> None:
        """Shows a row."""
        if (row, ground) != self._shown:  # the ground, a tick, a bar; words see to themselves
            self._shown = (row, ground)
            self.update()
        self.columns = columns
        said = [translate(row.title), translate(row.note), *(translate(c.text) for c in row.cells)]
        self.ground = palette().tint if row.selected else ground
        self.edge = palette().act if row.selected else ""
        self.radius = 8 if row.selected else 0
        self.set_content(row.code, ", ".join(filter(None, said)), page)
        self._place_keys(row, columns, page)
        self._place_press(row, columns, page)

    def _place_keys(self, row: Row, columns: Columns, page: TextPage) -> None:
        """Places a counter between one less and one more."""
        counted = row.counter is not None
        if counted and not self.keys:
            self.keys = make_keys(self, self.send, map(Sign, "−+"))
        for key in self.keys:
            key.setVisible(counted)
        if row.counter is None:
            return
        left, width = columns.cells[row.counter]
        side = px(TARGET)
        top = (page.height - side) // 2
        names = (say("{part}: one less", part=row.title), say("{part}: one more", part=row.title))
        places = (left, left + width - side)
        for key, code, name, at in zip(
            self.keys, (row.minus, row.plus), names, places, strict=True
        ):
            key.setGeometry(QRect(at, top, side, side))
            key.set_content(code, translate(name), key.page)

    def _place_press(self, row: Row, columns: Columns, page: TextPage) -> None:
        """Places the button at the end of the row."""
        if self.press is None and row.press:
            self.press = InnerPress(self, self.send)
        if self.press is None:
            return
        self.press.setVisible(bool(row.press))
        if row.press:
            left, width = columns.press
            high = px(TARGET)
            self.press.show_press(row.press, QRect(left, (page.height - high) // 2, width, high))

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the outline, the tick and the bar."""
        row, _ = self._shown
        if row is None or self.columns is None:
            return
        high = self.height()
        if row.shape:
            left, width = self.columns.outline
            tall = px(40)
            marks.draw_outline(painter, QRect(left, (high - tall) // 2, width, tall), row.shape)
        if row.done is not None:
            left, side = self.columns.tick
            box = QRect(left, (high - side) // 2, side, side)
            marks.draw_tick(painter, box, "done" if row.done else "due")
        if row.fraction is not None:
            left, width = self.columns.bar
            box = QRect(left, (high - px(BAR)) // 2, width, px(BAR))
            marks.draw_bar(painter, box, row.fraction)


class TableBlock(RowsBlock[Table, TableRow]):
    """Shows rows under column heads."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self._columns: dict[int, Columns] = {}  # by width

    def lay_out_anew(self) -> None:
        """Forgets what was laid out."""
        self._columns.clear()
        super().lay_out_anew()

    def lay_out(self, page: TextPage, block: Table) -> None:
        """Lays out title and heads; below them the rows, each a page of its own."""
        page.put_below(block.title, 20, bold=True)
        columns = self._columns[page.width] = Columns(block, page.width)
        _put_heads(page, block, columns)
        for row in block.rows:
            make = _make_thin_page if block.thin else _make_row_page
            page.put_page(make(row, columns, page.width))

    def show_typing(self, text: str, caret: int) -> None:
        """Shows what is being typed in the row that it goes to."""
        for row in self.rows:
            row.show_typing(text, caret)

    def make_row(self) -> TableRow:
        """Makes one more row."""
        return TableRow(self, self.send)

    def fill_row(self, number: int, row: TableRow, page: TextPage) -> None:
        """Shows a row; every other one has a ground of its own."""
        if self.block:
            ground = palette().paper if number % 2 else palette().row
            row.show_row(self.block.rows[number], self._columns[page.width], page, ground)


def _put_heads(page: TextPage, block: Table, columns: Columns) -> None:
    """Puts the heads over the columns of the rows."""
    counters = {row.counter for row in block.rows}
    top, high = page.height + px(2), 0
    for n, head in enumerate(block.columns):
        left, width = columns.title if n == 0 else columns.cells[n - 1]
        flags = LEFT if n == 0 or n - 1 in columns.words else RIGHT
        flags = CENTRE if n - 1 in counters else flags
        high = max(high, page.put_text(head, (left, top, width), 15, tone="quiet", flags=flags))
    page.height = top + high + px(2)


def _make_row_page(row: Row, columns: Columns, width: int) -> TextPage:
    """Makes a row's texts: title over note, the cells in the middle of the height."""
    page, (left, wide) = TextPage(width), columns.title
    page.put_text(row.title, (left, 0, wide), 19, bold=True)
    page.put_text(row.note, (left, 0, wide), 15, tone="quiet")
    stacked = len(page.words)
    for n, cell in enumerate(row.cells):
        at, room = columns.cells[n]
        flags = CENTRE if row.counter == n else LEFT if n in columns.words else RIGHT
        page.put_text(cell.text, (at, 0, room), 19, bold=cell.bold, tone=cell.tone, flags=flags)
    keyed = row.counter is not None or row.press is not None
    apart = px(GAP) if keyed else 0  # keys of two rows, not to be mixed up
    page.stack_texts(stacked, px(TARGET) + apart, px(4))
    page.move_to_middle(stacked)
    return page


def measure_thin() -> int:
    """Measures the height of a row of one line, pixels: lower where a screen has more of them."""
    return px(THIN * FEWEST_ROWS / count_rows())


def _make_thin_page(row: Row, columns: Columns, width: int) -> TextPage:
    """Makes a row of one line: the note beside the title, smaller where it is long."""
    page, (left, wide) = TextPage(width), columns.title
    title = write_line(row.title, 17, bold=True)
    page.put_line(title, (left, 0, wide))
    after = min(title.width, wide) + px(GAP)
    note = fit_line(row.note, 15, wide - after)
    page.put_line(note, (left + after, 0, wide - after), tone="quiet")
    for n, cell in enumerate(row.cells):
        at, room = columns.cells[n]
        line = fit_line(cell.text, 17, room, bold=cell.bold)
        page.put_line(line, (at, 0, room), tone=cell.tone,
                      flags=LEFT if n in columns.words else RIGHT)  # fmt: skip
    page.height = measure_thin()
    page.move_to_middle()
    return page


class CheckRow(Touch):
    """One item to be ticked."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.state = "due"

    def show_item(self, item: Check, page: TextPage) -> None:
        """Shows an item."""
        if item.state != self.state:
            self.state = item.state
            self.update()
        name = f"{translate(item.label)}: {translate(item.text)}, {translate(STATES[item.state])}"
        self.set_content(item.code, name, page)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the tick."""
        side = px(30)
        box = QRect(px(4), (self.height() - side) // 2, side, side)
        marks.draw_tick(painter, box, self.state)


STATES = {
    "done": say("done"),
    "due": say("due"),
    "later": say("later"),
    "wrong": say("wrong"),
}


class ChecksBlock(RowsBlock[Checks, CheckRow]):
    """Shows a list to be ticked."""

    def lay_out(self, page: TextPage, block: Checks) -> None:
        """Lays out the title; below it the items, each a page of its own."""
        page.put_below(block.title, 19, bold=True)
        for item in block.items:
            page.height += px(2)
            page.put_page(_make_check_page(item, page.width))

    def make_row(self) -> CheckRow:
        """Makes one more item."""
        return CheckRow(self, self.send)

    def fill_row(self, number: int, row: CheckRow, page: TextPage) -> None:
        """Shows an item."""
        if self.block:
            row.show_item(self.block.items[number], page)


def _make_check_page(item: Check, width: int) -> TextPage:
    page, left = TextPage(width), px(48)
    box = (left, 0, width - left - px(4))
    tone = "stop" if item.state == "wrong" else ""
    page.put_text(item.label, box, 15, tone="quiet")
    page.put_text(item.text, box, 17, bold=True, tone=tone)
    page.stack_texts(len(page.words), px(TARGET if item.code else UNTOUCHED), px(2))
    return page
