"""A pane: blocks below each other on a white card; it scrolls only where it must."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from station.look import fonts
from station.look.blocks.asked import AskedBlock
from station.look.blocks.cards import CardsBlock
from station.look.blocks.charts import BandsBlock, FlowBlock, PlacesBlock
from station.look.blocks.drawings import PartBlock, SheetBlock
from station.look.blocks.mailer import MailerBlock
from station.look.blocks.plain import (
    HeaderBlock,
    HintBlock,
    ListingBlock,
    MeterBlock,
    PairsBlock,
    ProgressBlock,
    RemarkBlock,
    StepsBlock,
)
from station.look.blocks.rows import ChecksBlock, TableBlock
from station.look.widgets import GAP, Label, Send, Touch, clear, palette
from station.shop import faces
from station.shop.faces import Block, Press

WIDGETS: dict[type, Callable[[Send], QWidget]] = {
    faces.Header: HeaderBlock,
    faces.Steps: StepsBlock,
    faces.Table: TableBlock,
    faces.Checks: ChecksBlock,
    faces.Progress: ProgressBlock,
    faces.SheetDrawing: SheetBlock,
    faces.PartDrawing: PartBlock,
    faces.MailerDrawing: MailerBlock,
    faces.Cards: CardsBlock,
    faces.Listing: ListingBlock,
    faces.Remark: RemarkBlock,
    faces.Meter: MeterBlock,
    faces.Pairs: PairsBlock,
    faces.Hint: HintBlock,
    faces.Asked: AskedBlock,
    faces.Places: PlacesBlock,
    faces.Flow: FlowBlock,
    faces.Bands: BandsBlock,
}
WIDE = (faces.Header, faces.Steps)  # span both columns of a pane
TALL = (faces.SheetDrawing, faces.Flow, faces.PartDrawing)  # take what height is left


class Column(QWidget):
    """Blocks below each other; with `spare`, what height is left stands below them."""

    def __init__(self, send: Send, *, spare: bool = True) -> None:
        super().__init__()
        self.send = send
        self.kinds: tuple[type, ...] = ()
        self.blocks: list[QWidget] = []
        self.made: dict[type, list[QWidget]] = {}  # every widget so far, by kind of block
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(12)
        if spare:
            self.column.addStretch(1)

    def set(self, blocks: tuple[Block, ...]) -> None:
        """Shows the blocks."""
        kinds = tuple(type(b) for b in blocks)
        if kinds != self.kinds:
            self._lay(kinds)
        for widget, block in zip(self.blocks, blocks, strict=True):
            widget.set(block)  # type: ignore[attr-defined]

    def _lay(self, kinds: tuple[type, ...]) -> None:
        """Other kinds of block: widgets made before are taken up again, for making is slow."""
        self.kinds = kinds
        for widget in self.blocks:
            self.column.removeWidget(widget)
        before, taken = self.blocks, dict.fromkeys(kinds, 0)
        self.blocks = []
        for kind in kinds:
            made = self.made.setdefault(kind, [])
            if taken[kind] == len(made):
                made.append(WIDGETS[kind](self.send))
            self.blocks.append(made[taken[kind]])
            taken[kind] += 1
        for n, (kind, widget) in enumerate(zip(kinds, self.blocks, strict=True)):
            if isinstance(widget, AskedBlock):
                widget.set_flat(any(k in (*TALL, faces.Table) for k in kinds))
            self.column.insertWidget(n, widget, 100 if kind in TALL else 0)
            widget.setVisible(True)
        for widget in before:
            if widget not in self.blocks:
                widget.setVisible(False)


class Scroll(QScrollArea):
    """Scrolls what is too tall, and only that; dragged by a finger or the wheel."""

    def __init__(self, inner: QWidget) -> None:
        super().__init__()
        self.setWidget(inner)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setStyleSheet(
            "QScrollArea { background: transparent; }"
            "QScrollArea > QWidget > QWidget { background: transparent; }"
            "QScrollBar:vertical { background: transparent; width: 12px; }"
            "QScrollBar::handle:vertical {"
            f" background: {palette().quiet}; border-radius: 4px; min-height: 60px;"
            " margin: 0 2px; }"
            "QScrollBar::add-line, QScrollBar::sub-line { height: 0; }"
            "QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }"
        )


class PressButton(Touch):
    """A large button; F1 to F9 press the buttons in order."""

    def __init__(self, send: Send, press: Press, number: int) -> None:
        super().__init__(send, press.code)
        self.press, self.number = press, number
        self.words = Label(20, bold=True)
        self.ink = palette().ink
        self.words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.words.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 4, 14, 4)
        row.addWidget(self.words, 1)
        self.set(press)

    def set(self, press: Press) -> None:
        """Shows a button."""
        self.press, self.code = press, press.code if press.style != "off" else ""
        self.words.say(press.label)
        self.setAccessibleName(self.words.text())
        primary = press.style == "primary"
        self.ground = palette().act if primary else palette().paper
        self.edge = palette().act if primary else palette().line
        self.setEnabled(press.style != "off")
        colour = palette().on_bar if primary else palette().ink
        colour = palette().quiet if press.style == "off" else colour
        self.ink = colour
        self.words.colour(colour)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """The button, its key small in the corner."""
        super().paintEvent(event)
        if self.number > 9 or not self.isEnabled():
            return
        painter = QPainter(self)
        painter.setFont(fonts.font(11))
        painter.setPen(QColor(self.ink))
        low = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom
        painter.drawText(self.rect().adjusted(0, 0, -7, -4), low, f"F{self.number}")


class Presses(QWidget):
    """The row of large buttons."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.buttons: list[PressButton] = []
        self.row = QHBoxLayout(self)
        self.row.setContentsMargins(0, 0, 0, 0)
        self.row.setSpacing(16)

    def set(self, presses: tuple[Press, ...]) -> None:
        """Shows the buttons."""
        if [p.wide for p in presses] != [b.press.wide for b in self.buttons]:
            clear(self.row)
            self.buttons = [PressButton(self.send, p, n) for n, p in enumerate(presses, 1)]
            for button in self.buttons:
                self.row.addWidget(button, button.press.wide)
            if len(presses) == 1:  # a button on its own keeps a button's size
                self.row.addStretch(2)
        for button, press in zip(self.buttons, presses, strict=True):
            if press != button.press:
                button.set(press)
        self.setVisible(bool(presses))


