"""What could go wrong is told, with its line; an ordinary file has nothing told."""

import pytest
from reading import box, found, program

from station.cutting.analyse.taken import list_taken
from station.cutting.model import Setting
from station.cutting.report import analyse_program
from station.shop.facts import Router

HEAD = "G21 G90\nT1 M6\nM3 S18000\nG0 X20 Y20 Z5\n"  # 4 lines
SQUARE = """G1 Z-6.2 F900
G1 X60 F3000
Z-4
X70
Z-6.2
X120
Y80
X20
Y20
G0 Z5
"""


def told(body: str, **setting) -> list[tuple[int, str]]:
    given = {"thickness_mm": 6.0, "bit_mm": {1: 6.0}, **setting}
    got = analyse_program(program(HEAD + body), Setting(**given))
    return [(p.line, p.kind) for p in got.problems]


def test_an_ordinary_file_has_no_problem():
    assert told(SQUARE) == []


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        ("G1 Z-3 F900\nG0 X50\nG0 Z5", (6, "rapid-in-sheet")),
        ("G0 Z-2\nG0 Z5", (5, "rapid-in-sheet")),
        ("G1 Z-6.6 F900\nX50\nG0 Z5", (5, "too-deep")),
        ("G1 Z-3 F900\nX2450\nG0 Z5", (6, "outside-sheet")),
        ("G1 Z-3 F900\nY-1\nG0 Z5", (6, "outside-sheet")),
        ("M5\nG1 Z-3 F900\nX50\nG0 Z5", (6, "spindle-off")),
        ("G1 Z-3\nG0 Z5", (5, "no-feed")),
        ("G1 Z-3 F900\nG2 X30 I4\nG0 Z5", (6, "arc-radii")),
        ("G1 Z-3 F900\nX90 F90\nG0 Z5", (6, "chip-load")),
        (SQUARE.replace("Z-4", "Z-6.2"), (6, "no-tabs")),
        (SQUARE.replace("X70", "X65.9"), (8, "tab-cut-through")),
    ],
)
def test_each_kind(body, expected):
    assert expected in told(body)


@pytest.mark.parametrize(
    "body",
    [
        "G1 Z-3 F900\nX90\nG0 Z5",
        "G99 G73 X50 Y50 Z-6.2 R1 Q2 F900\nX60\nG80\nG0 Z5",  # it draws back in its hole
        "G99 G83 X50 Y50 Z-6.2 R1 Q2 F900\nX60\nG80\nG0 Z5",  # a peck comes back into its hole
        "G1 Z-3 F900\nX90\nG0 Z0\nG0 X50\nG0 Z5",
        "G91 G28 Z0\nG90\nG0 X50 Y50\nG0 Z5\nG1 Z-3 F900\nX90\nG0 Z5",
    ],
)
def test_what_is_no_problem(body):
    assert told(body) == []


def test_a_text_that_cuts_nothing_is_told():
    assert told("G0 Z0\nG0 X50\nG0 Z5") == [(0, "nothing-cut")]
    assert told("G0 Z0\nG0 X50\nG0 Z5", cuts_out=False) == []  # a run beside another


def test_a_vacuum_bed_needs_no_tabs():
    vacuum = Router(id="1", name="Router 1", bed="vacuum")
    assert told(SQUARE.replace("Z-4", "Z-6.2"), router=vacuum) == []


def test_a_bit_the_router_does_not_have():
    assert (5, "bit-missing") in told(SQUARE, bits_there=frozenset({2}))
    assert told(SQUARE, bits_there=frozenset({1})) == []  # what runs before T1 is no cut


def test_a_cut_before_any_bit_is_called():
    got = analyse_program(
        program("G21 M3 S9000 F900\nG1 Z-3\nT1 M6\nM3\nX50\nM30"),
        Setting(thickness_mm=6.0, bits_there=frozenset({1})),
    )
    assert [(p.line, str(p.text)) for p in got.problems if p.kind == "bit-missing"] == [
        (2, "It cuts before it calls a bit.")
    ]


def test_a_bed_that_is_too_small():
    small = Router(id="1", name="Router 1", length_mm=50)
    assert (0, "outside-bed") in told(SQUARE, router=small)


def test_a_feed_above_what_the_router_does():
    slow = Router(id="1", name="Router 1", rapid_mm_min=2000)
    assert (6, "feed-out-of-band") in told(SQUARE, router=slow)


@pytest.mark.parametrize(
    ("body", "line"),
    [
        (SQUARE.replace("F3000", "F300000"), 6),
        (SQUARE.replace("Z-6.2\nX120", "Z-6.2 F80000\nX120 F3000"), 9),  # down after a tab
        (SQUARE.replace("Y80\nX20", "Y80 F30000\nX20 F3000"), 11),  # unlike all the rest
        (SQUARE.replace("G1 Z-6.2 F900", "G1 Z0 F90000\nZ-6.2 F900"), 5),
        (SQUARE.replace("G1 X60 F3000", "G1 X60 F12000"), 0),
        (SQUARE.replace("G1 X60 F3000", "G1 X60 F300\nF3000"), 0),  # a slow lead
        (
            SQUARE.replace("F3000", "F300").replace("X20\nY20", "X20 F3000\nY20"),
            0,
        ),  # bores are slow
        (SQUARE.replace("G0 Z5", "G1 Z5 F90000"), 0),  # up and out of the sheet
    ],
)
def test_a_feed_that_has_lost_its_point(body, line):
    assert [n for n, kind in told(body) if kind == "feed-out-of-band"] == ([line] if line else [])


