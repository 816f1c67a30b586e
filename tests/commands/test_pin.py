"""A supervisor's first PIN from the command line."""

import io

import pytest

from station import bootstrap
from station.commands import main, pin
from station.commands.common import CommandError
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
        ("01", ["1357", "1358"], "The two are not the same: nothing was changed."),
        ("01", ["13", "13"], "A PIN has 4 to 8 digits."),
        ("99", [], "There is no worker 99."),
    ],
)
def test_what_sets_no_pin_is_an_error(ledger, monkeypatch, worker, typed, said):
    monkeypatch.setattr("getpass.getpass", lambda _words: typed.pop(0))
    with pytest.raises(CommandError, match=said):
        pin.ask_and_set_pin(ledger, worker, AT)
    assert ledger.view.get(Worker, "01").pin == ""


def test_a_pin_is_asked_for_twice(ledger, monkeypatch):
    monkeypatch.setattr("getpass.getpass", lambda _words: "1357")
    assert pin.ask_and_set_pin(ledger, "01", AT) == "Worker 01 has a new PIN"
    assert agrees(ledger.view.get(Worker, "01").pin, "1357")


def test_where_nobody_types_it_is_said(ledger, monkeypatch, capsys):
    ledger.close()
    monkeypatch.setattr("sys.stdin", io.StringIO(""))
    monkeypatch.setattr("getpass.getpass", lambda _words: input())
    assert main.main(["pin", "01", "--data", str(ledger.path.parent)]) == 1
    assert capsys.readouterr().err == "Nobody typed what was asked for.\n"


def test_a_second_pin_is_set_in_the_office_alone(ledger):
    pin.set_pin(ledger, "01", "1357", AT)
    with pytest.raises(CommandError, match="This shop has a supervisor's PIN"):
        pin.ask_and_set_pin(ledger, "01", AT)
