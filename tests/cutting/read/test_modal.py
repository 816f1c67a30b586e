"""Modes and frames, beside the report's own (`tests/outside/rs274.py`)."""

import pytest
from reading import both, ends, kinds, program, told


def test_g92_kept_and_restored():
    got = program("G21 G0 X4\nG92 X0\nG92.2\nG0 X1\nG92.3\nG0 X1\nG92.1\nG92.3\nX1")
    assert [p[0] for p in ends(got)] == [4, 1, 5, 1]


def test_work_offsets_in_one_frame():
    got = program("G21\nG10 L2 P2 X100 Y50\nG0 X1 Y1\nG55 X1 Y1\nG54 X2\nG10 L2 P1 X-5\nX2")
    assert [p[:2] for p in ends(got)] == [(1, 1), (101, 51), (2, 51), (-3, 51)]


def test_systems_to_nine():
    text = "G21\nG10 L2 P9 X7\nG59.3 G0 X1"
    assert ends(program(text)) == [(8, 0, 0)]


def test_homing_in_one_line_and_heights_that_are_not_known():
    got = program("G21 G0 X10 Y10 Z5\nG0 G91 G28 Z0\nG90 G0 Z3", dialect="home-named")
    assert ends(got)[-1] == (10, 10, 3)
    assert list(got.moves.sure)[-1]
    assert not list(got.moves.sure)[-2]


def test_home_by_way_of_a_point():
    got = program("G21 G0 X10 Y10 Z5\nG28 X20")
    assert ends(got)[1:] == [(20, 10, 5), (0, 0, 0)]


def test_g53_is_one_move():
    got = program("G21\nG10 L2 P1 X10\nG0 X1\nG53 G0 X1\nX1")
    assert [p[0] for p in ends(got)] == [11, 1, 11]


@pytest.mark.parametrize(
    ("text", "xs"),
    [
        ("G21 G91 G0 X1\nX1\nG90 X1\nX5", [1, 2, 1, 5]),
        ("G20 G0 X1\nG21 X1", [25.4, 1]),
        ("G21 G91 G0 X1\nG20 X1\nG21 G90 X3", [1, 26.4, 3]),
    ],
)
def test_distance_and_units(text, xs):
    assert [p[0] for p in ends(program(text))] == pytest.approx(xs)


def test_inverse_time():
    got = program("G21 G93\nG1 X100 F2\nG0 X0\nG1 X5")
    assert got.moves.minutes[0] == 0.5
    assert str(got.moves.minutes[1]) == "nan"
    assert [p.line for p in got.problems if p.kind == "no-feed"] == [4]


@pytest.mark.parametrize(("dialect", "seconds"), [("report", 500.0), ("milliseconds", 0.5)])
def test_dwell(dialect, seconds):
    (pause,) = program("G21\nG4 P500", dialect=dialect).pauses
    assert (pause.kind, pause.seconds) == ("dwell", seconds)


def test_no_feed():
    assert "no-feed" in kinds(program("G21\nG1 X5"))
    assert "no-feed" not in kinds(program("G21\nG1 X5 F1"))


def test_tools_spindle_and_stops():
    got = program("G21 T2\nG0 X1\nM6\nS9000 M3\nG1 X2 F9\nM5\nX3\nT3 M6\nX4\nM2\nX9")
    assert list(got.moves.tool) == [0, 2, 2, 3]
    assert list(got.moves.rpm) == [0, 9000, 0, 0]
    assert [p.tool for p in got.pauses if p.kind == "tool"] == [2, 3]


def test_cutter_compensation_is_told():
    assert "cutter-comp" in kinds(program("G21 F9\nG41 D1\nG1 X5"))


def test_a_parameter_set_by_hand_moves_no_offset_and_says_so():
    got = program("G21\nG10 L2 P1 X10\n#1=#5221\nG0 X#1\n#5221=50\nX1")
    assert [p[0] for p in ends(got)] == [20, 11]


def test_setting_an_offset_by_its_parameter_is_told():
    told = [str(p.text) for p in program("G21\n#5241=50\nG0 X1\nM30").problems]
    assert "Setting #5241 moves no offset here; G10 L2 does." in told


def test_g52_shifts_the_zero_until_it_is_taken_back():
    got = both("G21\nG0 X1\nG52 X100 Z-2\nG0 X1 Z0\nG92 X0\nX5\nG92.1\nX2\nG52 X0 Z0\nX2 Z0")
    assert [end[0] for end in ends(got)] == [1, 101, 106, 102, 2]
    assert [end[2] for end in ends(got)] == [0, -2, -2, -2, 0]
    assert told(got) == []


def test_m4_is_asked_about_unless_a_bit_is_said_to_cut_so():
    text = "G21\nM4 S9000\nG1 X1 F100\nM5\nM30"
    assert program(text).backward == 2
    assert program("(T1 LEFT-HAND CUTTER)\n" + text).backward == 0


def test_the_way_between_zeroes_is_known_where_the_file_sets_both():
    tail = "G54 G0 X1\nG55 G0 X1\nM30"
    one, other = "G10 L2 P1 X0 Y0\n", "G10 L2 P2 X200 Y0\n"
    assert program(one + other + tail).other_zero is None
    assert program(other + tail).other_zero == (3, "G55")
    assert program("G54\n" + one + "G55 G0 X1\n" + other).other_zero == (3, "G55")
    third = one + other + tail.replace("M30", "G56 G0 X1\nM30")
    assert program(third).other_zero == (5, "G56")
