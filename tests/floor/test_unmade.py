"""The office's page of sheets that were not made: all of them are on it, each has a way on."""

from dataclasses import replace

import pytest

from station.floor.loading.rules import RULES as LOADING
from station.floor.office import dialogue
from station.floor.office.screen import screen
from station.floor.today.rules import RULES as TODAY
from station.queries.unmade import list_all_unmade, raise_unmade
from station.shop.acts import Act
from station.shop.cards import button
from station.shop.codes import read
from station.shop.facts import Batch, Concern, CutFile
from tests.floor.shop_small import COMBS, DAY, GAUGES, Player, batch, hand, small_shop
from tests.touch import NO_ROW, list_texts

SPOILED = batch(GAUGES, id="00412", sheets=4, cut=4, spoiled=3, state="cut")


def told(sheet, hour, of=SPOILED):
    return raise_unmade(of, sheet, 90, id=f"a{hour}{sheet}", at=f"{DAY}T{hour:02d}:00:00")


def office(*facts):
    view = small_shop(SPOILED, *facts)
    return Player(view, LOADING | TODAY, dialogue.handle_input, hand("office"))


def press(name):
    return read(button(name))


def texts(one):
    return " · ".join(list_texts(screen(one.hand, one.view)))


def test_the_newest_stands_first_and_every_sheet_is_reached():
    one = office(*(told(n, 6 + n) for n in range(1, 9)))
    one.give(press("not_made"))
    first = texts(one)
    one.give(press("next_page"))
    second = texts(one)
    assert first.index("14:00") < first.index("13:00"), "sheet 8 came last"
    assert "07:00" in second
    assert "page 2 of 2" in second
    one.give(press("next_page"))
    assert "page 2 of 2" in texts(one), "there is no third"
    one.give("07:00", "Drop it")
    assert one.asked, "a supervisor is asked for"


def test_the_sheet_that_is_touched_is_cut_again_and_no_other():
    one = office(told(2, 9), told(4, 11))
    one.give(press("not_made"), "11:00", "Cut it again")
    assert [u.sheet for u in list_all_unmade(one.view)] == ["2"]
    again = one.view.get(Batch, "00412")
    assert (again.sheets, again.state) == (5, "cutting")
    assert again.shelf[0] == "queue/1", "it waits in its queue, on no bed"


def test_nothing_is_done_before_a_sheet_is_chosen():
    one = office(told(2, 9))
    one.give(press("not_made"))
    assert one.give(press("cancel_it")).refused
    assert one.give(press(NO_ROW)).refused


def test_sheets_that_nobody_may_cut_any_more_stand_there_too():
    combs = batch(COMBS, id="00500", sheets=6, cut=3, state="cutting")
    newer = replace(small_shop().get(CutFile, COMBS), approved="D")
    one = office(combs, newer)
    one.give(press("not_made"))
    assert "4–6" in texts(one)
    one.give("4–6")
    assert one.hand.work.batch == "00500", "the office cancels it from there"


@pytest.mark.parametrize("at_office", [True, False])
def test_a_sheet_of_an_old_revision_is_not_cut_again(at_office):
    newer = replace(small_shop().get(CutFile, GAUGES), approved="D")
    one = office(told(2, 9), newer)
    if at_office:
        answer = one.give(press("not_made"), "09:00", "Cut it again")
    else:
        how = {"how": "cut it again", "approved": "07", "why": "wanted"}
        answer = one.view.do(TODAY, settle("a92", how))
    assert answer.refused
    assert "D is approved" in str(answer.said)
    assert one.view.get(Concern, "a92").settled == ""


def test_a_list_without_such_sheets_does_not_offer_the_page():
    one = office()
    assert "Not made" not in texts(one)
    one.give(press("not_made"))
    assert "Every sheet was made" in texts(one)


def settle(look, how):
    return Act(id="s1", kind="settle_concern", at=f"{DAY}T12:00:00", subject=f"concern/{look}",
               args=how)  # fmt: skip
