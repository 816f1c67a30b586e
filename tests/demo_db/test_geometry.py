"""Offsets are exact: the bit's edge runs along the drawn edge, never in it."""

from math import dist, hypot, pi

import pytest

from demo_db.geometry import (
    OffsetError,
    circle,
    length,
    loop,
    offset,
    path,
    rectangle,
    reverse,
    turned,
)
from demo_db.parts import designs


def whole(corners):
    return sum(map(length, path(corners)))


def test_a_rectangle_moved_outward_gets_round_corners():
    around = offset(rectangle(0, 0, 100, 40), 3)
    assert whole(around) == pytest.approx(280 + 2 * pi * 3)


def test_a_circle_moved_inward_is_a_smaller_circle():
    assert whole(offset(circle(10, 10, 20), -3)) == pytest.approx(2 * pi * 7)


def test_a_corner_that_is_too_tight_is_told():
    with pytest.raises(OffsetError, match="too tight"):
        offset(rectangle(0, 0, 50, 20, 2), -3)


@pytest.mark.parametrize("design", designs().values(), ids=lambda d: d.name)
def test_the_bit_s_middle_keeps_its_radius_from_every_edge(design):
    edges = loop(design.outline)
    for x, y in loop(offset(design.outline, 3)):
        near = min(away((x, y), a, b) for a, b in zip(edges, (*edges[1:], edges[0]), strict=True))
        assert near == pytest.approx(3, abs=0.06)


def away(point, a, b):
    dx, dy = b[0] - a[0], b[1] - a[1]
    along = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / (dx * dx + dy * dy)
    along = min(1, max(0, along))
    return hypot(point[0] - a[0] - along * dx, point[1] - a[1] - along * dy)


def test_a_path_is_closed_and_runs_both_ways():
    pieces = path(designs()["021"].outline)
    for one, after in zip(pieces, (*pieces[1:], pieces[0]), strict=True):
        assert dist(one.end, after.start) < 1e-9
    back = reverse(pieces)
    assert back[0].start == pieces[-1].end
    assert sum(map(length, back)) == pytest.approx(sum(map(length, pieces)))


@pytest.mark.parametrize(
    ("turn", "to"), [(0, (10, 5)), (90, (35, 10)), (180, (90, 35)), (270, (5, 90))]
)
def test_a_quarter_turn_keeps_the_box_at_the_corner(turn, to):
    assert turned((10, 5), turn, (100, 40)) == to
