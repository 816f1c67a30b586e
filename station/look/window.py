"""The one window: top bar, the face of a room, the strip."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPalette
from PySide6.QtWidgets import QApplication, QHBoxLayout, QMainWindow, QVBoxLayout, QWidget

from station.look.bars import Strip, TopBar
from station.look.palette import DARK, LIGHT
from station.look.scanner import Scanner
from station.look.texts import Text, text
from station.look.widgets import Style, Touch, palette
from station.shop.words import say

if TYPE_CHECKING:
    from station.look.panes import Pane
    from station.shop.acts import Answer
    from station.shop.faces import Face

SIZE = (1366, 768)
EDGE = 24
AGAIN_MS = 220  # between the two beeps of a stop
TOP_PANE = 126  # four lines of an area's figures


class Window(QMainWindow):
    """Paints faces and answers; everything a person does comes out of `sent` as text."""

    sent = Signal(str)

    def __init__(self, *, dark: bool = False) -> None:
        super().__init__()
        Style.palette = DARK if dark else LIGHT  # dark: for a dim shop
        self.setWindowTitle(text(say("From sheet to cart")))
        self.resize(*SIZE)
        self.bar, self.strip = TopBar(), Strip()
        self._body = QWidget()
        self._colours()
        self._made: list[Pane] = []
        whole, column = QWidget(), QVBoxLayout()
        whole.setLayout(column)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.bar)
        column.addWidget(self._body, 1)
        column.addWidget(self.strip)
        self.setCentralWidget(whole)
        whole.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        whole.setFocus()  # nothing that Enter would press has it at first
        self._code = ""
        self.scanner = Scanner(self)
        self.scanner.scanned.connect(self._scanned)
        self.scanner.typing.connect(self._typing)
        self.scanner.pressed.connect(self._press)
        self.scanner.confirmed.connect(self._confirm)

    def _colours(self) -> None:
        shades = self.palette()
        shades.setColor(QPalette.ColorRole.Window, QColor(palette().bench))
        shades.setColor(QPalette.ColorRole.WindowText, QColor(palette().ink))
        self.setPalette(shades)

    def _panes(self) -> None:
        """Top pane over the whole width; main, middle and side under it.

        Made with the first face, so that the frame stands before their blocks are loaded.
        """
        from station.look.panes import Pane  # noqa: PLC0415 - after the first frame

        self.top_pane = Pane(self._scanned, self)
        self.main_pane = Pane(self._scanned, self)
        self.middle_pane = Pane(self._scanned, self)
        self.side_pane = Pane(self._scanned, self)
        self._row = QHBoxLayout()
        self._row.setSpacing(16)
        for pane in (self.main_pane, self.middle_pane, self.side_pane):
            self._row.addWidget(pane.widget)
        outer = QVBoxLayout(self._body)
        outer.setContentsMargins(EDGE, 16, EDGE, 16)
        outer.setSpacing(16)
        outer.addWidget(self.top_pane.widget)
        outer.addLayout(self._row, 1)
        self._made = [self.top_pane, self.main_pane, self.middle_pane, self.side_pane]
        for pane in self._made:
            pane.widget.hide()

    def paint(self, face: "Face") -> None:
        """Shows a face; widgets stay where the kinds of block are the same."""
        if not self._made:
            self._panes()
        self.top_pane.set(face.top)
        self.top_pane.widget.setFixedHeight(TOP_PANE)
        self.main_pane.set(face.main, face.beside, face.presses)
        self.middle_pane.set(face.middle)
        self.side_pane.set(face.side)
        self.side_pane.stand_with(face.side)
        for n, weight in enumerate(face.weights):
            self._row.setStretch(n, max(weight, 1))

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
        buttons = self.main_pane.presses.buttons if self._made else []
        if number < len(buttons) and buttons[number].isEnabled():
            buttons[number].click()

    def _confirm(self) -> None:
        """Enter with nothing typed presses what has the focus."""
        found = QApplication.focusWidget()
        if isinstance(found, Touch) and found.focusPolicy() != Qt.FocusPolicy.NoFocus:
            found.click()
