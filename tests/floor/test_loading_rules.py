"""Every refusal of the loading room's rules, and what each act sets when it is right."""

from collections.abc import Mapping
from dataclasses import replace

import msgspec
import pytest

from station.floor.loading.acts import SpoilSheet
from station.floor.loading.rules import RULES
from station.shop.acts import Act, Answer
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    BitUse,
    Concern,
    Fact,
    Lot,
    Notice,
    Reason,
    Revision,
    Router,
    Slip,
)
from station.shop.moves import BOARD, WEAR
from station.shop.views import Written
from tests.fakes import FakeView
from tests.floor.beds import AGREED, BED, CUTTING, FIRST, ON_BED, STOPPED, WHOLE, worn
from tests.floor.shop_small import COMBS, DAY, GAUGE, GAUGES, at, batch, sheets, small_shop

SAFE = ("bit_out", "bed_clear", "sheet_held", "nobody_near")


def act(kind: str, subject: str = "batch/00412", now: str = "10:00", **args: object) -> Act:
    return Act(id="x", kind=kind, at=at(now), worker="02", station="s1", subject=subject,
               args={"router": "1", **args})  # fmt: skip


def decide(view: FakeView, kind: str, subject: str = "batch/00412", now: str = "10:00",
           **args: object) -> Answer:  # fmt: skip
    return view.do(RULES, act(kind, subject, now, **args))


def start(view: FakeView, **changes: object) -> Answer:
    args: dict[str, object] = {"lot": "0931", "reading": 6.4, "ticks": WHOLE}
    return decide(view, "start_sheet", **{**args, **changes})  # type: ignore[arg-type]


def measure(view: FakeView, mm: float = 100.0, part: str = GAUGE, router: str = "1") -> Answer:
    return decide(view, "measure_first_off", f"router/{router}", part=part, size="A along",
                  reading_mm=mm)  # fmt: skip


def told(answer: Answer) -> str:
    return f"{answer.said} | {answer.do}"


# --- start_sheet

GOOD = batch(GAUGES)
START_REFUSALS: tuple[tuple[str, tuple[Fact, ...], Mapping[str, object]], ...] = (
    ("There is no such batch", (), {"subject": "batch/00999"}),
    ("Batch 00412 is not on Router 1", (GOOD, replace(BED, batch="")), {}),
    ("Sheet 1 was loaded 09:00 by worker 02", (GOOD, CUTTING), {}),
    ("Sheet 3 of batch 00417 is on the bed",
     (GOOD, replace(CUTTING, batch="00417", sheet=3)), {}),
    ("Router 1 is stopped since 09:05", (GOOD, STOPPED), {}),
    ("Void: copy A was replaced by copy B", (replace(GOOD, copy="B"), BED), {"copy": "A"}),
    ("Batch 00412 is held: late", (replace(GOOD, holds=("late",)), BED), {}),
    ("Batch 00412 is cancelled", (replace(GOOD, state="cancelled"), BED), {}),
    ("Batch 00412 has no sheets of its own", (replace(GOOD, role="rework"), BED), {}),
    ("All 4 sheets of batch 00412 are cut", (replace(GOOD, cut=4), BED), {}),
    ("Revision B offered, C is approved", (replace(GOOD, revision="B"), BED), {}),
    ("The other 2 sheets are held", (replace(GOOD, revision="B", cut=2), BED), {}),
    ("Read first: 6 uncut",
     (GOOD, BED, Notice(id="n", router="1", text="6 uncut", at=at("09:00"))), {}),
    ("Start of day is due on Router 1", (GOOD, replace(BED, day="2026-11-24")), {}),
    ("Re-home the router first: stop", (GOOD, replace(BED, rehome="stop")), {}),
    ("First-off is due: batch 00412, sheet 1", (GOOD, replace(BED, firsts=(FIRST,))), {}),
    ("First-off is due: batch 00400, sheet 1",
     (GOOD, replace(BED, firsts=(replace(FIRST, file="009.C", batch="00400"),))), {}),
    ("First-off of this file is wrong on Router 1",
     (GOOD, replace(BED, firsts=(replace(FIRST, state="wrong"),))), {}),
    ("Which lot is the sheet from?", (GOOD, BED), {"lot": ""}),
    ("There is no lot 0999", (GOOD, BED), {"lot": "0999"}),
    ("Lot 0940 is 9 mm birch plywood", (GOOD, BED), {"lot": "0940"}),
    ("No bit is in the spindle", (GOOD, replace(BED, bits=())), {}),
    ("Bit 11 is broken",
     (GOOD, BED, Bit(id="11", words="6", diameter_mm=6.0, router="1", state="broken")), {}),
    ("Bit 18 is 3 mm", (GOOD, replace(BED, bits=((0, "18"),))), {}),
    ("Not held down", (GOOD, BED), {"ticks": ("bit", "file")}),
    ("The bit is not checked", (GOOD, BED), {"ticks": ("held_down", "file")}),
    ("The cut file is not checked", (GOOD, BED), {"ticks": ("held_down", "bit")}),
    ("Zero is not set yet | Due: new bit", (GOOD, replace(BED, zero="new bit")), {}),
    ("How thick is the sheet?", (GOOD, BED), {"reading": 0}),
    ("5.99 mm read, limits are 6.0 to 6.9", (GOOD, BED), {"reading": 5.99}),
    ("6.91 mm read, limits are 6.0 to 6.9", (GOOD, BED), {"reading": 6.91}),
)  # fmt: skip


