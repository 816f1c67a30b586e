"""Every caution of a work area is behind one touch, below the shop's own words."""

import pytest

from station.shop.cards import button
from station.shop.cautions import CAUTIONS, list_cautions
from station.shop.faces import Cards, Remark
from station.shop.facts import Shop

PAPER = "paper"  # what is printed, and stands on no screen


@pytest.mark.parametrize("area", sorted({c.area for c in CAUTIONS.values()} - {PAPER}))
def test_a_touch_shows_all_of_them(stage, area):
    for line in ("@worker 02", f"@area {area}", "button care"):
        stage.send(line)
    (shown,) = stage.desk.face().main
    assert isinstance(shown, Cards)
    assert shown.title == Shop(id="shop").caution
    assert [(e.big, e.line1) for e in shown.entries] == [
        (c.at, c.line) for c in list_cautions(area)
    ]


def test_the_work_in_hand_goes_on_after_it(stage):
    for line in ("@worker 02", "@area loading", "@router R1", "lot 0931", "button care"):
        stage.send(line)
    before = stage.desk.hand.work
    assert str(stage.send("lot 0931").answer.said) == "Back to the work"
    assert (stage.desk.hand.work, stage.desk.hand.aside.what) == (before, "")


def test_each_says_where_it_comes_from():
    assert all("no source" in c.source or "PUBLISHED" in c.source for c in CAUTIONS.values())


# where each stands without a touch, besides loading's, which go by the moment
AT_WORK = [
    (("@area popping",), ("pop", "pop_dust")),
    (("@area trimming",), ("table", "table_feed", "table_small")),
    (("@area trimming", "traveller 00900"), ("table", "table_feed")),
    (("@area packing",), ("pack", "pack_lift")),
    (("@area packing", "order 3307"), ("pack", "pack_lift")),
    (("@area cart",), ("cart",)),
]


@pytest.mark.parametrize(("lines", "names"), AT_WORK)
def test_the_caution_stands_where_the_hand_is(stage, lines, names):
    for line in ("@worker 04", *lines):
        stage.send(line)
    face = stage.desk.face()
    blocks = (*face.main, *face.middle, *face.side)
    (care,) = (b for b in blocks if isinstance(b, Remark))
    for name in names:
        assert str(CAUTIONS[name].line) in str(care.text)
    assert str(care.text).endswith(Shop(id="shop").caution)
    assert care.code == button("care")


def test_every_room_where_hands_work_has_its_cautions():
    assert {c.area for c in CAUTIONS.values()} == {
        "loading", "popping", "trimming", "packing", "cart", PAPER,
    }  # fmt: skip
