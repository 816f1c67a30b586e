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
Every = tuple[Complexes, Complexes, Complexes, Floats, Floats]  # the columns of all strokes
Room = tuple[Ints, Floats, Floats]  # strokes laid out: which, eleven rows of numbers, gaps


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
def _lay_out(near: Ints, room: Room, made: int, every: Every) -> int:
    """Lays strokes out side by side, behind those `made` so far; gives how many there are then."""
    start, end, _, sweep, radius = every
    names, table, _ = room
    for n in range(len(near)):
        k = near[n]
        a, b = complex(start[k]), complex(end[k])
        way, names[made] = b - a, k
        table[0, made], table[1, made], table[2, made], table[3, made] = (
            a.real,
            a.imag,
            b.real,
            b.imag,
        )
        table[4, made], table[5, made], table[6, made] = way.real, way.imag, measure_square(way)
        table[7, made], table[8, made] = radius[k], sweep[k]
        made += 1
    return made


@compile_inner
def _fill_gaps(p: complex, count: int, room: Room, every: Every) -> None:
    """Fills in by how much the bit of each stroke that is laid out is off a place, and the
    stroke's nearest point: as `find_foot` does, but for several straight ones at once.
    """
    start, end, centre, sweep, _ = every
    names, table, gaps = room
    ax, ay, bx, by, wide, high = table[0], table[1], table[2], table[3], table[4], table[5]
    size, reach, turn, feet_x, feet_y = table[6], table[7], table[8], table[9], table[10]
    px, py = p.real, p.imag
    for n in range(count):
        ahead = (px - ax[n]) * wide[n] + (py - ay[n]) * high[n]
        share = ahead / size[n]
        x, y = ax[n] + wide[n] * share, ay[n] + high[n] * share
        x, y = (bx[n] if share >= 1.0 else x), (by[n] if share >= 1.0 else y)
        x, y = (ax[n] if ahead <= 0.0 else x), (ay[n] if ahead <= 0.0 else y)
        feet_x[n], feet_y[n] = x, y
        gaps[n] = math.sqrt((px - x) * (px - x) + (py - y) * (py - y)) - reach[n]
    for n in range(count):
        if turn[n] != 0.0:
            foot = find_foot(names[n], p, start, end, centre, sweep)
            feet_x[n], feet_y[n] = foot.real, foot.imag
            gaps[n] = measure_way(p - foot) - reach[n]


@compile_inner
def _find_tightest(p: complex, count: int, room: Room, every: Every) -> tuple[int, float, complex]:
    """Finds the stroke whose bit comes nearest to a place, or furthest over it; by how much it is
    off; and the stroke's nearest point. -1: there is none.
    """
    names, table, gaps = room
    _fill_gaps(p, count, room, every)
    best, least = -1, math.inf
    for n in range(count):
        if gaps[n] < least:
            best, least = n, gaps[n]
    if best < 0:
        return -1, least, p
    return names[best], least, complex(table[9, best], table[10, best])


@compile_inner
def _put_beside(
    p: complex, first: tuple[int, float, complex], count: int, room: Room, every: Every
) -> tuple[complex, int]:
    """Puts a place, of which the tightest stroke is the first, where no stroke's bit reaches over
    it and one just reaches it; gives that stroke, or -1 and the place as it was where none comes
    near. The gaps of the strokes are then those at that place.
    """
    radius = every[4]
    put, stroke, (k, gap, foot) = p, -1, first
    for _ in range(STEPS):
        if k < 0 or abs(gap) > OFF_MM + OFF_SHARE * radius[k] or put == foot:
            return p, -1
        stroke = k
        if abs(gap) < 1e-7:
            break
        put = foot + (put - foot) * (radius[k] / measure_way(put - foot))
        k, gap, foot = _find_tightest(put, count, room, every)
    return put, stroke


@compile_inner
def _find_corner(p: complex, one: int, other: int, every: Every) -> tuple[complex, bool]:
    """Finds the corner between what two strokes take, from a place near it."""
    start, end, centre, sweep, radius = every
    for _ in range(2 * STEPS):
        foot, foot2 = (
            find_foot(one, p, start, end, centre, sweep),
            find_foot(other, p, start, end, centre, sweep),
        )
        far, far2 = measure_way(p - foot), measure_way(p - foot2)
        if far == 0.0 or far2 == 0.0:
            break
        u, v = (p.real - foot.real) / far, (p.imag - foot.imag) / far
        u2, v2 = (p.real - foot2.real) / far2, (p.imag - foot2.imag) / far2
        miss, miss2 = radius[one] - far, radius[other] - far2
        if abs(miss) + abs(miss2) < 1e-7:
            return p, True
        cross = u * v2 - v * u2  # each number alone: a complex one is divided far slower
        if abs(cross) < PARALLEL:
            break
        p += complex((miss * v2 - miss2 * v) / cross, (miss2 * u - miss * u2) / cross)
    return p, False


