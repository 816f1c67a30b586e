"""What could go wrong with parts and passes is told at its line, and nothing else is."""

import re

import numpy as np
import pytest
from reading import HEAD, SETTING, box, found, program

from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program

QUIET = {"no-tabs", "small-piece"}


def told(body: str, setting: Setting = SETTING) -> list[tuple[int, str]]:
    return [(p.line, p.kind) for p in found(body, setting).problems if p.kind not in QUIET]


FIRST = box(20, 20, 106, 86, tab=12)  # lines 5 to 16
HOLE = "G0 X60 Y60\nG1 Z-6.2 F900\nX80 F3000\nG0 Z5\n"
DRILLED = "G0 X60 Y60\nG1 Z-6.2 F900\nG0 Z5\n"
LOST = box(20, 20, 106, 86, z=-5, tab=12) + box(20, 20, 106, 86)


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        (FIRST, []),
        (HOLE + FIRST, []),
        (FIRST + box(150, 20, 106, 86, tab=12), []),
        (FIRST + box(120, 20, 106, 86, tab=12), [(20, "gouge")]),
        (box(20, 20, 106, 86) + HOLE, [(15, "late-inside")]),
        (box(20, 20, 106, 86) + DRILLED, [(14, "late-inside")]),
        (LOST, [(20, "tab-cut-through")]),
        (box(20, 20, 106, 86, tab=6.4), [(10, "thin-tab")]),
        (box(20, 20, 106, 86, z=-5.5), [(8, "skin")]),
        (box(20, 20, 106, 86, z=-5.5) + box(150, 20, 106, 86) * 1 + box(300, 20, 106, 86),
         [(8, "uncut")]),
        (FIRST + "G0 X200 Y20\nG1 Z-6.2 F900\nX300 F3000\nY90\nG0 Z5\n", [(19, "frees-nothing")]),
        # a lead of 1.2 m through the sheet to a plate that is 34 mm wide
        (FIRST + "G0 X1500 Y20\nG1 Z-6.2 F900\nX300 F3000\nY60\nX340\nY20\nX300\nG0 Z5\n",
         [(19, "frees-nothing")]),
        (FIRST + "G0 X200 Y20\nG1 Z-3 F2500\nX250 F3000\nG0 Z5\n", [(18, "plunge-fast")]),
        # 78.74016 in/min, as a post-processor of inches writes 2000 mm/min
        (FIRST + "G0 X200 Y20\nG1 Z-3 F2000.00001\nX250 F3000\nG0 Z5\n", []),
        (FIRST + "G0 X200 Y20\nG1 Z-3 F900\nM5\nT2 M6\nM3\nG0 Z5\n", [(20, "change-low")]),
        (HOLE + FIRST + HOLE, [(23, "outside-first"), (23, "twice")]),
        (FIRST + HOLE, [(19, "outside-first")]),
        (FIRST + DRILLED.replace("Z-6.2", "Z-4"), [(18, "outside-first")]),
        (box(20, 20, 106, 86) + DRILLED.replace("Z-6.2", "Z-4"), [(14, "late-inside")]),
    ],
)  # fmt: skip
def test_each_fault_stands_at_its_line(body, expected):
    assert told(body) == expected


def ramp_around(x: float, y: float, w: float, h: float) -> str:
    """A rectangle of the bit's centre, ramped around: the end of the ramp and the last lap both
    go through the sheet.
    """
    corners = [(x + w, y), (x + w, y + h), (x, y + h), (x, y)]
    text = f"G0 X{x} Y{y}\nG1 Z0 F900\nG1 F3000\n"
    for lap, deep in ((0.0, -6.0), (-6.0, -6.2)):
        for n, (a, b) in enumerate(corners, 1):
            text += f"X{a} Y{b} Z{lap + (deep - lap) * n / 4:.3f}\n"
    return text + "".join(f"X{a} Y{b}\n" for a, b in corners) + "G0 Z5\n"


