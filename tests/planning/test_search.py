"""A cover of needs bettered by search."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.planning.search import Cover, better_cover
from station.planning.sheets import SheetFile, count_sheets

NOTHING = np.zeros(12, dtype=np.int64)


def make_cover(seed, files=12, parts=20):
    chance = np.random.default_rng(seed)
    makes = chance.integers(0, 30, (files, parts)) * (chance.random((files, parts)) < 0.4)
    makes[chance.integers(0, files, parts), np.arange(parts)] += 5  # every part is made
    return Cover(
        makes=makes,
        cost=chance.uniform(10, 60, files),
        fixed=chance.choice([0.0, 20.0], files),
        wanted=chance.integers(1, 200, parts),
        worth=chance.uniform(0.1, 1.0, parts),
    )


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10_000))
def test_everything_wanted_is_covered_and_no_sheet_is_too_many(seed):
    cover = make_cover(seed)
    counts = better_cover(cover, NOTHING, 0.05, lambda: False)
    assert (counts >= 0).all()
    assert (counts @ cover.makes >= cover.wanted).all()
    for file in np.flatnonzero(counts):
        fewer = counts.copy()
        fewer[file] -= 1
        assert (fewer @ cover.makes < cover.wanted).any()


@pytest.mark.parametrize("seed", range(3))
def test_it_gets_no_dearer_with_time_and_ends_when_it_is_over(seed):
    cover = make_cover(seed)
    at_once = better_cover(cover, NOTHING, 0.0, lambda: False)
    assert cover.count_cost(better_cover(cover, NOTHING, 0.1, lambda: False)) <= cover.count_cost(
        at_once
    )
    over = better_cover(cover, np.full(12, 60), 60.0, lambda: True)
    assert (over @ cover.makes >= cover.wanted).all()


def test_what_the_solver_does_not_end_is_covered_all_the_same():
    chance = np.random.default_rng(1)
    files = tuple(
        SheetFile(f"f{n}", float(chance.uniform(15, 60)),
                  {f"p{p}": int(chance.integers(1, 60)) for p in range(120)
                   if chance.random() < 0.5}, float(chance.choice([0, 10, 30])))
        for n in range(40)
    )  # fmt: skip
    need = {f"p{p}": int(chance.integers(10, 800)) for p in range(120)}
    found = count_sheets(files, need, over_cost=0.01, seconds=0.3)
    for part, wanted in need.items():
        assert sum(f.makes.get(part, 0) * found.counts.get(f.name, 0) for f in files) >= wanted
    assert 0 < found.lower_bound <= found.objective
    assert found.objective < 1.3 * found.lower_bound
