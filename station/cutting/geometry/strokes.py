"""What the bit runs over: unbroken runs of cuts as lines along its centre."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
import numpy.typing as npt
import shapely

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.moves import Geometry, list_values
from station.cutting.model import CW, LINE, RAPID, XY, Bools, Bytes, Floats, Ints, Moves

Shapes = npt.NDArray[np.object_]
Shorts = npt.NDArray[np.int32]  # half as long: there may be millions
Halves = npt.NDArray[np.float32]

CHORD_MM = 0.002  # how far chords of a drawn arc may lie off it
THIN_MM = 0.001  # how far a line may lie off its many short moves
MANY = 40  # points of a line that is worth thinning
MOST_CHORDS = 1440
LEVEL_MM = 0.01  # heights that differ less are one
SAME_MM, OVER_SHARE = 0.02, 0.5
WAY_MM = 0.002  # ends of the same way lie this near
OFF_GRID = 0.27  # of a grid's step: round values lie on none of its borders
CLOSE_MM = 1.0  # ends of a contour this near were meant to meet
IN_SHEET_MM = 0.01  # a move this little below the face does not cut
MIXED = 0x1E3779B97F4A7C15  # odd: numbers times it differ in their upper bits


@dataclass(frozen=True)
class Levels:
    """Holds the heights that decide what a cut does, in the file's own frame, mm."""

    face: float
    bottom: float
    through: float  # at or below it a cut goes through
    skin: float  # at or below it hardly anything is left
    known: bool = True  # the thickness is given, not taken from the cuts

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

    @cached_property
    def ways(self) -> Ints:
        """Gives a number for the way of each cut, as `name_ways` does."""
        return name_ways(self)


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
    run, begins = np.cumsum(starts, dtype=np.int32) - 1, np.flatnonzero(starts)
    deepest = np.full(1, np.inf)
    if len(begins):
        deepest = np.minimum.reduceat(np.where(inside, geo.bottom, np.inf), begins)
    index = np.flatnonzero(inside & (geo.flat > 1e-9))
    tools = list_values(moves.tool[index])
    radii = np.array([bit_mm.get(tool, 0.0) / 2 for tool in tools])
    which = np.searchsorted(tools, moves.tool[index]) if len(tools) > 1 else np.zeros(0, int)
    return Cuts(
        moves=moves,
        index=index,
        run=run[index].astype(np.int64),
        low=geo.bottom[index],
        high=geo.top[index],
        radius=radii[which] if len(tools) > 1 else _repeat(radii, len(index)),
        flat=geo.flat[index],
        run_low=deepest,
    )


def _repeat(value: Floats, count: int) -> Floats:
    """Gives a column that has the one value everywhere, and takes room for it once."""
    return np.broadcast_to(value, count) if count else np.zeros(0)


def draw_lines(
    cuts: Cuts, some: Ints, *, chord: float = CHORD_MM, by: Ints | None = None
) -> Lines:
    """Draws the chosen cuts (positions, rising) as lines, broken where a cut is left out.

    They break too where the value `by` of a cut is another than that before.
    """
    if not len(some):
        return Lines(*(np.zeros(0, t) for t in (object, float, int, int, int)))
    new = np.ones(len(some), dtype=bool)
    new[1:] = (np.diff(some) != 1) | (np.diff(cuts.run[some]) != 0)
    if by is not None:
        new[1:] |= np.diff(by[some]) != 0
    line = np.cumsum(new) - 1
    points, of = lay_points(cuts.moves, cuts.index[some], new, chord)
    shape = shapely.linestrings(points, indices=line[of])
    crowded = shapely.get_num_coordinates(shape) > MANY
    if crowded.any():
        shape[crowded] = shapely.simplify(shape[crowded], THIN_MM, preserve_topology=False)
    at = np.flatnonzero(new)
    first, stop = some[at], some[np.append(at[1:], len(some)) - 1] + 1
    return Lines(shape, cuts.radius[first], first, stop, cuts.run[first])


def close_ends(lines: Lines) -> Lines:
    """Closes lines that end a little short of their own start: the bit leaves a cusp there that
    nobody measures.
    """
    shape = lines.shape.copy()
    start, end = (shapely.get_point(shape, at) for at in (0, -1))
    away = shapely.distance(start, end)
    short = (away > 0) & (away < CLOSE_MM) & (shapely.get_num_points(shape) > 2)
    for n in np.flatnonzero(short).tolist():
        points = shapely.get_coordinates(shape[n])
        shape[n] = shapely.linestrings(np.concatenate((points, points[:1])))
    return replace(lines, shape=shape)


