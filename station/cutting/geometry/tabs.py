"""Tabs and skins: what is left between two faces where a cut does not go through.

A stretch is cut less deep, or jumped over, between two cuts that go through. It is a tab where
closing it frees something; else it is only a way in, or a step from hole to hole.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import pi
from typing import NamedTuple

import numpy as np
import shapely
from shapely.ops import substring

from station.cutting.compiled import compile_entry
from station.cutting.geometry.faces import SKELETON, Faces, find_faces, unite
from station.cutting.geometry.jumps import (
    LEAST_GAP_MM,
    ON_ARC_MM,
    SAME_WAY_MM,
    WIDEST_GAP_MM,
    draw_arc,
    draw_around,
    find_jumps,
)
from station.cutting.geometry.strokes import (
    Cuts,
    Levels,
    Lines,
    Shapes,
    Shorts,
    draw_lines,
    pick_through,
)
from station.cutting.model import CW, LINE, Bools, Floats, Ints, Moves

STRAIGHT_ON = 0.97  # cosine: of a jump that goes on in a straight line, or along chords of an arc
LEAST_TURN = 0.15  # sine: of a jump around a corner
LEAST_MM = 0.01  # a shorter stretch is none
PROBE_MM = 0.05
PROBE_EVERY_MM, MOST_PROBES = 3.0, 5
PROBES_OUT = 10  # thirds of the radius: a whole cut of another skin may lie beside the stretch
ROUNDS = 4
PLAIN_TAB_MM = 12.0  # a tab that is jumped over is not wider, or a small part of the cuts beside
GAP_SHARE = 0.2
LONGER = 1.5  # times as far from the same place is no tab beside the nearer one
LEAST_CONTACT_MM = 0.3  # of a face with what stands under a stretch
LEAST_TAB_MM = 0.2  # a narrower tab breaks while it is cut: common practice, no source
LIFT_MM = 0.05
RISE_MM = 0.03  # by which a bit goes up over a tab at least: a step of its depths may be near
SAME_PLACE_MM = 1e-6
MANY_ROUNDS = 2.5 * pi  # by which a line turns that is parted
ROUND = 1.9 * pi  # by which each part of it turns
SAME_TAB_MM = 0.5  # by which the tabs of one sheet differ at most


@dataclass(frozen=True)
class Stretches:
    """Holds stretches that nothing cuts through, a row each.

    `shape` is the bit's way over what is left, `whole` the same with the ends that other cuts
    round off, `top` the highest it runs there (inf: jumped over), `first` and `stop` positions
    in `Cuts` (those of the cut before a jump).
    """

    shape: Shapes
    whole: Shapes
    radius: Floats
    top: Floats
    ramped: Bools
    first: Ints
    stop: Ints
    run: Ints
    to_run: Ints  # the run after a jump; else the same
    lifted: Bools  # surely the bit's way over a tab, between two cuts through the sheet

    def __len__(self) -> int:
        return len(self.shape)

    def pick(self, some: Bools | Ints) -> Stretches:
        """Gives the chosen rows."""
        return Stretches(*(getattr(self, name)[some] for name in self.__dataclass_fields__))


def find_stretches(cuts: Cuts, through: Lines, closing: Lines, kerfs: Shapes) -> Stretches:
    """Finds all stretches that could hold something: cut less deep, or jumped over."""
    less = _measure_stretches(cuts, closing, find_left(closing.shape, kerfs), through)
    jumps, before, after, fed = find_jumps(cuts, through)
    jumps = _follow_laps(jumps, closing.shape)
    gaps, of = _subtract(jumps, kerfs)
    alone = np.bincount(of, minlength=len(jumps))[of] == 1  # else it passes another cut
    beside = (shapely.length(through.shape[line]) for line in (before[of], after[of]))
    wide = shapely.length(gaps)
    narrow = (wide <= PLAIN_TAB_MM) | (wide < GAP_SHARE * sum(beside))
    gaps, of = gaps[alone & narrow], of[alone & narrow]
    before, after, n = before[of], after[of], len(gaps)
    whole = np.where(fed[of], jumps[of], _add_ends(gaps, jumps[of], through.radius[before]))
    over = Stretches(
        gaps,
        whole,
        through.radius[before],
        np.full(n, np.inf),
        np.zeros(n, dtype=bool),
        through.stop[before] - 1,
        through.stop[before],
        through.run[before],
        through.run[after],
        fed[of],
    )
    return join_stretches((less, over))


def _follow_laps(jumps: Shapes, laps: Shapes) -> Shapes:
    """Draws jumps around a corner as a lap that is cut less deep goes from end to end: only that
    tells how the corner is rounded.
    """
    some = np.flatnonzero(shapely.get_num_points(jumps) > 2)
    if not len(some) or not len(laps):
        return jumps
    made, tree = jumps.copy(), shapely.STRtree(laps)
    ends = [shapely.get_point(jumps[some], at) for at in (0, -1)]
    near = [tree.query(end, predicate="dwithin", distance=SAME_WAY_MM) for end in ends]
    pairs = [set(zip(n.tolist(), lap.tolist(), strict=True)) for n, lap in near]
    for n, lap in sorted(pairs[0] & pairs[1]):
        at = [shapely.line_locate_point(laps[lap], end[n]) for end in ends]
        way = substring(laps[lap], *at)
        if way.length < LONGER * jumps[some[n]].length:  # else it goes around by the other side
            made[some[n]] = way
    return made


class Left(NamedTuple):
    """What is left of lines where nothing goes through, a row each: its shape, of which line it
    is, from where to where along that, and whether that goes round more than once.
    """

    shape: Shapes
    of: Ints
    start: Floats
    end: Floats
    laps: Bools


def find_left(lines: Shapes, kerfs: Shapes) -> Left:
    """Finds what the bit leaves of lines, those that go round several times a lap at a time.

    Laps that lie on one another but for a rounded figure cross in hundreds of places: taken from
    the kerfs at once they would fall into as many pieces.
    """
    rounds, line, first = _part_rounds(lines)
    left, round_ = _subtract(rounds, kerfs)
    ends = [shapely.get_point(left, 0), shapely.get_point(left, -1)]
    start, end = np.sort([shapely.line_locate_point(rounds[round_], e) for e in ends], axis=0)
    start, end, of = start + first[round_], end + first[round_], line[round_]
    laps = (np.bincount(line, minlength=len(lines)) > 1)[of]
    order = np.lexsort((start, of))
    # a lap ends on a tab: what is left before and after that end is one
    goes_on = np.zeros(len(of), dtype=bool)
    before, after = order[:-1], order[1:]
    goes_on[after] = laps[after] & (of[after] == of[before]) & (
        np.abs(start[after] - end[before]) < SAME_PLACE_MM
    )  # fmt: skip
    for n, to in zip(before[goes_on[after]].tolist(), after[goes_on[after]].tolist(), strict=True):
        start[to] = start[n]
        left[to] = substring(lines[of[to]], start[to], end[to])
    kept = np.ones(len(of), dtype=bool)
    kept[before[goes_on[after]]] = False
    return Left(left[kept], of[kept], start[kept], end[kept], laps[kept])


def _part_rounds(lines: Shapes) -> tuple[Shapes, Ints, Floats]:
    """Parts lines that go round more than once; gives the rounds, the line of each, and how far
    along that it begins.
    """
    points, of = shapely.get_coordinates(lines, return_index=True)
    steps, same = np.diff(points, axis=0), of[1:] == of[:-1]
    turns = np.diff(np.unwrap(np.arctan2(steps[:, 1], steps[:, 0])))
    turned = np.zeros(len(points))
    turned[1:-1] = np.where(same[1:] & same[:-1], turns, 0.0)
    sums = np.bincount(of, turned, len(lines))
    if not len(lines) or np.abs(sums).max() < MANY_ROUNDS:
        return lines, np.arange(len(lines)), np.zeros(len(lines))
    made: list[list[tuple[shapely.Geometry, int, float]]] = []
    for n, line in enumerate(lines):
        if abs(sums[n]) < MANY_ROUNDS:
            made.append([(line, n, 0.0)])
            continue
        own = points[of == n]
        rounds = (np.abs(np.cumsum(turned[of == n])) // ROUND).astype(np.int64)
        ways = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(own, axis=0).T))])
        at = [0, *np.flatnonzero(np.diff(rounds) > 0) + 1, len(own) - 1]
        made.append([(shapely.linestrings(own[a : b + 1]), n, float(ways[a]))
                     for a, b in pairwise(at) if b > a])  # fmt: skip
    shapes, line_of, first = zip(*(row for rows in made for row in rows), strict=True)
    return np.array(shapes, dtype=object), np.array(line_of), np.array(first)


def _subtract(lines: Shapes, kerfs: Shapes) -> tuple[Shapes, Ints]:
    """Takes from lines what the bit goes through; gives what is left and of which line it is."""
    left = lines.copy()
    if len(lines) and len(kerfs):
        line, kerf = shapely.STRtree(kerfs).query(lines, predicate="intersects")
        nth = np.arange(len(line)) - np.searchsorted(line, line)
        for k in range(int(nth.max(initial=-1)) + 1):
            at = nth == k
            left[line[at]] = shapely.difference(left[line[at]], kerfs[kerf[at]])
    parts, of = shapely.get_parts(shapely.line_merge(left), return_index=True)
    real = shapely.length(parts) > LEAST_MM
    return parts[real], of[real]


def _add_ends(stretches: Shapes, lines: Shapes, radius: Floats) -> Shapes:
    """Adds to what is left of lines the ends that a bit of that radius rounded off."""
    near = shapely.buffer(stretches, radius + LEAST_GAP_MM)
    made: Shapes = shapely.intersection(lines, near)
    return made


@compile_entry(
    "void(f8[::1], f8[::1], f8[::1], f8[::1], f8[::1], b1[::1], i8[::1], i8[::1], f8[::1],"
    " b1[::1])"
)
def fill_heights(
    flat: Floats, low: Floats, high: Floats, start: Floats, end: Floats, whole: Bools,
    first: Ints, stop: Ints, top: Floats, ramped: Bools,
) -> None:  # fmt: skip
    """Fills in how high the bit runs over each stretch, and whether it climbs or falls there.

    `first` and `stop` are those of its line; they become those of its own cuts, unless it is the
    `whole` line: from `start` to `end` along it, mm.
    """
    for n in range(len(first)):
        begin, after = first[n], stop[n]
        a, b = begin, after
        if not whole[n]:
            way = flat[begin]
            while way < start[n] + LEAST_MM and a < after - 1:
                a += 1
                way += flat[a]
            b = a
            while way < end[n] - LEAST_MM and b < after - 1:
                b += 1
                way += flat[b]
            b += 1
        first[n], stop[n], top[n] = a, b, high[a:b].max()
        for k in range(max(a - 1, begin), min(b + 1, after)):
            ramped[n] |= high[k] - low[k] > LEAST_MM


def _measure_stretches(cuts: Cuts, lines: Lines, left: Left, through: Lines) -> Stretches:
    """Finds over which cuts each stretch lies, and how high the bit runs there."""
    of = left.of
    closed = shapely.length(left.shape) > 0.98 * shapely.length(lines.shape[of])
    first, stop = lines.first[of], lines.stop[of]
    top, ramped = np.zeros(len(of)), np.zeros(len(of), dtype=bool)
    fill_heights(cuts.flat, cuts.low, cuts.high, left.start, left.end, closed, first, stop, top,
                 ramped)  # fmt: skip
    run, line_of = lines.run[of], lines.shape[of]
    between = _pick_between(cuts, through, first, stop)
    lifted = between & (shapely.length(line_of) < WIDEST_GAP_MM)
    whole = line_of.copy()
    whole[~left.laps] = _add_ends(left.shape[~left.laps], line_of[~left.laps],
                                  lines.radius[of][~left.laps])  # fmt: skip
    for n in np.flatnonzero(left.laps).tolist():
        more = float(lines.radius[of[n]]) + LEAST_GAP_MM
        whole[n] = substring(line_of[n], max(0.0, left.start[n] - more), left.end[n] + more)
    whole[lifted] = _join_to_cuts(line_of[lifted], lines.radius[of][lifted], through)
    return Stretches(left.shape, whole, lines.radius[of], top, ramped, first, stop, run,
                     run.copy(), between)  # fmt: skip


def _join_to_cuts(ways: Shapes, radius: Floats, through: Lines) -> Shapes:
    """Draws ways over tabs on to the ends of the cuts beside them, where a step between them lies
    over another that is cut as deep.
    """
    ends = np.concatenate([shapely.get_point(through.shape, at) for at in (0, -1)])
    made, most = ways.copy(), 2 * float(radius.max(initial=1.0))
    for at in (0, -1):
        own = shapely.get_point(ways, at)
        way, end = shapely.STRtree(ends).query_nearest(own, max_distance=most, all_matches=False)
        away = shapely.distance(own[way], ends[end])
        short = (away > LEAST_MM) & (away < radius[way])
        for n, e in zip(way[short].tolist(), end[short].tolist(), strict=True):
            points = [shapely.get_coordinates(made[n]), shapely.get_coordinates(ends[e])]
            made[n] = shapely.linestrings(np.concatenate(points if at else points[::-1]))
    return made


def _pick_between(cuts: Cuts, through: Lines, first: Ints, stop: Ints) -> Bools:
    """Picks stretches before and after which the bit goes through the sheet, on one way that it
    leaves only straight up and down.
    """
    if not len(cuts):
        return np.zeros(0, dtype=bool)
    points, index = cuts.moves.points, cuts.index
    after = np.flatnonzero(index[1:] != index[:-1] + 1) + 1  # the others begin where one ended
    gap = np.abs(points[index[after], :2] - points[index[after - 1] + 1, :2])
    away = np.zeros(len(index), dtype=np.int64)
    away[after] = (gap > SAME_PLACE_MM).any(axis=1)
    way = np.cumsum(away, out=away)
    begins, ends = np.full(way[-1] + 1, len(cuts)), np.full(way[-1] + 1, -1)
    np.minimum.at(begins, way[through.first], through.first)
    np.maximum.at(ends, way[through.first], through.stop)
    own = way[first]
    return np.asarray((begins[own] <= first) & (ends[own] >= stop))


def widen_stretches(stretches: Stretches) -> Shapes:
    """Gives what the bit would take along each stretch."""
    if not len(stretches):
        return np.zeros(0, object)
    made: Shapes = shapely.buffer(stretches.whole, stretches.radius, quad_segs=16)
    return made


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


def close_tabs(
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
        left, right = _find_sides(stretches, faces, tree)
        holds = (left != right) & ~_pick_idle(stretches, faces, left, right)
        holds &= ~_pick_webs(stretches, faces, left, right, holds)
        holds &= ~_pick_longer(stretches, holds)
        if holds.all():
            break
        open_.append(stretches.pick(~holds))
        stretches, left, right = stretches.pick(holds), left[holds], right[holds]
        united = _reopen(united, open_[-1], kerfs, stretches)
    return Closed(faces, stretches, left, right), join_stretches(open_)


def join_stretches(some: Sequence[Stretches]) -> Stretches:
    """Puts stretches one after another."""
    names = Stretches.__dataclass_fields__
    return Stretches(*(np.concatenate([getattr(s, name) for s in some]) for name in names))


def close_stubs(
    closed: Closed, stubs: Stretches, face: Ints, kerfs: Shapes, thin_mm: float,
    sheet: shapely.Geometry | None,
) -> Closed:  # fmt: skip
    """Closes stubs too: what is left under each belongs to no part, though nothing hangs on it;
    `face` is that of the part which it is left on.
    """
    inner = shapely.get_coordinates(shapely.point_on_surface(closed.faces.ring[face]))
    united = unite((closed.faces.kerfs, widen_stretches(stubs)))
    faces = find_faces(united, thin_mm, sheet)
    left, right = _find_sides(closed.stretches, faces, shapely.STRtree(kerfs))
    own = faces.find_at(inner)
    return Closed(
        faces,
        join_stretches((closed.stretches, stubs)),
        np.concatenate((left, own)),
        np.concatenate((right, np.full(len(own), NOTHING))),
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
    longest, for another may hold once the corner is part of what lies beside it.
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
    idle[some[order[np.unique(corner[order], return_index=True)[1]]]] = True
    return idle


def _pick_webs(stretches: Stretches, faces: Faces, left: Ints, right: Ints, holds: Bools) -> Bools:
    """Picks jumps between slots within a part: no tabs, for those that hold the parts of this
    sheet are made otherwise, or of another width.
    """
    jumped = stretches.top == np.inf
    inner = (left >= 0) & (right >= 0)
    parent = np.append(faces.parent, SKELETON)
    inner &= (parent[left] == right) | (parent[right] == left)
    wide = shapely.length(stretches.shape) - _measure_roll(stretches)
    outer = wide[holds & ~inner & jumped]
    usual = float(np.median(outer)) if len(outer) else -np.inf
    return np.asarray(jumped & inner & (np.abs(wide - usual) > SAME_TAB_MM))


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


def _find_sides(stretches: Stretches, faces: Faces, kerfs: shapely.STRtree) -> tuple[Ints, Ints]:
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


AROUND = 1.02  # a way so much longer than the straight one goes around a corner
NOTHING = -3
UNKNOWN = -2  # where another cut goes, or only dust is


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
        open_[rest] = here == UNKNOWN
        open_[rest[kerfs.query(at, predicate="within")[0]]] = False
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


@dataclass(frozen=True)
class LostTab:
    """Holds a tab that the bit was lifted over and that is cut through all the same.

    `lifted` is the position in `Cuts` where it was lifted, `cut` the one that cuts it through:
    the same where the bit's own width does.
    """

    lifted: int
    cut: int
    place: tuple[float, float]


def find_lost_tabs(cuts: Cuts, levels: Levels, through: Lines, kerfs: Shapes) -> list[LostTab]:
    """Finds the tabs that are cut through, by another cut or by the bit's own width."""
    lifts = _find_lifts(cuts, levels)
    jumps, before = _find_jumps_over(cuts, levels, through)
    if not len(through) or not (len(lifts) or len(jumps)):
        return []
    some = [np.arange(a, b) for a, b in lifts.tolist()]
    lines = draw_lines(cuts, np.concatenate(some) if some else np.zeros(0, int))
    ways = np.concatenate((lines.shape, jumps))
    first = np.append(lines.first, before)
    wide = 2 * cuts.radius[first] + LEAST_TAB_MM
    middle = shapely.line_interpolate_point(ways, 0.5, normalized=True)
    taken = _list_taken(ways, middle, kerfs)
    near = dict(zip(taken.tolist(), _find_nearest(through.shape, middle[taken]), strict=True))
    found = []
    for n in taken.tolist():
        lifted = int(first[n])
        own = n < len(lines) and bool(shapely.length(ways[n]) < wide[n])
        if own and cuts.high[lifted - 1] > levels.through:
            continue  # a later lap tells it, if that is as short
        later = _find_later(through, lifted, ways[n])
        line = near[n] if later is None else later
        cut = lifted if own else find_cut_at(cuts, through, line, middle[n])
        x, y = shapely.get_coordinates(middle[n])[0].tolist()
        found.append(LostTab(lifted, cut, (x, y)))
    return found


