"""Pieces that come out of the sheet: which of the faces are parts, slugs of holes, or waste."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
import shapely
from shapely.ops import substring

from station.cutting.geometry.edges import draw_edges, list_strokes
from station.cutting.geometry.faces import SKELETON, THIN_SHARE, Faces, widen
from station.cutting.geometry.hollows import ShallowCuts, find_hollows, find_shallow_cuts
from station.cutting.geometry.jumps import WIDEST_GAP_MM
from station.cutting.geometry.moves import Geometry
from station.cutting.geometry.near import Strokes
from station.cutting.geometry.rings import area_of, contains_point, tidy_ring
from station.cutting.geometry.strokes import (
    CLOSE_MM,
    Cuts,
    Levels,
    Lines,
    Shapes,
    close_ends,
    draw_lines,
    find_cuts,
    find_plunges,
    pick_closing,
    pick_through,
)
from station.cutting.geometry.tabs import (
    NOTHING,
    Closed,
    LostTab,
    Stretches,
    close_stubs,
    close_tabs,
    find_lost_tabs,
    find_normals,
    find_stretches,
)
from station.cutting.model import Bools, Floats, Ints, Moves, Piece, Ring, Tab

PART, SLUG, WASTE, DUST, REST = "part", "slug", "waste", "dust", "rest"
STRIP_SHARE = 0.6  # of the outline of a strip that is cut on both sides, at least
SAME_STRIP_MM = 0.2  # by which the lengths around equal strips differ at most
SKIN_SHARE, HOLDS_MM = 0.15, 25.0  # of an outline, or so long: less of a skin holds nothing
ALONG_SHARES = np.array([0.1, 0.3, 0.5, 0.7, 0.9])  # of a stretch, where another may lie
LIFTED_MM = 0.05
STRAIGHT_MM = 0.0002
BEYOND_MM = 0.2  # a stretch that lies further from an edge than a skin is beyond it
FOLD_MM = 0.05  # how far apart the ways there and back may lie
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
    around: dict[tuple[int, int], bool]  # whether a contour goes around a face along it
    edges: tuple[Ints, Ints]  # a face, and a line of `through` along it
    drawn: Shapes  # each face with its holes
    shallow: ShallowCuts
    skins: Bools  # stretches that are no tabs
    plunges: Ints  # moves that only go down through the sheet
    pieces: tuple[Piece, ...]
    of_piece: tuple[int, ...]  # its face
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
    closed = _close_all(cuts, through, kerfs, levels, edge)
    contours = _join_runs(through, closed.stretches)
    bounds, edges = _find_bounds(closed, through, contours)
    drawn = draw_faces(closed.faces)
    around = _find_enclosed(drawn, contours, bounds)
    kinds = _sort_faces(closed, bounds, around, contours, edge)
    shallow = find_shallow_cuts(cuts, levels, closed.faces.kerfs, _list_ways(through, closed))
    parts = [face for face, kind in enumerate(kinds) if kind == PART]
    firsts = {f: _find_first_cut(f, contours, bounds[f], around) for f in parts}
    sides = _measure_sides(closed, cuts, levels)
    strokes = list_strokes(
        cuts,
        through,
        (closed.stretches.whole, closed.stretches.radius),
        (plunges, _find_radii(moves, plunges, bit_mm)),
    )
    rings = _draw_rings(closed.faces, parts, strokes)
    made = [_make_piece(f, rings[f], cuts, levels, closed, sides, firsts[f]) for f in parts]
    hollows = find_hollows(shallow, {face: drawn[face] for face in parts})
    order = sorted(range(len(parts)), key=lambda n: made[n].line)
    return Sheet(
        cuts, through, closed, contours, tuple(kinds), bounds, around, edges, drawn, shallow,
        skins=sides.skin,
        plunges=plunges,
        pieces=tuple(replace(made[n], hollows=tuple(hollows.get(parts[n], ()))) for n in order),
        of_piece=tuple(parts[n] for n in order),
        lost=tuple(find_lost_tabs(cuts, levels, through, kerfs)),
    )  # fmt: skip


def _list_ways(through: Lines, closed: Closed) -> tuple[Shapes, Floats]:
    """Lists the ways of the bits that cut through the sheet, tabs closed, and their radii."""
    some = through, closed.stretches
    return np.concatenate([w.shape for w in some]), np.concatenate([w.radius for w in some])


def _close_all(
    cuts: Cuts, through: Lines, kerfs: Shapes, levels: Levels, edge: shapely.Geometry | None
) -> Closed:
    """Closes all tabs and skins between the cuts through the sheet."""
    nearly = (cuts.high <= levels.skin).astype(np.int64)  # a way back to a lead is no skin
    closing = draw_lines(cuts, np.flatnonzero(pick_closing(cuts, levels)), by=nearly)
    stretches = find_stretches(cuts, through, closing, kerfs)
    narrow = float(min(through.radius.min(initial=3.0), closing.radius.min(initial=3.0)))
    thin = 2 * THIN_SHARE * narrow
    closed, open_ = close_tabs(kerfs, stretches, thin, edge)
    stubs = open_.pick(open_.lifted | _pick_along_skins(open_, closed.stretches))
    face = _find_stub_faces(closed.faces, stubs)
    if not (face >= 0).any():
        return closed
    return close_stubs(closed, stubs.pick(face >= 0), face[face >= 0], kerfs, thin, edge)


def _pick_along_skins(open_: Stretches, closed: Stretches) -> Bools:
    """Picks stretches cut as deep as closed ones of their own run: a bit that goes around a part
    at one height bounds it there too, where the cuts of its neighbours have left nothing beside.
    """
    cut = closed.pick(np.isfinite(closed.top))
    known = set(zip(cut.run.tolist(), np.round(cut.top / LIFTED_MM).tolist(), strict=True))
    pairs = zip(open_.run.tolist(), np.round(open_.top / LIFTED_MM).tolist(), strict=True)
    return np.fromiter((pair in known for pair in pairs), bool, len(open_))


def _find_stub_faces(faces: Faces, lifted: Stretches) -> Ints:
    """Finds the face on whose edge something is left where the bit was lifted between two cuts
    along that edge, though nothing hangs on it: as at an inner corner. -1: on none.
    """
    found = np.full(len(lifted), -1)
    if not len(lifted) or not len(faces):
        return found
    edges, reach = shapely.get_exterior_ring(faces.ring), lifted.radius + NEAR_MM
    stub, face = faces.tree.query(lifted.shape, predicate="dwithin", distance=reach)
    beside = ~faces.dust[face]
    for at in (0, -1):
        parts = shapely.get_geometry(lifted.whole[stub], at)
        beside &= shapely.distance(shapely.get_point(parts, at), edges[face]) < reach[stub]
    stub, face = stub[beside], face[beside]
    order = np.argsort(-faces.size[face], kind="stable")
    found[stub[order]] = face[order]
    return found


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
    whole = {of_run[run] for run in cut}
    ways = {
        c: _unfold(np.concatenate(some if c in whole else _keep_joined(some)))
        for c, some in lines.items()
    }
    return Contours(of_run, ways, firsts)


def _unfold(way: Floats) -> Floats:
    """Gives the first half of a way that goes there and back, as around three sides of a part
    that shares the fourth: only one of both goes around it.
    """
    while len(way) > 2 and np.hypot(*(way[-1] - way[0])) < CLOSE_MM:
        line = shapely.linestrings(way)
        long = float(shapely.length(line))
        if abs(area_of(way)) > FOLD_MM * long or not _goes_back(line):
            break
        way = shapely.get_coordinates(substring(line, 0, long / 2))
    return way


def _goes_back(line: shapely.Geometry) -> bool:
    """Tells whether a line comes back the same way from its middle on."""
    shares = np.concatenate((ALONG_SHARES / 2, 1 - ALONG_SHARES / 2))
    there, back = shapely.line_interpolate_point(line, shares, normalized=True).reshape(2, -1)
    return bool(shapely.distance(there, back).max() < FOLD_MM)


def _keep_joined(ways: list[Floats]) -> list[Floats]:
    """Gives the ways that an earlier pass went over what is left, where they lie close together:
    those over tabs far apart go around nothing.
    """
    gaps = [float(np.hypot(*(b[0] - a[-1]))) for a, b in pairwise(ways)]
    around = sum(float(np.hypot(*np.diff(way, axis=0).T).sum()) for way in ways)
    return ways if sum(gaps) < around else [np.zeros((0, 2))]


def _find_bounds(
    closed: Closed, through: Lines, contours: Contours
) -> tuple[dict[int, list[int]], tuple[Ints, Ints]]:
    """Finds the contours, and the cuts through the sheet, that run along each face's outline."""
    faces, stretches = closed.faces, closed.stretches
    lines = np.concatenate((through.shape, stretches.shape))
    radius = np.concatenate((through.radius, stretches.radius))
    runs = np.concatenate((through.run, stretches.run))
    bounds: dict[int, list[int]] = {face: [] for face in range(len(faces))}
    if not len(faces) or not len(lines):
        return bounds, (np.zeros(0, int), np.zeros(0, int))
    edges, lines = (
        shapely.simplify(some, NEAR_MM / 4, preserve_topology=False)
        for some in (shapely.get_exterior_ring(faces.ring), lines)
    )
    reach = float(radius.max()) + NEAR_MM
    face, line = shapely.STRtree(lines).query(edges, predicate="dwithin", distance=reach)
    if radius.max() - radius.min() > 1e-9:
        near = shapely.distance(edges[face], lines[line]) < radius[line] + NEAR_MM
        face, line = face[near], line[near]
    for f, run in zip(face.tolist(), runs[line].tolist(), strict=True):
        contour = contours.of_run[run]
        if contour not in bounds[f]:
            bounds[f].append(contour)
    own = line < len(through)
    return bounds, (face[own], line[own])