@pytest.mark.parametrize(("words", "facts", "args"), START_REFUSALS, ids=lambda v: str(v)[:30])
def test_a_sheet_is_not_started(
    words: str, facts: tuple[Fact, ...], args: Mapping[str, object]
) -> None:
    view = small_shop(*facts)
    answer = start(view, **args)
    assert words in told(answer)
    assert answer.refused
    assert not answer.moves
    assert not view.entries


@pytest.mark.parametrize("reading", [6.0, 6.4, 6.9])
def test_a_reading_at_its_limits_is_good(reading: float) -> None:
    assert not start(small_shop(GOOD, BED), reading=reading).refused


def test_a_started_sheet_leaves_the_store_and_runs_the_clock() -> None:
    router = Router(id="1", name="Router 1", pace=1.1, extra_s=60)
    view = small_shop(GOOD, replace(BED, zero="spoilboard resurfaced"), router)
    answer = start(view, ticks=(*WHOLE, "zero"))
    assert answer.moves == ON_BED
    bed, cut = view.get(Bed, "1"), view.get(Batch, "00412")
    assert bed
    assert cut
    assert bed.minutes == pytest.approx(20.8)
    assert bed == replace(CUTTING, started=at("10:00"), minutes=bed.minutes)
    assert cut.state == "cutting"


def test_a_bit_that_will_not_last_is_told() -> None:
    answer = start(small_shop(GOOD, BED, moves=(worn("11", 1450),)))
    assert (answer.tone, answer.refused) == ("attention", False)
    assert "Bit 11: 50 m left, 65 m needed" in told(answer)


def test_a_router_that_cannot_run_the_file_is_refused() -> None:
    revision = small_shop().get(Revision, f"{GAUGES}.C")
    assert revision
    view = small_shop(replace(revision, routers=("3",)), GOOD, replace(BED, batch=""))
    assert "can't run this cut file" in told(decide(view, "take_batch"))
    view = small_shop(replace(revision, routers=("3",)), GOOD, BED)
    assert "It runs on router 3" in told(start(view))


POCKETS = (BitUse(number=1, diameter_mm=6.0, cut_mm=9e3), BitUse(number=2, diameter_mm=3.0,
                                                                cut_mm=4e3))  # fmt: skip


