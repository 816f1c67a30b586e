"""Closed outlines as polygons: area, sizes, moments, and moving the edge by a bit's radius.

A ring is an (n, 2) array of corners; the last joins the first.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import numpy.typing as npt

from station.cutting.compiled import entry, inner
from station.cutting.geometry.moves import apart
from station.cutting.model import Floats, Ints, Ring

SAME_MM = 1e-6  # corners nearer than this are one
CHORD_MM = 0.0005  # how far chords of a drawn arc may lie off it
MOST_CHORDS = 1440
MOST_SIDES, MOST_TIES = 160, 24  # how many angles of a hull are tried
Values = npt.NDArray[Any]


@inner
def _far(x: float, y: float) -> float:
    """The length of a vector; hypot guards against sizes that no sheet has, and takes longer."""
    return math.sqrt(x * x + y * y)


@entry("UniTuple(f8, 4)(f8[:,:])")
def measures(ring: Floats) -> tuple[float, float, float, float]:
    """Signed area, length all around, and the centre of area (x, y) of a closed ring."""
    n = len(ring)
    x0, y0 = ring[0, 0], ring[0, 1]
    area = around = cx = cy = 0.0
    x, y = ring[n - 1, 0] - x0, ring[n - 1, 1] - y0
    for i in range(n):
        x2, y2 = ring[i, 0] - x0, ring[i, 1] - y0
        cross = x * y2 - x2 * y
        area += cross
        cx += (x + x2) * cross
        cy += (y + y2) * cross
        around += _far(x2 - x, y2 - y)
        x, y = x2, y2
    if abs(area) < 1e-12:
        return area / 2, around, ring[:, 0].sum() / n, ring[:, 1].sum() / n
    return area / 2, around, x0 + cx / (3 * area), y0 + cy / (3 * area)


@entry("f8[:,::1](f8[:,:])")
def plain(ring: Floats) -> Floats:
    """A ring without corners that repeat the one before."""
    n, made = len(ring), 0
    out = np.empty((n, 2))
    for i in range(n):
        after = (i + 1) % n
        if _far(ring[after, 0] - ring[i, 0], ring[after, 1] - ring[i, 1]) > SAME_MM:
            out[made, 0], out[made, 1] = ring[i, 0], ring[i, 1]
            made += 1
    return out[:made]


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


@inner
def _half(x: Floats, y: Floats, order: Ints, kept: Ints, first: int) -> int:
    """One side of the hull, behind what is kept already; where it ends."""
    end = first
    for i in order:
        while end > first + 1:
            a, b = kept[end - 2], kept[end - 1]
            if (x[b] - x[a]) * (y[i] - y[a]) - (y[b] - y[a]) * (x[i] - x[a]) > 0:
                break
            end -= 1
        kept[end] = i
        end += 1
    return end - 1


@entry("i8(f8[::1], f8[::1], i8[::1], i8[::1], i8[::1])")
def hull(x: Floats, y: Floats, order: Ints, back: Ints, kept: Ints) -> int:
    """The corners of the convex hull, counter-clockwise, into `kept`; how many there are.

    `order` are the points by x, then y; `back` the same backward.
    """
    return _half(x, y, back, kept, _half(x, y, order, kept, 0))


@entry("void(f8[::1], f8[::1], f8[::1], f8[::1], f8[::1])")
def boxes(x: Floats, y: Floats, angles: Floats, wide: Floats, high: Floats) -> None:
    """How far points reach along and across each angle."""
    for k in range(len(angles)):
        c, s = math.cos(angles[k]), math.sin(angles[k])
        left = under = math.inf
        right = over = -math.inf
        for i in range(len(x)):
            u, v = x[i] * c + y[i] * s, y[i] * c - x[i] * s
            left, right = min(left, u), max(right, u)
            under, over = min(under, v), max(over, v)
        wide[k], high[k] = right - left, over - under


@entry("void(f8[::1], f8[::1], f8[::1], f8[::1])")
def touches(x: Floats, y: Floats, angles: Floats, found: Floats) -> None:
    """How much of a ring's edge runs along or across each angle."""
    for k in range(len(angles)):
        c, s, found[k] = math.cos(angles[k]), math.sin(angles[k]), 0.0
        x0, y0 = x[-1], y[-1]
        for i in range(len(x)):
            dx, dy = x[i] - x0, y[i] - y0
            size2 = dx * dx + dy * dy
            if 2 * abs((dx * c + dy * s) * (dy * c - dx * s)) < 1e-4 * size2:
                found[k] += math.sqrt(size2)
            x0, y0 = x[i], y[i]
