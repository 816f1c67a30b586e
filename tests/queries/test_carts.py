"""Carts: when one goes, which is next, what waits and what has left, in a wide shop too."""

import pytest

from station.queries.carts import (
    count_left,
    count_waiting_packs,
    find_next_cart,
    is_loaded,
    list_packs_on,
    say_when,
)
from station.shop.facts import Cart, Pack
from tests.fakes import FakeView

DAY = "2026-11-25"
NOW = f"{DAY}T11:52:00"


def cart(id="1", goes="11:30", left=""):
    return Cart(id=id, name=f"Cart {id}", goes=goes, left=left)


@pytest.mark.parametrize(
    ("goes", "left", "loaded", "words"),
    [
        ("15:30", "", True, "goes 15:30"),
        ("11:30", "", True, "late: 11:30"),
        ("11:30", "", False, "usually 11:30"),
        ("11:30", f"{DAY}T11:34:00", True, "last left 11:34"),
        ("11:30", "2026-11-24T11:34:00", True, "late: 11:30"),
        ("", "", True, ""),
    ],
)
def test_when_a_cart_goes(goes, left, loaded, words):
    assert str(say_when(cart(goes=goes, left=left), NOW, loaded=loaded)) == words


def test_the_next_cart_is_the_overdue_one_while_packs_wait():
    early, late, gone = cart(), cart("2", "15:30"), cart("3", "11:00", f"{DAY}T11:02:00")
    view = FakeView.of(early, late, gone)
    assert find_next_cart(view, NOW) == late  # nothing waits for the one of 11:30
    view.facts["pack/1"] = Pack(id="1", order="1", mailer="")
    assert find_next_cart(view, NOW) == early
    assert is_loaded(view, early)
    assert find_next_cart(FakeView.of(gone), NOW) is None


def test_two_thousand_packs_are_all_counted():
    packs = [
        Pack(id=f"{n:05d}", order="1", mailer="", state=state, cart=on, left=left)
        for n, (state, on, left) in enumerate(
            [("shipped", "", f"{DAY}T11:00:00")] * 2000
            + [("shipped", "", "2026-11-24T11:00:00")] * 700
            + [("shipped", "", "")] * 600  # by a program that did not keep when they left
            + [("packed", "", "")] * 800
            + [("cart", "1", "")] * 900
        )
    ]
    view = FakeView.of(*packs, cart())
    assert count_left(view, DAY) == 2000
    assert count_waiting_packs(view) == 800
    assert len(list_packs_on(view, cart())) == 900
