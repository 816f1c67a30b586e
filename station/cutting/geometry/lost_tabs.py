"""Tabs that the bit was lifted over and that are cut through all the same."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely

from station.cutting.compiled import compile_entry
from station.cutting.geometry.jumps import ON_ARC_MM, WIDEST_GAP_MM, draw_arc, draw_around
from station.cutting.geometry.stretches import subtract_kerfs
from station.cutting.geometry.strokes import (
    Cuts,
    Levels,
    Lines,
    Shapes,
    Shorts,
    draw_lines,
    find_cut_at,
    pick_through,
)
from station.cutting.model import CW, LINE, Floats, Ints, Moves

STRAIGHT_ON = 0.97  # cosine: of a jump that goes on in a straight line, or along chords of an arc
LEAST_TURN = 0.15  # sine: of a jump around a corner
LEAST_TAB_MM = 0.2  # a narrower tab breaks while it is cut: common practice, no source
LIFT_MM = 0.05
RISE_MM = 0.03  # by which a bit goes up over a tab at least: a step of its depths may be near


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
    left, of = subtract_kerfs(ways[some], kerfs)
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
    before = np.flatnonzero(np.diff(cuts.run) == 1)
    level = np.abs(cuts.high[before + 1] - cuts.high[before]) < LIFT_MM
    jumped = np.where(deep[before], deep[before + 1], level)
    before = before[jumped & (moves.tool[index[before + 1]] == moves.tool[index[before]])]
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
