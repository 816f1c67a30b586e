"""The demo's orders at the packing screen: a touch for each line to take, and one for the order.

The order's own scan takes it, a touch on each row of its table takes all of that part; the next
order's scan closes its pack. What is touched must stand on the screen.
"""

from datetime import datetime

import pytest

from demo_db.build import build
from station import bootstrap
from station.bootstrap import Where
from station.clock import Clock
from station.files import lists
from station.ledger.ledger import Ledger
from station.queries.leaving import walk_ready
from station.queries.orders import list_needs
from station.queries.shelf import count_sets
from station.queries.two_packs import plan_order
from station.shop.codes import write
from station.shop.facts import Order, Product
from tests.touch import list_touches

pytestmark = pytest.mark.slow

NOW = datetime(2026, 11, 25, 11, 30)


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    path = tmp_path_factory.mktemp("demo") / bootstrap.FILE
    build(path, NOW, days=1)
    ledger = Ledger(path, bootstrap.load_rules(), station="1")
    clock = Clock(NOW.isoformat())
    made = bootstrap.make_desk(ledger, Where(area="packing", worker="05"), clock)
    yield made
    assert ledger.check() == []
    ledger.close()


def touch_next(desk):
    """Touches the first row that is not done; its code must stand on the screen."""
    order = desk.ledger.view.get(Order, desk.hand.subject)
    part = next(n.part for n in list_needs(desk.ledger.view, order) if n.to_go)
    codes = [code for code, words in list_touches(desk.face().main) if part.name in words]
    assert codes, f"{part.name} stands on no row"
    given = desk.take(codes[0])
    assert given.answer.tone == "good", given.answer


def pack_order(desk, number, before):
    """Touches an order's row, then a row a part; the order before is closed by it."""
    view = desk.ledger.view
    assert desk.take(write("order", number)).answer.tone == "good"
    if before:
        assert view.get(Order, before).state == "packed"
    touches = 1
    while any(n.to_go for n in list_needs(view, view.get(Order, number))):
        touch_next(desk)
        touches += 1
    return touches


def list_lines(view, number):
    """What is to be taken for an order, a line a part."""
    return [n for n in list_needs(view, view.get(Order, number)) if n.to_go]


def test_touches_of_an_order_are_its_lines_and_one(desk):
    view = desk.ledger.view
    ready = [o for o in walk_ready(view, "1") if not o.claimed and not plan_order(view, o)]
    packed, before = 0, ""
    for order in ready:
        lines = list_lines(view, order.id)
        if lines and not any(n.lacking for n in lines):
            assert pack_order(desk, order.id, before) == len(lines) + 1
            packed, before = packed + 1, order.id
    assert packed >= 2  # packing keeps pace: few orders wait; more lines are made below


@pytest.mark.parametrize("lines", [1, 2, 3, 4, 5, 6])
def test_an_order_of_so_many_lines_takes_one_touch_more(desk, lines, tmp_path):
    """Its lines are products of one part that the rack has."""
    view, now = desk.ledger.view, NOW.isoformat()
    there = (p for p in view.shelf(Product, "all", 500) if len(p.parts) == 1)
    mine = [p for p in there if count_sets(view, p) > 0][:lines]
    assert len(mine) == lines
    asked = "; ".join(f"{p.id} x 1" for p in mine)
    file, number = tmp_path / "order.csv", f"990{lines}"
    file.write_text(f'id;due;lines\n{number};{now};"{asked}"\n', encoding="utf-8")
    assert lists.read(desk.ledger, Order, file, "07", now, f"list{lines}") == []
    assert pack_order(desk, number, "") == lines + 1
