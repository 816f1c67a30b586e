"""The reader of cut files, held against the report on their language (`rs274.py`)."""

import itertools
import math

import pytest
from pygcode.gcodes import word_gcode_class
from pygcode.words import Word

from station.cutting.geometry.moves import find_geometry
from station.cutting.read.controller_plain import Controller
from station.cutting.read.dialects import Dialect
from station.cutting.read.expressions import clean_line, read_block
from station.cutting.read.reader_plain import LineTaker
from tests.cutting.reading import both, ends, kinds, lengths, told
from tests.outside import rs274
from tests.outside.value import values


@values(rs274.EXPRESSIONS)
def test_expressions(given, expected):
    assert read_block(f"X{given}", {}).words[0][1] == pytest.approx(expected, abs=1e-12)


@values(rs274.COMMENTS)
def test_comments(given, expected):
    assert clean_line(given) == expected


@values(rs274.PLAIN_FILES)
def test_what_the_report_allows_is_not_mentioned(given, expected):
    assert both(given).assumed == expected


@values(rs274.WAYS)
def test_where_moves_end(given, expected):
    assert ends(both(given)) == expected


@values(rs274.PROBLEMS)
def test_what_may_not_stand_on_a_line(given, expected):
    assert told(both(given)) == expected


def column(moves, name):
    """A column of moves by its name; `x`, `y`, `z` are the places where they end."""
    return moves.points[1:, "xyz".index(name)] if name in "xyz" else getattr(moves, name)


@values(rs274.ORDER)
def test_what_is_done_first_whatever_the_words_order(given, expected):
    name, last = expected
    assert column(both(rs274.START + given).moves, name)[-1] == last


@values(rs274.TOOLS)
def test_tools_are_chosen_and_changed(given, expected):
    moves = both(given).moves
    assert (list(moves.tool), list(moves.rpm)) == expected


def group(value):
    """Its codes as they are written."""
    return [f"{value.given[0]}{code:g}" for code in value.expected]


PAIRS = [f"{a} {b}" for value in rs274.GROUPS for a, b in itertools.pairwise(group(value))]
WITHOUT_MORE = [
    group(value)
    for value in rs274.GROUPS
    if value.given[0] == "G" and value.given[1] not in {"motion", "side", "feed mode"}
]
ACROSS = [f"{one[0]} {other[-1]}" for one, other in itertools.permutations(WITHOUT_MORE, 2)]


@pytest.mark.parametrize("pair", PAIRS)
def test_two_of_one_modal_group_exclude_each_other(pair):
    assert (2, "twice") in told(both(f"G21\n{pair}"))


@pytest.mark.parametrize("pair", ACROSS)
def test_one_of_each_group_may_stand_on_a_line(pair):
    assert "twice" not in {kind for _, kind in told(both(f"G21\n{pair}"))}


@values(rs274.GROUPS)
def test_another_reader_has_the_same_groups(given, expected):
    """What is from memory stands on pygcode, as far as that knows the codes."""
    letter, _ = given
    known = [word_gcode_class(Word(letter, code)) for code in expected]
    assert len({k.modal_group for k in known if k and k.modal_group}) == 1


@values(rs274.ENDINGS)
def test_the_end_of_a_program_sets_the_modes_back(given, expected):
    controller = Controller(Dialect(), 1.0)
    taker = LineTaker(controller)
    for number, line in enumerate(("G55 G18 G91 G93 G41 M3 S9 G0", given), 1):
        taker.take_line(number, line)
    s = controller.state
    assert s.ended
    assert ((s.system, s.plane, s.absolute, s.inverse), (s.side, s.turning, s.motion)) == expected


def last(text):
    """The moves of a text, their geometry and the number of the last move."""
    got = both(f"G21 F1000\n{text}")
    return got, find_geometry(got.moves), len(got.moves) - 1


@values(rs274.ARCS)
def test_arcs(given, expected):
    got, geo, i = last(given)
    centre, length = expected
    assert tuple(got.moves.centre[i]) == pytest.approx(centre, abs=1e-9)
    assert geo.length[i] == pytest.approx(length, abs=1e-6)
    assert not got.problems


@values(rs274.ITS_ARC)
def test_the_reports_own_arc(given, expected):
    got, geo, i = last(given)
    centre, turned, radius, flat = expected
    assert tuple(got.moves.centre[i]) == pytest.approx(centre)
    assert math.degrees(got.moves.sweep[i]) == pytest.approx(turned, abs=1e-6)
    assert math.dist(got.moves.centre[i], got.moves.points[i, :2]) == pytest.approx(radius)
    assert geo.flat[i] == pytest.approx(flat, abs=1e-6)


@values(rs274.RADII)
def test_radii_that_disagree_warn_and_do_not_stop(given, expected):
    got, _, i = last(given)
    assert ("arc-radii" in kinds(got)) == expected
    assert i == 0


@values(rs274.FEEDS)
def test_feed(given, expected):
    assert both(given).moves.feed[0] == pytest.approx(expected)


@values(rs274.INVERSE_TIMES)
def test_inverse_time(given, expected):
    assert both(given).moves.minutes[0] == expected


@values(rs274.DWELLS)
def test_dwell(given, expected):
    (pause,) = both(given).pauses
    assert (pause.kind, pause.seconds) == ("dwell", expected)


@values(rs274.CYCLES)
def test_lengths_of_cycles(given, expected):
    way, cycles = given
    before = lengths(both(f"G21 F100\n{way}"))[0]
    rapid, feed = lengths(both(f"G21 F100\n{way}\n{cycles}"))
    assert (rapid - before, feed) == pytest.approx(expected, abs=1e-6)


@values(rs274.CYCLE_ENDS)
def test_ends_of_cycles(given, expected):
    assert ends(both("G21 F100\n{}\n{}".format(*given)))[1:] == expected


@values(rs274.REPEATS)
def test_cycles_again_and_again(given, expected):
    holes, end = expected
    found = ends(both(given))
    assert [p for p in found if p[2] == pytest.approx(holes[0][2])] == holes
    assert found[-1] == pytest.approx(end)


@values(rs274.CYCLE_ERRORS)
def test_cycles_that_are_an_error(given, expected):
    assert expected in kinds(both(f"G21 F100\n{given}"))


@values(rs274.BORING)
def test_boring_from_behind(given, expected):
    got = both(given)
    assert ends(got)[1:11] == list(expected)
    assert list(got.moves.kind)[1:11] == [0, 0, 0, 0, 0, 1, 1, 0, 0, 0]
    assert [x for x, *_ in ends(got)[11:]] == [x + 10 for x, *_ in expected[1:]]
