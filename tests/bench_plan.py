"""Sheets of many files beside the plain solver, and the shop's own plan of a wide shop.

Problems are drawn by a fixed seed: dense, with costs that fall once for each file used. The plain
solver (HiGHS) gets the same model as it would be written down first, and the same time.
"""

import math
import random
import time
from collections.abc import Mapping
from typing import Any

from station.planning.messages import (
    FileNow,
    PartNow,
    Passage,
    PlanCutting,
    QueuedNow,
    RouterNow,
    Wish,
)
from station.planning.sheets import SheetFile, count_sheets, load_solver
from station.planning.think import run as think
from tests.bench import Bench

SECONDS = 10.0
PROBLEMS = 2
OVER = 0.05
FEW = 100  # files; of more at most half of the plain solver's gap is to be left
# The best covers of the problems of 200 files that any run has found: sheets by number of file.
BEST = (
    {3: 5, 8: 2, 11: 5, 40: 3, 45: 4, 50: 5, 63: 1, 67: 3, 71: 1, 78: 4, 92: 5, 106: 3, 115: 5,
     116: 2, 117: 1, 135: 2, 150: 4, 159: 2, 181: 1, 182: 1, 187: 3, 195: 6},
    {32: 4, 33: 4, 36: 6, 50: 6, 53: 4, 78: 4, 80: 7, 95: 3, 99: 4, 110: 3, 118: 5, 119: 4, 162: 3,
     163: 6, 193: 5, 199: 2},
)  # fmt: skip
PARTS, ORDERS = 300, 400  # of the wide shop


def run(bench: Bench) -> None:
    """Adds how near the answers come to the plain solver's, and the time of a wide shop's plan."""
    load_solver()
    for files, parts in ((40, 120), (200, 120)):
        for seed in range(PROBLEMS):
            _add_problem(bench, files, parts, seed)
    times = []
    for seed in range(5):
        asked = draw_shop(seed)
        began = time.perf_counter()
        think(asked, lambda _stage, _share: None)
        times.append(time.perf_counter() - began)
    name = f"Plan of {PARTS} parts and {ORDERS} orders"
    bench.add(name, max(times), unit="s", limit=2.0, spread=f"least {min(times):.2f}")


def _add_problem(bench: Bench, files: int, parts: int, seed: int) -> None:
    made, need = draw(files, parts, seed)
    plain, bound = solve_plainly(made, need, SECONDS)
    found = count_sheets(made, need, over_cost=OVER, seconds=SECONDS)
    gap, ours = plain - bound, found.objective - found.lower_bound
    told = f"{files} files × {parts} parts, problem {seed + 1}"
    share = 100 * (found.objective - plain) / plain
    bench.add(f"{told}: cost beside the plain solver's", share, unit="%", limit=0.5)
    spread = f"{100 * ours / plain:.1f} of {100 * gap / plain:.1f} %"
    many = 0.5 if files > FEW else None
    bench.add(f"{told}: gap left", ours / max(gap, 1e-9), limit=many, spread=spread)
    if many:
        best = min(count_cost(made, need, BEST[seed]), found.objective, plain)
        above, far = found.objective - best, plain - best
        spread = f"{100 * above / best:.2f} of {100 * far / best:.2f} %"
        share = above / max(far, 1e-9)
        bench.add(f"{told}: above the best cover known", share, limit=many, spread=spread)


def count_cost(
    made: tuple[SheetFile, ...], need: Mapping[str, int], counts: Mapping[int, int]
) -> float:
    """Counts what a cover costs, by sheets of each file; raises ValueError if it lacks a piece."""
    used = [(made[n], sheets) for n, sheets in counts.items()]
    over = {p: sum(f.makes.get(p, 0) * n for f, n in used) - n for p, n in need.items()}
    if min(over.values()) < 0:
        raise ValueError("the cover that is known lacks pieces")
    return math.fsum(f.minutes * n + f.fixed for f, n in used) + OVER * sum(over.values())


def draw(files: int, parts: int, seed: int) -> tuple[tuple[SheetFile, ...], dict[str, int]]:
    """Draws files that make two of five parts each, and what is needed."""
    chance = random.Random(seed)
    names = [f"p{n}" for n in range(parts)]
    made = tuple(
        SheetFile(
            f"f{n}",
            round(chance.uniform(10, 90), 1),
            {p: chance.randint(1, 24) for p in names if chance.random() < 0.4},
            round(chance.uniform(5, 60), 1),
        )
        for n in range(files)
    )
    return made, {p: chance.randint(0, 400) for p in names}


