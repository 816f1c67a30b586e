"""Putting work down goes through the room: an order is free again, or stays and says so."""

from dataclasses import replace

import pytest

from station.desk.common import put_down
from station.desk.draft import Draft
from station.shop.facts import Order, Pack
from station.shop.rooms import Aside
from tests.floor.shop_small import hand
from tests.replay import PIN

START = ("@worker 05", "@area packing")


@pytest.mark.parametrize(
    ("lines", "said", "do", "state"),
    [
        (("order 3308", "button put_down"), "Order 3308 is put down: anybody can take it",
         "Take the next order.", "open"),
        (("order 3307", "part 045", "button put_down"),
         "Order 3307 stays with this station: 6 in its pack",
         "Go on with it later, or put them back first.", "packing"),
        (("order 3308", "button area_cart"), "Here now: Cart",
         "Order 3308 is put down: anybody can take it", "open"),
        (("order 3307", "part 045", "button area_cart"), "Here now: Cart",
         "Order 3307 stays with this station: 6 in its pack", "packing"),
        (("order 3307", "button part_missing", "button area_cart"), "Here now: Cart",
         "Order 3307 is put down: anybody can take it", "open"),
        (("order 3307", "button part_missing", "button put_down"), "Left; nothing was changed",
         "Go on with your work.", "packing"),
        (("order 3308", "button menu", "button put_down"), "Left; nothing was changed",
         "Go on with your work.", "packing"),
        (("button put_down",), "Left; nothing was counted", "Scan the next piece of work.",
         "open"),
    ],
)  # fmt: skip
def test_an_order_is_put_down(stage, lines, said, do, state):
    for line in (*START, *lines):
        given = stage.send(line)
    assert (str(given.answer.said), str(given.answer.do)) == (said, do)
    number = next((line.split()[1] for line in lines if line.startswith("order")), "3308")
    assert stage.ledger.view.get(Order, number).state == state


def test_undo_takes_back_what_a_number_made_of_a_pick(stage):
    for line in (*START, "order 3307", "part 045", "2"):
        stage.send(line)
    inside = "packing/3307"
    assert [h.qty for h in stage.ledger.view.stock(place=inside)] == [2]
    assert stage.send("button undo").entry
    assert [h.qty for h in stage.ledger.view.stock(place=inside)] == [6]


def test_a_weight_that_is_off_is_asked_about_by_the_desk(stage):
    for line in (*START, "order 3307", "part 045", "button scale", "100", "button close_pack"):
        stage.send(line)
    assert stage.desk.question() == "sure"
    assert stage.send("button yes").entry
    (pack,) = stage.ledger.view.shelf(Pack, "packed")
    assert pack.scale_g == 100
    assert stage.send("button label_again").entry is None
    given = stage.send("order 3307")
    assert given.answer.prints == (("label", pack.id),)


def test_an_order_owed_whole_leaves_the_queue(stage):
    for line in (*START, "order 3308", "button part_missing", "0", "button send_short"):
        stage.send(line)
    stage.send("worker 07")
    assert str(stage.send(PIN).answer.do) == "Nothing of it is left to pack: close it as owed."
    assert stage.send("button close_pack").entry
    assert stage.ledger.view.get(Order, "3308").state == "owed"
    assert "3308" not in [o.id for o in stage.ledger.view.shelf(Order, "open")]


@pytest.mark.parametrize(
    ("subject", "said"),
    [("", "Left; nothing was changed"), ("pack/00061", "Left; what came back so far is kept")],
)
def test_what_was_taken_back_so_far_is_not_said_to_be_undone(subject, said):
    """Of a pack part after part is taken back, then the rest is left."""
    back = replace(hand("packing", worker="05"), aside=Aside(what="take_return", subject=subject))
    assert str(put_down(Draft(hand=back)).answer.said) == said
