"""Closed loops that a path cuts through the sheet, and where tabs interrupt them."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from station.cutting.model import CW, RAPID, XY, Bools, Floats, Moves, Ring
from station.cutting.rings import arc_points, area_of, centroid_of, perimeter_of, tidy

CLOSES_MM = 0.02  # ends nearer than this are the same point
SHORTEST_MM = 1.0
WIDEST_GAP_MM = 40.0  # a longer way between two cuts is no tab
AROUND = ((0, 0), (-1, 0), (1, 0), (0, -1), (0, 1), (-1, -1), (1, 1), (-1, 1), (1, -1))
BRIDGE = -1  # the move of an edge that no move cuts


class Edge(NamedTuple):
    """One edge of a loop: a move, or the bridge over a gap between two cuts."""

    move: int
    start: tuple[float, float]
    end: tuple[float, float]
    centre: tuple[float, float]
    sweep: float  # 0: straight
    through: bool
    length: float
    top: float  # the highest z on it


@dataclass(frozen=True)
class Loop:
    """A closed path of the bit's centre, cut through for `through_mm` of its length."""

    edges: tuple[Edge, ...]
    ring: Ring  # counter-clockwise
    area: float
    length: float
    through_mm: float
    tool: int
    line: int
    others: tuple[Loop, ...] = ()  # further laps over the same loop


def find_loops(moves: Moves, flat: Floats, face: float, through_z: float) -> list[Loop]:
    """All closed loops with a cut-through part, each once."""
    chosen = _through_chains(moves, face, through_z)
    if not len(chosen):
        return []
    walk = _Walk(moves, flat, through_z)
    before = -2
    for index in chosen.tolist():
        if index != before + 1 or moves.tool[index] != moves.tool[before]:
            walk.lift(index, same_tool=before >= 0 and moves.tool[index] == moves.tool[before])
        walk.step(index)
        before = index
    return _each_once(walk.loops)


def _through_chains(moves: Moves, face: float, through_z: float) -> np.ndarray:
    """Moves of every unbroken run of cuts in the sheet that goes through it somewhere."""
    z = moves.points[:, 2]
    inside = (moves.kind != RAPID) & (np.minimum(z[:-1], z[1:]) < face - 0.01)
    starts = inside & ~np.concatenate(([False], inside[:-1]))
    run = np.cumsum(starts)
    deep = inside & (np.maximum(z[:-1], z[1:]) <= through_z)
    deep_runs = np.zeros(int(run[-1]) + 1 if len(run) else 1, dtype=bool)
    deep_runs[run[deep]] = True
    return np.flatnonzero(inside & deep_runs[run])


