"""Pieces that come out of the sheet: which of the faces are parts, slugs of holes, or waste."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import shapely

from station.cutting.geometry.faces import SKELETON, THIN_SHARE, Faces, widen
from station.cutting.geometry.moves import Geometry
from station.cutting.geometry.rings import contains_point, tidy_ring
from station.cutting.geometry.strokes import (
    Cuts,
    Levels,
    Lines,
    Shapes,
    draw_lines,
    find_cuts,
    find_plunges,
    pick_closing,
    pick_through,
)
from station.cutting.geometry.tabs import (
    WIDEST_GAP_MM,
    Closed,
    LostTab,
    Stretches,
    close_tabs,
    find_lost_tabs,
    find_normals,
    find_stretches,
)
from station.cutting.model import Floats, Ints, Moves, Piece, Ring, Tab

PART, SLUG, WASTE, DUST = "part", "slug", "waste", "dust"
NEAR_MM = 0.05  # a line this near, with its bit, bounds a face
RING_SHARE = 0.3  # of what a hole frees: an inner face larger than that is a part of its own


@dataclass(frozen=True)
class Contours:
    """Holds contours: runs of cuts that jumps over tabs join. `of_run` numbers each run's."""

    of_run: dict[int, int]
    ways: dict[int, Floats]  # the points of each
    first: dict[int, int]  # where in the cuts each begins

    def encloses(self, contour: int, point: Floats) -> bool:
        """Tells whether a contour goes around a point."""
        return contains_point(self.ways[contour], point)


@dataclass(frozen=True)
class Sheet:
    """Holds all that is cut out of a sheet."""

    cuts: Cuts
    through: Lines
    closed: Closed
    contours: Contours
    kinds: tuple[str, ...]  # of each face
    bounds: dict[int, list[int]]  # the contours along each face
    pieces: tuple[Piece, ...]
    of_piece: tuple[int, ...]  # its face
    lost: tuple[LostTab, ...]


def find_sheet(moves: Moves, geo: Geometry, bit_mm: Mapping[int, float], levels: Levels) -> Sheet:
    """Finds all that is cut out, pieces in the order of the file."""
    cuts = find_cuts(moves, geo, bit_mm, levels.face)
    through = draw_lines(cuts, np.flatnonzero(pick_through(cuts, levels)))
    closing = draw_lines(cuts, np.flatnonzero(pick_closing(cuts, levels)))
    kerfs = np.concatenate((widen(through), _widen_plunges(moves, geo, bit_mm, levels)))
    stretches = find_stretches(cuts, through, closing, kerfs)
    narrow = float(min(through.radius.min(initial=3.0), closing.radius.min(initial=3.0)))
    closed = close_tabs(kerfs, stretches, 2 * THIN_SHARE * narrow)
    contours = _join_runs(through, closed.stretches)
    bounds = _find_bounds(closed, through, contours)
    kinds = _sort_faces(closed, contours, bounds)
    made = [
        (_make_piece(face, cuts, levels, closed, contours, bounds[face]), face)
        for face, kind in enumerate(kinds)
        if kind == PART
    ]
    made.sort(key=lambda pair: pair[0].line)
    return Sheet(cuts, through, closed, contours, tuple(kinds), bounds,
                 tuple(p for p, _ in made), tuple(f for _, f in made),
                 tuple(find_lost_tabs(cuts, levels, through, kerfs)))  # fmt: skip


def _widen_plunges(
    moves: Moves, geo: Geometry, bit_mm: Mapping[int, float], levels: Levels
) -> Shapes:
    """Gives the holes that a bit only goes down and up in."""
    index = find_plunges(moves, geo, levels)
    if not len(index):
        return np.zeros(0, object)
    radius = np.array([bit_mm.get(int(t), 0.0) / 2 for t in moves.tool[index]])
    place = np.column_stack((moves.points[index, :2].round(4), radius))
    place = np.unique(place[radius > 0], axis=0)
    made: Shapes = shapely.buffer(shapely.points(place[:, :2]), place[:, 2], quad_segs=64)
    return made


