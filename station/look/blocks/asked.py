"""A number is asked for: the question, what is typed so far, a keypad."""

from PySide6.QtCore import QRect

from station.look.language import translate
from station.look.style import GAP, TARGET, px
from station.look.widgets import PaintedBlock, Send, Sign, make_keys
from station.look.written import RIGHT, TextPage, write_line
from station.shop.cards import button, digit
from station.shop.faces import Asked
from station.shop.lengths import write_figure
from station.shop.words import say

DIGITS = tuple(Sign(sign, digit(sign), sign) for sign in "1234567890")
WORDS = (
    (".", button("point"), say("point")),
    ("C", button("clear"), say("clear")),
    ("OK", button("enter"), say("that is it")),
)


class AskedBlock(PaintedBlock[Asked]):
    """Asks for a number; `flat` keys stand in two rows where height is scarce."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.flat = False
        others = (Sign(write_figure(sign), code, translate(name)) for sign, code, name in WORDS)
        *self.keys, self.enter = make_keys(self, send, (*DIGITS, *others))
        self.point = self.keys[len(DIGITS)]

    def set_flat(self, flat: bool) -> None:  # noqa: FBT001 - as Qt's own setters
        """Sets the keys in two rows of six, or in four rows of three."""
        if flat != self.flat:
            self.flat = flat
            self.lay_out_anew()

    def lay_out(self, page: TextPage, block: Asked) -> None:
        """Lays question and number beside each other where it is flat, else below each other."""
        tone, gap = "" if block.typed else "quiet", px(GAP)
        typed = write_line(write_figure(block.typed) or "–", 34, bold=True)
        unit = write_line(block.unit, 17)
        right = typed.width + unit.width + gap
        room = page.width - right - gap if self.flat else page.width
        top = 0
        high = page.put_text(block.question, (0, 0, room), 20, bold=True, high=px(42 * self.flat))
        if not self.flat:
            top, high = high + px(6), px(42)
        left = page.width - right if self.flat else 0
        page.put_line(typed, (left, top, typed.width), tone=tone, high=high)
        beside = (left + typed.width, top, unit.width + gap)
        page.put_line(unit, beside, tone="quiet", flags=RIGHT, high=high)
        self._top = top + high + px(6)
        rows = 2 if self.flat else 4
        page.height = self._top + rows * px(TARGET) + (rows - 1) * gap
        self.point.setVisible(not block.whole)

    def place_children(self, page: TextPage) -> None:
        """Places the digits in rows, the key that ends a number beside them."""
        across, side, gap = 6 if self.flat else 3, px(TARGET), px(GAP)
        for n, key in enumerate(self.keys):
            row, column = divmod(n, across)
            at = QRect(column * (side + gap), self._top + row * (side + gap), side, side)
            key.setGeometry(at)
        left = across * (side + gap)
        width = side if self.flat else 2 * side
        self.enter.setGeometry(QRect(left, self._top, width, page.height - self._top))
