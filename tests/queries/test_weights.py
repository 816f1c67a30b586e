"""What a pack weighs: by the book, worked out from a density, or not to be told."""

import math
from dataclasses import replace

import pytest

from station.queries.weights import find_mass, weigh_parts
from station.shop.facts import Mailer, Material, Part, Shape
from tests.fakes import FakeView


def rectangle(x, y, *holes):
    """An outline with its lower left at 0, 0."""
    return Shape(outline=((0.0, 0.0), (x, 0.0), (x, y), (0.0, y)), holes=holes)


BOARD = Material(id="1", name="board", thickness_mm=6.35, low_mm=6, high_mm=6.9, density_kg_m3=750)
OTHER = replace(BOARD, id="2", name="other", thickness_mm=9.0)
PLATE = Part(id="1", name="P", words="P", thickness_mm=6.35, shape=rectangle(200.0, 150.0))
VIEW = FakeView.of(BOARD, OTHER)


# Computed (checks, section 8): 200 × 150 × 6.35 mm at 750 kg/m³ is 142.875 g.
def test_a_mass_is_worked_out_from_area_thickness_and_density():
    mass = find_mass(VIEW, PLATE)
    assert mass.grams == pytest.approx(142.875)
    assert (mass.share, mass.density) == (0.15, BOARD)
    hole = ((10.0, 10.0), (110.0, 10.0), (110.0, 40.0), (10.0, 40.0))
    less = find_mass(VIEW, replace(PLATE, shape=rectangle(200.0, 150.0, hole)))
    assert less.grams == pytest.approx(142.875 * 0.9)


def test_the_book_comes_first_and_some_cannot_be_told():
    assert find_mass(VIEW, replace(PLATE, mass_g=140.0)).grams == 140.0
    assert find_mass(VIEW, replace(PLATE, shape=None)) is None
    assert find_mass(VIEW, replace(PLATE, thickness_mm=12.0)) is None
    assert find_mass(FakeView.of(), PLATE) is None


def test_both_uncertainties_add_up_and_it_is_said_which_is_assumed():
    """4 % of the lot on all of it, 4 % of what was weighed once, 15 % of what is worked out."""
    known = replace(PLATE, id="2", name="K", mass_g=100.0)
    mailer = Mailer(id="1", name="1", length_mm=300, width_mm=200, mass_g=30.0)
    weight = weigh_parts(VIEW, [(known, 2), (PLATE, 4)], mailer)
    assert weight.grams == pytest.approx(200 + 4 * 142.875 + 30)
    lot, one, other = 0.04 * (200 + 4 * 142.875), 0.04 * 200, 0.15 * 4 * 142.875
    assert weight.plus == pytest.approx(2.576 * math.hypot(lot, one, other), rel=0.002)
    assert (weight.assumed, weight.unknown, weight.light) == ((("P", "board"),), "", "K")
    assert weigh_parts(VIEW, [(known, 1), (replace(PLATE, shape=None), 1)], None).unknown == "P"
    assert weigh_parts(VIEW, [(replace(known, mass_g=20.0), 1)], None).plus == 5.0