@pytest.mark.parametrize(
    ("bits", "words"),
    [
        (((1, "15"), (2, "16")), "Sheet 1 started"),
        (((1, "15"),), "Pocket 2 is empty"),
        (((1, "16"), (2, "15")), "Bit 16 is 3 mm"),
    ],
)
def test_a_changer_needs_each_bit_in_its_pocket(
    bits: tuple[tuple[int, str], ...], words: str
) -> None:
    revision = small_shop().get(Revision, f"{GAUGES}.C")
    assert revision
    view = small_shop(
        replace(revision, bits=POCKETS),
        replace(GOOD, router="5"),
        replace(BED, id="5", bits=bits),
    )
    assert words in told(start(view, router="5"))


def test_each_bit_of_a_changer_wears_by_its_own_metres() -> None:
    revision = small_shop().get(Revision, f"{GAUGES}.C")
    assert revision
    bed = replace(CUTTING, id="5", bits=((1, "15"), (2, "16")))
    view = small_shop(
        replace(revision, bits=POCKETS), replace(GOOD, router="5", state="cutting"), bed
    )
    decide(view, "off_bed", "slip/00412-1", router="5", sheet=1)
    assert view.pieces[("bit/15", "5", WEAR)] == 9000
    assert view.pieces[("bit/16", "5", WEAR)] == 4000


# --- take_batch


@pytest.mark.parametrize(
    ("day", "do"),
    [(DAY, "Scan the lot of the sheet, measure it."),
     ("2026-11-24", "First the start of day, then the lot of the sheet.")],
)  # fmt: skip
def test_a_batch_that_is_taken_asks_for_the_start_of_day_first(day, do):
    view = small_shop(GOOD, replace(BED, batch="", day=day, firsts=(AGREED,)))
    assert str(decide(view, "take_batch").do) == do


TAKE_REFUSALS: tuple[tuple[str, tuple[Fact, ...], Mapping[str, object]], ...] = (
    ("Void: copy A", (replace(GOOD, copy="C"),), {"copy": "A"}),
    ("is held", (replace(GOOD, holds=("x",)),), {}),
    ("is cancelled", (replace(GOOD, state="cancelled"),), {}),
    ("All 4 sheets", (replace(GOOD, cut=4, state="cut"),), {}),
    ("no sheets of its own", (replace(GOOD, role="split"),), {}),
    ("No revision of this cut file", (replace(GOOD, cut_file="999"),), {}),
    ("Which router?", (GOOD,), {"router": "9"}),
    ("is on Router 1 already", (GOOD, BED), {}),
    ("Sheet 1 of batch 00417 is on the bed", (GOOD, replace(CUTTING, batch="00417")), {}),
    ("is planned for Router 3", (replace(GOOD, router="3"),), {}),
    ("is being cut on Router 2",
     (replace(GOOD, router="2"), replace(CUTTING, id="2", bits=())), {"sure": True}),
)  # fmt: skip


@pytest.mark.parametrize(("words", "facts", "args"), TAKE_REFUSALS, ids=lambda v: str(v)[:30])
def test_a_batch_is_not_taken(
    words: str, facts: tuple[Fact, ...], args: Mapping[str, object]
) -> None:
    answer = decide(small_shop(*facts), "take_batch", **args)  # type: ignore[arg-type]
    assert words in told(answer)
    assert answer.refused


def test_a_batch_of_another_router_is_taken_when_sure() -> None:
    view = small_shop(replace(GOOD, router="3"), Bed(id="3", day=DAY, batch="00412"))
    assert not decide(view, "take_batch", sure=True).refused
    moved, old, new = view.get(Batch, "00412"), view.get(Bed, "3"), view.get(Bed, "1")
    assert moved
    assert old
    assert new
    assert (moved.router, old.batch, new.batch) == ("1", "", "00412")


def test_a_batch_taken_up_again_sends_the_other_one_back_to_the_queue() -> None:
    view = small_shop(replace(GOOD, cut=2, state="cutting"), replace(BED, batch="00417"))
    answer = decide(view, "take_batch")
    assert (answer.tone, str(answer.do)) == ("attention", "Batch 00417 waits in the queue.")


def test_a_batch_that_is_taken_finds_the_first_off_of_the_one_before_it() -> None:
    view = small_shop(GOOD, replace(BED, batch="", firsts=(replace(FIRST, batch="00400"),)))
    assert str(decide(view, "take_batch").do) == "First: measure sheet 1 of batch 00400."


