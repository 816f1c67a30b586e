"""Scans and typing, wherever the focus is: characters until Enter or Tab are one input.

A scanner is a fast keyboard; a slow hand works the same way. With nothing typed, Enter or a
blank presses what has the focus and F1 to F9 press the large buttons. What can be touched
leaves its keys to the window (`Touch.keyPressEvent`), so no filter has to look at every
event of the program.
"""

from PySide6.QtCore import QElapsedTimer, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent

LONGEST = 200
SETTLE_MS = 300
ENDS = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class Scanner(QObject):
    """Collects the window's keys; `scanned` carries each whole input."""

    scanned = Signal(str)
    typing = Signal(str)
    pressed = Signal(int)  # which large button, from 0
    confirmed = Signal()  # Enter with nothing typed
    left = Signal()  # Esc with nothing typed

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._typed = ""
        self._since = QElapsedTimer()  # since the last whole input

    def take_key(self, event: QKeyEvent) -> bool:
        """Takes a key press; False for one that is nothing to a scanner."""
        key = Qt.Key(event.key())
        if key in ENDS or (key == Qt.Key.Key_Space and not self._typed):
            if not self.end_scan() and not self._just_scanned():
                self.confirmed.emit()
            return True
        if Qt.Key.Key_F1 <= key <= Qt.Key.Key_F9:
            self.pressed.emit(int(key) - int(Qt.Key.Key_F1))
            return True
        if key == Qt.Key.Key_Escape and not self._typed:
            self.left.emit()
        if key in (Qt.Key.Key_Escape, Qt.Key.Key_Backspace):
            self._typed = "" if key == Qt.Key.Key_Escape else self._typed[:-1]
            self.typing.emit(self._typed)
            return True
        return self._add_character(event.text())

    def end_scan(self) -> bool:
        """Sends what was typed; False when there is nothing."""
        whole, self._typed = self._typed, ""
        if not whole:
            return False
        self._since.start()
        self.typing.emit("")
        self.scanned.emit(whole)
        return True

    def _just_scanned(self) -> bool:
        """Says whether a scan has just ended: the second key of its end must press nothing."""
        return self._since.isValid() and self._since.elapsed() < SETTLE_MS

    def _add_character(self, char: str) -> bool:
        if not char or not char.isprintable():
            return False
        self._typed = (self._typed + char)[-LONGEST:]
        self.typing.emit(self._typed)
        return True
