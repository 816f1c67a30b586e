"""Cuts into other parts: outlines that cross, whole, as a skin or in halves, and strokes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from shapely.ops import substring

from station.cutting.analyse.notes import find_line
from station.cutting.geometry.kinds import PART
from station.cutting.geometry.sheet import Sheet
from station.cutting.geometry.strokes import find_cut_at
from station.cutting.model import RAPID, Problem
from station.shop.words import Say, say

OPEN_SHARE, OPEN_MM = 0.1, 20.0  # of a contour's length, or so much, may lie between its ends
HELD_SHARE = 0.5  # of what a contour goes around, that is part
WHOLE_SHARE = 0.5  # of a contour's way, that is cut through
CROSS_MM = 0.5  # contours that overlap by twice as much cut into each other's parts
LEAD_MM = 0.5  # a way within another part is longer
ALONG_MM = 20.0  # of a part's outline, that a piece of its contour runs along at least
PARTED_MM2 = 300.0  # what a stroke parts off is more
LEAST_POINTS = 3  # of a line that goes around something
APART = 2  # outlines that a stroke goes across
MEET_MM, BOTH_SHARE = 0.05, 0.9  # halves end on each other; so much of them is the outline


@dataclass(frozen=True)
class ClosedWay:
    """Holds a way that goes around something: its line, where it begins in the cuts, and its
    contours (none: a lap that leaves a skin).
    """

    line: shapely.Geometry
    first: int
    contours: tuple[int, ...] = ()

    @cached_property
    def filled(self) -> shapely.Geometry:
        """Gives what is within: worked out when it is asked for, and most ways meet no other."""
        return _fill(self.line)


def find_gouges(sheet: Sheet) -> list[Problem]:
    """Finds cuts into other parts."""
    lines = _draw_contours(sheet)
    around = dict(zip(lines, _find_loops(list(lines.values())), strict=True))
    open_ = {contour: line for contour, line in lines.items() if around[contour] is None}
    loops = [
        *_list_whole(sheet, lines, around),
        *_list_skins(sheet),
        *_list_halves(sheet, open_),
    ]
    parts = _find_parts_around(sheet)
    return [
        *_check_crossings(sheet, loops, parts),
        *_check_leads(sheet, lines, loops, parts),
        *_check_strokes(sheet, lines, loops),
    ]


def _draw_contours(sheet: Sheet) -> dict[int, shapely.Geometry]:
    """Draws the contours of a sheet as lines, all together."""
    ways = {c: way for c, way in sheet.contours.ways.items() if len(way) > 1}
    if not ways:
        return {}
    of = np.repeat(np.arange(len(ways)), [len(way) for way in ways.values()])
    drawn = shapely.linestrings(np.concatenate(list(ways.values())), indices=of)
    return dict(zip(ways, drawn, strict=True))


def _find_parts_around(sheet: Sheet) -> dict[int, set[int]]:
    """Finds the parts that each contour goes around, by their faces."""
    parts: dict[int, set[int]] = {}
    for (contour, face), inside in sheet.around.items():
        if inside and sheet.kinds[face] == PART:
            parts.setdefault(contour, set()).add(face)
    return parts


def _fill(line: shapely.Geometry) -> shapely.Geometry:
    """Gives what a line goes around once its ends are joined."""
    ring = shapely.polygons(shapely.get_coordinates(line))
    return shapely.make_valid(ring, method="structure", keep_collapsed=False)


def _find_loops(lines: Sequence[shapely.Geometry]) -> list[shapely.Geometry | None]:
    """Finds what of lines goes around something: all of one that comes back to where it began, or
    nearly, as over a tab. None: it goes around nothing.
    """
    shapes = np.array(lines, dtype=object)
    away = shapely.distance(*(shapely.get_point(shapes, at) for at in (0, -1)))
    closed = away < np.minimum(OPEN_SHARE * shapely.length(shapes), OPEN_MM)
    many = shapely.get_num_points(shapes) >= LEAST_POINTS
    return [
        (line if whole else _find_last_lap(line)) if some else None
        for line, whole, some in zip(lines, closed.tolist(), many.tolist(), strict=True)
    ]


def _find_last_lap(line: shapely.Geometry) -> shapely.Geometry | None:
    """Finds the last time around of a line that has gone the same way before, as a spiral does;
    None: it does not.
    """
    end, long = shapely.get_point(line, -1), float(shapely.length(line))
    before = substring(line, 0, long - OPEN_MM)
    if long < 2 * OPEN_MM or shapely.distance(before, end) > MEET_MM:
        return None
    at = float(shapely.line_locate_point(before, end))
    loop, first = substring(line, at, long), substring(line, 0, at)
    ends = shapely.points(shapely.get_coordinates(first))
    return loop if shapely.distance(loop, ends).max() < MEET_MM else None


def _list_whole(
    sheet: Sheet,
    lines: dict[int, shapely.Geometry],
    around: dict[int, shapely.Geometry | None],
) -> Iterator[ClosedWay]:
    """Lists contours that close and are cut through most of their way, not only here and there
    on a lap.
    """
    cut: dict[int, float] = {}
    for run, length in zip(
        sheet.through.run.tolist(), shapely.length(sheet.through.shape).tolist(), strict=True
    ):
        contour = sheet.contours.of_run[run]
        cut[contour] = cut.get(contour, 0.0) + length
    for contour, loop in around.items():
        if loop and cut.get(contour, 0.0) > WHOLE_SHARE * shapely.length(lines[contour]):
            yield ClosedWay(loop, sheet.contours.first[contour], (contour,))


def _list_skins(sheet: Sheet) -> Iterator[ClosedWay]:
    """Lists laps that leave a skin."""
    skins = sheet.closed.stretches.pick(sheet.skins)
    for loop, first in zip(_find_loops(list(skins.shape)), skins.first.tolist(), strict=True):
        if loop:
            yield ClosedWay(loop, first)


def _list_halves(sheet: Sheet, open_: dict[int, shapely.Geometry]) -> Iterator[ClosedWay]:
    """Lists rings of open contours that begin and end on each other: outlines in halves. What is
    left is looked at from rapid to rapid: a way over to another outline may have seemed to be a
    tab, or a tab that another cut takes is none.
    """
    used: set[int] = set()
    for ring, line in _join_rings(list(open_.items())):
        used.update(ring)
        yield _make_ring(sheet, ring, line)
    left = open_.keys() - used
    if not left:
        return
    for ring, line in _join_rings([(c, line) for c, line in _list_fed(sheet) if c in left]):
        yield _make_ring(sheet, ring, line)


def _make_ring(sheet: Sheet, ring: list[int], line: shapely.Geometry) -> ClosedWay:
    """Makes the loop of contours that together go around something."""
    return ClosedWay(line, max(sheet.contours.first[c] for c in ring), tuple(ring))


def _list_fed(sheet: Sheet) -> Iterator[tuple[int, shapely.Geometry]]:
    """Lists the ways that cut through the sheet with no rapid between, each with its contour."""
    through, cuts = sheet.through, sheet.cuts
    rapid = np.flatnonzero(cuts.moves.kind == RAPID)
    lift = np.searchsorted(rapid, cuts.index[through.first])
    for way in np.unique(lift).tolist():
        own = np.flatnonzero(lift == way)
        points = shapely.get_coordinates(through.shape[own])
        yield sheet.contours.of_run[int(through.run[own[0]])], shapely.linestrings(points)


def _join_rings(
    ways: list[tuple[int, shapely.Geometry]],
) -> Iterator[tuple[list[int], shapely.Geometry]]:
    """Joins open ways of contours end to end; gives the contours and the line of each ring."""
    links = _link_ends(ways)
    seen: set[int] = set()
    for first in range(len(ways)):
        ring, points, end = [], [], 2 * first
        while end // 2 not in seen:
            seen.add(end // 2)
            name, line = ways[end // 2]
            own = shapely.get_coordinates(line)
            ring.append(name)
            points.append(own[::-1] if end % 2 else own)
            end = links.get(end ^ 1, end ^ 1)
        if len(ring) > 1 and end == 2 * first:
            line = shapely.linestrings(np.concatenate(points))
            around = float(shapely.length(_fill(line)))
            if around > BOTH_SHARE * float(shapely.length(line)):
                yield ring, line


def _link_ends(ways: list[tuple[int, shapely.Geometry]]) -> dict[int, int]:
    """Links the ends of ways, numbered two a way, that lie on each other's ways, the nearest to
    each other first: halves may run on a little after they meet.
    """
    if len(ways) < 2:
        return {}
    shapes = np.array([line for _, line in ways], dtype=object)
    ends = np.column_stack([shapely.get_point(shapes, at) for at in (0, -1)]).ravel()
    found = shapely.STRtree(shapes).query(ends, predicate="dwithin", distance=MEET_MM)
    on = {(end, way) for end, way in found.T.tolist() if end // 2 != way}
    pairs = sorted(
        (float(shapely.distance(ends[end], ends[other])), end, other)
        for end, way in on
        for other in (2 * way, 2 * way + 1)
        if end < other and (other, end // 2) in on
    )
    links: dict[int, int] = {}
    for _, end, other in pairs:
        if end not in links and other not in links:
            links |= {end: other, other: end}
    return links


def _find_meeting(
    some: dict[int, shapely.Geometry], others: dict[int, shapely.Geometry]
) -> list[tuple[int, int]]:
    """Finds the lines of some that meet one of others, and that one, by their names: each line
    meets itself, which is left out.
    """
    lines, beside = (np.array(list(each.values()), dtype=object) for each in (some, others))
    one, other = shapely.STRtree(beside).query(lines)
    name, name2 = np.array(list(some), dtype=int)[one], np.array(list(others), dtype=int)[other]
    shapely.prepare(lines)
    meet = name != name2
    meet[meet] = shapely.intersects(lines[one[meet]], beside[other[meet]])
    return list(zip(name[meet].tolist(), name2[meet].tolist(), strict=True))


def _check_crossings(
    sheet: Sheet, loops: list[ClosedWay], parts: dict[int, set[int]]
) -> list[Problem]:
    """Tells of loops that cross another, where both go around a part."""
    lines = {n: loop.line for n, loop in enumerate(loops)}
    around: dict[int, bool] = {}
    found = []
    for a, b in _find_meeting(lines, lines):
        if loops[a].first <= loops[b].first or not _overlap(loops[a], loops[b]):
            continue
        mine, others = (_list_parts(loops[n], parts) for n in (a, b))
        if mine is not None and mine == others:
            continue
        if not (mine and others and mine - others and others - mine):
            for n in (a, b):
                around[n] = around[n] if n in around else _goes_around_part(sheet, loops[n])
            if not (around[a] and around[b]):
                continue
        found.append(_tell(sheet, loops[a], shapely.intersection(lines[a], lines[b]),
                           say("This contour cuts into another part.")))  # fmt: skip
    return found


def _check_leads(
    sheet: Sheet,
    lines: dict[int, shapely.Geometry],
    loops: list[ClosedWay],
    parts: dict[int, set[int]],
) -> list[Problem]:
    """Tells of ways of one part's contour that go through what another's, beside it, goes around.

    A line that two parts share, or that runs over its end a little, does not; nor does a notch,
    nor what parts a frame into several. Loops that cross are told as such.
    """
    around = [c for c, own in parts.items() if c in lines and len(own) == 1]
    if not around:
        return []
    reach = float(sheet.through.radius.max(initial=0.0)) + CROSS_MM
    of, runs = sheet.contours.of_run, sheet.through.run.tolist()
    closed = {contour: loop for loop in loops for contour in loop.contours}
    found: dict[int, tuple[int, shapely.Geometry]] = {}
    for contour, beside in _find_meeting({c: lines[c] for c in around}, lines):
        if beside in found or parts.get(beside, set()) & parts[contour]:
            continue
        if contour in closed and beside in closed and _overlap(closed[contour], closed[beside]):
            continue
        own = [of[run] == beside for run in runs]  # the cuts alone, not the ways over tabs
        cut = shapely.multilinestrings(sheet.through.shape[np.array(own, dtype=bool)])
        inside = shapely.intersection(cut, shapely.buffer(_fill(lines[contour]), -reach))
        if not LEAD_MM < shapely.length(inside) < shapely.length(lines[beside]) - LEAD_MM:
            continue
        along = contour in closed and _runs_along(sheet, lines[beside], parts[contour])
        if beside in parts or along:  # what an open contour goes around is not sure
            found[beside] = contour, inside
    return _tell_leads(sheet, lines, found)


def _tell_leads(
    sheet: Sheet,
    lines: dict[int, shapely.Geometry],
    found: dict[int, tuple[int, shapely.Geometry]],
) -> list[Problem]:
    """Tells of each contour whose way cuts into another's part; of two that do, of the later."""
    first, told = sheet.contours.first, []
    for contour, (other, inside) in found.items():
        if found.get(other, (-1,))[0] == contour and first[contour] < first[other]:
            continue  # the later one tells it
        loop = ClosedWay(lines[contour], first[contour], (contour,))
        text = say("A way into or out of this contour cuts into another part.")
        told.append(_tell(sheet, loop, inside, text))
    return told


