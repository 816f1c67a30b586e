"""A window per test; anything Qt complains about fails the test."""

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QMessageLogContext, QtMsgType, qInstallMessageHandler
from PySide6.QtWidgets import QApplication

from station.look.window import Window

sys.path.insert(0, str(Path(__file__).parent))
KNOWN = "propagateSizeHints"  # the offscreen platform cannot do it, and says so each time


@pytest.fixture(autouse=True)
def qt_is_content() -> Iterator[None]:
    said: list[str] = []

    def note(kind: QtMsgType, _context: QMessageLogContext, text: str) -> None:
        if kind != QtMsgType.QtDebugMsg and KNOWN not in text:
            said.append(text)

    before = qInstallMessageHandler(note)
    yield
    qInstallMessageHandler(before)
    assert said == []


@pytest.fixture
def window(qt_is_content: None, qapp: QApplication) -> Iterator[Window]:
    made = Window()
    made.show()
    yield made
    made.close()
    made.deleteLater()
    qapp.processEvents()
