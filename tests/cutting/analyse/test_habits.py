"""Habits of post-processors that look like something else: laps, ways back, ramps, chords."""

import math

import pytest

from station.cutting.model import Setting
from station.cutting.report import analyse_program
from tests.cutting.reading import HEAD, box, found, program

SIX = {1: 6.0}


NESTED = """G0 X76.5 Y363
G0 Z0.5
G1 Z-5.85 F600
G1 Z-12.1 F600
G2 X97 Y342.5 I0 J-20.5 F3000
G2 X56 Y342.5 I-20.5 J0 F3000
G2 X76.5 Y363 I20.5 J0 F3000
G2 X84.298 Y361.459 I0 J-20.5 F3000
G0 Z15
G0 X94.06 Y369.848
G0 Z0.5
G1 Z-5.85 F600
G1 Z-12.1 F600
G3 X58.94 Y315.152 I-17.56 J-27.348 F3000
G3 X94.06 Y369.848 I17.56 J27.348 F3000
G3 X86.867 Y373.302 I-17.56 J-27.348 F3000
G0 Z15
G0 X76.5 Y398
G0 Z1
G1 Z-6.05 F600
G2 X132 Y342.5 I0 J-55.5 F3000
G2 X21 Y342.5 I-55.5 J0 F3000
G2 X76.5 Y398 I55.5 J0 F3000
G2 X84.472 Y397.424 I0 J-55.5 F3000
G0 Z15
G0 X76.5 Y398
G0 Z0.5
G1 Z-5.85 F600
G1 Z-12.1 F600
G2 X131.272 Y351.461 I0 J-55.5 F3000
G2 X132 Y342.5 Z-10.5 I-54.772 J-8.961 F3000
G2 X131.272 Y333.539 Z-12.1 I-55.5 J0 F3000
G2 X21.728 Y333.539 I-54.772 J8.961 F3000
G2 X21 Y342.5 Z-10.5 I54.772 J8.961 F3000
G2 X21.728 Y351.461 Z-12.1 I55.5 J0 F3000
G2 X76.5 Y398 I54.772 J-8.961 F3000
G2 X84.472 Y397.424 I0 J-55.5 F3000
G0 Z15
"""


def cut_circle(r: float) -> str:
    """A circle of the bit's centre around 90, 90."""
    return f"G0 X{90 + r} Y90\nG1 Z-6.2 F900\nG3 I-{r} F3000\nG0 Z5\n"


def test_what_an_earlier_pass_went_over_tabs_far_apart_goes_around_nothing():
    """A ring cut in two passes, its tabs left and right, with a disc in its hole."""
    text = HEAD.replace("Z5", "Z15") + NESTED
    got = analyse_program(program(text), Setting(thickness_mm=12.0, bit_mm={1: 8.0}))
    assert sorted(len(p.tabs) for p in got.pieces) == [0, 2]
    assert "gouge" not in {p.kind for p in got.problems}


RAMPED = (
    "G0 X{x} Y20\nG1 Z6 F900\nX{to} Z3\nX{x} Z{low}\nX{far} F3000\nY100\nX{x}\nY20\nX{to}\n"
    "G0 Z20\n"
)


def test_ramps_alone_tell_a_zero_at_the_spoilboard_though_one_lap_is_far_too_deep():
    laps = [(20 + 120 * n, -0.2 if n < 5 else -4.2) for n in range(6)]
    body = "".join(RAMPED.format(x=x, to=x + 20, far=x + 90, low=low) for x, low in laps)
    setting = Setting(thickness_mm=6.0, bit_mm=SIX)
    got = analyse_program(program(HEAD.replace("Z5", "Z20") + body), setting)
    assert len(got.pieces) == 6
    assert {p.kind for p in got.problems} >= {"too-deep"}
    assert "thickness" not in {p.kind for p in got.problems}


COMB = """G0 X253 Y161
G1 Z0 F900
X263 Z-6.2
X291 F3000
Y101
X166
Y115
G0 Z5
G0 Y127
G1 Z-6.2 F900
Y161 F3000
X253
X268
G0 Z5
"""


def test_no_tab_leads_from_a_lap_past_its_start_to_another_cut():
    """A comb of two slots, cut from below; the lap ends right above the first of them."""
    slot = "G0 X{x} Y98\nG1 Z0 F900\nY134 Z-6.2\nY98 F3000\nG0 Z5\n"
    (comb,) = found("".join(slot.format(x=x) for x in (273, 228)) + COMB).pieces
    assert [round(tab.y_mm) for tab in comb.tabs] == [121]


