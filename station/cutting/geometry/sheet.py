"""What is cut out of a sheet: parts, slugs of holes, waste, and how much of each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
import shapely

from station.cutting.geometry.contours import (
    Contours,
    find_bounds,
    find_enclosed,
    find_first_cut,
    join_runs,
)
from station.cutting.geometry.edges import list_strokes
from station.cutting.geometry.faces import SKELETON, draw_faces, widen
from station.cutting.geometry.hollows import (
    Bores,
    ShallowCuts,
    find_bores,
    find_hollows,
    find_shallow_cuts,
)
from station.cutting.geometry.kinds import DUST, PART, REST, SLUG, WASTE, sort_faces
from station.cutting.geometry.lost_tabs import LostTab, find_lost_tabs
from station.cutting.geometry.moves import Geometry
from station.cutting.geometry.pieces import draw_rings, make_piece, measure_stretches, tidy_corners
from station.cutting.geometry.strokes import (
    Cuts,
    Levels,
    Lines,
    Shapes,
    close_ends,
    draw_lines,
    find_cuts,
    find_drilled,
    find_plunges,
    pick_through,
)
from station.cutting.geometry.tabs import Closed, close_all
from station.cutting.model import Bools, Floats, Ints, Moves, Piece, Ring


@dataclass(frozen=True)
class Sheet:
    """Holds all that is cut out of a sheet."""

    cuts: Cuts
    through: Lines
    closed: Closed
    contours: Contours
    kinds: tuple[str, ...]  # of each face
    bounds: dict[int, list[int]]  # the contours along each face
    around: dict[tuple[int, int], bool]  # whether a contour goes around a face along it
    edges: tuple[Ints, Ints]  # a face, and a line of `through` along it
    drawn: Shapes  # each face with its holes
    shallow: ShallowCuts
    skins: Bools  # stretches that are no tabs
    plunges: Ints  # moves that only go down through the sheet
    drilled: Ints  # moves that only go down into it
    pieces: tuple[Piece, ...]
    of_piece: tuple[int, ...]  # its face
    begins: tuple[int, ...]  # where in the cuts its contour does
    lost: tuple[LostTab, ...]


def find_sheet(
    moves: Moves,
    geo: Geometry,
    bit_mm: Mapping[int, float],
    levels: Levels,
    edge: shapely.Geometry | None = None,
) -> Sheet:
    """Finds all that is cut out, pieces in the order of the file. `edge`: the sheet's."""
    cuts = find_cuts(moves, geo, bit_mm, levels.face)
    through = close_ends(draw_lines(cuts, np.flatnonzero(pick_through(cuts, levels))))
    plunges = find_plunges(moves, geo, levels)
    kerfs = np.concatenate((widen(through), _widen_plunges(moves, plunges, bit_mm)))
    closed = close_all(cuts, through, kerfs, levels, edge)
    contours = join_runs(through, closed.stretches)
    bounds, edges = find_bounds(closed, through, contours)
    drawn = draw_faces(closed.faces)
    around = find_enclosed(drawn, contours, bounds)
    kinds = sort_faces(closed, bounds, around, contours, edge)
    drilled = find_drilled(moves, geo, levels)
    shallow = find_shallow_cuts(cuts, levels, closed.faces.kerfs, _list_ways(through, closed))
    parts = [face for face, kind in enumerate(kinds) if kind == PART]
    firsts = {f: find_first_cut(f, contours, bounds[f], around) for f in parts}
    measures = measure_stretches(closed, cuts, levels)
    ways = closed.stretches.whole, closed.stretches.radius
    strokes = list_strokes(cuts, through, ways, (plunges, _find_radii(moves, plunges, bit_mm)))
    rings = draw_rings(closed.faces, parts, strokes)
    made = [make_piece(f, rings[f], cuts, levels, closed, measures, firsts[f]) for f in parts]
    bores = _draw_bores(moves, drilled if shallow.whole else drilled[:0], bit_mm, levels)
    hollows = find_hollows(shallow, bores, {face: drawn[face] for face in parts})
    order = sorted(range(len(parts)), key=lambda n: firsts[parts[n]])
    return Sheet(
        cuts, through, closed, contours, tuple(kinds), bounds, around, edges, drawn, shallow,
        skins=measures.skin,
        plunges=plunges,
        drilled=drilled,
        pieces=tuple(replace(made[n], hollows=tuple(hollows.get(parts[n], ()))) for n in order),
        of_piece=tuple(parts[n] for n in order),
        begins=tuple(firsts[parts[n]] for n in order),
        lost=tuple(find_lost_tabs(cuts, levels, through, kerfs)),
    )  # fmt: skip


