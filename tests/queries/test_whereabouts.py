"""The page of a thing: every line of it, or how many more there are."""

import pytest

from station.floor.anywhere.finding import LINES, cut_lines
from station.queries.whereabouts import find_thing
from station.shop.codes import Code
from station.shop.facts import Cart, Line, Order, Pack, Router, Slip
from station.shop.moves import move
from tests.floor.orders import shop
from tests.floor.shop_small import COMBS, DAY, SHUTTLE, batch, small_shop


def say_lines(lines):
    """The lines of a list as the page shows them."""
    return [str(line.what) for line in cut_lines(lines)]


def test_what_is_coming_stands_above_the_orders_and_those_left_out_are_counted():
    many = [
        Order(id=f"{3400 + n}", due=f"{DAY}T16:00:00", lines=(Line(product="040", quantity=1),))
        for n in range(20)
    ]
    view = shop(batch(COMBS), *many)
    view._move((move(SHUTTLE, 7, "cut", "trimming", "00412"),))
    thing = find_thing(view, Code("part", SHUTTLE), f"{DAY}T10:00:00")
    said = say_lines(thing.promised)
    takers = [line for line in thing.promised if "for order" in str(line.what)]
    assert said[0] == "7 coming"
    assert said[-1] == f"{len(takers) - (LINES - 2)} more"
    assert len(takers) >= 20


def test_a_sheet_that_a_batch_never_gets_is_not_told_as_one_to_be_cut():
    view = small_shop(batch(COMBS, sheets=3))
    said = [
        str(find_thing(view, Code("batch", "00412", "A", n), f"{DAY}T10:00:00").said)
        for n in (3, 4)
    ]
    assert said == [
        "Sheet 3 of batch 00412 is not cut yet",
        "Batch 00412 has 3 sheets, no sheet 4",
    ]


@pytest.mark.parametrize(
    ("bits", "told"),
    [(("11", "18"), "Router 3, bit 11 and bit 18"), ((), "Router 3 and bit 11")],
)
def test_a_pack_tells_every_bit_that_cut_its_pieces(bits, told):
    """A slip of before tells the first alone."""
    slip = Slip(id="00412-1", batch="00412", sheet=1, router="3", at=f"{DAY}T09:00:00",
                bit="11", bits=bits)  # fmt: skip
    kept = Pack(id="00061", order="", product="040", mailer="01", state="shelf")
    view = shop(batch(COMBS, router="3"), slip, kept, Router(id="3", name="Router 3"))
    view._move((move(SHUTTLE, 7, "cut", "pack/00061", "00412"),))
    (line,) = find_thing(view, Code("pack", "00061"), f"{DAY}T10:00:00").origin
    assert str(line.where) == told


def test_a_cart_is_late_while_packs_wait_for_it_on_its_page_too():
    waits = Pack(id="00061", order="3306", mailer="01", state="packed")
    view = shop(Cart(id="1", name="Cart 1", goes="11:30"), waits)
    late = find_thing(view, Code("cart", "1"), f"{DAY}T11:52:00")
    assert str(late.note) == "late: 11:30"


@pytest.mark.parametrize(
    ("planned", "cut_on", "told"),
    [("", (), ""), ("3", (), "Router 3"), ("3", ("4", "3"), "Router 4 and Router 3"),
     ("", ("4",), "Router 4")],
)  # fmt: skip
def test_a_pack_tells_the_routers_that_really_cut_its_pieces(planned, cut_on, told):
    made = batch(COMBS, router=planned)
    slips = [
        Slip(id=f"00412-{n}", batch="00412", sheet=n, router=router, at=f"{DAY}T09:00:00")
        for n, router in enumerate(cut_on, 1)
    ]
    kept = Pack(id="00061", order="", product="040", mailer="01", state="shelf")
    routers = [Router(id=n, name=f"Router {n}") for n in "34"]
    view = shop(made, *slips, kept, *routers)
    view._move((move(SHUTTLE, 7, "cut", "pack/00061", "00412"),))
    thing = find_thing(view, Code("pack", "00061"), f"{DAY}T10:00:00")
    assert [str(line.where) for line in thing.origin] == [told]
