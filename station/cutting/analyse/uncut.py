"""What does not go through though it was meant to: skins, ramps, cuts that free nothing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely
from shapely.ops import substring

from station.cutting.analyse.notes import find_line, note_cut, note_piece
from station.cutting.geometry.faces import SKELETON, widen_shapes
from station.cutting.geometry.jumps import WIDEST_GAP_MM
from station.cutting.geometry.kinds import PART, SLUG, WASTE
from station.cutting.geometry.rings import area_of
from station.cutting.geometry.sheet import Sheet
from station.cutting.geometry.strokes import CLOSE_MM, LEVEL_MM, Levels
from station.cutting.model import LOOK, Bools, Floats, Ints, Piece, Problem, Tab
from station.shop.words import length, say

RIND = 0.1  # of an outline with a skin all around, that is cut through at most
MOST_SKINS = 0.6  # of the pieces: so many have a skin where it is meant, notches or not
ABOVE_SKIN_MM = 0.3  # a tab is higher than a skin by as much
DEEP_SHARE = 0.55  # of the thickness: a cut in the waste that is deeper was meant to part it
NEARLY_MM, NEARLY_SHARE = 1.6, 0.35  # what a cut in a part leaves at most, that was meant to
SAME_SIZE = 0.1  # mm, by which outlines of one size differ at most
LONG_MM = 60.0  # a shorter cut that frees nothing is a mark or a hole for a screw
POINTS, LEAD_SHARE = 41, 0.15  # looked at along a cut; of them beside what comes off, in a lead
BESIDE_MM = 0.3  # an edge lies half a bit's width from its cut, as near as that
EDGE_TO_EDGE = 0.995
BRIDGE_MM = 8.0  # half of a jump over a tab, closed where it is asked what a cut would part
FREED_MM2 = 300.0  # less is no piece that anybody meant to free
ALONG_POINTS, COVERED_SHARE = 11, 0.9  # looked at along a cut; of them in cuts that go through
# ends of an outline lie this far apart; further, measured by its way, it goes around nothing
LEAST_GAP_MM, MOST_GAP_SHARE = 12.0, 0.35
WIDER, OTHERWISE = 2.0, 3  # times as wide as most tabs; times as many tabs that are no gaps
LEAST_SHORT_MM = 1.0  # an outline that ends nearer to its start was meant to get there
AS_WIDE_MM, AS_WIDE = 1.0, 0.25  # by which tabs of one width differ at most: that, or that share
CHORDS = 4  # of the bit's own round, where only that is asked


def find_uncut(sheet: Sheet, pieces: Sequence[Piece], levels: Levels) -> list[Problem]:
    """Finds what does not go through, and cuts through the sheet that free nothing."""
    return [
        *_check_skins(sheet, pieces, levels),
        *_check_ramps(sheet, levels),
        *_check_unfreed(sheet, levels),
        *_check_alike(sheet, levels),
        *_check_idle_cuts(sheet),
        *_check_odd_gaps(sheet, pieces),
    ]


def _check_skins(sheet: Sheet, pieces: Sequence[Piece], levels: Levels) -> list[Problem]:
    """Tells of pieces that a skin holds; one that is not all around, or with tabs beside or in
    it, or on few pieces alone, is not meant; nor is one where a cut around the piece goes through.
    """
    skins = [n for n, piece in enumerate(pieces) if piece.skin_mm]
    through = {sheet.contours.of_run[run] for run in sheet.through.run.tolist()}
    around = {face for (cut, face), goes in sheet.around.items() if goes and cut in through}
    few, most = 2 * len(skins) < len(pieces), len(skins) > MOST_SKINS * len(pieces)
    some, found = sheet.closed.stretches, []
    for n in skins:
        piece, face = pieces[n], sheet.of_piece[n]
        along = (sheet.closed.left == face) | (sheet.closed.right == face)
        own = np.flatnonzero(along & sheet.skins)
        left = float(some.top[own].max()) - levels.bottom
        highest = max([left, *(tab.height_mm for tab in piece.tabs)])
        tabs = highest > piece.skin_mm + ABOVE_SKIN_MM
        if few or tabs or face in around or (piece.covered > RIND and not most):
            text = say(
                "This piece is not cut through: up to {left} mm is left.", left=length(left, 2)
            )
            line = find_line(sheet.cuts, int(some.first[own].min()))
            found.append(note_piece(piece, "uncut", text, line=line))
        else:
            text = say("A skin of {skin} mm holds this piece.", skin=length(piece.skin_mm, 2))
            found.append(note_piece(piece, "skin", text))
    return found


def _check_ramps(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Tells of runs that go through but leave a long ramp: a spiral without a level lap."""
    some = sheet.closed.stretches
    long = shapely.length(some.shape) > WIDEST_GAP_MM
    long &= sheet.cuts.run_low[some.run] <= levels.through
    found = []
    for n in np.flatnonzero(long).tolist():
        left = float(some.top[n] - levels.bottom)
        text = say("This lap does not go through everywhere: up to {left} mm is left.",
                   left=length(left, 2))  # fmt: skip
        found.append(note_cut(sheet.cuts, int(some.first[n]), "uncut", text))
    return found