def test_outlines_that_go_through_on_two_laps_are_parts_and_cut_into_each_other():
    apart = found(ramp_around(20, 20, 106, 86) + ramp_around(150, 20, 106, 86))
    assert [(len(s.pieces), round(s.length_mm)) for s in apart.shapes] == [(2, 100)]
    close = found(ramp_around(20, 20, 106, 86) + ramp_around(123, 20, 106, 86))
    assert len(close.pieces) == 2
    assert [p.kind for p in close.problems if p.grade == "stop"] == ["gouge"]


BARE = box(150, 20, 106, 86)
OTHER = box(280, 20, 56, 86, tab=12)
# 100 x 80 mm around a window whose waste hangs on by a tab
FRAME = box(180, 40, 46, 46, tab=12) + BARE


@pytest.mark.parametrize(
    ("body", "lines"),
    [
        (FIRST + BARE, [20]),  # one of two that are equal
        (FIRST + OTHER + box(400, 20, 76, 36), [32]),  # the only one of its size, and without
        (FIRST + box(400, 20, 76, 36), []),  # one of two that differ
        (FIRST + OTHER + BARE + box(400, 20, 76, 36), [32]),
        (FRAME + FIRST + OTHER, [20]),  # the waste of its window is loose with it
        (BARE + box(400, 20, 106, 86), []),
    ],
)
def test_a_piece_whose_tabs_were_forgotten(body, lines):
    assert [line for line, kind in told(body) if kind == "tabs-forgotten"] == lines


def test_a_pass_that_is_too_deep_for_its_bit():
    setting = Setting(thickness_mm=6.0, bit_mm={1: 1.5})
    assert told(box(20, 20, 106, 86), setting) == [(8, "pass-deep")]
    steps = "".join(box(20, 20, 106, 86, z=z) for z in (-2, -4, -6.2))
    assert told(steps, setting) == []


def test_each_turn_of_a_helix_is_a_pass():
    """A turn ends where it begins: what the one before has taken is taken there too."""
    helix = "G0 X63 Y60\nG0 Z3\nG1 Z0 F900\n{}G3 X63 Y60 I-3 J0\nG0 Z5\n"
    turns = "G3 X63 Y60 I-3 J0 Z-9.1\nG3 X63 Y60 I-3 J0 Z-18.2\n"
    setting = Setting(thickness_mm=18.0, bit_mm={1: 6.0}, zero="face")
    assert told(helix.format(turns), setting) == []
    assert told(helix.format(turns[turns.index("\n") + 1 :]), setting) == [(8, "pass-deep")]


@pytest.mark.parametrize("thickness", [3.0, 12.0])
def test_a_file_for_another_sheet(thickness):
    body = FIRST + box(150, 20, 106, 86, tab=12)
    got = told(body, Setting(thickness_mm=thickness, bit_mm={1: 6.0}))
    assert "thickness" in {kind for _, kind in got}


def test_what_the_router_may_skip_is_told_with_both_outcomes():
    lines = "".join(f"/{line}\n" for line in box(150, 20, 106, 86).splitlines())
    text = HEAD + FIRST + lines + "M30\n"
    setting = Setting(thickness_mm=6.0, bit_mm={1: 6.0})
    got = analyse_program(read_program(text.encode(), setting), setting)
    (problem,) = [p for p in got.problems if p.kind == "block-deleted"]
    assert problem.line == text.splitlines().index("/G0 X150 Y20") + 1
    assert "2 parts where the router runs them, 1 where it skips them" in str(problem.text)


