"""The office's acts and its one form."""

import json
from dataclasses import replace

import msgspec
import pytest

from station.bootstrap import load_rooms
from station.desk import draft as drafts
from station.desk.draft import Draft
from station.floor.office import dialogue, lists, screen
from station.floor.office.lists import LISTS
from station.floor.office.rules import RULES
from station.floor.office.sound import find_problems, find_wrong_value
from station.floor.office.work import (
    Counting,
    EditedRows,
    FilesFound,
    Intake,
    OfficeWork,
    Releasing,
)
from station.queries.supplies import find_supply
from station.queries.unmade import raise_unmade
from station.shop.acts import Act
from station.shop.cards import button
from station.shop.codes import read
from station.shop.faces import Cards, Letters, Pairs
from station.shop.facts import (
    KINDS,
    Batch,
    Bed,
    Bit,
    BitSize,
    Concern,
    CutFile,
    Lot,
    Mailer,
    Notice,
    Order,
    Part,
    Pile,
    Product,
    Purchase,
    Push,
    RackPlace,
    Revision,
    Router,
    Shop,
    Slip,
    Worker,
)
from station.shop.field_texts import read_time
from station.shop.fields import find_field, typed_fields
from station.shop.file_requests import OpenCutFile
from station.shop.moves import move
from station.shop.plain import build, to_plain
from station.shop.rooms import Number, Typed
from station.shop.views import total
from station.shop.words import plain, say
from tests.floor.shop_small import COMBS, GAUGES, Player, batch, hand, small_facts, small_shop

DUE = "2026-11-26T14:00:00"
LINE = {"product": "061", "quantity": 2, "short": 0}


def act(kind, subject="", /, **args):
    return Act(
        id="a1",
        kind=kind,
        at="2026-11-25T10:00:00",
        worker="07",
        subject=subject,
        args={"approved": "07", **args},
    )


def office(**held):
    """A supervisor in the office with this open."""
    return hand("office", worker="07", work=OfficeWork(**held))


@pytest.fixture
def view():
    return small_shop(batch(), Order(id="3306", due="2026-11-25T14:00:00", lines=()))


@pytest.mark.parametrize("fact", small_facts(), ids=lambda f: f.key)
def test_every_fact_is_built_again_from_its_plain_values(fact):
    assert build(fact.kind, to_plain(fact)) == fact


@pytest.mark.parametrize(
    ("kind", "value", "problem"),
    [
        ("nothing", {}, "There is no list called nothing"),
        ("worker", {}, "number is missing"),
        ("worker", {"id": "03", "age": 3}, "There is no field age"),
        ("worker", {"id": 3}, "number must be a text"),
        ("worker", {"id": "a b"}, "Its number has letters, digits and dashes only"),
        (
            "material",
            {"id": "1", "name": "x", "thickness_mm": "six", "low_mm": 1.0, "high_mm": 2.0},
            "thickness, mm must be a number",
        ),
        (
            "material",
            {"id": "1", "name": "x", "thickness_mm": float("nan"), "low_mm": 1.0, "high_mm": 2.0},
            "thickness, mm must be a number",
        ),
        (
            "part",
            {"id": "1", "name": "x", "words": "y", "mark": 10**9},
            "minimum must be a whole number",
        ),
        (
            "part",
            {"id": "1", "name": "x", "words": "y", "mark": True},
            "minimum must be a whole number",
        ),
        (
            "product",
            {"id": "1", "name": "x", "words": "y", "parts": [["014"]]},
            "parts needs 2 values",
        ),
    ],
)
def test_what_does_not_fit_is_said(kind, value, problem):
    made = build(kind, value)
    assert isinstance(made, list)
    assert problem in str(made[0])


def test_setting_a_fact_asks_for_a_supervisor(view):
    plain = Act(id="a", kind="set_fact", at="", args={"kind": "worker", "value": {"id": "09"}})
    assert view.do(RULES, plain).asks == "supervisor"
    assert view.get(Worker, "09") is None
    assert view.do(RULES, act("set_fact", kind="worker", value={"id": "09"})).tone == "good"
    assert view.get(Worker, "09") == Worker(id="09")


@pytest.mark.parametrize(
    ("args", "said"),
    [
        ({"kind": "batch", "value": to_plain(batch(id="00999"))}, "not set by hand"),
        ({"kind": "lot", "value": {"id": "0999", "material": "77"}}, "no material 77"),
        ({"kind": "worker", "value": {}}, "number is missing"),
    ],
)
def test_a_fact_that_cannot_be_is_refused(view, args, said):
    answer = view.do(RULES, act("set_fact", **args))
    assert answer.refused
    assert said in str(answer.said)


def test_approving_a_revision_holds_uncut_batches_of_the_old_one(view):
    comb = view.get(Revision, f"{COMBS}.C")
    view.facts[f"revision/{COMBS}.D"] = Revision(
        **{**comb.__dict__, "id": f"{COMBS}.D", "letter": "D"}
    )
    view.do(RULES, act("approve_revision", f"cutfile/{COMBS}", letter="D"))
    assert view.get(CutFile, COMBS).approved == "D"
    assert view.get(Batch, "00412").holds == ("revision D is approved now",)