def _list_taken(ways: Shapes, middle: Shapes, kerfs: Shapes) -> Ints:
    """Lists the ways of which cuts leave no tab. Where none is near the middle, one is left: that
    is quicker to tell than what is left of every way.
    """
    near = np.zeros(len(ways), dtype=bool)
    tree = shapely.STRtree(kerfs)
    near[tree.query(middle, predicate="dwithin", distance=LEAST_TAB_MM)[0]] = True
    some = np.flatnonzero(near | (shapely.length(ways) < 2 * LEAST_TAB_MM))
    left, of = _subtract(ways[some], kerfs)
    rest = np.bincount(of, weights=shapely.length(left), minlength=len(some))
    return some[rest < LEAST_TAB_MM]


def _find_nearest(lines: Shapes, places: Shapes) -> list[int]:
    """Finds the line that is nearest to each place."""
    _, near = shapely.STRtree(lines).query_nearest(places, all_matches=False)
    found: list[int] = near.tolist()
    return found


def _find_later(through: Lines, position: int, way: shapely.Geometry) -> int | None:
    """Finds the first line through the sheet after a position of the cuts along a way."""
    later = np.flatnonzero(through.first > position)
    places = shapely.line_interpolate_point(way, [0.25, 0.5, 0.75], normalized=True)
    away = shapely.distance(through.shape[later, None], places)
    along = later[(away < ON_ARC_MM).all(axis=1)]
    return int(along[0]) if len(along) else None


