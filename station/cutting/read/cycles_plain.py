"""Canned cycles G73, G81 to G89, in plain Python; `cycles_compiled.py` says the same compiled."""

from __future__ import annotations

from typing import TYPE_CHECKING

from station.cutting.model import LINE, PLANE_AXES, RAPID
from station.shop.words import Say, say

if TYPE_CHECKING:
    from station.cutting.read.controller_plain import Controller
    from station.cutting.read.line_plain import LineWords

MOST_PECKS = 1000
MOST_REPEATS = 1000
MOST_ON_A_LINE = 2500  # pecks of all repeats
BACK_BORE = 87  # seldom met: the plain reader's alone
FEED_BACK = {84, 85, 89}  # cycles that come back at feed
DWELLS = {82, 86, 88, 89}
CHIP_BREAK, PECK = 73, 83
PECKS = {CHIP_BREAK, PECK}
SAID_ABSOLUTE = "A"  # kept with the words that stick: whether the heights were said under G90
HEIGHTS_CHANGED = say(
    "The heights of this cycle were said before G90 and G91 changed; controls differ in what they "
    "are now."
)


def execute_cycle(controller: Controller, line: LineWords) -> None:
    """Executes the cycle that is on, at each place the line names; problems are noted."""
    state = controller.state
    axes = PLANE_AXES[state.plane]
    hole = "XYZ"[axes[2]]
    for letter in (hole, "R", "Q", "P", *("IJK" if state.motion == BACK_BORE else "")):
        if letter in line.words:
            state.sticky[letter] = line.words[letter] * (1.0 if letter == "P" else state.scale)
    if not line.has_any("XYZ"):
        if "motion" in line.codes:
            controller.note_problem(
                "cycle", say("A cycle needs X, Y or Z; nothing is drilled here.")
            )
        return
    repeats = _count_repeats(controller, line)
    _check_heights_said(controller, line, hole)
    if state.series is None:
        state.series = state.at[axes[2]]
    began = state.series if state.dialect.return_first else state.at[axes[2]]
    wrong = _find_fault(controller, hole, began, repeats)
    if line.has_any("ABC"):
        wrong = say("A cycle cannot turn an axis; nothing is drilled here.")
    if wrong:
        controller.note_problem("cycle", wrong)
        return
    if state.feed <= 0:
        controller.note_problem("no-feed", say("This cycle has no feed."))
    for _ in range(repeats):
        _drill_hole(controller, line, axes, began)


def _check_heights_said(controller: Controller, line: LineWords, hole: str) -> None:
    """Tells where heights go on from lines before G90 or G91."""
    state = controller.state
    if line.has_any(hole + "R"):
        state.sticky[SAID_ABSOLUTE] = float(state.absolute)
    elif state.sticky.get(SAID_ABSOLUTE, state.absolute) != state.absolute:
        controller.note_problem("cycle", HEIGHTS_CHANGED)


def _count_repeats(controller: Controller, line: LineWords) -> int:
    """Counts how often the cycle runs; an L that is no count is noted."""
    number = line.words.get("L", 1.0)
    if number != round(number) or number < 1:
        controller.note_problem("cycle", say("L must be a whole number above zero; read as 1."))
        return 1
    return min(round(number), MOST_REPEATS)


def _find_fault(controller: Controller, hole: str, began: float, repeats: int) -> Say:
    """Tells why nothing is drilled; empty: it is."""
    state = controller.state
    if hole not in state.sticky or "R" not in state.sticky:
        return say("A cycle needs {axis} and R; nothing is drilled here.", axis=hole)
    if state.inverse:
        return say("A cycle cannot run under G93; nothing is drilled here.")
    if state.side != 40:
        return say("A cycle cannot run while G41 or G42 is on; nothing is drilled here.")
    if state.motion == BACK_BORE and not {"I", "J", "K"} <= set(state.sticky):
        return say("G87 needs I, J and K; nothing is drilled here.")
    if state.motion in PECKS and state.sticky.get("Q", 0.0) <= 0:
        return say("This cycle needs Q above zero; nothing is drilled here.")
    clear, bottom = _find_heights(controller, hole, began)
    if controller.state.motion in PECKS:
        pecks = (clear - bottom) / controller.state.sticky["Q"]
        if pecks > MOST_PECKS or pecks * repeats > MOST_ON_A_LINE:
            return say("Q is too small for this depth; nothing is drilled here.")
    if clear >= bottom:
        return Say()
    return say("R lies below the hole's bottom; nothing is drilled here.")


