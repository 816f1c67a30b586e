"""Closed outlines as polygons: area, sizes, moments, and moving the edge by a bit's radius.

A ring is an (n, 2) array of corners; the last joins the first.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import numpy.typing as npt

from station.cutting.hull import boxes, hull, touches
from station.cutting.model import Bools, Floats, Ring
from station.cutting.moves import apart

CHORD_MM = 0.0005  # how far chords of a drawn arc may lie off it
MOST_CHORDS = 1440
MOST_SIDES, MOST_TIES = 160, 24  # how many angles of a hull are tried
Values = npt.NDArray[Any]
JOIN = np.radians(6)  # step of the round joins


def shifted(column: Values) -> Values:
    """Each value's next; the last's is the first."""
    return np.concatenate((column[1:], column[:1]))


def area_of(ring: Ring) -> float:
    """Signed area, counter-clockwise positive."""
    x, y = ring[:, 0] - ring[0, 0], ring[:, 1] - ring[0, 1]
    return float(np.dot(x, shifted(y)) - np.dot(y, shifted(x))) / 2


def perimeter_of(ring: Ring) -> float:
    """Length all around."""
    step = shifted(ring) - ring
    return float(np.hypot(step[:, 0], step[:, 1]).sum())


def centroid_of(ring: Ring) -> Floats:
    """Centre of area."""
    base = ring[0]
    p = ring - base
    q = shifted(p)
    cross = p[:, 0] * q[:, 1] - q[:, 0] * p[:, 1]
    total = cross.sum()
    if abs(total) < 1e-12:
        return np.asarray(ring.mean(axis=0))
    return np.asarray(base + ((p + q) * cross[:, None]).sum(axis=0) / (3 * total))


def tidy(ring: Ring) -> Ring:
    """Without corners that repeat the one before, counter-clockwise."""
    step = shifted(ring) - ring
    ring = ring[np.hypot(step[:, 0], step[:, 1]) > 1e-6]
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
    edges = np.arange(len(ring))
    step = shifted(ring) - ring
    way = step / np.hypot(step[:, 0], step[:, 1])[:, None]
    moved = ring + by * np.column_stack((way[:, 1], -way[:, 0]))
    far = moved + step
    for _ in range(60):
        if len(edges) < 3:
            return None
        before, after = _joints(edges, way, moved, far, by)
        gone = _turned_round(edges, way, before, after)
        if not gone.any():
            return _whole(ring, edges, before, after)
        edges = edges[~gone]
    return None


def _joints(edges: np.ndarray, way: Floats, moved: Floats, far: Floats, by: float
            ) -> tuple[Floats, Floats]:  # fmt: skip
    """Where each kept edge now starts and ends."""
    nexts = shifted(edges)
    d1, d2 = way[edges], way[nexts]
    cross = d1[:, 0] * d2[:, 1] - d1[:, 1] * d2[:, 0]
    dot = (d1 * d2).sum(axis=1)
    opens = (cross * by > 0) & ((edges + 1) % len(way) == nexts)
    gap = moved[nexts] - far[edges]
    with np.errstate(divide="ignore", invalid="ignore"):
        reach = (gap[:, 0] * d2[:, 1] - gap[:, 1] * d2[:, 0]) / cross
    straight = np.abs(cross) < 1e-9
    sharp = straight & (dot < 0)
    meet = far[edges] + d1 * np.where(straight, 0.0, reach)[:, None]
    end = np.where((opens | sharp)[:, None], far[edges], meet)
    start = np.where((opens | sharp)[:, None], moved[nexts], meet)
    return np.concatenate((start[-1:], start[:-1])), end


def _turned_round(edges: np.ndarray, way: Floats, before: Floats, after: Floats) -> Bools:
    length = ((after - before) * way[edges]).sum(axis=1)
    bad = length < -1e-9
    if bad.sum() > 1:  # of neighbours that turn round, the worst goes first
        worst = (length <= np.roll(length, 1)) & (length <= np.roll(length, -1))
        bad &= worst
    return np.asarray(bad)


def _whole(ring: Ring, edges: np.ndarray, before: Floats, after: Floats) -> Ring | None:
    """Puts the edges and the round joins between them together."""
    starts = shifted(before)
    corner = ring[(edges + 1) % len(ring)]
    open_ = np.hypot(*(starts - after).T) > 1e-9
    brief = open_ & (np.hypot(*(starts - after).T) < JOIN * np.hypot(*(after - corner).T))
    corners = np.stack((after, starts), axis=1).reshape(-1, 2)
    wanted = np.column_stack((np.ones(len(edges), bool), brief)).ravel()
    pieces: list[Floats] = []
    done = 0
    for i in np.flatnonzero(open_ & ~brief).tolist():
        pieces.append(corners[done : 2 * i + 1][wanted[done : 2 * i + 1]])
        pieces.append(_join(after[i], starts[i], corner[i]))
        done = 2 * i + 2
    pieces.append(corners[done:][wanted[done:]])
    result = tidy_points(np.concatenate(pieces))
    if len(result) < 3 or area_of(result) <= 1e-9:
        return None
    return result


def tidy_points(ring: Ring) -> Ring:
    """Without corners that repeat the one before; its direction is kept."""
    step = shifted(ring) - ring
    return np.asarray(ring[np.hypot(step[:, 0], step[:, 1]) > 1e-6])


def _join(one: Floats, other: Floats, corner: Floats) -> Floats:
    """Points between two ends of a round corner, and its last."""
    a, b = one - corner, other - corner
    turn = float(np.arctan2(a[0] * b[1] - a[1] * b[0], a @ b))
    steps = max(1, int(np.ceil(abs(turn) / JOIN)))
    turned = (a[0] + 1j * a[1]) * np.exp(1j * np.linspace(0, turn, steps + 1)[1:])
    return np.column_stack((turned.real, turned.imag)) + corner


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
