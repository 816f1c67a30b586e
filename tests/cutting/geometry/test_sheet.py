"""What falls out of the sheet, however its cuts begin, end, overlap or share their lines."""

import math
from dataclasses import replace

import numpy as np
import pytest
from reading import SETTING, box, found, sizes

DEEP = "G1 Z-6.2 F900\nG1 F3000\n"
UP = "G0 Z5\n"

OVERLAP = f"G0 X70 Y20\n{DEEP}X126\nY106\nX20\nY20\nX74\n{UP}"  # begun in mid-edge
GAP = f"G0 X20 Y20\n{DEEP}X126\nY106\nX20\nY20.04\n{UP}"
LEADS = f"G0 X73 Y12\n{DEEP}X73 Y20\nX126\nY106\nX20\nY20\nX76\nX76 Y12\n{UP}"
HALVES = f"G0 X72 Y20\n{DEEP}X126\nY106\nX70\n{UP}G0 X74 Y106\n{DEEP}X20\nY20\nX74\n{UP}"
SPIRAL = (
    "G0 X20 Y20\nG1 Z0 F900\nG1 F3000\nX126 Z-1\nY106 Z-2\nX20 Z-3\nY20 Z-4\nX126 Z-5\n"
    f"Y106 Z-6.2\nX20\nY20\nX126\nY106\n{UP}"
)
BACKWARD = f"G0 X20 Y20\n{DEEP}Y106\nX126\nY20\nX20\n{UP}"


@pytest.mark.parametrize("body", [OVERLAP, GAP, LEADS, HALVES, SPIRAL, BACKWARD])
def test_one_outline_in_many_ways_is_one_part(body):
    assert sizes(found(body)) == [(80, 100, 1)]


def test_a_disc_run_past_its_start():
    x, y = (20 * f(math.radians(5)) for f in (math.cos, math.sin))
    body = f"G0 X90 Y50\n{DEEP}G3 X50 I-20\nG3 X{70 + x:.4f} Y{50 + y:.4f} I20\n{UP}"
    assert sizes(found(body)) == [(34, 34, 1)]


def test_parts_that_share_a_line():
    body = box(20, 20, 206, 86) + f"G0 X123 Y20\n{DEEP}Y106\n{UP}"
    assert sizes(found(body)) == [(80, 97, 2)]


def test_a_grid_of_lines_alone():
    across = "".join(f"G0 X10 Y{y}\n{DEEP}X230\n{UP}" for y in (20, 76, 132))
    along = "".join(f"G0 X{x} Y10\n{DEEP}Y142\n{UP}" for x in (20, 126, 232 - 6))
    assert sizes(found(across + along)) == [(50, 94, 2), (50, 100, 2)]


def test_slots_of_one_stroke_make_another_part():
    slots = "".join(f"G0 X{x} Y40\n{DEEP}Y70\n{UP}" for x in (50, 90))
    got = found(slots + box(20, 20, 106, 86, tab=12) + box(150, 20, 106, 86, tab=12))
    assert [len(s.holes) for s in got.shapes] == [2, 0]
    slot = 6 * 30 + math.pi * 9
    assert got.shapes[1].area_mm2 - got.shapes[0].area_mm2 == pytest.approx(2 * slot, abs=0.1)


def test_a_slot_that_lies_elsewhere_makes_another_part():
    one, other = (f"G0 X{x} Y40\n{DEEP}Y50\n{UP}" for x in (50, 200))
    got = found(one + other + box(20, 20, 106, 86) + box(150, 20, 106, 86))
    assert len(got.shapes) == 2


def test_a_notch_belongs_to_the_outline():
    notch = f"G0 X60 Y10\n{DEEP}Y50\n{UP}"
    (piece,) = found(notch + box(20, 20, 106, 86)).pieces
    assert piece.holes == ()
    assert np.abs(piece.outline - [60, 53]).max(axis=1).min() < 0.2  # its round end


def test_a_skin_holds_its_part():
    (piece,) = found(box(20, 20, 106, 86, z=-5.6)).pieces
    assert piece.skin_mm == pytest.approx(0.4)
    assert piece.tabs == ()


def test_jumps_between_holes_are_no_tabs():
    holes = "".join(f"G0 X{x} Y63\n{DEEP}X{x + 8}\n{UP}" for x in (45, 65, 85))
    (piece,) = found(holes + box(20, 20, 106, 86, tab=12)).pieces
    assert len(piece.holes) == 3
    assert len(piece.tabs) == 1


def test_a_tab_jumped_over_at_a_corner():
    body = f"G0 X73 Y20\n{DEEP}X116\n{UP}G0 X126 Y32\n{DEEP}Y106\nX20\nY20\nX73\n{UP}"
    (piece,) = found(body).pieces
    assert len(piece.tabs) == 1
    assert sizes(found(body)) == [(80, 100, 1)]


@pytest.mark.parametrize("body", [OVERLAP, HALVES, box(20, 20, 106, 86, tab=12)])
def test_sheet_is_parts_and_waste_and_what_the_bit_takes(body):
    setting = replace(SETTING, sheet=(600.0, 400.0))
    got = found(body + box(150, 40, 106, 86) + box(180, 70, 40, 20), setting)
    assert got.parts_mm2 + got.waste_mm2 + got.skeleton_mm2 + got.kerf_mm2 == pytest.approx(
        600 * 400, abs=0.01
    )
    exact = sum(s.area_mm2 * len(s.pieces) for s in got.shapes)
    around = sum(s.perimeter_mm * len(s.pieces) for s in got.shapes)
    assert got.parts_mm2 == pytest.approx(exact, abs=0.003 * around)  # drawn by chords
