"""Every day in the shop, as in ``python -m tests.replay``."""

import pytest

from tests import replay


@pytest.mark.parametrize("file", sorted(replay.HERE.glob("*.txt")), ids=lambda f: f.stem)
def test_a_day(file):
    lines = replay.play(file)
    assert any(line.startswith(">") for line in lines), "a day has at least one answer"
