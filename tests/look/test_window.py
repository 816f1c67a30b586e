"""Every block is painted, fits the smallest screen, and sends what it says."""

import dataclasses
from collections.abc import Callable
from typing import get_args

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from samples import CARE, SAMPLES, loading, packing, popping, trimming

from station.look import inspect
from station.look.bars import space_scanned
from station.look.blocks.drawings import SheetBlock
from station.look.blocks.mailer import MailerBlock
from station.look.panes import WIDGETS, ColumnScroll
from station.look.widgets import Label, Touch
from station.look.window import Window
from station.shop.acts import Answer
from station.shop.cards import button, digit
from station.shop.faces import (
    Block,
    Cards,
    Entry,
    Face,
    Header,
    Hint,
    Layer,
    MailerDrawing,
    Pairs,
    Press,
    SheetDrawing,
)
from station.shop.words import Say, say


def shown(window: Window, face: Face, qapp: QApplication) -> Window:
    window.show_top(area=face.title, where=face.where, worker="Worker 07", clock="10:42",
               shared=say("Shared with shop"), shared_ok=True)  # fmt: skip
    window.show_face(face)
    for _ in range(3):
        qapp.processEvents()
    return window


def touch(window: Window, name: str) -> Touch:
    found = [t for t in window.findChildren(Touch) if name in t.accessibleName() and t.isVisible()]
    assert found, name
    return min(found, key=lambda t: t.accessibleName() != name)  # the whole name first


def press(widget: QWidget, at: QPoint | None = None) -> None:
    where = at or widget.rect().center()
    QTest.mouseClick(widget, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, where)


def test_every_block_has_its_widget() -> None:
    assert set(WIDGETS) == set(get_args(Block))


def test_the_samples_hold_every_block() -> None:
    faces = [make() for make in SAMPLES.values()]
    panes = [getattr(f, p) for f in faces for p in ("top", "main", "beside", "middle", "side")]
    assert {type(b) for pane in panes for b in pane} == set(get_args(Block))


@pytest.mark.parametrize("make", SAMPLES.values(), ids=SAMPLES)
def test_a_face_fits_the_smallest_screen(
    make: Callable[[], Face], window: Window, qapp: QApplication
) -> None:
    shown(window, make(), qapp)
    assert (window.width(), window.height()) == (1366, 768)
    assert inspect.list_problems(window) == []
    picture = window.grab().toImage()
    colours = {picture.pixel(x, y) for x in range(40, 1300, 7) for y in range(80, 690, 7)}
    assert len(colours) > 8


@pytest.mark.parametrize("first", SAMPLES.values(), ids=SAMPLES)
def test_faces_follow_each_other_in_one_window(
    first: Callable[[], Face], window: Window, qapp: QApplication
) -> None:
    for make in (first, *SAMPLES.values(), first):
        shown(window, make(), qapp)
    assert inspect.list_problems(window) == []


def test_widgets_stay_while_the_kinds_of_block_stay(window: Window, qapp: QApplication) -> None:
    shown(window, popping(), qapp)
    before = list(window.body.main_pane.first.blocks)
    face = popping()
    other = dataclasses.replace(face.main[0], number="00413")
    assert isinstance(other, Header)
    shown(window, dataclasses.replace(face, main=(other, *face.main[1:])), qapp)
    assert window.body.main_pane.first.blocks == before
    assert "00413" in inspect.list_texts(window)


TOUCHES = [
    (popping, "Pass on", [button("pass_on")]),
    (popping, "SH-180: one more", [button("row_1"), button("more")]),
    (popping, "00409", ["B00409A7"]),
    (loading, "Hold-down", [button("held_down")]),
    (loading, "Report a stop", [button("stop")]),
    (packing, "3311", ["O3306X"]),
    (packing, "SG-10", [button("row_3")]),
    (packing, "Close the pack", []),
    (trimming, "that is it", [button("enter")]),
    (trimming, "7", [digit("7")]),
]


@pytest.mark.parametrize(("make", "name", "codes"), TOUCHES)
def test_a_touch_sends_its_code(
    make: Callable[[], Face], name: str, codes: list[str], window: Window, qapp: QApplication
) -> None:
    shown(window, make(), qapp)
    sent: list[str] = []
    window.sent.connect(sent.append)
    press(touch(window, name))
    assert sent == codes


def test_a_touch_on_the_sheet_sends_its_place(window: Window, qapp: QApplication) -> None:
    shown(window, loading(), qapp)
    sent: list[str] = []
    window.sent.connect(sent.append)
    (canvas,) = window.findChildren(SheetBlock)
    scale = canvas.pixels_per_mm()
    press(canvas, QPoint(round(1 + 500 * scale), round(1 + (1220 - 300) * scale)))
    word, x, y, _reach = sent[0].split()
    assert word == "@place"
    assert abs(float(x) - 500) <= 3
    assert abs(float(y) - 300) <= 3


def test_the_strip_says_what_happened_and_what_to_do(window: Window, qapp: QApplication) -> None:
    shown(window, popping(), qapp)
    window.show_answer(
        Answer(tone="stop", said=say("Batch {b} is held", b="00412"), do=say("Ask why")),
        "B00412AA",
    )
    qapp.processEvents()
    texts = {label.text() for label in window.strip.findChildren(Label)}
    assert {"Batch 00412 is held", "Ask why", "B 00412 A A"} <= texts
    assert window.strip.height() == 100


def test_a_long_answer_is_set_smaller_and_not_cut(window: Window, qapp: QApplication) -> None:
    shown(window, popping(), qapp)
    long = "Sheets 1, 2, 3, 4, 5, 6, 7 and 8 of batch 00412 wait here and three were counted twice"
    window.show_answer(Answer(tone="attention", said=Say(long), do=Say(long)), "B00412A3K")
    qapp.processEvents()
    assert window.width() == 1366
    assert inspect.list_problems(window) == []


