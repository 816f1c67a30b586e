"""What each face is: a part, a hole's slug, waste, what is left at the edge, or dust."""

from __future__ import annotations

import numpy as np
import shapely

from station.cutting.geometry.contours import Contours
from station.cutting.geometry.faces import NEAR_MM, SKELETON, Faces
from station.cutting.geometry.rings import area_of
from station.cutting.geometry.tabs import Closed
from station.cutting.model import Bools, Floats

PART, SLUG, WASTE, DUST, REST = "part", "slug", "waste", "dust", "rest"
STRIP_SHARE = 0.6  # of the outline of a strip that is cut on both sides, at least
SAME_STRIP_MM = 0.2  # by which the lengths around equal strips differ at most
RING_SHARE = 0.3  # of what a hole frees: an inner face larger than that is a part of its own


def sort_faces(
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
