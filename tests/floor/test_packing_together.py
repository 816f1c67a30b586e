"""Several orders on one walk, sets by their count, and touches an order: its lines and one."""

from dataclasses import replace

import pytest

from station.floor.packing import screen
from station.queries.batches import find_hold
from station.queries.walk import list_walk
from station.shop.codes import Code
from station.shop.facts import Batch, Line, Order, Pack, Product
from station.shop.moves import move
from station.shop.rooms import Number
from station.shop.views import by_part
from tests.floor.orders import PAIR, PART_COMB, PART_SHUTTLE, order, packer, press, shop
from tests.floor.shop_small import COMB, GAUGE, SHUTTLE, batch
from tests.touch import list_texts

COMBS = Product(id="041", name="COMBS", words="Two combs", parts=((COMB, 2),))
CARD = Code("product", PAIR.id)


def ten():
    """Ten orders, due one after the other: a pair each, every second one two combs besides."""
    lines = (Line(product=PAIR.id, quantity=1),), (
        Line(product=PAIR.id, quantity=1), Line(product="041", quantity=1))  # fmt: skip
    return [
        Order(id=str(3400 + n), due=f"2026-11-25T15:{n:02d}:00", lines=lines[n % 2])
        for n in range(10)
    ]


def bench(*facts, **more):
    """The shop with ten orders, and a packer; order 3306 has gone."""
    view = shop(COMBS, *ten(), order(state="shipped"), *facts, **more)
    return view, packer(view)


def test_ten_orders_are_fetched_on_one_walk_in_the_order_of_the_rack():
    view, player = bench(combs=30, shuttles=30)
    player.give(press("walk"))
    walk = list_walk(view, player.hand.work.walk)
    assert [(w.part.id, w.to_go) for w in walk] == [(SHUTTLE, 10), (COMB, 20)]
    assert player.give(PART_SHUTTLE).tone == "good"
    assert player.give(PART_COMB).tone == "good"
    assert (
        str(player.said[-1].do) == "All parts are fetched: sort them at the bench, order by order."
    )
    assert by_part(view.stock(place="packing/3400")) == {SHUTTLE: 1, COMB: 1}
    assert by_part(view.stock(place="packing/3401")) == {SHUTTLE: 1, COMB: 3}
    # the older batch went to the order that is due first
    assert {h.batch for h in view.stock(place="packing/3400")} == {"00100"}
    # sorted at the bench: each scan closes one pack and begins the next
    for number in range(3400, 3410):
        player.give(Code("order", str(number)))
    player.give(press("close_pack"))
    assert [view.get(Order, str(n)).state for n in range(3400, 3410)] == ["packed"] * 10
    assert len([f for f in view.facts.values() if isinstance(f, Pack)]) == 10
    assert player.count == 1 + 2 + 10 + 1  # acts: the walk, its parts, the orders, the last pack


def test_a_wrong_part_is_refused_by_name_and_a_few_go_to_the_first_due():
    view, player = bench(combs=30, shuttles=30)
    player.give(press("walk"))
    refused = player.give(Code("part", GAUGE))
    assert (refused.tone, "SG-10" in str(refused.said)) == ("stop", True)
    assert "Put the SG-10 back" in str(refused.do)
    player.give(Number("3"), PART_SHUTTLE)
    inside = [by_part(view.stock(place=f"packing/{n}")) for n in range(3400, 3410)]
    assert inside == [{SHUTTLE: 1}] * 3 + [{}] * 7
    assert list_walk(view, player.hand.work.walk)[0].to_go == 7


def test_a_walk_takes_nothing_of_a_held_batch():
    view, player = bench(batch(id="00100"), combs=30, shuttles=0)
    view.facts["batch/00100"] = replace(view.get(Batch, "00100"), holds=("warped",))
    only = Order(id="3420", due="2026-11-25T15:00:00", lines=(Line(product="041", quantity=1),))
    view.facts[only.key] = only
    player.give(press("walk"), PART_COMB)
    lying = view.stock(place="packing/3420")
    assert [h.batch for h in lying] == ["00101"]
    assert not any(find_hold(view, h.batch) for h in lying)


