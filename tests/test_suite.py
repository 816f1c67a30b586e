"""What the suite holds of itself: no slow test goes unmarked, and the longest begin first."""

import time
from types import SimpleNamespace

import pytest

from tests.conftest import pytest_collection_modifyitems, pytest_runtest_call


def run(limit, marked, work):
    """Lets a test do its work between the two halves of the hook."""
    item = SimpleNamespace(
        config=SimpleNamespace(getoption=lambda _name: limit),
        get_closest_marker=lambda _name: marked,
    )
    around = pytest_runtest_call(item)
    next(around)
    work()
    with pytest.raises(StopIteration) as ended:
        around.send("done")
    return ended.value.value


def think():
    until = time.process_time() + 0.1
    while time.process_time() < until:
        pass


def test_what_takes_too_long_fails_unless_it_is_marked():
    with pytest.raises(pytest.fail.Exception, match=r"took 0\.1 s: mark it slow"):
        run(0.05, None, think)
    assert run(0.05, "slow", think) == "done"
    assert run(5, None, think) == "done"
    assert run(None, None, think) == "done"


def test_a_test_that_only_waits_is_not_slow():
    assert run(0.05, None, lambda: time.sleep(0.1)) == "done"


@pytest.mark.parametrize(
    ("processes", "wanted"), [(None, "LMNabcdef"), (2, "LNabcMdef"), (3, "LabMcdNef")]
)
def test_each_process_begins_with_its_share_of_the_longest(processes, wanted):
    given = {} if processes is None else {"workerinput": {"workercount": processes}}
    items = [
        SimpleNamespace(letter=x, get_closest_marker=lambda _, x=x: x.isupper())
        for x in "aLbcMdeNf"
    ]
    pytest_collection_modifyitems(SimpleNamespace(**given), items)
    assert "".join(item.letter for item in items) == wanted
