"""Every caution of a work area is behind one touch, below the shop's own words."""

import pytest

from station.shop.cautions import CAUTIONS, list_cautions
from station.shop.faces import Cards
from station.shop.facts import Shop


@pytest.mark.parametrize("area", sorted({c.area for c in CAUTIONS.values()}))
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
