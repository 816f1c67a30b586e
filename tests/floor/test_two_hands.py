"""Two people with the same pile in hand, at two stations: nobody takes what they never saw."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.floor.popping import dialogue as popping
from station.floor.popping.rules import RULES as POPPING
from station.floor.trimming import dialogue as trimming
from station.floor.trimming.rules import RULES as TRIMMING
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.facts import Pile
from station.shop.moves import move
from station.shop.rooms import Input, Number
from station.shop.views import total
from tests.fakes import FakeView
from tests.floor.shop_small import SHUTTLE, SHUTTLES, Player, at, batch, hand, off_bed, small_shop

PAPER = Code("batch", "00412", "A")
SLIP = Code("batch", "00412", "A", 1)


def press(name: str) -> Code:
    return Code("button", BUTTONS[name].number)


def at_popping() -> tuple[Player, Player]:
    """Workers 02 and 03 with the slip of the same 96 shuttles."""
    known = batch(SHUTTLES)
    view = off_bed(small_shop(known), known, 1)
    one = Player(view, POPPING, popping.handle_input, hand("popping"))
    other = hand("popping", worker="03", station="s2")
    return one, Player(view, POPPING, popping.handle_input, other)


def at_trimming() -> tuple[Player, Player]:
    """Workers 02 and 03 with the traveller of the same 96 shuttles."""
    pile = Pile(id="trimming/00412", area="trimming", batch="00412", since=at("09:00"))
    moved = (move(SHUTTLE, 96, "cut", "trimming", "00412"),)
    view = small_shop(batch(SHUTTLES), pile, moves=moved)
    one = Player(view, TRIMMING, trimming.handle_input, hand("trimming"))
    other = hand("trimming", worker="03", station="s2")
    return one, Player(view, TRIMMING, trimming.handle_input, other)


SECOND = [
    (at_popping, "some", "pass_on", "trimming", "worker 02 passed 60 on at 10:42"),
    (at_trimming, "some_trimmed", "on_rack", "rack", "worker 02 put 60 on the rack at 10:42"),
]


@pytest.mark.parametrize(("make", "some", "done", "place", "who"), SECOND)
def test_the_second_is_told_who_was_first_and_what_is_left(make, some, done, place, who):
    one, two = make()
    for player in (one, two):
        player.give(PAPER)
    one.give(press(some), Number("60"), press(done), now="10:42")
    asked = two.give(press(done))
    assert asked.refused
    assert str(asked.said) == f"36 are here, 96 when you took it: {who}"
    assert total(two.view.stock(batch="00412"), place=place) == 60
    two.yes()
    assert total(two.view.stock(batch="00412"), place=place) == 96


@pytest.mark.parametrize(("make", "some", "done", "place", "who"), SECOND)
def test_the_whole_pile_gone_says_who_has_taken_it(make, some, done, place, who):
    one, two = make()
    for player in (one, two):
        player.give(PAPER)
    one.give(press(done), now="10:42")
    refused = two.give(press(done))
    assert refused.refused
    assert total(two.view.stock(batch="00412"), place=place) == 96


def test_a_figure_that_is_too_high_is_refused_with_who_was_first():
    one, two = at_popping()
    for player in (one, two):
        player.give(SLIP, press("some"), Number("60"))
    one.give(press("pass_on"), now="10:42")
    late = two.give(press("pass_on"))
    assert str(late.said) == "36 ST-200 left here, not 60"
    assert str(late.do) == "Count again: worker 02 passed 60 on at 10:42."


def test_pieces_that_came_since_are_told_too():
    _, two = at_trimming()
    two.give(PAPER)
    two.view._move((move(SHUTTLE, 20, "cut", "trimming", "00412"),))
    asked = two.give(press("on_rack"))
    assert str(asked.said) == "116 are here, 96 when you took it: it was changed"
    assert asked.asks == "sure"


def test_what_i_took_myself_is_no_question():
    one, _ = at_popping()
    one.give(SLIP, press("some"), Number("60"), press("pass_on"), SLIP)
    assert one.give(press("pass_on")).tone == "good"


_WORK = st.tuples(
    st.integers(0, 1),
    st.sampled_from(
        [
            (SLIP,),
            (press("pass_on"),),
            (SLIP, press("some"), Number("7"), press("pass_on")),
            (SLIP, press("some"), Number("7")),
        ]
    ),
)


@settings(max_examples=80, deadline=None)
@given(st.lists(_WORK, max_size=25))
@pytest.mark.slow
def test_nobody_takes_unasked_what_they_never_saw(
    work: list[tuple[int, tuple[Input, ...]]],
) -> None:
    players = at_popping()
    for who, given_ in ((w, one) for w, inputs in work for one in inputs):
        player = players[who]
        before, entries = lying(player.view), len(player.view.entries)
        seen = player.hand.work.seen
        if player.handle_input(player.hand, given_, player.view) is None:
            continue
        last = player.view.entries[-1].act.station if entries else ""
        player.give(given_)
        if len(player.view.entries) > entries:
            assert seen == before or last == player.hand.station


def lying(view: FakeView) -> dict[str, int]:
    return {SHUTTLE: total(view.stock(batch="00412"), place="popping")}
