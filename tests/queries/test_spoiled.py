"""Questions about what was spoiled."""

from dataclasses import replace

from station.queries.spoiled import count_spoiled
from station.shop.acts import Act, good
from station.shop.moves import SHEET, move
from station.shop.words import say
from tests.fakes import FakeView

DAY = "2026-11-25"
WORK = [
    ("1", "2", (move("014", 3, "cut", "spoiled/21", "1"), move(SHEET, 1, "bed/2", "used", "9"))),
    ("2", "2", (move("014", 2, "popping/1", "spoiled/03", "1"),)),
    ("3", "1", (move("014", 4, "popping/1", "spoiled/03", "2"),)),
    ("4", "2", (move("015", 1, "rework", "spoiled/05", "1"),)),
    ("5", "2", (move("014", 5, "popping/1", "trimming", "1"),)),
    ("6", "2", (move("014", 1, "spoiled/03", "rack/014", "1"),)),
]


def shop():
    view = FakeView()
    for n, router, moves in WORK:
        act = Act(id=f"a{n}", kind="pass_on", at=f"{DAY}T1{n}:00:00")
        view.apply(act, replace(good(say("x"), moves=moves), router=router))
    return view


def test_spoiled_by_reason_on_a_router():
    whole = (f"{DAY}T00", f"{DAY}T24")
    assert count_spoiled(shop(), *whole) == {"03": 5, "21": 3, "05": 1}
    assert count_spoiled(shop(), *whole, router="2") == {"21": 3, "03": 1, "05": 1}
    assert count_spoiled(shop(), *whole, router="3") == {}


def test_spoiled_by_reason_in_an_area():
    until = f"{DAY}T15"
    assert count_spoiled(shop(), DAY, until, area="loading") == {"21": 3}
    assert count_spoiled(shop(), DAY, until, area="popping") == {"03": 6}
    assert count_spoiled(shop(), DAY, until, area="popping", router="2") == {"03": 2}
    assert count_spoiled(shop(), DAY, until, area="trimming") == {"05": 1}


def test_spoiled_within_hours():
    assert count_spoiled(shop(), f"{DAY}T12", f"{DAY}T13") == {"03": 6}
