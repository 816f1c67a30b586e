"""Scans and typing, wherever the focus is: characters until Enter or Tab are one input.

A scanner is a fast keyboard; a slow hand works the same way. With nothing typed, Enter
presses what has the focus and F1 to F9 press the large buttons.
"""

from PySide6.QtCore import QElapsedTimer, QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QWidget

LONGEST = 200
SETTLE_MS = 300
ENDS = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab)


class Scanner(QObject):
    """Collects keys of the whole application; `scanned` carries each whole input."""

    scanned = Signal(str)
    typing = Signal(str)
    pressed = Signal(int)  # which large button, from 0
    confirmed = Signal()  # Enter with nothing typed

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._typed = ""
        self._since = QElapsedTimer()  # since the last whole input
        application = QApplication.instance()
        assert application is not None
        application.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Takes key presses; everything else goes its way, as do keys in a dialog."""
        if event.type() != QEvent.Type.KeyPress or not isinstance(event, QKeyEvent):
            return False
        if not isinstance(watched, QWidget) or watched.window() is not self.parent():
            return False
        return self._key(event)

    def _key(self, event: QKeyEvent) -> bool:
        key = Qt.Key(event.key())
        if key in ENDS and self._typed:
            whole, self._typed = self._typed, ""
            self._since.start()
            self.typing.emit("")
            self.scanned.emit(whole)
            return True
        if key in ENDS[:2]:
            if not self._just_scanned():
                self.confirmed.emit()
            return True
        if Qt.Key.Key_F1 <= key <= Qt.Key.Key_F9:
            self.pressed.emit(int(key) - int(Qt.Key.Key_F1))
            return True
        if key in (Qt.Key.Key_Escape, Qt.Key.Key_Backspace):
            self._typed = "" if key == Qt.Key.Key_Escape else self._typed[:-1]
            self.typing.emit(self._typed)
            return True
        return self._character(event)

    def _just_scanned(self) -> bool:
        """A scanner that ends with two keys must not press anything with the second."""
        return self._since.isValid() and self._since.elapsed() < SETTLE_MS

    def _character(self, event: QKeyEvent) -> bool:
        char = event.text()
        if not char or not char.isprintable() or (char == " " and not self._typed):
            return False  # a blank on its own presses what has the focus
        self._typed = (self._typed + char)[-LONGEST:]
        self.typing.emit(self._typed)
        return True
