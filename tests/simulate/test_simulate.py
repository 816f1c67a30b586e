"""The whole campaign on every test run, in processes of its own; a few seeds here as well."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.simulate.__main__ import WANTED, Sum, one, prepare

pytestmark = pytest.mark.slow

ROOT = Path(__file__).resolve().parent.parent.parent
SEEDS = int(os.environ.get("SIMULATE_SEEDS", "2000"))
HERE = 25


@pytest.fixture(scope="module", autouse=True)
def founded(tmp_path_factory):
    prepare(tmp_path_factory.mktemp("simulated"))


def test_whatever_happens_nothing_is_lost_and_all_agree():
    done = Sum(first=1)
    for seed in range(1, HERE + 1):
        done.add(*one(seed))
    assert done.failed == {}
    assert done.tally.acts > 10 * HERE
    assert done.tally.contested > WANTED * done.tally.acts


def test_a_seed_comes_out_the_same_again():
    assert one(7) == one(7)


@pytest.mark.long
def test_two_thousand_seeds_hold():
    """Without measuring coverage, which takes several times as long."""
    words = [sys.executable, "-m", "tests.simulate", str(SEEDS)]
    plain = {k: v for k, v in os.environ.items() if not k.startswith("COV_")}
    done = subprocess.run(words, cwd=ROOT, env=plain, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout[-4000:] + done.stderr[-4000:]
    assert f" {SEEDS} held, 0 failed;" in done.stdout
