"""Closed outlines as polygons: area, length, hull, and the smallest rectangle around.

A ring is an (n, 2) array of corners; the last joins the first.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import numpy.typing as npt

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.moves import split_columns
from station.cutting.model import Floats, Ints, Ring

SAME_MM = 1e-6  # corners nearer than this are one
CHORD_MM = 0.0005  # how far chords of a drawn arc may lie off it
MOST_CHORDS = 1440
ANGLE_STEPS = 1e9  # in a radian: angles nearer to each other are one
MOST_SIDES, MOST_TIES = 160, 24  # how many angles of a hull are tried
SIDE_SHARE = 0.1  # of a hull's length, at least, is straight where a rectangle touches sides
BOW_MM = 0.06  # a side that a curve would leave by more is no chord of it
HIDDEN_MM = 1e-6  # by which a corner of a hull may seem lower than the one before and be higher
BEND = 0.8  # radians: what turns by more is a corner
Values = npt.NDArray[Any]


@compile_inner
def measure_vector(x: float, y: float) -> float:
    """Measures a vector; hypot guards against sizes that no sheet has, and takes longer."""
    return math.sqrt(x * x + y * y)


@compile_entry("UniTuple(f8, 4)(f8[:,:])")
def measure_ring(ring: Floats) -> tuple[float, float, float, float]:
    """Measures a closed ring: signed area, length all around, and the centre of area (x, y)."""
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
        around += measure_vector(x2 - x, y2 - y)
        x, y = x2, y2
    if abs(area) < 1e-12:
        return area / 2, around, ring[:, 0].sum() / n, ring[:, 1].sum() / n
    return area / 2, around, x0 + cx / (3 * area), y0 + cy / (3 * area)


@compile_entry("UniTuple(f8, 2)(f8[:,:])")
def measure_round(ring: Floats) -> tuple[float, float]:
    """Measures a ring as round as the curve that its chords follow: area and length all around.

    Drawn by coarse or by fine chords, a hole measures the same.
    """
    n = len(ring)
    area, around, _, _ = measure_ring(ring)
    x, y = ring[0, 0] - ring[n - 1, 0], ring[0, 1] - ring[n - 1, 1]
    for i in range(n):
        after = i + 1 if i < n - 1 else 0
        x2, y2 = ring[after, 0] - ring[i, 0], ring[after, 1] - ring[i, 1]
        cross, along = x * y2 - x2 * y, x * x2 + y * y2
        if along > 0.0 and abs(math.atan2(cross, along)) < BEND:
            size, size2 = measure_vector(x, y), measure_vector(x2, y2)
            bend = 2 * cross / (size * size2 * measure_vector(x + x2, y + y2))  # 1 / radius
            for side in (size, size2):
                if abs(bend) * side * side < 8 * BOW_MM:
                    area += bend * side**3 / 24  # half of what lies between chord and curve
                    around += bend * bend * side**3 / 48
        x, y = x2, y2
    return abs(area), around


@compile_entry("f8[:,::1](f8[:,:])")
def drop_repeats(ring: Floats) -> Floats:
    """Gives a ring without corners that repeat the one before."""
    n, made = len(ring), 0
    out = np.empty((n, 2))
    for i in range(n):
        after = (i + 1) % n
        if measure_vector(ring[after, 0] - ring[i, 0], ring[after, 1] - ring[i, 1]) > SAME_MM:
            out[made, 0], out[made, 1] = ring[i, 0], ring[i, 1]
            made += 1
    return out[:made]


def shift_values(column: Values) -> Values:
    """Gives each value's next; the last's is the first."""
    return np.concatenate((column[1:], column[:1]))


def area_of(ring: Ring) -> float:
    """Gives the signed area, counter-clockwise positive."""
    return measure_ring(ring)[0]


def perimeter_of(ring: Ring) -> float:
    """Gives the length all around."""
    return measure_ring(ring)[1]


def centroid_of(ring: Ring) -> Floats:
    """Gives the centre of area."""
    return np.array(measure_ring(ring)[2:])


def tidy_ring(ring: Ring) -> Ring:
    """Gives a ring counter-clockwise, without corners that repeat the one before."""
    ring = drop_repeats(ring)
    if len(ring) > 2 and area_of(ring) < 0:
        ring = ring[::-1]
    return ring


@compile_entry("b1(f8[:,:], f8[:])")
def contains_point(ring: Ring, point: Floats) -> bool:
    """Tells whether a ring goes around a point, however often, as a way of several laps does."""
    times = 0
    for i in range(len(ring)):
        x, y = ring[i, 0] - point[0], ring[i, 1] - point[1]
        n = i + 1 if i < len(ring) - 1 else 0
        x2, y2 = ring[n, 0] - point[0], ring[n, 1] - point[1]
        if (y > 0) != (y2 > 0) and x - y * (x2 - x) / (y2 - y) > 0:
            times += 1 if y2 > 0 else -1
    return times != 0


def find_hull(points: Ring) -> Ring:
    """Finds the convex hull, counter-clockwise."""
    x, y = split_columns(points)
    order = np.lexsort((y, x))  # a ring goes up and down a few times: that is sorted at once
    kept = np.empty(2 * len(points) + 1, np.int64)
    count = fill_hull(x, y, order, np.ascontiguousarray(order[::-1]), kept)
    return np.asarray(points[kept[:count]])


def find_rectangle(ring: Ring) -> tuple[float, float, float]:
    """Finds width, length and the angle of the length of the smallest rectangle around a ring.

    Among rectangles of almost the same area the one is taken that touches the most edge, if it
    touches a side at all; of a shape without sides it is the smallest.
    """
    around = find_hull(ring)
    step = shift_values(around) - around
    angles = np.mod(np.arctan2(step[:, 1], step[:, 0]), np.pi / 2)
    size = np.hypot(step[:, 0], step[:, 1])
    longest = angles[np.argsort(-size)[:MOST_SIDES]] if len(around) > MOST_SIDES else angles
    x, y = split_columns(around)
    tried, wide, high = try_angles(x, y, np.append(longest, 0.0))
    if len(longest) < len(angles):
        off = np.abs(angles - tried[np.argmin(wide * high)])
        near = angles[np.argsort(np.minimum(off, np.pi / 2 - off))[:MOST_SIDES]]
        tried, wide, high = try_angles(x, y, np.concatenate((longest, near, [0.0])))
    area = wide * high
    near = np.flatnonzero(area <= area.min() * 1.0005)
    near = near[np.argsort(area[near], kind="stable")[:MOST_TIES]]
    along = np.empty(len(near))
    fill_touches(x, y, tried[near], along)
    best = int(near[np.argmax(along) if along.max() > SIDE_SHARE * size.sum() else 0])
    length, width, turn = float(wide[best]), float(high[best]), float(tried[best])
    return (width, length, turn) if width <= length else (length, width, turn + np.pi / 2)


@compile_inner
def _fill_half_hull(x: Floats, y: Floats, order: Ints, kept: Ints, first: int) -> int:
    """Puts one side of the hull behind what is kept already; gives where it ends."""
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


@compile_entry("i8(f8[::1], f8[::1], i8[::1], i8[::1], i8[::1])")
def fill_hull(x: Floats, y: Floats, order: Ints, back: Ints, kept: Ints) -> int:
    """Puts the corners of the convex hull, counter-clockwise, into `kept`; gives how many there
    are.

    `order` are the points by x, then y; `back` the same backward.
    """
    return _fill_half_hull(x, y, back, kept, _fill_half_hull(x, y, order, kept, 0))


@compile_inner
def _reach_on(x: Floats, y: Floats, c: float, s: float, first: int) -> tuple[int, float]:
    """Finds the corner of a hull that reaches furthest along a direction, and how far it does:
    from the first one uphill, and on as far as rounding might hide a higher one.
    """
    n, best = len(x), first
    most = x[first] * c + y[first] * s
    for way in (1, -1):
        i = first
        for _ in range(n):
            i += way
            i = 0 if i == n else i if i >= 0 else n - 1
            reach = x[i] * c + y[i] * s
            if reach > most:
                best, most = i, reach
            elif reach < most - HIDDEN_MM:
                break
    return best, most


@compile_entry("UniTuple(f8[::1], 3)(f8[::1], f8[::1], f8[::1])")
def try_angles(x: Floats, y: Floats, angles: Floats) -> tuple[Floats, Floats, Floats]:
    """Measures how far the corners of a hull, in their order, reach along and across each angle;
    gives the angles once each.
    """
    tried, n = np.sort(np.rint(angles * ANGLE_STEPS) / ANGLE_STEPS), 1
    for k in range(1, len(tried)):
        if tried[k] != tried[n - 1]:
            tried[n] = tried[k]
            n += 1
    tried = tried[:n].copy()
    c, s = np.cos(tried), np.sin(tried)
    along, across = np.empty(n), np.empty(n)
    right, left, over, under = 0, 0, 0, 0  # the corners that reach furthest
    for k in range(n):
        right, most = _reach_on(x, y, c[k], s[k], right)
        left, least = _reach_on(x, y, -c[k], -s[k], left)
        over, most2 = _reach_on(x, y, -s[k], c[k], over)
        under, least2 = _reach_on(x, y, s[k], -c[k], under)
        along[k], across[k] = most + least, most2 + least2
    return tried, along, across


@compile_entry("void(f8[::1], f8[::1], f8[::1], f8[::1])")
def fill_touches(x: Floats, y: Floats, angles: Floats, found: Floats) -> None:
    """Fills in how much of a ring's edge runs along or across each angle."""
    for k in range(len(angles)):
        c, s, found[k] = math.cos(angles[k]), math.sin(angles[k]), 0.0
        x0, y0 = x[-1], y[-1]
        for i in range(len(x)):
            dx, dy = x[i] - x0, y[i] - y0
            size2 = dx * dx + dy * dy
            if 2 * abs((dx * c + dy * s) * (dy * c - dx * s)) < 1e-4 * size2:
                found[k] += math.sqrt(size2)
            x0, y0 = x[i], y[i]
