"""A pane: blocks below each other on a white card; it scrolls only where it must.

Nothing here is a Qt layout. A pane is laid out once after all of its blocks are set, and a
block that is as tall as before costs nothing: a scan is answered in a few milliseconds.
"""

from collections.abc import Callable
from typing import Any, NamedTuple

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QScrollBar, QWidget

from station.look.blocks.asked import AskedBlock
from station.look.blocks.cards import CardsBlock
from station.look.blocks.charts import BandsBlock, FlowBlock, PlacesBlock
from station.look.blocks.decision import DecisionBlock
from station.look.blocks.drawings import PartBlock, SheetBlock
from station.look.blocks.keys import KeysBlock
from station.look.blocks.letters import LettersBlock
from station.look.blocks.mailer import MailerBlock
from station.look.blocks.path import PathBlock
from station.look.blocks.plain import (
    HeaderBlock,
    HintBlock,
    ListingBlock,
    MeterBlock,
    PairsBlock,
    RemarkBlock,
    StepsBlock,
)
from station.look.blocks.progress import ProgressBlock
from station.look.blocks.rows import ChecksBlock, TableBlock
from station.look.marks import draw_plate
from station.look.presses import Presses
from station.look.style import GAP, palette, px
from station.look.widgets import PaintedBlock, Send
from station.shop import faces
from station.shop.faces import Block, Press

WIDGETS: dict[type, Callable[[Send], PaintedBlock[Any]]] = {
    faces.Header: HeaderBlock,
    faces.Steps: StepsBlock,
    faces.Table: TableBlock,
    faces.Checks: ChecksBlock,
    faces.Progress: ProgressBlock,
    faces.SheetDrawing: SheetBlock,
    faces.PathDrawing: PathBlock,
    faces.PartDrawing: PartBlock,
    faces.MailerDrawing: MailerBlock,
    faces.Cards: CardsBlock,
    faces.Listing: ListingBlock,
    faces.Remark: RemarkBlock,
    faces.Meter: MeterBlock,
    faces.Pairs: PairsBlock,
    faces.Hint: HintBlock,
    faces.Decision: DecisionBlock,
    faces.Keys: KeysBlock,
    faces.Asked: AskedBlock,
    faces.Letters: LettersBlock,
    faces.Places: PlacesBlock,
    faces.Flow: FlowBlock,
    faces.Bands: BandsBlock,
}
WIDE = (faces.Header, faces.Steps)  # span both columns of a pane
# these take what height is left
TALL = (faces.SheetDrawing, faces.PathDrawing, faces.Flow, faces.PartDrawing, faces.MailerDrawing)
LONG = 5  # checks that stand beside a sheet above a bar over both columns
INSIDE = (20, 12, 20, 14)  # px, from a card's edge to what stands in it
PLAIN = (0, 4, 0, 0)  # the same on the bench
APART = 24  # px between the two columns
FIRST = 0.62  # the first column's share
BAR = 12  # px, a scroll bar's width


