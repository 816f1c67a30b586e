"""Which strokes lie near a side: found by the cells of a grid that the strokes run through.

Only cells that something runs through are kept, under a number that two of them may share; a
stroke that is found by chance is dropped by its distance.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.strokes import MIXED
from station.cutting.model import Complexes, Floats, Ints

CELL_MM = 4.0
ROUND, DEARER = (
    9,
    10,
)  # cells looked at in a step, at least; how much more that may be than strokes
LONGEST_MM = 20_000.0  # strokes longer than any sheet are in no cell, but looked at each time
Box = tuple[int, int, int, int]


@dataclass(frozen=True)
class Strokes:
    """Holds single strokes of bits, straight or along an arc (where `sweep` is not 0).

    The strokes through the cells of number n are those in `inside` from ``stops[n]`` to
    ``stops[n + 1]``; `far` are the longest ones, in no cell.
    """

    start: Complexes
    end: Complexes
    centre: Complexes
    sweep: Floats
    radius: Floats  # of the bit
    stops: Ints
    inside: Ints
    far: Ints


@compile_inner
def measure_square(way: complex) -> float:
    """Measures the square of a way's length."""
    return way.real * way.real + way.imag * way.imag


@compile_inner
def measure_way(way: complex) -> float:
    """Measures how long a way is; abs guards against sizes that no sheet has, and takes longer."""
    return math.sqrt(way.real * way.real + way.imag * way.imag)


@compile_inner
def find_foot(
    k: int, p: complex, start: Complexes, end: Complexes, centre: Complexes, sweep: Floats
) -> complex:
    """Finds the point of a stroke that is nearest to a place."""
    a, b = complex(start[k]), complex(end[k])
    if sweep[k] == 0.0:
        way, off = b - a, p - a
        size, ahead = measure_square(way), off.real * way.real + off.imag * way.imag
        if ahead <= 0.0:
            return a
        share = ahead / size
        return b if share >= 1.0 else complex(a.real + way.real * share, a.imag + way.imag * share)
    spoke, away = a - centre[k], p - centre[k]
    far = measure_way(away)
    if far > 0.0:
        ahead = math.atan2(
            spoke.real * away.imag - spoke.imag * away.real,
            spoke.real * away.real + spoke.imag * away.imag,
        )
        if sweep[k] < 0:
            ahead = -ahead
        if ahead < 0.0:
            ahead += 2 * math.pi
        if ahead <= abs(sweep[k]):
            return complex(centre[k] + away * (measure_way(spoke) / far))
    return a if measure_square(p - a) < measure_square(p - b) else b


@compile_inner
def _find_cell(value: float) -> int:
    """Gives the column, or the row, of cells that a place lies in."""
    return math.floor(value / CELL_MM)


@compile_inner
def _find_number(column: int, row: int, mask: int) -> int:
    """Gives the number of a cell."""
    return ((column * 73856093 ^ row * 19349663) * MIXED >> 32) & mask


@compile_inner
def _count_steps(a: complex, b: complex, c: complex, turn: float) -> int:
    """Counts the steps, about as long as a cell, that a stroke is looked at in; 0: it is too long
    for that.
    """
    long = measure_way(b - a) if turn == 0.0 else measure_way(a - c) * abs(turn)
    return max(1, math.ceil(long / CELL_MM)) if long < LONGEST_MM else 0


@compile_inner
def _find_step_box(
    a: complex, b: complex, c: complex, turn: float, share: float, share2: float
) -> Box:
    """Finds the box of a stroke from one share of its way to another, as cells are counted."""
    bulge = 0.0
    if turn == 0.0:
        one, other = a + (b - a) * share, a + (b - a) * share2
    else:
        spoke, t, t2 = a - c, turn * share, turn * share2
        one = c + spoke * complex(math.cos(t), math.sin(t))
        other = c + spoke * complex(math.cos(t2), math.sin(t2))
        bulge = abs(spoke) * (1 - math.cos((t2 - t) / 2))
    return (
        _find_cell(min(one.real, other.real) - bulge),
        _find_cell(min(one.imag, other.imag) - bulge),
        _find_cell(max(one.real, other.real) + bulge),
        _find_cell(max(one.imag, other.imag) + bulge),
    )


@compile_entry("void(c16[::1], c16[::1], c16[::1], f8[::1], i8[::1], i8[::1], i8[::1])")
def fill_cells(
    start: Complexes, end: Complexes, centre: Complexes, sweep: Floats, last: Ints, ends: Ints,
    inside: Ints,
) -> None:  # fmt: skip
    """Puts the strokes into the cells that they run through, each once.

    `last` is scratch, all -1, an item a number; `ends` is where the strokes of each end so far.
    Where there is no room yet (`inside` is empty) they are only counted.
    """
    mask, kept = len(last) - 1, len(inside) > 0
    for k in range(len(start)):
        a, b, c = complex(start[k]), complex(end[k]), complex(centre[k])
        steps = _count_steps(a, b, c, sweep[k])
        for n in range(steps):
            x, y, x2, y2 = _find_step_box(a, b, c, sweep[k], n / steps, (n + 1) / steps)
            for column in range(x, x2 + 1):
                for row in range(y, y2 + 1):
                    cell = _find_number(column, row, mask)
                    if last[cell] == k:
                        continue
                    last[cell] = k
                    if kept:
                        inside[ends[cell]] = k
                    ends[cell] += 1


