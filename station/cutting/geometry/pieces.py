"""Pieces on the sheet: outlines with their holes, the bit's radius taken off or added."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from station.cutting.geometry.loops import CutLoop, find_loops
from station.cutting.geometry.moves import Geometry
from station.cutting.geometry.offset import offset_ring
from station.cutting.geometry.rings import area_of, contains_point, shift_values
from station.cutting.geometry.tabs import (
    LapSteps,
    Stretch,
    find_lost_tabs,
    find_stretches,
    step_laps,
)
from station.cutting.model import LINE, Floats, Moves, Piece, Ring, Tab

LEAST_MM2 = 1.0


@dataclass
class NestedLoop:
    """Holds a loop among the loops that lie in it."""

    loop: CutLoop
    radius: float
    parent: int | None = None
    inner: tuple[int, ...] = ()


def find_pieces(
    moves: Moves,
    geo: Geometry,
    bit_mm: Mapping[int, float],
    *,
    face: float,
    bottom: float,
    through_z: float,
) -> list[Piece]:
    """Finds all pieces that are cut out, in the order of the file."""
    loops = find_loops(moves, geo.flat, face, through_z)
    nodes = _nest_loops([NestedLoop(loop, bit_mm.get(loop.tool, 0.0) / 2) for loop in loops])
    laps = [lap for node in nodes for lap in (node.loop, *node.loop.others)]
    marks = dict(zip(map(id, laps), step_laps(laps, moves, geo, through_z), strict=True))
    sheet = SheetLoops(moves, nodes, marks, face, bottom, through_z)
    for index, node in enumerate(nodes):
        if node.parent is None:
            sheet.add_piece(index)
    drilled = _find_drilled(moves, geo.flat, bit_mm, through_z, loops)
    return _add_drilled(sorted(sheet.pieces, key=lambda p: p.line), drilled)


def _nest_loops(nodes: list[NestedLoop]) -> list[NestedLoop]:
    """Finds the smallest loop around each; gives the loops sorted from large to small."""
    nodes = sorted(nodes, key=lambda n: -n.loop.area)
    lows = np.array([n.loop.ring.min(axis=0) for n in nodes]).reshape(-1, 2)
    highs = np.array([n.loop.ring.max(axis=0) for n in nodes]).reshape(-1, 2)
    for i, node in enumerate(nodes):
        around = (lows[:i] <= lows[i] + 0.05) & (highs[:i] >= highs[i] - 0.05)
        for j in np.flatnonzero(around.all(axis=1))[::-1].tolist():
            if contains_point(nodes[j].loop.ring, node.loop.ring[0]):
                node.parent = j
                break
    for i, node in enumerate(nodes):
        if node.parent is not None:
            nodes[node.parent].inner += (i,)
    return nodes


def _is_swept_between(outer: NestedLoop, inner: NestedLoop) -> bool:
    """Tells whether the bit leaves nothing between two loops: passes over one edge or pocket."""
    reach = outer.radius + inner.radius + 0.01
    ring = inner.loop.ring
    some = ring[:: max(1, len(ring) // 24)]
    return all(measure_distance(outer.loop.ring, p) <= reach for p in some)


def measure_distance(ring: Ring, point: Floats) -> float:
    """Measures from a point to the nearest edge of a ring."""
    step = shift_values(ring) - ring
    size = np.maximum((step * step).sum(axis=1), 1e-18)
    t = np.clip(((point - ring) * step).sum(axis=1) / size, 0, 1)
    off = ring + step * t[:, None] - point
    return float(np.hypot(off[:, 0], off[:, 1]).min())


def _find_innermost(nodes: list[NestedLoop], index: int) -> tuple[int, list[int]]:
    """Finds the innermost loop of passes around one edge, and the loops inside that."""
    while True:
        node = nodes[index]
        close = [i for i in node.inner if _is_swept_between(node, nodes[i])]
        if len(close) != 1:
            return index, [i for i in node.inner if i not in close]
        index = close[0]


@dataclass
class SheetLoops:
    """Holds the loops of a sheet, and the pieces that they turn out to be."""

    moves: Moves
    nodes: list[NestedLoop]
    marks: dict[int, LapSteps]  # of each lap
    face: float
    bottom: float
    through_z: float
    pieces: list[Piece] = field(default_factory=list)

    def add_piece(self, index: int) -> None:
        """Adds a loop as a piece with holes; pieces inside the holes follow."""
        last, inner = _find_innermost(self.nodes, index)
        node = self.nodes[last]
        edge = offset_ring(node.loop.ring, -node.radius)
        if edge is None or area_of(edge) < LEAST_MM2:
            for i in inner:
                self.add_piece(i)
            return
        holes = [self._make_hole(i) for i in inner]
        self.pieces.append(self._make_piece(node, edge, [h for h in holes if h is not None]))

    def _make_hole(self, index: int) -> Ring | None:
        """Makes the hole of a loop inside a piece; pieces that lie in it follow."""
        for i in _find_innermost(self.nodes, index)[1]:
            self.add_piece(i)
        node = self.nodes[index]
        return offset_ring(node.loop.ring, node.radius)

    def _make_piece(self, node: NestedLoop, edge: Ring, holes: list[Ring]) -> Piece:
        """Makes a piece with its tabs, those lost included."""
        loop, z = node.loop, self.moves.points[:, 2]
        inward = -1.0 if loop.forward else 1.0
        uncut = find_stretches(loop, self.marks[id(loop)])
        gone = [
            e
            for lap in (loop, *loop.others)
            for e in find_lost_tabs(lap, self.marks[id(lap)], z, self.through_z)
        ]
        return Piece(
            outline=edge,
            holes=tuple(holes),
            tabs=tuple(self._make_tab(s, node.radius, inward) for s in uncut),
            tool=loop.tool,
            line=loop.line,
            covered=max(0.0, 1 - sum(s.length for s in uncut) / max(loop.length, 1e-9)),
            lost=tuple(
                (int(self.moves.line[e["move"]]), float(e["x0"]), float(e["y0"])) for e in gone
            ),
        )

    def _make_tab(self, stretch: Stretch, radius: float, inward: float) -> Tab:
        """Makes the tab that an uncut stretch leaves, put on the part's edge."""
        return Tab(
            x_mm=stretch.x + stretch.away[0] * radius * inward,
            y_mm=stretch.y + stretch.away[1] * radius * inward,
            width_mm=stretch.length - 2 * radius,
            height_mm=min(stretch.top, self.face) - self.bottom,
            style="gap" if stretch.top == np.inf else "ramped" if stretch.ramped else "square",
            line=int(self.moves.line[stretch.move]),
        )


