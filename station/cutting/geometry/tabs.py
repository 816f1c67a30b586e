"""Tabs: the stretches of a loop that nothing cuts through."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from station.cutting.geometry.cover import covered
from station.cutting.geometry.loops import Loop, cut_moves
from station.cutting.geometry.moves import Geometry
from station.cutting.geometry.walk import BRIDGE, Edges
from station.cutting.model import Bools, Floats, Ints, Moves

STEP_MM = 0.25
MOST_STEPS = 4000
BRIEF_MM = 0.4  # an uncut stretch shorter than this is none


@dataclass(frozen=True)
class Stretch:
    """An uncut stretch of a loop: where its middle is, how long, and what it lies on."""

    x: float
    y: float
    away: tuple[float, float]  # unit normal, to the right of the way around
    length: float
    top: float  # highest z on it; inf: jumped over
    ramped: bool
    move: int


@dataclass(frozen=True)
class Marks:
    """A lap in small steps: their edge, middle and length, and whether each is cut through."""

    edge: Ints
    points: Floats
    step: Floats
    cut: Bools


def marked(laps: Sequence[Loop], moves: Moves, geo: Geometry, through_z: float) -> list[Marks]:
    """All laps in small steps. An edge that goes through is one step, and cut."""
    if not laps:
        return []
    found = _steps([lap.edges for lap in laps])
    open_ = [~m.cut for m in found]
    points = [m.points[o] for m, o in zip(found, open_, strict=True)]
    if sum(map(len, points)):
        cuts = np.flatnonzero(cut_moves(moves, geo.flat, through_z))
        done = covered(np.concatenate(points), moves, cuts, geo.low, geo.high)
        at = 0
        for marks, some in zip(found, open_, strict=True):
            count = int(some.sum())
            marks.cut[some] = done[at : at + count]
            at += count
    return found


def _steps(laps: list[Edges]) -> list[Marks]:
    """Middles of equal small steps along every edge of every lap."""
    edges = np.concatenate(laps)
    through = edges["through"] > 0
    steps = np.clip(np.ceil(edges["length"] / STEP_MM), 1, MOST_STEPS)
    count = np.where(through, 1, steps).astype(np.int64)
    edge = np.repeat(np.arange(len(edges)), count)
    t = (np.arange(len(edge)) - np.repeat(np.cumsum(count) - count, count) + 0.5) / count[edge]
    step, cut = (edges["length"] / count)[edge], through[edge]
    points = np.zeros((len(edge), 2))  # of what is cut: not asked for
    points[~cut] = _middles(edges[edge[~cut]], t[~cut])
    first = np.cumsum([0, *map(len, laps)])
    begin = np.concatenate(([0], np.cumsum(count)))[first]
    spans = zip(first[:-1].tolist(), begin[:-1].tolist(), begin[1:].tolist(), strict=True)
    return [Marks(edge[a:b] - e, points[a:b], step[a:b], cut[a:b]) for e, a, b in spans]


def _middles(e: Edges, t: Floats) -> Floats:
    """The point on each edge at a share of its length."""
    start = e["x0"] + 1j * e["y0"]
    z = start + t * (e["x1"] + 1j * e["y1"] - start)
    bent = e["sweep"] != 0
    centre = (e["cx"] + 1j * e["cy"])[bent]
    z[bent] = centre + (start[bent] - centre) * np.exp(1j * e["sweep"][bent] * t[bent])
    return np.column_stack((z.real, z.imag))


def stretches(loop: Loop, marks: Marks) -> list[Stretch]:
    """The uncut stretches of a loop, in its order; one over the loop's seam is one."""
    if marks.cut.all():
        return []
    first = int(np.argmax(marks.cut))
    order = np.roll(np.arange(len(marks.cut)), -first)
    uncut = ~marks.cut[order]
    begins = uncut & ~np.concatenate(([False], uncut[:-1]))
    runs = np.split(order[uncut], np.cumsum(uncut)[begins][1:] - 1)
    found = (_stretch(run, loop.edges, marks) for run in runs)
    return [stretch for stretch in found if stretch.length > BRIEF_MM]


def _stretch(run: Ints, edges: Edges, marks: Marks) -> Stretch:
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
    return Stretch(x, y, _away(middle, x, y), length, top, ramped, move)


def _away(edge: Edges, x: float, y: float) -> tuple[float, float]:
    """Unit normal to the right of an edge's way at a point."""
    if edge["sweep"]:
        sign = 1 if edge["sweep"] > 0 else -1
        dx, dy = -(y - edge["cy"]) * sign, (x - edge["cx"]) * sign
    else:
        dx, dy = edge["x1"] - edge["x0"], edge["y1"] - edge["y0"]
    size = float(np.hypot(dx, dy)) or 1.0
    return float(dy / size), float(-dx / size)


def lost(loop: Loop, marks: Marks, z: Floats, through_z: float) -> list[Edges]:
    """Where a lap was lifted over a tab that another cut then takes away: an edge of each."""
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
