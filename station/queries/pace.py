"""How long a router really takes: its own correction, fitted from the sheets that it cut.

recorded = pace × file + extra, both in seconds. What was typed on the router's page holds
while too few sheets are known.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import combinations
from statistics import median

from station.shop.facts import Pace, Revision, Router
from station.shop.views import View

LEAST = 3  # sheets, before anything can be told
MOST = 60  # of the newest sheets are kept: a router changes with its years
ALIKE = 0.02  # files whose lengths differ by a smaller share are of one length
FIRM = 0.1  # how surely pace must be known to be told from extra
FAR = 4 * 1.4826  # off by more median deviations, a sheet waited on the bed
CLOSE_S = 5.0  # that near is never far
FEW = 0.25  # share of sheets that may be left out, or one; more are how the router is

Recorded = tuple[float, float]  # the file's seconds, the recorded seconds


@dataclass(frozen=True)
class Fit:
    """real = pace × file + extra; `spread_s` is the standard deviation about that line.

    `count` sheets it rests on, `left_out` of others that lay too far off.
    """

    pace: float
    extra_s: float
    spread_s: float
    count: int
    left_out: int = 0

    def seconds(self, file_s: float) -> float:
        """What a file of so many seconds takes."""
        return self.pace * file_s + self.extra_s


def fit_pace(recorded: Sequence[Recorded]) -> Fit:
    """Fits a pace to (file's seconds, recorded seconds) of sheets that a router has cut.

    With files of about one length only, extra cannot be told from pace and is 0. Sheets far
    off the others are left out: nobody stood at the bed when they were done.
    """
    return _fit(tuple(recorded))


@lru_cache(maxsize=64)
def _fit(recorded: tuple[Recorded, ...]) -> Fit:
    if not recorded:
        return Fit(1.0, 0.0, math.inf, 0)
    line = _middle(recorded)
    off = [abs(real - line[0] * file - line[1]) for file, real in recorded]
    far = max(FAR * median(off), CLOSE_S)
    kept = [sheet for sheet, by in zip(recorded, off, strict=True) if by <= far]
    if len(recorded) - len(kept) > max(1, FEW * len(recorded)):
        kept = list(recorded)
    pace, extra, spread = _least(kept)
    return Fit(pace, extra, spread, len(kept), len(recorded) - len(kept))


def _of_one_length(recorded: Sequence[Recorded]) -> bool:
    files = [file for file, _ in recorded]
    return max(files) - min(files) <= ALIKE * max(files)


def _middle(recorded: Sequence[Recorded]) -> tuple[float, float]:
    """A line that a few far sheets do not turn: the median of slopes, then of heights."""
    if _of_one_length(recorded):
        return 0.0, median(real for _, real in recorded)
    least = ALIKE * max(file for file, _ in recorded)
    slope = median(
        (b[1] - a[1]) / (b[0] - a[0])
        for a, b in combinations(recorded, 2)
        if abs(b[0] - a[0]) > least / 2
    )
    return slope, median(real - slope * file for file, real in recorded)


def _least(kept: Sequence[Recorded]) -> tuple[float, float, float]:
    """Pace, extra and spread by least squares; pace alone where extra cannot be told."""
    n = len(kept)
    file_m, real_m = (sum(column) / n for column in zip(*kept, strict=True))
    if not _of_one_length(kept):
        wide = sum((file - file_m) ** 2 for file, _ in kept)
        pace = sum((file - file_m) * (real - real_m) for file, real in kept) / wide
        extra = real_m - pace * file_m
        spread = _spread(kept, pace, extra, n - 2)
        if n == 2 or spread / math.sqrt(wide) <= FIRM * pace:
            return pace, extra, spread
    return real_m / file_m, 0.0, _spread(kept, real_m / file_m, 0.0, n - 1)


def _spread(kept: Sequence[Recorded], pace: float, extra: float, free: int) -> float:
    squares = sum((real - pace * file - extra) ** 2 for file, real in kept)
    return math.sqrt(squares / free) if free > 0 else math.inf


def extend_pace(known: Pace | None, router: str, file_s: float, real_s: float) -> Pace:
    """Extends what is known of a router by one more sheet."""
    before = known.sheets if known else ()
    return Pace(id=router, sheets=(*before, (file_s, real_s))[-MOST:])


def find_fit(view: View, router: str) -> Fit | None:
    """Finds a router's own correction; None: its sheets can't tell yet."""
    known = view.get(Pace, router)
    found = fit_pace(known.sheets[-MOST:]) if known else None
    return found if found and found.count >= LEAST else None


def correct_router(view: View, router: Router) -> Router:
    """Corrects a router's pace by what its sheets tell; as typed while they can't."""
    found = find_fit(view, router.id)
    return replace(router, pace=found.pace, extra_s=found.extra_s) if found else router


def expect_minutes(view: View, revision: Revision, router: str) -> float:
    """Expects so many minutes for a sheet on this router; the file's own where it is not known."""
    known = view.get(Router, router)
    if known is None:
        return revision.minutes
    return count_minutes(revision, correct_router(view, known))


def count_minutes(revision: Revision, corrected: Router) -> float:
    """Counts the minutes for a sheet on a router whose pace was corrected."""
    return revision.minutes * corrected.pace + corrected.extra_s / 60
