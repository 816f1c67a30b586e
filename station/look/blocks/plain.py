"""Blocks of text: header, steps, pairs, hint, remark, meter, progress, listing."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from station.look import fonts
from station.look.palette import tone
from station.look.texts import text
from station.look.widgets import Bar, Label, Send, Touch, clear, mark, palette, tight
from station.shop.faces import (
    Cell,
    Header,
    Hint,
    Listing,
    Meter,
    Pairs,
    Progress,
    Remark,
    Steps,
    Text,
)

BASE = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom


class HeaderBlock(QWidget):
    """The large head of the work in hand."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.label, self.number = Label(14), Label(44, bold=True, wrap=False)
        self.title, self.note = Label(23, bold=True), Label(17)
        self.right_label, self.right = Label(14, wrap=False), Label(28, bold=True, wrap=False)
        self.small = Label(22, bold=True, wrap=False)
        row = QHBoxLayout(self)
        tight(row, 32)
        for labels, stretch in (((self.label, self.number), 0), ((self.title, self.note), 1)):
            column = QVBoxLayout()
            tight(column, 0)
            for label in labels:
                column.addWidget(label)
            column.addStretch(1)
            row.addLayout(column, stretch)
        row.addLayout(self._value())

    def _value(self) -> QVBoxLayout:
        """The value at the right under its label, what it is out of beside it."""
        column, line = QVBoxLayout(), QHBoxLayout()
        tight(column, 0)
        tight(line, 12)
        for label in (self.right, self.small):
            line.addWidget(label, 0, BASE)
        self.right_label.setAlignment(Qt.AlignmentFlag.AlignRight)
        column.addWidget(self.right_label)
        column.addLayout(line)
        column.addStretch(1)
        return column

    def set(self, block: Header) -> None:
        """Shows the header."""
        self.label.say(block.label, "quiet")
        self.number.say(block.number)
        self.title.say(block.title)
        self.note.say(block.note, "quiet")
        self.right_label.say(block.right_label, "quiet")
        self.right.say(block.right)
        self.small.say(block.right_small, "quiet")
        self.right.size_to(44 if block.right_small else 23)
        for label in (self.right_label, self.right, self.small):
            label.setVisible(bool(label.text()))


class StepsBlock(QWidget):
    """The way through the shop as a line with stations."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.block: Steps | None = None
        self.setFixedHeight(70)

    def set(self, block: Steps) -> None:
        """Shows the steps."""
        if block != self.block:
            self.block = block
            self.setAccessibleName(", ".join(text(name) for name, _, _ in block.items))
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The line, a disc for each step, its name and note."""
        if self.block is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        each = self.width() / len(self.block.items)
        for n, (_, _, state) in enumerate(self.block.items[1:], 1):
            done = state in ("done", "now")
            painter.setPen(QPen(QColor(palette().good if done else palette().line), 4))
            painter.drawLine(QPointF(each * (n - 0.5), 15), QPointF(each * (n + 0.5), 15))
        for n, item in enumerate(self.block.items):
            self._step(painter, each * n, each, item)

    def _step(
        self, painter: QPainter, left: float, each: float, item: tuple[Text, Text, str]
    ) -> None:
        name, note, state = item
        disc = QRectF(left + each / 2 - 12, 3, 24, 24)
        if state == "done":
            mark(painter, disc, "good", palette().good, palette().on_bar)
        else:
            painter.setPen(QPen(QColor(palette().act if state == "now" else palette().line), 4))
            painter.setBrush(QColor(palette().act if state == "now" else palette().paper))
            painter.drawEllipse(disc.adjusted(2, 2, -2, -2))
        for words, top, px, bold in ((name, 30, 16, state == "now"), (note, 50, 13, False)):
            painter.setFont(fonts.font(px, bold=bold))
            painter.setPen(QColor(palette().ink if state != "next" else palette().quiet))
            painter.drawText(
                QRectF(left, top, each, 20), Qt.AlignmentFlag.AlignCenter, text(words)
            )


