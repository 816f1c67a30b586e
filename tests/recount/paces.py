"""What a router makes of a file's time, fitted anew from the sheets that it has cut.

It is a straight line by least squares through recorded over file seconds. A sheet further off
than four median deviations (as much as four standard ones of even chance), or five seconds where
that is more, waited on its bed and is left out, as long as that is one or a quarter of them.
"""

from collections.abc import Sequence
from itertools import combinations
from statistics import median
from typing import NamedTuple

import numpy as np

FAR, NEAR_S, ALIKE, MOST, FIRM = 4 * 1.4826, 5.0, 0.02, 0.25, 0.1


class Line(NamedTuple):
    """real = pace × file + extra, in seconds; its standard deviation; sheets kept and left out."""

    pace: float
    extra_s: float
    spread_s: float
    count: int
    left_out: int


def fit(sheets: Sequence[tuple[float, float]]) -> Line | None:
    """Fits a line to (file's seconds, recorded seconds); None: no sheet is known."""
    if not sheets:
        return None
    file, real = (np.array(column) for column in zip(*sheets, strict=True))
    off = np.abs(real - _middle(file, real))
    kept = off <= max(FAR * float(np.median(off)), NEAR_S)
    if (~kept).sum() > max(1, MOST * len(file)):
        kept[:] = True
    pace, extra, spread = _least(file[kept], real[kept])
    return Line(pace, extra, spread, int(kept.sum()), int((~kept).sum()))


def _alike(file: np.ndarray) -> bool:
    """Files of about one length tell no extra time from a pace."""
    return bool(np.ptp(file) <= ALIKE * file.max())


def _middle(file: np.ndarray, real: np.ndarray) -> np.ndarray:
    """A line through the middle of all sheets, which a few far ones do not turn."""
    if _alike(file):
        return np.full(len(real), np.median(real))
    slopes = [
        (real[b] - real[a]) / (file[b] - file[a])
        for a, b in combinations(range(len(file)), 2)
        if abs(file[b] - file[a]) > ALIKE * file.max() / 2
    ]
    slope = median(slopes)
    return slope * file + np.median(real - slope * file)


def _least(file: np.ndarray, real: np.ndarray) -> tuple[float, float, float]:
    if not _alike(file):
        pace, extra = np.polyfit(file, real, 1)
        left = real - pace * file - extra
        free = len(file) - 2
        spread = float(np.sqrt((left**2).sum() / free)) if free > 0 else float("inf")
        wide = float(np.sqrt(((file - file.mean()) ** 2).sum()))
        if free == 0 or spread / wide <= FIRM * pace:
            return float(pace), float(extra), spread
    pace = float(real.mean() / file.mean())
    free = len(file) - 1
    left = real - pace * file
    return pace, 0.0, float(np.sqrt((left**2).sum() / free)) if free > 0 else float("inf")
