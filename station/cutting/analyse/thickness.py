"""Signs that a file is for a sheet of another thickness: depths, where cuts begin, a remark."""

from __future__ import annotations

import numpy as np

from station.cutting.analyse.notes import note_cut
from station.cutting.geometry.moves import Geometry
from station.cutting.geometry.sheet import Sheet
from station.cutting.geometry.strokes import LEVEL_MM, Cuts, Levels
from station.cutting.model import LOOK, RAPID, Floats, Ints, Moves, Problem, Program
from station.shop.words import length, say

MUCH_MM = 200.0  # cut along the sheet by one run is more than a mark
MEANT_MM = 1.0  # a thickness that differs by less is one as it is measured
ALONG_MM = 0.5  # a move that goes as far along the sheet does not only go down
AIR_MM = 2.0  # above the sheet a ramp may begin: common practice, no source
MOST_PLACES = 0.8  # of all where a ramp begins
MOST_LOOKED_AT = 100_000  # cuts whose steps are compared
FLAT_MM, BESIDE_MM = 0.001, 1.0  # a spiral goes down by more, over that and as much beside
LEAST_STEP_MM, SAME_STEP_MM = 0.3, 0.02  # of passes that go down evenly
HAIR_MM = 0.25  # a first pass that takes less of a sheet was not meant for it


def find_wrong_sheet(
    program: Program, sheet: Sheet, geo: Geometry, levels: Levels
) -> list[Problem]:
    """Finds what tells that a file is for a sheet of another thickness: the first sign of it."""
    if not len(sheet.cuts) or not levels.known:
        return []
    return (
        _check_depths(sheet, levels)
        or _check_air(program, geo, levels)
        or _check_steps(program.moves, geo, sheet.cuts, levels)
        or _check_remark(program, levels)
    )


