"""Blocks to touch: table and checks."""

from collections.abc import Iterable

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from station.look.texts import text
from station.look.widgets import (
    TARGET,
    Bar,
    Label,
    Outline,
    Send,
    Touch,
    clear,
    mark,
    palette,
    tight,
)
from station.shop.faces import Check, Checks, Row, Table
from station.shop.words import say

UNTOUCHED = 46  # px, the height of a check that no touch ticks
THROUGH = Qt.WidgetAttribute.WA_TransparentForMouseEvents
LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


def still(*labels: Label) -> None:
    """Lets touches on labels go through to what holds them."""
    for label in labels:
        label.setAttribute(THROUGH)


class Key(Touch):
    """A square key with one sign on it."""

    def __init__(self, send: Send, sign: str, code: str, name: str) -> None:
        super().__init__(send, code, name)
        self.ground, self.edge = palette().paper, palette().line
        self.setFixedSize(TARGET, TARGET)
        label = Label(26, bold=True, wrap=False).say(sign)
        label.setAlignment(Qt.AlignmentFlag.AlignCenter)
        still(label)
        box = QHBoxLayout(self)
        tight(box)
        box.addWidget(label)


class Tick(QWidget):
    """Done, due, cannot be ticked yet, or wrong."""

    def __init__(self, size: int = 28) -> None:
        super().__init__()
        self.state = "due"
        self.setFixedSize(size, size)
        self.setAttribute(THROUGH)

    def set(self, state: str) -> None:
        """Shows a state."""
        if state != self.state:
            self.state = state
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A filled disc with a check, an empty ring, a dashed ring, or a square."""
        painter = QPainter(self)
        box = QRectF(self.rect()).adjusted(2, 2, -2, -2)
        if self.state == "done":
            mark(painter, box, "good", palette().good, palette().on_bar)
            return
        if self.state == "wrong":
            mark(painter, box, "stop", palette().stop, palette().on_bar)
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        dash = Qt.PenStyle.DashLine if self.state == "later" else Qt.PenStyle.SolidLine
        painter.setPen(QPen(QColor(palette().quiet), 3, dash))
        painter.drawEllipse(box)


class TableRow(Touch):
    """One row: outline, title and note, cells, a tick or a bar at its end."""

    def __init__(self, send: Send, table: Table, row: Row) -> None:
        super().__init__(send)
        self.title, self.note = Label(19, bold=True), Label(14)
        self.cells = [Label(19) for _ in row.cells]
        self.keys: dict[str, Key] = {}
        self.outline = Outline() if any(r.shape for r in table.rows) else None
        self.tick = Tick() if any(r.done is not None for r in table.rows) else None
        self.bar = Bar() if any(r.fraction is not None for r in table.rows) else None
        still(self.title, self.note, *self.cells)
        self._lay(send, row, worded(table))

    def _lay(self, send: Send, row: Row, words: set[int]) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 4, 8, 4)
        line.setSpacing(10)
        if self.outline:
            self.outline.setAttribute(THROUGH)
            line.addWidget(self.outline)
        column = QVBoxLayout()
        tight(column, 0)
        column.addStretch(1)
        column.addWidget(self.title)
        column.addWidget(self.note)
        column.addStretch(1)
        line.addLayout(column, 5)
        for n, label in enumerate(self.cells):
            label.setAlignment(LEFT if n in words else RIGHT)
            if row.counter == n:
                self._keys(send, row, line, label)
            else:
                line.addWidget(label, 2)
        for widget, stretch in ((self.tick, 0), (self.bar, 3)):
            if widget:
                line.addWidget(widget, stretch)

    def _keys(self, send: Send, row: Row, line: QHBoxLayout, label: Label) -> None:
        """A counter between one less and one more."""
        for sign, code, name in (
            ("−", row.minus, say("{part}: one less", part=row.title)),
            ("+", row.plus, say("{part}: one more", part=row.title)),
        ):
            self.keys[sign] = Key(send, sign, code, text(name))
        label.setAlignment(Qt.AlignmentFlag.AlignCenter)
        label.setMinimumWidth(46)
        line.addWidget(self.keys["−"])
        line.addWidget(label)
        line.addWidget(self.keys["+"])

    def set(self, row: Row, ground: str) -> None:
        """Shows a row."""
        self.code = row.code
        self.setAccessibleName(", ".join(text(t) for t in (row.title, row.note)))
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus if row.code else Qt.FocusPolicy.NoFocus)
        self.ground = palette().tint if row.selected else ground
        self.edge = palette().act if row.selected else ""
        self.radius = 8 if row.selected else 0
        self.title.say(row.title)
        self.note.say(row.note, "quiet")
        self.note.setVisible(bool(self.note.text()))
        for label, cell in zip(self.cells, row.cells, strict=True):
            label.bold(cell.bold).say(cell.text, cell.tone)
        for sign, code in (("−", row.minus), ("+", row.plus)):
            if sign in self.keys:
                self.keys[sign].code = code
        if self.outline:
            self.outline.set(row.shape)
        if self.tick:
            self.tick.set("done" if row.done else "due")
        if self.bar:
            self.bar.set(row.fraction or 0.0)
        self.update()


class TableBlock(QWidget):
    """Rows under column heads."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.rows: list[TableRow] = []
        self.pattern: object = None
        self.block: Table | None = None
        self.column = QVBoxLayout(self)
        tight(self.column, 0)

    def set(self, block: Table) -> None:
        """Shows the table; widgets are kept while its pattern is the same."""
        if block == self.block:
            return
        self.block = block
        pattern = (
            text(block.title),
            tuple(text(c) for c in block.columns),
            _pattern(block.rows),
            tuple(worded(block)),
        )
        if pattern != self.pattern:
            self.pattern = pattern
            self._build(block)
        for n, (widget, row) in enumerate(zip(self.rows, block.rows, strict=True)):
            widget.set(row, palette().row if n % 2 == 0 else palette().paper)

    def _build(self, block: Table) -> None:
        clear(self.column)
        if block.title:
            self.column.addWidget(Label(20, bold=True).say(block.title))
        self.column.addWidget(_heads(block))
        self.rows = [TableRow(self.send, block, row) for row in block.rows]
        for row in self.rows:
            self.column.addWidget(row)


