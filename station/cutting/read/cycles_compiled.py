"""Canned cycles G81 to G89, compiled; `cycles_plain.py` says the same in plain Python."""

from __future__ import annotations

import math

import numpy as np

from station.cutting.compiled import inner
from station.cutting.model import LINE, RAPID, XY, XZ
from station.cutting.read.controller_compiled import (
    CYCLE_BARE,
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
    Row,
    note,
    offset,
    pause,
    straight,
)
from station.cutting.read.cycles_plain import MOST_ON_A_LINE, MOST_PECKS, MOST_REPEATS

L, P, Q, R, X = 12, 16, 17, 18, 24
FINE = -1
MOTION = 0  # the group of motion codes


@inner
def drill(s: Row) -> None:
    """The cycle that is on, at each place that the line names."""
    deep = 2 if s.plane == XY else 1 if s.plane == XZ else 0
    _stick(s, X + deep, s.scale)
    _stick(s, R, s.scale)
    _stick(s, Q, s.scale)
    _stick(s, P, 1.0)
    if not s.said >> X & 7:
        if s.said & 1 and s.codes[MOTION] >= 0:
            note(s, CYCLE_BARE, 0.0)
        return
    repeats = _repeats(s)
    if math.isnan(s.series):
        s.series = s.at[deep]
    began = s.series if s.return_first else s.at[deep]
    clear, bottom = _heights(s, deep, began)
    wrong = _wrong(s, deep, clear, bottom, repeats)
    if wrong != FINE:
        note(s, wrong, 0.0)
        return
    if s.feed <= 0:
        note(s, NO_FEED_CYCLE, 0.0)
    need = repeats * (8 + 3 * int(_pecks(s, clear, bottom)))
    if s.moves + need > MOVES:
        s.need = need
        return
    for _ in range(repeats):
        _one(s, deep, clear, bottom, began)


@inner
def _stick(s: Row, letter: int, scale: float) -> None:
    if s.said >> letter & 1:
        s.sticky[letter] = s.value[letter] * scale


@inner
def _repeats(s: Row) -> int:
    if not s.said >> L & 1:
        return 1
    number = s.value[L]
    if number != np.rint(number) or number < 1:
        note(s, CYCLE_REPEATS, 0.0)
        return 1
    return int(min(number, MOST_REPEATS))


@inner
def _heights(s: Row, deep: int, began: float) -> tuple[float, float]:
    """The clear height R and the bottom of the hole, in the frame."""
    clear, bottom = s.sticky[R], s.sticky[X + deep]
    if s.absolute:
        return clear + offset(s, deep), bottom + offset(s, deep)
    clear += began if s.relative_r else offset(s, deep)
    return clear, clear + bottom


@inner
def _pecks(s: Row, clear: float, bottom: float) -> float:
    return (clear - bottom) / s.sticky[Q] if s.motion == 83 else 0.0


@inner
def _wrong(s: Row, deep: int, clear: float, bottom: float, repeats: int) -> int:
    """Why nothing is drilled; FINE: it is."""
    if math.isnan(clear) or math.isnan(bottom):
        return CYCLE_X + deep
    if s.inverse:
        return CYCLE_INVERSE
    if s.side != 40:
        return CYCLE_SIDE
    if s.motion == 83 and not s.sticky[Q] > 0:
        return CYCLE_Q
    pecks = _pecks(s, clear, bottom)
    if pecks > MOST_PECKS or pecks * repeats > MOST_ON_A_LINE:
        return CYCLE_PECKS
    return FINE if clear >= bottom else CYCLE_LOW


@inner
def _one(s: Row, deep: int, clear: float, bottom: float, began: float) -> None:
    if s.absolute:
        s.unsure[deep] = 0
    if s.at[deep] < clear:
        _to(s, RAPID, deep, clear)
    _over(s, deep)
    _to(s, RAPID, deep, clear)
    if s.motion == 83:
        _peck(s, deep, clear, bottom)
    else:
        _to(s, LINE, deep, bottom)
    wait = s.sticky[P]
    if s.motion in (82, 86, 88, 89) and not math.isnan(wait) and wait != 0:
        pause(s, DWELL, max(0.0, wait / 1000 if s.dwell_ms else wait))
    if s.motion in (84, 85, 89):
        _to(s, LINE, deep, clear)
    _to(s, RAPID, deep, max(began, clear) if s.back_to == 98 else clear)


@inner
def _over(s: Row, deep: int) -> None:
    """Across to the next hole."""
    x, y, z = s.at[0], s.at[1], s.at[2]
    for axis in range(3):
        if axis == deep or not s.said >> (X + axis) & 1:
            continue
        value = s.value[X + axis] * s.scale
        value += offset(s, axis) if s.absolute else s.at[axis]
        if s.absolute:
            s.unsure[axis] = 0
        x, y, z = _with(x, y, z, axis, value)
    if x != s.at[0] or y != s.at[1] or z != s.at[2]:
        straight(s, RAPID, x, y, z)


@inner
def _with(x: float, y: float, z: float, axis: int, value: float) -> tuple[float, float, float]:
    return (
        value if axis == 0 else x,
        value if axis == 1 else y,
        value if axis == 2 else z,
    )


@inner
def _to(s: Row, kind: int, axis: int, height: float) -> None:
    if s.at[axis] != height:
        x, y, z = _with(s.at[0], s.at[1], s.at[2], axis, height)
        straight(s, kind, x, y, z)


@inner
def _peck(s: Row, deep: int, clear: float, bottom: float) -> None:
    """Down by Q, out to R, back to a little above the last depth, until the bottom."""
    step = s.sticky[Q]
    depth = clear - step
    while depth > bottom + 1e-9:
        _to(s, LINE, deep, depth)
        _to(s, RAPID, deep, clear)
        _to(s, RAPID, deep, min(clear, depth + s.peck_back_mm))
        depth -= step
    _to(s, LINE, deep, bottom)
