"""What is known of each move of a path: length, directions at both ends, radius."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.cutting.geometry.measure import measure
from station.cutting.model import Bools, Floats, Moves


@dataclass(frozen=True)
class Geometry:
    """Columns that follow from a path: lengths in mm, unit directions, radii (inf: straight).

    `flat` is the length in the XY plane.
    """

    length: Floats
    flat: Floats
    leave: Floats  # (n, 3) direction at the start
    arrive: Floats  # (n, 3) direction at the end
    radius: Floats
    low: Floats  # (n, 3) corners of each move's own box
    high: Floats


def geometry(moves: Moves) -> Geometry:
    """Works the columns out for the whole path."""
    n = len(moves)
    length, flat, radius = np.empty(n), np.empty(n), np.empty(n)
    leave, arrive, low, high = (np.empty((3, n)) for _ in range(4))
    x, y, z = apart(moves.points)
    c0, c1 = apart(moves.centre)
    measure(x, y, z, moves.kind, moves.plane, c0, c1, moves.sweep,
            length, flat, radius, leave, arrive, low, high)  # fmt: skip
    return Geometry(length, flat, leave.T, arrive.T, radius, low.T, high.T)


def apart(table: Floats) -> list[Floats]:
    """The columns of a table, each in one piece of memory."""
    return [np.ascontiguousarray(column) for column in table.T]


def bounds(geo: Geometry, some: Bools) -> tuple[float, float, float, float, float, float]:
    """The box of the moves picked by `some`, arcs bulging as they do."""
    if not some.any():
        return (0.0,) * 6
    whole = bool(some.all())
    low, high = (geo.low, geo.high) if whole else (geo.low[some], geo.high[some])
    x, y, z = (float(low[:, axis].min()) for axis in range(3))
    x2, y2, z2 = (float(high[:, axis].max()) for axis in range(3))
    return x, y, z, x2, y2, z2


def kinds_of(column: np.ndarray) -> list[int]:
    """The different values of a column, small to large; quick where it seldom changes."""
    if not len(column):
        return []
    changes = np.concatenate(([True], column[1:] != column[:-1]))
    return [int(v) for v in np.unique(column[changes])]
