"""The packer's hands: what goes back, what a number changes, whose order it is."""

from dataclasses import replace

import pytest

from station.floor.packing import screen
from station.floor.packing.acts import CorrectPick
from station.queries.leaving import LOOKED
from station.shop.acts import Act
from station.shop.codes import Code
from station.shop.facts import Concern, Line, Order, Pack, Product
from station.shop.moves import move
from station.shop.rooms import Number
from station.shop.words import say
from tests.floor.orders import (
    DUE,
    OPEN_AGAIN,
    ORDER,
    PART_COMB,
    PART_SHUTTLE,
    RULES,
    inside,
    on_rack,
    order,
    packer,
    press,
    shop,
)
from tests.floor.shop_small import COMB, GAUGE, SHUTTLE
from tests.touch import NO_ROW

BOTH = {COMB: 3, SHUTTLE: 3}


@pytest.mark.parametrize(
    ("inputs", "left", "said"),
    [
        ((press("take_back"), PART_COMB), {SHUTTLE: 3}, "3 × HC-300 put back: rack C 14"),
        ((press("take_back"), Code("rack", COMB)), {SHUTTLE: 3}, "3 × HC-300 put back: rack C 14"),
        ((press("take_back"), Number("1"), PART_COMB), {COMB: 2, SHUTTLE: 3},
         "1 × HC-300 put back: rack C 14"),
        ((press("take_back"), press("row_1")), {COMB: 3}, "3 × ST-200 put back: rack A 03"),
        ((press("take_back"), press("take_back")), {}, "6 put back on the rack"),
        ((press("take_back"), press("all_of_it")), {}, "6 put back on the rack"),
        ((press("take_back"), Number("4"), PART_COMB), BOTH, "3 are in the pack"),
        ((press("take_back"), Number("0"), PART_COMB), BOTH, "3 are in the pack"),
        ((press("take_back"), Code("part", GAUGE)), BOTH, "No SG-10 are in the pack"),
        ((press("take_back"), press("put_down")), BOTH, "Left; nothing was changed"),
        ((press("take_back"), press("put_down"), PART_COMB), BOTH, "All HC-300 are in the pack"),
    ],
)  # fmt: skip
def test_what_goes_back(inputs, left, said):
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    assert str(player.give(*inputs).said) == said
    assert inside(view) == left
    assert on_rack(view, COMB) + inside(view).get(COMB, 0) == 7


def test_what_goes_back_goes_to_the_batches_it_came_from():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, press("take_back"), Number("1"), PART_COMB)
    assert [(h.batch, h.qty) for h in view.stock(place=f"rack/{COMB}")] == [("00101", 5)]


@pytest.mark.parametrize(
    ("inputs", "holds", "said"),
    [
        ((PART_COMB, Number("2")), {COMB: 2}, "2 × HC-300, not 3: 2 in the pack"),
        ((PART_COMB, Number("0")), {}, "0 × HC-300, not 3: 0 in the pack"),
        ((PART_COMB, Number("2"), Number("3")), {COMB: 3}, "3 × HC-300, not 2: 3 in the pack"),
        ((PART_COMB, Number("3")), {COMB: 3}, "3 × HC-300 it is"),
        ((PART_COMB, Number("4")), {COMB: 3}, "3 HC-300 are wanted"),
        ((PART_COMB, Number("6.4")), {COMB: 3}, "6.4 is no count"),
        ((PART_COMB, PART_SHUTTLE, Number("1")), {COMB: 3, SHUTTLE: 1},
         "1 × ST-200, not 3: 1 in the pack"),
        ((Number("2"), PART_COMB, Number("1"), PART_COMB), BOTH | {SHUTTLE: 0},
         "2 × HC-300 in the pack"),
        # a wrong card in between: the number is not about the pick before it any more
        ((PART_COMB, Code("part", GAUGE), Number("1")), {COMB: 3}, "1 of the next part"),
        ((Number("1"), PART_COMB, Number("0"), Number("2")), {}, "2 of the next part"),
    ],
)  # fmt: skip
def test_a_number_after_a_pick_is_about_that_pick(inputs, holds, said):
    view = shop()
    player = packer(view)
    assert str(player.give(ORDER, *inputs).said) == said
    assert inside(view) == {p: n for p, n in holds.items() if n}
    assert on_rack(view, COMB) == 7 - holds.get(COMB, 0)


