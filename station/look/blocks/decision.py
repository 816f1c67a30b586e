"""The one thing to decide first, with its button."""

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter

from station.look.marks import draw_plate
from station.look.presses import NUMBERS
from station.look.style import GAP, TARGET, palette, px, tone_colour
from station.look.widgets import InnerPress, PaintedBlock, Send, measure_press
from station.look.written import TextPage
from station.shop.faces import Decision

EDGE = 18  # px, from the box to its texts
WIDEST = 250  # px, the least width of the button


class DecisionBlock(PaintedBlock[Decision]):
    """Shows what is the matter, what is offered with its button at the right, and why."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.button = InnerPress(self, send)
        self.button.hide()
        self._offer_at: dict[int, int] = {}  # top of the offer, by width

    def lay_out(self, page: TextPage, block: Decision) -> None:
        """Lays the title, the figures, the offer beside its button, the notes."""
        edge, gap = px(EDGE), px(6)
        inner = page.width - 2 * edge
        page.height = edge
        title = (edge, page.height, inner)
        page.height += page.put_text(block.title, title, 20, bold=True, tone=block.tone) + gap
        if block.matter:
            page.height += page.put_text(block.matter, (edge, page.height, inner), 17) + gap
        beside = inner - self._measure_button(block)
        self._offer_at[page.width] = page.height
        top = page.height
        if block.offer:
            page.height += gap
            page.height += page.put_text(block.offer, (edge, page.height, beside), 23, bold=True)
        for note in block.notes:
            room = beside if page.height < top + px(TARGET) else inner
            page.height += px(2)
            page.height += page.put_text(note, (edge, page.height, room), 16, tone="quiet")
        least = top + px(TARGET) if block.press else 0
        page.height = max(page.height, least) + edge

    def _measure_button(self, block: Decision) -> int:
        """Measures what the button takes of the width, with what stands off it."""
        if block.press is None:
            return 0
        return max(measure_press(block.press), px(WIDEST)) + px(GAP)

    def place_children(self, page: TextPage) -> None:
        """Puts the button beside the offer."""
        press = self.block.press if self.block else None
        self.button.setVisible(press is not None)
        if self.block and press:
            width = self._measure_button(self.block) - px(GAP)
            left = page.width - px(EDGE) - width
            at = QRect(left, self._offer_at[page.width], width, px(TARGET))
            self.button.number = NUMBERS.get(press.code, 0)
            self.button.show_press(press, at)

    def draw_shapes(self, painter: QPainter) -> None:
        """Draws the box in the colour of its tone."""
        if self.block:
            edge = tone_colour(self.block.tone)
            draw_plate(painter, self.rect(), palette().paper, edge, 2)