def _list_ways(through: Lines, closed: Closed) -> tuple[Shapes, Floats]:
    """Lists the ways of the bits that cut through the sheet, tabs closed, and their radii."""
    some = through, closed.stretches
    return np.concatenate([w.shape for w in some]), np.concatenate([w.radius for w in some])


def _draw_bores(moves: Moves, drilled: Ints, bit_mm: Mapping[int, float], levels: Levels) -> Bores:
    """Gives the holes that are drilled in part."""
    return find_bores(moves, drilled, _find_radii(moves, drilled, bit_mm), levels)


def _widen_plunges(moves: Moves, index: Ints, bit_mm: Mapping[int, float]) -> Shapes:
    """Gives the holes that a bit only goes down and up in."""
    if not len(index):
        return np.zeros(0, object)
    radius = _find_radii(moves, index, bit_mm)
    place = np.column_stack((moves.points[index, :2].round(4), radius))
    place = np.unique(place[radius > 0], axis=0)
    made: Shapes = shapely.buffer(shapely.points(place[:, :2]), place[:, 2], quad_segs=64)
    return made


def _find_radii(moves: Moves, index: Ints, bit_mm: Mapping[int, float]) -> Floats:
    """Finds the radius of the bit in each move."""
    return np.array([bit_mm.get(int(t), 0.0) / 2 for t in moves.tool[index]], dtype=np.float64)


@dataclass(frozen=True)
class Areas:
    """Tells where the sheet goes, mm²: together it is the whole sheet."""

    parts: float
    waste: float
    skeleton: float
    kerf: float


def measure_areas(sheet: Sheet, edge: shapely.Geometry) -> Areas:
    """Measures parts, loose waste, skeleton and what the bits take within the sheet's edge.

    Each is measured by itself, so that their sum tells whether anything was lost.
    """
    size = _measure_within(sheet.drawn, edge)
    kinds = np.array(sheet.kinds, dtype=object)
    parts, rest = (float(size[kinds == kind].sum()) for kind in (PART, REST))
    faces = sheet.closed.faces
    kerf = float(_measure_within(faces.kerfs, edge).sum())
    outer = faces.kerfs[faces.home == SKELETON]
    strips = faces.around == SKELETON
    filled = shapely.polygons(shapely.get_exterior_ring(outer)) if len(outer) else outer
    around = float(shapely.area(edge)) - float(_measure_within(filled, edge).sum())
    skeleton = around - float(_measure_within(faces.ring[strips], edge).sum()) + rest
    return Areas(parts, float(size.sum()) - parts - rest, skeleton, kerf)


def _measure_within(shapes: Shapes, edge: shapely.Geometry) -> Floats:
    """Measures what of each shape lies within the sheet's edge, a rectangle."""
    size, (x, y, x2, y2) = shapely.area(shapes), shapely.bounds(edge)
    low_x, low_y, high_x, high_y = shapely.bounds(shapes).T
    over = np.flatnonzero((low_x < x) | (low_y < y) | (high_x > x2) | (high_y > y2))
    size[over] = shapely.area(shapely.intersection(shapes[over], edge))
    return np.asarray(size)


def count_closed(sheet: Sheet) -> int:
    """Counts the closed cuts that something comes out of: what goes around the same, as laps and
    what lies between tabs, is one, and so is what frees two pieces along a shared line.
    """
    one: dict[int, int] = {}  # of each face another that is freed by the same cut, or itself

    def find_first(face: int) -> int:
        while one.setdefault(face, face) != face:
            face = one[face]
        return face

    freed: dict[int, int] = {}  # by contour
    for (c, f), inside in sheet.around.items():
        if inside and sheet.kinds[f] != DUST:
            one[find_first(f)] = find_first(freed.setdefault(c, f))
    return len({find_first(face) for face in one})


def list_slugs(sheet: Sheet) -> tuple[Ring, ...]:
    """Lists the outlines of what comes loose and is no part."""
    return tuple(
        tidy_corners(
            [
                shapely.get_coordinates(shapely.get_exterior_ring(sheet.closed.faces.ring[f]))[:-1]
                for f, kind in enumerate(sheet.kinds)
                if kind in (SLUG, WASTE)
            ]
        )
    )
