"""What could go wrong with a path: its bits, speeds, heights and places, each at its line."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np

from station.cutting.analyse.inference import Inferred
from station.cutting.analyse.turned_arcs import find_turned_arcs
from station.cutting.geometry.moves import (
    Geometry,
    find_boxes,
    list_values,
    split_blocks,
)
from station.cutting.model import (
    CW,
    KNOW,
    MOST_OF_A_KIND,
    RAPID,
    XY,
    Bools,
    Floats,
    Ints,
    Moves,
    Problem,
    Program,
    Setting,
    count_unlisted,
)
from station.shop.words import Say, length, say, speed

TOUCH_MM = 0.01
LONGEST_DWELL_S = 60.0  # nobody waits longer for a spindle: common practice, no source
FASTEST_MM_MIN = 40_000.0  # no router for wood cuts so fast: the same
SAME_BIT_MM = 0.05
SAME_PLACE_MM, PLACES = 0.02, 1 << 32  # places on a grid, by one number each
SAME_RIP_MM = 0.1  # cuts along one line lie this near
POINTED = re.compile(r"\bV\W?BIT\b|\bV\W?GROOVE|\bDRILL\b|BOHRER|\bDEG\b.*\bV\b|\bENGRAV")
FAR_MM = 60.0  # a slot that is drilled at both its ends is shorter
# a feed so many times the usual one of its bit has lost its point, if it is as quick as this
AT_FACE_MM = 0.25  # a bit comes down on the face as near as this
MOST_TIMES, LEAST_QUICK_MM_MIN = 8.0, 10_000.0
RIP_MM = 20.0  # how far a cut across the sheet may go over its edge


def find_path_problems(
    program: Program, geo: Geometry, inferred: Inferred, setting: Setting
) -> list[Problem]:
    """Finds what could go wrong with a path, in the order of the file."""
    moves = program.moves
    found = [
        *_check_cuts(moves, geo, inferred, setting),
        *_check_heights(moves, geo, inferred),
        *_check_places(moves, geo, inferred, setting),
        *_check_spindle(moves, geo, inferred, setting),
        *_check_bits(moves, setting),
        *_check_bits_said(program, setting),
        *_check_hold_downs(moves, geo, inferred, setting),
        *_check_dwells(program),
        *_check_zeroes(program),
        *_check_backward(program),
        *_check_pointed(program, geo, inferred),
        *find_turned_arcs(moves, geo, inferred.face),
    ]
    return sorted(found, key=lambda p: (p.line, p.kind))


def _check_zeroes(program: Program) -> list[Problem]:
    """Tells where a file goes on from another zero: how far that is from the first stands in the
    router's control, and nowhere here.
    """
    if program.other_zero is None:
        return []
    line, name = program.other_zero
    text = say("From here on zero {name} counts: where it lies is not known here.", name=name)
    return [Problem(line, "other-zero", text)]


def _check_backward(program: Program) -> list[Problem]:
    """Tells where the spindle is to turn backwards: common bits cut the other way round, and a
    collet may come loose. Common practice, no source.
    """
    if not program.backward:
        return []
    text = say("M4 turns the spindle backwards. Is there a bit in it that cuts so?")
    return [Problem(program.backward, "spindle-backward", text)]


def _check_pointed(program: Program, geo: Geometry, inferred: Inferred) -> list[Problem]:
    """Tells of bits that their remarks call drills, or pointed, and that cut far along the sheet
    as deep as through it: they leave slopes, or break.
    """
    moves = program.moves
    through = (moves.kind != RAPID) & moves.sure & (geo.top <= inferred.levels.through)
    found = []
    for said in program.bits_said:
        if not POINTED.search(said.text):
            continue
        own = np.flatnonzero(through & (moves.tool == said.number))
        if geo.flat[own].sum() > FAR_MM:
            text = say("Line {line} calls this bit {said}: is it to cut through the sheet?",
                       line=said.line, said=said.text)  # fmt: skip
            first = own[geo.flat[own] > TOUCH_MM][:1].tolist()
            found += _note_moves(moves, first, "bit-pointed", text)
    return found


def _check_dwells(program: Program) -> list[Problem]:
    """Looks for waits so long that P was meant in milliseconds."""
    return [
        Problem(
            pause.line,
            "long-dwell",
            say("Waits {n} seconds. Does this router take P as milliseconds?",
                n=round(pause.seconds)),
        )
        for pause in program.pauses
        if pause.kind == "dwell" and pause.seconds > LONGEST_DWELL_S
    ]  # fmt: skip


def _check_cuts(
    moves: Moves, geo: Geometry, inferred: Inferred, setting: Setting
) -> list[Problem]:
    """Looks whether anything is cut at all."""
    cuts = (moves.kind != RAPID) & (geo.bottom < inferred.face - TOUCH_MM)
    if cuts.any() or not setting.cuts_out:
        return []
    return [Problem(0, "nothing-cut", say("Nothing is cut into the sheet."))]


def _find_starts_by_line(moves: Moves, some: Bools) -> list[int]:
    """Finds the first move of each unbroken run of picked moves, once a line."""
    first = some.copy()
    first[1:] &= ~some[:-1] | (moves.line[1:] != moves.line[:-1])
    index = np.flatnonzero(first)
    _, once = np.unique(moves.line[index], return_index=True)
    found: list[int] = index[once].tolist()
    return found


def _find_starts(some: Bools) -> list[int]:
    """Finds the first move of each unbroken run of picked moves."""
    first = some.copy()
    first[1:] &= ~some[:-1]
    found: list[int] = np.flatnonzero(first).tolist()
    return found


def _note_moves(moves: Moves, index: list[int], kind: str, text: Say) -> list[Problem]:
    """Makes a problem of each move; those that are too many are counted."""
    listed = index[:MOST_OF_A_KIND]
    ends = moves.points[1:, :2]
    found = [
        Problem(int(moves.line[i]), kind, text, at=(float(ends[i, 0]), float(ends[i, 1])))
        for i in listed
    ]
    return [*found, count_unlisted(kind, len(index))] if len(index) > len(listed) else found


def _check_heights(moves: Moves, geo: Geometry, inferred: Inferred) -> list[Problem]:
    """Looks for rapids below the face and for cuts too deep below the sheet."""
    sure = moves.sure
    z = moves.points[:, 2]
    rapid = (moves.kind == RAPID) & sure & (geo.bottom < inferred.face - TOUCH_MM)
    rapid &= (geo.flat > 1e-9) | (z[1:] < z[:-1])
    rapid &= ~_pick_returns(moves, geo, rapid)
    rapid &= ~_pick_unplaced(moves, inferred.face)
    rapid = _keep_over_sheet(moves, rapid, inferred)
    floor = inferred.bottom - inferred.spoilboard
    deep = sure & (geo.bottom < floor - TOUCH_MM)
    text = say("A rapid runs below the sheet's face.")
    found = _note_moves(moves, _find_starts_by_line(moves, rapid), "rapid-in-sheet", text)
    deeper = _find_starts(deep)
    if len(deeper) > MOST_OF_A_KIND:
        found.append(count_unlisted("too-deep", len(deeper)))
    for i in deeper[:MOST_OF_A_KIND]:
        into = inferred.bottom - float(geo.bottom[i])
        text = say("Cuts {into} mm below the sheet; {most} mm is allowed.",
                   into=length(into, 2), most=length(inferred.spoilboard))  # fmt: skip
        found += _note_moves(moves, [i], "too-deep", text)
    return found


def _keep_over_sheet(moves: Moves, some: Bools, inferred: Inferred) -> Bools:
    """Keeps of the picked moves those that come over the sheet."""
    x0, y0 = inferred.corner
    kept = np.zeros(len(moves), dtype=bool)
    for index in split_blocks(np.flatnonzero(some)):
        low, high = find_boxes(moves, index)
        over = (low[:, 0] < x0 + inferred.sheet[0]) & (high[:, 0] > x0)
        kept[index] = over & (low[:, 1] < y0 + inferred.sheet[1]) & (high[:, 1] > y0)
    return kept


def _pick_unplaced(moves: Moves, face: float) -> Bools:
    """Picks moves before the file first says a height: where the bit is then is not known."""
    z, picked = moves.points[1:, 2], np.zeros(len(moves), dtype=bool)
    said = z != 0.0
    before = slice(int(np.argmax(said)) + 1 if said.any() else len(z))
    picked[before] = ~said[before] | (z[before] >= face)
    return picked


def _pick_returns(moves: Moves, geo: Geometry, some: Bools) -> Bools:
    """Picks of some rapids those straight down no further than the bit has cut there before: into
    a hole that is drilled in pecks, or to where the next pass begins.
    """
    picked = np.zeros(len(moves), dtype=bool)
    down = np.flatnonzero(some & (geo.flat < 1e-9))
    if not len(down):
        return picked
    place = np.round(moves.points[1:, :2] / SAME_PLACE_MM).astype(np.int64)
    keys = place[:, 0] * PLACES + place[:, 1]
    index = np.flatnonzero(np.isin(keys, keys[down]))
    lowest: dict[int, float] = {}
    for n, key, z, kind in zip(
        index.tolist(), keys[index].tolist(), moves.points[index + 1, 2].tolist(),
        moves.kind[index].tolist(), strict=True,
    ):  # fmt: skip
        if kind == RAPID:
            picked[n] = z > lowest.get(key, np.inf) - TOUCH_MM
        else:
            lowest[key] = min(z, lowest.get(key, np.inf))
    return picked & some


def _check_places(
    moves: Moves, geo: Geometry, inferred: Inferred, setting: Setting
) -> list[Problem]:
    """Looks for cuts outside the sheet and for a path that the bed is too small for."""
    x0, y0 = inferred.corner
    x1, y1 = x0 + inferred.sheet[0], y0 + inferred.sheet[1]
    inside = (moves.kind != RAPID) & moves.sure & (geo.bottom < inferred.face - TOUCH_MM)
    out = _keep_outside(moves, geo, inside, (x0, y0, x1, y1))
    ends = _pick_ends(inside & (geo.flat > 1e-9), out)
    over = _pick_over_edge(moves, geo, out, ends, (x0, y0, x1, y1))
    found = [
        *_note_moves(
            moves, _find_starts(over), "across-edge", say("Cuts across the sheet's edge.")
        ),
        *_note_moves(
            moves,
            _find_starts(out & ~over),
            "outside-sheet",
            say("Cuts outside the sheet."),
        ),
    ]
    router = setting.router
    if router and moves.sure.any():
        left, front, _, right, rear, _ = geo.bounds
        wide, high_ = right - left, rear - front
        if wide > router.length_mm + TOUCH_MM or high_ > router.width_mm + TOUCH_MM:
            sizes = {"long": length(wide, 0), "wide": length(high_, 0)}
            text = say("The path is {long} × {wide} mm; the bed of {router} is smaller.",
                       router=router.name, **sizes)  # fmt: skip
            found.append(Problem(0, "outside-bed", text))
    return found


def _keep_outside(
    moves: Moves, geo: Geometry, some: Bools, box: tuple[float, float, float, float]
) -> Bools:
    """Keeps of the picked moves, whose places are sure, those that leave the sheet's box (x, y,
    x, y); where the whole path stays in it, none is looked at.
    """
    x0, y0, x1, y1 = box
    kept = np.zeros(len(moves), dtype=bool)
    left, front, _, right, rear, _ = geo.bounds
    if x0 <= left and y0 <= front and right <= x1 and rear <= y1:
        return kept
    for index in split_blocks(np.flatnonzero(some)):
        low, high = find_boxes(moves, index)
        out = (low[:, 0] < x0 - TOUCH_MM) | (low[:, 1] < y0 - TOUCH_MM)
        kept[index] = out | (high[:, 0] > x1 + TOUCH_MM) | (high[:, 1] > y1 + TOUCH_MM)
    return kept


def _pick_ends(cuts: Bools, out: Bools) -> Bools:
    """Picks the first and last of cuts that follow one another, where both lie outside."""
    beside = np.concatenate(([False], cuts, [False]))
    first = np.flatnonzero(cuts & ~beside[:-2])
    last = np.flatnonzero(cuts & ~beside[2:])
    both = out[first] & out[last] & (first < last)
    ends = np.zeros(len(cuts), dtype=bool)
    ends[first[both]] = ends[last[both]] = True
    return ends


def _pick_over_edge(
    moves: Moves, geo: Geometry, some: Bools, ends: Bools, box: tuple[float, float, float, float]
) -> Bools:
    """Picks cuts straight over an edge of the sheet, and a little past it, that are part of a rip
    (cuts along the same line go over the opposite edge too), or that begin or end there, as
    around a part that has the sheet's edge for one of its own.
    """
    picked, index = np.zeros(len(some), dtype=bool), np.flatnonzero(some)
    low, high = (corner[:, :2] for corner in find_boxes(moves, index))
    less, more = np.array(box[:2]) - low, high - np.array(box[2:])
    little = ((less < RIP_MM) & (more < RIP_MM)).all(axis=1) & (moves.kind[index] < CW)
    over = np.zeros(len(index), dtype=bool)
    for axis in (0, 1):
        before, behind = less[:, axis] > TOUCH_MM, more[:, axis] > TOUCH_MM
        along = high[:, 1 - axis] - low[:, 1 - axis] < TOUCH_MM
        line = np.round(low[:, 1 - axis] / SAME_RIP_MM).astype(np.int64)
        first, last = (line[along & side] for side in (before, behind))
        both = np.isin(line, np.intersect1d(first, last))
        over |= (before & behind) | (along & (both | ends[index]) & (before | behind))
    picked[index] = little & (over | (geo.flat[index] < 1e-9))
    return picked


def _check_spindle(
    moves: Moves, geo: Geometry, inferred: Inferred, setting: Setting
) -> list[Problem]:
    """Looks for cuts with the spindle off or at a speed nobody said, with an unusual chip load,
    or too quick.
    """
    z = moves.points[:, 2]
    inside = (moves.kind != RAPID) & (np.minimum(z[:-1], z[1:]) < inferred.face - TOUCH_MM)
    inside &= moves.sure
    still = _find_starts(inside & (moves.rpm <= 0))
    found = _note_moves(moves, still, "spindle-off", say("Cuts while the spindle is off."))
    unsaid = _find_starts(inside & np.isnan(moves.rpm))[:1]
    text = say("No speed is given by then: the spindle turns as it was last set.")
    for problem in _note_moves(moves, unsaid, "no-speed", text):
        graded = KNOW if np.isnan(moves.rpm[inside]).all() else ""
        found.append(replace(problem, graded=graded))
    level = inside & (geo.flat > 1e-9) & (moves.rpm > 0) & (moves.feed > 0)
    return [
        *found,
        *_check_chip_loads(moves, level, setting),
        *_check_feeds(moves, inside, setting),
        *_check_lost_points(moves, geo, inside, inferred.face, setting),
    ]


def _check_chip_loads(moves: Moves, level: Bools, setting: Setting) -> list[Problem]:
    """Looks for chip loads outside the band, once for each bit, feed and speed."""
    low, high = setting.shop.chip_low_mm, setting.shop.chip_high_mm
    index = np.flatnonzero(level)
    chip = moves.feed[index]
    chip /= moves.rpm[index]
    tool = moves.tool[index]
    tools = list_values(tool)
    teeth = np.array([setting.count_teeth(number) for number in tools])
    chip /= teeth[np.searchsorted(tools, tool)] if len(tools) > 1 else teeth
    outside = ~((low <= chip) & (chip <= high))
    index, chip = index[outside], chip[outside]
    pairs = np.column_stack([c[index] for c in (moves.tool, moves.feed, moves.rpm)])
    _, first = np.unique(pairs, axis=0, return_index=True)
    found = []
    for n in sorted(first.tolist()):
        text = say("Chip load {chip} mm; this shop looks for {low} to {high} mm.",
                   chip=length(float(chip[n]), 3), low=length(low), high=length(high))  # fmt: skip
        found += _note_moves(moves, [int(index[n])], "chip-load", text)
    return found


def _check_feeds(moves: Moves, inside: Bools, setting: Setting) -> list[Problem]:
    """Looks for feeds above what the router can do."""
    if setting.router is None:
        return []
    fast = inside & (moves.feed > setting.router.rapid_mm_min)
    text = say("The feed is above {most} mm/min, the router's fastest.",
               most=speed(setting.router.rapid_mm_min))  # fmt: skip
    return _note_moves(moves, _find_starts(fast), "feed-out-of-band", text)


def _check_lost_points(
    moves: Moves, geo: Geometry, inside: Bools, face: float, setting: Setting
) -> list[Problem]:
    """Looks for feeds that cannot be meant: no router cuts so fast, or about ten times as fast as
    the same bit elsewhere. What plunges from above is looked at by itself, unless it stops at the
    face.
    """
    quick = moves.feed > LEAST_QUICK_MM_MIN
    if not quick.any():
        return []
    level = geo.flat > 1e-9
    most = setting.router.rapid_mm_min if setting.router else np.inf  # what is quicker is told
    high, low = moves.points[:-1, 2], moves.points[1:, 2]
    down = (moves.kind != RAPID) & ~level & (low < high)
    down &= (high <= face - TOUCH_MM) | (np.abs(low - face) < AT_FACE_MM)
    quick &= (moves.feed <= most) & moves.sure & ((inside & level) | down)
    if not quick.any():
        return []
    stretch = np.cumsum(np.diff(moves.feed, prepend=0.0) != 0)  # at one feed, no rapid between
    found = []
    for tool in list_values(moves.tool[quick]):
        own = moves.tool == tool
        usual = _find_usual_feed(moves, geo, inside & level & own)
        fast = quick & own & (moves.feed > min(MOST_TIMES * usual, FASTEST_MM_MIN))
        for i in np.flatnonzero(fast)[np.unique(stretch[fast], return_index=True)[1]].tolist():
            text = say("The feed is above {most} mm/min: a zero too many, or a lost point?",
                       most=speed(FASTEST_MM_MIN))  # fmt: skip
            if moves.feed[i] <= FASTEST_MM_MIN:
                text = say("Cuts at {feed} mm/min; elsewhere this bit does at {usual} mm/min.",
                           feed=speed(float(moves.feed[i])), usual=speed(usual))  # fmt: skip
            found += _note_moves(moves, [i], "feed-out-of-band", text)
    return found[:MOST_OF_A_KIND]


def _find_usual_feed(moves: Moves, geo: Geometry, some: Bools) -> float:
    """Finds the feed that half of a way is cut at, or less."""
    index = np.flatnonzero(some)
    index = index[np.argsort(moves.feed[index], kind="stable")]
    way = np.cumsum(geo.flat[index])
    return float(moves.feed[index[np.searchsorted(way, way[-1] / 2)]]) if len(index) else np.inf


def _check_bits(moves: Moves, setting: Setting) -> list[Problem]:
    """Looks for bits that the router does not have."""
    if setting.bits_there is None:
        return []
    feed = moves.kind != RAPID
    return [
        Problem(
            int(moves.line[np.argmax(feed & (moves.tool == tool))]),
            "bit-missing",
            say("The router does not have bit {number}.", number=tool)
            if tool
            else say("It cuts before it calls a bit."),
        )
        for tool in list_values(moves.tool[feed])
        if tool not in setting.bits_there
    ]


def _check_bits_said(program: Program, setting: Setting) -> list[Problem]:
    """Looks for bits of which a remark and the router say different diameters."""
    feed = np.flatnonzero(program.moves.kind != RAPID)
    first = int(program.moves.tool[feed[0]]) if len(feed) else 0
    found = []
    for said in program.bits_said:
        there = setting.changer_mm.get(said.number or 0)
        in_changer = True
        if there is None and said.number == first and not setting.changer_mm:
            there, in_changer = setting.spindle_mm, False
        if there is not None and abs(there - said.diameter_mm) > SAME_BIT_MM:
            text = (
                say("The changer has a bit of {there} mm; this remark asks for {asked} mm.",
                    there=length(there), asked=length(said.diameter_mm))
                if in_changer
                else say("The spindle has a bit of {there} mm; this remark asks for {asked} mm.",
                         there=length(there), asked=length(said.diameter_mm))
            )  # fmt: skip
            found.append(Problem(said.line, "bit-differs", text))
    return found


def _check_hold_downs(
    moves: Moves, geo: Geometry, inferred: Inferred, setting: Setting
) -> list[Problem]:
    """Looks for moves that pass a hold-down nearer than a clamp and the bit are wide."""
    if not setting.hold_downs:
        return []
    near = np.flatnonzero(geo.bottom < inferred.face + 10.0)
    reach = 15.0 + max(inferred.bits.values(), default=0.0) / 2
    found = []
    for x, y in setting.hold_downs:
        at = np.array([x + inferred.corner[0], y + inferred.corner[1]])
        hit = _find_first_pass(moves, near, at, reach)
        found += _note_moves(moves, hit, "hold-down", say("A hold-down is in the way."))
    return found


def _find_first_pass(moves: Moves, some: Ints, at: Floats, reach: float) -> list[int]:
    """Finds the first of some moves that comes so near to a place; empty: none does."""
    for index in split_blocks(some):
        low, high = find_boxes(moves, index)
        off = np.maximum(np.maximum(low[:, :2] - at, at - high[:, :2]), 0.0)
        near = index[np.hypot(off[:, 0], off[:, 1]) < reach]
        near = near[_find_passes(moves, near, at, reach)]
        if len(near):
            return [int(near[0])]
    return []


def _find_passes(moves: Moves, some: Ints, at: Floats, reach: float) -> Bools:
    """Tells of some moves whether they come so near; of arcs in upright planes their boxes have
    told.
    """
    start, end = moves.points[some, :2], moves.points[some + 1, :2]
    step = end - start
    size = np.maximum((step * step).sum(axis=1), 1e-18)
    t = np.clip(((at - start) * step).sum(axis=1) / size, 0, 1)
    off = start + step * t[:, None] - at
    near = np.hypot(off[:, 0], off[:, 1]) < reach
    bent = moves.kind[some] >= CW
    flat = bent & (moves.plane[some] == XY)
    near[bent & ~flat] = True
    near[flat] = _find_arc_passes(moves, some[flat], at, reach)
    return np.asarray(near)


def _find_arc_passes(moves: Moves, some: Ints, at: Floats, reach: float) -> Bools:
    """Tells whether arcs come so near: at their ends, or where the spoke to `at` meets them."""
    centre, sweep = moves.centre[some], moves.sweep[some]
    ends = moves.points[some, :2], moves.points[some + 1, :2]
    near = np.logical_or(*(np.hypot(*(end - at).T) < reach for end in ends))
    spoke, away = ends[0] - centre, at - centre
    ahead = np.arctan2(away[:, 1], away[:, 0]) - np.arctan2(spoke[:, 1], spoke[:, 0])
    faced = np.where(sweep > 0, ahead, -ahead) % (2 * np.pi) <= np.abs(sweep)
    off = np.abs(np.hypot(*spoke.T) - np.hypot(*away.T))
    return np.asarray(near | (faced & (off < reach)))
