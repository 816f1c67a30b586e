"""The cart: packs on and off, the door, what never leaves."""

from dataclasses import replace

import pytest

from station.floor.cart import dialogue, screen
from station.floor.cart.rules import RULES
from station.floor.packing.waiting import list_carts
from station.shop.codes import Code
from station.shop.facts import Cart, Order, Pack
from station.shop.moves import move
from station.shop.views import total
from tests.floor.orders import order, press, shop
from tests.floor.shop_small import COMB, DAY, Player, hand
from tests.touch import NO_ROW

CART, OTHER = Code("cart", "1"), Code("cart", "2")
A, B, GONE = Code("pack", "00001"), Code("pack", "00002"), Code("pack", "00003")
DOOR = (CART, A, B, press("at_door"))


def pack(number, batch, **fields):
    plain = Pack(id=number, order=f"33{number[-2:]}", mailer="01", mass_g=200,
                 closed=f"{DAY}T09:00:00", contents=((COMB, 2),))  # fmt: skip
    return replace(plain, **fields), move(COMB, 2, "found", f"pack/{number}", batch)


@pytest.fixture
def view():
    """Two packs of good orders, one of an order that was cancelled."""
    packs = [pack("00001", "00101"), pack("00002", "00100"), pack("00003", "00100")]
    orders = [replace(order(state="packed"), id=f"330{n}") for n in (1, 2)]
    lost = replace(order(state="cancelled"), id="3303")
    return shop(*orders, lost, *(p for p, _ in packs), moves=tuple(m for _, m in packs))


@pytest.fixture
def loader(view):
    return Player(view, RULES, dialogue.handle_input, hand("cart"))


@pytest.mark.parametrize(
    ("inputs", "said", "do"),
    [
        ((press("at_door"),), "Which cart?", "Scan the cart's card first."),
        ((Code("cart", "9"),), "There is no cart 9", "Scan its card."),
        ((press("row_2"),), "Cart 2 in hand", "Scan packs onto it."),
        ((press(NO_ROW),), "There is nothing in that row", "Touch a row that is there."),
        ((CART, A), "Pack 00001 is on Cart 1", "Packs on it: 1. Next pack, or to the door."),
        ((CART, A, A), "Pack 00001 is on cart 1 already", "Next pack."),
        ((CART, A, OTHER, A), "Pack 00001 is on cart 1 already", "Next pack."),
        ((CART, GONE), "Order 3303 is cancelled", "Take pack 00003 back to packing."),
        ((CART, Code("pack", "00009")), "There is no such pack", "Scan the label again."),
        ((CART, press("at_door")), "Nothing is on that cart", "Scan packs onto it first."),
        ((CART, press("leave")), "Nothing is on that cart", "Scan packs onto it first."),
        ((CART, press("cart_list")), "Nothing is on that cart", "Scan packs onto it first."),
        ((CART, A, press("cart_list")), "The list of Cart 1 is printed", "It goes with it."),
        ((CART, A, press("leave")), "Cart 1 is not at the door yet",
         "Push it to the door and scan “At the door”."),
        ((CART, press("not_yet")), "That cart is not at the door", "Go on loading it."),
        ((CART, press("off_cart"), A), "That pack is on no cart", "Scan the label again."),
        ((CART, A, press("off_cart"), A), "Pack 00001 is off the cart", "Put it with the packs."),
        ((CART, A, press("off_cart"), press("row_1")), "Pack 00001 is off the cart",
         "Put it with the packs."),
        ((CART, A, press("off_cart"), press("put_down")), "Left; nothing was changed",
         "Go on with your work."),
        ((CART, A, press("off_cart"), press("on_cart"), B), "Pack 00002 is on Cart 1",
         "Packs on it: 2. Next pack, or to the door."),
        (DOOR, "Cart 1 is at the door", "Scan every pack on it: 2."),
        ((*DOOR, A), "Pack 00001 seen at the door", "1 to go."),
        ((*DOOR, A, A), "Pack 00001 was seen already", "Next pack."),
        ((*DOOR, press("row_1"), press("row_1")), "Pack 00001 seen at the door",
         "All seen. The cart can leave."),
        ((*DOOR, A, press("leave")), "Not scanned at the door: 1", "Scan pack 00002 next."),
        ((*DOOR, A, B, press("leave")), "Cart 1 left, packs on it: 2", "It is empty now."),
        ((*DOOR, A, B, press("not_yet"), press("at_door"), press("leave")),
         "Not scanned at the door: 2", "Scan pack 00001 next."),
        ((CART, A, press("at_door"), A, B), "That pack is not on this cart's list",
         "Scan “Onto the cart”, then the pack; or leave it here."),
        ((CART, A, press("at_door"), press("on_cart"), B), "Pack 00002 is on Cart 1", "1 to go."),
        ((CART, A, press("at_door"), press("on_cart"), B, A), "Pack 00001 seen at the door",
         "All seen. The cart can leave."),
        ((*DOOR, A, B, press("leave"), A), "Pack 00001 has left already", "Look at its label."),
        ((*DOOR, A, B, press("leave"), press("cart_list")), "The list of Cart 1 is printed",
         "It goes with it."),
    ],
)  # fmt: skip
def test_what_the_cart_answers(loader, inputs, said, do):
    answer = loader.give(*inputs)
    assert (str(answer.said), str(answer.do)) == (said, do)


