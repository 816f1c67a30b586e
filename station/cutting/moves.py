"""What is known of each move of a path: length, directions at both ends, radius."""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np

from station.cutting.model import CW, PLANE_AXES, Bools, Floats, Moves


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
    step = np.diff(moves.points, axis=0)
    length = np.sqrt(np.einsum("ij,ij->i", step, step))
    flat = np.hypot(step[:, 0], step[:, 1])
    with np.errstate(divide="ignore", invalid="ignore"):
        leave = np.where(length[:, None] > 0, step / length[:, None], 0.0)
    arrive = leave
    radius = np.full(len(moves), np.inf)
    arcs = np.flatnonzero(moves.kind >= CW)
    if len(arcs):
        arrive = leave.copy()
        for plane in kinds_of(moves.plane[arcs]):
            some = arcs[moves.plane[arcs] == plane]
            _bend(moves, some, plane, length, flat, leave, arrive, radius)
    low, high = corners(moves)
    return Geometry(length, flat, leave, arrive, radius, low, high)


def _bend(
    moves: Moves,
    some: np.ndarray,
    plane: int,
    length: Floats,
    flat: Floats,
    leave: Floats,
    arrive: Floats,
    radius: Floats,
) -> None:
    """Puts the arcs of one plane into the columns."""
    first, second, along = PLANE_AXES[plane]
    start, end = moves.points[some], moves.points[some + 1]
    sweep = moves.sweep[some]
    from_centre = start[:, [first, second]] - moves.centre[some]
    to_centre = end[:, [first, second]] - moves.centre[some]
    r = np.hypot(*from_centre.T)
    bow = r * np.abs(sweep)
    rise = end[:, along] - start[:, along]
    whole = np.hypot(bow, rise)
    length[some], radius[some] = whole, np.maximum(r, 1e-9)
    flat[some] = bow if plane == 17 else _flat_of_upright(moves, some, plane)
    safe = np.where(whole > 0, whole, 1.0)
    sign = np.sign(sweep)
    for table, spoke in ((leave, from_centre), (arrive, to_centre)):
        reach = np.hypot(*spoke.T)
        around = sign * bow / safe / np.where(reach > 0, reach, 1.0)
        table[some, first] = -spoke[:, 1] * around
        table[some, second] = spoke[:, 0] * around
        table[some, along] = rise / safe


def _flat_of_upright(moves: Moves, some: np.ndarray, plane: int) -> Floats:
    """The length in XY of arcs in an upright plane, by many small chords."""
    first, second, along = PLANE_AXES[plane]
    t = np.linspace(0, 1, 65)
    start = moves.points[some]
    spoke = start[:, [first, second]] - moves.centre[some]
    angle = moves.sweep[some, None] * t
    points = np.zeros((len(some), len(t), 3))
    centre = moves.centre[some]
    points[..., first] = (
        centre[:, :1] + spoke[:, :1] * np.cos(angle) - spoke[:, 1:] * np.sin(angle)
    )
    points[..., second] = (
        centre[:, 1:] + spoke[:, :1] * np.sin(angle) + spoke[:, 1:] * np.cos(angle)
    )
    rise = moves.points[some + 1, along] - start[:, along]
    points[..., along] = start[:, along, None] + rise[:, None] * t
    step = np.diff(points[..., :2], axis=1)
    return np.asarray(np.hypot(step[..., 0], step[..., 1]).sum(axis=1))


def bounds(geo: Geometry, some: Bools) -> tuple[float, float, float, float, float, float]:
    """The box of the moves picked by `some`, arcs bulging as they do."""
    if not some.any():
        return (0.0,) * 6
    whole = bool(some.all())
    low, high = (geo.low, geo.high) if whole else (geo.low[some], geo.high[some])
    x, y, z = (float(low[:, axis].min()) for axis in range(3))
    x2, y2, z2 = (float(high[:, axis].max()) for axis in range(3))
    return x, y, z, x2, y2, z2


def corners(moves: Moves) -> tuple[Floats, Floats]:
    """Lowest and highest corner of each move's own box, each (n, 3)."""
    low = np.minimum(moves.points[:-1], moves.points[1:])
    high = np.maximum(moves.points[:-1], moves.points[1:])
    arcs = np.flatnonzero(moves.kind >= CW)
    for plane in kinds_of(moves.plane[arcs]):
        _bulge(moves, arcs[moves.plane[arcs] == plane], plane, low, high)
    return low, high


def _bulge(moves: Moves, some: np.ndarray, plane: int, low: Floats, high: Floats) -> None:
    """Widens the boxes of arcs where they pass the four extremes of their circle."""
    first, second, _ = PLANE_AXES[plane]
    spoke = moves.points[some][:, [first, second]] - moves.centre[some]
    r = np.hypot(*spoke.T)
    begin = np.arctan2(spoke[:, 1], spoke[:, 0])
    sweep = moves.sweep[some]
    for quarter, axis, side in ((0, 0, 1), (1, 1, 1), (2, 0, -1), (3, 1, -1)):
        ahead = (quarter * np.pi / 2 - begin) % (2 * np.pi)
        passed = np.where(sweep >= 0, ahead <= sweep, ahead - 2 * np.pi >= sweep)
        passed |= (ahead == 0) | (np.abs(sweep) >= 2 * np.pi)
        which = some[passed]
        column = (first, second)[axis]
        value = moves.centre[which, axis] + side * r[passed]
        table, keep = (high, np.maximum) if side > 0 else (low, np.minimum)
        table[which, column] = keep(table[which, column], value)


def kinds_of(column: np.ndarray) -> list[int]:
    """The different values of a column, small to large; quick where it seldom changes."""
    if not len(column):
        return []
    changes = np.concatenate(([True], column[1:] != column[:-1]))
    return [int(v) for v in np.unique(column[changes])]


def taken(moves: Moves, keep: np.ndarray) -> Moves:
    """Only the moves at `keep`, in order; what is left out must go nowhere."""
    points = moves.points[np.append(keep, len(moves) if len(keep) else 0)]
    rest = {f.name: getattr(moves, f.name)[keep] for f in fields(moves) if f.name != "points"}
    return Moves(points=points, **rest)
