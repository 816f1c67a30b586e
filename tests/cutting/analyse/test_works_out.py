"""What is worked out of a file: bits, lengths, times, changes of bits."""

import math
from dataclasses import replace

import pytest
from reading import HEAD, SETTING, box, found, program

from station.cutting.analyse.time import time_path
from station.cutting.report import analyse_program
from station.shop.facts import Router


def test_a_bits_metres_time_revolutions_and_chip_load():
    got = found("G0 X0 Y10\nG1 Z-3 F600\nX180 F3600\nG0 Z5\n")
    (bit,) = got.bits
    assert bit.cut_mm == pytest.approx(188)  # eight down, of which three in the sheet
    minutes = 8 / 600 + 180 / 3600
    assert bit.seconds == pytest.approx(60 * minutes)
    assert bit.revolutions == pytest.approx(18000 * minutes)
    assert bit.chip_mm == (pytest.approx(0.1), pytest.approx(0.1))


def test_lengths_plunges_and_bounds():
    got = found("G0 X10 Y10\nG1 Z-3 F600\nX110\nG0 Z5\nX30\nG1 Z-2\nG0 Z5\n")
    assert (got.feed_mm, got.plunges) == (pytest.approx(8 + 100 + 7), 2)
    assert got.rapid_mm == pytest.approx(5 + math.hypot(10, 10) + 8 + 80 + 7)
    assert got.bounds_mm == pytest.approx((0, 0, -3, 110, 10, 5))


@pytest.mark.parametrize(("change_s", "pauses"), [(120.0, 240.0), (8.0, 16.0)])
def test_changes_by_hand_and_by_a_changer(change_s, pauses):
    got = program(HEAD + "G1 X5 F900\nT2 M6\nX9\n")
    router = Router(id="1", name="", change_s=change_s, changer=change_s < 60)
    assert time_path(got.moves, got.pauses, router).pauses_s == pauses


def test_a_bit_that_is_in_already_is_not_changed():
    router = Router(id="1", name="", change_s=120.0)
    got = program(HEAD + "G1 X5 F900\nX9\n")
    assert any(pause.kind == "tool" for pause in got.pauses)
    assert time_path(got.moves, got.pauses, router).pauses_s == 0
    again = program(HEAD + "G1 X5 F900\nT2 M6\nX9\nT1 M6\nX5\n")  # the next sheet begins with it
    assert time_path(again.moves, again.pauses, router).pauses_s == 240


@pytest.mark.parametrize(("wait", "told"), [("P2000", 1), ("P60", 0), ("P2", 0)])
def test_a_wait_of_half_an_hour_is_asked_about(wait, told):
    got = found(box(20, 20, 106, 86, tab=12) + f"G4 {wait}\n")
    assert sum(p.kind == "long-dwell" for p in got.problems) == told


def test_each_axis_has_its_own_acceleration():
    router = Router(id="1", name="", accel_mm_s2=1000, accel_z_mm_s2=250, rapid_mm_min=60000)
    along, across, up = (
        time_path(program(f"G21 G0 {axis}100").moves, (), router).total_s for axis in "XYZ"
    )
    assert (along, up) == (pytest.approx(across), pytest.approx(2 * along))
    slow = replace(router, accel_y_mm_s2=250)
    assert time_path(program("G21 G0 Y100").moves, (), slow).total_s == pytest.approx(up)
    assert time_path(program("G21 G0 X100").moves, (), slow).total_s == pytest.approx(along)
    arcs = [
        time_path(program("G21 G3 X50 Y50 I0 J50 F60000").moves, (), r) for r in (router, slow)
    ]
    assert arcs[1].total_s > arcs[0].total_s


def test_what_is_cut_twice_is_worn_twice():
    one, two = found(box(20, 20, 106, 86)), found(box(20, 20, 106, 86) * 2)
    assert two.bits[0].cut_mm == pytest.approx(2 * one.bits[0].cut_mm)
    assert analyse_program(two.program, SETTING).scrap_mm2 == pytest.approx(one.scrap_mm2)
