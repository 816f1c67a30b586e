"""Closed outlines as polygons: area, sizes, moments, and moving the edge by a bit's radius.

A ring is an (n, 2) array of corners; the last joins the first.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import numpy.typing as npt

from station.cutting.geometry.edge import measures, moved, plain
from station.cutting.geometry.hull import boxes, hull, touches
from station.cutting.geometry.moves import apart
from station.cutting.model import Floats, Ring

CHORD_MM = 0.0005  # how far chords of a drawn arc may lie off it
MOST_CHORDS = 1440
MOST_SIDES, MOST_TIES = 160, 24  # how many angles of a hull are tried
Values = npt.NDArray[Any]


def shifted(column: Values) -> Values:
    """Each value's next; the last's is the first."""
    return np.concatenate((column[1:], column[:1]))


def area_of(ring: Ring) -> float:
    """Signed area, counter-clockwise positive."""
    return measures(ring)[0]


def perimeter_of(ring: Ring) -> float:
    """Length all around."""
    return measures(ring)[1]


def centroid_of(ring: Ring) -> Floats:
    """Centre of area."""
    return np.array(measures(ring)[2:])


def tidy(ring: Ring) -> Ring:
    """Without corners that repeat the one before, counter-clockwise."""
    ring = plain(ring)
    if len(ring) > 2 and area_of(ring) < 0:
        ring = ring[::-1]
    return ring


def arc_points(start: Floats, centre: Floats, sweep: float) -> Floats:
    """Points of an arc after its start, its end included."""
    spoke = start - centre
    r = float(np.hypot(*spoke))
    widest = 2 * np.arccos(max(1 - CHORD_MM / max(r, CHORD_MM), 0.5))
    n = min(max(4, int(np.ceil(abs(sweep) / widest / 4)) * 4), MOST_CHORDS)
    angle = np.linspace(0, sweep, n + 1)[1:]
    turned = (spoke[0] + 1j * spoke[1]) * np.exp(1j * angle)
    return np.column_stack((turned.real, turned.imag)) + centre


def contains(ring: Ring, point: Floats) -> bool:
    """Whether a point lies inside."""
    x, y = ring[:, 0] - point[0], ring[:, 1] - point[1]
    x2, y2 = shifted(x), shifted(y)
    crosses = (y > 0) != (y2 > 0)
    if not crosses.any():
        return False
    xs = x[crosses] - y[crosses] * (x2[crosses] - x[crosses]) / (y2[crosses] - y[crosses])
    return bool(np.count_nonzero(xs > 0) % 2)


def offset(ring: Ring, by: float) -> Ring | None:
    """The ring's edge moved outward (`by` > 0) or inward; None where nothing is left.

    Corners that open are rounded as a bit rounds them; edges that vanish are left out.
    """
    ring = tidy(ring)
    if len(ring) < 3:
        return None
    if abs(by) < 1e-12:
        return ring
    edge = moved(np.ascontiguousarray(ring), by)
    return edge if len(edge) > 2 and area_of(edge) > 1e-9 else None


def hull_of(points: Ring) -> Ring:
    """Convex hull, counter-clockwise."""
    order = np.lexsort((points[:, 1], points[:, 0]))
    x, y = apart(points)
    kept = np.empty(2 * len(points) + 1, np.int64)
    count = hull(x, y, order, np.ascontiguousarray(order[::-1]), kept)
    return np.asarray(points[kept[:count]])


def sizes_of(ring: Ring) -> tuple[float, float, float]:
    """Width, length and the angle of the length of the smallest rectangle around a ring.

    Among rectangles of almost the same area the one is taken that touches the most edge.
    """
    around = hull_of(ring)
    step = shifted(around) - around
    angles = np.mod(np.arctan2(step[:, 1], step[:, 0]), np.pi / 2)
    if len(around) > MOST_SIDES:
        angles = angles[np.argsort(-np.hypot(step[:, 0], step[:, 1]))[:MOST_SIDES]]
    angles = np.append(np.unique(np.round(angles, 9)), 0.0)
    x, y = apart(around)
    wide, high = np.empty(len(angles)), np.empty(len(angles))
    boxes(x, y, angles, wide, high)
    area = wide * high
    near = np.flatnonzero(area <= area.min() * 1.0005)
    near = near[np.argsort(area[near], kind="stable")[:MOST_TIES]]
    along = np.empty(len(near))
    touches(x, y, angles[near], along)
    best = int(near[np.argmax(along)])
    length, width, turn = float(wide[best]), float(high[best]), float(angles[best])
    return (width, length, turn) if width <= length else (length, width, turn + np.pi / 2)
