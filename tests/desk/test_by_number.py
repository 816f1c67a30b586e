"""A number that is typed from a paper is a touch on its card, where no count is asked for."""

import pytest

from station.desk.by_number import read_number
from station.shop.codes import Code
from station.shop.facts import Cart, Order, Pack
from station.shop.rooms import Number
from tests.fakes import FakeView
from tests.floor.shop_small import hand


@pytest.fixture
def view():
    return FakeView.of(
        Pack(id="00002", order="7001", mailer="1"),
        Order(id="7001", lines=(), due="2026-11-26T10:00:00"),
        Cart(id="1", name="Cart 1"),
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
        ("packing", "7001", "00002", None),  # with an order in hand it is a count
        ("popping", "", "00002", None),
    ],
)
def test_what_a_number_means(view, area, subject, typed, read):
    assert read_number(hand(area, subject=subject), Number(typed), view) == read