def test_a_pack_that_was_opened_does_not_go_on(view, loader):
    view.facts["pack/00001"] = replace(view.get(Pack, "00001"), state="opened")
    assert str(loader.give(CART, A).said) == "The label of pack 00001 is void: it was opened again"


def test_a_pack_comes_off_with_the_pieces_that_it_brought(view, loader):
    """Two packs of one part from two batches: each keeps its own."""
    loader.give(CART, A, B, press("off_cart"), A)
    assert [(h.batch, h.qty) for h in view.stock(place="pack/00001")] == [("00101", 2)]
    assert [(h.batch, h.qty) for h in view.stock(place="cart/1")] == [("00100", 2)]


def test_a_cancelled_pack_keeps_the_cart_until_it_is_off(view, loader):
    loader.give(*DOOR, A, B)
    view.facts["order/3302"] = replace(view.get(Order, "3302"), state="cancelled")
    assert str(loader.give(press("leave")).said) == "Order 3302 is cancelled"
    loader.give(press("off_cart"), B)
    assert str(loader.give(press("leave")).said) == "Cart 1 left, packs on it: 1"
    assert total(view.stock(place="shipped")) == 2
    assert (view.get(Order, "3301").state, view.get(Pack, "00002").state) == ("shipped", "packed")


def test_many_packs_are_paged():
    packs = [pack(f"{n:05d}", "00100") for n in range(1, 9)]
    view = shop(*(p for p, _ in packs), moves=tuple(m for _, m in packs))
    loader = Player(view, RULES, dialogue.handle_input, hand("cart"))
    loader.give(CART, *(Code("pack", p.id) for p, _ in packs))
    shown = screen.screen(loader.hand, view)
    assert [r.title for r in shown.main[1].rows] == [f"{n:05d}" for n in range(8, 2, -1)]
    loader.give(press("next_page"))
    assert [r.title for r in screen.screen(loader.hand, view).main[1].rows] == ["00002", "00001"]
    assert str(loader.give(press("next_page")).said) == "Page 2 of 2"
    loader.give(press("off_cart"), press("row_2"))
    assert view.get(Pack, "00001").state == "packed"


@pytest.mark.parametrize(
    ("goes", "left", "packs", "words"),
    [
        ("15:30", "", 1, "goes 15:30"),
        ("09:30", "", 1, "late: 09:30"),
        ("09:30", "", 0, "late: 09:30"),  # two packs wait for a cart
        ("09:30", f"{DAY}T09:34:00", 1, "last left 09:34"),
        ("", "", 1, ""),
    ],
)
def test_when_the_cart_goes(view, loader, goes, left, packs, words):
    view.facts["cart/1"] = Cart(id="1", name="Cart 1", goes=goes, left=left)
    loader.give(CART, *(A,) * packs)
    assert str(screen.screen(loader.hand, view).main[0].right_small) == words


def test_nobody_is_late_where_no_pack_waits(view, loader):
    view.facts["cart/1"] = Cart(id="1", name="Cart 1", goes="09:30")
    for key in [k for k in view.facts if k.startswith("pack/")]:
        del view.facts[key]
    loader.give(CART)
    assert str(screen.screen(loader.hand, view).main[0].right_small) == "usually 09:30"


def test_the_list_of_carts_says_the_same_as_packing(view):
    for number in ("1", "2"):
        view.facts[f"cart/{number}"] = Cart(id=number, name=f"Cart {number}", goes="09:30")
    cards = screen.screen(hand("cart"), view).main[1]
    (_, beside), *_ = list_carts(view, hand("cart").now).rows
    assert [str(entry.line1) for entry in cards.entries] == ["late: 09:30", "late: 09:30"]
    assert str(beside).endswith("late: 09:30")


@pytest.mark.parametrize(
    ("grams", "words"),
    [
        ((400.0, 850.0), "loading · about 1.2 kg on it"),
        ((400.0, 0.0), "loading · at least 0.4 kg on it, 1 pack of unknown weight"),
        ((0.0, 0.0), "loading · its weight is not known"),
    ],
)
def test_a_weight_that_is_not_known_is_not_nothing(view, loader, grams, words):
    for name, mass in zip(("00001", "00002"), grams, strict=True):
        view.facts[f"pack/{name}"] = replace(view.get(Pack, name), mass_g=mass)
    loader.give(CART, A, B)
    assert str(screen.screen(loader.hand, view).main[0].note) == words


def test_a_pack_keeps_when_it_left(view, loader):
    loader.give(*DOOR, A, B, press("leave"))
    assert view.get(Pack, "00001").left[:10] == DAY
    assert view.get(Pack, "00001").shelf == (f"shipped/{DAY}", "00001")


@pytest.mark.parametrize("inputs", [(), (CART,), (CART, A), DOOR, (*DOOR, press("off_cart")),
                                    (CART, A, press("at_door"), press("on_cart"))])  # fmt: skip
def test_faces_of_every_state(view, loader, inputs):
    if inputs:
        loader.give(*inputs)
    shown = screen.screen(loader.hand, view)
    assert shown.main
    assert "cancelled: to packing" in [str(cells[1].text) for cells, _ in shown.side[0].rows]