def lay_points(moves: Moves, index: Ints, new: Bools, chord: float) -> tuple[Floats, Ints]:
    """Lays the points of moves one after another; a new line also has its first move's start."""
    bent = np.flatnonzero((moves.kind[index] >= CW) & (moves.plane[index] == XY))
    arcs = index[bent]
    centre = moves.centre[arcs, 0] + 1j * moves.centre[arcs, 1]
    spoke = moves.points[arcs, 0] + 1j * moves.points[arcs, 1] - centre
    sweep, reach = moves.sweep[arcs], np.maximum(np.abs(spoke), chord)
    widest = np.maximum(2 * np.arccos(np.maximum(1 - chord / reach, 0.5)), 1e-6)
    count = 1 + new.astype(np.int64)
    count[bent] += np.clip(np.ceil(np.abs(sweep) / widest / 4) * 4, 1, MOST_CHORDS).astype(int) - 1
    of, last = np.repeat(np.arange(len(index)), count), np.cumsum(count)
    start = (last - count)[new]
    at = index[of] + 1
    at[start] -= 1  # the start of a line
    points = np.ascontiguousarray(moves.points[at, :2])
    chords = count[bent] - new[bent]
    arc = np.repeat(np.arange(len(bent)), chords - 1)
    nth = np.arange(len(arc)) - np.repeat(np.cumsum(chords - 1) - chords + 1, chords - 1) + 1
    inner = centre[arc] + spoke[arc] * np.exp(1j * sweep[arc] * (nth / chords[arc]))
    place = (last[bent] - chords)[arc] + nth - 1
    points[place, 0], points[place, 1] = inner.real, inner.imag
    return points, of


def pick_through(cuts: Cuts, levels: Levels) -> Bools:
    """Picks the cuts that go through the sheet along their whole length."""
    return np.asarray(cuts.high <= levels.through)


def pick_closing(cuts: Cuts, levels: Levels) -> Bools:
    """Picks what is cut less deep by runs that go through somewhere, or nearly, or that lie over
    cuts that do.

    It lies over tabs, ramps and skins; what another cut takes there anyway is left out.
    """
    some = np.zeros(len(cuts), dtype=bool)
    if not len(cuts):
        return some
    through = pick_through(cuts, levels)
    meant = cuts.run_low[cuts.run] <= levels.skin
    picked = np.flatnonzero((meant | _lies_over(cuts, through)) & ~through)
    keys = cuts.ways[picked]
    taken = pick_among(keys, cuts.ways[through])
    level = np.round(cuts.high[picked] / LEVEL_MM).astype(np.int32)
    order = np.lexsort((-picked, level, keys))  # the deepest over the same way, of these the last
    again = np.zeros(len(picked), dtype=bool)
    again[order[1:]] = keys[order[1:]] == keys[order[:-1]]
    picked, again = picked[~taken], again[~taken]
    new = (np.diff(picked) != 1) | (np.diff(cuts.run[picked]) != 0)
    way = np.append(0, np.cumsum(new))[: len(picked)]
    first = np.bincount(way[~again], minlength=len(picked)) > 0  # a way is taken whole, or not
    some[picked[first[way]]] = True
    some[_list_covered(cuts, np.flatnonzero(some))] = False
    return some


def _list_covered(cuts: Cuts, picked: Ints) -> Ints:
    """Lists what of the picked cuts, as a ramp, lies over deeper ones that leave a level skin."""
    level = cuts.high[picked] < cuts.run_low[cuts.run[picked]] + LEVEL_MM
    skin, above = picked[level], picked[~level]
    if not len(skin) or not len(above):
        return above[:0]
    own, under = draw_lines(cuts, above, by=np.arange(len(cuts))), draw_lines(cuts, skin)
    tree = shapely.STRtree(under.shape)
    covered = np.ones(len(above), dtype=bool)
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        place = shapely.line_interpolate_point(own.shape, share, normalized=True)
        near, skin = tree.query(place, predicate="dwithin", distance=SAME_MM)
        deeper = cuts.high[under.first[skin]] < cuts.high[above[near]]
        covered &= np.isin(np.arange(len(above)), near[deeper])
    return above[covered]


def _lies_over(cuts: Cuts, through: Bools) -> Bools:
    """Picks the cuts of runs that mostly turn where cuts through the sheet turn too."""
    place = np.empty(len(cuts), dtype=np.int64)
    fill_places(cuts.moves.points, cuts.index, place)
    same = pick_among(place, place[through])
    runs = len(cuts.run_low)
    over = np.bincount(cuts.run[same], minlength=runs)
    share = over / np.maximum(np.bincount(cuts.run, minlength=runs), 1)
    return np.asarray(share[cuts.run] >= OVER_SHARE)


@compile_entry("void(f8[:,:], i8[::1], i8[::1])")
def fill_places(points: Floats, index: Ints, places: Ints) -> None:
    """Fills in a number for the place where each move ends."""
    for k in range(len(index)):
        x, y = points[index[k] + 1, 0] / SAME_MM, points[index[k] + 1, 1] / SAME_MM
        places[k] = (np.int64(np.rint(x)) << 32) + np.int64(np.rint(y))


