"""Weights in a shop of inches: an ounce is 28.349523125 g, a pound 0.45359237 kg (exact)."""

import pytest

from station.queries.weights import Weight
from station.shop import lengths, weights
from station.shop.facts import Mailer, Material, Part, Shop
from station.shop.field_texts import read_value, write_value
from station.shop.fields import find_field, list_starts
from station.shop.words import kilograms, mass, say


@pytest.fixture
def inches():
    lengths.use_units("inch", fractions=False)


def test_a_pound_is_sixteen_ounces():
    assert pytest.approx(weights.KG_PER_POUND * 1000, abs=1e-12) == weights.G_PER_OUNCE * 16


@pytest.mark.parametrize(
    ("grams", "metric", "inch"),
    [
        (184.0, "184 g", "6.5 oz"),
        (5.0, "5 g", "0.18 oz"),
        (0.0, "0 g", "0.0 oz"),
        (28.349523125, "28 g", "1.0 oz"),
        (1360.7, "1\u202f361 g", "48.0 oz"),  # three pounds are still ounces
        (1361.0, "1\u202f361 g", "3.00 lb"),
        (2500.0, "2\u202f500 g", "5.51 lb"),
    ],
)
def test_a_weight_is_written_in_the_shops_unit(grams, metric, inch):
    words = say("{g} g", g=mass(grams))
    assert str(words) == metric
    lengths.use_units("inch", fractions=False)
    assert str(words) == inch


@pytest.mark.usefixtures("inches")
def test_what_stands_beside_a_weight_is_written_in_its_unit():
    judged = Weight(1500.0, 40.0, "", "", 0.0)
    assert str(judged.words(1700.0)) == "3.75 lb on the scale, 3.31 ± 0.09 lb expected"
    light = Weight(390.0, 5.0, "", "", 0.0)
    assert str(light.words(341.0)) == "12.0 oz on the scale, 13.8 ± 0.18 oz expected"


@pytest.mark.usefixtures("inches")
def test_sheets_and_lifting_are_in_pounds():
    assert str(say("Sheet {kg} kg: two people", kg=kilograms(12.8))) == "Sheet 28.2 lb: two people"
    lengths.use_decimals("de")
    assert str(say("{kg} kg, {g} g", kg=kilograms(12.8), g=mass(184))) == "28,2 lb, 6,5 oz"


@pytest.mark.parametrize(
    ("field", "kept", "label", "column"),
    [
        (find_field(Part, "mass_g"), 12.5, "mass, oz", "mass_oz"),
        (find_field(Mailer, "mass_g"), 30.0, "mass, oz", "mass_oz"),
        (find_field(Shop, "two_people_kg"), 12.0, "two people, lb", "two_people_lb"),
        (find_field(Material, "density_kg_m3"), 680.0, "density, lb/ft³", "density_lb_ft3"),
        (find_field(Shop, "wrap_mark_m"), 30.48, "minimum of wrap, ft", "wrap_mark_ft"),
    ],
)  # fmt: skip
def test_a_field_says_its_unit_and_gives_back_what_was_kept(field, kept, label, column):
    assert field.name_column() == field.name
    lengths.use_units("inch", fractions=False)
    assert (str(field.label), field.name_column()) == (label, column)
    assert read_value(field, write_value(field, kept)) == kept
    assert read_value(field, "1") != 1.0  # in the shop's unit


@pytest.mark.parametrize(
    ("unit", "shown", "grams"),
    [("mm", 390.0, 390.0), ("inch", 13.8, 13.8 * 28.349523125), ("inch", 3.2, 3.2 * 453.59237)],
)
def test_a_number_from_the_scale_is_read_in_the_unit_that_the_screen_says(unit, shown, grams):
    lengths.use_units(unit, fractions=False)
    assert lengths.to_grams(shown, like=grams) == pytest.approx(grams, abs=1e-4)


def test_a_new_thing_is_round_in_the_shops_units():
    assert list_starts(Part) == {}
    assert find_field(Part, "thickness_mm").starts == 6.0
    lengths.use_units("inch", fractions=False)
    assert list_starts(Part) == {"thickness_mm": 6.35}
    shop = list_starts(Shop)
    texts = [write_value(find_field(Shop, name), value) for name, value in shop.items()]
    assert all(len(text) <= 5 for text in texts), texts
    assert write_value(find_field(Shop, "two_people_kg"), shop["two_people_kg"]) == "25"
