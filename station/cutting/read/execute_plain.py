"""Runs one line at a time, exactly as the report orders it.

The fast reader gives every line that is out of the ordinary to this one; the tests read
whole files with both and compare.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from station.cutting.model import CCW, CW, LINE, MM_PER_INCH, RAPID, XY
from station.cutting.read import cycles_plain
from station.cutting.read.arcs_plain import arc
from station.cutting.read.controller_plain import Machine, State
from station.cutting.read.expressions import BadLine, read_block
from station.cutting.read.line_plain import AXES, Line, target

SYSTEMS = (54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3)
CYCLES = range(81, 90)
OFFSETS = 5221  # the parameter of the first system's X; twenty on for each further system


def run_line(machine: Machine, text: str) -> None:
    """Runs a cleaned line. What cannot be read is noted and left out."""
    state = machine.state
    try:
        block = read_block(text, state.parameters)
        if block.deleted and state.dialect.skip_deleted:
            return
        for index, value in block.settings:
            state.parameters[index] = value
            if OFFSETS <= index < OFFSETS + 20 * len(SYSTEMS):
                machine.problem(
                    "unknown-code", f"Setting #{index} moves no offset here; G10 L2 does."
                )
        if block.words:
            _run(machine, Line(machine, block))
    except BadLine as error:
        machine.problem("not-read", str(error))


def _run(machine: Machine, line: Line) -> None:
    for step in STEPS:
        step(machine, line)


def _units(machine: Machine, line: Line) -> None:
    """Done first so that F on the same line is read in the line's own units."""
    if "units" in line.codes:
        machine.state.scale = MM_PER_INCH if line.codes["units"] == 20 else 1.0


def _feed(machine: Machine, line: Line) -> None:
    state = machine.state
    if "feed mode" in line.codes:
        state.inverse = line.codes["feed mode"] == 93
        if state.inverse:
            state.feed = 0.0
    feed = line.words.get("F")
    machine.now_minutes = math.nan
    if feed is not None and feed < 0:
        machine.problem("no-feed", "The feed is below zero; it is left out.")
        feed = None
    if state.inverse:
        machine.now_minutes = 1 / feed if feed else math.nan
    elif feed is not None:
        state.feed = feed * state.scale


def _spindle_and_tool(machine: Machine, line: Line) -> None:
    state = machine.state
    if "S" in line.words:
        state.rpm = max(0.0, line.words["S"])
    if "T" in line.words:
        state.chosen = _tool_number(line.words["T"])
    if "tool" in line.m_codes:
        if state.chosen != state.tool or not machine.count:
            machine.pause("tool", tool=state.chosen)
        state.tool, state.turning = state.chosen, False
    turn = line.m_codes.get("spindle")
    if turn is not None:
        state.turning = turn != 5
        machine.pause("spindle")


def _tool_number(value: float) -> int:
    return min(max(0, round(value)), 99_999)


def _dwell(machine: Machine, line: Line) -> None:
    if line.codes.get("once") == 4:
        machine.pause("dwell", dwell_seconds(machine.state, line.words.get("P", 0.0)))


def dwell_seconds(state: State, p: float) -> float:
    """A dwell's P in seconds, whatever the dialect counts in."""
    return max(0.0, p / 1000 if state.dialect.dwell_ms else p)


def _modes(machine: Machine, line: Line) -> None:
    state, codes = machine.state, line.codes
    state.plane = int(codes.get("plane", state.plane))
    if "side" in codes:
        before, state.side = state.side, int(codes["side"])
        if state.side not in {40, before}:
            text = "The controller moves this path sideways by the bit; sizes may differ."
            machine.problem("cutter-comp", text)
    if "system" in codes:
        state.system = SYSTEMS.index(codes["system"]) + 1
    if "path" in codes:
        state.exact = codes["path"] != 64
    if "distance" in codes:
        state.absolute = codes["distance"] == 90
    state.back_to = int(codes.get("return", state.back_to))


def _once(machine: Machine, line: Line) -> None:
    code = line.codes.get("once")
    if code in {28, 30}:
        _home(machine, line, 5161 if code == 28 else 5181)
    elif code == 10:
        _set_system(machine, line)
    elif code is not None and 92 <= code <= 92.3:
        _shift(machine, line, code)


