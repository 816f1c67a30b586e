"""What could go wrong pass by pass: plunges, depths, changes of bits, cuts made twice."""

from __future__ import annotations

import numpy as np
import shapely

from station.cutting.analyse.notes import note_cut
from station.cutting.geometry.moves import Geometry, find_boxes, list_values
from station.cutting.geometry.sheet import Sheet
from station.cutting.geometry.strokes import (
    LEVEL_MM,
    Cuts,
    Levels,
    Lines,
    find_earlier,
)
from station.cutting.model import (
    LINE,
    RAPID,
    XY,
    Bools,
    Floats,
    Ints,
    Moves,
    Problem,
    Program,
    Setting,
)
from station.shop.words import Say, length, say, speed

PLUNGE_MM, TOUCH_MM = 0.25, 0.01
TWICE_SHARE = 0.9
AGAIN_MM, AGAIN_SHIFTS = 0.1, (0.27, 0.61)  # relative moves drift by less
SAME_SIZE_MM = 0.02  # but are as long, and as bent
# how far a run lies off one that it is cut over, and how much of both at least: not their leads
OVER_MM, OVER_SHARE, POINTS = 0.06, 0.8, 61
MOST_PASSES = 200
DEEPER_MM = 0.05
ODD_WIDE, ODD_SHARE = 2.0, 0.5  # so deep, in diameters, and by so few of the runs as deep
ODD_PLUNGE, ODD_PLUNGES = 1.9, 0.34  # times as quick as usual, and by so few
ROUNDED = 1.001  # times its limit a feed may be: 2000 mm/min written in inches is not quite that
BORED_SHARE = 0.25  # of the bit's diameter: a run that stays within it drills
OWN_SHARE = 0.75  # of the bit's diameter: the narrowest helix goes further in a lap
TURN_OFF = 1e-6  # radians that rounding takes from a whole turn
MOST_LOOKED_AT = 4000  # cuts that are compared with all before them


def find_pass_problems(
    program: Program, sheet: Sheet, geo: Geometry, levels: Levels, setting: Setting
) -> list[Problem]:
    """Finds what could go wrong pass by pass, in the order of the file."""
    found = [
        *_check_plunges(program, geo, levels, setting.shop.plunge_mm_min),
        *_check_depths(sheet, levels, setting.shop.deepest_pass),
        *_check_changes(program, levels),
        *_check_twice(sheet),
        *_check_drilled_twice(sheet),
    ]
    return sorted(found, key=lambda p: (p.line, p.kind))


def _check_plunges(
    program: Program, geo: Geometry, levels: Levels, most_mm_min: float
) -> list[Problem]:
    """Looks for plunges from above the sheet that are quicker than that, and for the few that are
    much quicker than the others of the same bit before a cut: their feed was forgotten.
    """
    moves = program.moves
    z = moves.points[:, 2]
    down = np.flatnonzero((moves.kind == LINE) & moves.sure & (geo.flat < 1e-9))
    down = down[(z[down] > levels.face - TOUCH_MM) & (levels.face - z[down + 1] > PLUNGE_MM)]
    after = np.minimum(down + 1, len(moves) - 1)  # the last move goes straight down
    cuts_on = (moves.kind[after] != RAPID) & (geo.flat[after] > 1e-9)
    found = []
    for i in down[moves.feed[down] > most_mm_min * ROUNDED][:MOST_PASSES].tolist():
        text = say("Plunges at {feed} mm/min; this shop takes {most} mm/min at most.",
                   feed=speed(float(moves.feed[i])), most=speed(most_mm_min))  # fmt: skip
        found.append(_note_plunge(moves, i, text))
    return found + _check_odd_plunges(moves, down[cuts_on], most_mm_min)