def test_more_than_the_rack_holds_is_not_put_into_a_pick():
    view = shop(combs=2)
    player = packer(view)
    player.give(ORDER, Number("2"), PART_COMB)
    assert str(player.give(Number("3")).said) == "Only 0 HC-300 in C 14 by the book"
    assert inside(view) == {COMB: 2}


@pytest.mark.parametrize(
    ("was", "quantity", "said"),
    [
        (5, 1, "The pack has changed since"),
        (0, 1, "The pack has changed since"),
        (3, -1, "3 HC-300 are wanted"),
    ],
)
def test_the_rule_corrects_only_what_was_picked(was, quantity, said):
    view = shop()
    packer(view).give(ORDER, PART_COMB)
    args = CorrectPick(part=COMB, was=was, quantity=quantity)
    late = Act(id="late", kind="correct_pick", at=DUE, station="s1", subject="order/3306",
               args=args)  # fmt: skip
    answer = view.do(RULES, late)
    assert (answer.refused, str(answer.said)) == (True, said)


@pytest.mark.parametrize(
    ("shuttles", "inputs", "holds", "said"),
    [
        (7, (press("all_of_it"),), {SHUTTLE: 3}, "3 × ST-200 in the pack"),
        (7, (press("all_of_it"), press("all_of_it")), BOTH, "3 × HC-300 in the pack"),
        (7, (*(press("all_of_it"),) * 3,), BOTH, "All parts are in already"),
        (7, (PART_COMB, Number("1"), press("all_of_it")), {COMB: 3}, "2 × HC-300 in the pack"),
        (2, (press("all_of_it"),), {}, "Only 2 ST-200 in A 03 by the book"),
        (7, (press("row_2"),), {COMB: 3}, "3 × HC-300 in the pack"),
        (7, (press(NO_ROW),), {}, "There is nothing in that row"),
    ],
)
def test_all_that_is_asked_of_the_row_in_front(shuttles, inputs, holds, said):
    view = shop(shuttles=shuttles)
    player = packer(view)
    assert str(player.give(ORDER, *inputs).said) == said
    assert inside(view) == holds


@pytest.mark.parametrize(
    ("before", "state", "claimed", "said"),
    [
        ((), "open", "", "Order 3306 is put down: anybody can take it"),
        ((PART_COMB,), "packing", "s1", "Order 3306 stays with this station: 3 in its pack"),
        ((PART_COMB, press("take_back"), press("take_back")), "open", "",
         "Order 3306 is put down: anybody can take it"),
    ],
)  # fmt: skip
def test_an_order_put_down(before, state, claimed, said):
    view = shop()
    player = packer(view)
    assert str(player.give(ORDER, *before, press("put_down")).said) == said
    found = view.get(Order, "3306")
    assert (found.state, found.claimed, player.hand.subject) == (state, claimed, "")
    other = packer(view, "s2").give(ORDER)
    assert other.refused == bool(claimed)


def test_the_order_left_for_another_is_free_again():
    view = shop(replace(order(), id="3307"))
    player = packer(view)
    player.give(ORDER, Code("order", "3307"))
    assert view.get(Order, "3306").state == "open"
    player.give(PART_COMB, ORDER)
    assert view.get(Order, "3307").claimed == "s1"


def test_a_supervisor_takes_over_what_another_station_packs():
    view = shop()
    packer(view, "s9").give(ORDER, PART_COMB)
    player = packer(view)
    assert player.give(ORDER).asks == "supervisor"
    assert str(player.approve().said) == "Order 3306 is yours"
    assert view.get(Order, "3306").claimed == "s1"
    assert inside(view) == {COMB: 3}


