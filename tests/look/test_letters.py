"""A text is typed on the keyboard or on the keys of the screen, and stands in its field."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from samples import form

from station.look import inspect, language
from station.look.blocks.letters import ROWS
from station.look.scanner import KEY
from station.look.widgets import Touch
from station.look.window import Window


@pytest.fixture
def sent(window: Window, qapp: QApplication) -> list[str]:
    got: list[str] = []
    window.sent.connect(got.append)
    window.show_face(form())
    qapp.processEvents()
    return got


def touch(window: Window, *codes: str) -> None:
    for code in codes:
        found = next(t for t in window.findChildren(Touch) if t.isVisible() and t.code == code)
        QTest.mouseClick(found, Qt.MouseButton.LeftButton)


def press(window: Window, *keys: str) -> None:
    touch(window, *(KEY + key for key in keys))


def test_keys_of_the_screen_type_one_input(window: Window, sent: list[str]) -> None:
    press(window, *"6 mm bit", "back", "left", "x")
    assert "6 mm bx|i" in inspect.list_texts(window)
    press(window, "enter")
    assert sent == ["6 mm bxi"]


def test_capitals_until_they_are_turned_again(window: Window, sent: list[str]) -> None:
    press(window, "shift", "A", "B", "shift", "c", "enter")
    assert sent == ["ABc"]


def test_what_stands_in_the_field_is_mended(window: Window, sent: list[str]) -> None:
    """An editing key begins with it; a letter, or a scan, takes its place."""
    for key in (Qt.Key.Key_Home, Qt.Key.Key_Delete):
        QTest.keyClick(window, key)
    QTest.keyClicks(window, "8")
    QTest.keyClick(window, Qt.Key.Key_Return)
    QTest.keyClicks(window, "R12")
    QTest.keyClick(window, Qt.Key.Key_Return)
    assert sent == ["8 mm compression", "R12"]


def test_what_was_copied_goes_to_the_caret(window: Window, sent: list[str]) -> None:
    QGuiApplication.clipboard().setText("down\ncut ")
    QTest.keyClicks(window, "6 mm")
    QTest.keyClick(window, Qt.Key.Key_Home)
    QTest.keyClick(window, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(window, Qt.Key.Key_Return)
    assert sent == ["downcut 6 mm"]


def test_another_touch_gives_what_was_typed_to_its_field_first(
    window: Window, sent: list[str]
) -> None:
    press(window, "a")
    row = next(row.code for row in form().main[0].rows if not row.selected)
    touch(window, row)
    assert sent == ["a", row]


def test_a_long_text_is_seen_at_its_caret_and_never_cut(window: Window, sent: list[str]) -> None:
    QTest.keyClicks(window, "compression, up and down, " * 6)
    assert inspect.list_problems(window) == []
    assert any(text.endswith("down, |") for text in inspect.list_texts(window))
    assert not sent


def test_the_keys_are_those_of_the_language(window: Window) -> None:
    window.set_language("de")
    window.show_face(form())
    codes = {t.code for t in window.findChildren(Touch)}
    window.set_language("")
    assert language.find_language() == ""
    assert {KEY + sign for row in ROWS["de"] for sign in row} <= codes
