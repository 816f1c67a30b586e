"""The order list: written from the plan's screen as a page and as a CSV file."""

import csv
from dataclasses import replace

import pytest

from station import bootstrap
from station.files.folder import ShopFolder
from station.files.order_list import OrderLists, write_csv
from station.floor.plan.dialogue import handle_input
from station.floor.plan.screen import screen
from station.papers.order_list import make_order_list
from station.planning.messages import CuttingPlan, ToOrder
from station.shop.cards import BUTTONS, button
from station.shop.codes import Code
from station.shop.faces import Listing
from station.shop.file_requests import OrderRow, WriteOrderList
from station.shop.rooms import FileJob, Took
from tests.floor.shop_small import hand, small_shop
from tests.replay import START
from tests.replay import small_shop as replay_shop

NOW = "2026-11-25T10:42:00"
SHEETS = ToOrder(of="material", id="1", name="6.5 mm birch plywood", quantity=40, by="2026-11-27",
                 lasts=6.0, lead_days=4, lead_known=True, expected="2026-12-01", a_day=2.0,
                 coming=10, price=31.5)  # fmt: skip
BITS = ToOrder(of="bit_size", id="", name="", quantity=3, by="2026-11-26", lasts=4.5, lead_days=5,
               lead_known=False, expected="2026-12-02", a_day=0.1, diameter_mm=6.0)  # fmt: skip
PLAN = CuttingPlan(at=NOW, order=(BITS, SHEETS))
ORDER_LIST = Code("button", BUTTONS["order_list"].number)


@pytest.fixture
def ledger(tmp_path):
    with bootstrap.open_ledger(tmp_path / "data") as opened:
        bootstrap.seed_shop(opened, replay_shop(), NOW, stock=START)
        yield opened


def plan_hand(plan):
    return replace(hand("plan"), thought=plan)


def test_the_screen_shows_both_and_offers_the_list():
    face = screen(plan_hand(PLAN), small_shop())
    (orders,) = [b for b in face.side if isinstance(b, Listing) and "Order soon" in str(b.title)]
    assert [[str(cell.text) for cell in cells] for cells, _ in orders.rows] == [
        ["6 mm bit", "3", "by 26 Nov"], ["6.5 mm birch plywood", "40", "by 27 Nov"],
    ]  # fmt: skip
    assert button("order_list") in [p.code for p in face.presses]
    nothing = screen(plan_hand(CuttingPlan(at=NOW)), small_shop())
    assert button("order_list") not in [p.code for p in nothing.presses]


def test_the_button_asks_for_what_the_plan_says_the_most_urgent_first():
    asked = handle_input(plan_hand(PLAN), ORDER_LIST, small_shop())
    assert isinstance(asked, FileJob)
    assert isinstance(asked.request, WriteOrderList)
    assert asked.request.at == NOW  # of its figures, however much later it is written
    assert [(r.what, r.quantity, r.lead_known) for r in asked.request.rows] == [
        ("6 mm bit", 3, False), ("6.5 mm birch plywood", 40, True),
    ]  # fmt: skip
    nothing = handle_input(plan_hand(CuttingPlan(at=NOW)), ORDER_LIST, small_shop())
    assert isinstance(nothing, Took)
    assert nothing.answer.refused


def test_page_and_file_lie_beside_each_other_and_none_is_written_over(ledger):
    folder = ShopFolder(ledger, lambda: NOW)
    rows = handle_input(plan_hand(PLAN), ORDER_LIST, small_shop()).request.rows
    lists = OrderLists(ledger, folder)
    for _ in range(2):
        took = lists.write(WriteOrderList(rows=rows, at=NOW), plan_hand(PLAN))
        assert str(took.answer.said) == "The order list is written: 2 lines"
    files = sorted(f.name for f in folder.path.iterdir())
    assert [name.rpartition(".")[2] for name in files] == ["csv", "pdf", "csv", "pdf"]
    with (folder.path / files[0]).open(encoding="utf-8-sig", newline="") as text:
        read = list(csv.DictReader(text))
    assert read[1] == {"what": "6.5 mm birch plywood", "quantity": "40", "by": "2026-11-27",
                       "lasts_days": "6", "lead_days": "4", "lead_known": "yes",
                       "on_its_way": "10", "price": "31.50", "cost": "1260.00"}  # fmt: skip
    assert read[0]["price"] == ""  # nobody has entered it
    assert (folder.path / files[1]).read_bytes().startswith(b"%PDF")


def test_no_name_is_taken_for_a_formula():
    row = OrderRow(what="=SUM(A1)", quantity=1, by="2026-11-27", lasts_days=1.0, lead_days=5)
    assert "'=SUM(A1)" in write_csv((row,))


@pytest.mark.parametrize("paper", ["A4", "A5"])
def test_a_long_list_goes_on_on_a_further_page(paper):
    row = OrderRow(what="6.5 mm birch plywood", quantity=40, by="2026-11-27", lasts_days=6.0,
                   lead_days=5, lead_known=False)  # fmt: skip
    short = make_order_list((row,), at=NOW, paper=paper)
    long = make_order_list((row,) * 40, at=NOW, paper=paper)
    assert len(long.write_pdf()) > len(short.write_pdf())
