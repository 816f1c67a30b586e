"""The one window: top bar, the face of a room, the strip."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPalette
from PySide6.QtWidgets import QApplication, QMainWindow, QVBoxLayout, QWidget

from station.look.bars import Strip, TopBar
from station.look.body import Body
from station.look.palette import DARK, LIGHT
from station.look.scanner import Scanner
from station.look.style import BASE, Style, palette
from station.look.texts import Text, text
from station.look.widgets import Touch
from station.shop.words import say

if TYPE_CHECKING:
    from station.shop.acts import Answer
    from station.shop.faces import Face

AGAIN_MS = 220  # between the two beeps of a stop


class Window(QMainWindow):
    """Paints faces and answers; everything a person does comes out of `sent` as text."""

    sent = Signal(str)

    def __init__(self, *, dark: bool = False) -> None:
        super().__init__()
        Style.palette = DARK if dark else LIGHT  # dark: for a dim shop
        self.setWindowTitle(text(say("From sheet to cart")))
        self.resize(*BASE)
        self._shades()
        self.bar, self.strip, self.body = TopBar(), Strip(), Body()
        self.whole = QWidget()
        column = QVBoxLayout(self.whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.bar)
        column.addWidget(self.body, 1)
        column.addWidget(self.strip)
        self.setCentralWidget(self.whole)
        self.whole.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.whole.setFocus()  # nothing that Enter would press has it at first
        self._code = ""
        self.scanner = Scanner(self)
        self.scanner.scanned.connect(self._scanned)
        self.scanner.typing.connect(self._typing)
        self.scanner.pressed.connect(self._press)
        self.scanner.confirmed.connect(self._confirm)

    def _shades(self) -> None:
        shades = self.palette()
        shades.setColor(QPalette.ColorRole.Window, QColor(palette().bench))
        shades.setColor(QPalette.ColorRole.WindowText, QColor(palette().ink))
        self.setPalette(shades)

    def paint(self, face: "Face") -> None:
        """Shows a face; widgets stay where the kinds of block are the same."""
        before = self._focused()
        self.body.show_face(face, self._scanned)
        if before != self._focused():
            self.whole.setFocus()  # not a neighbour that Enter would then press

    def _focused(self) -> tuple[QWidget, str] | None:
        """What Enter would press, and the code that it would send."""
        found = QApplication.focusWidget()
        return (found, found.code) if isinstance(found, Touch) and found.isVisible() else None

    def answer(self, answer: "Answer", code: str) -> None:
        """Shows an answer in the strip, with its sound."""
        self.strip.set(answer, code)
        if answer.tone == "good" or QApplication.platformName() in ("offscreen", "minimal"):
            return
        QApplication.beep()
        if answer.tone == "stop":
            QTimer.singleShot(AGAIN_MS, QApplication.beep)

    def top(
        self, *, area: Text, where: Text, worker: str, clock: str, shared: Text, shared_ok: bool
    ) -> None:
        """Shows the top bar."""
        self.bar.set(
            area=area, where=where, worker=worker, clock=clock, shared=shared, shared_ok=shared_ok
        )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Every key that nothing else wants is the scanner's."""
        if not self.scanner.key(event):
            super().keyPressEvent(event)

    def focusNextPrevChild(self, next: bool) -> bool:  # noqa: FBT001 - Qt's signature
        """Tab ends a scan; with nothing typed it moves the focus."""
        return self.scanner.end() or super().focusNextPrevChild(next)

    def _scanned(self, text: str) -> None:
        self._code = text
        self.sent.emit(text)

    def _typing(self, text: str) -> None:
        self.strip.typing(text)

    def _press(self, number: int) -> None:
        """F1 to F9: one of the large buttons."""
        buttons = self.body.buttons()
        if number < len(buttons) and buttons[number].isEnabled():
            buttons[number].click()

    def _confirm(self) -> None:
        """Enter with nothing typed presses what has the focus."""
        found = QApplication.focusWidget()
        if isinstance(found, Touch) and found.focusPolicy() != Qt.FocusPolicy.NoFocus:
            found.click()
