"""Edges of pieces are as exact as the strokes that bound them."""

import math

import pytest

from station.cutting.geometry.rings import perimeter_of
from station.cutting.model import Analysis, Setting
from station.cutting.report import analyse_program, read_program

HEAD = "G21 G90 G17\nM3 S18000\nG4 P2\nG0 Z10\n"


def read(body: str, bit: float = 6.0) -> Analysis:
    setting = Setting(thickness_mm=6.0, sheet=(600.0, 400.0), bit_mm={-1: bit}, zero="face")
    return analyse_program(read_program((HEAD + body + "M30\n").encode(), setting), setting)


def only(got: Analysis) -> tuple[float, float, float, float]:
    (shape,) = got.shapes
    return shape.width_mm, shape.length_mm, shape.area_mm2, shape.perimeter_mm


@pytest.mark.parametrize(("radius", "bit"), [(8.0, 3.0), (40.0, 6.0), (150.0, 12.0)])
def test_a_disc_is_as_wide_as_its_circle_less_the_bit(radius, bit):
    around = radius + bit / 2
    body = f"G0 X{200 + around} Y200\nG1 Z-6.2 F900\nG3 I-{around} F3000\nG0 Z10\n"
    width, length, area, perimeter = only(read(body, bit))
    assert (width, length) == pytest.approx((2 * radius, 2 * radius), abs=0.0025)
    assert area == pytest.approx(math.pi * radius**2, abs=0.0015 * 2 * math.pi * radius)
    assert perimeter == pytest.approx(2 * math.pi * radius, abs=0.01)


def leaf(half: float, high: float, bit: float) -> str:
    """Two arcs that meet in points, the bit rolling around each point."""
    arc = (half**2 + high**2) / (2 * high)
    up, grown = arc - high, (arc + bit / 2) / arc
    x, y = half * grown, up * (grown - 1)
    left, right, low, top = 200 - x, 200 + x, 200 - y, 200 + y
    return (
        f"G0 X{right:.6f} Y{low:.6f}\nG1 Z-6.2 F900\nF3000\n"
        f"G3 X{right:.6f} Y{top:.6f} I{half - x:.6f} J{y:.6f}\n"
        f"G3 X{left:.6f} Y{top:.6f} I{-x:.6f} J{-up - y:.6f}\n"
        f"G3 X{left:.6f} Y{low:.6f} I{x - half:.6f} J{-y:.6f}\n"
        f"G3 X{right:.6f} Y{low:.6f} I{x:.6f} J{up + y:.6f}\nG0 Z10\n"
    )


@pytest.mark.parametrize(("half", "high"), [(75.0, 15.0), (110.0, 16.0)])
def test_a_slim_leaf_keeps_its_points(half, high):
    width, length, *_ = only(read(leaf(half, high, 6.0)))
    assert (width, length) == pytest.approx((2 * high, 2 * half), abs=0.01)


def test_a_hole_of_twice_the_bit_has_no_slit_to_its_middle():
    """Its bit goes around with its edge at the middle, which the library may leave a slit to."""
    hole = (
        "G91\nG2 X1.299 Y-2.25 R1.5 F900\nG2 X-2.598 Y0 R1.5\nG2 X1.299 Y2.25 R1.5\nG90\nG0 Z5\n"
    )
    plate = "G0 X33.75 Y60\nG1 Z-6.2 F900\nX93.75 F3000\nY125\nX33.75\nY60\nG0 Z5\n"
    got = read(f"G0 X63.75 Y92.25\nG1 Z-6.2 F300\n{hole}{plate}", 3.0)
    assert [perimeter_of(h) for h in got.pieces[0].holes] == pytest.approx([6 * math.pi], abs=0.01)
