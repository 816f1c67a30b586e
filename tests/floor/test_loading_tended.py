"""Who needs me next: by the button from More, beside the queue, and back to the work."""

from dataclasses import replace

from station.floor.anywhere.screen import screen as show_anywhere
from station.floor.loading.dialogue import handle_input
from station.floor.loading.rules import RULES
from station.floor.loading.screen import screen
from station.floor.loading.work import LoadingWork
from station.shop.cards import BUTTONS, button
from station.shop.codes import Code, write_touch
from station.shop.faces import Bands, Cards, Header, Hint, Table
from station.shop.facts import Bed
from station.shop.rooms import Aside
from tests.floor.beds import CUTTING
from tests.floor.shop_small import DAY, GAUGES, Player, batch, hand, small_shop

TWO = batch(GAUGES, "00413", router="2")
WAITS = Bed(id="2", day=DAY, bits=((0, "12"),))
WHO_NEXT = Code("button", BUTTONS["who_next"].number)


def play(*facts, router="1,2", work=None):
    one = replace(hand("loading", router=router), work=work or LoadingWork())
    return Player(small_shop(batch(GAUGES), *facts), RULES, handle_input, one)


def blocks(face, kind):
    return [b for b in (*face.main, *face.side) if isinstance(b, kind)]


def test_more_leads_to_it_at_loading_alone():
    for area, there in (("loading", True), ("trimming", False)):
        menu = replace(hand(area), aside=Aside(what="menu"))
        (first, *_) = blocks(show_anywhere(menu, small_shop()), Cards)
        assert (button("who_next") in [e.code for e in first.entries]) is there


def test_it_names_the_router_what_to_bring_and_the_others():
    player = play(CUTTING, TWO, WAITS)
    player.hand = replace(player.hand, aside=Aside(what="menu"))
    player.give(WHO_NEXT)
    assert player.hand.aside.what == ""
    face = screen(player.hand, player.view)
    (head,) = blocks(face, Header)
    assert (head.number, str(head.title)) == ("Router 2", "waits for you")
    (bring,) = blocks(face, Table)
    assert [str(row.title) for row in bring.rows] == [
        "the traveller of batch 00413", "a sheet of 6.5 mm birch plywood from lot 0931",
    ]  # fmt: skip
    (others,) = blocks(face, Cards)
    assert [e.big for e in others.entries] == ["Router 1"]
    assert write_touch("router", "2") in [p.code for p in face.presses]


def test_the_next_hour_is_drawn():
    cuts = replace(CUTTING, minutes=22.0, started=f"{DAY}T09:50:00")  # it is 10:00: 12 are left
    stopped = Bed(id="3", day=DAY, state="stopped", stop="31", stopped=f"{DAY}T09:00:00")
    player = play(cuts, TWO, WAITS, stopped, router="1,2,3")
    player.give(WHO_NEXT)
    (hour,) = blocks(screen(player.hand, player.view), Bands)
    assert (hour.start_h, hour.end_h) == (10.0, 11.0)
    drawn = {band.name: (str(band.state), band.spans) for band in hour.items}
    assert drawn["Router 1"] == ("free in 12 min", ((10.0, 10.2, "cutting"),))
    assert drawn["Router 3"] == ("stopped", ((10.0, 11.0, "stopped"),))
    assert len(drawn) == 2  # the one that waits has no line: it stands above


def test_where_no_router_cuts_no_hour_is_drawn_and_nothing_is_said_twice():
    player = play(TWO, WAITS, Bed(id="3", day=DAY), router="2,3")
    player.give(WHO_NEXT)
    face = screen(player.hand, player.view)
    assert not blocks(face, Bands)
    (others,) = blocks(face, Cards)
    (idle,) = others.entries
    assert (str(idle.right), idle.line1, idle.line2) == ("nothing waits for it", "", "")


def test_the_same_button_goes_back_and_keeps_what_was_said_of_the_sheet():
    player = play(work=LoadingWork(lot="0931", reading=6.4))
    player.give(WHO_NEXT)
    assert player.hand.work.mode == "tended"
    player.give(WHO_NEXT)
    assert player.hand.work == LoadingWork(lot="0931", reading=6.4)


def test_whatever_else_is_scanned_goes_on_with_the_work():
    player = play(TWO, WAITS)
    player.give(WHO_NEXT)
    player.give(Code("router", "2"))
    assert (player.hand.facing, player.hand.work.mode) == ("2", "")


def test_hands_that_are_free_here_are_told_of_another_router():
    idle = Bed(id="3", day=DAY)
    face = screen(replace(play(CUTTING, idle, TWO, WAITS, router="3,2,1").hand),
                  small_shop(batch(GAUGES), CUTTING, idle, TWO, WAITS))  # fmt: skip
    hints = [str(h.title) for h in blocks(face, Hint)]
    assert hints[0] == "Router 2 needs you next"
    alone = screen(play(idle, router="3").hand, small_shop(idle))
    assert not [h for h in blocks(alone, Hint) if "needs you" in str(h.title)]
