"""What is done before what, beside the report's own (`tests/outside/rs274.py`)."""

from reading import both, ends


def test_a_dwell_comes_before_the_motion_of_later_lines_only():
    got = both("G21 F9\nG1 X1\nG4 P2\nX3")
    assert [(p.kind, p.move) for p in got.pauses] == [("dwell", 1)]


def test_what_follows_the_end_is_not_run():
    assert ends(both("G21\nG0 X1\nM30\nX2")) == [(1, 0, 0)]
