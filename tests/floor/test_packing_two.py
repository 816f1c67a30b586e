"""An order that goes in two packs: told and planned, or by a packer's own hand; changed later."""

from dataclasses import replace

from station.floor.office.acts import CancelOrder
from station.floor.office.rules import RULES as OFFICE
from station.floor.packing import screen
from station.queries.orders import count_wanted, find_need, list_takers
from station.queries.two_packs import plan_order
from station.shop.acts import Act
from station.shop.codes import Code
from station.shop.faces import Hint, Press
from station.shop.facts import Mailer, Order, Pack, Postage
from station.shop.rooms import Number, Weighed
from tests.floor.orders import (
    OPEN_AGAIN,
    ORDER,
    PART_COMB,
    PART_SHUTTLE,
    inside,
    order,
    packer,
    press,
    shop,
)
from tests.floor.shop_small import COMB, SHUTTLE, at

# three pairs weigh 360 g, each comb and each shuttle 60 g; the mailer 30 g
FLAT = Mailer(id="01", name="Flat 350 × 250", length_mm=350.0, width_mm=250.0, price=0.8)
LETTER = Postage(id="1", name="Letter", to_g=300.0, price=3.0)
PARCEL = Postage(id="2", name="Parcel", to_g=2000.0, price=8.0)
LIGHT = replace(PARCEL, to_g=300.0)


def posted(*postage, **more):
    """An order whose mailers and postage have prices, in hand with all of it in its pack."""
    view = shop(FLAT, *postage, **more)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    return view, player


def list_hints(player, view):
    face = screen.screen(player.hand, view)
    return [(str(b.title), str(b.note)) for b in (*face.main, *face.middle) if isinstance(b, Hint)]


def packs(view, state="packed"):
    return view.shelf(Pack, state)


def test_two_packs_are_told_with_what_they_save_by_the_shops_own_prices():
    view, _ = posted(LETTER, PARCEL)
    two = plan_order(view, view.get(Order, "3306"))
    one = 0.8 + 8.0
    assert (two.why, round(two.saved, 2)) == ("cheaper", round(one - 2 * (0.8 + 3.0), 2))
    assert sum(n for _, n in two.first) in (3, 4)
    assert all(p.weight.grams <= 300 for p in two.parcels)


def test_one_pack_that_is_as_cheap_stays_one():
    view, _ = posted(LETTER, replace(PARCEL, price=6.8))  # 7.60 in one and in two
    assert plan_order(view, view.get(Order, "3306")) is None
    view, _ = posted(LETTER, replace(PARCEL, price=6.82))
    assert round(plan_order(view, view.get(Order, "3306")).saved, 2) == 0.02


def test_what_is_saved_is_told_only_where_every_price_is_known():
    view, _ = posted(LETTER, PARCEL)
    view.facts["mailer/01"] = replace(FLAT, price=0.0)
    assert plan_order(view, view.get(Order, "3306")) is None


def test_what_is_too_heavy_for_one_goes_in_two():
    view, player = posted(LIGHT)
    assert ("Two packs: nothing takes it in one", "this is pack 1") in list_hints(player, view)


def test_what_is_too_large_for_one_goes_in_two_without_any_postage():
    small = Mailer(id="01", name="Slim", length_mm=330.0, width_mm=145.0, thick_mm=15.0)
    view, player = posted()
    view.facts["mailer/01"] = small
    two = plan_order(view, view.get(Order, "3306"))
    assert two.why == "large"
    assert any(title == "Two packs: too large for one" for title, _ in list_hints(player, view))
    assert not player.give(press("close_pack")).refused
    assert not player.give(press("close_pack")).refused
    assert [p.mailer for p in packs(view)] == ["01", "01"]


def test_both_are_closed_one_by_one_and_hold_all_of_the_order():
    view, player = posted(LETTER, PARCEL)
    assert str(player.give(press("close_pack")).said).endswith("pack 1, more follow")
    mine = view.get(Order, "3306")
    assert (mine.state, mine.claimed, player.hand.subject) == ("packing", "s1", "3306")
    (first,) = packs(view)
    wanted = count_wanted(view, mine)
    assert {p: n + dict(first.contents).get(p, 0) for p, n in wanted.items()} == {
        COMB: 3, SHUTTLE: 3}  # fmt: skip
    assert inside(view) == {p: n for p, n in wanted.items() if n}
    assert str(player.give(press("close_pack")).said).endswith("pack 2 of 2")
    mine = view.get(Order, "3306")
    assert (mine.state, mine.claimed) == ("packed", "")
    assert [c.pack for c in mine.packs] == [p.id for p in packs(view)]
    assert inside(view) == {}


def test_one_who_takes_another_mailer_has_one_pack_where_two_are_only_cheaper():
    large = replace(FLAT, id="02", name="Flat 450 × 320", length_mm=450.0, width_mm=320.0)
    view, player = posted(LETTER, PARCEL, large)
    player.give(Code("mailer", "02"))
    player.give(press("close_pack"))
    player.reason("65")
    assert view.get(Order, "3306").state == "packed"
    assert len(packs(view)) == 1


