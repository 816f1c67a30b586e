"""What the text station does beside its lines."""

import io
import shutil
import sqlite3
from contextlib import closing

from station.clock import Clock
from station.commands import text_station
from tests.damage import Scans
from tests.ledger.toy import opened


def test_its_log_is_moved_into_the_file_while_it_works(tmp_path, monkeypatch):
    """A log that only grows is lost whole where it is lost."""
    seconds = iter(range(1000))
    monkeypatch.setattr(text_station, "monotonic", lambda: next(seconds))
    ledger = opened(tmp_path)
    desk = Scans(ledger)
    text_station.run_text_station(desk, Clock(), io.StringIO("1\n2\n3\n"), [].append, print)
    alone = tmp_path / "alone"
    shutil.copyfile(ledger.path, alone)  # without its log
    ledger.close()
    with closing(sqlite3.connect(alone)) as tables:
        assert tables.execute("SELECT COUNT(*) FROM entry").fetchone() == (3,)


class Talk:
    """A talk with the shop that goes as is laid down: state and reason after each step."""

    def __init__(self, *steps):
        self.steps, self.state, self.why, self.fault = list(steps), "away", "", None

    def step(self):
        self.state, self.why = self.steps.pop(0)


def test_why_the_shop_is_away_is_said_once_and_that_it_is_back():
    """A station that was shut out said nothing at all."""
    shut = "The shop's database does not let this station in."
    talk, said = Talk(("away", shut), ("away", shut), ("shared", ""), ("shared", "")), []
    for _ in range(4):
        text_station._step_sharing(talk, said.append)
    assert said == [f"{shut} Sharing tries again by itself.", "Sharing goes on again."]