def _check_depths(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Looks whether all depths are too shallow, or too deep; of those that reach the bottom holes
    count too that are only drilled.
    """
    cuts = sheet.cuts
    lows = cuts.run_low[np.bincount(cuts.run, minlength=len(cuts.run_low)) > 0]
    deepest = float(lows.min())
    drilled = cuts.moves.points[sheet.plunges + 1, 2]
    reaching = np.concatenate((lows[lows <= levels.skin], drilled))
    many = np.count_nonzero(lows < deepest + 0.05) > 1 or cuts.flat.sum() > MUCH_MM
    shallow = deepest > levels.skin and many
    deep = 2 * np.count_nonzero(reaching < levels.bottom - MEANT_MM) > len(reaching)
    if not shallow and not deep:
        return []
    text = say("It cuts {deep} mm deep into a sheet of {thick} mm. Is the file for another one?",
               deep=length(levels.face - deepest, 1), thick=length(levels.thickness))  # fmt: skip
    return [note_cut(cuts, int(np.argmin(cuts.low)), "thickness", text)]


def _check_air(program: Program, geo: Geometry, levels: Levels) -> list[Problem]:
    """Looks whether ramps begin well above the sheet at nearly every place: the file is for a
    thicker one.
    """
    moves = program.moves
    rapid = moves.kind == RAPID
    along = np.flatnonzero(~rapid & (geo.flat > ALONG_MM) & moves.sure)
    first = np.unique(np.searchsorted(along, np.append(0, np.flatnonzero(rapid))))
    begin = along[first[first < len(along)]]  # after each rapid
    z = moves.points[:, 2]
    begin = begin[(z[begin + 1] < z[begin] - LEVEL_MM) | (z[begin] > levels.face)]
    if len(begin) < 2:
        return []
    _, place = np.unique(moves.points[begin, :2].round(1), axis=0, return_inverse=True)
    above = np.full(int(place.max()) + 1, -np.inf)
    np.maximum.at(above, place.ravel(), z[begin] - levels.face)
    if np.mean(above > AIR_MM) < MOST_PLACES:
        return []
    high = length(float(np.median(above)), 1)
    text = say("It begins to cut {high} mm above a sheet of {thick} mm. Is it for another one?",
               high=high, thick=length(levels.thickness))  # fmt: skip
    x, y = moves.points[begin[0], :2].tolist()
    return [Problem(int(moves.line[begin[0]]), "thickness", text, at=(x, y))]


def _check_steps(moves: Moves, geo: Geometry, cuts: Cuts, levels: Levels) -> list[Problem]:
    """Looks whether passes that go down in equal steps began well above the sheet.

    After a thin first pass, that spares the face, they look so too: where it takes more than a
    hair, one of them must lie in the air. Depths from the sheet's own face tell nothing.
    """
    if abs(levels.face) < MEANT_MM:
        return []
    top, first = find_tops(cuts)
    usual = float(np.median(top)) if len(top) > 1 else -np.inf
    if usual < levels.face + MEANT_MM:
        return []
    level = (moves.kind != RAPID) & (geo.flat > ALONG_MM) & moves.sure
    aired = level & (np.abs(geo.bottom - usual) < SAME_STEP_MM)
    if levels.face - cuts.high[first] > HAIR_MM and not aired.any():
        return []
    high = length(usual - levels.face, 1)
    text = say("Its passes begin {high} mm above a sheet of {thick} mm. Is it for another one?",
               high=high, thick=length(levels.thickness))  # fmt: skip
    return [note_cut(cuts, first, "thickness", text)]


def find_tops(cuts: Cuts) -> tuple[Floats, int]:
    """Finds where the level passes of each way began, that goes down by three equal steps or
    more; and the first of these cuts.
    """
    level = _find_level(cuts)
    keys = cuts.ways[level]
    order = np.lexsort((-cuts.high[level], keys))
    level, keys = level[order], keys[order]
    new = (np.diff(keys) != 0) | (-np.diff(cuts.high[level]) > LEVEL_MM)
    single = np.append(True, new)[: len(level)]  # of each way and depth, the highest first
    level, keys = level[single], keys[single]
    if len(level) < 3:
        return np.zeros(0), 0
    high = cuts.high[level]
    one, other = keys[:-2] == keys[1:-1], keys[1:-1] == keys[2:]
    begins = np.append(True, keys[1:-2] != keys[:-3])
    step, after = high[:-2] - high[1:-1], high[1:-1] - high[2:]
    even = one & other & begins & (np.abs(step - after) < SAME_STEP_MM) & (step > LEAST_STEP_MM)
    found = np.flatnonzero(even)
    return high[found] + step[found], int(level[found].min()) if len(found) else 0


def _find_level(cuts: Cuts) -> Ints:
    """Finds level cuts: those beside them are too, for a short chord of a spiral hardly sinks."""
    some = slice(MOST_LOOKED_AT)
    high, low, run = cuts.high[some], cuts.low[some], cuts.run[some]
    after = np.cumsum(cuts.flat[some])
    first = np.searchsorted(after, after - cuts.flat[some] - BESIDE_MM, side="right")
    last = np.minimum(np.searchsorted(after, after + BESIDE_MM), len(run) - 1)
    first = np.maximum(first, np.searchsorted(run, run))
    last = np.minimum(last, np.searchsorted(run, run, side="right") - 1)
    sinks = np.maximum(high[first], high) - np.minimum(low, low[last])
    return np.flatnonzero(sinks < FLAT_MM)


def _check_remark(program: Program, levels: Levels) -> list[Problem]:
    """Looks whether a remark says another thickness."""
    if program.thickness_said is None:
        return []
    thick, line = program.thickness_said
    if abs(thick - levels.thickness) < MEANT_MM:
        return []
    text = say("This remark says {said} mm; the sheet has {thick} mm. Is it for another one?",
               said=length(thick), thick=length(levels.thickness))  # fmt: skip
    return [Problem(line, "thickness", text, graded=LOOK)]
