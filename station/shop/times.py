"""Shop times told from other texts and reckoned with: shop-local ``YYYY-MM-DDTHH:MM:SS``."""

from datetime import datetime
from functools import lru_cache

FIRST, LAST = "1970", "2199"  # years that a shop's time is in: beyond them clocks overflow


def is_time(text: str) -> bool:
    """Tells whether a text is a time as stored, of a year that a shop can be in."""
    # By halves: a long history has few hours, and an hour 3600 seconds.
    whole = len(text) == 19 and _is_time(f"{text[:13]}:00:00")
    return whole and _is_time(f"2000-01-01T00{text[13:]}")


@lru_cache(maxsize=8192)
def _is_time(text: str) -> bool:
    try:
        written = datetime.fromisoformat(text).isoformat(timespec="seconds")
    except ValueError:
        return False
    return written == text and FIRST <= text[:4] <= LAST


def count_seconds(start: str, end: str) -> float:
    """Counts the seconds from one time to a later one, at least 0; 0 where one is missing."""
    if not start or not end:
        return 0.0
    gone = datetime.fromisoformat(end) - datetime.fromisoformat(start)
    return max(0.0, gone.total_seconds())


def is_near(time: str, now: str, seconds: float) -> bool:
    """Tells whether a time lies so many seconds from now at most, before it or behind it.

    One that is yet to come, for the clock was set back, is not near because it is not past.
    """
    return max(count_seconds(time, now), count_seconds(now, time)) <= seconds
