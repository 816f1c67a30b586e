"""What could go wrong pass by pass: plunges, depths, changes of bits, cuts made twice."""

from __future__ import annotations

import numpy as np

from station.cutting.geometry.moves import Geometry
from station.cutting.geometry.pieces import Sheet
from station.cutting.geometry.strokes import Cuts, Levels, name_ways, pick_through
from station.cutting.model import LINE, Ints, Problem, Program

PLUNGE_MM_MIN = 2000.0  # straight down into a sheet, at most: common practice, no source
PLUNGE_MM, TOUCH_MM = 0.5, 0.01
PASS_SHARE = 3.0  # of the bit's diameter, in one pass: common practice (checks, section 10)
TWICE_SHARE = 0.9
MEANT_MM = 1.0
MOST_PASSES = 200


def find_pass_faults(
    program: Program, sheet: Sheet, geo: Geometry, levels: Levels, *, cuts_out: bool
) -> list[Problem]:
    """Finds what could go wrong pass by pass, in the order of the file."""
    found = [
        *_check_plunges(program, geo, levels),
        *_check_depths(sheet, levels),
        *_check_changes(program, levels),
        *_check_twice(sheet, levels),
        *(_check_thickness(sheet, levels) if cuts_out else ()),
    ]
    return sorted(found, key=lambda p: (p.line, p.kind))


def _tell(sheet: Sheet, position: int, kind: str, text: str) -> Problem:
    """Makes a problem of one cut."""
    moves, index = sheet.cuts.moves, int(sheet.cuts.index[position])
    x, y = moves.points[index, :2].tolist()
    return Problem(int(moves.line[index]), kind, text, at=(x, y))


def _check_plunges(program: Program, geo: Geometry, levels: Levels) -> list[Problem]:
    """Looks for plunges from above the sheet that are as quick as cutting along it."""
    moves = program.moves
    z = moves.points[:, 2]
    fast = (moves.kind == LINE) & moves.sure & (geo.flat < 1e-9)
    fast &= (z[:-1] > levels.face - TOUCH_MM) & (levels.face - z[1:] > PLUNGE_MM)
    fast &= moves.feed > PLUNGE_MM_MIN
    text = "Plunges at {feed:.0f} mm/min; {most:.0f} mm/min is usual at most."
    return [
        Problem(
            int(moves.line[i]),
            "plunge-fast",
            text.format(feed=moves.feed[i], most=PLUNGE_MM_MIN),
            at=(float(moves.points[i, 0]), float(moves.points[i, 1])),
        )
        for i in np.flatnonzero(fast)[:MOST_PASSES].tolist()
    ]


