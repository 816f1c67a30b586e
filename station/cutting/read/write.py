"""Writing of moves, pauses and notes from the compiled reader."""

from __future__ import annotations

import math

from numba import f8, from_dtype, i8, typeof, void

from station.cutting.compiled import entry
from station.cutting.model import RAPID
from station.cutting.read.controller_compiled import RECORD, Row

ROW = from_dtype(RECORD)
POINT = typeof((0.0, 0.0, 0.0))  # type: ignore[no-untyped-call] # numba has no types

# kinds of pauses; a pause is (move, kind, seconds, line)
DWELL, SPINDLE_PAUSE = 0, 1
PAUSE_KINDS = ("dwell", "spindle")

# notes: (line, byte, which, value, x, y); each which has a kind and a sentence
(CUTTER_COMP, NO_MOTION, NO_FEED_INVERSE, NO_FEED, NO_FEED_CYCLE, ARC_RADII, ARC_APART,
 ARC_NO_CENTRE, ARC_AT_CENTRE, ARC_NOWHERE, CYCLE_BARE, CYCLE_REPEATS, CYCLE_X, CYCLE_Y, CYCLE_Z,
 CYCLE_INVERSE, CYCLE_SIDE, CYCLE_Q, CYCLE_PECKS, CYCLE_LOW, ARC_BOTH) = range(21)  # fmt: skip


@entry(f8(ROW, i8))
def offset(s: Row, axis: int) -> float:
    """From the program's own numbers to the file's frame, mm."""
    moved: float = s.shift[axis] + s.systems[s.system, axis]
    return moved


@entry(void(ROW, i8, f8))
def note(s: Row, which: int, value: float) -> None:
    """Something to tell of this line."""
    row = s.note[s.notes]
    row[0], row[1], row[2], row[3] = s.line, s.byte, which, value
    row[4], row[5] = s.at[0], s.at[1]
    s.notes += 1


@entry(void(ROW, i8, f8))
def pause(s: Row, kind: int, seconds: float) -> None:
    """The path stops here."""
    row = s.pause[s.pauses]
    row[0], row[1], row[2], row[3] = s.moves, kind, seconds, s.line
    s.pauses += 1


@entry(void(ROW, i8, POINT, f8, f8, f8))
def write(
    s: Row, kind: int, end: tuple[float, float, float], c0: float, c1: float, sweep: float
) -> None:
    """One move into the record."""
    n = s.moves
    s.x[n], s.y[n], s.z[n] = end
    s.kind[n], s.planes[n] = kind, s.plane
    s.c0[n], s.c1[n], s.sweep[n] = c0, c1, sweep
    s.rate[n] = 0.0 if kind == RAPID else s.feed
    s.fixed[n] = math.nan if kind == RAPID else s.minutes
    s.bit[n], s.lines[n] = s.tool, s.line
    s.turns[n] = s.rpm if s.turning else 0.0
    s.sure[n] = not (s.unsure[0] or s.unsure[1] or s.unsure[2])
    s.exactly[n] = s.exact
    s.at[0], s.at[1], s.at[2] = end
    s.moves = n + 1


@entry(void(ROW, i8, f8, f8, f8))
def straight(s: Row, kind: int, x: float, y: float, z: float) -> None:
    """A straight move to a place in the frame."""
    write(s, kind, (x, y, z), 0.0, 0.0, 0.0)
