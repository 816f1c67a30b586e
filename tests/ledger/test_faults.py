import os
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from dataclasses import replace
from itertools import count
from pathlib import Path

import pytest

from station.ledger import statements
from station.ledger.faults import (
    AnotherShop,
    Damaged,
    DiskFault,
    DiskFull,
    Fault,
    FormatTooNew,
    InUse,
    NoBackup,
    NoFile,
    NotWritable,
    fault_of,
)
from station.ledger.ledger import Ledger
from station.shop.acts import good
from station.shop.facts import Batch, Concern, Shop
from station.shop.words import say
from tests.ledger.toy import EVERY, RULES, act, opened, tables_of, toy_rule

ERRORS = [
    (sqlite3.SQLITE_BUSY, InUse, "Another program"),
    (sqlite3.SQLITE_READONLY, NotWritable, "cannot be written"),
    (sqlite3.SQLITE_CANTOPEN, NotWritable, "cannot be written"),
    (sqlite3.SQLITE_FULL, DiskFull, "is full"),
    (sqlite3.SQLITE_IOERR | 4 << 8, DiskFault, "disk did not take"),
    (sqlite3.SQLITE_CORRUPT, Damaged, "damaged"),
    (sqlite3.SQLITE_NOTADB, Damaged, "damaged"),
]


@pytest.mark.parametrize(("code", "kind", "words"), ERRORS)
def test_errors_of_the_driver_become_sentences(code, kind, words):
    error = sqlite3.OperationalError("x")
    error.sqlite_errorcode = code
    fault = fault_of(error, Path("shop.station"))
    assert type(fault) is kind
    assert words in str(fault)
    assert "\n" not in str(fault)


def test_an_error_of_ours_is_no_fault():
    error = sqlite3.OperationalError("no such column")
    error.sqlite_errorcode = sqlite3.SQLITE_ERROR
    assert fault_of(error, Path("x")) is None