@pytest.mark.parametrize(
    ("args", "said"),
    [
        ({"cut_file": COMBS, "router": "1", "sheets": 0}, "1 to 99 sheets"),
        ({"cut_file": COMBS, "router": "1", "sheets": -1}, "1 to 99 sheets"),
        ({"cut_file": COMBS, "router": "1", "sheets": 10**9}, "1 to 99 sheets"),
        ({"cut_file": COMBS, "router": "9", "sheets": 4}, "no such router"),
        ({"cut_file": "999", "router": "1", "sheets": 4}, "That is no cut file"),
    ],
)
def test_a_release_that_cannot_be_is_refused(view, args, said):
    answer = view.do(RULES, act("release_batch", numbers={"batch": "00500"}, **args))
    assert answer.refused
    assert said in str(answer.said)


def test_no_supervisor_is_fetched_for_a_release_that_cannot_be(view):
    args = {"cut_file": GAUGES, "router": "1"}
    wild = act("release_batch", numbers={"batch": "00500"}, sheets=100, **args)
    answer = view.do(RULES, wild)
    assert (answer.asks, str(answer.said)) == ("", "A batch has 1 to 99 sheets")
    plain = act("release_batch", numbers={"batch": "00500"}, sheets=9, **args)
    plain = replace(plain, args={k: v for k, v in plain.args.items() if k != "approved"})
    assert view.do(RULES, plain).asks == "supervisor"


def test_a_release_prints_its_traveller(view):
    answer = view.do(
        RULES,
        act("release_batch", cut_file=COMBS, router="1", sheets=4, numbers={"batch": "00500"}),
    )
    assert answer.prints == (("traveller", "00500"),)
    assert view.get(Batch, "00500").revision == "C"


def test_sheets_received_lie_in_the_store(view):
    view.do(RULES, act("receive_lot", "lot/0999", material="1", sheets=12))
    assert total(view.stock(place="store", batch="0999")) == 12
    assert view.get(Lot, "0999").material == "1"
    assert view.do(RULES, act("receive_lot", "lot/0999", material="2", sheets=1)).refused


def told_of(view, **chosen):
    """What stands beside a form from the work, and what can be done there."""
    side = screen.screen(office(**chosen, form={}), view).side
    rows = [row for b in side if isinstance(b, Pairs) for row in b.rows]
    done = [e.big for b in side if isinstance(b, Cards) for e in b.entries]
    return {str(name): str(value) for name, value in rows}, [str(words) for words in done]


def test_a_lot_tells_how_many_of_its_sheets_are_in_the_store(view):
    view.do(RULES, act("receive_lot", "lot/0999", material="1", sheets=12))
    told, _ = told_of(view, list="lot", chosen="0999")
    assert told["In the store"] == "12 sheets"


@pytest.mark.parametrize(("state", "offered"), [("open", True), ("cancelled", False)])
def test_an_order_that_is_cancelled_cannot_be_cancelled_again(view, state, offered):
    view.facts["order/3306"] = replace(view.get(Order, "3306"), state=state)
    _, done = told_of(view, list="order", chosen="3306")
    assert ("Cancel this order" in done) == offered


def test_a_correction_needs_a_reason_and_leaves_nothing_below_zero(view):
    args = {"part": "sheet", "place": "store", "batch": "0931", "counted": 35}
    assert view.do(RULES, act("correct_count", **args)).asks == "reason"
    assert view.do(RULES, act("correct_count", reason="01", **args)).asks == "reason"
    for wrong in ({"counted": -1}, {"counted": 10**9}, {"place": "shipped"}):
        assert view.do(RULES, act("correct_count", reason="54", **{**args, **wrong})).refused
    assert view.do(RULES, act("correct_count", reason="54", **{**args, "counted": 40})).refused
    assert view.do(RULES, act("correct_count", reason="54", **args)).tone == "attention"
    assert total(view.stock(place="store", batch="0931")) == 35


def test_a_count_in_the_office_is_asked_about_as_on_the_floor(view):
    args = {"part": "sheet", "place": "store", "batch": "0931"}
    far = {**args, "counted": 20, "approved": ""}
    assert view.do(RULES, act("correct_count", **far)).asks == "sure"
    assert view.do(RULES, act("correct_count", **far, sure=True)).asks == "reason"
    many = {**args, "counted": 400, "approved": "", "sure": True}
    assert view.do(RULES, act("correct_count", **many)).asks == "supervisor"
    held = batch(holds=("seen",), state="cut")
    view.facts[held.key] = held
    view.pieces["trimming", held.id, "014"] = 20
    gone = {"part": "014", "place": "trimming", "batch": held.id, "counted": 19, "reason": "54"}
    assert view.do(RULES, act("correct_count", **gone, approved="")).asks == "supervisor"
    assert not view.do(RULES, act("correct_count", **gone)).sets
    done = view.do(RULES, act("correct_count", **far | {"sure": True, "reason": "54"}))
    assert [fact.what for fact in done.sets] == ["recount"]


def test_cancelling_ends_a_batch_and_an_order(view):
    assert view.do(RULES, act("cancel_batch", "batch/00412")).tone == "good"
    assert view.get(Batch, "00412").state == "cancelled"
    assert view.do(RULES, act("cancel_batch", "batch/00412")).refused
    assert view.do(RULES, act("cancel_order", "order/3306")).tone == "good"
    assert view.do(RULES, act("cancel_order", "order/3306")).refused