# --- off_bed and spoil_sheet

OFF_REFUSALS: tuple[tuple[str, Bed, Mapping[str, object]], ...] = (
    ("Void: copy A", CUTTING, {"sheet": 1, "copy": "A"}),
    ("No sheet of batch 00412 is on Router 1", BED, {"sheet": 1}),
    ("No sheet of batch 00412 is on Router 2", CUTTING, {"sheet": 1, "router": "2"}),
    ("Sheet 1 is on the bed, not 2", CUTTING, {"sheet": 2}),
    ("is stopped since 09:05", STOPPED, {"sheet": 1}),
    ("Sheet 1 started 09:00, 18 min expected", CUTTING, {"sheet": 1, "now": "09:08:59"}),
)


@pytest.mark.parametrize(("words", "bed", "args"), OFF_REFUSALS, ids=lambda v: str(v)[:30])
def test_a_sheet_does_not_come_off(words: str, bed: Bed, args: Mapping[str, object]) -> None:
    view = small_shop(replace(GOOD, copy="B", state="cutting"), bed, moves=ON_BED)
    answer = decide(view, "off_bed", "slip/00412-1", **args)  # type: ignore[arg-type]
    assert words in told(answer)
    assert answer.refused


def test_half_the_expected_time_is_enough() -> None:
    view = small_shop(replace(GOOD, state="cutting"), CUTTING, moves=ON_BED)
    assert not decide(view, "off_bed", "slip/00412-1", now="09:09", sheet=1).refused


@pytest.mark.parametrize("survived", [{GAUGE: "x"}, {GAUGE: True}, {GAUGE: 1.5}])
def test_what_survived_is_a_count(survived: dict[str, object]) -> None:
    with pytest.raises(msgspec.ValidationError):
        msgspec.convert({"router": "1", "survived": survived}, SpoilSheet)


@pytest.mark.parametrize("survived", [{GAUGE: 161}, {GAUGE: -1}, {"999": 1}])
def test_more_cannot_survive_than_a_sheet_has(survived: dict[str, int]) -> None:
    view = small_shop(replace(GOOD, state="cutting"), CUTTING, moves=ON_BED)
    answer = decide(view, "spoil_sheet", reason="12", survived=survived)
    assert answer.refused
    assert str(answer.said).startswith("A sheet has")


def test_a_spoiled_sheet_needs_a_reason_for_sheets() -> None:
    view = small_shop(replace(GOOD, state="cutting"), CUTTING, moves=ON_BED)
    assert decide(view, "spoil_sheet").asks == "reason"
    assert decide(view, "spoil_sheet", reason="01").asks == "reason"
    assert decide(small_shop(GOOD, BED), "spoil_sheet", reason="12").refused


def test_a_sheet_spoiled_whole_has_no_slip() -> None:
    view = small_shop(replace(GOOD, state="cutting"), CUTTING, moves=ON_BED)
    decide(view, "spoil_sheet", reason="14")
    spoilt = view.get(Batch, "00412")
    assert spoilt
    assert (spoilt.cut, spoilt.spoiled) == (1, 1)
    assert view.get(Slip, "00412-1") is None
    assert view.pieces[("spoiled/14", "00412", GAUGE)] == 160
    assert view.pieces[("bed/1", "0931", "sheet")] == 0
    assert view.pieces[("used", "0931", "sheet")] == 1


# --- stops, bits, first-off, day