class PairsBlock(QWidget):
    """Label and value, a line each."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.block: Pairs | None = None
        self.column = QVBoxLayout(self)
        tight(self.column, 6)

    def set(self, block: Pairs) -> None:
        """Shows the pairs."""
        if block == self.block:
            return
        self.block = block
        clear(self.column)
        if block.title:
            self.column.addWidget(Label(20, bold=True).say(block.title))
        for name, value in block.rows:
            line = QHBoxLayout()
            line.addWidget(Label(16, wrap=False).say(name, "quiet"))
            shown = Label(17, bold=True).say(value)
            shown.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            line.addWidget(shown, 1)
            self.column.addLayout(line)


class Boxed(QFrame):
    """A rounded box with a ground of its own."""

    def __init__(self, ground: str, edge: str) -> None:
        super().__init__()
        self.setObjectName("boxed")
        self.colours(ground, edge)

    def colours(self, ground: str, edge: str) -> None:
        """Sets the ground and the line around it."""
        self.setStyleSheet(
            f"#boxed {{ background: {ground}; border: 1px solid {edge}; border-radius: 8px; }}"
        )


class HintBlock(Boxed):
    """The one thing to do next."""

    def __init__(self, _send: Send) -> None:
        super().__init__(palette().tint, "#c5d4e3")
        self.title, self.right = Label(23, bold=True), Label(23, bold=True, wrap=False)
        self.note = Label(17)
        grid = QGridLayout(self)
        tight(grid, 4, 16)
        grid.addWidget(self.title, 0, 0)
        grid.addWidget(self.right, 0, 1, Qt.AlignmentFlag.AlignRight)
        grid.addWidget(self.note, 1, 0, 1, 2)
        grid.setColumnStretch(0, 1)

    def set(self, block: Hint) -> None:
        """Shows the hint."""
        self.title.say(block.title, block.tone)
        self.right.say(block.right)
        self.right.setVisible(bool(self.right.text()))
        self.note.say(block.note, "quiet")
        self.note.setVisible(bool(self.note.text()))


class RemarkBlock(Boxed):
    """A boxed remark: "Take care"."""

    def __init__(self, _send: Send) -> None:
        super().__init__(palette().care, "#e5d3a8")
        self.sign = Sign()
        self.title, self.words = Label(17, bold=True), Label(14)
        grid = QGridLayout(self)
        tight(grid, 6, 14)
        grid.addWidget(self.sign, 0, 0)
        grid.addWidget(self.title, 0, 1)
        grid.addWidget(self.words, 1, 0, 1, 2)
        grid.setColumnStretch(1, 1)

    def set(self, block: Remark) -> None:
        """Shows the remark."""
        self.sign.set(block.tone)
        self.title.say(block.title, block.tone)
        self.words.say(block.text)


class Sign(QWidget):
    """A tone's shape."""

    def __init__(self) -> None:
        super().__init__()
        self.shade = "attention"
        self.setFixedSize(26, 24)

    def set(self, shade: str) -> None:
        """Shows a tone."""
        self.shade = shade
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The shape."""
        mark(
            QPainter(self),
            QRectF(self.rect()).adjusted(1, 1, -1, -1),
            self.shade,
            tone(palette(), self.shade),
            palette().care,
        )


class MeterBlock(Boxed):
    """A value with a bar: a bit's metres."""

    def __init__(self, _send: Send) -> None:
        super().__init__(palette().paper, palette().line)
        self.title, self.left = Label(19, bold=True), Label(17, wrap=False)
        self.right, self.bar = Label(16, bold=True), Bar(12)
        grid = QGridLayout(self)
        tight(grid, 6, 14)
        grid.addWidget(self.title, 0, 0, 1, 2)
        grid.addWidget(self.left, 1, 0)
        grid.addWidget(self.right, 1, 1)
        grid.addWidget(self.bar, 2, 0, 1, 2)
        self.right.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)

    def set(self, block: Meter) -> None:
        """Shows the meter."""
        self.title.say(block.title)
        self.left.say(block.left)
        self.right.say(block.right, block.tone if block.tone != "good" else "quiet")
        self.bar.set(block.fraction, block.tone or "good")


class ProgressBlock(QWidget):
    """A large value with a bar under it."""

    def __init__(self, _send: Send) -> None:
        super().__init__()
        self.big, self.note = Label(28, bold=True, wrap=False), Label(17, wrap=False)
        self.right, self.bar = Label(16), Bar(16)
        row = QHBoxLayout()
        tight(row, 10)
        row.addWidget(self.big)
        row.addWidget(self.note, 0, Qt.AlignmentFlag.AlignBottom)
        row.addWidget(self.right, 1)
        self.right.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom)
        column = QVBoxLayout(self)
        tight(column, 8)
        column.addLayout(row)
        column.addWidget(self.bar)

    def set(self, block: Progress) -> None:
        """Shows the progress."""
        self.big.say(block.big, "" if block.tone == "good" else block.tone)
        self.note.say(block.note, "quiet")
        self.right.say(block.right, "quiet")
        self.bar.set(block.fraction, block.tone or "good")


class ListingBlock(QWidget):
    """Thin rows of cells under a title; those with a code are tall enough to touch."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.block: Listing | None = None
        self.column = QVBoxLayout(self)
        tight(self.column, 0)

    def set(self, block: Listing) -> None:
        """Shows the rows."""
        if block == self.block:
            return
        self.block = block
        clear(self.column)
        if block.title:
            self.column.addWidget(Label(20, bold=True).say(block.title))
        if not block.rows and block.empty:
            self.column.addWidget(Label(16).say(block.empty, "quiet"))
        widths = _widths(block)
        for cells, code in block.rows:
            self.column.addWidget(self._row(cells, code, widths))
            line = QFrame()
            line.setFixedHeight(1)
            line.setStyleSheet(f"background: {palette().line};")
            self.column.addWidget(line)

    def _row(self, cells: tuple[Cell, ...], code: str, widths: list[int]) -> Touch:
        """One row; short columns are as wide as their longest cell, the others share."""
        touch = Touch(self.send, code, ", ".join(text(c.text) for c in cells))
        touch.setEnabled(bool(code))
        if not code:
            touch.setMinimumHeight(36)
            touch.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        row = QHBoxLayout(touch)
        row.setContentsMargins(4, 2, 4, 2)
        row.setSpacing(16)
        for n, cell in enumerate(cells):
            label = Label(16, bold=cell.bold).say(cell.text, cell.tone)
            label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
            short = widths[n] <= SHORT
            if short:
                label.setMinimumWidth(widths[n])
            row.addWidget(label, 0 if short else widths[n])
            if n == len(cells) - 1 and n and short:
                label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if all(w <= SHORT for w in widths[: len(cells)]):
            row.insertStretch(max(len(cells) - 1, 1), 1)
        return touch


SHORT = 110  # px; a column no wider than this never wraps


def _widths(block: Listing) -> list[int]:
    """The width of each column's longest cell, px."""
    most = max((len(cells) for cells, _ in block.rows), default=0)
    metrics = {bold: QFontMetrics(fonts.font(16, bold=bold)) for bold in (False, True)}
    return [
        max(
            metrics[cells[n].bold].horizontalAdvance(text(cells[n].text)) + 3
            for cells, _ in block.rows
            if n < len(cells)
        )
        for n in range(most)
    ]