def test_one_cut_too_deep_does_not_turn_the_zero():
    cut = box(20, 20, 106, 86, z=-0.2).replace("Z-4", "Z2").replace("Z5", "Z20")
    deep = box(150, 20, 106, 86, z=-1.9).replace("Z5", "Z20")
    text = HEAD.replace("Z5", "Z20") + cut + "G0 Z14\n" + deep
    got = analyse_program(program(text), Setting(thickness_mm=6.0, bit_mm={1: 6.0}))
    assert len(got.pieces) == 2
    kinds = {p.kind for p in got.problems}
    assert "too-deep" in kinds
    assert "thickness" not in kinds


def test_a_rip_that_does_not_go_through():
    rip = "G0 X-5 Y{}\nG1 Z{} F900\nX605 F3000\nG0 Z5\n"
    body = "".join(rip.format(y, z) for y, z in ((20, -6.2), (76, -4.8), (132, -6.2)))
    setting = Setting(thickness_mm=6.0, bit_mm={1: 6.0}, sheet=(600.0, 400.0))
    assert (11, "uncut") in told(body, setting)
    groove = "".join(rip.format(y, z) for y, z in ((20, -6.2), (76, -3), (132, -6.2)))
    assert "uncut" not in {kind for _, kind in told(groove, setting)}


RING = "G0 X50 Y50\nG1 Z-3 F900\nG2 X50 Y50 I-10\nG0 Z5\n"
HOLE_AT_RING = (
    "G0 X50.07 Y50\nG1 Z-3 F900\nG2 X50.07 Y50 I-10.07\nG1 Z-6.2\nG2 X50.07 Y50 I-10.07\nG0 Z5\n"
)
DISC = "G0 X90 Y50\nG1 Z-6.2 F900\nG3 X90 Y50 I-40 F3000\nG0 Z5\n"
DISC_FROM_TOP = "G0 X50 Y90\nG1 Z-6.2 F900\nG3 X50 Y90 J-40 F3000\nG0 Z5\n"
ROUGH, DEEP = box(20, 20, 106, 86, z=-3), box(20, 20, 106, 86)


@pytest.mark.parametrize(
    ("body", "lines"),
    [
        (ROUGH + DEEP, []),
        (ROUGH + DEEP + ROUGH, []),  # a pass in the air
        (ROUGH + DEEP + ROUGH + DEEP, [32]),
        # rings of a pocket, and a hole's outline 0.07 mm beside the widest of them
        (RING + HOLE_AT_RING, []),
        (DISC + DISC_FROM_TOP, [11]),
        (DISC.replace("-6.2", "-6.0") + DISC_FROM_TOP, []),  # the later one goes deeper
        (DISC.replace("-6.2", "-6.0") + DISC_FROM_TOP.replace("-6.2", "-6.0") + DISC, [11]),
    ],
)
def test_what_is_cut_twice(body, lines):
    assert [line for line, kind in told(body) if kind == "twice"] == lines


def wave(start: float, count: int, *, over: float = 0, lead: float = 0, off: float = 0) -> str:
    """A closed curve about 150, 150 in `count` short lines, from an angle on and by `over` beyond
    its start, with a lead in and out; all of it is rounded to 0.001 mm.
    """
    a = start + np.linspace(0, 2 * np.pi + over, count)
    r = 60 + off + 6 * np.sin(3 * a) + 3 * np.cos(5 * a)
    x, y = 150 + r * np.cos(a), 150 + r * np.sin(a)
    if lead:
        x = np.concatenate(([x[0] + lead], x, [x[-1] - lead]))
        y = np.concatenate(([y[0] + lead], y, [y[-1] + lead]))
    into, *ways = (f"X{u:.3f} Y{v:.3f}\n" for u, v in zip(x, y, strict=True))
    return f"G0 {into}G1 Z-6.2 F900\nG1 F3000\n{''.join(ways)}G0 Z5\n"


