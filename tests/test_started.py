"""The seconds that are left to think, where a command's start and end count too."""

import time

from station import started


def test_what_was_taken_is_no_longer_left(monkeypatch):
    monkeypatch.setattr(started, "LOADED", time.perf_counter())
    monkeypatch.setattr(started, "LOST", 0.0)
    monkeypatch.setattr(started, "BEFORE", 0.0)
    fresh = started.count_seconds_left(1000.0)
    assert 900.0 < fresh < 1000.0 - started.SPARE
    monkeypatch.setattr(started, "LOST", 40.0)
    assert started.count_seconds_left(1000.0) < fresh - 39.0


def test_a_process_goes_on_for_an_earlier_one(monkeypatch):
    monkeypatch.setenv(started.BEGAN, str(time.time() - 7.0))
    assert 7.0 <= started._find_lost() < 60.0
    assert started._find_lost() == 0.0  # no process of its own goes on for it
    monkeypatch.setenv(started.BEGAN, "no time")
    assert started._find_lost() == 0.0
