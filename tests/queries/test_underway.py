"""Questions about work under way."""

from dataclasses import replace

import pytest

from station.queries import underway
from station.shop.acts import Act, Args, good
from station.shop.facts import Batch, Bed, CutFile, Order, Placed, Revision, Router, Slip
from station.shop.moves import Held, Move, move
from station.shop.words import say
from tests.fakes import FakeView

DAY = "2026-11-25"
BATCH = Batch(
    id="00412",
    cut_file="008",
    revision="C",
    router="1",
    sheets=4,
    cut=1,
    due=f"{DAY}T14:00:00",
    state="cutting",
)
COMBS = Revision(
    id="008.C", cut_file="008", letter="C", material="1", minutes=20,
    placed=(Placed(part="014", x_mm=0, y_mm=0), Placed(part="014", x_mm=9, y_mm=0),
            Placed(part="021", x_mm=0, y_mm=9)),
)  # fmt: skip
FILE = CutFile(id="008", name="HC300-SET", words="Heddle combs", approved="C")
ONE = Router(id="1", name="Router 1")
BED = Bed(id="1", state="cutting", batch="00412", sheet=2)


def slip(batch: str, sheet: int, at: str, **more: object) -> Slip:
    """A sheet that came off router 1."""
    made = Slip(id=f"{batch}-{sheet}", batch=batch, sheet=sheet, router="1", at=at)
    return replace(made, **more)  # type: ignore[arg-type]


def lies(place: str, batch: str, count: int, part: str = "014") -> Move:
    """So many pieces at a place."""
    return move(part, count, "cut", place, batch)


WAITS = (
    lies("popping/1", "00412", 24),
    lies("trimming", "00411", 10),
    lies("rework", "00410", 3),
    lies("rack/014", "00412", 5),
    lies("missing", "00412", 2),
)
SLIPS = (slip("00412", 1, f"{DAY}T10:00:00"), slip("00409", 7, f"{DAY}T09:00:00", state="popped"))


def shop(*facts: Order | Batch | Bed) -> FakeView:
    """A shop with one batch on its way and pieces of others."""
    return FakeView.of(BATCH, FILE, COMBS, ONE, BED, *SLIPS, *facts, moves=WAITS)


@pytest.mark.parametrize(
    ("area", "found"),
    [
        ("popping", [("popping/1", 24)]),
        ("trimming", [("trimming", 10), ("rework", 3)]),
        ("", [("trimming", 10), ("rework", 3), ("popping/1", 24)]),
    ],
)
def test_what_waits_is_listed_by_area(area, found):
    assert [(h.place, h.qty) for h in underway.list_waiting(shop(), area)] == found


def test_batches_that_wait_are_told_those_to_be_made_good_too():
    assert underway.list_waiting_batches(shop()) == ("00412", "00411", "00410")


@pytest.mark.parametrize(
    ("area", "places"), [("", ["popping/1"]), ("popping", ["popping/1"]), ("trimming", [])]
)
def test_pieces_lie_with_their_paper_until_the_rack(area, places):
    view = shop()
    assert [h.place for h in underway.list_with_paper(view, "00412", area)] == places


def test_pieces_are_counted_by_part_and_place():
    held = (Held("rack/014", "1", "014", 3), Held("rack/014", "2", "014", 4),
            Held("trimming", "2", "021", 5))  # fmt: skip
    assert underway.count_by_place(held) == {"014": {"rack/014": 7}, "021": {"trimming": 5}}


def test_sheets_still_to_be_cut_are_counted_with_their_pieces():
    assert underway.count_sheets_to_cut(shop()) == 3
    assert underway.count_pieces_to_cut(shop()) == 9
    assert [b.id for b in underway.list_queue(shop(), "1")] == ["00412"]


def test_sheets_of_a_day_end_at_midnight():
    late = slip("00412", 2, f"{DAY}T23:59:59")
    early = slip("00412", 3, "2026-11-26T00:00:01")
    view = FakeView.of(ONE, *SLIPS, late, early)
    found = {d: [s.sheet for s in underway.list_cut(view, "1", d)] for d in (DAY, "2026-11-26")}
    assert found == {DAY: [7, 1, 2], "2026-11-26": [3]}


def test_what_is_split_off_a_sheet_is_no_sheet_that_was_cut():
    child = replace(BATCH, id="00418", sheets=0, parent="00412", role="split")
    cut, off = slip("00412", 1, f"{DAY}T09:00:00"), slip("00418", 1, f"{DAY}T09:00:00")
    view = FakeView.of(ONE, BATCH, child, cut, off)
    assert underway.list_cut(view, "1", DAY) == (cut,)


def test_a_part_s_pieces_under_way_are_counted_by_place():
    found = underway.count_underway(shop(), "014")
    assert found == (10, 3, 24, 2, 4, f"{DAY}T14:00:00")
    assert str(underway.count_underway(shop(), "021").words(f"{DAY}T10:00:00")) == (
        "1 being cut and 2 still to be cut, due 14:00"
    )
    past_midnight = underway.count_underway(shop(), "021").words("2026-11-26T00:10:00")
    assert str(past_midnight).endswith("due 25 Nov")
    assert underway.count_underway(shop(), "099").all == 0


def test_pieces_of_a_held_batch_or_of_another_order_do_not_come():
    theirs = replace(BATCH, order="3306")
    order = Order(id="3306", lines=(), due="")
    assert underway.count_underway(shop(replace(BATCH, holds=("why",))), "014").all == 13
    assert underway.count_underway(shop(theirs, order), "014").all == 13
    assert underway.count_underway(shop(theirs, order), "014", "3306").all == 43
    assert underway.count_underway(shop(theirs, replace(order, state="packed")), "014").all == 43


def passed(kind: str, *moves: Move, station: str = "2") -> FakeView:
    """A shop in which another station has done one thing with the batch."""
    view = shop()
    act = Act(id="a", kind=kind, at=f"{DAY}T10:42:00", worker="02", station=station,
              subject="batch/00412")  # fmt: skip
    view.apply(act, good(say("done"), moves=moves))
    return view


GOOD = move("014", 10, "popping/1", "trimming", "00412")
SPOILED = move("014", 2, "popping/1", "spoiled/01", "00412")


@pytest.mark.parametrize(
    ("kind", "moves", "said"),
    [
        ("pass_on", (GOOD, SPOILED), "worker 02 passed 10 on at 10:42"),
        ("split_batch", (SPOILED,), "worker 02 split 2 off at 10:42"),
        ("recount", (SPOILED,), ""),
    ],
)
def test_what_was_done_last_is_told(kind, moves, said):
    assert str(underway.explain_last(passed(kind, *moves), BATCH)) == said


@pytest.mark.parametrize(
    ("seen", "station", "sure", "asked"),
    [
        ({"014": 24}, "1", False, True),
        ({"014": 14}, "1", False, False),  # nothing has changed
        ({"014": 24}, "2", False, False),  # it was this station itself
        ({"014": 24}, "1", True, False),
        ({}, "1", False, False),
    ],
)
def test_a_pile_that_another_has_touched_is_asked_about(seen, station, sure, asked):
    view = passed("pass_on", GOOD)
    act = Act(id="b", kind="pass_on", at=f"{DAY}T10:50:00", station=station, args=Args(sure=sure))
    answer = underway.ask_if_changed(act, seen, view, BATCH, {"014": 14})
    assert bool(answer) == asked
    if answer:
        assert str(answer.said) == (
            "14 are here, 24 when you took it: worker 02 passed 10 on at 10:42"
        )
