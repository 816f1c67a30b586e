"""The edge of an outline moved by a bit's radius, compiled."""

from __future__ import annotations

import math

import numpy as np

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.rings import SAME_MM, area_of, measure_vector, tidy_ring
from station.cutting.model import Floats, Ints, Ring

JOIN = math.radians(6)  # step of the round joins
MOST_ROUNDS = 60


@compile_inner
def _move_edges(
    ring: Floats, way: Floats, kept: Ints, count: int, by: float, starts: Floats, ends: Floats
) -> None:
    """Finds where each kept edge now starts and ends: moved outward by `by` mm."""
    n = len(ring)
    for k in range(count):
        e, after = kept[k], (k + 1) % count
        f = kept[after]
        cross = way[e, 0] * way[f, 1] - way[e, 1] * way[f, 0]
        x, y = ring[(e + 1) % n, 0] + by * way[e, 1], ring[(e + 1) % n, 1] - by * way[e, 0]
        x2, y2 = ring[f, 0] + by * way[f, 1], ring[f, 1] - by * way[f, 0]
        straight = abs(cross) < 1e-9
        back = straight and way[e, 0] * way[f, 0] + way[e, 1] * way[f, 1] < 0
        if not back and not (cross * by > 0 and (e + 1) % n == f):
            reach = 0.0 if straight else ((x2 - x) * way[f, 1] - (y2 - y) * way[f, 0]) / cross
            x, y = x + way[e, 0] * reach, y + way[e, 1] * reach
            x2, y2 = x, y
        ends[k, 0], ends[k, 1], starts[after, 0], starts[after, 1] = x, y, x2, y2


@compile_inner
def _drop_turned(
    way: Floats, kept: Ints, count: int, starts: Floats, ends: Floats, length: Floats
) -> int:
    """Drops edges that turned round; of neighbours that did, the worst goes first."""
    bad = 0
    for k in range(count):
        e = kept[k]
        length[k] = ((ends[k, 0] - starts[k, 0]) * way[e, 0]
                     + (ends[k, 1] - starts[k, 1]) * way[e, 1])  # fmt: skip
        bad += length[k] < -1e-9
    left = 0
    for k in range(count):
        worst = length[k] <= length[k - 1 if k else count - 1]
        worst = worst and length[k] <= length[(k + 1) % count]
        if length[k] >= -1e-9 or not (worst or bad == 1):
            kept[left] = kept[k]
            left += 1
    return left


@compile_inner
def _find_gap(
    ring: Floats, kept: Ints, count: int, k: int, starts: Floats, ends: Floats
) -> tuple[float, float, float]:
    """Finds the open corner after an edge: how wide, and the spoke from its middle; 0: closed."""
    corner, after = (kept[k] + 1) % len(ring), (k + 1) % count
    wide = measure_vector(starts[after, 0] - ends[k, 0], starts[after, 1] - ends[k, 1])
    return wide, ends[k, 0] - ring[corner, 0], ends[k, 1] - ring[corner, 1]


@compile_inner
def _find_join(
    ring: Floats, kept: Ints, count: int, k: int, starts: Floats, ends: Floats
) -> float:
    """Finds the angle of the round join after an edge; 0: none, or too little to be round."""
    wide, x, y = _find_gap(ring, kept, count, k, starts, ends)
    if wide <= 1e-9 or wide < JOIN * measure_vector(x, y):
        return 0.0
    corner, after = (kept[k] + 1) % len(ring), (k + 1) % count
    x2, y2 = starts[after, 0] - ring[corner, 0], starts[after, 1] - ring[corner, 1]
    return math.atan2(x * y2 - y * x2, x * x2 + y * y2)


@compile_inner
def _put_corner(out: Floats, count: int, x: float, y: float) -> int:
    """Puts one more corner, unless it is the one before."""
    if count and measure_vector(x - out[count - 1, 0], y - out[count - 1, 1]) <= SAME_MM:
        return count
    out[count, 0], out[count, 1] = x, y
    return count + 1


@compile_inner
def _lay_ring(ring: Floats, kept: Ints, count: int, starts: Floats, ends: Floats) -> Floats:
    """Lays the moved edges and the round joins between them as one ring."""
    room = 0
    for k in range(count):
        turn = _find_join(ring, kept, count, k, starts, ends)
        room += 2 + math.ceil(abs(turn) / JOIN)
    out, made = np.empty((room, 2)), 0
    for k in range(count):
        made = _put_corner(out, made, ends[k, 0], ends[k, 1])
        turn, after = _find_join(ring, kept, count, k, starts, ends), (k + 1) % count
        _, x, y = _find_gap(ring, kept, count, k, starts, ends)
        corner = (kept[k] + 1) % len(ring)
        steps = max(1, math.ceil(abs(turn) / JOIN)) if turn != 0 else 0
        for step in range(1, steps):
            c, s = math.cos(turn * step / steps), math.sin(turn * step / steps)
            left, up = ring[corner, 0] + x * c - y * s, ring[corner, 1] + x * s + y * c
            made = _put_corner(out, made, left, up)
        made = _put_corner(out, made, starts[after, 0], starts[after, 1])
    while made > 1:
        if measure_vector(out[made - 1, 0] - out[0, 0], out[made - 1, 1] - out[0, 1]) > SAME_MM:
            break
        made -= 1
    return out[:made]


@compile_entry("f8[:,::1](f8[:,::1], f8)")
def move_edge(ring: Floats, by: float) -> Floats:
    """Moves a ring's edge outward by `by` mm; no corners where nothing is left.

    The ring is counter-clockwise, no two neighbours the same. Corners that open are rounded as
    a bit rounds them; edges that turn round are left out.
    """
    n = len(ring)
    way, kept = np.empty((n, 2)), np.arange(n)
    starts, ends, length = np.empty((n, 2)), np.empty((n, 2)), np.empty(n)
    for i in range(n):
        x, y = ring[(i + 1) % n, 0] - ring[i, 0], ring[(i + 1) % n, 1] - ring[i, 1]
        size = measure_vector(x, y)
        way[i, 0], way[i, 1] = x / size, y / size
    count = n
    for _ in range(MOST_ROUNDS):
        if count < 3:
            break
        _move_edges(ring, way, kept, count, by, starts, ends)
        left = _drop_turned(way, kept, count, starts, ends, length)
        if left == count:
            return _lay_ring(ring, kept, count, starts, ends)
        count = left
    return np.empty((0, 2))


def offset_ring(ring: Ring, by: float) -> Ring | None:
    """Moves the ring's edge outward (`by` > 0) or inward; None where nothing is left.

    Corners that open are rounded as a bit rounds them; edges that vanish are left out.
    """
    ring = tidy_ring(ring)
    if len(ring) < 3:
        return None
    if abs(by) < 1e-12:
        return ring
    edge = move_edge(np.ascontiguousarray(ring), by)
    return edge if len(edge) > 2 and area_of(edge) > 1e-9 else None
