"""Commands beside the window: the program that has the file open runs them."""

import json
import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

import station
from station import bootstrap
from station.commands.open import run_asked
from station.window.beside import KEY, Beside, CommandAsked, ask
from tests.replay import START, small_shop

NOW = "2026-11-25T10:42:00"


@pytest.fixture
def shop(tmp_path):
    data = tmp_path / "data"
    with bootstrap.open_ledger(data) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), NOW, stock=START)
        bootstrap.HELD[data.resolve()] = ledger
        beside = Beside(data, run_asked)
        yield data, beside
        beside.close()
        del bootstrap.HELD[data.resolve()]


def run(shop, *words, folder):
    """A command in a process of its own, while the window looks now and then."""
    data, beside = shop
    command = [sys.executable, "-m", "station", *words, "--data", str(data), "--now", NOW]
    ours = {**os.environ, "PYTHONPATH": str(Path(station.__file__).parent.parent)}
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, cwd=folder, env=ours
    ) as process:
        while process.poll() is None:
            beside.step()
            time.sleep(0.02)
        assert process.stdout
        assert process.stderr
        return process.returncode, process.stdout.read(), process.stderr.read()


@pytest.mark.slow
def test_a_one_pc_shop_is_asked_and_backed_up_while_its_window_is_open(shop, tmp_path):
    code, out, told = run(shop, "state", folder=tmp_path)
    assert (code, told) == (0, "")
    assert json.loads(out)["now"] == NOW
    code, out, told = run(shop, "backup", "copy.db", folder=tmp_path)
    assert (code, told) == (0, "")
    assert (tmp_path / "copy.db").stat().st_size  # named from where it was typed
    assert run(shop, "backup", "copy.db", folder=tmp_path)[:2] == (1, "")
    assert "Sound" in run(shop, "check", folder=tmp_path)[1]
    code, _, told = run(shop, "pin", "07", folder=tmp_path)  # that one changes something
    assert code == 1
    assert "Another program has shop.db open" in told


def test_a_file_that_the_window_holds_is_not_mended_but_the_window_is_to_be_closed(shop, tmp_path):
    data, _ = shop
    bootstrap.HELD[data.resolve()]._store.run("DELETE FROM fact WHERE key = 'worker/02'")
    asked = ["check", "--mend", "--data", str(data)]
    reply = run_asked(CommandAsked(words=asked, folder=str(tmp_path)))
    assert reply.code == 1
    assert "close that, and say station check --mend once more" in reply.out
    assert "Sound" not in reply.out
    assert not list(data.glob("*.damaged*"))


def test_only_who_can_read_the_shops_folder_may_ask(shop, tmp_path):
    data, _ = shop
    assert (data / KEY).stat().st_mode & 0o077 == 0 or sys.platform == "win32"
    (data / KEY).write_bytes(b"guessed")
    assert ask(data, ["state"]) is None


def test_where_nobody_listens_nothing_is_waited_for(tmp_path):
    assert ask(tmp_path, ["state"]) is None
