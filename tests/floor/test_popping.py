"""Popping: stories, refusals and any input at all, at the level of rules."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.floor.popping.dialogue import count_here, handle_input
from station.floor.popping.lists import list_waiting
from station.floor.popping.rules import RULES
from station.floor.popping.screen import screen
from station.queries.spoiled import list_spoiled_by_place
from station.shop.acts import Act, Answer
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.faces import Cards, Listing, SheetDrawing, Table
from station.shop.facts import Batch, Notice, Pile, Placed, Revision, Slip
from station.shop.moves import SHEET, move
from station.shop.rooms import Input, Number, Point
from station.shop.views import Past, total
from tests.fakes import FakeView
from tests.floor.beds import CUTTING
from tests.floor.shop_small import (
    COMB,
    COMBS,
    DAY,
    GAUGES,
    SHUTTLE,
    SHUTTLES,
    SPACERS,
    Player,
    at,
    batch,
    hand,
    off_bed,
    small_shop,
)

SLIP = Code("batch", "00412", "A", 1)
PAPER = Code("batch", "00412", "A")


def press(name: str) -> Code:
    return Code("button", BUTTONS[name].number)


def popping(cut_file: str, sheets: int = 1, **fields: object) -> Player:
    known = replace(batch(cut_file), **fields)  # type: ignore[arg-type]
    view = small_shop(known)
    for n in range(1, sheets + 1):
        off_bed(view, known, n)
    return Player(view, RULES, handle_input, hand("popping"))


def lie(view: FakeView, place: str, id: str = "00412") -> int:
    return total(view.stock(batch=id), place=place)


def test_an_ordinary_batch() -> None:  # scenario 1
    p = popping(SHUTTLES, 4)
    p.give(PAPER, Code("reason", "01"), Number("3"))
    assert p.give(press("pass_on")).tone == "attention"
    assert (lie(p.view, "trimming"), lie(p.view, "spoiled"), lie(p.view, "popping")) == (381, 3, 0)
    pile, slip = p.view.get(Pile, "trimming/00412"), p.view.get(Slip, "00412-4")
    assert pile
    assert (pile.since, pile.due, pile.done) == (at("10:00"), f"{DAY}T15:00:00", False)
    assert slip
    assert slip.state == "popped"


def test_the_button_says_that_a_held_batch_waits() -> None:
    p = popping(SHUTTLES)
    p.give(PAPER)
    assert "Pass on: 96 good" in [str(b.label) for b in screen(p.hand, p.view).presses]
    found = p.view.get(Batch, "00412")
    assert found
    p.view.facts["batch/00412"] = replace(found, holds=("held by worker 02",))
    first = screen(p.hand, p.view).presses[0]
    assert (str(first.label), first.style) == ("Not yet: it waits", "off")
    assert p.give(press("pass_on")).refused


def test_an_uncut_corner_is_told_to_its_router() -> None:  # scenario 5
    p = popping(COMBS)
    p.give(SLIP, press("uncut"), Number("6"), Code("zone", "59"))
    answer = p.give(press("pass_on"))
    told = p.view.get(Notice, "a1-1")
    assert told
    assert told.router == "1"
    assert "6 uncut, bottom right; look at the spoilboard or Z" in told.text
    child = answer.prints[0][1]
    made = p.view.get(Batch, child)
    assert made
    assert (made.role, made.parent, made.tries) == ("rework", "00412", 1)
    assert (lie(p.view, "trimming"), lie(p.view, "rework", child)) == (18, 6)
    assert [pile.batch for pile in p.view.shelf(Pile, "rework")] == [child]


def test_thrown_parts_are_missing_not_spoiled() -> None:  # scenario 6
    p = popping(SPACERS)
    p.give(SLIP, press("missing"), Number("4"), press("pass_on"))
    assert (lie(p.view, "trimming"), lie(p.view, "missing"), lie(p.view, "spoiled")) == (236, 4, 0)
    assert not p.view.shelf(Notice, "router/1")


def test_the_pick_up_names_parts_and_count() -> None:  # scenario 10
    p = popping(GAUGES)
    answer = p.give(PAPER)
    assert "160" in str(answer.do)
    assert "SG-10" in str(answer.do)
    assert p.view.entries == []


def test_two_people_at_once() -> None:  # scenario 12
    p = popping(SHUTTLES)
    q = Player(p.view, RULES, handle_input, hand("popping", worker="03"))
    for one in (p, q):
        one.give(SLIP, press("some"), Number("60"))
    assert p.give(press("pass_on")).tone == "good"
    late = q.give(press("pass_on"))
    assert late.refused
    assert "36 ST-200 left" in str(late.said)
    assert (lie(p.view, "popping"), lie(p.view, "trimming")) == (36, 60)


def test_what_survived_a_stopped_sheet() -> None:  # scenario 15
    known = batch(SPACERS)
    view = off_bed(small_shop(known), known, 1)
    view._move((move("032", 130, "popping/1", "spoiled/13", "00412"),))
    p = Player(view, RULES, handle_input, hand("popping"))
    p.give(SLIP, press("pass_on"))
    assert (lie(view, "trimming"), lie(view, "spoiled")) == (110, 130)


def refused(p: Player, *inputs: Input) -> Answer:
    before = len(p.view.entries)
    answer = p.give(*inputs)
    assert answer.refused
    assert len(p.view.entries) == before
    return answer


def test_refusals_say_why() -> None:
    void = refused(popping(COMBS, copy="B"), SLIP)
    assert "Void: see copy B" in str(void.said)
    held = refused(popping(COMBS, holds=("the revision changed",)), SLIP)
    assert "the revision changed" in str(held.said)
    assert "no batch 09999" in str(refused(popping(COMBS), Code("batch", "09999", "A")).said)
    busy = popping(COMBS)
    busy.hand = replace(busy.hand, subject="00999")
    assert "not off the bed" in str(refused(busy, Code("batch", "00412", "A", 3)).said)
    many = refused(popping(COMBS), SLIP, press("missing"), Number("25"))
    assert "At most 24" in str(many.said)


def test_a_slip_tells_what_it_is_though_its_traveller_is_void() -> None:
    p = popping(COMBS, copy="B", void=("A",))
    assert not p.give(SLIP).refused
    assert str(p.give(press("pass_on")).said) == "Batch 00412: 24 good passed on"
    again = popping(COMBS, copy="B", void=("A",))
    assert "Void: see copy B" in str(refused(again, PAPER).said)


def test_passed_on_already_says_when_and_by_whom() -> None:
    p = popping(COMBS)
    p.give(SLIP, press("pass_on"), now="10:42")
    assert p.handle_input(p.hand, SLIP, p.view) is None  # free hands: a question
    p.hand = replace(p.hand, subject="00999")
    told = refused(p, SLIP)
    assert "Passed on at 10:42 by worker 02: 24 good" in str(told.said)
    assert str(told.do) == "Now trimming: 24. Scan the next slip."


@pytest.mark.parametrize(
    ("there", "said"),
    [
        ({"shipped": 24}, "Now shipped: 24. Scan the next slip."),
        ({"rack/014": 20, "shipped": 4}, "Now rack C 14: 20 and shipped: 4. Scan the next slip."),
        ({"spoiled/05": 24}, "None of it is good any more. Scan the next slip."),
    ],
)
def test_what_was_passed_on_is_told_where_it_is_now(there: dict[str, int], said: str) -> None:
    p = popping(COMBS)
    p.give(SLIP, press("pass_on"))
    for place, count in there.items():
        p.view.pieces["trimming", "00412", COMB] -= count
        p.view.pieces[place, "00412", COMB] += count
    p.hand = replace(p.hand, subject="00999")
    assert str(refused(p, SLIP).do) == said


_ANY = st.one_of(
    st.sampled_from([press(n) for n in BUTTONS]),
    st.sampled_from([SLIP, PAPER, Code("batch", "00412", "A", 2), Code("part", COMB)]),
    st.sampled_from([Code("reason", r) for r in ("01", "02", "21", "31", "99")]),
    st.sampled_from([Code("zone", "59"), Point(100.0, 100.0), Point(-5.0, 1e6)]),
    st.sampled_from([Number(n) for n in ("0", "1", "7", "24", "999999", "-1", "1.5", "x")]),
)


@settings(max_examples=60, deadline=None)
@given(st.lists(_ANY, max_size=25))
@pytest.mark.slow
def test_any_inputs_keep_every_piece(inputs: list[Input]) -> None:
    p = popping(COMBS, 2)
    for one in inputs:
        if handle_input(p.hand, one, p.view) is not None:
            p.give(one)
        screen(p.hand, p.view)
    books = ("cut", "store", "bought")
    assert all(n >= 0 for (place, _, _), n in p.view.pieces.items() if place not in books)
    made = (n for (place, _, part), n in p.view.pieces.items() if place != "cut" and part != SHEET)
    assert sum(made) == 48


def two_routers() -> FakeView:
    """Sheet 1 of a batch was cut on router 1, sheet 2 on router 2."""
    known = batch(COMBS)
    return off_bed(off_bed(small_shop(known), known, 1), known, 2, router="2")


def test_each_router_that_cut_a_sheet_in_hand_is_told() -> None:
    p = Player(two_routers(), RULES, handle_input, hand("popping"))
    p.give(PAPER, Code("reason", "01"), Number("2"), press("pass_on"))
    for router in ("1", "2"):
        told = p.view.shelf(Notice, f"router/{router}")
        cut = "sheet 1 on Router 1 and sheet 2 on Router 2"
        said = f"HC-300: 2 torn at a tab (batch 00412, counted together: {cut})"
        assert [n.text for n in told] == [said]


def test_one_slip_of_two_tells_its_own_router_only() -> None:
    p = Player(two_routers(), RULES, handle_input, hand("popping"))
    second = Code("batch", "00412", "A", 2)
    p.give(second, Code("reason", "01"), press("pass_on"))
    assert not p.view.shelf(Notice, "router/1")
    assert [n.text for n in p.view.shelf(Notice, "router/2")] == ["HC-300: 1 torn at a tab"]


# what is scanned or touched, and what the router is told
WHERE: list[tuple[tuple[Input, ...], str]] = [
    ((Code("reason", "01"), Code("zone", "59")), "1 torn at a tab, bottom right"),
    ((Code("reason", "01"), Number("3"), Code("zone", "51"), Code("zone", "55")),
     "3 torn at a tab, top left, middle"),
    ((Code("reason", "01"), Code("zone", "51"), Code("zone", "51")), "1 torn at a tab"),
    ((Code("reason", "01"), Code("zone", "51"), Code("zone", "59")),
     "1 torn at a tab, bottom right"),
    ((Code("reason", "01"), Code("zone", "51"), Code("reason", "02"), Code("zone", "59")),
     "1 torn at a tab, top left; 1 chipped edge, bottom right"),
    ((Code("reason", "01"), Number("2"), Code("zone", "51"), Code("zone", "55"), press("fewer")),
     "1 torn at a tab, top left"),
    ((Point(30.0, 30.0), Point(2300.0, 1000.0)), "2 torn at a tab, bottom left, top right"),
    ((Point(30.0, 30.0), Point(2400.0, 1200.0)), "1 torn at a tab, top right"),
    ((Code("reason", "02"), Point(30.0, 30.0)), "1 chipped edge, bottom left"),
    ((Code("reason", "02"), Point(30.0, 30.0), Point(2300.0, 1000.0)),
     "2 chipped edge, bottom left, top right"),
    ((Point(30.0, 30.0), Point(2300.0, 1000.0), Point(31.0, 31.0)), "1 torn at a tab, top right"),
    ((Code("reason", "01"), Number("3"), Point(30.0, 30.0)), "3 torn at a tab, bottom left"),
    ((Code("reason", "01"), Number("3"), Point(30.0, 30.0), Point(30.0, 30.0)),
     "3 torn at a tab"),
]  # fmt: skip


@pytest.mark.parametrize(("inputs", "text"), WHERE)
def test_where_on_the_sheet_it_lay(inputs: tuple[Input, ...], text: str) -> None:
    p = popping(COMBS)
    p.give(SLIP, *inputs, press("pass_on"))
    assert [n.text for n in p.view.shelf(Notice, "router/1")] == [f"HC-300: {text}"]


def drawn(p: Player) -> SheetDrawing:
    return next(b for b in screen(p.hand, p.view).side if isinstance(b, SheetDrawing))


def test_only_the_chosen_part_and_its_marks_are_drawn_strongly() -> None:
    p = popping(COMBS)
    both = p.view.get(Revision, f"{COMBS}.C")
    assert both
    mixed = replace(both, placed=(*both.placed, Placed(part="021", x_mm=2200, y_mm=20)))
    p.view.facts[both.key] = mixed
    p.view._move((move("021", 1, "cut", "popping/1", "00412"),))
    p.give(SLIP)
    assert drawn(p).chosen == ()
    p.give(Code("part", COMB), Code("reason", "01"), Code("zone", "51"))
    assert drawn(p).chosen == (COMB,)
    assert [tone for _, _, tone in drawn(p).spots] == ["stop"]


def test_the_rest_of_a_pile_stays_visible() -> None:
    p = popping(COMBS)
    p.give(SLIP, press("some"), Number("10"))
    table = next(b for b in screen(p.hand, p.view).main if isinstance(b, Table))
    assert [str(c) for c in table.columns][-1] == "stays"
    assert str(table.rows[0].cells[-1].text) == "14"
    assert str(p.give(press("pass_on")).do) == "14 stay here under their slips."
    waits = next(b for b in screen(p.hand, p.view).main if isinstance(b, Cards))
    assert [str(e.line1) for e in waits.entries] == ["Heddle combs 300 · sheet 1 · 14 parts"]
    assert "worker 02 passed 10 on at 10:00" in str(p.give(SLIP).do)


COMING = [
    ({}, "09:10", "about 09:18"),
    ({}, "09:20", "due"),
    ({"paused_s": 300}, "09:20", "about 09:23"),
    ({"state": "stopped", "stopped": f"{DAY}T09:05:00"}, "09:10", "stopped"),
]


@pytest.mark.parametrize(("bed", "now", "when"), COMING)
def test_what_comes_next_from_the_routers(bed: dict[str, object], now: str, when: str) -> None:
    view = small_shop(batch(COMBS), replace(CUTTING, **bed))  # type: ignore[arg-type]
    shown = screen(hand("popping", now=now), view).side
    listing = next(b for b in shown if isinstance(b, Listing))
    assert [[str(c.text) for c in cells] for cells, _ in listing.rows] == [
        ["Router 1", "00412, sheet 1", when]
    ]


def test_where_pieces_were_spoiled_stays_with_their_reason_and_router() -> None:
    p = popping(COMBS)
    p.give(SLIP, Code("reason", "01"), Number("3"), Code("zone", "51"), Code("reason", "02"),
           press("pass_on"))  # fmt: skip
    found = list_spoiled_by_place(p.view, "1", f"{DAY}T00:00:00")
    assert [(s.pieces, s.reason, s.place) for s in found] == [(3, "01", "top left"), (1, "02", "")]
    assert list_spoiled_by_place(p.view, "2", f"{DAY}T00:00:00") == ()
    assert list_spoiled_by_place(p.view, "1", f"{DAY}T23:00:00") == ()


def _passed(view: FakeView, at: str, count: int) -> None:
    """Pieces passed on as good, as the history has it."""
    act = Act(id=f"p{at}", kind="pass_on", at=at, subject="batch/00412")
    moves = (move(SHUTTLE, count, "popping/1", "trimming", "00412"),)
    view.entries.append(Past(act, moves, (), undone=False))


def _list_passed(view: FakeView) -> Listing:
    face = screen(hand("popping"), view)
    return next(
        b for b in face.side if isinstance(b, Listing) and str(b.title).startswith("Passed")
    )


def test_all_that_was_passed_on_today_is_told_and_nothing_of_another_day() -> None:
    view = small_shop(replace(batch(SHUTTLES), cut=2))  # its sheets were cut on another day
    assert _list_passed(view).rows == ()
    _passed(view, "2026-11-24T16:00:00", 90)
    _passed(view, f"{DAY}T07:10:00", 40)
    _passed(view, f"{DAY}T07:50:00", 16)
    rows = [[str(cell.text) for cell in cells] for cells, _ in _list_passed(view).rows]
    assert rows == [["ST-200", "56 good"]]


def test_a_list_of_what_was_passed_on_says_what_it_leaves_out() -> None:
    view = small_shop(batch(SHUTTLES))
    parts = [f"9{n:02d}" for n in range(8)]
    moves = tuple(move(part, 5, "popping/1", "trimming", "00412") for part in parts)
    act = Act(id="p", kind="pass_on", at=f"{DAY}T07:10:00", subject="batch/00412")
    view.entries.append(Past(act, moves, (), undone=False))
    listing = _list_passed(view)
    assert (str(listing.title), len(listing.rows)) == ("Passed on today: 3 more", 5)


def test_every_sheet_that_waits_is_counted_in_a_wide_shop_too() -> None:
    batches = [replace(batch(SHUTTLES), id=f"{n:05d}", sheets=100) for n in range(100, 200)]
    slips = [Slip(id=f"{b.id}-1", batch=b.id, sheet=1, router="1", at=f"{DAY}T06:00:00")
             for b in batches]  # fmt: skip
    last = Slip(id="00100-2", batch="00100", sheet=2, router="1", at=f"{DAY}T06:30:00")
    view = small_shop(*batches, *slips, last)
    view._move(
        tuple(move(SHUTTLE, 9, "cut", f"popping/{s.sheet}", s.batch) for s in (*slips, last))
    )
    cards = list_waiting(hand("popping"), view, 4)
    assert str(cards.title) == "Waiting here: 96 more"
    assert str(cards.entries[0].line1).endswith("sheets 1 and 2 · 18 parts")


def test_a_night_does_not_make_a_short_wait_long() -> None:
    slip = Slip(id="00412-1", batch="00412", sheet=1, router="1", at="2026-11-24T23:02:00")
    cards = list_waiting(
        replace(hand("popping"), now=f"{DAY}T00:40:30"), small_shop(batch(SHUTTLES), slip), 4
    )
    assert str(cards.entries[0].right) == "98 min"


def test_a_batch_of_many_sheets_shows_that_more_are_there() -> None:
    slips = [Slip(id=f"00412-{n}", batch="00412", sheet=n, router="1", at=f"{DAY}T06:{n:02d}:00")
             for n in range(1, 9)]  # fmt: skip
    cards = list_waiting(hand("popping"), small_shop(batch(SHUTTLES), *slips), 4)
    assert "sheets 1, 2, 3, 4, 5, 6 …" in str(cards.entries[0].line1)


@pytest.mark.parametrize(
    ("came", "words"),
    [
        (f"{DAY}T09:10:30", "50 min"),
        ("2026-11-25T00:10:00", "590 min"),
        ("2026-11-24T23:50:00", "since 24 Nov 23:50"),
        ("2026-11-24T14:05:00", "since 24 Nov 14:05"),
    ],
)
def test_how_long_a_sheet_waits_is_true_across_midnight(came: str, words: str) -> None:
    now = "2026-11-25T10:00:00"
    slip = Slip(id="00412-1", batch="00412", sheet=1, router="1", at=came)
    view = small_shop(batch(SHUTTLES), slip)
    cards = list_waiting(replace(hand("popping"), now=now), view, 4)
    assert str(cards.entries[0].right) == words


def test_minus_takes_back_what_was_counted_though_another_reason_was_refused() -> None:
    p = popping(GAUGES)
    p.give(PAPER)
    part, n = next(iter(count_here(p.hand, p.view).items()))
    p.give(Code("part", part), Code("reason", "02"), Number(str(n)))
    refused = p.give(Code("reason", "04"))
    assert (refused.tone, str(refused.said)) == ("stop", "All of them are counted already")
    assert p.hand.work.counter == ""
    back = p.give(press("fewer"))
    assert str(back.said).endswith(f"{n - 1} chipped edge")
    assert p.hand.work.counts == {part: {"spoiled/02": n - 1}}


def test_minus_where_nothing_is_counted_says_so() -> None:
    p = popping(GAUGES)
    p.give(PAPER)
    part = next(iter(count_here(p.hand, p.view)))
    said = p.give(Code("part", part), press("fewer"))
    assert str(said.said) == "Nothing of it is counted"
    assert p.hand.work.counts == {}


def test_no_key_moves_when_the_first_piece_is_counted_spoiled() -> None:
    p = popping(SHUTTLES)
    p.give(PAPER)
    keys = [type(b) for b in screen(p.hand, p.view).main].index(Cards)
    before = screen(p.hand, p.view).main[:keys]
    p.give(Code("reason", "01"))
    after = screen(p.hand, p.view).main
    assert any(isinstance(b, Listing) for b in after)  # it is told
    assert [type(b) for b in after[: keys + 1]] == [*(type(b) for b in before), Cards]