PANEL = """G0 X72 Y87.5
G1 Z-6.2 F900
X120.3 F3000
Y24
X103.62
Y30.5
X93.62
Y24
X91.5
Z-4.5
X79.5
Z-6.2
X77
Y30.5
X67
Y24
X24
Y87.5
X72
X80
G0 Z5
"""


def test_no_tab_lies_between_the_rounded_corners_of_two_slots():
    """A panel with two slots, whose inner corners are cut out by strokes, and a tab between."""
    bone = "G0 X{} Y30.5\nG1 Z-6.2 F900\nX{} Y31.38 F3000\nG0 Z5\n"
    ways = ((67, 66.12), (77, 77.88), (93.62, 92.75), (103.62, 104.5))
    (panel,) = found("".join(bone.format(*way) for way in ways) + PANEL).pieces
    assert [round(tab.y_mm) for tab in panel.tabs] == [27]


LED = """G0 X68 Y15
G1 Z-3 F900
G2 X73 Y20 I5 J0 F3000
{lap}G2 X78 Y15 I0 J-5
G1 X68
Z-5.7 F900
G2 X73 Y20 I5 J0 F3000
{lap}G2 X78 Y15 I0 J-5
G0 Z5
"""


def test_a_way_back_to_a_lead_is_no_tab_beside_a_skin():
    lap = "G1 X20\nY126\nX126\nY20\nX73\n"
    got = found(LED.format(lap=lap))
    (piece,) = got.pieces
    assert (piece.tabs, round(piece.skin_mm, 3)) == ((), 0.3)
    assert [p.kind for p in got.problems] == ["skin"]


def test_one_lap_too_deep_among_skins_is_no_file_for_another_sheet():
    laps = box(20, 20, 106, 86, z=-5.7) + box(150, 20, 106, 86, z=-5.7)
    got = found(laps + box(280, 20, 106, 86, z=-9))
    kinds = {p.kind for p in got.problems}
    assert "too-deep" in kinds
    assert "thickness" not in kinds


def test_small_chords_of_a_spiral_are_no_level_passes():
    """A disc by two laps of a spiral, written in thousandths: most chords seem level."""
    n, low, laps = 8000, -3.05, 2
    steps = [(2 * math.pi * k / n, low * min(k / n, laps)) for k in range(1, (laps + 1) * n)]
    way = (f"X{90 + 60 * math.cos(t):.3f} Y{90 + 60 * math.sin(t):.3f} Z{z:.3f}" for t, z in steps)
    got = found("G0 X150 Y90\nG1 Z0 F900\nG1 F3000\n" + "\n".join(way) + "\nG0 Z5\n")
    assert len(got.pieces) == 1
    assert "thickness" not in {p.kind for p in got.problems}


@pytest.mark.parametrize("radius", [11.0, 14.0, 16.5])
def test_what_is_left_between_two_cuts_of_a_hole_is_no_part(radius):
    """A disc in what a ring's hole leaves, with 4 mm between; the bit is 8 mm."""
    setting = Setting(thickness_mm=6.0, bit_mm={1: 8.0})
    got = found(
        cut_circle(radius + 4) + cut_circle(radius + 16) + cut_circle(radius + 40), setting
    )
    assert sorted(round(p.outline[:, 0].max() - 90, 1) for p in got.pieces) == [
        radius,
        radius + 36,
    ]


def test_a_disc_in_a_hole_is_a_part_though_its_lead_opens_what_lies_between():
    led = "G0 X90 Y60\nG1 Z-6.2 F900\nY70 F3000\nG3 J20\nG1 Y60\nG0 Z5\n"
    got = found(led + cut_circle(34) + cut_circle(60))
    wide = [float(p.outline[:, 0].max() - p.outline[:, 0].min()) for p in got.pieces]
    assert sorted(map(round, wide)) == [34, 114]


def test_the_end_of_an_earlier_lap_is_no_tab_over_a_skin():
    lap = "G3 I-40 F3000\nX126.4 Y106.5 R40\n"
    got = found(f"G0 X130 Y90\nG1 Z-3 F900\n{lap}G1 X130 Y90\nZ-5.7 F900\n{lap}G0 Z5\n")
    assert [p.tabs for p in got.pieces] == [()]
    assert [p.kind for p in got.problems] == ["skin"]