def test_what_the_first_pack_weighs_closes_it_and_no_more():
    view, player = posted(LETTER, PARCEL)
    assert player.give(Weighed(390.0)).tone == "attention"
    assert not packs(view)
    assert player.give(Weighed(270.0)).tone == "good"
    assert [p.scale_g for p in packs(view)] == [270.0]


def test_a_packer_makes_two_by_hand_of_what_is_in_and_what_is_still_to_go():
    view = shop()
    player = packer(view)
    player.give(ORDER)
    assert player.give(press("part_pack")).refused
    player.give(PART_COMB)
    face = screen.screen(player.hand, view)
    assert press("part_pack").number in str([p.code for p in face.presses if isinstance(p, Press)])
    answer = player.give(press("part_pack"))
    assert str(answer.do).endswith("Label it. Next: 3 ST-200 from rack A 03.")
    assert find_need(view, view.get(Order, "3306"), COMB).to_go == 0
    assert [(o.id, n) for o, n in list_takers(view, SHUTTLE)] == [("3306", 3)]
    assert not list(list_takers(view, COMB))
    player.give(PART_SHUTTLE)
    refused = player.give(press("part_pack"))
    assert str(refused.said) == "All parts are in this pack"
    assert str(player.give(press("close_pack")).said).endswith("pack 2 of 2")


def test_a_pack_is_not_opened_beside_another_that_is_open_or_they_would_mix():
    view, player = posted(LETTER, PARCEL)
    player.give(press("close_pack"))
    (first,) = packs(view)
    refused = player.give(Code("pack", first.id))
    assert str(refused.do) == "Close that first, then open this one."
    player.give(ORDER, press("close_pack"))
    player.give(Code("pack", first.id), OPEN_AGAIN)
    player.reason("61")
    mine = view.get(Order, "3306")
    assert mine.state == "packing"
    assert first.id not in [c.pack for c in mine.packs]
    assert inside(view) == dict(first.contents)
    assert str(player.give(press("close_pack")).said).endswith("pack 1 of 2")


def test_a_cancelled_order_is_put_back_from_both_its_packs():
    view, player = posted(LETTER, PARCEL)
    player.give(press("close_pack"), press("close_pack"))
    act = Act(id="c", kind="cancel_order", at=at("14:00"), subject="order/3306", worker="07",
              args=CancelOrder(approved="07"))  # fmt: skip
    assert not view.do(OFFICE, act).refused
    for n, pack in enumerate(packs(view)):
        player.give(Code("pack", pack.id), OPEN_AGAIN)
        answer = player.give(press("all_of_it"))
        words = "still to be opened" if not n else "Take the next order."
        assert words in str(answer.do)
    assert view.stock(place="packing/3306") == ()
    assert not packs(view)


def test_of_a_walk_an_order_for_two_packs_is_no_pack_of_the_next_scan():
    """What was fetched for it lies there whole; it is dealt to two packs at the bench."""
    other = replace(order(), id="3310", due="2026-11-25T16:00:00", lines=order().lines)
    view = shop(FLAT, LETTER, PARCEL, other, combs=9, shuttles=9)
    player = packer(view)
    player.give(press("walk"), PART_SHUTTLE, PART_COMB, ORDER)
    refused = player.give(Code("order", "3310"))
    assert str(refused.said) == "Order 3306 goes in two packs: 1.20 cheaper than one"
    player.give(press("close_pack"), Code("order", "3310"))
    assert view.get(Order, "3306").state == "packed"
    assert player.hand.subject == "3310"
    assert len(packs(view)) == 2


def test_two_packers_who_reach_for_one_heap_take_no_piece_twice():
    other = replace(order(), id="3310")
    view = shop(other, combs=6, shuttles=4)
    mine, yours = packer(view), packer(view, station="s2")
    mine.give(ORDER)
    yours.give(Code("order", "3310"))
    assert not mine.give(PART_SHUTTLE).refused
    refused = yours.give(PART_SHUTTLE)
    assert refused.tone == "stop"
    assert "1" in str(refused.said)
    assert inside(view, "3310") == {}
    assert not yours.give(Number("1"), PART_SHUTTLE).refused
    assert (inside(view)[SHUTTLE], inside(view, "3310")[SHUTTLE]) == (3, 1)


def test_an_order_cancelled_in_the_hand_is_closed_by_nothing_and_goes_back():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    act = Act(id="c", kind="cancel_order", at=at("14:00"), subject="order/3306", worker="07",
              args=CancelOrder(approved="07"))  # fmt: skip
    assert not view.do(OFFICE, act).refused
    assert player.give(press("close_pack")).refused
    assert player.give(Weighed(390.0)).tone != "good"
    assert not packs(view)
    assert str(player.give(press("all_of_it")).said) == "6 put back on the rack"
    assert inside(view) == {}
