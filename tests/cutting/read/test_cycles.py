"""Canned cycles: NISTIR 6556 (checks 7.4; PUBLISHED examples, COMPUTED lengths)."""

import pytest
from reading import ends, kinds, lengths, program


def test_the_reports_first_example():
    got = program("G21 F100\nG0 X1 Y2 Z3\nG90 G81 G98 X4 Y5 Z1.5 R2.8\nG80")
    assert ends(got)[1:] == [(4, 5, 3), (4, 5, 2.8), (4, 5, 1.5), (4, 5, 3)]
    rapid, feed = lengths(got)
    assert rapid - 14**0.5 == pytest.approx(5.9426407, abs=1e-6)
    assert feed == pytest.approx(1.3)


@pytest.mark.parametrize(("back", "rapid"), [("G98", 74), ("G99", 59)])
def test_three_holes(back, rapid):
    got = program(f"G21 F100\nG0 Z5\n{back} G81 X0 Y0 Z-10 R2\nX10\nX20\nG80")
    total, feed = lengths(got)
    assert (total - 5, feed) == (pytest.approx(rapid), pytest.approx(36))


def test_pecking():
    # PUBLISHED distance, COMPUTED lengths; starts at R so that nothing else counts
    got = program("G21 F100\nG0 Z2\nG99 G83 X0 Y0 Z-10 R2 Q4\nG80")
    rapid, feed = lengths(got)
    assert feed == pytest.approx(12.508)
    assert rapid - 2 == pytest.approx(35.492 - 0, abs=1e-6)


def test_a_newer_interpreters_peck_distance():
    got = program("G21 F100\nG0 Z2\nG99 G83 X0 Y0 Z-10 R2 Q4", dialect="peck-1mm")
    assert lengths(got)[1] == pytest.approx(14)


def test_dwell_at_the_bottom():
    got = program("G21 F100\nG82 X0 Y0 Z-1 R1 P1.5\nX5")
    assert [p.seconds for p in got.pauses] == [1.5, 1.5]


def test_incremental_with_repeats():
    # PUBLISHED: NISTIR 6556's second example, from memory of the same transcription
    got = program("G21 F100\nG0 X1 Y2 Z3\nG91 G81 G98 X4 Y5 Z-0.6 R1.8 L3")
    holes = [p for p in ends(got) if p[2] == pytest.approx(4.2)]
    assert [h[:2] for h in holes] == [(5, 7), (9, 12), (13, 17)]
    assert ends(got)[-1] == pytest.approx((13, 17, 4.8))


@pytest.mark.parametrize(
    "text",
    [
        "G81 X1 Z-1",
        "G81 X1 R1",
        "G81 X1 Z2 R1",
        "G83 X1 Z-1 R1",
        "G83 X1 Z-1 R1 Q-1",
        "G81 X1 Z-1 R1 L0",
        "G81 X1 Z-1 R1 L1.5",
        "G93 G81 X1 Z-1 R1",
        "G41\nG81 X1 Z-1 R1",
        "G81",
    ],
)
def test_what_the_report_calls_an_error(text):
    assert "cycle" in kinds(program(f"G21 F100\n{text}"))


def test_return_to_where_the_series_began():
    text = "G21 F9\nG0 Z9\nG99 G81 X0 Y0 Z-1 R1\nG98 X5"
    assert ends(program(text))[-1][2] == 1
    assert ends(program(text, dialect="return-first"))[-1][2] == 9


@pytest.mark.parametrize("code", [85, 89])
def test_boring_comes_back_at_feed(code):
    got = program(f"G21 F9\nG0 Z2\nG99 G{code} X0 Y0 Z-3 R2")
    assert lengths(got)[1] == 10