def _check_odd_plunges(moves: Moves, down: Ints, most_mm_min: float) -> list[Problem]:
    """Looks for the few plunges that are much quicker than the others of the same bit."""
    found = []
    for tool in list_values(moves.tool[down]):
        own = down[moves.tool[down] == tool]
        usual = float(np.median(moves.feed[own]))
        odd = own[(moves.feed[own] > ODD_PLUNGE * usual) & (moves.feed[own] <= most_mm_min)]
        if len(odd) > ODD_PLUNGES * len(own):
            continue
        for i in odd[:MOST_PASSES].tolist():
            text = say("Plunges at {feed} mm/min; elsewhere this bit does at {usual} mm/min.",
                       feed=speed(float(moves.feed[i])), usual=speed(usual))  # fmt: skip
            found.append(_note_plunge(moves, i, text))
    return found


def _note_plunge(moves: Moves, i: int, text: Say) -> Problem:
    """Makes the problem of a plunge."""
    x, y = moves.points[i, :2].tolist()
    return Problem(int(moves.line[i]), "plunge-fast", text, at=(x, y))


def _check_depths(sheet: Sheet, levels: Levels, bits_wide: float) -> list[Problem]:
    """Looks for passes deeper than so many times their bit's diameter; and for fewer that are
    deeper than most others of the same bit, which go down step by step.
    """
    cuts = sheet.cuts
    deep = _find_deep_passes(cuts, levels, bits_wide)
    tools = cuts.moves.tool[cuts.index]
    last = {run: float(cuts.run_low[run]) for run in deep}
    found = []
    for run, (position, took) in deep.items():
        wide, tool = 2 * float(cuts.radius[position]), tools[position]
        if took <= bits_wide * wide + DEEPER_MM:
            as_deep = cuts.run_low[cuts.run] < last[run] + LEVEL_MM
            others = np.unique(cuts.run[as_deep & (tools == tool)])
            leads_out = not (cuts.run[position + 1 : position + 2] == run).any()
            many = np.isin(others, list(deep)).sum() > ODD_SHARE * len(others)
            if leads_out or many:
                continue
        text = say("Cuts {deep} mm deep in one pass with a bit of {wide} mm.",
                   deep=length(took, 1), wide=length(wide))  # fmt: skip
        found.append(note_cut(cuts, position, "pass-deep", text))
    return found


def _find_deep_passes(
    cuts: Cuts, levels: Levels, bits_wide: float
) -> dict[int, tuple[int, float]]:
    """Finds for each run the first pass deeper than so many times its bit's diameter, or a level
    one that may be odd: where in the cuts it is, and how deep, mm.
    """
    least = min(bits_wide, ODD_WIDE) * 2 * cuts.radius.min(initial=np.inf) + DEEPER_MM
    if levels.face - cuts.low.min(initial=np.inf) <= least:
        return {}
    sinks = cuts.high - cuts.low > LEVEL_MM  # as a hole's spiral, and the way down to a pass
    wide = np.where(sinks, bits_wide, min(bits_wide, ODD_WIDE))
    most = wide * 2 * cuts.radius + DEEPER_MM
    deep = np.flatnonzero(levels.face - cuts.low > most)
    if not len(deep):
        return {}
    deep = deep[_find_heights_before(cuts, deep, levels) - cuts.low[deep] > most[deep]]
    low, high = find_boxes(cuts.moves, cuts.index)
    boxes = low[:, :2].T, high[:, :2].T
    deep = deep[~_pick_bored(cuts, boxes)[deep]][:MOST_LOOKED_AT]
    way = np.cumsum(cuts.flat)
    found: dict[int, tuple[int, float]] = {}
    for position in deep.tolist():
        run = int(cuts.run[position])
        if run in found or len(found) >= MOST_PASSES:
            continue
        took = _find_near_before(cuts, position, way, boxes, levels) - float(cuts.low[position])
        if took > most[position]:
            found[run] = position, took
    return found


