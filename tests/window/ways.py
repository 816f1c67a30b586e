"""What a person can do at the window, and the three ways to do all of it.

Each way takes the same words: a line as the scenarios write it, or a number. By scanner every
number is its digit cards; by touch a code must stand on the screen to be touched; by keyboard
a large button is its F key, what stands on the screen is reached by Tab and pressed by Enter,
and only what stands on no screen is typed.
"""

from collections.abc import Callable, Iterator

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from station.look.scanner import SETTLE_MS
from station.look.widgets import Touch
from station.look.window import Window
from station.shop.cards import button, digit
from station.window.session import Session
from tests.replay import Stage, code_of


class Screen:
    """The window of a station, and what stands on its strip."""

    def __init__(self, window: Window, session: Session, stage: Stage) -> None:
        self.window, self.session, self.stage = window, session, stage

    def scan(self, *lines: str) -> None:
        for line in lines:
            self.type(self.code_of(line))

    def code_of(self, line: str) -> str:
        """A line's code; what is found by its words is what the desk shows now."""
        return code_of(line, self.stage.ledger, self.session.desk.face)

    def type(self, text: str) -> None:
        QTest.keyClicks(self.window, text)
        QTest.keyClick(self.window, Qt.Key.Key_Return)

    def touch(self, code: str) -> None:
        found = self.shown(code)
        assert found, f"nothing on the screen sends {code}"
        QTest.mouseClick(found, Qt.MouseButton.LeftButton)

    def shown(self, code: str) -> Touch | None:
        """What sends this code when it is touched."""
        QApplication.processEvents()  # what was just painted stands
        each = self.window.findChildren(Touch)
        return next((t for t in each if t.isVisible() and t.isEnabled() and t.code == code), None)

    def press(self, number: int) -> None:
        QTest.keyClick(self.window, Qt.Key(int(Qt.Key.Key_F1) + number - 1))

    @property
    def said(self) -> str:
        return self.window.strip.said.text()

    def at(self, area: str, worker: str = "02", **where: str) -> None:
        self.session.desk.at(area=area, **where)
        self.session.desk.sign_in(worker)
        self.session.repaint()


def on_screen(stage: Stage, qtbot: QtBot) -> Iterator[Screen]:
    """A stage's desk at a window, for as long as a test lasts."""
    window = Window()
    qtbot.addWidget(window)
    session = Session(window, stage.desk)
    window.show()
    qtbot.waitExposed(window)
    session.start()
    yield Screen(window, session, stage)
    session.stop()


def codes(words: str, screen: Screen) -> list[str]:
    """The codes for a line; a number is its digits and “That is it”."""
    if words.replace(".", "").isdecimal():
        return [*(button("point") if c == "." else digit(c) for c in words), button("enter")]
    return [screen.code_of(words)]


def by_scanner(screen: Screen, words: str) -> None:
    for code in codes(words, screen):
        screen.type(code)


def by_touch(screen: Screen, words: str) -> None:
    for code in codes(words, screen):
        screen.touch(code)


def by_keyboard(screen: Screen, words: str) -> None:
    if words.replace(".", "").isdecimal():
        screen.type(words)
        return
    code = screen.code_of(words)
    large = {b.code: b.number for b in screen.window.body.list_buttons()}
    if code in large:
        screen.press(large[code])
    elif screen.shown(code):
        reach(screen, code)
    else:
        screen.type(code)


def reach(screen: Screen, code: str) -> None:
    """Tab until the focus stands on it, then Enter."""
    screen.window.activateWindow()
    QTest.qWait(SETTLE_MS + 20)
    for _ in range(300):
        QTest.keyClick(QApplication.focusWidget() or screen.window, Qt.Key.Key_Tab)
        found = QApplication.focusWidget()
        if isinstance(found, Touch) and found.code == code:
            QTest.keyClick(found, Qt.Key.Key_Return)
            return
    raise AssertionError(f"Tab never reaches {code}")


WAYS: dict[str, Callable[[Screen, str], None]] = {
    "scanner": by_scanner,
    "touch": by_touch,
    "keyboard": by_keyboard,
}