def _find_enclosed(
    drawn: Shapes, contours: Contours, bounds: dict[int, list[int]]
) -> dict[tuple[int, int], bool]:
    """Tells of each contour and each face along it whether it goes around the face."""
    inner = shapely.get_coordinates(shapely.point_on_surface(drawn))
    return {(c, f): contours.encloses(c, inner[f]) for f, some in bounds.items() for c in some}


def _sort_faces(
    closed_: Closed,
    bounds: dict[int, list[int]],
    around: dict[tuple[int, int], bool],
    contours: Contours,
    edge: shapely.Geometry | None,
) -> list[str]:
    """Tells of each face whether it is a part, a hole's slug, waste, or dust."""
    faces = closed_.faces
    held = np.zeros(len(faces), dtype=bool)  # by a tab in its own outline
    for one, other in ((closed_.left, closed_.right), (closed_.right, closed_.left)):
        inner = one[one >= 0]
        held[inner[faces.parent[inner] == other[one >= 0]]] = True
    kinds = [DUST] * len(faces)
    if not len(faces):
        return kinds
    closed = {c for (c, f), inside in around.items() if inside and not faces.dust[f]}
    largest = _measure_largest(faces, held)
    solid, along = _measure_solid(faces), _list_along(bounds)
    of_holes = _list_hole_contours(contours, closed_, around)
    order = np.argsort(-faces.size)
    for f in order[~faces.dust[order]].tolist():
        parent = _find_parent(faces, f)
        inside = any(around[c, f] for c in bounds[f])
        meant = inside or closed.isdisjoint(bounds[f])  # not what other parts leave between them
        if faces.around[f] == SKELETON:
            kinds[f] = PART if meant and _is_strip(faces.ring[f], edge) else REST
        elif parent == SKELETON or kinds[parent] != PART:
            kinds[f] = PART if meant else WASTE
        else:
            own = largest[f] < min(RING_SHARE * faces.size[f], solid[f])
            own = bool(own and (faces.home == f).any()) or _lies_within(
                f, faces, bounds, along, around
            )
            turn = _tell_by_turn(f, around, of_holes)
            kinds[f] = PART if turn == PART or (own and inside and turn != SLUG) else SLUG
    _take_equal_strips(faces, kinds)
    return kinds


