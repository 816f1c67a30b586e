"""Stacks of problems drawn from the trade: what is found, and what it may cost at least."""

import random

import msgspec
import pytest

from station.commands.pack import PackingProblem, solve_problem
from station.packs.choose import choose_mailer
from station.packs.messages import PackAnswer, PackMailer, PackPart, PackProblem
from station.packs.stack import MOST_HEIGHTS, MOST_LAYERS, StackAsk, lay_single, list_levels
from tests.packs.drawn import draw_problem
from tests.packs.test_ship import check


@pytest.mark.slow
def test_problems_of_many_parts_keep_every_rule_and_their_bound():
    chance, sent = random.Random(11), 0
    for kinds in (1, 2, 3, 5, 8, 12, 16, 40) * 4:
        problem = draw_problem(chance, kinds)
        answer = solve_problem(problem)
        if answer["packs"]:
            check(msgspec.to_builtins(problem), answer)
            assert answer["lower_bound"] <= answer["cost"] + 1e-9
            sent += 1
    assert sent > 16


def test_a_height_that_only_two_layers_of_nine_have_is_found():
    """250 × 181 of room at 18 mm: 240 × 180 of sticks, and a plate over them, in a sleeve."""
    raw = {}
    raw["parts"] = [
        {"part": "plate", "length": 223, "width": 142, "thickness": 9, "mass": 185, "count": 1},
        {"part": "stick", "length": 120, "width": 45, "thickness": 9, "mass": 32, "count": 8},
    ]
    raw["containers"] = [
        {"container": "sleeve", "kind": "sleeve", "length": 255, "width": 204, "thickness": 20,
         "allowance": 5, "mass": 61, "price": 0.8},
    ]  # fmt: skip
    raw["services"] = [{"service": "s", "steps": [{"to_g": 1000, "price": 3}]}]
    answer = solve_problem(msgspec.convert(raw, PackingProblem))
    assert [pack["thickness"] for pack in answer["packs"]] == [18]


@pytest.mark.parametrize("count", [3, 40, 999_999])
def test_a_stack_that_nothing_takes_is_told_however_many_pieces_there_are(count):
    """It took half a minute of the screen to lay a million layers that nobody looks at."""
    large = PackPart("large", 300.0, 100.0, 6.0, count, small=False)
    small = PackPart("small", 120.0, 45.0, 6.0, 4 * count + 1, small=True)
    layers = lay_single((large, small), 0.0)
    assert len(layers) <= MOST_LAYERS
    for part in (large, small):
        piles = (p for layer in layers for p in layer.piles if p.part == part.name)
        assert sum(pile.pieces for pile in piles) == part.pieces
    four_a_layer = count + 1  # the small ones: two by two, and one that is left
    assert PackAnswer(layers=layers).size_mm == (300.0, 100.0, 6.0 * (count + four_a_layer))
    assert choose_mailer(PackProblem(parts=(large, small), mailers=())).size_mm[2] == 6.0 * (
        2 * count + 1
    )


@pytest.mark.parametrize("thick", [6.0, 1e-6])
def test_a_mailer_as_high_as_a_house_takes_no_long_thought(thick):
    """All its heights were listed: a million of them, and a screen took gigabytes."""
    part = PackPart("plate", 100.0, 50.0, thick, 3, small=False)
    house = PackMailer("house", 300.0, 200.0, 999_999_999.0, 20.0, 1.0)
    ask = StackAsk(
        parts=(part,), mailer=house, allowance_mm=10.0, gap_mm=0.0, between=False, steady=True
    )
    assert len(list(list_levels(ask))) <= MOST_HEIGHTS
    assert choose_mailer(PackProblem(parts=(part,), mailers=(house,))).mailer == "house"