def test_a_second_program_stops_at_once(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    code = (
        "import sys; from pathlib import Path; from station.ledger.ledger import Ledger\n"
        "try: Ledger(Path(sys.argv[1]), {})\n"
        "except Exception as e: print(type(e).__name__, e)"
    )
    second = subprocess.run(
        [sys.executable, "-c", code, str(ledger.path)],
        capture_output=True,
        text=True,
        timeout=20,
        check=True,
    )
    assert second.stdout.startswith("InUse Another program has shop.station open.")
    with pytest.raises(InUse):
        opened(tmp_path)
    assert ledger.record(act("b")).entry == "b"
    assert ledger.check() == []


def test_a_folder_that_is_not_there(tmp_path):
    with pytest.raises(NotWritable):
        opened(tmp_path / "nowhere")


@contextmanager
def as_nobody() -> Iterator[None]:
    """Runs without the rights of whoever may write everywhere."""
    who = os.geteuid()
    if who == 0:
        os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(who)


@pytest.mark.skipif(not hasattr(os, "seteuid"), reason="rights are set in another way here")
def test_a_folder_that_may_not_be_written():
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        folder.chmod(0o555)
        with as_nobody(), pytest.raises(NotWritable):
            opened(folder)
        folder.chmod(0o755)
        assert list(folder.iterdir()) == []


@pytest.mark.skipif(not hasattr(os, "seteuid"), reason="rights are set in another way here")
@pytest.mark.parametrize("held", [False, True], ids=["at the start", "while it is open"])
def test_a_file_that_may_only_be_read_is_called_so(held):
    """No disk is to be looked after. One that is open already goes on, as the system has it."""
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        with closing(opened(folder)) as ledger:
            ledger.record(act("a"))
            file = ledger.path
            file.chmod(0o444)
            folder.chmod(0o777)
            if held:
                assert ledger.record(act("b")).entry == "b"
        with as_nobody(), pytest.raises(NotWritable):
            opened(folder)
        file.chmod(0o600)
        with closing(opened(folder)) as ledger:
            assert ledger.count() == 1 + held
            assert ledger.check() == []


def test_stopped_at_every_step_of_recording(tmp_path):
    """The database stops at its n-th step, for every n until the act is there.

    Stopped in the last step of the commit it is there although an error is raised; the same
    scan again then finds it recorded. Before that nothing of it is.
    """
    ledger = opened(tmp_path)
    ledger.record(act("before"))
    kept, run = tables_of(ledger), ledger._store.connection
    for stopped in range(5000):
        steps = count()
        run.set_progress_handler(lambda steps=steps, stopped=stopped: next(steps) == stopped, 1)
        with suppress(sqlite3.OperationalError):
            ledger.record(act("after"))
        run.set_progress_handler(None, 0)
        if ledger.count() == 2:
            break
        assert tables_of(ledger) == kept
    assert stopped > 100
    assert tables_of(ledger) != kept
    assert ledger.record(act("after")).entry == "after"
    assert ledger.count() == 2
    assert ledger.check() == []


def test_a_file_that_may_not_be_written(tmp_path):
    ledger = opened(tmp_path)
    ledger._store.run("PRAGMA query_only=ON")  # the driver then refuses as on such a file
    with pytest.raises(NotWritable):
        ledger.record(act("a"))
    ledger._store.run("PRAGMA query_only=OFF")
    assert ledger.record(act("a")).entry == "a"


def test_a_full_disk_records_nothing_and_goes_on_after(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    pages = ledger._store.run("PRAGMA page_count").fetchone()[0]
    ledger._store.run(f"PRAGMA max_page_count={pages + 2}")
    refused = None
    while refused is None:
        before, kept = tables_of(ledger), ledger.count()
        try:
            ledger.record(act(f"b{kept}", batch=f"{kept:05d}"), "x" * 50)
        except DiskFull as fault:
            refused = str(fault)
    assert "Nothing was recorded" in refused
    assert tables_of(ledger) == before
    assert ledger.count() == kept
    assert ledger.check() == []
    ledger._store.run("PRAGMA max_page_count=100000")
    assert ledger.record(act("later")).entry == "later"
    assert ledger.check() == []


def test_a_newer_program_wrote_it(tmp_path):
    ledger = opened(tmp_path)
    ledger.set_local("format", str(statements.LAYOUT + 1))
    ledger.close()
    with pytest.raises(FormatTooNew, match="Update this one first"):
        opened(tmp_path)
    assert (tmp_path / "shop.station").exists()


def filled(folder: Path, count: int = 60) -> Path:
    ledger = opened(folder)
    for n in range(count):
        ledger.record(act(f"a{n}", batch=f"{n:05d}"))
    ledger.set_local("area", "popping")
    ledger.close()
    return ledger.path


@pytest.mark.slow
def test_a_file_that_is_no_database_is_set_aside(tmp_path):
    path = filled(tmp_path)
    path.write_bytes(b"not a database at all" * 100)
    with pytest.raises(Damaged, match=r"set aside as .*Start again") as caught:
        opened(tmp_path)
    assert caught.value.aside.read_bytes().startswith(b"not a database")
    assert caught.value.kept == 0
    assert "60 done from" in str(caught.value)
    ledger = opened(tmp_path)
    assert [e.kind for e in ledger.entries()] == ["mend_history"]


@pytest.mark.slow
def test_what_is_derived_is_damaged_and_all_is_saved(tmp_path):
    path = filled(tmp_path)
    spoil_page(path, "fact")
    ledger = opened(tmp_path)  # not seen yet: looking a big file through takes long
    with pytest.raises(Damaged, match="start it again"):
        read_all(ledger)
    ledger.close()
    with pytest.raises(Damaged) as caught:
        opened(tmp_path)
    assert caught.value.kept == 60
    ledger = opened(tmp_path)
    assert ledger.count() == 60
    assert ledger.local("area") == "popping"
    assert ledger.check() == []
    assert ledger.record(act("a7", batch="00007")).entry == "a7"
    assert ledger.count() == 60


@pytest.mark.slow
def test_entries_before_and_behind_the_damage_are_saved(tmp_path):
    path = filled(tmp_path, 200)
    spoil_page(path, "entry")
    ledger = opened(tmp_path)
    with pytest.raises(Damaged):
        ledger.check()
    ledger.close()
    with pytest.raises(Damaged) as caught:
        opened(tmp_path)
    ledger = opened(tmp_path)
    there = {e.id for e in ledger.entries() if e.kind == "cut"}
    assert len(there) == caught.value.kept
    lost = [n for n in range(200) if f"a{n}" not in there]
    assert 0 < len(lost) < 40  # what stood in the one page
    assert lost[-1] < 199
    (look,) = ledger.facts(Concern)
    assert str(look.text).startswith(
        f"{len(lost)} acts of 25 Nov 10:42 to 25 Nov 10:42 are missing"
    )
    assert ledger.check() == []


def spoil_page(path: Path, table: str) -> None:
    """Overwrites a page in the middle of a table with rubbish."""
    plain = sqlite3.connect(path)
    size = plain.execute("PRAGMA page_size").fetchone()[0]
    pages = (
        [
            row[0]
            for row in plain.execute(
                "SELECT pageno FROM dbstat WHERE name=? AND pagetype='leaf' ORDER BY path",
                (table,),
            )
        ]
        if has_dbstat(plain)
        else leaf_pages(plain, table)
    )
    plain.close()
    with path.open("r+b") as file:
        file.seek((pages[len(pages) // 2] - 1) * size)
        file.write(b"\xa5" * size)


def has_dbstat(connection: sqlite3.Connection) -> bool:
    try:
        connection.execute("SELECT 1 FROM dbstat LIMIT 1")
    except sqlite3.OperationalError:
        return False
    return True


def leaf_pages(connection: sqlite3.Connection, table: str) -> list[int]:
    pytest.skip(f"this driver cannot tell where {table} lies")


def read_all(ledger: Ledger) -> list[object]:
    """Reads every fact through the view, as a day's work would."""
    return [ledger.view.get(Batch, f"{n:05d}") for n in range(60)]


def test_a_changed_entry_is_found(tmp_path):
    path = filled(tmp_path, 20)
    plain = sqlite3.connect(path)
    plain.execute("UPDATE entry SET body=replace(body, ',6,', ',7,') WHERE number=9")
    plain.commit()
    plain.close()
    ledger = opened(tmp_path)
    problems = ledger.check()
    assert any("Entry 9: its digest does not match" in p for p in problems)
    assert any("The table balance differs" in p for p in problems)


CHANGES = {
    "balance": "UPDATE balance SET qty=qty+1 WHERE place='popping/1' AND batch='00003'",
    "fact": "UPDATE fact SET rank='x' WHERE key='batch/00003'",
    "tally": "DELETE FROM tally",
    "reading": "UPDATE reading SET kind='x' WHERE entry='a3'",
    "Entry 5": "UPDATE entry SET subject='x' WHERE number=5",
    "missing": "DELETE FROM entry WHERE number=5",
}


@pytest.mark.parametrize("name", CHANGES)
def test_a_table_that_differs_is_found_and_rebuilt(name, tmp_path):
    path = filled(tmp_path, 20)
    plain = sqlite3.connect(path)
    plain.execute(CHANGES[name])
    plain.commit()
    plain.close()
    ledger = opened(tmp_path)
    assert any(name in p for p in ledger.check())
    if name in statements.DERIVED:
        ledger.rebuild()
        assert ledger.check() == []


@pytest.mark.slow
def test_backup_and_restore(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    number = int(ledger.take_number("batch"))
    ledger.record(act("b"))
    file = tmp_path / "copy.backup"
    ledger.backup(file)
    state = tables_of(ledger)
    ledger.record(act("c"))
    with pytest.raises(InUse):
        Ledger.restore(file, ledger.path)
    ledger.close()
    Ledger.restore(file, ledger.path)
    ledger = opened(tmp_path)
    assert tables_of(ledger) == state
    assert ledger.view.past("c") is None
    assert int(ledger.take_number("batch")) > number + 100
    assert ledger.check() == []
    assert [p.name for p in tmp_path.glob("*before*")]


def test_only_a_sound_backup_is_restored(tmp_path):
    path = filled(tmp_path, 20)
    whole = path.read_bytes()
    bad = tmp_path / "bad.backup"
    for content in (b"", b"rubbish" * 1000, whole[:8192], whole[: len(whole) // 2]):
        bad.write_bytes(content)
        with pytest.raises(Fault):
            Ledger.restore(bad, path)
    with pytest.raises(NoBackup, match="no such file"):
        Ledger.restore(tmp_path / "nothing", path)
    assert path.read_bytes() == whole
    assert not list(tmp_path.glob("*.restoring*"))
    assert opened(tmp_path).count() == 20


def test_a_backup_of_a_newer_program_or_of_another_shop_is_called_so(tmp_path):
    path, bad = filled(tmp_path, 3), tmp_path / "bad.backup"
    for key, value, told in (
        ("format", "999", "bad.backup is no sound backup: a newer program wrote it"),
        ("shop", "other", "bad.backup is no sound backup: it is of another shop"),
    ):
        bad.write_bytes(path.read_bytes())
        with closing(sqlite3.connect(bad)) as plain:
            plain.execute("INSERT OR REPLACE INTO local VALUES (?, ?)", (key, value))
            plain.commit()
        with pytest.raises(NoBackup, match=told):
            Ledger.restore(bad, path, "ours")
    assert opened(tmp_path).count() == 3


@pytest.mark.parametrize("kind", ["mkdir", "mkfifo"])
def test_what_is_no_file_is_called_so(tmp_path, kind):
    if not hasattr(os, kind):
        pytest.skip("this system has none")
    backup = filled(tmp_path, 3).rename(tmp_path / "kept.backup")
    path = tmp_path / "shop.station"
    for left in tmp_path.glob("shop.station*"):
        left.unlink()
    getattr(os, kind)(path)
    for ways in (lambda: opened(tmp_path), lambda: Ledger.restore(backup, path)):
        with pytest.raises(NoFile, match=r"is no file.*station restore FILE"):
            ways()


def test_a_backup_where_none_can_be_written(tmp_path):
    ledger = opened(tmp_path)
    with pytest.raises(NotWritable):
        ledger.backup(tmp_path / "nowhere" / "copy")
    with pytest.raises(NoBackup):
        ledger.backup(ledger.path)
    assert ledger.record(act("a")).entry == "a"


def test_stopped_between_two_renamings(tmp_path):
    path = filled(tmp_path, 20)
    path.rename(tmp_path / "shop.station.new")
    assert opened(tmp_path).count() == 20


def test_the_log_is_kept_small(tmp_path, monkeypatch):
    monkeypatch.setattr("station.ledger.store.LARGEST_LOG", 200_000)
    ledger = opened(tmp_path)
    for n in range(60):
        ledger.record(act(f"a{n}"))
    assert (tmp_path / "shop.station-wal").stat().st_size < 400_000
    ledger.idle()
    assert ledger.check() == []


def test_rules_are_not_needed_to_rebuild(tmp_path):
    path = filled(tmp_path, 20)
    ledger = Ledger(path, {})
    before = tables_of(ledger)
    ledger.rebuild()
    assert tables_of(ledger) == before
    assert RULES


def test_a_file_of_the_first_weeks_is_brought_up(tmp_path):
    path = filled(tmp_path, 5)
    plain = sqlite3.connect(path)
    for table in ("entry", "pending"):
        plain.execute(f"ALTER TABLE {table} ADD COLUMN writes TEXT NOT NULL DEFAULT '[]'")
    plain.commit()
    plain.close()
    ledger = opened(tmp_path)
    ledger.record(act("after"))
    assert ledger.check() == []


def shop_named(folder: Path, name: str, *ids: str) -> Path:
    """A shop's file of that name with a worker's acts of these ids, and a backup of it."""
    folder.mkdir()
    named = toy_rule(
        EVERY, lambda _act, _view: good(say("Named"), sets=(Shop(name=name, id="shop"),))
    )
    with closing(opened(folder, named=named)) as ledger:
        ledger.record(replace(act(f"{ids[0]} named", "named"), worker=""))
        for id_ in ids:
            ledger.record(act(id_))
        ledger.backup(folder / "kept.backup")
    return folder / "shop.station"


def test_a_backup_of_another_shop_is_asked_about_with_both_names(tmp_path):
    path = shop_named(tmp_path / "a", "Bobbins", "a1", "a2")
    shop_named(tmp_path / "b", "Shuttles", "b1")
    before, other = path.read_bytes(), tmp_path / "b" / "kept.backup"
    with pytest.raises(AnotherShop, match=r"“Shuttles”.*“Bobbins”.*--another-shop"):
        Ledger.restore(other, path)
    assert path.read_bytes() == before
    assert not list(path.parent.glob("*.restoring*"))
    with pytest.raises(NoBackup, match="another shop"):  # where PCs share it is never meant
        Ledger.restore(other, path, "s1", another=True)
    Ledger.restore(path.with_name("kept.backup"), path)  # its own goes back without a word
    Ledger.restore(other, path, another=True)
    with closing(opened(tmp_path / "a")) as ledger:
        assert ledger.view.past("b1")
    assert list(path.parent.glob("*before*"))


def test_a_backup_goes_into_a_shop_in_which_nobody_has_worked_yet(tmp_path):
    """A new PC was started once before the old one's backup is put in its place."""
    path = shop_named(tmp_path / "a", "Workshop", "none")
    with closing(sqlite3.connect(path)) as plain:
        plain.execute("DELETE FROM entry WHERE id = 'none'")
        plain.commit()
    shop_named(tmp_path / "b", "Shuttles", "b1")
    Ledger.restore(tmp_path / "b" / "kept.backup", path)
    with closing(opened(tmp_path / "a")) as ledger:
        assert ledger.view.past("b1")
