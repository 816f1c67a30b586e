"""Tabs: the stretches of a loop that nothing cuts through."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.loops import BRIDGE, CutLoop, Edges, pick_cuts
from station.cutting.geometry.moves import Geometry, split_columns
from station.cutting.model import CW, XY, Bools, Bytes, Floats, Ints, Moves

ON_MM = 0.02  # a cut this near runs along the loop
CELL_MM = 10.0
MOST_CELLS = 2000  # along one side
STEP_MM = 0.25
MOST_STEPS = 4000
BRIEF_MM = 0.4  # an uncut stretch shorter than this is none


@compile_inner
def _is_on_line(px: float, py: float, x: float, y: float, x2: float, y2: float) -> bool:
    """Tells whether a point lies on a straight move."""
    dx, dy = x2 - x, y2 - y
    t = ((px - x) * dx + (py - y) * dy) / max(dx * dx + dy * dy, 1e-12)
    t = min(max(t, 0.0), 1.0)
    return math.hypot(px - x - t * dx, py - y - t * dy) <= ON_MM


@compile_inner
def _is_on_arc(
    px: float, py: float, x: float, y: float, cx: float, cy: float, sweep: float
) -> bool:
    """Tells whether a point lies on an arc."""
    r = math.hypot(x - cx, y - cy)
    if abs(math.hypot(px - cx, py - cy) - r) > ON_MM:
        return False
    angle = math.atan2(py - cy, px - cx) - math.atan2(y - cy, x - cx)
    angle = (angle if sweep > 0 else -angle) % (2 * math.pi)
    slack = ON_MM / max(r, ON_MM)
    return angle <= abs(sweep) + slack or angle >= 2 * math.pi - slack


@compile_inner
def _find_cells(a: float, b: float, low: float, cells: int) -> tuple[int, int]:
    """Finds the cells from a to b, as many as there are. What lies too far out is in the last."""
    far = cells - 1.0 if cells > MOST_CELLS else cells
    first = (min(a, b) - ON_MM - low) / CELL_MM
    last = (max(a, b) + ON_MM - low) / CELL_MM
    return int(min(max(first, 0.0), far)), int(min(max(last, -1.0), cells - 1.0)) + 1


@compile_entry(
    "void(f8[::1], f8[::1], i8[::1], i8[::1], f8, f8, i8, i8, i8[::1], f8[::1],"
    " f8[::1], u1[::1], u1[::1], f8[::1], f8[::1], f8[::1], f8[:,::1], f8[:,::1], b1[::1])"
)
def mark_covered(
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
        a, b = _find_cells(low[0, i], high[0, i], left, wide)
        for column in range(a, b):
            y0, y1 = low[1, i], high[1, i]
            if steep:
                edge = min(max(left + column * CELL_MM - ON_MM, low[0, i]), high[0, i])
                over = min(max(left + (column + 1) * CELL_MM + ON_MM, low[0, i]), high[0, i])
                y0, y1 = y[i] + slope * (edge - x[i]), y[i] + slope * (over - x[i])
            c, d = _find_cells(y0, y1, front, deep)
            for k in range(starts[column * deep + c], starts[column * deep + max(c, d)]):
                p = order[k]
                if done[p]:
                    continue
                if bent:
                    done[p] = _is_on_arc(px[p], py[p], x[i], y[i], c0[i], c1[i], sweep[i])
                else:
                    done[p] = _is_on_line(px[p], py[p], x[i], y[i], x[i + 1], y[i + 1])


def find_covered(points: Floats, moves: Moves, cuts: Ints, low: Floats, high: Floats) -> Bools:
    """Finds which points lie on one of the moves `cuts`.

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
    x, y, _ = split_columns(moves.points)
    c0, c1 = split_columns(moves.centre)
    px, py = split_columns(points)
    mark_covered(
        px, py, order, starts, left, front, wide, deep, cuts, x, y, moves.kind, moves.plane,
        c0, c1, moves.sweep, np.ascontiguousarray(low.T), np.ascontiguousarray(high.T), done,
    )  # fmt: skip
    return done


@dataclass(frozen=True)
class Stretch:
    """Holds an uncut stretch of a loop: where its middle is, how long, and what it lies on."""

    x: float
    y: float
    away: tuple[float, float]  # unit normal, to the right of the way around
    length: float
    top: float  # highest z on it; inf: jumped over
    ramped: bool
    move: int


@dataclass(frozen=True)
class LapSteps:
    """Holds a lap in small steps: edge, middle and length of each, and whether it is cut."""

    edge: Ints
    points: Floats
    step: Floats
    cut: Bools


def step_laps(
    laps: Sequence[CutLoop], moves: Moves, geo: Geometry, through_z: float
) -> list[LapSteps]:
    """Goes over all laps in small steps. An edge that goes through is one step, and cut."""
    if not laps:
        return []
    found = _make_steps([lap.edges for lap in laps])
    open_ = [~m.cut for m in found]
    points = [m.points[o] for m, o in zip(found, open_, strict=True)]
    if sum(map(len, points)):
        cuts = np.flatnonzero(pick_cuts(moves, geo.flat, through_z))
        done = find_covered(np.concatenate(points), moves, cuts, geo.low, geo.high)
        at = 0
        for marks, some in zip(found, open_, strict=True):
            count = int(some.sum())
            marks.cut[some] = done[at : at + count]
            at += count
    return found


