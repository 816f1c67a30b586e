"""Trimming: stories, refusals and any input at all, at the level of rules."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.floor.trimming.dialogue import handle_input
from station.floor.trimming.lists import list_waiting, list_wanted
from station.floor.trimming.rules import RULES
from station.floor.trimming.screen import screen
from station.floor.trimming.tabs import name_tab_places
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.faces import Listing
from station.shop.facts import Batch, Concern, Order, Part, Pile, Shape
from station.shop.moves import SHEET, move
from station.shop.rooms import Input, Number
from station.shop.views import total
from station.shop.words import say
from tests.fakes import FakeView
from tests.floor.shop_small import (
    COMB,
    COMBS,
    FRAME,
    FRAMES,
    SHUTTLE,
    SHUTTLES,
    Player,
    at,
    batch,
    hand,
    small_shop,
)
from tests.touch import list_texts, touch

PAPER = Code("batch", "00412", "A")


def press(name: str) -> Code:
    return Code("button", BUTTONS[name].number)


def trimming(cut_file: str, part: str, count: int, *facts: Order, **fields: object) -> Player:
    known = replace(batch(cut_file), **fields)  # type: ignore[arg-type]
    pile = Pile(id="trimming/00412", area="trimming", batch="00412", since=at("09:00"))
    moved = (move(part, count, "cut", "trimming", "00412"),)
    view = small_shop(known, pile, *facts, moves=moved)
    return Player(view, RULES, handle_input, hand("trimming"))


def lie(view: FakeView, place: str, id: str = "00412") -> int:
    return total(view.stock(batch=id), place=place)


@pytest.mark.parametrize(
    ("counted", "label"),
    [
        ((), "To the rack: 381 good"),
        ((("03", "2"),), "To the rack: 379 good, 2 spoiled"),
        ((("03", "2"), ("22", "1")), "To the rack: 378 good, 3 not good"),
    ],
)
def test_the_button_has_room_for_what_it_does(
    counted: tuple[tuple[str, str], ...], label: str
) -> None:
    p = trimming(SHUTTLES, SHUTTLE, 381)
    p.give(PAPER)
    for reason, number in counted:
        p.give(Code("reason", reason), Number(number))
    assert str(screen(p.hand, p.view).presses[0].label) == label


def test_an_ordinary_batch() -> None:  # scenario 1
    p = trimming(SHUTTLES, SHUTTLE, 381)
    p.give(PAPER, Code("reason", "03"), Number("2"), press("on_rack"))
    assert (lie(p.view, "rack"), lie(p.view, "spoiled"), lie(p.view, "trimming")) == (379, 2, 0)
    pile = p.view.get(Pile, "trimming/00412")
    assert pile
    assert pile.done


def test_rework_twice_and_no_third_time() -> None:  # scenario 7
    p = trimming(SHUTTLES, SHUTTLE, 96)
    p.give(PAPER, press("rework"), Number("5"), press("overtrimmed"), Number("2"))
    child = p.give(press("on_rack")).prints[0][1]
    assert (lie(p.view, "rack"), lie(p.view, "spoiled")) == (89, 2)
    assert lie(p.view, "rework", child) == 5
    paper = Code("batch", child, "A")
    p.give(paper, press("rework"), press("on_rack"))
    made = p.view.get(Batch, child)
    assert made
    assert made.tries == 2
    assert (lie(p.view, "rack", child), lie(p.view, "rework", child)) == (4, 1)
    third = p.give(paper, press("rework"), press("on_rack"))
    assert third.refused
    assert "tried twice" in str(third.said)
    p.give(press("fewer"), press("overtrimmed"), press("on_rack"))
    assert (lie(p.view, "rework", child), lie(p.view, "spoiled", child)) == (0, 1)


def test_a_cancelled_order_leaves_free_stock() -> None:  # scenario 16
    order = Order(id="3306", due=at("15:00"), state="cancelled", lines=())
    p = trimming(FRAMES, FRAME, 40, order, order="3306")
    p.give(PAPER, press("overtrimmed"), Number("2"))
    answer = p.give(press("on_rack"))
    assert answer.tone == "attention"
    assert "3306 is cancelled" in str(answer.said)
    assert lie(p.view, "rack") == 38


@pytest.mark.parametrize("state", ["packed", "shipped", "cancelled"])
def test_a_batch_whose_order_takes_no_more_is_for_the_rack_before_and_after(state) -> None:
    order = Order(id="3306", due=at("15:00"), state=state, lines=())
    p = trimming(FRAMES, FRAME, 40, order, order="3306")
    assert "for order 3306" not in {str(text) for text in list_texts(screen(p.hand, p.view))}
    p.give(PAPER)
    shown = {str(text) for text in list_texts(screen(p.hand, p.view))}
    assert {"To the rack: 40 good", "Goes under rack D 01"} <= shown
    told = "is cancelled" if state == "cancelled" else "takes no more"
    answer = p.give(press("on_rack"))
    assert str(answer.said) == f"Order 3306 {told}: 40 free on the rack"
    assert lie(p.view, "rack") == 40


def test_a_batch_for_an_order_goes_to_packing() -> None:
    order = Order(id="3306", due=at("15:00"), lines=())
    p = trimming(FRAMES, FRAME, 40, order, order="3306")
    p.give(PAPER, press("on_rack"))
    assert {h.place for h in p.view.stock(batch="00412")} == {"packing/3306"}


def test_some_go_on_and_the_rest_stays() -> None:
    p = trimming(COMBS, COMB, 24)
    p.give(PAPER, press("some_trimmed"), Number("10"), press("on_rack"))
    assert (lie(p.view, "rack"), lie(p.view, "trimming")) == (10, 14)


def test_what_is_outside_the_limits_keeps_the_batch_back_until_it_is_right_twice() -> None:
    p = trimming(COMBS, COMB, 24)
    assert p.give(PAPER, Number("300.1")).tone == "good"
    assert p.give("A along", Number("300.4")).tone == "attention"
    worry = p.view.shelf(Concern, "open")[0]
    refused = p.give(press("on_rack"))
    assert str(refused.said).startswith("Batch 00412 waits: HC-300 A along: 300.40 mm")
    assert lie(p.view, "rack") == 0
    assert str(p.give(Number("300.1")).do).startswith("Once more the same")
    assert p.give(press("on_rack")).refused
    p.give(Number("300.0"))
    settled = p.view.get(Concern, worry.id)
    assert settled is not None
    assert settled.settled == "measured again"
    assert not p.give(press("on_rack")).refused
    assert lie(p.view, "rack") == 24


def test_one_more_outside_begins_anew() -> None:
    p = trimming(COMBS, COMB, 24)
    p.give(PAPER, "A along", *(Number(n) for n in ("300.4", "300.1", "300.5", "300.1")))
    assert p.give(press("on_rack")).refused
    assert len(p.view.shelf(Concern, "open")) == 1
    p.give(Number("300.2"))
    assert not p.give(press("on_rack")).refused


def test_what_differs_to_the_eye_keeps_the_batch_back_too() -> None:
    p = trimming(COMBS, COMB, 24)
    assert p.give(PAPER, press("master_differs")).tone == "attention"
    assert p.give(press("on_rack")).refused
    p.hand = p.hand.empty()
    taken = p.give(PAPER)
    assert str(taken.said) == "Batch 00412 in hand: it waits"
    p.give(press("master_agrees"))
    assert str(p.give(press("master_agrees")).said).startswith("The same again")
    assert p.give(press("on_rack")).refused
    p.give(press("master_agrees"), now="10:30")
    assert not p.give(press("on_rack")).refused


CHILD = Code("batch", "00501", "A")


def in_doubt(*places: str, part: str = COMB) -> Player:
    """A batch in doubt of which four pieces were split off and lie at these places."""
    child = batch(COMBS, "00501", parent="00412", role="split", sheets=0)
    p = trimming(COMBS, COMB, 24)
    p.view.facts[child.key] = child
    p.view._move(tuple(move(part, 4, "cut", place, "00501") for place in places))
    p.give(PAPER, "A along", Number("300.4"))
    return p


def test_one_piece_of_the_parent_settles_nothing_for_what_was_split_off() -> None:
    p = in_doubt("trimming")
    assert "with batch 00412" not in str(p.give(CHILD).said)
    assert str(p.give(CHILD).said).startswith("Batch 00412 waits")
    assert p.hand.subject == ""  # no number goes to the other batch by mistake
    answer = p.give(PAPER, Number("300.1"), Number("300"))
    assert str(answer.do) == (
        "Right twice: batch 00412 may go on. Measure 00501 too, each for itself."
    )
    assert not p.give(press("on_rack")).refused
    assert str(p.give(CHILD).said) == "Batch 00501 in hand: it waits"
    assert p.give(press("on_rack")).refused
    (look,) = p.view.shelf(Concern, "open")
    assert (look.about, look.choices) == ("batch/00501", ("let it go on", "keep it"))
    p.give("A along", Number("300.1"), Number("300"))
    assert not p.view.shelf(Concern, "open")
    assert not p.give(press("on_rack")).refused
    assert lie(p.view, "rack", "00501") == 4


@pytest.mark.parametrize(
    ("places", "part", "waits"),
    [
        (("rework",), COMB, True),
        ((f"rack/{COMB}",), COMB, True),
        (("missing",), COMB, True),
        (("shipped",), COMB, False),
        (("trimming",), SHUTTLE, False),  # none of what was wrong
        ((), COMB, False),
    ],
)
def test_a_heap_shows_for_itself_where_it_has_such_pieces(
    places: tuple[str, ...], part: str, *, waits: bool
) -> None:
    p = in_doubt(*places, part=part)
    p.give(Number("300.1"), Number("300"))
    heap = p.view.get(Batch, "00501")
    assert heap is not None
    assert bool(heap.doubts) == waits


def test_a_reading_stays_on_its_size_until_it_is_settled_then_the_next_is_asked() -> None:
    p = trimming(COMBS, COMB, 24)
    p.give(PAPER, "A along", Number("300.4"))
    assert p.hand.work.size == 0
    p.give(Number("300.1"), Number("300.2"))
    assert p.hand.work.size == 0  # it has one size only


@pytest.mark.parametrize("typed", ["80.9", "9000", "0", "36", "298.9.1"])
def test_what_cannot_be_that_size_is_asked_about_and_never_booked(typed: str) -> None:
    p = trimming(COMBS, COMB, 24)
    answer = p.give(PAPER, "A along", Number(typed))
    assert answer.refused
    assert p.view.entries == []
    assert "A along" in str(answer.said) or "no reading" in str(answer.said)


def test_a_count_is_never_taken_for_a_reading() -> None:
    p = trimming(COMBS, COMB, 24)
    assert str(p.give(PAPER, Number("300")).said) == "How many of what?"
    p.give("A along", press("overtrimmed"), Number("3"))
    assert p.hand.work.counts == {COMB: {"spoiled/03": 3}}
    assert p.view.entries == []


def test_refusals_say_why() -> None:
    cases: tuple[tuple[dict[str, object], tuple[Input, ...], str], ...] = (
        ({"copy": "B"}, (PAPER,), "Void: see copy B"),
        ({"holds": ("the lot is in doubt",)}, (PAPER,), "the lot is in doubt"),
        ({}, (Code("batch", "09999", "A"),), "no batch 09999"),
        ({}, (PAPER, press("lost"), Number("25")), "At most 24"),
        ({}, (PAPER, Code("part", FRAME)), "FS-600 is not in batch 00412"),
    )
    for fields, inputs, words in cases:
        p = trimming(COMBS, COMB, 24, **fields)
        answer = p.give(*inputs)
        assert answer.refused
        assert words in str(answer.said)
        assert p.view.entries == []


def test_trimmed_already_says_when_and_by_whom() -> None:
    p = trimming(COMBS, COMB, 24)
    p.give(PAPER, press("on_rack"), now="11:26")
    assert p.handle_input(p.hand, PAPER, p.view) is None  # free hands: a question
    p.hand = replace(p.hand, subject="00999")
    assert "Trimmed at 11:26 by worker 02: 24 good" in str(p.give(PAPER).said)


_ANY = st.one_of(
    st.sampled_from([press(n) for n in BUTTONS]),
    st.sampled_from([PAPER, Code("batch", "00501", "A"), Code("part", COMB)]),
    st.sampled_from([Code("reason", r) for r in ("03", "22", "31", "99")]),
    st.sampled_from([Number(n) for n in ("0", "1", "24", "999999", "-1", "300.1", "x")]),
)


@settings(max_examples=60, deadline=None)
@given(st.lists(_ANY, max_size=25))
@pytest.mark.slow
def test_any_inputs_keep_every_piece(inputs: list[Input]) -> None:
    p = trimming(COMBS, COMB, 24)
    for one in inputs:
        if handle_input(p.hand, one, p.view) is not None:
            p.give(one)
        screen(p.hand, p.view)
    books = ("cut", "store", "bought")
    assert all(n >= 0 for (place, _, _), n in p.view.pieces.items() if place not in books)
    made = (n for (place, _, part), n in p.view.pieces.items() if place != "cut" and part != SHEET)
    assert sum(made) == 24


TABS = [
    (((50.0, 0.0), (50.0, 40.0)), "top edge at 50 mm and bottom edge at 50 mm"),
    (((10.0, 40.0), (90.0, 40.0)), "top edge at 10 and 90 mm"),
    (((0.0, 12.0), (100.0, 30.0)), "left edge at 12 mm and right edge at 30 mm"),
    ((), ""),
]


@pytest.mark.parametrize(("tabs", "words"), TABS)
def test_where_the_tabs_were_in_words(tabs: tuple[tuple[float, float], ...], words: str) -> None:
    shape = Shape(outline=((0.0, 0.0), (100.0, 0.0), (100.0, 40.0), (0.0, 40.0)), tabs=tabs)
    assert str(name_tab_places(shape)) == words


def test_the_rack_is_looked_at_in_a_wide_shop_too() -> None:
    parts = [Part(id=f"{n:03d}", name=f"P-{n}", words="x", rack=f"{n:03d}", mark=4 * (n > 290))
             for n in range(1, 301)]  # fmt: skip
    listing = list_wanted(FakeView.of(*parts))
    assert str(listing.title) == "The rack is below its minimum: 5 more"
    assert [str(cells[0].text) for cells, _ in listing.rows] == [f"P-{n}" for n in range(291, 296)]


def test_every_pile_is_counted_in_a_wide_shop_too() -> None:
    numbers = [f"{n}" for n in range(10001, 10401)]
    piles = (Pile(id=f"trimming/{n}", area="trimming", batch=n, since=n) for n in numbers)
    view = FakeView.of(*piles, *(Batch(id=n, cut_file=COMBS, revision="C") for n in numbers))
    assert str(list_waiting(view, "trimming", say("Waiting"), 6).title) == "Waiting: 394 more"


def test_with_nothing_in_hand_the_screen_says_what_the_rack_lacks() -> None:
    p = trimming(COMBS, COMB, 24)
    p.give(PAPER, press("some_trimmed"), Number("10"), press("on_rack"))
    lists = {str(b.title): b for b in screen(p.hand, p.view).side if isinstance(b, Listing)}
    low = [
        [str(c.text) for c in cells] for cells, _ in lists["The rack is below its minimum"].rows
    ]
    assert ["HC-300", "C 14", "10 of 20"] in low
    put = [[str(c.text) for c in cells] for cells, _ in lists["On the rack today"].rows]
    assert put == [["HC-300", "10 good"]]


def test_a_number_that_was_refused_is_put_right_before_the_heap_goes_on() -> None:
    p = trimming(COMBS, COMB, 24)
    p.give(PAPER, press("lost"), Number("999"))
    refused = p.give(press("on_rack"))
    assert str(refused.said) == "999 was not taken"
    assert p.view.entries == []
    p.give(Number("2"), press("on_rack"))
    assert lie(p.view, "rack") == 22


def test_a_reading_that_was_asked_about_is_settled_before_the_heap_goes_on() -> None:
    p = trimming(COMBS, COMB, 24)
    p.give(PAPER, "A along", Number("600.9"))
    assert str(p.give(press("on_rack")).said) == "600.9 was not taken"
    p.give(Number("300.0"), press("on_rack"))
    assert lie(p.view, "rack") == 24


def test_the_screen_says_that_a_batch_in_doubt_waits() -> None:
    p = trimming(COMBS, COMB, 24)
    p.give(PAPER, press("master_differs"))
    shown = list(list_texts(screen(p.hand, p.view)))
    assert "it waits: HC-300 differs from its master" in shown
    assert "Not yet: it waits" in shown
    assert "To the rack: 24 good" not in shown


def test_what_is_touched_while_a_size_is_measured_is_the_size_that_it_says() -> None:
    p = trimming(COMBS, COMB, 24)
    comb = p.view.get(Part, COMB)
    assert comb
    along = comb.sizes[0]
    p.view.facts[comb.key] = replace(comb, sizes=(along, replace(along, name="B across")))
    p.give(PAPER, "A along", Number("300.4"))  # outside: it is asked for until it is settled
    shown = list(list_texts(screen(p.hand, p.view)))
    assert "Measure A along: 299.7 to 300.3 mm" in shown
    answer = p.give(touch(screen(p.hand, p.view), "or measure B across now"))
    assert str(answer.said).startswith("HC-300: B across")


def test_the_card_under_its_master_puts_a_part_on_the_rack() -> None:
    p = trimming(COMBS, COMB, 24)
    wrong = p.give(PAPER, Code("rack", SHUTTLE))
    assert (wrong.tone, str(wrong.said)) == ("stop", "Rack A 03 is the place of ST-200")
    assert str(wrong.do) == "In hand: 24 HC-300."
    assert lie(p.view, "rack") == 0
    assert p.give(Code("reason", "03"), Code("rack", COMB)).tone == "attention"
    assert (lie(p.view, "rack"), lie(p.view, "spoiled"), p.hand.subject) == (23, 1, "")


def test_of_two_parts_the_card_puts_its_own_on_the_rack_alone() -> None:
    p = trimming(COMBS, COMB, 24)
    p.view.pieces["trimming", "00412", SHUTTLE] = 5
    p.give(PAPER, Code("rack", SHUTTLE))
    assert (lie(p.view, "rack"), lie(p.view, "trimming"), p.hand.subject) == (5, 24, "00412")
    p.give(Code("rack", COMB))
    assert (lie(p.view, "rack"), lie(p.view, "trimming"), p.hand.subject) == (29, 0, "")


def test_the_card_of_another_part_than_the_chosen_one_is_refused_by_name() -> None:
    p = trimming(COMBS, COMB, 24)
    p.view.pieces["trimming", "00412", SHUTTLE] = 5
    answer = p.give(PAPER, Code("part", COMB), Code("rack", SHUTTLE))
    assert (answer.tone, str(answer.said)) == ("stop", "Rack A 03 is the place of ST-200")
    assert "HC-300 is chosen" in str(answer.do)
    assert lie(p.view, "rack") == 0


def test_what_is_cut_for_an_order_goes_to_no_rack_place() -> None:
    order = Order(id="3306", lines=(), due=at("14:00"))
    p = trimming(COMBS, COMB, 24, order, order="3306")
    told = p.give(PAPER, Code("rack", COMB))
    assert (told.tone, str(told.said)) == ("stop", "Batch 00412 is for order 3306")
    assert lie(p.view, "trimming") == 24
