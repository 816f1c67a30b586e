"""Everything grows with the screen, and nothing is cut or too small on a larger one."""

from collections.abc import Callable
from types import SimpleNamespace

import pytest
import shiboken6
from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from samples import SAMPLES, popping
from test_window import shown, touch

from station.look import inspect
from station.look.style import Style, find_scale
from station.look.window import Window
from station.shop.acts import good
from station.shop.faces import Face
from station.shop.words import say
from station.window.show import fill_screen

SIZES = ((1366, 768), (1920, 1080), (2560, 1440))


@pytest.fixture(autouse=True)
def as_before():
    yield
    Style.scale = 1.0


@pytest.mark.parametrize(
    ("size", "scale"),
    [((1366, 768), 1.0), ((1280, 700), 1.0), ((1920, 1080), 1.4), ((2560, 1440), 1.85),
     ((1920, 768), 1.0), ((3840, 2160), 2.8)],
)  # fmt: skip
def test_the_scale_is_what_both_sides_have_room_for(size, scale) -> None:
    assert find_scale(*size) == pytest.approx(scale)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("make", SAMPLES.values(), ids=SAMPLES)
def test_every_face_fits_every_size(
    make: Callable[[], Face], size: tuple[int, int], qapp: QApplication
) -> None:
    window = Window()
    window.resize(*size)
    window.show()
    window.show_answer(
        good(say("Batch {b} is here", b="00412"), say("Count the good ones.")), "B004"
    )
    shown(window, make(), qapp)
    assert (window.width(), window.height()) == size
    assert inspect.list_problems(window) == []
    assert window.strip.height() == round(100 * Style.scale)
    window.close()


def test_a_window_that_grows_is_built_anew_with_what_it_showed(
    window: Window, qapp: QApplication, qtbot: QtBot
) -> None:
    shown(window, popping(), qapp)
    window.show_answer(good(say("Counted")), "B00412AA")
    small, before = touch(window, "Pass on").height(), sorted(inspect.list_texts(window))
    window.resize(1920, 1080)
    qtbot.waitUntil(lambda: Style.scale != 1.0 and sorted(inspect.list_texts(window)) == before)
    assert touch(window, "Pass on").height() == pytest.approx(1.4 * small, abs=2)


def test_a_window_turns_dark_and_light_with_what_it_showed(
    window: Window, qapp: QApplication
) -> None:
    shown(window, popping(), qapp)
    before = sorted(inspect.list_texts(window))
    for dark in (True, False):
        window.set_palette(dark=dark)
        for _ in range(3):
            qapp.processEvents()
        assert sorted(inspect.list_texts(window)) == before
        assert inspect.list_problems(window) == []
        assert (window.grab().toImage().pixelColor(8, 400).lightness() < 80) == dark


@pytest.mark.parametrize(
    ("free", "state"),
    [((1366, 768), "WindowFullScreen"), ((1366, 728), "WindowFullScreen"),
     ((1920, 1040), "WindowMaximized"), ((2560, 1400), "WindowMaximized")],
)  # fmt: skip
def test_the_window_opens_as_large_as_the_screen(window, monkeypatch, free, state) -> None:
    monkeypatch.setattr(QApplication, "platformName", lambda: "xcb")
    monkeypatch.setattr(QApplication, "primaryScreen", lambda: SimpleNamespace(
        availableGeometry=lambda: QRect(0, 0, *free)))  # fmt: skip
    fill_screen(window)
    assert window.windowState() == getattr(Qt.WindowState, state)


def test_the_window_does_not_take_the_screen_with_it(window) -> None:
    """A screen asked of the window becomes its child, is collected with it, and Qt crashes."""
    fill_screen(window)
    assert "QScreen" not in shiboken6.dump(window)
