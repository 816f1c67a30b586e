"""Arcs by centre or by radius, read line by line; `arcs_compiled.py` says the same compiled."""

from __future__ import annotations

import math

from station.cutting.model import LINE, PLANE_AXES
from station.cutting.read.controller_plain import (
    FULL,
    REPORT_INCH,
    REPORT_MM,
    Machine,
    centre_of_radius,
    ends_apart,
    radii_differ,
    turn_of,
)
from station.cutting.read.line_plain import Line, target


def arc(machine: Machine, line: Line, kind: int) -> None:
    """The arc of a line, G2 or G3; what is none is read straight and noted."""
    state = machine.state
    first, second, _ = PLANE_AXES[state.plane]
    begin = (state.at[first], state.at[second])
    end3 = target(state, line)
    end = (end3[first], end3[second])
    turns = max(1, min(round(line.words.get("P", 1)), 10_000))
    if "R" in line.words:
        if line.has("IJK"):
            machine.problem("arc-bad", "This arc has a centre and a radius; the radius is used.")
        _radius_arc(machine, kind, begin, end, end3, line.words["R"] * state.scale)
        return
    letters = ("IJK"[first], "IJK"[second])
    if not line.has("".join(letters)):
        machine.problem("arc-bad", "This arc has no centre; read as a straight move.")
        machine.go(LINE, end3)
        return
    centre = (
        begin[0] + line.words.get(letters[0], 0.0) * state.scale,
        begin[1] + line.words.get(letters[1], 0.0) * state.scale,
    )
    if min(math.dist(begin, centre), math.dist(end, centre)) <= FULL:
        machine.problem("arc-bad", "This arc ends at its own centre; read as a straight move.")
        machine.go(LINE, end3)
        return
    check_radii(machine, begin, end, centre)
    machine.arc(kind, end3, centre, turn_of(kind, begin, end, centre, turns))


def check_radii(
    machine: Machine,
    begin: tuple[float, float],
    end: tuple[float, float],
    centre: tuple[float, float],
) -> None:
    """Notes radii at an arc's start and end that disagree by more than the report allows."""
    off = abs(math.dist(begin, centre) - math.dist(end, centre))
    if off > (REPORT_MM if machine.state.scale == 1.0 else REPORT_INCH) + 1e-9:
        machine.problem("arc-radii", radii_differ(off))


def _radius_arc(
    machine: Machine,
    kind: int,
    begin: tuple[float, float],
    end: tuple[float, float],
    end3: list[float],
    radius: float,
) -> None:
    if math.dist(begin, end) <= 1e-9 or radius == 0:
        text = "A radius arc must end elsewhere than it starts; read as a straight move."
        machine.problem("arc-bad", text)
        machine.go(LINE, end3)
        return
    centre, apart = centre_of_radius(kind, begin, end, radius)
    if apart > REPORT_MM:
        machine.problem("arc-radii", ends_apart(apart))
    sweep = turn_of(kind, begin, end, centre)
    machine.arc(kind, end3, centre, sweep)
