"""A supervisor's first PIN from the command line."""

import pytest

from station import people
from station.desk.pin import agrees
from station.shop.facts import Worker
from tests.replay import Stage

AT = "2026-11-25T07:00:00"


@pytest.fixture
def ledger(tmp_path):
    stage = Stage(tmp_path)
    yield stage.ledger
    stage.ledger.close()


@pytest.mark.parametrize(
    ("worker", "typed", "said"),
    [
        ("02", ["1357", "1357"], "Worker 02 has a new PIN"),
        ("02", ["1357", "1358"], "The two are not the same: nothing was changed."),
        ("02", ["13", "13"], "A PIN has 4 to 8 digits."),
        ("07", [], "Worker 07 has a PIN; it is changed in the office by a supervisor."),
        ("99", [], "There is no worker 99."),
    ],
)
def test_a_pin_is_asked_for_twice(ledger, monkeypatch, worker, typed, said):
    monkeypatch.setattr("getpass.getpass", lambda _words: typed.pop(0))
    assert people.ask_and_set_pin(ledger, worker, AT) == said
    kept = ledger.view.get(Worker, "02").pin
    assert agrees(kept, "1357") == said.endswith("new PIN")
