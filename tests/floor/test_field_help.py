"""A field whose label alone does not say what is meant tells it beside its keypad."""

import pytest

from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import Asked, Hint
from station.shop.facts import Router
from station.shop.fields import fields_by_name
from tests.replay import Stage
from tests.touch import find_touch

UNCLEAR = (
    "rapid_mm_min",
    "accel_mm_s2",
    "accel_z_mm_s2",
    "corner_mm",
    "change_s",
    "pace",
    "extra_s",
)


@pytest.mark.parametrize("name", UNCLEAR)
def test_a_figure_of_a_router_says_what_it_means(name):
    assert str(fields_by_name(Router)[name].about.help).endswith(".")


def test_the_help_stands_beside_the_keypad(tmp_path):
    stage = Stage(tmp_path)
    for code in (button("area_office"), write("worker", "07"), button("list_router")):
        stage.desk.take(code)
    stage.desk.take(find_touch(stage.desk.face(), "Router 1"))
    stage.desk.take(find_touch(stage.desk.face(), "rapid"))
    blocks = stage.desk.face().side
    assert [b.note for b in blocks if isinstance(b, Hint)] == [
        fields_by_name(Router)["rapid_mm_min"].about.help
    ]
    assert any(isinstance(b, Asked) for b in blocks)
    stage.ledger.close()
