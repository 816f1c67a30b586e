"""What real files and other controllers do, each by its name, through both readers."""

import itertools
import math
from dataclasses import asdict

import numpy as np
import pytest
from reading import both, ends, told
from sheets import outlines

from station.cutting.geometry.moves import find_geometry
from station.cutting.model import Setting
from station.cutting.read.dialects import DIALECTS, Dialect
from station.cutting.report import analyse_program, read_program

HEAD = "G21 G90\nT1 M6\nM3 S18000\nG0 X20 Y20 Z5\n"


@pytest.mark.parametrize(
    ("text", "mention"),
    [
        (b"G21\r\nG0 X1\r\nY2\r\nM30\r\n", "carriage return"),
        (b"G21\rG0 X1\rY2\rM30", "carriage return"),
        (b"\xef\xbb\xbfG21\nG0 X1\nY2\nM2", "byte-order mark"),
        (b"G21\nG0 X1\nY2", "no M2, M30 or %"),
        (b"%\nO0000(NAME)\nG21\nG0 X1\nY2\n%\n", "program number"),
        (b"O0000(NAME)\nG21\nG0 X1\nY2\nM30", "program number"),
        (b"G21\nG0 X 1 . 0 0\nY0 2\nM30", "Blanks stand inside numbers"),
        (b"G21\nG0 X1\n" + b" " * 255 + b"Y2\nM30", "Line 3 has more than 256 letters"),
        (b"G21\nG0 X[1]\n" + b" " * 255 + b"Y[2]\nM30", "Line 3 has more than 256 letters"),
        (b"N99999G21\nN100000G0 X1\nY2\nM30", "Line numbers go beyond 99999"),
        (b"G0 X1\nY2\nG21\nM30", "the file says so in line 3 only"),
        (b"G21 (a)(msg, turn it)\nG0 X1\nY2\nM30", "The file tells at the router: turn it"),
    ],
)
def test_files_that_stretch_the_report_are_taken_and_mentioned(text, mention):
    got = both(text)
    assert ends(got) == [(1, 0, 0), (1, 2, 0)]
    assert any(mention in said for said in got.assumed)
    assert got.problems == ()


@pytest.mark.parametrize(
    "text",
    [
        "G21\nG0 X1\nM30\n",
        "G0\nG21\nX1\nM30\n",  # nothing is scaled before
        "(X5 before)\nG21 X1\nM30\n",
    ],
)
def test_a_plain_file_mentions_nothing(text):
    assert both(text).assumed == ()


@pytest.mark.parametrize(
    "text", ["(made for G20)\nG0 X1\nM30", "; G20\nG0 X1\nM30", "/G20\nG0 X1\nM30",
             "G200\nG0 X1\nM30", "(G20\nG0 X1\nM30"],
)  # fmt: skip
def test_a_unit_word_that_is_not_run_names_no_unit(text):
    got = both(text)
    assert "no-units" in {kind for _, kind in told(got)}
    assert ends(got) == [(1, 0, 0)]


@pytest.mark.parametrize("word", ["G20", "g 2 0", "N7G020.", "G21.0 (not G20)\nG20"])
def test_inches_however_they_are_written(word):
    got = both(f"{word}\nG0 X1\nM30")
    assert ends(got) == [(25.4, 0, 0)]
    assert "no-units" not in {kind for _, kind in told(got)}


def test_a_text_in_two_bytes_a_letter_is_refused():
    got = both("G21\nG0 X1\nM30".encode("utf-16"))
    assert str(got.refused).endswith("Save it as plain text.")


def test_words_that_the_report_does_not_have_are_told():
    got = both("G21\nG0 X1 E5\nU1 V2 W3\nM30")
    assert told(got) == [(2, "unknown-word"), *[(3, "unknown-word")] * 3]
    assert ends(got) == [(1, 0, 0)]


def test_problems_of_one_kind_are_counted_beyond_a_thousand():
    got = both("G21\n" + "M77\n" * 1500 + "M30")
    assert len(got.problems) == 1001
    assert "500 more" in str(got.problems[-1].text)
    deep = analyse_program(
        both(HEAD + "G1 F900 Z-9\nZ5\nZ6\n" * 1300 + "M30"), Setting(thickness_mm=6.0)
    )
    many = [p for p in deep.problems if p.kind == "too-deep"]
    assert len(many) == 1001
    assert [str(p.text) for p in many if p.line == 0] == [
        "300 more like the 1\u202f000 that are listed."
    ]


