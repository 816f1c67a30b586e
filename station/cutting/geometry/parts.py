"""Pieces on the sheet: outlines with their holes, the bit's radius taken off or added."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from station.cutting.geometry.loops import Loop, find_loops
from station.cutting.geometry.moves import Geometry
from station.cutting.geometry.offset import offset
from station.cutting.geometry.rings import area_of, contains, shifted
from station.cutting.geometry.tabs import Marks, Stretch, lost, marked, stretches
from station.cutting.model import LINE, Floats, Moves, Piece, Ring, Tab

LEAST_MM2 = 1.0


@dataclass
class Node:
    """A loop among the loops that lie in it."""

    loop: Loop
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
    """All pieces that are cut out, in the order of the file."""
    loops = find_loops(moves, geo.flat, face, through_z)
    nodes = _nest([Node(loop, bit_mm.get(loop.tool, 0.0) / 2) for loop in loops])
    laps = [lap for node in nodes for lap in (node.loop, *node.loop.others)]
    marks = dict(zip(map(id, laps), marked(laps, moves, geo, through_z), strict=True))
    sheet = Sheet(moves, nodes, marks, face, bottom, through_z)
    for index, node in enumerate(nodes):
        if node.parent is None:
            sheet.outline(index)
    drilled = _drilled(moves, geo.flat, bit_mm, through_z, loops)
    return _with_drilled(sorted(sheet.pieces, key=lambda p: p.line), drilled)


def _nest(nodes: list[Node]) -> list[Node]:
    """The smallest loop around each; loops sorted from large to small."""
    nodes = sorted(nodes, key=lambda n: -n.loop.area)
    lows = np.array([n.loop.ring.min(axis=0) for n in nodes]).reshape(-1, 2)
    highs = np.array([n.loop.ring.max(axis=0) for n in nodes]).reshape(-1, 2)
    for i, node in enumerate(nodes):
        around = (lows[:i] <= lows[i] + 0.05) & (highs[:i] >= highs[i] - 0.05)
        for j in np.flatnonzero(around.all(axis=1))[::-1].tolist():
            if contains(nodes[j].loop.ring, node.loop.ring[0]):
                node.parent = j
                break
    for i, node in enumerate(nodes):
        if node.parent is not None:
            nodes[node.parent].inner += (i,)
    return nodes


def _swept_between(outer: Node, inner: Node) -> bool:
    """Whether the bit leaves nothing between two loops: passes of one clearing or finishing."""
    reach = outer.radius + inner.radius + 0.01
    ring = inner.loop.ring
    some = ring[:: max(1, len(ring) // 24)]
    return all(distance_to(outer.loop.ring, p) <= reach for p in some)


def distance_to(ring: Ring, point: Floats) -> float:
    """From a point to the nearest edge of a ring."""
    step = shifted(ring) - ring
    size = np.maximum((step * step).sum(axis=1), 1e-18)
    t = np.clip(((point - ring) * step).sum(axis=1) / size, 0, 1)
    off = ring + step * t[:, None] - point
    return float(np.hypot(off[:, 0], off[:, 1]).min())


def _cluster(nodes: list[Node], index: int) -> tuple[int, list[int]]:
    """The innermost loop of passes around one edge, and the loops inside that."""
    while True:
        node = nodes[index]
        close = [i for i in node.inner if _swept_between(node, nodes[i])]
        if len(close) != 1:
            return index, [i for i in node.inner if i not in close]
        index = close[0]


@dataclass
class Sheet:
    """The loops of a sheet, and the pieces that they turn out to be."""

    moves: Moves
    nodes: list[Node]
    marks: dict[int, Marks]  # of each lap
    face: float
    bottom: float
    through_z: float
    pieces: list[Piece] = field(default_factory=list)

    def outline(self, index: int) -> None:
        """A loop as a piece with holes; pieces inside the holes follow."""
        last, inner = _cluster(self.nodes, index)
        node = self.nodes[last]
        edge = offset(node.loop.ring, -node.radius)
        if edge is None or area_of(edge) < LEAST_MM2:
            for i in inner:
                self.outline(i)
            return
        holes = [self._hole(i) for i in inner]
        self.pieces.append(self._piece(node, edge, [h for h in holes if h is not None]))

    def _hole(self, index: int) -> Ring | None:
        """A loop inside a piece as its hole; pieces that lie in it follow."""
        for i in _cluster(self.nodes, index)[1]:
            self.outline(i)
        node = self.nodes[index]
        return offset(node.loop.ring, node.radius)

    def _piece(self, node: Node, edge: Ring, holes: list[Ring]) -> Piece:
        loop, z = node.loop, self.moves.points[:, 2]
        inward = -1.0 if loop.forward else 1.0
        uncut = stretches(loop, self.marks[id(loop)])
        gone = [
            e
            for lap in (loop, *loop.others)
            for e in lost(lap, self.marks[id(lap)], z, self.through_z)
        ]
        return Piece(
            outline=edge,
            holes=tuple(holes),
            tabs=tuple(self._tab(s, node.radius, inward) for s in uncut),
            tool=loop.tool,
            line=loop.line,
            covered=max(0.0, 1 - sum(s.length for s in uncut) / max(loop.length, 1e-9)),
            lost=tuple(
                (int(self.moves.line[e["move"]]), float(e["x0"]), float(e["y0"])) for e in gone
            ),
        )

    def _tab(self, stretch: Stretch, radius: float, inward: float) -> Tab:
        """The tab that an uncut stretch leaves, put on the part's edge."""
        return Tab(
            x_mm=stretch.x + stretch.away[0] * radius * inward,
            y_mm=stretch.y + stretch.away[1] * radius * inward,
            width_mm=stretch.length - 2 * radius,
            height_mm=min(stretch.top, self.face) - self.bottom,
            style="gap" if stretch.top == np.inf else "ramped" if stretch.ramped else "square",
            line=int(self.moves.line[stretch.move]),
        )


def _drilled(
    moves: Moves, flat: Floats, bit_mm: Mapping[int, float], through_z: float, loops: list[Loop]
) -> list[tuple[Floats, float]]:
    """Centres and radii of holes that a bit only went down and up in."""
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


def _with_drilled(pieces: list[Piece], drilled: list[tuple[Floats, float]]) -> list[Piece]:
    """Adds drilled holes to the pieces that they lie in."""
    if not drilled:
        return pieces
    holes: dict[int, list[Ring]] = {}
    lows = np.array([p.outline.min(axis=0) for p in pieces]).reshape(-1, 2)
    highs = np.array([p.outline.max(axis=0) for p in pieces]).reshape(-1, 2)
    for centre, radius in drilled:
        near = np.flatnonzero(((lows <= centre) & (centre <= highs)).all(axis=1))
        found = next((i for i in near.tolist() if _inside(pieces[i], centre)), None)
        if found is not None:
            holes.setdefault(found, []).append(circle(centre, radius))
    return [
        replace(piece, holes=(*piece.holes, *holes[i])) if i in holes else piece
        for i, piece in enumerate(pieces)
    ]


def _inside(piece: Piece, point: Floats) -> bool:
    return contains(piece.outline, point) and not any(contains(h, point) for h in piece.holes)


def circle(centre: Floats, radius: float) -> Ring:
    """A circle as a ring of fine chords."""
    angle = np.linspace(0, 2 * np.pi, 361)[:-1]
    return np.column_stack((np.cos(angle), np.sin(angle))) * radius + centre
