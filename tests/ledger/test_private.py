"""Files with hashes of PINs are their user's own, on every system."""

import os
import subprocess
import sys

import pytest

from station import bootstrap
from station.files.backups import keep_away
from station.ledger import private
from tests.replay import START, small_shop

AT = "2026-11-25T10:42:00"
posix = pytest.mark.skipif(os.name != "posix", reason="rights are set in another way here")


def readable_by_others(folder):
    """What somebody else may read: files below a folder that is closed are not."""
    return [p for p in (folder, *folder.rglob("*")) if p.stat().st_mode & 0o077]


@posix
def test_nobody_else_reads_a_shop_or_its_backups(tmp_path):
    was = os.umask(0o022)
    data, away = tmp_path / "data", tmp_path / "stick"
    data.mkdir()  # as an older program made it: others read all of it
    (data / bootstrap.FILE).touch(0o644)
    (data / bootstrap.FILE).unlink()
    away.mkdir()
    try:
        with bootstrap.open_ledger(data) as ledger:
            bootstrap.seed_shop(ledger, small_shop(), AT, stock=START)
            keep_away(ledger.keep_backup(AT), away, AT)
            ledger.backup(away / "copy.db")
        with bootstrap.open_ledger(data):
            pass
    finally:
        os.umask(was)
    assert data.stat().st_mode & 0o777 == 0o700
    assert (data / bootstrap.FILE).stat().st_mode & 0o777 == 0o600
    assert [p for p in readable_by_others(away) if p != away] == []
    assert [p.name for p in readable_by_others(data / "backups")] == []


@posix
def test_what_others_may_write_was_shared_on_purpose(tmp_path):
    (tmp_path / "shared").mkdir()
    (tmp_path / "shared").chmod(0o775)
    private.make_folder(tmp_path / "shared")
    assert (tmp_path / "shared").stat().st_mode & 0o777 == 0o775


def test_a_new_folder_on_windows_loses_the_rights_of_the_one_it_lies_in(tmp_path, monkeypatch):
    ran = []
    monkeypatch.setattr(sys, "platform", "win32")
    monkeypatch.setattr(subprocess, "run", lambda command, **_: ran.append(command))
    monkeypatch.setenv("USERDOMAIN", "SHOP-PC")
    monkeypatch.setenv("USERNAME", "station")
    folder = tmp_path / "data"
    private.make_folder(folder)
    private.make_folder(folder)  # is there: whoever opened it since has a reason
    granted = ["SHOP-PC\\station:(OI)(CI)F", "*S-1-5-18:(OI)(CI)F"]
    assert ran == [["icacls", str(folder), "/inheritance:r", "/grant:r", *granted]]
