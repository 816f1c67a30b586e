"""A file whose tables an older program derived: at opening they are derived anew."""

import sqlite3
import zlib

import msgspec
import pytest

from station.ledger import closing, rebuild, statements
from station.ledger.closing import SEAL, Closing
from station.ledger.faults import Damaged
from station.ledger.ledger import Ledger
from tests.ledger.toy import COUNTED, act, opened, tables_of

TALLY = (
    'CREATE TABLE tally ( hour TEXT NOT NULL, frm TEXT NOT NULL, "to" TEXT NOT NULL,'
    " part TEXT NOT NULL, qty INTEGER NOT NULL,"
    ' PRIMARY KEY (hour, frm, "to", part) ) WITHOUT ROWID, STRICT'
)
SUMS = 'SELECT hour, frm, "to", part, sum(qty) FROM tally GROUP BY 1, 2, 3, 4'


def make_older(path):
    """Makes the file what the program of before left: narrow sums, and no readings."""
    plain = sqlite3.connect(path)
    sums = plain.execute(SUMS).fetchall()
    plain.execute("DROP TABLE tally")
    plain.execute("DROP TABLE reading")
    plain.execute(TALLY)
    plain.executemany("INSERT INTO tally VALUES (?, ?, ?, ?, ?)", sums)
    for row in plain.execute("SELECT number, digest, books FROM closing").fetchall():
        plain.execute("UPDATE closing SET books = ?", (older_books(*row),))
    plain.execute("UPDATE local SET value = '1' WHERE key = 'format'")
    plain.commit()
    plain.close()


def older_books(number, digest, books):
    """The same closing as the program of before packed it."""
    at, balance, fact, tally, *_ = msgspec.msgpack.decode(zlib.decompress(books[SEAL:]))
    rows = [at, balance, fact, [row[:5] for row in tally]]
    packed = zlib.compress(msgspec.msgpack.encode(rows))
    return closing._seal(number, digest, packed) + packed


def filled(folder):
    """A file with some history, and what its tables hold."""
    ledger = opened(folder)
    for n in range(6):
        ledger.record(act(f"a{n}", batch=f"0041{n % 2}", at=f"2026-11-25T1{n}:00:00"))
    ledger.undo("a5", act("back", "undo"))
    return ledger


def test_an_older_file_is_derived_anew(tmp_path):
    ledger = filled(tmp_path)
    before = tables_of(ledger)
    ledger.close()
    make_older(ledger.path)
    ledger = opened(tmp_path)
    assert tables_of(ledger) == before
    assert ledger.check() == []
    in_file = ledger._store.run("SELECT value FROM local WHERE key = 'format'").fetchone()
    assert (*in_file, ledger.local("format")) == (str(statements.LAYOUT),) * 2
    assert ledger.record(act("on")).entry == "on"
    ledger.close()
    ledger = opened(tmp_path)
    assert ledger.check() == []
    ledger.close()


def stop(*_):
    """Somebody ends the program."""
    raise KeyboardInterrupt


def test_stopped_in_between_it_is_as_it_was(tmp_path, monkeypatch):
    ledger = filled(tmp_path)
    before = tables_of(ledger)
    ledger.close()
    make_older(ledger.path)
    with monkeypatch.context() as patch:
        patch.setattr(rebuild, "fill", stop)
        with pytest.raises(KeyboardInterrupt):
            opened(tmp_path)
    plain = sqlite3.connect(ledger.path)
    assert len(plain.execute("SELECT * FROM tally").fetchall()[0]) == 5
    plain.close()
    ledger = opened(tmp_path)
    assert tables_of(ledger) == before
    ledger.close()


def test_an_older_short_history_goes_on_from_its_closing(tmp_path):
    ledger = filled(tmp_path)
    before = tables_of(ledger)
    ledger.drop_until(4)
    ledger.close()
    make_older(ledger.path)
    ledger = opened(tmp_path)
    assert ledger.begins()[0] == 4
    assert tables_of(ledger)[:3] == before[:3]
    assert ledger.check() == []
    assert len(ledger.view.series("part/014", COUNTED)) == 1  # none of before the closing
    ledger.drop_until(6)
    assert ledger.check() == []
    assert tables_of(ledger)[:3] == before[:3]
    ledger.close()


def test_an_older_closing_keeps_its_sums(tmp_path):
    ledger = filled(tmp_path)
    ledger.drop_until(4)
    row = ledger._store.run("SELECT number, digest, books FROM closing").fetchone()
    begin, books = closing.opened(Closing(*row))
    found = closing.opened(Closing(row[0], row[1], older_books(*row)))
    assert (found[0], found[1].tally) == (begin, books.tally)
    assert (found[1].balance, found[1].fact) == (books.balance, books.fact)
    assert found[1].reading == {}
    ledger.close()


@pytest.mark.slow
def test_an_older_file_that_cannot_be_derived_is_damaged(tmp_path):
    ledger = filled(tmp_path)
    ledger.drop_until(4)
    ledger.close()
    make_older(ledger.path)
    plain = sqlite3.connect(ledger.path)
    plain.execute("UPDATE closing SET books = x'00'")
    plain.commit()
    plain.close()
    with pytest.raises(Damaged):
        opened(tmp_path)
    opened(tmp_path).close()


@pytest.mark.slow
def test_an_older_backup_is_restored(tmp_path):
    ledger = filled(tmp_path)
    before = tables_of(ledger)
    ledger.backup(tmp_path / "copy")
    ledger.close()
    make_older(tmp_path / "copy")
    Ledger.restore(tmp_path / "copy", ledger.path)
    ledger = opened(tmp_path)
    assert tables_of(ledger) == before
    ledger.close()
