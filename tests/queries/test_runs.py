"""Second operations, engraving and laser passes: several runs of one batch on the same sheets."""

import re
from collections import Counter
from dataclasses import replace

import pytest

from station.floor.loading.dialogue import handle_input
from station.floor.loading.rules import RULES
from station.floor.loading.screen import screen
from station.floor.office.rules import RULES as OFFICE
from station.floor.office.sound import find_problems
from station.papers.marks import TextMark
from station.papers.traveller import make_traveller as paper
from station.planning.gather import gather_queues
from station.queries.runs import LASER, WORK, find_due
from station.shop.acts import Act
from station.shop.codes import Code
from station.shop.facts import Batch, Bed, BitUse, CutFile, Fact, Revision, Router, Shop, Slip
from station.shop.moves import SHEET, WEAR
from station.shop.rooms import FileJob
from tests.fakes import FakeView
from tests.floor.shop_small import (
    COMB,
    COMBS,
    GAUGES,
    Player,
    at,
    batch,
    hand,
    small_shop,
)
from tests.floor.test_loading_stories import cut, pieces, press, ready, said, slip, traveller

POCKETS = CutFile(id="071", name="POCKET-B", words="Pockets", work="second", approved="A")
POCKETS_A = Revision(id="071.A", cut_file="071", letter="A", material="1", minutes=6.0,
                     bits=(BitUse(number=1, diameter_mm=6.0, cut_mm=9000.0),),
                     digest="b" * 64)  # fmt: skip
MARKS = CutFile(id="072", name="MARK-L", words="Marks", work=LASER, approved="A")
MARKS_A = Revision(id="072.A", cut_file="072", letter="A", material="1", minutes=4.0,
                   routers=("5",))  # fmt: skip


def shop(*runs: str, sheets: int = 2, extra: tuple[Fact, ...] = ()) -> FakeView:
    """The small shop; each comb sheet has these runs; a batch of two sheets on router 1."""
    comb = small_shop().get(Revision, f"{COMBS}.C")
    assert comb is not None
    made = replace(comb, runs=runs, digest="a" * 64)
    return small_shop(POCKETS, POCKETS_A, MARKS, MARKS_A, made, batch(sheets=sheets), *extra)


def player(view: FakeView, router: str = "1", now: str = "07:30") -> Player:
    return Player(view, RULES, handle_input, hand("loading", router=router, now=now))


def again(one: Player, now: str, *, bit: bool = True) -> None:
    """What is ticked before a further run; no lot, no thickness: the sheet is known."""
    ticks = [press("held_down"), *([press("bit_good")] if bit else []), press("file_right")]
    if (bed := one.view.get(Bed, one.hand.router)) and bed.zero:
        ticks.append(press("zeroed"))
    one.give(*ticks, now=now)
    assert not one.give(press("start")).refused, said(one.said[-1])


def sheets(view: FakeView) -> Counter[str]:
    """Where sheets lie, those in the store and bought aside."""
    found: Counter[str] = Counter()
    for (place, _, part), qty in view.pieces.items():
        if part == SHEET and qty and place not in ("store", "bought"):
            found[place] += qty
    return found


def metres(view: FakeView, bit: str) -> int:
    spot = f"bit/{bit}"
    return sum(q for (place, _, part), q in view.pieces.items() if (place, part) == (spot, WEAR))


