"""What commands write: never over a shop, over another file only where that is asked for."""

import argparse
import io
import os
import sqlite3
import tomllib
from pathlib import Path

import pytest

import station
from station import bootstrap
from station.commands import main
from station.shop.cards import button
from station.shop.codes import write
from tests.full_disk import fill_disk
from tests.replay import START, small_shop

NOW = "2026-11-25T10:42:00"
WRITERS = {
    "list-out": ("list-out", "part", "{file}"),
    "traveller": ("traveller", "00900", "--pdf", "{file}"),
    "backup": ("backup", "{file}"),
    "share": ("share", "postgresql://nobody@127.0.0.1:1/none", "--pdf", "{file}"),
}


@pytest.fixture(scope="module")
def shop(tmp_path_factory):
    folder = tmp_path_factory.mktemp("shop")
    with bootstrap.open_ledger(folder) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), NOW, stock=START)
    return folder


def run(capsys, data, *words):
    code = main.main([*map(str, words), "--data", str(data), "--now", NOW])
    told = capsys.readouterr()
    return code, told.out, told.err


def writing(name, file):
    return tuple(word.format(file=file) for word in WRITERS[name])


@pytest.mark.parametrize("more", [(), ("--replace",)], ids=["", "replace"])
@pytest.mark.parametrize("name", WRITERS)
@pytest.mark.parametrize(
    "file", ["shop.db", "shop.db-wal", "link", "./here/../shop.db", "backups", "beside.key"]
)
def test_the_shop_is_never_written_over(shop, tmp_path, capsys, name, file, more):
    (tmp_path / "link").symlink_to(shop / "shop.db")
    path = tmp_path / file if file == "link" else f"{shop}/{file}"
    before = (shop / "shop.db").read_bytes()
    code, _, told = run(capsys, shop, *writing(name, path), *more)
    assert (code, told) == (1, f"{Path(path)} holds a shop: name another file.\n")
    assert (shop / "shop.db").read_bytes() == before


@pytest.mark.parametrize("name", ["list-out", "traveller", "backup"])
def test_a_file_that_is_there_is_kept_unless_it_is_to_be_replaced(shop, tmp_path, capsys, name):
    file = tmp_path / "notes"
    file.write_text("our own")
    code, _, told = run(capsys, shop, *writing(name, file))
    assert (code, told) == (1, f"{file} is there already: name another, or say --replace.\n")
    assert file.read_text() == "our own"
    assert run(capsys, shop, *writing(name, file), "--replace")[0] == 0
    assert file.read_bytes() != b"our own"
    (tmp_path / "empty").touch()  # holds nothing that could be lost
    assert run(capsys, shop, *writing(name, tmp_path / "empty"))[0] == 0


@pytest.mark.parametrize("more", [(), ("--replace",)], ids=["", "replace"])
@pytest.mark.parametrize("name", ["list-out", "traveller", "backup"])
def test_a_folder_is_no_file_to_write(shop, tmp_path, capsys, name, more):
    code, _, told = run(capsys, shop, *writing(name, tmp_path), *more)
    assert (code, told) == (1, f"{tmp_path} is a folder: name a file in it.\n")


@pytest.mark.skipif(os.name == "nt", reason="there are none")
@pytest.mark.parametrize("name", ["list-out", "traveller", "backup"])
def test_what_is_no_plain_file_is_left_alone(shop, tmp_path, capsys, name):
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    code, _, told = run(capsys, shop, *writing(name, pipe), "--replace")
    assert (code, told) == (1, f"{pipe} is no plain file: name another.\n")
    assert pipe.is_fifo()


@pytest.mark.skipif(os.name == "nt", reason="there are none")
@pytest.mark.parametrize("name", ["plan", "pack"])
def test_a_pipe_is_not_waited_for_as_a_problem(shop, tmp_path, capsys, name):
    os.mkfifo(tmp_path / "pipe")
    code, _, told = run(capsys, shop, name, "--problem", tmp_path / "pipe")
    assert (code, told.count("cannot be read: it is no plain file.\n")) == (1, 1)


def test_a_copy_of_a_shop_is_replaced_by_a_newer_one_alone(shop, tmp_path, capsys):
    file = tmp_path / "copy.db"
    assert run(capsys, shop, "backup", file)[0] == 0
    assert run(capsys, shop, "list-out", "part", file, "--replace")[0] == 1
    assert run(capsys, shop, "backup", file, "--replace")[0] == 0
    assert run(capsys, tmp_path / "new", "restore", file)[0] == 0


def test_a_traveller_is_asked_for_by_its_number_or_the_code_on_it(shop, tmp_path, capsys):
    code = write("batch", "00900", "A")
    assert run(capsys, shop, "traveller", code, "--pdf", tmp_path / "a.pdf")[0] == 0
    assert (tmp_path / "a.pdf").read_bytes().startswith(b"%PDF")
    lot = write("lot", "0931")
    wrong = run(capsys, shop, "traveller", lot, "--pdf", tmp_path / "b.pdf")
    assert wrong[::2] == (1, f"{lot} is no code of a traveller.\n")


