"""Counting by exception, as popping and trimming share it."""

import pytest

from station.floor.shared import counting, counting_screen
from station.floor.shared.counting import CountingHand, CountingWork
from station.shop.facts import Part, Reason
from station.shop.moves import Held, move
from station.shop.rooms import Hand, Number
from tests.fakes import FakeView

VIEW = FakeView.of(
    Part(id="014", name="HC-300", words="Heddle comb 300"),
    Reason(id="01", words="torn", use="spoiled"),
    Reason(id="22", words="rough edge", use="rework"),
    Reason(id="32", words="hold-down", use="stop"),
)
PARTS = {"014": 24, "021": 96}
HAND: CountingHand = Hand(area="popping", subject="00412", work=CountingWork())


def count(*steps: tuple[str, int]) -> CountingHand:
    """The hand after so many of each counter were counted on part 014."""
    hand = counting.set_part(HAND, "014")
    for counter, n in steps:
        hand = counting.count_pieces(hand, counter, PARTS, VIEW, by=n).hand
    return hand


def test_all_is_good_but_what_is_said():
    hand = count(("spoiled/01", 2), ("rework/22", 3), ("missing", 1))
    comb, shuttle = counting.tally_parts(hand, PARTS)
    assert comb == ("014", 24, 18, 2, 1, 3)
    assert (shuttle.good, comb.stays) == (96, 0)
    assert str(counting_screen.sum_up((comb, shuttle))) == (
        "114 good, 2 spoiled, 1 missing and 3 rework"
    )
    assert str(counting_screen.sum_up_in_short((comb, shuttle))) == "114 good, 6 not good"


@pytest.mark.parametrize(("by", "said"), [(23, "At most 22"), (-3, "Nothing of it is counted")])
def test_no_more_is_counted_than_is_here(by, said):
    hand = count(("missing", 2))
    taken = counting.count_pieces(hand, "spoiled/01", PARTS, VIEW, by=by)
    assert taken.hand.work.counts == hand.work.counts
    assert said in str(taken.answer.said)


def test_a_refusal_leaves_no_other_counter_waiting_for_the_next_number():
    full = count(("spoiled/01", 24))
    refused = counting.count_pieces(full, "missing", PARTS, VIEW, by=1)
    assert refused.answer.refused
    number = counting.take_number(refused.hand, Number("1"), PARTS, VIEW)
    assert str(number.answer.said) == "How many of what?"
    assert number.hand.work.counts == {"014": {"spoiled/01": 24}}
    again = counting.take_number(full, Number("25"), PARTS, VIEW)
    assert counting.take_number(again.hand, Number("23"), PARTS, VIEW).hand.work.counts == {
        "014": {"spoiled/01": 23}
    }


def test_what_was_counted_is_told_to_whoever_comes():
    assert not HAND.work.tell_counted(VIEW)
    hand = count(("spoiled/01", 2), ("missing", 1))
    assert str(hand.work.tell_counted(VIEW)) == "2 × torn; 1 × missing"
    some = counting.ask_some(hand, PARTS, VIEW).hand
    some = counting.take_number(some, Number("10"), PARTS, VIEW).hand
    assert str(some.work.tell_counted(VIEW)) == "2 × torn; 1 × missing and 10 HC-300 go on"


def test_a_number_sets_the_last_counter_or_how_many_go_on():
    hand = counting.take_number(count(("missing", 2)), Number("5"), PARTS, VIEW).hand
    assert hand.work.counts == {"014": {"missing": 5}}
    some = counting.ask_some(hand, PARTS, VIEW).hand
    assert counting_screen.build_question(some)
    assert "left here" in str(counting.take_number(some, Number("20"), PARTS, VIEW).answer.said)
    some = counting.take_number(some, Number("10"), PARTS, VIEW).hand
    comb, shuttle = counting.tally_parts(some, PARTS)
    assert (comb.good, comb.stays, shuttle.good, shuttle.stays) == (10, 9, 0, 96)
    assert counting_screen.build_question(some) == ()


def test_a_reason_counts_one_but_only_of_its_use():
    hand = counting.count_reason(count(), "22", PARTS, VIEW)
    assert hand
    assert hand.hand.work.counts == {"014": {"rework/22": 1}}
    assert str(hand.answer.said) == "HC-300: 1 to rework, rough edge"
    assert counting.count_reason(count(), "32", PARTS, VIEW) is None


def test_a_part_that_is_not_here_is_refused():
    taken = counting.choose_part(HAND, "099", PARTS, VIEW)
    assert str(taken.answer.said) == "099 is not in batch 00412"
    assert counting.count_pieces(HAND, "missing", PARTS, VIEW, by=1).hand == HAND


def test_marks_go_with_the_pieces_that_are_counted():
    hand = counting.set_marks(count(("spoiled/01", 2)), ((1.0, 2.0), (3.0, 4.0)))
    hand = counting.count_pieces(hand, "spoiled/01", PARTS, VIEW, by=-1).hand
    assert hand.work.marks == {"014": {"spoiled/01": ((1.0, 2.0),)}}
    assert str(counting.name_faults(hand.work.counts, VIEW)) == "1 × torn"


def test_figures_say_every_number_also_of_what_is_gone():
    hand = count(("missing", 2))
    assert counting.list_figures(hand, PARTS) == {
        "014": {"good": 22, "missing": 2},
        "021": {"good": 96},
    }
    assert counting.list_figures(hand, {"021": 96})["014"] == {"missing": 2}


def test_pieces_are_drawn_spot_by_spot_and_go_on_where_the_last_draw_ended():
    lying = [
        Held("popping/1", "00412", "014", 3),
        Held("popping/1", "00412", "021", 9),
        Held("popping/2", "00412", "014", 4),
    ]
    assert counting.draw_pieces(lying, "014", 5, "trimming") == (
        move("014", 3, "popping/1", "trimming", "00412"),
        move("014", 2, "popping/2", "trimming", "00412"),
    )
    assert counting.draw_pieces(lying, "014", 9, "rework", "00413") == (
        move("014", 2, "popping/2", "rework", "00412", "00413"),
    )
    assert lying == [Held("popping/1", "00412", "021", 9)]
