"""The days of what is held back, and of what can hurt, through the real screen.

What stands on the screen is touched, what does not is scanned. After each line the strip says
what the day says, what the day looks for is painted, and everything on the screen is fit.
"""

import pytest
from PySide6.QtWidgets import QApplication

from station.look.inspect import list_problems, list_texts
from station.shop.codes import Code, read
from station.window.session import Session
from tests import replay

pytestmark = pytest.mark.slow  # plays whole days through the window

DAYS = {  # by what was seen: the day, and its way on
    "held pieces leave": ("61",),
    "what differs goes on": ("31_differs", "47", "62"),
    "a first-off vanishes": ("31_first", "46"),
    "a number goes to another size": ("48", "63"),
    "a router runs on unseen": ("33_restart", "44"),
    "a refusal leaves something armed": ("30", "66"),
    "a revision is said to be the same": ("64",),
    "nobody is told what can hurt": ("65",),
}


def find_day(name):
    (file,) = replay.HERE.glob(f"{name}*.txt")
    return file


class Played:
    """A day that is played line by line at a window."""

    def __init__(self, screen, stage):
        self.screen, self.stage = screen, stage
        self.touched = 0
        screen.window.resize(1366, 768)

    def do(self, line):
        if line.startswith("@"):
            self.stage.send(line)
            self.screen.session.repaint()
        elif line == "restart":
            self.restart()
        else:
            self.send(self.screen.code_of(line))
        QApplication.processEvents()

    def restart(self):
        """The power fails: another session begins at the same window."""
        self.screen.session.stop()
        self.screen.window.sent.disconnect()
        self.stage.desk = self.stage.new_desk(self.stage.desk.hand.area)
        self.screen.session = Session(self.screen.window, self.stage.desk)
        self.screen.session.start()

    def send(self, code):
        if isinstance(read(code), Code) and self.screen.shown(code):
            self.screen.touch(code)
            self.touched += 1
        else:
            self.screen.type(code)

    def said(self):
        strip = self.screen.window.strip
        return f"{strip.said.text()} | {strip.do.text()}".rstrip(" |")


def list_unfit(window):
    """What is not fit on the screen; a list of rows may be scrolled, no caution may."""
    found = list_problems(window)
    return [p for p in found if "Take care" in p or not p.startswith("only seen by scrolling")]


@pytest.fixture
def played(screen, stage):
    yield (one := Played(screen, stage))
    one.screen.session.stop()


@pytest.mark.parametrize("name", [day for days in DAYS.values() for day in days])
def test_a_day_at_the_window(name, played, screen, stage):
    file = find_day(name)
    for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
        where, text = f"{file.name}:{number}", line.strip()
        if text.startswith(">"):
            assert played.said() == text.split(" | ", 1)[1], where
        elif text.startswith("="):
            assert str(replay.found(stage, text[1:].split()[:-1])) == text.split()[-1], where
        elif text.startswith("*"):
            words = text[1:].strip()
            assert any(words in shown for shown in list_texts(screen.window)), where
        elif text and not text.startswith("#"):
            played.do(text)
            assert list_unfit(screen.window) == [], where
    assert played.touched > 1
    assert stage.check() == []
