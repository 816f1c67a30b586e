"""``station check``: advises, mends when asked to, and holds a witness against the history."""

import sqlite3
from contextlib import closing

import pytest

from station import bootstrap
from station.bootstrap import FILE, open_ledger
from station.commands.main import main
from station.ledger.sharing import DATABASE
from tests.replay import START, small_shop

NOW = "2026-11-25T10:42:00"


@pytest.fixture
def data(tmp_path):
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), NOW, stock=START)
    return tmp_path


@pytest.fixture
def spoilt(data):
    with closing(sqlite3.connect(data / FILE)) as plain:
        plain.execute("UPDATE fact SET rank = 'x' WHERE key = (SELECT min(key) FROM fact)")
        plain.commit()
    return data


def test_it_says_what_to_do(spoilt, capsys):
    assert main(["check", "--data", str(spoilt)]) == 1
    told = capsys.readouterr().out
    assert "The table fact differs in 1 row" in told
    assert "station check --mend" in told


def test_an_old_database_of_the_shop_is_told(data, capsys):
    with open_ledger(data) as ledger:
        ledger.set_local(DATABASE, "old")
    assert main(["check", "--data", str(data)]) == 0
    told = capsys.readouterr().out
    assert "types station update-shop URL." in told
    assert "Sound" in told


def test_it_mends(spoilt, capsys):
    assert main(["check", "--mend", "--data", str(spoilt)]) == 0
    told = capsys.readouterr().out
    assert "nothing is missing" in told
    assert told.rstrip().endswith("every count follows from it.")
    assert main(["check", "--data", str(spoilt)]) == 0


def test_it_mends_what_a_check_before_it_has_found(spoilt, capsys):
    """As its advice says to; it was mended, with an exit code as if it were not."""
    assert main(["check", "--data", str(spoilt)]) == 1
    capsys.readouterr()
    assert main(["check", "--mend", "--data", str(spoilt)]) == 0
    told = capsys.readouterr().out
    assert "nothing is missing" in told
    assert told.rstrip().endswith("every count follows from it.")


def test_it_mends_though_a_witness_is_asked_for_too(spoilt, capsys):
    """It was mended unasked, or not though asked, wherever the witness was of another history."""
    asked = ["check", "--data", str(spoilt), "--witness", "2-0123456789"]
    assert main(asked) == 1
    told = capsys.readouterr().out
    assert "Another history" in told
    assert "station check --mend" in told
    assert not list(spoilt.glob("*.damaged*"))
    assert main([*asked, "--mend"]) == 1
    told = capsys.readouterr().out
    assert "nothing is missing" in told
    assert "Another history" in told
    assert "Sound" not in told
    assert list(spoilt.glob("*.damaged*"))


def test_a_history_that_was_edited_and_chained_anew_is_told_by_its_witness(data, capsys):
    with open_ledger(data) as ledger:
        witness = ledger.witness()
    assert main(["check", "--witness", witness, "--data", str(data)]) == 0
    assert "Borne out" in capsys.readouterr().out
    number, _, digest = witness.partition("-")
    other = f"{number}-{'0' * len(digest)}"
    assert main(["check", "--witness", other, "--data", str(data)]) == 1
    assert "Another history" in capsys.readouterr().out
    assert main(["check", "--witness", "rubbish", "--data", str(data)]) == 1
    assert "is no witness" in capsys.readouterr().err


def test_where_an_empty_file_was_set_aside_nobody_is_sent_to_begin_anew(data, capsys):
    (data / FILE).write_bytes(b"")
    (data / f"{FILE}.noted").unlink()
    assert main(["check", "--data", str(data)]) == 1
    assert "Nothing of the shop could be read" in capsys.readouterr().err
    for command in ("check", "state", "scan"):
        assert main([command, "--data", str(data)]) == 1
        told = capsys.readouterr().err
        assert f"set aside as {FILE}.empty-" in told
        assert "station restore FILE" in told
        assert "Open it once" not in told