@compile_inner
def _is_free(corner: complex, count: int, room: Room, every: Every) -> bool:
    """Tells whether no stroke's bit reaches over a corner."""
    _fill_gaps(corner, count, room, every)
    free = True
    for n in range(count):
        free &= room[2][n] > -CORNER_MM
    return free


@compile_inner
def _snap_to_corner(p: complex, k: int, count: int, room: Room, every: Every) -> complex:
    """Gives the corner that a place, just put beside stroke k, is at but for a hair; else the
    place.
    """
    if k < 0:
        return p
    start, end, centre, sweep, radius = every
    names, table, gaps = room
    foot = find_foot(k, p, start, end, centre, sweep)
    best, most, off = -1, SQUARE, 0.0
    for n in range(count):
        if abs(gaps[n]) >= SNAP_MM:
            continue
        m = names[n]
        u, v = p - foot, p - complex(table[9, n], table[10, n])
        cross = abs(u.real * v.imag - u.imag * v.real) / (radius[k] * radius[m])
        if cross > most:
            best, most, off = m, cross, gaps[n]
    if best < 0 or abs(off) < TRUE_MM:
        return p
    corner, found = _find_corner(p, k, best, every)
    found = found and measure_way(corner - p) < SNAP_MM
    return corner if found and _is_free(corner, count, room, every) else p


@compile_inner
def _halve(
    a: complex, b: complex, one: int, other: int, count: int, room: Room, every: Every
) -> tuple[complex, int, bool]:
    """Finds a corner between two, whose strokes are `one` and `other`, with its own stroke; False
    where what lies between them is exact already, or nothing bounds it.
    """
    middle = (a + b) / 2
    first = _find_tightest(middle, count, room, every)
    k, gap, _ = first
    if k < 0 or abs(gap) < TRUE_MM or abs(gap) > OFF_MM + OFF_SHARE * every[4][k]:
        return middle, k, False
    if one >= 0 and other >= 0 and one != other:
        corner, found = _find_corner(middle, one, other, every)
        share = (corner - a) / (b - a)
        found = found and 0 < share.real < 1 and abs(share.imag * (b - a)) < TIP_MM
        found = found and min(measure_way(corner - a), measure_way(corner - b)) > SHORT_MM
        if found and _is_free(corner, count, room, every):
            return corner, one, True
    put, k = _put_beside(middle, first, count, room, every)
    return put, k, True


@compile_inner
def _put_corners(
    ring: Complexes, stops: Ints, strokes: Ints, room: Room, every: Every, place: Complexes,
    bound: Ints,
) -> None:  # fmt: skip
    """Puts the corners of a ring beside the strokes along both their sides; `bound`: which."""
    for i in range(len(ring)):
        before = i - 1 if i else len(ring) - 1
        count = _lay_out(strokes[stops[before] : stops[before + 1]], room, 0, every)
        count = _lay_out(strokes[stops[i] : stops[i + 1]], room, count, every)
        first = _find_tightest(ring[i], count, room, every)
        put, bound[i] = _put_beside(ring[i], first, count, room, every)
        place[i] = _snap_to_corner(put, bound[i], count, room, every)


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
    most, every = 2 * np.diff(stops).max(), (start, end, centre, sweep, radius)
    room = np.empty(most, np.int64), np.empty((11, most)), np.empty(most)
    place, bound = np.empty(n, np.complex128), np.empty(n, np.int64)
    _put_corners(ring, stops, strokes, room, every, place, bound)
    ends, kept = np.empty(DEEPEST + 2, np.complex128), np.empty(DEEPEST + 2, np.int64)
    deep = np.empty(DEEPEST + 2, np.int64)
    for i in range(n):
        count = _lay_out(strokes[stops[i] : stops[i + 1]], room, 0, every)
        a, one, after, left = place[i], bound[i], i + 1 if i < n - 1 else 0, 1
        ends[0], kept[0], deep[0] = place[after], bound[after], 0
        while left:  # sides to be looked at, the next one last
            b, other, more = ends[left - 1], kept[left - 1], False
            if deep[left - 1] < DEEPEST and measure_way(b - a) > SHORT_MM:
                ends[left], kept[left], more = _halve(a, b, one, other, count, room, every)
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
