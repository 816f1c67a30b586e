"""The row of large buttons fits into its width, and each has one F key wherever it stands."""

import pytest
from PySide6.QtWidgets import QWidget

from station.look.presses import NUMBERS, Presses, number_presses
from station.shop.cards import BY_NUMBER, F_KEYS, button
from station.shop.codes import Code, read
from station.shop.faces import Press
from station.shop.words import say
from tests.replay import HERE, Stage


@pytest.mark.parametrize("width", [640, 811, 838, 839, 840, 1011, 1318])
@pytest.mark.parametrize("wide", [(1, 1), (2, 1), (2, 1, 1), (1, 2, 3, 1), (2, 1, 1, 1, 1)])
def test_the_last_button_ends_inside(qtbot, width, wide):
    parent = QWidget()
    qtbot.addWidget(parent)
    row = Presses(parent, lambda _code: None)
    row.show_presses(tuple(Press(label=say("More"), code="X", wide=n) for n in wide))
    row.needed_height(width)
    last, _ = row._pages[-1]
    assert width - len(wide) <= last.left() + last.width() <= width


def make(*names):
    return tuple(Press(label=say("More"), code=button(name)) for name in names)


def test_a_button_that_others_come_before_keeps_its_key():
    assert number_presses(make("close_pack", "part_missing", "take_back", "menu")) == [1, 2, 3, 9]
    some = make("close_pack", "part_missing", "take_back", "part_pack", "menu")
    assert number_presses(some) == [1, 2, 3, 5, 9]


def test_the_buttons_stand_in_the_order_of_their_keys(qtbot):
    parent = QWidget()
    qtbot.addWidget(parent)
    row = Presses(parent, lambda _code: None)
    row.show_presses(make("put_down", "bit_broken", "start", "stop"))
    assert [p.code for p in row.shown] == [
        button(n) for n in ("start", "stop", "bit_broken", "put_down")
    ]
    assert row.numbers == (1, 2, 3, 8)


DAYS = ("04_", "18_", "41_", "51_", "61_", "89_")


@pytest.mark.slow
def test_no_button_changes_its_key_in_a_work_area(tmp_path):
    """Whatever is in hand; “Take batch …” is another code each time."""
    keys = {}
    for day in (f for f in sorted(HERE.glob("*.txt")) if f.name.startswith(DAYS)):
        folder = tmp_path / day.stem
        folder.mkdir()
        stage = Stage(folder)
        for line in day.read_text("utf-8").splitlines():
            if not line or line[0] in "#>=*":
                continue
            stage.send(line.strip())
            presses, area = stage.desk.face().presses, stage.desk.hand.area
            numbers = number_presses(presses)
            assert len(set(numbers)) == len(numbers), line
            for number, press in zip(numbers, presses, strict=True):
                code = read(press.code)
                if isinstance(code, Code) and code.kind == "button":
                    name = BY_NUMBER[code.number].name
                    assert keys.setdefault((area, name), number) == number, (day.name, line, name)
        stage.close()
    assert len(keys) > 40
    assert {"menu", "put_down", "bit_broken"} <= {name for _, name in keys}


def test_only_buttons_have_a_key_of_their_own():
    assert len(NUMBERS) == len(F_KEYS)
    assert set(F_KEYS.values()) <= set(range(1, 10))
