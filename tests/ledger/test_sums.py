"""The sums by hour tell on which router pieces were cut, and why they were spoiled."""

from dataclasses import replace

import pytest

from station.shop.acts import good
from station.shop.moves import move
from station.shop.words import say
from tests.ledger.stations import Station, same
from tests.ledger.toy import act, given, opened
from tests.simulate.shop import MemoryShop

HOUR = "2026-11-25T10"
CUT = good(say("Cut"), moves=(move("014", 9, "cut", "popping/1", "00412"),))
LOST = good(
    say("Lost"),
    moves=(
        move("014", 2, "popping/1", "spoiled/03", "00412"),
        move("014", 1, "popping/1", "spoiled/01", "00412"),
    ),
)
FOUND = good(say("Good after all"), moves=(move("014", 1, "spoiled/03", "rack/014", "00412"),))
ANSWERS = {
    "cut": replace(CUT, router="2"),
    "lost": replace(LOST, router="2"),
    "found": FOUND,
}
ROWS = [
    (HOUR, "cut", "popping", "014", "2", "", 9),
    (HOUR, "popping", "spoiled", "014", "2", "01", 1),
    (HOUR, "popping", "spoiled", "014", "2", "03", 2),
]


def sums(ledger):
    return [tuple(row) for row in ledger.tally(HOUR, HOUR)]


@pytest.fixture
def ledger(tmp_path):
    made = opened(tmp_path, given=given(ANSWERS))
    made.record(act("cut", "given"))
    made.record(act("lost", "given"))
    yield made
    assert made.check() == []
    made.close()


def test_router_and_reason_are_kept(ledger):
    assert sums(ledger) == ROWS


def test_what_was_good_after_all_keeps_its_reason(ledger):
    ledger.record(act("found", "given"))
    assert (HOUR, "spoiled", "rack", "014", "", "03", 1) in sums(ledger)


def test_what_is_taken_back_is_no_row(ledger):
    ledger.undo("lost", act("u", "undo", at="2026-11-25T12:00:00"))
    assert sums(ledger) == ROWS[:1]
    ledger.undo("u", act("v", "undo", at="2026-11-25T13:00:00"))
    assert sums(ledger) == ROWS


def test_the_same_act_gives_the_same_answer_again(ledger):
    assert ledger.record(act("lost", "given")).answer == ANSWERS["lost"]


def test_they_are_shared(tmp_path):
    shop = MemoryShop()
    one, two = (Station(tmp_path / n, n, shop, given=given(ANSWERS)) for n in "12")
    for name in ("cut", "lost"):
        one.ledger.record(act(name, "given"))
    for station in (one, two, one):
        assert station.share() == "shared"
    assert same(one, two)
    assert [row for row in sums(two.ledger) if row[4]] == ROWS
    for station in (one, two):
        assert station.ledger.check() == []
        station.ledger.close()
