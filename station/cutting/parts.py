"""Pieces on the sheet: outlines with their holes, the bit's radius taken off or added."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from station.cutting.loops import Loop, find_loops
from station.cutting.model import LINE, Floats, Moves, Piece, Ring, Tab
from station.cutting.moves import Geometry
from station.cutting.rings import area_of, contains, offset
from station.cutting.tabs import Cuts, Stretch, cuts_of, lost, stretches

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
    cuts = cuts_of(moves, geo, through_z)
    drilled = _drilled(moves, geo.flat, bit_mm, through_z, loops)
    pieces: list[Piece] = []
    for index, node in enumerate(nodes):
        if node.parent is None:
            _outline(nodes, index, cuts, (face, bottom, through_z), pieces)
    return _with_drilled(sorted(pieces, key=lambda p: p.line), drilled)


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
    step = np.roll(ring, -1, axis=0) - ring
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


def _outline(
    nodes: list[Node],
    index: int,
    cuts: Cuts,
    heights: tuple[float, float, float],
    pieces: list[Piece],
) -> None:
    """A loop as a piece with holes; pieces inside the holes follow."""
    last, inner = _cluster(nodes, index)
    node = nodes[last]
    edge = offset(node.loop.ring, -node.radius)
    if edge is None or area_of(edge) < LEAST_MM2:
        for i in inner:
            _outline(nodes, i, cuts, heights, pieces)
        return
    holes: list[Ring] = []
    for i in inner:
        hole = offset(nodes[i].loop.ring, nodes[i].radius)
        if hole is not None:
            holes.append(hole)
        for k in _cluster(nodes, i)[1]:
            _outline(nodes, k, cuts, heights, pieces)
    found = [_tab(s, node, cuts.moves, heights[:2]) for s in stretches(node.loop, cuts)]
    whole = max(node.loop.length, 1e-9)
    uncut = sum(t[1] for t in found)
    tabs = tuple(t[0] for t in found)
    gone = lost(node.loop, cuts, heights[2])
    piece = Piece(
        outline=edge,
        holes=tuple(holes),
        tabs=tabs,
        tool=node.loop.tool,
        line=node.loop.line,
        covered=max(0.0, 1 - uncut / whole),
        lost=tuple((int(cuts.moves.line[e.move]), *e.start) for e in gone),
    )
    pieces.append(piece)


def _tab(
    stretch: Stretch, node: Node, moves: Moves, heights: tuple[float, float]
) -> tuple[Tab, float]:
    """The tab that an uncut stretch leaves, put on the part's edge."""
    face, bottom = heights
    inward = -1.0 if _runs_forward(node.loop) else 1.0
    x = stretch.x + stretch.away[0] * node.radius * inward
    y = stretch.y + stretch.away[1] * node.radius * inward
    style = "gap" if stretch.top == np.inf else "ramped" if stretch.ramped else "square"
    height = min(stretch.top, face) - bottom
    line = int(moves.line[stretch.move])
    tab = Tab(x, y, stretch.length - 2 * node.radius, height, style, line)
    return tab, stretch.length


def _runs_forward(loop: Loop) -> bool:
    """Whether the loop's edges go counter-clockwise."""
    corners = np.array([e.end for e in loop.edges])
    if len(loop.edges) < 3 or abs(area_of(corners)) < 1e-6:
        turn = sum(e.sweep for e in loop.edges)
        if turn:
            return turn > 0
    return area_of(corners) + sum(_bulge(e) for e in loop.edges) > 0


def _bulge(edge: object) -> float:
    """The signed area between an arc and its chord."""
    sweep = getattr(edge, "sweep", 0.0)
    if not sweep:
        return 0.0
    start, centre = np.array(getattr(edge, "start")), np.array(getattr(edge, "centre"))  # noqa: B009
    r = float(np.hypot(*(start - centre)))
    return r * r * (sweep - float(np.sin(sweep))) / 2


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
    used = {e.start for loop in loops for e in loop.edges}
    found: dict[tuple[float, float], float] = {}
    for i in np.flatnonzero(down & stays).tolist():
        place = (round(float(p[i, 0]), 3), round(float(p[i, 1]), 3))
        if tuple(p[i].tolist()) not in used:
            found[place] = max(found.get(place, 0.0), bit_mm.get(int(moves.tool[i]), 0.0) / 2)
    return [(np.array(place), radius) for place, radius in found.items() if radius > 0]


def _with_drilled(pieces: list[Piece], drilled: list[tuple[Floats, float]]) -> list[Piece]:
    """Adds drilled holes to the pieces that they lie in."""
    holes: dict[int, list[Ring]] = {}
    boxes = [(p.outline.min(axis=0), p.outline.max(axis=0)) for p in pieces]
    for centre, radius in drilled:
        for i, piece in enumerate(pieces):
            low, high = boxes[i]
            if (low <= centre).all() and (centre <= high).all() and _inside(piece, centre):
                holes.setdefault(i, []).append(circle(centre, radius))
                break
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
