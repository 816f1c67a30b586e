"""Forecasts of use, and the marks that follow."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.planning.demand import (
    Choice,
    Forecast,
    Span,
    find_lack,
    find_service,
    forecast_sba,
    forecast_use,
    share_marks,
    suggest_mark,
)


def test_steady_use_is_its_mean():
    found = forecast_use([10, 12, 9, 11, 10, 8, 12, 10, 9, 9])
    assert found
    assert (found.method, found.mean) == ("mean", 10.0)


def test_use_that_has_died_away_falls_from_day_to_day():
    busy = [6, 0, 5, 0, 7, 0, 6, 0, 5, 0, 6]
    found, later = forecast_use([*busy, *[0] * 12]), forecast_use([*busy, *[0] * 20])
    assert found
    assert later
    assert (found.method, later.method) == ("TSB", "TSB")
    assert later.mean < found.mean < forecast_sba(busy)


@pytest.mark.parametrize("use", [[], [5] * 9, [0] * 20 + [40]])
def test_too_little_cannot_be_told_yet(use):
    assert forecast_use(use) is None


def test_a_part_that_was_never_used_is_not_used():
    assert forecast_use([0] * 20) == Forecast(0.0, 0.0, "mean")


@given(st.lists(st.integers(0, 50), min_size=12, max_size=40), st.integers(1, 5))
@pytest.mark.slow
def test_more_days_and_more_certainty_never_lower_a_mark(use, days):
    if found := forecast_use(use):
        mark = suggest_mark(found, Span(days), 0.95)
        assert mark >= int(found.mean * days)
        assert suggest_mark(found, Span(days + 1), 0.95) >= mark
        assert suggest_mark(found, Span(days), 0.99) >= mark
        assert suggest_mark(found, Span(days, 0.5), 0.95) >= mark


@pytest.mark.parametrize(("mean", "variance"), [(4, 4), (30, 90), (1900, 40_000), (2100, 40_000)])
def test_each_piece_more_leaves_fewer_that_lack(mean, variance):
    lacks = [find_lack(mean, variance, n) for n in range(0, 3 * mean, max(1, mean // 20))]
    assert lacks[0] == pytest.approx(mean, rel=1e-6)  # with none there all of them lack
    assert all(more >= less for more, less in pairwise(lacks))
    assert lacks[-1] < 0.01
    assert find_lack(mean, variance, 100 * mean) == pytest.approx(0, abs=1e-9)


def test_many_pieces_and_few_lack_alike_where_one_way_of_telling_ends():
    few, many = find_lack(1999, 40_000, 2100) / 1999, find_lack(2001, 40_000, 2102) / 2001
    assert few == pytest.approx(many, abs=2e-3)


def test_all_parts_together_last_as_often_as_wanted_at_the_least_router_time():
    # a is used every day, 20 to 22; b on one day in ten, 200: for b's 95 in a hundred 200 would
    # have to lie there for a tenth of the uses. All uses: 1.1 a day; b's share of those is 0.09.
    often = Choice(forecast_use((20, 22) * 20), 1.0, 1.0)
    rare = Choice(forecast_use((*(0,) * 9, 200) * 4), 0.1, 1.0)
    marks = share_marks({"a": often, "b": rare}, Span(1.0), 0.95)
    alone = {
        "a": suggest_mark(often.forecast, Span(1.0), 0.95),
        "b": suggest_mark(rare.forecast, Span(1.0), 0.95),
    }
    assert marks["a"] >= alone["a"]
    assert marks["b"] < alone["b"]
    assert sum(marks.values()) < sum(alone.values())


def test_the_service_that_marks_come_to_gives_as_much_on_the_rack_again():
    choices = {n: Choice(forecast_use((8, 14, n, 2) * 8), 1.0, 1.0) for n in (0, 10, 20)}
    marks = share_marks(choices, Span(2.0), 0.9)
    service = find_service(choices, marks, Span(2.0))
    assert 0.85 <= service <= 0.95
    assert abs(sum(share_marks(choices, Span(2.0), service).values()) - sum(marks.values())) < 15
    assert find_service(choices, dict.fromkeys(choices, 10_000), Span(2.0)) > 0.99


def test_marks_of_all_parts_never_hold_more_than_those_they_are_found_from():
    # what lies there lasts for as many uses as so many router minutes can do, and no more
    choices = {
        f"p{n}": Choice(Forecast(mean, mean * varies, "mean"), often, minutes)
        for n, (mean, varies, often, minutes) in enumerate(
            ((40, 9, 1.0, 0.5), (3, 4, 0.4, 12.0), (120, 30, 0.9, 0.2), (7, 1, 0.7, 3.0))
        )
    }
    for most in (10, 30, 60, 120):
        marks = {"p0": most, "p1": 2, "p2": most}
        held = sum(choices[p].minutes * n for p, n in marks.items())
        best = share_marks(choices, Span(2.0), find_service(choices, marks, Span(2.0)))
        assert sum(choices[p].minutes * n for p, n in best.items()) <= held
