"""Tabs around corners, laps past their own start, and cuts that are united anew."""

import pytest

from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program

SHEET = Setting(thickness_mm=6, sheet=(300, 200), zero="face", origin="lower-left", spindle_mm=6)


def read(text: str):
    return analyse_program(read_program(text.encode(), SHEET), SHEET)


SHARP = """G21 G90
M3 S18000
G0 Z5
G0 X59.16 Y55.2
G1 Z-6.2 F400
G1 X150 Y22 F2000
G1 X254 Y60
G1 X150 Y98
G1 X59.16 Y64.8
G0 Z5
M5
M30
"""


def test_a_tab_around_a_sharp_corner_is_found():
    """A lozenge, 208 × 76 along the bit; the way around its left corner is jumped."""
    assert [len(piece.tabs) for piece in read(SHARP).pieces] == [1]


LAPS = """G21 G90
M3 S18000
G0 Z5
G0 X100 Y100
{laps}M5
M30
"""


@pytest.mark.parametrize("past", [True, False])
def test_a_lap_past_its_own_start_leaves_no_tab(past):
    """Each lap of a hole goes on over its start; or stops before it, until the last one, that
    goes all around, cuts the tab through.
    """
    laps = ""
    for top, depth in (("0", "-2"), ("-2", "-4"), ("-4", "-6.2")):
        laps += f"G0 X107 Y100\nG1 Z{top} F400\nG3 X100 Y107 Z{depth} I-7 J0 F2000\n"
        laps += "G3 X93 Y100 I0 J-7\nG3 X100 Y93 I7 J0\n"
        if past or depth == "-6.2":
            laps += "G3 X107 Y100 I0 J7\nG3 X100 Y107 I-7 J0\n"
        laps += "G0 Z5\n"
    told = [p.kind for p in read(LAPS.format(laps=laps)).problems]
    assert ("tab-cut-through" in told) is not past
