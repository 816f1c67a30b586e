"""Packing forty part types into twelve containers, and what an order of the shop asks.

The problems are drawn by a fixed seed: sheet goods of three thicknesses, of 24 × 8 to 240 × 100
mm, small parts among them. Each is answered once, as a station does that has not seen it.
"""

import gc
import random
from collections.abc import Callable
from time import process_time

from station.commands.pack import PackingProblem, solve_problem
from station.packs.choose import choose_mailer
from station.packs.messages import PackMailer, PackPart, PackProblem
from tests.bench import Bench
from tests.packs.drawn import draw_problem

PROBLEMS = 100


def run(bench: Bench) -> None:
    """Adds the time of a problem of forty parts and twelve containers, and of a shop's order."""
    gc.collect()
    gc.freeze()  # what the bench itself has loaded is no part of an answer
    chance = random.Random(40)
    asked = [draw_problem(chance, 40) for _ in range(PROBLEMS)]
    times = sorted(_time(lambda p=p: solve_problem(p)) for p in asked)
    _add(bench, "Pack of 40 parts, 12 containers", times, 100)
    times = sorted(_time(lambda p=p: choose_mailer(_as_order(p))) for p in _draw_orders(chance))
    _add(bench, "Mailer of an order of 1 to 6 parts", times, 16)
    gc.unfreeze()


def _add(bench: Bench, name: str, times: list[float], limit: float) -> None:
    middle, late = times[len(times) // 2], times[int(len(times) * 0.99)]
    bench.add(f"{name}, p99", late, unit="ms", limit=limit, spread=f"median {middle:.1f}")


def _draw_orders(chance: random.Random) -> list[PackingProblem]:
    return [draw_problem(chance, chance.randint(1, 6)) for _ in range(PROBLEMS)]


def _as_order(problem: PackingProblem) -> PackProblem:
    return PackProblem(
        parts=tuple(
            PackPart(p.part, p.length, p.width, p.thickness, p.count, p.small)
            for p in problem.parts
        ),
        mailers=tuple(
            PackMailer(c.container, c.length, c.width, c.thickness) for c in problem.containers
        ),
        allowance_mm=10.0,
        gap_mm=1.0,
    )


def _time(ask: Callable[[], object]) -> float:
    start = process_time()
    ask()
    return 1000 * (process_time() - start)
