"""Worked hours: from 7 to 16, Monday to Friday; the 25th of November 2026 is a Wednesday."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.planning.hours import Hours

HOURS = Hours("07:00", "16:00", (0, 1, 2, 3, 4))


@pytest.mark.parametrize(
    ("at", "minutes", "ends"),
    [
        ("2026-11-25T10:00:00", 90, "2026-11-25T11:30:00"),
        ("2026-11-25T15:30:00", 60, "2026-11-26T07:30:00"),
        ("2026-11-25T05:00:00", 10, "2026-11-25T07:10:00"),
        ("2026-11-25T18:00:00", 10, "2026-11-26T07:10:00"),
        ("2026-11-27T15:00:00", 120, "2026-11-30T08:00:00"),  # over the weekend
        ("2026-11-25T07:00:00", 540, "2026-11-25T16:00:00"),
    ],
)
def test_when_so_many_minutes_are_over(at, minutes, ends):
    assert HOURS.add_minutes(at, minutes) == ends


@given(st.integers(0, 5000))
def test_days_and_minutes_agree(minutes):
    at = "2026-11-25T10:00:00"
    assert HOURS.count_days(at, HOURS.add_minutes(at, minutes)) * 540 == pytest.approx(minutes)


def test_nothing_is_worked_on_a_closed_day():
    assert HOURS.count_days("2026-11-28T08:00:00", "2026-11-29T20:00:00") == 0.0


def test_a_shop_without_worked_days_counts_by_the_clock():
    open_ = Hours("07:00", "07:00", ())
    assert open_.add_minutes("2026-11-25T10:00:00", 60) == "2026-11-25T11:00:00"
    assert open_.count_days("2026-11-25T10:00:00", "2026-11-26T10:00:00") == 1.0


NIGHTS = Hours("22:00", "06:00", (0, 1, 2, 3, 4), (("02:00", "02:30"),), ("2026-11-26",))


@pytest.mark.parametrize(
    ("at", "minutes", "ends"),
    [
        ("2026-11-25T10:00:00", 60, "2026-11-25T23:00:00"),  # nobody works by day
        ("2026-11-25T23:30:00", 60, "2026-11-26T00:30:00"),  # over midnight
        ("2026-11-26T01:30:00", 60, "2026-11-26T03:00:00"),  # the break is left out
        ("2026-11-26T05:00:00", 120, "2026-11-27T23:00:00"),  # Thursday's night is closed
        ("2026-11-28T05:00:00", 120, "2026-11-30T23:00:00"),  # Friday's ends on Saturday
    ],
)
def test_a_night_belongs_to_the_day_on_which_it_begins(at, minutes, ends):
    assert NIGHTS.minutes == 450
    assert NIGHTS.add_minutes(at, minutes) == ends
    assert NIGHTS.count_days(at, ends) * 450 == pytest.approx(minutes)


def test_a_shop_that_works_round_the_clock_counts_every_minute_of_its_days():
    always = Hours("06:00", "06:00", (0, 1, 2, 3, 4))
    assert always.minutes == 1440
    assert always.add_minutes("2026-11-28T05:00:00", 120) == "2026-11-30T07:00:00"
