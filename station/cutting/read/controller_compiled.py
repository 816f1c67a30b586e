"""A controller's modes as one record, for the compiled reader; and there and back again."""

from __future__ import annotations

import math
from typing import Annotated, Any

import numpy as np
import numpy.typing as npt

from station.cutting.compiled import Real, Whole, dtype_of
from station.cutting.model import Bytes, Floats, Ints
from station.cutting.read.controller_plain import Machine

Record = npt.NDArray[Any]
Three = Annotated[Floats, "f8", 3]
Letters = Annotated[Floats, "f8", 27]  # by letter, A is 1

CHUNK = 1 << 17  # bytes of text at a time
MOVES, PAUSES, NOTES = 1 << 14, 1 << 11, 64  # what is written before it is fetched
MovesReal = Annotated[Floats, "f8", MOVES]
MovesWhole = Annotated[Ints, "i4", MOVES]
MovesByte = Annotated[Bytes, "u1", MOVES]


class Row:
    """What the compiled reader works on. Lengths are mm; NaN or -1: not said.

    Tables stand inside, for arrays handed from one compiled function to another cost more
    than reading a line does.
    """

    # modes, named as in controller_plain.State
    scale: Real
    at: Three
    unsure: Annotated[Ints, "i8", 3]
    absolute: Whole
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
    codes: Annotated[Ints, "i8", 12]
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


RECORD = dtype_of(Row)
NUMBERS = ("scale", "feed", "rpm", "absolute", "plane", "inverse", "turning", "chosen", "tool",
           "system", "side", "back_to", "exact")  # fmt: skip
STICKY = {letter: ord(letter) - 64 for letter in "XYZRQPIJK"}
DIALECT = ("dwell_ms", "semicolon", "skip_deleted", "peck_back_mm", "return_first", "relative_r")


def record_of(machine: Machine) -> Record:
    """A record for the compiled reader, at the start of a file."""
    record = np.empty(1, RECORD)
    assert RECORD.fields is not None
    record.view(np.uint8)[: RECORD.fields["x"][1]] = 0  # all but the tables
    for name in DIALECT:
        record[0][name] = getattr(machine.state.dialect, name)
    record[0]["line"] = 1
    hand_over(machine, record)
    return record


def hand_over(machine: Machine, record: Record) -> None:
    """Writes the machine's modes into the record."""
    state, row = machine.state, record[0]
    for name in NUMBERS:
        row[name] = getattr(state, name)
    row["at"], row["unsure"], row["shift"] = state.at, state.unsure, state.shift
    for number, offsets in state.systems.items():
        row["systems"][number] = offsets
    row["motion"] = -1 if state.motion is None else state.motion
    row["series"] = math.nan if state.series is None else state.series
    row["cycle"] = int(state.sticky.get("G", -1))
    for letter, index in STICKY.items():
        row["sticky"][index] = state.sticky.get(letter, math.nan)


def take_back(machine: Machine, record: Record) -> None:
    """Brings the machine's modes up to the record's."""
    state, row = machine.state, record[0]
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
