"""Jumps over tabs: the ways between two cuts that go on where the one before ended."""

from __future__ import annotations

from collections.abc import Collection

import numpy as np
import shapely

from station.cutting.geometry.strokes import CHORD_MM, CLOSE_MM, Cuts, Lines, Shapes, lay_points
from station.cutting.model import CW, RAPID, Bools, Complexes, Floats, Ints, Moves

WIDEST_GAP_MM = 40.0  # a longer way between two cuts is no tab
LEAST_GAP_MM = 0.02
ALONG = 0.3  # cosine: a jump over a tab goes on about as the cut before it ended
IN_LINE = 0.9999  # cosine: the same of a jump that surely does
BACK = -0.7  # cosine: around a corner it may go back by so much
SWERVE = 0.35  # sine: a jump that turns by more to one side, then back, leads elsewhere
BEND = 0.15  # sine: a jump that turns more goes around a corner
MOST_TABS = 16  # of one contour that is jumped over them
ON_ARC_MM = 0.1
MOST_FED = 40  # moves of a way over a tab that is gone at feed
STRAIGHT_ON = 0.95  # cosine: it goes on as the cut before ended, and so into the next
MOUTH = 3.0  # of the bit's radius: how far apart the two sides of a narrow mouth are cut at most
SAME_LINE_MM = 0.004  # by which two ends of one side lie off each other where they are rounded
AHEAD_MM, SAME_WAY_MM = 1.0, 0.02  # so far on no cut goes the same way
LEAST_TURN, MOST_TURN = 0.002, 0.45  # radians from chord to chord of a curve
SAME_TURN = 0.1  # radians by which the way over a gap may turn more or less than its curve does
MOST_BEND = 3.0  # radians by which a curve would turn over a gap in it
CURVE_POINTS = 17


def find_jumps(cuts: Cuts, through: Lines) -> tuple[Shapes, Ints, Ints, Bools]:
    """Finds jumps that go on as the cut before ended: their ways, the line before and after, and
    whether they surely go so: the bit itself went that way, or there is no other.
    """
    before, after = _pair_runs(through)
    if not len(before):
        return np.zeros(0, object), before, after, np.zeros(0, dtype=bool)
    tool = cuts.moves.tool[cuts.index[through.first]]
    first, second, last_but_one, last = (
        shapely.get_coordinates(shapely.get_point(through.shape, at)) for at in (0, 1, -2, -1)
    )
    end, start = last[before], first[after]
    away = start - end
    far = np.maximum(np.hypot(*away.T), 1e-9)
    leave, arrive = end - last_but_one[before], second[after] - start
    same = tool[before] == tool[after]
    good, straight = _pick_onward(away, far, (leave, arrive))
    good &= same
    sure = same & (straight | (far < CLOSE_MM))
    good &= far <= _find_least(before, after, sure, far)  # else it goes on straight, or closes
    straight_next = sure & (after == before + 1)
    most = _find_least(before, after, straight_next, far) + SAME_WAY_MM
    fed = _draw_fed_ways(cuts, through, before, after, far)
    turns = same & (after == before + 1) & (far > LEAST_GAP_MM)
    turns &= _pick_turns(end, leave, start, arrive, MOUTH * through.radius[before])
    turns[list(fed)], good[list(fed)] = False, True
    some = np.flatnonzero(good | turns)
    ends = {i: (end[i], leave[i], start[i], arrive[i]) for i in some.tolist()}
    ways = {
        i: fed.get(i) or _draw_jump(cuts, through, int(before[i]), int(after[i]), ends[i])
        for i in some[~turns[some]].tolist()
    }
    ways = _drop_cut_ways(cuts, through, ways, (before, after), fed)
    lengths = [shapely.length(way) for way in ways.values() if way is not None]
    usual = float(np.median(lengths)) if lengths else 0.0
    ways |= {i: _draw_turn(ends[i], usual) for i in np.flatnonzero(turns).tolist()}
    made = np.array([ways.get(i) for i in some.tolist()], dtype=object)
    kept = shapely.length(made) < most[some]  # what is not drawn has no length
    some = some[kept]
    return made[kept], before[some], after[some], turns[some] | np.isin(some, list(fed))


