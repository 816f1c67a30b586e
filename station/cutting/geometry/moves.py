"""Length, directions, radius and box of each move of a path."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.model import CW, XY, XZ, Bools, Bytes, Floats, Moves

QUARTER = math.pi / 2
CHORDS = 64  # for the length in XY of arcs in an upright plane
Vector = tuple[float, float, float]


@compile_inner
def _from_plane(plane: int, first: float, second: float, along: float) -> Vector:
    """Gives x, y and z of what is given along a plane's two axes and across it."""
    if plane == XY:
        return first, second, along
    return (second, along, first) if plane == XZ else (along, first, second)


@compile_inner
def _to_plane(plane: int, x: float, y: float, z: float) -> Vector:
    """Gives what lies along a plane's two axes and across it, of x, y and z."""
    if plane == XY:
        return x, y, z
    return (z, x, y) if plane == XZ else (y, z, x)


@compile_inner
def _find_tangent(
    plane: int, sweep: float, spoke: tuple[float, float], bow: float, rise: float
) -> Vector:
    """Finds the unit direction along an arc or helix at the end of a spoke."""
    reach, whole = math.hypot(spoke[0], spoke[1]), math.hypot(bow, rise)
    if whole == 0:
        return 0.0, 0.0, 0.0
    around = bow / whole / reach if reach > 0 else 0.0
    if sweep < 0:
        around = -around
    return _from_plane(plane, -spoke[1] * around, spoke[0] * around, rise / whole)


@compile_inner
def _find_reach(begin: float, sweep: float, r: float, quarter: int, none: float) -> float:
    """Finds how far an arc reaches to one of four sides of its centre; `none`: not at all."""
    ahead = (quarter * QUARTER - begin) % (4 * QUARTER)
    passes = ahead <= sweep if sweep >= 0 else ahead - 4 * QUARTER >= sweep
    return r if passes or ahead == 0 or abs(sweep) >= 4 * QUARTER else none


@compile_inner
def _measure_upright(plane: int, begin: float, sweep: float, r: float, rise: float) -> float:
    """Measures in XY an arc in an upright plane, by many small chords."""
    total, x0, y0 = 0.0, 0.0, 0.0
    for step in range(CHORDS + 1):
        t = step / CHORDS
        angle = begin + sweep * t
        x, y, _ = _from_plane(plane, r * math.cos(angle), r * math.sin(angle), rise * t)
        if step:
            total += math.hypot(x - x0, y - y0)
        x0, y0 = x, y
    return total


@compile_entry(
    "void(f8[::1], f8[::1], f8[::1], u1[::1], u1[::1], f8[::1], f8[::1], f8[::1],"
    " f8[::1], f8[::1], f8[::1], f8[:,::1], f8[:,::1])"
)
def fill_geometry(
    x: Floats, y: Floats, z: Floats, kind: Bytes, plane: Bytes, c0: Floats, c1: Floats,
    sweep: Floats, length: Floats, flat: Floats, radius: Floats, low: Floats, high: Floats,
) -> None:  # fmt: skip
    """Fills the columns from `length` on; boxes are (3, n)."""
    for i in range(len(kind)):
        dx, dy, dz = x[i + 1] - x[i], y[i + 1] - y[i], z[i + 1] - z[i]
        low[0, i], high[0, i] = min(x[i], x[i + 1]), max(x[i], x[i + 1])
        low[1, i], high[1, i] = min(y[i], y[i + 1]), max(y[i], y[i + 1])
        low[2, i], high[2, i] = min(z[i], z[i + 1]), max(z[i], z[i + 1])
        if kind[i] < CW:
            far = math.sqrt(dx * dx + dy * dy + dz * dz)
            length[i], flat[i], radius[i] = far, math.sqrt(dx * dx + dy * dy), math.inf
            continue
        p, turn = plane[i], sweep[i]
        a, b, _ = _to_plane(p, x[i], y[i], z[i])
        _, _, rise = _to_plane(p, dx, dy, dz)
        spoke = (a - c0[i], b - c1[i])
        r = math.hypot(spoke[0], spoke[1])
        bow = r * abs(turn)
        begin = math.atan2(spoke[1], spoke[0])
        length[i], radius[i] = math.hypot(bow, rise), max(r, 1e-9)
        flat[i] = bow if p == XY else _measure_upright(p, begin, turn, r, rise)
        none = -math.inf
        right, left = _find_reach(begin, turn, r, 0, none), _find_reach(begin, turn, r, 2, none)
        top, under = _find_reach(begin, turn, r, 1, none), _find_reach(begin, turn, r, 3, none)
        ends = _from_plane(p, c0[i] + right, c1[i] + top, none)
        for axis in range(3):
            high[axis, i] = max(high[axis, i], ends[axis])
        ends = _from_plane(p, c0[i] - left, c1[i] - under, -none)
        for axis in range(3):
            low[axis, i] = min(low[axis, i], ends[axis])


