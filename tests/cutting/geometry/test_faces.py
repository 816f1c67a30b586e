"""What a bit takes along a line is right where the library that widens it is not."""

import numpy as np
import pytest
import shapely

from station.cutting.geometry import faces
from station.cutting.model import Setting
from station.cutting.report import analyse_program, read_program

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


def test_a_strip_at_the_edge_is_a_part_where_it_is_as_wide_as_the_others():
    """Five cuts right across from 97 mm on: five strips of 94 mm, and a rest of 100."""
    body = "".join(
        f"G0 X{x} Y-5\nG1 Z-6.2 F900\nG1 Y305 F3000\nG0 Z5\n" for x in range(97, 498, 100)
    )
    setting = Setting(thickness_mm=6, sheet=(600, 300), zero="face", origin="lower-left")
    text = f"G21 G90\nM3 S18000\nG4 P2\nG0 Z5\n{body}M30\n"
    got = analyse_program(read_program(text.encode(), setting), setting)
    (shape,) = got.shapes
    sizes = len(shape.pieces), shape.width_mm, shape.length_mm
    assert sizes == pytest.approx((5, 94.0, 300.0), abs=0.001)
