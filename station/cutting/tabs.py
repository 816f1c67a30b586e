"""Tabs: the stretches of a loop that nothing cuts through."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.cutting.loops import BRIDGE, Edge, Loop, cut_moves
from station.cutting.model import CW, XY, Bools, Floats, Moves
from station.cutting.moves import Geometry

STEP_MM = 0.25
ON_MM = 0.02  # a cut this near runs along the loop
BRIEF_MM = 0.4  # an uncut stretch shorter than this is none


@dataclass(frozen=True)
class Stretch:
    """An uncut stretch of a loop: where its middle is, how long, and the edges it lies on."""

    x: float
    y: float
    away: tuple[float, float]  # unit normal, to the right of the way around
    length: float
    top: float  # highest z on it; inf: jumped over
    ramped: bool
    move: int


@dataclass(frozen=True)
class Cuts:
    """All cuts through the sheet, to ask which of them run along a stretch."""

    moves: Moves
    index: np.ndarray
    low: Floats
    high: Floats


def cuts_of(moves: Moves, geo: Geometry, through_z: float) -> Cuts:
    """The cuts through the sheet with their boxes."""
    index = np.flatnonzero(cut_moves(moves, geo.flat, through_z))
    return Cuts(moves, index, geo.low[index, :2] - ON_MM, geo.high[index, :2] + ON_MM)


def stretches(loop: Loop, cuts: Cuts) -> list[Stretch]:
    """The uncut stretches of a loop, in its order."""
    if all(edge.through for edge in loop.edges):
        return []
    marks: list[tuple[float, Floats, int, bool]] = []  # length, point, edge, cut
    for number, edge in enumerate(loop.edges):
        points, each = _samples(edge)
        cut = np.ones(len(points), bool) if edge.through else _covered(points, cuts, edge)
        marks += [(each, p, number, bool(c)) for p, c in zip(points, cut, strict=True)]
    return [
        found
        for run in _runs(marks)
        if (found := _stretch(run, loop)) is not None and found.length > BRIEF_MM
    ]


def lost(loop: Loop, cuts: Cuts, through_z: float) -> list[Edge]:
    """Where a lap was lifted over a tab that another cut then takes away: an edge of each."""
    found: list[Edge] = []
    for lap in (loop, *loop.others):
        for run in _lifted(lap):
            rises = float(cuts.moves.points[run[0].move, 2]) > through_z and (
                float(cuts.moves.points[max(0, run[0].move - 1), 2]) <= through_z
            )
            slopes = float(cuts.moves.points[run[0].move, 2]) <= through_z
            if (rises or slopes) and all(_covered(_samples(e)[0], cuts, e).all() for e in run):
                found.append(run[len(run) // 2])
    return found


def _lifted(lap: Loop) -> list[list[Edge]]:
    """Runs of edges that do not go through, each between edges that do."""
    runs: list[list[Edge]] = []
    before = lap.edges[-1]
    for edge in lap.edges:
        if not edge.through and edge.move != BRIDGE:
            if before.through:
                runs.append([])
            if runs:
                runs[-1].append(edge)
        before = edge
    return runs


def _samples(edge: Edge) -> tuple[Floats, float]:
    """Middles of equal small steps along an edge, and the step."""
    n = 1 if edge.through else max(1, min(4000, int(np.ceil(edge.length / STEP_MM))))
    t = (np.arange(n) + 0.5) / n
    start, end = np.array(edge.start), np.array(edge.end)
    if not edge.sweep:
        return start + np.outer(t, end - start), edge.length / n
    spoke = start - np.array(edge.centre)
    turned = (spoke[0] + 1j * spoke[1]) * np.exp(1j * edge.sweep * t)
    return np.column_stack((turned.real, turned.imag)) + edge.centre, edge.length / n


def _covered(points: Floats, cuts: Cuts, edge: Edge) -> Bools:
    """Which points lie on a cut through the sheet."""
    low, high = points.min(axis=0) - ON_MM, points.max(axis=0) + ON_MM
    near = np.flatnonzero(((cuts.low <= high) & (cuts.high >= low)).all(axis=1))
    done = np.zeros(len(points), dtype=bool)
    for i in cuts.index[near].tolist():
        if i != edge.move:
            done |= _on_move(points, cuts.moves, i)
    return done


def _on_move(points: Floats, moves: Moves, i: int) -> Bools:
    start, end = moves.points[i, :2], moves.points[i + 1, :2]
    if moves.kind[i] >= CW and moves.plane[i] == XY:
        return _on_arc(points, start, moves.centre[i], float(moves.sweep[i]))
    step = end - start
    t = np.clip((points - start) @ step / max(float(step @ step), 1e-12), 0, 1)
    off = points - start - np.outer(t, step)
    return np.asarray(np.hypot(off[:, 0], off[:, 1]) <= ON_MM)


def _on_arc(points: Floats, start: Floats, centre: Floats, sweep: float) -> Bools:
    spoke, rays = start - centre, points - centre
    r = np.hypot(*spoke)
    angle = np.arctan2(rays[:, 1], rays[:, 0]) - np.arctan2(spoke[1], spoke[0])
    angle = np.mod(angle if sweep > 0 else -angle, 2 * np.pi)
    slack = ON_MM / max(float(r), ON_MM)
    within = (angle <= abs(sweep) + slack) | (angle >= 2 * np.pi - slack)
    return np.asarray((np.abs(np.hypot(rays[:, 0], rays[:, 1]) - r) <= ON_MM) & within)


Mark = tuple[float, Floats, int, bool]


def _runs(marks: list[Mark]) -> list[list[Mark]]:
    """Neighbouring uncut marks together; a run over the loop's seam is one."""
    first = next((i for i, mark in enumerate(marks) if mark[3]), None)
    if first is None:
        return [marks]
    runs: list[list[Mark]] = [[]]
    for mark in marks[first:] + marks[:first]:
        if mark[3]:
            runs.append([])
        else:
            runs[-1].append(mark)
    return [run for run in runs if run]


