"""Finds rows that every whole answer keeps and broken counts break: they raise the proven bound.

Broken counts use a fraction of a file, and pay but that of what it costs once. A file gives no
more of a part than its sheets make, and no more than is wanted, all of it where it is used. So the
less of the two may be taken for each file, and still adds up to what is wanted. Known as (l, S)
inequalities of lot sizing (Barany, Van Roy and Wolsey 1984, from memory).
"""

import time
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from station.planning.search import Counts, Pieces

Figures = NDArray[np.float64]
Row = list[tuple[int, float]]  # (column, factor) pairs, which add up to 1 at least
BROKEN = 1e-3  # share of what is wanted by which a row must be broken
ROUNDS = 40  # at most: the last ones raise the bound by little
ENDED = "HighsModelStatus.kOptimal"
SPARE = 1e-6  # beyond 1: the row holds without being there


class Tight(NamedTuple):
    """A row that adds up to 1 at least, and the part (its number) that it was found for."""

    part: int
    row: Row
    worth: float = 0.0  # minutes by which the cost of broken counts falls without it


class Broken(NamedTuple):
    """What broken counts come to: their cost, and values by column and by row."""

    cost: float
    values: list[float]
    reached: list[float]
    worth: list[float]  # of each row


def read_broken(solver: Any) -> Broken | None:  # noqa: ANN401 - it has no types
    """Reads what a solver has solved; None: it has not ended."""
    if str(solver.getModelStatus()) != ENDED:
        return None
    solution, cost = solver.getSolution(), float(solver.getInfo().objective_function_value)
    return Broken(cost, list(solution.col_value),
                  list(solution.row_value), list(solution.row_dual))  # fmt: skip


def tighten(
    solver: Any,  # noqa: ANN401 - it has no types
    pieces: Pieces,
    known: Broken,
    seconds: float,
) -> tuple[Broken, list[Tight]]:
    """Adds rows to a solver that has solved broken counts, until they break none.

    Gives what they come to then, and the rows. The first columns are the files' sheets.
    """
    until, first = time.perf_counter() + seconds, len(known.reached)
    rows: list[Tight] = []
    for _ in range(ROUNDS):
        found = find_broken(pieces, np.array(known.values))
        left = until - time.perf_counter()
        if not found or left < 0:
            break
        _add_rows(solver, found)
        solver.setOptionValue("time_limit", solver.getRunTime() + left)
        solver.run()
        ended = read_broken(solver)
        if ended is None:
            break
        known = ended
        rows += found
    ends = zip(rows, known.reached[first:], known.worth[first:], strict=True)
    return known, [t._replace(worth=worth) for t, at, worth in ends if at < 1 + SPARE]


def find_broken(pieces: Pieces, values: Figures) -> list[Tight]:
    """Finds the row of each part that broken counts break most, where they break one."""
    makes, wanted = pieces.makes.T, pieces.wanted[:, None]
    sheets = values[: len(pieces.used)]
    used = np.where(pieces.used >= 0, values[pieces.used], np.inf)
    whole = np.where(makes > 0, wanted // np.maximum(makes, 1), 0)  # sheets that are all needed
    rest = np.where(makes > 0, wanted - whole * makes, 0)
    # by sheets and use: each is at least what a file gives, at every whole count of its sheets
    by_sheets = (makes, np.zeros_like(makes))
    by_both = (rest, whole * (makes - rest))
    by_use = (np.zeros_like(makes), np.where(makes > 0, wanted, 0))
    once = np.where(np.isfinite(used), used, 0)
    ways = np.stack([a * sheets + b * once for a, b in (by_sheets, by_both, by_use)])
    ways[1:, :, pieces.used < 0] = np.inf
    best = ways.argmin(axis=0)
    broken = ways.min(axis=0).sum(axis=1) < pieces.wanted * (1 - BROKEN)
    on_sheets = np.choose(best, [a for a, _ in (by_sheets, by_both, by_use)])
    on_use = np.choose(best, [b for _, b in (by_sheets, by_both, by_use)])
    return [
        Tight(int(part), _make_row(pieces, on_sheets[part], on_use[part], pieces.wanted[part]))
        for part in np.flatnonzero(broken)
    ]


def _make_row(pieces: Pieces, on_sheets: Counts, on_use: Counts, wanted: int) -> Row:
    return [
        *((int(f), float(on_sheets[f] / wanted)) for f in np.flatnonzero(on_sheets)),
        *((int(pieces.used[f]), float(on_use[f] / wanted)) for f in np.flatnonzero(on_use)),
    ]


def _add_rows(solver: Any, found: list[Tight]) -> None:  # noqa: ANN401 - it has no types
    rows = [tight.row for tight in found]
    starts = np.cumsum([0, *(len(row) for row in rows[:-1])]).astype(np.int32)
    columns = np.array([column for row in rows for column, _ in row], dtype=np.int32)
    factors = np.array([factor for row in rows for _, factor in row])
    count = len(rows)
    solver.addRows(count, np.ones(count), np.full(count, np.inf), len(columns), starts, columns,
                   factors)  # fmt: skip
