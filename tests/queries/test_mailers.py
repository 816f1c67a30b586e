"""Which mailer takes a stack, the wrap around it, what it weighs."""

from dataclasses import replace

import pytest

from station.queries.mailers import (
    ALLOWANCE_MM,
    find_smallest,
    plan_open_pack,
    plan_parcel,
    stack_parts,
    weigh_parts,
)
from station.shop.facts import Mailer, Part, Shape
from station.shop.moves import move
from tests.floor.shop_small import COMB, SHUTTLE, small_shop


def part(x, y, thick=6.0, **fields):
    """A rectangle, mm."""
    shape = Shape(outline=((0.0, 0.0), (x, 0.0), (x, y), (0.0, y)))
    return Part(id="1", name="A", words="A", thickness_mm=thick, shape=shape, **fields)


# Common practice, no source (checks, section 8): an item of 9 × 12 × ¾ in needs a mailer of
# 9¾ × 12¾ in lying flat, before any allowance.
def test_the_flat_mailer_of_the_guides():
    inch = 25.4
    length, width = stack_parts([(part(12 * inch, 9 * inch, 0.75 * inch), 1)]).flat_mm
    assert (length - ALLOWANCE_MM) / inch == pytest.approx(12.75)
    assert (width - ALLOWANCE_MM) / inch == pytest.approx(9.75)


def test_the_smallest_mailer_that_takes_it():
    two = [(part(200.0, 40.0, mass_g=50), 2)]
    made = stack_parts(two)
    small, large = (
        Mailer(id=n, name=n, length_mm=x, width_mm=y)
        for n, x, y in (("1", 230.0, 70.0), ("2", 400.0, 300.0))
    )
    assert find_smallest(made, (large, small)) == small
    assert find_smallest(made, (replace(small, length_mm=70.0, width_mm=230.0),)) is not None
    assert find_smallest(made, (replace(small, length_mm=50.0, width_mm=230.0),)) is None
    assert find_smallest(made, (replace(small, thick_mm=5.0),)) is None
    assert find_smallest(made, (replace(small, active=False),)) is None
    assert weigh_parts(two, small).grams == 130


# Common practice, no source: one turn around the length, the ends overlapping 50 mm.
@pytest.mark.parametrize(("box", "thick", "metres"), [((300, 120), 20, 0.7), ((200, 40), 6, 0.5)])
def test_the_wrap_goes_round_once(box, thick, metres):
    assert stack_parts([(part(*box, thick), 1)]).wrap_m == metres


def test_small_parts_lie_beside_each_other_above_the_large_one():
    made = stack_parts([(part(90.0, 20.0), 7), (part(200.0, 45.0), 1)])
    assert [(x.length_mm, x.pieces, x.across, x.beside) for x in made.levels] == [
        (200.0, 1, 1, 1),
        (90.0, 7, 2, 4),
    ]
    assert (made.length_mm, made.width_mm, made.thick_mm) == (200.0, 45.0, 18.0)


def test_a_part_without_an_outline_is_only_guessed():
    bare = replace(part(200.0, 40.0), name="B", shape=None)
    assert stack_parts([(bare, 1)]).guessed == "B"
    assert stack_parts([(part(200.0, 40.0), 1)]).guessed == ""


def test_a_parcel_of_what_lies_in_the_open_pack():
    view = small_shop(moves=(move(COMB, 2, "found", "packing/3306", "00100"),))
    found = plan_open_pack(view, "3306")
    comb, shuttle = view.get(Part, COMB), view.get(Part, SHUTTLE)
    assert found == plan_parcel(view, [(comb, 2), (shuttle, 0)])
    assert (found.mailer.id, found.weight.grams, found.weight.light) == ("01", 150.0, "HC-300")
    assert plan_open_pack(view, "3307").weight.grams == plan_parcel(view, []).weight.grams
