"""What an input means at the cutting bed, where the stories don't pass."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from station.floor.loading.dialogue import handle_input
from station.floor.loading.preparing import find_now
from station.floor.loading.rules import RULES
from station.floor.loading.screen import screen
from station.floor.loading.work import LoadingWork
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.facts import Bed, Bit, Fact, Lot, Placed, Revision
from station.shop.moves import SHEET
from station.shop.rooms import Input, Number, Point
from tests.floor.beds import BED, CUTTING, STOPPED
from tests.floor.shop_small import DAY, GAUGES, Player, batch, hand, sheets, small_shop

GOOD = batch(GAUGES)
FREE = Bed(id="1", day=DAY, bits=((0, "11"),))
FIVE = Bed(id="5", day=DAY, bits=((1, "15"), (2, "16")), batch="00412")
MARKED = Lot(id="0960", material="1", mark="5.8 mm read on router 1")

ONE, SIX = Lot(id="1", material="1"), Lot(id="6", material="1")


def press(name: str) -> Code:
    return Code("button", BUTTONS[name].number)


def player(*facts: Fact, router: str = "1", work: Mapping[str, object] | None = None) -> Player:
    moves = (sheets(lot.id, 5) for lot in (MARKED, ONE, SIX))
    view = small_shop(ONE, SIX, *facts, moves=tuple(moves))
    one = replace(hand("loading", router=router), work=LoadingWork(**(work or {})))
    return Player(view, RULES, handle_input, one)


SAYS: tuple[tuple[str, Bed, Input, dict[str, object]], ...] = (
    ("No batch in hand yet | Scan a traveller first.", FREE, press("start"), {}),
    ("No batch in hand yet | Scan a traveller first.", FREE, press("held_down"), {}),
    ("No batch in hand yet | Scan a traveller first.", FREE, press("one_more_sheet"), {}),
    ("No sheet is on the bed | Start a sheet first.", BED, press("off_bed"), {}),
    ("No sheet is on the bed | Nothing is spoiled.", BED, press("sheet_spoiled"), {}),
    ("This screen serves one router | Go on with your work.", BED, press("next_router"), {}),
    ("Lot 0940 is 9 mm birch plywood | This job takes 6.5 mm birch plywood.", BED,
     Code("lot", "0940"), {}),
    ("Sheet from lot 0960 | Look twice: 5.8 mm read on router 1.", BED, Code("lot", "0960"), {}),
    ("Sheet from lot 0931 | Measure the sheet, enter mm.", BED, Code("lot", "0931"), {}),
    ("6.4 mm: within limits | Scan the lot of the next sheet.", BED, Number("6,4"), {}),
    ("Sheet from lot 0960 | Look twice: 5.8 mm read on router 1.", BED, Number("0960"), {}),
    ("Sheet from lot 1 | Measure the sheet, enter mm.", BED, Number("1"), {}),
    ("6 mm: within limits | Scan the lot of the next sheet.", BED, Number("6"), {}),
    ("960 mm is no thickness of this sheet | Measure it, enter the mm: about 6.5.", BED,
     Number("960"), {}),
    ("960 mm is no thickness of this sheet | Measure it, enter the mm: about 6.5.", BED,
     Number("0960"), {"lot": "0931"}),
    ("940 mm is no thickness of this sheet | Measure it, enter the mm: about 6.5.", BED,
     Number("0940"), {}),
    ("-1 mm is no thickness of this sheet | Measure it, enter the mm: about 6.5.", BED,
     Number("-1"), {}),
    ("600.6 mm is no thickness of this sheet | Measure it, enter the mm: about 6.5.", BED,
     Number("600.6"), {}),
    ("13.1 mm is no thickness of this sheet | Measure it, enter the mm: about 6.5.", BED,
     Number("13.1"), {}),
    ("9.1 mm read, limits are 6.0 to 6.9 | Not this sheet: measure again, or ask.", BED,
     Number("9.1"), {}),
    ("That is no thickness | Measure it, enter the mm: about 6.5.", BED, Number("1" * 12), {}),
    ("5.8 mm read, limits are 6.0 to 6.9 | Not this sheet: measure again, or ask.", BED,
     Number("5.8"), {}),
    ("Not while sheet 1 is on the bed | Tick it when the bed is free.", CUTTING,
     press("held_down"), {}),
    ("Not while sheet 1 is on the bed | Tick it when the bed is free.", CUTTING,
     press("zeroed"), {}),
    ("Bit is right | Wait for sheet 1, then scan its slip.", CUTTING, Code("bit", "11"),
     {"lot": "0931", "reading": 6.4, "ticks": ("file",)}),
    ("Cut file is right | Press “Start sheet 1”.", BED, press("file_right"),
     {"lot": "0931", "reading": 6.4, "ticks": ("held_down", "bit")}),
    ("Stopped since 09:05 already | When it runs again: “The stop is over”.", STOPPED,
     press("stop"), {}),
    (("This does not stop the router: use its own stop | "
      "Then scan or touch the reason. Hands off the bed."), CUTTING, press("stop"), {}),
    ("That is no reason for a sheet | Scan one of those shown.", CUTTING, Code("reason", "01"),
     {"mode": "spoil"}),
    ("That part is not on this sheet | Scan another part.", CUTTING, Code("part", "014"),
     {"mode": "spoil"}),
    ("160 of these on a sheet | How many of them are whole?", CUTTING, press("survived"),
     {"mode": "spoil"}),
    ("70 of 160 are whole | “Sheet spoiled” again when it is complete.", CUTTING, Number("70"),
     {"mode": "spoil", "part": "045"}),
    ("Bit 11 is broken | Use the router's own stop. Report the sheet spoiled.", CUTTING,
     press("bit_broken"), {}),
    ("Router 4 is not served here | Go to its own screen.", BED, Code("router", "4"), {}),
    ("Router 1 is in front of you | Sheet 1 of batch 00412 is on it.", CUTTING,
     Code("router", "1"), {}),
    ("Router 1 is in front of you | It is free: scan a traveller.", FREE, Code("router", "1"),
     {}),
    ("Batch 00412 is in hand, sheet 1 next | Scan the lot of the next sheet.", BED,
     Code("batch", "00412", "A"), {}),
)  # fmt: skip


@pytest.mark.parametrize(("words", "bed", "given", "work"), SAYS, ids=lambda v: str(v)[:40])
def test_an_input_is_understood(
    words: str, bed: Bed, given: Input, work: dict[str, object]
) -> None:
    answer = player(GOOD, MARKED, bed, work=work).give(given)
    assert f"{answer.said} | {answer.do}" == words


@pytest.mark.parametrize(
    "given",
    [
        Point(1.0, 1.0),
        Code("order", "3306"),
        Code("zone", "51"),
        Code("reason", "31"),
        Code("part", "045"),
        press("survived"),
        press("pass_on"),
    ],
)
def test_what_means_nothing_here_is_left_to_others(given: Input) -> None:
    one = player(GOOD, BED)
    assert handle_input(one.hand, given, one.view) is None


def test_a_number_means_nothing_without_a_batch() -> None:
    one = player(FREE)
    assert handle_input(one.hand, Number("6.4"), one.view) is None


def test_the_bit_is_not_ticked_when_a_wrong_one_is_in() -> None:
    one = player(GOOD, Bed(id="1", day=DAY, bits=((0, "18"),), batch="00412"))
    assert str(one.give(press("bit_good")).said) == "A 6 mm bit is needed"


def test_a_changer_takes_a_bit_where_one_of_its_size_was() -> None:
    one = player(GOOD, FIVE, router="5")
    assert not one.give(Code("bit", "18")).refused  # 3 mm: pocket 2
    assert not one.give(Code("bit", "17")).refused  # 6 mm: the file's tool 1
    bed = one.view.get(Bed, "5")
    assert bed
    assert bed.bits == ((1, "17"), (2, "18"))
    one.view.facts["bit/19"] = Bit(id="19", words="1 mm", diameter_mm=1.0)
    assert str(one.give(Code("bit", "19")).said) == "No pocket takes bit 19"


def test_of_several_bits_the_broken_one_is_asked_for() -> None:
    one = player(GOOD, FIVE, router="5")
    assert str(one.give(press("bit_broken")).said) == "Which bit broke?"
    assert str(one.give(Code("bit", "16")).said) == "Bit 16 is broken"


def test_a_new_bit_takes_the_ticks_for_bit_and_zero_away() -> None:
    one = player(GOOD, BED, work={"ticks": ("held_down", "bit", "zero", "file")})
    one.give(Code("bit", "17"))
    assert one.hand.work.ticks == ("held_down", "file")


def test_what_is_said_while_it_cuts_holds_for_the_next_sheet() -> None:
    one = player(GOOD, CUTTING)
    one.give(Code("lot", "0931"), Number("6.4"), press("bit_good"), press("file_right"))
    one.give(Code("batch", "00412", "A", 1), now="09:20")
    one.give(Number("100"), press("held_down"))
    assert str(one.give(press("start")).said) == "Sheet 2 started at 09:20"
    assert one.hand.work == LoadingWork(lot="0931")


def test_looking_at_another_router_lets_go_of_what_was_said() -> None:
    one = player(GOOD, BED, router="1,2", work={"lot": "0931", "reading": 6.4})
    one.give(press("next_router"))
    assert (one.hand.facing, one.hand.work) == ("2", LoadingWork())
    one.give(press("next_router"))
    assert (one.hand.facing, one.hand.work) == ("1", LoadingWork())


def test_putting_work_down_keeps_the_router_in_front() -> None:
    one = player(GOOD, BED, router="1,2")
    one.give(press("next_router"))
    assert one.hand.empty().facing == "2"
    assert find_now(one.hand.empty(), one.view).bed.id == "2"


def test_without_a_router_set_up_every_router_is_served() -> None:
    one = player(GOOD, router="")
    assert "Router 3" in str(one.give(Code("router", "3")).said)


def test_the_last_sheet_of_a_lot_can_be_used() -> None:
    one = player(GOOD, BED, work={"reading": 6.4, "ticks": ("bit", "held_down", "file")})
    one.view.pieces[("store", "0931", SHEET)] = 1
    answer = one.give(Code("lot", "0931"))
    assert "Press “Start sheet 1”." in str(answer.do)


def test_a_broken_bit_takes_the_ticks_for_bit_and_zero_away() -> None:
    one = player(GOOD, BED, work={"ticks": ("held_down", "bit", "zero", "file")})
    one.give(press("bit_broken"))
    assert one.hand.work.ticks == ("held_down", "file")


def test_survivors_are_counted_part_by_part() -> None:
    revision = small_shop().get(Revision, f"{GAUGES}.C")
    assert revision
    both = replace(revision, placed=(*revision.placed, Placed(part="014", x_mm=0, y_mm=0)))
    one = player(GOOD, CUTTING, both, work={"mode": "spoil", "reason": "12"})
    said = [str(one.give(press("survived")).said) for _ in range(3)]
    assert said == [f"{n} of these on a sheet" for n in (160, 1, 160)]
    one.give(Code("part", "014"), Number("1"), Code("part", "045"), Number("9"))
    assert str(one.give(press("sheet_spoiled")).said) == "Sheet 1 spoiled: 10 whole, 151 lost"


TOLD = {"lot": "0931", "reading": 6.4, "ticks": ("held_down", "bit", "file", "zero")}


@pytest.mark.parametrize("name", ["bed_clear", "bit_out", "nobody_near"])
def test_nothing_is_ticked_for_a_restart_without_a_stop(name: str) -> None:
    one = player(GOOD, CUTTING)
    assert str(one.give(press(name)).said) == "Router 1 is not stopped"
    assert one.hand.work.restart == ()


def test_a_router_is_sent_home_with_the_bit_out_of_the_wood() -> None:
    one = player(GOOD, replace(STOPPED, rehome="x"))
    assert str(one.give(press("rehomed")).said) == "The bit is not out of the wood yet"
    assert not one.give(press("bit_out"), press("rehomed")).refused


def test_what_is_not_asked_for_is_not_ticked() -> None:
    one = player(GOOD, replace(STOPPED, stop="35"))
    assert "not asked for" in str(one.give(press("bit_out")).said)


def test_another_bit_takes_back_what_was_confirmed_for_a_restart() -> None:
    one = player(GOOD, STOPPED)
    one.give(press("bit_out"), press("held_down"), press("nobody_near"))
    one.give(Code("bit", "17"))
    assert one.hand.work.restart == ()
    one.give(press("zeroed"))
    assert one.hand.work.restart == ("zero",)


OF_ROUTER = {"ticks": ("bit", "file", "zero")}  # what holds of the router stays
OF_BIT = {"lot": "0931", "reading": 6.4, "ticks": ("held_down", "file")}
REFUSED: tuple[tuple[Input, dict[str, object]], ...] = (
    (Code("lot", "0940"), OF_ROUTER),
    (Code("lot", "0999"), OF_ROUTER),
    (Number("600.6"), {**TOLD, "reading": 0.0}),
    (Code("bit", "12"), OF_BIT),
    (Code("bit", "99"), OF_BIT),
    (Code("router", "4"), {}),
    (Code("batch", "00999", "A"), {}),
    (Code("batch", "00999", "A", 1), {}),
)


@pytest.mark.parametrize(("given", "left"), REFUSED, ids=lambda v: str(v)[:40])
def test_what_is_refused_leaves_nothing_of_its_kind(given: Input, left: dict[str, object]) -> None:
    one = player(GOOD, BED, work=TOLD)
    one.hand = replace(one.hand, digits="6")
    assert one.give(given).tone == "stop"
    assert one.hand.work == LoadingWork(**left)


@pytest.mark.parametrize("given", [Code("lot", "0940"), Code("router", "4"), Code("batch", "999")])
def test_the_digits_before_a_refused_code_are_not_entered_after_it(given: Input) -> None:
    one = player(GOOD, BED)
    one.hand = replace(one.hand, digits="6")
    assert one.give(given).refused
    assert one.hand.digits == ""


def test_a_wrong_bit_takes_the_tick_for_the_bit_away() -> None:
    bed = Bed(id="1", day=DAY, bits=((0, "18"),), batch="00412")
    one = player(GOOD, bed, work=TOLD)
    assert one.give(press("bit_good")).refused
    assert "bit" not in one.hand.work.ticks


def test_a_spoilboard_cut_flat_takes_the_ticks_for_zero_and_hold_down_away() -> None:
    one = player(GOOD, BED, work=TOLD)
    asked = one.give(press("resurfaced"))
    assert asked.asks == "sure"
    assert one.hand.work.ticks == TOLD["ticks"], "nothing is done before it is sure"
    one.yes()
    assert one.hand.work.ticks == ("bit", "file")


def test_after_a_part_that_is_not_here_no_number_goes_to_the_former_one() -> None:
    revision = small_shop().get(Revision, f"{GAUGES}.C")
    assert revision
    both = replace(revision, placed=(*revision.placed, Placed(part="014", x_mm=0, y_mm=0)))
    one = player(GOOD, CUTTING, both, work={"mode": "spoil", "reason": "12", "part": "045"})
    assert one.give(Code("part", "021")).refused
    assert str(one.give(Number("70")).said) == "How many of which part?"
    assert one.hand.work.survived == {}
    one.give(Code("part", "045"), Number("70"))
    assert one.hand.work.survived == {"045": 70}


def test_survivors_of_one_sheet_are_none_of_the_next() -> None:
    one = player(GOOD, CUTTING)
    one.give(press("sheet_spoiled"), Code("reason", "12"), Number("70"))
    assert str(one.hand.work.tell_counted(one.view)) == "Sheet 1: 70 SG-10 whole"
    # Another screen took it off and started sheet 2.
    one.view.facts["bed/1"] = replace(CUTTING, sheet=2)
    assert str(one.give(press("sheet_spoiled")).said) == "Why is sheet 2 spoiled?"
    assert not one.hand.work.survived


def test_leaving_a_question_keeps_what_was_said_of_the_next_sheet() -> None:
    one = player(GOOD, CUTTING, work=TOLD)
    one.give(press("sheet_spoiled"), press("put_down"))
    assert (one.hand.work.mode, one.hand.work.lot, one.hand.work.reading) == ("", "0931", 6.4)


LAST = replace(CUTTING, sheet=4)
PREPARES = [press("held_down"), press("bit_good"), press("file_right"), press("zeroed"),
            Code("lot", "0931"), Number("6.4")]  # fmt: skip


@pytest.mark.parametrize("given", PREPARES)
def test_nothing_is_prepared_for_a_sheet_that_does_not_exist(given: Input) -> None:
    one = player(replace(GOOD, cut=3, state="cutting"), LAST)
    answer = one.give(given)
    assert str(answer.said) == "Sheet 4 is the last of batch 00412"
    assert not one.hand.has_work


def test_the_start_of_day_needs_a_free_bed() -> None:
    one = player(GOOD, replace(CUTTING, day="2026-11-24"))
    assert "Not while sheet 1 is on the bed" in str(one.give(press("day_done")).said)


def test_the_strip_names_the_key_as_it_reads() -> None:
    one = player(GOOD, BED, work={"reading": 6.4, "ticks": ("bit", "held_down", "file")})
    said = str(one.give(Code("lot", "0931")).do)
    first = screen(one.hand, one.view).presses[0]
    assert (said, first.style) == (f"Press “{first.label}”.", "primary")