def _find_heights(controller: Controller, hole: str, began: float) -> tuple[float, float]:
    """Finds the clear height R and the bottom of the hole, in the frame."""
    state = controller.state
    axis = "XYZ".index(hole)
    offset = state.find_offset(axis)
    if state.absolute:
        return state.sticky["R"] + offset, state.sticky[hole] + offset
    clear = state.sticky["R"] + (began if state.dialect.relative_r else offset)
    return clear, clear + state.sticky[hole]


def _drill_hole(
    controller: Controller, line: LineWords, axes: tuple[int, int, int], began: float
) -> None:
    """Drills one hole: over it, down, and back."""
    state = controller.state
    first, second, deep = axes
    hole = "XYZ"[deep]
    clear, bottom = _find_heights(controller, hole, began)
    if state.absolute:
        state.unsure[deep] = False
    if state.at[deep] < clear:
        _move_to(controller, RAPID, deep, clear)
    over = list(state.at)
    for axis in (first, second):
        letter = "XYZ"[axis]
        if letter in line.words:
            value = line.words[letter] * state.scale
            base = state.find_offset(axis) if state.absolute else state.at[axis]
            over[axis] = base + value
            state.unsure[axis] = state.unsure[axis] and not state.absolute
    if over != state.at:
        controller.write_straight(RAPID, over)
    _move_to(controller, RAPID, deep, clear)
    if state.motion == BACK_BORE:
        _bore_back(controller, axes, bottom)
    _move_down_and_up(
        controller, deep, clear, bottom, max(began, clear) if state.back_to == 98 else clear
    )


def _bore_back(controller: Controller, axes: tuple[int, int, int], bottom: float) -> None:
    """Goes beside the hole down, under it, up to K at feed and back, and out beside it again.

    NISTIR 6556, from memory: I and J are always increments, K a height of the program or, under
    G91, from the bottom. The spindle stands still on the ways beside the hole.
    """
    state, (first, second, deep) = controller.state, axes
    place = list(state.at)
    beside = list(place)
    beside[first] += state.sticky["IJK"[first]]
    beside[second] += state.sticky["IJK"[second]]
    up = state.sticky["IJK"[deep]]
    up += state.find_offset(deep) if state.absolute else bottom
    controller.write_straight(RAPID, beside)
    _move_to(controller, RAPID, deep, bottom)
    controller.write_straight(
        RAPID, [bottom if axis == deep else place[axis] for axis in range(3)]
    )
    _move_to(controller, LINE, deep, up)
    _move_to(controller, LINE, deep, bottom)
    controller.write_straight(
        RAPID, [bottom if axis == deep else beside[axis] for axis in range(3)]
    )
    _move_to(controller, RAPID, deep, place[deep])
    controller.write_straight(RAPID, place)


def _move_to(controller: Controller, kind: int, axis: int, height: float) -> None:
    """Moves along one axis to a height, unless it is there."""
    if controller.state.at[axis] != height:
        end = list(controller.state.at)
        end[axis] = height
        controller.write_straight(kind, end)


def _move_down_and_up(
    controller: Controller, axis: int, clear: float, bottom: float, back: float
) -> None:
    """Moves to the bottom and back as the cycle does."""
    state = controller.state
    if state.motion in PECKS:
        _peck_down(controller, axis, clear, bottom)
    elif state.motion != BACK_BORE:
        _move_to(controller, LINE, axis, bottom)
    if state.motion in DWELLS and state.sticky.get("P"):
        controller.write_pause("dwell", state.find_dwell(state.sticky["P"]))
    if state.motion in FEED_BACK:
        _move_to(controller, LINE, axis, clear)
    _move_to(controller, RAPID, axis, back)


def _peck_down(controller: Controller, axis: int, clear: float, bottom: float) -> None:
    """Goes down by Q, out to R, back to a little above the last depth, until the bottom; to break
    the chip alone it only draws back a little.
    """
    step = controller.state.sticky["Q"]
    back = controller.state.dialect.peck_back_mm
    depth = clear - step
    while depth > bottom + 1e-9:
        _move_to(controller, LINE, axis, depth)
        if controller.state.motion == PECK:
            _move_to(controller, RAPID, axis, clear)
        _move_to(controller, RAPID, axis, min(clear, depth + back))
        depth -= step
    _move_to(controller, LINE, axis, bottom)
