"""A number is asked for: the question, what is typed so far, a keypad."""

from PySide6.QtCore import QRect

from station.look.language import text
from station.look.style import GAP, TARGET, px
from station.look.widgets import Key, Painted, Send
from station.look.written import RIGHT, Page, wide
from station.shop.cards import button, digit
from station.shop.faces import Asked, Text
from station.shop.words import say

KEYS: tuple[tuple[str, str, Text], ...] = (
    *((sign, digit(sign), sign) for sign in "1234567890"),
    (".", button("point"), say("point")),
    ("C", button("clear"), say("clear")),
)


class AskedBlock(Painted[Asked]):
    """A number is asked for; `flat` keys stand in two rows where height is scarce."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.flat = False
        self.keys = [Key(self, send, sign, code, text(name)) for sign, code, name in KEYS]
        self.enter = Key(self, send, "OK", button("enter"), text(say("that is it")))

    def set_flat(self, flat: bool) -> None:  # noqa: FBT001 - as Qt's own setters
        """Keys in two rows of six, or in four rows of three."""
        if flat != self.flat:
            self.flat = flat
            self.anew()

    def lay(self, page: Page, block: Asked) -> None:
        """Question and number beside each other where it is flat, else below each other."""
        typed, tone = block.typed or "–", "" if block.typed else "quiet"
        unit, number = wide(block.unit, 17), wide(typed, 34, bold=True)
        right = number + unit + px(GAP)
        room = page.width - right - px(GAP) if self.flat else page.width
        top = 0
        high = page.put(block.question, (0, 0, room), 20, bold=True, high=px(42 * self.flat))
        if not self.flat:
            top, high = high + px(6), px(42)
        left = page.width - right if self.flat else 0
        page.put(typed, (left, top, number), 34, bold=True, tone=tone, high=high)
        page.put(block.unit, (left + number, top, unit + px(GAP)), 17, tone="quiet", flags=RIGHT,
                 high=high)  # fmt: skip
        self._top = top + high + px(6)
        rows = 2 if self.flat else 4
        page.height = self._top + rows * px(TARGET) + (rows - 1) * px(GAP)

    def place(self, page: Page) -> None:
        """The digits in rows, the key that ends a number beside them."""
        across, side, gap = 6 if self.flat else 3, px(TARGET), px(GAP)
        for n, key in enumerate(self.keys):
            row, column = divmod(n, across)
            at = QRect(column * (side + gap), self._top + row * (side + gap), side, side)
            key.stand(at)
        left = across * (side + gap)
        width = side if self.flat else 2 * side
        self.enter.stand(QRect(left, self._top, width, page.height - self._top))