def test_a_cancelled_order_is_put_back_where_it_lies():
    view = shop()
    theirs, other = packer(view, "s9"), packer(view)
    theirs.give(ORDER, PART_COMB, PART_SHUTTLE)
    view.facts["order/3306"] = replace(view.get(Order, "3306"), state="cancelled")
    assert other.give(ORDER).asks == "supervisor"
    assert view.get(Order, "3306").claimed == "s9"
    assert str(theirs.give(PART_COMB).do) == "3 more to put back."
    assert view.get(Order, "3306").claimed == "s9"
    assert str(theirs.give(press("take_back")).do) == "Take the next order."
    assert view.get(Order, "3306").claimed == ""


def test_a_pack_opened_elsewhere_is_not_opened_twice():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("close_pack"))
    (pack,) = view.shelf(Pack, "packed")
    view.facts["order/3306"] = replace(view.get(Order, "3306"), state="cancelled", claimed="s9")
    refused = player.give(Code("pack", pack.id), OPEN_AGAIN)
    assert str(refused.said) == "Station s9 packs order 3306"
    assert view.get(Pack, pack.id).state == "packed"


def test_what_the_office_changed_while_it_was_packed_is_not_shipped():
    view = shop()
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    fewer = replace(view.get(Order, "3306"), lines=(Line(product="040", quantity=2),))
    view.facts["order/3306"] = fewer
    assert str(player.give(press("close_pack")).said) == "Too many: 1 × ST-200"
    assert [r.cells[1].tone for r in screen.screen(player.hand, view).main[2].rows] == ["stop"] * 2
    player.give(press("take_back"), Number("1"), PART_SHUTTLE)
    player.give(press("take_back"), Number("1"), PART_COMB)
    assert not player.give(press("close_pack")).refused


@pytest.mark.parametrize("parts", [None, (("999", 1),)])
def test_what_nobody_entered_cannot_be_packed(parts):
    product = [Product(id="077", name="NEW", words="New", parts=parts)] if parts else []
    two = (Line(product="040", quantity=1), Line(product="077", quantity=1))
    view = shop(order(lines=two), *product)
    said = str(packer(view).give(ORDER).said)
    assert said == f"Order 3306 wants {'999' if parts else '077'}, which nobody entered"


def test_the_next_order_is_the_first_that_is_all_there():
    early = Order(id="3301", due=DUE.replace("15", "11"), lines=(Line(product="040", quantity=9),))
    waits = replace(early, id="3302", due=DUE.replace("15", "12"), state="waiting", waits=SHUTTLE)
    there = replace(waits, id="3303", lines=(Line(product="040", quantity=1),))
    view = shop(early, waits, there)
    player = packer(view)
    player.give(press("next_order"))
    assert player.hand.subject == "3303"
    player.give(press("next_order"))
    assert player.hand.subject == "3306"
    player.give(PART_COMB, press("next_order"))
    assert player.hand.subject == "3303"  # put down untouched before, so it is free
    player.give(press("all_of_it"), press("all_of_it"), press("close_pack"))
    player.give(press("next_order"))
    assert player.hand.subject == "3306"  # its pack is begun here
    player.give(press("next_order"))
    assert player.hand.subject == "3301"  # nothing is all there: the first that is free


def test_a_number_changes_a_pick_only_directly_after_it():
    player = packer(shop())
    player.give(ORDER, PART_COMB)
    assert player.hand.work.picked
    player.give(Code("part", "999"))
    assert str(player.give(Number("1")).said) == "1 of the next part"


def test_pieces_of_a_batch_for_the_order_are_in_its_pack_already():
    view = shop(moves=(move(COMB, 5, "cut", "packing/3306", "00200"),))
    player = packer(view)
    player.give(ORDER, PART_SHUTTLE)
    assert str(player.give(press("close_pack")).said) == "Too many: 2 × HC-300"
    player.give(press("take_back"), Number("2"), PART_COMB, press("close_pack"))
    assert view.get(Order, "3306").state == "packed"


