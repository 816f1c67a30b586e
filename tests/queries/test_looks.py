"""What needs a look by itself: it is there while it is so, and gone once it is mended."""

from dataclasses import replace

import pytest

from station.floor.today import dialogue, screen
from station.queries.looks import list_raised
from station.shop.cards import button
from station.shop.codes import read
from station.shop.facts import Cart, Concern, Line, Order, Pack, Part, Product, Purchase
from tests.fakes import FakeView
from tests.floor.shop_small import DAY, batch, hand, small_shop

NOW = f"{DAY}T11:52:00"


def order(number, due=f"{DAY}T10:00:00", state="open"):
    return Order(id=number, lines=(), due=due, state=state)


def lines(view, now=NOW):
    return [(r.kind, str(r.words), r.things, r.press) for r in list_raised(view, now)]


def test_late_orders_raise_themselves_and_go_when_they_have_left():
    view = FakeView.of(
        *(order(f"330{n}", f"{DAY}T0{n}:00:00") for n in range(1, 5)),
        order("3305", f"{DAY}T11:51:00", "packed"),
        order("3306", f"{DAY}T12:00:00"),
    )
    words = "5 orders are late: 3301, 3302, 3303 …"
    assert lines(view) == [("late", words, 5, "area_packing")]
    assert list_raised(view, NOW)[0].since == f"{DAY}T01:00:00"
    for number in ("3301", "3302", "3303", "3304", "3305"):
        view.facts[f"order/{number}"] = order(number, state="shipped")
    assert lines(view) == []


def test_a_part_that_blocks_ten_orders_raises_itself_until_it_is_there():
    part = Part(id="014", name="HC-300", words="x", rack="014")
    product = Product(id="061", name="K", words="k", parts=(("014", 1),))
    later = f"{DAY}T15:00:00"
    orders = [
        Order(id=f"33{n}", due=later, lines=(Line(product="061", quantity=1),))
        for n in range(10, 20)
    ]
    view = FakeView.of(part, product, *orders)
    assert lines(view) == [("blocks", "Blocks 10 orders: HC-300", 1, "area_plan")]
    view.pieces["rack/014", "00001", "014"] = 10
    assert lines(view) == []


def test_a_late_cart_raises_itself_while_anything_waits_for_it():
    pack = Pack(id="00001", order="1", mailer="")
    view = FakeView.of(Cart(id="1", name="Cart 1", goes="11:30"), pack)
    assert lines(view) == [("cart", "Cart 1 should have gone at 11:30", 1, "area_cart")]
    assert lines(view, f"{DAY}T11:20:00") == []
    view.facts["cart/1"] = Cart(id="1", name="Cart 1", goes="11:30", left=f"{DAY}T11:40:00")
    assert lines(view) == []


def test_a_held_batch_that_nothing_tells_of_raises_itself():
    held = batch(holds=("revision D is approved now",))
    view = small_shop(held)
    assert lines(view) == [("held", "1 batch is held: 00412", 1, "release")]
    told = Concern(id="c1", what="hold", text="Held", since=NOW, about=held.key)
    view.facts[told.key] = told
    assert lines(view) == []  # it stands there already, to be settled
    view.facts[told.key] = replace(told, settled="keep it", settled_at=NOW)
    assert lines(view) == [("held", "1 batch is held: 00412", 1, "release")]
    view.facts[held.key] = batch()
    assert lines(view) == []


def test_sheets_of_a_begun_batch_of_an_old_revision_raise_themselves_until_it_is_over():
    begun = batch(cut=2, state="cutting", revision="B")
    words = "1 begun batch can't be cut to the end, another revision is approved: 00412"
    view = small_shop(begun)
    assert lines(view) == [("unmade", words, 1, "area_office")]
    view.facts[begun.key] = replace(begun, cut=0)  # not begun: the office releases it anew
    assert lines(view) == []
    view.facts[begun.key] = replace(begun, state="cut", sheets=2)
    assert lines(view) == []


def concern(n):
    since = f"{DAY}T08:{n // 60:02d}:{n % 60:02d}"
    return Concern(id=f"c{n:03d}", what="hold", text=f"Look {n}", since=since)


@pytest.mark.parametrize("count", [1, 6, 7, 13, 300])
def test_everything_is_reached_page_by_page_the_worst_and_newest_first(count):
    concerns = [concern(n) for n in range(1, count + 1)]
    concerns[0] = replace(concerns[0], tone="stop")
    view = FakeView.of(*concerns, order("3301"))
    at = dialogue.handle_input(hand("today", "11:52"), read(button("show_concerns")), view).hand
    seen, touch = [], {button(f"row_{n}") for n in range(1, 7)}
    for _ in range(dialogue.list_page(at, view)[2]):
        shown = screen.screen(at, view).main[0].rows
        assert len(shown) <= dialogue.ROWS
        chosen = (dialogue.handle_input(at, read(r.code), view) for r in shown if r.code in touch)
        seen += [took.hand.subject for took in chosen]
        at = dialogue.handle_input(at, read(button("next_page")), view).hand
    newest = [c.id for c in reversed(concerns[1:])]
    assert seen == ["c001", *newest]
    title = str(screen.screen(hand("today", "11:52"), view).side[-1].title)
    assert title == ("Needs a look" if count < 3 else f"Needs a look, and {count - 2} more")


def test_all_is_well_is_not_said_while_orders_are_late():
    view = FakeView.of(order("3301"))
    answer = dialogue.handle_input(hand("today", "11:52"), read(button("show_concerns")), view)
    assert str(answer.answer.said) == "1 thing needs a look"
    listed = screen.screen(hand("today", "11:52"), view).side[-1]
    assert [(str(cells[0].text), code) for cells, code in listed.rows] == [
        ("1 order is late: 3301", button("area_packing"))
    ]


def test_what_should_have_come_raises_itself_until_it_is_there():
    late = Purchase(id="1", material="1", quantity=20, came=5, expected="2026-11-24")
    none_known = Purchase(id="2", mailer="01", quantity=50)
    today = Purchase(id="3", material="2", quantity=20, expected=DAY)
    view = small_shop(late, none_known, today)
    words = "1 purchase should have come: 6.5 mm birch plywood"
    assert lines(view) == [("purchase", words, 1, "area_office")]
    view.facts["purchase/1"] = replace(late, came=20)
    assert lines(view) == []