def _find_heights_before(cuts: Cuts, some: Ints, levels: Levels) -> Floats:
    """Finds from which height down the same way was cut before each of the given cuts; the face:
    it was not.
    """
    keys = cuts.ways
    order = np.argsort(keys, kind="stable")
    before = np.full(len(cuts), levels.face)
    one, other = order[1:], order[:-1]
    same = keys[one] == keys[other]
    before[one[same]] = np.minimum(cuts.high[other[same]], levels.face)
    return before[some]


def _pick_bored(cuts: Cuts, boxes: tuple[Floats, Floats]) -> Bools:
    """Picks the cuts of runs that stay on the spot: they drill more than they mill. `boxes` are
    around the cuts: (x, y) low and high.
    """
    runs = len(cuts.run_low)
    low, high = np.full((2, runs), np.inf), np.full((2, runs), -np.inf)
    for axis in (0, 1):
        np.minimum.at(low[axis], cuts.run, boxes[0][axis])
        np.maximum.at(high[axis], cuts.run, boxes[1][axis])
    wide = (high - low).max(axis=0)[cuts.run]
    return np.asarray(wide < BORED_SHARE * 2 * cuts.radius)


def _find_near_before(
    cuts: Cuts, position: int, way: Floats, boxes: tuple[Floats, Floats], levels: Levels
) -> float:
    """Finds how low the place that a cut goes through deepest was cut before it.

    `way` is how far the bit has gone along the sheet by the end of each cut; what it did in the
    same run just before is the same cut. `boxes` are around the cuts: (x, y) low and high.
    """
    moves, index = cuts.moves, cuts.index
    place = _find_deepest_place(moves, int(index[position]))
    (x0, y0), (x1, y1) = (box[:, :position] for box in boxes)
    wide = float(cuts.radius.max())
    before = np.flatnonzero((x0 < place[0] + wide) & (x1 > place[0] - wide))
    before = before[(y0[before] < place[1] + wide) & (y1[before] > place[1] - wide)]
    some = index[before]
    start = moves.points[some, :2]
    step = moves.points[some + 1, :2] - start
    size = np.maximum((step * step).sum(axis=1), 1e-12)
    share = np.clip(((place - start) * step).sum(axis=1) / size, 0, 1)
    off = np.hypot(*(start + step * share[:, None] - place).T)
    bent = np.flatnonzero((moves.kind[some] > LINE) & (moves.plane[some] == XY))
    if len(bent):
        share[bent], off[bent] = _measure_to_arcs(moves, some[bent], place)
    near = off < 0.9 * np.maximum(cuts.radius[position], cuts.radius[before])
    own = cuts.run[before] == cuts.run[position]
    near &= ~own | (way[position] - way[before] > OWN_SHARE * 2 * cuts.radius[position])
    z = moves.points[some, 2] + (moves.points[some + 1, 2] - moves.points[some, 2]) * share
    return float(min(z[near].min(initial=levels.face), levels.face))


def _find_deepest_place(moves: Moves, move: int) -> Floats:
    """Finds where a move is deepest: its lower end, or the middle of a level one."""
    start, end = moves.points[move], moves.points[move + 1]
    if abs(end[2] - start[2]) > LEVEL_MM:
        return np.asarray((end if end[2] < start[2] else start)[:2])
    if moves.kind[move] <= LINE or moves.plane[move] != XY:
        return np.asarray((start + end)[:2] / 2)
    spoke = complex(*(start[:2] - moves.centre[move])) * np.exp(0.5j * moves.sweep[move])
    return np.asarray(moves.centre[move] + np.array([spoke.real, spoke.imag]))


