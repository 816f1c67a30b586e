"""The one window: top bar, the face of a room, the strip."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, Qt, QTimer, Signal
from PySide6.QtGui import (
    QCloseEvent,
    QColor,
    QDragEnterEvent,
    QDropEvent,
    QKeyEvent,
    QPalette,
    QResizeEvent,
)
from PySide6.QtWidgets import QApplication, QMainWindow, QVBoxLayout, QWidget

from station.look import language
from station.look.bars import Strip, TopBar
from station.look.body import FaceBody
from station.look.language import Text, translate
from station.look.scanner import KEY, Scanner
from station.look.sounds import Sounds
from station.look.style import BASE, DARK, LIGHT, Style, find_scale, palette
from station.look.widgets import Touch
from station.shop.words import say

if TYPE_CHECKING:
    from station.shop.acts import Answer
    from station.shop.faces import Face

ARROWS = {
    Qt.Key.Key_Up: QPoint(0, -1),
    Qt.Key.Key_Down: QPoint(0, 1),
    Qt.Key.Key_Left: QPoint(-1, 0),
    Qt.Key.Key_Right: QPoint(1, 0),
}
SETTLE_MS = 120  # a window that is being drawn larger is built when it stands still


class Window(QMainWindow):
    """Paints faces and answers; everything a person does comes out of `sent` as text."""

    sent = Signal(str)
    closed = Signal()
    touched = Signal(str)  # what a touch sends, before it is known to be an input
    dropped = Signal(list)  # paths of files; "" for what is no file of this PC

    def __init__(self, *, dark: bool = False) -> None:
        super().__init__()
        Style.palette, Style.scale = DARK if dark else LIGHT, 1.0
        self.setWindowTitle(translate(say("From sheet to cart")))
        self.resize(*BASE)
        self.setAcceptDrops(True)
        self.sounds = Sounds()
        self._shown: dict[str, Callable[[], None]] = {}  # what is shown again after a change
        self._larger = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._larger.timeout.connect(self._fit_scale)
        self._build_widgets()
        self.scanner = Scanner(self)
        self.scanner.scanned.connect(self.sent)
        self.touched.connect(self._take_touch)
        self._takes_text = False  # a text is typed into a field
        self.is_touched = False  # what is sent now comes of a touch, and is no scan
        self.secret = False  # a PIN is typed: only how long it is may be seen
        self.scanner.typing.connect(self._show_typing)
        self.scanner.pressed.connect(self._press_button)
        self.scanner.confirmed.connect(self._press_focused)

    def _build_widgets(self) -> None:
        """Builds bars and body in the palette, scale and language in use, with what was shown."""
        shades = self.palette()
        shades.setColor(QPalette.ColorRole.Window, QColor(palette().bench))
        shades.setColor(QPalette.ColorRole.WindowText, QColor(palette().ink))
        self.setPalette(shades)
        self.bar, self.strip, self.body = TopBar(), Strip(), FaceBody()
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
        for show in self._shown.values():
            show()

    def set_palette(self, *, dark: bool) -> None:
        """Changes the palette."""
        if (wanted := DARK if dark else LIGHT) is not Style.palette:
            Style.palette = wanted
            self._build_widgets()

    def set_language(self, name: str) -> None:
        """Changes the language; "" is English."""
        if language.set_language(name):
            self.setWindowTitle(translate(say("From sheet to cart")))
            self._build_widgets()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lets everything grow with the window, once its size has settled."""
        super().resizeEvent(event)
        if find_scale(self.width(), self.height()) != Style.scale:
            self._larger.start() if self.isVisible() else self._fit_scale()

    def _fit_scale(self) -> None:
        """Builds the window as large as it is now."""
        scale = find_scale(self.width(), self.height())
        if scale != Style.scale:
            Style.scale = scale
            self._build_widgets()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Tells that it is closed."""
        super().closeEvent(event)
        self.closed.emit()

    def show_face(self, face: "Face") -> None:
        """Shows a face; widgets stay where the kinds of block are the same."""
        self._shown["face"] = lambda: self.body.show_face(face, self.touched.emit)
        self.scanner.known = face.known
        self._takes_text = face.takes_text
        before = self._find_focused()
        self._shown["face"]()
        if before != self._find_focused():
            self.whole.setFocus()  # not a neighbour that Enter would then press

    def _find_focused(self) -> tuple[QWidget, str] | None:
        """Finds what Enter would press, and the code that it would send."""
        found = QApplication.focusWidget()
        return (found, found.code) if isinstance(found, Touch) and found.isVisible() else None

    def show_answer(self, answer: "Answer", code: str) -> None:
        """Shows an answer in the strip, with its sound."""
        self._shown["answer"] = lambda: self.strip.show_answer(answer, code)
        self._shown["answer"]()
        self.sounds.play_answer(answer)

    def show_top(
        self, *, area: Text, where: Text, worker: Text, clock: str, shared: Text, shared_ok: bool
    ) -> None:
        """Shows the top bar."""
        self._shown["top"] = lambda: self.bar.show_texts(
            area=area, where=where, worker=worker, clock=clock, shared=shared, shared_ok=shared_ok
        )
        self._shown["top"]()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Lets whatever has an address be dropped: what it is gets an answer."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Takes files, by their paths."""
        urls = event.mimeData().urls()
        event.acceptProposedAction()
        self.dropped.emit([url.toLocalFile() if url.isLocalFile() else "" for url in urls])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Gives every key that nothing else wants to the scanner; arrows move the focus."""
        if self.scanner.take_key(event):
            return
        if (toward := ARROWS.get(Qt.Key(event.key()))) is None:
            super().keyPressEvent(event)
        elif found := self.body.find_stop(QApplication.focusWidget(), toward):
            self.body.focus_stop(found)

    def focusNextPrevChild(self, next: bool) -> bool:  # noqa: FBT001 - Qt's signature
        """Ends a scan by Tab; with nothing typed it moves the focus as one reads."""
        if self.scanner.end_scan():
            return True
        stops = self.body.list_stops()
        if not stops:
            return super().focusNextPrevChild(next)
        now, step = QApplication.focusWidget(), 1 if next else -1
        at = stops.index(now) + step if now in stops else (0 if next else -1)
        self.body.focus_stop(stops[at % len(stops)])
        return True

    def _show_typing(self, text: str) -> None:
        shown = "•" * len(text) if self.secret else text
        self.strip.show_typing(shown)
        self.body.show_typing(shown, self.scanner.caret)

    def _take_touch(self, code: str) -> None:
        """Takes what a touch sends: a key types, all else goes on as an input.

        What was typed into a field and not ended goes there first, and not into the next one.
        """
        if code.startswith(KEY):
            self.scanner.press_key(code.removeprefix(KEY))
            return
        if self._takes_text:
            self.scanner.end_scan()
        self.is_touched = True
        self.sent.emit(code)
        self.is_touched = False

    def _press_button(self, number: int) -> None:
        """Presses one of the large buttons, by F1 to F9."""
        for button in self.body.list_buttons():
            if button.number == number and button.isEnabled():
                button.click()
                return

    def _press_focused(self) -> None:
        """Presses what has the focus, by Enter with nothing typed."""
        found = QApplication.focusWidget()
        if isinstance(found, Touch) and found.focusPolicy() != Qt.FocusPolicy.NoFocus:
            found.click()
