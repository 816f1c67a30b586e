"""Short ways to read a text and look at its path."""

import numpy as np

from station.cutting.model import Program, Setting
from station.cutting.moves import geometry
from station.cutting.report import read


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