def pick_among(values: Ints, some: Ints) -> Bools:
    """Picks the values that are among some others: far fewer than there are values."""
    picked = np.zeros(len(values), dtype=bool)
    if len(some):
        table = np.full(1 << (2 * len(some)).bit_length(), -1, dtype=np.int32)
        fill_among(values, some, table, picked)
    return picked


@compile_entry("void(i8[::1], i8[::1], i4[::1], b1[::1])")
def fill_among(values: Ints, some: Ints, table: Shorts, picked: Bools) -> None:
    """Fills in whether each value is among some others.

    `table` is scratch, all -1: a power of two long, and longer than there are others.
    """
    mask = len(table) - 1
    for k in range(len(some)):
        slot = (some[k] * MIXED >> 32) & mask
        while table[slot] >= 0 and some[table[slot]] != some[k]:
            slot = (slot + 1) & mask
        table[slot] = k
    for k in range(len(values)):
        slot = (values[k] * MIXED >> 32) & mask
        while table[slot] >= 0 and some[table[slot]] != values[k]:
            slot = (slot + 1) & mask
        picked[k] = table[slot] >= 0


@compile_inner
def _mix(one: float, other: float, shift: float, a: int, b: int) -> int:
    """Mixes the numbers of two values on a grid, given in its steps, into one."""
    return a * math.floor(one + shift) + b * math.floor(other + shift)


@compile_entry("void(f8[:,:], i8[::1], u1[::1], u1[::1], f8[:,:], f8[::1], f8, f8, f8, i8[::1])")
def fill_ways(
    points: Floats, index: Ints, kind: Bytes, plane: Bytes, centre: Floats, sweep: Floats,
    step: float, shift: float, size: float, names: Ints,
) -> None:  # fmt: skip
    """Fills in a number for the way of each move: of its ends, its middle where it is bent, and
    its size in steps of `size`, unless that is 0.
    """
    wide, before = max(step, 0.01), -2
    x2, y2 = 0.0, 0.0  # where the cut before ended, in steps
    for k in range(len(index)):
        i = index[k]
        x, y = x2, y2
        if i != before + 1:
            x, y = points[i, 0] / step, points[i, 1] / step
        x2, y2, before = points[i + 1, 0] / step, points[i + 1, 1] / step, i
        bent = kind[i] >= CW and plane[i] == XY
        radius, a, b, long, high = 0.0, 0.0, 0.0, 0.0, 0.0
        if bent:
            u, v = points[i, 0] - centre[i, 0], points[i, 1] - centre[i, 1]
            c, s = math.cos(sweep[i] / 2), math.sin(sweep[i] / 2)
            a, b = centre[i, 0] + u * c - v * s, centre[i, 1] + u * s + v * c
            a, b, radius = a / wide, b / wide, math.hypot(u, v)
        if size > 0:
            long = abs(points[i + 1, 0] - points[i, 0]) / size
            high, radius = abs(points[i + 1, 1] - points[i, 1]) / size, radius / size
        one = _mix(x, y, shift, 73856093, 19349663)
        other = _mix(x2, y2, shift, 73856093, 19349663)
        both = _mix(x, y, shift, 19349663, 73856093) + _mix(x2, y2, shift, 19349663, 73856093)
        name = one ^ other ^ both
        if bent:
            name ^= _mix(a, b, shift, 83492791, 49979687)
        if size > 0:
            name ^= _mix(long, high, shift, 15485863, 32452843)
            name ^= _mix(radius, 0.0, shift, 49979687, 0)
        names[k] = name


def name_ways(
    cuts: Cuts, grid: tuple[float, float] = (WAY_MM, OFF_GRID), size: float = 0.0
) -> Ints:
    """Gives a number for the way of each cut; two over the same way have the same.

    `grid`: how far apart ends may lie, mm, unless a line of the grid lies between; and by how
    much of a step the grid is shifted. `size`: by how much they may differ in length, mm (0: it
    does not count).
    """
    moves, index = cuts.moves, cuts.index
    names = np.empty(len(index), dtype=np.int64)
    fill_ways(moves.points, index, moves.kind, moves.plane, moves.centre, moves.sweep,
              *grid, size, names)  # fmt: skip
    return names


@compile_entry("i8(i8[::1], i4[::1], i4[::1])")
def fill_groups(names: Ints, table: Shorts, group: Shorts) -> int:
    """Fills in a number for each name that stands twice or more, -1 for the others; gives how
    many such names there are.

    `table` is scratch, all -1: a power of two long, and longer than there are names.
    """
    groups, mask = 0, len(table) - 1
    for k in range(len(names)):
        slot = (names[k] * MIXED >> 32) & mask
        while table[slot] >= 0 and names[table[slot]] != names[k]:
            slot = (slot + 1) & mask
        first = table[slot]
        if first < 0:
            table[slot], group[k] = k, -1
            continue
        if group[first] < 0:
            group[first], groups = groups, groups + 1
        group[k] = group[first]
    return groups


