"""What a shop starts with can be printed, and is whole."""

from dataclasses import replace

from station.floor.office.rules import RULES
from station.shop.acts import Act
from station.shop.cards import REASON_USES
from station.shop.codes import LETTERS, usable
from station.shop.facts import Material, Reason, Shop, Worker
from station.shop.first_facts import ISSUE, first_facts, renewed
from station.shop.plain import build, to_plain
from tests.fakes import FakeView


def test_every_code_of_the_first_morning_can_be_printed():
    wrong = [f.key for f in first_facts() if f.kind in LETTERS and not usable(f.kind, f.id)]
    assert wrong == []


def test_ids_are_unique_and_facts_can_be_recorded():
    facts = first_facts()
    assert len({f.key for f in facts}) == len(facts)
    assert all(build(f.kind, to_plain(f)) == f for f in facts)


def test_every_use_of_a_reason_has_one():
    uses = {f.use for f in first_facts() if isinstance(f, Reason)}
    assert uses == set(REASON_USES)


def test_one_supervisor_without_a_pin_and_one_shop():
    workers = [f for f in first_facts() if isinstance(f, Worker)]
    assert [(w.id, w.supervisor, w.pin) for w in workers] == [("01", True, "")]
    assert [f.id for f in first_facts() if isinstance(f, Shop)] == ["shop"]


def test_a_material_takes_its_own_nominal_thickness():
    for f in first_facts():
        if isinstance(f, Material):
            assert f.low_mm < f.thickness_mm < f.high_mm


def test_a_hold_down_stop_asks_for_a_first_off_and_a_new_home():
    by_id = {f.id: f for f in first_facts() if isinstance(f, Reason)}
    assert (by_id["32"].first_off, by_id["32"].rehome) == (True, True)
    assert (by_id["31"].first_off, by_id["31"].rehome) == (True, False)
    assert not by_id["33"].first_off


def test_a_stop_for_material_loses_no_hold_on_the_sheet():
    asked = {f.id: (f.bed_clear, f.sheet_held, f.bit_out, f.nobody_near)
             for f in first_facts() if isinstance(f, Reason) and f.use == "stop"}  # fmt: skip
    assert asked.pop("35") == (True, False, False, True)
    assert set(asked.values()) == {(True, True, True, True)}


def of_before(reason: Reason) -> Reason:
    """The reason as a shop has it that was set up before reasons said what follows."""
    return Reason(id=reason.id, words=reason.words, use=reason.use, first_off=reason.first_off,
                  rehome=reason.rehome)  # fmt: skip


def test_a_shop_that_exists_gets_what_reasons_say_by_now():
    first = [f for f in first_facts() if isinstance(f, Reason)]
    own = Reason(id="77", words="knot fell out", use="spoiled")
    other = Reason(id="11", words="of our own", use="stop")  # the number means something else
    known = [of_before(r) for r in first if r.id != "11"]
    view = FakeView.of(Shop(id="shop", units="inch"), *known, own, other)
    decide = RULES["renew_first_facts"].decide
    answer = decide(Act(id="a1", kind="renew_first_facts", at="2026-11-25T07:00:00"), view)
    after = {f.id: f for f in answer.sets if isinstance(f, Reason)}
    assert after.keys() == {r.id for r in first if r != of_before(r)} - {"11"}
    assert all(after[r.id] == r for r in first if r.id in after)
    assert Shop(id="shop", units="inch", first=ISSUE) in answer.sets


def test_a_shop_gets_only_the_fields_that_came_after_it():
    mine = Reason(id="35", words="waiting for material", use="stop", hold_down=True)
    assert renewed(mine, 2) == replace(mine, sheet_held=False, bit_out=False)
    assert renewed(mine, ISSUE) == mine


def test_a_shop_that_is_up_to_date_is_left_alone():
    decide = RULES["renew_first_facts"].decide
    act = Act(id="a1", kind="renew_first_facts", at="2026-11-25T07:00:00")
    assert decide(act, FakeView.of(*first_facts())).refused
    assert decide(act, FakeView.of()).refused


def test_words_and_use_that_a_shop_gave_a_reason_stay():
    mine = Reason(id="03", words="cut into", use="spoiled", first_off=True)
    assert renewed(mine) == replace(mine, areas=("trimming",), first_at=("trimming",),
                                    usual_at=("trimming",))  # fmt: skip
