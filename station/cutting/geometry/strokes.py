"""What the bit runs over: unbroken runs of cuts as lines along its centre."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
import shapely

from station.cutting.geometry.moves import Geometry
from station.cutting.model import CW, LINE, RAPID, XY, Bools, Floats, Ints, Moves

Shapes = npt.NDArray[np.object_]

CHORD_MM = 0.0008  # how far chords of a drawn arc may lie off it
THIN_MM = 0.001  # how far a line may lie off its many short moves
MANY = 40  # points of a line that is worth thinning
MOST_CHORDS = 1440
LEVEL_MM = 0.01  # heights that differ less are one
IN_SHEET_MM = 0.01  # a move this little below the face does not cut


@dataclass(frozen=True)
class Levels:
    """Holds the heights that decide what a cut does, in the file's own frame, mm."""

    face: float
    bottom: float
    through: float  # at or below it a cut goes through
    skin: float  # at or below it hardly anything is left

    @property
    def thickness(self) -> float:
        """Gives the thickness of the sheet."""
        return self.face - self.bottom


@dataclass(frozen=True)
class Cuts:
    """Holds the moves that cut along the sheet, in the file's order, in columns.

    `run` numbers unbroken runs with one bit; `run_low` is the deepest height of each run.
    """

    moves: Moves
    index: Ints  # of the move
    run: Ints
    low: Floats
    high: Floats
    radius: Floats  # of the bit
    flat: Floats
    run_low: Floats

    def __len__(self) -> int:
        return len(self.index)


@dataclass(frozen=True)
class Lines:
    """Holds lines along the bit's centre; `first` and `stop` are positions in `Cuts`."""

    shape: Shapes
    radius: Floats
    first: Ints
    stop: Ints
    run: Ints

    def __len__(self) -> int:
        return len(self.shape)


def find_cuts(moves: Moves, geo: Geometry, bit_mm: Mapping[int, float], face: float) -> Cuts:
    """Finds the moves that cut along the sheet, and the runs that they make."""
    z = moves.points[:, 2]
    inside = (moves.kind != RAPID) & (np.minimum(z[:-1], z[1:]) < face - IN_SHEET_MM)
    starts = inside.copy()
    starts[1:] &= ~inside[:-1] | (moves.tool[1:] != moves.tool[:-1])
    run = np.cumsum(starts) - 1
    runs = int(run[-1]) + 1 if len(run) else 0
    deepest = np.full(max(runs, 1), np.inf)
    np.minimum.at(deepest, run[inside], geo.low[inside, 2])
    index = np.flatnonzero(inside & (geo.flat > 1e-9))
    radii = np.array([bit_mm.get(int(t), 0.0) / 2 for t in np.unique(moves.tool[index])])
    which = np.searchsorted(np.unique(moves.tool[index]), moves.tool[index])
    return Cuts(
        moves=moves,
        index=index,
        run=run[index],
        low=geo.low[index, 2],
        high=geo.high[index, 2],
        radius=radii[which] if len(index) else np.zeros(0),
        flat=geo.flat[index],
        run_low=deepest,
    )


def draw_lines(cuts: Cuts, some: Ints, *, chord: float = CHORD_MM) -> Lines:
    """Draws the chosen cuts (positions, rising) as lines, broken where a cut is left out."""
    if not len(some):
        return Lines(*(np.zeros(0, t) for t in (object, float, int, int, int)))
    new = np.ones(len(some), dtype=bool)
    new[1:] = (np.diff(some) != 1) | (np.diff(cuts.run[some]) != 0)
    line = np.cumsum(new) - 1
    points, of = _lay_points(cuts.moves, cuts.index[some], new, chord)
    shape = shapely.linestrings(points, indices=line[of])
    crowded = shapely.get_num_coordinates(shape) > MANY
    if crowded.any():
        shape[crowded] = shapely.simplify(shape[crowded], THIN_MM, preserve_topology=False)
    at = np.flatnonzero(new)
    first, stop = some[at], some[np.append(at[1:], len(some)) - 1] + 1
    return Lines(shape, cuts.radius[first], first, stop, cuts.run[first])


