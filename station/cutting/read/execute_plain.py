"""What one line does: the report's order of execution, in plain Python.

`execute_compiled.py` says the same compiled. The compiled reader gives every line that is out of
the ordinary to this one; the tests read whole files with both and compare.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from station.cutting.model import CCW, CW, LINE, RAPID, XY, SideSet
from station.cutting.read.arcs_plain import execute_arc
from station.cutting.read.controller_plain import Controller
from station.cutting.read.cycles_plain import execute_cycle
from station.cutting.read.expressions import BadLine, read_block
from station.cutting.read.line_plain import AXES, LineWords, find_target
from station.shop.lengths import MM_PER_INCH
from station.shop.words import length, say

SYSTEMS = (54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3)
CYCLES = frozenset((73, *range(81, 90)))
OFFSETS = 5221  # the parameter of the first system's X; twenty on for each further system


def execute_line(controller: Controller, text: str) -> None:
    """Executes a cleaned line. What cannot be read is noted and left out."""
    state = controller.state
    try:
        block = read_block(text, state.parameters)
        if block.deleted and state.dialect.skip_deleted:
            return
        for index, value in block.settings:
            state.parameters[index] = value
            if OFFSETS <= index < OFFSETS + 20 * len(SYSTEMS):
                controller.note_problem(
                    "unknown-code",
                    say("Setting #{number} moves no offset here; G10 L2 does.", number=str(index)),
                )
        if block.words:
            line = LineWords(controller, block)
            for step in STEPS:
                step(controller, line)
    except BadLine as error:
        controller.note_problem("not-read", say("{why}", why=str(error)))


def _set_units(controller: Controller, line: LineWords) -> None:
    """Sets inch or mm, first of all: F on the same line is read in the line's own units."""
    if "units" in line.codes:
        controller.state.scale = MM_PER_INCH if line.codes["units"] == 20 else 1.0


def _set_feed(controller: Controller, line: LineWords) -> None:
    """Sets the feed mode, and the feed or under G93 the minutes of this line's move."""
    state = controller.state
    if "feed mode" in line.codes:
        state.inverse = line.codes["feed mode"] == 93
        if state.inverse:
            state.feed = 0.0
    feed = line.words.get("F")
    controller.now_minutes = math.nan
    if feed is not None and feed < 0:
        controller.note_problem("no-feed", say("The feed is below zero; it is left out."))
        feed = None
    if state.inverse:
        controller.now_minutes = 1 / feed if feed else math.nan
    elif feed is not None:
        state.feed = feed * state.scale


def _set_spindle_and_tool(controller: Controller, line: LineWords) -> None:
    """Sets speed, chosen tool, tool and spindle."""
    state = controller.state
    if "S" in line.words:
        state.rpm = max(0.0, line.words["S"])
    if "T" in line.words:
        state.chosen = min(max(0, round(line.words["T"])), 99_999)
    if "tool" in line.m_codes:
        if state.chosen != state.tool or not controller.move_count:
            controller.write_pause("tool", tool=state.chosen)
        state.tool, state.turning = state.chosen, False
    turn = line.m_codes.get("spindle")
    if turn is not None:
        state.turning = turn != 5
        controller.write_pause("spindle")


def _execute_dwell(controller: Controller, line: LineWords) -> None:
    """Executes a dwell."""
    if line.codes.get("once") == 4:
        controller.write_pause("dwell", controller.state.find_dwell(line.words.get("P", 0.0)))


def _set_modes(controller: Controller, line: LineWords) -> None:
    """Sets plane, side, system, path mode, distance mode and return height."""
    state, codes = controller.state, line.codes
    state.plane = int(codes.get("plane", state.plane))
    if "side" in codes:
        _set_side(controller, int(codes["side"]), line.words.get("D"))
    if "system" in codes:
        state.system = SYSTEMS.index(codes["system"]) + 1
    if "path" in codes:
        state.exact = codes["path"] != 64
    if "distance" in codes:
        state.absolute = codes["distance"] == 90
    if "centres" in codes:
        state.absolute_centres = codes["centres"] == 90.1
    state.back_to = int(codes.get("return", state.back_to))


def _set_side(controller: Controller, side: int, number: float | None) -> None:
    """Sets on which side of the path the bit goes; its radius where the file has set that."""
    state = controller.state
    before, state.side = state.side, side
    if side == before:
        return
    radius = state.radii.get(round(number)) if number is not None else None
    controller.path.sides.append(SideSet(controller.move_count, side, radius))
    if side != 40:
        text = say("The router moves this path sideways; read as by half the bit. Where its own "
                   "list has another size, or wear alone, sizes differ.")  # fmt: skip
        if radius is not None:
            text = say("The router moves this path sideways, by {radius} mm.",
                       radius=length(radius))  # fmt: skip
        controller.note_problem("cutter-comp", text)


def _execute_once(controller: Controller, line: LineWords) -> None:
    """Executes a code of the group that holds for its line alone."""
    code = line.codes.get("once")
    if code in {28, 30}:
        _go_home(controller, line, 5161 if code == 28 else 5181)
    elif code == 10:
        _set_system(controller, line)
    elif code == 52:
        _shift_zero(controller, line)
    elif code is not None and 92 <= code <= 92.3:
        _shift_axes(controller, line, code)


