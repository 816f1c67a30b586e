"""A sheet whose first-off is due: its pieces wait at popping, and can be measured there."""

from dataclasses import replace

import pytest

from station.floor.anywhere.rules import RULES as ANYWHERE
from station.floor.loading.rules import RULES as LOADING
from station.floor.popping.dialogue import handle_input
from station.floor.popping.rules import RULES as POPPING
from station.floor.popping.screen import screen
from station.floor.today.rules import RULES as TODAY
from station.queries.first_offs import find_unmeasured
from station.shop.acts import Act, Answer
from station.shop.codes import Code
from station.shop.faces import Cards
from station.shop.facts import Batch, Bed, Concern, Fact, Part, Ran, Slip
from station.shop.moves import move
from station.shop.rooms import Number
from tests.fakes import FakeView
from tests.floor.beds import AGREED, BED, FIRST
from tests.floor.shop_small import GAUGE, GAUGES, Player, at, batch, hand, off_bed, small_shop
from tests.floor.test_loading_dialogue import press

CUT = batch(GAUGES, state="cutting")
SLIP = Code("batch", "00412", "A", 1)
WAITS = "First-off is due of sheet 1: nothing of it goes on"


def waiting(*facts: Fact, first: tuple = (FIRST,)) -> FakeView:
    """Sheets 1 and 2 of batch 00412 at popping; the first-off of sheet 1 is due."""
    view = small_shop(CUT, replace(BED, firsts=first), *facts)
    return off_bed(off_bed(view, CUT, 1), CUT, 2)


def player(view: FakeView) -> Player:
    return Player(view, {**LOADING, **POPPING}, handle_input, hand("popping"))


def do(view: FakeView, rules: dict, kind: str, subject: str, **args: object) -> Answer:
    act = Act(id=f"x{len(view.entries)}", kind=kind, at=at("10:00"), worker="02", station="s1",
              subject=subject, args=args)  # fmt: skip
    return view.do(rules, act)


def measure(view: FakeView, mm: float) -> Answer:
    return do(view, LOADING, "measure_first_off", "router/1", part=GAUGE, size="A along",
              reading_mm=mm)  # fmt: skip


def pass_on(view: FakeView, *sheets: int, number: str = "00412") -> Answer:
    slips = [f"{number}-{n}" for n in sheets]
    parts = {GAUGE: {"good": 20}}
    return do(view, POPPING, "pass_on", f"batch/{number}", slips=slips, parts=parts)


@pytest.mark.parametrize(("sheets", "waits"), [((1,), True), ((2,), False), ((2, 1), True)])
def test_only_the_sheet_that_is_to_be_compared_waits(sheets, waits):
    answer = pass_on(waiting(), *sheets)
    assert (str(answer.said) == WAITS) == waits
    assert not waits or str(answer.do) == "Measure one of its pieces here, or at Router 1."


@pytest.mark.parametrize("first", [(), (AGREED,), (replace(FIRST, batch="00400"),)])
def test_what_is_not_due_lets_it_go_on(first):
    assert not pass_on(waiting(first=first), 1).refused


def test_measured_at_the_bed_it_goes_on():
    view = waiting()
    measure(view, 100.0)
    assert not pass_on(view, 1).refused


def test_measured_at_popping_it_goes_on():
    view = waiting()
    one = player(view)
    answer = one.give(SLIP)
    assert str(answer.said) == "Sheet 1 is a first-off: first sheet of SG010-SET C"
    assert str(answer.do) == "Measure one piece: SG-10, A along, about 100 mm."
    assert str(one.give(press("pass_on")).said) == WAITS
    one.give(SLIP)
    assert str(one.give(Number("100.1")).said) == "First-off agrees on Router 1"
    assert not one.give(press("pass_on")).refused
    assert view.stock(batch="00412", place="trimming")


def test_outside_at_popping_the_batch_is_held():
    view = waiting()
    player(view).give(SLIP, Number("100.5"))
    assert view.get(Batch, "00412").holds == ("first-off is outside its limits on Router 1",)
    assert "is held" in str(pass_on(view, 2).said)


def test_measured_again_at_popping_two_inside_free_it():
    view = waiting()
    one = player(view)
    one.give(SLIP, Number("100.5"))
    one = player(view)
    assert str(one.give(SLIP).said) == "The first-off of sheet 1 is wrong"
    one.give(Number("100"))
    assert str(one.give(press("pass_on")).said).startswith("Batch 00412 is held")
    one.give(SLIP)
    assert str(one.give(Number("100.1")).said) == "First-off agrees on Router 1"
    assert not pass_on(view, 1).refused


