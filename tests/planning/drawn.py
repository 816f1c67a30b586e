"""Problems of sheets of many kinds, drawn from their written description; small enough to try all.

What they may hold follows the description alone: decimals, files for nothing, parts that nobody
needs or no file makes, fields left out, chances that are just reached.
"""

from random import Random
from typing import Any

Problem = dict[str, Any]
PARTS = ("a", "b", "c", "d")
PAIRS = ((0.9, 0.9), (0.5, 0.5), (0.8, 0.8), (0.75, 0.9375), (0.5, 0.875), (1, 0.95), (1.0, 0.5))


def draw_small(seed: int) -> Problem:
    """A problem of one to four parts and up to seven files; now and then an odd one."""
    chance = Random(f"sheets {seed}")
    parts = PARTS[: chance.randint(1, 4)]
    most = {1: 400, 2: 60, 3: 22, 4: 11}[len(parts)]
    problem: Problem = {
        "files": [_draw_file(chance, n, parts) for n in range(chance.randint(1, 7))],
        "need": {p: chance.randint(0, most) for p in parts if chance.random() < 0.9},
        "over_cost": chance.choice((0, 0, 0.05, 0.4, 2, round(chance.uniform(0, 9), 3))),
    }
    if chance.random() < 0.6:
        _add_loss(chance, problem, parts)
    if chance.random() < 0.2:
        problem["need"]["made by none"] = chance.randint(0, 40)
    if chance.random() < 0.05:
        _make_odd(chance, problem)
    return problem


def _draw_file(chance: Random, number: int, parts: tuple[str, ...]) -> Problem:
    """A file: its minutes whole, broken or none, its fixed minutes at times left out."""
    made = chance.sample(parts, chance.randint(1, len(parts)))
    file: Problem = {
        "name": chance.choice((f"f{number}", f"FRAME {number}", f"Träger-{number}", str(number))),
        "minutes": chance.choice((0, chance.randint(1, 90), round(chance.uniform(0.1, 90), 2),
                                  chance.uniform(1, 60))),
        "makes": {p: chance.choice((chance.randint(1, 3), chance.randint(1, 24))) for p in made},
    }  # fmt: skip
    if chance.random() < 0.9:
        fixed = chance.choice((0, chance.randint(1, 60), round(chance.uniform(1, 400), 1)))
        file["fixed"] = fixed
    return file


def _add_loss(chance: Random, problem: Problem, parts: tuple[str, ...]) -> None:
    """Chances that a piece is good, and a certainty: either may be left out, or just reached."""
    kept = chance.random()
    pair = chance.choice(PAIRS)
    if kept > 0.1:
        problem["good"] = {p: chance.choice((pair[0], 1, round(chance.uniform(0.6, 1), 3)))
                           for p in parts if chance.random() < 0.8}  # fmt: skip
    if kept < 0.9:
        problem["certainty"] = chance.choice((pair[1], 0.95, round(chance.uniform(0.3, 0.999), 3)))


def _make_odd(chance: Random, problem: Problem) -> None:
    """What a program may trip over: nothing needed, no files, whole numbers written broken."""
    odd = chance.randint(0, 4)
    if odd == 0:
        problem["need"] = {}
    elif odd == 1:
        problem["files"] = []
    elif odd == 2:
        problem["need"] = {p: float(n) for p, n in problem["need"].items()}
    elif odd == 3:
        problem["files"][0]["makes"]["d"] = 0
    else:
        problem["remark"] = "a field that nobody has heard of"