def _pick_onward(away: Floats, far: Floats, ways: tuple[Floats, Floats]) -> tuple[Bools, Bools]:
    """Picks jumps that go about as the cuts at both their ends do, and those that go straight."""
    good = (far > LEAST_GAP_MM) & (far <= WIDEST_GAP_MM)
    straight = good.copy()
    for way in ways:
        along = (way * away).sum(axis=1) / (far * np.maximum(np.hypot(*way.T), 1e-9))
        good &= along > BACK
        straight &= along > IN_LINE
    return good, straight


def _pick_turns(
    end: Floats, leave: Floats, start: Floats, arrive: Floats, widest: Floats
) -> Bools:
    """Picks jumps around the end of a mouth not wider than that: straight back beside the cut."""
    u, v = (way / np.maximum(np.hypot(*way.T), 1e-9)[:, None] for way in (leave, arrive))
    away = start - end
    across = np.abs(u[:, 0] * away[:, 1] - u[:, 1] * away[:, 0])
    back = ((u * v).sum(axis=1) < -STRAIGHT_ON) & (np.hypot(*away.T) <= WIDEST_GAP_MM)
    return np.asarray(back & (across <= widest) & (across > LEAST_GAP_MM))


def _find_least(before: Ints, after: Ints, some: Bools, far: Floats) -> Floats:
    """Finds for each pair how far the chosen ones go that have an end with it in common."""
    most = np.full(len(far), np.inf)
    for ends in (before, after):
        least = np.full(int(ends.max(initial=0)) + 1, np.inf)
        np.minimum.at(least, ends[some], far[some])
        most = np.minimum(most, least[ends])
    return most


def _pair_runs(through: Lines) -> tuple[Ints, Ints]:
    """Pairs the last line of each run with the first of the next, and the last of a chain of
    runs with its first.
    """
    n = len(through)
    if not n:
        return np.zeros(0, int), np.zeros(0, int)
    last = np.flatnonzero(np.append(np.diff(through.run) != 0, True))
    first = np.append(0, last[:-1] + 1)
    back = range(min(MOST_TABS, len(last)))
    before = np.concatenate((last[:-1], *(last[k:] for k in back)))
    after = np.concatenate((first[1:], *(first[: len(first) - k] for k in back)))
    return before, after


def _draw_fed_ways(
    cuts: Cuts, through: Lines, before: Ints, after: Ints, far: Floats
) -> dict[int, shapely.Geometry]:
    """Draws the ways between two cuts that the bit itself goes at feed, straight on, as over a
    tab; by the position of their pair.
    """
    moves, one = cuts.moves, cuts.index[through.stop[before] - 1]
    other = cuts.index[through.first[after]]
    near = (other > one + 1) & (other - one < MOST_FED) & (far <= WIDEST_GAP_MM)
    made: dict[int, shapely.Geometry] = {}
    for pair in np.flatnonzero(near & (moves.tool[one] == moves.tool[other])).tolist():
        index = np.arange(one[pair] + 1, other[pair])
        step = np.hypot(*(moves.points[index + 1, :2] - moves.points[index, :2]).T)
        index = index[(step > 1e-9) | (moves.kind[index] >= CW)]
        if not len(index) or (moves.kind[index] == RAPID).any():
            continue
        points, _ = lay_points(moves, index, np.arange(len(index)) == 0, CHORD_MM)
        way = shapely.linestrings(points)
        ends = through.shape[before[pair]], through.shape[after[pair]]
        if shapely.length(way) < WIDEST_GAP_MM and _goes_on(way, *ends):
            made[pair] = way
    return made


def _goes_on(way: shapely.Geometry, before: shapely.Geometry, after: shapely.Geometry) -> bool:
    """Tells whether a way goes on as the line before it ends, and so into the line after it."""
    own, last, first = (shapely.get_coordinates(line) for line in (way, before, after))
    for one, other in (
        (last[-1] - last[-2], own[1] - own[0]),
        (own[-1] - own[-2], first[1] - first[0]),
    ):
        if one @ other < STRAIGHT_ON * np.hypot(*one) * np.hypot(*other):
            return False
    return True


