"""Closed loops that a path cuts through the sheet, and where tabs interrupt them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

import numba
import numpy as np
import numpy.typing as npt

from station.cutting.compiled import Real, Whole, compile_entry, compile_inner, make_dtype
from station.cutting.geometry.moves import split_columns
from station.cutting.geometry.rings import (
    CHORD_MM,
    MOST_CHORDS,
    area_of,
    centroid_of,
    measure_ring,
    tidy_ring,
)
from station.cutting.model import CW, RAPID, XY, Bools, Bytes, Floats, Ints, Moves, Ring

CLOSES_MM = 0.02  # ends nearer than this are the same point
PER_CELL = 1 / (4 * CLOSES_MM)
SHORTEST_MM = 1.0
WIDEST_GAP_MM = 40.0  # a longer way between two cuts is no tab
BRIDGE = -1  # the move of an edge that no move cuts
LEAST_MM2 = 0.05


class Edge:
    """Holds one edge of a loop: a move, or the bridge over a gap between two cuts."""

    move: Whole
    x0: Real
    y0: Real
    x1: Real
    y1: Real
    cx: Real
    cy: Real
    sweep: Real  # 0: straight
    length: Real
    top: Real  # the highest z on it
    through: Whole  # cut through along its whole length


EDGE = make_dtype(Edge)
Edges = npt.NDArray[Any]


@compile_inner
def _find_cell(v: float) -> int:
    """Finds the cell along one axis."""
    return math.floor(v * PER_CELL)


@compile_inner
def _hash_cell(i: int, j: int, mask: int) -> int:
    """Finds where a cell of the plane is kept."""
    return (i * 73856093 ^ j * 19349663) & mask


@compile_inner
def _find_sweep(x0: float, y0: float, x1: float, y1: float, like: float) -> float:
    """Finds the sweep from one spoke to another, turning as `like` does."""
    sweep = (math.atan2(y1, x1) - math.atan2(y0, x0)) % (2 * math.pi)
    return sweep if like > 0 else sweep - 2 * math.pi


@compile_inner
def _push_corner(
    px: Floats, py: Floats, chain: Ints, heads: Ints, corner: int, x: float, y: float
) -> None:
    """Puts one more corner first in the list of its cell."""
    px[corner], py[corner] = x, y
    h = _hash_cell(_find_cell(x), _find_cell(y), len(heads) - 1)
    chain[corner], heads[h] = heads[h], corner + 1


@compile_inner
def _drop_corners(
    px: Floats, py: Floats, chain: Ints, heads: Ints, corners: int, keep: int
) -> int:
    """Forgets all corners but the first few; they go in turn, so each is first of its cell."""
    while corners > keep:
        corners -= 1
        h = _hash_cell(_find_cell(px[corners]), _find_cell(py[corners]), len(heads) - 1)
        heads[h] = chain[corners]
    return corners


@compile_inner
def _find_corner(px: Floats, py: Floats, chain: Ints, heads: Ints, x: float, y: float) -> int:
    """Finds the last corner that is this place; -1: there is none."""
    again = -1
    for i in range(_find_cell(x - CLOSES_MM), _find_cell(x + CLOSES_MM) + 1):
        for j in range(_find_cell(y - CLOSES_MM), _find_cell(y + CLOSES_MM) + 1):
            c = heads[_hash_cell(i, j, len(heads) - 1)] - 1
            while c > again:
                if math.hypot(px[c] - x, py[c] - y) < CLOSES_MM:
                    again = c
                c = chain[c] - 1
    return again


@compile_inner
def _is_loop(stack: Edges, first: int, end: int) -> bool:
    """Tells whether edges that close are long enough, and cut enough, to be a loop."""
    whole = cut = real = 0.0
    for k in range(first, end):
        whole += stack[k].length
        cut += stack[k].length if stack[k].through else 0.0
        real += stack[k].length if stack[k].move != BRIDGE else 0.0
    return whole >= SHORTEST_MM and real >= 0.6 * whole and cut >= 0.25 * whole


@compile_inner
def _copy_edges(stack: Edges, first: int, end: int, kept: Edges, out: int) -> int:
    """Copies the edges of a loop; gives where the next go."""
    for k in range(first, end):
        kept[out + k - first] = stack[k]
    return out + end - first


@compile_inner
def _bridge_gap(e: Edge, before: Edge, far: float, cx: float, cy: float) -> None:
    """Makes an edge over a gap: along the arc before it where the arc after it has its centre."""
    e.move, e.through, e.top, e.length = BRIDGE, 0, math.inf, far
    if before.sweep != 0 and math.hypot(cx - before.cx, cy - before.cy) < 0.01:
        e.cx, e.cy = cx, cy
        e.sweep = _find_sweep(e.x0 - cx, e.y0 - cy, e.x1 - cx, e.y1 - cy, before.sweep)
        e.length = abs(e.sweep) * math.hypot(e.x1 - cx, e.y1 - cy)


_F, _I, _B, _E = (t[::1] for t in (numba.f8, numba.i8, numba.u1, numba.from_dtype(EDGE)))
SIGNATURE = numba.i8(_I, _F, _F, _F, _B, _B, _F, _F, _F, _F, numba.i4[::1], numba.f8,
                     _E, _F, _F, _I, _I, _E, _I)  # fmt: skip


# Not cut up further: what is handed to inner functions by the move is paid for by the move.
@compile_entry(SIGNATURE)
def follow_path(
    chosen: Ints, x: Floats, y: Floats, z: Floats, kind: Bytes, plane: Bytes, c0: Floats,
    c1: Floats, sweep: Floats, flat: Floats, tool: Ints, through_z: float,
    stack: Edges, px: Floats, py: Floats, chain: Ints, heads: Ints, kept: Edges, stops: Ints,
) -> int:  # fmt: skip
    """Puts the edges of every loop behind one another into `kept`; `stops` are their ends.

    Gives how many loops there are. `stack`, `px` and `py` hold the path since it last closed;
    `heads` and `chain` list its corners by their cell.
    """
    corners, edges, out, loops, before = 0, 0, 0, 0, -2
    for index in chosen:
        far = -1.0  # of a gap that is bridged
        if index != before + 1 or tool[index] != tool[before]:
            if edges and tool[index] == tool[before]:
                far = math.hypot(x[index] - px[corners - 1], y[index] - py[corners - 1])
            if far < 0 or far > WIDEST_GAP_MM:
                _drop_corners(px, py, chain, heads, corners, 0)
                _push_corner(px, py, chain, heads, 0, x[index], y[index])
                corners, edges, far = 1, 0, -1.0
        bent = kind[index] >= CW and plane[index] == XY
        for part in range(0 if far >= CLOSES_MM else 1, 2 if flat[index] >= 1e-9 else 1):
            e = stack[edges]
            e.cx = e.cy = e.sweep = 0.0
            if part == 0:
                e.x0, e.y0, e.x1, e.y1 = px[corners - 1], py[corners - 1], x[index], y[index]
                cx, cy = (c0[index], c1[index]) if bent else (math.inf, math.inf)
                _bridge_gap(e, stack[edges - 1], far, cx, cy)
            else:
                e.x0, e.y0, e.x1, e.y1 = x[index], y[index], x[index + 1], y[index + 1]
                e.move, e.length, e.top = index, flat[index], max(z[index], z[index + 1])
                e.through = int(e.top <= through_z)
                if bent:
                    e.cx, e.cy, e.sweep = c0[index], c1[index], sweep[index]
            edges += 1
            again = _find_corner(px, py, chain, heads, e.x1, e.y1)
            if again < 0:
                _push_corner(px, py, chain, heads, corners, e.x1, e.y1)
                corners += 1
                continue
            if _is_loop(stack, again, edges):
                out = _copy_edges(stack, again, edges, kept, out)
                stops[loops] = out
                loops += 1
            corners, edges = _drop_corners(px, py, chain, heads, corners, again + 1), again
        before = index
    return loops


@dataclass(frozen=True)
class CutLoop:
    """Holds a closed path of the bit's centre, cut through for `through_mm` of its length."""

    edges: Edges
    ring: Ring  # counter-clockwise
    area: float
    length: float
    through_mm: float
    tool: int
    line: int
    forward: bool  # its edges run counter-clockwise
    others: tuple[CutLoop, ...] = ()  # further laps over the same loop


