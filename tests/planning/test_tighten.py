"""Rows that hold in every whole answer, tried out, and what they do to the proven bound."""

from itertools import product

import numpy as np
import pytest

from station.planning.search import Pieces
from station.planning.sheets import SheetFile, count_sheets
from station.planning.tighten import find_broken

MOST = 6  # sheets of a file that are tried


def draw(seed):
    """Three files and three parts; the second file costs nothing once."""
    chance = np.random.default_rng(seed)
    makes = chance.integers(1, 12, (3, 3)) * (chance.random((3, 3)) < 0.8)
    return Pieces(makes, chance.integers(1, 30, 3), np.array([3, -1, 4]))


def broken(seed, count=40):
    """Broken counts of the sheets, and of the use of the first and third file."""
    chance = np.random.default_rng(seed)
    return np.concatenate([chance.uniform(0, 4, (count, 3)), chance.uniform(0, 1, (count, 2))], 1)


@pytest.mark.parametrize("seed", range(12))
def test_every_whole_cover_keeps_the_rows_and_the_broken_counts_break_them(seed):
    pieces, found = draw(seed), []
    for values in broken(seed):
        for tight in find_broken(pieces, values):
            assert sum(factor * values[column] for column, factor in tight.row) < 1
            found.append(tight)
    for sheets in product(range(MOST), repeat=3):
        made = np.array(sheets) @ pieces.makes
        values = [*sheets, float(sheets[0] > 0), float(sheets[2] > 0)]
        for tight in found:
            if made[tight.part] >= pieces.wanted[tight.part]:
                total = sum(factor * values[column] for column, factor in tight.row)
                assert total >= 1 - 1e-9
    assert found


def test_a_file_that_costs_nothing_once_is_taken_by_its_sheets_alone():
    pieces = Pieces(np.array([[5], [4]]), np.array([20]), np.array([2, -1]))
    (tight,) = find_broken(pieces, np.array([1.0, 1.0, 0.01]))
    assert tight.row == [(1, 0.2), (2, 1.0)]


def test_the_bound_knows_what_a_used_file_costs_once():
    # each of two parts by a file of its own, a little of one only: 2 + 2 sheets, 200 for both
    files = (SheetFile("a", 1, {"x": 5, "y": 1}, 100), SheetFile("b", 1, {"y": 5}, 100))
    found = count_sheets(files, {"x": 10, "y": 100})
    assert found.objective == pytest.approx(found.lower_bound)
