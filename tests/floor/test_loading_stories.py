"""Days at the cutting bed, told through codes as a worker scans them."""

from collections import Counter
from dataclasses import replace

from station.floor.loading.dialogue import handle_input
from station.floor.loading.rules import RULES
from station.floor.loading.screen import screen
from station.queries.first_offs import find_unsettled, list_sizes
from station.shop.acts import Answer, Args, add_known
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.facts import Batch, Bed, Bit, Concern, CutFile, Lot, Revision, Slip
from station.shop.moves import SHEET, WEAR, head
from station.shop.rooms import Number
from tests.fakes import FakeView
from tests.floor.shop_small import (
    COMBS,
    GAUGE,
    GAUGES,
    SHUTTLE,
    SHUTTLES,
    SPACER,
    SPACERS,
    Player,
    batch,
    hand,
    small_shop,
)


def press(name: str) -> Code:
    return Code("button", BUTTONS[name].number)


def player(view: FakeView, router: str = "1") -> Player:
    return Player(view, RULES, handle_input, hand("loading", router=router))


def traveller(id: str = "00412", copy: str = "A") -> Code:
    return Code("batch", id, copy)


def slip(n: int, id: str = "00412", copy: str = "A") -> Code:
    return Code("batch", id, copy, n)


def ready(one: Player, now: str, lot: str = "0931", reading: str = "6.4") -> Answer:
    """Everything that is said and ticked before a sheet."""
    one.give(Code("lot", lot), Number(reading), now=now)
    ticks = [press("held_down"), press("bit_good"), press("file_right")]
    if (bed := one.view.get(Bed, one.hand.router)) and bed.zero:
        ticks.append(press("zeroed"))
    return one.give(*ticks)


def cut(one: Player, n: int, start: str, end: str, id: str = "00412") -> Answer:
    """One whole sheet, and the first-off after the first one."""
    ready(one, start)
    assert not one.give(press("start")).refused, one.said[-1]
    done = one.give(slip(n, id), now=end)
    bed = one.view.get(Bed, one.hand.router)
    if bed and any(f.state == "due" for f in bed.firsts):
        compare(one)
    return done


def compare(one: Player) -> Answer:
    """Every size of the first-off is measured, or it agrees by eye."""
    view, bed = one.view, one.view.get(Bed, one.hand.router)
    assert bed
    first = find_unsettled(bed)
    assert first
    sizes = list_sizes(view, first)
    if not sizes:
        return one.give(press("first_off_good"))
    return one.give(*(Number(f"{m.size.nominal_mm:g}") for m in sizes))


def pieces(view: FakeView, part: str) -> Counter[str]:
    """Pieces of a part by kind of place."""
    found: Counter[str] = Counter()
    for (place, _, p), qty in view.pieces.items():
        if p == part and qty:
            found[head(place)] += qty
    return found


def said(answer: Answer) -> str:
    return f"{answer.said} | {answer.do}"


def test_an_ordinary_batch_of_shuttles() -> None:
    view = small_shop(batch(SHUTTLES, router="2"))
    one = player(view, "2")
    assert str(one.give(traveller()).said) == "Batch 00412 taken: 4 of 4 sheets to cut"
    for n, hour in enumerate(("08", "09", "10", "11"), start=1):
        done = cut(one, n, f"{hour}:00", f"{hour}:21")
    assert said(done) == (
        "Sheet 4 is off the bed: 96 parts | Slip and parts to popping. The batch is cut."
    )
    assert pieces(view, SHUTTLE) == {"cut": -384, "popping": 384}
    assert pieces(view, SHEET)["used"] == 4
    assert pieces(view, WEAR)["bit"] == 4 * 55_000
    after, bed = view.get(Batch, "00412"), view.get(Bed, "2")
    assert after
    assert bed
    assert (after.state, after.cut, bed.state, bed.batch) == ("cut", 4, "free", "")
    slips = view.shelf(Slip, "popping")
    assert [s.sheet for s in slips] == [1, 2, 3, 4]
    assert (slips[0].minutes, slips[0].lot, slips[0].bit, slips[0].by) == (21, "0931", "12", "02")
    assert one.hand.subject == ""