def test_cancelling_a_begun_order_says_what_is_to_be_put_back(view):
    view._move((move("110", 2, "cut", "packing/3306", "00412"),))
    done = view.do(RULES, act("cancel_order", "order/3306"))
    assert str(done.do) == "Packing puts back 2 parts of its pack."
    assert [str(f.text) for f in done.sets if isinstance(f, Concern)] == [
        "Order 3306 is cancelled: put back 2 parts of its pack"
    ]


def test_what_is_not_made_of_a_batch_is_dropped_with_it(view):
    begun = batch(state="cutting", cut=2, spoiled=1)
    worry = raise_unmade(begun, 2, 90, id="c1", at=DUE)
    view.facts |= {begun.key: begun, worry.key: worry}
    assert view.do(RULES, act("cancel_batch", "batch/00412")).tone == "good"
    settled = view.get(Concern, "c1")
    assert (settled.settled, settled.by) == ("drop it", "07")


def test_a_batch_whose_sheets_are_all_cut_is_closed_for_a_reason(view):
    cut = batch(state="cut", cut=4)
    view.facts[cut.key] = cut
    asked = view.do(RULES, act("cancel_batch", "batch/00412"))
    assert asked.refused
    assert "Nothing of batch 00412 waits" in str(asked.said)
    slip = Slip(id="00412-3", batch="00412", sheet=3, router="1", at=DUE)
    pile = Pile(id="trimming/00412", area="trimming", batch="00412", since=DUE)
    view.facts |= {slip.key: slip, pile.key: pile}
    view.pieces["popping/3", "00412", "014"] = 24
    view.pieces["trimming", "00412", "014"] = 20
    view.pieces["rack/014", "00412", "014"] = 28
    asked = view.do(RULES, act("cancel_batch", "batch/00412"))
    assert (asked.asks, asked.uses) == ("reason", ("spoiled",))
    done = view.do(RULES, act("cancel_batch", "batch/00412", reason="05"))
    assert str(done.said) == "Batch 00412 is closed: 44 pieces thrown away"
    assert total(view.stock(place="spoiled/05")) == 44
    assert total(view.stock(place="rack/014", batch="00412")) == 28
    assert view.get(Slip, "00412-3").state == "spoiled"
    assert view.get(Pile, "trimming/00412").done


def test_a_pin_is_kept_only_as_a_hash(view):
    assert view.do(RULES, act("set_pin", "worker/07", hash="2468")).refused
    assert view.do(RULES, act("set_pin", "worker/07", hash="$argon2id$x")).tone == "good"


def test_the_form_works_for_every_list(view):
    for entry in LISTS:
        hand = office(list=entry.kind.kind)
        assert screen.screen(hand, view).main
        rows = lists.list_page(hand, view)
        if rows:
            chosen = screen.screen(hand, view).main[0].rows[0].code
            opened = dialogue.handle_input(hand, read(chosen), view).hand
            assert opened.work.chosen == rows[0].id
            assert screen.screen(opened, view).presses
        assert typed_fields(entry.kind)[0].name == "id"


def test_a_list_counts_every_order_those_that_left_and_those_owed_too(view):
    lines = view.get(Order, "3306").lines
    for n in range(1200):
        state = "owed" if n % 2 else "shipped"
        gone = Order(id=f"{5000 + n}", due=DUE, lines=lines, state=state)
        view.facts[gone.key] = gone
    shown = screen.screen(office(list="order"), view).main[0]
    known = sum(key.startswith("order/") for key in view.facts)
    assert known > 1200
    assert str(shown.title) == f"Orders: {plain(known)}, page 1 of {-(-known // 12)}"


def test_a_list_that_is_too_long_to_be_read_through_says_so(view, monkeypatch):
    monkeypatch.setattr(lists, "MOST", 2)
    shown = screen.screen(office(list="router"), view).main[0]
    assert str(shown.title) == "Routers: 2 and more, page 1 of 1"


FORM = {"id": "9", "name": "12 mm birch plywood"}


@pytest.mark.parametrize("kept", ["material", 5])  # by its name; by its place, as once
def test_a_resumed_form_stands_on_its_own_list_when_one_is_added_in_front(view, monkeypatch, kept):
    raw = json.loads(drafts.write(Draft(hand=office(list="material", form=FORM))))
    raw["hand"]["work"]["list"] = kept
    more = lists.OfficeList(kind=Notice, words=say("Notices"), one=say("Notice"), shows=("text",))
    monkeypatch.setattr(lists, "LISTS", (more, *LISTS))
    resumed = drafts.read(json.dumps(raw), load_rooms()).hand
    shown = screen.screen(replace(resumed, now="2026-11-25T10:00:00"), view)
    assert (str(shown.where), str(shown.main[0].title)) == (
        "Materials",
        "Material new, page 1 of 2",
    )
    assert str(shown.main[0].rows[1].cells[0].text) == FORM["name"]


