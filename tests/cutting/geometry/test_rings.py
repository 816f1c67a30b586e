"""How far hulls reach each way, and the smallest rectangle around them."""

import math

import numpy as np
import pytest

from station.cutting.geometry.rings import find_hull, find_rectangle, split_columns, try_angles


def draw_leaf(corners: int) -> np.ndarray:
    turn = np.linspace(0, 2 * math.pi, corners, endpoint=False)
    return np.column_stack((90 * np.cos(turn), 25 * np.sin(turn) + 4 * np.cos(3 * turn)))


def draw_box_of_many_corners() -> np.ndarray:
    """Its sides turn by rounding alone, so that a corner may seem lower than the next but one."""
    side = np.linspace(0, 1, 40, endpoint=False)
    x = np.concatenate((side, side * 0 + 1, 1 - side, side * 0)) * 700.1
    y = np.concatenate((side * 0, side, side * 0 + 1, 1 - side)) * 300.3
    c, s = math.cos(0.3), math.sin(0.3)
    return np.column_stack((x * c - y * s + 1000.7, x * s + y * c + 600.1))


@pytest.mark.parametrize(
    "ring",
    [
        draw_leaf(5),
        draw_leaf(700),
        draw_box_of_many_corners(),
        np.array([(0.0, 0), (9, 0), (9, 5)]),
    ],
)
def test_no_corner_of_a_hull_reaches_further_than_the_furthest(ring):
    x, y = split_columns(find_hull(ring))
    ways = np.arctan2(np.diff(y, append=y[0]), np.diff(x, append=x[0])) % (math.pi / 2)
    tried, along, across = try_angles(x, y, np.append(ways, np.linspace(0, math.pi / 2, 300)))
    c, s = np.cos(tried)[:, None], np.sin(tried)[:, None]
    assert (along == np.ptp(x * c + y * s, axis=1)).all()
    assert (across == np.ptp(y * c - x * s, axis=1)).all()


def test_a_turned_rectangle_is_its_own_smallest_rectangle():
    width, length, turn = find_rectangle(draw_box_of_many_corners())
    assert (width, length) == pytest.approx((300.3, 700.1))
    assert turn == pytest.approx(0.3)
