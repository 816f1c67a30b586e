"""Packing and the cart: refusals, good cases, and what must never ship."""

from dataclasses import replace

import pytest

from station.floor.cart import dialogue as cart_dialogue
from station.floor.cart import screen as cart_screen
from station.floor.cart.rules import RULES as CART
from station.floor.packing import screen
from station.floor.packing.acts import PickPart
from station.floor.packing.work import PackingWork
from station.queries.orders import list_needs
from station.shop.acts import Act
from station.shop.cards import button
from station.shop.codes import Code
from station.shop.facts import Line, Order, Pack
from station.shop.rooms import Number
from station.shop.views import by_part, total
from tests.floor.orders import (
    DUE,
    OPEN_AGAIN,
    ORDER,
    PART_COMB,
    PART_SHUTTLE,
    RULES,
    inside,
    order,
    packer,
    press,
    shop,
)
from tests.floor.shop_small import COMB, GAUGE, SHUTTLE, Player, hand


@pytest.fixture
def view():
    return shop(shuttles=2)


@pytest.fixture
def player(view):
    return packer(view)


def give(player, *inputs):
    return player.give(*inputs)


def test_the_oldest_batch_goes_first(player, view):
    give(player, ORDER, PART_COMB)
    assert [(h.batch, h.qty) for h in view.stock(place="packing/3306")] == [
        ("00100", 2),
        ("00101", 1),
    ]


@pytest.mark.parametrize(
    ("inputs", "said"),
    [
        ((ORDER, Code("part", GAUGE)), "SG-10 is not in order 3306"),
        ((ORDER, PART_SHUTTLE), "Only 2 ST-200 in A 03 by the book"),
        ((ORDER, PART_COMB, PART_COMB), "All HC-300 are in the pack"),
        ((ORDER, Number("9")), "No part of this order still wants 9"),
        ((ORDER, Number("0"), PART_COMB), "3 HC-300 are wanted"),
        ((ORDER, press("close_pack")), "Not complete: 6 to go"),
        ((Code("order", "9999"),), "There is no such order"),
        ((Code("pack", "09999"),), "This shop knows no pack 09999"),
    ],
)
def test_what_cannot_be_is_refused(player, inputs, said):
    answer = give(player, *inputs)
    assert answer.refused
    assert str(answer.said) == said


def test_another_stations_order_is_left_alone(player, view):
    view.facts["order/3306"] = order(state="packing", claimed="9")
    assert str(give(player, ORDER).said) == "Station 9 packs order 3306"


def test_an_approved_short_never_ships_too_much(player, view):
    give(player, ORDER, PART_COMB, PART_SHUTTLE, Number("2"), PART_SHUTTLE)
    give(player, press("part_missing"), Number("0"), press("send_short"))
    answer = player.approve()
    assert str(answer.do) == "Put back 1 HC-300 (rack C 14). Then close the pack."
    assert inside(view) == {COMB: 2, SHUTTLE: 2}
    assert view.get(Order, "3306").lines[0].short == 1
    assert give(player, press("close_pack")).tone == "good"
    assert total(view.stock(place=f"rack/{COMB}")) == 5


def test_the_screen_goes_on_after_a_recount(player, view):
    give(player, ORDER, press("part_missing"), Number("6"))
    shown = screen.screen(player.hand, view)
    assert button("wait") not in {p.code for p in shown.presses}


def test_a_cancelled_order_is_put_back(player, view):
    give(player, ORDER, PART_COMB)
    view.facts["order/3306"] = replace(view.get(Order, "3306"), state="cancelled", claimed="")
    player.hand = player.hand.empty()
    assert str(give(player, ORDER).said) == "Order 3306 is cancelled"
    give(player, press("take_back"))
    assert inside(view) == {}
    assert total(view.stock(place=f"rack/{COMB}")) == 7


def test_a_pack_of_a_cancelled_order_is_opened_and_put_back(player, view):
    view.facts["order/3306"] = order(lines=(Line(product="040", quantity=2),))
    give(player, ORDER, PART_COMB, PART_SHUTTLE, press("close_pack"))
    pack = view.shelf(Pack, "packed")[0]
    assert give(player, Code("pack", pack.id), OPEN_AGAIN).asks == "reason"
    view.facts["order/3306"] = replace(view.get(Order, "3306"), state="cancelled")
    give(player, Code("pack", pack.id), OPEN_AGAIN, press("take_back"))
    assert inside(view) == {}
    assert view.get(Pack, pack.id).state == "opened"


def packed(view):
    player = packer(view)
    view.facts["order/3306"] = order(lines=(Line(product="040", quantity=2),))
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("close_pack"))
    return view.shelf(Pack, "packed")[0].id