def _runs_along(sheet: Sheet, line: shapely.Geometry, others: set[int]) -> bool:
    """Tells whether a line runs along the outline of a part that is none of the others."""
    reach, faces = float(sheet.through.radius.max()) + 2 * MEET_MM, sheet.closed.faces
    for face in faces.tree.query(line, predicate="dwithin", distance=reach).tolist():
        if sheet.kinds[face] == PART and face not in others:
            edge = shapely.buffer(shapely.get_exterior_ring(faces.ring[face]), reach)
            if shapely.length(shapely.intersection(line, edge)) > ALONG_MM:
                return True
    return False


def _list_parts(loop: ClosedWay, parts: dict[int, set[int]]) -> set[int] | None:
    """Lists the parts that a whole contour goes around; None: of another loop nobody knows."""
    return parts.get(loop.contours[0], set()) if len(loop.contours) == 1 else None


def _overlap(one: ClosedWay, other: ClosedWay) -> bool:
    """Tells whether two loops overlap, and neither lies in the other."""
    a, b = one.filled, other.filled
    both, first, second = a.intersection(b), a.difference(b), b.difference(a)
    return not any(shapely.is_empty(shapely.buffer(g, -CROSS_MM)) for g in (both, first, second))


def _goes_around_part(sheet: Sheet, loop: ClosedWay) -> bool:
    """Tells whether a loop holds mostly part: two parts may have come off as one."""
    near = sheet.closed.faces.tree.query(loop.filled)
    parts = [sheet.drawn[face] for face in near.tolist() if sheet.kinds[face] == PART]
    inside = shapely.area(shapely.intersection(parts, loop.filled)).sum()
    return bool(inside > HELD_SHARE * shapely.area(loop.filled))


