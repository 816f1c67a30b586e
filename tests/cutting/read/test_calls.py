"""Subprograms that stand in the file: common practice of controls, no source."""

import pytest
from reading import SETTING, both, ends, program, sizes, told

from station.cutting.model import Setting
from station.cutting.read.calls import MOST_DEEP, write_out
from station.cutting.read.dialects import find_dialect
from station.cutting.read.reader_plain import read_plain
from station.cutting.report import analyse_program, read_program
from tests.fuzz import differences

STEP = "O20 (ONE STEP)\nG91\nG1 X10 F600\nY5\nG90\nM99\n"
STEPS = [(10, 0, 0), (10, 5, 0)]


def lines(got) -> list[int]:
    return got.moves.line.tolist()


@pytest.mark.parametrize(
    ("call", "count"),
    [
        ("M98 P20", 1),
        ("M98 P20 L1.", 1),
        ("N5M098P0020L3", 3),
        ("m98 l3 p20", 3),
        ("M98 P30020", 3),  # the digits before the last four say how often
        ("M98 P20 K2", 2),
        ("M98 P20 L0", 0),
        ("M98 P20 (L4 IS A REMARK)", 1),
        ("/M98 P20", 0),
    ],
)
def test_a_call_is_what_it_calls(call, count):
    got = program(f"G21 G90\n{call}\nM30\n{STEP}")
    assert not got.refused
    assert ends(got) == [(10 * (n // 2 + 1), 5 * ((n + 1) // 2), 0) for n in range(2 * count)]
    assert lines(got) == [6, 7] * count
    assert got.lines == 10


def test_what_else_stands_on_a_line_is_run_before_its_call():
    got = program(f"G21 G90\nG0 X50 M98 P20 Y7 (T1 D=3)\nG0 X0\nM30\n{STEP}")
    assert ends(got) == [(50, 7, 0), (60, 7, 0), (60, 12, 0), (0, 12, 0)]
    assert lines(got) == [2, 7, 8, 3]
    assert [(s.number, s.diameter_mm, s.line) for s in got.bits_said] == [(0, 3.0, 2)]


def test_what_else_stands_on_a_line_is_run_before_it_goes_back():
    got = program("G21 G90\nM98 P20 L2\nM30\nO20\nG91 G1 X1 F600\nG90 Y3 M99\n")
    assert ends(got) == [(1, 0, 0), (1, 3, 0), (2, 3, 0), (2, 3, 0)]


@pytest.mark.parametrize(
    "text",
    [
        "{steps}O10\nM98 P20 L2\nM99\nO1\nG21 G90\nM98 P10\nM30\n",  # before the main program
        "G21 G90\nM98 P10\nM30\nO10\nM98 P20\nM98 P20\nM99\n{steps}",
        "%\nO1 (MAIN)\r\nG21 G90\rM98 P10\nM30\nO10\nM98 P20\nM98 P20\nM99\n{steps}%",
    ],
)
def test_subprograms_stand_anywhere_and_call_others(text):
    got = program(text.format(steps=STEP))
    assert ends(got) == [(10, 0, 0), (10, 5, 0), (20, 5, 0), (20, 10, 0)]
    assert told(got) == []


def test_a_main_program_that_begins_anew_is_read_once():
    got = program(f"O1\nG21 G90\nM98 P20\nM99\n{STEP}")
    assert ends(got) == STEPS
    assert "Line 4 begins the program anew; it is read once." in got.assumed


def test_problems_stand_at_the_lines_of_the_file():
    got = program("G21 G90\nM98 P20 L3\nG5.7\nM30\nO20\n(A REMARK)\nG777\nG1 X1\nM99")
    assert told(got) == [(3, "unknown-code"), (7, "unknown-code"), (8, "no-feed")]


def test_a_line_that_refuses_the_file_is_the_files_own():
    got = program(f"G21 G90\nM98 P20 L3\nG65 P9000\nM30\n{STEP}")
    assert str(got.refused).startswith("Line 3 ")
    assert told(got) == [(3, "refused")]


CIRCLE = "would never end"


@pytest.mark.parametrize(
    ("text", "line", "why"),
    [
        ("M98 P7", 2, "calls subprogram 7, which is not in the file"),
        ("/M98 P7", 2, "calls subprogram 7, which is not in the file"),
        ("M98 P30007", 2, "calls subprogram 7, which is not in the file"),
        ("M98 P7\nM30\nO7\nM98 P7\nM99", 5, CIRCLE),
        ("M98 P7\nM30\nO7\nM98 P8\nM99\nO8\nM98 P7\nM99", 8, CIRCLE),
        ("M98 P#1\nM30\nO7\nM99", 2, "does not say by number what it calls"),
        ("M98\nM30\nO7\nM99", 2, "does not say by number what it calls"),
        ("M98 P7 L#1\nM30\nO7\nM99", 2, "does not say by number what it calls"),
        ("M98 P7\nM30\nO7\nG0 X1\nM99 P10", 6, "goes back to another line"),
        ("M98 P7\nM30\nO7\nM99\nO7\nM99", 6, "a second time"),
        ("M98 P7 L9999\nM30\nO7\nM98 P8 L9999\nM99\nO8\nM99", 2, "million lines"),
    ],
)
def test_a_call_that_cannot_be_written_out_refuses_the_file_in_a_sentence(text, line, why):
    got = program(f"G21\n{text}\n")
    assert why in str(got.refused)
    assert [p.line for p in got.problems if p.kind == "refused"] == [line]
    assert str(got.refused).startswith((f"Line {line} ", f"With what line {line} "))


def test_subprograms_call_one_another_so_deep_and_no_deeper():
    def chain(deep: int) -> str:
        inner = "".join(f"O{n}\nM98 P{n + 1}\nM99\n" for n in range(1, deep))
        return f"G21\nM98 P1\nM30\n{inner}O{deep}\nG0 X1\nM99\n"

    assert ends(program(chain(MOST_DEEP))) == [(1, 0, 0)]
    assert f"from within more than {MOST_DEEP} others" in str(
        program(chain(MOST_DEEP + 1)).refused
    )


def test_both_readers_read_the_text_that_is_written_out():
    text = f"G21 G90\nG0 X1 M98 P30020\nM30\n{STEP}".encode()
    got = write_out(text, find_dialect("report"))
    want = read_plain(got.data, Setting())
    assert differences(want, read_program(got.data, Setting())) == []
    assert len(want.moves) == 7


def test_a_remark_calls_nothing():
    text = "G21\n(NOW M98 P7, THEN M99)\nG0 X1 ; M98 P8\nM30\n"
    assert ends(both(text)) == [(1, 0, 0)]


def test_pieces_cut_by_calls_stand_in_the_order_in_which_they_are_cut():
    ring = "G91\nG0 X-33\nG1 Z-11.2 F600\nY{y} F2400\nX66\nY-{y}\nX-66\nG0 Z11.2\nG90\nM99\n"
    rings = "".join(f"O{n}\n{ring.format(y=y)}" for n, y in ((1, 46), (2, 26)))
    main = "G0 X100 Y100\nM98 P2\nG0 X200\nM98 P1\nG0 X300\nM98 P2\nM30\n"
    got = analyse_program(program(f"G21 G90\nM3 S18000\nG0 Z5\n{main}{rings}"), SETTING)
    assert sizes(got) == [(20, 60, 2), (40, 60, 1)]
    assert [p.line for p in got.pieces] == [26, 15, 26]
