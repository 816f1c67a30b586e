"""Diameters are read from remarks in many habits, and from nothing that only looks like one."""

import pytest
from reading import program

from station.cutting.model import Setting
from station.cutting.read.remarks import read_size
from station.cutting.report import analyse_program


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("T1 D=3.175 MM FLAT END MILL", 3.175),
        ("T1 D6. CR0. - FLAT END MILL", 6.0),
        ("DIA 0.125 IN", 3.175),
        ("DIA 0.2362 IN", 6.0),  # rounded from 6 mm
        ("3MM STRAIGHT", 3.0),
        ("6.35 MM STRAIGHT, 2 FLUTES", 6.35),
        ('1/4" UPCUT', 6.35),
        ("BIT 6 MM", 6.0),
        ("CUTTER 3.17 MM", 3.175),  # rounded from an eighth of an inch
        ("SCHAFTFR\xc4SER 4,5 MM", 4.5),
        ("1.5 MM DEEP", None),
        ("TABS 8 X 2 MM", None),
        ("STEPDOWN 3MM", None),
        ("6 MM BIRCH PLY, 600 X 400", None),
        ("CONTOUR 4", None),
    ],
)
def test_sizes(text, size):
    assert read_size(text, inches=False) == size


@pytest.mark.parametrize(
    ("text", "inches", "size"),
    [
        ("TOOL DIA .25", True, 6.35),
        ("DIA.25", True, 6.35),
        ("DIA.6 MM", False, 6.0),
        ("DIA .5 MM", False, 0.5),
        ("T1 D=.5", True, 12.7),
        ("T1 .25 END MILL", True, 6.35),
        ("V BIT 60 DEG, .25 DIA", True, 6.35),
        ("T2 .5 BALL", False, 0.5),
        ("END MILL, 1/4 DIA, 2 FLUTE", True, 6.35),
        ("TOOL 1: 1/8 UPCUT", True, 3.175),
        ("END MILL, 1/4 DIA", False, None),  # of what?
        ("PART 1/4", True, None),
        ("TOOL 2/4", True, None),
        ("T=0.25 IN", True, None),  # the sheet's
        ("T1 .03 RADIUS END MILL", True, None),
    ],
)
def test_sizes_without_a_unit_are_in_the_files_own(text, inches, size):
    assert read_size(text, inches=inches) == size


def bits(text: str, **setting) -> dict[int, float]:
    got = analyse_program(
        program(text, thickness_mm=6.0, **setting), Setting(thickness_mm=6.0, **setting)
    )
    return {b.number: b.diameter_mm for b in got.bits}


CUT = "G0 X{} Y20\nG1 Z-2 F900\nX60\nG0 Z5\n"
HEAD = "G21 G90\nM3 S18000\nG0 Z5\n"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (f"G21\n(T2 D=3.175)\nT2 M6\nM3 S9000\n{CUT.format(20)}", {2: 3.175}),
        (f"G21\n(T2 D=3)\n(T5 D=6)\nT2 M6\n{CUT.format(20)}T5 M6\n{CUT.format(90)}", {2: 3, 5: 6}),
        (
            f"{HEAD}(3mm straight)\n{CUT.format(20)}(6mm straight)\nM0\n{CUT.format(90)}",
            {0: 3, 1: 6},
        ),
        (  # the third line of the list is of a bit that this file does not call
            f"G21\n(T1 D=8)\n(T2 D=3.175)\n(V bit 60 deg, 6mm)\nT2 M6\n{CUT.format(20)}",
            {2: 3.175},
        ),
        (f"G21 G90\nT1 M6\n(1.5 mm deep)\n{CUT.format(20)}", {1: 6.0}),  # assumed
    ],
)
def test_bits_of_a_file(text, expected):
    assert bits(text) == expected


def test_the_order_in_which_a_bit_is_believed():
    text = f"G21\n(T1 D=3)\nT1 M6\n{CUT.format(20)}"
    bare = text.replace("(T1 D=3)\n", "")
    assert bits(text, bit_mm={1: 4.0}) == {1: 4.0}
    assert bits(text, changer_mm={1: 5.0}) == {1: 3.0}
    assert bits(bare, changer_mm={1: 5.0}) == {1: 5.0}
    assert bits(bare, spindle_mm=8.0, usual_mm=2.0) == {1: 8.0}
    assert bits(bare, usual_mm=2.0) == {1: 2.0}


def test_what_is_assumed_is_said():
    got = analyse_program(program(f"G21\nT1 M6\n{CUT.format(20)}"), Setting())
    assert "Bit 1: 6 mm, which is only assumed." in got.assumed


def test_a_remark_and_the_changer_that_differ_are_told():
    text = f"G21\n(T1 D=3)\nT1 M6\nM3 S9000\nG0 Z5\n{CUT.format(20)}"
    got = analyse_program(program(text), Setting(changer_mm={1: 6.0}))
    assert [(p.line, p.grade) for p in got.problems if p.kind == "bit-differs"] == [(2, "stop")]


def test_a_diameter_given_by_number_is_that_of_the_only_bit_of_a_file_that_calls_none():
    text = f"G21\nM3 S9000\nG0 Z5\n{CUT.format(20)}"
    got = analyse_program(program(text), Setting(bit_mm={1: 3.0}))
    assert {b.number: b.diameter_mm for b in got.bits} == {0: 3.0}
    assert "Bit 0: 3 mm, as given for bit 1; the file calls none." in got.assumed


def test_a_diameter_of_a_bit_that_cuts_nothing_is_said():
    got = analyse_program(program(f"G21\nT1 M6\n{CUT.format(20)}"), Setting(bit_mm={2: 3.0}))
    assert "Bit 2: cuts nothing in this file." in got.assumed