ABOUT_ROUTER: tuple[tuple[str, str, Bed, Mapping[str, object], bool], ...] = (
    ("report_stop", "Why does Router 1 stand still?", BED, {}, True),
    ("report_stop", "Why does Router 1 stand still?", BED, {"reason": "01"}, True),
    ("report_stop", "is stopped since 09:05", STOPPED, {"reason": "33"}, True),
    ("report_stop", "This does not stop the router", BED, {"reason": "33"}, False),
    ("report_stop", "Never hold parts by hand", BED, {"reason": "32"}, False),
    ("end_stop", "is not stopped", CUTTING, {}, True),
    ("end_stop", "Stop over after 55 min", STOPPED, {"ticks": SAFE}, False),
    ("end_stop", "The bit is not out of the wood yet", STOPPED, {}, True),
    ("end_stop", "Re-home the router first", replace(STOPPED, rehome="x"), {"ticks": SAFE}, True),
    ("end_stop", "Zero is not set yet", replace(STOPPED, zero="x"), {"ticks": SAFE}, True),
    ("end_stop", "Stop over", replace(STOPPED, zero="x"), {"ticks": (*SAFE, "zero")}, False),
    ("rehome", "is re-homed", replace(STOPPED, rehome="x"), {}, False),
    ("change_bit", "There is no such bit", BED, {"bit": "99"}, True),
    ("change_bit", "Bit 11 is in already", BED, {"bit": "11"}, True),
    ("change_bit", "Bit 12 is in Router 2", BED, {"bit": "12"}, True),
    ("change_bit", "Sheet 1 is being cut", CUTTING, {"bit": "17"}, True),
    ("change_bit", "Bit 17 is in: 6.0 mm compression", BED, {"bit": "17"}, False),
    ("change_bit", "Bit 17 is in", STOPPED, {"bit": "17"}, False),
    ("bit_broken", "That bit is not in Router 1", BED, {"bit": "17"}, True),
    ("bit_broken", "put a new bit in", BED, {"bit": "11"}, False),
    ("bit_broken", "Report the sheet spoiled", CUTTING, {"bit": "11"}, False),
    ("check_first_off", "No first-off is due", BED, {"good": True}, True),
    ("check_first_off", "Not while sheet 1", replace(CUTTING, firsts=(FIRST,)), {"good": True},
     True),
    ("check_first_off", "No first sheet of Router 1", BED, {"good": False}, True),
    ("check_first_off", "is held: first-off is wrong", replace(CUTTING, firsts=(AGREED,)),
     {"good": False}, False),
    ("set_zero", "Not while sheet 1", CUTTING, {}, True),
    ("start_day", "Start of day is already done", BED, {}, True),
    ("start_day", "Start of day done on Router 1", replace(BED, day=""), {}, False),
    ("resurface", "Not while sheet 1 is on the bed", CUTTING, {}, True),
    ("resurface", "Set zero before the next sheet", BED, {"sure": True}, False),
    ("rehome", "Not while sheet 1 is on the bed", replace(CUTTING, rehome="x"), {}, True),
    ("rehome", "need not be re-homed", BED, {}, True),
    ("rehome", "is re-homed", replace(BED, rehome="x"), {}, False),
    ("read_notice", "There is nothing to read", BED, {}, True),
)  # fmt: skip


@pytest.mark.parametrize(("kind", "words", "bed", "args", "refused"), ABOUT_ROUTER)
def test_acts_about_a_router(
    kind: str, words: str, bed: Bed, args: Mapping[str, object], *, refused: bool
) -> None:
    view = small_shop(replace(GOOD, state="cutting"), bed)
    answer = decide(view, kind, "router/1", **args)  # type: ignore[arg-type]
    assert words in told(answer)
    assert answer.refused == refused


def test_a_start_of_day_that_is_done_is_no_alarm() -> None:
    """It was amber though nothing is wrong."""
    view = small_shop(replace(GOOD, state="cutting"), BED)
    answer = decide(view, "start_day", "router/1")
    assert (answer.tone, answer.refused) == ("good", True)


def test_a_broken_bit_that_is_still_in_is_called_broken() -> None:
    broken = Bit(id="11", words="6", diameter_mm=6.0, router="1", state="broken")
    view = small_shop(GOOD, BED, broken)
    assert "Bit 11 is broken" in told(decide(view, "change_bit", "router/1", bit="11"))


@pytest.mark.parametrize(
    "kind", ["report_stop", "end_stop", "change_bit", "bit_broken", "start_day", "rehome"]
)
def test_a_router_that_is_not_there_is_refused(kind: str) -> None:
    assert str(decide(small_shop(), kind, "router/9").said) == "Which router?"


