"""A count that can hardly be so: which orders are named, and which batch the book takes from."""

import re

from station.floor.anywhere.rules import RULES
from station.shop.acts import Act
from station.shop.faces import Cards
from station.shop.facts import Line, Order, Part, Product
from tests.fakes import FakeView
from tests.floor.shop_small import DAY, at, batch, small_shop

PART = "014"


def order(number, hour, pieces):
    line = Line(product="091", quantity=pieces)
    return Order(id=number, due=f"{DAY}T{hour}:00:00", lines=(line,))


def shop(*facts) -> FakeView:
    one = Product(id="091", name="ONE", words="one", parts=((PART, 1),))
    view = small_shop(one, *facts)
    for lot in ("00411", "00412"):
        lying = batch(id=lot, state="cut", cut=4)
        view.facts[lying.key] = lying
    return view


def recount(view, kind="recount_place", subject=f"part/{PART}", **args):
    told = {"part": PART, **args}
    return view.do(RULES, Act(id="c1", kind=kind, at=at("10:00"), subject=subject, args=told))


def place(view):
    part = view.get(Part, PART)
    return f"rack/{part.rack}"


def test_only_orders_that_would_lack_it_by_the_count_are_named():
    view = shop(order("3301", "11", 10), order("3302", "12", 15), order("3303", "13", 30))
    view.pieces[place(view), "00411", PART] = 40
    asked = recount(view, counted=12)
    assert "1 order would lack it: 3302" in str(asked.do)  # the third lacks it as it is


def test_what_lies_before_the_rack_is_lacked_only_where_all_is_too_few():
    view = shop(order("3301", "11", 10))
    view.pieces[place(view), "00411", PART] = 12
    view.pieces["trimming", "00412", PART] = 30
    args = {"kind": "recount", "subject": "batch/00412", "place": "trimming"}
    assert "would lack" not in str(recount(view, **args, counted=5).do)
    view.pieces[place(view), "00411", PART] = 0
    assert "1 order would lack it: 3301" in str(recount(view, **args, counted=5).do)


def test_the_book_takes_what_is_too_few_from_its_oldest_batch():
    view = shop()
    view.pieces[place(view), "00411", PART] = 20
    view.pieces[place(view), "00412", PART] = 20
    done = recount(view, counted=38, reason="51", sure=True)
    assert [(m.frm.batch, m.qty) for m in done.moves] == [("00411", 2)]


def test_five_pieces_away_are_not_far_and_more_than_a_tenth_of_a_heap_is():
    view = shop()
    view.pieces[place(view), "00411", PART] = 40
    assert recount(view, counted=35).asks == "reason"
    assert recount(view, counted=34).asks == "sure"
    view.pieces[place(view), "00411", PART] = 100
    assert recount(view, counted=90).asks == "reason"
    assert recount(view, counted=89).asks == "sure"


def test_only_the_reasons_of_recounts_are_offered(stage):
    for line in ("@worker 07", "@area trimming", "button recount", "rack 045"):
        said = str(stage.send(line).answer.said)
    book = int(re.search(r": (\d+) ", said)[1])
    assert stage.send(str(book + 1)).answer.asks == "reason"
    (cards,) = [b for b in stage.desk.face().main if isinstance(b, Cards)]
    assert [str(e.big) for e in cards.entries] == [
        "counted again", "found elsewhere", "given as a sample", "book was wrong",
        "not to be found",
    ]  # fmt: skip