def test_what_older_programs_kept_in_hand_has_its_place():
    kept = {
        "ask": "release",
        "list": 1,
        "chosen": "011",
        "router": "3",
        "order": "3308",
        "about": "lot/0931",
        "spot": 0,
        "files": ["a.csv"],
        "folder": "/f",
        "lines": "parts",
        "items": [["014", 2]],
        "item": 0,
        "column": 1,
        "material": "1",
        "path": True,
        "asked": [2, "in"],
        "which": {"path": "/a.nc", "cut_file": "011", "material": "1"},
    }
    assert msgspec.convert(OfficeWork.renamed(kept), OfficeWork) == OfficeWork(
        ask="release", list="cutfile", chosen="011",
        releasing=Releasing(router="3", order="3308"),
        counting=Counting(about="lot/0931", spot=0),
        found=FilesFound(folder="/f", names=("a.csv",)),
        editing=EditedRows(field="parts", rows=(("014", 2),), item=0, column=1),
        intake=Intake(material="1", drawn=True, asked=(2, "in"),
                      which=OpenCutFile(cut_file="011", material="1", path="/a.nc")),
    )  # fmt: skip


def test_typing_saves_over_what_was_there(view):
    hand = office(list="part", chosen="014", form={}, field="mark")
    hand = dialogue.handle_input(hand, Number("25"), view).hand
    hand = replace(hand, work=replace(hand.work, field="words"))
    hand = dialogue.handle_input(hand, Typed("Comb"), view).hand
    done = dialogue.handle_input(hand, read(button("save")), view)
    assert done.args.value["mark"] == 25
    assert done.args.value["words"] == "Comb"
    view.do(RULES, act(done.kind, done.subject, kind=done.args.of, value=done.args.value))
    assert view.get(Part, "014").mark == 25
    assert view.get(Part, "014").shape is not None


def test_every_kind_that_is_set_has_a_name():
    assert all(entry.kind.kind in KINDS for entry in LISTS)


@pytest.mark.parametrize(
    ("kind", "value", "said"),
    [
        ("order", {"id": "4000", "lines": [], "due": DUE}, "at least one line"),
        ("order", {"id": "4000", "lines": [LINE], "due": "soon"}, "write it as 2026-11-25 14:00"),
        ("order", {"id": "4000", "lines": [LINE], "due": ""}, "needs a due time"),
        ("order", {"id": "4000", "lines": [LINE, LINE], "due": DUE}, "names one thing twice"),
        ("order", {"id": "4000", "lines": [{**LINE, "quantity": 0}], "due": DUE}, "1 or more"),
        (
            "order",
            {"id": "4000", "lines": [{**LINE, "product": "999"}], "due": DUE},
            "product 999",
        ),
        ("order", {"id": "X" * 24, "lines": [LINE], "due": DUE}, "cannot be printed as a code"),
        ("product", {"id": "400", "name": "x", "words": "y", "parts": []}, "at least one part"),
        ("rack", {"id": "400", "name": "C 1", "part": "999"}, "no part 999"),
        ("router", {"id": "6", "name": "R", "bed": "magnet"}, "bed is one of clamped and vacuum"),
        ("router", {"id": "6", "name": "R", "pace": 0.0}, "pace must be above 0"),
        (
            "order",
            {"id": "4000", "lines": [LINE], "due": "31.11.2026"},
            "due: there is no 31.11.2026; write it as 2026-11-25 14:00",
        ),
        ("cart", {"id": "9", "name": "C", "goes": "25:00"}, "leaves at: write it as 14:00"),
        (
            "part",
            {"id": "400", "name": "x", "words": "y", "mark": -1},
            "minimum cannot be below 0",
        ),
        (
            "material",
            {"id": "9", "name": "x", "thickness_mm": 6.0, "low_mm": 7.0, "high_mm": 6.0},
            "lower limit is above",
        ),
    ],
)
def test_what_makes_no_sense_is_not_set(view, kind, value, said):
    view.facts["product/061"] = Product(id="061", name="K", words="k", parts=(("014", 1),))
    answer = view.do(RULES, act("set_fact", kind=kind, value=value))
    assert answer.refused
    assert said in str(answer.said)


def test_a_list_is_taken_in_whole_or_not_at_all(view):
    names = [{"id": n, "supervisor": False} for n in ("03", "98", "97")]
    bad = act("set_list", kind="worker", values=[*names, {"id": "99", "active": 3}])
    assert str(view.do(RULES, bad).said).startswith("Row 4:")
    assert view.get(Worker, "98") is None
    done = view.do(RULES, act("set_list", kind="worker", values=names))
    assert str(done.said).startswith("Taken in: ")
    assert view.get(Worker, "98")
    assert view.get(Worker, "97")
    assert view.do(RULES, act("set_list", kind="worker", values=names)).refused


def test_a_new_rack_place_is_given_to_its_part(view):
    view.facts["part/400"] = Part(id="400", name="x", words="y")
    view.do(RULES, act("set_fact", kind="rack", value={"id": "401", "name": "E 1", "part": "400"}))
    assert view.get(Part, "400").rack == "401"


def test_what_follows_from_a_list_is_not_counted_as_changed_by_it(view):
    view.facts["part/400"] = Part(id="400", name="x", words="y")
    values = [{"id": "401", "name": "E 1", "part": "400"}]
    done = view.do(RULES, act("set_list", kind="rack", values=values))
    assert str(done.said) == "Taken in: 1 new, 0 changed"
    assert view.get(Part, "400").rack == "401"


