"""Tabs that the bit's own width, or a later cut, takes away are told; no others are."""

from math import cos, sin

import pytest
from reading import box, found, jump_around, read_on_sheet


def test_a_tab_that_the_bit_is_lifted_over_is_told_where_a_later_lap_cuts_it():
    lap, whole = box(20, 20, 106, 86, z=-5, tab=12), box(20, 20, 106, 86)
    told = [p.line for p in found(lap + whole).problems if p.kind == "tab-cut-through"]
    assert told == [20]


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
    told = [p.kind for p in read_on_sheet(LAPS.format(laps=laps)).problems]
    assert ("tab-cut-through" in told) is not past


CORNER = "X54\nG3 X46 Y86 I0 J-8\nG1 Y46\nX154\nY57\n"


@pytest.mark.parametrize("told", [True, False])
def test_a_tab_at_a_rounded_corner_that_only_the_last_pass_cuts_is_told(told):
    """The first pass goes up before the corner, and comes down on its arc."""
    first = "Y70 F2000\nG0 Z1\nG0 X151.656857 Y91.656857\nG1 Z-4 F400\n"
    arc = "G3 X146 Y94 I-5.656857 J-5.656857 F2000\nG1 "
    whole = "Y86 F2000\nG3 X146 Y94 I-8 J0\nG1 " if told else first.replace("-4", "-6.2") + arc
    body = "G0 X154 Y57\nG1 Z{z} F400\nG1 {way}" + CORNER + "G0 Z5\n"
    laps = body.format(z=-4, way=first + arc) + body.format(z=-6.2, way=whole)
    kinds = [
        p.kind for p in read_on_sheet(f"G21 G90\nM3 S18000\nG4 P2\nG0 Z5\n{laps}M30\n").problems
    ]
    assert ("tab-cut-through" in kinds) is told


ONCE_MORE = "G0 X42 Y42\nG1 Z-6.2 F400\nX142 F2000\nY122\nX42\nY42\nG0 Z5\n"


@pytest.mark.parametrize(
    ("last", "lines"),
    [(ONCE_MORE, [27, 28, 29]), (jump_around(42, 42, 100, 80), [])],
)
def test_a_tab_jumped_over_by_a_lap_through_the_sheet_is_told_where_a_later_one_cuts_it(
    last, lines
):
    """The last tab lies before the first cut: no jump goes over it."""
    found = read_on_sheet(f"G21 G90\nM3 S18000\nG0 Z5\n{jump_around(42, 42, 100, 80)}{last}M30\n")
    assert [p.line for p in found.problems if p.kind == "tab-cut-through"] == lines


def test_a_tab_that_a_lap_jumped_over_along_an_arc_is_told_where_a_later_one_cuts_it():
    """A disc whose quarters are cut one by one, but for the tabs, and then all of it."""
    x, y = 30 * cos(0.2), 30 * sin(0.2)
    ends = [(x, y), (y, x), (-y, x), (-x, y), (-x, -y), (-y, -x), (y, -x), (x, -y)]
    text = "G21 G90\nM3 S18000\nG0 Z5\n"
    for (a, b), (c, d) in zip(ends[::2], ends[1::2], strict=True):
        text += f"G0 X{100 + a:.4f} Y{100 + b:.4f}\nG1 Z-6.2 F400\n"
        text += f"G3 X{100 + c:.4f} Y{100 + d:.4f} I{-a:.4f} J{-b:.4f} F2000\nG0 Z5\n"
    assert [len(piece.tabs) for piece in read_on_sheet(text + "M30\n").pieces] == [4]
    whole = "G0 X121.2132 Y121.2132\nG1 Z-6.2 F400\nG3 I-21.2132 J-21.2132 F2000\nG0 Z5\n"
    told = [
        p.line
        for p in read_on_sheet(text + whole + "M30\n").problems
        if p.kind == "tab-cut-through"
    ]
    assert told == [22, 22, 22, 22]
