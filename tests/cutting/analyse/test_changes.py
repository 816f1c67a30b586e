"""Differences of revisions, hold-down places, and the order of popping."""

import numpy as np
import pytest
from layouts import make
from reading import box, found

from station.cutting.analyse.changes import compare_analyses
from station.cutting.analyse.holding import find_flying_pieces, find_hold_downs, order_for_popping
from station.cutting.report import analyse_program, read_program


@pytest.mark.parametrize(
    ("after", "kinds"),
    [
        (box(20, 20, 106, 86, tab=12), set()),
        (box(20, 20, 107, 86, tab=12), {"size"}),
        (box(30, 20, 106, 86, tab=12), {"place"}),
        (box(20, 20, 106, 86, tab=14), {"tabs"}),
        (box(20, 20, 106, 86), {"path", "tabs"}),
        (box(20, 20, 106, 86, z=-6.4, tab=12), {"depth", "tabs"}),
        (box(20, 20, 106, 86, tab=12) + box(300, 20, 50, 50, tab=12), {"new", "path"}),
        (box(300, 20, 50, 50, tab=12), {"gone", "new", "path"}),
        (
            box(20, 20, 106, 86, tab=12) + box(200, 20, 106, 86, tab=12),
            {"count", "place", "path"},
        ),
    ],
)
def test_differences(after, kinds):
    got = compare_analyses(found(box(20, 20, 106, 86, tab=12)), found(after))
    assert {c.kind for c in got} - {"tabs"} == kinds - {"tabs"}
    assert all(c.text.endswith(".") for c in got)


def test_a_moved_tab_is_told():
    one, other = (
        box(20, 20, 106, 86, tab=12),
        box(20, 20, 106, 86).replace("X126\n", "X60\nZ-4\nX72\nZ-6.2\nX126\n", 1),
    )
    assert [c.text[-16:] for c in compare_analyses(found(one), found(other))] == [
        "a tab was moved."
    ]


@pytest.mark.parametrize("seed", [0, 2])
def test_hold_downs_stand_where_nothing_is_cut(seed):
    layout = make(seed)
    got = analyse_program(read_program(layout.text.encode(), layout.setting), layout.setting)
    places = find_hold_downs(got, 6, 20.0)
    assert len(places) == 6
    for x, y in places:
        assert 0 <= x <= 2440
        assert 0 <= y <= 1220
        for piece in got.pieces:
            assert np.hypot(*(piece.outline - [x, y]).T).min() > 15


def test_small_loose_pieces_fly():
    got = found(box(20, 20, 26, 26) + box(100, 20, 106, 86))
    assert find_flying_pieces(got) == [0]
    assert order_for_popping(got) == [0, 1]
