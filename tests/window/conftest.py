import logging

import pytest

from tests.window.ways import on_screen


@pytest.fixture(autouse=True)
def broken_screens():
    """What was written down of screens that cannot be shown.

    Such a screen is painted over by another one: a test that means it empties the list.
    """
    told = []

    class Listener(logging.Handler):
        def emit(self, record):
            if record.getMessage().startswith("screen at"):
                told.append(record.getMessage())

    listener, log = Listener(), logging.getLogger("station")
    log.addHandler(listener)
    yield told
    log.removeHandler(listener)
    assert told == []


@pytest.fixture
def screen(stage, qtbot):
    yield from on_screen(stage, qtbot)
