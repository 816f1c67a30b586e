"""The pieces that come out of the sheet: their exact edges, their tabs and skins."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from station.cutting.geometry.edges import draw_edges
from station.cutting.geometry.faces import NEAR_MM, Faces
from station.cutting.geometry.jumps import WIDEST_GAP_MM
from station.cutting.geometry.near import Strokes
from station.cutting.geometry.rings import tidy_ring
from station.cutting.geometry.sides import NOTHING, find_normals
from station.cutting.geometry.stretches import Stretches
from station.cutting.geometry.strokes import Cuts, Levels, Shapes
from station.cutting.geometry.tabs import LIFTED_MM, Closed
from station.cutting.model import Bools, Floats, Ints, Piece, Ring, Tab

SKIN_SHARE, HOLDS_MM = 0.15, 25.0  # of an outline, or so long: less of a skin holds nothing
ALONG_SHARES = np.array([0.1, 0.3, 0.5, 0.7, 0.9])  # of a stretch, where another may lie
STRAIGHT_MM = 0.0002
BEYOND_MM = 0.2  # a stretch that lies further from an edge than a skin is beyond it


def draw_rings(faces: Faces, parts: list[int], strokes: Strokes) -> dict[int, list[Ring]]:
    """Draws the edges of parts: of each its outline, then its holes."""
    homes = np.argsort(faces.home, kind="stable")
    homes = homes[np.isin(faces.home[homes], parts)]
    shapes = np.concatenate((faces.ring[parts], faces.kerfs[homes]))
    drawn = tidy_corners(draw_edges(shapely.get_exterior_ring(shapes), strokes))
    rings = {face: [drawn[n]] for n, face in enumerate(parts)}
    for n, home in enumerate(faces.home[homes].tolist(), start=len(parts)):
        rings[home].append(drawn[n])
    return rings


def tidy_corners(rings: Sequence[Ring]) -> list[Ring]:
    """Gives the corners of rings, counter-clockwise, the furthest out first; none lies straight
    between two others.
    """
    if not len(rings):
        return []
    points = []
    for ring in rings:
        away = ring - ring.mean(axis=0)
        far = int(np.argmax((away * away).sum(axis=1)))
        points += [ring[far:], ring[: far + 1]]
    of = np.repeat(np.arange(len(rings)), [len(ring) + 1 for ring in rings])
    closed = shapely.linestrings(np.concatenate(points), indices=of)
    closed = shapely.simplify(closed, STRAIGHT_MM, preserve_topology=False)
    corners = shapely.get_coordinates(closed)
    ends = np.cumsum(shapely.get_num_points(closed))[:-1]
    return [tidy_ring(some[:-1]) for some in np.split(corners, ends)]


@dataclass(frozen=True)
class Measures:
    """Holds what is measured of stretches once for all pieces: lengths, middles, normals."""

    length: Floats
    middle: Floats
    normal: Floats
    skin: Bools
    touching: dict[int, set[int]]  # those that lie over each, or go on where it ends

    def list_along(self, closed: Closed, face: int) -> Ints:
        """Lists the stretches along a face."""
        return np.flatnonzero((closed.left == face) | (closed.right == face))


def measure_stretches(closed: Closed, cuts: Cuts, levels: Levels) -> Measures:
    """Measures the stretches of a sheet."""
    shape = closed.stretches.shape
    length = shapely.length(shape)
    middle, normal = find_normals(shape, length / 2) if len(shape) else (np.zeros((0, 2)),) * 2
    skin, touching = _pick_skins(closed.stretches, cuts, levels), _find_touching(closed.stretches)
    return Measures(length, middle, normal, skin, touching)


def _find_touching(some: Stretches) -> dict[int, set[int]]:
    """Finds the stretches less than the bit's radius from each: they lie over it, or go on where
    it ends, for cuts between two tabs leave them the bit's width apart.
    """
    tree = shapely.STRtree(some.shape)
    one, other = tree.query(some.shape, predicate="dwithin", distance=some.radius)
    near = shapely.distance(some.shape[one], some.shape[other]) < some.radius[one]
    found: dict[int, set[int]] = {}
    for n, k in zip(one[near].tolist(), other[near].tolist(), strict=True):
        found.setdefault(n, set()).add(k)
    return found


def make_piece(
    face: int,
    rings: list[Ring],
    cuts: Cuts,
    levels: Levels,
    closed: Closed,
    measures: Measures,
    position: int,
) -> Piece:
    """Makes the piece of a face with its tabs; its contour begins at a position in the cuts."""
    outline, *holes = rings
    own = measures.list_along(closed, face)
    skin = own[measures.skin[own]]
    length = float(shapely.length(closed.faces.ring[face]))
    if float(measures.length[skin].sum()) < min(SKIN_SHARE * length, HOLDS_MM):
        skin = skin[:0]  # what an earlier pass left beside a tab
    held = _pick_held(face, own[~measures.skin[own]], skin, closed, measures)
    index = cuts.index[position]
    return Piece(
        outline=outline,
        holes=tuple(holes),
        tabs=tuple(_make_tabs(face, held, cuts, levels, closed, measures)),
        tool=int(cuts.moves.tool[index]),
        line=int(cuts.moves.line[index]),
        covered=max(0.0, 1 - float(measures.length[own].sum()) / max(length, 1e-9)),
        skin_mm=_measure_skin(closed.stretches, skin, cuts, levels),
    )


def _pick_held(face: int, some: Ints, skin: Ints, closed: Closed, measures: Measures) -> Ints:
    """Picks the stretches under which a part hangs on the sheet: not beyond a skin, as the way
    back to a lead lies, nor over it, as an earlier lap's end.
    """
    if not len(some) or not len(skin):
        return some
    shape, edge = closed.stretches.shape, shapely.get_exterior_ring(closed.faces.ring[face])
    middle = shapely.points(measures.middle[some])
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


def _make_tabs(
    face: int, own: Ints, cuts: Cuts, levels: Levels, closed: Closed, measures: Measures
) -> list[Tab]:
    """Makes the tabs along a face; stretches over the same place are one, as high as the lowest
    that goes over most of it.
    """
    some = closed.stretches
    tabs: list[Tab] = []
    for group in _join_touching(measures.touching, own):
        length = measures.length[group]
        most = group[length >= length.max() / 2]
        n = int(most[np.argmin(some.top[most])])
        side = some.radius[n] if closed.left[n] == face else -some.radius[n]
        x, y = (measures.middle[n] + measures.normal[n] * side).tolist()
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


def _join_touching(touching: dict[int, set[int]], own: Ints) -> list[Ints]:
    """Joins the stretches that touch one another, each to those that touch it in turn."""
    left = own.tolist()
    groups = []
    while left:
        group, new = [], [left.pop(0)]
        while new:
            n = new.pop()
            group.append(n)
            near = touching.get(n, set())
            new += [k for k in left if k in near]
            left = [k for k in left if k not in near]
        groups.append(np.array(group))
    return groups
