"""Each state of the cutting bed has its face: the right buttons, the right words."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from station.floor.loading.screen import screen
from station.floor.loading.work import LoadingWork
from station.shop import lengths
from station.shop.cards import button
from station.shop.cautions import CAUTIONS
from station.shop.codes import read
from station.shop.faces import (
    Asked,
    Cards,
    Check,
    Checks,
    Face,
    Header,
    Listing,
    Meter,
    Progress,
    Remark,
    SheetDrawing,
    Table,
)
from station.shop.facts import (
    Bed,
    Bit,
    BitUse,
    CutFile,
    Fact,
    Notice,
    Revision,
    Router,
    Shop,
    Slip,
)
from station.shop.moves import BOARD, move
from tests.floor.beds import BED, CUTTING, FIRST, STOPPED, worn
from tests.floor.shop_small import (
    COMBS,
    DAY,
    GAUGES,
    at,
    batch,
    hand,
    off_bed,
    small_facts,
    small_shop,
)

GOOD = batch(GAUGES)
FREE = replace(BED, batch="")
GAUGES_C = next(f for f in small_facts() if f.key == f"revision/{GAUGES}.C")
assert isinstance(GAUGES_C, Revision)
READY = {"lot": "0931", "reading": 6.4, "ticks": ("held_down", "bit", "file")}


def shown(
    *facts: Fact,
    now: str = "09:09",
    router: str = "1",
    work: Mapping[str, object] | None = None,
    **more: object,
) -> Face:
    one = hand("loading", now, router=router)
    work = LoadingWork(**(work or {}), **more)
    return screen(replace(one, work=work), small_shop(*facts))


def labels(shown: Face) -> list[str]:
    return [str(p.label) for p in shown.presses]


def checks(shown: Face) -> dict[str, Check]:
    (block,) = [b for b in shown.beside if isinstance(b, Checks)]
    return {str(c.label): c for c in block.items}


STATES: tuple[tuple[str, tuple[Fact, ...], dict[str, object], list[str]], ...] = (
    ("nothing waits", (FREE,), {}, ["Report a stop", "Resurfaced"]),
    ("a queue", (FREE, GOOD), {}, ["Take batch 00412", "Report a stop", "Resurfaced"]),
    ("the day begins", (replace(FREE, day=""), GOOD), {},
     ["Start of day done", "Take batch 00412", "Report a stop", "Resurfaced"]),
    ("to make ready", (BED, GOOD), {},
     ["Start sheet 1", "Report a stop", "Bit broken", "Resurfaced"]),
    ("something to read",
     (BED, GOOD, Notice(id="n", router="1", text="6 uncut", at=at("09:00"))), {},
     ["I have read it", "Report a stop", "Bit broken", "Resurfaced"]),
    ("to re-home", (replace(BED, rehome="stop", first_off="stop"), GOOD), {},
     ["Router re-homed", "Report a stop", "Bit broken", "Resurfaced"]),
    ("first-off", (replace(BED, firsts=(FIRST,)), GOOD), {},
     ["It is wrong", "Report a stop", "Bit broken"]),
    ("first-off, nothing of it to measure",
     (replace(BED, firsts=(replace(FIRST, file="999.C"),)), GOOD), {},
     ["First-off agrees", "It is wrong", "Report a stop", "Bit broken"]),
    ("first-off of a batch that is gone", (replace(FREE, firsts=(FIRST,)),), {},
     ["It is wrong", "Report a stop", "Bit broken"]),
    ("first-off is wrong", (replace(BED, firsts=(replace(FIRST, state="wrong"),)), GOOD), {},
     ["It is wrong", "Zero is set anew", "A supervisor passes it", "Report a stop",
      "Bit broken"]),
    ("what is new comes after the sheet", (replace(BED, first_off="new bit 17"), GOOD), {},
     ["Start sheet 1", "Report a stop", "Bit broken", "Resurfaced"]),
    ("it cuts", (CUTTING, replace(GOOD, state="cutting")), {},
     ["Sheet 1 is off the bed", "Sheet spoiled", "Report a stop", "Bit broken"]),
    ("stopped on a sheet", (STOPPED, GOOD), {},
     ["The stop is over", "Sheet spoiled", "Bit broken", "New bit"]),
    ("stopped and free", (replace(FREE, state="stopped", stop="32", stopped=at("09:00")),), {},
     ["The stop is over", "Bit broken", "New bit"]),
    ("why stopped", (CUTTING, GOOD), {"mode": "stop"}, ["Leave it"]),
    ("why spoiled", (CUTTING, GOOD), {"mode": "spoil"}, ["Leave it"]),
    ("what survived", (CUTTING, GOOD), {"mode": "spoil", "reason": "12"},
     ["Sheet 1 is spoiled", "Leave it"]),
    ("a new bit", (CUTTING, GOOD), {"mode": "new_bit"}, ["Leave it"]),
    ("which bit", (replace(CUTTING, bits=((1, "15"), (2, "16"))), GOOD), {"mode": "broken"},
     ["Leave it"]),
)  # fmt: skip


@pytest.mark.parametrize(("state", "facts", "work", "wanted"), STATES, ids=[s[0] for s in STATES])
def test_a_state_has_its_buttons(
    state: str, facts: tuple[Fact, ...], work: dict[str, object], wanted: list[str]
) -> None:
    one = shown(*facts, work=work)
    assert labels(one) == wanted
    assert str(one.where) == "Router 1 · clamped bed"
    for press in one.presses:
        assert not isinstance(read(press.code), str)
        assert read(press.code).__class__.__name__ == "Code"


def test_the_sheet_is_drawn_as_far_as_it_is_cut() -> None:
    one = shown(CUTTING, GOOD)
    head, sheet, bar = one.main
    assert isinstance(head, Header)
    assert isinstance(sheet, SheetDrawing)
    assert isinstance(bar, Progress)
    assert (head.number, head.right, str(head.right_small)) == ("00412", "1", "of 4")
    assert str(head.note) == "6.5 mm birch plywood · 4 sheets · 160 parts a sheet, 320 tabs"
    assert sheet.cut == pytest.approx(0.5)
    assert (str(bar.big), str(bar.note)) == ("9 min", "left on this sheet")
    assert bar.until == (at("09:00"), at("09:18"))


def test_a_sheet_past_its_time_turns_ochre() -> None:
    bar = shown(CUTTING, GOOD, now="09:21").main[2]
    assert isinstance(bar, Progress)
    assert (str(bar.big), bar.tone, bar.fraction) == ("3 min", "attention", 1.0)


def test_what_needs_a_free_bed_is_later_while_it_cuts() -> None:
    items = checks(shown(replace(CUTTING, zero="x"), GOOD, work=READY))
    assert items["Hold-down, bed vacuumed"].state == "later"
    assert items["Zero"].state == "later"
    assert items["Sheet"].state == items["Bit"].state == items["Cut file"].state == "done"


def test_everything_said_makes_the_start_primary() -> None:
    one = shown(BED, GOOD, work=READY)
    assert one.presses[0].style == "primary"
    states = {k: c.state for k, c in checks(one).items()}
    assert states.pop("It is a first-off") == "later"  # nothing of this file was compared yet
    assert {*states.values()} == {"done"}
    less = {**READY, "ticks": ("bit",)}
    assert shown(BED, GOOD, work=less).presses[0].style == "off"


def test_wrong_things_are_shown_wrong() -> None:
    items = checks(
        shown(replace(BED, bits=((0, "18"),)), replace(GOOD, revision="C"), lot="0931",
              reading=5.8)
    )  # fmt: skip
    assert items["Thickness"].state == "wrong"
    assert items["Bit"].state == "wrong"


def test_lots_and_keypad_are_there_for_touch() -> None:
    lots = shown(BED, GOOD).main[-1]
    assert isinstance(lots, Cards)
    assert [e.big for e in lots.entries] == ["0931"]
    asked = shown(BED, GOOD, lot="0931").main[-1]
    assert isinstance(asked, Asked)
    again = shown(BED, GOOD, work=READY).main[-1]
    assert isinstance(again, Asked)
    assert again.typed == "6.4"
    lengths.use_units("inch", fractions=False)
    inches = shown(BED, GOOD, work={**READY, "reading": 6.2992}).main[-1]
    assert isinstance(inches, Asked)
    assert (inches.typed, str(inches.unit)) == ("0.248", "inches")
    lengths.use_units("mm", fractions=False)
    wrong = shown(BED, GOOD, work={**READY, "reading": 5.8}).main[-1]
    assert isinstance(wrong, Table)
    assert str(wrong.rows[0].title) == "measured again"
    bits = shown(replace(BED, bits=()), GOOD).main[-1]
    assert isinstance(bits, Cards)
    # its own, then of the drawer, then one that nobody has entered
    assert [str(e.big) for e in bits.entries] == ["11", "17", "New bit"]


def test_the_queue_says_why_and_how_long() -> None:
    cards = shown(FREE, GOOD, batch(COMBS, id="00417", holds=("late",))).main[-1]
    assert isinstance(cards, Cards)
    first, held = cards.entries
    assert str(first.right) == "18 min a sheet"
    assert str(first.line2).startswith("rack under its mark (as of ")
    assert (str(held.right), held.line2, held.tone) == ("held", "late", "attention")
    assert first.code == str(read(first.code))


def test_what_comes_next_says_how_much_it_leaves_out() -> None:
    queued = (batch(COMBS, id=f"0042{n}", router="1") for n in range(5))
    face = shown(FREE, GOOD, *queued)
    queue = next(b for b in face.main if isinstance(b, Cards))
    more = int(str(queue.title).partition(": ")[2].split()[0])
    assert more > 0
    assert len(queue.entries) + more == 6


def test_the_bit_meter_says_after_which_sheet() -> None:
    moves = (worn("11", 1000), worn("11", 300, router="1"))
    view = small_shop(CUTTING, GOOD, moves=moves)
    meter, _ = [b for b in screen(hand("loading", router="1"), view).side if isinstance(b, Meter)]
    assert str(meter.title) == "Bit no. 11: 300 m on Router 1"
    assert str(meter.left) == "1\u202f300 m in all"
    assert str(meter.right) == "change after sheet 3"
    assert meter.fraction == pytest.approx(1300 / 1500)


@pytest.mark.parametrize(
    ("done", "left", "right", "tone"),
    [
        (0, "Spoilboard: 0 passes", "100 sheets left", "good"),
        (99, "Spoilboard: 99 passes", "1 sheet left", "good"),
        (100, "Spoilboard: 100 passes", "cut it flat again", "attention"),
        (130, "Spoilboard: 130 passes", "cut it flat again", "attention"),
    ],
)
def test_the_spoilboard_counts_its_passes(done: int, left: str, right: str, tone: str) -> None:
    moves = (move(BOARD, done, "wear", "spoilboard/1", ""),) if done else ()
    view = small_shop(CUTTING, GOOD, moves=moves)
    _, meter = [b for b in screen(hand("loading", router="1"), view).side if isinstance(b, Meter)]
    assert (str(meter.title), str(meter.right), meter.tone) == (left, right, tone)


def test_a_spoilboard_that_is_not_counted_is_not_shown() -> None:
    router = Router(id="1", name="Router 1", flat_after=0)
    side = screen(hand("loading", router="1"), small_shop(CUTTING, GOOD, router)).side
    assert [str(b.title) for b in side if isinstance(b, Meter)] == ["Bit no. 11: 0 m on Router 1"]


HEAVY = {"lot": "0931"}
UNEVEN = (move(BOARD, 100, "wear", "spoilboard/1", ""),)
LASER_RUN = (CutFile(id=GAUGES, name="x", words="x", approved="C", work="laser"),)
TWO_BITS = replace(GAUGES_C, bits=(*GAUGES_C.bits, BitUse(number=2, diameter_mm=3.0, cut_mm=4e4)))
BROKEN = Bit(id="11", words="6.0", diameter_mm=6.0, router="1", state="broken")
OF_STOP = f"1 {STOPPED.stopped}"
EVERY_TICK = ("bit_out", "bed_clear", "sheet_held", "nobody_near")
TICKED = {"restart": EVERY_TICK, "restart_of": OF_STOP}
CARE: tuple[tuple[tuple[str, ...], tuple[Fact, ...], dict[str, object]], ...] = (
    (("dust",), (FREE,), {}),
    (("lift",), (BED, GOOD), {}),
    (("lift",), (BED, GOOD), HEAVY),
    (("bit",), (replace(BED, bits=()), GOOD), {}),
    (("home",), (replace(BED, rehome="stop"), GOOD), {}),
    (("part_out",), (replace(BED, firsts=(FIRST,)), GOOD), {}),
    (("cutting",), (CUTTING, GOOD), {}),
    (("bit",), (CUTTING, GOOD, TWO_BITS), {}),
    (("bit",), (CUTTING, GOOD), {"mode": "broken"}),
    (("bit",), (CUTTING, GOOD, BROKEN), {}),
    (("cutting",), (CUTTING, GOOD), {"mode": "stop"}),
    (("laser", "cutting"), (CUTTING, GOOD, *LASER_RUN), {}),
    (("laser", "lift"), (BED, GOOD, *LASER_RUN), HEAVY),
    (("restart",), (STOPPED, GOOD), {}),
    (("bit",), (replace(STOPPED, stop="31"), GOOD), {}),
    (("restart",), (replace(STOPPED, stop="31"), GOOD), TICKED),
    (("bit",), (STOPPED, GOOD, BROKEN), {}),
    (("home",), (replace(STOPPED, stop="34", rehome="x"), GOOD), {}),
)


def care_of(face: Face) -> Remark:
    return next(b for b in face.side if isinstance(b, Remark) and b.code)


@pytest.mark.parametrize(("names", "facts", "work"), CARE)
def test_the_caution_of_the_moment_stands_where_the_hand_is(
    names: tuple[str, ...], facts: tuple[Fact, ...], work: dict[str, object]
) -> None:
    care = care_of(shown(*facts, work=work))
    lines = [str(CAUTIONS[name].line) for name in names]
    if "lift" in names:
        lines[-1] = "Sheet 13.2 kg: two people or a lift. Gloves on for it, off at the spindle."
    assert str(care.text) == " ".join([*lines, Shop(id="shop").caution])
    assert care.code == button("care")
    assert str(care.title) == f"Take care: {CAUTIONS[names[-1]].at}"


def test_every_caution_at_loading_has_its_moment() -> None:
    met = {name for names, _, _ in CARE for name in names}
    late = care_of(shown(CUTTING, GOOD, now="09:17:30"))
    five = replace(CUTTING, id="5", bits=((1, "15"), (2, "16")))
    vacuum = care_of(shown(five, GOOD, router="5"))
    bits = care_of(shown(replace(five, state="stopped", stop="31"), GOOD, router="5"))
    flat = screen(hand("loading", router="1"), small_shop(FREE, moves=UNEVEN))
    others = (("off_bed", late), ("vacuum", vacuum), ("changer", bits), ("surface", care_of(flat)))
    for name, care in others:
        assert str(CAUTIONS[name].line) in str(care.text)
        met.add(name)
    assert met == {name for name, c in CAUTIONS.items() if c.area == "loading"}


def test_a_light_sheet_is_lifted_by_one() -> None:
    light = Shop(id="shop", two_people_kg=20.0)
    assert "Two people or a lift if it is heavy" in str(care_of(shown(BED, GOOD, light)).text)


def test_a_stop_says_that_it_stops_nothing() -> None:
    for one in (shown(STOPPED, GOOD), shown(CUTTING, GOOD, mode="stop")):
        remark = next(b for b in one.main if isinstance(b, Remark))
        assert str(remark.title) == "This does not stop the router"


def test_a_stop_lists_what_is_confirmed_before_it_runs_on() -> None:
    ticked = {"restart": ("bit_out",), "restart_of": OF_STOP}
    one = shown(replace(STOPPED, rehome="stop", zero="new bit 17"), GOOD, **ticked)
    assert [(str(c.label), c.state) for c in in_order(one)] == [
        ("Bit is out of the wood", "done"),
        ("Bed is clear", "due"),
        ("Sheet is held down", "due"),
        ("Zero is set", "due"),
        ("Re-home the router", "due"),
        ("Nobody is at the bed", "due"),
    ]
    assert one.presses[0].style == "off"
    assert shown(STOPPED, GOOD, **TICKED).presses[0].style == "primary"
    later = replace(STOPPED, stopped=f"{STOPPED.stopped[:11]}11:00:00")
    assert shown(later, GOOD, **TICKED).presses[0].style == "off"


def test_a_stop_for_a_broken_bit_offers_those_in_the_drawer() -> None:
    def offered(*facts: Fact) -> list[str]:
        cards = [b for b in shown(STOPPED, GOOD, *facts).main if isinstance(b, Cards)]
        return [str(entry.big) for block in cards for entry in block.entries]

    assert offered() == []
    broken = Bit(id="11", words="6.0 mm", diameter_mm=6.0, router="1", state="broken")
    assert offered(broken) == ["17", "New bit"]


def test_reasons_and_parts_can_be_touched() -> None:
    table = shown(CUTTING, GOOD, mode="stop").main[-1]
    assert isinstance(table, Table)
    assert all(r.code for r in table.rows)
    assert len(table.rows) == 6
    parts = shown(CUTTING, GOOD, mode="spoil", reason="12", survived={"045": 70}).main[1]
    assert isinstance(parts, Table)
    assert [str(c.text) for c in parts.rows[0].cells] == ["160", "70", "90"]


def test_a_screen_for_several_routers_shows_which_is_free_next() -> None:
    one = shown(CUTTING, GOOD, Bed(id="2", day=DAY, bits=((0, "12"),)), router="1,2")
    care, cards = one.side[:2]  # no list of routers pushes the caution off the screen
    assert isinstance(care, Remark)
    assert isinstance(cards, Cards)
    assert [(e.big, str(e.right)) for e in cards.entries] == [
        ("Router 2", "free"),
        ("Router 1", "9 min left"),
    ]
    assert button("next_router") in [p.code for p in one.presses]


def test_an_unknown_router_or_lost_work_still_has_a_face() -> None:
    assert screen(hand("loading", router="9"), small_shop())
    assert screen(hand("loading", router="1", subject="00999"), small_shop())
    assert shown(FREE, mode="spoil")
    assert shown(replace(BED, batch="00999"))


def in_order(shown: Face) -> list[Check]:
    return [c for b in shown.beside if isinstance(b, Checks) for c in b.items]


def test_start_of_day_is_listed_as_the_shop_has_it() -> None:
    items = in_order(shown(replace(FREE, day="")))
    assert [c.text for c in items] == [
        "spoilboard flat and clean",
        "spindle warmed up",
        "air pressure",
        "extraction on",
    ]
    assert not any(c.code for c in items)  # one touch must not stand for all four


def test_what_popping_told_is_shown_before_it_can_be_read() -> None:
    many = [Notice(id=f"n{i}", router="1", text=f"{i} uncut", at=at(f"09:0{i}")) for i in range(4)]
    texts = [c.text for c in in_order(shown(BED, GOOD, *many))]
    assert texts == ["0 uncut", "1 uncut", "2 uncut"]
    told = [b.text for b in shown(CUTTING, GOOD, *many).side if isinstance(b, Remark)]
    assert told[:3] == texts


def test_a_lot_that_is_used_up_is_asked_for_again() -> None:
    one = shown(BED, GOOD, work={**READY, "lot": "0960"})
    assert checks(one)["Sheet"].state == "due"
    assert one.presses[0].style == "off"


def test_a_held_batch_says_so_and_cannot_start() -> None:
    one = shown(BED, replace(GOOD, holds=("first-off is wrong",)), work=READY)
    (held,) = in_order(one)
    assert (str(held.label), held.text, held.state) == (
        "This batch is held",
        "first-off is wrong",
        "wrong",
    )
    assert one.presses[0].style == "off"
    old = shown(BED, replace(GOOD, cut=2, revision="C"), CutFile(id=GAUGES, name="x", words="x",
                approved="D"), work=READY)  # fmt: skip
    assert old.presses[0].style == "off"
    assert checks(old)["Cut file"].state == "wrong"


def test_a_cancelled_batch_leaves_the_screen_when_its_sheet_is_off() -> None:
    gone = replace(GOOD, state="cancelled")
    assert labels(shown(BED, gone)) == ["Report a stop", "Resurfaced"]
    assert labels(shown(CUTTING, gone))[0] == "Sheet 1 is off the bed"


def test_on_the_last_sheet_the_list_says_what_comes_after_it() -> None:
    last = replace(CUTTING, sheet=4)
    alone = checks(shown(replace(GOOD, cut=3), last))
    first = {"After this sheet: first-off": "first sheet of SG010-SET C"}
    assert {k: str(c.text) for k, c in alone.items()} == {
        **first,
        "Next batch": "none waits for this router",
    }
    after = checks(shown(replace(GOOD, cut=3), last, batch(COMBS, id="00417", sheets=6)))
    assert {k: str(c.text) for k, c in after.items()} == {
        **first,
        "Next batch": "00417, Heddle combs 300",
        "Bring": "6 sheets of 6.5 mm birch plywood",
        "Bits": "6 mm",
    }
    assert {c.state for c in after.values()} == {"later"}


def test_one_before_the_last_still_prepares_the_next() -> None:
    assert "Thickness" in checks(shown(replace(GOOD, cut=2), replace(CUTTING, sheet=3)))


def test_the_sheets_cut_today_stand_at_the_side() -> None:
    view = off_bed(small_shop(BED, GOOD), GOOD, 1)
    slip = view.get(Slip, "00412-1")
    assert slip
    view.facts[slip.key] = replace(slip, at=at("09:20"), minutes=18.4)
    other = replace(slip, id="00400-2", batch="00400", sheet=2, router="2")
    yesterday = replace(slip, id="00399-1", batch="00399", at="2026-11-24T15:00:00")
    popped = replace(slip, id="00401-1", batch="00401", state="popped", at=at("08:10"))
    view.facts |= {s.key: s for s in (other, yesterday, popped)}
    shown = screen(hand("loading", "09:30", router="1"), view)
    listing = next(b for b in shown.side if isinstance(b, Listing))
    assert str(listing.title) == "Cut today: 2 sheets"
    assert [[str(c.text) for c in cells] for cells, _ in listing.rows] == [
        ["09:20", "00412, sheet 1", "18 min"],
        ["08:10", "00401, sheet 1", "18 min"],
    ]
