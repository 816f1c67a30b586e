"""What is known of the fields of facts: it stands at them, and every form and file reads it."""

from dataclasses import dataclass, fields
from typing import Annotated, ClassVar

import pytest

from station.floor.office.lists import LISTS
from station.shop.facts import Bit, Fact, Material, Order, Part, Product, Reason
from station.shop.facts.about import About
from station.shop.fields import fields_by_name, find_field, say_name, typed_fields
from station.shop.words import say

# filled in by the work alone, or larger than a form: no label, on no screen of the office
ON_NO_FORM = {
    "part.shape", "revision.shapes", "revision.placed", "revision.bits", "revision.digest",
    "revision.clear", "revision.read_as", "worker.pin", "shop.first", "order.packs",
}  # fmt: skip


@pytest.mark.parametrize(
    ("field", "words"),
    [("low_mm", "low, mm"), ("name", "name"), ("density_kg_m3", "density, kg/m³")],
)
def test_a_field_has_a_name_in_words(field, words):
    assert str(find_field(Material, field).label) == words


def test_of_every_field_on_the_offices_lists_something_is_known():
    unknown = {
        f"{entry.kind.kind}.{each.name}"
        for entry in LISTS
        for each in fields(entry.kind)
        if each.name not in fields_by_name(entry.kind)
    }
    assert unknown == ON_NO_FORM


def test_what_stands_at_a_field_is_read_from_it():
    router = find_field(Bit, "router")
    assert (router.points.kind, router.about.may_be_empty) == ("router", True)
    assert find_field(Reason, "use").choices[:2] == ("spoiled", "sheet")
    assert find_field(Part, "thickness_mm").about.above == 0
    assert find_field(Order, "due").about.written == "time"
    assert "state" not in [field.name for field in typed_fields(Order)]
    assert find_field(Part, "shape") is None


@dataclass(frozen=True, kw_only=True)
class Ladle(Fact):
    kind: ClassVar[str] = "ladle"
    holds_g: Annotated[float, About(say("holds"), unit="g", above=0)]
    spare: Annotated[bool, About(say("spare"))] = True
    hung_up: str = ""


def test_the_columns_of_a_list_stand_in_what_it_holds():
    part, quantity = find_field(Product, "parts").columns
    assert (part.points, quantity.counts, quantity.start) == (Part, True, 1)
    lines = find_field(Order, "lines")
    assert [(c.name, c.start, c.about.typed) for c in lines.columns] == [
        ("product", "", True), ("quantity", 1, True), ("short", 0, False),
    ]  # fmt: skip


def test_a_new_kind_of_fact_needs_no_table_of_its_own():
    assert [(f.name, f.of, f.start) for f in typed_fields(Ladle)] == [
        ("id", str, ""), ("holds_g", float, ""), ("spare", bool, True),
    ]  # fmt: skip
    assert [str(say_name(Ladle, name)) for name in ("holds_g", "hung_up")] == [
        "holds, g",
        "hung up",
    ]
