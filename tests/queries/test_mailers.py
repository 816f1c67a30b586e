"""Which mailer takes a stack, the wrap around it, what it weighs."""

from dataclasses import replace

import pytest

from station.queries.mailers import closes_over, plan_open_pack, plan_parcel
from station.shop.facts import Mailer, Part, Postage, Shape
from station.shop.moves import move
from tests.fakes import FakeView
from tests.floor.shop_small import COMB, SHUTTLE, small_shop

SPARE_MM = 10.0  # as a shop begins
SHOP = FakeView.of()


def part(x, y, thick=6.0, **fields):
    """A rectangle, mm."""
    shape = Shape(outline=((0.0, 0.0), (x, 0.0), (x, y), (0.0, y)))
    return Part(id="1", name="A", words="A", thickness_mm=thick, shape=shape, **fields)


# Common practice, no source (checks, section 8): an item of 9 × 12 × ¾ in needs a mailer of
# 9¾ × 12¾ in lying flat, before any allowance.
def test_the_flat_mailer_of_the_guides():
    inch = 25.4
    item = [(part(12 * inch, 9 * inch, 0.75 * inch), 1)]
    length, width = plan_parcel(small_shop(), item).stack.find_inside("mailer")
    assert (length - SPARE_MM) / inch == pytest.approx(12.75)
    assert (width - SPARE_MM) / inch == pytest.approx(9.75)


def among(*mailers):
    """The small shop with these mailers alone."""
    view = small_shop(*mailers)
    del view.facts["mailer/01"]
    return view


def test_the_smallest_mailer_that_takes_it():
    two = [(part(200.0, 40.0, mass_g=50), 2)]
    small, large = (
        Mailer(id=n, name=n, length_mm=x, width_mm=y)
        for n, x, y in (("1", 230.0, 70.0), ("2", 400.0, 300.0))
    )
    found = plan_parcel(among(large, small), two)
    assert (found.mailer, found.weight.grams) == (small, 130)
    assert plan_parcel(among(replace(small, length_mm=70.0, width_mm=230.0)), two).mailer
    assert not plan_parcel(among(replace(small, length_mm=50.0, width_mm=230.0)), two).mailer
    assert not plan_parcel(among(replace(small, thick_mm=5.0)), two).mailer
    assert not plan_parcel(among(replace(small, active=False)), two).mailer


# Common practice, no source (checks, section 8; a sleeve is open at its ends): a mailer needs the
# thickness in both directions, a sleeve across, a box in none.
@pytest.mark.parametrize(
    ("form", "long", "wide"),
    [("mailer", 222.0, 62.0), ("sleeve", 210.0, 62.0), ("box", 210.0, 50.0)],
)
def test_what_a_mailer_a_sleeve_and_a_box_need_inside(form, long, wide):
    item = [(part(200.0, 40.0, 12.0, mass_g=50), 1)]
    fits = Mailer(id="1", name="1", length_mm=long, width_mm=wide, thick_mm=12.0, form=form)
    found = plan_parcel(among(fits), item)
    assert (found.mailer, found.stack.find_inside(form)) == (fits, (long, wide))
    assert not plan_parcel(among(replace(fits, length_mm=long - 0.1)), item).mailer
    assert not plan_parcel(among(replace(fits, width_mm=wide - 0.1)), item).mailer
    assert not plan_parcel(among(replace(fits, thick_mm=11.9)), item).mailer


def test_the_cheapest_of_mailer_sleeve_and_box_is_taken_with_its_postage():
    item = [(part(200.0, 40.0, 12.0, mass_g=50), 1)]
    mailer, sleeve, box = (
        Mailer(id=str(n), name=form, length_mm=230.0, width_mm=70.0, form=form, price=price)
        for n, (form, price) in enumerate((("mailer", 0.5), ("sleeve", 0.3), ("box", 0.2)), 1)
    )
    assert plan_parcel(among(mailer, sleeve, box), item).mailer == box
    # a thin parcel goes for less, and a box is always as thick as it is
    thin = Postage(id="1", name="thin", to_g=500.0, price=1.0, thick_mm=20.0)
    any_ = Postage(id="2", name="any", to_g=500.0, price=2.0)
    view = among(mailer, sleeve, box)
    view.facts |= {f.key: f for f in (thin, any_)}
    found = plan_parcel(view, item)
    assert (found.mailer, found.sent.name) == (sleeve, "thin")
    assert found.price == pytest.approx(1.3)


def test_a_mailer_closes_over_what_is_not_too_thick():
    mailer = Mailer(id="1", name="1", length_mm=230.0, width_mm=70.0, thick_mm=12.0)
    assert closes_over(SHOP, mailer, 200.0, 40.0, 12.0)
    assert not closes_over(SHOP, mailer, 200.0, 40.0, 12.1)
    assert not closes_over(SHOP, mailer, 209.0, 40.0, 12.0)
    assert not closes_over(SHOP, replace(mailer, active=False), 200.0, 40.0, 12.0)


# Common practice, no source: one turn around the length, the ends overlapping 50 mm.
@pytest.mark.parametrize(("box", "thick", "metres"), [((300, 120), 20, 0.7), ((200, 40), 6, 0.5)])
def test_the_wrap_goes_round_once(box, thick, metres):
    assert plan_parcel(small_shop(), [(part(*box, thick), 1)]).stack.wrap_m == metres


def test_a_part_without_an_outline_is_only_guessed():
    bare = replace(part(200.0, 40.0), name="B", shape=None)
    assert plan_parcel(small_shop(), [(bare, 1)]).stack.guessed == "B"
    assert plan_parcel(small_shop(), [(part(200.0, 40.0), 1)]).stack.guessed == ""


def test_a_parcel_of_what_lies_in_the_open_pack():
    view = small_shop(moves=(move(COMB, 2, "found", "packing/3306", "00100"),))
    found = plan_open_pack(view, "3306")
    comb, shuttle = view.get(Part, COMB), view.get(Part, SHUTTLE)
    assert found == plan_parcel(view, [(comb, 2), (shuttle, 0)])
    assert (found.mailer.id, found.weight.grams, found.weight.light) == ("01", 150.0, "HC-300")
    assert plan_open_pack(view, "3307").weight.grams == plan_parcel(view, []).weight.grams
