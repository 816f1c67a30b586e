"""Which points of a loop lie on a cut through the sheet, compiled."""

from __future__ import annotations

import math

import numpy as np

from station.cutting.compiled import entry, inner
from station.cutting.geometry.moves import apart
from station.cutting.model import CW, XY, Bools, Bytes, Floats, Ints, Moves

ON_MM = 0.02  # a cut this near runs along the loop
CELL_MM = 10.0
MOST_CELLS = 2000  # along one side


@inner
def _on_line(px: float, py: float, x: float, y: float, x2: float, y2: float) -> bool:
    dx, dy = x2 - x, y2 - y
    t = ((px - x) * dx + (py - y) * dy) / max(dx * dx + dy * dy, 1e-12)
    t = min(max(t, 0.0), 1.0)
    return math.hypot(px - x - t * dx, py - y - t * dy) <= ON_MM


@inner
def _on_arc(px: float, py: float, x: float, y: float, cx: float, cy: float, sweep: float) -> bool:
    r = math.hypot(x - cx, y - cy)
    if abs(math.hypot(px - cx, py - cy) - r) > ON_MM:
        return False
    angle = math.atan2(py - cy, px - cx) - math.atan2(y - cy, x - cx)
    angle = (angle if sweep > 0 else -angle) % (2 * math.pi)
    slack = ON_MM / max(r, ON_MM)
    return angle <= abs(sweep) + slack or angle >= 2 * math.pi - slack


@inner
def _span(a: float, b: float, low: float, cells: int) -> tuple[int, int]:
    """The cells from a to b, as many as there are. What lies too far out is in the last."""
    far = cells - 1.0 if cells > MOST_CELLS else cells
    first = (min(a, b) - ON_MM - low) / CELL_MM
    last = (max(a, b) + ON_MM - low) / CELL_MM
    return int(min(max(first, 0.0), far)), int(min(max(last, -1.0), cells - 1.0)) + 1


@entry(
    "void(f8[::1], f8[::1], i8[::1], i8[::1], f8, f8, i8, i8, i8[::1], f8[::1],"
    " f8[::1], u1[::1], u1[::1], f8[::1], f8[::1], f8[::1], f8[:,::1], f8[:,::1], b1[::1])"
)
def cover(
    px: Floats, py: Floats, order: Ints, starts: Ints, left: float, front: float,
    wide: int, deep: int, cuts: Ints, x: Floats, y: Floats, kind: Bytes, plane: Bytes,
    c0: Floats, c1: Floats, sweep: Floats, low: Floats, high: Floats, done: Bools,
) -> None:  # fmt: skip
    """Marks points that lie on one of the moves `cuts`.

    Points stand in cells of a grid: `order` by cell, `starts` where a cell begins in it.
    """
    for i in cuts:
        bent = kind[i] >= CW and plane[i] == XY
        steep = abs(x[i + 1] - x[i]) > 1e-9 and not bent
        slope = (y[i + 1] - y[i]) / (x[i + 1] - x[i]) if steep else 0.0
        a, b = _span(low[0, i], high[0, i], left, wide)
        for column in range(a, b):
            y0, y1 = low[1, i], high[1, i]
            if steep:
                edge = min(max(left + column * CELL_MM - ON_MM, low[0, i]), high[0, i])
                over = min(max(left + (column + 1) * CELL_MM + ON_MM, low[0, i]), high[0, i])
                y0, y1 = y[i] + slope * (edge - x[i]), y[i] + slope * (over - x[i])
            c, d = _span(y0, y1, front, deep)
            for k in range(starts[column * deep + c], starts[column * deep + max(c, d)]):
                p = order[k]
                if done[p]:
                    continue
                if bent:
                    done[p] = _on_arc(px[p], py[p], x[i], y[i], c0[i], c1[i], sweep[i])
                else:
                    done[p] = _on_line(px[p], py[p], x[i], y[i], x[i + 1], y[i + 1])


def covered(points: Floats, moves: Moves, cuts: Ints, low: Floats, high: Floats) -> Bools:
    """Which points lie on one of the moves `cuts`.

    `low` and `high` are the moves' boxes, (n, 3). Points far out stand in the last cells.
    """
    done = np.zeros(len(points), dtype=bool)
    if not len(points) or not len(cuts):
        return done
    left, front = points.min(axis=0)
    span = (points.max(axis=0) - (left, front)) / CELL_MM
    wide, deep = (int(min(s, MOST_CELLS)) + 1 for s in span)
    place = np.minimum((points - (left, front)) / CELL_MM, (wide - 1, deep - 1)).astype(np.int64)
    cell = place[:, 0] * deep + place[:, 1]
    order = np.argsort(cell, kind="stable")
    starts = np.searchsorted(cell[order], np.arange(wide * deep + 1)).astype(np.int64)
    x, y, _ = apart(moves.points)
    c0, c1 = apart(moves.centre)
    px, py = apart(points)
    cover(px, py, order, starts, left, front, wide, deep, cuts, x, y, moves.kind,
          moves.plane, c0, c1, moves.sweep, np.ascontiguousarray(low.T),
          np.ascontiguousarray(high.T), done)  # fmt: skip
    return done