def _find_jumps_over(cuts: Cuts, levels: Levels, through: Lines) -> tuple[Shapes, Ints]:
    """Finds ways over the sheet between two cuts, at feed, or by a rapid straight on or from arc
    to arc: cuts of one depth that do not go through, or through ones where a later cut goes along
    that way.
    """
    if len(cuts) < 2:
        return np.zeros(0, object), np.zeros(0, int)
    moves, index = cuts.moves, cuts.index
    before = _list_jumped(cuts, levels, through)
    end, start = moves.points[index[before] + 1, :2], moves.points[index[before + 1], :2]
    away = start - end
    far = np.hypot(*away.T)
    straight = np.ones(len(before), dtype=bool)
    for run in (
        end - moves.points[index[before], :2],
        moves.points[index[before + 1] + 1, :2] - start,
    ):
        size = np.maximum(np.hypot(*run.T), 1e-9)
        straight &= (run * away).sum(axis=1) > STRAIGHT_ON * far * size
    ways = [
        _draw_way_over(moves, int(index[b]), int(index[b + 1]), straight=bool(straight[n]))
        for n, b in enumerate(before.tolist())
    ]
    drawn = np.array([w is not None for w in ways], dtype=bool)
    jumps = np.array([shapely.linestrings(w) for w in ways if w is not None], dtype=object)
    before, far = before[drawn], shapely.length(jumps)
    good = (far > 2 * cuts.radius[before] + LEAST_TAB_MM) & (far < WIDEST_GAP_MM)
    deep = cuts.high[before] <= levels.through
    for n in np.flatnonzero(good).tolist():
        b = int(before[n])
        good[n] = not _is_cut_already(cuts, b, jumps[n])
        good[n] &= not deep[n] or _find_later(through, b, jumps[n]) is not None
    return jumps[good], before[good]