def _join_runs(through: Lines, stretches: Stretches) -> Contours:
    """Joins runs that jumps over tabs go between to one contour."""
    runs = np.unique(np.concatenate((through.run, stretches.run, stretches.to_run)))
    of_run = {run: run for run in runs.tolist()}

    def find_root(run: int) -> int:
        while of_run[run] != run:
            run = of_run[run]
        return run

    for a, b in zip(stretches.run.tolist(), stretches.to_run.tolist(), strict=True):
        of_run[find_root(b)] = find_root(a)
    of_run = {run: find_root(run) for run in of_run}
    lines: dict[int, list[Floats]] = {}
    firsts: dict[int, int] = {}
    cut = set(through.run.tolist())
    for some in (through, stretches):
        rows = zip(some.shape, some.run.tolist(), some.first.tolist(), strict=True)
        for shape, run, first in rows:
            contour = of_run[run]
            firsts[contour] = min(first, firsts.get(contour, first))
            if some is through or run not in cut:
                lines.setdefault(contour, []).append(shapely.get_coordinates(shape))
    return Contours(of_run, {c: np.concatenate(some) for c, some in lines.items()}, firsts)


def _find_bounds(closed: Closed, through: Lines, contours: Contours) -> dict[int, list[int]]:
    """Finds the contours that run along the outline of each face."""
    faces, stretches = closed.faces, closed.stretches
    lines = np.concatenate((through.shape, stretches.shape))
    radius = np.concatenate((through.radius, stretches.radius))
    runs = np.concatenate((through.run, stretches.run))
    bounds: dict[int, list[int]] = {face: [] for face in range(len(faces))}
    if not len(faces) or not len(lines):
        return bounds
    edges = shapely.get_exterior_ring(faces.ring)
    reach = float(radius.max()) + NEAR_MM
    face, line = shapely.STRtree(lines).query(edges, predicate="dwithin", distance=reach)
    if radius.max() - radius.min() > 1e-9:
        near = shapely.distance(edges[face], lines[line]) < radius[line] + NEAR_MM
        face, line = face[near], line[near]
    for f, run in zip(face.tolist(), runs[line].tolist(), strict=True):
        contour = contours.of_run[run]
        if contour not in bounds[f]:
            bounds[f].append(contour)
    return bounds


def _sort_faces(closed_: Closed, contours: Contours, bounds: dict[int, list[int]]) -> list[str]:
    """Tells of each face whether it is a part, a hole's slug, waste, or dust."""
    faces = closed_.faces
    held = np.zeros(len(faces), dtype=bool)  # by a tab in its own outline
    for one, other in ((closed_.left, closed_.right), (closed_.right, closed_.left)):
        inner = one[one >= 0]
        held[inner[faces.parent[inner] == other[one >= 0]]] = True
    kinds = [DUST] * len(faces)
    if not len(faces):
        return kinds
    inner = shapely.get_coordinates(shapely.point_on_surface(_draw_faces(faces)))
    around = {(c, f): contours.encloses(c, inner[f]) for f, some in bounds.items() for c in some}
    closed = {c for (c, f), inside in around.items() if inside and not faces.dust[f]}
    largest = np.zeros(len(faces))
    kept = np.flatnonzero(~faces.dust & (faces.parent >= 0))
    weight = np.where(held[kept] & ~held[faces.parent[kept]], np.inf, faces.size[kept])
    weight[~held[kept] & held[faces.parent[kept]]] = 0.0
    np.maximum.at(largest, faces.parent[kept], weight)
    for f in np.argsort(-faces.size).tolist():
        if faces.dust[f]:
            continue
        parent = _find_parent(faces, f)
        inside = any(around[c, f] for c in bounds[f])
        free = inside or not any(c in closed for c in bounds[f])
        if parent == SKELETON or kinds[parent] != PART:
            kinds[f] = PART if free else WASTE
        else:
            own = bool((faces.home == f).any()) and largest[f] < RING_SHARE * faces.size[f]
            kinds[f] = PART if own and inside else SLUG
    return kinds