def _go_home(controller: Controller, line: LineWords, first: int) -> None:
    """Goes by way of the point on the line to the place that parameters tell of.

    The report takes every axis there, whichever are named on the way.
    """
    state = controller.state
    named = [axis for letter, axis in AXES.items() if letter in line.words]
    if named:
        controller.write_straight(RAPID, find_target(state, line))
    end = list(state.at)
    for axis in (named if state.dialect.home_named else ()) or (0, 1, 2):
        end[axis] = state.parameters.get(first + axis, 0.0) * state.scale
        state.unsure[axis] = True
    controller.write_straight(RAPID, end)


def _set_system(controller: Controller, line: LineWords) -> None:
    """Sets the offsets of a coordinate system, G10 L2, or a bit's radius, L12: common practice."""
    state, words = controller.state, line.words
    number = round(words.get("P", 0))
    if round(words.get("L", 0)) == 12 and number > 0 and "R" in words:
        state.radii[number] = words["R"] * state.scale
        return
    if round(words.get("L", 0)) != 2 or not 0 <= number <= 9:
        controller.note_problem("unknown-code", say("This G10 is not known; it is left out."))
        return
    offsets = state.systems.setdefault(number or state.system, [0.0, 0.0, 0.0])
    for letter, axis in AXES.items():
        if letter in words:
            offsets[axis] = words[letter] * state.scale
            index = OFFSETS + 20 * ((number or state.system) - 1) + axis
            state.parameters[index] = words[letter]


def _shift_axes(controller: Controller, line: LineWords, code: float) -> None:
    """Shifts the axes so that the place has the numbers of the line, or takes that back."""
    state = controller.state
    if code in {92.1, 92.2}:
        if code == 92.1:
            state.kept_shift = [0.0, 0.0, 0.0]
        state.shift = [0.0, 0.0, 0.0]
    elif code == 92.3:
        state.shift = list(state.kept_shift)
    else:
        for letter, axis in AXES.items():
            if letter in line.words:
                here = state.at[axis] - (state.find_offset(axis) - state.shift[axis])
                state.shift[axis] = here - line.words[letter] * state.scale
        state.kept_shift = list(state.shift)


def _shift_zero(controller: Controller, line: LineWords) -> None:
    """Shifts the zero by the words of the line, G52; X0 Y0 takes it back."""
    state = controller.state
    for letter, axis in AXES.items():
        if letter in line.words:
            state.local[axis] = line.words[letter] * state.scale


def _execute_motion(controller: Controller, line: LineWords) -> None:
    """Executes the motion that is on, where the line has words for it."""
    state, once = controller.state, line.codes.get("once")
    if "motion" in line.codes:
        _set_motion(controller, line.codes["motion"])
    elif line.unknown and line.has_any("XYZ"):  # a cycle, most likely: what follows belongs to it
        _set_motion(controller, 80)
        return
    if once in {10, 28, 30, 52, 92, 92.1, 92.2, 92.3}:
        return
    if once == 4 and not line.has_any("XYZ"):
        return
    if state.motion in CYCLES:
        execute_cycle(controller, line)
    elif line.has_any("XYZ") or (state.motion in {CW, CCW} and line.has_any("IJK")):
        _execute_move(controller, line)


def _set_motion(controller: Controller, code: float) -> None:
    """Sets another motion mode; words stick within one kind of cycle only."""
    state = controller.state
    if code == 38.2:
        controller.note_problem("unknown-code", say("G38.2 probes; it is read as a feed move."))
        code = LINE
    motion = state.motion = None if code == 80 else int(code)
    if motion is None or motion not in CYCLES:
        state.series = None
        state.sticky = {}
    elif motion != state.sticky.get("G"):
        state.sticky = {"G": float(motion)}


def _execute_move(controller: Controller, line: LineWords) -> None:
    """Executes a straight move or an arc to where the line's words lead."""
    state = controller.state
    motion = state.motion
    if motion is None:
        controller.note_problem(
            "no-motion", say("No G0 to G3 stands before; read as a feed move.")
        )
        motion = state.motion = LINE
    if motion != RAPID:
        if state.inverse and math.isnan(controller.now_minutes):
            controller.note_problem("no-feed", say("Under G93 every feed move needs its own F."))
        elif not state.inverse and state.feed <= 0:
            controller.note_problem("no-feed", say("This move has no feed."))
    if motion in {CW, CCW}:
        execute_arc(controller, line, motion)
    else:
        controller.write_straight(motion, find_target(state, line))


def _execute_stop(controller: Controller, line: LineWords) -> None:
    """Executes a stop; M2 and M30 end the program and set its modes back, as in the report."""
    code = line.m_codes.get("stop")
    if code is None:
        return
    controller.write_pause("stop")
    if code not in {2, 30}:
        return
    state = controller.state
    state.ended = True
    state.system, state.plane, state.absolute, state.inverse = 1, XY, True, False
    state.side, state.turning, state.motion = 40, False, LINE


STEPS: tuple[Callable[[Controller, LineWords], None], ...] = (
    _set_units,
    _set_feed,
    _set_spindle_and_tool,
    _execute_dwell,
    _set_modes,
    _execute_once,
    _execute_motion,
    _execute_stop,
)
