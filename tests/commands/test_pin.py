"""A supervisor's first PIN from the command line."""

import pytest

from station import bootstrap
from station.commands import pin
from station.desk.pin import agrees
from station.ledger.ledger import Ledger
from station.shop.facts import Worker

AT = "2026-11-25T07:00:00"


@pytest.fixture
def ledger(tmp_path):
    made = Ledger(tmp_path / bootstrap.FILE, bootstrap.load_rules(), station="1")
    bootstrap.set_up_shop(made, AT)
    yield made
    made.close()


@pytest.mark.parametrize(
    ("worker", "typed", "said"),
    [
        ("01", ["1357", "1357"], "Worker 01 has a new PIN"),
        ("01", ["1357", "1358"], "The two are not the same: nothing was changed."),
        ("01", ["13", "13"], "A PIN has 4 to 8 digits."),
        ("99", [], "There is no worker 99."),
    ],
)
@pytest.mark.slow
def test_a_pin_is_asked_for_twice(ledger, monkeypatch, worker, typed, said):
    monkeypatch.setattr("getpass.getpass", lambda _words: typed.pop(0))
    assert pin.ask_and_set_pin(ledger, worker, AT) == said
    kept = ledger.view.get(Worker, "01").pin
    assert agrees(kept, "1357") == said.endswith("new PIN")


def test_a_second_pin_is_set_in_the_office_alone(ledger):
    pin.set_pin(ledger, "01", "1357", AT)
    assert pin.ask_and_set_pin(ledger, "01", AT).startswith("This shop has a supervisor's PIN")
