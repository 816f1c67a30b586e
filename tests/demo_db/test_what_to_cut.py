"""The demo shop's morning at 10:42 as planning sees it: what stands first, what can wait.

No source but the demo's own story: a card for weaving lacks, and queued frames can wait.
"""

import re

import pytest

from station.bootstrap import load_rules
from station.floor.plan.screen import screen
from station.floor.plan.work import PlanWork
from station.ledger.ledger import Ledger
from station.planning.gather import gather_plan
from station.planning.past import read_past
from station.planning.think import run
from station.shop.rooms import Hand
from tests.demo_db.conftest import NOW
from tests.touch import list_texts, list_touches

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def morning(demo_file):
    """The plan, and all that its screen says."""
    return look(demo_file)


def look(path):
    """The plan of a demo shop, and all that its screen says."""
    ledger, now = Ledger(path, load_rules()), NOW.isoformat()
    asked = gather_plan(ledger.view, now, read_past(ledger.view, now))
    found = run(asked, lambda _stage, _share: None)
    held = Hand(area="plan", worker="01", now=now, work=PlanWork(), thought=found)
    face = screen(held, ledger.view)
    said = [*list_texts(face), *(text for _, texts in list_touches(face) for text in texts)]
    ledger.close()
    return found, said


@pytest.fixture(scope="module")
def plan(morning):
    return morning[0]


def test_the_screen_says_it_with_a_touch_for_each(morning):
    _, said = morning
    for words in (
        "as of 10:42",
        "Blocks 10 orders, 4 of them late: WC-70",
        "504 wanted, 5 on the rack, none under way",
        "CARDS-SET on Router 5, 3 sheets",
        "Release 3, print",
        "Take back 00507",
    ):
        assert words in said, words
    assert said[said.index("For packs ahead and own pushes") + 1] == "200 HC-300"
    assert said[said.index("Order soon") + 1] == "6.5 mm birch plywood"  # its lead time is known
    (long_,) = (text for text in said if "SS-400: " in text)
    days = int(re.search(r"SS-400: (\d+) days", long_)[1])
    assert 23 <= days <= 26
    for part in ("WS-90", "HC-300", "ST-200"):  # each with what it is, why, and what it should be
        at = max(n for n, text in enumerate(said) if text.startswith(f"{part}: "))
        assert re.search(r"used a day · .* days until more is there · 95 % of uses", said[at + 1])
        assert said[at + 2].startswith("Set ")


def test_the_cards_stand_first(plan):
    (first,) = plan.blocked
    assert (first.name, first.wanted, first.there, first.under_way) == ("WC-70", 504, 5, 0)
    assert (len(first.orders), first.late) == (10, 4)
    release = first.release
    assert (release.name, release.router_name, release.sheets) == ("CARDS-SET", "Router 5", 3)
    assert release.certainty >= 0.95


def test_the_frames_can_wait(plan):
    back = {b.batch: b for b in plan.take_back}
    assert back["00507"].name == "FS600-SET"
    assert all(b.days is None or b.days >= 4 for b in back.values())


def test_what_lies_long_is_named_with_its_days(plan):
    days = {o.name: o.days for o in plan.over_full}
    assert 23 <= days["SS-400"] <= 26


def test_marks_below_a_days_use_should_rise(plan):
    marks = {m.name: m for m in plan.marks}
    for name in ("WS-90", "HC-300", "ST-200"):
        assert marks[name].mark < marks[name].use < marks[name].should
    assert {m.name for m in plan.marks[:3]} == {"WS-90", "HC-300", "ST-200"}
