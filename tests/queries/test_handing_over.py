"""What one shift leaves to the next: each bed with its sheet and stop, each open pack."""

from dataclasses import replace

import pytest

from station.floor.anywhere import screen
from station.queries.handing_over import list_left_beds, list_open_packs
from station.shop.facts import Bed, Line, Order, Product, Reason, Router, Slip
from station.shop.rooms import Aside
from tests.fakes import FakeView
from tests.floor.shop_small import DAY, hand

NOW = f"{DAY}T15:50:00"
CUTTING = {"state": "cutting", "batch": "00412", "sheet": 3, "started": f"{DAY}T15:40:00"}


@pytest.mark.parametrize(
    ("bed", "words", "wrong"),
    [
        ({}, "free", False),
        ({"batch": "00412"}, "batch 00412 is taken on", False),
        ({**CUTTING, "minutes": 22.0}, "batch 00412, sheet 3 on it, off at 16:02", False),
        (
            {**CUTTING, "minutes": 5.0},
            "batch 00412, sheet 3 on it, should be off since 15:45",
            True,
        ),
        (
            {**CUTTING, "state": "stopped", "stop": "31", "stopped": f"{DAY}T15:43:00"},
            "batch 00412, sheet 3 on it and stopped since 15:43: vacuum lost",
            True,
        ),
        (
            {"state": "stopped", "stop": "31", "stopped": "2026-11-24T09:10:00"},
            "free and stopped since 24 Nov 09:10: vacuum lost",
            True,
        ),
        ({"zero": "new bit", "rehome": "power"}, "free, zero is due and re-home it", True),
    ],
)
def test_what_is_left_on_a_bed(bed, words, wrong):
    view = FakeView.of(
        Router(id="1", name="R1"),
        Bed(id="1", **bed),
        Reason(id="31", words="vacuum lost", use="stop"),
    )
    (left,) = list_left_beds(view, NOW)
    assert (str(left.words), left.wrong) == (words, wrong)


def open_orders(count):
    """Orders of six pieces, four of them in the pack."""
    six = (Line(product="061", quantity=6),)
    view = FakeView.of(Product(id="061", name="K", words="k", parts=(("014", 1),)))
    for number in (f"{n}" for n in range(3301, 3301 + count)):
        view.facts[f"order/{number}"] = Order(id=number, due=NOW, lines=six, claimed="2")
        view.pieces[f"packing/{number}", "00001", "014"] = 4
    return view


def test_open_packs_stand_by_due_time_whether_they_are_packed_or_put_back():
    view = open_orders(3)
    due = {"3301": f"{DAY}T16:00:00", "3302": f"{DAY}T09:00:00", "3303": f"{DAY}T11:00:00"}
    for number, at in due.items():
        order = view.facts[f"order/{number}"]
        state = "cancelled" if number == "3303" else "packing"
        view.facts[order.key] = replace(order, due=at, state=state)
    assert [p.order.id for p in list_open_packs(view)] == ["3302", "3303", "3301"]


def test_open_packs_are_told_and_those_of_cancelled_orders():
    view = open_orders(1)
    view.facts["order/3302"] = Order(id="3302", due=NOW, lines=(), state="cancelled")
    view.facts["order/3303"] = Order(id="3303", due=NOW, lines=())  # nothing in it
    view.pieces["packing/3302", "00001", "014"] = 2
    assert [(p.order.id, str(p.words)) for p in list_open_packs(view)] == [
        ("3301", "4 of 6 in it, at station 2"),
        ("3302", "2 to put back: it is cancelled"),
    ]


def test_the_handover_says_what_it_leaves_out():
    view = open_orders(400)
    for n in range(1, 31):
        view.facts[f"slip/00412-{n}"] = Slip(
            id=f"00412-{n}", batch="00412", sheet=n, router="1", at=NOW
        )
    at = hand("packing", "15:50", aside=Aside(what="handover"))
    titles = [str(block.title) for block in screen.screen(at, view).main]
    assert titles == ["At popping: 25 more", "At trimming", "Open packs: 395 more"]
