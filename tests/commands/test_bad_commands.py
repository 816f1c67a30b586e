"""A damaged file, a second program, a folder that cannot be written: one sentence each."""

import json
import subprocess
import sys

import pytest

from station import bootstrap
from station.commands import main
from tests.replay import START, Stage, small_shop

NOW = "2026-11-25T10:42:00"


@pytest.fixture
def data(tmp_path):
    folder = tmp_path / "data"
    with bootstrap.open_ledger(folder) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), NOW, stock=START)
    return folder


def scanning(data):
    return subprocess.Popen(
        [sys.executable, "-m", "station", "scan", "--data", str(data), "--now", NOW],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        encoding="utf-8",
    )


@pytest.mark.slow
def test_a_second_program_on_the_same_data_is_told_so(data):
    first = scanning(data)
    first.stdin.write("HELLO\n")
    first.stdin.flush()
    assert json.loads(first.stdout.readline())["level"] == "stop"
    second = scanning(data)
    _, told = second.communicate("HELLO\n", timeout=30)
    assert second.returncode != 0
    assert told.strip().count("\n") == 0
    assert "Traceback" not in told
    assert told.strip()
    out, _ = first.communicate("HELLO\n", timeout=30)
    assert first.returncode == 0
    assert json.loads(out)["level"] == "stop"


@pytest.mark.parametrize("harm", ["head", "all", "empty folder in its place"])
@pytest.mark.slow
def test_a_damaged_file_at_the_start_is_said_in_one_sentence(data, capsys, harm):
    file = data / bootstrap.FILE
    sound = file.read_bytes()
    if harm == "head":
        file.write_bytes(b"no shop at all!!" + sound[16:])
    elif harm == "all":
        file.write_bytes(b"x" * len(sound))
    else:
        file.unlink()
        file.mkdir()
    code = main.main(["state", "--json", "--data", str(data), "--now", NOW])
    told = capsys.readouterr().err
    assert code == 1, told
    assert told.strip().count("\n") == 0
    kept = [f.read_bytes()[16:] for f in data.iterdir() if f.is_file()]
    left = {"head": sound[16:], "all": b"x" * (len(sound) - 16)}
    assert harm not in left or left[harm] in kept, "the damaged file was thrown away"


def test_a_void_copy_is_refused(tmp_path):
    stage = Stage(tmp_path)
    for line in ("@worker 07", "@area trimming", "traveller 00900"):
        stage.send(line)
    before = stage.ledger.count()
    for letter in "BCZ":
        given = stage.send(f"copy 00900 {letter}")
        assert given.answer.tone == "stop", letter
        assert str(given.answer.do)
    assert stage.ledger.count() == before
    stage.ledger.close()