def solve_plainly(
    files: tuple[SheetFile, ...], need: Mapping[str, int], seconds: float
) -> tuple[float, float]:
    """Solves it as it would first be written down; gives its cost and bound."""
    highspy: Any = load_solver()
    solver = highspy.Highs.__mro__[1]()
    for name, value in (("output_flag", False), ("time_limit", seconds), ("mip_rel_gap", 0.0),
                        ("threads", 1)):  # fmt: skip
        solver.setOptionValue(name, value)  # with another count of threads than ours it ends
    lp, count, end = highspy.HighsLp(), len(files), highspy.kHighsInf
    most = [max(math.ceil(need[p] / n) for p, n in f.makes.items()) for f in files]
    wanted = {p: n for p, n in need.items() if n and any(p in f.makes for f in files)}
    rows = [[(n, f.makes[p]) for n, f in enumerate(files) if p in f.makes] for p in wanted]
    rows += [[(n, 1), (count + n, -most[n])] for n in range(count)]
    lp.num_col_, lp.num_row_ = 2 * count, len(rows)
    lp.col_cost_ = [f.minutes + OVER * sum(f.makes.values()) for f in files]
    lp.col_cost_ = [*lp.col_cost_, *(f.fixed for f in files)]
    lp.col_lower_, lp.col_upper_ = [0.0] * (2 * count), [*map(float, most), *[1.0] * count]
    lp.row_lower_ = [*map(float, wanted.values()), *[-end] * count]
    lp.row_upper_ = [*[end] * len(wanted), *[0.0] * count]
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_ = [sum(map(len, rows[:n])) for n in range(len(rows) + 1)]
    lp.a_matrix_.index_ = [column for row in rows for column, _ in row]
    lp.a_matrix_.value_ = [float(factor) for row in rows for _, factor in row]
    lp.integrality_ = [highspy.HighsVarType.kInteger] * (2 * count)
    solver.passModel(lp)
    solver.run()
    info, spared = solver.getInfo(), OVER * sum(wanted.values())
    return info.objective_function_value - spared, info.mip_dual_bound - spared


def draw_shop(seed: int) -> PlanCutting:
    """Draws a wide shop: eight routers, a file for each part and a hundred of several."""
    chance = random.Random(seed)
    parts = [f"p{n}" for n in range(PARTS)]
    routers = [str(n) for n in range(1, 9)]
    sets = [[p] for p in parts] + [chance.sample(parts, 4) for _ in range(100)]
    files = tuple(
        FileNow(
            id=f"f{n}", name=f"f{n}", material="ply",
            makes={p: chance.randint(4, 40) for p in made},
            minutes={r: float(chance.randint(15, 45)) for r in chance.sample(routers, 3)},
        )
        for n, made in enumerate(sets)
    )  # fmt: skip
    wants: dict[str, list[Wish]] = {p: [] for p in parts}
    for order in range(ORDERS):
        due = f"2026-11-{chance.randint(24, 30)}T{chance.randint(8, 15):02d}:00:00"
        for part in chance.sample(parts, 5):
            wants[part].append(Wish(f"o{order}", due, chance.randint(1, 40)))
    return PlanCutting(
        now="2026-11-25T10:00:00",
        parts=tuple(_draw_part(chance, p, tuple(sorted(w, key=lambda w: w.due)))
                    for p, w in wants.items()),
        files=files,
        routers=tuple(RouterNow(id=r, name=r) for r in routers),
        queued=tuple(
            QueuedNow(id=str(n), file=f.id, router=next(iter(f.minutes)), sheets=3, minutes=20.0,
                      makes=f.makes)
            for n, f in enumerate(chance.sample(files, 20))
        ),
    )  # fmt: skip


def _draw_part(chance: random.Random, part: str, wishes: tuple[Wish, ...]) -> PartNow:
    return PartNow(
        id=part, name=part, mark=chance.randint(0, 80), free=chance.randint(0, 120),
        wishes=wishes,
        use=tuple(chance.choice((0, 0, chance.randint(1, 60))) for _ in range(30)),
        passed={"cut": Passage(good=900, lost=chance.randint(0, 40))},
    )  # fmt: skip
