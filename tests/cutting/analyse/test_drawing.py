"""The drawn path: bits, bands of depth, times, and how far it lies from the text's own."""

import math
from array import array

import numpy as np
import pytest

from station.cutting.analyse.drawing import draw_path, weigh_points
from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program
from station.shop.strokes import RAPID, Stroke, pack, unpack

HEAD = "G21 G90 G17 G0 Z5\nT1 M6\nS18000 M3\n"


def path(text, most=20_000, origin="lower-left"):
    setting = Setting(thickness_mm=8, sheet=(600, 400), origin=origin, zero="face")
    return draw_path(
        analyse_program(read_program((HEAD + text).encode(), setting), setting), None, most
    )


@pytest.mark.parametrize(
    ("text", "bands"),
    [
        ("G0 X10 Y10\nG1 Z-2 F600\nX50\n", [1]),
        ("G0 X10 Y10\nG1 Z-2.1 F600\nX50\n", [2]),
        ("G0 X10 Y10\nG1 Z-4 F600\nX50\nZ-8.2\nX10\n", [2, 4]),
        ("G0 X10 Y10\nG1 X50 Z2 F600\nZ-0.3\nX70\n", [0, 1]),
    ],
)
def test_depth_falls_into_quarters_of_the_sheet(text, bands):
    assert [s.band for s in path(text).strokes if s.band != RAPID] == bands


def test_bits_and_rapids_stand_apart():
    found = path("G0 X10 Y10\nG1 Z-2 F600\nX50\nG0 Z5\nT2 M6\nX90\nG1 Z-2\nX95\n").strokes
    assert [(s.bit, s.band) for s in found if s.band != RAPID] == [(1, 1), (2, 1)]
    assert any(s.band == RAPID for s in found)


def test_times_follow_the_feed_and_run_on_without_a_gap():
    found = path("G0 X0 Y0\nG1 Z-2 F600\nX100\nX100 Y50\n")
    cut = found.strokes[-1]
    assert cut.points[-1][2] - cut.points[0][2] == pytest.approx(15 + 0.7, abs=0.01)
    times = [p[2] for s in found.strokes for p in s.points]
    assert times == sorted(times)
    assert found.seconds == pytest.approx(times[-1])


@pytest.mark.parametrize("word", ["G2", "G3"])
def test_an_arc_is_drawn_on_its_circle(word):
    cut = path(f"G0 X200 Y100\nG1 Z-2 F600\n{word} X200 Y100 I-50 J0\n").strokes[-1]
    off = [abs(math.hypot(x - 150, y - 100) - 50) for x, y, _ in cut.points]
    assert max(off) < 0.01
    assert len(cut.points) > 30


@pytest.mark.parametrize(
    ("plane", "text", "along", "reach"),
    [
        ("G18", "G3 I20 K0", 0, (100, 140)),  # a whole turn
        ("G19", "G2 J20 K0", 1, (100, 140)),
        ("G18", "G3 X120 Z-21 I20 K0", 0, (100, 140)),  # three quarters
        ("G19", "G2 Y120 Z19 J20 K0", 1, (100, 120)),  # a quarter
    ],
)
def test_an_upright_arc_is_drawn_as_it_is_seen_from_above(plane, text, along, reach):
    strokes = path(f"G0 X100 Y100\nG1 Z-1 F600\n{plane} {text}\n").strokes
    points = [p for stroke in strokes if stroke.band != RAPID for p in stroke.points]
    seen = [p[along] for p in points]
    assert (min(seen), max(seen)) == pytest.approx(reach, abs=0.1)
    assert all(p[1 - along] == pytest.approx(100) for p in points)


def test_an_upright_arc_is_drawn_as_deep_as_it_goes():
    assert path("G0 X100 Y100 Z1\nG18 G1 F600\nG2 X112 Z1 I6 K0\n").strokes[-1].band == 3


def test_no_more_points_than_a_draft_can_carry_and_it_says_how_far_off():
    rng = np.random.default_rng(5)
    text = "G0 X0 Y200\nG1 Z-2 F600\n" + "".join(
        f"X{n * 0.2:.2f} Y{200 + y:.3f}\n" for n, y in enumerate(rng.normal(0, 0.5, 2500))
    )
    fine, rough = path(text), path(text, 400)
    assert (
        sum(len(s.points) for s in rough.strokes) <= 400 < sum(len(s.points) for s in fine.strokes)
    )
    assert fine.off_mm < rough.off_mm
    assert rough.share == 1.0


def test_too_many_strokes_are_told_as_a_share():
    text = "".join(f"G0 X{n}\nG1 Z-2 F600\nG0 Z5\n" for n in range(100))
    found = path(text, 100)
    assert 0 < found.share < 1
    assert sum(len(s.points) for s in found.strokes) <= 100


def test_a_point_that_can_be_left_out_lies_near_the_line_without_it():
    run = np.array([[0, 0, 0], [5, 0.05, 1], [10, 0, 2], [10, 10, 3]], dtype=float)
    worth = np.full(4, -1.0)
    weigh_points(run, 0, 3, 0.1, worth, np.empty((5, 2), dtype=np.int64))
    assert list(worth > 0.1) == [True, False, True, True]
    assert worth.min() == 0


def test_packed_strokes_come_back_in_tenths():
    made = (Stroke(1, -1, ((0.04, 0.0, 0.0), (12.3, -4.5, 6.7))), Stroke(2, 4, ((1, 2, 3),)))
    assert unpack(pack(made)) == (
        Stroke(1, -1, ((0.0, 0.0, 0.0), (12.3, -4.5, 6.7))),
        Stroke(2, 4, ((1.0, 2.0, 3.0),)),
    )
    assert array("i").itemsize == 4


@pytest.mark.parametrize(("origin", "at"), [("lower-left", (10, 20)), ("centre", (310, 220))])
def test_places_are_told_on_the_sheet_wherever_the_text_has_its_zero(origin, at):
    cut = path("G0 X10 Y20\nG1 Z-2 F600\nX50\n", origin=origin).strokes[-1]
    assert cut.points[0][:2] == pytest.approx(at)