@pytest.mark.parametrize(
    ("reason", "first_off", "rehome"),
    [("31", True, False), ("32", True, True), ("33", False, False), ("34", True, True)],
)
def test_a_stop_makes_due_what_its_reason_says(
    reason: str, *, first_off: bool, rehome: bool
) -> None:
    view = small_shop(GOOD, CUTTING)
    decide(view, "report_stop", "router/1", reason=reason)
    bed = view.get(Bed, "1")
    assert bed
    assert (bool(bed.first_off), bool(bed.rehome)) == (first_off, rehome)
    assert (bed.state, bed.stopped) == ("stopped", at("10:00"))


def test_a_new_bit_makes_zero_and_first_off_due_and_frees_the_old_one() -> None:
    view = small_shop(GOOD, BED)
    decide(view, "change_bit", "router/1", bit="17")
    bed, new, old = view.get(Bed, "1"), view.get(Bit, "17"), view.get(Bit, "11")
    assert bed
    assert new
    assert old
    assert (bed.bits, bed.zero, bed.first_off) == (((0, "17"),), "new bit 17", "new bit 17")
    assert (new.router, old.router) == ("1", "")


def test_a_bit_that_was_only_looked_at_and_put_back_names_the_first_off() -> None:
    view = small_shop(GOOD, replace(BED, seen=("11",)))
    answer = decide(view, "change_bit", "router/1", bit="17")
    assert "Undo" in str(answer.do), "the card of a spare one was scanned to check it"
    decide(view, "change_bit", "router/1", bit="11")
    bed = view.get(Bed, "1")
    assert bed
    assert bed.first_off == "new bit 11", "17 is out again"


def test_a_bit_change_in_the_middle_of_a_sheet_wears_the_bit_that_comes_out() -> None:
    revision = small_shop().get(Revision, f"{GAUGES}.C")
    assert revision
    view = small_shop(replace(revision, bits=POCKETS), GOOD, CUTTING, moves=ON_BED)
    assert not decide(view, "change_bit", "router/1", bit="18").refused
    decide(view, "off_bed", "slip/00412-1", sheet=1)
    assert view.pieces[("bit/11", "1", WEAR)] == 9000
    assert view.pieces[("bit/18", "1", WEAR)] == 4000


def test_every_sheet_is_a_pass_on_the_spoilboard_until_it_is_flat_again() -> None:
    router = Router(id="1", name="Router 1", flat_after=2)
    view = small_shop(GOOD, BED, router)
    for n in (1, 2, 3):
        answer = start(view)
        if n < 3:
            assert "spoilboard" not in told(answer)
        else:
            assert told(answer).endswith("2 sheets since the spoilboard was flat. "
                                         "Cut it flat after this one.")  # fmt: skip
            assert answer.tone == "attention"
        decide(view, "off_bed", f"slip/00412-{n}", "10:40", sheet=n, sure=True)
        measure(view)
        assert view.pieces[("spoilboard/1", "", BOARD)] == n
    decide(view, "resurface", "router/1", sure=True)
    assert view.pieces[("spoilboard/1", "", BOARD)] == 0


def test_reading_what_popping_told_clears_it() -> None:
    view = small_shop(GOOD, BED, Notice(id="n", router="1", text="6 uncut", at=at("09:00")))
    decide(view, "read_notice", "router/1")
    known = view.get(Notice, "n")
    assert known
    assert known.seen == "02"
    assert known.shelf is None
    assert not start(view).refused


def test_one_more_sheet_is_for_a_batch_that_lost_one() -> None:
    assert decide(small_shop(GOOD), "add_sheet").refused
    view = small_shop(replace(GOOD, cut=4, spoiled=1, state="cut"), replace(BED, batch=""))
    answer = decide(view, "add_sheet")
    assert answer.prints == (("traveller", "00412"),)
    more, bed = view.get(Batch, "00412"), view.get(Bed, "1")
    assert more
    assert bed
    assert (more.sheets, more.state, bed.batch) == (5, "cutting", "00412")


