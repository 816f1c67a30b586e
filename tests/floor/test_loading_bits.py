"""A cut file of two bits on a router without a changer: each bit is checked at its change."""

from dataclasses import replace

import pytest

from station.floor.loading.dialogue import handle_input
from station.floor.loading.rules import RULES
from station.floor.loading.screen import screen
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.faces import Checks, Meter, SheetDrawing
from station.shop.facts import Bed, Bit, BitUse, Clear, Fact, Revision, Slip
from station.shop.moves import Move
from station.shop.rooms import Number
from tests.floor.beds import BED, worn
from tests.floor.shop_small import GAUGES, Player, batch, hand, small_shop

SMALL_M = 40  # metres that the 3.0 mm bit cuts on a sheet
READY = (Code("lot", "0931"), Number("6.4"))
TICKS = ("held_down", "bit_good", "file_right", "zeroed")


def press(name: str) -> Code:
    return Code("button", BUTTONS[name].number)


def bit(number: str) -> Code:
    return Code("bit", number)


def router(*facts: Fact, moves: tuple[Move, ...] = ()) -> Player:
    """Router 1 with a 6.0 mm bit in, a batch taken whose file wants a 3.0 mm bit after it."""
    plain = small_shop().get(Revision, f"{GAUGES}.C")
    assert plain
    second = BitUse(number=2, diameter_mm=3.0, cut_mm=SMALL_M * 1000)
    two = replace(plain, bits=(*plain.bits, second))
    bed = replace(BED, seen=("11",))
    view = small_shop(batch(GAUGES), bed, two, *facts, moves=moves)
    return Player(view, RULES, handle_input, hand("loading", "09:00", router="1"))


def started(*facts: Fact, moves: tuple[Move, ...] = ()) -> Player:
    one = router(*facts, moves=moves)
    one.give(*READY, *map(press, TICKS), press("start"))
    return one


def bed(one: Player) -> Bed:
    found = one.view.get(Bed, "1")
    assert found
    return found


def test_the_bit_for_later_is_named_when_the_sheet_starts() -> None:
    one = started()
    assert str(one.said[-1].do) == "Lay bit 18 ready, 3 mm: scan it at the change."


def test_no_sheet_starts_without_the_bit_for_later() -> None:
    one = started(Bit(id="18", words="3.0", diameter_mm=3.0, state="broken"))
    assert one.said[-1].refused
    assert str(one.said[-1].said) == "No 3 mm bit is in the drawer"


def test_a_bit_for_later_that_is_nearly_done_is_told_at_the_start() -> None:
    one = started(moves=(worn("18", 1490),))
    assert one.said[-1].tone == "attention"
    assert str(one.said[-1].do) == "Bit 18: 10 m left, 40 m needed. Watch it."


CHANGES = [
    ((), "18", "good", "Set zero, then go on: 1\u202f500 m left, 40 m needed."),
    ((worn("18", 1470),), "18", "attention", "30 m left, 40 m needed. Watch it; set zero first."),
    ((), "17", "stop", "The file asks for 3 mm next: take that one."),
]


@pytest.mark.parametrize(("moves", "number", "tone", "do"), CHANGES)
def test_each_bit_is_checked_at_its_change(moves, number, tone, do):
    one = started(moves=moves)
    answer = one.give(bit(number), now="09:10")
    assert (answer.tone, str(answer.do)) == (tone, do)


def test_no_more_bits_are_asked_for_after_the_last() -> None:
    one = started()
    one.give(bit("18"), now="09:10")
    answer = one.give(bit("17"))
    assert answer.refused
    assert "Report a stop" in str(answer.do)


def test_a_sheet_whose_second_bit_was_never_scanned_is_a_question() -> None:
    one = started()
    asked = one.give(Code("batch", "00412", "A", 1), now="09:30")
    assert asked.asks == "sure"
    assert str(asked.said) == "The 3 mm bit was not scanned in"
    assert not one.yes().refused
    assert bed(one).sheet == 0


def test_with_every_bit_scanned_the_sheet_comes_off() -> None:
    one = started()
    one.give(bit("18"), now="09:10")
    assert one.give(Code("batch", "00412", "A", 1), now="09:30").tone == "good"
    wear = {n: sum(h.qty for h in one.view.stock(place=f"bit/{n}")) for n in ("11", "18")}
    assert wear == {"11": 65_000, "18": SMALL_M * 1000}
    slip = one.view.get(Slip, "00412-1")
    assert slip
    assert slip.cut_by == ("11", "18")


def test_a_bit_put_back_is_not_new_but_another_one_is() -> None:
    one = started()
    one.give(bit("18"), now="09:10")
    one.give(Code("batch", "00412", "A", 1), now="09:30")
    one.give(Number("100"))
    one.give(bit("11"))
    assert (bed(one).first_off, bed(one).zero) == ("", "new bit 11")
    one.give(bit("17"))
    assert bed(one).first_off == "new bit 17"


def test_the_bit_cannot_be_ticked_while_it_is_to_be_changed() -> None:
    one = started()
    assert "Not while sheet 1 is on the bed" in str(one.give(press("bit_good")).said)


