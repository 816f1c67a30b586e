"""A cut file's path as it is drawn: strokes by bit and depth, thinned to what a screen shows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.cutting.model import CCW, RAPID, XY, Analysis, Bools, Floats, Ints, Moves
from station.cutting.moves import Geometry, geometry
from station.cutting.time import pause_seconds, timing
from station.shop import strokes
from station.shop.facts import Router
from station.shop.strokes import AIR, BANDS, Stroke

MOST = 20_000  # points: what a screen shows and a draft carries
WORKED = 150_000  # points that are looked at one by one
FINEST_MM = 0.05
COARSEST_MM = 6.4  # off by more it would be another path
ARC_MM = 0.05  # between an arc and its chords
RAPID_MM_MIN = 10_000.0  # where no router is known: an assumption for the drawing alone


@dataclass(frozen=True)
class Drawn:
    """The strokes, how far they lie from the true path at most, and the share that is drawn.

    `seconds` is the whole path with its pauses, before the router's own correction.
    """

    strokes: tuple[Stroke, ...]
    off_mm: float
    share: float
    seconds: float


def drawn(analysis: Analysis, router: Router | None, most: int = MOST) -> Drawn:
    """The path on the sheet. Moves whose place the text does not tell are left out."""
    moves = analysis.program.moves
    if not len(moves):
        return Drawn((), 0.0, 1.0, 0.0)
    geo = geometry(moves)
    began, ended, seconds = _times(analysis, router, geo)
    group, names = _groups(moves, analysis)
    points, of = _flat(moves, analysis.corner_mm, began, ended)
    single = np.concatenate(([True], (of[1:] == of[:-1]) | (group[of[1:]] != group[of[:-1]])))
    points, of = points[single], of[single]
    runs = [run for run in _runs(group[of]) if moves.sure[of[run[0]]]]
    found = [points[run] for run in runs]
    near = 0.0
    while near < COARSEST_MM and sum(map(len, found)) > WORKED:
        near = max(2 * near, 2 * FINEST_MM)
        found = [_near(run, near) for run in found]
    found, off = _thinned(found, FINEST_MM, most)
    made = []
    for run, shown in zip(runs, found, strict=True):
        bit, band = names[group[of[run[0]]]]
        made.append(Stroke(bit, band, tuple((x, y, at) for x, y, at in shown.tolist())))
    kept = _first(made, most)
    return Drawn(tuple(kept), off + near + ARC_MM, len(kept) / max(len(made), 1), seconds)


def _runs(group: Ints) -> list[Ints]:
    """Which points make up each stroke."""
    return np.split(np.arange(len(group)), np.flatnonzero(np.diff(group)) + 1)


def _thinned(found: list[Floats], off: float, most: int) -> tuple[list[Floats], float]:
    """Runs with no more than `most` points where that can be, and how far off that is, mm."""
    worth = [weigh(run, off) for run in found]
    every = np.concatenate(worth) if worth else np.zeros(0)
    if np.count_nonzero(every > off) > most:
        off = min(float(np.sort(every)[-most - 1]), COARSEST_MM)
    kept = [run[of > off] for run, of in zip(found, worth, strict=True)]
    return kept, off


def _first(made: list[Stroke], most: int) -> list[Stroke]:
    """The strokes from the start that have so many points together."""
    so_far = np.cumsum([len(s.points) for s in made])
    return made[: int(np.searchsorted(so_far, most, side="right"))]


def _times(
    analysis: Analysis, router: Router | None, geo: Geometry
) -> tuple[Floats, Floats, float]:
    """Seconds at which each move begins and ends, and those of the whole path."""
    program, n = analysis.program, len(analysis.program.moves)
    if router is None:
        feed = np.where(program.moves.kind == RAPID, RAPID_MM_MIN, program.moves.feed)
        took = geo.length / np.where(feed > 0, feed, RAPID_MM_MIN) * 60
    else:
        took = timing(program.moves, program.pauses, router, geo).moves
    waits = np.zeros(n + 1)
    for pause in program.pauses:
        waits[min(pause.move, n)] += pause_seconds(pause, router) if router else pause.seconds
    ended = np.cumsum(took) + np.cumsum(waits)[:n]
    return ended - took, ended, float(took.sum() + waits.sum())


def _groups(moves: Moves, analysis: Analysis) -> tuple[Ints, list[tuple[int, int]]]:
    """A number for each run of moves of one kind, and its bit and band by that number."""
    z = moves.points[:, 2]
    depth = analysis.face_z - np.minimum(z[:-1], z[1:])
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


def _flat(
    moves: Moves, corner: tuple[float, float], began: Floats, ended: Floats
) -> tuple[Floats, Ints]:
    """Points (x, y, second), a start and as many more as each move needs; the move of each."""
    arc = (moves.kind > 1) & (moves.kind <= CCW) & (moves.plane == XY)
    radius = np.maximum(np.hypot(*(moves.points[:-1, :2] - moves.centre).T), ARC_MM)
    count = np.ceil(np.abs(moves.sweep) / np.sqrt(8 * ARC_MM / radius))
    count = np.where(arc, count, 1).astype(np.int64)
    count = np.maximum(count, 1) + 1
    of = np.repeat(np.arange(len(moves)), count)
    nth = np.arange(len(of)) - np.repeat(np.cumsum(count) - count, count)
    share = nth / (count[of] - 1)
    start, end = moves.points[of, :2], moves.points[of + 1, :2]
    points = np.empty((len(of), 3))
    points[:, :2] = start + (end - start) * share[:, None]
    _bend(points, moves, of, share, arc[of])
    points[:, :2] -= corner
    points[:, 2] = began[of] + (ended - began)[of] * share
    return points, of


def _bend(points: Floats, moves: Moves, of: Ints, share: Floats, arc: Bools) -> None:
    """Puts the inner points of arcs onto them; their ends stay where the text has them."""
    inner = np.flatnonzero(arc & (share > 0) & (share < 1))
    move = of[inner]
    centre = moves.centre[move]
    out = moves.points[move, :2] - centre
    turned = (out[:, 0] + 1j * out[:, 1]) * np.exp(1j * moves.sweep[move] * share[inner])
    points[inner, 0] = centre[:, 0] + turned.real
    points[inner, 1] = centre[:, 1] + turned.imag


def _near(run: Floats, off: float) -> Floats:
    """A run without the points that lie within `off` mm of way behind one that is kept."""
    way = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(run[:, :2], axis=0).T))))
    step = np.floor(way / off)
    keep = np.concatenate(([True], step[1:] != step[:-1]))
    keep[-1] = True
    return run[keep]


def weigh(run: Floats, off: float) -> Floats:
    """How far off, mm, an open run may be drawn before each of its points can be left out.

    The ends cannot; points that can be left out at `off` already are 0.
    """
    worth = np.zeros(len(run))
    worth[[0, -1]] = np.inf
    work = [(0, len(run) - 1)]
    while work:
        a, b = work.pop()
        if b - a < 2:
            continue
        chord, rest = run[b, :2] - run[a, :2], run[a + 1 : b, :2] - run[a, :2]
        size = float(chord @ chord)
        along = np.clip(rest @ chord / size, 0, 1) if size > 0 else np.zeros(len(rest))
        away = np.hypot(*(rest - along[:, None] * chord).T)
        worst = int(np.argmax(away))
        if away[worst] > off:
            middle = a + 1 + worst
            worth[middle] = min(float(away[worst]), worth[a], worth[b])
            work += [(a, middle), (middle, b)]
    return worth
