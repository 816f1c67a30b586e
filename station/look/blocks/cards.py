"""Cards to touch: what waits, what comes next."""

from PySide6.QtCore import QRect
from PySide6.QtWidgets import QWidget

from station.look.style import GAP, TARGET, palette, px
from station.look.texts import text
from station.look.widgets import Rowed, Send, Touch
from station.look.written import RIGHT, Page, wide
from station.shop.faces import Cards, Entry

WIDE = 640  # px, where two cards stand side by side
NARROW = 340  # px, under which no three cards stand side by side
INSIDE = (16, 8)  # px, from a card's edge to its texts


class EntryCard(Touch):
    """A card in a list: large text, one at the right, two lines below."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.ground, self.edge = palette().paper, palette().line


class CardsBlock(Rowed[Cards, EntryCard]):
    """A title and cards; short ones stand two or three abreast."""

    def lay(self, page: Page, block: Cards) -> None:
        """The title; below it rows of cards, as many abreast as fit."""
        page.down(block.title, 20, bold=True)
        if not block.entries:
            page.height += px(GAP) if block.title else 0
            page.down(block.empty, 16, tone="quiet")
        abreast, gap = _abreast(block.entries, page.width), px(GAP)
        width = (page.width - gap * (abreast - 1)) // abreast
        for first in range(0, len(block.entries), abreast):
            inner = [_card(e, width) for e in block.entries[first : first + abreast]]
            high = max(p.height for p in inner)
            page.height += gap if page.height else 0
            for n, one in enumerate(inner):
                at = QRect(n * (width + gap), page.height, width, high)
                page.inner.append((at, one))
            page.height += high

    def row(self) -> EntryCard:
        """One more card."""
        return EntryCard(self, self.send)

    def fill(self, number: int, row: EntryCard, page: Page) -> None:
        """Shows an entry."""
        if self.block:
            row.become(self.block.entries[number].code, page.said(), page)


def _card(entry: Entry, width: int) -> Page:
    page, (left, top) = Page(width), map(px, INSIDE)
    inner = width - 2 * left
    heavy = bool(entry.tone)
    right = min(wide(entry.right, 17, bold=heavy), inner * 3 // 5)
    big = inner - right - (px(GAP) if right else 0)
    at = (left + inner - right, top, right)
    high = max(
        page.put(entry.big, (left, top, big), 22, bold=True),
        page.put(entry.right, at, 17, bold=heavy, tone=entry.tone, flags=RIGHT),
    )
    for words in page.words:
        words.box.setHeight(high)
    page.height = top + high
    for line, tone in ((entry.line1, "quiet"), (entry.line2, "")):
        if line:
            page.height += px(2)
            page.height += page.put(line, (left, page.height, inner), 14, tone=tone)
    page.height = max(page.height + top, px(TARGET))
    if not entry.line1 and not entry.line2:  # one line stands in the middle of its card
        page.middle()
    return page


def _abreast(entries: tuple[Entry, ...], width: int) -> int:
    """How many cards stand side by side: more with few words or in a wide pane."""
    if len(entries) > 2 and width >= px(WIDE) and any(e.line1 or e.line2 for e in entries):
        return 2
    plain = all(not e.line1 and not e.line2 for e in entries)
    longest = max((len(text(e.big)) + len(text(e.right)) for e in entries), default=0)
    short = 20 if width >= px(WIDE) else (16 if width >= px(NARROW) else 0)
    return (3 if longest <= short else 2) if plain and len(entries) > 2 and longest <= 26 else 1