def test_a_sheet_turned_over_goes_on_the_same_bed_again() -> None:
    view = shop(f"{COMBS}.C", "071.A")
    one = player(view)
    one.give(traveller())
    first = cut(one, 1, "08:00", "08:22")
    assert said(first) == "Sheet 1: run 1 of 2 is done | On with it: POCKET-B A on its pins."
    assert pieces(view, COMB)["popping"] == 0
    assert sheets(view) == {"between": 1}
    (waits,) = gather_queues(view, at("08:23"))[1]
    assert (waits.sheets, waits.to_take) == (2, 1)  # that one is none of the store any more
    assert not view.shelf(Slip, "popping")
    assert metres(view, "11") == 60_000
    again(one, "08:25")
    assert "Sheet 1, run 2, started" in said(one.said[-1])
    done = one.give(slip(1), now="08:32")
    assert "Sheet 1 is off the bed: 24 parts" in said(done)
    assert pieces(view, COMB)["popping"] == 24
    assert sheets(view) == {"used": 1}
    assert metres(view, "11") == 69_000
    kept = view.get(Slip, "00412-1")
    assert kept
    assert [(r.revision, r.minutes) for r in kept.runs] == [(f"{COMBS}.C", 22.0)]
    assert (kept.state, kept.minutes, kept.lot) == ("popping", 7.0, "0931")
    found = view.get(Batch, "00412")
    assert found
    assert (found.cut, found.state) == (1, "cutting")


def test_the_runs_may_begin_with_another_file() -> None:
    view = shop("071.A", f"{COMBS}.C", sheets=1)
    one = player(view)
    one.give(traveller())
    assert "HC300-SET C on its pins" in said(cut(one, 1, "08:00", "08:06"))
    again(one, "08:10")
    assert "24 parts | First-off check, then all to popping. The batch is cut." in said(
        one.give(slip(1), now="08:33")
    )
    assert metres(view, "11") == 69_000


def test_each_run_asks_for_its_own_text_minutes_and_bit() -> None:
    view = shop("071.A", sheets=1)
    router = view.get(Router, "1")
    assert router
    view.facts[router.key] = replace(router, folder="/texts")
    one = player(view)
    one.give(traveller())
    for digest, minutes, letter in (("a" * 64, 22.0, "C"), ("b" * 64, 6.0, "A")):
        asked = handle_input(one.hand, press("file_right"), view)
        assert isinstance(asked, FileJob)
        assert (asked.request.digest, asked.request.letter) == (digest, letter)
        view.facts[router.key] = replace(router, folder="")
        if minutes == 22.0:
            ready(one, "08:00")
            one.give(press("start"))
        else:
            again(one, "08:30")
        bed = view.get(Bed, "1")
        assert bed
        assert bed.minutes == minutes
        one.give(slip(1), now="08:25" if minutes == 22.0 else "08:40")
        view.facts[router.key] = replace(router, folder="/texts")


def test_a_run_that_is_not_approved_is_refused() -> None:
    view = shop("071.A", sheets=1)
    one = player(view)
    one.give(traveller())
    cut(one, 1, "08:00", "08:22")
    view.facts[POCKETS.key] = replace(POCKETS, approved="B")
    assert "POCKET-B A is to run, B is approved" in said(one.give(press("file_right")))
    act = Act(id="x", kind="start_sheet", at=at("08:30"), worker="02", subject="batch/00412",
              args={"router": "1", "ticks": ["held_down", "bit", "file"]})  # fmt: skip
    assert "POCKET-B A is to run, B is approved" in said(view.do(RULES, act))


def test_a_sheet_spoiled_in_its_second_run() -> None:
    view = shop("071.A")
    one = player(view)
    one.give(traveller())
    cut(one, 1, "08:00", "08:22")
    again(one, "08:25")
    one.give(press("sheet_spoiled"), Code("reason", "12"), press("sheet_spoiled"), now="08:28")
    assert pieces(view, COMB) == {"cut": -24, "spoiled": 24}
    assert sheets(view) == {"used": 1}
    assert not view.shelf(Slip, "between")
    kept = view.get(Slip, "00412-1")
    assert kept
    assert kept.state == "spoiled"
    assert metres(view, "11") == 69_000
    revision, work = view.get(Revision, f"{COMBS}.C"), view.get(Batch, "00412")
    assert revision
    assert work
    following = find_due(view, work, revision, Bed(id="1"))
    assert following
    assert (following.sheet, following.run) == (2, 1)


