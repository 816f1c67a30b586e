"""The least cost of a small problem of sheets, and the pieces wanted, in tables and fractions.

Nothing of the program is used, and no solver: a table holds the least cost for whatever may still
be lacking of each part, and one file after another is added to it, sheet by sheet.
"""

from fractions import Fraction
from math import comb, inf

import numpy as np
from numpy.typing import NDArray

Table = NDArray[np.float64]  # the least cost, by what still lacks of each part


def count_wanted(need: int, good: str, certainty: str) -> int:
    """The least n of which `need` are good with the certainty; exact, from decimals as written."""
    chance, sure, n = Fraction(good), Fraction(certainty), need
    while need and _find_enough(n, need, chance) < sure:
        n += 1
    return n


def _find_enough(n: int, need: int, chance: Fraction) -> Fraction:
    """The chance that at least `need` of n are good: the binomial distribution's upper end."""
    few = sum(comb(n, k) * chance**k * (1 - chance) ** (n - k) for k in range(need))
    return 1 - few


def find_least(problem: dict, wanted: dict[str, int]) -> float:
    """The least cost of any cover; parts that no file makes cost nothing."""
    files = [(f, {p: n for p, n in f["makes"].items() if n}) for f in problem["files"]]
    made = sorted({p for _, makes in files for p in makes})
    over = problem.get("over_cost", 0.0)
    table: Table = np.full([wanted.get(p, 0) + 1 for p in made], inf)
    table[tuple(size - 1 for size in table.shape)] = 0.0  # all of it lacks, nothing is cut
    for file, makes in files:
        cost = file["minutes"] + over * sum(makes.values())
        most = max((-(-wanted.get(p, 0) // n) for p, n in makes.items()), default=0)
        tried = table + file.get("fixed", 0.0)
        for _ in range(most):
            tried = _cut_sheet(tried, [makes.get(p, 0) for p in made]) + cost
            table = np.minimum(table, tried)
    return float(table.flat[0]) - over * sum(wanted.get(p, 0) for p in made)


def _cut_sheet(table: Table, pieces: list[int]) -> Table:
    """The table once one more sheet is cut: of each part so many fewer lack, none at the least."""
    for axis, n in enumerate(pieces):
        if n:
            rows = np.moveaxis(table, axis, 0)
            after = np.full_like(rows, inf)
            after[0] = rows[: n + 1].min(axis=0)
            after[1 : max(1, len(rows) - n)] = rows[n + 1 :]
            table = np.moveaxis(after, 0, axis)
    return table
