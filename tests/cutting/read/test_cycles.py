"""Canned cycles, beside the report's own (`tests/outside/rs274.py`)."""

import pytest
from reading import ends, kinds, lengths, program


def test_a_newer_interpreters_peck_distance():
    got = program("G21 F100\nG0 Z2\nG99 G83 X0 Y0 Z-10 R2 Q4", dialect="peck-1mm")
    assert lengths(got)[1] == pytest.approx(14)


def test_dwell_at_the_bottom():
    got = program("G21 F100\nG82 X0 Y0 Z-1 R1 P1.5\nX5")
    assert [p.seconds for p in got.pauses] == [1.5, 1.5]


@pytest.mark.parametrize(
    "text",
    [
        "G81 X1 Z-1",
        "G81 X1 R1",
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
