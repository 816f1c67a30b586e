"""Lengths in a shop's own units: an inch is 25.4 mm, a foot 0.3048 m (exact, by definition)."""

import pytest

from station.shop import lengths
from station.shop.facts import Bit, Material, Router
from station.shop.field_texts import read_value, write_value
from station.shop.fields import find_field
from station.shop.words import MM, area, figure, length, length_in_full, metres, say, together


@pytest.mark.parametrize(
    ("mm", "decimals", "fraction"),
    [
        (6.35, "0.25", "1/4"),
        (9.525, "0.375", "3/8"),
        (2438.4, "96", "96"),
        (161.925, "6.375", "6 3/8"),
        (6.5, "0.256", "0.256"),  # no 64th: as decimals, not as one that is near
        (0.0, "0", "0"),
        (0.396875, "0.016", "1/64"),
    ],
)
def test_a_length_is_written_in_inches(mm, decimals, fraction):
    lengths.use_units("inch", fractions=False)
    assert str(length_in_full(mm)) == f"{decimals} in"
    lengths.use_units("inch", fractions=True)
    assert str(length_in_full(mm)) == f"{fraction} in"
    lengths.use_units("mm", fractions=True)
    assert str(length_in_full(mm)) == f"{mm:g} mm"


@pytest.mark.parametrize(
    ("typed", "mm"),
    [
        ("0.25", 6.35), ("1/4", 6.35), ("6 3/8", 161.925), ("6-3/8", 161.925), ("96", 2438.4),
        (",5", 12.7), ("1/0", None), ("wide", None), ("1/4 in", None),
    ],
)  # fmt: skip
def test_what_a_person_types_is_kept_in_mm(typed, mm):
    lengths.use_units("inch", fractions=False)
    assert lengths.read(typed) == mm


@pytest.mark.parametrize("fractions", [False, True])
@pytest.mark.parametrize("typed", ["0.248", "0.31", "0.2485", "96", "0.245"])
def test_a_number_that_was_typed_stands_there_as_it_was_typed(typed, fractions):
    lengths.use_units("inch", fractions=fractions)
    kept = lengths.read(typed)
    assert kept is not None
    assert lengths.write_as_typed(kept) == typed
    lengths.use_units("mm", fractions=fractions)
    assert lengths.write_as_typed(float(typed)) == typed


def test_a_fraction_that_was_typed_stands_there_as_a_fraction():
    lengths.use_units("inch", fractions=True)
    assert [lengths.write_as_typed(mm) for mm in (6.35, 161.925)] == ["1/4", "6 3/8"]
    assert lengths.write_as_typed(6.3) == "0.24803"  # near a 64th is no 64th


def test_a_shop_of_mm_reads_no_fractions():
    assert lengths.read("6.5") == 6.5
    assert lengths.read("1/4") is None


def test_a_sentence_names_the_unit_of_what_is_a_length_alone():
    two = together([length(6.35), length(9.525)])
    words = say("{sizes} mm, {b} mm, {cut} m, {more} mm²: enter {unit}", sizes=two, b="7",
                cut=metres(304.8), more=area(6451.6), unit=MM)  # fmt: skip
    assert str(words) == "6.35 and 9.525 mm, 7 mm, 305 m, 6451.6 mm²: enter mm"
    lengths.use_units("inch", fractions=False)
    assert str(words) == "0.25 and 0.375 in, 7 mm, 1\u202f000 ft, 10 in²: enter inches"


@pytest.mark.parametrize(
    ("field", "kept", "label", "column"),
    [
        (find_field(Material, "low_mm"), 6.5, "low, in", "low_in"),
        (find_field(Material, "length_mm"), 2440.0, "length, in", "length_in"),
        (find_field(Bit, "life_m"), 1500.0, "life, ft", "life_ft"),
        (find_field(Router, "rapid_mm_min"), 20000.0, "rapid, in/min", "rapid_in_min"),
        (find_field(Router, "accel_mm_s2"), 800.0, "accel, in/s²", "accel_in_s2"),
    ],
)
def test_a_field_says_its_unit_and_gives_back_what_was_kept(field, kept, label, column):
    lengths.use_units("inch", fractions=False)
    assert (str(field.label), field.name_column()) == (label, column)
    assert read_value(field, write_value(field, kept)) == kept
    lengths.use_units("mm", fractions=False)
    assert field.name_column() == field.name
    assert read_value(field, write_value(field, kept)) == kept


@pytest.fixture
def german():
    lengths.use_decimals("de")
    yield
    lengths.use_decimals("")


@pytest.mark.parametrize(
    ("words", "german_text"),
    [
        (length_in_full(6.5), "6,5 mm"),
        (length_in_full(18.0), "18 mm"),
        (say("{a} mm²", a=area(6451.6)), "6451,6 mm²"),
        (say("{cut} m", cut=metres(9300)), "9\u202f300 m"),
        (say("{cut} m", cut=metres(9300.25, 2)), "9\u202f300,25 m"),
        (say("about {kg} kg", kg=figure(13.46, 1)), "about 13,5 kg"),
        (figure("6.4"), "6,4"),  # typed so far, by digit cards
        (say("{file}", file="HC300.nc"), "HC300.nc"),  # the shop's own words stay its own
        (say("{id}", id="001.A"), "001.A"),
    ],
)
def test_german_has_a_comma_before_decimals(german, words, german_text):
    assert str(words) == german_text


def test_an_inch_has_its_comma_too_and_its_fractions(german):
    lengths.use_units("inch", fractions=False)
    assert str(length_in_full(9.525)) == "0,375 in"
    lengths.use_units("inch", fractions=True)
    assert str(length_in_full(9.525)) == "3/8 in"


@pytest.mark.parametrize("typed", ["6.5", "6,5"])
def test_a_field_takes_a_point_and_a_comma_in_any_language(german, typed):
    assert read_value(find_field(Material, "low_mm"), typed) == 6.5
    lengths.use_decimals("")
    assert read_value(find_field(Material, "low_mm"), typed) == 6.5


def test_a_file_has_a_point_in_any_language(german):
    assert write_value(find_field(Material, "low_mm"), 6.5) == "6.5"
