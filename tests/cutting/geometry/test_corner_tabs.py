"""Tabs around corners, laps past their own start, and cuts that are united anew."""

from math import cos, pi, sin

import pytest

from station.cutting.geometry.rings import area_of
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


def jump_around(x: float, y: float, w: float, h: float, gap: float = 12) -> str:
    """A box of the bit's centre in four cuts from side to side, jumping over a tab in each."""
    middles = [(x + w / 2, y), (x + w, y + h / 2), (x + w / 2, y + h), (x, y + h / 2)]
    corners = [(x + w, y), (x + w, y + h), (x, y + h), (x, y)]
    ways = [(1, 0), (0, 1), (-1, 0), (0, -1)]
    text = ""
    for n in range(4):
        (a, b), (u, v), (p, q) = middles[n], ways[n], ways[(n + 1) % 4]
        c, d = middles[(n + 1) % 4]
        text += f"G0 X{a + u * gap / 2} Y{b + v * gap / 2}\nG1 Z-6.2 F400\n"
        text += f"G1 X{corners[n][0]} Y{corners[n][1]} F2000\n"
        text += f"X{c - p * gap / 2} Y{d - q * gap / 2}\nG0 Z5\n"
    return text


def test_a_frame_whose_inner_and_outer_tabs_are_near_is_one_part():
    """From the end of each outer cut it is not far to an inner one, but a tab is nearer."""
    text = "G21 G90\nM3 S18000\nG0 Z5\n{}{}M30\n"
    got = read(text.format(jump_around(42, 42, 100, 80), jump_around(20, 20, 144, 124)))
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
    got = read(MOUTH)
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
    (piece,) = read(STUB.format(up=up, down="Z-6.2")).pieces
    mouth = 38 * 11 - 2 * (9 - 9 * pi / 4)
    assert abs(area_of(piece.outline)) == pytest.approx(180 * 60 - mouth, abs=0.02)
    assert [(t.height_mm, t.style) for t in piece.tabs] == [(pytest.approx(height), "stub")]


def test_a_feed_over_the_sheet_from_part_to_part_is_no_tab():
    parts = "".join(
        f"G1 X{x} Y20 F2000\nZ-6.2 F400\nX{x + 15}\nY50\nX{x - 15}\nY20\nX{x}\nZ1\n"
        for x in (40, 78, 116)
    )
    got = read(f"G21 G90\nM3 S18000\nG0 Z1\n{parts}G0 Z5\nM30\n")
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
    (piece,) = read(TURN).pieces
    assert piece.outline[:, 0].max() == pytest.approx(200, abs=0.01)
    assert len(piece.tabs) == 1


def test_what_a_rapid_leaves_at_the_end_of_a_narrow_mouth_is_a_tab_as_wide_as_others():
    """The sides of the mouth are cut 5 mm apart: nothing stands between them, and nothing hangs
    on the end of it.
    """
    text = TURN.replace("X168\n", "X165\n").replace("Y53", "Y51").replace("X168 Y53", "X165 Y51")
    text = text.replace("X17\nY17\n", "X116\nG0 Z5\nX104\nG1 Z-6.2 F400\nX17 F2000\nY17\n")
    (piece,) = read(text).pieces
    assert sorted(t.style for t in piece.tabs) == ["gap", "stub"]
    assert abs(area_of(piece.outline)) < 180 * 60 - 35 * 11


@pytest.mark.parametrize("straight", [14.0, 29.0])
def test_a_tab_jumped_over_in_a_side_lies_straight_though_a_lead_in_bends_before_it(straight):
    x = 110 - straight
    body = (
        f"G0 X113 Y43\nG1 Z-6.2 F900\nG3 X110 Y46 I-3 J0 F3000\nG1 X{x}\nG0 Z1\nG0 X{x - 11}\n"
        "G1 Z-6.2 F900\nG1 X46 F3000\nY94\nX154\nY46\nX110\nG0 Z5\n"
    )
    (shape,) = read(body).shapes
    assert (shape.width_mm, shape.length_mm) == pytest.approx((42.0, 102.0), abs=0.001)


CORNER = "X54\nG3 X46 Y86 I0 J-8\nG1 Y46\nX154\nY57\n"


@pytest.mark.parametrize("told", [True, False])
def test_a_tab_at_a_rounded_corner_that_only_the_last_pass_cuts_is_told(told):
    """The first pass goes up before the corner, and comes down on its arc."""
    first = "Y70 F2000\nG0 Z1\nG0 X151.656857 Y91.656857\nG1 Z-4 F400\n"
    arc = "G3 X146 Y94 I-5.656857 J-5.656857 F2000\nG1 "
    whole = "Y86 F2000\nG3 X146 Y94 I-8 J0\nG1 " if told else first.replace("-4", "-6.2") + arc
    body = "G0 X154 Y57\nG1 Z{z} F400\nG1 {way}" + CORNER + "G0 Z5\n"
    laps = body.format(z=-4, way=first + arc) + body.format(z=-6.2, way=whole)
    kinds = [p.kind for p in read(f"G21 G90\nM3 S18000\nG4 P2\nG0 Z5\n{laps}M30\n").problems]
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
    found = read(f"G21 G90\nM3 S18000\nG0 Z5\n{jump_around(42, 42, 100, 80)}{last}M30\n")
    assert [p.line for p in found.problems if p.kind == "tab-cut-through"] == lines


def test_a_tab_that_a_lap_jumped_over_along_an_arc_is_told_where_a_later_one_cuts_it():
    """A disc whose quarters are cut one by one, but for the tabs, and then all of it."""
    x, y = 30 * cos(0.2), 30 * sin(0.2)
    ends = [(x, y), (y, x), (-y, x), (-x, y), (-x, -y), (-y, -x), (y, -x), (x, -y)]
    text = "G21 G90\nM3 S18000\nG0 Z5\n"
    for (a, b), (c, d) in zip(ends[::2], ends[1::2], strict=True):
        text += f"G0 X{100 + a:.4f} Y{100 + b:.4f}\nG1 Z-6.2 F400\n"
        text += f"G3 X{100 + c:.4f} Y{100 + d:.4f} I{-a:.4f} J{-b:.4f} F2000\nG0 Z5\n"
    assert [len(piece.tabs) for piece in read(text + "M30\n").pieces] == [4]
    whole = "G0 X121.2132 Y121.2132\nG1 Z-6.2 F400\nG3 I-21.2132 J-21.2132 F2000\nG0 Z5\n"
    told = [p.line for p in read(text + whole + "M30\n").problems if p.kind == "tab-cut-through"]
    assert told == [22, 22, 22, 22]


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
    assert [len(piece.tabs) for piece in read(text).pieces] == [tabs]