def test_an_old_revision_is_refused_and_says_which() -> None:
    view = small_shop(batch(COMBS, revision="B"))
    answer = player(view).give(traveller())
    assert answer.refused
    assert answer.tone == "stop"
    assert str(answer.said) == "Revision B offered, C is approved"


def test_a_newer_revision_holds_the_sheets_that_are_left() -> None:
    view = small_shop(batch(COMBS, sheets=6))
    one = player(view)
    one.give(traveller())
    for n, hour in enumerate(("08", "09", "10"), start=1):
        cut(one, n, f"{hour}:00", f"{hour}:23")
    revision, cut_file = view.get(Revision, f"{COMBS}.C"), view.get(CutFile, COMBS)
    assert revision
    assert cut_file
    view.facts[cut_file.key] = CutFile(id=COMBS, name="HC300-SET", words="", approved="D")
    assert "The other 3 sheets are held" in said(one.give(traveller()))
    one.give(Code("lot", "0931"), Number("6.4"), press("held_down"), press("bit_good"))
    assert one.give(press("file_right")).tone == "stop"
    answer = one.give(press("start"))
    assert answer.refused
    assert said(answer) == (
        "Revision C offered, D is approved | The other 3 sheets are held; cut parts go on."
    )
    held = view.get(Batch, "00412")
    assert held
    assert (held.cut, held.holds) == (3, ())
    assert sum(h.qty for h in view.stock(batch="00412")) == 72


def test_a_wrong_thickness_needs_a_supervisor_and_marks_the_lot() -> None:
    view = small_shop(batch(COMBS))
    one = player(view)
    one.give(traveller())
    ready(one, "08:00", reading="5.8")
    answer = one.give(press("start"))
    assert (answer.refused, answer.asks) == (True, "supervisor")
    assert str(answer.said) == "5.8 mm read, limits are 6.0 to 6.9"
    assert one.approve("07").asks == "reason"
    before = dict(view.pieces)
    assert one.give(press("start")).asks == "supervisor"  # started anew, asked anew
    assert dict(view.pieces) == before
    do, known = one.asked or (None, Args())
    assert do
    one.asked = (do, add_known(known, Args(approved="07")))
    assert one.reason("21").asks == "reason"  # no reason for overruling
    one.asked = (do, Args(approved="07"))
    done = one.reason("43")
    assert (done.tone, done.refused) == ("attention", False)
    lot = view.get(Lot, "0931")
    assert lot
    assert lot.mark == "5.8 mm read on Router 1"
    (concern,) = view.shelf(Concern, "open")
    assert (concern.what, concern.about, concern.reason) == ("thickness", "lot/0931", "43")
    one.give(slip(1), now="08:25")
    assert "5.8 mm" in said(one.give(Code("lot", "0931")))


def test_a_bit_breaks_on_sheet_three_of_eight() -> None:
    view = small_shop(batch(GAUGES, sheets=8))
    one = player(view)
    one.give(traveller())
    cut(one, 1, "08:00", "08:20")
    cut(one, 2, "08:30", "08:50")
    ready(one, "09:00")
    one.give(press("start"))
    one.give(press("sheet_spoiled"), Code("reason", "11"), now="09:08")
    one.give(Number("170"))
    assert one.said[-1].refused  # a sheet has 160
    one.give(Number("70"))
    spoilt = one.give(press("sheet_spoiled"))
    assert said(spoilt) == (
        "Sheet 3 spoiled: 70 whole, 90 lost | "
        "Whole ones to popping. “Cut one more sheet” makes good."
    )
    bit = view.get(Bit, "11")
    assert bit
    assert bit.state == "broken"
    assert view.get(Slip, "00412-3")
    ready(one, "09:15")
    assert "Bit 11 is broken" in said(one.give(press("start")))
    assert "Bit 11 is broken" in said(one.give(press("first_off_good")))
    assert "Bit 17 is in" in said(one.give(Code("bit", "17")))
    one.give(press("zeroed"), press("bit_good"))
    assert "Nothing was cut on Router 1 since: new bit 17" in said(
        one.give(press("first_off_good"))
    )
    assert not one.give(press("start")).refused
    one.give(slip(4), now="09:40")
    ready(one, "09:45")
    assert "First-off is due: batch 00412, sheet 4" in said(one.give(press("start")))
    compare(one)
    for n, hour in zip(range(5, 9), ("10", "11", "12", "13"), strict=True):
        cut(one, n, f"{hour}:00", f"{hour}:20")
    assert pieces(view, GAUGE) == {"cut": -1280, "popping": 1190, "spoiled": 90}
    shown = screen(one.hand, view)
    assert str(shown.presses[0].label) == "Cut one more sheet"
    more = one.give(press("one_more_sheet"))
    assert (str(more.said), more.prints) == (
        "Batch 00412 has 9 sheets now",
        (("traveller", "00412"),),
    )
    assert one.give(press("one_more_sheet")).asks == "sure"
    cut(one, 9, "14:00", "14:20")
    assert pieces(view, GAUGE)["popping"] == 1350