def _measure_largest(faces: Faces, held: Bools) -> Floats:
    """Measures the largest face within each; what is `held` by a tab where its face is not, or
    has holes itself, is as large as can be: it is no slug.
    """
    largest = np.zeros(len(faces))
    kept = np.flatnonzero(~faces.dust & (faces.parent >= 0))
    weight = np.where(held[kept] & ~held[faces.parent[kept]], np.inf, faces.size[kept])
    weight[~held[kept] & held[faces.parent[kept]]] = 0.0
    weight[np.isin(kept, faces.home)] = np.inf
    np.maximum.at(largest, faces.parent[kept], weight)
    return largest


def _tell_by_turn(
    face: int, around: dict[tuple[int, int], bool], of_holes: dict[int, bool]
) -> str:
    """Tells from the way that cuts turn what a face within a hole is: a part of its own where the
    nearest cut around it is an outline, a slug where that is a hole's; else nothing.
    """
    turns = [hole for contour, hole in of_holes.items() if around.get((contour, face))]
    if turns[:1] == [True]:
        return SLUG
    return PART if any(turns) else ""


def _list_hole_contours(
    contours: Contours, closed: Closed, around: dict[tuple[int, int], bool]
) -> dict[int, bool]:
    """Tells of contours, the narrowest first, whether they turn the other way than all outlines
    of the sheet: both are cut with the part on the same side of the bit, so they are holes'.
    None are told where the outlines do not turn one way.
    """
    turns = {c: area_of(way) for c, way in contours.ways.items() if len(way) > 2}
    outer = [
        turns[c] > 0
        for (c, f), inside in around.items()
        if inside and c in turns and not closed.faces.dust[f] and closed.faces.depth[f] == 1
    ]
    if not outer or len(set(outer)) > 1:
        return {}
    return {c: (turns[c] > 0) != outer[0] for c in sorted(turns, key=lambda c: abs(turns[c]))}


