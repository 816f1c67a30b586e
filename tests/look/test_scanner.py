"""Scans and slow hands give the same text, wherever the focus is."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from samples import popping

from station.look.blocks.rows import TableRow
from station.look.scanner import SETTLE_MS
from station.look.widgets import Touch
from station.look.window import Window
from station.shop.cards import button

KEYS = {"enter": Qt.Key.Key_Return, "tab": Qt.Key.Key_Tab, "keypad": Qt.Key.Key_Enter}


@pytest.fixture
def sent(window: Window, qapp: QApplication) -> list[str]:
    got: list[str] = []
    window.sent.connect(got.append)
    window.show_face(popping())
    qapp.processEvents()
    return got


@pytest.mark.parametrize("end", KEYS)
@pytest.mark.parametrize("delay", [-1, 12])
def test_a_code_and_its_end_are_one_input(
    end: str, delay: int, window: Window, sent: list[str]
) -> None:
    QTest.keyClicks(window, "B00412AA", Qt.KeyboardModifier.NoModifier, delay)
    QTest.keyClick(window, KEYS[end])
    assert sent == ["B00412AA"]


def test_a_burst_of_scans_loses_nothing(window: Window, sent: list[str]) -> None:
    codes = [f"B{n:05d}AA" for n in range(40)]
    for code in codes:
        QTest.keyClicks(window, code)
        QTest.keyClick(window, Qt.Key.Key_Return)
    assert sent == codes


def test_typing_shows_and_can_be_mended(window: Window, sent: list[str]) -> None:
    QTest.keyClicks(window, "W02")
    assert window.strip.code.text() == "W02"
    QTest.keyClick(window, Qt.Key.Key_Backspace)
    QTest.keyClicks(window, "1Z")
    QTest.keyClick(window, Qt.Key.Key_Return)
    QTest.keyClicks(window, "nonsense")
    QTest.keyClick(window, Qt.Key.Key_Escape)
    QTest.keyClick(window, Qt.Key.Key_Return)
    assert sent == ["W01Z"]


@pytest.mark.parametrize(("key", "code"), [("1", "pass_on"), ("2", "some"), ("3", "")])
def test_function_keys_press_the_large_buttons(
    key: str, code: str, window: Window, sent: list[str]
) -> None:
    QTest.keyClick(window, getattr(Qt.Key, f"Key_F{key}"))
    assert sent == ([button(code)] if code else [])


def focused(window: Window) -> Touch:
    """The large button, reached as the Tab key would."""
    target: Touch = window.body.main_pane.presses.buttons[1]
    target.setFocus(Qt.FocusReason.TabFocusReason)
    return target


def test_enter_presses_what_tab_has_reached(window: Window, sent: list[str]) -> None:
    window.activateWindow()
    QTest.keyClick(focused(window), Qt.Key.Key_Return)
    assert sent == [button("some")]


def test_a_scan_is_read_whatever_has_the_focus(window: Window, sent: list[str]) -> None:
    target = focused(window)
    QTest.keyClicks(target, "B00412AA")
    QTest.keyClick(target, Qt.Key.Key_Return)
    assert sent == ["B00412AA"]


def test_a_second_end_key_of_a_scanner_presses_nothing(window: Window, sent: list[str]) -> None:
    target = focused(window)
    QTest.keyClicks(target, "B00412AA")
    QTest.keyClick(target, Qt.Key.Key_Return)
    QTest.keyClick(target, Qt.Key.Key_Return)
    assert sent == ["B00412AA"]
    QTest.qWait(SETTLE_MS + 50)
    QTest.keyClick(target, Qt.Key.Key_Return)
    assert sent == ["B00412AA", button("some")]


def test_the_focus_is_not_handed_to_a_neighbour(
    window: Window, sent: list[str], qapp: QApplication
) -> None:
    focused(window)
    window.show_face(popping().__class__(title="Other"))
    qapp.processEvents()
    QTest.keyClick(window, Qt.Key.Key_Return)
    assert not isinstance(QApplication.focusWidget(), Touch)
    assert sent == []


def test_tab_goes_as_one_reads(window: Window, sent: list[str], qapp: QApplication) -> None:
    """Rows from above, a row's keys from the left, the large buttons, then the next pane."""
    window.activateWindow()
    names = []
    for _ in range(15):
        QTest.keyClick(QApplication.focusWidget() or window, Qt.Key.Key_Tab)
        found = QApplication.focusWidget()
        assert isinstance(found, Touch)
        names.append(found.accessibleName().split(",")[0])
    assert names == [
        "HC-300", "HC-300: one less", "HC-300: one more",
        "SH-180", "SH-180: one less", "SH-180: one more",
        "WS-12", "WS-12: one less", "WS-12: one more",
        "Pass on: 349 good", "Only some of it", "00413", "00409", "00412", "HC-300",
    ]  # fmt: skip
    shift = Qt.KeyboardModifier.ShiftModifier
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backtab, shift)
    assert QApplication.focusWidget().accessibleName().startswith("00412")


def step(window: Window, key: Qt.Key) -> str:
    """Presses an arrow; gives what has the focus then."""
    QTest.keyClick(QApplication.focusWidget() or window, key)
    found = QApplication.focusWidget()
    return found.accessibleName() if isinstance(found, Touch) else ""


def test_arrows_go_from_row_to_row_and_from_pane_to_pane(window: Window, sent: list[str]) -> None:
    window.activateWindow()
    rows = [t for t in window.body.list_stops() if isinstance(t, TableRow)]
    names = [row.accessibleName() for row in rows]
    assert len(names) > 2
    assert step(window, Qt.Key.Key_Down) == names[0], "the first of all"
    assert [step(window, Qt.Key.Key_Down) for _ in names[1:]] == names[1:]
    assert step(window, Qt.Key.Key_Up) == names[-2]
    beside = step(window, Qt.Key.Key_Right)
    assert beside
    assert beside not in names
    assert step(window, Qt.Key.Key_Left) == names[-2]
    assert sent == []
    QTest.qWait(SETTLE_MS + 50)
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    assert sent == [rows[-2].code]


def test_arrows_that_lead_nowhere_leave_the_focus(window: Window, sent: list[str]) -> None:
    window.activateWindow()
    first = step(window, Qt.Key.Key_Up)
    assert step(window, Qt.Key.Key_Up) == first
    assert sent == []