def find_loops(moves: Moves, flat: Floats, face: float, through_z: float) -> list[CutLoop]:
    """Finds all closed loops with a cut-through part, each once."""
    chosen = _choose_moves(moves, face, through_z)
    if not len(chosen):
        return []
    found = (_make_loop(moves, edges) for edges in _follow_moves(moves, flat, chosen, through_z))
    return _join_laps([loop for loop in found if loop is not None])


def _choose_moves(moves: Moves, face: float, through_z: float) -> Ints:
    """Chooses the moves of every unbroken run of cuts that goes through the sheet somewhere."""
    z = moves.points[:, 2]
    inside = (moves.kind != RAPID) & (np.minimum(z[:-1], z[1:]) < face - 0.01)
    starts = inside & ~np.concatenate(([False], inside[:-1]))
    run = np.cumsum(starts)
    deep = inside & (np.maximum(z[:-1], z[1:]) <= through_z)
    deep_runs = np.zeros(int(run[-1]) + 1 if len(run) else 1, dtype=bool)
    deep_runs[run[deep]] = True
    return np.flatnonzero(inside & deep_runs[run])


def _follow_moves(moves: Moves, flat: Floats, chosen: Ints, through_z: float) -> Iterator[Edges]:
    """Gives the edges of each loop that the chosen moves close."""
    most = 2 * len(chosen) + 2  # each move, and a bridge before it
    stack, kept = np.empty(most, EDGE), np.empty(most, EDGE)
    px, py = np.empty(most), np.empty(most)
    chain, stops = np.empty(most, np.int64), np.empty(most, np.int64)
    heads = np.zeros(1 << most.bit_length(), np.int64)
    x, y, z = split_columns(moves.points)
    c0, c1 = split_columns(moves.centre)
    count = follow_path(
        chosen, x, y, z, moves.kind, moves.plane, c0, c1, moves.sweep, flat,
        moves.tool, through_z, stack, px, py, chain, heads, kept, stops,
    )  # fmt: skip
    begin = 0
    for stop in stops[:count].tolist():
        yield kept[begin:stop]
        begin = stop


