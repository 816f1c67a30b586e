"""Tabs and skins: what is left between two faces where a cut does not go through.

A stretch is a tab where closing it frees something.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely

from station.cutting.geometry.faces import NEAR_MM, SKELETON, THIN_SHARE, Faces, find_faces, unite
from station.cutting.geometry.jumps import LEAST_GAP_MM
from station.cutting.geometry.sides import NOTHING, find_sides
from station.cutting.geometry.stretches import (
    Stretches,
    find_stretches,
    join_stretches,
    widen_stretches,
)
from station.cutting.geometry.strokes import Cuts, Levels, Lines, Shapes, draw_lines, pick_closing
from station.cutting.model import Bools, Floats, Ints

ROUNDS = 4
LONGER = 1.5  # times as far from the same place is no tab beside the nearer one
OVER_SHARE = 0.8  # of a jump's length: another over it is as long
SAME_TAB_MM = 0.5  # by which the tabs of one sheet differ at most
LIFTED_MM = 0.05


@dataclass(frozen=True)
class Closed:
    """Holds the faces with every tab closed, and the stretches that were closed for it.

    `left` and `right` are the faces beside each stretch, seen along its way; NOTHING where only
    a stub is left on a part.
    """

    faces: Faces
    stretches: Stretches
    left: Ints
    right: Ints


def close_all(
    cuts: Cuts, through: Lines, kerfs: Shapes, levels: Levels, edge: shapely.Geometry | None
) -> Closed:
    """Closes all tabs and skins between the cuts through the sheet."""
    nearly = (cuts.high <= levels.skin).astype(np.int64)  # a way back to a lead is no skin
    closing = draw_lines(cuts, np.flatnonzero(pick_closing(cuts, levels)), by=nearly)
    stretches = find_stretches(cuts, through, closing, kerfs)
    narrow = float(min(through.radius.min(initial=3.0), closing.radius.min(initial=3.0)))
    thin = 2 * THIN_SHARE * narrow
    closed, open_ = _close_tabs(kerfs, stretches, thin, edge)
    stubs = open_.pick(open_.lifted | _pick_along_skins(open_, closed.stretches))
    face = _find_stub_faces(closed.faces, stubs)
    if not (face >= 0).any():
        return closed
    return _close_stubs(closed, stubs.pick(face >= 0), face[face >= 0], kerfs, thin, edge)


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


def _close_tabs(
    kerfs: Shapes, stretches: Stretches, thin_mm: float, sheet: shapely.Geometry | None
) -> tuple[Closed, Stretches]:
    """Closes each stretch whose closing parts one face in two; gives the others too."""
    tree = shapely.STRtree(kerfs)
    left = right = np.zeros(0, int)
    united, open_ = unite((kerfs, widen_stretches(stretches))), [stretches.pick(left)]
    for _ in range(ROUNDS):
        faces = find_faces(united, thin_mm, sheet)
        if not len(stretches):
            break
        left, right = find_sides(stretches, faces, tree)
        holds = (left != right) & ~_pick_idle(stretches, faces, left, right)
        holds &= ~_pick_webs(stretches, faces, left, right, holds)
        holds &= ~_pick_longer(stretches, holds)
        if holds.all():
            break
        open_.append(stretches.pick(~holds))
        stretches, left, right = stretches.pick(holds), left[holds], right[holds]
        united = _reopen(united, open_[-1], kerfs, stretches)
    return Closed(faces, stretches, left, right), join_stretches(open_)


def _close_stubs(
    closed: Closed, stubs: Stretches, face: Ints, kerfs: Shapes, thin_mm: float,
    sheet: shapely.Geometry | None,
) -> Closed:  # fmt: skip
    """Closes stubs too: what is left under each belongs to no part, though nothing hangs on it;
    `face` is that of the part which it is left on.
    """
    swept = widen_stretches(stubs)
    united = unite((closed.faces.kerfs, swept))
    # a place of each part that no stub takes: in a narrow slug it would lie in what is around
    left = shapely.difference(closed.faces.ring[face], shapely.union_all(swept))
    gone = shapely.is_empty(left)
    left[gone] = closed.faces.ring[face[gone]]
    inner = shapely.get_coordinates(shapely.point_on_surface(left))
    faces = find_faces(united, thin_mm, sheet)
    sides = find_sides(closed.stretches, faces, shapely.STRtree(kerfs))
    own = faces.find_at(inner)
    return Closed(
        faces,
        join_stretches((closed.stretches, stubs)),
        np.concatenate((sides[0], own)),
        np.concatenate((sides[1], np.full(len(own), NOTHING))),
    )


def _reopen(united: Shapes, dropped: Stretches, kerfs: Shapes, stretches: Stretches) -> Shapes:
    """Unites anew the cuts that dropped stretches lie in."""
    _, at = shapely.STRtree(united).query(dropped.shape, predicate="intersects")
    touched = np.zeros(len(united), dtype=bool)
    touched[at] = True
    tree = shapely.STRtree(united[touched])
    again = []
    for some in (kerfs, widen_stretches(stretches)):
        near = some[np.unique(tree.query(some)[0])]
        inside, _ = tree.query(shapely.point_on_surface(near), "intersects")  # never on an edge
        again.append(near[np.unique(inside)])
    return np.concatenate((united[~touched], unite(again)))


def _pick_idle(stretches: Stretches, faces: Faces, left: Ints, right: Ints) -> Bools:
    """Picks jumps that free no more than a corner beside them: of those around one corner the
    longest, and those over it, as each lap leaves between its lead out and the next lead in;
    another may hold once the corner is part of what lies beside it.
    """
    idle = np.zeros(len(stretches), dtype=bool)
    if not len(faces):
        return np.ones(len(stretches), dtype=bool)
    wide = shapely.length(stretches.whole)
    least = 4 * stretches.radius * wide
    jumped = (stretches.top == np.inf) & (left != right)
    beside = np.concatenate((left, right))
    small = np.tile(jumped, 2) & (beside >= 0) & (faces.size[beside] <= np.tile(least, 2))
    some, corner = np.flatnonzero(small) % len(stretches), beside[small]
    order = np.argsort(-wide[some], kind="stable")
    _, first, of = np.unique(corner[order], return_index=True, return_inverse=True)
    longest = some[order[first]][of]
    some = some[order]
    middle = shapely.line_interpolate_point(stretches.whole, 0.5, normalized=True)
    over = shapely.distance(middle[some], middle[longest]) < stretches.radius[some]
    idle[some[over & (wide[some] > OVER_SHARE * wide[longest])]] = True
    return idle


def _pick_webs(stretches: Stretches, faces: Faces, left: Ints, right: Ints, holds: Bools) -> Bools:
    """Picks jumps between slots within a part: no tabs, for those that hold the parts of this
    sheet are made otherwise, or of another width. What the bit goes over at feed is one.
    """
    jumped = stretches.top == np.inf
    inner = (left >= 0) & (right >= 0)
    parent = np.append(faces.parent, SKELETON)
    inner &= (parent[left] == right) | (parent[right] == left)
    wide = shapely.length(stretches.shape) - _measure_roll(stretches)
    outer = wide[holds & ~inner & jumped]
    usual = float(np.median(outer)) if len(outer) else -np.inf
    odd = jumped & ~stretches.lifted & (np.abs(wide - usual) > SAME_TAB_MM)
    return np.asarray(inner & odd)


def _pick_longer(stretches: Stretches, holds: Bools) -> Bools:
    """Picks jumps from a cut's end where a nearer one holds already: it has one tab."""
    longer = np.zeros(len(stretches), dtype=bool)
    some = np.flatnonzero(holds)
    wide = shapely.length(stretches.shape)
    jumped = stretches.top == np.inf
    for end, runs in ((0, stretches.run), (-1, stretches.to_run)):
        place = shapely.get_point(stretches.shape[some], end)
        one, other = shapely.STRtree(place).query(place, "dwithin", LEAST_GAP_MM)
        far = wide[some[one]] > LONGER * wide[some[other]]
        longer[some[one[far]]] = True
        least = np.full(int(runs.max(initial=0)) + 1, np.inf)
        own = some[jumped[some]]
        np.minimum.at(least, runs[own], wide[own])
        longer[own] |= wide[own] > LONGER * least[runs[own]]
    return np.asarray(longer & jumped)


def _measure_roll(stretches: Stretches) -> Floats:
    """Measures how much longer ways over corners are drawn than a bit that rolls around goes."""
    longer = np.zeros(len(stretches))
    for n in np.flatnonzero(shapely.get_num_points(stretches.shape) == 3).tolist():
        one, corner, other = shapely.get_coordinates(stretches.shape[n])
        a, b = complex(*(corner - one)), complex(*(other - corner))
        turn = min(abs(float(np.angle(b / a))), np.pi / 2) if a and b else 0.0
        longer[n] = stretches.radius[n] * (2 * np.tan(turn / 2) - turn)
    return longer
