"""Edges of pieces as exact as the strokes that bound them.

The library that widens lines smooths them by up to a hundredth of the bit's radius, and draws the
bit's own round by chords. Which pieces there are does not hang on that, but their sizes would. So
each corner of an edge is put as far from the strokes beside it as their bit reaches, and corners
are added until what lies between any two is as exact.
"""

from __future__ import annotations

import math

import numpy as np
import shapely

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.near import (
    Strokes,
    find_foot,
    list_near,
    measure_square,
    measure_way,
    plant_strokes,
)
from station.cutting.geometry.strokes import Cuts, Lines, Shapes
from station.cutting.model import CW, XY, Complexes, Floats, Ints, Moves, Ring

ROUGH_MM = 0.016  # an edge is taken by this first; two halvings of an arc make it TRUE_MM
TRUE_MM = 0.00105  # how far what lies between two corners may be off at last
OFF_MM, OFF_SHARE = 0.03, 0.012  # how far an edge may be off at first: that, and of the radius
SHORT_MM = 0.01  # a shorter side is not halved
DEEPEST = 6  # halvings of one side
MOST_CORNERS = 2**DEEPEST
STEPS = 6
PARALLEL = 0.01  # sine: of two strokes that meet in no corner
CORNER_MM = 1e-4  # how near a corner is between its strokes
SQUARE = 0.2  # sine: of two strokes between which an edge turns sharply, at least
SNAP_MM = 0.05  # what is this near a corner is one
TIP_MM = 1.0  # by how much a sharp corner may have been blunted
SURELY = 1 + 1e-9  # a square that is larger by this is so whatever is rounded


def list_strokes(
    cuts: Cuts, through: Lines, closed: tuple[Shapes, Floats], plunges: tuple[Ints, Floats]
) -> Strokes:
    """Lists the strokes that bound pieces: cuts through the sheet, the ways over closed tabs with
    their bit's radius, and plunges (moves, with the same).

    Lines without an arc are taken as they are drawn, where many short moves are thinned already.
    """
    moves, every = cuts.moves, list_ranges(through.first, through.stop)
    bent = (moves.kind[cuts.index[every]] >= CW) & (moves.plane[cuts.index[every]] == XY)
    curved = np.zeros(len(through), dtype=bool)
    line = np.repeat(np.arange(len(through)), through.stop - through.first)
    curved[line[bent]] = True
    own = curved[line]
    index, radius, bent = cuts.index[every[own]], cuts.radius[every[own]], bent[own]
    sides = (
        _list_sides(through.shape[~curved], through.radius[~curved]),
        _list_last_sides(through.shape[curved], through.radius[curved]),
        _list_sides(*closed),
    )
    place = _take_points(moves, plunges[0])
    start, end, reach = (
        np.concatenate(some) for some in zip(*sides, (place, place, plunges[1]), strict=True)
    )
    none = np.zeros(len(start))
    start = np.concatenate((_take_points(moves, index), start))
    end = np.concatenate((_take_points(moves, index + 1), end))
    centre = np.concatenate((moves.centre[index, 0] + 1j * moves.centre[index, 1], none))
    sweep = np.concatenate((np.where(bent, moves.sweep[index], 0.0), none))
    radius = np.concatenate((radius, reach))
    return plant_strokes(start, end, centre, sweep, radius)


def _take_points(moves: Moves, index: Ints) -> Complexes:
    """Gives points of the path as complex numbers."""
    return np.asarray(moves.points[index, 0] + 1j * moves.points[index, 1])


def list_ranges(first: Ints, stop: Ints) -> Ints:
    """Lists the whole numbers of ranges, one range after another."""
    count = stop - first
    nth = np.arange(int(count.sum())) - np.repeat(np.cumsum(count) - count, count)
    return np.asarray(np.repeat(first, count) + nth)


def _list_sides(ways: Shapes, radius: Floats) -> tuple[Complexes, Complexes, Floats]:
    """Lists the straight sides of ways: starts, ends, and the radius of each."""
    parts, way = shapely.get_parts(ways, return_index=True)
    points, of = shapely.get_coordinates(parts, return_index=True)
    place = points[:, 0] + 1j * points[:, 1]
    side = np.flatnonzero(of[1:] == of[:-1])
    return place[side], place[side + 1], radius[way[of[side]]]


def _list_last_sides(lines: Shapes, radius: Floats) -> tuple[Complexes, Complexes, Floats]:
    """Lists the last side of each line: it may close a line that ends short of its start."""
    ends = [shapely.get_coordinates(shapely.get_point(lines, at)) for at in (-2, -1)]
    start, end = (points[:, 0] + 1j * points[:, 1] for points in ends)
    return start, end, radius


