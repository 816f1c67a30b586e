"""A supervisor's first PIN from the command line."""

import io
import subprocess
import sys
from functools import partial

import argon2
import pytest

from station import bootstrap
from station.commands import main, pin
from station.commands.common import CommandError
from station.desk.pin import agrees
from station.desk.wrong_pins import read_wrong_pins
from station.floor.shared.settling import SettleConcern
from station.ledger.ledger import Ledger
from station.shop.acts import Act
from station.shop.facts import Concern, Worker

AT = "2026-11-25T07:00:00"
WANTED = "A PIN is wanted: type it in a terminal, or send it as a line.\n"


@pytest.fixture(autouse=True)
def hash_lightly(monkeypatch):
    """A new PIN is hashed by the least work that argon2 takes, which is compared by as little."""
    least = partial(argon2.PasswordHasher, time_cost=1, memory_cost=8, parallelism=1)
    monkeypatch.setattr(argon2, "PasswordHasher", least)


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
    monkeypatch.setattr(pin, "ask_pin", lambda _words: typed.pop(0))
    with pytest.raises(CommandError, match=said):
        pin.ask_and_set_pin(ledger, worker, AT)
    assert ledger.view.get(Worker, "01").pin == ""


def test_a_pin_is_asked_for_twice(ledger, monkeypatch):
    monkeypatch.setattr(pin, "ask_pin", lambda _words: "1357")
    assert pin.ask_and_set_pin(ledger, "01", AT) == "Worker 01 has a new PIN"
    assert agrees(ledger.view.get(Worker, "01").pin, "1357")


@pytest.mark.parametrize("how", ["it was forgotten", "nobody here did it"])
def test_a_forgotten_one_is_set_anew_and_everybody_is_told(ledger, monkeypatch, how):
    pin.set_pin(ledger, "01", "1357", AT)
    monkeypatch.setattr(pin, "ask_pin", lambda _words: "8642")
    with pytest.raises(CommandError, match="station pin 01 --forgotten"):
        pin.ask_and_set_pin(ledger, "01", AT)
    assert agrees(ledger.view.get(Worker, "01").pin, "1357")
    pin.ask_and_set_pin(ledger, "01", AT, forgotten=True)
    assert agrees(ledger.view.get(Worker, "01").pin, "8642")
    (told,) = ledger.view.shelf(Concern, "open", 9)
    assert str(told.text).endswith("without the old one")
    assert how in told.choices
    settled = SettleConcern(how=how, approved="01", reason="51")
    act = Act(id="t", kind=settled.kind, at=AT, worker="01", station="1",
              subject=told.key, args=settled)  # fmt: skip
    assert ledger.record(act).entry
    assert ledger.view.shelf(Concern, "open", 9) == ()


def test_a_forgotten_one_is_set_at_no_other_pc(ledger, monkeypatch):
    pin.set_pin(ledger, "01", "1357", AT)
    monkeypatch.setattr(ledger, "station", "3")
    with pytest.raises(CommandError, match="is set at station 1: do it there"):
        pin.ask_and_set_pin(ledger, "01", AT, forgotten=True)


def test_where_nobody_types_it_is_said(ledger, monkeypatch, capsys):
    ledger.close()
    monkeypatch.setattr("sys.stdin", io.StringIO(""))
    assert main.main(["pin", "01", "--data", str(ledger.path.parent)]) == 1
    assert capsys.readouterr().err == WANTED


def test_wrong_ones_at_a_command_are_waited_for_as_on_the_screen(ledger, monkeypatch):
    pin.set_pin(ledger, "01", "1357", AT)
    asked = []
    monkeypatch.setattr(pin, "ask_pin", lambda words: asked.append(words) or "1111")
    for _ in range(5):
        assert not pin.ask_for_supervisor(ledger, "01", AT)
    with pytest.raises(CommandError, match="Too many wrong PINs: wait 1 min"):
        pin.ask_for_supervisor(ledger, "01", AT)
    assert len(asked) == 5  # none is asked for that would not be compared
    monkeypatch.setattr(pin, "ask_pin", lambda _words: "1357")
    assert pin.ask_for_supervisor(ledger, "01", "2026-11-25T07:01:00")
    assert not read_wrong_pins(ledger).number


def test_a_second_pin_is_set_in_the_office_alone(ledger):
    pin.set_pin(ledger, "01", "1357", AT)
    with pytest.raises(CommandError, match="This shop has a supervisor's PIN"):
        pin.ask_and_set_pin(ledger, "01", AT)


def test_a_list_that_wants_a_pin_says_one_sentence_where_there_is_no_terminal(ledger, tmp_path):
    pin.set_pin(ledger, "01", "1357", AT)
    ledger.close()
    file = tmp_path / "carts.csv"
    file.write_text("id,name\n9,Cart 9\n", encoding="utf-8")
    command = [sys.executable, "-m", "station", "list-in", "cart", str(file)]
    command += ["--data", str(ledger.path.parent)]

    def run(typed):
        return subprocess.run(command, input=typed, capture_output=True, text=True, check=False)

    none = run("")
    assert (none.returncode, none.stderr) == (1, WANTED)
    assert run("9999\n").stderr == "That is supervisor's work: the PIN is not right.\n"
    done = run("1357\n")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("Taken in: ")