def test_a_rule_sets_no_fact_twice_in_one_act() -> None:
    """Two states of one fact in one entry would hide one of them."""
    view = small_shop(GOOD, CUTTING, moves=ON_BED)
    decide(view, "spoil_sheet", reason="11", survived={GAUGE: 70})
    keys = [w.key for w in view.entries[-1].sets if isinstance(w, Written)]
    assert len(keys) == len(set(keys))


def test_the_lot_of_another_sheet_is_used_up_to_none() -> None:
    view = FakeView.of(*small_shop(batch(COMBS), BED).facts.values(), moves=(sheets("0931", 1),))
    assert not start(view).refused
    decide(view, "off_bed", "slip/00412-1", sheet=1, now="10:30")
    measure(view, 300.0, "014")
    assert "has no sheet left" in told(start(view))
    assert start(view).asks == "sure"


def test_a_sheet_in_the_hands_beats_the_book() -> None:
    """The lot has none left by the book: asked once, then cut, and somebody is to count it."""
    view = small_shop(GOOD, BED, Lot(id="0950", material="1"))
    assert start(view, lot="0950").asks == "sure"
    assert not view.entries
    answer = start(view, lot="0950", sure=True)
    assert not answer.refused
    assert [(m.frm.place, m.to.place, m.to.batch) for m in answer.moves] == [
        ("recount", "bed/1", "0950")
    ]
    looked = [f for f in answer.sets if isinstance(f, Concern)]
    assert [(c.what, c.about) for c in looked] == [("recount", "lot/0950")]


def test_a_cancelled_batch_stays_so_when_its_sheet_comes_off() -> None:
    view = small_shop(replace(GOOD, state="cancelled"), CUTTING, moves=ON_BED)
    answer = decide(view, "off_bed", "slip/00412-1", sheet=1)
    assert str(answer.do) == "First-off check here. Then slip and parts to popping."
    gone, bed = view.get(Batch, "00412"), view.get(Bed, "1")
    assert gone
    assert bed
    assert (gone.state, gone.cut, bed.batch) == ("cancelled", 1, "")
    assert [f.state for f in bed.firsts] == ["due"]  # what it has cut goes on as well


@pytest.mark.parametrize(
    ("bed", "state", "paused"),
    [(STOPPED, "cutting", 55 * 60), (replace(STOPPED, sheet=0, started=""), "free", 0)],
)
def test_after_a_stop_the_router_does_what_it_did(bed: Bed, state: str, paused: int) -> None:
    view = small_shop(GOOD, bed)
    decide(view, "end_stop", "router/1", ticks=SAFE)
    again = view.get(Bed, "1")
    assert again
    assert (again.state, again.paused_s, again.stop, again.stopped) == (state, paused, "", "")


@pytest.mark.parametrize("name", SAFE)
def test_a_reason_says_what_is_confirmed_before_the_router_runs_on(name: str) -> None:
    reason = Reason(id="77", words="knot", use="stop")
    less = replace(reason, **{name: False})
    ticks = tuple(n for n in SAFE if n != name)
    for asks, refused in ((reason, True), (less, False)):
        view = small_shop(GOOD, replace(STOPPED, stop="77"), asks)
        assert decide(view, "end_stop", "router/1", ticks=ticks).refused == refused


def test_a_free_bed_asks_for_nothing_about_a_sheet() -> None:
    view = small_shop(GOOD, replace(STOPPED, sheet=0, zero="x"))
    assert not decide(view, "end_stop", "router/1", ticks=("bed_clear", "nobody_near")).refused
    bed = view.get(Bed, "1")
    assert bed
    assert bed.zero == "x"  # it is set before the next sheet


def test_no_sheet_runs_on_with_a_broken_bit() -> None:
    broken = Bit(id="11", words="6.0", diameter_mm=6.0, router="1", state="broken")
    view = small_shop(GOOD, STOPPED, broken)
    assert "Bit 11 is broken" in told(decide(view, "end_stop", "router/1", ticks=SAFE))
    view = small_shop(GOOD, replace(STOPPED, sheet=0), broken)
    assert not decide(view, "end_stop", "router/1", ticks=SAFE).refused


