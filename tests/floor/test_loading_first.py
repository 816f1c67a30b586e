"""The first-off: when it is due, what it takes to agree, and what a wrong one stops."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from station.floor.loading.dialogue import handle_input
from station.floor.loading.first_pane import list_measured, show_first_off
from station.floor.loading.preparing import find_now
from station.floor.loading.rules import RULES
from station.floor.loading.screen import screen
from station.queries.first_offs import is_settled
from station.queries.readings import ask_if_far
from station.shop.acts import Act, Answer
from station.shop.codes import Code
from station.shop.faces import Asked, Checks, PartDrawing
from station.shop.facts import (
    Batch,
    Bed,
    BitUse,
    Concern,
    CutFile,
    Fact,
    FirstOff,
    Part,
    Placed,
    Reason,
    Revision,
    Size,
)
from station.shop.rooms import Number
from tests.fakes import FakeView
from tests.floor.beds import AGREED, BED, CUTTING, FIRST, ON_BED, STOPPED, WHOLE
from tests.floor.shop_small import (
    COMB,
    COMBS,
    FRAME,
    FRAMES,
    GAUGE,
    GAUGES,
    Player,
    at,
    batch,
    hand,
    small_shop,
)
from tests.floor.test_loading_dialogue import press
from tests.touch import NO_ROW

GOOD = batch(GAUGES, state="cutting", cut=1)
WRONG = replace(FIRST, state="wrong", concern="c")
HELD = "first-off is outside its limits on Router 1"


def decide(view: FakeView, kind: str, subject: str = "router/1", now: str = "10:00",
           **args: object) -> Answer:  # fmt: skip
    more = {} if kind in ("measure_first_off", "check_first_off") else {"router": "1"}
    act: Act = Act(id=f"x{len(view.entries)}", kind=kind, at=at(now), worker="02", station="s1",
                   subject=subject, args={**more, **args})  # fmt: skip
    return view.do(RULES, act)


def measure(view: FakeView, mm: float, part: str = GAUGE, size: str = "A along") -> Answer:
    return decide(view, "measure_first_off", part=part, size=size, reading_mm=mm)


def bed(view: FakeView) -> Bed:
    found = view.get(Bed, "1")
    assert found
    return found


def states(view: FakeView) -> dict[str, str]:
    return {f.file: f.state for f in bed(view).firsts}


def holds(view: FakeView) -> tuple[str, ...]:
    found = view.get(Batch, "00412")
    assert found
    return found.holds


def told(answer: Answer) -> str:
    return f"{answer.said} | {answer.do}"


# --- when it is due

DUE: tuple[tuple[str, dict[str, object], str], ...] = (
    ("a new file", {}, "first sheet of SG010-SET C"),
    ("what agreed for another file", {"firsts": (replace(AGREED, file="009.C"),)},
     "first sheet of SG010-SET C"),
    ("what agreed by another bit", {"firsts": (replace(AGREED, bits=("17",)),)}, "another bit"),
    ("what agreed at another zero", {"firsts": (replace(AGREED, zero_since=at("07:00")),)},
     "zero set anew"),
    ("a stop since it agreed", {"firsts": (AGREED,), "first_off": "stop at 08:00, hold-down"},
     "stop at 08:00, hold-down"),
    ("a bed as an older program wrote it", {"first_off": "start of batch 00412"},
     "start of batch 00412"),
    ("it agreed", {"firsts": (AGREED,)}, ""),
)  # fmt: skip


@pytest.mark.parametrize(("words", "fields", "why"), DUE, ids=[d[0] for d in DUE])
def test_a_first_off_is_due_of_what_is_new(
    words: str, fields: dict[str, object], why: str
) -> None:
    view = small_shop(GOOD, replace(CUTTING, **fields), moves=ON_BED)
    assert not decide(view, "off_bed", "slip/00412-1", sheet=1).refused
    due = [f for f in bed(view).firsts if f.state == "due"]
    assert [(f.file, f.bits, f.batch, f.sheet, f.why) for f in due] == (
        [(f"{GAUGES}.C", ("11",), "00412", 1, why)] if why else []
    )
    assert bed(view).first_off == ""


def test_a_spoiled_sheet_is_compared_where_pieces_of_it_go_on() -> None:
    for survived, firsts in (({GAUGE: 3}, {f"{GAUGES}.C": "due"}), ({}, {})):
        view = small_shop(GOOD, CUTTING, moves=ON_BED)
        decide(view, "spoil_sheet", "batch/00412", reason="12", survived=survived)
        assert states(view) == firsts


def test_a_reason_decides_whether_a_spoiled_sheet_makes_the_next_a_first_off() -> None:
    for first_off, due in ((True, "sheet spoiled: crooked"), (False, "")):
        why = Reason(id="17", words="crooked", use="sheet", first_off=first_off)
        view = small_shop(GOOD, CUTTING, why, moves=ON_BED)
        decide(view, "spoil_sheet", "batch/00412", reason="17", survived={})
        assert bed(view).first_off == due


def test_what_a_bit_has_cut_before_it_broke_needs_a_look_if_nobody_compared_it() -> None:
    view = small_shop(GOOD, replace(BED, firsts=(FIRST,)))
    decide(view, "bit_broken", bit="11")
    assert states(view) == {}
    (look,) = view.shelf(Concern, "open")
    assert (look.what, look.about) == ("not-compared", "batch/00412")
    assert holds(view) == ("sheet 1: bit 11 broke before it was compared",)
    view = small_shop(GOOD, replace(CUTTING, sheet=2, firsts=(AGREED,)), moves=ON_BED)
    decide(view, "spoil_sheet", "batch/00412", reason="11", survived={GAUGE: 3})
    assert not [c for c in view.shelf(Concern, "open") if c.what == "not-compared"]
    assert bed(view).zero == "bit 11 broke"


def test_what_survives_of_a_first_sheet_whose_bit_broke_is_held() -> None:
    for survived, held in (({GAUGE: 3}, 1), ({}, 0)):
        view = small_shop(GOOD, CUTTING, moves=ON_BED)
        decide(view, "spoil_sheet", "batch/00412", reason="11", survived=survived)
        assert len(holds(view)) == held
        assert view.get(Batch, "00412").cut == 2  # type: ignore[union-attr]


def test_after_a_stop_that_asks_for_it_no_file_counts_as_it_agreed_before() -> None:
    other = replace(AGREED, file="009.C")
    view = small_shop(GOOD, replace(CUTTING, firsts=(AGREED, other)), moves=ON_BED)
    decide(view, "report_stop", reason="31")
    ticks = ("bit_out", "bed_clear", "sheet_held", "nobody_near")
    decide(view, "end_stop", ticks=ticks, now="10:05")
    decide(view, "off_bed", "slip/00412-1", "10:40", sheet=1)
    assert states(view) == {f"{GAUGES}.C": "due"}


def test_what_was_cut_before_a_stop_says_nothing_of_what_comes_after_it() -> None:
    for firsts, due in (((AGREED,), "agreed"), ((), "due")):
        view = small_shop(GOOD, replace(CUTTING, firsts=firsts), moves=ON_BED)
        decide(view, "report_stop", reason="31")
        decide(view, "spoil_sheet", "batch/00412", reason="12", survived={GAUGE: 3})
        assert states(view) == {f"{GAUGES}.C": due}
        assert bed(view).first_off == "stop at 10:00, bit"


def test_two_bits_by_hand_are_compared_once_a_batch() -> None:
    plain = small_shop().get(Revision, f"{GAUGES}.C")
    assert plain
    two = replace(plain, bits=(*plain.bits, BitUse(number=2, diameter_mm=3.0, cut_mm=4e4)))
    view = small_shop(replace(GOOD, cut=0), two, replace(CUTTING, seen=("11",)), moves=ON_BED)
    decide(view, "change_bit", bit="18", now="09:10")
    decide(view, "off_bed", "slip/00412-1", sheet=1)
    assert bed(view).firsts[0].bits == ("11", "18")
    measure(view, 100.0)
    decide(view, "change_bit", bit="11")
    decide(view, "start_sheet", "batch/00412", lot="0931", reading=6.4, ticks=(*WHOLE, "zero"))
    decide(view, "change_bit", bit="18", now="10:10")
    decide(view, "off_bed", "slip/00412-2", "10:40", sheet=2)
    assert states(view) == {f"{GAUGES}.C": "agreed"}


# --- what it takes


def first_due(*firsts: FirstOff, facts: tuple[Fact, ...] = ()) -> FakeView:
    return small_shop(GOOD, replace(BED, firsts=firsts or (FIRST,)), *facts)


@pytest.mark.parametrize("mm", [99.7, 100.0, 100.3])
def test_a_reading_within_its_limits_agrees(mm: float) -> None:
    view = first_due()
    assert str(measure(view, mm).said) == "First-off agrees on Router 1"
    assert bed(view).firsts[0].readings == ((GAUGE, "A along", mm),)


@pytest.mark.parametrize("mm", [99.69, 100.31])
def test_a_reading_outside_holds_the_batch_until_two_in_turn_are_inside(mm: float) -> None:
    view = first_due()
    assert measure(view, mm).tone == "attention"
    assert (states(view), holds(view)) == ({f"{GAUGES}.C": "wrong"}, (HELD,))
    (look,) = view.shelf(Concern, "open")
    assert (look.what, look.about) == ("first-off", "batch/00412")
    for again in (100.0, mm, 100.1):
        measure(view, again)
        assert (states(view), holds(view)) == ({f"{GAUGES}.C": "wrong"}, (HELD,))
    measure(view, 99.9)
    assert (states(view), holds(view)) == ({f"{GAUGES}.C": "agreed"}, ())
    assert [r[2] for r in bed(view).firsts[0].readings] == [mm, 100.0, mm, 100.1, 99.9]
    assert not view.shelf(Concern, "open")


FAR = [(6.4, True), (89.9, True), (90.0, False), (110.0, False), (110.1, True), (9000.0, True)]


@pytest.mark.parametrize(("mm", "asked"), FAR)
def test_a_value_that_cannot_be_the_size_is_asked_about_and_not_booked(
    mm: float, *, asked: bool
) -> None:
    view = first_due()
    answer = measure(view, mm)
    assert (f"{mm:g} mm: is that A along, about 100 mm?" == str(answer.said)) == asked
    assert bool(bed(view).firsts[0].readings) != asked


@pytest.mark.parametrize(("nominal", "mm", "asked"), [(6.5, 8.5, False), (6.5, 8.6, True),
                                                      (6.5, 298.9, True), (399.0, 359.1, False),
                                                      (399.0, 359.0, True)])  # fmt: skip
def test_far_is_a_tenth_or_two_millimetres(nominal: float, mm: float, *, asked: bool) -> None:
    size = Size(name="T", nominal_mm=nominal, low_mm=nominal - 0.3, high_mm=nominal + 0.3)
    assert (ask_if_far(size, mm) is not None) == asked


SETTLED = [((), False), ((100.0,), True), ((101.0,), False), ((101.0, 100.0), False),
           ((101.0, 100.0, 100.0), True), ((100.0, 101.0, 100.0), False),
           ((100.0, 100.0, 101.0), False)]  # fmt: skip


@pytest.mark.parametrize(("readings", "settled"), SETTLED)
def test_twice_inside_in_turn_settles_one_that_was_outside(
    readings: tuple[float, ...], *, settled: bool
) -> None:
    size = Size(name="A", nominal_mm=100.0, low_mm=99.7, high_mm=100.3)
    assert is_settled(size, readings) == settled


def test_what_is_not_measured_does_not_agree() -> None:
    view = first_due()
    answer = decide(view, "check_first_off", good=True)
    assert str(answer.said) == "SG-10, A along, about 100 mm, is not measured yet"
    assert states(view) == {f"{GAUGES}.C": "due"}


def test_what_a_broken_bit_has_cut_does_not_agree() -> None:
    broken = replace(small_shop().facts["bit/11"], state="broken")  # type: ignore[call-arg]
    view = first_due(facts=(broken,))
    assert told(measure(view, 100.0)).startswith("Bit 11 is broken | Say that it is wrong")
    assert states(view) == {f"{GAUGES}.C": "due"}


def test_a_size_of_another_part_is_not_measured_here() -> None:
    assert "not measured here" in told(measure(first_due(), 300.0, COMB))


def test_without_sizes_it_is_compared_by_eye() -> None:
    part = small_shop().get(Part, GAUGE)
    assert part
    view = first_due(facts=(replace(part, sizes=()),))
    here = find_now(hand("loading", router="1"), view)
    checks = list_measured(here, FIRST)
    assert [str(item.label) for item in checks.items] == [part.name], "it is named, with its size"
    assert "as drawn" in str(checks.items[0].text)
    assert any(isinstance(block, PartDrawing) for block in show_first_off(here, FIRST))
    assert decide(view, "check_first_off", good=True).tone == "good"
    marks = CutFile(id=GAUGES, name="M", words="", approved="C", work="laser")
    assert decide(first_due(facts=(marks,)), "check_first_off", good=True).tone == "good"


def test_what_a_person_says_is_wrong_is_measured_twice_and_stays_held() -> None:
    view = first_due()
    decide(view, "check_first_off", good=False)
    assert holds(view) == ("first-off is wrong on Router 1",)
    measure(view, 100.0)
    assert states(view) == {f"{GAUGES}.C": "wrong"}
    measure(view, 100.0)
    assert states(view) == {f"{GAUGES}.C": "agreed"}
    assert holds(view) == ("first-off is wrong on Router 1",)
    assert view.shelf(Concern, "open")


def test_a_supervisor_passes_it_with_a_reason() -> None:
    view = first_due()
    decide(view, "check_first_off", good=False)
    assert decide(view, "check_first_off", good=True).asks == "supervisor"
    assert decide(view, "check_first_off", good=True, approved="07").asks == "reason"
    assert decide(view, "check_first_off", good=True, approved="07", reason="21").asks == "reason"
    done = decide(view, "check_first_off", good=True, approved="07", reason="43")
    assert (done.tone, done.refused) == ("attention", False)
    assert (states(view), holds(view)) == ({f"{GAUGES}.C": "agreed"}, ())
    (look,) = [f for f in view.facts.values() if isinstance(f, Concern)]
    assert (look.by, look.reason) == ("07", "43")


def test_one_that_is_wrong_takes_back_what_agreed_with_it() -> None:
    view = first_due(replace(AGREED, file="009.C"), FIRST)
    measure(view, 100.5)
    assert states(view) == {f"{GAUGES}.C": "wrong"}


def test_what_agreed_can_turn_out_wrong_on_a_later_sheet() -> None:
    view = small_shop(replace(GOOD, cut=3), replace(BED, firsts=(replace(AGREED, batch="00400"),)))
    decide(view, "check_first_off", good=False)
    (wrong,) = bed(view).firsts
    assert (wrong.batch, wrong.sheet, wrong.state) == ("00412", 3, "wrong")
    assert holds(view) == ("first-off is wrong on Router 1",)


# --- what a wrong one stops

CHANGES: tuple[tuple[str, Mapping[str, object], bool], ...] = (
    ("nothing", {}, True),
    ("the zero", {"zero_since": at("09:30")}, False),
    ("the bit", {"bits": ((0, "17"),)}, False),
)


@pytest.mark.parametrize(("what", "fields", "refused"), CHANGES, ids=[c[0] for c in CHANGES])
def test_a_wrong_one_stops_the_same_bit_zero_and_file(
    what: str, fields: dict[str, object], *, refused: bool
) -> None:
    view = small_shop(GOOD, replace(BED, firsts=(WRONG,), **fields))
    answer = decide(view, "start_sheet", "batch/00412", lot="0931", reading=6.4, ticks=WHOLE)
    assert answer.refused == refused


OTHERS: tuple[tuple[str, Mapping[str, object], bool], ...] = (
    ("with the same bit and zero", {}, True),
    ("its bit, its zero", {"bits": ((0, "17"),), "zero_since": at("09:30")}, False),
    ("another bit that keeps its zero", {"bits": ((0, "17"),)}, False),
    ("zero set anew", {"zero_since": at("09:30")}, False),
    ("agreed itself before", {"firsts": (replace(AGREED, file=f"{COMBS}.C"), WRONG)}, True),
)  # fmt: skip


@pytest.mark.parametrize(("what", "fields", "refused"), OTHERS, ids=[o[0] for o in OTHERS])
def test_a_wrong_one_stops_every_file_that_is_cut_with_its_bit_and_zero(
    what: str, fields: dict[str, object], *, refused: bool
) -> None:
    view = small_shop(batch(COMBS), replace(BED, **{"firsts": (WRONG,), **fields}))
    answer = decide(view, "start_sheet", "batch/00412", lot="0931", reading=6.4, ticks=WHOLE)
    assert answer.refused == refused
    if refused:
        assert told(answer) == (
            "First-off of SG010-SET C is wrong on Router 1, same bit and zero | Measure it again; "
            "or put another bit in, set zero anew; or a supervisor passes it."
        )


def test_it_is_measured_again_with_another_batch_in_hand() -> None:
    view = small_shop(batch(COMBS), batch(GAUGES, "00400"),
                      replace(BED, firsts=(replace(WRONG, batch="00400"),)))  # fmt: skip
    one = Player(view, RULES, handle_input, hand("loading", router="1"))
    assert asked(one) == f"{GAUGE}/A along"
    one.give(Number("100"), Number("100.1"))
    assert states(view) == {f"{GAUGES}.C": "agreed"}
    assert not decide(view, "start_sheet", "batch/00412", lot="0931", reading=6.4,
                      ticks=WHOLE).refused  # fmt: skip


def test_a_supervisor_lets_another_file_be_cut() -> None:
    view = small_shop(batch(COMBS), replace(BED, firsts=(WRONG,)))
    decide(view, "check_first_off", good=True, approved="07", reason="43")
    assert not decide(view, "start_sheet", "batch/00412", lot="0931", reading=6.4,
                      ticks=WHOLE).refused  # fmt: skip


def test_taking_a_batch_on_says_what_stands_in_its_way() -> None:
    view = small_shop(batch(COMBS), replace(BED, batch="", firsts=(WRONG,)))
    assert "is wrong on Router 1, same bit and zero" in told(
        decide(view, "take_batch", "batch/00412")
    )


def test_a_laser_without_a_bit_waits_for_the_zero() -> None:
    marks = replace(small_shop().get(Revision, f"{COMBS}.C"), bits=())  # type: ignore[type-var]
    for fields, refused in (({}, True), ({"zero_since": at("09:30")}, False)):
        view = small_shop(batch(COMBS), marks, replace(BED, firsts=(WRONG,), **fields))
        one = decide(view, "start_sheet", "batch/00412", lot="0931", reading=6.4, ticks=WHOLE)
        assert one.refused == refused


def test_another_file_that_is_cut_with_a_new_zero_is_compared_itself() -> None:
    view = small_shop(batch(COMBS), replace(BED, firsts=(WRONG,), zero_since=at("09:30")))
    one = decide(view, "start_sheet", "batch/00412", lot="0931", reading=6.4, ticks=WHOLE)
    assert not one.refused
    decide(view, "off_bed", "slip/00412-1", "10:30", sheet=1)
    assert states(view) == {f"{GAUGES}.C": "wrong", f"{COMBS}.C": "due"}


# --- a sheet of another thickness


def thick() -> FakeView:
    """Frame sides of 9 mm are next, after a sheet of 6.5 mm."""
    agreed = (AGREED, replace(AGREED, file=f"{FRAMES}.C"))
    return small_shop(batch(FRAMES), replace(BED, lot="0931", firsts=agreed))


def start_thick(view: FakeView, *ticks: str) -> Answer:
    return decide(view, "start_sheet", "batch/00412", lot="0940", reading=9.0,
                  ticks=(*WHOLE, *ticks))  # fmt: skip


def test_another_thickness_asks_for_the_zero_and_is_a_first_off() -> None:
    view = thick()
    refused = start_thick(view)
    assert told(refused) == "Zero is not set yet | Due: 9 mm after 6.5 mm."
    assert not start_thick(view, "zero").refused
    assert (bed(view).zero_since, bed(view).first_off) == (at("10:00"), "9 mm after 6.5 mm")
    decide(view, "off_bed", "slip/00412-1", "10:50", sheet=1)
    assert states(view) == {f"{FRAMES}.C": "due"}


def test_the_same_thickness_keeps_the_zero() -> None:
    view = thick()
    start_thick(view, "zero")
    decide(view, "off_bed", "slip/00412-1", "10:50", sheet=1)
    measure(view, 560.0, FRAME)
    assert not start_thick(view).refused
    bare = small_shop(batch(FRAMES), replace(BED, lot=""))  # nothing was cut there yet
    assert not start_thick(bare).refused


def test_a_wrong_first_off_of_another_thickness_does_not_stop_what_gets_a_new_zero() -> None:
    view = thick()
    view.facts["bed/1"] = replace(bed(view), firsts=(WRONG,))
    assert told(start_thick(view)).startswith("Zero is not set yet")
    assert not start_thick(view, "zero").refused


def test_the_screen_asks_for_zero_after_another_thickness() -> None:
    view = thick()
    one = Player(view, RULES, handle_input, hand("loading", router="1"))
    one.give(Code("lot", "0940"), Number("9"), press("held_down"), press("bit_good"))
    answer = one.give(press("file_right"))
    assert str(answer.do) == "Set zero, tick it."
    (checks,) = [b for b in screen(one.hand, view).beside if isinstance(b, Checks)]
    assert "set it: 9 mm after 6.5 mm" in [str(c.text) for c in checks.items]
    one.give(press("zeroed"))
    assert not one.give(press("start")).refused


# --- at the screen


def both() -> Revision:
    plain = small_shop().get(Revision, f"{GAUGES}.C")
    assert plain
    return replace(plain, placed=(*plain.placed, Placed(part=COMB, x_mm=0, y_mm=0)))


def player(*facts: Fact) -> Player:
    view = small_shop(GOOD, replace(BED, firsts=(FIRST,)), *facts)
    return Player(view, RULES, handle_input, hand("loading", router="1"))


def asked(one: Player) -> str:
    here = find_now(one.hand, one.view)
    found = here.compared.asked
    return found.name if found else ""


def test_the_screen_asks_for_one_size_and_draws_it() -> None:
    one = player(both())
    face = screen(one.hand, one.view)
    drawn = next(b for b in face.main if isinstance(b, PartDrawing))
    question = next(b for b in face.main if isinstance(b, Asked))
    (listed,) = [b for b in face.beside if isinstance(b, Checks)]
    assert (drawn.part.id, drawn.measured and drawn.measured.name) == (GAUGE, "A along")
    assert str(question.question) == "SG-10: A along, about 100 mm"
    assert [(str(c.label), str(c.text)) for c in listed.items] == [
        ("SG-10: A along, about 100 mm", "measure it now"),
        ("HC-300: A along, about 300 mm", "measure it"),
    ]


def test_it_stays_on_a_size_until_that_is_settled() -> None:
    one = player(both())
    for number, name in (("6.4", GAUGE), ("100.5", GAUGE), ("100", GAUGE), ("100", COMB)):
        one.give(Number(number))
        assert asked(one) == f"{name}/A along"
    one.give(Number("300"))
    assert asked(one) == ""


def test_another_size_can_be_chosen() -> None:
    one = player(both())
    one.give("HC-300: A along, about 300 mm")
    assert asked(one) == f"{COMB}/A along"
    one.give(Number("300"))
    assert asked(one) == f"{GAUGE}/A along"
    assert handle_input(one.hand, press(NO_ROW), one.view) is None


@pytest.mark.parametrize("what", ["x", "1" * 12])
def test_what_is_no_reading_says_so(what: str) -> None:
    assert str(player().give(Number(what)).said) == f"{what} is no reading"


def test_a_number_is_a_thickness_again_once_it_agrees() -> None:
    one = player()
    one.give(Number("100"), Number("6.4"))
    assert one.hand.work.reading == 6.4


def test_while_something_else_stands_first_no_reading_is_taken() -> None:
    view = small_shop(GOOD, replace(BED, firsts=(FIRST,), rehome="stop"))
    one = Player(view, RULES, handle_input, hand("loading", router="1"))
    assert "no thickness" in str(one.give(Number("100")).said)
    assert find_now(one.hand, small_shop(GOOD, replace(STOPPED, firsts=(FIRST,)))).first is None


def test_a_new_zero_is_an_act_where_the_first_off_is_wrong() -> None:
    view = small_shop(GOOD, replace(BED, firsts=(WRONG,)))
    one = Player(view, RULES, handle_input, hand("loading", router="1"))
    assert str(one.give(press("zeroed")).said) == "Zero is set anew on Router 1"
    assert (bed(view).zero_since, bed(view).first_off) == (at("10:00"), "zero set anew")
    assert find_now(one.hand, view).first is None
