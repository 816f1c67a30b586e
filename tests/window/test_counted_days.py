"""The days of what was counted, and of what a screen says, through the real screen."""

import pytest

from tests.window.played import play_day

pytestmark = pytest.mark.slow  # plays whole days through the window

DAYS = {  # by what was seen: the day, and its way on
    "half-counted work is dropped": ("32", "11", "53"),
    "one number moves a heap": ("33_one", "36"),
    "a dead end": ("40", "41", "49", "37", "51", "35", "09"),
    "undo reaches one act": ("52",),
    "what left is written over": ("34", "38"),
    "anybody may act": ("39", "54"),
    "a story that is another": ("16",),
    "a screen says what is not so": ("84",),
}


@pytest.mark.parametrize("name", [day for days in DAYS.values() for day in days])
def test_a_day_at_the_window(name, screen, stage):
    play_day(name, screen, stage)