def _home(machine: Machine, line: Line, first: int) -> None:
    """By way of the point on the line to the place that parameters tell of.

    The report takes every axis there, whichever are named on the way.
    """
    state = machine.state
    named = [axis for letter, axis in AXES.items() if letter in line.words]
    if named:
        machine.go(RAPID, target(state, line))
    end = list(state.at)
    for axis in (named if state.dialect.home_named else ()) or (0, 1, 2):
        end[axis] = state.parameters.get(first + axis, 0.0) * state.scale
        state.unsure[axis] = True
    machine.go(RAPID, end)


def _set_system(machine: Machine, line: Line) -> None:
    state, words = machine.state, line.words
    number = round(words.get("P", 0))
    if round(words.get("L", 0)) != 2 or not 0 <= number <= 9:
        machine.problem("unknown-code", "This G10 is not known; it is left out.")
        return
    offsets = state.systems.setdefault(number or state.system, [0.0, 0.0, 0.0])
    for letter, axis in AXES.items():
        if letter in words:
            offsets[axis] = words[letter] * state.scale
            index = OFFSETS + 20 * ((number or state.system) - 1) + axis
            state.parameters[index] = words[letter]


def _shift(machine: Machine, line: Line, code: float) -> None:
    state = machine.state
    if code in {92.1, 92.2}:
        if code == 92.1:
            state.kept_shift = [0.0, 0.0, 0.0]
        state.shift = [0.0, 0.0, 0.0]
    elif code == 92.3:
        state.shift = list(state.kept_shift)
    else:
        for letter, axis in AXES.items():
            if letter in line.words:
                here = state.at[axis] - (state.offset(axis) - state.shift[axis])
                state.shift[axis] = here - line.words[letter] * state.scale
        state.kept_shift = list(state.shift)


def _motion(machine: Machine, line: Line) -> None:
    state, once = machine.state, line.codes.get("once")
    if "motion" in line.codes:
        _set_motion(machine, line.codes["motion"])
    if once in {10, 28, 30, 92, 92.1, 92.2, 92.3}:
        return
    if once == 4 and not line.has("XYZ"):
        return
    if state.motion in CYCLES:
        cycles_plain.run(machine, line)
    elif line.has("XYZ") or (state.motion in {CW, CCW} and line.has("IJK")):
        _move(machine, line)


def _set_motion(machine: Machine, code: float) -> None:
    """Another motion mode; words stick within one kind of cycle only."""
    state = machine.state
    motion = state.motion = _motion_code(machine, code)
    if motion is None or motion not in CYCLES:
        state.series = None
        state.sticky = {}
    elif motion != state.sticky.get("G"):
        state.sticky = {"G": float(motion)}


def _motion_code(machine: Machine, code: float) -> int | None:
    if code == 38.2:
        machine.problem("unknown-code", "G38.2 probes; it is read as a feed move.")
        return LINE
    return None if code == 80 else int(code)


def _move(machine: Machine, line: Line) -> None:
    state = machine.state
    motion = state.motion
    if motion is None:
        machine.problem("no-motion", "No G0 to G3 stands before; read as a feed move.")
        motion = state.motion = LINE
    if motion != RAPID:
        need_feed(machine)
    if motion in {CW, CCW}:
        arc(machine, line, motion)
    else:
        machine.go(motion, target(state, line))


def need_feed(machine: Machine) -> None:
    """Notes a feed move that has no feed."""
    state = machine.state
    if state.inverse and math.isnan(machine.now_minutes):
        machine.problem("no-feed", "Under G93 every feed move needs its own F.")
    elif not state.inverse and state.feed <= 0:
        machine.problem("no-feed", "This move has no feed.")


def _stop(machine: Machine, line: Line) -> None:
    code = line.m_codes.get("stop")
    if code is None:
        return
    machine.pause("stop")
    if code in {2, 30}:
        _end(machine.state)


def _end(state: State) -> None:
    """What the report sets at the end of a program."""
    state.ended = True
    state.system, state.plane, state.absolute, state.inverse = 1, XY, True, False
    state.side, state.turning, state.motion = 40, False, LINE


STEPS: tuple[Callable[[Machine, Line], None], ...] = (
    _units,
    _feed,
    _spindle_and_tool,
    _dwell,
    _modes,
    _once,
    _motion,
    _stop,
)
