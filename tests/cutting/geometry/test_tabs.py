"""Tabs around corners and in mouths, and cuts that are united anew."""

from math import pi

import pytest
from reading import box, found, jump_around, read_on_sheet

from station.cutting.geometry.rings import area_of
from station.cutting.model import Setting

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
    assert [len(piece.tabs) for piece in read_on_sheet(SHARP).pieces] == [1]


def round_slot(z: float, out: str) -> str:
    """A slot with a lead in a quarter circle, around a slug 7.4 mm wide."""
    return (
        f"G0 X62.9 Y60.9\nG1 Z{z} F900\nG2 X60 Y58 I-2.9 J0 F3000\nG1 X53.8\nG2 Y69.4 I0 J5.7\n"
        f"G1 X66.2\nG2 Y58 I0 J-5.7\nG1 X60\n{out}G0 Z5\n"
    )


def test_a_jump_between_leads_in_a_slug_is_no_tab_of_its_part():
    """The last but one pass goes just through, as of three passes of a third and a last one."""
    body = round_slot(-4, "G2 X57.39 Y60.61 I0 J2.61\n") + round_slot(-4.1, "X56\n")
    plate = box(28, 38, 64, 54, z=-4.1)
    (piece,) = found(body + plate, Setting(thickness_mm=4.0, bit_mm={1: 4.0})).pieces
    assert (len(piece.holes), piece.tabs) == (1, ())


def test_a_frame_whose_inner_and_outer_tabs_are_near_is_one_part():
    """From the end of each outer cut it is not far to an inner one, but a tab is nearer."""
    text = "G21 G90\nM3 S18000\nG0 Z5\n{}{}M30\n"
    got = read_on_sheet(text.format(jump_around(42, 42, 100, 80), jump_around(20, 20, 144, 124)))
    assert [(len(p.tabs), len(p.holes)) for p in got.pieces] == [(8, 1)]


MOUTH = """G21 G90
M3 S18000
G0 Z5
G0 X150 Y50
G1 Z-6.2 F400
X130 F2000
Y60
X138
G0 Z5
G0 X150 Y64
G1 Z-6.2 F400
Y90 F2000
X20
Y20
X150
Y49.9
G0 Z5
M30
"""


def test_a_tab_in_the_mouth_of_a_notch_does_not_open_the_part():
    """The notch is 4 mm wide, its upper corner is jumped over, and the contour ends at the lower
    one: from there it is not far either, straight over the mouth.
    """
    got = read_on_sheet(MOUTH)
    assert [(round(p.outline[:, 0].max(), 2), len(p.tabs)) for p in got.pieces] == [(147, 1)]


STUB = """G21 G90
M3 S18000
G0 Z5
G0 X100 Y17
G1 Z-6.2 F400
X203 F2000
Y47.5
X178
{up}
X165
Y52.5
X178
{down}
X203
Y83
X17
Y17
X100
G0 Z5
M30
"""


@pytest.mark.parametrize(("up", "height"), [("G1 Z-4", 2.0), ("G1 Z1", 6.0)])
def test_what_is_left_at_the_end_of_a_mouth_is_a_tab_and_no_part_of_the_piece(up, height):
    """The bit is lifted around the whole end of a mouth 11 mm wide, as over a tab: nothing hangs
    on what is left there, and it is trimmed off.
    """
    (piece,) = read_on_sheet(STUB.format(up=up, down="Z-6.2")).pieces
    mouth = 38 * 11 - 2 * (9 - 9 * pi / 4)
    assert abs(area_of(piece.outline)) == pytest.approx(180 * 60 - mouth, abs=0.02)
    assert [(t.height_mm, t.style) for t in piece.tabs] == [(pytest.approx(height), "stub")]


def test_a_feed_over_the_sheet_from_part_to_part_is_no_tab():
    parts = "".join(
        f"G1 X{x} Y20 F2000\nZ-6.2 F400\nX{x + 15}\nY50\nX{x - 15}\nY20\nX{x}\nZ1\n"
        for x in (40, 78, 116)
    )
    got = read_on_sheet(f"G21 G90\nM3 S18000\nG0 Z1\n{parts}G0 Z5\nM30\n")
    assert [len(p.tabs) for p in got.pieces] == [0, 0, 0]