def _measure_to_arcs(moves: Moves, some: Ints, place: Floats) -> tuple[Floats, Floats]:
    """Measures where along arcs a place lies beside them, as a share, and how far off."""
    centre, sweep = moves.centre[some], moves.sweep[some]
    spoke, away = moves.points[some, :2] - centre, place - centre
    ahead = np.arctan2(away[:, 1], away[:, 0]) - np.arctan2(spoke[:, 1], spoke[:, 0])
    ahead = np.where(sweep > 0, ahead, -ahead) % (2 * np.pi)
    whole = np.maximum(np.abs(sweep), 1e-12)
    off = np.abs(np.hypot(*spoke.T) - np.hypot(*away.T))
    ends = [np.hypot(*(moves.points[some + k, :2] - place).T) for k in (0, 1)]
    turns = np.floor(np.maximum(whole - ahead + TURN_OFF, 0.0) / (2 * np.pi))
    ahead = ahead + 2 * np.pi * turns  # where it passes last, as at the end of a turn of a helix
    beside = ahead <= whole + TURN_OFF
    share = np.where(beside, np.minimum(ahead / whole, 1.0), np.where(ends[0] < ends[1], 0.0, 1.0))
    return share, np.where(beside, off, np.minimum(*ends))


def _check_changes(program: Program, levels: Levels) -> list[Problem]:
    """Looks for changes of bits while the bit is in the sheet."""
    moves = program.moves
    found = []
    for pause in program.pauses:
        before = pause.move - 1
        asks = pause.kind == "stop" and _changes_bit(program, pause.move)
        if pause.kind != "tool" and not asks:
            continue
        if before < 0 or not moves.sure[before] or not (moves.kind[: before + 1] > 0).any():
            continue
        x, y, z = moves.points[pause.move].tolist()
        if z < levels.face - 0.01:
            text = say("The bit is changed while it is in the sheet. Raise it before.")
            found.append(Problem(pause.line, "change-low", text, at=(x, y)))
    return found


def _changes_bit(program: Program, move: int) -> bool:
    """Tells whether another bit is in from a move on."""
    tool = program.moves.tool
    return 0 < move < len(tool) and bool(tool[move] != tool[move - 1])


def _check_twice(sheet: Sheet) -> list[Problem]:
    """Looks for runs whose deepest cuts lie over what earlier runs have cut as deep; what is cut
    deeper still does not count: that was a pass in the air.
    """
    cuts = sheet.cuts
    if not len(cuts):
        return []
    pairs = _find_same_ways(sheet) | _find_repeats(cuts)
    found = []
    for position, before in sorted(pairs.values())[:MOST_PASSES]:
        line = int(cuts.moves.line[cuts.index[before]])
        text = say("This is cut a second time; line {line} has cut it as deep.", line=line)
        found.append(note_cut(sheet.cuts, position, "twice", text))
    return found


def _find_repeats(cuts: Cuts) -> dict[int, tuple[int, int]]:
    """Finds runs most of whose last cuts lie over what earlier runs have cut as deep: by run, the
    first of these cuts and one before.
    """
    one, other = (find_earlier(cuts, (AGAIN_MM, shift), SAME_SIZE_MM) for shift in AGAIN_SHIFTS)
    low = np.minimum(one.low, other.low)
    deepest = np.minimum(one.deepest, other.deepest, out=one.deepest)

    def keep_last(some: Ints) -> Ints:
        last = cuts.low[some] <= deepest[some] + TOUCH_MM
        return some[last & (cuts.low[some] <= cuts.run_low[cuts.run[some]] + LEVEL_MM)]

    again = keep_last(np.flatnonzero(low <= cuts.high + TOUCH_MM))
    runs = len(cuts.run_low)
    some = np.zeros(runs, dtype=bool)
    some[cuts.run[again]] = True
    last = keep_last(np.flatnonzero(some[cuts.run]))
    whole, twice = (
        np.bincount(cuts.run[own], weights=cuts.flat[own], minlength=runs) for own in (last, again)
    )
    run, first = np.unique(cuts.run[again], return_index=True)
    where = again[first][((twice > TWICE_SHARE * whole) & (whole > 0))[run]]
    earlier = np.where(other.low[where] < one.low[where], other.cut[where], one.cut[where])
    pairs = zip(where.tolist(), earlier.tolist(), strict=True)
    return dict(zip(cuts.run[where].tolist(), pairs, strict=True))


