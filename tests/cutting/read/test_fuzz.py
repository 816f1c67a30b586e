"""Random and mutated programs: no crash, no hang, both readers agree."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

pytestmark = pytest.mark.slow

HOME = Path(__file__).parent.parent.parent.parent
EACH = 10_000  # inputs of each of two processes: a fiftieth of a whole campaign


@pytest.mark.long
def test_twenty_thousand_inputs():
    """In processes of their own: both cores, and no coverage, which would double the time."""
    place = {k: v for k, v in os.environ.items() if not k.startswith("COV")}
    running = [
        subprocess.Popen(
            [sys.executable, "-m", "tests.fuzz", str(EACH), str(first), "--json"],
            stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, cwd=HOME,
            env={**place, "PYTHONPATH": str(HOME)},
        )
        for first in (0, EACH)
    ]  # fmt: skip
    for process in running:
        out, problem = process.communicate(timeout=900)
        assert process.returncode == 0, problem
        tally = json.loads(out)
        assert tally["tried"] == EACH
        assert tally["mutated"] >= EACH / 2
        assert tally["past_20"] >= 0.3 * tally["mutated"]
        assert tally["slowest"] < 5
        assert tally["most_moves"] < 500_000
