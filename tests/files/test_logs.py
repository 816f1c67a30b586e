"""What goes wrong in the program is kept in a few files that never fill the disk."""

import logging
from pathlib import Path

import pytest

from station.files import logs


@pytest.fixture
def log(tmp_path, monkeypatch):
    monkeypatch.setattr(logs, "MOST_BYTES", 2000)
    handler = logs.TurningLog(tmp_path / "errors.log")
    yield handler
    handler.close()


def write(log, *lines):
    for line in lines:
        log.handle(logging.makeLogRecord({"msg": line}))


def test_it_turns_over_and_keeps_the_newest(log, tmp_path):
    assert not list(tmp_path.iterdir())
    write(log, *(f"{n:04d} {'x' * 100}" for n in range(200)))
    files = sorted(tmp_path.iterdir())
    assert [f.name for f in files] == ["errors.log", *(f"errors.log.{n}" for n in (1, 2, 3))]
    assert all(f.stat().st_size < 2200 for f in files)
    told = [line for f in (*files[:0:-1], files[0]) for line in f.read_text().splitlines()]
    kept = [int(line.split()[2]) for line in told]
    assert kept == list(range(kept[0], 200))


def test_where_it_cannot_be_turned_over_it_grows_on(log, tmp_path, monkeypatch):
    def refuse(*_):
        raise PermissionError

    monkeypatch.setattr(Path, "replace", refuse)
    write(log, *(f"{n:04d} {'x' * 100}" for n in range(200)))
    (file,) = tmp_path.iterdir()
    assert len(file.read_text().splitlines()) == 200


def test_a_log_that_cannot_be_written_is_no_matter(tmp_path, capfd):
    """What wanted to be noted goes on, and nobody at a console reads how it failed."""
    handler = logs.TurningLog(tmp_path / "not there" / "errors.log")
    write(handler, "a line")
    (tmp_path / "not there").mkdir()
    write(handler, "another")
    handler.stream.close()  # as on a disk that is full
    write(handler, "a third")
    handler.stream = None
    assert "another" in (tmp_path / "not there" / "errors.log").read_text()
    assert capfd.readouterr().err == ""
