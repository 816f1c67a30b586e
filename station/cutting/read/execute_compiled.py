"""What one line of plain words does, compiled: the report's order of execution.

`execute_plain.py` says the same line by line in plain Python; the tests hold the two together.
"""

from __future__ import annotations

import math

import numpy as np

from station.cutting.compiled import compile_inner
from station.cutting.model import CCW, CW, LINE, RAPID
from station.cutting.read.arcs_compiled import execute_arc
from station.cutting.read.controller_compiled import (
    DWELL,
    NO_FEED,
    NO_FEED_INVERSE,
    NO_MOTION,
    SPINDLE_PAUSE,
    RecordRow,
    find_offset,
    note_problem,
    write_pause,
    write_straight,
)
from station.cutting.read.cycles_compiled import execute_cycle
from station.cutting.read.line_compiled import (
    CENTRES,
    DISTANCE,
    FEED_MODE,
    MOTION,
    NONE,
    ONCE,
    PATH,
    PLANE,
    RETURN_TO,
    SYSTEM,
    UNITS,
    F,
)
from station.shop.lengths import MM_PER_INCH

CODE = 1  # the bit for a G code
S, T, P, X = 19, 20, 16, 24
XYZ, IJK = 0b111 << X, 0b111 << 9


@compile_inner
def execute_line(s: RecordRow) -> None:
    """Executes the line in the record."""
    if s.said & CODE:
        _set_units_and_feed_mode(s)
    s.minutes = math.nan
    if s.said & 1 << F:
        _set_feed(s)
    if s.said & (1 << S | 1 << T) or s.turn != NONE:
        _set_spindle_and_tool(s)
    if s.said & CODE:
        if s.codes[ONCE] != NONE:
            p = s.value[P] if s.said & 1 << P else 0.0
            write_pause(s, DWELL, max(0.0, p / 1000 if s.dwell_ms else p))
        _set_modes(s)
        if s.codes[MOTION] != NONE:
            _set_motion(s, s.codes[MOTION] // 10)
        if s.codes[ONCE] != NONE and not s.said & XYZ:
            return
    if s.motion > CCW:
        execute_cycle(s)
    elif s.said & XYZ or (s.motion in (CW, CCW) and s.said & IJK):
        _execute_move(s)


@compile_inner
def _set_units_and_feed_mode(s: RecordRow) -> None:
    """Sets inch or mm, and whether F is a feed or an inverse time."""
    if s.codes[UNITS] != NONE:
        s.scale = MM_PER_INCH if s.codes[UNITS] == 200 else 1.0
    if s.codes[FEED_MODE] != NONE:
        s.inverse = int(s.codes[FEED_MODE] == 930)
        if s.inverse:
            s.feed = 0.0


@compile_inner
def _set_feed(s: RecordRow) -> None:
    """Sets the feed, or under G93 the minutes of this line's move."""
    if s.inverse:
        s.minutes = 1 / s.value[F] if s.value[F] else math.nan
    else:
        s.feed = s.value[F] * s.scale


@compile_inner
def _set_spindle_and_tool(s: RecordRow) -> None:
    """Sets speed, chosen tool and spindle."""
    if s.said & 1 << S:
        s.rpm = max(0.0, s.value[S])
    if s.said & 1 << T:
        s.chosen = int(min(max(0.0, np.rint(s.value[T])), 99_999.0))
    if s.turn != NONE:
        s.turning = int(s.turn != 5)
        write_pause(s, SPINDLE_PAUSE, 0.0)


@compile_inner
def _set_modes(s: RecordRow) -> None:
    """Sets plane, system, path mode, distance mode and return height."""
    codes = s.codes
    if codes[PLANE] != NONE:
        s.plane = codes[PLANE] // 10
    if codes[SYSTEM] != NONE:
        code = codes[SYSTEM]
        s.system = (code - 530) // 10 if code <= 590 else code - 584
    if codes[PATH] != NONE:
        s.exact = int(codes[PATH] != 640)
    if codes[DISTANCE] != NONE:
        s.absolute = int(codes[DISTANCE] == 900)
    if codes[CENTRES] != NONE:
        s.absolute_centres = int(codes[CENTRES] == 901)
    if codes[RETURN_TO] != NONE:
        s.back_to = codes[RETURN_TO] // 10


@compile_inner
def _set_motion(s: RecordRow, code: int) -> None:
    """Sets another motion mode; words stick within one kind of cycle only."""
    s.motion = NONE if code == 80 else code
    if code > CCW and code != 80:
        if code != s.cycle:
            s.sticky[:] = math.nan
            s.cycle = code
        return
    if s.cycle != NONE:
        s.sticky[:] = math.nan
        s.cycle = NONE
    s.series = math.nan


@compile_inner
def _execute_move(s: RecordRow) -> None:
    """Executes a straight move or an arc to where the line's words lead."""
    if s.motion == NONE:
        note_problem(s, NO_MOTION, 0.0)
        s.motion = LINE
    if s.motion != RAPID:
        if s.inverse and math.isnan(s.minutes):
            note_problem(s, NO_FEED_INVERSE, 0.0)
        elif not s.inverse and s.feed <= 0:
            note_problem(s, NO_FEED, 0.0)
    x, y, z = _find_target(s, 0), _find_target(s, 1), _find_target(s, 2)
    if s.motion in (CW, CCW):
        execute_arc(s, (x, y, z))
    else:
        write_straight(s, s.motion, x, y, z)


@compile_inner
def _find_target(s: RecordRow, axis: int) -> float:
    """Finds where the line's word leads along an axis, in the file's frame."""
    end: float = s.at[axis]
    if s.said >> (X + axis) & 1:
        value = s.value[X + axis] * s.scale
        if s.absolute:
            s.unsure[axis] = 0
            end = value + find_offset(s, axis)
        else:
            end += value
    return end
