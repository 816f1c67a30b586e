import pytest

from tests.kill import BETWEEN_WANTED, kill_often


@pytest.mark.slow
def test_killed_at_random_moments_nothing_acknowledged_is_lost(tmp_path):
    tally, problems = kill_often(tmp_path / "shop.station", 25)
    assert problems == []
    assert tally.between >= 25 * BETWEEN_WANTED
    assert len(tally.acked) > 100