def test_let_go_by_a_supervisor_nothing_is_asked_any_more():
    view = waiting()
    one = player(view)
    one.give(SLIP, press("first_off_bad"))
    assert str(one.give(SLIP).said) == "The first-off of sheet 1 is wrong"
    do(view, ANYWHERE, "release_hold", "batch/00412", approved="07", reason="51")
    assert find_unmeasured(view, "00412", 1) is None
    assert not pass_on(view, 1).refused


def test_what_cannot_be_the_size_is_asked_about():
    view = waiting()
    one = player(view)
    assert str(one.give(SLIP, Number("16")).said) == "16 mm: is that A along, about 100 mm?"
    assert view.get(Bed, "1").firsts[0].readings == ()


def test_a_count_is_no_reading():
    one = player(waiting())
    one.give(SLIP, press("missing"), Number("12"))
    assert one.hand.work.counts == {GAUGE: {"missing": 12}}
    assert str(one.give(Number("100.2")).said) == "First-off agrees on Router 1"


def test_a_size_is_chosen_by_its_row():
    one = player(waiting())
    one.give(SLIP, press("missing"), press("row_1"))
    assert str(one.give(Number("100")).said) == "First-off agrees on Router 1"
    assert handle_input(one.hand, press("row_1"), one.view) is None


def test_by_eye_where_nothing_is_measured():
    part = small_shop().get(Part, GAUGE)
    for name, tone, held in (("first_off_good", "good", 0), ("first_off_bad", "attention", 1)):
        view = waiting(replace(part, sizes=()))
        one = player(view)
        assert "by eye" in str(one.give(SLIP).do)
        assert one.give(press(name)).tone == tone
        assert len(view.get(Batch, "00412").holds) == held


def test_the_screen_says_what_is_measured():
    one = player(waiting())
    assert "first-off is due of sheet" in str(screen(one.hand, one.view))
    one.give(SLIP)
    found = [b for b in screen(one.hand, one.view).main if isinstance(b, Cards)]
    assert [str(e.big) for e in found[0].entries] == [
        "SG-10: A along, about 100 mm",
        "It is wrong",
    ]
    one.give(Number("100"))
    assert "It is wrong" not in str(screen(one.hand, one.view).main)


def test_what_is_split_off_the_sheet_waits_with_it():
    view = waiting()
    do(view, ANYWHERE, "split_batch", "batch/00412", part=GAUGE, quantity=20, area="popping",
       numbers={"batch": "00777"})  # fmt: skip
    assert str(pass_on(view, 1, number="00777").said) == WAITS
    measure(view, 100.0)
    assert not pass_on(view, 1, number="00777").refused


def test_what_is_split_off_the_sheet_was_cut_of_the_same_lot_with_the_same_bit():
    view = waiting()
    sheet = replace(view.get(Slip, "00412-1"), lot="0931", bit="12", minutes=18.0)
    view.facts[sheet.key] = sheet
    do(view, ANYWHERE, "split_batch", "batch/00412", part=GAUGE, quantity=20, area="popping",
       numbers={"batch": "00777"})  # fmt: skip
    assert view.get(Slip, "00777-1") == replace(sheet, id="00777-1", batch="00777")


def test_a_run_before_on_another_router_is_looked_for_too():
    view = waiting()
    view.facts["slip/00412-1"] = Slip(
        id="00412-1", batch="00412", sheet=1, router="5", at=at("09:30"),
        runs=(Ran(revision=f"{GAUGES}.C", router="1", at=at("09:00"), minutes=18.0),),
    )  # fmt: skip
    assert find_unmeasured(view, "00412", 1).bed.id == "1"


def test_settling_books_nothing_of_it_onward():
    meant = (move(GAUGE, 2, "popping/1", "trimming", "00412"),)
    worry = Concern(id="c1", what="no-longer", text="?", since=at("09:00"), about=CUT.key,
                    choices=("leave it out", "book what is there"), meant=meant)  # fmt: skip
    view = waiting(worry)
    answer = do(view, TODAY, "settle_concern", "concern/c1", how="book what is there",
                approved="07", why="looked")  # fmt: skip
    assert str(answer.said) == WAITS
