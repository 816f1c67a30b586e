"""What remains between the cuts: the faces of the sheet, and how they lie in each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from station.cutting.geometry.strokes import Lines, Shapes
from station.cutting.model import Bools, Floats, Ints

QUARTER_CHORDS = 16  # of the bit's own round, off by 0.0036 mm at 6 mm, less than that on average
DUST_MM2 = 0.5  # less is no piece of anything
THIN_SHARE = 0.5  # of the bit's diameter: a leftover thinner than that is dust too
SKELETON = -1
NARROW = 2.02  # times the bit's radius: what is left within is dust
MOST_FILLED = 3  # points of a line that is not halved any more
NEAR_MM = 0.05  # a line this near, with its bit, bounds a face


def widen(lines: Lines) -> Shapes:
    """Gives what the bit takes along each line."""
    return widen_shapes(lines.shape, lines.radius)


def widen_shapes(lines: Shapes, radius: Floats, quarter: int = QUARTER_CHORDS) -> Shapes:
    """Gives what bits of those radii take along lines; `quarter`: chords of their own round.

    Where two ends of a line nearly meet, the library may at times fill what a line goes around:
    no stroke takes more than its length times its width and its ends, so that shows, and the line
    is widened in halves. Where a line goes around no more than the bit takes, it may leave a slit.
    """
    made: Shapes = shapely.buffer(lines, radius, quad_segs=quarter)
    for n in _pick_narrow(lines, radius).tolist():
        inside = shapely.polygonize([shapely.union_all([lines[n]])])
        made[n] = shapely.union(made[n], shapely.buffer(inside, radius[n], quad_segs=quarter))
    most = 2 * radius * shapely.length(lines) + np.pi * radius**2
    for n in np.flatnonzero(shapely.area(made) > most * (1 + 1e-6)).tolist():
        points = shapely.get_coordinates(lines[n])
        if len(points) < MOST_FILLED:
            continue
        middle = len(points) // 2
        halves = [shapely.linestrings(some) for some in (points[: middle + 1], points[middle:])]
        made[n] = shapely.union_all(
            widen_shapes(np.array(halves, dtype=object), np.full(2, radius[n]), quarter)
        )
    return made


def _pick_narrow(lines: Shapes, radius: Floats) -> Ints:
    """Picks closed lines around no more than the bit takes from both sides, or hardly more."""
    x, y, x2, y2 = shapely.bounds(lines).T
    wide = np.minimum(x2 - x, y2 - y)
    closed = shapely.is_closed(lines) & (wide > 0)
    return np.flatnonzero(closed & (wide < NARROW * radius))


def unite(shapes: Sequence[Shapes]) -> Shapes:
    """Unites what touches; gives polygons that lie apart."""
    every = np.concatenate(shapes) if len(shapes) else np.zeros(0, object)
    if not len(every):
        return np.zeros(0, object)
    made: Shapes = shapely.get_parts(shapely.disjoint_subset_union_all(every))
    return np.asarray(made[shapely.area(made) > 0])


@dataclass(frozen=True)
class Faces:
    """Holds what remains of the sheet within the cuts, one row a face.

    `ring` is its outline without holes; `around` the cut that it lies in; `parent` the face
    that this cut lies in, or SKELETON. `depth` counts the faces around it, itself included;
    dust is not counted. `home` is the face that each cut lies in, or SKELETON.
    """

    kerfs: Shapes
    home: Ints
    ring: Shapes
    size: Floats  # area within the ring
    around: Ints
    parent: Ints
    depth: Ints
    dust: Bools
    tree: shapely.STRtree

    def __len__(self) -> int:
        return len(self.ring)

    def list_cuts_in(self, face: int) -> Ints:
        """Lists the cuts that lie in a face: its holes."""
        return np.flatnonzero(self.home == face)

    def find_at(self, points: Floats) -> Ints:
        """Finds the face around each point, also where a cut lies in it; else SKELETON."""
        return _find_smallest(self.tree, self.size, points)


def _find_smallest(tree: shapely.STRtree, size: Floats, points: Floats) -> Ints:
    """Finds the smallest ring around each point; SKELETON where none is."""
    found = np.full(len(points), SKELETON)
    if len(points) and len(size):
        point, ring = tree.query(shapely.points(points), predicate="within")
        order = np.argsort(-size[ring], kind="stable")
        found[point[order]] = ring[order]
    return found


def find_faces(kerfs: Shapes, thin_mm: float, sheet: shapely.Geometry | None = None) -> Faces:
    """Finds the faces that cuts (polygons that lie apart) leave within themselves.

    A leftover not wider than `thin_mm` is dust. Where cuts run across `sheet`, what they leave
    of it are faces too; `around` is then SKELETON.
    """
    rings = shapely.get_rings(kerfs)
    owner = np.repeat(np.arange(len(kerfs)), shapely.get_num_interior_rings(kerfs) + 1)
    inner = np.ones(len(rings), dtype=bool)
    inner[np.searchsorted(owner, np.arange(len(kerfs)))] = False
    filled = shapely.polygons(rings[~inner]) if len(kerfs) else np.zeros(0, object)
    strips, crossing = _find_strips(filled, sheet)
    holes = shapely.polygons(rings[inner]) if inner.any() else np.zeros(0, object)
    ring = np.concatenate((holes, strips))
    around = np.append(owner[inner], np.full(len(strips), SKELETON))
    size, tree = shapely.area(ring), shapely.STRtree(ring)
    home = _find_smallest(tree, size, _pick_first_points(kerfs))
    home[crossing] = SKELETON
    parent = np.append(home, SKELETON)[around] if len(ring) else np.zeros(0, int)
    area, length = size.copy(), shapely.length(ring)
    np.subtract.at(area, home[home >= 0], shapely.area(filled)[home >= 0])
    np.add.at(length, home[home >= 0], shapely.length(filled)[home >= 0])
    dust = (area < DUST_MM2) | (2 * area < thin_mm * length)
    return Faces(kerfs, home, ring, size, around, parent, _count_depth(parent, dust, size),
                 dust, tree)  # fmt: skip


def _find_strips(filled: Shapes, sheet: shapely.Geometry | None) -> tuple[Shapes, Bools]:
    """Finds what cuts that run to the sheet's edge leave of it, where that is more than one
    piece; and those cuts.
    """
    crossing = np.zeros(len(filled), dtype=bool)
    if sheet is None or not len(filled):
        return np.zeros(0, object), crossing
    out = ~shapely.contains_properly(sheet, filled) & shapely.intersects(sheet, filled)
    if not out.any():
        return np.zeros(0, object), crossing
    left = shapely.get_parts(shapely.difference(sheet, shapely.union_all(filled[out])))
    left = left[shapely.area(left) > DUST_MM2]
    if len(left) < 2:
        return np.zeros(0, object), crossing
    return shapely.polygons(shapely.get_exterior_ring(left)), out


def _pick_first_points(shapes: Shapes) -> Floats:
    """Gives the first point of each polygon's edge."""
    first = shapely.get_point(shapely.get_exterior_ring(shapes), 0)
    return np.asarray(shapely.get_coordinates(first))


def _count_depth(parent: Ints, dust: Bools, size: Floats) -> Ints:
    """Counts the faces around each face, itself included; dust counts for nothing."""
    depth = np.zeros(len(parent), dtype=np.int64)
    for face in np.argsort(-size).tolist():
        depth[face] = (depth[parent[face]] if parent[face] >= 0 else 0) + (not dust[face])
    return depth


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
