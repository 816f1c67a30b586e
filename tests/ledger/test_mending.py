"""Mending a damaged file: what comes behind a damage counts, and what was altered needs a look."""

import sqlite3
from contextlib import closing

import pytest

from station.ledger import progress
from station.ledger.faults import Damaged
from station.ledger.ledger import Ledger
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
