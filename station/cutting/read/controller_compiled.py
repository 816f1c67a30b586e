"""A controller's modes as one record, for the compiled reader, and what is written into it.

`controller_plain.py` holds the same in plain Python; modes are copied there and back again.
"""

from __future__ import annotations

import math
from typing import Annotated, Any

import numpy as np
import numpy.typing as npt
from numba import f8, from_dtype, i8, typeof, void

from station.cutting.compiled import Real, Whole, compile_entry, make_dtype
from station.cutting.model import RAPID, Bytes, Floats, Ints
from station.cutting.read.arcs_plain import tell_ends_apart, tell_radii_differ
from station.cutting.read.controller_plain import Controller
from station.cutting.read.cycles_plain import HEIGHTS_CHANGED
from station.shop.words import Say, say

Record = npt.NDArray[Any]
Three = Annotated[Floats, "f8", 3]
Letters = Annotated[Floats, "f8", 27]  # by letter, A is 1
CHUNK = 1 << 17  # bytes of text at a time
MOVES, PAUSES, NOTES = 1 << 14, 1 << 11, 64  # what is written before it is fetched
MovesReal = Annotated[Floats, "f8", MOVES]
MovesWhole = Annotated[Ints, "i4", MOVES]
MovesByte = Annotated[Bytes, "u1", MOVES]


class RecordRow:
    """Declares what the compiled reader works on. Lengths are mm; NaN or -1: not said.

    Tables stand inside, for arrays handed from one compiled function to another cost more
    than reading a line does.
    """

    # modes, named as in controller_plain.State
    scale: Real
    at: Three
    unsure: Annotated[Ints, "i8", 3]
    absolute: Whole
    absolute_centres: Whole
    plane: Whole
    motion: Whole
    inverse: Whole
    feed: Real
    minutes: Real
    rpm: Real
    turning: Whole
    chosen: Whole
    tool: Whole
    system: Whole
    systems: Annotated[Floats, "f8", (10, 3)]
    shift: Three
    side: Whole
    back_to: Whole
    exact: Whole
    series: Real
    cycle: Whole
    sticky: Letters
    # dialect
    dwell_ms: Whole
    semicolon: Whole
    skip_deleted: Whole
    peck_back_mm: Real
    return_first: Whole
    relative_r: Whole
    # the line in hand: letters said as bits, codes by group in tenths, one of M3 to M5
    said: Whole
    value: Letters
    codes: Annotated[Ints, "i8", 11]
    turn: Whole
    begun: Whole
    worded: Whole
    deleted: Whole
    odd: Whole
    gaps: Whole  # a number of the file has blanks inside
    long: Whole  # the first line with more letters than the report allows; 0: none
    high: Whole  # a line number goes beyond the report's
    says: Whole  # a remark may be a message to whoever stands at the router
    # how far reading is in the text, how much is written, and why it came back
    byte: Whole
    line: Whole
    moves: Whole
    pauses: Whole
    notes: Whole
    why: Whole
    need: Whole
    # moves, as in model.Moves
    x: MovesReal
    y: MovesReal
    z: MovesReal
    c0: MovesReal
    c1: MovesReal
    sweep: MovesReal
    rate: MovesReal
    fixed: MovesReal
    turns: MovesReal
    bit: MovesWhole
    lines: MovesWhole
    kind: MovesByte
    planes: MovesByte
    sure: MovesByte
    exactly: MovesByte
    pause: Annotated[Floats, "f8", (PAUSES, 4)]  # move, kind, seconds, line
    note: Annotated[Floats, "f8", (NOTES, 6)]  # line, byte, which, value, x, y
    text: Annotated[Bytes, "u1", CHUNK + 1]


RECORD = make_dtype(RecordRow)
NUMBERS = ("scale", "feed", "rpm", "absolute", "absolute_centres", "plane", "inverse", "turning",
           "chosen", "tool", "system", "side", "back_to", "exact")  # fmt: skip
STICKY = {letter: ord(letter) - 64 for letter in "XYZRQPIJKA"}
DIALECT = ("dwell_ms", "semicolon", "skip_deleted", "peck_back_mm", "return_first", "relative_r")
ROW = from_dtype(RECORD)
POINT = typeof((0.0, 0.0, 0.0))  # type: ignore[no-untyped-call] # numba has no types
# kinds of pauses; a pause is (move, kind, seconds, line)
DWELL, SPINDLE_PAUSE = 0, 1
PAUSE_KINDS = ("dwell", "spindle")
# notes: (line, byte, which, value, x, y); each which has a kind and a sentence
(NO_MOTION, NO_FEED_INVERSE, NO_FEED, NO_FEED_CYCLE, ARC_RADII, ARC_APART,
 ARC_NO_CENTRE, ARC_AT_CENTRE, ARC_NOWHERE, CYCLE_BARE, CYCLE_REPEATS, CYCLE_X, CYCLE_Y, CYCLE_Z,
 CYCLE_INVERSE, CYCLE_SIDE, CYCLE_Q, CYCLE_PECKS, CYCLE_LOW, ARC_BOTH,
 CYCLE_CHANGED) = range(21)  # fmt: skip