def test_a_walk_that_is_left_frees_what_nothing_was_fetched_for():
    view, player = bench(combs=30, shuttles=30)
    player.give(press("walk"), Number("1"), PART_SHUTTLE, press("put_down"))
    states = {n: view.get(Order, str(n)).claimed for n in range(3400, 3403)}
    assert states == {3400: "s1", 3401: "", 3402: ""}
    assert player.hand.is_free


@pytest.mark.parametrize("lines", [1, 2])
def test_touches_an_order_are_its_lines_and_one(lines):
    """The order's scan, and one a part; the scan of the next order closes its pack."""
    view, player = bench(combs=30, shuttles=30)
    products = (Line(product="041", quantity=1), Line(product=PAIR.id, quantity=2))[:lines]
    mine = Order(id="3420", due="2026-11-25T14:00:00", lines=products)
    view.facts[mine.key] = mine
    player.give(Code("order", "3420"))
    before = player.count
    for product in ("041", PAIR.id)[:lines]:
        sets = next(line.quantity for line in products if line.product == product)
        if sets > 1:
            player.give(Number(str(sets)))
        player.give(Code("product", product))
    assert player.count - before == lines
    answer = player.give(Code("order", "3400"))
    assert "Then order 3400: First: 1 ST-200 from rack A 03." in str(answer.do)
    assert view.get(Order, "3420").state == "packed"
    assert (view.get(Order, "3400").claimed, player.hand.subject) == ("s1", "3400")


def test_what_is_not_complete_is_not_closed_by_the_next_order():
    view, player = bench(combs=30, shuttles=30)
    player.give(Code("order", "3400"), PART_COMB, Code("order", "3401"))
    assert view.get(Order, "3400").state == "packing"
    assert player.hand.subject == "3401"


def test_an_order_that_another_station_packs_closes_nothing():
    view, player = bench(combs=30, shuttles=30)
    view.facts["order/3401"] = replace(view.get(Order, "3401"), claimed="s2", state="packing")
    player.give(Code("order", "3400"), PART_COMB, PART_SHUTTLE)
    assert player.give(Code("order", "3401")).tone == "stop"
    assert view.get(Order, "3400").state == "packing"
    assert player.hand.subject == "3400"


def test_sets_are_taken_and_told_one_by_one():
    view = shop()
    player = packer(view)
    player.give(Code("order", "3306"))
    said = [str(player.give(CARD).said) for _ in range(3)]
    assert said == ["Set 1 of 3: PAIR", "Set 2 of 3: PAIR", "Set 3 of 3: PAIR"]
    assert str(player.said[-1].do) == "Bag it. All parts are in: close the pack."
    assert by_part(view.stock(place="packing/3306")) == {COMB: 3, SHUTTLE: 3}
    assert player.give(CARD).tone == "stop"
    face = screen.screen(player.hand, view)
    assert face.title


def test_what_lies_in_a_pack_that_nobody_holds_is_told():
    view, player = bench(
        combs=30, shuttles=30, moves=(move(COMB, 1, "found", "packing/3400", ""),)
    )
    texts = list_texts(screen.screen(player.hand, view))
    assert any("1 in its pack" in text for text in texts)


def test_a_walk_that_was_left_is_begun_again_with_the_others():
    view, player = bench(combs=30, shuttles=30)
    player.give(press("walk"), Number("1"), PART_SHUTTLE, press("put_down"), press("walk"))
    assert player.hand.work.walk == tuple(str(n) for n in range(3401, 3410))
    player.give(PART_SHUTTLE, PART_COMB)
    assert by_part(view.stock(place="packing/3400")) == {SHUTTLE: 1}  # as it was left
    assert by_part(view.stock(place="packing/3402")) == {SHUTTLE: 1, COMB: 1}


def test_what_is_held_after_the_walk_is_closed_in_no_pack_by_the_next_order():
    view, player = bench(batch(id="00100"), combs=30, shuttles=30)
    player.give(press("walk"), PART_SHUTTLE, PART_COMB)
    view.facts["batch/00100"] = replace(view.get(Batch, "00100"), holds=("warped",))
    player.give(Code("order", "3400"), Code("order", "3401"))
    assert view.get(Order, "3400").state == "packing"
    assert not [f for f in view.facts.values() if isinstance(f, Pack)]
    refused = player.give(Code("order", "3400"), press("close_pack"))
    assert str(refused.said) == "Batch 00100 is held: 2 of it in this pack"
