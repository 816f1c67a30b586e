"""The drawn path: layers hidden, looked at closely, played by the clock."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QImage, QPainter, QTransform, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from samples import path

from station.look import inspect
from station.look.blocks.path import PathBlock
from station.look.blocks.pieces import draw_marks
from station.look.shop_time import SHOP_TIME
from station.look.widgets import Touch
from station.look.window import Window
from station.shop.faces import NumberMark
from station.shop.strokes import Stroke


@pytest.fixture
def block(window: Window, qapp: QApplication) -> Iterator[PathBlock]:
    window.show_face(path())
    for _ in range(3):
        qapp.processEvents()
    (found,) = window.findChildren(PathBlock)
    yield found
    found.timer.stop()


def touch(block: PathBlock, name: str) -> None:
    (key,) = [k for k in block.findChildren(Touch) if name in k.accessibleName() and k.isVisible()]
    QTest.mouseClick(key, Qt.MouseButton.LeftButton)


@pytest.mark.parametrize(
    ("hidden", "left"),
    [
        ([], [0, 1, 2, 3, 4]),
        (["Bit 1"], [0, 3, 4]),
        (["Bit 1", "Bit 1"], [0, 1, 2, 3, 4]),
        (["Bit 2", "Over 6.75"], [0, 1, 3]),
        (["Rapids"], [1, 2, 4]),
        (["Rapids", "0 to 2.25"], [2, 4]),
    ],
)
def test_a_touched_layer_is_hidden(block: PathBlock, hidden: list[str], left: list[int]) -> None:
    touch(block, "Layers")
    for name in hidden:
        touch(block, name)
    shown = [n for n, (stroke, _) in enumerate(block.lines) if block._is_shown(stroke)]
    assert shown == left


def test_a_card_does_what_a_key_does_once_and_the_rest_stays(
    block: PathBlock, window: Window
) -> None:
    shown = path()
    (drawing,) = shown.main

    def card(count: int, act: str) -> None:
        window.show_face(replace(shown, main=(replace(drawing, asked=(count, act)),)))

    card(1, "in")
    once = block.view.zoom
    assert once > 1
    card(1, "in")  # the same face painted again
    assert block.view.zoom == once
    card(2, "in")
    assert block.view.zoom > once
    card(3, "layer 1")
    assert block.hidden == {("bit", 1)}
    card(4, "layer 99")
    assert block.hidden == {("bit", 1)}
    assert block.view.zoom > once
    card(5, "all")
    assert block.view.zoom == 1
    card(6, "back")
    assert block.at_s < drawing.seconds


def test_a_hole_that_is_drilled_is_a_dot(block: PathBlock, window: Window) -> None:
    (drawing,) = path().main
    x, y = drawing.length_mm / 2, drawing.width_mm / 2
    hole = Stroke(1, 4, ((x, y, 0.0), (x, y, drawing.seconds)))
    window.show_face(replace(path(), main=(replace(drawing, strokes=(hole,)),)))
    QApplication.processEvents()
    picture = block.grab().toImage()
    at = block.view.map_onto(QRectF(block.picture)).map(QPointF(x, y)).toPoint()
    aside = QPoint(at.x() + 12, at.y())
    assert picture.pixel(at) != picture.pixel(aside)


def test_what_is_hidden_is_not_painted(block: PathBlock) -> None:
    touch(block, "Layers")
    before = block.grab().toImage()
    for name in ("Bit 1", "Bit 2", "Rapids"):
        touch(block, name)
    assert block.grab().toImage() != before


def test_a_wheel_brings_the_place_under_it_closer(block: PathBlock) -> None:
    box = QRectF(block.picture)
    at = block.view.map_onto(box).map(QPointF(320, 320))
    before = block.view.pixels_per_mm(box)
    wheel = QWheelEvent(at, at, QPoint(), QPoint(0, 240), Qt.MouseButton.NoButton,
                        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase,
                        False)  # fmt: skip
    QApplication.sendEvent(block, wheel)
    assert block.view.pixels_per_mm(box) == pytest.approx(before * 1.6)
    after = block.view.map_onto(box).map(QPointF(320, 320))
    assert (after.x(), after.y()) == pytest.approx((at.x(), at.y()))


def test_closer_drag_and_back_to_the_whole_sheet(block: PathBlock) -> None:
    touch(block, "Closer")
    middle, scale = block.view.middle.x(), block.view.pixels_per_mm(QRectF(block.picture))
    start = block.picture.center()
    QTest.mousePress(block, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    QTest.mouseMove(block, start - QPoint(40, 0))
    assert block.view.middle.x() == pytest.approx(middle + 40 / scale)
    touch(block, "Whole sheet")
    assert (block.view.zoom, block.view.middle.x()) == (1.0, 500)


@pytest.mark.parametrize(
    ("second", "at"),
    [(1, (50, 50)), (7, (300, 100)), (22, (100, 100)), (27, (320, 310)), (29, (320, 320))],
)
def test_where_the_bit_is(block: PathBlock, second: float, at: tuple[float, float]) -> None:
    block.go_to(second)
    point = block.find_point()
    assert point is not None
    assert (point.x(), point.y()) == pytest.approx(at)


def test_it_plays_by_the_clock_and_stands_at_the_end(
    block: PathBlock, monkeypatch: pytest.MonkeyPatch
) -> None:
    now = [100.0]
    monkeypatch.setattr(SHOP_TIME, "now", lambda: now[0])
    assert not block.timer.isActive()
    touch(block, "Speed × 60")
    assert block.speed == 10
    touch(block, "Play")
    assert (block.at_s, block.timer.isActive()) == (0.0, True)
    now[0] += 1.2
    block.timer.timeout.emit()
    assert block.at_s == pytest.approx(12.0)
    touch(block, "Pause")
    assert not block.timer.isActive()
    touch(block, "Onward")
    assert block.at_s == pytest.approx(12.6)
    touch(block, "Play")
    now[0] += 5
    block.timer.timeout.emit()
    assert (block.at_s, block.timer.isActive()) == (30.0, False)


def test_a_touch_on_the_time_line_goes_there(block: PathBlock) -> None:
    at = QPoint(block.width() // 2, block.time_line.center().y())
    QTest.mouseClick(block, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
    assert block.at_s == pytest.approx(15, abs=0.1)


def test_every_key_is_reached_and_large_enough(window: Window, block: PathBlock) -> None:
    stops = window.body.list_stops()
    assert {k for k in block.findChildren(Touch) if k.isVisible()} <= set(stops)
    assert inspect.list_problems(window) == []


def test_marks_that_would_cover_each_other_are_dots_until_it_is_closer() -> None:
    picture = QImage(200, 100, QImage.Format.Format_RGB32)
    marks = [NumberMark(number=n, x_mm=50 + 4 * n, y_mm=50) for n in (1, 2)]

    def draw(scale: float, some: list[NumberMark]) -> QImage:
        picture.fill(0xFFFFFF)
        painter = QPainter(picture)
        draw_marks(painter, some, QTransform(scale, 0, 0, 1, 50 * (1 - scale), 0))
        painter.end()
        return picture.copy()

    right = QRect(80, 30, 120, 40)
    assert draw(1.0, marks).copy(right) == draw(1.0, marks[:1]).copy(right)
    assert draw(9.0, marks).copy(right) != draw(9.0, marks[:1]).copy(right)