def test_the_trigger_pulled_twice_is_one_load() -> None:
    view = small_shop(batch(GAUGES))
    one = player(view)
    one.give(traveller(), now="09:10")
    assert one.give(traveller(), now="09:10:01").refused
    late = one.give(traveller(), now="09:50")
    assert str(late.said) == "Batch 00412 loaded 09:10 by worker 02: next sheet, or a mistake?"
    ready(one, "09:11")
    loaded = one.give(traveller(), now="09:12")
    assert str(loaded.said) == "Sheet 1 started at 09:12"
    again = one.give(traveller(), now="09:12:01")
    assert (again.refused, again.asks) == (True, "")
    assert str(again.said) == "Sheet 1 is loaded already, 09:12 by worker 02"
    later = one.give(traveller(), now="09:52")
    assert (later.refused, later.asks) == (True, "sure")
    assert str(later.said) == "Sheet 1 loaded 09:12 by worker 02: next sheet, or a mistake?"
    assert sum(1 for e in view.entries if e.act.kind == "start_sheet") == 1
    assert not one.yes().refused
    assert pieces(view, GAUGE) == {"cut": -160, "popping": 160}


def test_a_clock_that_was_set_back_takes_no_later_load_for_the_same_trigger() -> None:
    """The sheet was loaded at a time that is yet to come: it comes off all the same."""
    view = small_shop(batch(GAUGES))
    one = player(view)
    one.give(traveller(), now="09:10")
    ready(one, "09:11")
    one.give(traveller(), now="09:12")
    later = one.give(traveller(), now="07:30")
    assert (later.refused, later.asks) == (True, "sure")
    assert not one.yes().refused
    assert pieces(view, GAUGE) == {"cut": -160, "popping": 160}


def test_a_slip_scanned_twice_counts_once() -> None:
    view = small_shop(batch(GAUGES))
    one = player(view)
    one.give(traveller(), now="10:28")
    cut(one, 1, "10:28", "10:51")
    again = one.give(slip(1), now="10:51:01")
    assert str(again.said) == "Sheet 1 is already off the bed, 10:51 by worker 02"
    later = one.give(slip(1), now="11:31")
    assert str(later.said) == "Sheet 1 came off 10:51 by worker 02: next sheet, or a mistake?"
    assert pieces(view, GAUGE)["popping"] == 160


def test_vacuum_lost_on_router_five() -> None:
    view = small_shop(batch(SPACERS, sheets=6, router="5"))
    one = player(view, "5")
    one.give(traveller())
    for n, hour in enumerate(("07", "08", "09", "10"), start=1):
        cut(one, n, f"{hour}:30", f"{hour}:43")
    ready(one, "11:00")
    one.give(press("start"))
    first = one.give(press("stop"), now="11:05")
    assert "does not stop the router" in said(first)
    stopped = one.give(Code("reason", "32"))
    assert "Never hold parts by hand" in said(stopped)
    one.give(press("sheet_spoiled"), Code("reason", "13"), Number("110"), press("sheet_spoiled"))
    assert pieces(view, SPACER)["spoiled"] == 130
    one.give(press("bed_clear"), press("nobody_near"))
    assert "Re-home the router first" in said(one.give(press("stop_over")))
    one.give(press("rehomed"))
    over = one.give(press("stop_over"), now="11:23")
    assert said(over) == "Stop over after 18 min | The next sheet is a first-off."
    ready(one, "11:24")
    assert not one.give(press("start")).refused
    one.give(slip(6), now="11:40")
    assert str(compare(one).said) == "First-off agrees on Router 5"
    assert pieces(view, SPACER) == {"cut": -1440, "popping": 1310, "spoiled": 130}


