"""What the text station does beside its lines."""

import io
import shutil
import sqlite3
from contextlib import closing, suppress
from threading import Event, Thread
from types import SimpleNamespace

import pytest

from station import bootstrap
from station.clock import Clock
from station.commands import main, text_station
from station.files import backups, health
from station.shop.cards import button
from station.shop.codes import write
from station.shop.facts import Shop, Station
from tests.damage import Scans
from tests.ledger.toy import opened
from tests.replay import START, small_shop


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


class Idle(Talk):
    """A talk with a shop that has all."""

    def __init__(self):
        super().__init__()
        self.ledger = SimpleNamespace(is_taking_in=False, not_shared=lambda: 0)

    def step(self):
        self.state = "shared"

    def close(self):
        self.state = "away"


def test_why_the_shop_is_away_is_said_once_and_that_it_is_back():
    """A station that was shut out said nothing at all."""
    shut = "The shop's database does not let this station in."
    talk, said = Talk(("away", shut), ("away", shut), ("shared", ""), ("shared", "")), []
    for _ in range(4):
        text_station._step_sharing(talk, said.append)
    assert said == [f"{shut} Sharing tries again by itself.", "Sharing goes on again."]


def test_a_pc_that_only_has_a_text_station_keeps_the_evening_s_backups_too(
    tmp_path, capsys, monkeypatch
):
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), "2026-11-25T07:00:00", stock=START)

    def scan(now):
        lines = f"{write('batch', '00900', 'A')}\n{button('hold')}\n"
        monkeypatch.setattr("sys.stdin", io.StringIO(lines))
        words = ["scan", "--area", "trimming", "--worker", "05", "--now", now]
        assert main.main([*words, "--data", str(tmp_path)]) == 0
        out, told = capsys.readouterr()
        assert '"entry": "' in out
        made = {file.name[5:18] for file in (tmp_path / "backups").glob("*.db")}
        return made, told

    first = {"20261125-1000"}  # before this program went on
    assert scan("2026-11-25T10:00:00") == (first, "")
    assert scan("2026-11-25T10:05:00") == (first, "")
    assert scan("2026-11-26T09:00:00") == ({*first, "20261126-0900"}, "")
    monkeypatch.setattr(backups, "find_shop", lambda _view: Shop(id="shop", backup_folder="x"))
    assert scan("2026-11-27T09:00:00")[1] == "No backup: write the whole path of the folder: x\n"


def test_what_is_not_well_is_said_on_standard_error_and_told_to_the_shop(
    tmp_path, capsys, monkeypatch
):
    """A PC with a text station alone told nothing of its disk, its clock or its backups."""
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), "2026-11-25T07:00:00", stock=START)
    disk = SimpleNamespace(free=250 * 10**6)
    monkeypatch.setattr(health.shutil, "disk_usage", lambda _folder: disk)

    def scan(now):
        monkeypatch.setattr("sys.stdin", io.StringIO("".join(f"{n}\n" for n in range(3))))
        words = ["scan", "--area", "trimming", "--worker", "05", "--now", now]
        assert main.main([*words, "--data", str(tmp_path)]) == 0
        with bootstrap.open_ledger(tmp_path) as ledger:
            station = ledger.view.get(Station, "1")
        return capsys.readouterr().err, station.free_mb, station.seen

    full = "Station 1: the disk is nearly full, 250 MB left\n"
    assert scan("2026-11-25T10:00:00") == (full, 250, "2026-11-25T10:00:00")
    disk.free = 9000 * 10**6
    assert scan("2026-11-25T10:05:00") == ("", 9000, "2026-11-25T10:05:00")
    clock = "This PC's clock is wrong: work was done 25 Nov 10:05\n"
    assert scan("2026-11-24T10:00:00")[0] == clock


def test_one_that_never_ends_keeps_each_evening_s_backup_as_well(tmp_path, monkeypatch):
    """It made them at its end alone, and a PC may go on for months."""
    seconds = iter(range(1000))
    monkeypatch.setattr(text_station, "monotonic", lambda: next(seconds))
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), "2026-11-25T07:00:00", stock=START)

    def kept():
        return sorted(file.name[5:18] for file in (tmp_path / "backups").glob("*.db"))

    def lines():
        yield f"{write('batch', '00900', 'A')}\n"
        yield f"{button('hold')}\n"
        yield "@at 2026-11-25T18:00:00\n"
        seen.append(kept())

    seen = []
    monkeypatch.setattr("sys.stdin", lines())
    words = ["scan", "--area", "trimming", "--worker", "05", "--now", "2026-11-25T10:00:00"]
    assert main.main([*words, "--data", str(tmp_path)]) == 0
    assert seen == [["20261125-1800"]]  # the newest of the day, and before the end


def test_lines_that_break_off_end_a_station_that_shares():
    """It stood still for ever with the file in its hand, and nobody could open the shop."""

    def lines():
        yield "1\n"
        raise OSError(5, "Input/output error")

    ended = Event()

    def run():
        with suppress(OSError):
            for _ in text_station._read_and_share(lines(), Idle(), print):
                pass
        ended.set()

    Thread(target=run, daemon=True).start()
    assert ended.wait(10)


@pytest.mark.parametrize("at", ["0001-01-01T00:00:00", "9999-12-31T23:59:59", "2300-01-01"])
def test_a_year_that_no_shop_is_in_is_no_time(at, capsys, tmp_path):
    clock = Clock("2026-11-25T10:42:00")
    assert str(text_station._set_clock(clock, at).answer.said) == f"{at} is no time"
    assert clock() == "2026-11-25T10:42:00"
    with bootstrap.open_ledger(tmp_path):
        pass
    assert main.main(["state", "--data", str(tmp_path), "--now", at]) == 1
    assert capsys.readouterr().err == f"{at} is no time: write 2026-11-25T10:42:00.\n"
