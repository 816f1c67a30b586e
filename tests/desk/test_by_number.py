"""A number that is typed from a paper is a touch on its card, where no count is asked for."""

import pytest

from station.desk.by_number import read_number
from station.shop.codes import Code, Unread
from station.shop.facts import Cart, Order, Pack, Part, RackPlace
from station.shop.rooms import Number
from tests.fakes import FakeView
from tests.floor.shop_small import hand


@pytest.fixture
def view():
    return FakeView.of(
        Pack(id="00002", order="7001", mailer="1"),
        Order(id="7001", lines=(), due="2026-11-26T10:00:00"),
        Cart(id="1", name="Cart 1"),
        Part(id="014", name="HC-300", words="Comb"),
        RackPlace(id="22", name="C 14", part="014"),
    )


@pytest.mark.parametrize(
    ("area", "subject", "typed", "read"),
    [
        ("cart", "", "1", Code("cart", "1")),
        ("cart", "", "00002", Code("pack", "00002")),
        ("cart", "1", "00002", Code("pack", "00002")),
        ("cart", "1", "2", None),
        ("packing", "", "7001", Code("order", "7001")),
        ("packing", "", "00002", Code("pack", "00002")),
        ("packing", "7001", "014", Code("part", "014")),  # no count begins with 0
        ("trimming", "00007", "014", None),
        ("packing", "7001", "14", None),
        ("packing", "7001", "00002", None),  # with an order in hand it is a count
        ("popping", "", "00002", None),
    ],
)
def test_what_a_number_means(view, area, subject, typed, read):
    assert read_number(hand(area, subject=subject), Number(typed), view) == read


@pytest.mark.parametrize("area", ["packing", "trimming", "popping", "cart"])
@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("HC-300", Code("part", "014")),
        ("hc-300", Code("part", "014")),
        ("C 14", Code("rack", "22")),
        ("c14", Code("rack", "22")),
        ("Cart 1", Code("cart", "1")),
        ("HC-301", None),
        (" ", None),
    ],
)
def test_a_name_is_taken_where_its_card_is(view, area, typed, read):
    assert read_number(hand(area, subject="7001"), Unread("foreign", typed), view) == read


def test_a_name_is_text_where_text_is_typed(view):
    assert read_number(hand("office"), Unread("foreign", "HC-300"), view) is None


def test_a_rack_place_is_typed_at_packing_as_it_is_scanned(stage):
    for line in ("@worker 05", "@area packing", "order 3309"):
        stage.send(line)
    wanted = next(r for r in stage.ledger.facts(RackPlace) if r.part == "051")
    assert stage.desk.take(wanted.name).answer == stage.send("part 051").answer
