"""Canned cycles G73, G81 to G89, compiled; `cycles_plain.py` says the same in plain Python."""

from __future__ import annotations

import math

import numpy as np

from station.cutting.compiled import compile_inner
from station.cutting.model import LINE, RAPID, XY, XZ
from station.cutting.read.controller_compiled import (
    CYCLE_BARE,
    CYCLE_CHANGED,
    CYCLE_INVERSE,
    CYCLE_LOW,
    CYCLE_PECKS,
    CYCLE_Q,
    CYCLE_REPEATS,
    CYCLE_SIDE,
    CYCLE_X,
    DWELL,
    MOVES,
    NO_FEED_CYCLE,
    RecordRow,
    find_offset,
    note_problem,
    write_pause,
    write_straight,
)
from station.cutting.read.cycles_plain import (
    CHIP_BREAK,
    MOST_ON_A_LINE,
    MOST_PECKS,
    MOST_REPEATS,
    PECK,
)

A, L, P, Q, R, X = 1, 12, 16, 17, 18, 24
FINE = -1
MOTION = 0  # the group of motion codes


@compile_inner
def execute_cycle(s: RecordRow) -> None:
    """Executes the cycle that is on, at each place that the line names."""
    deep = 2 if s.plane == XY else 1 if s.plane == XZ else 0
    _stick_word(s, X + deep, s.scale)
    _stick_word(s, R, s.scale)
    _stick_word(s, Q, s.scale)
    _stick_word(s, P, 1.0)
    if not s.said >> X & 7:
        if s.said & 1 and s.codes[MOTION] >= 0:
            note_problem(s, CYCLE_BARE, 0.0)
        return
    repeats = _count_repeats(s)
    if s.said >> R & 1 or s.said >> (X + deep) & 1:
        s.sticky[A] = float(s.absolute)
    elif not math.isnan(s.sticky[A]) and s.sticky[A] != float(s.absolute):
        note_problem(s, CYCLE_CHANGED, 0.0)
    if math.isnan(s.series):
        s.series = s.at[deep]
    began = s.series if s.return_first else s.at[deep]
    clear, bottom = _find_heights(s, deep, began)
    wrong = _find_fault(s, deep, clear, bottom, repeats)
    if wrong != FINE:
        note_problem(s, wrong, 0.0)
        return
    if s.feed <= 0:
        note_problem(s, NO_FEED_CYCLE, 0.0)
    need = repeats * (8 + 3 * int(_count_pecks(s, clear, bottom)))
    if s.moves + need > MOVES:
        s.need = need
        return
    for _ in range(repeats):
        _drill_hole(s, deep, clear, bottom, began)


@compile_inner
def _stick_word(s: RecordRow, letter: int, scale: float) -> None:
    """Keeps a word's value, for it sticks from line to line."""
    if s.said >> letter & 1:
        s.sticky[letter] = s.value[letter] * scale


@compile_inner
def _count_repeats(s: RecordRow) -> int:
    """Counts how often the cycle runs; an L that is no count is noted."""
    if not s.said >> L & 1:
        return 1
    number = s.value[L]
    if number != np.rint(number) or number < 1:
        note_problem(s, CYCLE_REPEATS, 0.0)
        return 1
    return int(min(number, MOST_REPEATS))


@compile_inner
def _find_heights(s: RecordRow, deep: int, began: float) -> tuple[float, float]:
    """Finds the clear height R and the bottom of the hole, in the frame."""
    clear, bottom = s.sticky[R], s.sticky[X + deep]
    if s.absolute:
        return clear + find_offset(s, deep), bottom + find_offset(s, deep)
    clear += began if s.relative_r else find_offset(s, deep)
    return clear, clear + bottom


@compile_inner
def _count_pecks(s: RecordRow, clear: float, bottom: float) -> float:
    """Counts the pecks down to the bottom."""
    return (clear - bottom) / s.sticky[Q] if s.motion in (CHIP_BREAK, PECK) else 0.0


@compile_inner
def _find_fault(s: RecordRow, deep: int, clear: float, bottom: float, repeats: int) -> int:
    """Tells why nothing is drilled; FINE: it is."""
    if math.isnan(clear) or math.isnan(bottom):
        return CYCLE_X + deep
    if s.inverse:
        return CYCLE_INVERSE
    if s.side != 40:
        return CYCLE_SIDE
    if s.motion in (CHIP_BREAK, PECK) and not s.sticky[Q] > 0:
        return CYCLE_Q
    pecks = _count_pecks(s, clear, bottom)
    if pecks > MOST_PECKS or pecks * repeats > MOST_ON_A_LINE:
        return CYCLE_PECKS
    return FINE if clear >= bottom else CYCLE_LOW


@compile_inner
def _drill_hole(s: RecordRow, deep: int, clear: float, bottom: float, began: float) -> None:
    """Drills one hole: over it, down, and back."""
    if s.absolute:
        s.unsure[deep] = 0
    if s.at[deep] < clear:
        _move_to(s, RAPID, deep, clear)
    _move_over(s, deep)
    _move_to(s, RAPID, deep, clear)
    if s.motion in (CHIP_BREAK, PECK):
        _peck_down(s, deep, clear, bottom)
    else:
        _move_to(s, LINE, deep, bottom)
    wait = s.sticky[P]
    if s.motion in (82, 86, 88, 89) and not math.isnan(wait) and wait != 0:
        write_pause(s, DWELL, max(0.0, wait / 1000 if s.dwell_ms else wait))
    if s.motion in (84, 85, 89):
        _move_to(s, LINE, deep, clear)
    _move_to(s, RAPID, deep, max(began, clear) if s.back_to == 98 else clear)


@compile_inner
def _move_over(s: RecordRow, deep: int) -> None:
    """Moves across to the next hole."""
    x, y, z = s.at[0], s.at[1], s.at[2]
    for axis in range(3):
        if axis == deep or not s.said >> (X + axis) & 1:
            continue
        value = s.value[X + axis] * s.scale
        value += find_offset(s, axis) if s.absolute else s.at[axis]
        if s.absolute:
            s.unsure[axis] = 0
        x, y, z = _replace_axis(x, y, z, axis, value)
    if x != s.at[0] or y != s.at[1] or z != s.at[2]:
        write_straight(s, RAPID, x, y, z)


@compile_inner
def _replace_axis(
    x: float, y: float, z: float, axis: int, value: float
) -> tuple[float, float, float]:
    """Gives a point with one of its axes replaced."""
    return (
        value if axis == 0 else x,
        value if axis == 1 else y,
        value if axis == 2 else z,
    )


@compile_inner
def _move_to(s: RecordRow, kind: int, axis: int, height: float) -> None:
    """Moves along one axis to a height, unless it is there."""
    if s.at[axis] != height:
        x, y, z = _replace_axis(s.at[0], s.at[1], s.at[2], axis, height)
        write_straight(s, kind, x, y, z)


@compile_inner
def _peck_down(s: RecordRow, deep: int, clear: float, bottom: float) -> None:
    """Goes down by Q, out to R, back to a little above the last depth, until the bottom; to break
    the chip alone it only draws back a little.
    """
    step = s.sticky[Q]
    depth = clear - step
    while depth > bottom + 1e-9:
        _move_to(s, LINE, deep, depth)
        if s.motion == PECK:
            _move_to(s, RAPID, deep, clear)
        _move_to(s, RAPID, deep, min(clear, depth + s.peck_back_mm))
        depth -= step
    _move_to(s, LINE, deep, bottom)