def test_a_stop_is_taken_off_the_sheets_time() -> None:
    view = small_shop(batch(GAUGES))
    one = player(view)
    one.give(traveller())
    ready(one, "08:00")
    one.give(press("start"))
    one.give(press("stop"), Code("reason", "33"), now="08:05")
    assert one.give(slip(1), now="08:20").refused  # stopped: end the stop first
    one.give(*map(press, ("bit_out", "bed_clear", "held_down", "nobody_near")))
    one.give(press("stop_over"), now="08:25")
    assert one.give(slip(1), now="08:26").asks == "sure"  # 6 of 18 min
    one.give(slip(1), now="08:38")
    off = view.get(Slip, "00412-1")
    assert off
    assert off.minutes == 18


def test_sooner_than_possible_asks_whether_the_spindle_has_stopped() -> None:
    view = small_shop(batch(GAUGES))
    one = player(view)
    one.give(traveller())
    ready(one, "08:00")
    one.give(press("start"))
    answer = one.give(press("off_bed"), now="08:08")
    assert answer.asks == "sure"
    assert "spindle" in str(answer.do)
    assert not one.yes().refused


def test_a_void_copy_counts_nothing() -> None:
    view = small_shop(batch(GAUGES, copy="B", void=("A",)))
    one = player(view)
    for code in (traveller(copy="A"), slip(1, copy="A")):
        answer = one.give(code)
        assert answer.refused
        assert str(answer.said) == "Void: copy A was replaced by copy B"
    assert not one.give(traveller(copy="B")).refused
    assert one.give(traveller(copy="A")).refused
    assert not view.stock(batch="00412")


def test_one_screen_for_two_routers() -> None:
    view = small_shop(batch(GAUGES), batch(COMBS, id="00417", router="2"))
    one = player(view, "1,2")
    one.give(traveller())
    one.hand = replace(one.hand, facing="1")
    one.give(Code("lot", "0931"), Number("6.4"), press("held_down"), press("bit_good"))
    one.give(press("file_right"), now="08:00")
    one.give(press("start"))
    assert "free" in said(one.give(press("next_router")))
    assert not one.give(traveller("00417")).refused
    bed = view.get(Bed, "2")
    assert bed
    assert bed.batch == "00417"
    done = one.give(slip(1), now="08:20")  # the other router's slip is understood too
    assert "Sheet 1 is off the bed: 160 parts" in said(done)
    assert "not served" in said(one.give(Code("router", "4")))
    assert "Router 1" in said(one.give(Code("router", "1")))


def test_a_wrong_first_off_holds_the_batch() -> None:
    view = small_shop(batch(GAUGES))
    one = player(view)
    one.give(traveller())
    ready(one, "08:00")
    one.give(press("start"))
    one.give(slip(1), now="08:20")
    wrong = one.give(press("first_off_bad"))
    assert wrong.tone == "attention"
    held = view.get(Batch, "00412")
    assert held
    assert held.holds
    assert view.shelf(Concern, "open")[0].what == "first-off"
    ready(one, "08:30")
    assert "is held" in said(one.give(press("start")))


def test_one_sheet_alone_has_its_first_off_before_the_next_batch() -> None:
    view = small_shop(batch(GAUGES, sheets=1), batch(GAUGES, id="00417", sheets=1))
    one = player(view)
    one.give(traveller())
    ready(one, "08:00")
    one.give(press("start"))
    one.give(slip(1), now="08:20")
    one.give(traveller("00417"))
    ready(one, "08:30")
    assert "First-off is due: batch 00412, sheet 1" in said(one.give(press("start")))
    compare(one)
    one.give(Number("6.4"))
    assert not one.give(press("start")).refused