def tabbed_wave(start: float, count: int) -> str:
    """The same with two lifts over tabs, at angles 1 and 4."""
    lines = wave(start, count).splitlines()
    for n, line in enumerate(lines):
        if found := re.match(r"X(\S+) Y(\S+)$", line):
            angle = np.arctan2(float(found[2]) - 150, float(found[1]) - 150) % (2 * np.pi)
            lines[n] = f"{line} Z{-3 if 1 < angle < 1.2 or 4 < angle < 4.2 else -6.2}"
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize(
    ("first", "second", "again"),
    [
        # from another start: beyond it, with leads, over tabs and in other points
        (wave(0, 300, over=0.1), wave(1.3, 300, over=0.1), True),
        (wave(0, 300, lead=8), wave(1.3, 300, lead=8), True),
        (tabbed_wave(0, 300), tabbed_wave(2, 300), True),
        (tabbed_wave(0, 300), tabbed_wave(0, 257), True),
        # a rough lap 0.1 mm off before the fine one, and a copy elsewhere
        (wave(0, 300, off=0.1), wave(1.3, 300), False),
        (wave(0, 300), wave(0, 300).replace("X", "X1"), False),
        # an outline of which others have cut three quarters as sides of theirs
        (box(20, 20, 60, 60) + box(140, 20, 60, 60) + box(80, 80, 60, 60), box(80, 20, 60, 60),
         False),
    ],
)  # fmt: skip
def test_the_same_way_from_another_start_or_in_other_points_is_cut_twice(first, second, again):
    lines = [line for line, kind in told(first + second) if kind == "twice"]
    assert len(lines) == again
    assert all(line > (HEAD + first).count("\n") for line in lines)


@pytest.mark.parametrize(
    ("body", "lines"),
    [
        (DRILLED + DRILLED.replace("X60", "X90"), []),
        (DRILLED + DRILLED.replace("X60", "X90") + DRILLED, [12]),
        (DRILLED.replace("-6.2", "-6.0") + DRILLED.replace("X60", "X90") + DRILLED, []),
        ("G0 X60 Y60\nG1 Z-6 F900\nG0 Z1\nG1 Z-6.2 F900\nG0 Z5\n", []),  # it clears its chips
        ("G81 X60 Y60 Z-6.2 R2 F900\nX90\nX60\nG80\n", [7]),
    ],
)
def test_holes_that_are_drilled_twice(body, lines):
    assert [line for line, kind in told(body + FIRST) if kind == "twice"] == lines


def test_relative_moves_that_fall_between_two_grid_lines_are_found_again():
    """Places at 0.05 and 0.10 mm lie on a border of a grid of 0.1 mm in one axis or the other."""
    lap = "G1 Z-7.345 F900\nX75.75 F3000\nY66.5\nX-75.75\nY-66.5\nG0 Z7.345\n"
    there, back = "G0 X17.75 Y86.5\n", "G0 X-17.75 Y-86.5\n"
    go, other = "G0 X300.05 Y20.1\n", "G0 X-300.05 Y-20.1\n"
    text = HEAD + "G91\n" + there + lap + back + go + lap + other + there + lap + "M30\n"
    got = analyse_program(program(text), SETTING)
    assert "twice" in {p.kind for p in got.problems}


def test_a_way_in_through_a_neighbour_is_told():
    lead = "G0 X136 Y60\nG1 Z-6.2 F900\nX114 F3000\n"
    body = box(17, 17, 106, 86) + lead + "G0 Z5\n" + box(150, 40, 106, 86)
    assert "gouge" not in {kind for _, kind in told(body)}  # a notch of its own
    around = "Y17\nX256\nY126\nX150\nY50\nG0 Z5\n"
    lead = "G0 X110 Y50\nG1 Z-6.2 F900\nG1 X150 F3000\n"
    assert (15, "gouge") in told(box(17, 17, 106, 86) + lead + around)


def test_a_ramp_down_to_the_depth_is_no_cut_as_deep():
    """The last cut of the lap lies over the ramp that comes down to its depth at its end."""
    body = (
        "G0 X60 Y20\nG1 Z-3 F900\nG1 X100 Z-6.2 F3000\nX126\nY106\nX20\nY20\nX48\n"
        "G0 Z-3\nG1 X60\nZ-6.2\nX100\nG0 Z5\n"
    )
    assert [kind for _, kind in told(body) if kind == "twice"] == []