@compile_inner
def _take_near(
    some: Ints, place: complex, most: float, side: int, found: Ints, made: int, seen: Ints,
    start: Complexes, end: Complexes, centre: Complexes, sweep: Floats,
) -> int:  # fmt: skip
    """Takes of some strokes those that lie near a place, each once for a side, into a list that
    has room for all of them; gives how many there are in it now.
    """
    for k in some:
        if seen[k] == side:
            continue
        off = place - find_foot(k, place, start, end, centre, sweep)
        if measure_square(off) > most * most:
            continue
        seen[k] = side
        found[made] = k
        made += 1
    return made


@compile_entry("i8[::1](i8[::1], i8)")
def _make_room(found: Ints, least: int) -> Ints:
    """Makes room in a list for `least` items; what is in it stays."""
    wider = np.empty(max(2 * len(found), least), np.int64)
    wider[: len(found)] = found
    return wider


@compile_entry(
    "Tuple((i8[::1], i8[::1]))(c16[::1], f8, c16[::1], c16[::1], c16[::1], f8[::1], i8[::1],"
    " i8[::1], i8[::1], i8[::1], i8)"
)
def list_near(
    ring: Complexes, reach: float, start: Complexes, end: Complexes, centre: Complexes,
    sweep: Floats, stops: Ints, inside: Ints, far: Ints, seen: Ints, number: int,
) -> tuple[Ints, Ints]:  # fmt: skip
    """Lists the strokes within reach of each side of a ring, and some that are hardly further:
    those of side n are in the second list, from where the first says to where it says next.

    `seen` is scratch, an item a stroke, none of them the number of a side; these go on from
    `number`.
    """
    sides, mask, made = len(ring), len(stops) - 2, 0
    bounds, found = np.zeros(sides + 1, np.int64), np.empty(8 * sides, np.int64)
    for i in range(sides):
        a, b, side = complex(ring[i]), complex(ring[i + 1 if i < sides - 1 else 0]), number + i
        steps = _count_steps(a, b, a, 0.0)
        around = ROUND + (2 * reach / CELL_MM) ** 2 + len(far)  # looked at in each step
        if not steps or steps * around > DEARER * len(start):  # no cells save that
            if made + len(start) > len(found):
                found = _make_room(found, made + len(start))
            made = _take_near(np.arange(len(start)), a, math.inf, side, found, made, seen, start,
                              end, centre, sweep)  # fmt: skip
            steps = 0
        for n in range(steps):
            place = a + (b - a) * ((n + 0.5) / steps)
            most = abs(b - a) / steps / 2 + reach
            if made + len(far) > len(found):
                found = _make_room(found, made + len(far))
            made = _take_near(far, place, most, side, found, made, seen, start, end, centre, sweep)
            for column in range(_find_cell(place.real - most), _find_cell(place.real + most) + 1):
                for row in range(_find_cell(place.imag - most), _find_cell(place.imag + most) + 1):
                    cell = _find_number(column, row, mask)
                    some = inside[stops[cell] : stops[cell + 1]]
                    if made + len(some) > len(found):
                        found = _make_room(found, made + len(some))
                    made = _take_near(some, place, most, side, found, made, seen, start, end,
                                      centre, sweep)  # fmt: skip
        bounds[i + 1] = made
    return bounds, found[:made].copy()


def plant_strokes(
    start: Complexes, end: Complexes, centre: Complexes, sweep: Floats, radius: Floats
) -> Strokes:
    """Puts strokes, given by their columns, into the cells that they run through."""
    long = np.where(sweep == 0, np.abs(end - start), np.abs(start - centre) * np.abs(sweep))
    far = np.flatnonzero(long >= LONGEST_MM)
    cells = int(np.ceil(np.delete(long, far) / CELL_MM).sum())  # about as many are run through
    size = 1 << max(len(start), cells, 1).bit_length()
    ends, none = np.zeros(size + 1, np.int64), np.zeros(0, np.int64)
    fill_cells(start, end, centre, sweep, np.full(size, -1), ends[1:], none)
    stops = np.cumsum(ends)
    inside = np.zeros(stops[-1], np.int64)
    fill_cells(start, end, centre, sweep, np.full(size, -1), stops[:-1].copy(), inside)
    return Strokes(start, end, centre, sweep, radius, stops, inside, far)