def test_the_screen_shows_the_change_and_both_bits() -> None:
    one = started()
    shown = screen(one.hand, one.view)
    (checks,) = [b for b in shown.beside if isinstance(b, Checks)]
    assert str(checks.items[0].label) == "Change 1 of 1, when the file stops: scan this bit in"
    assert str(checks.items[0].text) == "3 mm, no. 18: 1\u202f500 m left, 40 m needed"
    assert [str(b.title) for b in shown.side if isinstance(b, Meter)] == [
        "Bit no. 11: 0 m on Router 1",
        "Bit no. 18: 0 m on Router 1",
        "Spoilboard: 0 passes",
    ]
    before = router()
    (checks,) = [b for b in screen(before.hand, before.view).beside if isinstance(b, Checks)]
    later = [c for c in checks.items if c.state == "later"]
    assert [str(c.label) for c in later] == [
        "Then, by hand: checked at its change", "It is a first-off",
    ]  # fmt: skip


def by_three(*facts: Fact) -> Player:
    """A sheet of a file that wants 6.0, 3.0 and 6.0 mm, another bit each time, begun."""
    one = router()
    plain = one.view.get(Revision, f"{GAUGES}.C")
    assert plain
    third = BitUse(number=3, diameter_mm=6.0, cut_mm=20_000)
    view = small_shop(batch(GAUGES), replace(BED, seen=("11",)),
                      replace(plain, bits=(*plain.bits, third)), *facts)  # fmt: skip
    made = Player(view, RULES, handle_input, hand("loading", "09:00", router="1"))
    made.give(*READY, *map(press, TICKS), press("start"))
    return made


def label_first(one: Player) -> str:
    (checks,) = [b for b in screen(one.hand, one.view).beside if isinstance(b, Checks)]
    return str(checks.items[0].label)


def test_each_change_is_a_step_also_of_two_bits_of_one_diameter() -> None:
    one = by_three()
    assert label_first(one) == "Change 1 of 2, when the file stops: scan this bit in"
    assert one.give(bit("18"), now="09:10").tone == "good"
    assert one.give(press("zeroed"), now="09:11").tone == "good"
    assert label_first(one) == "Change 2 of 2, when the file stops: scan this bit in"
    assert one.give(bit("17"), now="09:20").tone == "good"
    assert one.give(press("zeroed"), now="09:21").tone == "good"
    assert "Change" not in label_first(one)
    one.give(Code("batch", "00412", "A", 1), now="09:30")
    wear = {n: sum(h.qty for h in one.view.stock(place=f"bit/{n}")) for n in ("11", "18", "17")}
    assert wear == {"11": 65_000, "18": SMALL_M * 1000, "17": 20_000}


def test_zero_for_the_bit_that_was_put_in_is_a_step_of_its_own() -> None:
    one = started()
    one.give(bit("18"), now="09:10")
    assert label_first(one) == "Zero, before it goes on"
    answer = one.give(press("zeroed"), now="09:11")
    assert str(answer.said) == "Zero is set for new bit 18"
    assert bed(one).zero == ""
    assert bed(one).sheet == 1
    assert label_first(one) != "Zero, before it goes on"


def test_a_bit_replaced_in_a_stop_is_no_change_of_the_file() -> None:
    one = by_three()
    stopped = replace(bed(one), state="stopped", stop="31", stopped="2026-11-25T09:05:00")
    one.view.facts[stopped.key] = stopped
    one.give(bit("17"), now="09:10")
    assert bed(one).changes == 0
    assert bed(one).bits == ((0, "17"),)


def test_a_sheet_whose_hold_down_stands_on_a_piece_does_not_start() -> None:
    plain = router().view.get(Revision, f"{GAUGES}.C")
    assert plain
    piece = plain.placed[0]
    wrong = replace(plain, hold_downs=((20.0, 1210.0), (piece.x_mm + 20, piece.y_mm + 20)))
    one = router()
    one.view.facts[wrong.key] = wrong
    one.give(*READY, *map(press, TICKS), press("start"))
    assert str(one.said[-1].said) == "A hold-down is in the way: number 2 stands on a piece"
    face = screen(one.hand, one.view)
    (drawn,) = [b for b in face.main if isinstance(b, SheetDrawing)]
    assert [(m.number, m.tone) for m in drawn.marks] == [(1, "good"), (2, "stop")]
    assert "red: in the way" in str(drawn.note)
    (checks,) = [b for b in face.beside if isinstance(b, Checks)]
    (held,) = [c for c in checks.items if str(c.label) == "A hold-down is in the way"]
    assert (held.state, held.code) == ("wrong", "")


def test_a_sheet_whose_hold_down_the_bit_comes_near_does_not_start() -> None:
    plain = router().view.get(Revision, f"{GAUGES}.C")
    assert plain
    cells = bytearray(b"\1" * (244 * 122))
    cells[120 * 244 + 200] = 0  # 2000 to 2010 mm along, 1200 to 1210 mm across
    clear = Clear.pack(bytes(cells), 10.0, 244)
    for place, started in (((2005.0, 1203.0), False), ((2011.0, 1203.0), True)):
        kept = replace(plain, hold_downs=((20.0, 1210.0), place), clear=clear)
        one = router()
        one.view.facts[kept.key] = kept
        one.give(*READY, *map(press, TICKS), press("start"))
        said = str(one.said[-1].said)
        near = "A hold-down is in the way: the bit comes too near number 2"
        assert (said != near) if started else (said == near)
