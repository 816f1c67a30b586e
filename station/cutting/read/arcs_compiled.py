"""Arcs by centre or by radius, compiled; `arcs_plain.py` says the same in plain Python."""

from __future__ import annotations

import math

from station.cutting.compiled import compile_inner
from station.cutting.model import CCW, CW, LINE, XY, XZ
from station.cutting.read.arcs_plain import FULL, REPORT_INCH, REPORT_MM
from station.cutting.read.controller_compiled import (
    ARC_APART,
    ARC_AT_CENTRE,
    ARC_BOTH,
    ARC_NO_CENTRE,
    ARC_NOWHERE,
    ARC_RADII,
    RecordRow,
    find_offset,
    note_problem,
    write_move,
    write_straight,
)

CENTRE, P, R = 9, 16, 18  # CENTRE: I, then J and K
IJK = 0b111 << CENTRE
TURN = 2 * math.pi
MOST_TURNS = 10_000

Point = tuple[float, float, float]


@compile_inner
def execute_arc(s: RecordRow, end: Point) -> None:
    """Executes the arc of the line in the record, to `end` in the frame."""
    first = 0 if s.plane == XY else 2 if s.plane == XZ else 1
    second = (first + 1) % 3
    x, y = s.at[first], s.at[second]
    x2, y2 = end[first], end[second]
    if s.said >> R & 1:
        if s.said & IJK:
            note_problem(s, ARC_BOTH, 0.0)
        _execute_radius_arc(s, end, (x, y, x2, y2))
        return
    given_i, given_j = s.said >> (CENTRE + first) & 1, s.said >> (CENTRE + second) & 1
    if not (given_i or given_j):
        note_problem(s, ARC_NO_CENTRE, 0.0)
        write_straight(s, LINE, end[0], end[1], end[2])
        return
    cx = _find_centre_word(s, first) if given_i else x
    cy = _find_centre_word(s, second) if given_j else y
    r, r2 = math.hypot(x - cx, y - cy), math.hypot(x2 - cx, y2 - cy)
    if min(r, r2) <= FULL:
        note_problem(s, ARC_AT_CENTRE, 0.0)
        write_straight(s, LINE, end[0], end[1], end[2])
        return
    if abs(r - r2) > (REPORT_MM if s.scale == 1.0 else REPORT_INCH) + 1e-9:
        note_problem(s, ARC_RADII, abs(r - r2))
    turns = max(1.0, min(round(s.value[P]), MOST_TURNS)) if s.said >> P & 1 else 1.0
    sweep = _find_sweep(s.motion, (x - cx, y - cy), (x2 - cx, y2 - cy), (x2 - x, y2 - y))
    more = (turns - 1) * TURN
    write_move(s, s.motion, end, cx, cy, sweep + (more if s.motion == CCW else -more))


@compile_inner
def _find_centre_word(s: RecordRow, axis: int) -> float:
    """Finds a centre's place on an axis, from the start or, under G90.1, from zero."""
    base = find_offset(s, axis) if s.absolute_centres else s.at[axis]
    return float(base + s.value[CENTRE + axis] * s.scale)


@compile_inner
def _find_sweep(
    kind: int, spoke: tuple[float, float], other: tuple[float, float], chord: tuple[float, float]
) -> float:
    """Finds the angle swept, radians, counter-clockwise positive; an end at the start: a full
    turn.
    """
    if math.hypot(chord[0], chord[1]) <= FULL:
        return -TURN if kind == CW else TURN
    sweep = (math.atan2(other[1], other[0]) - math.atan2(spoke[1], spoke[0])) % TURN
    return sweep - TURN if kind == CW and sweep > 0 else sweep


@compile_inner
def _execute_radius_arc(s: RecordRow, end: Point, flat: tuple[float, float, float, float]) -> None:
    """Executes an arc by its radius: a positive one sweeps at most half a turn, a negative one
    more.
    """
    x, y, x2, y2 = flat
    radius = s.value[R] * s.scale
    dx, dy = x2 - x, y2 - y
    chord = math.hypot(dx, dy)
    if chord <= 1e-9 or radius == 0:
        note_problem(s, ARC_NOWHERE, 0.0)
        write_straight(s, LINE, end[0], end[1], end[2])
        return
    height = math.sqrt(max(0.0, radius * radius - chord * chord / 4))
    apart = chord - 2 * abs(radius)
    if apart > REPORT_MM:
        note_problem(s, ARC_APART, apart)
    side = height / chord if (s.motion == CCW) == (radius > 0) else -height / chord
    cx, cy = (x + x2) / 2 - side * dy, (y + y2) / 2 + side * dx
    sweep = _find_sweep(s.motion, (x - cx, y - cy), (x2 - cx, y2 - cy), (dx, dy))
    write_move(s, s.motion, end, cx, cy, sweep)