def test_a_bit_of_a_list_that_finds_no_place_in_its_router_is_told(view):
    values = [{"id": n, "words": "y", "diameter_mm": 3.1, "router": "1"} for n in ("81", "82")]
    done = view.do(RULES, act("set_list", kind="bit", values=values))
    assert str(done.do).startswith("2 bits lie in the drawer: ")


def test_a_part_that_comes_after_its_rack_place_is_given_to_it(view):
    view.do(RULES, act("set_fact", kind="rack", value={"id": "401", "name": "E 1"}))
    value = {"id": "400", "name": "x", "words": "y", "rack": "401"}
    view.do(RULES, act("set_fact", kind="part", value=value))
    assert view.get(RackPlace, "401").part == "400"


@pytest.mark.parametrize("first", ["part", "rack"])
def test_lists_that_name_each_other_come_in_together_or_not_at_all(view, first):
    part = {"id": "HC-7", "name": "x", "words": "y", "rack": "489"}
    given = {
        "part": {"kind": "part", "values": [part], "file": "parts.csv"},
        "rack": {
            "kind": "rack",
            "values": [{"id": "489", "name": "E 1", "part": "HC-7"}],
            "file": "rack.csv",
        },
    }
    alone = act("set_list", kind=first, values=given[first]["values"])
    assert view.do(RULES, alone).refused
    both = [given[first], *(one for name, one in given.items() if name != first)]
    bad = [*both[:1], {**both[1], "values": [{**both[1]["values"][0], "name": 3}]}]
    refused = view.do(RULES, act("set_lists", lists=bad))
    assert str(refused.said).startswith(f"{both[1]['file']}, row 1: ")
    assert view.get(Part, "HC-7") is None
    assert str(view.do(RULES, act("set_lists", lists=both)).said) == "Taken in: 2 new, 0 changed"
    assert view.get(Part, "HC-7").rack == "489"
    assert view.get(RackPlace, "489").part == "HC-7"


BIT = {"id": "77", "words": "6 mm", "diameter_mm": 6.0}


def seat(view, **fields):
    return view.do(RULES, act("set_fact", kind="bit", value={**BIT, **fields}))


def test_a_bit_whose_router_is_said_is_in_its_spindle(view):
    view.facts["router/9"] = Router(id="9", name="Router 9")
    assert seat(view, router="9").tone == "good"
    bed = view.get(Bed, "9")
    assert (bed.bits, bed.zero, bed.first_off) == (((0, "77"),), "new bit 77", "new bit 77")
    seat(view, router="")
    assert view.get(Bed, "9").bits == ()


def test_a_bit_whose_place_is_taken_lies_in_the_drawer(view):
    view.facts |= {
        "router/9": Router(id="9", name="Router 9"),
        "bed/9": Bed(id="9", bits=((0, "12"),)),
    }
    answer = seat(view, router="9")
    assert "Bit 12 is in Router 9" in str(answer.do)
    assert view.get(Bit, "77").shelf[0] == "good"
    assert view.get(Bed, "9").bits == ((0, "12"),)


def test_a_bit_goes_into_the_pocket_that_a_file_asks_it_for(view):
    view.facts["router/9"] = Router(id="9", name="Router 9", changer=True)
    use = view.get(Revision, f"{COMBS}.{view.get(CutFile, COMBS).approved}").bits[0]
    seat(view, router="9", diameter_mm=use.diameter_mm)
    assert view.get(Bed, "9").bits == ((use.number, "77"),)
    assert "asks for it yet" in str(seat(view, id="78", router="9", diameter_mm=11.5).do)


def test_no_bit_is_moved_in_the_office_under_a_sheet(view):
    view.facts |= {
        "router/9": Router(id="9", name="Router 9"),
        "bed/9": Bed(id="9", sheet=1, batch="00412", state="cutting"),
    }
    assert seat(view, router="9").refused
    assert view.get(Bit, "77") is None


@pytest.mark.parametrize(
    ("kind", "field", "value", "words"),
    [
        (Order, "due", "2026-11-26T09:30:00", "26 Nov 2026 09:30"),
        (Order, "due", "soon", "soon"),
        (Order, "due", "2026-11-26", "2026-11-26"),
        (Lot, "received", "2026-11-26", "26 Nov 2026"),
        (Lot, "received", "2026-11-26T09:30:00", "26 Nov 2026 09:30"),
        (Lot, "received", "", ""),
    ],
)
def test_a_time_is_shown_as_it_can_be_typed(kind, field, value, words, view):
    assert str(lists.say_value(find_field(kind, field), value, view)) == words
    if words != value:
        assert read_time(words, value[:19]) in (value, f"{value}T16:00:00")


@pytest.mark.parametrize("text", ["20.11.2026", "2026-11-20", "20 Nov 2026", "Nov 20 2026"])
def test_a_day_may_be_typed_in_any_way_that_a_time_may(text, view):
    hand = office(list="lot", form={}, field="received")
    took = dialogue.handle_input(hand, Typed(text), view)
    assert took.hand.work.form == {"received": "2026-11-20"}


