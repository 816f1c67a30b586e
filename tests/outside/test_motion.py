"""Motion times and path lengths against closed forms and another reader (`motion.py`)."""

import math

import numpy as np
import pytest
from pygcode import Line
from pygcode.gcodes import GCodeSelectXYPlane
from pygcode.machine import Position
from pygcode.transform import ArcLinearizeInside, ArcLinearizeMid, linearize_arc

from station.cutting.analyse.time import find_corner_speed2, time_path, time_trapezoid
from station.cutting.geometry.moves import find_geometry
from station.shop.facts import Router
from tests.cutting.reading import lengths, positions_elsewhere, program
from tests.outside import motion
from tests.outside.value import values


@values(motion.FROM_REST_TO_REST)
@pytest.mark.slow
def test_from_rest_to_rest(given, expected):
    assert time_trapezoid(*given, 0.0, 0.0) == pytest.approx(expected, abs=1e-7)


@values(motion.FROM_REST_TO_REST)
def test_a_whole_path_of_one_move(given, expected):
    length, top, accel = given
    router = Router(id="1", name="", accel_mm_s2=accel, accel_z_mm_s2=accel)
    got = program(f"G21 G1 X{length} F{top * 60}")
    assert time_path(got.moves, got.pauses, router).total_s == pytest.approx(expected, abs=1e-6)


@values(motion.ENTERED_AT_SPEED)
def test_entered_at_speed(given, expected):
    assert time_trapezoid(*given) == pytest.approx(expected)


@values(motion.LIMITED_JERK)
def test_what_a_limited_jerk_would_add(given, expected):
    """Not modelled.

    A cut file does not tell how a controller spreads jerk over short moves, and it differs from
    one to the next; the shop's record of a router has no jerk. What is left out is a/j for each
    time of speeding up and slowing down, which the router's own pace and extra seconds, fitted
    from recorded sheets, take up.
    """
    length, top, accel, jerk = given
    assert time_trapezoid(length, top, accel, 0.0, 0.0) + accel / jerk == pytest.approx(expected)


@values(motion.CORNERS)
def test_corner_speed(given, expected):
    accel, rounded, inside = given
    cosine = -math.cos(math.radians(inside))
    assert math.sqrt(find_corner_speed2(accel, rounded, cosine)) == pytest.approx(
        expected, abs=1e-4
    )


@values(motion.PROGRAM_TAKES)
def test_a_program_whose_ways_and_time_are_known(given, expected):
    got = program(given + "M2\n")
    rapid, feed, minutes = expected
    assert lengths(got) == (pytest.approx(rapid, abs=1e-9), pytest.approx(feed, abs=1e-6))
    length = find_geometry(got.moves).length
    cutting = got.moves.kind != 0
    took = (length[cutting] / got.moves.feed[cutting]).sum()
    assert took == pytest.approx(minutes, abs=1e-9)


@values(motion.PROGRAM_ELSEWHERE)
def test_another_reader_reads_the_program_alike(given, expected):
    moves = program(given).moves
    places = positions_elsewhere(given)
    for line, point in zip(moves.line.tolist(), moves.points[1:].tolist(), strict=True):
        np.testing.assert_allclose(point, places[line - 1], atol=1e-9)
    length = find_geometry(moves).length
    assert [length[moves.kind == kind].sum() for kind in (0, 1)] == pytest.approx(expected)


@values(motion.ITS_SECOND_ARC)
def test_an_arc_by_radius_lies_on_the_side_that_its_way_says(given, expected):
    moves = program(motion.PROGRAM.replace("G3 X100", f"{given} X100")).moves
    assert tuple(moves.centre[5]) == pytest.approx(expected)
    assert find_geometry(moves).length[5] == pytest.approx(10 * math.pi)


WAYS = {"inside": ArcLinearizeInside, "across": ArcLinearizeMid}


@values(motion.CHORDS_OF_A_QUARTER)
def test_their_chords_bracket_an_arcs_length(given, expected):
    """Chords inside are shorter than the arc, across it longer."""
    side, error = given
    arc = Line(motion.QUARTER).block.gcodes[0]
    at, theirs = np.zeros(3), 0.0
    how = {"method_class": WAYS[side], "max_error": error, "decimal_places": 9}
    for move in linearize_arc(arc, Position(X=0, Y=0, Z=0), plane=GCodeSelectXYPlane(), **how):
        to = np.array([move.X or 0.0, move.Y or 0.0, move.Z or 0.0])
        theirs += float(np.linalg.norm(to - at))
        at = to
    ours = float(find_geometry(program(f"G21 F9\n{motion.QUARTER}").moves).length[0])
    assert theirs == pytest.approx(expected, abs=2e-4)
    assert (theirs < ours) == (side == "inside")
