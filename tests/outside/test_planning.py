"""Loss, use, marks and counts of sheets against values worked out elsewhere (`planning.py`)."""

from collections import Counter
from itertools import combinations_with_replacement
from math import ceil

import pytest

from station.planning.chances import count_to_cut, find_chance_enough, know_chance
from station.planning.demand import (
    ALPHA,
    Forecast,
    Span,
    find_deviate,
    find_lack,
    find_pattern,
    find_quantiles,
    forecast_sba,
    forecast_tsb,
    forecast_use,
    suggest_mark,
)
from station.planning.sheets import SheetFile, count_sheets
from station.planning.tending import count_tended, find_tending
from tests.outside import planning
from tests.outside.value import values


@values(planning.ENOUGH)
def test_enough_with_a_certainty(given, expected):
    wanted, good, certainty = given
    cut, enough, fewer = expected
    chance = know_chance(good)
    assert count_to_cut(wanted, chance, certainty) == cut
    assert find_chance_enough(cut, wanted, chance) == pytest.approx(enough, abs=1e-6)
    if wanted:
        assert find_chance_enough(cut - 1, wanted, chance) == pytest.approx(fewer, abs=1e-6)


@values(planning.SBA)
def test_use_that_comes_now_and_then(given, expected):
    assert forecast_sba(given) == pytest.approx(expected, abs=1e-6)
    found = forecast_use(given)
    assert found
    assert (found.method, found.mean) == ("SBA", pytest.approx(expected, abs=1e-6))


@values(planning.CROSTON)
def test_without_its_correction_it_is_crostons(given, expected):
    assert forecast_sba(given) / (1 - ALPHA / 2) == pytest.approx(expected, abs=1e-6)


@values(planning.TSB)
def test_use_that_may_die_away(given, expected):
    assert forecast_tsb(given) == pytest.approx(expected, abs=1e-6)


@values(planning.PATTERN)
def test_how_use_comes(given, expected):
    assert find_pattern(given) == pytest.approx(expected, abs=1e-6)


@values(planning.LASTS)
def test_use_that_is_covered_with_a_certainty(given, expected):
    assert find_quantiles(*given, (0.90, 0.95, 0.98, 0.99)) == expected


@values(planning.DEVIATES)
def test_normal_deviates(given, expected):
    assert find_deviate(given) == pytest.approx(expected, abs=1e-6)


@values(planning.NEWSVENDOR)
def test_what_lies_there_where_too_much_and_too_little_cost(given, expected):
    mean, lying, lacking = given
    assert find_quantiles(mean, mean, (lacking / (lacking + lying),)) == (expected,)


@values(planning.NEWSVENDOR_NORMAL)
def test_the_same_of_a_normal_use(given, expected):
    mean, deviation, lying, lacking = given
    found = mean + find_deviate(lacking / (lacking + lying)) * deviation
    assert found == pytest.approx(expected, abs=1e-6)


@values(planning.ENOUGH_OF)
def test_pieces_are_enough_for_the_share_of_the_time_that_is_told(given, expected):
    # just below the share as many are enough, just above it one more
    for n, share in enumerate(expected):
        assert find_quantiles(*given, (share - 1e-6, share + 1e-6)) == (n, n + 1)


@values(planning.PERIODIC)
def test_a_level_that_is_looked_at_now_and_then(given, expected):
    mean, deviation, days, certainty = given
    found = mean * days + find_deviate(certainty) * deviation * days**0.5
    assert found == pytest.approx(expected, abs=1e-4)


@values(planning.CYCLE_SERVICE)
def test_a_mark_of_many_pieces_is_near_the_one_of_the_normal_distribution(given, expected):
    mean, deviation, certainty = given
    mark = suggest_mark(Forecast(mean, deviation**2, "mean"), Span(1), certainty)
    assert abs(mark - ceil(expected)) <= 1


@values(planning.NEWSVENDOR_COST)
def test_what_lies_there_and_what_lacks_cost(given, expected):
    mean, lying, lacking, there = given
    lack = find_lack(mean, mean, there)
    assert lying * (there - mean + lack) + lacking * lack == pytest.approx(expected, rel=1e-6)


MANY = 1000  # times as much: of few pieces none is taken as normal


@values(planning.NEWSVENDOR_COST_NORMAL)
def test_the_same_costs_of_a_normal_use(given, expected):
    mean, deviation, lying, lacking, there = given
    lack = find_lack(MANY * mean, (MANY * deviation) ** 2, MANY * there) / MANY
    assert lying * (there - mean + lack) + lacking * lack == pytest.approx(expected, rel=1e-6)