def _check_depths(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Looks for passes much deeper than their bit is wide, the first of each run."""
    cuts = sheet.cuts
    most = PASS_SHARE * 2 * cuts.radius
    deep = np.flatnonzero((levels.face - cuts.low > most + 0.05) & (cuts.high - cuts.low < 0.01))
    if not len(deep):
        return []
    before = _find_depths_before(cuts, deep, levels)
    found: dict[int, Problem] = {}
    for position, took in zip(deep.tolist(), (before - cuts.low[deep]).tolist(), strict=True):
        run = int(cuts.run[position])
        if took <= most[position] + 0.05 or run in found or len(found) >= MOST_PASSES:
            continue
        beside = _find_near_before(cuts, position, levels) - float(cuts.low[position])
        wide = 2 * float(cuts.radius[position])
        text = f"Cuts {min(took, beside):.1f} mm deep in one pass with a bit of {wide:g} mm."
        if beside > most[position] + 0.05:
            found[run] = _tell(sheet, position, "pass-deep", text)
    return list(found.values())


def _find_depths_before(cuts: Cuts, some: Ints, levels: Levels) -> np.ndarray:
    """Finds how low the same way was cut before each of the given cuts; the face: not at all."""
    keys = name_ways(cuts, np.arange(len(cuts)))
    order = np.lexsort((np.arange(len(cuts)), keys))
    before = np.full(len(cuts), levels.face)
    for one, other in ((order[1:], order[:-1]),):
        same = keys[one] == keys[other]
        before[one[same]] = cuts.low[other[same]]
    return before[some]


def _find_near_before(cuts: Cuts, position: int, levels: Levels) -> float:
    """Finds how low the place in the middle of a cut was cut before it."""
    moves, index = cuts.moves, cuts.index
    start, end = moves.points[index[:position], :2], moves.points[index[:position] + 1, :2]
    i = int(index[position])
    middle = (moves.points[i, :2] + moves.points[i + 1, :2]) / 2
    if moves.kind[i] > LINE:
        spoke = complex(*(moves.points[i, :2] - moves.centre[i])) * np.exp(0.5j * moves.sweep[i])
        middle = moves.centre[i] + np.array([spoke.real, spoke.imag])
    step = end - start
    size = np.maximum((step * step).sum(axis=1), 1e-12)
    share = np.clip(((middle - start) * step).sum(axis=1) / size, 0, 1)
    off = np.hypot(*(start + step * share[:, None] - middle).T)
    arc = moves.kind[index[:position]] > LINE
    centre = moves.centre[index[:position]]
    around = np.abs(np.hypot(*(start - centre).T) - np.hypot(*(centre - middle).T))
    near = np.where(arc, around, off) < 0.9 * cuts.radius[position]
    return float(min(cuts.high[:position][near].min(initial=levels.face), levels.face))


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
            text = "The bit is changed while it is in the sheet. Raise it before."
            found.append(Problem(pause.line, "change-low", text, at=(x, y)))
    return found


def _changes_bit(program: Program, move: int) -> bool:
    """Tells whether another bit is in from a move on."""
    tool = program.moves.tool
    return 0 < move < len(tool) and bool(tool[move] != tool[move - 1])


def _check_twice(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Looks for runs through the sheet over what an earlier run has cut through."""
    cuts = sheet.cuts
    through = np.flatnonzero(pick_through(cuts, levels))
    if not len(through):
        return []
    keys, run = name_ways(cuts, through), cuts.run[through]
    order = np.argsort(keys, kind="stable")
    first = np.empty(len(keys), dtype=np.int64)
    starts = np.append(True, np.diff(keys[order]) != 0)
    first[order] = order[np.flatnonzero(starts)][np.cumsum(starts) - 1]
    again = run[first] < run - 1
    way = cuts.flat[through]
    whole, twice = (np.bincount(run, weights=w) for w in (way, way * again))
    found = []
    for n in np.flatnonzero((twice > TWICE_SHARE * whole) & (whole > 0)).tolist():
        position = int(through[np.argmax(run == n)])
        earlier = int(cuts.moves.line[cuts.index[through[first[np.argmax(run == n)]]]])
        text = f"This is cut a second time; line {earlier} has cut it through."
        found.append(_tell(sheet, position, "twice", text))
    return found


def _check_thickness(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Looks whether all depths are those of another sheet: too shallow, or too deep."""
    cuts = sheet.cuts
    if not len(cuts) or not levels.known:
        return []
    lows = cuts.run_low[np.unique(cuts.run)]
    deepest = float(lows.min())
    reaching = lows[lows <= levels.through]
    thick = levels.face - deepest
    if deepest > levels.skin and np.count_nonzero(lows < deepest + 0.05) > 1:
        text = f"The deepest cut is {thick:.1f} mm; the sheet is {levels.thickness:g} mm thick."
    elif len(reaching) and float(np.median(reaching)) < levels.bottom - MEANT_MM:
        text = f"It cuts {thick:.1f} mm deep; the sheet is {levels.thickness:g} mm thick."
    else:
        return []
    position = int(np.argmin(cuts.low))
    return [_tell(sheet, position, "thickness", f"{text} Is the file for another sheet?")]