def test_a_dwell_with_a_place_moves_there_after_it():
    got = both("G21 F9\nG1 X1\nG4 P2 X5\nM30")
    assert ends(got) == [(1, 0, 0), (5, 0, 0)]
    assert (got.pauses[0].kind, got.pauses[0].move) == ("dwell", 1)


def test_a_centre_and_a_radius_are_told_and_the_radius_is_used():
    got = both("G21 F9\nG2 X10 I9 J9 R5\nM30")
    assert told(got) == [(2, "arc-bad")]
    assert find_geometry(got.moves).length[0] == pytest.approx(5 * math.pi)


def test_a_stray_mark_in_the_middle_is_passed_over_and_told():
    got = both("G21\nG0 X1\n%\nY2\nM30")
    assert (ends(got), told(got)) == ([(1, 0, 0), (1, 2, 0)], [(3, "stray-mark")])


def test_a_file_that_names_no_unit_asks():
    got = both("G0 X1\nM30")
    assert told(got) == [(0, "no-units")]
    assert str(got.problems[0].text).endswith("Say which it is.")
    assert got.assumed == ("Units: mm, for the file does not say.",)


def test_words_stand_in_any_order():
    orders = itertools.permutations(["G1", "X5", "Y-2", "F900"])
    assert {tuple(ends(both("G21\n" + " ".join(words)))) for words in orders} == {((5, -2, 0),)}


def test_feed_or_speed_alone_moves_nothing():
    got = both("G21 M3\nG1 X1 F100\nF200\nS9000\nX2\nM30")
    assert list(got.moves.feed) == [100, 200]
    assert np.array_equal(got.moves.rpm, [np.nan, 9000], equal_nan=True)  # no speed is said first


def test_a_chord_under_two_microns_is_no_full_circle():
    got = both("G21 F9\nG0 X5\nG3 X4.9999998 Y0.0015 I-5 J0\nM30")
    assert find_geometry(got.moves).length[1] == pytest.approx(0.0015, abs=1e-5)


@pytest.mark.parametrize("text", ["G2 I10", "G2 J10", "G3 I10 J0", "G2 X0 Y0 I10"])
def test_full_circles_by_their_centre_only(text):
    got = both(f"G21 F9\n{text}\nM30")
    assert find_geometry(got.moves).length[0] == pytest.approx(20 * math.pi)
    assert got.problems == ()


@pytest.mark.parametrize("turns", [1, 2, 7])
def test_several_turns(turns):
    got = both(f"G21 F9\nG3 I10 Z-2 P{turns}\nM30")
    assert got.moves.sweep[0] == pytest.approx(turns * math.tau)


def test_radii_a_little_apart_warn_and_do_not_stop():
    got = both("G21 F9\nG2 X10.01 I5\nX20\nM30")
    assert told(got)[0] == (2, "arc-radii")
    assert len(got.moves) == 2


@pytest.mark.parametrize(
    ("plane", "text", "length"),
    [
        ("G18", "G2 X10 Z10 R10", 5 * math.pi),
        ("G19", "G3 Y10 Z10 R-10", 15 * math.pi),
        ("G18", "G3 X10 Z10 Y7 R10", math.hypot(5 * math.pi, 7)),
        ("G19", "G2 J10 K0 X3", math.hypot(20 * math.pi, 3)),
    ],
)
def test_radius_arcs_and_helices_in_upright_planes(plane, text, length):
    got = both(f"G21 F9 {plane}\n{text}\nM30")
    assert find_geometry(got.moves).length[0] == pytest.approx(length)


@pytest.mark.parametrize(("dialect", "end"), [("report", (0, 0, 0)), ("home-named", (10, 10, 0))])
def test_homing_in_one_line(dialect, end):
    got = both("G21 G0 X10 Y10 Z5\nG0 G91 G28 Z0\nM30", dialect=dialect)
    assert ends(got)[-1] == end
    assert list(got.moves.sure) == [True, True, False]


