"""The days of packing, through the real screen."""

import pytest

from tests.window.played import play_day

pytestmark = pytest.mark.slow  # plays whole days through the window

DAYS = {
    "packed ahead": "81",
    "owed and sent later": "82",
    "one walk": "83",
    "damage counts": "86",
    "in two packs": "89",
    "a bad day": "90",
    "ten orders on one walk": "91",
}


@pytest.mark.parametrize("name", DAYS.values())
def test_a_day_at_the_window(name, screen, stage):
    play_day(name, screen, stage)