def _lay_points(moves: Moves, index: Ints, new: Bools, chord: float) -> tuple[Floats, Ints]:
    """Lays the points of moves one after another; a new line also has its first move's start."""
    start = moves.points[index, 0] + 1j * moves.points[index, 1]
    end = moves.points[index + 1, 0] + 1j * moves.points[index + 1, 1]
    bent = (moves.kind[index] >= CW) & (moves.plane[index] == XY)
    centre = moves.centre[index, 0] + 1j * moves.centre[index, 1]
    sweep = np.where(bent, moves.sweep[index], 0.0)
    spoke = np.where(bent, start - centre, 0.0)
    reach = np.maximum(np.abs(spoke), chord)
    widest = np.maximum(2 * np.arccos(np.maximum(1 - chord / reach, 0.5)), 1e-6)
    chords = np.clip(np.ceil(np.abs(sweep) / widest / 4) * 4, 1, MOST_CHORDS)
    count = np.where(bent, chords, 1).astype(np.int64) + new
    of = np.repeat(np.arange(len(index)), count)
    nth = np.arange(len(of)) - np.repeat(np.cumsum(count) - count, count)
    step = nth + 1 - new[of]
    share = step / (count - new)[of]
    points = np.where(step == 0, start[of], end[of])
    inner = bent[of] & (share > 0) & (share < 1)
    arc = of[inner]
    points[inner] = centre[arc] + spoke[arc] * np.exp(1j * sweep[arc] * share[inner])
    return np.column_stack((points.real, points.imag)), of


def pick_through(cuts: Cuts, levels: Levels) -> Bools:
    """Picks the cuts that go through the sheet along their whole length."""
    return np.asarray(cuts.high <= levels.through)


def pick_closing(cuts: Cuts, levels: Levels) -> Bools:
    """Picks what is cut less deep in runs that go through somewhere, or nearly.

    It lies over tabs, ramps and skins; what another cut takes there anyway is left out.
    """
    if not len(cuts):
        return np.zeros(0, dtype=bool)
    through = pick_through(cuts, levels)
    meant = cuts.run_low[cuts.run] <= levels.skin
    picked = np.flatnonzero(meant & ~through)
    keys = _name_ways(cuts, picked)
    taken = np.isin(keys, _name_ways(cuts, np.flatnonzero(through)))
    order = np.lexsort((cuts.high[picked], keys))  # the deepest of those over the same way
    again = np.zeros(len(picked), dtype=bool)
    again[order[1:]] = keys[order[1:]] == keys[order[:-1]]
    some = np.zeros(len(cuts), dtype=bool)
    some[picked[~taken & ~again]] = True
    return some


def _name_ways(cuts: Cuts, some: Ints) -> Ints:
    """Gives a number for the way of each cut; two over the same way have the same."""
    moves, index = cuts.moves, cuts.index[some]
    start = np.round(moves.points[index, :2] / 0.002).astype(np.int64)
    end = np.round(moves.points[index + 1, :2] / 0.002).astype(np.int64)
    bent = moves.kind[index] >= CW
    middle = np.where(bent[:, None], np.round(moves.centre[index] / 0.01), 0).astype(np.int64)
    turn = np.where(bent, np.round(np.abs(moves.sweep[index]) * 100), 0).astype(np.int64)
    ways = np.array([73856093, 19349663])
    ends = (start @ ways) ^ (end @ ways) ^ ((start + end) @ ways[::-1])
    return np.asarray(ends ^ (middle @ np.array([83492791, 49979687])) ^ (turn * 2654435761))


def find_plunges(moves: Moves, geo: Geometry, levels: Levels) -> Ints:
    """Finds moves straight down through the sheet that no cut through it begins or ends at."""
    z = moves.points[:, 2]
    down = (moves.kind == LINE) & (geo.flat < 1e-9) & (z[1:] <= levels.through) & (z[1:] < z[:-1])
    index = np.flatnonzero(down)
    along = (moves.kind != RAPID) & (geo.flat > 1e-9) & (geo.high[:, 2] <= levels.through)
    after = np.append(along[1:], False)
    return np.asarray(index[~after[index]])
