"""How long a router takes for a path: speeding up, slowing down at corners, pauses."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.moves import (
    Geometry,
    Vector,
    find_directions,
    find_geometry,
    find_radius,
    split_columns,
)
from station.cutting.model import CW, RAPID, XY, Bools, Bytes, Floats, Moves, Pause
from station.shop.facts import Router

SPINDLE_S = 3.0  # coming up to speed: common practice, no source


@compile_inner
def find_acceleration(x: float, y: float, z: float, ax: float, ay: float, az: float) -> float:
    """Finds the acceleration along a unit direction when each axis has its own limit."""
    share = max(abs(x) / ax, abs(y) / ay, abs(z) / az)
    return 1 / share if share > 0 else math.inf


@compile_inner
def find_corner_speed2(accel: float, tolerance: float, cosine: float) -> float:
    """Finds the square of the speed through a corner, in (mm/s)².

    `cosine` is between the directions before and after. With the interior angle θ, 180° less
    the turn: v = √(a·δ·sin(θ/2) / (1 - sin(θ/2))).
    """
    half = math.sqrt(min(max((1 + cosine) / 2, 0.0), 1.0))  # sin(θ/2)
    return accel * tolerance * half / (1 - half) if half < 1 - 1e-9 else math.inf


@compile_inner
def time_trapezoid(length: float, top: float, accel: float, v_in: float, v_out: float) -> float:
    """Gives the seconds for `length` mm, entered and left at given speeds, at most `top` mm/s."""
    peak = math.sqrt(min(top * top, accel * length + (v_in * v_in + v_out * v_out) / 2))
    peak = max(peak, v_in, v_out)
    ramps = (2 * peak * peak - v_in * v_in - v_out * v_out) / (2 * accel)
    return (2 * peak - v_in - v_out) / accel + max(0.0, length - ramps) / peak


@compile_inner
def _time_move(
    length: float, top: float, accel: float, minutes: float, v2: float, v2_out: float
) -> float:
    """Gives the seconds of one move between two squares of speeds, `minutes` at least."""
    spent = time_trapezoid(length, top, accel, math.sqrt(v2), math.sqrt(v2_out))
    return spent if math.isnan(minutes) else max(spent, minutes * 60)


@compile_inner
def _find_move_acceleration(
    kind: int, plane: int, leave: Vector, ax: float, ay: float, az: float
) -> float:
    """Finds the acceleration of one move."""
    if kind >= CW:
        flat = min(ax, ay)
        return flat if plane == XY and leave[2] == 0 else min(flat, az)
    return find_acceleration(leave[0], leave[1], leave[2], ax, ay, az)


@compile_inner
def _find_programmed_speed(
    kind: int, length: float, feed: float, minutes: float, rapid: float
) -> float:
    """Finds the speed that a move is meant to have, mm/s."""
    if kind and not math.isnan(minutes):
        return min(length / (minutes * 60), rapid)
    return min(feed / 60, rapid) if kind and feed > 0 else rapid


@compile_entry(
    "void(f8[::1], f8[::1], f8[::1], f8[::1], f8[::1], f8[::1], f8[::1], u1[::1], u1[::1],"
    " f8[::1], f8[::1], b1[::1], b1[::1], f8, f8, f8, f8, f8, f8[::1], f8[::1], f8[::1])"
)
def fill_limits(
    length: Floats, x: Floats, y: Floats, z: Floats, c0: Floats, c1: Floats, sweep: Floats,
    kind: Bytes, plane: Bytes, feed: Floats, minutes: Floats, exact: Bools, halts: Bools,
    rapid: float, ax: float, ay: float, az: float, tolerance: float,
    top: Floats, accel: Floats, v2: Floats,
) -> None:  # fmt: skip
    """Fills each move's top speed and acceleration, and the most that v² may be at its start.

    `halts` are points where the path stops. Moves that go nowhere are no corner.
    """
    before, stop, arrived = -1, True, (0.0, 0.0, 0.0)
    for i in range(len(kind)):
        stop = stop or halts[i]
        v2[i] = 0.0
        if length[i] <= 0:
            continue
        leave, arrive = find_directions(i, x, y, z, kind, plane, c0, c1, sweep)
        accel[i] = _find_move_acceleration(kind[i], plane[i], leave, ax, ay, az)
        speed = _find_programmed_speed(kind[i], length[i], feed[i], minutes[i], rapid)
        radius = find_radius(i, x, y, z, plane, c0, c1) if kind[i] >= CW else math.inf
        most2 = accel[i] * min(radius, 1e12)  # of its speed's square, so as not to be thrown off
        top[i] = max(speed if speed * speed <= most2 else math.sqrt(most2), 1e-6)
        if not stop:
            cosine = arrived[0] * leave[0] + arrived[1] * leave[1] + arrived[2] * leave[2]
            free = min(top[before], top[i])
            corner = find_corner_speed2(min(accel[before], accel[i]), tolerance, cosine)
            v2[i] = min(corner, free * free)
        before, stop, arrived = i, exact[i], arrive


@compile_entry("void(f8[::1], f8[::1], f8[::1], f8[::1], f8[::1], f8[::1])")
def fill_seconds(
    length: Floats, minutes: Floats, top: Floats, accel: Floats, v2: Floats, seconds: Floats
) -> None:
    """Fills the seconds of each move; `v2` holds its limits before and the speeds after."""
    n, last = len(length), -1
    ahead = behind = 0.0
    for i in range(n - 1, -1, -1):
        if length[i] > 0:
            v2[i] = ahead = min(v2[i], ahead + 2 * accel[i] * length[i])
    for i in range(n):
        seconds[i] = 0.0
        if length[i] <= 0:
            continue
        v2[i] = behind = min(v2[i], behind)
        if last >= 0:
            seconds[last] = _time_move(
                length[last], top[last], accel[last], minutes[last], v2[last], behind
            )
        behind += 2 * accel[i] * length[i]
        last = i
    if last >= 0:
        seconds[last] = _time_move(
            length[last], top[last], accel[last], minutes[last], v2[last], 0.0
        )


@dataclass(frozen=True)
class Timing:
    """Holds the seconds of each move, and of all pauses and tool changes together."""

    moves: Floats
    pauses_s: float

    @property
    def total_s(self) -> float:
        """Gives all of it."""
        return float(self.moves.sum()) + self.pauses_s


def time_path(
    moves: Moves, pauses: Sequence[Pause], router: Router, geo: Geometry | None = None
) -> Timing:
    """Gives how long `router` takes, move by move; its own correction is not in it."""
    geo = geo or find_geometry(moves)
    n = len(moves)
    halts = np.zeros(n + 1, dtype=bool)
    halts[[min(pause.move, n) for pause in pauses]] = True
    top, accel, v2, seconds = (np.empty(n) for _ in range(4))
    x, y, z = split_columns(moves.points)
    c0, c1 = split_columns(moves.centre)
    fill_limits(
        geo.length, x, y, z, c0, c1, moves.sweep,
        moves.kind, moves.plane, moves.feed, moves.minutes,
        moves.exact, halts, router.rapid_mm_min / 60, router.accel_mm_s2,
        router.accel_y_mm_s2 or router.accel_mm_s2, router.accel_z_mm_s2, router.corner_mm,
        top, accel, v2,
    )  # fmt: skip
    fill_seconds(geo.length, moves.minutes, top, accel, v2, seconds)
    return Timing(seconds, sum(time_pauses(moves, pauses, router)))


def time_pauses(moves: Moves, pauses: Sequence[Pause], router: Router) -> list[float]:
    """Gives the seconds of each pause. Nothing is changed before the first cut where the bit is
    asked for that the sheet before ended with.
    """
    feed = np.flatnonzero(moves.kind != RAPID)
    first, last = (int(feed[0]), int(moves.tool[feed[-1]])) if len(feed) else (len(moves), 0)
    return [
        0.0 if p.kind == "tool" and p.move <= first and p.tool == last else _time_pause(p, router)
        for p in pauses
    ]


def _time_pause(pause: Pause, router: Router) -> float:
    """Gives the seconds of one pause on this router."""
    if pause.kind == "tool":
        return router.change_s
    if pause.kind == "spindle":
        return 0.0
    return pause.seconds
