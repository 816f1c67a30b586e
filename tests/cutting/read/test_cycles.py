"""Canned cycles, beside the report's own (`tests/outside/rs274.py`)."""

import pytest
from reading import both, ends, kinds, lengths, program, told


def test_a_newer_interpreters_peck_distance():
    got = program("G21 F100\nG0 Z2\nG99 G83 X0 Y0 Z-10 R2 Q4", dialect="peck-1mm")
    assert lengths(got)[1] == pytest.approx(14)


@pytest.mark.parametrize(("dialect", "back"), [("report", 0.254), ("peck-1mm", 1.0)])
def test_a_peck_that_breaks_the_chip_draws_back_a_little_in_its_hole(dialect, back):
    """Common practice, no source: down by Q, up by a short way at rapid, and on from there."""
    got = both("G21 F100\nG0 Z2\nG98 G73 X5 Y0 Z-10 R2 Q5\nG80\nM30", dialect=dialect)
    heights = [2, 2, -3, -3 + back, -8, -8 + back, -10, 2]
    assert [z for _, _, z in ends(got)] == pytest.approx(heights)
    assert list(got.moves.kind) == [0, 0, 1, 0, 1, 0, 1, 0]
    assert lengths(got)[1] == pytest.approx(12 + 2 * back)


def test_dwell_at_the_bottom():
    got = program("G21 F100\nG82 X0 Y0 Z-1 R1 P1.5\nX5")
    assert [p.seconds for p in got.pauses] == [1.5, 1.5]


@pytest.mark.parametrize(
    "text",
    [
        "G81 X1 Z-1",
        "G81 X1 R1",
        "G73 X1 Z-1 R1",
        "G83 X1 Z-1 R1",
        "G81",
    ],
)
def test_a_cycle_without_what_it_needs_is_an_error(text):
    assert "cycle" in kinds(program(f"G21 F100\n{text}"))


def test_return_to_where_the_series_began():
    text = "G21 F9\nG0 Z9\nG99 G81 X0 Y0 Z-1 R1\nG98 X5"
    assert ends(program(text))[-1][2] == 1
    assert ends(program(text, dialect="return-first"))[-1][2] == 9


@pytest.mark.parametrize("code", [85, 89])
def test_boring_comes_back_at_feed(code):
    got = program(f"G21 F9\nG0 Z2\nG99 G{code} X0 Y0 Z-3 R2")
    assert lengths(got)[1] == 10


@pytest.mark.parametrize(
    ("line", "changed"),
    [
        ("G91 X20 L4", True),  # the heights of G90 now count from where the bit is
        ("G91 G81 X20 Z-9 R-3 L4", False),  # they are said anew
        ("X30", False),
    ],
)
def test_heights_that_were_said_before_g91_are_told(line, changed):
    got = both(f"G21 G90 M3 S9000\nG0 Z5\nG81 X10 Y10 Z-7 R2 F300\n{line}\nG80\nM2\n")
    assert [line for line, kind in told(got) if kind == "cycle"] == ([4] if changed else [])
