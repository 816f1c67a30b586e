import pytest

from tests.many import treat

pytestmark = pytest.mark.slow


def test_badly_treated_nothing_is_lost_and_nothing_is_twice(tmp_path):
    words, problems = treat(tmp_path, kills=6, stops=2, stations=3)
    assert problems == [], words
