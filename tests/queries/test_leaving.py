"""Which order can leave next, and which wait together for one part."""

from dataclasses import replace

from station.queries.leaving import LOOKED, are_more_open, gather_waiting, list_prospects
from station.shop.facts import Line, Order, Product
from station.shop.moves import move
from tests.floor.orders import shop
from tests.floor.shop_small import COMB, COMBS, DAY, GAUGE, SHUTTLE, batch

KIT = Product(id="060", name="KIT", words="Kit", parts=((COMB, 1), (GAUGE, 2)))
LOOM = Product(id="061", name="LOOM", words="Loom", parts=((GAUGE, 2), ("051", 1)))


def one(number, product, quantity=1, hour=10, **fields):
    """An order that leaves at that hour."""
    return Order(id=number, due=f"{DAY}T{hour}:00:00",
                 lines=(Line(product=product, quantity=quantity),), **fields)  # fmt: skip


def view_of(*orders):
    """Seven combs and shuttles, no gauges, no frames; 3306 lacks nothing, due at three."""
    return shop(KIT, LOOM, *orders)


def test_ready_ones_come_first_then_those_that_lack_one_part_then_the_others():
    view = view_of(one("3301", "061"), one("3302", "060"), one("3303", "999", hour=11))
    found = list_prospects(view, "s1")
    assert [(p.order.id, p.rank, p.ready) for p in found] == [
        ("3306", 0, True),
        ("3302", 1, False),
        ("3301", 2, False),
        ("3303", 2, False),
    ]
    assert [(x.part.id, x.pieces) for p in found[1:3] for x in p.lacks] == [
        (GAUGE, 2),
        (GAUGE, 2),
        ("051", 1),
    ]


def test_what_lies_in_its_pack_and_who_packs_it_count():
    there = move(GAUGE, 2, "found", "packing/3302", "00100")
    view = view_of(one("3302", "060"), one("3304", "040", claimed="s9", state="packing"))
    assert [p.order.id for p in list_prospects(view, "s1")] == ["3306", "3302", "3304"]
    assert [p.order.id for p in list_prospects(view, "s9")] == ["3304", "3306", "3302"]
    view._move((there,))
    assert next(p for p in list_prospects(view) if p.order.id == "3302").ready


def test_orders_that_one_part_blocks_stand_together():
    mine = one("3305", "060", hour=13, claimed="s1", state="packing")
    view = view_of(one("3302", "060"), one("3303", "060", 2, 12), mine, one("3301", "061"))
    found = gather_waiting(list_prospects(view, "s1"))
    told = [(w.blocked_by and w.blocked_by.id, [p.order.id for p in w.prospects]) for w in found]
    assert told == [
        (None, ["3306"]),
        (GAUGE, ["3302", "3303"]),
        (None, ["3305"]),
        (None, ["3301"]),
    ]
    assert found[1].first.id == "3302"


def test_a_held_batch_is_not_there():
    view = view_of()
    kept = replace(batch(COMBS, "00101"), holds=("crack",))
    view.facts[kept.key] = kept
    (found,) = list_prospects(view)
    assert [(x.part.id, x.pieces) for x in found.lacks] == [(COMB, 1)]
    assert SHUTTLE not in {x.part.id for x in found.lacks}


def test_orders_that_are_not_looked_through_are_told():
    many = [one(f"{3310 + n}", "060", hour=12) for n in range(150)]
    view = view_of(*many)
    assert (len(list_prospects(view, "s1")), are_more_open(view)) == (LOOKED, True)
    assert not are_more_open(view_of(*many[: LOOKED - 1]))