# The report homes every axis (`tests/outside/rs274.py`); that other controllers home the named
# axes alone is common practice, no source
@pytest.mark.parametrize("code", [28, 30])
@pytest.mark.parametrize(
    ("dialect", "home", "sure"),
    [("report", (0, 0, 0), False), ("home-named", (0, 20, 5), True)],
)
def test_homing_with_some_axes(code, dialect, home, sure):
    got = both(f"G21 G0 X10 Y20 Z5\nG{code} X15\nG0 X1\nM30", dialect=dialect)
    assert ends(got)[1:] == [(15, 20, 5), home, (1, *home[1:])]
    assert list(got.moves.sure) == [True, True, False, sure]


def test_every_choice_of_a_dialect_has_a_name():
    changed = {
        field
        for dialect in DIALECTS.values()
        for field, value in asdict(dialect).items()
        if field != "name" and value != getattr(Dialect, field)
    }
    assert changed == {field for field in asdict(Dialect()) if field != "name"}


def test_a_controller_that_differs_in_several_ways():
    got = both("G21 G0 X10 Y20 Z5\nG4 P500\nG28 X15\nM30", dialect="milliseconds+home-named")
    assert ends(got)[-1] == (0, 20, 5)
    assert [p.seconds for p in got.pauses if p.kind == "dwell"] == [0.5]


def test_a_change_to_no_tool():
    got = both("G21 T1 M6\nG0 X1\nT0 M6\nX2\nM30")
    assert [(p.kind, p.tool) for p in got.pauses if p.kind == "tool"] == [("tool", 1), ("tool", 0)]
    assert list(got.moves.tool) == [1, 0]


def test_a_tool_that_is_in_already_is_not_changed():
    got = both("G21 T1 M6\nG0 X1\nT1 M6\nX2\nM30")
    assert len([p for p in got.pauses if p.kind == "tool"]) == 1


@pytest.mark.parametrize(("dialect", "tools"), [("report", [1, 1]), ("run-deleted", [1, 2])])
def test_a_block_deleted_tool_change(dialect, tools):
    got = both("G21 T1 M6\nG0 X1\n/T2 M6\nX2\nM30", dialect=dialect)
    assert list(got.moves.tool) == tools


def test_unknown_m_codes_are_told_and_left_out():
    got = both("G21\nM199\nG0 X1 M77\nM30")
    assert told(got) == [(2, "unknown-code"), (3, "unknown-code")]
    assert ends(got) == [(1, 0, 0)]


def test_offsets_leave_one_frame():
    text = "G21\nG10 L2 P1 X100\nG0 X1\nG92 X0\nX5\nG92.1\nG55 X2\nM30"
    assert [p[0] for p in ends(both(text))] == [101, 106, 2]


def test_sticky_r_and_z():
    got = both("G21 F9\nG0 Z5\nG99 G81 X0 Y0 Z-3 R2\nX10\nX20 Z-4\nX30 R1\nX40\nG80\nM30")
    lows = [(x, z) for x, _, z in ends(got) if z < 0]
    assert lows == [(0, -3), (10, -3), (20, -4), (30, -4), (40, -4)]
    assert ends(got)[-1] == (40, 0, 1)


def test_r_and_z_do_not_stick_beyond_the_cycle():
    got = both("G21 F9\nG81 X0 Z-3 R2\nG80\nG0 X5\nG81 X10\nM30")
    assert told(got) == [(5, "cycle")]


@pytest.mark.parametrize(
    ("code", "more", "pauses", "kinds"),
    [
        (73, "Q3", 0, [0, 1, 0, 1, 0]),
        (81, "", 0, [0, 1, 0]),
        (82, "P1", 1, [0, 1, 0]),
        (83, "Q10", 0, [0, 1, 0]),
        (84, "", 0, [0, 1, 1]),
        (85, "", 0, [0, 1, 1]),
        (86, "P1", 1, [0, 1, 0]),
        (88, "P1", 1, [0, 1, 0]),
        (89, "P1", 1, [0, 1, 1]),
    ],
)
def test_each_cycle(code, more, pauses, kinds):
    got = both(f"G21 F9\nG0 Z2\nG99 G{code} X5 Z-3 R2 {more}\nG80\nM30")
    assert list(got.moves.kind)[1:] == kinds
    assert len([p for p in got.pauses if p.kind == "dwell"]) == pauses