def _make_loop(moves: Moves, edges: Edges) -> CutLoop | None:
    """Makes a loop of its edges; None where it holds hardly anything."""
    drawn = draw_ring(edges)
    ring = tidy_ring(drawn)
    if len(ring) < 3 or area_of(ring) < LEAST_MM2:
        return None
    first = int(edges["move"][np.argmax(edges["move"] != BRIDGE)])
    cut = float(edges["length"][edges["through"] > 0].sum())
    line, tool = int(moves.line[first]), int(moves.tool[first])
    area, around = measure_ring(ring)[:2]
    return CutLoop(edges, ring, area, around, cut, tool, line, area_of(drawn) > 0)


def draw_ring(edges: Edges) -> Ring:
    """Draws the corners of a loop, arcs as fine chords."""
    sweep = edges["sweep"]
    if not sweep.any():
        return np.column_stack((edges["x1"], edges["y1"]))
    spoke = edges["x0"] - edges["cx"] + 1j * (edges["y0"] - edges["cy"])
    reach = np.maximum(np.abs(spoke), CHORD_MM)
    widest = np.maximum(2 * np.arccos(np.maximum(1 - CHORD_MM / reach, 0.5)), 1e-6)
    chords = np.clip(np.ceil(np.abs(sweep) / widest / 4) * 4, 4, MOST_CHORDS)
    count = np.where(sweep == 0, 1, chords).astype(np.int64)
    edge = np.repeat(np.arange(len(edges)), count)
    step = np.arange(len(edge)) - np.repeat(np.cumsum(count) - count, count) + 1
    turned = spoke[edge] * np.exp(1j * sweep[edge] * step / count[edge])
    points = turned + edges["cx"][edge] + 1j * edges["cy"][edge]
    straight = sweep[edge] == 0
    points[straight] = (edges["x1"] + 1j * edges["y1"])[edge[straight]]
    return np.column_stack((points.real, points.imag))


def _join_laps(loops: list[CutLoop]) -> list[CutLoop]:
    """Joins laps over the same loop under the one that is cut through most."""
    kept: list[CutLoop] = []
    places: dict[tuple[int, int], list[int]] = {}
    for loop in loops:
        x, y = centroid_of(loop.ring)
        cell = (round(x), round(y))
        near = [
            i
            for dx in (-1, 0, 1)
            for dy in (-1, 0, 1)
            for i in places.get((cell[0] + dx, cell[1] + dy), ())
        ]
        same = next((i for i in near if _is_same_loop(kept[i], loop)), None)
        if same is None:
            places.setdefault(cell, []).append(len(kept))
            kept.append(loop)
        else:
            kept[same] = _join_two(kept[same], loop)
    return kept


def _join_two(one: CutLoop, other: CutLoop) -> CutLoop:
    """Joins two laps over one loop under the one that is cut through most."""
    best, rest = (other, one) if other.through_mm > one.through_mm else (one, other)
    laps = (*one.others, replace(rest, others=()))
    return replace(best, others=laps, line=min(one.line, other.line))


def _is_same_loop(one: CutLoop, other: CutLoop) -> bool:
    """Tells whether two laps run over the same loop."""
    return (
        abs(one.area - other.area) < 0.002 * one.area + 0.05
        and abs(one.length - other.length) < 0.002 * one.length + 0.02
        and bool(np.abs(one.ring.min(axis=0) - other.ring.min(axis=0)).max() < 0.05)
    )


def pick_cuts(moves: Moves, flat: Floats, through_z: float) -> Bools:
    """Picks moves at feed that go through the sheet along their whole length."""
    z = moves.points[:, 2]
    deep = np.maximum(z[:-1], z[1:]) <= through_z
    return np.asarray((moves.kind != RAPID) & deep & (flat > 1e-9))
