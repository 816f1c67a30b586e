"""Pieces to cut so that enough are good."""

from fractions import Fraction
from math import comb

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import nbdtr

from station.planning.chances import (
    Chance,
    count_to_cut,
    find_chance_enough,
    know_chance,
    learn_chance,
)
from station.planning.messages import Passage


def enough_by_fractions(cut, wanted, good, lost):
    """The beta-binomial distribution summed in whole numbers: `good`, `lost` are whole."""

    def rising(x, n):
        value = 1
        for k in range(n):
            value *= x + k
        return value

    whole = rising(good + lost, cut)
    return sum(
        Fraction(comb(cut, k) * rising(good, cut - k) * rising(lost, k), whole)
        for k in range(cut - wanted + 1)
    )


@pytest.mark.parametrize(("cut", "wanted", "good", "lost"), [
    (10, 8, 20, 2), (30, 28, 97, 3), (5, 5, 1, 1), (40, 30, 9, 4), (7, 0, 3, 3),
])  # fmt: skip
def test_a_chance_that_is_not_quite_known(cut, wanted, good, lost):
    exact = enough_by_fractions(cut, wanted, good, lost)
    found = find_chance_enough(cut, wanted, Chance(good, lost))
    assert found == pytest.approx(float(exact), abs=1e-9)


CHANCES = st.builds(Chance, st.floats(5, 5000), st.floats(0.5, 200))


@settings(max_examples=100, deadline=None)
@given(st.integers(0, 300), CHANCES, st.sampled_from((0.8, 0.9, 0.95)))
@pytest.mark.slow
def test_the_least_count_that_is_enough(wanted, chance, certainty):
    cut = count_to_cut(wanted, chance, certainty)
    assert cut >= wanted
    assert find_chance_enough(cut, wanted, chance) >= certainty - 1e-9
    if cut > wanted:
        assert find_chance_enough(cut - 1, wanted, chance) < certainty
    assert count_to_cut(wanted + 1, chance, certainty) >= cut


def test_a_certainty_that_leaves_next_to_nothing_is_met():
    """Eight of 129 are good but for 8e-13, of 128 but for 1.1e-12 (COMPUTED, by fractions)."""
    assert count_to_cut(8, know_chance(0.30895851525671314), 1 - 1e-12) == 129


def test_the_less_is_known_the_more_is_cut():
    shop = Passage(good=9700, lost=300)
    known = learn_chance(Passage(good=9700, lost=300), shop)
    new = learn_chance(Passage(), shop)
    assert known
    assert new
    assert known.loss == pytest.approx(new.loss, rel=0.05)
    assert count_to_cut(500, new, 0.95) > count_to_cut(500, known, 0.95) > 500


def test_a_shop_without_history_cannot_tell_yet():
    assert learn_chance(Passage(good=20), Passage(good=20)) is None
    assert count_to_cut(500, None, 0.95) == 500


def test_nobody_can_say_that_nothing_is_ever_lost():
    chance = learn_chance(Passage(good=60), Passage(good=60))
    assert chance
    assert 0 < chance.loss < 0.02


@pytest.mark.parametrize(
    ("wanted", "good", "certainty"),
    [
        (100_000, 0.97, 0.999),
        (3_000_000, 0.3, 0.999),
        (9_999_999, 0.985, 0.5),
        (40_000, 0.6, 0.01),
    ],
)
def test_very_many_pieces_are_counted_as_few_are(wanted, good, certainty):
    # COMPUTED: scipy's negative binomial; so many may be spoiled before the last good one
    spoiled = count_to_cut(wanted, know_chance(good), certainty) - wanted
    assert nbdtr(spoiled - 1, wanted, good) < certainty <= nbdtr(spoiled, wanted, good)
