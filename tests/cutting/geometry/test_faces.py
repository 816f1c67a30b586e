"""What a bit takes along a line is right where the library that widens it is not."""

import numpy as np
import shapely

from station.cutting.geometry import faces

RING = shapely.linestrings([(0, 0), (60, 0), (90, 40), (60, 80), (0, 80), (-30, 40), (0, 1)])


def test_a_line_whose_inside_was_filled_is_widened_in_halves(monkeypatch):
    plain = shapely.buffer

    def fill(lines, radius, **more):
        made = np.asarray(plain(lines, radius, **more))
        long = shapely.get_num_coordinates(lines) > 6
        return np.where(long, shapely.polygons(shapely.get_exterior_ring(made)), made)

    right = faces.widen_shapes(np.array([RING]), np.array([2.0]))[0]
    assert len(right.interiors) == 1
    monkeypatch.setattr(shapely, "buffer", fill)
    (made,) = faces.widen_shapes(np.array([RING]), np.array([2.0]))
    assert made.symmetric_difference(right).area < 0.01
