"""What a field holds, as text and back."""

import pytest

from station.shop import lengths
from station.shop.facts import Material, Order, Part, Product, Router, Shop, Worker
from station.shop.field_texts import read_time, read_value, write_value
from station.shop.fields import find_field


@pytest.mark.parametrize(
    ("kind", "field", "text", "value"),
    [
        (Part, "mark", "12", 12),
        (Part, "mark", "x", "x"),
        (Material, "low_mm", "6,1", 6.1),
        (Worker, "active", "no", False),
        (Worker, "active", "perhaps", "perhaps"),
        (Part, "name", "HC", "HC"),
        (Order, "due", "2026-11-26 14:00", "2026-11-26T14:00:00"),
        (Product, "parts", "014 x 2 x 3", "014 x 2 x 3"),
    ],
)
def test_a_text_becomes_its_fields_value(kind, field, text, value):
    assert read_value(find_field(kind, field), text) == value


@pytest.mark.parametrize(
    ("kind", "field", "value", "text"),
    [
        (Product, "parts", [["014", 2], ["021", 1]], "014 x 2; 021 x 1"),
        (Order, "lines", [{"product": "031", "quantity": 2, "short": 0}], "031 x 2"),
        (Order, "lines", [{"product": "031", "quantity": 2, "short": 1}], "031 x 2 x 1"),
        (Router, "hold_downs", [[120.0, 40.5]], "120 x 40.5"),
        (Shop, "day_checks", ["air pressure", "extraction on"], "air pressure; extraction on"),
    ],
)
def test_a_list_field_goes_into_one_cell_and_back(kind, field, value, text):
    found = find_field(kind, field)
    assert write_value(found, value) == text
    assert read_value(found, text) == value


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("2026-11-26 14:00", "2026-11-26T14:00:00"),
        ("2026-11-26", "2026-11-26T16:00:00"),
        ("26.11.2026 9:30", "2026-11-26T09:30:00"),
        ("26.11. 2030", "2026-11-26T20:30:00"),
        ("26.11.2025", "2025-11-26T16:00:00"),
        ("31.02.2026 9:30", "31.02.2026 9:30"),
        ("26.11. 9:30", "2026-11-26T09:30:00"),
        ("26.11.", "2026-11-26T16:00:00"),
        ("26/11", "2026-11-26T16:00:00"),
        ("26/11/26 9:30", "2026-11-26T09:30:00"),
        ("Nov 26", "2026-11-26T16:00:00"),
        ("November 26, 2026 9:30", "2026-11-26T09:30:00"),
        ("31/02/2026", "31/02/2026"),
        ("26110930", "2026-11-26T09:30:00"),
        ("0301", "2027-01-03T16:00:00"),
        ("31.02.", "31.02."),
        ("25:99", "25:99"),
        ("soon", "soon"),
    ],
)
def test_a_time_is_typed_as_people_write_it(text, at):
    assert read_time(text, "2026-11-25T10:00:00") == at


@pytest.mark.parametrize("text", ["11/26", "11/26/2026", "11/26/26 16:00"])
def test_in_a_shop_of_inches_the_month_stands_first(text):
    lengths.use_units("inch", fractions=False)
    try:
        assert read_time(text, "2026-11-25T10:00:00") == "2026-11-26T16:00:00"
    finally:
        lengths.use_units("mm", fractions=False)