def test_a_speed_that_nobody_has_said():
    def find(text: str) -> list[tuple[int, str, str]]:
        got = analyse_program(program(text), Setting(thickness_mm=6.0, bit_mm={1: 6.0}))
        kinds = ("no-speed", "spindle-off")
        return [(p.line, p.kind, p.grade) for p in got.problems if p.kind in kinds]

    silent = HEAD.replace(" S18000", "") + SQUARE
    assert find(silent) == [(5, "no-speed", "know")]  # set by hand at the router
    assert find(silent + "S9000\n" + SQUARE) == [(5, "no-speed", "look")]
    assert find(HEAD.replace("S18000", "S0") + SQUARE) == [(5, "spindle-off", "stop")]
    assert find(silent.replace("M3", "M5")) == [(5, "spindle-off", "stop")]


def test_a_hold_down_in_the_way():
    assert "hold-down" in {kind for _, kind in told(SQUARE, hold_downs=((70, 25),))}
    assert told(SQUARE, hold_downs=((500, 500),)) == []


@pytest.mark.parametrize(
    ("arc", "place", "hit"),
    [
        ("G2 I200 J0", (220, 20), False),  # in the middle of a circle of 200 mm
        ("G2 I200 J0", (420, 30), True),
        ("G3 X420 I200 J0", (220, 220), False),  # that half is not cut
        ("G2 X420 I200 J0", (220, 215), True),
        ("G3 X420 I200 J0", (20, 35), True),  # near its start
    ],
)
def test_a_hold_down_beside_an_arc(arc, place, hit):
    body = f"G0 Y20\nG1 Z-3 F900\n{arc}\nG0 Z5"
    assert ("hold-down" in {kind for _, kind in told(body, hold_downs=(place,))}) == hit


def test_a_skin_that_is_left_holds_the_piece():
    body = SQUARE.replace("-6.2", "-5.5").replace("Z-4\n", "")
    assert told(body) == [(6, "skin")]


def test_zero_at_the_spoilboard_and_origin_in_the_middle():
    body = SQUARE.replace("Z-6.2", "Z-0.2").replace("Z-4", "Z2").replace("Z5", "Z12")
    head = HEAD.replace("Z5", "Z12")
    setting = Setting(thickness_mm=6, bit_mm={1: 6.0}, origin="centre")
    got = analyse_program(program(head + body), setting)
    assert got.problems == ()
    assert [s.width_mm for s in got.shapes] == pytest.approx([54])
    assert any("spoilboard" in text for text in got.assumed)


@pytest.mark.parametrize(
    ("places", "corner"),
    [
        ([(20, 20), (500, 300)], (0, 0)),
        ([(-90, -90), (20, 20)], (-300, -200)),
        ([(20, -90), (500, -390)], (0, -400)),
        ([(-90, 20), (-590, 300)], (-600, 0)),
        ([(-90, -90), (-590, -390)], (-600, -400)),  # beyond half the sheet: about no centre
        ([(-90, -90), (-200, -150)], (-300, -200)),
    ],
)
def test_zero_lies_at_the_corner_that_all_is_cut_beside(places, corner):
    body = "".join(box(x, y, 66, 66) for x, y in places)
    got = found(body, Setting(thickness_mm=6.0, bit_mm={1: 6.0}, sheet=(600.0, 400.0)))
    assert got.corner_mm == corner
    assert [p.line for p in got.problems if p.kind == "outside-sheet"] == []


def test_a_strip_just_below_zero_lies_below_the_upper_edge():
    """It was taken for a cut outside a sheet whose lower left corner is zero."""
    got = found(box(20, -50, 100, 40), Setting(thickness_mm=6.0, bit_mm={1: 6.0}))
    assert got.corner_mm == (0, -1220)
    assert [p.line for p in got.problems if p.kind == "outside-sheet"] == []


@pytest.mark.parametrize(
    ("remark", "corner"),
    [
        ("", (-300, -200)),
        ("(X0 Y0 = TOP RIGHT CORNER)\n", (-600, -400)),
        ("(X0 Y0 = LOWER LEFT CORNER)\n", (-300, -200)),  # nothing that is cut would lie on it
    ],
)
def test_one_piece_left_of_zero_and_below_it_lies_where_a_remark_says(remark, corner):
    setting = Setting(thickness_mm=6.0, bit_mm={1: 6.0}, sheet=(600.0, 400.0))
    got = found(remark + box(-90, -90, 66, 66), setting)
    assert got.corner_mm == corner
    source = "remark" if corner == (-600, -400) else "assumed"
    assert [t.source for t in list_taken(got, setting) if t.what == "origin"] == [source]