def test_a_copy_that_cannot_be_made_prints_no_paper_of_before(shop, tmp_path, capsys, monkeypatch):
    """The old copy came out with rc 0, for the new one."""
    monkeypatch.setattr("station.queries.batches.next_copy", lambda *_: "")
    wrong = run(capsys, shop, "traveller", "00900", "--copy", "--pdf", tmp_path / "c.pdf")
    assert wrong == (1, "", "Batch 00900 has no copy letter left\n")
    assert not (tmp_path / "c.pdf").exists()
    none = run(capsys, shop, "traveller", "00999", "--copy", "--pdf", tmp_path / "c.pdf")
    assert none == (1, "", "There is no batch 00999.\n")


@pytest.mark.parametrize("odd", ["no table", "another's", "half a table", "text", "zeros"])
def test_an_odd_backup_is_a_sentence(tmp_path, capsys, odd):
    file = tmp_path / "odd.db"
    tables = {
        "no table": "PRAGMA user_version = 3",
        "another's": "CREATE TABLE song (title TEXT)",
        "half a table": "CREATE TABLE entry (id TEXT, body TEXT); INSERT INTO entry VALUES (1, 2)",
    }
    if odd in tables:
        with sqlite3.connect(file) as made:
            made.executescript(tables[odd])
        made.close()
    else:
        file.write_bytes(b"hello" if odd == "text" else bytes(9000))
    code, _, told = run(capsys, tmp_path / "data", "restore", file)
    assert code == 1
    assert told.startswith("odd.db is no sound backup")
    assert told.count("\n") == 1


def test_a_station_is_made_of_a_number_alone(shop, capsys, monkeypatch):
    for name in ("3; drop", "", "0", "3 ", "x"):
        monkeypatch.setattr("sys.stdin", io.StringIO("its password\n"))
        code, _, told = run(capsys, shop, "share", "postgresql://nobody@127.0.0.1:1/none",
                            f"--card={name or ' '}")  # fmt: skip
        assert code == 1
        assert "is no station's number" in told


@pytest.mark.skipif(os.name == "nt", reason="names are text there")
def test_a_name_that_is_no_text_ends_no_station(shop, capsys, monkeypatch):
    folder = shop / "files"
    folder.mkdir(exist_ok=True)
    Path(os.fsdecode(bytes(folder) + b"/B\xfcgel.nc")).write_text("G21\nM30\n")
    (folder / "good.nc").write_text("G21\nM30\n")
    names = ("list_cutfile", "row_1", "read_file", "row_1")
    lines = ("@worker 07", "@area office", *map(button, names))
    monkeypatch.setattr("sys.stdin", io.StringIO("\n".join(lines)))
    code, out, _ = run(capsys, shop, "scan")
    assert code == 0
    assert '"happened": "1 cut file"' in out
    assert "1 more: its name is no plain text. Rename, look again." in out


def test_every_argument_has_its_help():
    for name in main.COMMANDS:
        parser = main.make_parser([name])
        (commands,) = (a for a in parser._actions if isinstance(a, argparse._SubParsersAction))
        for action in commands.choices[name]._actions:
            assert action.help, f"{name}: {action.dest}"


@pytest.mark.parametrize("speed", ["-1", "0", "fast", "99999999"])
def test_a_speed_that_no_port_has_is_refused(shop, capsys, speed):
    """It was kept, and no scale is heard with it."""
    with pytest.raises(SystemExit):
        run(capsys, shop, "scale", "ttyX", "--speed", speed)
    assert "bits a second" in capsys.readouterr().err


def test_the_version_is_told(capsys):
    with pytest.raises(SystemExit) as end:
        main.main(["--version"])
    project = tomllib.loads((Path(station.__file__).parents[1] / "pyproject.toml").read_text())
    assert end.value.code == 0
    assert capsys.readouterr().out == f"station {project['project']['version']}\n"


def test_no_option_does_nothing(shop, tmp_path, capsys):
    """Who writes a list out is kept nowhere, so nobody is asked for it."""
    with pytest.raises(SystemExit):
        run(capsys, shop, "list-out", "part", tmp_path / "parts.csv", "--worker", "01")
    assert "--worker" in capsys.readouterr().err


@pytest.mark.parametrize("name", ["list-out", "traveller"])
def test_a_full_disk_leaves_the_file_of_before(shop, tmp_path, capsys, monkeypatch, name):
    file = tmp_path / "out"
    assert run(capsys, shop, *writing(name, file))[0] == 0
    before = file.read_bytes()
    fill_disk(monkeypatch)
    code, _, told = run(capsys, shop, *writing(name, file), "--replace")
    assert (code, told) == (1, f"No space left on device: {file}\n")
    assert file.read_bytes() == before
    assert not list(tmp_path.glob("*.partial"))
