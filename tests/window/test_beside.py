"""Commands beside the window: the program that has the file open runs them."""

import json
import os
import subprocess
import sys
import time
from pathlib import Path
from threading import Thread

import pytest

import station
from station import bootstrap
from station.commands.cut_file import CutFileMachine, _find_machine
from station.commands.main import read_words
from station.commands.open import make_commands, run_asked
from station.commands.scan_beside import ScanBeside
from station.desk.desk import Desk
from station.ledger.faults import InUse
from station.shop import codes
from station.shop.cards import button
from station.window.beside import KEY, Beside, CommandAsked, Commands, Reply, ask
from tests.replay import START, small_shop

NOW = "2026-11-25T10:42:00"
BATCH = codes.write("batch", "00900", "A")


@pytest.fixture
def shop(tmp_path):
    data = tmp_path / "data"
    with bootstrap.open_ledger(data) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), NOW, stock=START)
        bootstrap.HELD[data.resolve()] = ledger
        beside = Beside(data, make_commands(None))
        yield data, beside
        beside.close()
        del bootstrap.HELD[data.resolve()]


def started(data, *words, folder):
    """A command in a process of its own."""
    command = [sys.executable, "-m", "station", *words, "--data", str(data), "--now", NOW]
    ours = {**os.environ, "PYTHONPATH": str(Path(station.__file__).parent.parent)}
    pipe = subprocess.PIPE
    return subprocess.Popen(
        command, stdin=pipe, stdout=pipe, stderr=pipe, text=True, cwd=folder, env=ours
    )


def run(shop, *words, folder, lines=""):
    """A command from its start to its end, while the window looks now and then."""
    data, beside = shop
    with started(data, *words, folder=folder) as process:
        process.stdin.write(lines)
        process.stdin.close()
        while process.poll() is None:
            beside.step()
            time.sleep(0.02)
        return process.returncode, process.stdout.read(), process.stderr.read()


def line_of(shop, process, text):
    """The answer to one line of a text station, while the window looks now and then."""
    process.stdin.write(f"{text}\n")
    process.stdin.flush()
    answer = []
    reader = Thread(target=lambda: answer.append(process.stdout.readline()))
    reader.start()
    while reader.is_alive():
        shop[1].step()
        time.sleep(0.02)
    return json.loads(answer[0])


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
    code, out, told = run(shop, "printer", "A4", "pdf", folder=tmp_path)
    assert (code, told) == (0, "")
    assert "A4: pdf" in out
    code, _, told = run(shop, "pin", "07", folder=tmp_path)  # that one changes something
    assert code == 1
    assert "Another program has shop.db open" in told


def test_a_cut_file_is_read_beside_the_window_that_needs_no_shop(shop, capsys, monkeypatch):
    def in_use(_data):
        raise InUse(shop[0] / "shop.db")

    monkeypatch.setattr(bootstrap, "open_ledger", in_use)
    options = read_words(["cut-file", "A.nc", "--data", str(shop[0])])
    assert _find_machine(options) == CutFileMachine()
    assert "The shop's window is open" in capsys.readouterr().err
    with pytest.raises(InUse):
        _find_machine(read_words(["cut-file", "A.nc", "--router", "1", "--data", str(shop[0])]))


@pytest.mark.slow
def test_a_text_station_works_beside_the_window_with_a_hand_of_its_own(shop, tmp_path):
    """Its line answers at once, its act is in the window's file, and the window keeps its work."""
    data, _ = shop
    ledger = bootstrap.HELD[data.resolve()]
    window = bootstrap.make_desk(ledger, bootstrap.Where(area="popping", worker="05"), lambda: NOW)
    window.take(BATCH)
    held = window.hand
    with started(data, "scan", "--area", "trimming", folder=tmp_path) as process:
        refused = line_of(shop, process, BATCH)
        assert refused["happened"] == "Nobody is signed in here"
        line_of(shop, process, "@worker 05")
        line_of(shop, process, BATCH)
        racked = line_of(shop, process, button("on_rack"))
        assert racked["entry"]
        assert ledger.view.past(racked["entry"]).act.at == NOW
        second = run(shop, "scan", folder=tmp_path, lines=f"{BATCH}\n")
        assert second[0] == 1
        assert "Another text station is at work beside the window" in second[2]
        taken_back = line_of(shop, process, button("undo"))
        assert taken_back["entry"]
        assert ledger.view.past(racked["entry"]).undone
        process.stdin.close()
        assert process.wait(20) == 0
    assert window.hand == held
    again = bootstrap.make_desk(ledger, bootstrap.Where(area="popping"), lambda: NOW)
    assert again.hand.subject == held.subject  # as it is kept for the next start


@pytest.mark.slow
def test_lines_come_through_a_pipe_and_a_mistake_of_ours_ends_none_of_them(
    shop, tmp_path, monkeypatch
):
    lines = f"# a remark\n\n{BATCH}\n@worker 05\n{BATCH}\n"
    broken = Desk.sign_in

    def sign_in(desk, worker):
        broken(desk, worker)
        raise RuntimeError("a bug of ours")

    monkeypatch.setattr(Desk, "sign_in", sign_in)
    code, out, told = run(shop, "scan", "--area", "trimming", folder=tmp_path, lines=lines)
    said = [json.loads(text)["happened"] for text in out.splitlines()]
    assert (code, told, len(said)) == (70, "", 3)
    assert "Something is wrong in the program" in said[1]
    assert "00900" in said[2]


@pytest.mark.slow
def test_what_to_cut_is_thought_out_for_a_line_while_the_window_goes_on(shop):
    """Only the answer waits for it: the window is never held up by a text station."""
    words = ["scan", "--area", "plan", "--worker", "01", "--data", str(shop[0]), "--now", NOW]
    taker = ScanBeside.begin(read_words(words), None)
    used = time.process_time()
    taker.take(BATCH)
    waited = 0
    while (reply := taker.reply()) is None:
        time.sleep(0.02)
        waited += 1
    assert json.loads(reply.out)["happened"]
    assert waited
    assert taker._desk.ahead.thought is not None
    assert time.process_time() - used < 0.5  # the thinking itself is another process's


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


@pytest.mark.skipif(sys.platform == "win32", reason="there a name is text")
def test_a_folder_whose_name_is_no_text_has_commands_beside_its_window_too(tmp_path):
    """The window did not open there."""
    folder = Path(os.fsdecode(bytes(tmp_path) + b"/\xe9"))
    folder.mkdir()
    asked = []

    def run(command):
        asked.append(command)
        return Reply(f"{folder}\n", "", 0)

    beside, replies = Beside(folder, Commands(run, run)), []
    caller = Thread(target=lambda: replies.append(ask(folder, ["backup", str(folder)])))
    caller.start()
    while caller.is_alive():
        beside.step()
        time.sleep(0.01)
    beside.close()
    assert replies == [Reply(f"{folder}\n", "", 0)]
    assert asked[0].words[-1] == str(folder)
