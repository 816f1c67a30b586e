"""Order of execution and modal groups: NISTIR 6556 (checks 7.1; statuses beside each)."""

import itertools

import pytest
from reading import both, ends, told

from station.cutting.read.dialects import Dialect

# Modal groups: non-modal and M groups PUBLISHED, the rest MEMORY (consistent with pygcode)
G_GROUPS = {
    "motion": (0, 1, 2, 3, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89),
    "plane": (17, 18, 19),
    "distance": (90, 91),
    "feed mode": (93, 94),
    "units": (20, 21),
    "side": (40, 41, 42),
    "length": (43, 49),
    "return": (98, 99),
    "system": (54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3),
    "path": (61, 61.1, 64),
}
M_GROUPS = {"stop": (0, 1, 2, 30, 60), "spindle": (3, 4, 5), "override": (48, 49)}
PAIRS = [
    (f"{letter}{a:g} {letter}{b:g}")
    for letter, groups in (("G", G_GROUPS), ("M", M_GROUPS))
    for codes in groups.values()
    for a, b in itertools.pairwise(codes)
]
ACROSS = [
    f"G{one[0]:g} G{other[-1]:g}"
    for (a, one), (b, other) in itertools.permutations(G_GROUPS.items(), 2)
    if a not in {"motion", "side", "feed mode"} and b not in {"motion", "side", "feed mode"}
]


@pytest.mark.parametrize("pair", PAIRS)
def test_two_of_one_modal_group_exclude_each_other(pair):
    assert (2, "twice") in told(both(f"G21\n{pair}"))


@pytest.mark.parametrize("pair", ACROSS)
def test_one_of_each_group_may_stand_on_a_line(pair):
    assert "twice" not in {kind for _, kind in told(both(f"G21\n{pair}"))}


def test_one_word_of_each_other_letter():
    # PUBLISHED
    assert told(both("G21 F9\nG1 X1 X2")) == [(2, "twice")]


# Table 8, PUBLISHED: what is done first whatever the words' order
@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("X10 G1 F100 G93", lambda m: m.minutes[-1] == 0.01),  # feed mode before F
        ("X10 G1 F600 G20", lambda m: m.feed[-1] == 600 * 25.4),
        ("X10 S5000 M3 G1", lambda m: m.rpm[-1] == 5000),  # S and spindle before motion
        ("X10 G1 M3 M6 T2", lambda m: m.tool[-1] == 2 and m.rpm[-1] == 1000),  # M6, then M3
        ("X10 G2 G18 K5 I0", lambda m: m.plane[-1] == 18),  # plane before motion
        ("X10 G1 G20", lambda m: m.points[-1, 0] == 254),
        ("X10 G1 G55", lambda m: m.points[-1, 0] == 110),
        ("X10 G1 G61", lambda m: bool(m.exact[-1])),
        ("X10 G1 G91", lambda m: m.points[-1, 0] == 13),
        ("G20 X10 G91 G1", lambda m: m.points[-1, 0] == 257),
        ("X10 Z-1 R1 G81 G99", lambda m: m.points[-1, 2] == 1),
        ("M2 X10 G1", lambda m: m.points[-1, 0] == 10),  # the stop comes last
    ],
)
def test_table_8(line, expected):
    got = both(f"G21 G90 F500\nG10 L2 P2 X100\nG0 X3 Z9\nS1000 T2\n{line}")
    assert expected(got.moves)


def test_a_dwell_comes_before_the_motion_of_later_lines_only():
    got = both("G21 F9\nG1 X1\nG4 P2\nX3")
    assert [(p.kind, p.move) for p in got.pauses] == [("dwell", 1)]


def test_a_tool_is_chosen_lines_before_it_is_changed():
    # PUBLISHED: T only selects
    got = both("G21 F9 T3\nG1 X1\nX2\nM6\nX3")
    assert list(got.moves.tool) == [0, 0, 3]


@pytest.mark.parametrize("code", [2, 30])
def test_the_end_of_a_program_sets_the_modes_back(code):
    # checks 7.1: G54, G17, G90, G94, G40, M5 and motion G1
    from station.cutting.read.controller_plain import Machine  # noqa: PLC0415 - looked at inside
    from station.cutting.read.reader_plain import Taker  # noqa: PLC0415

    machine = Machine(Dialect(), 1.0)
    taker = Taker(machine)
    for number, line in enumerate(("G55 G18 G91 G93 G41 M3 S9 G0", f"M{code}"), 1):
        taker.take(number, line)
    s = machine.state
    assert (s.system, s.plane, s.absolute, s.inverse) == (1, 17, True, False)
    assert (s.side, s.turning, s.motion, s.ended) == (40, False, 1, True)


def test_what_follows_the_end_is_not_run():
    assert ends(both("G21\nG0 X1\nM30\nX2")) == [(1, 0, 0)]
