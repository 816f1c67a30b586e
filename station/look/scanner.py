"""Scans and typing, wherever the focus is: characters until Enter or Tab are one input.

A scanner is a fast keyboard; a slow hand works the same way. With nothing typed, Enter or a
blank presses what has the focus and F1 to F9 press the large buttons. What can be touched
leaves its keys to the window (`Touch.keyPressEvent`), so no filter has to look at every
event of the program.
"""

from PySide6.QtCore import QElapsedTimer, QObject, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence

LONGEST = 200
SETTLE_MS = 300
ENDS = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
LEFT, RIGHT, HOME, END = (
    Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Home, Qt.Key.Key_End,
)  # fmt: skip
KEY = "@key "  # what a key of the screen sends before its character or its name
SCREEN_KEYS = {"left": LEFT, "right": RIGHT, "back": Qt.Key.Key_Backspace}
EDITS = (LEFT, RIGHT, HOME, END, Qt.Key.Key_Backspace, Qt.Key.Key_Delete)


class Scanner(QObject):
    """Collects the window's keys; `scanned` carries each whole input."""

    scanned = Signal(str)
    typing = Signal(str)
    pressed = Signal(int)  # which large button, by its F key
    confirmed = Signal()  # Enter with nothing typed
    left = Signal()  # Esc with nothing typed

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._typed = ""
        self.caret = 0  # where the next character goes
        self.known = ""  # what stands in the chosen field: an editing key begins with it
        self._since = QElapsedTimer()  # since the last whole input

    def take_key(self, event: QKeyEvent) -> bool:
        """Takes a key press; False for one that is nothing to a scanner."""
        key = Qt.Key(event.key())
        if key in ENDS or (key == Qt.Key.Key_Space and not self._typed):
            if not self.end_scan() and not self._just_scanned():
                self.confirmed.emit()
            return True
        if Qt.Key.Key_F1 <= key <= Qt.Key.Key_F9:
            self.pressed.emit(int(key) - int(Qt.Key.Key_F1) + 1)
            return True
        if key == Qt.Key.Key_Escape and not self._typed:
            self.left.emit()
        if key == Qt.Key.Key_Escape:
            self._set_typed("", 0)
            return True
        if event.matches(QKeySequence.StandardKey.Paste):
            self.add_text(QGuiApplication.clipboard().text())
            return True
        if key in EDITS:
            return self.edit(key)
        return self.add_text(event.text())

    def edit(self, key: Qt.Key) -> bool:
        """Moves the caret, or takes a character out; False where nothing is typed or known."""
        if not self._typed:
            if not self.known:
                return False
            self._typed, self.caret = self.known, len(self.known)
        text, at = self._typed, self.caret
        if key == Qt.Key.Key_Backspace:
            self._set_typed(text[: max(at - 1, 0)] + text[at:], max(at - 1, 0))
        elif key == Qt.Key.Key_Delete:
            self._set_typed(text[:at] + text[at + 1 :], at)
        else:
            places = {LEFT: at - 1, RIGHT: at + 1, HOME: 0, END: len(text)}
            self._set_typed(text, min(max(places[key], 0), len(text)))
        return True

    def press_key(self, key: str) -> None:
        """Takes a key of the screen: a character, or what edits or ends what is typed."""
        if key == "enter":
            self.end_scan()
        elif key in SCREEN_KEYS:
            self.edit(SCREEN_KEYS[key])
        elif key != "shift":  # which turns what stands on the others
            self.add_text(key)

    def end_scan(self) -> bool:
        """Sends what was typed; False when there is nothing."""
        whole = self._typed
        if not whole:
            return False
        self._since.start()
        self._set_typed("", 0)
        self.scanned.emit(whole)
        return True

    def _just_scanned(self) -> bool:
        """Says whether a scan has just ended: the second key of its end must press nothing."""
        return self._since.isValid() and self._since.elapsed() < SETTLE_MS

    def add_text(self, text: str) -> bool:
        """Adds what is typed or pasted at the caret; False where nothing can be shown of it."""
        added = "".join(char for char in text if char.isprintable())
        if not added:
            return False
        before, after = self._typed[: self.caret], self._typed[self.caret :]
        added = (before + added)[-LONGEST:]
        self._set_typed((added + after)[:LONGEST], len(added))
        return True

    def _set_typed(self, text: str, caret: int) -> None:
        self._typed, self.caret = text, caret
        self.typing.emit(text)
