"""Short ways to read a text and look at its path."""

import numpy as np

from station.cutting.model import Program, Setting
from station.cutting.moves import geometry
from station.cutting.report import read

# The program of checks 7.5
OF_THE_CHECKS = """G21 G90 G17
G0 X0 Y0 Z5
M3 S18000
G1 Z-3 F500
G1 X100 F3000
G2 X120 Y-20 I0 J-20
G1 Y-80
G3 X100 Y-100 R20
G1 X0
G1 Y0
G0 Z5
M5
"""


def program(text: str, **setting) -> Program:
    return read(text.encode(), Setting(**setting))


def lengths(got: Program) -> tuple[float, float]:
    """Rapid and feed length."""
    length = geometry(got.moves).length
    rapid = got.moves.kind == 0
    return float(length[rapid].sum()), float(length[~rapid].sum())


def ends(got: Program) -> list[tuple[float, ...]]:
    return [tuple(map(float, np.round(p, 6) + 0.0)) for p in got.moves.points[1:]]


def kinds(got: Program) -> set[str]:
    return {p.kind for p in got.problems}
