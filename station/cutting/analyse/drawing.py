"""A cut file's path as it is drawn: strokes by bit and depth, thinned to what a screen shows."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from station.cutting.analyse.time import time_path, time_pause
from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.moves import Geometry, find_geometry
from station.cutting.model import (
    CCW,
    PLANE_AXES,
    RAPID,
    Analysis,
    Bools,
    Floats,
    Ints,
    Moves,
    Progress,
)
from station.shop import strokes
from station.shop.facts import Router
from station.shop.strokes import AIR, BANDS, Stroke

MOST = 20_000  # points: what a screen shows and a draft carries
WORKED = 150_000  # points that are looked at one by one
EVERY = 1000  # strokes between two looks at progress
FINEST_MM = 0.05
COARSEST_MM = 6.4  # off by more it would be another path
ARC_MM = 0.05  # between an arc and its chords
RAPID_MM_MIN = 10_000.0  # where no router is known: an assumption for the drawing alone


@compile_inner
def _find_furthest(points: Floats, a: int, b: int) -> tuple[int, float]:
    """Finds the point between two that lies furthest from the line between them, and how far."""
    x, y = points[a, 0], points[a, 1]
    dx, dy = points[b, 0] - x, points[b, 1] - y
    size, worst, furthest = dx * dx + dy * dy, a, -1.0
    for i in range(a + 1, b):
        px, py = points[i, 0] - x, points[i, 1] - y
        along = min(max((px * dx + py * dy) / size, 0.0), 1.0) if size > 0 else 0.0
        away = (px - along * dx) ** 2 + (py - along * dy) ** 2
        if away > furthest:
            worst, furthest = i, away
    return worst, math.sqrt(max(furthest, 0.0))


@compile_entry("void(f8[:,::1], i8, i8, f8, f8[::1], i8[:,::1])")
def weigh_points(
    points: Floats, first: int, last: int, off: float, worth: Floats, work: Ints
) -> None:
    """Fills the worth in mm of the points of one open run, `last` included.

    The ends cannot be left out; points that can be at `off` already are 0. `work` is room
    for as many pairs as the run has points.
    """
    worth[first : last + 1] = 0.0
    worth[first] = worth[last] = np.inf
    work[0, 0], work[0, 1] = first, last
    count = 1
    while count:
        count -= 1
        a, b = work[count, 0], work[count, 1]
        if b - a < 2:
            continue
        worst, away = _find_furthest(points, a, b)
        if away > off:
            worth[worst] = min(away, worth[a], worth[b])
            work[count, 0], work[count, 1] = a, worst
            work[count + 1, 0], work[count + 1, 1] = worst, b
            count += 2


@dataclass(frozen=True)
class DrawnPath:
    """Holds the strokes, how far they lie from the true path at most, and the share that is drawn.

    `seconds` is the whole path with its pauses, before the router's own correction.
    """

    strokes: tuple[Stroke, ...]
    off_mm: float
    share: float
    seconds: float


def draw_path(
    analysis: Analysis,
    router: Router | None,
    most: int = MOST,
    *,
    progress: Progress | None = None,
) -> DrawnPath:
    """Draws the path on the sheet. Moves whose place the text does not tell are left out.

    `progress` gets the part done, 0 to 1.
    """
    moves = analysis.program.moves
    if not len(moves):
        return DrawnPath((), 0.0, 1.0, 0.0)
    geo = find_geometry(moves)
    began, ended, seconds = _time_moves(analysis, router, geo)
    group, names = _group_moves(moves, analysis, geo)
    points, of = _lay_points(moves, analysis.corner_mm, began, ended)
    stroke = group[of]
    new = np.concatenate(([True], (of[1:] == of[:-1]) | (stroke[1:] != stroke[:-1])))
    new &= moves.sure[of]
    points, stroke, near = _thin_points(points[new], stroke[new])
    starts, off = np.flatnonzero(np.diff(stroke, prepend=-1)), FINEST_MM
    worth = _weigh_runs(points, starts, off, progress)
    if np.count_nonzero(worth > off) > most:
        off = min(float(np.sort(worth)[-most - 1]), COARSEST_MM)
    made = _make_strokes(points[worth > off], stroke[worth > off], names, most)
    share = len(made) / max(len(starts), 1)
    return DrawnPath(tuple(made), off + near + ARC_MM, share, seconds)


def _make_strokes(
    points: Floats, stroke: Ints, names: list[tuple[int, int]], most: int
) -> list[Stroke]:
    """Makes strokes from the start on that have no more than so many points together."""
    starts = np.flatnonzero(np.diff(stroke, prepend=-1))
    ends = np.append(starts[1:], len(points))
    made = []
    for start, end in zip(starts, ends[ends <= most], strict=False):
        bit, band = names[stroke[start]]
        made.append(
            Stroke(bit, band, tuple((x, y, at) for x, y, at in points[start:end].tolist()))
        )
    return made


def _thin_points(points: Floats, stroke: Ints) -> tuple[Floats, Ints, float]:
    """Leaves no more points than can be looked at one by one, and tells how far off that is, mm.

    A point goes that lies within so many mm of way behind one of its stroke that is kept.
    """
    near = 0.0
    while near < COARSEST_MM and len(points) > WORKED:
        near = max(2 * near, 2 * FINEST_MM)
        edge = np.diff(stroke, prepend=-1) != 0
        step = np.hypot(*np.diff(points[:, :2], axis=0, prepend=points[:1, :2]).T)
        step[edge] = 0.0
        way = np.cumsum(step)
        starts = np.flatnonzero(edge)
        way -= np.repeat(way[starts], np.diff(starts, append=len(way)))
        passed = np.diff(np.floor(way / near), prepend=-1.0) != 0
        keep = passed | edge | np.append(edge[1:], True)
        points, stroke = points[keep], stroke[keep]
    return points, stroke, near


def _weigh_runs(points: Floats, starts: Ints, off: float, progress: Progress | None) -> Floats:
    """Weighs every point, run by run: how far off the path would be drawn without it, mm."""
    worth, ends = np.zeros(len(points)), np.append(starts[1:], len(points)) - 1
    work = np.empty((len(points) + 1, 2), dtype=np.int64)
    for n, (first, last) in enumerate(zip(starts.tolist(), ends.tolist(), strict=True)):
        weigh_points(points, first, last, off, worth, work)
        if progress and n % EVERY == 0:
            progress(n / len(starts))
    return worth


def _time_moves(
    analysis: Analysis, router: Router | None, geo: Geometry
) -> tuple[Floats, Floats, float]:
    """Gives the seconds at which each move begins and ends, and those of the whole path."""
    program, n = analysis.program, len(analysis.program.moves)
    if router is None:
        feed = np.where(program.moves.kind == RAPID, RAPID_MM_MIN, program.moves.feed)
        took = geo.length / np.where(feed > 0, feed, RAPID_MM_MIN) * 60
    else:
        took = time_path(program.moves, program.pauses, router, geo).moves
    waits = np.zeros(n + 1)
    for pause in program.pauses:
        waits[min(pause.move, n)] += time_pause(pause, router) if router else pause.seconds
    ended = np.cumsum(took) + np.cumsum(waits)[:n]
    return ended - took, ended, float(took.sum() + waits.sum())


def _group_moves(
    moves: Moves, analysis: Analysis, geo: Geometry
) -> tuple[Ints, list[tuple[int, int]]]:
    """Numbers each run of moves of one kind, and gives its bit and band by that number."""
    depth = analysis.face_z - geo.low[:, 2]
    step = max(analysis.thickness_mm, 1e-6) / BANDS
    band = np.clip(np.ceil(depth / step - 1e-6), AIR, BANDS).astype(np.int64)
    band[moves.kind == RAPID] = strokes.RAPID
    new = np.ones(len(moves), dtype=bool)
    new[1:] = (
        (band[1:] != band[:-1])
        | (moves.tool[1:] != moves.tool[:-1])
        | (moves.sure[1:] != moves.sure[:-1])
    )
    first = np.flatnonzero(new)
    names = [(int(moves.tool[i]), int(band[i])) for i in first]
    return np.cumsum(new) - 1, names


def _lay_points(
    moves: Moves, corner: tuple[float, float], began: Floats, ended: Floats
) -> tuple[Floats, Ints]:
    """Lays points (x, y, second) along each move, a start and as many more as it needs."""
    arc = (moves.kind > 1) & (moves.kind <= CCW)
    radius = np.maximum(np.abs(_find_spokes(moves)), ARC_MM)
    count = np.ceil(np.abs(moves.sweep) / np.sqrt(8 * ARC_MM / radius))
    count = np.where(arc, count, 1).astype(np.int64)
    count = np.maximum(count, 1) + 1
    of = np.repeat(np.arange(len(moves)), count)
    nth = np.arange(len(of)) - np.repeat(np.cumsum(count) - count, count)
    share = nth / (count[of] - 1)
    start, end = moves.points[of, :2], moves.points[of + 1, :2]
    points = np.empty((len(of), 3))
    points[:, :2] = start + (end - start) * share[:, None]
    _put_on_arcs(points, moves, of, share, arc[of])
    points[:, :2] -= corner
    points[:, 2] = began[of] + (ended - began)[of] * share
    return points, of


def _put_on_arcs(points: Floats, moves: Moves, of: Ints, share: Floats, arc: Bools) -> None:
    """Puts the inner points of arcs onto them; their ends stay where the text has them.

    Of an arc in an upright plane its one axis along the sheet is seen from above.
    """
    inner = np.flatnonzero(arc & (share > 0) & (share < 1))
    move = of[inner]
    turned = _find_spokes(moves)[move] * np.exp(1j * moves.sweep[move] * share[inner])
    for plane, axes in PLANE_AXES.items():
        mine = moves.plane[move] == plane
        for axis, reach, centre in zip(axes, (turned.real, turned.imag), moves.centre.T,
                                       strict=False):  # fmt: skip
            if axis < 2:
                points[inner[mine], axis] = centre[move[mine]] + reach[mine]


def _find_spokes(moves: Moves) -> npt.NDArray[np.complex128]:
    """Finds the way from each arc's centre to its start, along the two axes of its plane."""
    spokes = np.zeros(len(moves), np.complex128)
    for plane, (first, second, _) in PLANE_AXES.items():
        mine = moves.plane == plane
        off = moves.points[:-1, [first, second]][mine] - moves.centre[mine]
        spokes[mine] = off[:, 0] + 1j * off[:, 1]
    return spokes
