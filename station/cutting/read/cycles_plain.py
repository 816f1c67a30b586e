"""Canned cycles G81 to G89: the moves that one line of a cycle stands for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from station.cutting.model import LINE, PLANE_AXES, RAPID

if TYPE_CHECKING:
    from station.cutting.read.controller_plain import Machine
    from station.cutting.read.line_plain import Line

MOST_PECKS = 1000
MOST_REPEATS = 1000
MOST_ON_A_LINE = 2500  # pecks of all repeats
BACK_BORE = 87  # seldom met: the slow reader's alone
FEED_BACK = {84, 85, 89}  # cycles that come back at feed
DWELLS = {82, 86, 88, 89}


def run(machine: Machine, line: Line) -> None:
    """Runs the cycle that is on, at each place the line names; problems are noted."""
    state = machine.state
    axes = PLANE_AXES[state.plane]
    hole = "XYZ"[axes[2]]
    for letter in (hole, "R", "Q", "P", *("IJK" if state.motion == BACK_BORE else "")):
        if letter in line.words:
            state.sticky[letter] = line.words[letter] * (1.0 if letter == "P" else state.scale)
    explicit = "motion" in line.codes
    if not line.has("XYZ"):
        if explicit:
            machine.problem("cycle", "A cycle needs X, Y or Z; nothing is drilled here.")
        return
    repeats = _repeats(machine, line)
    began = _began(machine, axes[2])
    wrong = _wrong(machine, hole, began, repeats)
    if line.has("ABC"):
        wrong = "A cycle cannot turn an axis; nothing is drilled here."
    if wrong:
        machine.problem("cycle", wrong)
        return
    if state.feed <= 0:
        machine.problem("no-feed", "This cycle has no feed.")
    for _ in range(repeats):
        _one(machine, line, axes, began)


def _began(machine: Machine, deep: int) -> float:
    """The height that the cycle counts from and goes back to under G98."""
    state = machine.state
    if state.series is None:
        state.series = state.at[deep]
    return state.series if state.dialect.return_first else state.at[deep]


def _repeats(machine: Machine, line: Line) -> int:
    number = line.words.get("L", 1.0)
    if number != round(number) or number < 1:
        machine.problem("cycle", "L must be a whole number above zero; read as 1.")
        return 1
    return min(round(number), MOST_REPEATS)


def _wrong(machine: Machine, hole: str, began: float, repeats: int) -> str:
    state = machine.state
    if hole not in state.sticky or "R" not in state.sticky:
        return f"A cycle needs {hole} and R; nothing is drilled here."
    if state.inverse:
        return "A cycle cannot run under G93; nothing is drilled here."
    if state.side != 40:
        return "A cycle cannot run with cutter compensation on; nothing is drilled here."
    if state.motion == BACK_BORE and not {"I", "J", "K"} <= set(state.sticky):
        return "G87 needs I, J and K; nothing is drilled here."
    if state.motion == 83 and state.sticky.get("Q", 0.0) <= 0:
        return "G83 needs Q above zero; nothing is drilled here."
    clear, bottom = _heights(machine, hole, began)
    if machine.state.motion == 83:
        pecks = (clear - bottom) / machine.state.sticky["Q"]
        if pecks > MOST_PECKS or pecks * repeats > MOST_ON_A_LINE:
            return "Q is too small for this depth; nothing is drilled here."
    return "" if clear >= bottom else "R lies below the hole's bottom; nothing is drilled here."


def _heights(machine: Machine, hole: str, began: float) -> tuple[float, float]:
    """The clear height R and the bottom of the hole, in the frame."""
    state = machine.state
    axis = "XYZ".index(hole)
    offset = state.offset(axis)
    if state.absolute:
        return state.sticky["R"] + offset, state.sticky[hole] + offset
    clear = state.sticky["R"] + (began if state.dialect.relative_r else offset)
    return clear, clear + state.sticky[hole]


def _one(machine: Machine, line: Line, axes: tuple[int, int, int], began: float) -> None:
    state = machine.state
    first, second, deep = axes
    hole = "XYZ"[deep]
    clear, bottom = _heights(machine, hole, began)
    if state.absolute:
        state.unsure[deep] = False
    if state.at[deep] < clear:
        _to(machine, RAPID, deep, clear)
    over = list(state.at)
    for axis in (first, second):
        letter = "XYZ"[axis]
        if letter in line.words:
            value = line.words[letter] * state.scale
            base = state.offset(axis) if state.absolute else state.at[axis]
            over[axis] = base + value
            state.unsure[axis] = state.unsure[axis] and not state.absolute
    if over != state.at:
        machine.go(RAPID, over)
    _to(machine, RAPID, deep, clear)
    if state.motion == BACK_BORE:
        _bore_back(machine, axes, bottom)
    _down_and_up(machine, deep, clear, bottom, max(began, clear) if state.back_to == 98 else clear)


def _bore_back(machine: Machine, axes: tuple[int, int, int], bottom: float) -> None:
    """Beside the hole down, under it, up to K at feed and back, and out beside it again.

    NISTIR 6556, from memory: I and J are always increments, K a height of the program or, under
    G91, from the bottom. The spindle stands still on the ways beside the hole.
    """
    state, (first, second, deep) = machine.state, axes
    place = list(state.at)
    beside = list(place)
    beside[first] += state.sticky["IJK"[first]]
    beside[second] += state.sticky["IJK"[second]]
    up = state.sticky["IJK"[deep]]
    up += state.offset(deep) if state.absolute else bottom
    machine.go(RAPID, beside)
    _to(machine, RAPID, deep, bottom)
    machine.go(RAPID, [bottom if axis == deep else place[axis] for axis in range(3)])
    _to(machine, LINE, deep, up)
    _to(machine, LINE, deep, bottom)
    machine.go(RAPID, [bottom if axis == deep else beside[axis] for axis in range(3)])
    _to(machine, RAPID, deep, place[deep])
    machine.go(RAPID, place)


def _to(machine: Machine, kind: int, axis: int, height: float) -> None:
    if machine.state.at[axis] != height:
        end = list(machine.state.at)
        end[axis] = height
        machine.go(kind, end)


def _down_and_up(machine: Machine, axis: int, clear: float, bottom: float, back: float) -> None:
    state = machine.state
    if state.motion == 83:
        _peck(machine, axis, clear, bottom)
    elif state.motion != BACK_BORE:
        _to(machine, LINE, axis, bottom)
    if state.motion in DWELLS and state.sticky.get("P"):
        wait = state.sticky["P"]
        machine.pause("dwell", max(0.0, wait / 1000 if state.dialect.dwell_ms else wait))
    if state.motion in FEED_BACK:
        _to(machine, LINE, axis, clear)
    _to(machine, RAPID, axis, back)


def _peck(machine: Machine, axis: int, clear: float, bottom: float) -> None:
    """Down by Q, out to R, back to a little above the last depth, until the bottom."""
    step = machine.state.sticky["Q"]
    back = machine.state.dialect.peck_back_mm
    depth = clear - step
    while depth > bottom + 1e-9:
        _to(machine, LINE, axis, depth)
        _to(machine, RAPID, axis, clear)
        _to(machine, RAPID, axis, min(clear, depth + back))
        depth -= step
    _to(machine, LINE, axis, bottom)