def _list_jumped(cuts: Cuts, levels: Levels, through: Lines) -> Ints:
    """Lists the cuts after which the bit goes over the sheet to another near by that may end a
    tab: of the same depth; or both go through, and a later line may pass where they end.
    """
    moves, index, deep = cuts.moves, cuts.index, pick_through(cuts, levels)
    level = (np.abs(np.diff(cuts.high)) < LIFT_MM) & ~deep[:-1]
    jumped = (np.diff(cuts.run) == 1) & (level | (deep[:-1] & deep[1:]))
    before = np.flatnonzero(jumped & (moves.tool[index[1:]] == moves.tool[index[:-1]]))
    ends = moves.points[index[before] + 1, :2], moves.points[index[before + 1], :2]
    near = np.hypot(*(ends[1] - ends[0]).T) < WIDEST_GAP_MM
    before, low, high = before[near], np.minimum(*ends)[near], np.maximum(*ends)[near]
    boxes, around = shapely.box(*low.T, *high.T), shapely.bounds(through.shape)
    around += [-ON_ARC_MM, -ON_ARC_MM, ON_ARC_MM, ON_ARC_MM]
    jump, line = shapely.STRtree(shapely.box(*around.T)).query(boxes, predicate="within")
    later = through.first[line] > before[jump]
    kept = ~deep[before]
    kept[jump[later]] = True
    return np.asarray(before[kept])


