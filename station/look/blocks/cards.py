"""Cards to touch: what waits, what comes next."""

from PySide6.QtCore import QRect
from PySide6.QtWidgets import QWidget

from station.look.language import translate
from station.look.style import GAP, TARGET, palette, px
from station.look.widgets import RowsBlock, Send, Touch
from station.look.written import RIGHT, TextPage, measure_width, measure_wrapped
from station.shop.faces import Cards, Entry

WIDE = 640  # px, where two cards stand side by side
NARROW = 340  # px, under which no three cards stand side by side
MANY = 12  # cards that stand three abreast even where their words wrap
FULL, CLOSE = 21, 6  # cards that fill a pane three abreast; px between two where there are more
BESIDE = 6  # px between a card's words and what stands at their right
INSIDE = (16, 8)  # px, from a card's edge to its texts


class EntryCard(Touch):
    """A card in a list: large text, one at the right, two lines below."""

    def __init__(self, parent: QWidget, send: Send) -> None:
        super().__init__(parent, send)
        self.ground, self.edge = palette().paper, palette().line

    def set_chosen(self, *, chosen: bool) -> None:
        """Marks it as the one that is open, or not."""
        ground, edge = ("tint", "act") if chosen else ("paper", "line")
        wanted = getattr(palette(), ground), getattr(palette(), edge)
        if wanted != (self.ground, self.edge):
            self.ground, self.edge = wanted
            self.update()


class CardsBlock(RowsBlock[Cards, EntryCard]):
    """Shows a title and cards; short ones stand two or three abreast."""

    def lay_out(self, page: TextPage, block: Cards) -> None:
        """Lays out the title; below it rows of cards, as many abreast as fit."""
        page.put_below(block.title, 20, bold=True)
        if not block.entries:
            page.height += px(GAP) if block.title else 0
            page.put_below(block.empty, 16, tone="quiet")
        abreast = _count_abreast(block.entries, page.width)
        gap = px(GAP) if len(block.entries) <= FULL else px(CLOSE)
        width = (page.width - gap * (abreast - 1)) // abreast
        for first in range(0, len(block.entries), abreast):
            inner = [_make_card_page(e, width) for e in block.entries[first : first + abreast]]
            high = max(p.height for p in inner)
            page.height += gap if page.height else 0
            for n, one in enumerate(inner):
                at = QRect(n * (width + gap), page.height, width, high)
                page.inner.append((at, one))
            page.height += high

    def make_row(self) -> EntryCard:
        """Makes one more card."""
        return EntryCard(self, self.send)

    def fill_row(self, number: int, row: EntryCard, page: TextPage) -> None:
        """Shows an entry."""
        if self.block:
            entry = self.block.entries[number]
            row.set_chosen(chosen=entry.chosen)
            row.set_content(entry.code, page.join_texts(), page)


def _make_card_page(entry: Entry, width: int) -> TextPage:
    """Makes the texts of a card."""
    page, (left, top) = TextPage(width), map(px, INSIDE)
    inner = width - 2 * left
    heavy = bool(entry.tone)
    right = min(measure_width(entry.right, 17, bold=heavy), inner * 3 // 5)
    big = inner - right - (px(BESIDE) if right else 0)
    at = (left + inner - right, top, right)
    high = max(
        page.put_text(entry.big, (left, top, big), 22, bold=True),
        page.put_text(entry.right, at, 17, bold=heavy, tone=entry.tone, flags=RIGHT),
    )
    for words in page.words:
        words.box.setHeight(high)
    page.height = top + high
    for line, tone in ((entry.line1, "quiet"), (entry.line2, "")):
        if line:
            page.height += px(2)
            page.height += page.put_text(line, (left, page.height, inner), 15, tone=tone)
    page.height = max(page.height + top, px(TARGET))
    if not entry.line1 and not entry.line2:  # one line stands in the middle of its card
        page.move_to_middle()
    return page


def _count_abreast(entries: tuple[Entry, ...], width: int) -> int:
    """Counts the cards side by side: more with few words or in a wide pane."""
    if any(e.line1 or e.line2 for e in entries):
        return 2 if len(entries) > 3 and width >= px(WIDE) else 1
    if len(entries) < 3:
        return 1
    lines = {3: int(len(entries) > MANY), 2: 1}
    return next(
        (n for n in lines if all(_fits_lines(e, width // n, lines[n]) for e in entries)), 1
    )


def _fits_lines(entry: Entry, width: int, more: int) -> bool:
    """Says whether a card's words stand on one line, or on so many more."""
    right = measure_width(entry.right, 17, bold=bool(entry.tone))
    free = width - px(GAP) - 2 * px(INSIDE[0]) - (right + px(BESIDE) if right else 0)
    big = translate(entry.big)
    size = 22 if " " in big else 16  # a single long word may be set smaller
    need, high = measure_wrapped(big, size, max(free, 1), bold=True)
    return need <= free and high <= (1 + more) * measure_wrapped("x", 22, free)[1] + px(2)
