"""The faces to the left and to the right of stretches."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely

from station.cutting.geometry.faces import Faces
from station.cutting.geometry.stretches import Stretches
from station.cutting.geometry.strokes import Shapes
from station.cutting.model import Floats, Ints

PROBE_MM = 0.05
PROBE_EVERY_MM, MOST_PROBES = 3.0, 5
PROBES_OUT = 10  # thirds of the radius: a whole cut of another skin may lie beside the stretch
LEAST_CONTACT_MM = 0.3  # of a face with what stands under a stretch
AROUND = 1.02  # a way so much longer than the straight one goes around a corner
NOTHING = -3
UNKNOWN = -2  # where another cut goes, or only dust is


def find_sides(stretches: Stretches, faces: Faces, kerfs: shapely.STRtree) -> tuple[Ints, Ints]:
    """Finds the faces to the left and the right of each stretch; the same where it parts none."""
    n = len(stretches)
    if not n:
        return np.zeros(0, int), np.zeros(0, int)
    length = shapely.length(stretches.shape)
    count = np.clip(np.ceil(length / PROBE_EVERY_MM), 1, MOST_PROBES).astype(np.int64)
    of = np.repeat(np.arange(n), count)
    nth = np.arange(len(of)) - np.repeat(np.cumsum(count) - count, count)
    at = (nth + 0.5) / count[of] * length[of]
    middle, normal = find_normals(stretches.shape[of], at)
    radius = stretches.radius[of]
    sides = [_find_beside(middle, s * normal, radius, faces, kerfs) for s in (1, -1)]
    known = (sides[0] > UNKNOWN) & (sides[1] > UNKNOWN)
    parts = known & (sides[0] != sides[1])
    most = 2 * np.bincount(of[parts], minlength=n) > np.bincount(of[known], minlength=n)
    parts &= most[of]
    first = np.full(n, -1)
    index = np.flatnonzero(parts)[::-1]
    first[of[index]] = index
    left, right = np.zeros(n, int), np.zeros(n, int)
    some = first >= 0
    left[some], right[some] = sides[0][first[some]], sides[1][first[some]]
    ends = [shapely.get_point(stretches.shape, at) for at in (0, -1)]
    round_corner = length > AROUND * shapely.distance(*ends)  # its probes may meet its other leg
    dark = np.flatnonzero((np.bincount(of[known], minlength=n) == 0) | (round_corner & ~some))
    rings = _list_rings(faces) if len(dark) else None
    for k in dark.tolist():
        assert rings
        left[k], right[k] = _look_around(stretches, k, faces, rings, kerfs)
    return left, right


def _look_around(
    stretches: Stretches, n: int, faces: Faces, rings: Rings, kerfs: shapely.STRtree
) -> tuple[int, int]:
    """Finds the two faces that what stands under a stretch is joined to most; the same where
    there are not two. The first lies to the left of the stretch where that can be told.

    What other cuts part stands alone: a tab is one piece of it that is joined to both.
    """
    shape = stretches.shape[n]
    stands = shapely.buffer(stretches.whole[n], stretches.radius[n])
    cut = kerfs.geometries[kerfs.query(stands)]
    stands = shapely.difference(stands, shapely.union_all(cut))
    for alone in shapely.get_parts(stands):
        rim = shapely.buffer(alone, PROBE_MM)
        near = rings.tree.query(rim, predicate="intersects")
        contact = shapely.intersection(rings.tree.geometries[near], rim)
        length, face = shapely.length(contact), rings.face[near]
        real = (length > LEAST_CONTACT_MM) & ~np.append(faces.dust, False)[face]
        names, of = np.unique(face[real], return_inverse=True)
        if len(names) < 2:
            continue
        most = np.argsort(-np.bincount(of, weights=length[real]), kind="stable")[:2]
        one, other = (int(name) for name in names[most])
        middle, normal = find_normals(np.array([shape]), shapely.length(np.array([shape])) / 2)
        points = shapely.get_coordinates(contact[real][of == most[0]]).mean(axis=0)
        left = float((points - middle[0]) @ normal[0]) > 0
        return (one, other) if left else (other, one)
    return 0, 0


@dataclass(frozen=True)
class Rings:
    """Holds the rings that bound faces, and the face within each or around it."""

    tree: shapely.STRtree
    face: Ints


def _list_rings(faces: Faces) -> Rings:
    """Lists the outlines of faces, and of the cuts that lie in them."""
    some = np.concatenate((faces.ring, faces.kerfs))
    face = np.concatenate((np.arange(len(faces)), faces.home))
    return Rings(shapely.STRtree(shapely.get_exterior_ring(some)), face)


def _find_beside(
    points: Floats, way: Floats, radius: Floats, faces: Faces, kerfs: shapely.STRtree
) -> Ints:
    """Finds the first face to one side of points on the bit's way.

    Other stretches are passed over; UNKNOWN where a cut goes through, or none is near.
    """
    found = np.full(len(points), UNKNOWN)
    open_ = np.ones(len(points), dtype=bool)
    closed = shapely.STRtree(faces.kerfs)
    for step in range(PROBES_OUT):
        rest = np.flatnonzero(open_)
        off = radius[rest] * (1 + step / 3) + PROBE_MM
        at = shapely.points(points[rest] + way[rest] * off[:, None])
        here = faces.find_at(shapely.get_coordinates(at))
        inner = np.flatnonzero(here >= 0)
        here[inner[faces.dust[here[inner]]]] = UNKNOWN
        here[closed.query(at, predicate="within")[0]] = UNKNOWN
        found[rest] = here
        unknown = here == UNKNOWN
        open_[rest] = unknown
        open_[rest[unknown][kerfs.query(at[unknown], predicate="within")[0]]] = False
        if not open_.any():
            break
    return found


def find_normals(lines: Shapes, at: Floats) -> tuple[Floats, Floats]:
    """Finds the point of each line at a length along it, and the unit normal to the left there."""
    length = shapely.length(lines)
    step = np.minimum(0.05, length / 4)
    middle = shapely.get_coordinates(shapely.line_interpolate_point(lines, at))
    ahead = shapely.get_coordinates(
        shapely.line_interpolate_point(lines, np.minimum(at + step, length))
    )
    behind = shapely.get_coordinates(
        shapely.line_interpolate_point(lines, np.maximum(at - step, 0.0))
    )
    way = ahead - behind
    way /= np.maximum(np.hypot(*way.T), 1e-12)[:, None]
    return middle, np.column_stack((-way[:, 1], way[:, 0]))
