"""Some seeds on every test run; ``python -m tests.simulate 2000`` is the whole campaign."""

import os

import pytest

from tests.simulate.__main__ import WANTED, one, prepare

SEEDS = int(os.environ.get("SIMULATE_SEEDS", "60"))


@pytest.fixture(scope="module", autouse=True)
def founded(tmp_path_factory):
    prepare(tmp_path_factory.mktemp("simulated"))


def test_whatever_happens_nothing_is_lost_and_all_agree():
    results = dict(map(one, range(1, SEEDS + 1)))
    assert {seed: text for seed, text in results.items() if isinstance(text, str)} == {}
    acts = sum(t.acts for t in results.values())
    assert acts > 10 * SEEDS
    assert sum(t.contested for t in results.values()) > WANTED * acts


def test_a_seed_comes_out_the_same_again():
    assert one(7) == one(7)
