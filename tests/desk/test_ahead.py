"""What a room thinks about by itself."""

import pytest

from station.desk.ahead import ThinkingAhead


class Job:
    """A job that is over when the test says so."""

    def __init__(self, request):
        self.request, self.over, self.stopped, self.broken = request, False, False, False

    def progress(self):
        return "", 0.0

    def is_over(self):
        return self.over

    def outcome(self):
        if self.broken:
            raise RuntimeError("it broke off")
        return f"thought of {self.request}"

    def stop(self):
        self.stopped = True


class Begun(list):
    """Every job that was begun."""

    def __call__(self, request):
        self.append(Job(request))
        return self[-1]


@pytest.fixture
def begun():
    return Begun()


@pytest.fixture
def ahead(begun):
    return ThinkingAhead(begun, at_once=False)


def test_a_state_is_thought_about_once(ahead, begun):
    for _ in range(3):
        assert not ahead.look("plan", (1,), lambda _memory: "a")
    assert [job.request for job in begun] == ["a"]
    begun[0].over = True
    assert ahead.look("plan", (1,), lambda _memory: "a")
    assert (ahead.thought, ahead.is_thinking) == ("thought of a", False)
    assert not ahead.look("plan", (1,), lambda _memory: "a")
    assert len(begun) == 1


def test_another_state_is_thought_about_once_the_thought_before_is_there(ahead, begun):
    ahead.look("plan", (1,), lambda _memory: "a")
    ahead.look("plan", (2,), lambda _memory: "b")
    assert len(begun) == 1
    begun[0].over = True
    assert ahead.look("plan", (2,), lambda _memory: "b")
    ahead.look("plan", (2,), lambda _memory: "b")
    assert [job.request for job in begun] == ["a", "b"]
    assert ahead.thought == "thought of a"  # until the next is there


def test_leaving_the_area_stops_it_and_forgets(ahead, begun):
    ahead.look("plan", (1,), lambda _memory: "a")
    assert not ahead.look("popping", (1,), None)
    assert (begun[0].stopped, ahead.thought, ahead.is_thinking) == (True, None, False)
    ahead.look("plan", (1,), lambda _memory: "a")
    assert len(begun) == 2


def test_a_thought_that_breaks_off_waits_for_another_state(ahead, begun, caplog):
    ahead.look("plan", (1,), lambda _memory: "a")
    begun[0].over = begun[0].broken = True
    assert not ahead.look("plan", (1,), lambda _memory: "a")
    assert not ahead.look("plan", (1,), lambda _memory: "a")
    assert (len(begun), ahead.thought) == (1, None)
    assert "broke off" in caplog.text
    ahead.look("plan", (2,), lambda _memory: "b")
    assert len(begun) == 2


def test_what_is_read_for_it_is_read_in_slices(ahead, begun):
    slices = []

    def read(memory):
        memory.kept = (memory.kept or 0) + 1
        slices.append(memory.kept)
        return "whole" if memory.kept == 3 else None

    for _ in range(2):
        ahead.look("plan", (1,), read)
        assert (ahead.is_reading, ahead.is_thinking, begun) == (True, True, [])
    ahead.look("plan", (1,), read)
    assert (slices, ahead.is_reading, begun[0].request) == ([1, 2, 3], False, "whole")


def test_where_no_screen_waits_all_is_read_at_once(begun):
    ended = []
    ahead = ThinkingAhead(begun, at_once=True)
    ahead.look("plan", (1,), lambda memory: ended.append(memory.is_time_up()) or "a")
    assert ended == [False]


def test_a_reading_that_raises_is_not_tried_again_and_again(ahead, begun):
    def broken(_memory):
        raise ValueError("no such thing")

    with pytest.raises(ValueError, match="no such thing"):
        ahead.look("plan", (1,), broken)
    assert not ahead.look("plan", (1,), broken)
    assert begun == []


def test_what_is_broken_off_waits_until_the_shop_has_changed(ahead, begun):
    ahead.look("plan", (1,), lambda _memory: "a")
    assert ahead.doing().share == 0.0
    ahead.break_off()
    assert (begun[0].stopped, ahead.is_thinking, ahead.doing()) == (True, False, None)
    assert not ahead.look("plan", (1,), lambda _memory: "a")
    assert len(begun) == 1
    ahead.look("plan", (2,), lambda _memory: "b")
    assert [job.request for job in begun] == ["a", "b"]


def test_a_state_is_thought_about_anew_where_a_person_wants_it(ahead, begun):
    ahead.look("plan", (1,), lambda _memory: "a")
    begun[0].over = True
    ahead.look("plan", (1,), lambda _memory: "a")
    ahead.forget_state()
    ahead.look("plan", (1,), lambda _memory: "b")
    assert [job.request for job in begun] == ["a", "b"]
