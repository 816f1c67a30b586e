"""Shop times reckoned with."""

import pytest

from station.shop.times import count_seconds


@pytest.mark.parametrize(
    ("start", "end", "seconds"),
    [
        ("2026-11-25T10:00:00", "2026-11-25T10:00:07", 7),
        ("2026-11-25T23:50:00", "2026-11-26T00:10:00", 1200),
        ("2026-12-31T23:59:59", "2027-01-01T00:00:01", 2),
        ("2026-11-25T10:00:07", "2026-11-25T10:00:00", 0),
        ("", "2026-11-25T10:00:00", 0),
        ("2026-11-25T10:00:00", "", 0),
    ],
)
def test_seconds_from_one_time_to_a_later_one(start, end, seconds):
    assert count_seconds(start, end) == seconds