@compile_inner
def _find_tightest(
    p: complex, near: Ints, start: Complexes, end: Complexes, centre: Complexes,
    sweep: Floats, radius: Floats,
) -> tuple[int, float, complex]:  # fmt: skip
    """Finds the stroke whose bit comes nearest to a place, or furthest over it; by how much it is
    off; and the stroke's nearest point. -1: there is none.
    """
    best, least, at = -1, math.inf, p
    for n in range(len(near)):
        foot, most = find_foot(near[n], p, start, end, centre, sweep), least + radius[near[n]]
        off = p - foot
        if most <= 0 or measure_square(off) > most * most * SURELY:
            continue  # quicker to tell than how far off it is
        gap = measure_way(off) - radius[near[n]]
        if gap < least:
            best, least, at = near[n], gap, foot
    return best, least, at


@compile_inner
def _put_beside(
    p: complex, first: tuple[int, float, complex], near: Ints, start: Complexes, end: Complexes,
    centre: Complexes, sweep: Floats, radius: Floats,
) -> tuple[complex, int]:  # fmt: skip
    """Puts a place, of which the tightest stroke is the first, where no stroke's bit reaches over
    it and one just reaches it; gives that stroke, or -1 and the place as it was where none comes
    near.
    """
    put, stroke, (k, gap, foot) = p, -1, first
    for _ in range(STEPS):
        if k < 0 or abs(gap) > OFF_MM + OFF_SHARE * radius[k] or put == foot:
            return p, -1
        stroke = k
        if abs(gap) < 1e-7:
            break
        put = foot + (put - foot) * (radius[k] / measure_way(put - foot))
        k, gap, foot = _find_tightest(put, near, start, end, centre, sweep, radius)
    return put, stroke


@compile_inner
def _find_corner(
    p: complex, one: int, other: int, start: Complexes, end: Complexes, centre: Complexes,
    sweep: Floats, radius: Floats,
) -> tuple[complex, bool]:  # fmt: skip
    """Finds the corner between what two strokes take, from a place near it."""
    for _ in range(2 * STEPS):
        foot, foot2 = (
            find_foot(one, p, start, end, centre, sweep),
            find_foot(other, p, start, end, centre, sweep),
        )
        far, far2 = measure_way(p - foot), measure_way(p - foot2)
        if far == 0.0 or far2 == 0.0:
            break
        u, v = (p - foot) / far, (p - foot2) / far2
        miss, miss2 = radius[one] - far, radius[other] - far2
        if abs(miss) + abs(miss2) < 1e-7:
            return p, True
        cross = u.real * v.imag - u.imag * v.real
        if abs(cross) < PARALLEL:
            break
        p += complex(miss * v.imag - miss2 * u.imag, miss2 * u.real - miss * v.real) / cross
    return p, False


@compile_inner
def _is_free(
    corner: complex, likely: int, near: Ints, start: Complexes, end: Complexes,
    centre: Complexes, sweep: Floats, radius: Floats,
) -> bool:  # fmt: skip
    """Tells whether no stroke's bit reaches over a corner; the likely one is asked first."""
    for n in range(-1, len(near)):
        m = near[n] if n >= 0 else likely
        off = corner - find_foot(m, corner, start, end, centre, sweep)
        surely_far = measure_square(off) > radius[m] * radius[m] * SURELY
        if not surely_far and measure_way(off) - radius[m] <= -CORNER_MM:
            return False
    return True


@compile_inner
def _snap_to_corner(
    p: complex, k: int, near: Ints, start: Complexes, end: Complexes, centre: Complexes,
    sweep: Floats, radius: Floats,
) -> complex:  # fmt: skip
    """Gives the corner that a place beside stroke k is at, but for a hair; else the place."""
    if k < 0:
        return p
    foot = find_foot(k, p, start, end, centre, sweep)
    best, most, off = -1, SQUARE, 0.0
    for n in range(len(near)):
        m = near[n]
        u, v = p - foot, p - find_foot(m, p, start, end, centre, sweep)
        reach = radius[m] + SNAP_MM
        if measure_square(v) > reach * reach * SURELY:
            continue
        gap = measure_way(v) - radius[m]
        cross = abs(u.real * v.imag - u.imag * v.real) / (radius[k] * radius[m])
        if abs(gap) < SNAP_MM and cross > most:
            best, most, off = m, cross, gap
    if best < 0 or abs(off) < TRUE_MM:
        return p
    corner, found = _find_corner(p, k, best, start, end, centre, sweep, radius)
    found = found and measure_way(corner - p) < SNAP_MM
    if found and _is_free(corner, k, near, start, end, centre, sweep, radius):
        return corner
    return p