def _check_strokes(
    sheet: Sheet, lines: dict[int, shapely.Geometry], loops: list[ClosedWay]
) -> list[Problem]:
    """Tells of open cuts that part what two outlines apart go around, or that run along one part
    and then lead into another: no shared line does.
    """
    whole = [loop for loop in loops if loop.contours]
    names = sorted(lines.keys() - {contour for loop in whole for contour in loop.contours})
    if not names or not whole:
        return []
    ways = np.array([lines[c] for c in names], dtype=object)
    line, loop_ = shapely.STRtree([loop.line for loop in whole]).query(ways)  # by their boxes
    within = np.array([whole[n].filled for n in loop_.tolist()], dtype=object)
    meets = shapely.intersects(ways[line], within)
    line, loop_ = line[meets], loop_[meets]
    holds = {n: _goes_around_part(sheet, whole[n]) for n in np.unique(loop_).tolist()}
    found = []
    for k in np.unique(line).tolist():
        way = lines[names[k]]
        near = [whole[n].filled for n in loop_[line == k].tolist() if holds[n]]
        parted = [filled for filled in near if _parts(way, filled)]
        if len(parted) < APART or not shapely.disjoint(parted[0], parted[1:]).any():
            parted = [filled for filled in near if _leads_into(sheet, way, filled)]
        inside = shapely.intersection(way, parted[0]) if parted else None
        if inside is not None and not shapely.is_empty(inside):
            loop = ClosedWay(way, sheet.contours.first[names[k]], (names[k],))
            found.append(_tell(sheet, loop, inside, say("This cut goes across other parts.")))
    return found


