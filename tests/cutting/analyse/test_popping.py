"""Small loose pieces fly; the others are popped in the order that hands reach them."""

import pytest
from reading import SETTING, box, found

from station.cutting.analyse.popping import find_flying_pieces, order_for_popping
from station.cutting.model import Setting
from station.shop.facts import Router


@pytest.mark.parametrize("bed", ["clamped", "vacuum"])
@pytest.mark.parametrize(
    ("body", "small"),
    [
        (box(20, 20, 26, 26), True),  # 20 by 20
        (box(20, 20, 26, 26, tab=12), False),
        (box(20, 20, 106, 86), False),
    ],
)
def test_small_pieces_that_nothing_holds(bed, body, small):
    setting = Setting(
        router=Router(id="1", name="", bed=bed), thickness_mm=6.0, bit_mm=SETTING.bit_mm
    )
    got = found(body, setting)
    assert ("small-piece" in {p.kind for p in got.problems}) == small
    assert find_flying_pieces(got) == ([0] if small else [])


def test_small_loose_pieces_fly():
    got = found(box(20, 20, 26, 26) + box(100, 20, 106, 86))
    assert find_flying_pieces(got) == [0]
    assert order_for_popping(got) == [0, 1]


def test_pieces_are_popped_small_ones_first_then_row_by_row():
    big = [(20, 20), (700, 40), (300, 20), (20, 500)]
    got = found(
        "".join(box(x, y, 106, 86, tab=12) for x, y in big) + box(900, 900, 30, 30, tab=12)
    )
    order = [got.pieces[i].outline.min(axis=0).round().tolist() for i in order_for_popping(got)]
    assert order == [[903, 903], [23, 23], [303, 23], [703, 43], [23, 503]]
