"""A day in the shop, played line by line at the real window.

What stands on the screen is touched, what does not is scanned. After each line the strip says
what the day says, what the day looks for is painted, and everything on the screen is fit.
"""

from pathlib import Path

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from station.look.blocks.drawings import SheetBlock
from station.look.inspect import list_problems, list_texts
from station.look.window import Window
from station.shop.codes import Code, read
from station.window.session import Session
from tests import replay
from tests.replay import Stage
from tests.window.ways import Screen


def find_day(name: str) -> Path:
    """The day whose name begins so."""
    (file,) = replay.HERE.glob(f"{name}*.txt")
    return file


def play_day(name: str, screen: Screen, stage: Stage) -> None:
    """Plays the day whose name begins so, and stops the station whatever came of it."""
    played = Played(screen, stage)
    try:
        played.play(find_day(name))
    finally:
        played.screen.session.stop()


class Played:
    """A day that is played at a window; `touched` counts what was touched."""

    def __init__(self, screen: Screen, stage: Stage) -> None:
        self.screen, self.stage = screen, stage
        self.touched, self.answer = 0, ""
        screen.window.resize(1366, 768)

    def play(self, file: Path) -> None:
        """Every line of a day: answers, state and screen are as it says."""
        for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
            where, text = f"{file.name}:{number}", line.strip()
            if text.startswith(">"):
                assert self.said() == text.split(" | ", 1)[1], where
            elif text.startswith("="):
                now = str(replay.found(self.stage, text[1:].split()[:-1]))
                assert now == text.split()[-1], where
            elif text.startswith("*"):
                words = text[1:].strip()
                assert any(words in shown for shown in list_texts(self.screen.window)), where
            elif text and not text.startswith("#"):
                self.do(text)
                assert list_unfit(self.screen.window) == [], where
        assert self.touched > 1
        assert self.stage.check() == []

    def do(self, line: str) -> None:
        """One line: a hand, or what happens around it."""
        self.answer = ""
        if line.startswith(("@", "list-in ")):
            given = self.stage.send(line)
            self.answer = f"{given.answer.said} | {given.answer.do}".rstrip(" |")
            self.screen.session.repaint()
        elif line == "restart" or line.startswith("scan --worker "):
            self.begin_anew(line)
        elif line.startswith("point "):
            self.touch_sheet(*map(float, line.split()[1:]))
        else:
            self.send(self.screen.code_of(line))
        QApplication.processEvents()

    def begin_anew(self, line: str) -> None:
        """The power fails, or the station is opened for somebody: a session at the same window."""
        self.screen.session.stop()
        self.screen.window.sent.disconnect()
        self.stage.send(line)
        self.screen.session = Session(self.screen.window, self.stage.desk)
        self.screen.session.start()

    def touch_sheet(self, x_mm: float, y_mm: float) -> None:
        """A finger on the drawn sheet, so many mm from its corner."""
        QApplication.processEvents()
        (drawn,) = (b for b in self.screen.window.findChildren(SheetBlock) if b.isVisible())
        scale, width = drawn.pixels_per_mm(), drawn.block.revision.width_mm
        at = QPoint(round(1 + x_mm * scale), round(1 + (width - y_mm) * scale))
        QTest.mouseClick(drawn, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
        self.touched += 1

    def send(self, code: str) -> None:
        """A code, touched where it stands on the screen, else scanned; or a number typed."""
        if isinstance(read(code), Code) and self.screen.shown(code):
            self.screen.touch(code)
            self.touched += 1
        else:
            self.screen.type(code)

    def said(self) -> str:
        """What the strip says, or the command that was given beside the screen."""
        strip = self.screen.window.strip
        return self.answer or f"{strip.said.text()} | {strip.do.text()}".rstrip(" |")


def list_unfit(window: Window) -> list[str]:
    """What is not fit on the screen; a list of rows may be scrolled, no caution may."""
    found = list_problems(window)
    return [p for p in found if "Take care" in p or not p.startswith("only seen by scrolling")]
