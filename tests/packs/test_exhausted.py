"""Packs against every way there is to pack them: by hand and drawn."""

import random

import msgspec
import pytest

from station.commands.pack import PackingProblem, solve_problem
from tests.exhaust_packs import compare
from tests.packs.drawn import draw_few
from tests.packs.exhausted import Exhausted
from tests.packs.test_ship import STICKS, check


def _ask(parts, container, most_packs=1):
    """Asks with parts of (length, width, thickness, count, small), in one box or mailer."""
    names = "length", "width", "thickness", "count", "small"
    parts = [
        {"part": f"p{n}", "mass": 50, **dict(zip(names, part, strict=True))}
        for n, part in enumerate(parts)
    ]
    container = {"container": "c", "allowance": 0, "flap": 0, "mass": 50, "price": 1, **container}
    problem = {**STICKS, "parts": parts, "containers": [container], "max_packs": most_packs}
    return msgspec.convert(problem, PackingProblem)


MAILER = {"kind": "mailer", "length": 450, "width": 320, "thickness": 45}


@pytest.mark.parametrize(
    ("parts", "container"),
    [
        # side by side they cover too little: the broad one is the base
        ([(500, 25, 6.5, 1, False), (133, 131, 6, 1, False)],
         {"kind": "mailer", "length": 518, "width": 217, "thickness": 30}),
        # 578 × 96 is covered by half and more, 578 × 136 is not
        ([(93, 53, 12, 1, True), (578, 43, 12, 1, True)],
         {"kind": "box", "length": 600, "width": 361, "thickness": 30}),
        # all in one layer 9 high, or it is too thick for the sleeve
        ([(205, 89, 9, 1, False), (527, 38, 6, 4, False)],
         {"kind": "sleeve", "length": 537, "width": 308, "thickness": 9}),
    ],
)  # fmt: skip
def test_a_base_is_found_where_there_is_one(parts, container):
    problem = _ask(parts, container)
    answer = solve_problem(problem)
    assert answer["cost"] == Exhausted(problem).find_cost() == 6
    check(msgspec.to_builtins(problem), answer)


@pytest.mark.parametrize(
    ("parts", "fits"),
    [
        ([(300, 200, 6, 1, False)], True),
        ([(300, 200, 6, 1, True)], True),  # no two large ones to lie between
        ([(80, 60, 6, 5, True)], True),
        ([(300, 200, 6, 1, False), (80, 60, 6, 3, True)], True),
        ([(300, 200, 6, 2, False), (80, 60, 6, 3, True)], True),
        ([(300, 200, 6, 2, False), (310, 60, 6, 1, True)], False),  # past the edge of both
        ([(100, 100, 6, 4, False)], True),
        ([(30, 30, 6, 1, False), (500, 20, 6, 1, False)], False),
        ([(450, 320, 6, 1, False)], False),
        ([(20, 20, 21, 1, False)], False),  # higher than its base is wide
    ],
)  # fmt: skip
def test_odd_orders_keep_every_rule(parts, fits):
    problem = _ask(parts, MAILER)
    answer = solve_problem(problem)
    assert (answer["cost"] is not None, Exhausted(problem).find_cost() is not None) == (fits, fits)
    if fits:
        check(msgspec.to_builtins(problem), answer)


@pytest.mark.slow
def test_a_few_pieces_are_never_dearer():
    """Cheaper they can be: outer layers are drawn apart here, which `exhausted` does not try."""
    chance = random.Random(66)
    words = [compare(draw_few(chance))[0] for _ in range(60)]
    assert words.count("dearer") == 0
    assert words.count("the same") > 40