TURN = """G21 G90
M3 S18000
G0 Z5
G0 X100 Y17
G1 Z-6.2 F400
X203 F2000
Y46
X168
G0 Z5
X168 Y53
G1 Z-6.2 F400
X203 F2000
Y83
X17
Y17
X100
G0 Z5
M30
"""


def test_a_part_comes_out_though_the_end_of_its_narrow_mouth_is_jumped_over():
    (piece,) = read_on_sheet(TURN).pieces
    assert piece.outline[:, 0].max() == pytest.approx(200, abs=0.01)
    assert len(piece.tabs) == 1


def test_what_a_rapid_leaves_at_the_end_of_a_narrow_mouth_is_a_tab_as_wide_as_others():
    """The sides of the mouth are cut 5 mm apart: nothing stands between them, and nothing hangs
    on the end of it.
    """
    text = TURN.replace("X168\n", "X165\n").replace("Y53", "Y51").replace("X168 Y53", "X165 Y51")
    text = text.replace("X17\nY17\n", "X116\nG0 Z5\nX104\nG1 Z-6.2 F400\nX17 F2000\nY17\n")
    (piece,) = read_on_sheet(text).pieces
    assert sorted(t.style for t in piece.tabs) == ["gap", "stub"]
    assert abs(area_of(piece.outline)) < 180 * 60 - 35 * 11


@pytest.mark.parametrize("straight", [14.0, 29.0])
def test_a_tab_jumped_over_in_a_side_lies_straight_though_a_lead_in_bends_before_it(straight):
    x = 110 - straight
    body = (
        f"G0 X113 Y43\nG1 Z-6.2 F900\nG3 X110 Y46 I-3 J0 F3000\nG1 X{x}\nG0 Z1\nG0 X{x - 11}\n"
        "G1 Z-6.2 F900\nG1 X46 F3000\nY94\nX154\nY46\nX110\nG0 Z5\n"
    )
    (shape,) = read_on_sheet(body).shapes
    assert (shape.width_mm, shape.length_mm) == pytest.approx((42.0, 102.0), abs=0.001)


TRIANGLE = """G21 G90
M3 S18000
G0 Z5
G0 X150 Y17
G1 Z-6.2 F400
X{:.4f} F2000
G0 Z5
G0 X{:.4f} Y{:.4f}
G1 Z-6.2 F400
X150 Y123.7 F2000
X88.3967 Y17
X150
G0 Z5
M30
"""


@pytest.mark.parametrize(("gap", "tabs"), [(5.4, 0), (9.0, 1)])
def test_what_stands_at_a_sharp_corner_is_a_tab_only_where_it_hangs_on_the_part(gap, tabs):
    """A triangle's corner is jumped over; its sides are cut up to `gap` from it: where the bit
    meets its own cut, what stands outside is cut off.
    """
    end = 211.6033
    text = TRIANGLE.format(end - gap, end - gap / 2, 17 + gap * 0.75**0.5)
    assert [len(piece.tabs) for piece in read_on_sheet(text).pieces] == [tabs]


def led(x: float, z: float, off: float) -> str:
    """A lap around a square of 100 mm with arcs of 8 mm in and out, `off` the fine one."""
    a, b, y = x - 3 - off, x + 103 + off, 17 - off
    return (
        f"G0 X{x + 58} Y{y - 8}\nG1 Z{z} F400\nG3 X{x + 50} Y{y} I-8 J0 F2000\n"
        f"G1 X{a}\nY{123 + off}\nX{b}\nY{y}\nX{x + 50}\nG3 X{x + 42} Y{y - 8} I0 J-8\nG0 Z5\n"
    )