def _drop_cut_ways(
    cuts: Cuts,
    through: Lines,
    ways: dict[int, shapely.Geometry | None],
    lines: tuple[Ints, Ints],
    fed: Collection[int],
) -> dict[int, shapely.Geometry]:
    """Drops ways that begin or end along a cut through the sheet: they lead elsewhere, as from a
    contour that ran past its own start. Short ones close a gap.

    Others may cut along a tab too. `lines` are those before and after each pair: their own
    contour has gone over its start before the way, or comes back over it later. Of a way that the
    bit goes at feed (`fed`) only what no rapid parts is its own.
    """
    drawn = {pair: way for pair, way in ways.items() if way is not None}
    pairs, shapes = np.array(list(drawn), dtype=int), np.array(list(drawn.values()), dtype=object)
    long = shapely.length(shapes) > 2 * AHEAD_MM
    if not long.any():
        return drawn
    tree, cut = shapely.STRtree(through.shape), np.zeros(len(shapes), dtype=bool)
    rapid = np.flatnonzero(cuts.moves.kind == RAPID) if fed else np.zeros(0, int)
    goes = np.isin(pairs, list(fed))
    lift, last, first = np.searchsorted(rapid, cuts.index[through.first]), *lines
    for at in (AHEAD_MM, -AHEAD_MM):
        place = shapely.line_interpolate_point(shapes, at)
        way, line = tree.query(place, predicate="dwithin", distance=SAME_WAY_MM)
        pair = pairs[way]
        own = np.where(at > 0, line <= last[pair], line >= first[pair])
        back = first[pair] <= last[pair]  # from the end of a chain to its start
        own[back] = ((line >= first[pair]) & (line <= last[pair]))[back]
        own[goes[way]] = (lift[line] == lift[last[pair]])[goes[way]]
        cut[way[own]] = True
    kept = (~cut | ~long).tolist()
    return {pair: way for (pair, way), keep in zip(drawn.items(), kept, strict=True) if keep}


def _draw_jump(
    cuts: Cuts, through: Lines, before: int, after: int, ends: tuple[Floats, ...]
) -> shapely.Geometry | None:
    """Draws the way over a gap as the cuts before and after it go on: along their arc or curve,
    or around the corner where they meet ahead, else straight; None where they do not go on so.
    """
    end, leave, start, arrive = ends
    u, v = leave / np.hypot(*leave), arrive / np.hypot(*arrive)
    one, other = cuts.index[through.stop[before] - 1], cuts.index[through.first[after]]
    around = draw_around(cuts.moves, int(one), int(other), ends)
    if around is not None:
        return _keep_short(around)
    curve = _draw_curve(through.shape[before], through.shape[after])
    seems = curve is not None and not _lies_on(end, u, start, v)
    if seems and curve:
        return _keep_short(curve)
    away = start - end
    cross = u[0] * v[1] - u[1] * v[0]
    if abs(cross) > BEND:
        ahead = (away[0] * v[1] - away[1] * v[0]) / cross
        back = (away[0] * u[1] - away[1] * u[0]) / cross
        if ahead > SAME_LINE_MM and -back > SAME_LINE_MM:
            return _keep_short([end, end + u * ahead, start])
        if min(ahead, -back) > -SAME_LINE_MM:  # one of the cuts ends at the corner
            return _keep_short([end, start])
    if seems or min(u @ away, v @ away) < ALONG * np.hypot(*away) or _swerves(u, away, v):
        return None
    return shapely.linestrings([end, start])


def _swerves(u: Floats, away: Floats, v: Floats) -> bool:
    """Tells whether a jump turns to one side and back to the other: it goes to another cut."""
    w = away / np.hypot(*away)
    into, out = float(u[0] * w[1] - u[1] * w[0]), float(w[0] * v[1] - w[1] * v[0])
    return into * out < -(SWERVE**2)


def draw_around(
    moves: Moves, one: int, other: int, ends: tuple[Floats, ...]
) -> list[Floats] | None:
    """Draws the way from the end of a cut to the start of another along the arc that either is;
    None where neither is one, or they do not lie along it.

    `ends` are where the first ends, its direction there, where the other starts, its direction.
    """
    end, leave, start, arrive = ends
    bent = moves.kind[[one, other]] >= CW
    if not bent.any():
        return None
    centre, foot, touch = moves.centre[one if bent[0] else other], end, start
    if not bent[0]:
        foot = end + leave * max(0.0, float((centre - end) @ leave) / float(leave @ leave))
    elif not bent[1]:
        touch = start + arrive * min(
            0.0, float((centre - start) @ arrive) / float(arrive @ arrive)
        )
    if abs(np.hypot(*(foot - centre)) - np.hypot(*(touch - centre))) >= ON_ARC_MM:
        return None
    sweep = moves.sweep[one if bent[0] else other]
    return [end, *draw_arc(foot, touch, centre, sweep > 0), start]