class Card(QFrame):
    """A white rounded card; plain panes stand on the bench without one."""

    def __init__(self, *, plain: bool = False) -> None:
        super().__init__()
        self.setObjectName("card")
        self.plain: bool | None = None
        self.set_plain(plain)

    def set_plain(self, plain: bool) -> None:  # noqa: FBT001 - as Qt's own setters
        """Whether the pane stands on the bench without a card."""
        if plain == self.plain:
            return
        self.plain = plain
        ground, edge = palette().paper, palette().line
        rule = (
            "background: transparent; border: none;"
            if plain
            else (f"background: {ground}; border: 1px solid {edge}; border-radius: 8px;")
        )
        self.setStyleSheet(f"#card {{ {rule} }}")


class Pane(QObject):
    """A card with one or two columns of blocks and, below them, the large buttons."""

    def __init__(self, send: Send, parent: QWidget) -> None:
        super().__init__(parent)
        self.widget = Card()
        self.head, self.foot = Column(send, spare=False), Column(send, spare=False)
        self.first, self.second = Column(send), Column(send)
        self.presses = Presses(send)
        self.scroll = Scroll(self.first)
        self.beside = Scroll(self.second)
        self.outer = outer = QVBoxLayout(self.widget)
        outer.setContentsMargins(*INSIDE)
        outer.setSpacing(GAP)
        outer.addWidget(self.head)
        columns = QHBoxLayout()
        columns.setSpacing(24)
        columns.addWidget(self.scroll, 62)
        columns.addWidget(self.beside, 38)
        outer.addLayout(columns, 1)
        outer.addWidget(self.foot)
        outer.addWidget(self.presses)

    def set(
        self,
        blocks: tuple[Block, ...],
        beside: tuple[Block, ...] = (),
        presses: tuple[Press, ...] = (),
    ) -> None:
        """Shows the pane; hides it when there is nothing in it."""
        head, body, foot = _spread(blocks) if beside else ((), blocks, ())
        if any(isinstance(b, faces.Checks) and len(b.items) > LONG for b in beside):
            body, foot = (*body, *foot), ()  # the list needs the height
        for column, part in ((self.head, head), (self.foot, foot)):
            column.set(part)
            column.setVisible(bool(part))
        self.first.set(body)
        self.second.set(beside)
        self.beside.setVisible(bool(beside))
        self.presses.set(presses)
        self.widget.setVisible(bool(blocks or beside or presses))

    def stand_with(self, blocks: tuple[Block, ...]) -> None:
        """Blocks that are cards themselves stand on the bench, others on one white card."""
        self.stand(plain=any(isinstance(b, faces.Cards | faces.Meter) for b in blocks))

    def stand(self, *, plain: bool) -> None:
        """On a card of its own, or plainly on the bench (blocks that are cards already)."""
        self.widget.set_plain(plain)
        self.outer.setContentsMargins(*((0, 4, 0, 0) if plain else INSIDE))


LONG = 5  # checks that stand beside a sheet above a bar over both columns
INSIDE = (20, 14, 20, 16)  # from a card's edge to what stands in it


def _spread(
    blocks: tuple[Block, ...],
) -> tuple[tuple[Block, ...], tuple[Block, ...], tuple[Block, ...]]:
    """What spans both columns above them, the first column, what spans them below."""
    first = next((n for n, b in enumerate(blocks) if not isinstance(b, WIDE)), len(blocks))
    last = len(blocks)
    while last > first and isinstance(blocks[last - 1], faces.Progress):
        last -= 1
    return blocks[:first], blocks[first:last], blocks[last:]
