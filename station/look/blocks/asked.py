"""A number is asked for: the question, what is typed so far, a keypad."""

from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from station.look.blocks.rows import Key
from station.look.widgets import GAP, TARGET, Label, Send, clear, tight
from station.shop.cards import button, digit
from station.shop.faces import Asked

POINT, CLEAR = (".", button("point"), "point"), ("C", button("clear"), "clear")
DIGITS = tuple((sign, digit(sign), sign) for sign in "1234567890")
KEYS = (*DIGITS, POINT, CLEAR)


class AskedBlock(QWidget):
    """A number is asked for; `flat` keys stand in two rows where height is scarce."""

    def __init__(self, send: Send) -> None:
        super().__init__()
        self.send, self.flat = send, False
        self.question, self.typed = Label(20, bold=True), Label(34, bold=True, wrap=False)
        self.unit = Label(17, wrap=False)
        column = QVBoxLayout(self)
        tight(column, 6)
        self.head = QGridLayout()
        tight(self.head, 6)
        column.addLayout(self.head)
        self.keys = QGridLayout()
        self.keys.setSpacing(GAP)
        column.addLayout(self.keys)
        self._lay()

    def set_flat(self, flat: bool) -> None:  # noqa: FBT001 - as Qt's own setters
        """Keys in two rows of six, or in four rows of three."""
        if flat != self.flat:
            self.flat = flat
            self._lay()

    def _lay(self) -> None:
        """Puts question, number and keys into their places."""
        while self.head.takeAt(0):
            pass  # the labels stay
        below, wide = (0, 1) if self.flat else (1, 0)
        self.head.addWidget(self.question, 0, 0, 1, 1 if self.flat else 3)
        self.head.addWidget(self.typed, below, wide)
        self.head.addWidget(self.unit, below, wide + 1)
        self.head.setColumnStretch(0, 1 if self.flat else 0)
        self.head.setColumnStretch(1, 0 if self.flat else 1)
        self._lay_keys()

    def _lay_keys(self) -> None:
        clear(self.keys)
        across = 6 if self.flat else 3
        rows = len(KEYS) // across
        for n, (sign, code, name) in enumerate(KEYS):
            self.keys.addWidget(Key(self.send, sign, code, name), n // across, n % across)
        enter = Key(self.send, "OK", button("enter"), "that is it")
        enter.setFixedSize(TARGET if self.flat else TARGET * 2, rows * TARGET + (rows - 1) * GAP)
        self.keys.addWidget(enter, 0, across, rows, 1)
        self.keys.setColumnStretch(7, 1)

    def set(self, block: Asked) -> None:
        """Shows the question and what is typed so far."""
        self.question.say(block.question)
        self.typed.say(block.typed or "–", "" if block.typed else "quiet")
        self.unit.say(block.unit, "quiet")
