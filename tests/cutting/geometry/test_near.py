"""The cells of a grid give every stroke that lies near a side, as a look at all of them does."""

from time import process_time

import numpy as np
import pytest
import shapely

from station.cutting.geometry.near import LONGEST_MM, list_near, plant_strokes
from station.cutting.geometry.strokes import pick_among

REACH = 3.1


def make_strokes(seed: int) -> tuple[np.ndarray, ...]:
    """Short and long strokes, and arcs up to a whole turn; one longer than any sheet."""
    rng = np.random.default_rng(seed)
    start = rng.uniform(-50, 250, 300) + 1j * rng.uniform(-50, 150, 300)
    way = rng.exponential(20, 300) * np.exp(1j * rng.uniform(-np.pi, np.pi, 300))
    sweep = np.where(rng.random(300) < 0.4, rng.uniform(-2 * np.pi, 2 * np.pi, 300), 0.0)
    centre = np.where(sweep != 0, start + way, 0)
    end = np.where(sweep != 0, centre + (start - centre) * np.exp(1j * sweep), start + way)
    end[0], sweep[0], centre[0] = start[0] + 2 * LONGEST_MM, 0.0, 0.0
    return start, end, centre, sweep


def draw(start: complex, end: complex, centre: complex, sweep: float) -> shapely.Geometry:
    points = [start, end]
    if sweep:
        points = centre + (start - centre) * np.exp(1j * sweep * np.linspace(0, 1, 2000))
    return shapely.linestrings(np.column_stack((np.real(points), np.imag(points))))


@pytest.mark.parametrize("seed", range(4))
def test_no_stroke_near_a_side_is_left_out_and_none_is_far(seed):
    columns = make_strokes(seed)
    strokes = plant_strokes(*columns, np.full(300, 3.0))
    drawn = [draw(*row) for row in zip(*columns, strict=True)]
    ring = np.array([0, 120 + 3j, 121 + 90j, 60 + 40j, 2 + 91j, 2 + 91j, 3 * LONGEST_MM])
    bounds, found = list_near(
        ring, REACH, strokes.start, strokes.end, strokes.centre, strokes.sweep, strokes.stops,
        strokes.inside, strokes.far, np.full(300, -1), 0,
    )  # fmt: skip
    for n in range(5):
        near = found[bounds[n] : bounds[n + 1]].tolist()
        assert len(near) == len(set(near))
        side = draw(complex(ring[n]), complex(ring[n + 1]), 0, 0)
        away = shapely.distance(side, drawn)
        assert set(np.flatnonzero(away < REACH).tolist()) <= set(near)
        assert all(away[k] < 2 * REACH for k in near)
    assert bounds[6] - bounds[5] == 300  # of a side longer than any sheet: all there are


def test_values_among_some_others_are_picked():
    rng = np.random.default_rng(3)
    values = rng.integers(-(2**62), 2**62, 5000)
    some = np.concatenate((values[rng.integers(0, 5000, 900)], rng.integers(0, 99, 100)))
    assert (pick_among(values, some) == np.isin(values, some)).all()
    assert not pick_among(values, some[:0]).any()


def test_a_way_far_beyond_any_sheet_is_looked_at_in_no_time():
    rng = np.random.default_rng(1)
    places = (rng.uniform(-9e3, 9e3, 400) + 1j * rng.uniform(-9e3, 9e3, 400)) * 1.0
    places[::2] += 7e6
    zero = np.zeros(len(places))
    strokes = plant_strokes(places, np.roll(places, -1), places.copy(), zero, zero + 3.0)
    seen, began = np.full(len(places), -1), process_time()
    bounds, near = list_near(places, 3.1, strokes.start, strokes.end, strokes.centre,
                             strokes.sweep, strokes.stops, strokes.inside, strokes.far, seen,
                             0)  # fmt: skip
    assert process_time() - began < 2
    assert all(n in near[bounds[n] : bounds[n + 1]] for n in range(len(places)))