def test_boring_from_behind_needs_all_its_words():
    assert told(both("G21 F9\nG0 Z5\nG87 X10 Z-8 R2\nM30")) == [(3, "cycle")]


@pytest.mark.parametrize(("plane", "axis", "place"), [("G18", "Y", "X"), ("G19", "X", "Y")])
def test_cycles_in_upright_planes(plane, axis, place):
    got = both(f"G21 F9 {plane}\nG0 {axis}5\nG99 G81 {place}7 {axis}-3 R2\nG80\nM30")
    along = "XYZ".index(axis)
    assert [p[along] for p in ends(got)] == [5, 5, 2, -3, 2]


def test_a_cycle_turns_no_axis():
    got = both("G21 F9\nG81 X1 Z-1 R1 A90\nM30")
    assert {kind for _, kind in told(got)} == {"rotary", "cycle"}
    assert len(got.moves) == 0


@pytest.mark.parametrize(("dialect", "low"), [("report", 2), ("absolute-r", -1)])
def test_r_under_incremental_distances(dialect, low):
    got = both("G21 F9\nG0 Z3\nG91 G99 G81 X1 Z-2 R1\nG80\nM30", dialect=dialect)
    assert min(z for _, _, z in ends(got)) == low


def test_compensation_is_told_and_the_path_is_read():
    got = both("G21 F9\nG41 D1 G1 X5\nX9\nG40\nM30")
    assert told(got) == [(2, "cutter-comp")]
    assert len(got.moves) == 2


def test_tool_lengths_change_no_path():
    assert ends(both("G21\nG43 H1 G0 Z5\nG49 X1\nM30")) == [(0, 0, 5), (1, 0, 5)]


def test_exact_stops():
    got = both("G21 F9 G61\nG1 X1\nG64 X2\nM30")
    assert list(got.moves.exact) == [True, False]


@pytest.mark.slow
def test_thirty_five_thousand_moves():
    got = both(outlines(35_000))
    assert len(got.moves) > 34_000


def test_a_line_of_more_than_a_chunk():
    got = both("G21\nG0 X1 (" + "x" * 200_000 + ")\nG0 Y2\nM30")
    assert told(got) == [(2, "not-read")]
    assert ends(got) == [(0, 2, 0)]


def test_rotary_words_are_told():
    got = both("G21\nG0 X1 A90\nM30")
    assert (ends(got), told(got)) == ([(1, 0, 0)], [(2, "rotary")])


def test_arc_centres_count_from_zero_under_g90_1_and_from_the_start_under_g91_1():
    text = "G21 F9 G90.1\nG92 X3 Y0\nG3 X5 Y0 I4 J0\nG91.1\nG3 X7 I1\nM30"
    got = both(text)
    assert told(got) == []
    assert got.moves.centre[:, 0].tolist() == [1.0, 3.0]


@pytest.mark.parametrize(
    ("text", "limit"),
    [
        ("G83 X1 Z-900 R1 Q0.5", "Q is too small"),
        ("G91 G83 X1 Z-900 R1 Q1 L900", "Q is too small"),
    ],
)
def test_what_one_line_can_stand_for_is_bounded(text, limit):
    got = both(f"G21 F9\n{text}\nM30")
    assert str(got.problems[-1].text).startswith("Q is too small")
    assert len(got.moves) == 0


def test_a_file_of_more_moves_than_are_taken_is_refused(monkeypatch):
    from station.cutting.read import text  # noqa: PLC0415 - its limit is lowered here

    monkeypatch.setattr(text, "MOST_MOVES", 100)
    got = read_program(outlines(2000).encode(), Setting())
    assert str(got.refused).startswith("The file has more than")
    assert told(got)[-1] == (0, "refused")


def test_a_dwell_with_a_centre_alone_moves_nothing():
    got = both("G21 F9\nG2 X1 Y1 I1\nG4 I5 J2\nM30")
    assert len(got.moves) == 1
