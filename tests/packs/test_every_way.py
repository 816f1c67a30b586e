"""A few pieces in every way: layers, outer layers and shares of two packs, worked out by hand."""

import msgspec
import pytest

from station.commands.pack import PackingProblem, solve_problem
from station.packs.every_way import EveryWay
from station.packs.messages import PackPart
from station.packs.one_layer import LayerRoom, LayerWays, TooManyWaysError
from tests.packs.test_ship import STICKS, check


def lay(parts, long, wide, high, inner=None):
    """Lays parts of (length, width, thickness, count, small) in one layer; None: not so."""
    ways = LayerWays([PackPart(f"p{n}", *part) for n, part in enumerate(parts)], 10_000)
    ways.begin_search()
    room = LayerRoom(long, wide, *(inner or (long, wide)))
    return ways.lay(tuple(part[3] for part in parts), room, high)


WHEEL = [
    (60, 40, 6, 4, False),
    (20, 20, 6, 1, False),
]  # round a hole of 20 × 20: no cut goes through


def test_pieces_lie_round_a_hole():
    assert lay(WHEEL, 100, 100, 6)
    assert lay(WHEEL[:1], 100, 100, 6)  # the hole stays empty
    assert lay(WHEEL, 100, 99, 6) is None
    assert lay([WHEEL[0], (21, 20, 6, 1, False)], 100, 100, 6) is None


def test_thin_pieces_lie_in_piles_beside_a_thick_one():
    parts = [(144, 56, 3, 6, False), (95, 21, 12, 1, False)]  # piles of four and two: 2 × 56 + 21
    assert lay(parts, 144, 133, 12)
    assert lay(parts, 144, 132, 12) is None


def test_small_pieces_lie_within_their_part_of_a_layer():
    parts = [(100, 50, 6, 1, False), (40, 50, 6, 1, True)]
    assert lay(parts, 140, 50, 6, (40, 50))  # the small one in the corner
    assert lay(parts, 140, 50, 6, (39, 50)) is None


def ask(parts, containers, steps, most_packs=1):
    """Asks with parts of (length, width, thickness, mass, count, small)."""
    names = "length", "width", "thickness", "mass", "count", "small"
    service = {**STICKS["services"][0], "steps": [{"to_g": g, "price": p} for g, p in steps]}
    problem = {
        "parts": [
            {"part": f"p{n}", **dict(zip(names, part, strict=True))}
            for n, part in enumerate(parts)
        ],
        "containers": [
            {"container": f"c{n}", "flap": 0, "allowance": 0, "mass": 50, "price": 1, **c}
            for n, c in enumerate(containers)
        ],
        "services": [service],
        "max_packs": most_packs,
    }
    answer = solve_problem(msgspec.convert(problem, PackingProblem))
    if answer["packs"]:
        check(problem, answer)
    return answer


def test_two_outer_pieces_are_drawn_apart_over_a_wide_small_one():
    """Two sticks at the bottom, two on top: 300 × 180 is half covered, and 160 is wide."""
    parts = [(300, 45, 6, 60, 4, False), (160, 160, 6, 60, 1, True)]
    box = {"kind": "box", "length": 300, "width": 180, "thickness": 18}
    assert ask(parts, [box], [(1000, 5)])["cost"] == 6
    assert ask(parts, [{**box, "width": 159}], [(1000, 5)])["cost"] is None
    wider = [parts[0], (181, 181, 6, 60, 1, True)]  # past what two sticks may cover
    assert ask(wider, [{**box, "width": 200}], [(1000, 5)])["cost"] is None


def test_any_share_of_two_packs_is_tried():
    """Of 1,600 g neither pack may have more than 830: only 540 + 230 and 420 + 310 + 100 do."""
    parts = [(200, 100, 6, g, 1, False) for g in (310, 540, 100, 420, 230)]
    box = {"kind": "box", "length": 200, "width": 100, "thickness": 100}
    answer = ask(parts, [box], [(880, 2), (5000, 9)], most_packs=2)
    assert answer["cost"] == 6
    assert sorted(p["mass"] for p in answer["packs"]) == [770 + 50, 830 + 50]


def test_what_takes_too_many_ways_is_said():
    parts = [PackPart(f"p{n}", 100 + 7 * n, 50 + 3 * n, 6, 1) for n in range(6)]
    with pytest.raises(TooManyWaysError):
        EveryWay(parts, 1).find_stack((1,) * 6, [(12.0, 210.0, 130.0)], between=False)
    every = EveryWay(parts, 100_000)
    found = every.find_stack((1,) * 6, [(36.0, 140.0, 70.0)], between=False)
    assert [len(layer.piles) for layer in found] == [1] * 6  # each by itself