@pytest.mark.parametrize(
    ("code", "written"),
    [
        ("B00412AA", "B 00412 A A"),
        ("B00412A3K", "B 00412 A 3 K"),
        ("W01Z", "W 01 Z"),
        ("W017", "W 01 7"),
        ("120.19", "120.19"),
        ("", ""),
    ],
)
def test_a_code_is_spaced_as_it_is_printed(code: str, written: str) -> None:
    assert space_scanned(code) == written


def test_inspect_names_cut_text_and_small_targets(window: Window, qapp: QApplication) -> None:
    shown(window, popping(), qapp)
    touch(window, "Only some").setFixedHeight(40)
    window.strip.said.setText("cut " * 200)
    qapp.processEvents()
    found = " ".join(inspect.list_problems(window))
    assert "Only some of it" in found
    assert "cut cut" in found


def test_what_is_too_tall_scrolls(window: Window, qapp: QApplication) -> None:
    many = Cards(title="Many", entries=tuple(Entry(big=f"{n:05d}", line1="x") for n in range(30)))
    shown(window, Face(title="Long", main=(many,), side=(CARE,)), qapp)
    assert window.height() == 768
    assert window.body.main_pane.main.verticalScrollBar().maximum() > 0


def test_a_touch_leaves_no_focus_for_the_next_enter(window: Window, qapp: QApplication) -> None:
    shown(window, popping(), qapp)
    press(touch(window, "Pass on"))
    sent: list[str] = []
    window.sent.connect(sent.append)
    QTest.keyClick(window, Qt.Key.Key_Return)
    assert sent == []


def test_everything_to_touch_has_a_name(window: Window, qapp: QApplication) -> None:
    for make in SAMPLES.values():
        shown(window, make(), qapp)
        live = [t for t in window.findChildren(Touch) if t.code and t.isVisible()]
        assert [t for t in live if not t.accessibleName()] == []


def test_a_button_that_is_off_sends_nothing(window: Window, qapp: QApplication) -> None:
    off = Press(label="Not now", code=button("undo"), style="off")
    shown(window, Face(title="Off", presses=(off,)), qapp)
    sent: list[str] = []
    window.sent.connect(sent.append)
    press(touch(window, "Not now"))
    QTest.keyClick(window, Qt.Key.Key_F1)
    assert sent == []


def test_a_dark_window_shows_the_same(qapp: QApplication) -> None:
    dark = Window(dark=True)
    dark.show()
    shown(dark, popping(), qapp)
    assert inspect.list_problems(dark) == []
    assert dark.grab().toImage().pixelColor(300, 560).lightness() < 80
    dark.close()
    dark.deleteLater()


def test_chosen_parts_are_drawn_strongly(window: Window, qapp: QApplication) -> None:
    """The same sheet with another choice is another picture."""
    face = loading()
    sheet = next(b for b in (*face.main, *face.beside) if isinstance(b, SheetDrawing))
    canvas = SheetBlock(lambda _code: None)
    canvas.show_block(sheet)
    canvas.put_into(QRect(0, 0, 600, 300))
    plain = canvas.grab().toImage()
    canvas.show_block(dataclasses.replace(sheet, chosen=(sheet.revision.placed[0].part,)))
    assert canvas.grab().toImage() != plain


FIVE = "2 HC-40 + 2 SG-10 + 3 SG-12 + 4 ST-120 + 1 TK-60"  # parts of a layer


def tall_pack() -> Face:
    """Packing with all that its middle column can say of three layers of five parts."""
    layers = tuple(
        Layer(label=FIVE if not n else "", x_mm=40 * n, y_mm=0, length_mm=38, width_mm=120,
              level=level, piece="SG-10")
        for level in range(3) for n in range(5)
    )  # fmt: skip
    figures = ("should weigh, no wrap", "scale misses none of", "scale may miss one of",
               "goes as", "on the scale", "stack", "it needs, flat", "thick", "wrap")  # fmt: skip
    rows = tuple((say("{what}", what=what), "as it should be") for what in figures)
    name = Hint(title="Flat 600 × 600", note="place W 3 · 6 left")
    drawing = MailerDrawing(name="", length_mm=600, width_mm=600, layers=layers)
    presses = tuple(
        Press(label=say(label), code=button(name), wide=wide)
        for label, name, wide in (
            ("Close: 24 to go", "close_pack", 2), ("Part missing", "part_missing", 1),
            ("Put back", "take_back", 1), ("Two packs", "part_pack", 1), ("More", "menu", 1),
        )
    )  # fmt: skip
    middle = (name, drawing, Pairs(title="", rows=rows))
    return dataclasses.replace(packing(), middle=middle, presses=presses, weights=(48, 27, 25))


def test_a_pack_of_three_layers_of_five_parts_fits(window: Window, qapp: QApplication) -> None:
    shown(window, tall_pack(), qapp)
    assert inspect.list_problems(window) == []
    columns = [c for c in window.findChildren(ColumnScroll) if c.isVisible()]
    assert [c.verticalScrollBar().maximum() for c in columns] == [0] * len(columns)


def test_a_mailer_is_drawn_large_where_there_is_room(window: Window, qapp: QApplication) -> None:
    shown(window, tall_pack(), qapp)
    (small,) = (b for b in window.findChildren(MailerBlock) if b.isVisible())
    little = small.height()
    face = tall_pack()
    shown(window, dataclasses.replace(face, middle=face.middle[:2]), qapp)
    (large,) = (b for b in window.findChildren(MailerBlock) if b.isVisible())
    assert large.height() > little + 60
