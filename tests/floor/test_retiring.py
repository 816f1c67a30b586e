"""Records are retired, not deleted: not while they are in use, and they come back."""

from dataclasses import replace

import pytest

from station.floor.loading.needs import refuse_lot
from station.floor.loading.rules import RULES as LOADING_RULES
from station.floor.office import screen
from station.floor.office.lists import LISTS, list_facts
from station.floor.office.rules import RULES
from station.shop.facts import (
    Bed,
    Bit,
    Cart,
    CutFile,
    Lot,
    Mailer,
    Material,
    Order,
    Part,
    Product,
    Purchase,
    RackPlace,
    Revision,
    Router,
)
from station.shop.facts.orders import Line
from station.shop.fields import fields_by_name
from station.shop.moves import move
from station.shop.plain import to_plain
from tests.floor.shop_small import batch, small_shop
from tests.floor.test_office import act, office

# one is cancelled, of another a newer one is approved, of what never comes fewer were bought
GIVEN_BY_STATE = (Order, Revision, Purchase)


@pytest.fixture
def view():
    """The small shop; what the tests retire is in it a second time, out of use."""
    spare = (
        Material(id="90", name="Cork", thickness_mm=4.0, low_mm=3.0, high_mm=5.0),
        Lot(id="0990", material="90", received="2026-11-02"),
        Bit(id="90", words="1.0 mm", diameter_mm=1.0),
        Cart(id="9", name="Cart 9"),
        RackPlace(id="990", name="Z 99"),
        Part(id="990", name="OLD-1", words="Old part"),
        Product(id="990", name="OLD-SET", words="Old set", parts=(("014", 1),)),
        CutFile(id="990", name="OLD-FILE", words="Old"),
        Router(id="9", name="Router 9"),
        Mailer(id="90", name="Sleeve", length_mm=100.0, width_mm=100.0),
    )
    return small_shop(batch(), *spare)


SPARE = (
    (Material, "90"), (Lot, "0990"), (Bit, "90"), (Cart, "9"), (RackPlace, "990"), (Part, "990"),
    (Product, "990"), (CutFile, "990"), (Router, "9"), (Mailer, "90"),
)  # fmt: skip


def put(view, kind, number, **fields):
    """Saves a known thing with some fields changed."""
    value = {**to_plain(view.get(kind, number)), **fields}
    return view.do(RULES, act("set_fact", kind=kind.kind, value=value))


def test_every_list_can_retire_what_is_on_it():
    kinds = {entry.kind for entry in LISTS} - {*GIVEN_BY_STATE}
    assert {k.kind for k in kinds if "active" not in fields_by_name(k)} == {"shop"}


@pytest.mark.parametrize(("kind", "number"), SPARE, ids=lambda one: getattr(one, "kind", one))
def test_what_is_not_in_use_is_retired_and_comes_back(view, kind, number):
    assert put(view, kind, number, active=False).tone == "good"
    retired = view.get(kind, number)
    assert not retired.in_use
    assert retired in list_facts(kind, view)
    assert put(view, kind, number, active=True).tone == "good"
    assert view.get(kind, number) == replace(retired, active=True)


@pytest.mark.parametrize(
    ("kind", "number", "said"),
    [
        (
            Material,
            "1",
            "6.5 mm birch plywood is still in use: 40 sheets of lot 0931 lie there: sheet store",
        ),
        (Lot, "0931", "Lot 0931 is still in use: 40 sheets of lot 0931 lie there: sheet store"),
        (Bit, "11", "Bit 11 is still in use: it is in Router 1"),
        (RackPlace, "014", "C 14 is still in use: HC-300 has its place there"),
        (Part, "021", "ST-200 is still in use: it belongs to LOOM-KIT"),
        (CutFile, "008", "HC300-SET is still in use: batch 00412 is cut from it"),
    ],
)
def test_what_is_in_use_is_not_retired_and_one_sentence_says_why(view, kind, number, said):
    answer = put(view, kind, number, active=False)
    assert answer.refused
    assert str(answer.said) == said
    assert view.get(kind, number).in_use


def test_pieces_on_it_keep_a_place_a_part_and_a_cart(view):
    lying = (move("990", 3, "found", "rack/990", "00412"),)
    view.facts["part/990"] = replace(view.get(Part, "990"), rack="990")
    view._move(lying)
    said = [str(put(view, kind, "990", active=False).said) for kind in (Part, RackPlace)]
    assert said == [
        "OLD-1 is still in use: 3 lie on the rack",
        "Z 99 is still in use: 3 parts lie there",
    ]


def test_an_order_keeps_its_product_and_a_bit_inside_its_router(view):
    view.facts["order/3306"] = Order(
        id="3306", due="2026-11-25T14:00:00", lines=(Line(product="990", quantity=2),)
    )
    view.facts["bed/9"] = Bed(id="9", bits=((0, "90"),))
    wrong = [str(put(view, *one, active=False).said) for one in ((Product, "990"), (Router, "9"))]
    assert wrong == [
        "OLD-SET is still in use: order 3306 wants it",
        "Router 9 is still in use: bit 90 is in it",
    ]


def test_nothing_new_names_what_is_retired(view):
    put(view, Part, "990", active=False)
    answer = put(view, Product, "990", parts=[["014", 1], ["990", 2]])
    assert str(answer.said) == "OLD-1 is retired: bring it back first, or name another"


def test_what_is_retired_is_put_to_work_nowhere(view):
    for kind, number in ((Lot, "0990"), (Bit, "90"), (Cart, "9")):
        put(view, kind, number, active=False)
    revision = replace(next(iter(view.shelf(Revision, "008"))), material="90")
    said = [
        refuse_lot(view, revision, "0990"),
        view.do(LOADING_RULES, act("change_bit", "bed/9", bit="90", pocket=0)),
    ]
    assert [str(one.said) for one in said] == ["Lot 0990 is retired", "Bit 90 is retired"]
    assert Cart(id="9", name="Cart 9", active=False) not in view.shelf(Cart, "all")


def test_a_retired_one_is_told_in_its_list(view):
    put(view, Cart, "9", active=False)
    table = screen.screen(office(list="cart"), view).main[0]
    assert [str(row.note) for row in table.rows if row.title == "9"] == ["retired · Cart 9"]
