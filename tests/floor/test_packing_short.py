"""What can be done about a part that an order lacks, and when it leaves then; what is owed."""

from dataclasses import replace

import pytest

from station.floor.packing import screen
from station.queries.leaving import list_prospects
from station.queries.orders import find_need, list_owed
from station.queries.short import find_leaving_day, list_ways, skip_days
from station.queries.shortage import survey_parts
from station.shop.codes import Code
from station.shop.faces import Cards, Pairs
from station.shop.facts import Cart, Concern, Line, Order
from station.shop.moves import move
from station.shop.rooms import Number
from station.shop.views import by_part
from tests.floor.orders import ORDER, PAIR, PART_COMB, PART_SHUTTLE, order, packer, press, shop
from tests.floor.shop_small import COMB, DAY, SHUTTLE

LATER = Order(id="3310", due="2026-11-27T15:00:00", lines=(Line(product=PAIR.id, quantity=2),))
NOON = f"{DAY}T12:00:00"
AWAY = replace(Cart(id="1", name="Cart 1", goes="11:30"), left=f"{DAY}T11:31:00")
EVENING = Cart(id="2", name="Cart 2", goes="15:30")


def lacking(*facts, shuttles=1, **more):
    """The order in hand lacks two shuttles, and the rack was counted."""
    view = shop(AWAY, EVENING, *facts, shuttles=shuttles, **more)
    player = packer(view)
    player.give(ORDER, Number(str(shuttles)), PART_SHUTTLE, PART_COMB, press("part_missing"))
    player.give(Number("0"))
    return view, player


def find_ways(view, part=SHUTTLE, now=NOON):
    """What can be done about a part of order 3306."""
    mine = view.get(Order, "3306")
    return list_ways(view, mine, find_need(view, mine, part), now)


@pytest.mark.parametrize(
    ("combs", "told"), [(7, "short 2 × ST-200"), (1, "short 2 × ST-200 and more")]
)
def test_an_order_tells_that_more_than_one_part_is_short(combs, told):
    view = shop(combs=combs, shuttles=1)
    player = packer(view)
    cards = next(b for b in screen.screen(player.hand, view).main if isinstance(b, Cards))
    assert str(cards.entries[0].line1).endswith(told)
    player.give(ORDER)
    assert str(screen.screen(player.hand, view).main[0].note).endswith(told)


def test_a_part_that_is_under_way_is_waited_for_and_the_day_is_told():
    view, _ = lacking(moves=(move(SHUTTLE, 9, "found", "trimming", "00100"),))
    assert find_ways(view)[:1] == (DAY,)
    assert find_ways(view).sheet == ""


def test_without_any_under_way_a_sheet_is_asked_for():
    view, player = lacking()
    ways = find_ways(view)
    assert (ways.wait, ways.now, ways.sheet) == ("", DAY, "2026-11-26")
    face = screen.screen(player.hand, view)
    (rows,) = [b.rows for b in face.main if isinstance(b, Pairs) and b.title]
    assert [tuple(map(str, row)) for row in rows] == [
        ("send it short", "leaves 25 Nov, the rest 26 Nov"),
        ("ask for a sheet", "leaves about 26 Nov"),
    ]
    assert player.give(press("ask_sheet")).tone == "attention"
    mine = view.get(Order, "3306")
    assert (mine.state, mine.waits, player.hand.is_free) == ("waiting", SHUTTLE, True)
    (asked,) = view.shelf(Concern, "open")
    assert str(asked.text) == "Order 3306 asks for a sheet with 2 × ST-200"


def test_it_is_taken_from_the_pack_of_a_later_order():
    view, player = lacking(LATER, moves=(move(SHUTTLE, 2, "found", "packing/3310", "00100"),))
    assert find_ways(view).later == (LATER, 2)
    answer = player.give(press("take_from"))
    assert str(answer.said) == "2 ST-200 from order 3310 to order 3306"
    assert by_part(view.stock(place="packing/3306")) == {COMB: 3, SHUTTLE: 3}
    assert view.stock(place="packing/3310") == ()
    assert player.give(press("close_pack")).tone == "good"


def test_nothing_is_taken_from_an_order_that_is_due_earlier_or_packed_elsewhere():
    sooner = replace(LATER, due="2026-11-25T09:00:00")
    inside = (move(SHUTTLE, 2, "found", "packing/3310", "00100"),)
    view, player = lacking(sooner, moves=inside)
    assert find_ways(view).later is None
    assert player.give(press("take_from")).tone == "stop"
    view, player = lacking(replace(LATER, claimed="s2", state="packing"), moves=inside)
    assert player.give(press("take_from")).tone == "stop"
    assert by_part(view.stock(place="packing/3310")) == {SHUTTLE: 2}


def test_what_is_owed_is_an_order_of_its_own_that_the_plan_sees():
    view, player = lacking()
    player.give(press("send_short"))
    player.approve()
    (owed,) = list_owed(view, view.get(Order, "3306"))
    assert (owed.id, owed.owed_of, owed.due) == ("3306-1", "3306", view.get(Order, "3306").due)
    assert owed.lines == (Line(product=PAIR.id, quantity=2),)
    player.give(press("close_pack"))
    assert view.get(Order, "3306").state == "packed"
    shuttle = next(s for s in survey_parts(view) if s.part.id == SHUTTLE)
    assert [(t.order.id, t.pieces) for t in shuttle.takers] == [("3306-1", 2)]
    assert [p.order.id for p in list_prospects(view) if p.ready] == []
    view._move((move(SHUTTLE, 2, "found", f"rack/{SHUTTLE}", "00100"),))
    assert [p.order.id for p in list_prospects(view) if p.ready] == ["3306-1"]


def test_what_is_owed_twice_of_an_order_is_one_order():
    view = shop(order(lines=(Line(product=PAIR.id, quantity=7),)), combs=5, shuttles=6)
    player = packer(view)
    player.give(ORDER, press("part_missing"), Number("6"), press("send_short"))
    player.approve()
    player.give(Code("part", COMB))
    player.give(press("part_missing"))
    owed = list_owed(view, view.get(Order, "3306"))
    assert [sum(line.quantity for line in o.lines) for o in owed] == [1]


def test_the_day_that_it_leaves_is_the_next_carts():
    view = shop(AWAY, EVENING)
    assert find_leaving_day(view, NOON) == DAY
    gone = replace(EVENING, left=f"{DAY}T15:31:00")
    assert find_leaving_day(shop(AWAY, gone), f"{DAY}T16:00:00") == "2026-11-26"
    assert skip_days("2026-11-27", 1) == "2026-11-30"  # a Friday
