"""What needs a look for one reason is settled in one go; all of it can be reached."""

from dataclasses import replace

import pytest

from station.floor.today import dialogue
from station.floor.today.rules import RULES
from station.floor.today.screen import screen
from station.shop.cards import button
from station.shop.codes import read
from station.shop.conflicts import BOOK, LEAVE
from station.shop.facts import Concern
from station.shop.words import say
from tests.floor.shop_small import DAY, Player, hand, small_shop
from tests.touch import list_texts

BECAUSE = say("Order 3307 is cancelled")


def turned(n, *, now=BECAUSE, choices=(LEAVE, BOOK), since=9):
    """An act that holds no longer, because of what stands in `now`."""
    return Concern(id=f"c{n}", what="no-longer", text=f"Pack {n} is not closed", choices=choices,
                   since=f"{DAY}T{since:02d}:{n % 60:02d}:00", now=now)  # fmt: skip


def boss(*concerns):
    view = small_shop(*concerns)
    return Player(view, RULES, dialogue.handle_input, hand("today", worker="07"))


def press(name):
    return read(button(name))


def texts(one):
    return " · ".join(list_texts(screen(one.hand, one.view)))


def settle(one, how):
    one.give(how)
    one.approve("07")
    return one.reason("51")


def open_ids(one):
    return [c.id for c in one.view.shelf(Concern, "open", 1000)]


def test_all_that_is_alike_is_settled_in_one_go():
    one = boss(*(turned(n) for n in range(1, 31)), turned(31, now=say("Pack 9 left")),
               turned(32, choices=(LEAVE,)))  # fmt: skip
    one.give(press("show_concerns"), "Pack 30 is not closed", "All like it: 30")
    assert "29 more like it are settled with it." in texts(one)
    answer = settle(one, LEAVE)
    assert str(answer.said) == "Settled: leave it out, 30 of them"
    assert open_ids(one) == ["c31", "c32"], "another reason, or other ways"
    settled = one.view.get(Concern, "c7")
    assert (settled.settled, settled.by, settled.reason) == (LEAVE, "07", "counted again")


def test_what_moves_pieces_is_settled_one_by_one():
    one = boss(turned(1), turned(2))
    one.give(press("show_concerns"), "Pack 2 is not closed", "All like it: 2")
    assert "done one by one" in str(settle(one, BOOK).said)
    assert open_ids(one) == ["c1", "c2"]


def test_it_alone_can_be_settled_after_all():
    one = boss(turned(1), turned(2))
    one.give(press("show_concerns"), "Pack 2 is not closed", "All like it: 2", "It alone")
    settle(one, LEAVE)
    assert open_ids(one) == ["c1"]


def test_the_next_one_that_is_chosen_is_chosen_alone():
    one = boss(turned(1), turned(2))
    one.give(press("show_concerns"), "Pack 2 is not closed", "All like it: 2",
             press("show_concerns"), "Pack 1 is not closed")  # fmt: skip
    settle(one, LEAVE)
    assert open_ids(one) == ["c2"]


def test_what_somebody_settled_meanwhile_stays_settled_so():
    one = boss(turned(1), turned(2), turned(3))
    one.give(press("show_concerns"), "Pack 3 is not closed", "All like it: 3", LEAVE)
    other = one.view.get(Concern, "c1")
    settled = replace(other, settled=BOOK, by="08")
    one.view.facts[other.key] = settled
    one.approve("07")
    assert str(one.reason("51").said) == "Settled: leave it out, 2 of them"
    assert one.view.get(Concern, "c1") == settled


@pytest.mark.parametrize("count", [250])
def test_every_one_of_many_is_reached_the_newest_first(count):
    one = boss(*(turned(n, since=9 + n // 60) for n in range(count)))
    one.give(press("show_concerns"))
    seen = [c.id for c in dialogue.list_page(one.hand, one.view)[1]]
    assert seen[0] == f"c{count - 1}"
    for _ in range(count):
        one.give(press("next_page"))
        page = [c.id for c in dialogue.list_page(one.hand, one.view)[1]]
        assert page, "there is no page without anything on it"
        seen += [c for c in page if c not in seen]
    assert sorted(seen) == sorted(open_ids(one))