# in the order of the numbers above: kind and sentence, with its value where it has one
SENTENCES = (
    ("no-motion", say("No G0 to G3 stands before; read as a feed move.")),
    ("no-feed", say("Under G93 every feed move needs its own F.")),
    ("no-feed", say("This move has no feed.")),
    ("no-feed", say("This cycle has no feed.")),
    ("arc-radii", Say()),
    ("arc-radii", Say()),
    ("arc-bad", say("This arc has no centre; read as a straight move.")),
    ("arc-bad", say("This arc ends at its own centre; read as a straight move.")),
    ("arc-bad", say("A radius arc must end elsewhere than it starts; read as a straight move.")),
    ("cycle", say("A cycle needs X, Y or Z; nothing is drilled here.")),
    ("cycle", say("L must be a whole number above zero; read as 1.")),
    ("cycle", say("A cycle needs {axis} and R; nothing is drilled here.", axis="X")),
    ("cycle", say("A cycle needs {axis} and R; nothing is drilled here.", axis="Y")),
    ("cycle", say("A cycle needs {axis} and R; nothing is drilled here.", axis="Z")),
    ("cycle", say("A cycle cannot run under G93; nothing is drilled here.")),
    ("cycle", say("A cycle cannot run while G41 or G42 is on; nothing is drilled here.")),
    ("cycle", say("This cycle needs Q above zero; nothing is drilled here.")),
    ("cycle", say("Q is too small for this depth; nothing is drilled here.")),
    ("cycle", say("R lies below the hole's bottom; nothing is drilled here.")),
    ("arc-bad", say("This arc has a centre and a radius; the radius is used.")),
    ("cycle", HEIGHTS_CHANGED),
)
RADII, APART = 4, 5


def make_record(controller: Controller) -> Record:
    """Makes a record for the compiled reader, at the start of a file."""
    record = np.empty(1, RECORD)
    assert RECORD.fields is not None
    record.view(np.uint8)[: RECORD.fields["x"][1]] = 0  # all but the tables
    for name in DIALECT:
        record[0][name] = getattr(controller.state.dialect, name)
    record[0]["line"] = 1
    write_modes(controller, record)
    return record


def write_modes(controller: Controller, record: Record) -> None:
    """Writes the controller's modes into the record."""
    state, row = controller.state, record[0]
    for name in NUMBERS:
        row[name] = getattr(state, name)
    row["at"], row["unsure"] = state.at, state.unsure
    row["shift"] = [a + b for a, b in zip(state.shift, state.local, strict=True)]
    for number, offsets in state.systems.items():
        row["systems"][number] = offsets
    row["motion"] = -1 if state.motion is None else state.motion
    row["series"] = math.nan if state.series is None else state.series
    row["cycle"] = int(state.sticky.get("G", -1))
    for letter, index in STICKY.items():
        row["sticky"][index] = state.sticky.get(letter, math.nan)


def read_modes(controller: Controller, record: Record) -> None:
    """Brings the controller's modes up to the record's."""
    state, row = controller.state, record[0]
    for name in NUMBERS:
        value = row[name].item()
        setattr(state, name, bool(value) if isinstance(getattr(state, name), bool) else value)
    state.at, state.unsure = row["at"].tolist(), [bool(u) for u in row["unsure"]]
    state.motion = None if row["motion"] < 0 else int(row["motion"])
    state.series = None if math.isnan(row["series"]) else float(row["series"])
    sticky = {k: float(row["sticky"][i]) for k, i in STICKY.items()}
    state.sticky = {k: v for k, v in sticky.items() if not math.isnan(v)}
    if row["cycle"] >= 0:
        state.sticky["G"] = float(row["cycle"])


@compile_entry(f8(ROW, i8))
def find_offset(s: RecordRow, axis: int) -> float:
    """Gives the way from the program's own numbers to the file's frame, mm."""
    moved: float = s.shift[axis] + s.systems[s.system, axis]
    return moved


@compile_entry(void(ROW, i8, f8))
def note_problem(s: RecordRow, which: int, value: float) -> None:
    """Notes something to tell of this line."""
    row = s.note[s.notes]
    row[0], row[1], row[2], row[3] = s.line, s.byte, which, value
    row[4], row[5] = s.at[0], s.at[1]
    s.notes += 1


@compile_entry(void(ROW, i8, f8))
def write_pause(s: RecordRow, kind: int, seconds: float) -> None:
    """Notes that the path stops here."""
    row = s.pause[s.pauses]
    row[0], row[1], row[2], row[3] = s.moves, kind, seconds, s.line
    s.pauses += 1


@compile_entry(void(ROW, i8, POINT, f8, f8, f8))
def write_move(
    s: RecordRow, kind: int, end: tuple[float, float, float], c0: float, c1: float, sweep: float
) -> None:
    """Writes one move into the record."""
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


@compile_entry(void(ROW, i8, f8, f8, f8))
def write_straight(s: RecordRow, kind: int, x: float, y: float, z: float) -> None:
    """Writes a straight move to a place in the frame."""
    write_move(s, kind, (x, y, z), 0.0, 0.0, 0.0)


def tell_note(which: int, value: float) -> tuple[str, Say]:
    """Gives the kind and the sentence of a note."""
    kind, text = SENTENCES[which]
    if which == RADII:
        text = tell_radii_differ(value)
    elif which == APART:
        text = tell_ends_apart(value)
    return kind, text