@values(planning.LOSS)
def test_what_lacks_where_so_many_deviations_lie_beyond_the_mean(given, expected):
    mean, deviation = 1e6, 1e5
    lack = find_lack(mean, deviation**2, mean + given * deviation) / deviation
    assert lack == pytest.approx(expected, abs=1e-6)


@values(planning.FILL_RATE)
def test_the_share_of_pieces_that_is_there_when_wanted(given, expected):
    mean, deviation, at_once, there = given
    share, deviations = expected
    lack = find_lack(MANY * mean, (MANY * deviation) ** 2, MANY * there) / MANY
    assert 1 - lack / at_once == pytest.approx(share, abs=1e-5)
    assert lack / deviation == pytest.approx(deviations, abs=1e-5)
    # of so few pieces the program takes a use that is never below none: about the same
    assert 1 - find_lack(mean, deviation**2, 57) / at_once == pytest.approx(share, abs=2e-3)


@values(planning.LEAD)
def test_use_until_more_is_there_where_the_days_vary(given, expected):
    use, deviation, days, varies, certainty = given
    whole, level = expected
    mean, variance = Span(days, varies).expect_use(Forecast(use, deviation**2, "mean"))
    assert variance**0.5 == pytest.approx(whole, abs=1e-6)
    assert mean + find_deviate(certainty) * variance**0.5 == pytest.approx(level, abs=1e-3)


@values(planning.TENDING)
def test_people_who_tend_several_routers(given, expected):
    routers, people, run_min, load_min = given
    found = find_tending(routers, people, run_min, load_min)
    assert tuple(found) == pytest.approx(expected, abs=1e-6)
    # sheets a minute, as the routers and as the people tell it
    by_people = people * (1 - found.idle) / load_min
    assert routers * found.running / run_min == pytest.approx(by_people, abs=1e-9)


@values(planning.TENDED)
def test_machines_that_one_person_can_tend(given, expected):
    shared, alone, machine = given
    assert count_tended(shared, alone, machine) == pytest.approx(expected, abs=1e-6)


@values(planning.CUTTING_STOCK)
def test_cutting_stock(given, expected):
    length, demand = given
    need = {str(width): n for width, n in demand}
    found = count_sheets(patterns(length, [width for width, _ in demand]), need, seconds=10)
    assert (found.objective, sum(found.counts.values())) == (expected, expected)
    assert ceil(found.lower_bound - 1e-6) == expected


@values(planning.BROKEN)
def test_counts_that_may_be_broken_need_no_more_than_the_linear_programme(given, expected):
    # for so many times the pieces its counts are whole: what they need is as many times its own
    (length, demand), times = given
    need = {str(width): n * times for width, n in demand}
    found = count_sheets(patterns(length, [width for width, _ in demand]), need, seconds=10)
    assert found.objective / times == pytest.approx(expected, abs=1e-4)
    assert found.lower_bound == pytest.approx(found.objective)


@values(planning.BINS)
@pytest.mark.slow
def test_bins(given, expected):
    holds, items = given
    packed = Counter(items)
    files = tuple(
        SheetFile(str(n), 1.0, {str(size): times for size, times in bin_.items()})
        for n, bin_ in enumerate(fill_bins(holds, packed))
    )
    found = count_sheets(files, {str(size): n for size, n in packed.items()}, seconds=60)
    assert (found.objective, ceil(found.lower_bound - 1e-6)) == (expected, expected)


def fill_bins(holds, packed):
    """Every way to fill a bin with what is to be packed, those left out to which more can come."""
    sizes = sorted(packed, reverse=True)

    def fill(at, left, filled):
        if at < len(sizes) and left >= sizes[-1]:
            for times in range(min(packed[sizes[at]], left // sizes[at]), -1, -1):
                more = ((sizes[at], times),) if times else ()
                yield from fill(at + 1, left - times * sizes[at], (*filled, *more))
        elif all(dict(filled).get(size, 0) == n for size, n in packed.items() if size <= left):
            yield dict(filled)

    return fill(0, holds, ())


def patterns(length, widths):
    """Every pattern that a length holds, the ones that hold another left out: a file each."""
    found = []
    for n in range(1, length // min(widths) + 1):
        for chosen in combinations_with_replacement(widths, n):
            left = length - sum(chosen)
            if 0 <= left < min(widths):
                found.append({str(w): chosen.count(w) for w in set(chosen)})
    return tuple(SheetFile(str(n), 1.0, makes) for n, makes in enumerate(found))
