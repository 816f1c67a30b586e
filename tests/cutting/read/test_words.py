"""Words, expressions and comments of a line; the report's own: `tests/outside/rs274.py`."""

import pytest
from reading import ends, kinds, program

from station.cutting.model import Setting
from station.cutting.read.expressions import BadLine, clean_line, read_block
from station.cutting.report import read_program


def value(text: str, parameters=None) -> float:
    return read_block(f"X{text}", parameters or {}).words[0][1]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("[2**3*2]", 16),
        ("[1+2*3]", 7),
        ("[7MOD4]", 3),
        ("[1AND0]", 0),
        ("[1XOR0]", 1),
        ("[0OR1]", 1),
        ("ATAN[1]/[1]", 45),
        ("SIN[30]", 0.5),
        ("COS[60]", 0.5),
        ("TAN[45]", 1),
        ("ASIN[1]", 90),
        ("ACOS[0]", 90),
        ("SQRT[16]", 4),
        ("ABS[-3]", 3),
        ("ROUND[2.5]", 3),
        ("EXP[0]", 1),
        ("LN[1]", 0),
        ("-[3]", -3),
        ("-.5", -0.5),
        ("+5.", 5),
    ],
)
def test_real_values(text, expected):
    assert value(text) == pytest.approx(expected, abs=1e-12)


def test_parameter_of_a_parameter():
    assert value("##2", {2: 3, 3: 8.5}) == 8.5


@pytest.mark.parametrize(
    "text",
    ["[1/0]", "[1", "", "+", "1.2.3", "SQRT[-1]", "LN[0]", "ASIN[2]", "[9**999]", "[-8**0.5]",
     "#0.5", "[" * 100, "BAD[1]", "#99999999", "1E5$"],
)  # fmt: skip
def test_what_cannot_be_read_is_a_sentence(text):
    with pytest.raises(BadLine, match=r"\.$"):
        read_block(f"X{text}", {})


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("G0 (a) X1 (b)", "G0X1"),
        ("G0 X1 ; far (x)", "G0X1"),
        ("G0 (a;b) X1", "G0X1"),
        ("(never closed X1", ""),
        (" n10 g 1 x 2 ", "N10G1X2"),
    ],
)
def test_comments_and_blanks_go(line, expected):
    assert clean_line(line) == expected


def test_block_delete():
    text = "G21\n/G0 X5\nG0 Y5"
    assert ends(program(text)) == [(0, 5, 0)]
    assert ends(program(text, dialect="run-deleted")) == [(5, 0, 0), (5, 5, 0)]


@pytest.mark.parametrize(
    "text",
    [
        "G21\r\nG0 X1\r\nY2\r\n",
        "\ufeffG21\nG0 X1\nY2",
        "%\nO0000(NAME)\nG21\nG0 X1\nY2\n%",
        "G21\nG0 X1\nY2\n%\n",
        "G21\nG0 X1\nF100\nS500\nY2",
        "N1 G21\nN2 G0 X1\nN99999 Y2\nM30\nX7",
        "G21\rG0 X1\rY2",
        "%\nG21\nG0 X1\nY2\n%\nX9",
        "G21 T0 M6\nM199\nG0 X1\nY2",
    ],
)
def test_real_files_stretch_the_report(text):
    assert ends(program(text)) == [(1, 0, 0), (1, 2, 0)]


def test_no_unit_word_is_said_and_never_guessed_silently():
    got = program("G0 X1")
    assert "no-units" in kinds(got)
    assert got.assumed
    assert ends(program("G0 X1", units="inch")) == [(25.4, 0, 0)]


@pytest.mark.parametrize(
    "text", ["O100 SUB\nG0 X1\nO100 ENDSUB", "O<A> CALL", "G0 X1\nM97 P100", "O1 WHILE [#1 LT 3]",
             "G65 P9010", "/M97P1"],
)  # fmt: skip
def test_loops_and_subprograms_are_refused(text):
    got = program("G21\n" + text)
    assert str(got.refused).endswith("Save the file without them.")
    assert "refused" in kinds(got)


@pytest.mark.parametrize(
    ("line", "kind"),
    [("G0 X", "not-read"), ("G0 X1 X2", "twice"), ("G777", "unknown-code"),
     ("M199", "unknown-code"), ("G1 G0 X1", "twice"), ("G0 $", "not-read"),
     ("\x00\xff", "not-read")],
)  # fmt: skip
def test_problems_come_with_line_and_text(line, kind):
    got = read_program(f"G21\n{line}\n".encode("latin-1"), Setting())
    assert [(p.line, p.kind) for p in got.problems] == [(2, kind)]
    assert str(got.problems[0].text).endswith(".")


def test_an_unknown_dialect_names_those_there_are():
    with pytest.raises(ValueError, match="milliseconds"):
        program("G21", dialect="x")


def test_a_cycle_that_is_not_known_moves_nothing():
    got = program("G21 G90 F500\nG0 X10 Y10 Z5\nG74 X20 Y20 Z-3 R1 Q1\nG80\nG0 X30")
    assert ends(got) == [(10, 10, 5), (30, 10, 5)]
    assert "unknown-code" in kinds(got)