def _leads_into(sheet: Sheet, line: shapely.Geometry, filled: shapely.Geometry) -> bool:
    """Tells whether a line that runs along a part leads far into what an outline beside that
    part goes around.
    """
    reach = float(sheet.through.radius.max()) + CROSS_MM
    inside = shapely.length(shapely.intersection(line, shapely.buffer(filled, -reach)))
    if inside < ALONG_MM / 2:
        return False
    within = sheet.closed.faces.tree.query(filled, predicate="intersects")
    return _runs_along(sheet, line, set(within.tolist()))


def _parts(line: shapely.Geometry, filled: shapely.Geometry) -> bool:
    """Tells whether a line leaves more than one piece of what an outline goes around."""
    left = shapely.get_parts(shapely.difference(filled, shapely.buffer(line, CROSS_MM)))
    return int((shapely.area(left) > PARTED_MM2).sum()) > 1


def _tell(sheet: Sheet, loop: ClosedWay, crossing: shapely.Geometry, text: Say) -> Problem:
    """Makes the problem of a loop at the cut that passes a crossing."""
    x, y = shapely.get_coordinates(crossing)[0].tolist()
    position = _find_cut_near(sheet, loop, shapely.points(x, y))
    return Problem(find_line(sheet.cuts, position), "gouge", text, at=(x, y))


def _find_cut_near(sheet: Sheet, loop: ClosedWay, place: shapely.Geometry) -> int:
    """Finds the cut of a loop that passes nearest to a place."""
    of = sheet.contours.of_run
    own = [n for n, run in enumerate(sheet.through.run.tolist()) if of[run] in loop.contours]
    if not own:
        return loop.first
    near = own[int(np.argmin(shapely.distance(sheet.through.shape[own], place)))]
    return find_cut_at(sheet.cuts, sheet.through, near, place)