def test_a_field_that_points_refuses_what_does_not_exist(view):
    hand = office(list="lot", form={}, field="material")
    refused = dialogue.handle_input(hand, Typed("no such wood"), view)
    assert str(refused.answer.said) == "There is no material no such wood"
    assert refused.hand == hand


def test_a_missing_description_is_named_as_on_the_form():
    problems = build("cutfile", {"id": "001"})
    assert "description is missing" in [str(p) for p in problems]


TWO = {"product": "061", "quantity": 1, "short": 0}


@pytest.mark.parametrize("state", ["packing", "packed", "shipped", "owed", "cancelled"])
@pytest.mark.parametrize("way", ["form", "list"])
def test_an_order_that_is_begun_or_gone_is_never_rewritten(view, state, way):
    view.facts["product/061"] = Product(id="061", name="K", words="k", parts=(("014", 1),))
    order = build("order", {"id": "3310", "due": DUE, "lines": [LINE], "state": state})
    view.facts[order.key] = order
    value = {**to_plain(order), "lines": [TWO], "state": "open"}
    kinds = {"form": {"value": value}, "list": {"values": [value]}}
    for _ in range(2):  # what is wanted twice is asked for once
        view.do(RULES, act(f"set_{'fact' if way == 'form' else way}", kind="order", **kinds[way]))
        assert view.get(Order, "3310") == order
        (wish,) = view.shelf(Concern, "open")
        assert "Wanted: 1 × K" in str(wish.text)


def test_an_order_with_pieces_in_its_pack_is_begun_though_it_waits(view):
    view.facts["product/061"] = Product(id="061", name="K", words="k", parts=(("014", 1),))
    order = build("order", {"id": "3310", "due": DUE, "lines": [LINE], "state": "waiting"})
    view.facts[order.key] = order
    value = {**to_plain(order), "lines": [TWO]}
    assert view.do(RULES, act("set_fact", kind="order", value=value)).sets[0].kind == "order"
    view.facts[order.key] = order
    view.pieces["packing/3310", "00412", "014"] = 1
    view.do(RULES, act("set_fact", kind="order", value=value))
    assert view.get(Order, "3310") == order


def test_a_list_that_repeats_begun_orders_takes_in_the_rest(view):
    view.facts["product/061"] = Product(id="061", name="K", words="k", parts=(("014", 1),))
    same, other, new = (
        {"id": n, "due": DUE, "lines": [LINE], "state": "shipped"}
        for n in ("3310", "3311", "3312")
    )
    for value in (same, other):
        view.facts[f"order/{value['id']}"] = build("order", value)
    changed = {**other, "due": "2026-11-27T14:00:00"}
    values = [same, changed, {**new, "state": "open"}]
    answer = view.do(RULES, act("set_list", kind="order", values=values))
    assert str(answer.said) == "Taken in: 1 new, 0 changed"
    assert [c.about for c in view.shelf(Concern, "open")] == ["order/3311"]


def test_typed_orders_have_numbers_of_their_own(view):
    assert lists.propose_number(Order, view) == "9001"
    for number in ("3307", "9001"):
        view.facts[f"order/{number}"] = Order(id=number, due=DUE, lines=())
    assert lists.propose_number(Order, view) == "9002"
    view.facts["order/10001"] = Order(id="10001", due=DUE, lines=())
    assert lists.propose_number(Order, view) == "90001"


def test_no_number_is_proposed_that_is_taken_beyond_what_is_looked_through(view, monkeypatch):
    monkeypatch.setattr(lists, "MOST", 1)
    for number in ("9001", "9002"):
        view.facts[f"order/{number}"] = Order(id=number, due=f"{DUE}", lines=(), state="shipped")
    assert lists.propose_number(Order, view) == "9003"


@pytest.mark.parametrize("change", [{"active": False}, {"supervisor": False}])
@pytest.mark.parametrize("way", ["form", "list"])
def test_the_last_supervisor_with_a_pin_stays(view, change, way):
    def set_worker(**value):
        one = {**to_plain(view.get(Worker, value["id"])), **value}
        kind, given = (
            ("set_fact", {"value": one}) if way == "form" else ("set_list", {"values": [one]})
        )
        return view.do(RULES, act(kind, kind="worker", **given))

    for number, pin in (("07", "$argon2id$x"), ("08", "")):
        view.facts[f"worker/{number}"] = Worker(id=number, supervisor=True, pin=pin)
    answer = set_worker(id="07", **change)
    assert answer.refused
    assert "last supervisor" in str(answer.said)
    assert "new PIN" in str(answer.do)
    view.facts["worker/08"] = Worker(id="08", supervisor=True, pin="$argon2id$y")
    assert not set_worker(id="07", **change).refused


@pytest.mark.parametrize(
    ("kind", "field", "typed", "said"),
    [
        ("material", "low_mm", "abc", "low, mm must be a number"),
        ("bit", "diameter_mm", "0", "diameter, mm must be above 0"),
        ("order", "due", "tomorrow", "due: write it as 2026-11-25 14:00"),
        ("router", "bed", "magnet", "bed is one of clamped and vacuum"),
        ("worker", "active", "perhaps", "in use must be yes or no"),
        ("part", "mark", "-1", "minimum cannot be below 0"),
    ],
)
def test_a_wrong_value_is_told_at_once_and_not_taken(view, kind, field, typed, said):
    hand = office(list=kind, form={"id": "9"}, field=field)
    given = dialogue.handle_input(hand, Typed(typed), view)
    assert (str(given.answer.said), given.answer.tone) == (said, "stop")
    assert given.hand == hand