def _is_cut_already(cuts: Cuts, last: int, way: shapely.Geometry) -> bool:
    """Tells whether the run that ends with a cut went along a way itself, as deep: it ran past
    its own start, and leaves no tab.
    """
    first = int(np.searchsorted(cuts.run, cuts.run[last]))
    some = np.arange(first, last + 1)
    lines = draw_lines(cuts, some[cuts.high[some] < cuts.high[last] + LIFT_MM])
    middle = shapely.line_interpolate_point(way, 0.5, normalized=True)
    return bool((shapely.distance(lines.shape, middle) < ON_ARC_MM).any())


def _draw_way_over(moves: Moves, one: int, other: int, *, straight: bool) -> Floats | None:
    """Draws the way that the bit goes over between two cuts; None where that is no way on."""
    if (moves.kind[one + 1 : other] == LINE).all():
        return moves.points[one + 1 : other + 1, :2]
    end, start = moves.points[one + 1, :2], moves.points[other, :2]
    centre, sweep = moves.centre[one], float(moves.sweep[one])
    bent = (moves.kind[[one, other]] >= CW).all() and sweep * moves.sweep[other] > 0
    if bent and np.hypot(*(centre - moves.centre[other])) < ON_ARC_MM:
        way = draw_arc(end, start, centre, sweep > 0)
        half = (way[len(way) // 2] - centre) @ (end + start - 2 * centre) > 0
        return way if half else None  # more than half around: back over its own start
    if (moves.kind[[one, other]] >= CW).sum() == 1:
        ways = end - moves.points[one, :2], moves.points[other + 1, :2] - start
        around = draw_around(moves, one, other, (end, ways[0], start, ways[1]))
        return None if around is None else np.stack(around)
    if straight:
        return np.stack((end, start))
    return _turn_corner(
        end, end - moves.points[one, :2], start, moves.points[other + 1, :2] - start
    )


def _turn_corner(end: Floats, leave: Floats, start: Floats, arrive: Floats) -> Floats | None:
    """Gives the way around the corner where two straight cuts meet ahead; None: nowhere."""
    u, v, away = (complex(*way) for way in (leave, arrive, start - end))
    cross = (u.conjugate() * v).imag
    if abs(cross) <= LEAST_TURN * abs(u) * abs(v):  # one may be no way at all
        return None
    ahead, back = ((away.conjugate() * v).imag / cross, (away.conjugate() * u).imag / cross)
    return np.stack((end, end + leave * ahead, start)) if ahead > 0 > back else None


@compile_entry("void(f8[::1], i8[::1], i4[::1], i4[::1])")
def fill_lifts(high: Floats, run: Ints, ends: Shorts, work: Shorts) -> None:
    """Fills in for each cut up to which the bit goes up the first later one of its run that is
    as low again as the one before; -1: there is none. `work` is room for as many cuts.

    What goes up and down by steps, as chords of a slope are, is one.
    """
    count = 0  # of those that went up and are not down again, the lowest first
    for k in range(len(high)):
        ends[k] = -1
        if k == 0 or run[k] != run[k - 1]:
            count = 0
            continue
        while count and high[k] < high[work[count - 1] - 1] + RISE_MM:
            ends[work[count - 1]] = k
            count -= 1
        if high[k] > high[k - 1] + RISE_MM:
            work[count] = k
            count += 1


def _find_lifts(cuts: Cuts, levels: Levels) -> Ints:
    """Finds where the bit goes up within a run and down again within a tab's width: from, to."""
    high, found, work = cuts.high, *np.empty((2, len(cuts)), dtype=np.int32)
    fill_lifts(high, cuts.run, found, work)
    up = np.flatnonzero(found >= 0)
    ends, way = found[up], np.append(0.0, np.cumsum(cuts.flat))
    good = way[ends] - way[up] < WIDEST_GAP_MM
    good &= np.abs(high[up - 1] - high[ends]) < LIFT_MM
    good &= high[up - 1] < levels.face - LIFT_MM
    up, ends = up[good], ends[good]
    ends, first = np.unique(ends, return_index=True)  # one that goes up by steps is one
    return np.column_stack((up[first], ends))


def find_cut_at(cuts: Cuts, lines: Lines, line: int, place: shapely.Geometry) -> int:
    """Finds the cut of a line that passes a place."""
    at = float(shapely.line_locate_point(lines.shape[line], place))
    way = np.cumsum(cuts.flat[lines.first[line] : lines.stop[line]])
    return int(lines.first[line] + min(np.searchsorted(way, at), len(way) - 1))
