"""Mailers, wrap and labels counted down by packs; another mailer, why, and what is learnt."""

from dataclasses import replace

import pytest

from station.floor.packing import screen
from station.queries.mailers import plan_open_pack
from station.queries.supplies import count_left, list_supplies
from station.queries.whereabouts_machines import answer_mailer
from station.shop import lengths
from station.shop.codes import Code
from station.shop.faces import Hint, Listing, Pairs
from station.shop.facts import Line, Mailer, Order, Pack, Postage, Purchase, Shop
from station.shop.rooms import Number
from tests.floor.orders import (
    OPEN_AGAIN,
    ORDER,
    PART_COMB,
    PART_SHUTTLE,
    order,
    packer,
    press,
    shop,
)

LARGE = Mailer(id="02", name="Flat 450 × 320", length_mm=450.0, width_mm=320.0, thick_mm=45.0)
HUNG = Mailer(id="01", name="Flat 350 × 250", length_mm=350.0, width_mm=250.0, hangs="W 3", mark=5)
CARD = Code("mailer", "02")


def counted(*facts):
    """The shop with six mailers, two metres of wrap and ten labels, and the packer."""
    view = shop(HUNG, LARGE, Shop(id="shop", label_mark=20), *facts)
    player = packer(view)
    for number, n in (("01", 6), ("wrap", 2), ("labels", 10)):
        player.give(press("count_supplies"), Code("mailer", number), Number(str(n)))
    return view, player


def left(view):
    """How many are left of each."""
    return {s.id: s.left for s in list_supplies(view)}


def test_packs_count_mailers_wrap_and_labels_down():
    view, player = counted()
    assert left(view) == {"01": 6, "02": 0, "wrap": 2, "labels": 10}
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    wrap = plan_open_pack(view, "3306").stack.wrap_m
    player.give(press("close_pack"))
    assert (left(view)["01"], left(view)["labels"]) == (5, 9)
    assert count_left(view, "wrap") == 20 - round(wrap * 10)


@pytest.mark.parametrize(("units", "unit", "tenths"), [("mm", "m", 1000), ("inch", "ft", 305)])
def test_wrap_is_counted_in_the_unit_that_stands_there(units, unit, tenths):
    lengths.use_units(units, fractions=False)
    view, player = counted(Shop(id="shop", wrap_mark_m=30.48))
    player.give(press("count_supplies"), Code("mailer", "wrap"), Number("100"))
    assert count_left(view, "wrap") == tenths
    wrap = next(s for s in list_supplies(view) if s.id == "wrap")
    assert (str(wrap.name), wrap.left) == (f"wrap, {unit}", 100)
    assert (wrap.mark, wrap.is_low) == ((30, False) if units == "mm" else (100, False))


def test_what_was_never_counted_is_not_counted_down():
    view = shop(HUNG, LARGE)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("close_pack"))
    assert set(left(view).values()) == {0}


def test_a_new_count_stands_whatever_the_book_said():
    view, player = counted()
    answer = player.give(press("count_supplies"), "Flat 350", Number("3"))
    assert (answer.tone, left(view)["01"]) == ("attention", 3)
    assert str(answer.do) == "Below the minimum of 5: order new ones."
    low = [b for b in screen.screen(player.hand, view).side if isinstance(b, Listing)]
    assert [str(cells[0].text) for cells, _ in low[0].rows] == ["Flat 350 × 250", "labels"]
    assert player.give(press("count_supplies"), Code("mailer", "99")).tone == "stop"


def test_the_mailer_stands_in_large_with_where_it_hangs():
    view, player = counted()
    player.give(ORDER)
    (hint,) = [b for b in screen.screen(player.hand, view).middle if isinstance(b, Hint)]
    assert (hint.title, str(hint.note)) == ("Flat 350 × 250", "place W 3 · 6 left")


def test_beside_the_mailer_stands_how_it_goes_and_for_how_much():
    steps = [Postage(id=str(g), name=f"Parcel {g} g", to_g=g, price=g / 100) for g in (500, 2000)]
    view, player = counted(*steps)
    player.give(ORDER)
    rows = [row for b in screen.screen(player.hand, view).middle if isinstance(b, Pairs)
            for row in b.rows]  # fmt: skip
    assert [str(value) for name, value in rows if str(name) == "goes as"] == [
        "Parcel 500 g · 5.00"
    ]


def close_in_another(view, player, number):
    """Packs a pair of three again in another mailer, for a reason."""
    mine = replace(order(), id=number)
    view.facts[mine.key] = mine
    player.give(Code("order", number), PART_COMB, PART_SHUTTLE, CARD)
    return player.give(press("close_pack"))


def test_another_mailer_asks_why_and_is_learnt():
    view = shop(HUNG, LARGE, combs=20, shuttles=20)
    player = packer(view)
    for number in ("3320", "3321"):
        assert close_in_another(view, player, number).asks == "reason"
        assert player.reason("65").tone == "good"
    packs = [f for f in view.facts.values() if isinstance(f, Pack)]
    assert [p.mailer for p in packs] == ["02", "02"]
    # the third time it is taken by itself
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    assert plan_open_pack(view, "3306").mailer == LARGE
    assert player.give(press("close_pack")).tone == "good"
    assert view.get(Order, "3306").state == "packed"


