"""How long a router takes for a path: speeding up, slowing down at corners, pauses."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from station.cutting.drive import drive, limits
from station.cutting.model import Floats, Moves, Pause
from station.cutting.moves import Geometry, geometry
from station.shop.facts import Router

SPINDLE_S = 3.0  # coming up to speed: common practice, no source


@dataclass(frozen=True)
class Timing:
    """Seconds of each move, and of all pauses and tool changes together."""

    moves: Floats
    pauses_s: float

    @property
    def total_s(self) -> float:
        """All of it."""
        return float(self.moves.sum()) + self.pauses_s


def timing(
    moves: Moves, pauses: Sequence[Pause], router: Router, geo: Geometry | None = None
) -> Timing:
    """How long `router` takes, move by move; its own correction is not in it."""
    geo = geo or geometry(moves)
    n = len(moves)
    halts = np.zeros(n + 1, dtype=bool)
    halts[[min(pause.move, n) for pause in pauses]] = True
    top, accel, v2, seconds = (np.empty(n) for _ in range(4))
    limits(geo.length, geo.radius, np.ascontiguousarray(geo.leave.T),
           np.ascontiguousarray(geo.arrive.T), moves.kind, moves.plane, moves.feed, moves.minutes,
           moves.exact, halts, router.rapid_mm_min / 60, router.accel_mm_s2,
           router.accel_z_mm_s2, router.corner_mm, top, accel, v2)  # fmt: skip
    drive(geo.length, moves.minutes, top, accel, v2, seconds)
    return Timing(seconds, sum(pause_seconds(p, router) for p in pauses))


def pause_seconds(pause: Pause, router: Router) -> float:
    """How long one pause takes on this router."""
    if pause.kind == "tool":
        return router.change_s
    if pause.kind == "spindle":
        return 0.0
    return pause.seconds


@dataclass(frozen=True)
class Fit:
    """real = pace × file + extra; `spread_s` is the standard deviation about that line."""

    pace: float
    extra_s: float
    spread_s: float
    count: int


def fit(recorded: Sequence[tuple[float, float]]) -> Fit:
    """From (file's seconds, recorded seconds) of sheets that a router has cut.

    With files of one length only, extra cannot be told from pace and is 0.
    """
    if not recorded:
        return Fit(1.0, 0.0, math.inf, 0)
    file_s, real_s = np.array(recorded, dtype=float).T
    if np.ptp(file_s) <= 0.02 * abs(file_s).max():
        pace, extra = float(real_s.sum() / file_s.sum()), 0.0
    else:
        pace, extra = map(float, np.polyfit(file_s, real_s, 1))
    rest = real_s - pace * file_s - extra
    free = len(rest) - (2 if extra else 1)
    spread = math.sqrt(float(rest @ rest) / free) if free > 0 else math.inf
    return Fit(pace, extra, spread, len(rest))
