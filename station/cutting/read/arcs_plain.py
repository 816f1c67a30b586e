"""Arcs by centre or by radius, in plain Python; `arcs_compiled.py` says the same compiled."""

from __future__ import annotations

import math

from station.cutting.model import CCW, CW, LINE, PLANE_AXES
from station.cutting.read.controller_plain import Controller
from station.cutting.read.line_plain import LineWords, find_target
from station.shop.words import Say, length, say

FULL = 1e-7  # mm: an end nearer its start than this is the start
REPORT_MM, REPORT_INCH = 0.002, 0.00508  # by how much an arc's radii may disagree


def execute_arc(controller: Controller, line: LineWords, kind: int) -> None:
    """Executes the arc of a line, G2 or G3; what is none is read straight and noted."""
    state = controller.state
    first, second, _ = PLANE_AXES[state.plane]
    begin = (state.at[first], state.at[second])
    end3 = find_target(state, line)
    end = (end3[first], end3[second])
    turns = max(1, min(round(line.words.get("P", 1)), 10_000))
    if "R" in line.words:
        if line.has_any("IJK"):
            controller.note_problem(
                "arc-bad", say("This arc has a centre and a radius; the radius is used.")
            )
        _execute_radius_arc(controller, kind, begin, end, end3, line.words["R"] * state.scale)
        return
    letters = ("IJK"[first], "IJK"[second])
    if not line.has_any("".join(letters)):
        controller.note_problem("arc-bad", say("This arc has no centre; read as a straight move."))
        controller.write_straight(LINE, end3)
        return
    centre = (
        _find_centre_word(controller, line, first),
        _find_centre_word(controller, line, second),
    )
    if min(math.dist(begin, centre), math.dist(end, centre)) <= FULL:
        controller.note_problem(
            "arc-bad", say("This arc ends at its own centre; read as a straight move.")
        )
        controller.write_straight(LINE, end3)
        return
    off = abs(math.dist(begin, centre) - math.dist(end, centre))
    if off > (REPORT_MM if state.scale == 1.0 else REPORT_INCH) + 1e-9:
        controller.note_problem("arc-radii", tell_radii_differ(off))
    controller.write_arc(kind, end3, centre, find_sweep(kind, begin, end, centre, turns))


def _find_centre_word(controller: Controller, line: LineWords, axis: int) -> float:
    """Finds a centre's place on an axis; one that is not said is where the arc starts."""
    state, letter = controller.state, "IJK"[axis]
    if letter not in line.words:
        return state.at[axis]
    base = state.find_offset(axis) if state.absolute_centres else state.at[axis]
    return base + line.words[letter] * state.scale


def _execute_radius_arc(
    controller: Controller,
    kind: int,
    begin: tuple[float, float],
    end: tuple[float, float],
    end3: list[float],
    radius: float,
) -> None:
    """Executes an arc by its radius; one that ends where it starts is read straight and noted."""
    if math.dist(begin, end) <= 1e-9 or radius == 0:
        text = say("A radius arc must end elsewhere than it starts; read as a straight move.")
        controller.note_problem("arc-bad", text)
        controller.write_straight(LINE, end3)
        return
    centre, apart = find_centre(kind, begin, end, radius)
    if apart > REPORT_MM:
        controller.note_problem("arc-radii", tell_ends_apart(apart))
    sweep = find_sweep(kind, begin, end, centre)
    controller.write_arc(kind, end3, centre, sweep)


def tell_radii_differ(off: float) -> Say:
    """Says that an arc's radii differ by so many mm."""
    return say("The arc's radii differ by {off} mm; its ends do not fit its centre.",
               off=length(off, 4))  # fmt: skip


def tell_ends_apart(apart: float) -> Say:
    """Says that an arc's ends lie further apart than twice its radius."""
    return say("The arc's ends lie {apart} mm further apart than its radius reaches.",
               apart=length(apart, 4))  # fmt: skip


def find_sweep(kind: int, start: tuple[float, float], end: tuple[float, float],
               centre: tuple[float, float], turns: int = 1) -> float:  # fmt: skip
    """Finds the angle swept, radians, counter-clockwise positive; an end at the start: a full
    turn. P words add whole turns.
    """
    first = math.atan2(start[1] - centre[1], start[0] - centre[0])
    last = math.atan2(end[1] - centre[1], end[0] - centre[0])
    whole = math.hypot(end[0] - start[0], end[1] - start[1]) <= FULL
    sweep = 0.0 if whole else (last - first) % math.tau
    if kind == CW:
        sweep = sweep - math.tau if sweep > 0 or whole else 0.0
    elif whole:
        sweep = math.tau
    return sweep + (turns - 1) * math.copysign(math.tau, 1 if kind == CCW else -1)


def find_centre(
    kind: int, start: tuple[float, float], end: tuple[float, float], radius: float
) -> tuple[tuple[float, float], float]:
    """Finds the centre for a radius word, and by how much the ends are too far apart (0: fine).

    A positive radius sweeps at most half a turn, a negative one more.
    """
    dx, dy = end[0] - start[0], end[1] - start[1]
    chord = math.hypot(dx, dy)
    height2 = radius * radius - chord * chord / 4
    height = math.sqrt(max(0.0, height2))
    left = (kind == CCW) == (radius > 0)
    sign = 1 if left else -1
    x = (start[0] + end[0]) / 2 - sign * height * dy / chord
    y = (start[1] + end[1]) / 2 + sign * height * dx / chord
    return (x, y), max(0.0, chord - 2 * abs(radius))
