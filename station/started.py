"""Knows when this program was started, so that what may take so many seconds counts its start in.

Loaded before all else. What ran before that, the interpreter's own start, and what still runs
afterwards can only be weighed: by the processor's time, and how much slower than that the clock
has gone since. On a PC that has much else to do it goes several times as slow.
"""

import os
import time

BEGAN = "STATION_BEGAN"  # how one process tells the one that goes on for it when it began
BEFORE = time.process_time()  # seconds of the processor until here
END = 0.15  # seconds of the processor for what comes after: the answer is written, all is let go
SLOWEST = 6.0  # times slower than the processor's time; more is no help
SPARE, SPARE_SHARE = 0.15, 0.02  # seconds, and share of all, for what nobody can foresee


def _find_lost() -> float:
    """Finds the seconds that an earlier process took, which this one goes on for."""
    try:
        return max(0.0, time.time() - float(os.environ.pop(BEGAN, "")))
    except ValueError:
        return 0.0


LOST = _find_lost()
LOADED = time.perf_counter()


def count_seconds_taken() -> float:
    """Counts the seconds that were taken so far, as far as that can be known."""
    return LOST + BEFORE + time.perf_counter() - LOADED


def count_seconds_left(seconds: float) -> float:
    """Counts the seconds left to think, where start and end belong to the `seconds` too."""
    elapsed = time.perf_counter() - LOADED
    used = time.process_time() - BEFORE
    slower = min(SLOWEST, max(1.0, elapsed / used if used > 0 else 1.0))
    outside = slower * (BEFORE + END) + SPARE + SPARE_SHARE * seconds
    return seconds - LOST - elapsed - outside
