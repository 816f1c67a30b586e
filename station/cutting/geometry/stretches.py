"""Stretches that nothing cuts through: cut less deep, or jumped over, between two cuts that do.

Each could be a tab or a skin; else it is only a way in, or a step from hole to hole.
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
from station.cutting.geometry.jumps import LEAST_GAP_MM, SAME_WAY_MM, WIDEST_GAP_MM, find_jumps
from station.cutting.geometry.strokes import Cuts, Lines, Shapes
from station.cutting.model import Bools, Floats, Ints

LEAST_MM = 0.01  # a shorter stretch is none
PLAIN_TAB_MM = 12.0  # a tab that is jumped over is not wider, or a small part of the cuts beside
GAP_SHARE = 0.2
MOST_TAKEN = 3.0  # radii of a jump over a tab that cuts take: the bit is round at both its ends
OTHER_SIDE = 1.5  # times a jump as long, a way along a lap goes around by the other side
SAME_PLACE_MM = 1e-6
PASSED_MM, ROUNDABOUT = 2.0, 1.5  # what goes another way is longer; so many times as long at most
MANY_ROUNDS = 2.5 * pi  # by which a line turns that is parted
ROUND = 1.9 * pi  # by which each part of it turns


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


def join_stretches(some: Sequence[Stretches]) -> Stretches:
    """Puts stretches one after another."""
    names = Stretches.__dataclass_fields__
    return Stretches(*(np.concatenate([getattr(s, name) for s in some]) for name in names))


def widen_stretches(stretches: Stretches) -> Shapes:
    """Gives what the bit would take along each stretch."""
    if not len(stretches):
        return np.zeros(0, object)
    made: Shapes = shapely.buffer(stretches.whole, stretches.radius, quad_segs=16)
    return made


def find_stretches(cuts: Cuts, through: Lines, closing: Lines, kerfs: Shapes) -> Stretches:
    """Finds all stretches that could hold something: cut less deep, or jumped over."""
    left = _drop_passed(find_left(closing.shape, kerfs), closing.radius, through)
    less = _find_less_deep(cuts, closing, left, through)
    jumps, before, after, fed = find_jumps(cuts, through)
    jumps = _follow_laps(jumps, closing.shape)
    gaps, of = subtract_kerfs(jumps, kerfs)
    alone = np.bincount(of, minlength=len(jumps))[of] == 1  # else it passes another cut
    beside = (shapely.length(through.shape[line]) for line in (before[of], after[of]))
    wide = shapely.length(gaps)
    narrow = (wide <= PLAIN_TAB_MM) | (wide < GAP_SHARE * sum(beside))
    taken = shapely.length(jumps)[of] - wide  # else it goes along another cut, to another part
    straight = shapely.get_num_points(jumps)[of] == 2  # a lead beside it may take some of it too
    some = alone & narrow & (straight | (taken < MOST_TAKEN * through.radius[before[of]]))
    gaps, of = gaps[some], of[some]
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
        if (
            way.length < OTHER_SIDE * jumps[some[n]].length
        ):  # else it goes around by the other side
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
    left, round_ = subtract_kerfs(rounds, kerfs)
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


def _drop_passed(left: Left, radius: Floats, through: Lines) -> Left:
    """Drops what lies beside one cut through the sheet that goes on from its one end to its other:
    a pass that went another way there. Over a tab no cut goes on. `radius` is that of each line.
    """
    long = shapely.length(left.shape)
    some = np.flatnonzero(long > PASSED_MM)
    if not len(some) or not len(through):
        return left
    tree, reach = shapely.STRtree(through.shape), radius[left.of[some]] + LEAST_GAP_MM
    ends = [shapely.get_point(left.shape[some], at) for at in (0, -1)]
    one, other = (set(zip(*tree.query(end, "dwithin", distance=reach).tolist(), strict=True))
                  for end in ends)  # fmt: skip
    pairs = np.array(sorted(one & other), dtype=np.int64).reshape(-1, 2)
    n, line = pairs.T
    at, to = (shapely.line_locate_point(through.shape[line], end[n]) for end in ends)
    middle = shapely.line_interpolate_point(left.shape[some[n]], 0.5, normalized=True)
    beside = shapely.distance(middle, through.shape[line]) > reach[n] + PASSED_MM / 2
    passed = beside & (np.abs(to - at) < ROUNDABOUT * long[some[n]] + 2 * reach[n])
    kept = np.ones(len(long), dtype=bool)
    kept[some[n[passed]]] = False
    shape, of, start, end, laps = left
    return Left(shape[kept], of[kept], start[kept], end[kept], laps[kept])


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


def subtract_kerfs(lines: Shapes, kerfs: Shapes) -> tuple[Shapes, Ints]:
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


def _find_less_deep(cuts: Cuts, lines: Lines, left: Left, through: Lines) -> Stretches:
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
