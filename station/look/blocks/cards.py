"""Cards to touch: what waits, what comes next."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QWidget

from station.look.blocks.rows import RIGHT, still
from station.look.texts import text
from station.look.widgets import GAP, Label, Send, Touch, clear, palette
from station.shop.faces import Cards, Entry

WIDE = 640  # px, where two cards stand side by side


class EntryCard(Touch):
    """A card in a list: large text, one at the right, two lines below."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.ground, self.edge = palette().paper, palette().line
        self.big, self.right = Label(22, bold=True), Label(17)
        self.line1, self.line2 = Label(14), Label(14)
        still(self.big, self.right, self.line1, self.line2)
        self.right.setAlignment(RIGHT)
        grid = QGridLayout(self)
        grid.setContentsMargins(16, 8, 16, 8)
        grid.setVerticalSpacing(2)
        grid.addWidget(self.big, 0, 0)
        grid.addWidget(self.right, 0, 1)
        grid.addWidget(self.line1, 1, 0, 1, 2)
        grid.addWidget(self.line2, 2, 0, 1, 2)
        grid.setColumnStretch(0, 1)

    def set(self, entry: Entry) -> None:
        """Shows an entry."""
        self.code = entry.code
        self.setAccessibleName(", ".join(filter(None, (text(entry.big), text(entry.line1)))))
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus if entry.code else Qt.FocusPolicy.NoFocus)
        self.big.say(entry.big)
        self.right.bold(bool(entry.tone)).say(entry.right, entry.tone)
        self.line1.say(entry.line1, "quiet")
        self.line2.say(entry.line2)
        for label in (self.right, self.line1, self.line2):
            label.setVisible(bool(label.text()))


class CardsBlock(QWidget):
    """A title and cards; short ones stand two or three abreast."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send = send
        self.block: Cards | None = None
        self.shape: tuple[int, int] = (-1, -1)
        self.cards: list[EntryCard] = []
        self.title, self.empty = Label(20, bold=True), Label(16)
        self.grid = QGridLayout(self)
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setSpacing(GAP)

    def set(self, block: Cards) -> None:
        """Shows the cards."""
        if block == self.block:
            return
        self.block = block
        if len(self.cards) != len(block.entries) or self.shape[0] < 0:
            self._build(len(block.entries))
        self._place()
        self.title.say(block.title)
        self.title.setVisible(bool(self.title.text()))
        self.empty.say("" if block.entries else block.empty, "quiet")
        self.empty.setVisible(bool(self.empty.text()))
        for card, entry in zip(self.cards, block.entries, strict=True):
            card.set(entry)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """More cards stand side by side where there is room."""
        super().resizeEvent(event)
        self._place()

    def _build(self, count: int) -> None:
        clear(self.grid)
        self.title, self.empty = Label(20, bold=True), Label(16)
        self.cards = [EntryCard(self.send) for _ in range(count)]
        self.shape = (-1, -1)

    def _place(self) -> None:
        """Puts the cards into the grid, as many abreast as fit."""
        if self.block is None:
            return
        abreast = _abreast(self.block.entries, self.width())
        if self.shape == (len(self.cards), abreast):
            return
        self.shape = (len(self.cards), abreast)
        while self.grid.takeAt(0):
            pass  # the widgets stay, only their places change
        self.grid.addWidget(self.title, 0, 0, 1, abreast)
        self.grid.addWidget(self.empty, 1, 0, 1, abreast)
        for n, card in enumerate(self.cards):
            self.grid.addWidget(card, 2 + n // abreast, n % abreast)


def _abreast(entries: tuple[Entry, ...], width: int) -> int:
    """How many cards stand side by side: more with few words or in a wide pane."""
    if len(entries) > 3 and width >= WIDE and any(e.line1 or e.line2 for e in entries):
        return 2
    plain = all(not e.line1 and not e.line2 for e in entries)
    longest = max((len(text(e.big)) + len(text(e.right)) for e in entries), default=0)
    short = 20 if width >= WIDE else 16
    return (3 if longest <= short else 2) if plain and len(entries) > 2 and longest <= 26 else 1