def _list_along(bounds: dict[int, list[int]]) -> dict[int, list[int]]:
    """Lists the faces along each contour."""
    along: dict[int, list[int]] = {}
    for face, some in bounds.items():
        for contour in some:
            along.setdefault(contour, []).append(face)
    return along


def _lies_within(
    face: int,
    faces: Faces,
    bounds: dict[int, list[int]],
    along: dict[int, list[int]],
    around: dict[tuple[int, int], bool],
) -> bool:
    """Tells whether a face in a hole is cut out of what comes loose there: another lies between,
    beside the contour that goes around it.
    """
    return any(
        not faces.dust[f] and not around[contour, f] and faces.parent[f] == faces.parent[face]
        for contour in bounds[face]
        if around[contour, face]
        for f in along[contour]
    )


def _measure_solid(faces: Faces) -> Floats:
    """Measures each face without its holes; 0 where it is not as wide as what is cut in it: that
    lies between two cuts of one hole.
    """
    solid, widest = faces.size.astype(np.float64), np.zeros(len(faces))
    kerfs, home = faces.kerfs[faces.home >= 0], faces.home[faces.home >= 0]
    filled = shapely.polygons(shapely.get_exterior_ring(kerfs)) if len(home) else kerfs
    np.subtract.at(solid, home, shapely.area(filled))
    np.maximum.at(widest, home, shapely.area(kerfs))
    return np.where(solid > widest, solid, 0.0)


def _take_equal_strips(faces: Faces, kinds: list[str]) -> None:
    """Takes what is left at the sheet's edge for a part where it is as large as another strip:
    ripping began at the edge.
    """
    long = shapely.length(faces.ring)
    strips = np.flatnonzero(faces.around == SKELETON)
    parts = [f for f in strips.tolist() if kinds[f] == PART]
    for f in strips.tolist():
        near = np.abs(long[parts] - long[f]) < SAME_STRIP_MM
        near &= np.abs(faces.size[parts] - faces.size[f]) < SAME_STRIP_MM * long[f] / 4
        if kinds[f] == REST and near.any():
            kinds[f] = PART


def _is_strip(ring: shapely.Geometry, edge: shapely.Geometry | None) -> bool:
    """Tells whether most of an outline is cut; the rest is the sheet's own edge."""
    around = shapely.get_exterior_ring(ring)
    own = shapely.buffer(shapely.get_exterior_ring(edge), NEAR_MM)
    cut = shapely.length(shapely.difference(around, own))
    return bool(cut > STRIP_SHARE * shapely.length(around))


def _find_parent(faces: Faces, face: int) -> int:
    """Finds the face around a face; dust is passed over."""
    parent = int(faces.parent[face])
    while parent >= 0 and faces.dust[parent]:
        parent = int(faces.parent[parent])
    return parent