@compile_inner
def _halve(
    a: complex, b: complex, one: int, other: int, near: Ints, start: Complexes, end: Complexes,
    centre: Complexes, sweep: Floats, radius: Floats,
) -> tuple[complex, int, bool]:  # fmt: skip
    """Finds a corner between two, whose strokes are `one` and `other`, with its own stroke; False
    where what lies between them is exact already, or nothing bounds it.
    """
    middle = (a + b) / 2
    first = _find_tightest(middle, near, start, end, centre, sweep, radius)
    k, gap, _ = first
    if k < 0 or abs(gap) < TRUE_MM or abs(gap) > OFF_MM + OFF_SHARE * radius[k]:
        return middle, k, False
    if one >= 0 and other >= 0 and one != other:
        corner, found = _find_corner(middle, one, other, start, end, centre, sweep, radius)
        share = (corner - a) / (b - a)
        found = found and 0 < share.real < 1 and abs(share.imag * (b - a)) < TIP_MM
        found = found and min(measure_way(corner - a), measure_way(corner - b)) > SHORT_MM
        if found and _is_free(corner, k, near, start, end, centre, sweep, radius):
            return corner, one, True
    put, k = _put_beside(middle, first, near, start, end, centre, sweep, radius)
    return put, k, True


@compile_entry(
    "i8(c16[::1], i8[::1], i8[::1], c16[::1], c16[::1], c16[::1], f8[::1], f8[::1], c16[::1])"
)
def fill_edge(
    ring: Complexes, stops: Ints, strokes: Ints, start: Complexes, end: Complexes,
    centre: Complexes, sweep: Floats, radius: Floats, out: Complexes,
) -> int:  # fmt: skip
    """Fills in the exact corners of a ring; gives how many there are.

    The strokes beside side n of the ring are those in `strokes` from ``stops[n]`` to
    ``stops[n + 1]``. `out` has room for MOST_CORNERS corners a side.
    """
    n, made = len(ring), 0
    place, bound = np.empty(n, np.complex128), np.empty(n, np.int64)
    for i in range(n):
        before = i - 1 if i else n - 1
        some = np.concatenate(
            (strokes[stops[before] : stops[before + 1]], strokes[stops[i] : stops[i + 1]])
        )
        first = _find_tightest(ring[i], some, start, end, centre, sweep, radius)
        put, bound[i] = _put_beside(ring[i], first, some, start, end, centre, sweep, radius)
        place[i] = _snap_to_corner(put, bound[i], some, start, end, centre, sweep, radius)
    ends, kept = np.empty(DEEPEST + 2, np.complex128), np.empty(DEEPEST + 2, np.int64)
    deep = np.empty(DEEPEST + 2, np.int64)
    for i in range(n):
        some = strokes[stops[i] : stops[i + 1]]
        a, one, after, left = place[i], bound[i], i + 1 if i < n - 1 else 0, 1
        ends[0], kept[0], deep[0] = place[after], bound[after], 0
        while left:  # sides to be looked at, the next one last
            b, other, more = ends[left - 1], kept[left - 1], False
            if deep[left - 1] < DEEPEST and measure_way(b - a) > SHORT_MM:
                ends[left], kept[left], more = _halve(
                    a, b, one, other, some, start, end, centre, sweep, radius
                )
            if more:
                deep[left - 1] += 1
                deep[left] = deep[left - 1]
                left += 1
            else:
                out[made] = a
                made, left, a, one = made + 1, left - 1, b, other
    return made


def draw_edges(rings: Shapes, strokes: Strokes) -> list[Ring]:
    """Draws the edges of rings (polygons' outlines) as exact as the strokes beside them."""
    rough = shapely.simplify(rings, ROUGH_MM, preserve_topology=False)
    points, of = shapely.get_coordinates(rough, return_index=True)
    side = np.flatnonzero(of[1:] == of[:-1])
    most = float(strokes.radius.max(initial=0.0))
    reach, seen = most * (1 + OFF_SHARE) + OFF_MM, np.full(len(strokes.start), -1)
    first = np.searchsorted(of[side], np.arange(len(rings) + 1))
    place = points[side, 0] + 1j * points[side, 1]
    made: list[Ring] = []
    for n in range(len(rings)):
        a, b = int(first[n]), int(first[n + 1])
        out = np.empty((b - a) * MOST_CORNERS, np.complex128)
        stops, near = list_near(
            place[a:b], reach, strokes.start, strokes.end, strokes.centre, strokes.sweep,
            strokes.stops, strokes.inside, strokes.far, seen, a,
        )  # fmt: skip
        count = fill_edge(place[a:b], stops, near, strokes.start, strokes.end, strokes.centre,
                          strokes.sweep, strokes.radius, out)  # fmt: skip
        made.append(np.column_stack((out[:count].real, out[:count].imag)))
    return made
