"""How long a router takes for a path: speeding up, slowing down at corners, pauses.

Look-ahead over the whole path is two running minima over the square of the speed: from
one end of a move to the other v² changes by at most 2·a·d.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, fields, replace

import numpy as np

from station.cutting.model import RAPID, Bools, Floats, Moves, Pause
from station.cutting.moves import Geometry, geometry, taken
from station.shop.facts import Router

SPINDLE_S = 3.0  # coming up to speed: common practice, no source


def trapezoid(length: Floats, top: Floats, accel: Floats, v_in: Floats, v_out: Floats) -> Floats:
    """Seconds for moves of `length` mm, entered and left at given speeds, at most `top` mm/s."""
    with np.errstate(divide="ignore", invalid="ignore"):
        peak2 = np.minimum(top * top, accel * length + (v_in * v_in + v_out * v_out) / 2)
        peak = np.maximum(np.sqrt(peak2), np.maximum(v_in, v_out))
        ramps = (2 * peak * peak - v_in * v_in - v_out * v_out) / (2 * accel)
        flat = np.maximum(0.0, length - ramps) / peak
        seconds = (2 * peak - v_in - v_out) / accel + flat
    return np.where(length > 0, seconds, 0.0)


def corner_speed(accel: Floats, tolerance: float, cosine: Floats) -> Floats:
    """Speed through a corner, mm/s; `cosine` is between the directions before and after.

    Interior angle θ = 180° less the turn: v = √(a·δ·sin(θ/2) / (1 - sin(θ/2))).
    """
    half = np.sqrt(np.clip((1 + cosine) / 2, 0.0, 1.0))  # sin(θ/2)
    with np.errstate(divide="ignore", invalid="ignore"):
        v2 = accel * tolerance * half / (1 - half)
    return np.where(half >= 1 - 1e-9, np.inf, np.sqrt(v2))


def along(direction: Floats, flat: float, upright: float) -> Floats:
    """The acceleration along unit directions when each axis has its own limit."""
    way = np.abs(direction)
    across = np.maximum(way[:, 0], way[:, 1])
    with np.errstate(divide="ignore"):
        return np.asarray(1 / np.maximum(across / flat, way[:, 2] / upright))


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
    real = geo.length > 0
    if not real.all():
        return _without_still(moves, pauses, router, geo, real)
    accel = _accelerations(moves, geo, router)
    top = _top_speeds(moves, geo, router, accel)
    v2 = _look_ahead(moves, pauses, geo, router, accel, top)
    v = np.sqrt(v2)
    seconds = trapezoid(geo.length, top, accel, v[:-1], v[1:])
    fixed = ~np.isnan(moves.minutes)
    seconds[fixed] = np.maximum(seconds[fixed], moves.minutes[fixed] * 60)
    return Timing(seconds, sum(pause_seconds(p, router) for p in pauses))


def _without_still(
    moves: Moves, pauses: Sequence[Pause], router: Router, geo: Geometry, real: Bools
) -> Timing:
    """Moves that go nowhere take no time and are no corner: timed without them."""
    keep = np.flatnonzero(real)
    fewer = taken(moves, keep)
    some = Geometry(*(getattr(geo, f.name)[keep] for f in fields(geo)))
    place = np.concatenate(([0], np.cumsum(real)))
    shifted = [replace(p, move=int(place[min(p.move, len(moves))])) for p in pauses]
    timed = timing(fewer, shifted, router, some)
    seconds = np.zeros(len(moves))
    seconds[keep] = timed.moves
    return Timing(seconds, timed.pauses_s)


def pause_seconds(pause: Pause, router: Router) -> float:
    """How long one pause takes on this router."""
    if pause.kind == "tool":
        return router.change_s
    if pause.kind == "spindle":
        return 0.0
    return pause.seconds


def _accelerations(moves: Moves, geo: Geometry, router: Router) -> Floats:
    flat, upright = router.accel_mm_s2, router.accel_z_mm_s2
    accel = np.minimum(along(geo.leave, flat, upright), along(geo.arrive, flat, upright))
    bent = np.flatnonzero(moves.kind > 1)
    if len(bent):
        level = (moves.plane[bent] == 17) & (moves.points[bent, 2] == moves.points[bent + 1, 2])
        accel[bent] = np.where(level, flat, np.minimum(flat, upright))
    return np.asarray(np.where(np.isfinite(accel), accel, flat))


def _top_speeds(moves: Moves, geo: Geometry, router: Router, accel: Floats) -> Floats:
    rapid = router.rapid_mm_min / 60
    feed = np.minimum(np.where(moves.feed > 0, moves.feed, router.rapid_mm_min) / 60, rapid)
    fixed = ~np.isnan(moves.minutes)
    with np.errstate(invalid="ignore"):
        by_block = geo.length / (moves.minutes * 60)
    feed = np.where(fixed, np.minimum(by_block, rapid), feed)
    top = np.where(moves.kind == RAPID, rapid, feed)
    round_the_bend = np.sqrt(accel * np.minimum(geo.radius, 1e12))
    return np.asarray(np.maximum(np.minimum(top, round_the_bend), 1e-6))


def _look_ahead(
    moves: Moves,
    pauses: Sequence[Pause],
    geo: Geometry,
    router: Router,
    accel: Floats,
    top: Floats,
) -> Floats:
    """v² at every point of the path: at rest at both ends, at pauses and exact stops."""
    n = len(moves)
    caps = np.zeros(n + 1)
    if n > 1:
        caps[1:-1] = _corners(moves, geo, router, accel, top)
    for pause in pauses:
        caps[min(pause.move, n)] = 0.0
    gain = 2 * accel * geo.length
    back = _running(caps[::-1], gain[::-1])[::-1]
    return _running(back, gain)


def _running(caps: Floats, gain: Floats) -> Floats:
    """The largest v² with v²[i + 1] <= v²[i] + gain[i] and v² <= caps."""
    climb = np.concatenate(([0.0], np.cumsum(gain)))
    lowest = np.minimum.accumulate(caps - climb) + climb
    return np.asarray(np.maximum(np.minimum(lowest, caps), 0.0))


def _corners(moves: Moves, geo: Geometry, router: Router, accel: Floats, top: Floats) -> Floats:
    cosine = np.einsum("ij,ij->i", geo.arrive[:-1], geo.leave[1:])
    least = np.minimum(accel[:-1], accel[1:])
    speed = corner_speed(least, router.corner_mm, cosine)
    speed = np.minimum(speed, np.minimum(top[:-1], top[1:]))
    stop = moves.exact[:-1]
    return np.asarray(np.where(stop, 0.0, speed * speed))


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
