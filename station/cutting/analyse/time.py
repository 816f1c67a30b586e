"""How long a router takes for a path: speeding up, slowing down at corners, pauses."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from station.cutting.analyse.drive import drive, limits
from station.cutting.geometry.moves import Geometry, geometry
from station.cutting.model import Floats, Moves, Pause
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
           router.accel_y_mm_s2 or router.accel_mm_s2, router.accel_z_mm_s2, router.corner_mm,
           top, accel, v2)  # fmt: skip
    drive(geo.length, moves.minutes, top, accel, v2, seconds)
    return Timing(seconds, sum(pause_seconds(p, router) for p in pauses))


def pause_seconds(pause: Pause, router: Router) -> float:
    """How long one pause takes on this router."""
    if pause.kind == "tool":
        return router.change_s
    if pause.kind == "spindle":
        return 0.0
    return pause.seconds