def _check_unfreed(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Tells of deep cuts that part nothing because they leave too much: in the waste, from edge
    to edge of a strip, or in a part where they nearly go through and would part it.
    """
    lines, cuts = sheet.shallow.lines, sheet.cuts
    lefts, found = _measure_left(sheet, levels), []
    for chain in _join_chains(sheet, levels, lefts):
        if _lies_in_cuts(sheet, chain):
            continue
        left = float(lefts[chain[0]])
        longest = int(chain[np.argmax(shapely.length(lines.shape[chain]))])
        middle = shapely.line_interpolate_point(lines.shape[longest], 0.5, normalized=True)
        face = int(sheet.closed.faces.find_at(shapely.get_coordinates(middle))[0])
        nearly = left < min(NEARLY_MM, NEARLY_SHARE * levels.thickness)
        if (
            face < 0
            or sheet.kinds[face] != PART
            or _rips(sheet, chain, face)
            or (nearly and _would_part(sheet, chain, face))
        ):
            text = say("This cut leaves {left} mm and frees nothing.", left=length(left, 2))
            found.append(note_cut(cuts, int(lines.first[chain[0]]), "uncut", text))
    return found


def _measure_left(sheet: Sheet, levels: Levels) -> Floats:
    """Measures what each shallow cut leaves where its run is deepest, mm; of a run that goes
    through somewhere, where the cut itself does not.
    """
    cuts, lines = sheet.cuts, sheet.shallow.lines
    run, low, high = cuts.run_low[lines.run], cuts.low[lines.first], cuts.high[lines.first]
    own = np.where(low > levels.through, low, high)
    return np.asarray(np.where(run > levels.through, run, own) - levels.bottom)


def _check_alike(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Tells of outlines in the waste that do not go through, where others of their size do: their
    last pass was forgotten.
    """
    lines, cuts, ways = sheet.shallow.lines, sheet.cuts, sheet.contours.ways
    freeing = {c for (c, f), goes in sheet.around.items() if goes and sheet.kinds[f] == PART}
    some = np.flatnonzero(shapely.length(lines.shape) > LONG_MM)
    ends = [shapely.get_point(lines.shape[some], at) for at in (0, -1)]
    some = some[shapely.distance(*ends) < CLOSE_MM]
    sizes = [_measure_way(ways[c]) for c in sorted(freeing) if len(some) and len(ways[c]) > 2]
    some = some if sizes else some[:0]
    places = shapely.get_coordinates(shapely.get_point(lines.shape[some], 0))
    found: dict[tuple[int, ...], Problem] = {}
    for n, face in zip(some.tolist(), sheet.closed.faces.find_at(places).tolist(), strict=True):
        way = shapely.get_coordinates(lines.shape[n])
        alike = np.abs(np.array(sizes) - _measure_way(way)) < SAME_SIZE
        left = float(cuts.run_low[lines.run[n]] - levels.bottom)
        if (face < 0 or sheet.kinds[face] != PART) and alike.all(axis=1).any() and left > 0:
            text = say("Other outlines like this one go through; here {left} mm are left.",
                       left=length(left, 2))  # fmt: skip
            place = tuple(np.round(shapely.bounds(lines.shape[n])).astype(int).tolist())
            found[place] = note_cut(cuts, int(lines.first[n]), "uncut", text)
    return list(found.values())


def _measure_way(way: Floats) -> Floats:
    """Measures what a way goes around: its box's sides, mm, and the root of its area, mm."""
    return np.append(np.ptp(way, axis=0), abs(area_of(way)) ** 0.5)


def _lies_in_cuts(sheet: Sheet, chain: Ints) -> bool:
    """Tells whether cuts lie along others that go through, as a rough lap beside the fine one."""
    shares = np.linspace(0.05, 0.95, ALONG_POINTS)
    shapes = sheet.shallow.lines.shape[chain]
    points = shapely.line_interpolate_point(shapes[:, None], shares, normalized=True)
    inside = np.zeros(points.size, dtype=bool)
    tree = shapely.STRtree(sheet.closed.faces.kerfs)
    inside[tree.query(points.ravel(), predicate="within")[0]] = True
    length = shapely.length(shapes)
    covered = inside.reshape(points.shape).mean(axis=1) @ length
    return bool(covered > COVERED_SHARE * length.sum())


def _join_chains(sheet: Sheet, levels: Levels, left: Floats) -> list[Ints]:
    """Joins deep cuts of one depth that go on where the one before ended, or over a tab; gives
    the deepest chain of each place, if it is long enough. `left`: what each cut leaves.
    """
    lines = sheet.shallow.lines
    deep = np.flatnonzero(left < (1 - DEEP_SHARE) * levels.thickness)
    if not len(deep):
        return []
    shape = lines.shape[deep]
    away = shapely.distance(shapely.get_point(shape[:-1], -1), shapely.get_point(shape[1:], 0))
    new = (away > WIDEST_GAP_MM) | (np.abs(np.diff(left[deep])) > LEVEL_MM)
    chains = np.split(deep, np.flatnonzero(new) + 1)
    deepest: dict[tuple[int, ...], Ints] = {}
    for chain in chains:
        if shapely.length(lines.shape[chain]).sum() < LONG_MM:
            continue
        key = tuple(np.round(shapely.total_bounds(lines.shape[chain])).astype(int).tolist())
        if key not in deepest or left[chain[0]] < left[deepest[key][0]]:
            deepest[key] = chain
    return sorted(deepest.values(), key=lambda chain: int(chain[0]))


def _rips(sheet: Sheet, chain: Ints, face: int) -> bool:
    """Tells whether a cut would rip a strip of the sheet: it runs from edge to edge of it."""
    faces = sheet.closed.faces
    if faces.around[face] != SKELETON:
        return False
    x0, y0, x1, y1 = shapely.bounds(faces.ring[face]).tolist()
    longest = float(shapely.length(sheet.shallow.lines.shape[chain]).max())
    return bool(longest > EDGE_TO_EDGE * max(x1 - x0, y1 - y0))


def _would_part(sheet: Sheet, chain: Ints, face: int) -> bool:
    """Tells whether a part would come off in two if a cut in it went through, tabs closed."""
    lines = sheet.shallow.lines
    swept = shapely.union_all(widen_shapes(lines.shape[chain], lines.radius[chain], CHORDS))
    swept = shapely.buffer(shapely.buffer(swept, BRIDGE_MM), -BRIDGE_MM)
    left = shapely.get_parts(shapely.difference(sheet.drawn[face], swept))
    return int((shapely.area(left) > FREED_MM2).sum()) > 1


def _list_long_leads(sheet: Sheet) -> list[int]:
    """Lists cuts through the sheet of which nearly nothing bounds what comes off: long leads."""
    lines, off = sheet.through, np.isin(sheet.kinds, (PART, SLUG, WASTE))
    some = np.flatnonzero(shapely.length(lines.shape) > LONG_MM)
    if not len(some) or not off.any():
        return []
    edges = shapely.STRtree(shapely.boundary(sheet.drawn[off]))

    def pick_near(shares: Floats) -> Bools:
        points = shapely.line_interpolate_point(lines.shape[some, None], shares, normalized=True)
        reach = np.repeat(lines.radius[some] + BESIDE_MM, len(shares))
        near = np.zeros(points.size, dtype=bool)
        near[edges.query(points.ravel(), predicate="dwithin", distance=reach)[0]] = True
        return near.reshape(points.shape)

    some = some[~pick_near(np.array([0.0, 1.0])).all(axis=1)]  # a contour's ends are at its edge
    if len(some):
        some = some[pick_near(np.linspace(0, 1, POINTS)).mean(axis=1) < LEAD_SHARE]
    return [int(n) for n in some]


def _check_idle_cuts(sheet: Sheet) -> list[Problem]:
    """Tells of cuts through the sheet that bound no part and no hole of one."""
    lines, faces = sheet.through, sheet.closed.faces
    if not len(lines) or not len(faces.kerfs):
        return []
    kerf = np.full(len(lines), -1)
    first = shapely.get_point(lines.shape, 0)  # the rest of a line lies in the same cut
    of, at = shapely.STRtree(faces.kerfs).query(first, predicate="intersects")
    kerf[of] = at
    holds = np.zeros(len(faces.kerfs), dtype=bool)
    real = np.flatnonzero(~faces.dust)
    holds[faces.around[real][faces.around[real] >= 0]] = True
    holds |= faces.home >= 0
    strips = bool((faces.around < 0).any())
    idle = [
        n
        for n in np.flatnonzero(shapely.length(lines.shape) > LONG_MM).tolist()
        if kerf[n] >= 0 and not holds[kerf[n]] and not strips
    ]
    open_ = _find_unfinished(sheet, idle)
    idle = sorted({*idle, *_list_long_leads(sheet)} if not strips else idle)
    idle = [n for n in idle if int(lines.run[n]) not in open_]
    found = [_tell_unfinished(sheet, *ends) for ends in open_.values()]
    if not idle:
        return found
    count, long = len(idle), float(shapely.length(lines.shape[idle]).sum())
    text = say("{n} {n|cut|cuts} through the sheet, {long} mm, {n|frees|free} nothing.",
               n=count, long=length(long, 0))  # fmt: skip
    return [*found, note_cut(sheet.cuts, int(lines.first[idle[0]]), "frees-nothing", text)]


def _find_unfinished(sheet: Sheet, idle: list[int]) -> dict[int, tuple[int, float]]:
    """Finds, of cuts that free nothing, the runs that go most of the way around something: by run,
    its last line, and how far that ends from where the run began.
    """
    lines, found = sheet.through, {}
    for run in np.unique(lines.run[idle]).tolist():
        own = np.flatnonzero(lines.run == run)
        way = np.concatenate([shapely.get_coordinates(line) for line in lines.shape[own]])
        gap = float(np.hypot(*(way[-1] - way[0])))
        around = float(np.hypot(*np.diff(way, axis=0).T).sum())
        if len(way) < 3 or not LEAST_GAP_MM < gap < MOST_GAP_SHARE * around:
            continue
        if _runs_on(shapely.linestrings(way)):
            continue
        filled = shapely.make_valid(shapely.polygons(way), method="structure")
        swept = shapely.union_all(widen_shapes(lines.shape[own], lines.radius[own], CHORDS))
        if shapely.area(shapely.difference(filled, swept)) > FREED_MM2:
            found[run] = int(own[-1]), gap
    return found


def _runs_on(way: shapely.Geometry) -> bool:
    """Tells whether a way ends where it has been before, at its start or beyond it."""
    before = substring(way, 0, float(shapely.length(way)) - LEAST_GAP_MM)
    return bool(shapely.distance(before, shapely.get_point(way, -1)) < CLOSE_MM)


def _tell_unfinished(sheet: Sheet, line: int, gap: float) -> Problem:
    """Tells of an outline that does not get back to where it began."""
    text = say("This outline ends {gap} mm from where it began, and frees nothing.",
               gap=length(gap, 1))  # fmt: skip
    last = int(sheet.through.stop[line]) - 1
    return replace(note_cut(sheet.cuts, last, "frees-nothing", text), graded=LOOK)


def _check_odd_gaps(sheet: Sheet, pieces: Sequence[Piece]) -> list[Problem]:
    """Tells of a piece that hangs where its outline ends before it gets back to its start, or to
    where its ramp is deep: a single gap, or rest of a ramp, where tabs are made otherwise or are
    far less wide, or that most pieces equal to it do not have; and of the only gap of a piece
    where no other tab of the sheet is as wide, unless the bit goes on beyond it.
    """
    alike = Counter(piece.shape for piece in pieces)
    most = [tab for piece in pieces for tab in piece.tabs]
    wide = WIDER * float(np.median([tab.width_mm for tab in most])) if most else 0.0
    gaps = sum(tab.style == "gap" for tab in most)
    other = len(most) - gaps >= OTHERWISE * gaps
    odd = [_find_odd(piece, wide, gaps=other) for piece in pieces]
    gapped = Counter(p.shape for p, tab in zip(pieces, odd, strict=True) if tab)
    found = []
    for n, (piece, some) in enumerate(zip(pieces, odd, strict=True)):
        usual = alike[piece.shape] > 1 and 2 * gapped[piece.shape] > alike[piece.shape]
        tab = None if usual else some
        short = tab or _find_single(piece, most)
        if short and (tab or _ends_at_start(sheet, n)):
            found.append(_tell_short(short))
    return found


def _tell_short(tab: Tab) -> Problem:
    """Tells of an outline that ends before its start."""
    text = say("This outline ends {gap} mm before its start: that holds the piece.",
               gap=length(tab.width_mm, 1))  # fmt: skip
    return Problem(tab.line, "frees-nothing", text, at=(tab.x_mm, tab.y_mm), graded=LOOK)


def _ends_at_start(sheet: Sheet, piece: int) -> bool:
    """Tells whether each gap along a piece lies between the end and the start of one run."""
    closed, face = sheet.closed, sheet.of_piece[piece]
    some = closed.stretches.pick((closed.left == face) | (closed.right == face))
    return bool((some.run == some.to_run)[some.top == np.inf].all())


def _find_single(piece: Piece, most: Sequence[Tab]) -> Tab | None:
    """Finds the only gap of a piece where no other tab of the sheet is as wide."""
    gaps = [tab for tab in piece.tabs if tab.style == "gap"]
    if len(gaps) != 1 or gaps[0].width_mm < LEAST_SHORT_MM:
        return None
    wide = gaps[0].width_mm
    alike = [abs(t.width_mm - wide) < max(AS_WIDE_MM, AS_WIDE * wide) for t in most]
    return gaps[0] if sum(alike) == 1 else None


def _find_odd(piece: Piece, wide_mm: float, *, gaps: bool) -> Tab | None:
    """Finds the only tab of a piece that is no lift over it and wider than that; `gaps`: any gap,
    for tabs are made otherwise.
    """
    some = [t for t in piece.tabs if t.style in {"gap", "ramped"} and t.width_mm > LEAST_GAP_MM]
    alone = len(piece.tabs) == 1
    odd = [t for t in some if alone or t.width_mm > wide_mm or (gaps and t.style == "gap")]
    return odd[0] if len(odd) == 1 else None