def _pattern(rows: Iterable[Row]) -> tuple[object, ...]:
    """What decides which widgets a table needs."""
    return tuple(
        (len(r.cells), r.counter, r.shape is not None, r.done is not None, r.fraction is not None)
        for r in rows
    )


def worded(block: Table) -> set[int]:
    """The columns that hold words, not numbers: they stand at the left."""
    shown = [[text(cell.text) for cell in row.cells] for row in block.rows]
    return {
        n
        for n, cells in enumerate(zip(*shown, strict=False))
        if all(c[:1].isalpha() for c in cells)
    }


def _room(width: int) -> QWidget:
    """Holds the room of an outline, a tick or a bar above them; 0: as wide as its share."""
    widget = QWidget()
    if width:
        widget.setFixedWidth(width)
    widget.setSizePolicy(
        QSizePolicy.Policy.Fixed if width else QSizePolicy.Policy.Expanding,
        QSizePolicy.Policy.Fixed,
    )
    return widget


def _heads(block: Table) -> QWidget:
    """The heads, in the same columns as the rows."""
    widget = QWidget()
    line = QHBoxLayout(widget)
    line.setContentsMargins(8, 2, 8, 2)
    line.setSpacing(10)
    row = block.rows[0] if block.rows else None
    words = worded(block)
    if any(r.shape for r in block.rows):
        line.addWidget(_room(52))
    line.addWidget(Label(14).say(block.columns[0], "quiet") if block.columns else Label(14), 5)
    for n, head in enumerate(block.columns[1:]):
        label = Label(14).say(head, "quiet")
        label.setAlignment(LEFT if n in words else RIGHT)
        if row and row.counter == n:
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            label.setFixedWidth(2 * TARGET + 46 + 20)
            line.addWidget(label)
        else:
            line.addWidget(label, 2)
    if any(r.done is not None for r in block.rows):
        line.addWidget(_room(28))
    if any(r.fraction is not None for r in block.rows):
        line.addWidget(_room(0), 3)
    return widget


class CheckRow(Touch):
    """One item to be ticked."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.tick, self.label, self.words = Tick(30), Label(14), Label(17, bold=True)
        still(self.label, self.words)
        line = QHBoxLayout(self)
        line.setContentsMargins(4, 2, 4, 2)
        line.setSpacing(14)
        line.addWidget(self.tick)
        column = QVBoxLayout()
        tight(column, 0)
        column.addStretch(1)
        column.addWidget(self.label)
        column.addWidget(self.words)
        column.addStretch(1)
        line.addLayout(column, 1)

    def set(self, item: Check) -> None:
        """Shows an item."""
        self.code = item.code
        self.setMinimumHeight(TARGET if item.code else UNTOUCHED)
        self.setAccessibleName(f"{text(item.label)}: {text(item.text)}, {item.state}")
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus if item.code else Qt.FocusPolicy.NoFocus)
        self.tick.set(item.state)
        self.label.say(item.label, "quiet")
        self.words.say(item.text, "stop" if item.state == "wrong" else "")
        self.setVisible(True)


class ChecksBlock(QWidget):
    """A list to be ticked, in one column or in two when it is long."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.title = Label(19, bold=True)
        self.items: list[CheckRow] = []
        self.block: Checks | None = None
        self.grid = QGridLayout(self)
        tight(self.grid, 2)

    def set(self, block: Checks) -> None:
        """Shows the list."""
        if block == self.block:
            return
        if self.block is None or len(block.items) != len(self.block.items):
            clear(self.grid)
            self.title = Label(19, bold=True)
            self.items = [CheckRow(self.send) for _ in block.items]
            self.grid.addWidget(self.title, 0, 0, 1, 2)
            for n, line in enumerate(self.items):
                self.grid.addWidget(line, 1 + n, 0)
        self.block = block
        self.title.say(block.title)
        for widget, item in zip(self.items, block.items, strict=True):
            widget.set(item)
