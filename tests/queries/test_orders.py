"""Questions about orders."""

from dataclasses import replace

import pytest

from station.queries import orders
from station.shop.facts import Batch, Line, Order, Part, Product, RackPlace
from station.shop.moves import Move, move
from tests.fakes import FakeView

COMB = Part(id="014", name="HC-300", words="Heddle comb 300", rack="014")
SHUTTLE = Part(id="021", name="ST-200", words="Stick shuttle 200", rack="003")
PLACES = (
    RackPlace(id="014", name="C 14", part="014"),
    RackPlace(id="003", name="A 03", part="021"),
)
SET = Product(id="1", name="Set", words="", parts=(("014", 2), ("021", 3)))
SHUTTLES = Product(id="2", name="Shuttles", words="", parts=(("021", 1),))
ORDER = Order(
    id="3306",
    due="2026-11-25T14:00:00",
    lines=(Line(product="1", quantity=2), Line(product="2", quantity=5, short=1)),
)


def rack(part: Part, count: int, batch: str = "00412") -> Move:
    """So many pieces of a batch on a part's rack place."""
    return move(part.id, count, "found", f"rack/{part.rack}", batch)


def packed(part: Part, count: int) -> Move:
    """So many pieces in the order's pack."""
    return move(part.id, count, "found", "packing/3306", "00400")


def shop(*moves: Move, order: Order = ORDER) -> FakeView:
    """A shop with one order and what lies there for it."""
    return FakeView.of(COMB, SHUTTLE, *PLACES, SET, SHUTTLES, order, moves=moves)


def test_what_is_owed_is_no_more_wanted():
    assert orders.count_wanted(shop(), ORDER) == {"014": 4, "021": 10}


def test_a_product_that_nobody_entered_wants_nothing_and_is_named():
    order = replace(ORDER, lines=(Line(product="9", quantity=2),))
    assert orders.count_wanted(shop(), order) == {}
    assert orders.find_unknown(shop(), order) == "9"
    assert orders.find_unknown(shop(), ORDER) == ""


def test_needs_come_in_the_order_of_a_walk_along_the_rack():
    view = shop(rack(COMB, 3), rack(SHUTTLE, 20), packed(COMB, 1))
    found = [
        (n.part.id, n.wanted, n.inside, n.to_go, n.on_rack, n.lacking)
        for n in orders.list_needs(view, ORDER)
    ]
    assert found == [("021", 10, 0, 10, 20, 0), ("014", 4, 1, 3, 3, 0)]


def test_a_part_that_is_in_the_pack_and_not_wanted_is_extra():
    view = shop(move("030", 2, "found", "packing/3306", "00400"))
    view.facts["part/030"] = Part(id="030", name="RK-10", words="")
    need = orders.find_need(view, ORDER, "030")
    assert need
    assert (need.wanted, need.extra, need.place) == (0, 2, None)
    assert orders.find_need(view, ORDER, "099") is None


@pytest.mark.parametrize(
    ("moves", "lacking"),
    [
        ((rack(COMB, 4), rack(SHUTTLE, 10)), []),
        ((rack(COMB, 3), packed(COMB, 1), rack(SHUTTLE, 10)), []),
        ((rack(COMB, 3), rack(SHUTTLE, 10)), [("014", 1)]),
        ((), [("021", 10), ("014", 4)]),
    ],
)
def test_an_order_is_ready_unless_a_part_lacks(moves, lacking):
    view = shop(*moves)
    found = orders.list_lacking(view, ORDER)
    assert [(n.part.id, n.lacking) for n in found] == lacking
    assert orders.is_ready(view, ORDER) == (not lacking)


def test_pieces_of_a_held_batch_are_not_there():
    view = shop(rack(COMB, 4), rack(SHUTTLE, 10))
    view.facts["batch/00412"] = Batch(id="00412", cut_file="008", revision="C", holds=("why",))
    need = orders.find_need(view, ORDER, "014")
    assert need
    assert (need.on_rack, sum(h.qty for h in need.held), need.lacking) == (0, 4, 4)


def test_an_order_is_late_from_its_due_time_on_across_midnight():
    order = replace(ORDER, due="2026-11-25T23:50:00")
    assert not orders.is_late(order, "2026-11-25T23:50:00")
    assert orders.is_late(order, "2026-11-26T00:10:00")


@pytest.mark.parametrize(
    ("inside", "whole"),
    [
        ({}, (0, 0)),
        ({"014": 2, "021": 3}, (1, 0)),
        ({"014": 3, "021": 8}, (1, 4)),  # the second line wants 4, one is owed
        ({"014": 9, "021": 99}, (2, 4)),
        ({"021": 3}, (0, 3)),
    ],
)
def test_pieces_make_up_whole_products_each_counted_once(inside, whole):
    assert orders.count_packed(shop(), ORDER, inside) == whole


def test_what_open_orders_want_is_promised_less_what_their_packs_hold():
    view = shop(packed(COMB, 1), packed(SHUTTLE, 30))
    view.facts["order/3307"] = replace(ORDER, id="3307", lines=(Line(product="2", quantity=7),))
    view.facts["order/3308"] = replace(ORDER, id="3308", state="cancelled")
    assert orders.count_promised(view) == {"014": 3, "021": 7}
    assert orders.count_due(view, "2026-11-25T24") == 14 + 7
    assert orders.count_due(view, "2026-11-25T13") == 0


@pytest.mark.parametrize(
    ("state", "to_pack", "takes"),
    [
        ("open", True, True),
        ("packing", True, True),
        ("waiting", True, True),
        ("owed", False, True),
        ("packed", False, False),
        ("shipped", False, False),
        ("cancelled", False, False),
    ],
)
def test_each_state_says_whether_pieces_still_go_to_it(state, to_pack, takes):
    order = replace(ORDER, state=state)
    assert (order.to_pack, order.takes_pieces) == (to_pack, takes)