def test_limits_that_leave_the_thickness_out_are_told_before_they_are_saved(view):
    hand = office(list="material", form={"thickness_mm": 6.0, "low_mm": -5.0}, field="high_mm")
    given = dialogue.handle_input(hand, Number("3"), view)
    assert str(given.answer.said) == "The thickness itself is outside its limits"
    value = {"id": "9", "name": "x", "thickness_mm": 6.0, "low_mm": -5.0, "high_mm": 3.0}
    assert view.do(RULES, act("set_fact", kind="material", value=value)).refused
    right = {**value, "low_mm": 5.8, "high_mm": 6.2}
    assert not view.do(RULES, act("set_fact", kind="material", value=right)).refused


@pytest.mark.parametrize("kind", [one.kind.kind for one in LISTS])
def test_leaving_a_form_stays_in_its_list(view, kind):
    left = dialogue.handle_input(office(list=kind, form={}), read(button("put_down")), view)
    assert left.hand.work == OfficeWork(list=kind)


def test_leaving_what_is_asked_goes_back_to_the_form(view):
    asked = office(list="lot", chosen="0931", form={}, ask="sheets")
    left = dialogue.handle_input(asked, read(button("put_down")), view)
    assert left.hand.work == OfficeWork(list="lot", chosen="0931", form={})
    typed = office(list="lot", form={"mark": "x"})
    told = dialogue.handle_input(typed, read(button("put_down")), view).answer
    assert str(told.said) == "What was typed is not saved"


def test_leaving_a_new_thing_of_which_nothing_was_typed_says_nothing_of_it(view):
    fresh = dialogue.handle_input(office(list="lot"), read(button("new")), view).hand
    assert list(fresh.work.form) == ["id", "received"]
    told = dialogue.handle_input(fresh, read(button("put_down")), view).answer
    assert str(told.said) == "Lots"
    other = replace(fresh, work=replace(fresh.work, form={"id": "0999"}))
    told = dialogue.handle_input(other, read(button("put_down")), view).answer
    assert str(told.said) == "What was typed is not saved"


def test_the_keys_of_a_form_keep_their_places(view):
    fields = ("name", "thickness_mm", "", "low_mm")
    rows = [
        [
            (p.label, p.code)
            for p in screen.screen(office(list="material", form={}, field=f), view).presses
        ]
        for f in fields
    ]
    assert all(row == rows[0] for row in rows)


def test_sheets_received_are_no_more_on_their_way(view):
    view.facts["purchase/1"] = Purchase(id="1", material="1", quantity=10, expected="2026-11-27")
    view.facts["purchase/2"] = Purchase(id="2", material="1", quantity=20)
    view.do(RULES, act("receive_lot", "lot/0999", material="1", sheets=12))
    assert [view.get(Purchase, n).coming for n in "12"] == [0, 18]


@pytest.mark.parametrize(
    ("fact", "says"),
    [
        (Purchase(id="1", quantity=5), "Name one thing that is on its way"),
        (Purchase(id="1", quantity=5, material="1", mailer="01"), "Name one thing"),
        (Purchase(id="1", quantity=5, mailer="99"), "There is no mailer 99"),
        (Purchase(id="1", quantity=0, mailer="01"), "quantity cannot be below 1"),
        (Push(id="1", product="021", quantity=9, begins="2026-12-01", ends="2026-11-30"),
         "It ends before it begins"),
        (Push(id="1", product="021", quantity=9, begins=""), "needs the day on which it begins"),
        (Push(id="1", product="021", quantity=9, begins="tomorrow"), "write it as 2026-11-25"),
        (Shop(id="shop", breaks=(("12:30", "12:00"),)), "A break ends after it begins"),
        (Shop(id="shop", breaks=(("", "12:00"),)), "A break ends after it begins"),
        (Shop(id="shop", day_starts=""), "day starts: write it as 14:00"),
        (Shop(id="shop", day_ends=""), "day ends: write it as 14:00"),
        (BitSize(id="1", name="6 mm", diameter_mm=0.0), "must be above 0"),
    ],
)  # fmt: skip
def test_what_is_bought_and_expected_is_checked(view, fact, says):
    assert any(says in str(problem) for problem in find_problems(fact, view))


def test_what_is_bought_and_expected_may_be_entered(view):
    known = (
        BitSize(id="1", name="6 mm", diameter_mm=6.0),
        Purchase(id="1", quantity=5, mailer="01"),
        Push(id="1", product="021", quantity=9, begins="2026-12-01"),
        Shop(id="shop", breaks=(("12:00", "12:30"),), closed=("2026-12-24",)),
    )
    for fact in known:
        view.do(RULES, act("set_fact", fact.key, kind=fact.kind, value=to_plain(fact)))
        assert view.get(type(fact), fact.id) == fact


