"""Length, directions, heights and box of each move of a path."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.model import CW, XY, XZ, Bools, Bytes, Floats, Ints, Moves

QUARTER = math.pi / 2
CHORDS = 64  # for the length in XY of arcs in an upright plane
BLOCK = 200_000  # moves whose boxes are looked at together
Vector = tuple[float, float, float]
Box = tuple[float, float, float, float, float, float]  # x, y, z from, then to


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
    plane: int, sweep: float, spoke: tuple[float, float], reach: float, lengths: Vector
) -> Vector:
    """Finds the unit direction along an arc or helix at the end of a spoke, `reach` long; lengths
    are those of its bow, its rise and its whole way.
    """
    bow, rise, whole = lengths
    if whole == 0:
        return 0.0, 0.0, 0.0
    around = bow / whole / reach if reach > 0 else 0.0
    if sweep < 0:
        around = -around
    return _from_plane(plane, -spoke[1] * around, spoke[0] * around, rise / whole)


@compile_inner
def find_directions(
    i: int, x: Floats, y: Floats, z: Floats, kind: Bytes, plane: Bytes, c0: Floats, c1: Floats,
    sweep: Floats,
) -> tuple[Vector, Vector]:  # fmt: skip
    """Finds the unit directions of a move at its start and at its end."""
    dx, dy, dz = x[i + 1] - x[i], y[i + 1] - y[i], z[i + 1] - z[i]
    if kind[i] < CW:
        far = math.sqrt(dx * dx + dy * dy + dz * dz)
        scale = 1 / far if far > 0 else 0.0
        straight = dx * scale, dy * scale, dz * scale
        return straight, straight
    p, turn = plane[i], sweep[i]
    a, b, _ = _to_plane(p, x[i], y[i], z[i])
    a2, b2, _ = _to_plane(p, x[i + 1], y[i + 1], z[i + 1])
    _, _, rise = _to_plane(p, dx, dy, dz)
    spoke, other = (a - c0[i], b - c1[i]), (a2 - c0[i], b2 - c1[i])
    reach = math.hypot(spoke[0], spoke[1])
    bow = reach * abs(turn)
    lengths = bow, rise, math.hypot(bow, rise)
    return (
        _find_tangent(p, turn, spoke, reach, lengths),
        _find_tangent(p, turn, other, math.hypot(other[0], other[1]), lengths),
    )


@compile_inner
def find_radius(
    i: int, x: Floats, y: Floats, z: Floats, plane: Bytes, c0: Floats, c1: Floats
) -> float:
    """Finds the radius of a move that is an arc."""
    a, b, _ = _to_plane(plane[i], x[i], y[i], z[i])
    return max(math.hypot(a - c0[i], b - c1[i]), 1e-9)


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


@compile_inner
def _find_ends(
    plane: int, spoke: tuple[float, float], turn: float, c0: float, c1: float
) -> tuple[Vector, Vector]:
    """Finds how low and how high an arc reaches along each axis between its ends; infinite where
    it reaches no further than those.
    """
    r, begin, none = math.hypot(spoke[0], spoke[1]), math.atan2(spoke[1], spoke[0]), -math.inf
    right, left = _find_reach(begin, turn, r, 0, none), _find_reach(begin, turn, r, 2, none)
    top, under = _find_reach(begin, turn, r, 1, none), _find_reach(begin, turn, r, 3, none)
    return (
        _from_plane(plane, c0 - left, c1 - under, -none),
        _from_plane(plane, c0 + right, c1 + top, none),
    )


@compile_entry(
    "void(f8[::1], f8[::1], f8[::1], u1[::1], u1[::1], f8[::1], f8[::1], f8[::1],"
    " f8[::1], f8[::1], f8[::1], f8[::1])"
)
def fill_geometry(
    x: Floats, y: Floats, z: Floats, kind: Bytes, plane: Bytes, c0: Floats, c1: Floats,
    sweep: Floats, length: Floats, flat: Floats, bottom: Floats, top: Floats,
) -> None:  # fmt: skip
    """Fills the columns from `length` on."""
    for i in range(len(kind)):
        dx, dy, dz = x[i + 1] - x[i], y[i + 1] - y[i], z[i + 1] - z[i]
        bottom[i], top[i] = min(z[i], z[i + 1]), max(z[i], z[i + 1])
        if kind[i] < CW:
            far = math.sqrt(dx * dx + dy * dy + dz * dz)
            length[i], flat[i] = far, math.sqrt(dx * dx + dy * dy)
            continue
        p, turn = plane[i], sweep[i]
        a, b, _ = _to_plane(p, x[i], y[i], z[i])
        _, _, rise = _to_plane(p, dx, dy, dz)
        spoke = (a - c0[i], b - c1[i])
        r = math.hypot(spoke[0], spoke[1])
        bow = r * abs(turn)
        length[i], flat[i] = math.hypot(bow, rise), bow
        if p != XY:
            begin = math.atan2(spoke[1], spoke[0])
            flat[i] = _measure_upright(p, begin, turn, r, rise)
            low, high = _find_ends(p, spoke, turn, c0[i], c1[i])
            bottom[i], top[i] = min(bottom[i], low[2]), max(top[i], high[2])


@compile_entry(
    "void(f8[::1], f8[::1], f8[::1], u1[::1], u1[::1], f8[::1], f8[::1], f8[::1], i8[::1],"
    " f8[:,::1], f8[:,::1])"
)
def fill_boxes(
    x: Floats, y: Floats, z: Floats, kind: Bytes, plane: Bytes, c0: Floats, c1: Floats,
    sweep: Floats, index: Ints, low: Floats, high: Floats,
) -> None:  # fmt: skip
    """Fills the boxes, (3, n), of the moves at the positions `index`."""
    for k in range(len(index)):
        i = index[k]
        low[0, k], high[0, k] = min(x[i], x[i + 1]), max(x[i], x[i + 1])
        low[1, k], high[1, k] = min(y[i], y[i + 1]), max(y[i], y[i + 1])
        low[2, k], high[2, k] = min(z[i], z[i + 1]), max(z[i], z[i + 1])
        if kind[i] < CW:
            continue
        a, b, _ = _to_plane(plane[i], x[i], y[i], z[i])
        spoke = (a - c0[i], b - c1[i])
        least, most = _find_ends(plane[i], spoke, sweep[i], c0[i], c1[i])
        for axis in range(3):
            low[axis, k] = min(low[axis, k], least[axis])
            high[axis, k] = max(high[axis, k], most[axis])


@compile_entry("void(f8[:,:], u1[::1], u1[::1], f8[:,:], f8[::1], b1[::1], f8[::1], f8[::1])")
def widen_bounds(
    points: Floats, kind: Bytes, plane: Bytes, centre: Floats, sweep: Floats, some: Bools,
    low: Floats, high: Floats,
) -> None:  # fmt: skip
    """Widens a box, its low and its high corner, until the moves picked by `some` lie in it."""
    for i in range(len(kind)):
        if not some[i]:
            continue
        for axis in range(3):
            one, other = points[i, axis], points[i + 1, axis]
            low[axis], high[axis] = min(low[axis], one, other), max(high[axis], one, other)
        if kind[i] < CW:
            continue
        a, b, _ = _to_plane(plane[i], points[i, 0], points[i, 1], points[i, 2])
        c0, c1 = centre[i, 0], centre[i, 1]
        spoke = (a - c0, b - c1)
        far = math.hypot(spoke[0], spoke[1])
        least, most = (
            _from_plane(plane[i], c0 - far, c1 - far, math.inf),
            _from_plane(plane[i], c0 + far, c1 + far, -math.inf),
        )
        reaches = False  # further than the box, if it went all around
        for axis in range(3):
            reaches |= least[axis] < low[axis] or most[axis] > high[axis]
        if not reaches:
            continue
        least, most = _find_ends(plane[i], spoke, sweep[i], c0, c1)
        for axis in range(3):
            low[axis], high[axis] = min(low[axis], least[axis]), max(high[axis], most[axis])


@dataclass(frozen=True)
class Geometry:
    """Holds what follows from a path, in columns, mm: lengths, the same in the XY plane (`flat`),
    and between which heights each move runs.
    """

    moves: Moves
    length: Floats
    flat: Floats
    bottom: Floats
    top: Floats

    @cached_property
    def bounds(self) -> Box:
        """Gives the box of all moves whose places are sure."""
        return find_bounds(self.moves, self.moves.sure)


def find_geometry(moves: Moves) -> Geometry:
    """Works out length and heights of every move."""
    columns = [np.empty(len(moves)) for _ in range(4)]
    x, y, z = split_columns(moves.points)
    c0, c1 = split_columns(moves.centre)
    fill_geometry(x, y, z, moves.kind, moves.plane, c0, c1, moves.sweep, *columns)
    return Geometry(moves, *columns)


def find_boxes(moves: Moves, index: Ints) -> tuple[Floats, Floats]:
    """Works out the boxes of the moves at some positions, arcs bulging as they do: their low and
    their high corners, each (n, 3).
    """
    low, high = np.empty((3, len(index))), np.empty((3, len(index)))
    x, y, z = split_columns(moves.points)
    c0, c1 = split_columns(moves.centre)
    fill_boxes(x, y, z, moves.kind, moves.plane, c0, c1, moves.sweep, index, low, high)
    return low.T, high.T


def split_blocks(index: Ints) -> Iterator[Ints]:
    """Splits positions into blocks that are looked at together: a box for each takes room."""
    for first in range(0, len(index), BLOCK):
        yield index[first : first + BLOCK]


def split_columns(table: Floats) -> list[Floats]:
    """Gives the columns of a table, each in one piece of memory."""
    return [np.ascontiguousarray(column) for column in table.T]


def find_bounds(moves: Moves, some: Bools) -> Box:
    """Finds the box of the moves picked by `some`, arcs bulging as they do."""
    if not some.any():
        return (0.0,) * 6
    low, high = np.full(3, np.inf), np.full(3, -np.inf)
    widen_bounds(moves.points, moves.kind, moves.plane, moves.centre, moves.sweep, some, low, high)
    x, y, z = low.tolist()
    x2, y2, z2 = high.tolist()
    return x, y, z, x2, y2, z2


def list_values(column: np.ndarray) -> list[int]:
    """Lists the different values of a column, small to large; quick where it seldom changes."""
    if not len(column) or (column == column[0]).all():
        return [int(v) for v in column[:1]]
    changes = np.concatenate(([True], column[1:] != column[:-1]))
    return [int(v) for v in np.unique(column[changes])]
