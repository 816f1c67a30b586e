"""Any inputs in any order: no error, nothing below zero, every face can be shown."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.floor.loading.dialogue import handle_input
from station.floor.loading.rules import RULES
from station.floor.loading.screen import screen
from station.shop.acts import Act, Args, add_known
from station.shop.cards import BUTTONS
from station.shop.codes import Code
from station.shop.facts import Batch, Bed
from station.shop.places import balances
from station.shop.rooms import Do, Hand, Input, Number, Point, Took
from tests.fakes import FakeView
from tests.first_offs import list_passed_over
from tests.floor.shop_small import COMBS, DAY, GAUGES, batch, hand, small_shop

LOADING = [c for c in BUTTONS.values() if c.area == "loading"]
INPUTS: list[Input] = [
    *(Code("button", c.number) for c in LOADING),
    *(Code("button", BUTTONS[n].number) for n in ("held_down", "bit_good", "file_right")),
    *(Code("batch", b, c, n) for b in ("00412", "00417", "00999") for c in "AB" for n in range(3)),
    *(Code("lot", n) for n in ("0931", "0931", "0940", "0999")),
    *(Code("bit", n) for n in ("11", "12", "17", "18", "99")),
    *(Code("reason", n) for n in ("11", "13", "31", "32", "33", "01", "99")),
    *(Code("router", n) for n in ("1", "2", "5")),
    *(Code("part", n) for n in ("014", "045", "099")),
    Code("order", "3306"),
    Code("zone", "51"),
    *(Number(n) for n in ("6.4", "6,4", "5.8", "0", "-1", "999999999", "70", "100", "100.5", "x")),
    *(Code("button", BUTTONS[n].number) for n in ("row_1", "row_2")),
    Point(10.0, 10.0),
]
HASTY = [
    Code("batch", "00412", "A"),
    Code("lot", "0931"),
    Number("6.4"),
    Code("button", BUTTONS["held_down"].number),
    Code("button", BUTTONS["bit_good"].number),
    Code("button", BUTTONS["file_right"].number),
    Code("button", BUTTONS["zeroed"].number),
    Code("button", BUTTONS["start"].number),
]
QUICK = [Number("100"), *HASTY]  # with a reading of the first-off, if one is due
OFF = [Code("batch", "00412", "A", n) for n in (1, 2, 3, 4)]
AFTER = [Code("button", BUTTONS[n].number)
         for n in ("bit_out", "rehomed", "bed_clear", "held_down", "nobody_near", "zeroed",
                   "stop_over")]  # fmt: skip
moves = st.one_of(
    st.sampled_from(INPUTS).map(lambda i: [i]),
    st.just(QUICK),
    st.just(HASTY),
    st.just(OFF),
    st.just(AFTER),
)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.tuples(moves, st.integers(0, 40), st.booleans()), max_size=25))
@pytest.mark.slow
def test_any_input_in_any_order(walk: list[tuple[list[Input], int, bool]]) -> None:
    view = small_shop(batch(GAUGES), batch(COMBS, id="00417", sheets=2))
    one, minute = hand("loading", router="1,2"), 0
    for inputs, wait, sure in walk:
        minute += wait
        one = replace(one, now=f"{DAY}T{7 + minute // 60:02d}:{minute % 60:02d}:00")
        for each in inputs:
            result = handle_input(one, each, view)
            if isinstance(result, Took):
                one = replace(result.hand, now=one.now)
            elif isinstance(result, Do):
                one = _act(view, result, one.now, sure=sure) or one
        assert screen(one, view)
        assert list_passed_over(f for f in view.facts.values() if isinstance(f, Bed)) == []
    _sound(view)


def _act(view: FakeView, do: Do, now: str, *, sure: bool) -> Hand | None:
    found = Args(sure=True, approved="07", reason=do.args.reason or "43") if sure else Args()
    args = add_known(do.args, found)
    answer = view.do(
        RULES,
        Act(id=f"w{len(view.entries)}", kind=do.kind, at=now, worker="02", subject=do.subject,
            args=args),
    )  # fmt: skip
    return None if answer.refused else replace(do.after, now=now)


def _sound(view: FakeView) -> None:
    for (place, _, part), qty in view.pieces.items():
        assert qty >= 0 or balances(place), (place, part, qty)
    for name in ("00412", "00417"):
        found = view.get(Batch, name)
        assert found
        assert 0 <= found.spoiled <= found.cut <= found.sheets
