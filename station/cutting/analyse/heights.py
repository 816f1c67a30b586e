"""How thick the sheet is, and where its face and its bottom lie: as given, as a remark says, or as
the cuts show it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import shapely

from station.cutting.analyse.thickness import find_tops
from station.cutting.geometry.moves import Geometry, find_boxes, split_blocks
from station.cutting.geometry.strokes import Shapes, find_cuts
from station.cutting.model import (
    LOOK,
    RAPID,
    Bools,
    Floats,
    Ints,
    Moves,
    Problem,
    Program,
    Setting,
)
from station.shop.words import Say, length, say

THROUGH_MM = 0.05  # a cut that ends this little above the sheet's bottom still parts it
DEEP_MM, ABOVE_MM = -1.0, 0.3  # what tells a zero at the face from one at the spoilboard
MANY_RUNS = 3  # times as many runs above as below tell it too
SAME_LEVEL_MM = 0.5  # without a thickness: depths this near the deepest go through
AGREES_MM = 1.0  # a remark's thickness and the depth of the cuts: what is left or cut below
NO_OTHER_SHARE = 0.5  # of a thickness: cuts that are no deeper were not meant to go through
TOO_DEEP_MM = 0.9  # deeper than most: more than a skin
GOES_THROUGH = 0.9  # of a thickness that a remark says
FEW = 3  # times as many cuts as those that are too deep
FEW_DEEPER = 2  # times as many cuts end at a remark's thickness as go deeper than that
MARK_MM, WIDE_MM = 1.5, 15.0  # what is not as deep, or as wide, is a mark or a hole
CLOSED_MM = 12.0  # ends of a lap lie this near, leads and overlaps too


@dataclass(frozen=True)
class SheetHeights:
    """Holds the face, the bottom, and the height at or below which a cut goes through, mm."""

    face: float
    bottom: float
    through: float
    known: bool  # the thickness is given, or a remark says it
    asked: tuple[Problem, ...] = ()  # where nothing tells it, or one thing another than the next


def infer_heights(
    program: Program, geo: Geometry, setting: Setting, bits: Mapping[int, float], said: list[str]
) -> SheetHeights:
    """Finds where the sheet lies: what is given counts, then a remark that the cuts agree with,
    then the cuts.
    """
    remark, thick = program.thickness_said, setting.thickness_mm
    trusted = thick if thick is not None else remark[0] if remark else None
    zero = setting.zero or _infer_zero(program, geo, trusted, said, given=thick is not None)
    if thick is not None:
        if remark and abs(remark[0] - thick) > SAME_LEVEL_MM / 10:
            said.append(f"Thickness: {thick:g} mm, as given; line {remark[1]} says "
                        f"{remark[0]:g} mm.")  # fmt: skip
        return _lay_sheet(zero, thick)
    shown = _find_shown(program.moves, geo, bits, zero)
    asked: tuple[Problem, ...] = ()
    if remark:
        if shown.agrees(remark[0]):
            said.append(f"Thickness: {remark[0]:g} mm, as line {remark[1]} says.")
            return _lay_sheet(zero, remark[0])
        asked = (Problem(remark[1], "thickness", shown.tell_against(remark[0]), graded=LOOK),)
    said.append(shown.tell())
    if not shown.known and not asked and setting.cuts_out:
        text = say("How thick the sheet is does not stand in this file: give it.")
        asked = (Problem(0, "no-thickness", text),)
    taken = shown.taken or shown.thick
    face, bottom = (0.0, -taken) if zero == "face" else (taken, 0.0)
    through = bottom + min(SAME_LEVEL_MM, 0.2 * (face - bottom))
    return SheetHeights(face, bottom, through, known=False, asked=asked)


def _lay_sheet(zero: str, thick: float) -> SheetHeights:
    """Lays a sheet of a known thickness with its face or its bottom at zero."""
    face = 0.0 if zero == "face" else thick
    return SheetHeights(face, face - thick, face - thick + THROUGH_MM, known=True)


def _infer_zero(
    program: Program, geo: Geometry, thick: float | None, said: list[str], *, given: bool
) -> str:
    """Finds where Z is zero, at the face or the spoilboard, and says by what.

    A remark tells it; else the face where most runs end deep, and the spoilboard where more is
    cut above zero than far below it, or by far more runs. One run that is too deep turns nothing,
    unless all are below zero and it goes halfway through the sheet: then the others engrave.
    """
    if program.zero_said:
        said.append(f"Z is zero at the {program.zero_said}, as a remark says.")
        return program.zero_said
    moves = program.moves
    z = moves.points[1:, 2]
    across = (geo.flat > 1e-9) & moves.sure
    cuts, rapids = across & (moves.kind != RAPID), across & (moves.kind == RAPID)
    sure = (moves.kind != RAPID) & moves.sure
    deepest = float(z[sure].min()) if sure.any() else 0.0
    begins = find_begins(moves.kind != RAPID)
    usual = _find_usual_low(z, moves.kind != RAPID, begins)
    above, deep = cuts & (z > ABOVE_MM), cuts & (z < DEEP_MM)
    higher = geo.flat[above].sum() > geo.flat[deep].sum()
    more = _count_runs(above, begins) > MANY_RUNS * _count_runs(deep, begins)
    below = not given and (deepest if thick is None else usual) < DEEP_MM
    if below and higher and (more or usual > ABOVE_MM):  # but for a few cuts
        below = False
    if below or (thick and usual < -thick / 2):
        zero = "face"
    elif higher or (thick and more):
        zero = "spoilboard"  # ramps alone are cut above zero, and that only by some mm
    elif thick and deepest < -thick * (0.5 if given else GOES_THROUGH):
        zero = "face"
    else:
        over = thick is not None and cuts.any() and rapids.any()
        zero = "spoilboard" if over and float(z[rapids].max()) > (thick or 0.0) else "face"
    said.append(f"Z is zero at the {zero}.")
    return zero


def find_begins(feed: Bools) -> Ints:
    """Finds the first move of each run of feed moves."""
    starts = feed.copy()
    starts[1:] &= ~feed[:-1]
    return np.flatnonzero(starts)


def _find_usual_low(z: Floats, feed: Bools, begins: Ints) -> float:
    """Finds how low most runs of cuts go: the middle one of their deepest heights."""
    if not len(begins):
        return 0.0
    lows = np.minimum.reduceat(np.where(feed, z, np.inf), begins)
    return float(np.median(lows))


def _count_runs(some: Bools, begins: Ints) -> int:
    """Counts the runs that some moves are of."""
    return int(np.count_nonzero(np.logical_or.reduceat(some, begins))) if len(begins) else 0


@dataclass(frozen=True)
class Hints:
    """Holds what the cuts show of a thickness, mm. `known` False: no more than that it is at most
    `thick`; `line`: of the first cut that goes much deeper than most; 0: none does.
    """

    thick: float
    known: bool
    line: int = 0
    by: str = "the deepest cut"
    above: bool = False  # the bit goes across above it: it can be no thicker
    taken: float = 0.0  # what is reckoned with until it is known; 0: `thick`
    lows: tuple[float, ...] = ()  # how deep laps around a part go, under a zero at the face
    runs: tuple[float, ...] = ()  # how deep each run goes, under the same

    def agrees(self, said: float) -> bool:
        """Tells whether a sheet as thick as a remark says is cut as the file cuts."""
        if self.above:
            return said <= self.thick + AGREES_MM / 10
        if self.thick < NO_OTHER_SHARE * said:
            return True
        if any(abs(said - deep) <= AGREES_MM for deep in (self.thick, *map(abs, self.lows))):
            return True
        just = sum(0 < -low - said <= AGREES_MM for low in self.runs)  # end a little below it
        return just >= FEW_DEEPER * sum(-low - said > AGREES_MM for low in self.runs) > 0

    def tell(self) -> str:
        """Says how thick the sheet was taken."""
        if self.above:
            return f"Thickness: not known, at most {self.thick:g} mm."
        if not self.known:
            return "Thickness: not known; all cuts are shallow."
        deeper = f"; line {self.line} goes deeper" if self.line else ""
        return f"Thickness: {self.thick:g} mm, {self.by}{deeper}."

    def tell_against(self, said: float) -> Say:
        """Asks about a remark that says another thickness than the cuts show."""
        if self.above:
            return say("This remark says {said} mm; the bit goes across {high} mm above the "
                       "spoilboard.", said=length(said), high=length(self.thick, 2))  # fmt: skip
        return say("This remark says {said} mm; it cuts as for a sheet of {thick} mm. Which is "
                   "it?", said=length(said), thick=length(self.thick, 2))  # fmt: skip


def _find_shown(moves: Moves, geo: Geometry, bits: Mapping[int, float], zero: str) -> Hints:
    """Finds what the cuts show of the thickness."""
    feed = (moves.kind != RAPID) & moves.sure
    if zero == "face":
        deepest = float(geo.bottom[feed].min()) if feed.any() else 0.0
        laps = _find_laps(moves, geo, feed)
        lows, runs = tuple(laps.low[laps.outer].tolist()), tuple(laps.low.tolist())
        if usual := _find_usual_depth(laps):
            first = int(np.argmax(feed & (geo.bottom < usual - TOO_DEEP_MM)))
            line = int(moves.line[first])
            by = "as deep as most cuts go"
            return Hints(-usual, known=True, line=line, by=by, lows=lows, runs=runs)
        return Hints(max(-deepest, 0.1), known=deepest < DEEP_MM, lows=lows, runs=runs)
    ceiling, highest = _find_ceiling(moves, geo, feed)
    tops, _ = find_tops(find_cuts(moves, geo, bits, ceiling))
    if len(tops):
        return Hints(float(np.median(tops)), known=True, by="as passes go down in even steps")
    narrow = min(bits.values(), default=0.0)  # hardly anybody cuts less deep in one pass
    return Hints(ceiling, known=False, above=True, taken=min(ceiling, highest + narrow))


def _find_ceiling(moves: Moves, geo: Geometry, feed: Bools) -> tuple[float, float]:
    """Finds the lowest height, over a zero on the spoilboard, at which the bit goes across or
    begins to go down above all that it cuts along: the face is there, or below. Gives with it the
    height of the highest cut along the sheet, or 0.
    """
    z = moves.points[:, 2]
    along = feed & (geo.flat > 1e-9)
    highest = max(float(geo.top[along].max()) if along.any() else 0.0, 0.0)
    across = (moves.kind == RAPID) & moves.sure & (geo.flat > 1e-9)
    begins = find_begins(feed)
    places = moves.points[begins, :2].round(1)
    begins = begins[np.unique(places, axis=0, return_index=True)[1]]  # later ones are in the kerf
    over = np.concatenate((np.minimum(z[:-1], z[1:])[across], z[begins]))
    over = over[over > highest + 1e-6]
    return max(float(over.min()) if len(over) else highest, 0.1), highest


@dataclass(frozen=True)
class Laps:
    """Holds the unbroken runs of a file: how deep they go, how far they go as deep, and which are
    laps that lie within no other as deep, as pockets and marks do.
    """

    low: Floats
    way: Floats
    outer: Bools

    def pick_near(self, low: float) -> Bools:
        """Picks the outer laps that go as deep as that, or a little less."""
        return self.outer & (self.low >= low) & (self.low <= low + SAME_LEVEL_MM)


def _find_usual_depth(laps: Laps) -> float:
    """Finds how deep most laps go where a few cuts go much deeper; 0: no such cut is there."""
    lows = np.sort(laps.low[laps.outer]).tolist()
    if not lows:
        return 0.0
    usual = max(lows, key=lambda low: float(laps.way[laps.pick_near(low)].sum()))
    most, deeper = laps.pick_near(usual), laps.low < usual - TOO_DEEP_MM
    few = (
        deeper.sum() <= max(1, most.sum() / FEW) and laps.way[deeper].sum() < laps.way[most].sum()
    )
    return usual if few and deeper.any() and most.sum() > 1 else 0.0


def _find_laps(moves: Moves, geo: Geometry, feed: Bools) -> Laps:
    """Finds the laps of a file."""
    begins = find_begins(feed)
    runs = len(begins)
    if not runs:
        return Laps(np.zeros(0), np.zeros(0), np.zeros(0, dtype=bool))
    low = np.minimum.reduceat(np.where(feed, geo.bottom, np.inf), begins)
    of = np.searchsorted(begins, np.arange(len(feed)), side="right") - 1
    deep = np.flatnonzero(feed & (geo.flat > 1e-9))
    deep = deep[geo.bottom[deep] <= low[of[deep]] + SAME_LEVEL_MM]
    run = of[deep]
    corner, far = np.full((runs, 2), np.inf), np.full((runs, 2), -np.inf)
    for some in split_blocks(np.arange(len(deep))):
        a, b = find_boxes(moves, deep[some])
        np.minimum.at(corner, run[some], a[:, :2])
        np.maximum.at(far, run[some], b[:, :2])
    there, first = np.unique(run, return_index=True)
    last = np.append(first[1:], len(run))[: len(there)] - 1
    ends = moves.points[deep[last] + 1, :2] - moves.points[deep[first], :2]
    boxes = shapely.box(*corner[there].T, *far[there].T)
    lap = (far[there] - corner[there]).min(axis=1, initial=np.inf) > WIDE_MM
    lap &= (np.hypot(*ends.T) < CLOSED_MM) & (low[there] < -MARK_MM)
    outer = np.zeros(runs, dtype=bool)
    outer[there] = lap & ~_pick_within(boxes, low[there])
    way = np.zeros(runs)
    np.add.at(way, run, geo.flat[deep])
    return Laps(low, way, outer)


def _pick_within(boxes: Shapes, low: Floats) -> Bools:
    """Picks the boxes of runs that lie within that of a deeper one, or a larger one as deep."""
    grown = shapely.buffer(boxes, WIDE_MM / 2, join_style="mitre")
    inner, around = shapely.STRtree(grown).query(boxes, predicate="within")
    deeper = low[around] < low[inner] - SAME_LEVEL_MM
    as_deep = low[around] < low[inner] + SAME_LEVEL_MM
    size = shapely.area(boxes)
    within = np.zeros(len(boxes), dtype=bool)
    within[inner[deeper | (as_deep & (size[around] > size[inner] + 1e-6))]] = True
    return within
