"""A bit that the shop does not know yet is entered at the router, and looked at later."""

from dataclasses import replace

import pytest

from station.floor.loading.dialogue import handle_input
from station.floor.loading.rules import RULES
from station.floor.loading.screen import screen
from station.floor.today.rules import RULES as TODAY
from station.shop.acts import Act
from station.shop.codes import Code
from station.shop.facts import (
    Bed,
    Bit,
    BitSize,
    BitUse,
    Concern,
    Purchase,
    Revision,
    Router,
)
from station.shop.rooms import Number
from tests.floor.beds import BED
from tests.floor.shop_small import GAUGES, Player, batch, hand, small_shop
from tests.floor.test_loading_bits import READY, TICKS, press
from tests.touch import list_texts


def router(*facts):
    """Router 1 with bit 11 of 6.0 mm in, a batch taken; its file wants 3.0 mm after it."""
    plain = small_shop().get(Revision, f"{GAUGES}.C")
    second = BitUse(number=2, diameter_mm=3.0, cut_mm=40_000)
    two = replace(plain, bits=(*plain.bits, second))
    view = small_shop(batch(GAUGES), replace(BED, seen=("11",)), two, *facts)
    return Player(view, RULES, handle_input, hand("loading", "09:00", router="1"))


def entered(one):
    """The bit that was entered, and which bits are in the router now."""
    known = small_shop().facts
    new = [f for f in one.view.facts.values() if isinstance(f, Bit) and f.key not in known]
    return new[-1], dict(one.view.get(Bed, "1").bits)


def test_one_like_the_broken_bit_goes_in_with_zero_and_a_first_off():
    one = router()
    one.give(press("bit_broken"), press("new_bit"), "6.0 mm compression")
    bit, inside = entered(one)
    assert (bit.diameter_mm, bit.state, inside[0]) == (6.0, "good", bit.id)
    bed = one.view.get(Bed, "1")
    assert bed.first_off == bed.zero == f"new bit {bit.id}"
    (look,) = one.view.shelf(Concern, "open")
    assert (look.what, look.about) == ("new-bit", bit.key)


def test_the_caution_of_changing_a_bit_stands_beside_the_question():
    one = router()
    one.give(press("new_bit"))
    shown = " ".join(list_texts(screen(one.hand, one.view)))
    assert "Spindle switched off and locked first" in shown


def test_one_for_later_lies_in_the_drawer_so_that_the_sheet_can_start():
    one = router(Bit(id="18", words="3.0", diameter_mm=3.0, state="broken"))
    assert one.give(*READY, *map(press, TICKS), press("start")).refused, "no 3.0 mm bit is there"
    one.give(press("new_bit"), Number("3"))
    bit, inside = entered(one)
    assert inside[0] == "11", "the one that cuts first stays in"
    assert (bit.diameter_mm, bit.router) == (3.0, "")
    assert not one.give(press("start")).refused
    one.give(Code("bit", bit.id), now="09:10")
    assert entered(one)[1][0] == bit.id


def test_in_the_middle_of_a_sheet_only_what_its_file_asks_for_goes_in():
    one = router()
    one.give(*READY, *map(press, TICKS), press("start"), press("new_bit"), Number("6"))
    assert entered(one)[1][0] == "11", "the spindle turns: it lies in the drawer"
    one.give(press("new_bit"), Number("3"))
    bit, inside = entered(one)
    assert inside[0] == bit.id


def test_a_changer_gets_it_where_its_size_is_wanted():
    changer = Router(id="1", name="Router 1", changer=True)
    one = router(changer)
    one.give(press("new_bit"), Number("3"))
    bit, inside = entered(one)
    assert inside[2] == bit.id
    one.give(press("new_bit"), Number("12.7"))
    other, inside = entered(one)
    assert other.id not in inside.values(), "no pocket takes it"


def test_nothing_goes_into_a_changer_that_cuts():
    one = router(Router(id="1", name="Router 1", changer=True))
    one.view.facts["bed/1"] = replace(one.view.get(Bed, "1"), state="cutting", sheet=1)
    answer = one.give(press("new_bit"), Number("6"))
    assert answer.refused
    assert "isolate the spindle" in str(answer.do)


@pytest.mark.parametrize("typed", ["0", "-6", "0.2", "81", "600"])
def test_what_is_no_bit_is_not_entered(typed):
    one = router()
    answer = one.give(press("bit_broken"), press("new_bit"), Number(typed))
    assert answer.tone == "stop"
    assert "diameter" in str(answer.said)
    assert one.hand.work.mode == "new_bit", "it is asked for still"


def test_a_bit_with_a_card_is_known_and_goes_in_as_it_is():
    one = router()
    before = len(one.view.facts)
    one.give(press("bit_broken"), press("new_bit"), Code("bit", "17"))
    assert dict(one.view.get(Bed, "1").bits)[0] == "17"
    assert len(one.view.facts) == before
    assert one.hand.work.mode == ""


def test_one_that_the_supervisor_does_not_approve_cuts_no_further_sheet():
    one = router()
    one.give(press("bit_broken"), press("new_bit"), "6.0 mm compression")
    bit, _ = entered(one)
    (look,) = one.view.shelf(Concern, "open")
    settle = Act(id="s1", kind="settle_concern", at="2026-11-25T09:30:00", subject=look.key,
                 args={"how": "take it out", "approved": "07", "why": "not ours"})  # fmt: skip
    assert not one.view.do(TODAY, settle).refused
    assert one.view.get(Bit, bit.id).state == "worn"
    answer = one.give(*READY, *map(press, TICKS), press("start"))
    assert answer.refused


def test_a_bit_that_is_entered_is_no_more_on_its_way():
    size = BitSize(id="1", name="6 mm", diameter_mm=6.0)
    one = router(size, Purchase(id="1", bit_size="1", quantity=3))
    one.give(press("bit_broken"), press("new_bit"), "6.0 mm compression")
    assert one.view.get(Purchase, "1").coming == 2
