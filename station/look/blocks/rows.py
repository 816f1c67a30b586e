"""Blocks to touch: table and checks."""

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from station.look import marks
from station.look.blocks.columns import Columns
from station.look.language import text
from station.look.style import GAP, TARGET, palette, px
from station.look.widgets import Key, Rowed, Send, Touch
from station.look.written import CENTRE, LEFT, RIGHT, Page
from station.shop.faces import Check, Checks, Row, Table
from station.shop.words import say

UNTOUCHED = 46  # px, the height of a check that no touch ticks
BAR = 14  # px high


class TableRow(Touch):
    """One row: outline, title and note, cells, a tick or a bar at its end."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.send = send
        self._shown: tuple[Row | None, str] = (None, "")
        self.columns: Columns | None = None
        self.keys: tuple[Key, ...] = ()

    def set(self, row: Row, columns: Columns, page: Page, ground: str) -> None:
        """Shows a row."""
        if (row, ground) != self._shown:  # the ground, a tick, a bar; words see to themselves
            self._shown = (row, ground)
            self.update()
        self.columns = columns
        said = [text(row.title), text(row.note), *(text(c.text) for c in row.cells)]
        self.ground = palette().tint if row.selected else ground
        self.edge = palette().act if row.selected else ""
        self.radius = 8 if row.selected else 0
        self.become(row.code, ", ".join(filter(None, said)), page)
        self._keys(row, columns, page)

    def _keys(self, row: Row, columns: Columns, page: Page) -> None:
        """A counter between one less and one more."""
        counted = row.counter is not None
        if counted and not self.keys:
            self.keys = tuple(Key(self, self.send, sign, "", "") for sign in "−+")
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
            key.stand(QRect(at, top, side, side))
            key.become(code, text(name), key.page)

    def draw(self, painter: QPainter) -> None:
        """The outline, the tick and the bar."""
        row, _ = self._shown
        if row is None or self.columns is None:
            return
        high = self.height()
        if row.shape:
            left, width = self.columns.outline
            tall = px(40)
            marks.outline(painter, QRect(left, (high - tall) // 2, width, tall), row.shape)
        if row.done is not None:
            left, side = self.columns.tick
            box = QRect(left, (high - side) // 2, side, side)
            marks.tick(painter, box, "done" if row.done else "due")
        if row.fraction is not None:
            left, width = self.columns.bar
            box = QRect(left, (high - px(BAR)) // 2, width, px(BAR))
            marks.bar(painter, box, row.fraction)


class TableBlock(Rowed[Table, TableRow]):
    """Rows under column heads."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self._columns: dict[int, Columns] = {}  # by width

    def anew(self) -> None:
        """Forgets what was laid out."""
        self._columns.clear()
        super().anew()

    def lay(self, page: Page, block: Table) -> None:
        """Title and heads; below them the rows, each a page of its own."""
        page.down(block.title, 20, bold=True)
        columns = self._columns[page.width] = Columns(block, page.width)
        _heads(page, block, columns)
        for row in block.rows:
            page.hold(_row_page(row, columns, page.width))

    def row(self) -> TableRow:
        """One more row."""
        return TableRow(self, self.send)

    def fill(self, number: int, row: TableRow, page: Page) -> None:
        """Shows a row; every other one has a ground of its own."""
        if self.block:
            ground = palette().paper if number % 2 else palette().row
            row.set(self.block.rows[number], self._columns[page.width], page, ground)


def _heads(page: Page, block: Table, columns: Columns) -> None:
    """The heads, over the columns of the rows."""
    counters = {row.counter for row in block.rows}
    top, high = page.height + px(2), 0
    for n, head in enumerate(block.columns):
        left, width = columns.title if n == 0 else columns.cells[n - 1]
        flags = LEFT if n == 0 or n - 1 in columns.words else RIGHT
        flags = CENTRE if n - 1 in counters else flags
        high = max(high, page.put(head, (left, top, width), 14, tone="quiet", flags=flags))
    page.height = top + high + px(2)


def _row_page(row: Row, columns: Columns, width: int) -> Page:
    """A row's texts: title over note, the cells in the middle of the height."""
    page, (left, wide) = Page(width), columns.title
    page.put(row.title, (left, 0, wide), 19, bold=True)
    page.put(row.note, (left, 0, wide), 14, tone="quiet")
    stacked = len(page.words)
    for n, cell in enumerate(row.cells):
        at, room = columns.cells[n]
        flags = CENTRE if row.counter == n else LEFT if n in columns.words else RIGHT
        page.put(cell.text, (at, 0, room), 19, bold=cell.bold, tone=cell.tone, flags=flags)
    apart = px(GAP) if row.counter is not None else 0  # keys of two rows, not to be mixed up
    page.stack(stacked, px(TARGET) + apart, px(4))
    page.middle(stacked)
    return page


class CheckRow(Touch):
    """One item to be ticked."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.state = "due"

    def set(self, item: Check, page: Page) -> None:
        """Shows an item."""
        if item.state != self.state:
            self.state = item.state
            self.update()
        name = f"{text(item.label)}: {text(item.text)}, {text(STATES[item.state])}"
        self.become(item.code, name, page)

    def draw(self, painter: QPainter) -> None:
        """The tick."""
        side = px(30)
        box = QRect(px(4), (self.height() - side) // 2, side, side)
        marks.tick(painter, box, self.state)


STATES = {
    "done": say("done"),
    "due": say("due"),
    "later": say("later"),
    "wrong": say("wrong"),
}


class ChecksBlock(Rowed[Checks, CheckRow]):
    """A list to be ticked."""

    def lay(self, page: Page, block: Checks) -> None:
        """The title; below it the items, each a page of its own."""
        page.down(block.title, 19, bold=True)
        for item in block.items:
            page.height += px(2)
            page.hold(_check_page(item, page.width))

    def row(self) -> CheckRow:
        """One more item."""
        return CheckRow(self, self.send)

    def fill(self, number: int, row: CheckRow, page: Page) -> None:
        """Shows an item."""
        if self.block:
            row.set(self.block.items[number], page)


def _check_page(item: Check, width: int) -> Page:
    page, left = Page(width), px(48)
    tone = "stop" if item.state == "wrong" else ""
    page.put(item.label, (left, 0, width - left - px(4)), 14, tone="quiet")
    page.put(item.text, (left, 0, width - left - px(4)), 17, bold=True, tone=tone)
    page.stack(len(page.words), px(TARGET if item.code else UNTOUCHED), px(2))
    return page