def _lies_on(end: Floats, u: Floats, start: Floats, v: Floats) -> bool:
    """Tells whether a gap lies on the straight ways that end and begin at it: then it is in one
    side, whatever bends before.
    """
    away = start - end
    off = max(abs(float(w[0] * away[1] - w[1] * away[0])) for w in (u, v))
    return off < SAME_LINE_MM and float(u @ v) > 0


def _draw_turn(ends: tuple[Floats, ...], usual: float) -> shapely.Geometry | None:
    """Draws the way around the end of a mouth, as long as others over tabs are."""
    end, leave, start, _ = ends
    u = leave / np.hypot(*leave)
    along = float((start - end) @ u)
    across = float(np.hypot(*(start - end - along * u)))
    ahead = max(0.0, along) + max(0.0, usual - across - abs(along)) / 2
    return _keep_short([end, end + u * ahead, start + u * (ahead - along), start])


def _draw_curve(before: shapely.Geometry, after: shapely.Geometry) -> list[Floats] | None:
    """Draws the way over a gap in a curve that was cut by chords; None where it bends more, or
    less, than the chords beside it; no points where two curves only seem to go on so.
    """
    ends = [shapely.get_coordinates(before)[-3:], shapely.get_coordinates(after)[2::-1]]
    if min(map(len, ends)) < 3:
        return None
    (a, u, bend), (b, w, other) = (
        _find_tangent(points[:, 0] + 1j * points[:, 1]) for points in ends
    )
    v, far = -w, abs(b - a)
    turn = float(np.angle(v / u))
    expected = (bend - other) / 2 * far
    if not (bend or other) or abs(turn - expected) > max(SAME_TURN, abs(expected)):
        return None
    lean = float(np.angle((b - a) / u)) if far else 0.0  # of its chord: half of the turn
    tight = max(abs(bend), abs(other)) * far > MOST_BEND  # a bit's roll around a corner
    if tight or abs(lean - turn / 2) > max(SAME_TURN, abs(expected) / 2):
        return []
    handle = far / 3 / np.cos(turn / 4) ** 2
    t = np.linspace(0, 1, CURVE_POINTS)
    way = (1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * (a + handle * u)
    way += 3 * t**2 * (1 - t) * (b - handle * v) + t**3 * b
    return list(np.column_stack((way.real, way.imag)))


def _find_tangent(points: Complexes) -> tuple[complex, complex, float]:
    """Finds where a line of chords ends, in which direction, and by how much it bends there, in
    radians a mm; 0 where its last two chords are no part of a curve.
    """
    one, other = complex(points[1] - points[0]), complex(points[2] - points[1])
    turn = float(np.angle(other / one)) if one and other else 0.0
    if not LEAST_TURN < abs(turn) < MOST_TURN:
        turn = 0.0
    whole = abs(one) + abs(other)
    direction = other / abs(other) * np.exp(1j * turn * abs(other) / whole)
    return complex(points[2]), direction, 2 * turn / whole


def _keep_short(points: list[Floats]) -> shapely.Geometry | None:
    """Draws a way over a gap, unless it is longer than a tab."""
    way = shapely.linestrings(points)
    return way if shapely.length(way) < WIDEST_GAP_MM else None


def draw_arc(start: Floats, end: Floats, centre: Floats, left: bool) -> Floats:  # noqa: FBT001
    """Draws the points of an arc; `left`: counter-clockwise."""
    a, b = complex(*(start - centre)), complex(*(end - centre))
    turn = float(np.angle(b / a)) % (2 * np.pi)
    turn = turn if left else turn - 2 * np.pi
    spokes = a * np.exp(1j * turn * np.linspace(0, 1, 33))
    return np.column_stack((spokes.real, spokes.imag)) + centre