def test_lines_that_part_a_frame_into_tiles_are_no_gouges():
    across = "".join(f"G0 X{x} Y14\nG1 Z-6.2 F900\nY206 F3000\nG0 Z5\n" for x in (77, 137, 197))
    along = "".join(f"G0 X14 Y{y}\nG1 Z-6.2 F900\nX260 F3000\nG0 Z5\n" for y in (80, 143))
    assert "gouge" not in {kind for _, kind in told(across + along + box(17, 17, 240, 186))}


# a lap of 60 x 80 mm from the middle of its lower side, and what comes before and after it
LAP = "X80\nY106\nX20\nY20\nX50\n"


@pytest.mark.parametrize(
    ("before", "after", "lines"),
    [
        ("X50 Y20", "", []),
        ("X50 Y20", "Y34\n", [13]),  # out to the wrong side
        ("X50 Y34", "", [7]),  # in from it
        ("X50 Y10", "Y10\n", []),
        ("X50 Y20", "Y20.8\n", []),
        ("X50 Y20", "X60\n", []),  # over its start
    ],
)
def test_a_way_in_or_out_within_the_own_piece(before, after, lines):
    lap = "Y20\n" + LAP
    body = f"G0 {before}\nG1 Z-6.2 F900\nG1 F2000 {lap}{after}G0 Z5\n"
    assert [line for line, kind in told(body) if kind == "gouge"] == lines


def test_a_slit_cut_on_the_way_around_is_meant():
    body = "G0 X50 Y20\nG1 Z-6.2 F900\nX80 F2000\nY60\nX60\nX80\nY106\nX20\nY20\nX45\nG0 Z5\n"
    assert [line for line, kind in told(body) if kind == "gouge"] == []


def test_a_hole_is_led_into_from_its_waste():
    hole = "G0 X60 Y60\nG1 Z-6.2 F900\nX70 F2000\nG3 X70 Y60 I-20\nG1 X60\nG0 Z5\n"
    assert told(hole + FIRST) == []


def passes(*ways: str) -> str:
    """A lap of 106 by 86 from the middle of its lower side, pass by pass; in each its upper side
    goes a way of its own.
    """
    depths = (-3, -6.2)
    laps = "".join(
        f"G1 Z{z} F900\nX126 F3000\nY106\n{way}X20\nY20\nX70\n"
        for z, way in zip(depths, ways, strict=True)
    )
    return f"G0 X70 Y20\n{laps}G0 Z5\n"


DENT, BUMP = "X90\nX73 Y90\nX56 Y106\n", "X90\nX73 Y122\nX56 Y106\n"


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        (passes("", ""), []),
        (passes(DENT, ""), [(10, "gouge", "stop")]),
        (passes("", DENT), [(16, "gouge", "look")]),
        (passes(BUMP, ""), [(18, "gouge", "look")]),
        (passes(DENT, DENT), []),  # a part that looks so
        # a rebate across the part in two passes, its ends in the outline
        ("G0 X73 Y16\nG1 Z-2 F900\nY110 F3000\nZ-4 F900\nY16 F3000\nG0 Z5\n" + FIRST, []),
        # leads in each pass, and down a ramp
        ("G0 X70 Y8\n" + "".join(
            f"G1 Z{z} F900\nY20 F3000\nX126\nY106\nX20\nY20\nX70\nY8\n" for z in (-3, -6.2)
        ) + "G0 Z5\n", []),
    ],
)  # fmt: skip
def test_a_pass_that_leaves_its_outline(body, expected):
    got = [(p.line, p.kind, p.grade) for p in found(body).problems if p.kind == "gouge"]
    assert got == expected
