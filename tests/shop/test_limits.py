"""What a field may hold is said at the field, and every fact is held against it."""

from dataclasses import replace

import pytest

from station.shop.facts import Batch, Bed, Concern, FirstOff, Line, Notice, Order, Part, Shape
from station.shop.limits import find_unfit, is_written
from station.shop.moves import move
from station.shop.words import say
from tests.replay import small_shop

AT = "2026-11-25T10:42:07"
BATCH = Batch(id="00412", cut_file="001", revision="A", sheets=2, due=AT)
BED = Bed(id="1", state="cutting", started=AT, sheet=1)
ORDER = Order(id="3306", due=AT, lines=(Line(product="031", quantity=1),))
LOOK = Concern(id="a1", what="short", text=say("{n} short", n=3), since=AT)
FIRST = FirstOff(file="001.A", bits=("12",), zero_since=AT, batch="00412", sheet=1)
PART = Part(id="014", name="HC-300", words="Heddle comb 300")


@pytest.mark.parametrize(
    "fact", [BATCH, BED, ORDER, LOOK, PART, *small_shop()], ids=lambda f: f.key
)
def test_what_a_shop_holds_can_be(fact):
    assert not find_unfit(fact)


# ruff: noqa: E501 - a line of this table is a case
@pytest.mark.parametrize(
    ("fact", "said"),
    [
        (replace(BED, started="yesterday"), "started of bed 1 cannot be yesterday"),
        (replace(BED, started="2026-11-25T10+00:00"), "started of bed 1 cannot be 2026-11-25T10+00:00"),
        (replace(BED, minutes=1e8), "minutes of bed 1 cannot be 100000000.0"),
        (replace(BED, day="25.11."), "day of bed 1 cannot be 25.11."),
        (replace(BED, firsts=(replace(FIRST, zero_since="x"),)), "firsts of bed 1 cannot be that"),
        (replace(BATCH, sheets=10**9), "sheets of batch 00412 cannot be 1000000000"),
        (replace(BATCH, copy="\u202e"), "copy of batch 00412 cannot be \u202e"),
        (replace(BATCH, cut=-1), "cut of batch 00412 cannot be -1"),
        (replace(BATCH, due="9999-12-31T23:59:59"), "due of batch 00412 cannot be 9999-12-31T23:59:59"),
        (replace(BATCH, holds=("x" * 15_000_000,)), "holds of batch 00412 cannot be that"),
        (replace(ORDER, due="soon"), "due of order 3306 cannot be soon"),
        (replace(ORDER, lines=(Line(product="031", quantity=0),)), "lines of order 3306 cannot be that"),
        (replace(ORDER, lines=(Line(product="031", quantity=1, short=-999_999_999),)), "lines of order 3306 cannot be that"),
        (replace(LOOK, text="x" * 15_000_000), "text of concern a1 cannot be " + "x" * 40),
        (replace(LOOK, meant=(move("014", 10**10, "cut", "store", ""),)), "meant of concern a1 cannot be that"),
        (replace(PART, thickness_mm=0.0), "thickness, mm of part 014 cannot be 0.0"),
        (replace(PART, shape=Shape(outline=((0.0, 1e300),))), "shape of part 014 cannot be that"),
        (Notice(id="1", router="1", text="y", at="now"), "at of notice 1 cannot be now"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_said_with_its_field(fact, said):
    assert str(find_unfit(fact)) == said


def test_a_state_that_only_a_newer_program_knows_can_be():
    assert not find_unfit(replace(BED, state="paused"))


@pytest.mark.parametrize(
    ("written", "text", "can_be"),
    [
        ("time", AT, True), ("time", AT[:10], False), ("time", "0001-01-01T00:00:00", False),
        ("day", AT, True), ("day", AT[:10], True), ("day", "2026-02-30", False),
        ("clock", "23:59", True), ("clock", "24:00", False), ("", "anything", True),
    ],
)  # fmt: skip
def test_a_text_is_written_as_its_field_asks(written, text, can_be):
    assert is_written(written, text) == can_be