def test_no_more_sheets_lets_those_between_two_runs_be_finished() -> None:
    view = shop("071.A", sheets=5)
    one = player(view)
    one.give(traveller())
    cut(one, 1, "08:00", "08:22")
    act = Act(id="x", kind="cancel_batch", at=at("08:30"), worker="07", subject="batch/00412",
              args={"approved": "07"})  # fmt: skip
    assert "1 sheet lies between two runs" in said(view.do(OFFICE, act))
    again(one, "08:40")
    assert "The batch is cut." in said(one.give(slip(1), now="08:50"))
    assert not view.shelf(Batch, "queue/1")


def test_another_router_says_where_the_next_run_is() -> None:
    view = shop("072.A", sheets=1)
    one, five = player(view), player(view, "5")
    one.give(traveller())
    assert "Sheets, slips and traveller to Router 5." in said(cut(one, 1, "08:00", "08:22"))
    moved = view.get(Batch, "00412")
    assert moved
    assert moved.router == "5"
    assert "Router 1 can't run MARK-L A | It runs on router 5." in said(one.give(traveller()))
    five.give(traveller(), now="08:30")
    again(five, "08:30", bit=False)
    assert "24 parts" in said(five.give(slip(1), now="08:34"))
    kept = view.get(Slip, "00412-1")
    assert kept
    assert (kept.router, kept.runs[0].router) == ("5", "1")


def test_the_screen_names_the_run_and_the_laser_its_dangers() -> None:
    view = shop("072.A", sheets=1)
    one = player(view)
    one.give(traveller())
    shown = str(screen(one.hand, view))
    assert "run {run} of {runs}" in shown
    assert "Laser" not in shown
    cut(one, 1, "08:00", "08:22")
    five = player(view, "5")
    five.give(traveller(), now="08:30")
    shown = str(screen(five.hand, view))
    assert "On its reference pins" in shown
    assert re.search("Covers shut, eyes covered for its wavelength, fumes drawn off", shown)
    assert "lead come first" in shown


@pytest.mark.parametrize(
    ("runs", "problem"),
    [
        (("071.A", "072.A"), ""),
        ((f"{COMBS}.C", "071.A"), ""),
        (("099.A",), "There is no revision 099.A"),
        (("071.A", "071.A"), "names one thing twice"),
        ((f"{GAUGES}.C",), "SG010-SET C cuts parts out of a sheet of its own"),
        (("073.A",), "FRAME-B A is for another material"),
    ],
)
def test_what_may_be_a_run(runs: tuple[str, ...], problem: str) -> None:
    other = (replace(POCKETS, id="073", name="FRAME-B"),
             replace(POCKETS_A, id="073.A", cut_file="073", material="2"))  # fmt: skip
    view = shop(extra=other)
    revision = view.get(Revision, f"{COMBS}.C")
    assert revision
    told = " ".join(str(p) for p in find_problems(replace(revision, runs=runs), view))
    assert (problem in told) if problem else not told


def test_a_run_is_not_released_by_itself() -> None:
    args = {"cut_file": "071", "router": "1", "sheets": 2, "approved": "07",
            "numbers": {"batch": "00500"}}  # fmt: skip
    act = Act(id="x", kind="release_batch", at=at("08:30"), worker="07", args=args)
    assert "POCKET-B cuts no parts out" in said(shop().do(OFFICE, act))


def test_the_traveller_tells_the_runs_and_the_lasers_dangers() -> None:
    view = shop()
    cut_file, revision = view.get(CutFile, COMBS), view.get(Revision, f"{COMBS}.C")
    assert cut_file
    assert revision
    page = paper(batch(), cut_file, revision, None, None, {}, printed=at("08:00"),
                 runs=("Cuts out: HC300-SET C", "Laser: MARK-L A on router 5"), laser=True,
                 shop=Shop(id="shop"))  # fmt: skip
    words = " ".join(m.words for sheet in page.pages for m in sheet if isinstance(m, TextMark))
    assert "2 Laser: MARK-L A on router 5" in words
    assert "fume drawn off" in words


def test_every_kind_of_work_has_words() -> None:
    assert set(WORK) == {"parts", "second", "engraving", LASER}
