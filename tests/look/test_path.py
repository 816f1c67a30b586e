"""The drawn path: layers hidden, looked at closely, played by the clock."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QImage, QPainter, QTransform, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QGestureEvent, QPinchGesture
from samples import path

from station.look import inspect
from station.look.blocks.keys import KeysBlock
from station.look.blocks.path import PathBlock
from station.look.blocks.pieces import draw_marks
from station.look.shop_time import SHOP_TIME
from station.look.widgets import Touch
from station.look.window import Window
from station.shop.faces import NumberMark, PathDrawing
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


def show(window: Window, **changed: object) -> PathDrawing:
    """Shows the same path otherwise."""
    (drawing,) = path().main
    assert isinstance(drawing, PathDrawing)
    after = replace(drawing, **changed)
    window.show_face(replace(path(), main=(after,)))
    return after


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
def test_a_touched_layer_is_hidden(
    block: PathBlock, window: Window, hidden: list[str], left: list[int]
) -> None:
    show(window, layers=True)
    for name in hidden:
        touch(block, name)
    shown = [n for n, (stroke, _) in enumerate(block.lines) if block._is_shown(stroke)]
    assert shown == left


def test_what_is_asked_is_done_once_and_the_rest_stays(block: PathBlock, window: Window) -> None:
    def card(count: int, act: str) -> None:
        show(window, asked=(count, act))

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
    assert block.at_s < 30.0


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


def test_what_is_hidden_is_not_painted(block: PathBlock, window: Window) -> None:
    show(window, layers=True)
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


def place(block: PathBlock, x: float, y: float) -> QPointF:
    """Where a place of the sheet stands now, px."""
    return block.view.map_onto(QRectF(block.picture)).map(QPointF(x, y))


def test_two_fingers_bring_what_lies_between_them_closer_and_move_it(
    block: PathBlock, window: Window
) -> None:
    window.move(90, 70)
    at = place(block, 320, 320)
    before = block.view.zoom

    def pinch(times: float, to: QPointF, was: QPointF) -> None:
        gesture = QPinchGesture()
        gesture.setScaleFactor(times)
        gesture.setCenterPoint(block.mapToGlobal(to))
        gesture.setLastCenterPoint(block.mapToGlobal(was))
        gesture.setChangeFlags(QPinchGesture.ChangeFlag.CenterPointChanged)
        QApplication.sendEvent(block, QGestureEvent([gesture]))

    pinch(3.0, at, at)
    assert block.view.zoom == pytest.approx(3 * before)
    after = place(block, 320, 320)
    assert (after.x(), after.y()) == pytest.approx((at.x(), at.y()), abs=1)
    pinch(1.0, at + QPointF(30, -20), at)
    moved = place(block, 320, 320) - after
    assert (moved.x(), moved.y()) == pytest.approx((30, -20), abs=1)


def test_closer_goes_to_the_place_that_was_touched(block: PathBlock, window: Window) -> None:
    sent: list[str] = []
    window.sent.connect(sent.append)
    at = place(block, 800, 400).toPoint()
    QTest.mouseClick(block, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
    (code,) = sent
    x, y, near = (float(word) for word in code.split()[1:])
    assert (x, y) == pytest.approx((800, 400), abs=2)
    assert near * block.view.pixels_per_mm(QRectF(block.picture)) == pytest.approx(24, rel=0.02)
    show(window, asked=(1, "in"))
    assert (block.view.middle.x(), block.view.middle.y()) == pytest.approx((800, 400), abs=2)


def find_middle(block: PathBlock) -> tuple[float, float]:
    return block.view.middle.x(), block.view.middle.y()


def test_closer_without_a_touch_goes_to_the_first_problem_unless_the_sheet_was_moved(
    block: PathBlock, window: Window
) -> None:
    marks = tuple(NumberMark(number=n, x_mm=100 * n, y_mm=90) for n in (2, 1, 3))
    show(window, marks=marks, asked=(1, "in"))
    assert find_middle(block) == pytest.approx((100, 90))
    at = block.picture.center()
    QTest.mousePress(block, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
    to = at - QPoint(40, 30)
    QTest.mouseMove(block, to)
    QTest.mouseRelease(block, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, to)
    moved = find_middle(block)
    assert moved != pytest.approx((100, 90))
    show(window, marks=marks, asked=(2, "in"))
    assert find_middle(block) == pytest.approx(moved)
    show(window, marks=marks, asked=(3, "all"))
    chosen = (replace(marks[2], chosen=True), *marks[:2])
    show(window, marks=chosen, asked=(4, "in"))
    assert find_middle(block) == pytest.approx((300, 90))


def test_a_problem_that_is_looked_at_stands_in_the_middle(
    block: PathBlock, window: Window
) -> None:
    mark = NumberMark(number=1, x_mm=320, y_mm=320, chosen=True)
    for count in (1, 2):
        show(window, marks=(mark,), asked=(count, "look"))
        assert (block.view.middle.x(), block.view.middle.y()) == (320, 320)
        assert block.view.zoom >= 8
        block.view.drag(QPointF(200, 100), QRectF(block.picture))


def test_the_sheet_fills_the_screen(block: PathBlock, window: Window) -> None:
    sheet = block.view.map_onto(QRectF(block.picture)).mapRect(QRectF(0, 0, 1000, 500))
    assert (window.width(), window.height()) == (1366, 768)
    assert sheet.width() * sheet.height() > 0.36 * 1366 * 768


def test_closer_drag_and_back_to_the_whole_sheet(block: PathBlock) -> None:
    block.do_act("in")
    middle, scale = block.view.middle.x(), block.view.pixels_per_mm(QRectF(block.picture))
    start = block.picture.center()
    QTest.mousePress(block, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    QTest.mouseMove(block, start - QPoint(40, 0))
    assert block.view.middle.x() == pytest.approx(middle + 40 / scale)
    block.do_act("all")
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
    block.do_act("speed")
    assert block.speed == 10
    block.do_act("play")
    assert (block.at_s, block.timer.isActive()) == (0.0, True)
    now[0] += 1.2
    block.timer.timeout.emit()
    assert block.at_s == pytest.approx(12.0)
    block.do_act("play")
    assert not block.timer.isActive()
    block.do_act("on")
    assert block.at_s == pytest.approx(12.6)
    block.do_act("play")
    now[0] += 5
    block.timer.timeout.emit()
    assert (block.at_s, block.timer.isActive()) == (30.0, False)


def test_a_touch_on_the_time_line_goes_there(block: PathBlock) -> None:
    block.grab()  # it is drawn where it is touched
    bar = block._bar
    at = QPoint(bar.center().x(), block.time_line.center().y())
    QTest.mouseClick(block, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
    assert block.at_s == pytest.approx(15, abs=0.1)


def test_every_key_is_reached_and_large_enough(window: Window, block: PathBlock) -> None:
    show(window, layers=True)
    stops = window.body.list_stops()
    (keys,) = window.findChildren(KeysBlock)
    for some in (block, keys):
        found = {k for k in some.findChildren(Touch) if k.isVisible()}
        assert len(found) >= 5
        assert found <= set(stops)
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