def test_what_is_blocked_keeps_a_row_where_many_are_ready():
    kit = Product(id="060", name="KIT", words="Kit", parts=(("045", 2),))
    one = {"lines": (Line(product="040", quantity=1),)}
    ready = [order(id=f"34{n:02}", due=f"{DUE[:11]}16:{n:02}:00", **one) for n in range(9)]
    none = [order(id=f"35{n:02}", lines=(Line(product="060", quantity=1),)) for n in range(3)]
    view = shop(kit, *ready, *none)
    player = packer(view)
    face = screen.screen(player.hand, view)
    assert str(face.main[1].title) == "By what can leave · 3 more"
    assert [str(e.big) for e in face.main[1].entries] == [
        "3306",
        *(f"34{n:02}" for n in range(6)),
        "SG-10 blocks 3",
    ]
    assert str(face.main[1].entries[-1].line1) == "3500, 3501, 3502 · none under way"
    player.give("SG-10 blocks 3")
    assert player.hand.subject == "3500"
    beside = screen.screen(player.hand, view).side[0]
    assert [str(cells[0].text) for cells, _ in beside.rows] == [
        "3306",
        "3400",
        "3401",
        "SG-10",
    ]
    assert str(beside.title) == "Waiting to pack · 7 more"


def test_orders_that_are_due_too_late_to_be_looked_through_are_counted_too():
    kit = Product(id="060", name="KIT", words="Kit", parts=(("045", 2),))
    one = {"lines": (Line(product="040", quantity=1),)}
    some = [order(id=f"{3400 + n}", **one) for n in range(9)]
    none = [order(id=f"{3500 + n}", lines=(Line(product="060", quantity=1),)) for n in range(150)]
    player = packer(shop(kit, *some, *none))
    waits = screen.screen(player.hand, player.view).main[1]
    assert str(waits.entries[-1].big) == f"SG-10 blocks {LOOKED - 10} or more"
    assert str(waits.entries[-1].line1).startswith("3500, 3501, 3502 … · ")
    assert str(waits.title) == "By what can leave · 3 and more"
    player.give(ORDER)
    beside = screen.screen(player.hand, player.view).side[0]
    assert str(beside.rows[-1][0][1].text) == f"blocks {LOOKED - 10} or more orders"
    assert str(beside.title) == "Waiting to pack · 6 and more"


def test_the_next_order_is_found_behind_those_that_are_listed():
    kit = Product(id="060", name="KIT", words="Kit", parts=(("045", 2),))
    one = {"due": f"{DUE[:11]}10:00:00", "lines": (Line(product="060", quantity=1),)}
    first = [order(id=f"{3500 + n}", **one) for n in range(LOOKED + 20)]
    player = packer(shop(kit, *first))  # 3306 leaves at three, all parts are there
    player.give(press("next_order"))
    assert player.hand.subject == "3306"
    player = packer(shop(kit, *first))
    player.give(press("walk"))
    assert player.hand.work.walk == ("3306",)


def test_lists_beside_the_orders_tell_what_they_leave_out():
    gone = [order(id=f"{3600 + n}", state="cancelled") for n in range(5)]
    told = [Concern(id=f"c{o.id}", what="cancelled", about=o.key, since=DUE, text=say("back"))
            for o in gone]  # fmt: skip
    others = [Concern(id=f"a{n}", what="recount", about="part/014", since=DUE, text=say("x"))
              for n in range(60)]  # fmt: skip
    ahead = [Product(id=f"07{n}", name=f"P{n}", words="x", parts=((COMB, 1),), mark=2)
             for n in range(6)]  # fmt: skip
    view = shop(*gone, *others, *told, *ahead)
    titles = [str(b.title) for b in screen.screen(packer(view).hand, view).side]
    assert titles[:2] == ["To put back: 2 more", "On the shelf: 2 more"]
