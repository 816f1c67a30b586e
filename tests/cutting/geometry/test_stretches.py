"""What the bit leaves of its way, where it does not go through the sheet."""

import math

import numpy as np
import shapely

from station.cutting.geometry.stretches import find_left

RADIUS, LAPS, TABS = 60.0, 5, 3


def draw_way(laps: float, shake: float = 0.004) -> shapely.LineString:
    """Draws laps that lie on one another but for what coordinates of two decimals round off."""
    chance, steps = np.random.default_rng(1), round(laps * 180)
    turn = np.linspace(0.5, 0.5 + laps * 2 * math.pi, steps)
    points = np.column_stack((np.cos(turn), np.sin(turn))) * RADIUS
    return shapely.linestrings(points + chance.uniform(-shake, shake, points.shape))


def draw_kerf() -> shapely.Geometry:
    """Draws a lap that goes through, but for three tabs."""
    kerf = shapely.Point(0, 0).buffer(RADIUS).exterior.buffer(2.0)
    for n in range(TABS):
        turn = 1.0 + n * 2 * math.pi / TABS
        kerf -= _draw_tab(turn)
    return kerf


def _draw_tab(turn: float) -> shapely.Geometry:
    far = np.array([math.cos(turn), math.sin(turn)]) * 2 * RADIUS
    return shapely.linestrings([(0, 0), far]).buffer(4.0)


def test_laps_on_one_another_leave_a_stretch_a_tab_and_lap():
    left = find_left(np.array([draw_way(LAPS)]), np.array([draw_kerf()]))
    assert len(left.shape) == LAPS * TABS
    assert left.laps.all()
    assert np.allclose(shapely.length(left.shape), 8.0, atol=0.2)
    assert np.allclose(left.end - left.start, shapely.length(left.shape), atol=1e-6)
    assert (np.diff(np.sort(left.start)) > RADIUS).all()  # each has a place of its own


def test_a_tab_on_which_a_lap_ends_is_one_stretch():
    """A lap is parted at 1.9 pi: a tab stands there."""
    way = draw_way(LAPS, 0.0)
    kerf = shapely.Point(0, 0).buffer(RADIUS).exterior.buffer(2.0) - _draw_tab(0.5 + 1.9 * math.pi)
    left = find_left(np.array([way]), np.array([kerf]))
    assert len(left.shape) == LAPS
    assert np.allclose(shapely.length(left.shape), 8.0, atol=0.1)


def test_a_way_that_goes_round_once_is_left_whole():
    left = find_left(np.array([draw_way(1.1, 0.0)]), np.array([draw_kerf()]))
    assert len(left.shape) >= TABS
    assert not left.laps.any()