class _Walk:
    """Follows a path and takes out each loop as it closes."""

    def __init__(self, moves: Moves, flat: Floats, through_z: float) -> None:
        self.moves = moves
        self.flat = flat
        self.through_z = through_z
        self.loops: list[Loop] = []
        self.corners: list[tuple[float, float]] = []
        self.edges: list[Edge] = []
        self.seen: dict[tuple[int, int], int] = {}

    def lift(self, index: int, *, same_tool: bool) -> None:
        """The bit comes down anew before move `index`: over a gap, or somewhere else."""
        x, y = (float(v) for v in self.moves.points[index, :2])
        if same_tool and self.edges and self.corners:
            far = float(np.hypot(x - self.corners[-1][0], y - self.corners[-1][1]))
            if far < CLOSES_MM:
                return
            if far <= WIDEST_GAP_MM:
                self._bridge(index, (x, y), far)
                return
        self._fresh((x, y))

    def _fresh(self, corner: tuple[float, float]) -> None:
        self.corners, self.edges, self.seen = [], [], {}
        self._push(corner)

    def _bridge(self, index: int, end: tuple[float, float], far: float) -> None:
        start = self.corners[-1]
        last, m = self.edges[-1], self.moves
        centre, sweep, length = (0.0, 0.0), 0.0, far
        if last.sweep and m.kind[index] >= CW and m.plane[index] == XY:
            other = (float(m.centre[index, 0]), float(m.centre[index, 1]))
            if np.hypot(other[0] - last.centre[0], other[1] - last.centre[1]) < 0.01:
                centre, sweep = other, _turn(start, end, other, last.sweep)
                length = abs(sweep) * float(np.hypot(end[0] - other[0], end[1] - other[1]))
        self._arrive(Edge(BRIDGE, start, end, centre, sweep, False, length, np.inf))

    def step(self, index: int) -> None:
        """One cut. Straight up and down changes nothing on the plane."""
        m = self.moves
        length = self.flat.item(index)
        if length < 1e-9:
            return
        (x0, y0, z0), (x1, y1, z1) = m.points[index : index + 2].tolist()
        centre, sweep = (0.0, 0.0), 0.0
        if m.kind[index] >= CW and m.plane[index] == XY:
            centre = (float(m.centre[index, 0]), float(m.centre[index, 1]))
            sweep = float(m.sweep[index])
        top = max(z0, z1)
        through = top <= self.through_z
        self._arrive(Edge(index, (x0, y0), (x1, y1), centre, sweep, through, length, top))

    def _arrive(self, edge: Edge) -> None:
        self.edges.append(edge)
        again = self._known(edge.end)
        if again is None:
            self._push(edge.end)
            return
        loop = self.edges[again:]
        self._keep(loop)
        for corner in self.corners[again + 1 :]:
            self._forget(corner)
        del self.edges[again:]
        del self.corners[again + 1 :]

    def _keep(self, edges: list[Edge]) -> None:
        whole = sum(e.length for e in edges)
        cut = sum(e.length for e in edges if e.through)
        real = sum(e.length for e in edges if e.move != BRIDGE)
        if whole < SHORTEST_MM or real < 0.6 * whole or cut < 0.25 * whole:
            return
        ring = tidy(ring_of(edges))
        if len(ring) < 3 or area_of(ring) < 0.05:
            return
        first = next(e.move for e in edges if e.move != BRIDGE)
        line, tool = int(self.moves.line[first]), int(self.moves.tool[first])
        self.loops.append(
            Loop(tuple(edges), ring, area_of(ring), perimeter_of(ring), cut, tool, line)
        )

    def _push(self, corner: tuple[float, float]) -> None:
        self.corners.append(corner)
        self.seen[_cell(corner)] = len(self.corners) - 1

    def _forget(self, corner: tuple[float, float]) -> None:
        self.seen.pop(_cell(corner), None)

    def _known(self, corner: tuple[float, float]) -> int | None:
        cx, cy = _cell(corner)
        seen = self.seen
        for dx, dy in AROUND:
            index = seen.get((cx + dx, cy + dy))
            if index is not None and math.dist(self.corners[index], corner) < CLOSES_MM:
                return index
        return None


def _cell(corner: tuple[float, float]) -> tuple[int, int]:
    return round(corner[0] / CLOSES_MM), round(corner[1] / CLOSES_MM)


def _turn(
    start: tuple[float, float], end: tuple[float, float], centre: tuple[float, float], like: float
) -> float:
    a = np.arctan2(start[1] - centre[1], start[0] - centre[0])
    b = np.arctan2(end[1] - centre[1], end[0] - centre[0])
    sweep = float((b - a) % (2 * np.pi))
    return sweep if like > 0 else sweep - 2 * np.pi


def ring_of(edges: list[Edge] | tuple[Edge, ...]) -> Ring:
    """The corners of a loop, arcs as fine chords."""
    pieces = []
    for edge in edges:
        if edge.sweep:
            pieces.append(arc_points(np.array(edge.start), np.array(edge.centre), edge.sweep))
        else:
            pieces.append(np.array([edge.end]))
    return np.concatenate(pieces)


def _each_once(loops: list[Loop]) -> list[Loop]:
    """Of laps over the same loop the one that is cut through most."""
    kept: list[Loop] = []
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
        same = next((i for i in near if _same(kept[i], loop)), None)
        if same is None:
            places.setdefault(cell, []).append(len(kept))
            kept.append(loop)
        else:
            kept[same] = _deepest(kept[same], loop)
    return kept


def _deepest(one: Loop, other: Loop) -> Loop:
    best, rest = (other, one) if other.through_mm > one.through_mm else (one, other)
    laps = (*one.others, replace(rest, others=()))
    return replace(best, others=laps, line=min(one.line, other.line))


def _same(one: Loop, other: Loop) -> bool:
    return (
        abs(one.area - other.area) < 0.002 * one.area + 0.05
        and abs(one.length - other.length) < 0.002 * one.length + 0.02
        and bool(np.abs(one.ring.min(axis=0) - other.ring.min(axis=0)).max() < 0.05)
    )


def cut_moves(moves: Moves, flat: Floats, through_z: float) -> Bools:
    """Moves at feed that go through the sheet along their whole length."""
    z = moves.points[:, 2]
    deep = np.maximum(z[:-1], z[1:]) <= through_z
    return np.asarray((moves.kind != RAPID) & deep & (flat > 1e-9))