def _make_steps(laps: list[Edges]) -> list[LapSteps]:
    """Makes equal small steps along every edge of every lap."""
    edges = np.concatenate(laps)
    through = edges["through"] > 0
    steps = np.clip(np.ceil(edges["length"] / STEP_MM), 1, MOST_STEPS)
    count = np.where(through, 1, steps).astype(np.int64)
    edge = np.repeat(np.arange(len(edges)), count)
    t = (np.arange(len(edge)) - np.repeat(np.cumsum(count) - count, count) + 0.5) / count[edge]
    step, cut = (edges["length"] / count)[edge], through[edge]
    points = np.zeros((len(edge), 2))  # of what is cut: not asked for
    points[~cut] = _find_middles(edges[edge[~cut]], t[~cut])
    first = np.cumsum([0, *map(len, laps)])
    begin = np.concatenate(([0], np.cumsum(count)))[first]
    spans = zip(first[:-1].tolist(), begin[:-1].tolist(), begin[1:].tolist(), strict=True)
    return [LapSteps(edge[a:b] - e, points[a:b], step[a:b], cut[a:b]) for e, a, b in spans]


def _find_middles(e: Edges, t: Floats) -> Floats:
    """Finds the point on each edge at a share of its length."""
    start = e["x0"] + 1j * e["y0"]
    z = start + t * (e["x1"] + 1j * e["y1"] - start)
    bent = e["sweep"] != 0
    centre = (e["cx"] + 1j * e["cy"])[bent]
    z[bent] = centre + (start[bent] - centre) * np.exp(1j * e["sweep"][bent] * t[bent])
    return np.column_stack((z.real, z.imag))


def find_stretches(loop: CutLoop, marks: LapSteps) -> list[Stretch]:
    """Finds the uncut stretches of a loop, in its order; one over the loop's seam is one."""
    if marks.cut.all():
        return []
    first = int(np.argmax(marks.cut))
    order = np.roll(np.arange(len(marks.cut)), -first)
    uncut = ~marks.cut[order]
    begins = uncut & ~np.concatenate(([False], uncut[:-1]))
    runs = np.split(order[uncut], np.cumsum(uncut)[begins][1:] - 1)
    found = (_make_stretch(run, loop.edges, marks) for run in runs)
    return [stretch for stretch in found if stretch.length > BRIEF_MM]


def _make_stretch(run: Ints, edges: Edges, marks: LapSteps) -> Stretch:
    """Makes the stretch of a run of uncut steps."""
    length = float(marks.step[run].sum())
    x, y = map(
        float, (marks.points[run[(len(run) - 1) // 2]] + marks.points[run[len(run) // 2]]) / 2
    )
    passed = np.cumsum(marks.step[run]) >= length / 2 - 1e-9
    middle = edges[marks.edge[run[int(np.argmax(passed))]]]
    on = edges[np.unique(marks.edge[run])]
    real = on[on["move"] != BRIDGE]
    top = float(on["top"].max())
    ramped = len(real) > 1 and top != np.inf and float(on["top"].min()) == top
    move = int(real["move"][0]) if len(real) else int(edges["move"].max())
    return Stretch(x, y, _find_normal(middle, x, y), length, top, ramped, move)


def _find_normal(edge: Edges, x: float, y: float) -> tuple[float, float]:
    """Finds the unit normal to the right of an edge's way at a point."""
    if edge["sweep"]:
        sign = 1 if edge["sweep"] > 0 else -1
        dx, dy = -(y - edge["cy"]) * sign, (x - edge["cx"]) * sign
    else:
        dx, dy = edge["x1"] - edge["x0"], edge["y1"] - edge["y0"]
    size = float(np.hypot(dx, dy)) or 1.0
    return float(dy / size), float(-dx / size)


def find_lost_tabs(loop: CutLoop, marks: LapSteps, z: Floats, through_z: float) -> list[Edges]:
    """Finds where a lap was lifted over a tab that another cut takes away: an edge of each."""
    edges = loop.edges
    if marks.cut.all() and (edges["through"] > 0).all():
        return []
    lifted = (edges["through"] == 0) & (edges["move"] != BRIDGE)
    begins = lifted & np.roll(edges["through"] > 0, 1)
    if not begins.any():
        return []
    uncut = np.zeros(len(edges), dtype=bool)
    uncut[marks.edge[~marks.cut]] = True
    index = np.flatnonzero(lifted)
    group = np.cumsum(begins[index])
    found = []
    for run in np.split(index, np.flatnonzero(np.diff(group)) + 1):
        first = int(edges["move"][run[0]])
        lies = z[first] <= through_z or (first > 0 and z[first - 1] <= through_z)
        if begins[run[0]] and lies and not uncut[run].any():
            found.append(edges[run[len(run) // 2]])
    return found
