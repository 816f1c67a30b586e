"""Hold-downs are proposed in waste, clear of cuts and of each other."""

import math

import numpy as np
import pytest
from layouts import make
from reading import box, found

from station.cutting.analyse.hold_downs import find_hold_downs
from station.cutting.report import analyse_program, read_program


def test_hold_downs_stand_in_waste_and_on_no_piece():
    plate, window = box(100, 100, 2200, 1000, tab=20), box(300, 300, 1500, 600, tab=20)
    for body, inside in ((plate, 0), (window + plate, 1)):
        places = find_hold_downs(found(body), 6, 20.0)
        on_plate = [(x, y) for x, y in places if 103 < x < 2297 and 103 < y < 1097]
        assert len(places) == 6
        assert len(on_plate) == inside
        assert all(300 < x < 1800 and 300 < y < 900 for x, y in on_plate)


def test_hold_downs_keep_away_from_each_other():
    places = find_hold_downs(found(box(500, 300, 800, 500, tab=12)), 4, 20.0)
    apart = [math.dist(a, b) for i, a in enumerate(places) for b in places[:i]]
    assert len(places) == 4
    assert min(apart) > 300


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