def _find_parent(faces: Faces, face: int) -> int:
    """Finds the face around a face; dust is passed over."""
    parent = int(faces.parent[face])
    while parent >= 0 and faces.dust[parent]:
        parent = int(faces.parent[parent])
    return parent


def _draw_faces(faces: Faces) -> Shapes:
    """Draws each face with its holes."""
    made = faces.ring.copy()
    order = np.argsort(faces.home, kind="stable")
    homes = faces.home[order]
    for face in np.unique(homes[homes >= 0]).tolist():
        some = order[np.searchsorted(homes, face) : np.searchsorted(homes, face, "right")]
        made[face] = shapely.polygons(
            shapely.get_exterior_ring(faces.ring[face]),
            shapely.get_exterior_ring(faces.kerfs[some]),
        )
    return made


def _take_ring(shape: shapely.Geometry) -> Ring:
    """Gives a ring's corners, counter-clockwise."""
    return tidy_ring(shapely.get_coordinates(shapely.get_exterior_ring(shape))[:-1])


def _make_piece(
    face: int, cuts: Cuts, levels: Levels, closed: Closed, contours: Contours,
    bounds: list[int],
) -> Piece:  # fmt: skip
    """Makes the piece of a face with its tabs."""
    outline = _take_ring(closed.faces.ring[face])
    holes = [_take_ring(closed.faces.kerfs[k]) for k in closed.faces.list_cuts_in(face).tolist()]
    own = np.flatnonzero((closed.left == face) | (closed.right == face))
    tabs = _make_tabs(face, own, cuts, levels, closed)
    length = float(shapely.length(closed.faces.ring[face]))
    uncut = sum(t.width_mm for t in tabs)
    position = _find_first_cut(face, closed, contours, bounds)
    index = cuts.index[position]
    return Piece(
        outline=outline,
        holes=tuple(holes),
        tabs=tuple(t for t in tabs if t.width_mm <= WIDEST_GAP_MM),
        tool=int(cuts.moves.tool[index]),
        line=int(cuts.moves.line[index]),
        covered=max(0.0, 1 - uncut / max(length, 1e-9)),
        skin_mm=max((t.height_mm for t in tabs if t.width_mm > WIDEST_GAP_MM), default=0.0),
    )


def _find_first_cut(face: int, closed: Closed, contours: Contours, bounds: list[int]) -> int:
    """Finds where in the cuts the contour of a face begins."""
    point = shapely.get_coordinates(shapely.point_on_surface(closed.faces.ring[face]))[0]
    own = [c for c in bounds if contours.encloses(c, point)] or bounds
    return min((contours.first[c] for c in own), default=0)


def _make_tabs(face: int, own: Ints, cuts: Cuts, levels: Levels, closed: Closed) -> list[Tab]:
    """Makes the tabs along a face; stretches over the same place are one."""
    some = closed.stretches.pick(own)
    length = shapely.length(some.shape)
    middle, normal = find_normals(some.shape, length / 2)
    side = np.where(closed.left[own] == face, 1.0, -1.0)[:, None]
    place = middle + normal * side * some.radius[:, None]
    tabs: list[Tab] = []
    for n in np.argsort(some.top, kind="stable").tolist():
        if any(np.hypot(place[n, 0] - t.x_mm, place[n, 1] - t.y_mm) < 1.0 for t in tabs):
            continue
        jumped = bool(some.top[n] == np.inf)
        tabs.append(
            Tab(
                x_mm=float(place[n, 0]),
                y_mm=float(place[n, 1]),
                width_mm=float(length[n]),
                height_mm=float(min(some.top[n], levels.face) - levels.bottom),
                style="gap" if jumped else "ramped" if some.ramped[n] else "square",
                line=int(cuts.moves.line[cuts.index[some.first[n]]]),
            )
        )
    return sorted(tabs, key=lambda t: t.line)