def test_a_bit_that_the_office_enters_is_no_more_on_its_way(view):
    view.facts["bit_size/1"] = BitSize(id="1", name="6 mm", diameter_mm=6.0)
    view.facts["purchase/1"] = Purchase(id="1", bit_size="1", quantity=3)
    for words in ("6.0 mm new", "6.0 mm compression"):  # entered, then changed
        bit = Bit(id="91", words=words, diameter_mm=6.0)
        view.do(RULES, act("set_fact", bit.key, kind="bit", value=to_plain(bit)))
    assert view.get(Purchase, "1").coming == 2


def pressed(name):
    """The button of this name."""
    return read(button(name))


def test_next_goes_on_behind_a_list_that_is_left(view):
    """By it every field of the shop is reached, whether a list is left or is complete."""
    for way in ("put_down", "lines_done"):
        one = Player(view, RULES, dialogue.handle_input, office())
        one.give(pressed("list_shop"), "shop")
        seen = []
        for _ in typed_fields(Shop)[1:]:
            one.give(pressed("next_field"))
            seen.append(one.hand.work.field)
            if one.hand.work.ask == "lines":
                one.give(pressed(way))
        assert seen == [field.name for field in typed_fields(Shop)[1:]]
        assert one.hand.work.page == len(seen) // lists.FIELDS


def test_there_is_one_shop_and_no_other_is_offered(view):
    one = Player(view, RULES, dialogue.handle_input, office())
    one.give(pressed("list_shop"))
    assert "A new one" not in [str(p.label) for p in screen.screen(one.hand, view).presses]
    opened = one.give("shop")
    assert str(opened.said) == "This shop"
    one.give(pressed("list_part"))
    assert "A new one" in [str(p.label) for p in screen.screen(one.hand, view).presses]


@pytest.mark.parametrize(
    ("field", "fractions", "letters"),
    [("id", False, True), ("thickness_mm", False, False), ("thickness_mm", True, True)],
)
def test_a_number_has_letters_by_touch_and_a_fraction_its_stroke(view, field, fractions, letters):
    shop = view.get(Shop, "shop") or Shop(id="shop")
    view = small_shop(replace(shop, units="inch", fractions=fractions))
    shown = screen.screen(office(list="part", form={}, field=field), view)
    assert isinstance(shown.side[0], Letters) is letters


# --- numbers that only a slip of the finger types


TEN_MILLION = 10_000_000
KINDS_LISTED = sorted({of.kind for of in LISTS}, key=lambda kind: kind.kind)


@pytest.mark.parametrize("kind", KINDS_LISTED, ids=lambda kind: kind.kind)
def test_ten_million_of_anything_that_is_counted_is_refused_in_a_sentence(kind):
    counted = [f for f in typed_fields(kind) if f.of is int]
    counted += [c for f in typed_fields(kind) for c in f.columns if c.of is int]
    for field in counted:
        said = find_wrong_value(field, TEN_MILLION)
        assert said, field.name
        assert "cannot be above" in str(said), field.name
    for field in typed_fields(kind):
        if field.of in (int, float):
            assert find_wrong_value(field, 10_000_000_000), field.name


@pytest.mark.parametrize(("sheets", "said"), [
    (0, "How many sheets came?"), (TEN_MILLION, "10 000 000 sheets cannot come at once"),
])  # fmt: skip
def test_sheets_that_cannot_have_come_are_refused_by_their_number(sheets, said):
    answer = small_shop().do(RULES, act("receive_lot", "lot/0999", material="1", sheets=sheets))
    assert (answer.refused, str(answer.said)) == (True, said)


def test_a_new_lot_is_received_today_unless_somebody_says_another_day(view):
    opened = dialogue.handle_input(office(list="lot"), pressed("new"), view).hand
    assert opened.work.form["received"] == opened.now[:10]
    left = dialogue.handle_input(opened, pressed("put_down"), view)
    assert str(left.answer.said) == "Lots", "nothing of it was typed"
    at_day = replace(opened, work=replace(opened.work, field="received"))
    typed = dialogue.handle_input(at_day, Typed("24.11.2026"), view)
    assert typed.hand.work.form["received"] == "2026-11-24"
    told = dialogue.handle_input(typed.hand, pressed("put_down"), view).answer
    assert str(told.said) == "What was typed is not saved"


def test_mailers_are_received_as_sheets_are(view):
    mailer = view.shelf(Mailer, "all", 1)[0]
    player = Player(
        view, RULES, dialogue.handle_input, office(list="mailer", chosen=mailer.id, form={})
    )
    assert told_of(view, list="mailer", chosen=mailer.id)[0]["By the book"] == "0"
    assert str(player.give("Receive mailers").said) == "How many mailers came?"
    player.give(Number("200"))
    assert str(player.approve().said) == f"200 × {mailer.name} received"
    assert told_of(view, list="mailer", chosen=mailer.id)[0]["By the book"] == "200"
    assert find_supply(view, mailer.id).left == 200, "packing counts from there"


@pytest.mark.parametrize("typed", ["0", "12.5"])
def test_no_number_of_mailers_is_received(view, typed):
    mailer = view.shelf(Mailer, "all", 1)[0]
    player = Player(
        view, RULES, dialogue.handle_input, office(list="mailer", chosen=mailer.id, form={})
    )
    player.give("Receive mailers")
    assert player.give(Number(typed)).refused
    assert find_supply(view, mailer.id).left == 0