def draw_faces(faces: Faces) -> Shapes:
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


def _draw_rings(faces: Faces, parts: list[int], strokes: Strokes) -> dict[int, list[Ring]]:
    """Draws the edges of parts: of each its outline, then its holes."""
    homes = np.argsort(faces.home, kind="stable")
    homes = homes[np.isin(faces.home[homes], parts)]
    shapes = np.concatenate((faces.ring[parts], faces.kerfs[homes]))
    drawn = [_tidy(ring) for ring in draw_edges(shapely.get_exterior_ring(shapes), strokes)]
    rings = {face: [drawn[n]] for n, face in enumerate(parts)}
    for n, home in enumerate(faces.home[homes].tolist(), start=len(parts)):
        rings[home].append(drawn[n])
    return rings


def _tidy(ring: Ring) -> Ring:
    """Gives a ring's corners, counter-clockwise, the furthest out first; none lies straight
    between two others.
    """
    away = ring - ring.mean(axis=0)
    far = int(np.argmax((away * away).sum(axis=1)))
    closed = shapely.linestrings(np.concatenate((ring[far:], ring[: far + 1])))
    closed = shapely.simplify(closed, STRAIGHT_MM, preserve_topology=False)
    return tidy_ring(shapely.get_coordinates(closed)[:-1])


@dataclass(frozen=True)
class Sides:
    """Holds what is measured of stretches once for all pieces: lengths, middles, normals."""

    length: Floats
    middle: Floats
    normal: Floats
    skin: Bools

    def list_along(self, closed: Closed, face: int) -> Ints:
        """Lists the stretches along a face."""
        return np.flatnonzero((closed.left == face) | (closed.right == face))


def _measure_sides(closed: Closed, cuts: Cuts, levels: Levels) -> Sides:
    """Measures the stretches of a sheet."""
    shape = closed.stretches.shape
    length = shapely.length(shape)
    middle, normal = find_normals(shape, length / 2) if len(shape) else (np.zeros((0, 2)),) * 2
    return Sides(length, middle, normal, _pick_skins(closed.stretches, cuts, levels))


def _make_piece(
    face: int,
    rings: list[Ring],
    cuts: Cuts,
    levels: Levels,
    closed: Closed,
    sides: Sides,
    position: int,
) -> Piece:
    """Makes the piece of a face with its tabs; its contour begins at a position in the cuts."""
    outline, *holes = rings
    own = sides.list_along(closed, face)
    skin = own[sides.skin[own]]
    length = float(shapely.length(closed.faces.ring[face]))
    if float(sides.length[skin].sum()) < min(SKIN_SHARE * length, HOLDS_MM):
        skin = skin[:0]  # what an earlier pass left beside a tab
    held = _pick_held(face, own[~sides.skin[own]], skin, closed, sides)
    index = cuts.index[position]
    return Piece(
        outline=outline,
        holes=tuple(holes),
        tabs=tuple(_make_tabs(face, held, cuts, levels, closed, sides)),
        tool=int(cuts.moves.tool[index]),
        line=int(cuts.moves.line[index]),
        covered=max(0.0, 1 - float(sides.length[own].sum()) / max(length, 1e-9)),
        skin_mm=_measure_skin(closed.stretches, skin, cuts, levels),
    )


def _pick_held(face: int, some: Ints, skin: Ints, closed: Closed, sides: Sides) -> Ints:
    """Picks the stretches under which a part hangs on the sheet: not beyond a skin, as the way
    back to a lead lies, nor over it, as an earlier lap's end.
    """
    if not len(some) or not len(skin):
        return some
    shape, edge = closed.stretches.shape, shapely.get_exterior_ring(closed.faces.ring[face])
    middle = shapely.points(sides.middle[some])
    place = shapely.line_interpolate_point(edge, shapely.line_locate_point(edge, middle))
    tree = shapely.STRtree(shape[skin])
    over, away = (
        tree.query_nearest(points, return_distance=True, all_matches=False)[1]
        for points in (middle, place)
    )
    held: Bools = shapely.distance(place, shape[some]) < away + BEYOND_MM
    held &= over > closed.stretches.radius[some] / 2
    return some[held]