@pytest.mark.parametrize(
    "laps",
    [
        [(0.5, -6.2), (0, -6.2)],
        [(0.5, -3), (0.5, -6.2), (0, -3), (0, -6.2)],
        [(0.5, -6.1), (0.5, -6.2), (0, -6.1), (0, -6.2)],
    ],
)
def test_what_lies_between_the_leads_of_many_laps_is_no_piece(laps):
    """From each lead out it is not far to the next lead in, and the way back bulges around."""
    text = "".join(led(40, z, off) for off, z in laps)
    got = read_on_sheet(f"G21 G90\nM3 S18000\nG0 Z5\n{text}M30\n")
    assert [(s.width_mm, s.length_mm) for s in got.shapes] == [pytest.approx((100, 100))]


WINDOW = """G21 G90
M3 S18000
G0 Z5
G0 X60 Y60
G1 Z-6.2 F400
X92 F2000
{over} Z0.5
X104
G1 Z-6.2 F400
X140 F2000
Y120
X104
{over} Z0.5
X92
G1 Z-6.2 F400
X60 F2000
Y60
G0 Z5
G0 X20 Y20
G1 Z-6.2 F400
X180 F2000
Y160
X20
Y20
G0 Z5
M30
"""


@pytest.mark.parametrize(("over", "holes", "tabs"), [("G1", 1, 2), ("G0", 2, 0)])
def test_what_the_bit_is_fed_over_is_a_tab_of_a_window_however_its_part_is_held(over, holes, tabs):
    """The part has no other tabs. What rapids go over, between two cuts in it, is a web."""
    got = read_on_sheet(WINDOW.format(over=over))
    assert [(len(p.holes), len(p.tabs)) for p in got.pieces] == [(holes, tabs)]


HALVES = """G21 G90
M3 S18000
G0 Z5
G0 X20.6128 Y43.9677
G1 Z-6.2 F400
G2 X79.7224 Y54.0715 I29.3872 J6.0323 F2000
G0 Z5
G0 X83 Y35.5
G1 Z-6.2 F400
Y38.75 F2000
X105
Y49.25
X83
Y67
X160
Y52
G0 Z5
G0 X79.7224 Y54.0715
G1 Z-6.2 F400
G2 X20.6128 Y43.9677 I-29.7224 J-4.0715 F2000
G0 Z5
G0 X160 Y52
G1 Z-6.2 F400
Y27 F2000
X83
Y35.5
G0 Z5
M30
"""


def test_a_way_to_the_next_part_that_other_cuts_take_most_of_is_no_tab():
    """A disc and a plate with a notch, each in two halves, the first ones first: from the disc's
    end it is not far, and back beside it, to the plate's start. What is left between the two
    cuts and in the notch is part of the skeleton.
    """
    assert [len(piece.tabs) for piece in read_on_sheet(HALVES, bit_mm=3).pieces] == [0, 0]


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(("gap", "radius", "start"), [(7, 3, 63), (8, 5, 66), (12, 5, 63)])
def test_a_tab_that_a_neighbours_lead_takes_some_of_is_one(gap, radius, start, turned):
    """A rapid goes straight over the tab of the first part; the lead of the second leaves 3 mm."""
    x, y = 106 + gap, start
    one = (
        "G0 X20 Y20\nG1 Z-6.2 F400\nX106 F2000\nY54\nG0 Z5\nY66\nG1 Z-6.2 F400\nY106 F2000\nX20\n"
        "Y20\nG0 Z5\n"
    )
    other = (
        f"G0 X{x - radius} Y{y + radius}\nG1 Z-6.2 F400\nG3 X{x} Y{y} I{radius} F2000\nG1 Y20\n"
        f"X{x + 80}\nY106\nX{x}\nY{y}\nG3 X{x - radius} Y{y - radius} I-{radius}\nG0 Z5\n"
    )
    parts = other + one if turned else one + other
    got = read_on_sheet(f"G21 G90\nM3 S18000\nG0 Z5\n{parts}M30\n")
    assert sorted(len(piece.tabs) for piece in got.pieces) == [0, 1]