def _check_drilled_twice(sheet: Sheet) -> list[Problem]:
    """Looks for holes that a bit comes back to from elsewhere, and drills no deeper. A bit that
    only comes up in between clears its chips.
    """
    moves, drilled = sheet.cuts.moves, sheet.plunges
    places = np.column_stack((moves.points[drilled + 1, :2].round(2), moves.tool[drilled]))
    _, hole = np.unique(places, axis=0, return_inverse=True)
    order = np.argsort(hole.ravel(), kind="stable")
    same = np.diff(hole.ravel()[order]) == 0
    one, other = drilled[order[:-1]][same], drilled[order[1:]][same]
    if not len(one):
        return []
    left = np.cumsum(np.abs(np.diff(moves.points[:, :2], axis=0)).max(axis=1, initial=0.0) > 0)
    again = left[other] > left[one]
    again &= moves.points[other + 1, 2] > moves.points[one + 1, 2] - TOUCH_MM
    found = []
    for a, b in sorted(zip(other[again].tolist(), one[again].tolist(), strict=True))[:MOST_PASSES]:
        line = int(moves.line[b])
        text = say("This is cut a second time; line {line} has cut it as deep.", line=line)
        x, y = moves.points[a + 1, :2].tolist()
        found.append(Problem(int(moves.line[a]), "twice", text, at=(x, y)))
    return found


def _find_same_ways(sheet: Sheet) -> dict[int, tuple[int, int]]:
    """Finds cuts through the sheet that an earlier run has gone over as deep, wherever each begins
    and in however many moves: by run, the cut and the one before.
    """
    cuts, lines = sheet.cuts, sheet.through
    low, found = cuts.run_low, dict[int, tuple[int, int]]()
    for a, b in _list_alike_runs(lines):
        one, other = (np.flatnonzero(lines.run == run) for run in (a, b))
        as_deep = low[a] <= low[b] + TOUCH_MM
        if as_deep and _lies_over(lines, other, one) and _lies_over(lines, one, other):
            found.setdefault(b, (int(lines.first[other[0]]), int(lines.first[one[0]])))
    return found


def _list_alike_runs(lines: Lines) -> list[tuple[int, int]]:
    """Lists pairs of runs whose cuts are about as long and lie in about the same box, the earlier
    run first.
    """
    runs, own = np.unique(lines.run, return_inverse=True)
    if len(runs) < 2:
        return []
    box = np.tile([np.inf, np.inf, -np.inf, -np.inf], (len(runs), 1))
    each = shapely.bounds(lines.shape)
    np.minimum.at(box[:, :2], own, each[:, :2])
    np.maximum.at(box[:, 2:], own, each[:, 2:])
    long = np.bincount(own, weights=shapely.length(lines.shape))
    most = (1 - OVER_SHARE) * long / 2  # how far a lead goes out of the other's box
    corner = shapely.points(box[:, :2])
    one, other = shapely.STRtree(corner).query(corner, predicate="dwithin", distance=most)
    near = (np.abs(box[one] - box[other]) < most[one, None]).all(axis=1) & (one < other)
    near &= np.minimum(long[one], long[other]) > OVER_SHARE * np.maximum(long[one], long[other])
    pairs = np.column_stack((runs[one[near]], runs[other[near]]))
    return [(a, b) for a, b in sorted(pairs.tolist())]


def _lies_over(lines: Lines, some: Ints, others: Ints) -> bool:
    """Tells whether most of some lines lies over others."""
    shapes = lines.shape[some]
    under, length = shapely.multilinestrings(lines.shape[others]), shapely.length(shapes)
    shapely.prepare(under)
    shares = (np.arange(POINTS) + 0.5) / POINTS
    places = shapely.line_interpolate_point(shapes[:, None], shares, normalized=True)
    over = shapely.dwithin(places, under, OVER_MM).mean(axis=1)
    return bool(over @ length > OVER_SHARE * length.sum())
