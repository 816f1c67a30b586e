"""Mending a damaged file: what comes behind a damage counts, and what was altered needs a look."""

import os
import shutil
import sqlite3
from contextlib import closing
from pathlib import PureWindowsPath

import pytest

from station.ledger import progress
from station.ledger.faults import Damaged
from station.ledger.last_recorded import note_of
from station.ledger.ledger import Ledger
from station.ledger.log_file import keep_log, kept_log_of, log_of
from station.ledger.salvage import write_uri
from station.ledger.store import suspect_mark
from station.shop.facts import Concern
from tests.ledger.toy import RULES, act, opened


def filled(folder, count):
    ledger = opened(folder)
    for n in range(count):
        ledger.record(act(f"a{n:02}", at=f"2026-11-25T10:{n:02}:00", batch=f"{n % 3:05d}"))
    return ledger


def spoil(path, statement):
    with closing(sqlite3.connect(path)) as plain:
        plain.execute(statement)
        plain.commit()


def mended(folder):
    """The ledger once it is mended, and what was told."""
    ledger = opened(folder)
    assert ledger.check()
    ledger.close()
    with pytest.raises(Damaged) as caught:
        opened(folder)
    return opened(folder), str(caught.value)


def test_who_looks_on_is_told_how_far_mending_is(tmp_path, monkeypatch):
    monkeypatch.setattr(progress, "OFTEN", 0.0)
    filled(tmp_path, 40).close()
    spoil(tmp_path / "shop.station", "DELETE FROM entry WHERE number = 9")
    suspect_mark(tmp_path / "shop.station").touch()
    told = list[str]()
    with pytest.raises(Damaged):
        Ledger(tmp_path / "shop.station", RULES, tell=lambda words: told.append(str(words)))
    begun = "The shop's file is being mended; entries "
    assert told[0] == f"{begun}read: 1"
    assert told[-1] == f"{begun}saved: 39 of 39"


def test_one_entry_lost_costs_that_one_alone(tmp_path):
    ledger = filled(tmp_path, 40)
    before = sum(held.qty for held in ledger.balances() if held.place == "popping/1")
    ledger.close()
    spoil(ledger.path, "DELETE FROM entry WHERE number = 9")
    ledger, told = mended(tmp_path)
    assert "39 entries were saved, 1 done from 25 Nov 10:07 to 25 Nov 10:09 are missing" in told
    assert "station restore" in told
    (look,) = ledger.facts(Concern)
    assert str(look.text).startswith("1 act of 25 Nov 10:07 to 25 Nov 10:09 is missing")
    assert sum(h.qty for h in ledger.balances() if h.place == "popping/1") == before - 6
    assert ledger.check() == []
    assert ledger.record(act("new", batch="00002")).entry == "new"


def test_an_altered_entry_does_not_count_and_needs_a_look(tmp_path):
    filled(tmp_path, 40).close()
    spoil(
        tmp_path / "shop.station",
        "UPDATE entry SET body=replace(body, ',6,', ',7,') WHERE number=9",
    )
    ledger, told = mended(tmp_path)
    assert "what was done from 25 Nov 10:07 to 25 Nov 10:09 needs a look" in told
    looks = {str(c.text) for c in ledger.facts(Concern)}
    assert "An entry of station 1 was left out: its digest does not match" in looks
    assert ledger.check() == []


def test_an_entry_behind_one_whose_digest_is_spoilt_too_is_taken_in(tmp_path):
    """Nothing proves it, and nothing speaks against it: it stands as behind a gap."""
    ledger = filled(tmp_path, 40)
    before = sum(held.qty for held in ledger.balances() if held.place == "popping/1")
    ledger.close()
    spoil(
        tmp_path / "shop.station",
        "UPDATE entry SET body=replace(body, ',6,', ',7,'), digest=zeroblob(32) WHERE number=9",
    )
    ledger, _ = mended(tmp_path)
    there = {entry.id for entry in ledger.entries()}
    assert {f"a{n:02}" for n in range(40)} - there == {"a08"}
    assert sum(h.qty for h in ledger.balances() if h.place == "popping/1") == before - 6
    looks = {str(c.text) for c in ledger.facts(Concern)}
    assert "An entry of station 1 was left out: its digest does not match" in looks
    assert ledger.check() == []


def test_an_altered_entry_whose_text_stands_in_a_backup_is_whole_again(tmp_path):
    ledger = filled(tmp_path, 40)
    (tmp_path / "backups").mkdir()
    ledger.backup(tmp_path / "backups" / "newest.db")
    ledger.close()
    spoil(ledger.path, "UPDATE entry SET body=replace(body, ',6,', ',7,') WHERE number=9")
    ledger, told = mended(tmp_path)
    assert "40 entries were saved, nothing is missing." in told
    assert ledger.count() == 40
    assert ledger.check() == []


def test_acts_that_are_not_there_any_more_are_noticed_though_the_file_is_sound(tmp_path):
    """An older copy put in the place of the file: it was taken for the newest."""
    ledger = filled(tmp_path, 5)
    ledger.idle()
    ledger.close()
    older = ledger.path.read_bytes()
    ledger = filled(tmp_path, 9)
    ledger.close()
    ledger.path.write_bytes(older)
    with pytest.raises(Damaged, match=r"4 done from 25 Nov 10:04 to 25 Nov 10:08 are missing"):
        opened(tmp_path)
    assert opened(tmp_path).check() == []


@pytest.mark.parametrize("since", [-60, 60], ids=["nothing was recorded since", "much was"])
def test_the_work_in_hand_is_the_newest_that_is_found(tmp_path, since):
    """A log kept at a start of long ago brought the hand of that day back."""
    ledger = filled(tmp_path, 5)
    path = ledger.path
    ledger.keep("in the log")
    shutil.copyfile(log_of(path), tmp_path / "log")
    ledger.close()
    with closing(opened(tmp_path)) as ledger:
        ledger.keep("in the file")
    shutil.copyfile(tmp_path / "log", log_of(path))
    keep_log(path)
    log_of(path).unlink()
    noted = kept_log_of(path).stat().st_mtime + since
    os.utime(note_of(path), (noted, noted))
    spoil(path, "DELETE FROM entry WHERE number = 3")
    suspect_mark(path).touch()
    with pytest.raises(Damaged):
        opened(tmp_path)
    with closing(opened(tmp_path)) as ledger:
        assert ledger.draft() == ("in the file" if since > 0 else "in the log")


def test_sqlite_reads_a_file_wherever_it_lies(tmp_path):
    """On Windows a backup in a folder on the network was written, and told as none."""
    name = write_uri(PureWindowsPath("//nas/shop/a copy.db"))
    assert name == "file:////nas/shop/a%20copy.db?immutable=1"
    assert write_uri(PureWindowsPath("C:/shop.db")) == "file:///C:/shop.db?immutable=1"
    ledger = filled(tmp_path, 2)
    ledger.close()
    with closing(sqlite3.connect(write_uri(ledger.path), uri=True)) as read:
        assert read.execute("SELECT COUNT(*) FROM entry").fetchone() == (2,)
    with pytest.raises(sqlite3.OperationalError, match="unable to open"):  # and no wrong name
        sqlite3.connect(name, uri=True)