@compile_entry(
    "void(f8[::1], f8[::1], f8[::1], u1[::1], u1[::1], f8[::1], f8[::1], f8[::1],"
    " f8[:,::1], f8[:,::1])"
)
def fill_directions(
    x: Floats, y: Floats, z: Floats, kind: Bytes, plane: Bytes, c0: Floats, c1: Floats,
    sweep: Floats, leave: Floats, arrive: Floats,
) -> None:  # fmt: skip
    """Fills in the unit directions at the start and at the end of every move, both (3, n)."""
    for i in range(len(kind)):
        dx, dy, dz = x[i + 1] - x[i], y[i + 1] - y[i], z[i + 1] - z[i]
        if kind[i] < CW:
            far = math.sqrt(dx * dx + dy * dy + dz * dz)
            scale = 1 / far if far > 0 else 0.0
            leave[0, i], leave[1, i], leave[2, i] = dx * scale, dy * scale, dz * scale
            arrive[0, i], arrive[1, i], arrive[2, i] = dx * scale, dy * scale, dz * scale
            continue
        p, turn = plane[i], sweep[i]
        a, b, _ = _to_plane(p, x[i], y[i], z[i])
        a2, b2, _ = _to_plane(p, x[i + 1], y[i + 1], z[i + 1])
        _, _, rise = _to_plane(p, dx, dy, dz)
        spoke, other = (a - c0[i], b - c1[i]), (a2 - c0[i], b2 - c1[i])
        bow = math.hypot(spoke[0], spoke[1]) * abs(turn)
        leave[0, i], leave[1, i], leave[2, i] = _find_tangent(p, turn, spoke, bow, rise)
        arrive[0, i], arrive[1, i], arrive[2, i] = _find_tangent(p, turn, other, bow, rise)


@dataclass(frozen=True)
class Geometry:
    """Holds what follows from a path: lengths in mm, radii (inf: straight).

    `flat` is the length in the XY plane.
    """

    length: Floats
    flat: Floats
    radius: Floats
    low: Floats  # (n, 3) corners of each move's own box
    high: Floats


def find_geometry(moves: Moves) -> Geometry:
    """Works out length, radius and box of every move."""
    n = len(moves)
    length, flat, radius = np.empty(n), np.empty(n), np.empty(n)
    low, high = np.empty((3, n)), np.empty((3, n))
    x, y, z = split_columns(moves.points)
    c0, c1 = split_columns(moves.centre)
    fill_geometry(
        x, y, z, moves.kind, moves.plane, c0, c1, moves.sweep,
        length, flat, radius, low, high,
    )  # fmt: skip
    return Geometry(length, flat, radius, low.T, high.T)


def find_directions(moves: Moves) -> tuple[Floats, Floats]:
    """Works out the unit directions at the start and at the end of every move, both (3, n)."""
    leave, arrive = np.empty((3, len(moves))), np.empty((3, len(moves)))
    x, y, z = split_columns(moves.points)
    c0, c1 = split_columns(moves.centre)
    fill_directions(x, y, z, moves.kind, moves.plane, c0, c1, moves.sweep, leave, arrive)
    return leave, arrive


def split_columns(table: Floats) -> list[Floats]:
    """Gives the columns of a table, each in one piece of memory."""
    return [np.ascontiguousarray(column) for column in table.T]


def find_bounds(geo: Geometry, some: Bools) -> tuple[float, float, float, float, float, float]:
    """Finds the box of the moves picked by `some`, arcs bulging as they do."""
    if not some.any():
        return (0.0,) * 6
    whole = bool(some.all())
    low, high = (geo.low, geo.high) if whole else (geo.low[some], geo.high[some])
    x, y, z = (float(low[:, axis].min()) for axis in range(3))
    x2, y2, z2 = (float(high[:, axis].max()) for axis in range(3))
    return x, y, z, x2, y2, z2


def list_values(column: np.ndarray) -> list[int]:
    """Lists the different values of a column, small to large; quick where it seldom changes."""
    if not len(column):
        return []
    changes = np.concatenate(([True], column[1:] != column[:-1]))
    return [int(v) for v in np.unique(column[changes])]