class BlockColumn(QWidget):
    """Holds blocks below each other."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.kinds: tuple[type, ...] = ()
        self.blocks: list[PaintedBlock[Any]] = []
        self._made: dict[type, list[PaintedBlock[Any]]] = {}  # every widget so far, by kind

    def show_blocks(self, blocks: tuple[Block, ...]) -> None:
        """Shows the blocks."""
        kinds = tuple(type(b) for b in blocks)
        if kinds != self.kinds:
            self._take_widgets(kinds)
        for widget, block in zip(self.blocks, blocks, strict=True):
            widget.show_block(block)

    def _take_widgets(self, kinds: tuple[type, ...]) -> None:
        """Takes widgets made before up again for other kinds of block, for making is slow."""
        before, taken = self.blocks, dict.fromkeys(kinds, 0)
        self.kinds, self.blocks = kinds, []
        for kind in kinds:
            made = self._made.setdefault(kind, [])
            if taken[kind] == len(made):
                made.append(WIDGETS[kind](self.send))
                made[-1].setParent(self)
            self.blocks.append(made[taken[kind]])
            taken[kind] += 1
        for widget in before:
            if widget not in self.blocks:
                widget.hide()
        for widget in self.blocks:
            if isinstance(widget, AskedBlock):
                widget.set_flat(any(k in (*TALL, faces.Table) for k in kinds))

    def measure(self, width: int) -> "Heights":
        """Measures the height that each block needs at a width."""
        return Heights(tuple(widget.find_page(width).height for widget in self.blocks), px(GAP))

    def lay_out(self, width: int, height: int, heights: "Heights") -> None:
        """Puts the blocks below each other; drawings take what height is left."""
        spare, top = height - heights.needed, 0
        for kind, widget, least in zip(self.kinds, self.blocks, heights.each, strict=True):
            high = least
            if kind in TALL and spare > 0:
                more = min(spare, max(widget.most_height(width) - high, 0))
                high, spare = high + more, spare - more
            widget.put_into(QRect(0, top, width, high))
            widget.show()
            top += high + heights.gap


class Heights(NamedTuple):
    """The least height of each block of a column, and the gap between two, pixels."""

    each: tuple[int, ...]
    gap: int

    @property
    def needed(self) -> int:
        """The height that all of them need."""
        return sum(self.each) + self.gap * max(len(self.each) - 1, 0)


class SlimScrollBar(QScrollBar):
    """A thin scroll bar without arrows."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paints the handle alone."""
        whole = self.maximum() - self.minimum() + self.pageStep()
        if whole <= self.pageStep():
            return
        high = max(px(60), self.height() * self.pageStep() // whole)
        share = (self.value() - self.minimum()) / (self.maximum() - self.minimum())
        top = round((self.height() - high) * share)
        box = QRect(2, top, self.width() - 4, high)
        draw_plate(QPainter(self), box, palette().quiet, radius=4)


class ColumnScroll(QScrollArea):
    """Shows a column; scrolls it where it is too tall."""

    def __init__(self, parent: QWidget, column: BlockColumn) -> None:
        super().__init__(parent)
        self.column = column
        self.setVerticalScrollBar(SlimScrollBar())
        self.verticalScrollBar().setFixedWidth(px(BAR))
        self.setWidget(column)
        for part in (column, self.viewport()):
            part.setAutoFillBackground(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leaves arrows to the window: they move the focus."""
        event.ignore()

    def put_into(self, box: QRect) -> None:
        """Puts the column into a place, narrower where it has to scroll."""
        width, heights = box.width(), self.column.measure(box.width())
        if heights.needed > box.height():
            width -= px(BAR) + px(4)
            heights = self.column.measure(width)
        self.setGeometry(box)
        high = max(heights.needed, box.height())
        self.column.resize(width, high)
        self.column.lay_out(width, high, heights)


class Pane(QWidget):
    """Holds one or two columns of blocks and, below them, the large buttons."""

    def __init__(self, send: Send, parent: QWidget) -> None:
        super().__init__(parent)
        self.plain = False  # on the bench without a card
        self.head, self.foot = BlockColumn(send), BlockColumn(send)
        self.first, self.second = BlockColumn(send), BlockColumn(send)
        self.presses = Presses(self, send)
        self.main, self.beside = ColumnScroll(self, self.first), ColumnScroll(self, self.second)
        for column in (self.head, self.foot):
            column.setParent(self)

    def show_blocks(
        self,
        blocks: tuple[Block, ...],
        beside: tuple[Block, ...] = (),
        presses: tuple[Press, ...] = (),
    ) -> None:
        """Shows the pane at its next `put_into`; hides it when there is nothing in it."""
        head, body, foot = _spread_blocks(blocks) if beside else ((), blocks, ())
        if any(isinstance(b, faces.Checks) and len(b.items) > LONG for b in beside):
            body, foot = (*body, *foot), ()  # the list needs the height
        for column, part in ((self.head, head), (self.foot, foot)):
            column.show_blocks(part)
            column.setVisible(bool(part))
        self.first.show_blocks(body)
        self.second.show_blocks(beside)
        self.beside.setVisible(bool(beside))
        self.presses.show_presses(presses)
        self.setVisible(bool(blocks or beside or presses))

    def set_ground(self, blocks: tuple[Block, ...]) -> None:
        """Sets blocks that are cards themselves on the bench, others on one white card."""
        plain = any(isinstance(b, faces.Cards | faces.Meter) for b in blocks)
        if plain != self.plain:
            self.plain = plain
            self.update()

    def put_into(self, box: QRect) -> None:
        """Puts the pane into its place and lays out what stands in it."""
        self.setGeometry(box)
        left, top, right, low = map(px, PLAIN if self.plain else INSIDE)
        area = QRect(left, top, box.width() - left - right, box.height() - top - low)
        gap = px(GAP)
        if self.head.blocks:
            high = self._place_strip(self.head, area, at_foot=False)
            area.setTop(area.top() + high + gap)
        high = self.presses.needed_height(area.width())
        if high:
            self.presses.put_into(QRect(left, area.bottom() + 1 - high, area.width(), high))
            area.setBottom(area.bottom() - high - gap)
        if self.foot.blocks:
            high = self._place_strip(self.foot, area, at_foot=True)
            area.setBottom(area.bottom() - high - gap)
        self._place_columns(area)

    def _place_strip(self, column: BlockColumn, area: QRect, *, at_foot: bool) -> int:
        """Puts a column over the whole width of an area, at its head or foot; gives its height."""
        heights = column.measure(area.width())
        high = heights.needed
        top = area.bottom() + 1 - high if at_foot else area.top()
        column.setGeometry(area.left(), top, area.width(), high)
        column.lay_out(area.width(), high, heights)
        return high

    def _place_columns(self, area: QRect) -> None:
        """Places the two columns beside each other, or the first alone."""
        if not self.second.blocks:
            self.main.put_into(area)
            return
        wide = round((area.width() - px(APART)) * FIRST)
        self.main.put_into(QRect(area.left(), area.top(), wide, area.height()))
        left = area.left() + wide + px(APART)
        self.beside.put_into(QRect(left, area.top(), area.right() + 1 - left, area.height()))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paints the card; where only its middle is painted, a plain fill is quicker."""
        if self.plain:
            return
        edge = px(GAP)
        if self.rect().adjusted(edge, edge, -edge, -edge).contains(event.rect()):
            QPainter(self).fillRect(event.rect(), QColor(palette().paper))
        else:
            draw_plate(QPainter(self), self.rect(), palette().paper, palette().line)


def _spread_blocks(
    blocks: tuple[Block, ...],
) -> tuple[tuple[Block, ...], tuple[Block, ...], tuple[Block, ...]]:
    """Spreads blocks: what spans both columns above, the first column, what spans them below."""
    first = next((n for n, b in enumerate(blocks) if not isinstance(b, WIDE)), len(blocks))
    last = len(blocks)
    while last > first and isinstance(blocks[last - 1], faces.Progress):
        last -= 1
    return blocks[:first], blocks[first:last], blocks[last:]
