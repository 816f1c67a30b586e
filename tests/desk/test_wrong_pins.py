"""Wrong PINs: after five one waits, each time twice as long, whatever is done between."""

import pytest

from station import bootstrap
from station.bootstrap import Where
from tests.replay import PIN

ASKED = ("@worker 07", "@area office", "button put_down", "button next_kind", "touch ST200-SET",
         "button release_batch", "router 2", "4", "worker 07")  # fmt: skip


def at(stage, clock):
    stage.clock.pin(f"2026-11-25T{clock}")


def ask(stage):
    for line in ASKED:
        stage.send(line)
    assert stage.desk.question() == "pin"


def enter(stage, pin):
    answer = stage.send(pin).answer
    return f"{answer.said} | {answer.do}"


@pytest.fixture
def tired(stage):
    """Five wrong PINs at 10:00."""
    at(stage, "10:00:00")
    ask(stage)
    for _ in range(4):
        assert enter(stage, "1111") == "That PIN is not right | Enter it again."
    assert enter(stage, "1111") == "That PIN is not right | Wait 1 min, then enter it."
    assert stage.desk.question() == "pin", "what is typed next is no text for the form behind it"
    return stage


def test_no_pin_is_compared_until_the_wait_is_over(tired):
    ask(tired)
    at(tired, "10:00:59")
    assert enter(tired, PIN) == "Too many wrong PINs | Wait 1 min, then enter it."
    assert tired.desk.question() == "pin"
    at(tired, "10:01:00")
    assert enter(tired, PIN).startswith("Batch 00001 is released")


def test_each_wrong_one_after_it_doubles_the_wait(tired):
    for clock, minutes in (("10:05:00", 2), ("10:10:00", 4), ("10:20:00", 8), ("10:40:00", 16)):
        at(tired, clock)
        ask(tired)
        said = f"That PIN is not right | Wait {minutes} min, then enter it."
        assert enter(tired, "1111") == said
    at(tired, "10:55:59")
    ask(tired)
    assert enter(tired, PIN) == "Too many wrong PINs | Wait 1 min, then enter it."


def test_it_never_waits_longer_than_an_hour(tired):
    for n in range(10):
        at(tired, f"{11 + n}:30:00")
        ask(tired)
        last = enter(tired, "1111")
    assert last == "That PIN is not right | Wait 60 min, then enter it."


@pytest.mark.parametrize("between", ["restart", "@area popping", "button sign_out", "@worker 01"])
def test_it_waits_whatever_is_done_between(tired, between):
    tired.send(between)
    ask(tired)
    assert enter(tired, PIN).startswith("Too many wrong PINs")


def test_single_wrong_ones_are_counted_over_several_questions(stage):
    at(stage, "10:00:00")
    for _ in range(2):
        ask(stage)
        enter(stage, "1111")
        enter(stage, "1111")
        stage.send("button put_down")
        stage.send("restart")
    ask(stage)
    assert enter(stage, "1111") == "That PIN is not right | Wait 1 min, then enter it."


def test_an_act_between_forgets_nothing(tired):
    tired.send("button area_loading")
    tired.send("@router R1")
    assert tired.send("button stop").answer.tone
    assert tired.send("reason 33").entry
    ask(tired)
    assert enter(tired, PIN).startswith("Too many wrong PINs")


def test_a_right_one_begins_anew(tired):
    at(tired, "10:02:00")
    ask(tired)
    enter(tired, PIN)
    tired.send("button lock")
    ask(tired)
    assert enter(tired, "1111") == "That PIN is not right | Enter it again."


def test_a_clock_that_was_set_back_neither_shortens_the_wait_nor_locks_for_long(tired):
    at(tired, "03:00:00")
    ask(tired)
    assert enter(tired, PIN).startswith("Too many wrong PINs")
    at(tired, "03:01:01")
    assert enter(tired, PIN).startswith("Batch 00001 is released")


def test_a_text_station_beside_the_window_has_no_tries_of_its_own(tired):
    ledger, clock = tired.ledger, tired.clock
    beside = bootstrap.make_desk(ledger, Where(area="office"), clock, ids=tired.new_id, own="b/")
    window, tired.desk = tired.desk, beside
    ask(tired)
    assert enter(tired, PIN).startswith("Too many wrong PINs")
    at(tired, "10:02:00")
    assert enter(tired, "1111") == "That PIN is not right | Wait 2 min, then enter it."
    tired.desk = window
    at(tired, "10:03:00")
    ask(tired)
    assert enter(tired, PIN) == "Too many wrong PINs | Wait 1 min, then enter it."
