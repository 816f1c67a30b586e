"""A few of the small problems of sheets on every test run; ``python -m tests.covers`` has more."""

import pytest

from tests.covers import count_all_wanted, judge
from tests.planning.drawn import draw_small
from tests.planning.exact import count_wanted, find_least
from tests.planning.verify import count_wanted as count_wanted_with_scipy


@pytest.mark.slow
def test_small_problems_cost_the_least_of_all_covers(tmp_path):
    found = [judge(draw_small(seed), tmp_path / "problem.json") for seed in range(1, 41)]
    assert [why for _, why in found] == [""] * 40
    assert {word for word, _ in found} <= {"proven", "least"}


def test_the_table_finds_what_is_worked_out_by_hand():
    # 10 a, 3 a sheet: four sheets of 5 and 7 once, two pieces beyond at 0.5: 28. Or two sheets of
    # 6 a in 9 minutes each, also two beyond: 19.
    dear = {"name": "x", "minutes": 5, "makes": {"a": 3}, "fixed": 7}
    cheap = {"name": "y", "minutes": 9, "makes": {"a": 6}}
    problem = {"files": [dear], "need": {"a": 10}, "over_cost": 0.5}
    assert find_least(problem, {"a": 10}) == pytest.approx(28)
    assert find_least({**problem, "files": [dear, cheap]}, {"a": 10}) == pytest.approx(19)
    # b comes along with every sheet of z, and nobody needs it
    along = {"name": "z", "minutes": 1, "makes": {"a": 5, "b": 4}}
    assert find_least({**problem, "files": [along]}, {"a": 10}) == pytest.approx(2 + 0.5 * 8)


def test_a_certainty_that_is_just_reached_is_enough():
    # one piece of 0.9 with 0.9; three of 0.5 with 0.5 take five: COMPUTED, binomial, in fractions
    assert count_wanted(1, "0.9", "0.9") == 1
    assert count_wanted(3, "0.5", "0.5") == 5
    assert count_wanted(24, "0.97", "0.95") == 26


@pytest.mark.slow
def test_fractions_and_scipy_want_the_same_pieces():
    for seed in range(60):
        problem = draw_small(seed)
        if problem["files"]:
            assert count_all_wanted(problem) == count_wanted_with_scipy(problem), seed