def _measure_skin(stretches: Stretches, skin: Ints, cuts: Cuts, levels: Levels) -> float:
    """Measures what a skin leaves, tabs in it left out: as much as the runs of its stretches leave
    where they are deepest; those that go through leave a ramp. 0 where there is none.
    """
    low = cuts.run_low[stretches.run[skin]]
    left = np.where(low > levels.through, low, stretches.top[skin]) - levels.bottom
    return float(left.max(initial=0.0))


def _pick_skins(stretches: Stretches, cuts: Cuts, levels: Levels) -> Bools:
    """Picks what is no tab: left by runs that go through nowhere, or too long for a tab."""
    low = cuts.run_low[stretches.run]
    skin = (stretches.top <= levels.skin) & (low > levels.through)
    skin &= stretches.top < low + LIFTED_MM  # else it is lifted over a tab
    skin[skin] = ~_lie_along(stretches.shape[skin], stretches.shape[low <= levels.through])
    return np.asarray(skin | (shapely.length(stretches.shape) > WIDEST_GAP_MM))


def _lie_along(some: Shapes, others: Shapes) -> Bools:
    """Tells of stretches whether others lie over them all along: a run that goes through has gone
    over what an earlier one left, as over a tab lower than a pass.
    """
    places = shapely.line_interpolate_point(some[:, None], ALONG_SHARES, normalized=True)
    near = np.zeros(places.size, dtype=bool)
    near[shapely.STRtree(others).query(places.ravel(), "dwithin", NEAR_MM)[0]] = True
    return np.asarray(near.reshape(places.shape).all(axis=1))


def _find_first_cut(
    face: int, contours: Contours, bounds: list[int], around: Mapping[tuple[int, int], bool]
) -> int:
    """Finds where in the cuts the contour of a face begins."""
    own = [c for c in bounds if around[c, face]] or bounds
    return min((contours.first[c] for c in own), default=0)


def _make_tabs(
    face: int, own: Ints, cuts: Cuts, levels: Levels, closed: Closed, sides: Sides
) -> list[Tab]:
    """Makes the tabs along a face; stretches over the same place are one, as high as the lowest
    that goes over most of it.
    """
    some = closed.stretches
    tabs: list[Tab] = []
    for group in _join_touching(some, own):
        length = sides.length[group]
        most = group[length >= length.max() / 2]
        n = int(most[np.argmin(some.top[most])])
        side = some.radius[n] if closed.left[n] == face else -some.radius[n]
        x, y = (sides.middle[n] + sides.normal[n] * side).tolist()
        stub = closed.right[group].min() == NOTHING
        style = "gap" if some.top[n] == np.inf else "ramped" if some.ramped[n] else "square"
        tabs.append(
            Tab(
                x_mm=x,
                y_mm=y,
                width_mm=float(length.max()),
                height_mm=float(min(some.top[n], levels.face) - levels.bottom),
                style="stub" if stub else style,
                line=int(cuts.moves.line[cuts.index[some.first[n]]]),
            )
        )
    return sorted(tabs, key=lambda t: t.line)


def _join_touching(some: Stretches, own: Ints) -> list[Ints]:
    """Joins the stretches that lie over one another, or go on where another ends: cuts between
    two tabs leave them the bit's width apart.
    """
    left = own.tolist()
    groups = []
    while left:
        group, new = [], [left.pop(0)]
        while new:
            n = new.pop()
            group.append(n)
            near = shapely.distance(some.shape[n], some.shape[left]) < some.radius[n]
            new += [k for k, touches in zip(left, near.tolist(), strict=True) if touches]
            left = [k for k, touches in zip(left, near.tolist(), strict=True) if not touches]
        groups.append(np.array(group))
    return groups


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
    """Measures what of each shape lies within the sheet's edge."""
    size = shapely.area(shapes)
    over = np.flatnonzero(~shapely.contains(edge, shapes)) if len(shapes) else np.zeros(0, int)
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
        _tidy(shapely.get_coordinates(shapely.get_exterior_ring(sheet.closed.faces.ring[f]))[:-1])
        for f, kind in enumerate(sheet.kinds)
        if kind in (SLUG, WASTE)
    )
