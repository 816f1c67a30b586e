"""A cut file's path as it is drawn: strokes by bit and depth, thinned to what a screen shows."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from station.cutting.analyse.time import time_path, time_pauses
from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.moves import Geometry, find_geometry
from station.cutting.model import (
    CCW,
    LINE,
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
ARC_POINTS = 8  # on an arc, about
BLOCK = 100_000  # moves that points are laid along at once
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
    group, names, shown = _group_moves(moves, analysis, geo)
    about = len(moves) + ARC_POINTS * int(np.count_nonzero(moves.kind > LINE))
    near = _choose_nearness(float(geo.flat.sum()), about, shown)
    del geo
    laid = _lay_thinned(moves, analysis.corner_mm, (began, ended), group, near)
    points, stroke, worth = _weigh_enough(laid, most, progress)
    off = FINEST_MM
    if np.count_nonzero(worth > off) > most:
        off = min(float(np.sort(worth)[-most - 1]), COARSEST_MM)
    made = _make_strokes(points[worth > off], stroke[worth > off], names, most)
    return DrawnPath(tuple(made), off + near + ARC_MM, len(made) / max(shown, 1), seconds)


def _choose_nearness(way: float, points: int, strokes: int) -> float:
    """Chooses how near to one before it a point may lie to be left out, mm, so that no more are
    left than can be looked at one by one; 0: there are few.
    """
    near = 0.0
    if points > WORKED:
        near = 2 * FINEST_MM
        while near < COARSEST_MM and 2 * strokes + way / near > WORKED:
            near *= 2
    return near


def _weigh_enough(
    laid: Iterable[tuple[Floats, Ints]], most: int, progress: Progress | None
) -> tuple[Floats, Ints, Floats]:
    """Weighs the points of strokes from the start on: all of them, or as many as may be drawn.

    Gives the points, their strokes and what each is worth, mm.
    """
    points, stroke, worth = np.empty((0, 3)), np.empty(0, dtype=np.int64), np.empty(0)
    for more, of in _gather(laid):
        starts = np.flatnonzero(np.diff(of, prepend=-1))
        worth = np.append(worth, _weigh_runs(more, starts, FINEST_MM, progress))
        points, stroke = np.concatenate((points, more)), np.append(stroke, of)
        if np.count_nonzero(worth > COARSEST_MM) > most:
            break
    return points, stroke, worth


def _gather(laid: Iterable[tuple[Floats, Ints]]) -> Iterator[tuple[Floats, Ints]]:
    """Gathers blocks of points to about as many as are looked at together, in whole strokes."""
    held: list[tuple[Floats, Ints]] = []
    for points, stroke in laid:
        same = 0  # points of a stroke that goes on from the block before
        if sum(len(of) for _, of in held) > WORKED:
            same = int(np.searchsorted(stroke, held[-1][1][-1], "right"))
            held.append((points[:same], stroke[:same]))
            if same < len(stroke):
                yield _join(held)
                held = []
        if same < len(stroke):
            held.append((points[same:], stroke[same:]))
    if held:
        yield _join(held)


def _join(blocks: list[tuple[Floats, Ints]]) -> tuple[Floats, Ints]:
    """Joins blocks of points and their strokes."""
    return np.concatenate([b[0] for b in blocks]), np.concatenate([b[1] for b in blocks])


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


def _lay_thinned(
    moves: Moves,
    corner: tuple[float, float],
    times: tuple[Floats, Floats],
    group: Ints,
    near: float,
) -> Iterator[tuple[Floats, Ints]]:
    """Lays points (x, y, second) along moves, a block at a time, each with its stroke's number.

    A point goes that lies within `near` mm of way behind one of its stroke that is kept. `times`
    are when each move begins and ends.
    """
    last, place, way = -1, np.zeros((1, 2)), 0.0  # of the point before: stroke, place, way so far
    for first in range(0, len(moves), BLOCK):
        stop = min(first + BLOCK, len(moves))
        some = moves.take_some(first, stop)
        points, of = _lay_points(some, corner, times[0][first:stop], times[1][first:stop])
        stroke = group[first:stop][of]
        new = np.append(stroke[:1] != last, (of[1:] == of[:-1]) | (stroke[1:] != stroke[:-1]))
        new &= some.sure[of]
        points, stroke = points[new], stroke[new]
        if not len(stroke):
            continue
        edge = np.diff(stroke, prepend=last) != 0
        ends = np.append(edge[1:], stop == len(moves) or group[stop] != group[stop - 1])
        step = np.hypot(*np.diff(points[:, :2], axis=0, prepend=place).T)
        step[edge] = 0.0
        gone = way + np.cumsum(step)
        begins = np.flatnonzero(edge)
        if len(begins):
            gone[begins[0] :] -= np.repeat(gone[begins], np.diff(begins, append=len(gone)))
        if near:
            keep = edge | ends | (np.diff(np.floor(gone / near), prepend=way // near) != 0)
            yield points[keep], stroke[keep]
        else:
            yield points, stroke
        last, place, way = int(stroke[-1]), points[-1:, :2], float(gone[-1])


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
    waited = [pause.seconds for pause in program.pauses]
    if router:
        waited = time_pauses(program.moves, program.pauses, router)
    for pause, seconds in zip(program.pauses, waited, strict=True):
        waits[min(pause.move, n)] += seconds
    ended = np.cumsum(took) + np.cumsum(waits)[:n]
    return ended - took, ended, float(took.sum() + waits.sum())


def _group_moves(
    moves: Moves, analysis: Analysis, geo: Geometry
) -> tuple[Ints, list[tuple[int, int]], int]:
    """Numbers each run of moves of one kind, and gives its bit and band by that number, and how
    many of them are drawn.
    """
    depth = analysis.face_z - geo.bottom
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
    return np.cumsum(new) - 1, names, int(np.count_nonzero(moves.sure[first]))


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