@pytest.mark.parametrize(("reason", "held"), [("34", True), ("32", True), ("33", False)])
def test_what_was_cut_across_a_lost_position_is_looked_at(reason: str, *, held: bool) -> None:
    view = small_shop(replace(GOOD, state="cutting"), CUTTING, moves=ON_BED)
    decide(view, "report_stop", "router/1", reason=reason, now="09:05")
    decide(view, "rehome", "router/1")
    decide(view, "end_stop", "router/1", ticks=SAFE, now="09:10")
    answer = decide(view, "off_bed", "slip/00412-1", "09:30", sheet=1)
    kept = view.get(Batch, "00412")
    assert kept
    assert (bool(kept.holds), answer.tone == "attention") == (held, held)
    assert [c.about for c in view.shelf(Concern, "open")] == ["batch/00412"] * held
    bed = view.get(Bed, "1")
    assert bed
    assert bed.ran_on == ""


def test_a_sheet_whose_position_was_lost_between_two_stops_stays_marked() -> None:
    view = small_shop(replace(GOOD, state="cutting"), CUTTING, moves=ON_BED)
    for reason in ("34", "33"):
        decide(view, "report_stop", "router/1", reason=reason)
        decide(view, "rehome", "router/1")
        decide(view, "end_stop", "router/1", ticks=SAFE)
    decide(view, "off_bed", "slip/00412-1", "11:30", sheet=1)
    kept = view.get(Batch, "00412")
    assert kept
    assert kept.holds == ("sheet 1 ran on after power or control at 10:00",)


def test_a_first_batch_is_good_news() -> None:
    assert decide(small_shop(GOOD, replace(BED, batch="")), "take_batch").tone == "good"


@pytest.mark.parametrize(("number", "refused"), [(98, False), (99, True)])
def test_a_batch_has_at_most_99_sheets(number: int, *, refused: bool) -> None:
    view = small_shop(replace(GOOD, sheets=number, cut=4, spoiled=1))
    assert decide(view, "add_sheet").refused == refused


def test_one_more_sheet_for_each_that_was_spoiled_is_not_asked_again() -> None:
    view = small_shop(replace(GOOD, state="cutting"), CUTTING, moves=ON_BED)
    decide(view, "spoil_sheet", reason="12", now="09:10")
    assert not decide(view, "add_sheet", now="09:11").refused
    assert decide(view, "add_sheet", now="09:12").asks == "sure"
    assert not decide(view, "add_sheet", now="09:13", sure=True).refused


def unmade(view: FakeView) -> list[str]:
    return [str(c.text) for c in view.shelf(Concern, "open")]


def test_a_spoiled_sheet_is_told_until_one_more_is_cut_or_its_batch_is_over() -> None:
    view = small_shop(replace(GOOD, sheets=4, cut=3, state="cutting"), CUTTING, moves=ON_BED)
    decide(view, "spoil_sheet", reason="12", survived={GAUGE: 70}, now="09:10")
    lost = "Batch 00412, sheet 1 is not made anew: 90 pieces lost"
    assert unmade(view) == [lost]
    # Other work came first; its traveller, scanned again, does not send it away.
    asked = decide(view, "take_batch", now="11:00")
    assert asked.asks == "sure"
    assert "Batch 00412 is cut, but 1 sheet is not made anew" in told(asked)
    assert unmade(view) == [lost]
    taken = decide(view, "take_batch", now="11:01", sure=True)
    assert taken.prints == (("traveller", "00412"),)
    more, bed = view.get(Batch, "00412"), view.get(Bed, "1")
    assert more
    assert bed
    assert (more.sheets, more.state, bed.batch) == (5, "cutting", "00412")
    assert unmade(view) == []


def test_a_single_bit_changed_in_a_stop_wears_nothing_yet() -> None:
    view = small_shop(GOOD, STOPPED, moves=ON_BED)
    assert not decide(view, "change_bit", "router/1", bit="17").moves
