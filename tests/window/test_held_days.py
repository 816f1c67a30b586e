"""The days of what is held back, and of what can hurt, through the real screen."""

import pytest

from tests.window.played import play_day

pytestmark = pytest.mark.slow  # plays whole days through the window

DAYS = {  # by what was seen: the day, and its way on
    "held pieces leave": ("61",),
    "what differs goes on": ("31_differs", "47", "62"),
    "a first-off vanishes": ("31_first", "46"),
    "a number goes to another size": ("48", "63"),
    "a router runs on unseen": ("33_restart", "44"),
    "a refusal leaves something armed": ("30", "66"),
    "a revision is said to be the same": ("64",),
    "nobody is told what can hurt": ("65",),
}


@pytest.mark.parametrize("name", [day for days in DAYS.values() for day in days])
def test_a_day_at_the_window(name, screen, stage):
    play_day(name, screen, stage)