def test_a_mailer_that_had_run_out_is_taken_again_once_there_are_some():
    view = shop(HUNG, LARGE, combs=20, shuttles=20)
    player = packer(view)
    for number in ("3320", "3321", "3322"):
        close_in_another(view, player, number)
        assert player.reason("66").tone == "good"  # none of the other left
    assert plan_open_pack(view, "3306").mailer is None
    player.give(ORDER, PART_COMB, PART_SHUTTLE)
    assert plan_open_pack(view, "3306").mailer == HUNG


def test_the_mailer_that_is_shown_needs_no_reason():
    view = shop(HUNG, LARGE)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, CARD, Code("mailer", "01"))
    assert player.give(press("close_pack")).tone == "good"


def test_the_mailer_that_is_shown_for_all_of_it_is_no_other_while_some_is_to_go():
    small = Mailer(id="03", name="Slim", length_mm=320.0, width_mm=145.0, thick_mm=15.0)
    view = shop(HUNG, LARGE, small)
    player = packer(view)
    player.give(ORDER, Number("1"), PART_COMB)
    assert plan_open_pack(view, "3306").mailer == small  # for what is in by now
    answer = player.give(Code("mailer", "01"))
    assert (answer.tone, str(answer.said)) == ("good", "Flat 350 × 250 it is")


@pytest.mark.parametrize(("why", "words"), [("61", "crushed corner"), ("62", "wrong label")])
def test_a_pack_that_was_opened_again_stands_against_its_mailer(why, words):
    view = shop(HUNG, LARGE)
    player = packer(view)
    player.give(ORDER, PART_COMB, PART_SHUTTLE, press("close_pack"))
    (pack,) = view.shelf(Pack, "packed")
    player.give(Code("pack", pack.id), OPEN_AGAIN)
    player.reason(why)
    lines = answer_mailer(view, HUNG, "").where
    assert [(str(x.what), str(x.where)) for x in lines[2:]] == [("1 pack opened again", words)]
    assert len(answer_mailer(view, LARGE, "").where) == 2


def test_mailers_counted_beyond_the_book_are_no_more_on_their_way():
    coming = Purchase(id="1", mailer="01", quantity=50, expected="2026-11-27")
    view, player = counted()
    view.facts["purchase/1"] = coming
    player.give(press("count_supplies"), Code("mailer", "01"), Number("3"))
    assert view.get(Purchase, "1") == coming  # fewer than the book said: none came
    player.give(press("count_supplies"), Code("mailer", "01"), Number("43"))
    assert view.get(Purchase, "1").coming == 10


def hints(view, player):
    """What stands in large above the drawn pack: the mailer, its line, its tone."""
    middle = screen.screen(player.hand, view).middle
    return [(str(b.title), str(b.note), b.tone) for b in middle if isinstance(b, Hint)]


def test_one_that_is_used_up_is_told_and_another_that_fits_is_proposed():
    view, player = counted()
    player.give(press("count_supplies"), Code("mailer", "01"), Number("1"))
    view.facts["order/3320"] = replace(
        order(), id="3320", lines=(Line(product="040", quantity=1),)
    )
    player.give(Code("order", "3320"), PART_COMB, PART_SHUTTLE)
    last = player.give(press("close_pack"))
    assert str(last.do).startswith("Mailer Flat 350 × 250, the last one: order more.")
    player.give(ORDER)
    assert hints(view, player) == [
        ("Flat 450 × 320", "Flat 350 × 250: 0 left, order it", "attention")
    ]
    done = player.give(PART_COMB, PART_SHUTTLE, press("close_pack"))
    assert (done.tone, done.asks) == ("good", ""), "nobody is asked why: it was proposed"
    assert str(done.do).startswith("Mailer Flat 450 × 320.")


def test_where_no_other_takes_it_that_is_said_with_what_to_do():
    view = shop(HUNG)
    player = packer(view)
    player.give(press("count_supplies"), Code("mailer", "01"), Number("0"), ORDER)
    assert hints(view, player) == [
        ("Flat 350 × 250", "place W 3 · 0 left · no other takes it: order it, or count again",
         "stop")
    ]  # fmt: skip


def test_one_that_is_used_up_runs_low_whatever_its_mark():
    view, player = counted(replace(HUNG, mark=0))
    none = player.give(press("count_supplies"), Code("mailer", "01"), Number("0"))
    assert (none.tone, str(none.do)) == ("attention", "Order new ones.")
    low = [b for b in screen.screen(player.hand, view).side if isinstance(b, Listing)]
    assert [str(c.text) for c in low[0].rows[0][0]] == ["Flat 350 × 250", "0 left"]


def test_the_card_of_one_that_is_used_up_says_so_and_is_taken():
    _, player = counted()
    player.give(press("count_supplies"), CARD, Number("0"), ORDER)
    taken = player.give(CARD)
    assert (taken.tone, str(taken.said)) == ("attention", "Flat 450 × 320: 0 left by the book")
    assert player.hand.work.mailer == "02"