def _stretch(run: list[Mark], loop: Loop) -> Stretch | None:
    length = sum(mark[0] for mark in run)
    half, passed = length / 2, 0.0
    middle = run[-1]
    for mark in run:
        passed += mark[0]
        if passed >= half:
            middle = mark
            break
    edges = [loop.edges[i] for i in dict.fromkeys(mark[2] for mark in run)]
    x, y = _middle(run, middle, half - passed)
    top = max(e.top for e in edges)
    real = [e for e in edges if e.move != BRIDGE]
    bottom = min((e.top for e in edges), default=top)
    ramped = len(real) > 1 and top != np.inf and bottom == top and _sloped(real)
    move = real[0].move if real else max(e.move for e in loop.edges)
    return Stretch(x, y, _away(loop.edges[middle[2]], (x, y)), length, top, ramped, move)


def _middle(run: list[Mark], mark: Mark, back: float) -> tuple[float, float]:
    x, y = mark[1]
    if len(run) == 1:
        return float(x), float(y)
    one, other = run[(len(run) - 1) // 2][1], run[len(run) // 2][1]
    del back
    return float((one[0] + other[0]) / 2), float((one[1] + other[1]) / 2)


def _sloped(edges: list[Edge]) -> bool:
    return edges[0].length > 1e-6


def _away(edge: Edge, at: tuple[float, float]) -> tuple[float, float]:
    """Unit normal to the right of an edge's way at a point."""
    if edge.sweep:
        rx, ry = at[0] - edge.centre[0], at[1] - edge.centre[1]
        sign = 1 if edge.sweep > 0 else -1
        dx, dy = -ry * sign, rx * sign
    else:
        dx, dy = edge.end[0] - edge.start[0], edge.end[1] - edge.start[1]
    size = float(np.hypot(dx, dy)) or 1.0
    return dy / size, -dx / size
