"""How far off a path may be drawn before each of its points can be left out, compiled."""

from __future__ import annotations

import math

import numpy as np

from station.cutting.compiled import entry, inner
from station.cutting.model import Floats, Ints


@inner
def _worst(points: Floats, a: int, b: int) -> tuple[int, float]:
    """The point between two that lies furthest from the line between them, and how far."""
    x, y = points[a, 0], points[a, 1]
    dx, dy = points[b, 0] - x, points[b, 1] - y
    size, worst, furthest = dx * dx + dy * dy, a, -1.0
    for i in range(a + 1, b):
        px, py = points[i, 0] - x, points[i, 1] - y
        along = min(max((px * dx + py * dy) / size, 0.0), 1.0) if size > 0 else 0.0
        away = (px - along * dx) ** 2 + (py - along * dy) ** 2
        if away > furthest:
            worst, furthest = i, away
    return worst, math.sqrt(max(furthest, 0.0))


@entry("void(f8[:,::1], i8, i8, f8, f8[::1], i8[:,::1])")
def weigh(points: Floats, first: int, last: int, off: float, worth: Floats, work: Ints) -> None:
    """Fills the worth in mm of the points of one open run, `last` included.

    The ends cannot be left out; points that can be at `off` already are 0. `work` is room
    for as many pairs as the run has points.
    """
    worth[first : last + 1] = 0.0
    worth[first] = worth[last] = np.inf
    work[0, 0], work[0, 1] = first, last
    count = 1
    while count:
        count -= 1
        a, b = work[count, 0], work[count, 1]
        if b - a < 2:
            continue
        worst, away = _worst(points, a, b)
        if away > off:
            worth[worst] = min(away, worth[a], worth[b])
            work[count, 0], work[count, 1] = a, worst
            work[count + 1, 0], work[count + 1, 1] = worst, b
            count += 2
