"""The backups that a PC keeps by itself."""

import os
import shutil
import sys
import time
from contextlib import closing
from errno import EIO
from pathlib import Path
from unittest.mock import MagicMock

import pytest

from station.files import backups
from station.files.backups import TROUBLE, Backups, keep_away, keep_before_update
from station.files.health import Health
from station.jobs.process import ProcessJob
from station.ledger import kept_backups
from station.ledger.faults import InUse, NoBackup
from station.ledger.kept_backups import Kept, choose_dropped
from station.ledger.ledger import Ledger
from station.shop.facts import Shop
from tests.backups import run
from tests.ledger.toy import RULES, act, opened

MORNING, EVENING, NEXT = "2026-11-25T09:00:00", "2026-11-25T16:00:10", "2026-11-26T09:00:00"


@pytest.fixture
def shop(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a", at=MORNING))
    yield ledger
    ledger.close()


def kept_at(ledger):
    return [one.at for one in ledger.list_backups()]


def test_one_is_made_each_evening_by_itself(shop):
    now = [MORNING]
    kept = Backups(shop, lambda: now[0])
    for now[0] in (MORNING, EVENING, "2026-11-25T16:01:00", "2026-11-26T08:00:00"):
        kept.step()
    assert kept_at(shop) == ["2026-11-25T16:00:00"]
    shop.record(act("b", at=NEXT))
    for now[0] in (NEXT, "2026-11-26T16:30:00"):
        kept.step()
    assert kept_at(shop) == ["2026-11-26T16:30:00", "2026-11-25T16:00:00"]


def test_a_pc_that_was_off_in_the_evening_makes_it_in_the_morning(shop):
    Backups(shop, lambda: NEXT).step()
    assert kept_at(shop) == ["2026-11-26T09:00:00"]


def test_one_is_made_before_another_program_goes_on(shop):
    keep_before_update(shop, MORNING)
    assert len(kept_at(shop)) == 1
    keep_before_update(shop, EVENING)
    assert len(kept_at(shop)) == 1


def test_each_is_proved_once_it_is_written(shop, monkeypatch):
    """A stick or a disk may take what it does not keep."""
    real = shutil.copyfile

    def lie(source, to):
        real(source, to)
        to.write_bytes(to.read_bytes()[:-100] + bytes(100))

    file = shop.keep_backup(EVENING)
    monkeypatch.setattr(shutil, "copyfile", lie)
    with pytest.raises(OSError, match="reads otherwise"):
        keep_away(file, shop.path.parent / "stick", EVENING)
    assert list((shop.path.parent / "stick").iterdir()) == []


def test_a_copy_that_does_not_hold_is_none(shop, monkeypatch):
    shop.keep_backup(MORNING)
    monkeypatch.setattr(shop._history, "number", 7)
    with pytest.raises(NoBackup, match="it ends at entry 1, the history at 7"):
        shop.keep_backup(EVENING)
    assert kept_at(shop) == ["2026-11-25T09:00:00"]


def test_trouble_is_kept_until_it_is_over(shop):
    shop.path.with_name("backups").write_text("a file where the folder should be")
    kept = Backups(shop, lambda: EVENING)
    assert not kept.make(EVENING)
    assert "backups" in shop.local(TROUBLE)
    shop.path.with_name("backups").unlink()
    assert kept.make(EVENING)
    assert shop.local(TROUBLE) == ""


def test_one_of_a_later_time_stays(tmp_path):
    """A clock that was wrong for an hour must cost no backup."""
    ats = ["2031-01-01T00:00:00", *(f"2026-11-{n:02}T16:00:00" for n in range(1, 26))]
    kept = [Kept(tmp_path / at, at, "1-00") for at in ats]
    dropped = choose_dropped(kept, "2026-11-25T16:00:00")
    assert ats[0] not in {one.at for one in dropped}
    assert "2026-11-25T16:00:00" not in {one.at for one in dropped}


def test_a_clock_that_was_wrong_for_a_season_takes_no_place(tmp_path):
    """What it made stays, and seven evenings are kept as if it were not there."""
    wrong = [f"2031-{month:02}-{n:02}T16:00:00" for month in range(1, 13) for n in (1, 9, 17)]
    right = [f"2026-11-{n:02}T16:00:00" for n in range(10, 26)]
    kept = [Kept(tmp_path / at, at, "1-00") for at in (*wrong, *right)]
    dropped = {one.at for one in choose_dropped(kept, right[-1])}
    assert dropped.isdisjoint(wrong)
    assert dropped.isdisjoint(right[-7:])


def test_two_pcs_of_a_shop_that_have_one_second_folder_leave_each_other_s_alone(
    tmp_path, monkeypatch
):
    """A folder of the network is set once for all of them: one dropped what the other kept."""
    shop_of = Shop(id="shop", backup_folder=str(tmp_path / "network"))
    monkeypatch.setattr(backups, "find_shop", lambda _view: shop_of)
    for station, at in (("1", EVENING), ("2", EVENING), ("1", "2026-11-25T16:30:00")):
        folder = tmp_path / station
        folder.mkdir(exist_ok=True)
        with closing(Ledger(folder / "shop.db", RULES, station=station)) as ledger:
            ledger.share_with("shop")
            ledger.record(act(f"{station} at {at}", at=MORNING))
            assert Backups(ledger, lambda at=at: at).make(at)
    found = sorted(file.relative_to(tmp_path / "network") for file in tmp_path.rglob("shop-*.db")
                   if "network" in file.parts)  # fmt: skip
    assert [(file.parts[0], file.name[5:18]) for file in found] == [
        ("station-1", "20261125-1630"),
        ("station-2", "20261125-1600"),
    ]


def test_a_stick_is_waited_for_until_it_has_all(shop, monkeypatch):
    """Read again at once, a file comes from this PC's memory and not from the stick."""

    def fail(_handle):
        raise OSError(EIO, "Input/output error")

    file = shop.keep_backup(EVENING)
    monkeypatch.setattr("os.fsync", fail)
    with pytest.raises(OSError, match="Input/output error"):
        keep_away(file, shop.path.parent / "stick", EVENING)
    assert list((shop.path.parent / "stick").iterdir()) == []


def test_a_clock_that_was_wrong_for_an_hour_ends_no_evening_s_backup(shop):
    """One of 2031 is no proof that there is one of today, neither here nor in what is told."""
    wrong = "2031-01-01T16:30:00"
    shop.record(act("late", at=wrong))
    assert Backups(shop, lambda: wrong).make(wrong)
    assert Health(shop, lambda: MORNING, lambda: "h").look().backup_at == ""
    shop.record(act("b", at=MORNING))
    for now in (MORNING, EVENING, NEXT):
        Backups(shop, lambda now=now: now).step()
    assert kept_at(shop) == [wrong, "2026-11-25T16:00:00"]
    assert Health(shop, lambda: NEXT, lambda: "h").look().backup_at == "2026-11-25T16:00:00"


def test_the_newest_act_of_a_wrong_clock_keeps_no_first_backup_back(shop):
    shop.record(act("late", at="2031-01-01T16:30:00"))
    Backups(shop, lambda: EVENING).step()
    assert kept_at(shop) == ["2026-11-25T16:00:00"]


def test_a_file_whose_name_tells_no_time_is_none_and_stops_nothing(shop):
    shop.keep_backup(MORNING)
    shop.path.with_name("backups").joinpath("shop-20261399-0000-1-ab.db").write_text("?")
    assert Backups(shop, lambda: EVENING).make(EVENING)
    assert kept_at(shop) == ["2026-11-25T16:00:00"]


@pytest.mark.parametrize("written", ["~nobody-of-that-name/x", "beside", "/a\0b", "~nobody\0"])
def test_a_second_folder_that_is_none_is_told_and_stops_no_start(shop, monkeypatch, written):
    monkeypatch.setattr(backups, "find_shop", lambda _view: Shop(id="shop", backup_folder=written))
    keep_before_update(shop, MORNING)
    assert shop.local(TROUBLE) == f"write the whole path of the folder: {written}"
    assert kept_at(shop) == ["2026-11-25T09:00:00"]


def test_a_second_folder_that_cannot_be_written_is_told_in_plain_words(shop, monkeypatch):
    folder = shop.path / "below a file"
    shop_of = Shop(id="shop", backup_folder=str(folder))
    monkeypatch.setattr(backups, "find_shop", lambda _view: shop_of)
    assert not Backups(shop, lambda: MORNING).make(MORNING)
    assert "Errno" not in shop.local(TROUBLE)
    assert str(folder) in shop.local(TROUBLE)


def test_a_month_of_evenings():
    days, wrong, _ = run(36)
    assert wrong == []
    assert days[:7] == [f"2026-02-{n:02}" for n in (5, 4, 3, 2, 1)] + ["2026-01-31", "2026-01-30"]


def wait_for(kept):
    """Looks at a backup that is made beside the screen until it is over."""
    until = time.monotonic() + 60
    while kept._job is not None:
        assert time.monotonic() < until
        kept.step()
        time.sleep(0.01)


def test_the_evening_s_is_made_beside_the_screen_while_work_goes_on(tmp_path):
    """It was made on the window's thread: 1.5 s where the history has 100,000 entries."""
    shop = opened(tmp_path)
    shop.record(act("a", at=MORNING))
    end, begun = shop.witness(), []

    def begin(request):
        """As the other process is about to copy, an act is recorded, and the file would move."""
        shop.record(act("b", at=EVENING))
        shop.idle()
        begun.append(ProcessJob(request))
        return begun[0]

    kept = Backups(shop, lambda: EVENING, begin)
    kept.step()
    assert not begun[0].is_over()
    shop.record(act("c", at=EVENING))
    shop.idle()
    wait_for(kept)
    (one,) = shop.list_backups()
    assert (one.at, one.witness, shop.local(TROUBLE) or "") == ("2026-11-25T16:00:00", end, "")
    with pytest.raises(InUse):  # it still is this program's alone
        Ledger(shop.path, RULES)
    shop.close()
    (tmp_path / "again").mkdir()
    Ledger.restore(one.file, tmp_path / "again" / "shop.station")
    again = opened(tmp_path / "again")
    assert (again.witness(), again.check()) == (end, [])
    again.close()
    with closing(opened(tmp_path)) as later:
        assert later.count() == 3


def test_what_keeps_the_one_beside_the_screen_is_told_and_the_file_moves_on(shop):
    shop.path.with_name("backups").write_text("a file where the folder should be")
    kept = Backups(shop, lambda: EVENING, ProcessJob)
    kept.step()
    wait_for(kept)
    assert "backups" in shop.local(TROUBLE)
    assert not shop.is_still


def test_one_that_breaks_off_is_told(shop):
    kept = Backups(shop, lambda: EVENING, ProcessJob)
    kept.step()
    kept._job.process.kill()
    wait_for(kept)
    assert shop.local(TROUBLE) == "The program that makes it broke off"
    assert (kept_at(shop), shop.is_still) == ([], False)


def test_a_window_that_is_closed_leaves_none_half_made(shop):
    kept = Backups(shop, lambda: EVENING, ProcessJob)
    kept.step()
    kept.stop()
    assert (kept_at(shop), shop.is_still) == ([], False)
    Backups(shop, lambda: EVENING).step()
    assert len(kept_at(shop)) == 1


def test_a_page_of_locks_is_passed_over(tmp_path, monkeypatch):
    """Some systems let nobody read it; it has no content."""
    monkeypatch.setattr(kept_backups, "PIECE", 4096)
    monkeypatch.setattr(kept_backups, "LOCKED", 8192)
    source, copied = tmp_path / "from", tmp_path / "to"
    source.write_bytes(b"a" * 8192 + b"locks" * 1000 + b"b" * 9000)
    monkeypatch.setattr(kept_backups.sqlite3, "connect", lambda *_: MagicMock())
    kept_backups.copy_still(source, copied)
    text, was = copied.read_bytes(), source.read_bytes()
    assert text[:8192] == was[:8192]
    assert text[8192:8704] == bytes(512)
    assert text[8704:] == was[8704:]


@pytest.mark.skipif(sys.platform == "win32", reason="there a name is text")
def test_a_folder_whose_name_is_no_text_has_its_evening_s_backup_too(tmp_path):
    folder = Path(os.fsdecode(bytes(tmp_path) + b"/\xe9"))
    folder.mkdir()
    shop = opened(folder)
    shop.record(act("a", at=MORNING))
    kept = Backups(shop, lambda: EVENING, ProcessJob)
    kept.step()
    wait_for(kept)
    assert (kept_at(shop), shop.is_still) == (["2026-11-25T16:00:00"], False)
    shop.close()


def test_what_goes_wrong_as_one_begins_lets_the_file_go_on(shop):
    """It was held still for good then: the log grew without an end."""

    def begin(_request):
        raise RuntimeError("a bug of ours")

    kept = Backups(shop, lambda: EVENING, begin)
    with pytest.raises(RuntimeError):
        kept.step()
    assert not shop.is_still
