"""Arcs, beside the report's own (`tests/outside/rs274.py`)."""

import math

import pytest
from reading import ends, kinds, program

from station.cutting.geometry.moves import find_bounds, find_geometry


def last(text: str):
    got = program(f"G21 F1000\n{text}")
    return got, got.moves, len(got.moves) - 1


@pytest.mark.parametrize(
    ("text", "centre", "length"),
    [
        ("G3 I10", (10, 0), 62.8318530718),
        ("G2 X0 Y0 I10", (10, 0), 62.8318530718),
        ("G2 X0 Y0 I10 P3", (10, 0), 3 * 62.8318530718),
        ("G91 G3 X10 I5", (5, 0), 15.7079633),
        ("G3 X20 Y20 R-20", (20, 0), 94.2477796),
        ("G3 X20 Y20 R20", (0, 20), 31.4159265),
    ],
)
def test_centre_and_length(text, centre, length):
    got, moves, i = last(text)
    assert tuple(moves.centre[i]) == pytest.approx(centre, abs=1e-9)
    assert find_geometry(moves).length[i] == pytest.approx(length, abs=1e-6)
    assert not got.problems


@pytest.mark.parametrize(
    ("plane", "text", "end"),
    [
        ("G18", "G2 X10 Z10 I10 K0", (10, 0, 10)),
        ("G18", "G3 X10 Z-10 I10 K0", (10, 0, -10)),
        ("G19", "G2 Y10 Z10 J10 K0", (0, 10, 10)),
        ("G19", "G3 Y10 Z-10 J10 K0", (0, 10, -10)),
    ],
)
def test_upright_planes_turn_as_seen_from_their_third_axis(plane, text, end):
    _, moves, i = last(f"{plane} {text}")
    got = tuple(moves.points[i + 1])
    assert got == pytest.approx(end)
    quarter, three = math.pi / 2 * 10, math.pi * 1.5 * 10
    expected = {
        ("G18", 10): quarter, ("G18", -10): quarter, ("G19", 10): quarter, ("G19", -10): quarter,
    }[plane, end[2]]  # fmt: skip
    assert find_geometry(moves).length[i] in (pytest.approx(expected), pytest.approx(three))


def test_direction_in_the_zx_plane():
    # G18: first axis Z, second X; a counter-clockwise quarter goes from +Z to +X
    _, moves, i = last("G0 Z10\nG18 G3 X10 Z0 K-10 I0")
    assert moves.sweep[i] == pytest.approx(math.pi / 2)


def test_direction_in_the_yz_plane():
    _, moves, i = last("G0 Y10\nG19 G3 Y0 Z10 J-10 K0")
    assert moves.sweep[i] == pytest.approx(math.pi / 2)


def test_a_radius_that_does_not_reach_warns_and_does_not_stop():
    got, moves, _ = last("G2 X10.1 Y0 R5")
    assert "arc-radii" in kinds(got)
    assert len(moves) == 1


@pytest.mark.parametrize("text", ["G2 X0 Y0 R10", "G2 X10", "G2 X10 R0"])
def test_arcs_that_are_none_are_read_straight(text):
    got, _, _ = last(text)
    assert "arc-bad" in kinds(got)


def test_a_chord_under_two_microns_is_not_a_full_circle():
    _, moves, i = last("G0 X5\nG3 X4.999999 Y0.0015 I-5 J0")
    assert find_geometry(moves).length[i] == pytest.approx(0.0015, abs=1e-4)


def test_a_bulge_counts_in_the_bounds():
    got = program("G21 F9\nG2 X10 I5")
    assert find_bounds(got.moves, got.moves.sure)[4] == pytest.approx(5)
    assert ends(got) == [(10, 0, 0)]