def _find_drilled(
    moves: Moves, flat: Floats, bit_mm: Mapping[int, float], through_z: float, loops: list[CutLoop]
) -> list[tuple[Floats, float]]:
    """Finds centres and radii of holes that a bit only went down and up in."""
    p, z = moves.points[:, :2], moves.points[:, 2]
    down = (moves.kind == LINE) & (z[1:] <= through_z) & (z[:-1] > z[1:]) & (flat < 1e-9)
    stays = np.zeros(len(moves), dtype=bool)
    stays[:-1] = (z[1:-1] < z[2:]) & (flat[1:] < 1e-9)
    if len(moves):
        stays[-1] = True
    index = np.flatnonzero(down & stays)
    if not len(index):
        return []
    starts = [loop.edges["x0"] + 1j * loop.edges["y0"] for loop in loops]
    if starts:
        used = np.isin(p[index, 0] + 1j * p[index, 1], np.concatenate(starts))
        index = index[~used]
    found: dict[tuple[float, float], float] = {}
    for i in index.tolist():
        place = (round(float(p[i, 0]), 3), round(float(p[i, 1]), 3))
        found[place] = max(found.get(place, 0.0), bit_mm.get(int(moves.tool[i]), 0.0) / 2)
    return [(np.array(place), radius) for place, radius in found.items() if radius > 0]


def _add_drilled(pieces: list[Piece], drilled: list[tuple[Floats, float]]) -> list[Piece]:
    """Adds drilled holes to the pieces that they lie in."""
    if not drilled:
        return pieces
    holes: dict[int, list[Ring]] = {}
    lows = np.array([p.outline.min(axis=0) for p in pieces]).reshape(-1, 2)
    highs = np.array([p.outline.max(axis=0) for p in pieces]).reshape(-1, 2)
    for centre, radius in drilled:
        near = np.flatnonzero(((lows <= centre) & (centre <= highs)).all(axis=1))
        found = next((i for i in near.tolist() if _is_inside(pieces[i], centre)), None)
        if found is not None:
            holes.setdefault(found, []).append(draw_circle(centre, radius))
    return [
        replace(piece, holes=(*piece.holes, *holes[i])) if i in holes else piece
        for i, piece in enumerate(pieces)
    ]


def _is_inside(piece: Piece, point: Floats) -> bool:
    """Tells whether a point lies in the material of a piece."""
    return contains_point(piece.outline, point) and not any(
        contains_point(h, point) for h in piece.holes
    )


def draw_circle(centre: Floats, radius: float) -> Ring:
    """Draws a circle as a ring of fine chords."""
    angle = np.linspace(0, 2 * np.pi, 361)[:-1]
    return np.column_stack((np.cos(angle), np.sin(angle))) * radius + centre
