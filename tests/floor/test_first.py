"""What a shop starts with can be printed, and is whole."""

from station.floor.office.first import first_facts
from station.shop.cards import REASON_USES
from station.shop.codes import LETTERS, usable
from station.shop.facts import Material, Reason, Shop, Worker
from station.shop.plain import build, to_plain


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
