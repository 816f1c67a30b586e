"""A text is asked for: the question, what is typed so far, keys as on a keyboard.

The keys type where the keyboard does: they go to the window's scanner, not to the desk.
"""

from PySide6.QtCore import QRect

from station.look.language import find_language, translate
from station.look.scanner import KEY
from station.look.style import TARGET, px
from station.look.widgets import Key, PaintedBlock, Send, Sign, make_keys
from station.look.written import TextPage, write_typed
from station.shop.faces import Letters
from station.shop.words import Say, say

ROWS = {
    "": ("1234567890", "qwertyuiop", "asdfghjkl-", "zxcvbnm.,:"),
    "de": ("1234567890", "qwertzuiopü", "asdfghjklöä", "yxcvbnm.,-:"),
}
NAMED: tuple[tuple[str, str, Say, int], ...] = (  # its sign, what it sends, its name, its width
    ("⇧", "shift", say("capitals"), 2),
    ("␣", " ", say("blank"), 3),
    ("/", "/", say("over"), 1),
    ("←", "left", say("to the left"), 1),
    ("→", "right", say("to the right"), 1),
    ("⌫", "back", say("take the last one out"), 1),
    ("OK", "enter", say("that is it"), 1),
)
BETWEEN = 6  # px


class LettersBlock(PaintedBlock[Letters]):
    """Asks for a text."""

    def __init__(self, send: Send) -> None:
        super().__init__(send)
        self.capitals = False
        self.typed = ("", 0)
        self.keys: list[tuple[Key, int, int, int]] = []  # each with its row, place and width
        for row, signs in enumerate(ROWS.get(find_language(), ROWS[""])):
            made = make_keys(self, send, (Sign(s, KEY + s, s) for s in signs))
            self.keys += [(key, row, n, 1) for n, key in enumerate(made)]
        self.letters = [key for key, *_ in self.keys]
        at, row = 0, self.keys[-1][1] + 1
        for sign, code, name, wide in NAMED:
            (key,) = make_keys(self, send, (Sign(sign, KEY + code, translate(name)),))
            if code == "shift":
                key.clicked.connect(self._turn_case)
            self.keys.append((key, row, at, wide))
            at += wide

    def _turn_case(self) -> None:
        """Types capitals from now on, or small letters."""
        self.capitals = not self.capitals
        for key in self.letters:
            sign = key.sign.upper() if self.capitals else key.sign.lower()
            key.sign, key.code = sign, KEY + sign
            key.setAccessibleName(sign)
            key.update()

    def show_typing(self, text: str, caret: int) -> None:
        """Shows what is typed so far, and where the next character goes."""
        self.typed = (text, caret)
        self.lay_out_anew()
        self.put_into(self.geometry())

    def lay_out(self, page: TextPage, block: Letters) -> None:
        """Lays out question and text; the keys stand below them."""
        page.put_below(block.question, 20, bold=True)
        page.put_below(block.note, 15, tone="quiet")
        line = write_typed(*self.typed, 26, page.width)
        page.height += px(4)
        page.put_line(line, (0, page.height, page.width), high=px(44))
        self._top = page.height + px(50)
        rows = 1 + max(row for _, row, _, _ in self.keys)
        page.height = self._top + rows * px(TARGET) + (rows - 1) * px(BETWEEN)

    def place_children(self, page: TextPage) -> None:
        """Places the keys in rows, each as wide as the page lets it be."""
        gap, high = px(BETWEEN), px(TARGET)
        across = max(at + wide for _, _, at, wide in self.keys)
        side = (page.width - gap * (across - 1)) / across
        for key, row, at, wide in self.keys:
            left, width = at * (side + gap), wide * side + (wide - 1) * gap
            top = self._top + row * (high + gap)
            key.setGeometry(QRect(round(left), top, int(width), high))