@compile_entry("void(i4[::1], i8, i8[::1], f8[::1], f8[::1], i4[::1], f4[::1], f4[::1])")
def fill_earlier(
    group: Shorts,
    groups: int,
    run: Ints,
    low: Floats,
    high: Floats,
    cut: Shorts,
    earlier: Halves,
    deepest: Halves,
) -> None:
    """Fills in for each cut how low earlier runs have cut the whole way of its group (inf: none
    has), the last `cut` of such a run, and the deepest height of all cuts of this group.
    """
    last, before = np.full(groups, -1, np.int32), np.zeros(groups, np.int32)  # cuts, by now
    lowest = np.full(groups, np.inf, np.float32)  # of all,
    own, old = lowest.copy(), lowest.copy()  # of this run, of those before
    for k in range(len(group)):
        g = group[k]
        if g < 0:
            cut[k], earlier[k], deepest[k] = 0, np.inf, low[k]
            continue
        if last[g] >= 0 and run[last[g]] != run[k]:
            before[g], old[g], own[g] = last[g], min(old[g], own[g]), np.inf
        cut[k], earlier[k] = before[g], old[g]
        last[g], own[g], lowest[g] = k, min(own[g], high[k]), min(lowest[g], low[k])
    for k in range(len(group)):
        if group[k] >= 0:
            deepest[k] = lowest[group[k]]


@dataclass(frozen=True)
class Earlier:
    """Tells of each cut how `low` an earlier run has cut the same way all along (inf: none has),
    a `cut` of such a run, and the `deepest` height of all over this way.
    """

    cut: Shorts
    low: Halves
    deepest: Halves


def find_earlier(cuts: Cuts, grid: tuple[float, float], size: float) -> Earlier:
    """Finds for each cut what was cut over the same way; `grid` and `size`: see `name_ways`."""
    n = len(cuts)
    group = np.empty(n, dtype=np.int32)
    groups = fill_groups(
        name_ways(cuts, grid, size),
        np.full(1 << (n + n // 2).bit_length(), -1, dtype=np.int32),
        group,
    )
    low, deepest = np.empty(n, dtype=np.float32), np.empty(n, dtype=np.float32)
    found = Earlier(np.empty(n, dtype=np.int32), low, deepest)
    fill_earlier(group, groups, cuts.run, cuts.low, cuts.high, found.cut, found.low, found.deepest)
    return found


def find_plunges(moves: Moves, geo: Geometry, levels: Levels) -> Ints:
    """Finds moves straight down through the sheet that no cut through it begins or ends at."""
    z = moves.points[:, 2]
    down = (moves.kind == LINE) & (geo.flat < 1e-9) & (z[1:] <= levels.through) & (z[1:] < z[:-1])
    index = np.flatnonzero(down)
    after = np.minimum(index + 1, len(moves) - 1)  # the last move goes straight down itself
    along = (moves.kind[after] != RAPID) & (geo.flat[after] > 1e-9)
    return np.asarray(index[~(along & (geo.top[after] <= levels.through))])


def find_drilled(moves: Moves, geo: Geometry, levels: Levels) -> Ints:
    """Finds moves straight down into the sheet, not through it, after which the bit comes
    straight out again: of holes that are drilled in part, each with its chips cleared too.
    """
    z = moves.points[:, 2]
    down = (moves.kind == LINE) & (geo.flat < 1e-9) & (z[1:] < z[:-1])
    down &= (z[1:] < levels.face - IN_SHEET_MM) & (z[1:] > levels.through)
    index = np.flatnonzero(down)
    after = np.minimum(index + 1, len(down) - 1)
    out = (moves.kind[after] == RAPID) | ((geo.flat[after] < 1e-9) & (z[after + 1] > z[index + 1]))
    before = np.maximum(index - 1, 0)
    along = (moves.kind[before] != RAPID) & (geo.flat[before] > 1e-9)
    along &= z[index] < levels.face - IN_SHEET_MM
    return np.asarray(index[out & ~(along & (index > 0))])


def find_cut_at(cuts: Cuts, lines: Lines, line: int, place: shapely.Geometry) -> int:
    """Finds the cut of a line that passes a place."""
    at = float(shapely.line_locate_point(lines.shape[line], place))
    way = np.cumsum(cuts.flat[lines.first[line] : lines.stop[line]])
    return int(lines.first[line] + min(np.searchsorted(way, at), len(way) - 1))
