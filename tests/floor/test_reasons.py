"""What a reason does stands in its fact, and touch reaches every active one."""

from dataclasses import replace

import pytest

from station.floor.popping import dialogue as popping
from station.floor.popping.screen import screen as popping_screen
from station.floor.shared.reasons import find_counter, find_usual, list_offered
from station.floor.trimming import dialogue as trimming
from station.floor.trimming.screen import screen as trimming_screen
from station.look import language
from station.shop.cards import BUTTONS
from station.shop.codes import Code, write
from station.shop.faces import Cards, Face
from station.shop.facts import Pile, Reason
from station.shop.first_facts import first_reasons, say_reason
from station.shop.moves import move
from station.shop.rooms import Hand
from station.shop.words import Say
from tests.fakes import FakeView
from tests.floor.shop_small import SHUTTLE, SHUTTLES, at, batch, hand, off_bed, small_shop

KNOT = Reason(id="77", words="knot fell out", use="spoiled")
TURN = Code("button", BUTTONS["next_page"].number)
ROOMS = {"popping": (popping, popping_screen), "trimming": (trimming, trimming_screen)}


def begun(area: str, *reasons: Reason) -> tuple[Hand, FakeView]:
    """A batch of shuttles in hand at an area, its part chosen."""
    if area == "popping":
        view = off_bed(small_shop(batch(SHUTTLES), *reasons), batch(SHUTTLES), 1)
        paper = Code("batch", "00412", "A", 1)
    else:
        pile = Pile(id="trimming/00412", area="trimming", batch="00412", since=at("09:00"))
        moved = (move(SHUTTLE, 96, "cut", "trimming", "00412"),)
        view = small_shop(batch(SHUTTLES), pile, *reasons, moves=moved)
        paper = Code("batch", "00412", "A")
    took = ROOMS[area][0].handle_input(hand(area), paper, view)
    return replace(took.hand, work=replace(took.hand.work, part=SHUTTLE)), view


def codes_on(face: Face) -> set[str]:
    panes = (*face.main, *face.side)
    return {e.code for block in panes if isinstance(block, Cards) for e in block.entries}


def codes_by_touch(area: str, *reasons: Reason) -> set[str]:
    """Every code that cards on the screen send while its pages are turned all the way round."""
    in_hand, view = begun(area, *reasons)
    handle, screen = ROOMS[area][0].handle_input, ROOMS[area][1]
    found, first = set(), codes_on(screen(in_hand, view))
    for _ in range(50):
        found |= codes_on(screen(in_hand, view))
        in_hand = handle(in_hand, TURN, view).hand
        if codes_on(screen(in_hand, view)) == first:
            return found
    raise AssertionError("the pages never come round")


@pytest.mark.parametrize("area", ROOMS)
def test_touch_reaches_every_reason_for_which_an_area_counts(area):
    reached = codes_by_touch(area, KNOT)
    wanted = [r for r in (*first_reasons(), KNOT) if r.use in ("spoiled", "rework")]
    assert {write("reason", r.id) for r in wanted if r.is_offered(area)} <= reached


@pytest.mark.parametrize(("area", "button"), [("popping", "missing"), ("trimming", "lost")])
def test_touch_reaches_what_is_missing(area, button):
    assert write("button", BUTTONS[button].number) in codes_by_touch(area)


@pytest.mark.parametrize("area", ROOMS)
def test_a_retired_reason_is_on_no_screen(area):
    retired = replace(KNOT, active=False)
    assert write("reason", KNOT.id) not in codes_by_touch(area, retired)


def test_over_trimmed_cannot_come_about_before_trimming():
    assert write("reason", "03") not in codes_by_touch("popping")


OWN = [
    ("popping", "spoil", "spoiled/01"),
    ("popping", "uncut", "rework/21"),
    ("popping", "missing", "missing"),
    ("trimming", "overtrimmed", "spoiled/03"),
    ("trimming", "rework", "rework/22"),
    ("trimming", "lost", "missing"),
]


@pytest.mark.parametrize(("area", "button", "counter"), OWN)
def test_a_rooms_own_button_counts_one(area, button, counter):
    in_hand, view = begun(area)
    press = Code("button", BUTTONS[button].number)
    took = ROOMS[area][0].handle_input(in_hand, press, view)
    assert took.hand.work.counts == {SHUTTLE: {counter: 1}}


def test_a_rooms_own_button_counts_what_the_facts_call_usual_there():
    view = small_shop()
    assert find_usual(view, "popping", "rework") == "rework/21"
    assert find_usual(view, "trimming", "rework") == "rework/22"
    assert find_usual(view, "trimming", "spoiled") == "spoiled/03"
    usual = [replace(r, usual_at=()) for r in first_reasons() if r.use == "rework"]
    burnt = Reason(id="29", words="burnt", use="rework", usual_at=("trimming",))
    assert find_usual(small_shop(*usual, burnt), "trimming", "rework") == "rework/29"


def test_where_a_shop_has_no_reason_of_a_use_the_use_itself_is_counted():
    assert find_usual(FakeView.of(), "popping", "rework") == "rework"
    assert find_counter(hand("popping"), FakeView.of()) == "spoiled"
    assert list_offered(FakeView.of(), "popping") == ()


def name_cards(area: str, *reasons: Reason) -> list[Say | str]:
    in_hand, view = begun(area, *reasons)
    face = ROOMS[area][1](in_hand, view)
    panes = (*face.main, *face.side)
    return [e.big for block in panes if isinstance(block, Cards) for e in block.entries]


def test_a_first_reason_is_said_in_the_language_in_use_one_of_the_shop_in_its_own_words():
    torn = first_reasons()[0]
    assert Say(torn.words) in name_cards("popping", torn)
    assert say_reason(replace(KNOT, words="chipped edge")) == "chipped edge", "of another number"
    assert "torn off" in name_cards("popping", replace(torn, words="torn off"))


@pytest.mark.usefixtures("qapp")
def test_first_reasons_have_their_words_in_each_language():
    try:
        assert language.set_language("de")
        assert language.translate(say_reason(first_reasons()[0])) == "am Steg ausgerissen"
        assert all(language.translate(say_reason(r)) != r.words for r in first_reasons())
    finally:
        language.set_language("")