def test_the_cart_leaves_only_with_every_pack_seen(view):
    pack = packed(view)
    cart = Player(view, CART, cart_dialogue.handle_input, hand("cart"))
    cart.give(Code("cart", "1"))
    assert cart.give(press("leave")).refused
    cart.give(Code("pack", pack), press("at_door"))
    assert str(cart.give(press("leave")).said) == "Not scanned at the door: 1"
    assert cart_screen.screen(cart.hand, view).presses[0].style == "off"
    cart.give(Code("pack", pack), press("leave"))
    assert total(view.stock(place="shipped")) == 4
    assert view.get(Order, "3306").state == "shipped"


def test_a_cancelled_pack_is_caught_at_the_door(view):
    pack = packed(view)
    cart = Player(view, CART, cart_dialogue.handle_input, hand("cart"))
    cart.give(Code("cart", "1"), Code("pack", pack), press("at_door"))
    view.facts["order/3306"] = replace(view.get(Order, "3306"), state="cancelled")
    assert str(cart.give(Code("pack", pack)).said) == "Order 3306 is cancelled"
    cart.give(press("off_cart"), Code("pack", pack))
    assert total(view.stock(place=f"pack/{pack}")) == 4


@pytest.mark.parametrize(
    "work",
    [PackingWork(), PackingWork(asks="count", part=COMB), PackingWork(short=SHUTTLE)],
)
def test_faces_of_every_state(player, view, work):
    assert screen.screen(player.hand, view).main
    give(player, ORDER)
    shown = screen.screen(replace(player.hand, work=work), view)
    assert shown.presses
    assert shown.middle


def test_wants_say_where_the_rest_lies(view):
    found = {w.part.id: (w.wanted, w.on_rack, w.place_name) for w in list_needs(view, order())}
    assert found == {COMB: (3, 7, "C 14"), SHUTTLE: (3, 2, "A 03")}


def test_part_missing_is_about_the_part_that_was_scanned(player, view):
    assert give(player, ORDER, PART_SHUTTLE).refused
    give(player, press("part_missing"))
    player.recount(0)
    assert total(view.stock(place=f"rack/{SHUTTLE}")) == 0
    assert total(view.stock(place=f"rack/{COMB}")) == 7


def test_nothing_waits_for_what_is_not_under_way(player, view):
    give(player, ORDER, PART_SHUTTLE)
    assert give(player, press("wait")).refused
    assert view.get(Order, "3306").state == "packing"


def test_the_rule_itself_takes_no_more_than_lies_there(player, view):
    """The dialogue looks first; another station may have taken them since."""
    give(player, ORDER)
    late = Act(id="late", kind="pick", at=DUE, worker="02", station="s1", subject="order/3306",
               args=PickPart(part=SHUTTLE, quantity=3))  # fmt: skip
    answer = view.do(RULES, late)
    assert answer.refused
    assert str(answer.said) == "Only 2 ST-200 in A 03 by the book"


def test_a_closed_pack_is_opened_for_a_reason_and_a_spoiled_piece_counted_out(player, view):
    view.facts["order/3306"] = order(lines=(Line(product="040", quantity=2),))
    give(player, ORDER, PART_COMB, PART_SHUTTLE, press("close_pack"))
    (pack,) = view.shelf(Pack, "packed")
    answer = give(player, Code("pack", pack.id), OPEN_AGAIN)
    assert (answer.asks, answer.uses) == ("reason", ("repack",))
    assert player.reason("31").asks == "reason"  # that stops a router
    assert not player.reason("61").refused
    assert (view.get(Pack, pack.id).state, view.get(Pack, pack.id).why) == ("opened", "61")
    assert view.get(Order, "3306").state == "packing"
    assert str(give(player, press("spoiled_piece"), Number("3"), PART_COMB).said) == (
        "2 are in the pack"
    )
    assert give(player, press("put_down"), press("spoiled_piece"), PART_COMB).asks == "reason"
    assert str(player.reason("05").said) == "1 × HC-300 counted out: damaged in handling"
    assert inside(view) == {COMB: 1, SHUTTLE: 2}
    assert by_part(view.stock(place="spoiled/05")) == {COMB: 1}
    assert give(player, press("close_pack")).refused
    give(player, PART_COMB, press("close_pack"))
    (anew,) = view.shelf(Pack, "packed")
    assert anew.id != pack.id
    assert str(give(player, Code("pack", pack.id)).do) == (
        f"Throw it away. Order 3306 is in pack {anew.id} now."
    )


def test_a_shop_without_reasons_for_it_opens_a_pack_all_the_same(player, view):
    view.facts["order/3306"] = order(lines=(Line(product="040", quantity=2),))
    give(player, ORDER, PART_COMB, PART_SHUTTLE, press("close_pack"))
    for key in [k for k, f in view.facts.items() if getattr(f, "use", "") == "repack"]:
        del view.facts[key]
    (pack,) = view.shelf(Pack, "packed")
    assert not give(player, Code("pack", pack.id), OPEN_AGAIN).refused
    assert str(give(player, press("spoiled_piece"), Code("part", "045")).said) == (
        "No SG-10 are in the pack"
    )
