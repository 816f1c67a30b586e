"""Positions agree with pygcode 0.2.1 on files that it can read (checks 7.6, COMPUTED)."""

import math

import numpy as np
import pytest
from layouts import STYLES, make
from pygcode import Line, Machine
from pygcode.gcodes import GCodeSelectXYPlane
from pygcode.machine import Position
from pygcode.transform import ArcLinearizeInside, ArcLinearizeMid, linearize_arc
from reading import OF_THE_CHECKS

from station.cutting.geometry.moves import geometry
from station.cutting.model import Setting
from station.cutting.report import read

READABLE = [n for n, s in enumerate(STYLES) if not s.inch and not s.radius_words and not s.blanks]


def theirs(text: str) -> list[tuple[float, float, float]]:
    machine, found = Machine(), []
    for line in text.splitlines():
        block = Line(line).block
        machine.process_block(block)
        found.append(tuple(machine.pos.values[a] for a in "XYZ"))
    return found


@pytest.mark.parametrize("seed", READABLE[:4])
def test_positions(seed):
    layout = make(seed)
    text = "\n".join(layout.text.splitlines()[:300])
    text = text.replace("M30", "")
    got = read(text.encode(), layout.setting)
    by_line = dict(zip(got.moves.line.tolist(), got.moves.points[1:].tolist(), strict=True))
    places = theirs(text)
    checked = 0
    for line, point in by_line.items():
        np.testing.assert_allclose(point, places[line - 1], atol=1e-6)
        checked += 1
    assert checked > 10


# checks 7.5 and 7.6 (COMPUTED with pygcode 0.2.1): its program, rapid 13 and linear 368 mm


def test_the_program_of_the_checks_is_read_alike():
    moves = read(OF_THE_CHECKS.encode(), Setting()).moves
    places = theirs(OF_THE_CHECKS)
    for line, point in zip(moves.line.tolist(), moves.points[1:].tolist(), strict=True):
        np.testing.assert_allclose(point, places[line - 1], atol=1e-9)
    length = geometry(moves).length
    assert [length[moves.kind == kind].sum() for kind in (0, 1)] == pytest.approx([13, 368])


def test_an_arc_by_radius_lies_on_the_side_that_its_way_says():
    # checks 7.5: G3 R20 from (120, -80) to (100, -100) turns about (120, -100), G2 about
    # (100, -80); both are a quarter, 10 π mm (COMPUTED)
    for word, centre in (("G3", (120, -100)), ("G2", (100, -80))):
        moves = read(OF_THE_CHECKS.replace("G3 X100", f"{word} X100").encode(), Setting()).moves
        assert tuple(moves.centre[5]) == pytest.approx(centre)
        assert geometry(moves).length[5] == pytest.approx(10 * math.pi)


QUARTER = "G3 X20 Y20 I0 J20"  # of a radius of 20 mm


@pytest.mark.parametrize(
    ("method", "error", "length"),
    [
        (ArcLinearizeInside, 0.1, 31.36548),
        (ArcLinearizeInside, 0.01, 31.41076),
        (ArcLinearizeInside, 0.001, 31.41541),
        (ArcLinearizeMid, 0.1, 31.44237),
        (ArcLinearizeMid, 0.01, 31.41855),
        (ArcLinearizeMid, 0.001, 31.41619),
    ],
)
def test_their_chords_bracket_an_arcs_length(method, error, length):
    # COMPUTED with pygcode 0.2.1 (checks 7.6): chords inside are shorter, across longer
    arc = Line(QUARTER).block.gcodes[0]
    at, theirs = np.zeros(3), 0.0
    for move in linearize_arc(arc, Position(X=0, Y=0, Z=0), plane=GCodeSelectXYPlane(),
                              method_class=method, max_error=error, decimal_places=9):  # fmt: skip
        to = np.array([move.X or 0.0, move.Y or 0.0, move.Z or 0.0])
        theirs += float(np.linalg.norm(to - at))
        at = to
    moves = read(f"G21 F9\n{QUARTER}".encode(), Setting()).moves
    ours = float(geometry(moves).length[0])
    assert theirs == pytest.approx(length, abs=2e-4)
    assert (theirs < ours) == (method is ArcLinearizeInside)
