"""The commands: what they print, and one clear sentence for what is wrong."""

import io
import json

import pytest

from station import bootstrap
from station.commands import main
from station.shop.facts import Batch
from tests.replay import START, code_of, small_shop

NOW = "2026-11-25T10:42:00"


@pytest.fixture
def data(tmp_path):
    with bootstrap.open_ledger(tmp_path) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), NOW, stock=START)
    return tmp_path


def run(capsys, *words):
    code = main.main([str(w) for w in words])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def test_codes_are_a_list_of_what_can_be_scanned(data, capsys):
    code, out, _ = run(capsys, "codes", "--json", "--data", data)
    rows = json.loads(out)
    assert code == 0
    kinds = {row["kind"] for row in rows}
    assert {
        "worker",
        "part",
        "rack",
        "router",
        "bit",
        "lot",
        "button",
        "digit",
        "reason",
        "zone",
        "product",
        "cart",
    } <= kinds
    assert all(row["area"] for row in rows if row["kind"] == "button")
    assert len({row["code"] for row in rows}) == len(rows)


def test_state_has_every_field(data, capsys):
    _, out, _ = run(capsys, "state", "--json", "--data", data, "--now", NOW)
    state = json.loads(out)
    assert state["now"] == NOW
    assert set(state) == {
        "now",
        "batches",
        "rack",
        "orders",
        "carts",
        "routers",
        "look",
        "firsts",
        "not_shared",
        "today",
    }
    assert [r["router"] for r in state["routers"]] == ["R1", "R2", "R3", "R4", "R5"]


def test_the_text_station_gives_a_line_for_a_line(data, capsys, monkeypatch):
    monkeypatch.setattr("sys.stdin", io.StringIO("# remark\n\nW032\n@at yesterday\n@fly\n"))
    code, out, _ = run(capsys, "scan", "--data", data, "--area", "popping", "--now", NOW)
    lines = [json.loads(line) for line in out.splitlines()]
    assert code == 0
    assert len(lines) == 3
    assert set(lines[0]) == {"level", "happened", "next", "entry", "moves"}
    assert [line["level"] for line in lines[1:]] == ["stop", "stop"]


def test_check_says_that_all_is_sound(data, capsys):
    assert run(capsys, "check", "--data", data)[0] == 0


def test_a_backup_goes_back(data, tmp_path, capsys):
    file = tmp_path / "kept.backup"
    assert run(capsys, "backup", file, "--data", data)[0] == 0
    other = tmp_path / "other"
    assert run(capsys, "restore", file, "--data", other)[0] == 0
    assert run(capsys, "check", "--data", other)[0] == 0
    with bootstrap.open_ledger(other) as ledger:
        assert [b.id for b in ledger.facts(Batch)] == ["00900", "00901", "00902"]


def test_another_shop_s_backup_goes_back_only_where_that_is_said(data, tmp_path, capsys):
    file, other = tmp_path / "kept.backup", tmp_path / "other"
    assert run(capsys, "backup", file, "--data", data)[0] == 0
    with bootstrap.open_ledger(other) as ledger:
        bootstrap.seed_shop(ledger, small_shop(), NOW, stock=START)
        desk = bootstrap.make_desk(ledger, bootstrap.Where(area="trimming"), lambda: NOW)
        desk.sign_in("04")
        for words in ("traveller 00900", "button hold"):
            desk.take(code_of(words, ledger))
    code, _, told = run(capsys, "restore", file, "--data", other)
    assert (code, told.count("\n")) == (1, 1)
    assert "--another-shop" in told
    assert run(capsys, "restore", file, "--data", other, "--another-shop")[0] == 0
    assert not list(other.glob("*.new*"))


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (("state", "--data", "{tmp}/none"), "There is no shop in"),
        (("state", "--data", "{data}", "--now", "noon"), "noon is no time"),
        (
            ("traveller", "99999", "--pdf", "{tmp}/t.pdf", "--data", "{data}"),
            "There is no batch 99999",
        ),
        (("restore", "{tmp}/none.backup", "--data", "{tmp}/new"), ""),
        (("backup", "{tmp}/no/such/b", "--data", "{data}"), "There is no folder"),
    ],
)
def test_a_mistake_gets_one_sentence(data, tmp_path, capsys, words, sentence):
    filled = [w.format(tmp=tmp_path, data=data) for w in words]
    code, _, err = run(capsys, *filled)
    assert code != 0
    assert err.strip().count("\n") == 0, err
    assert err.strip()
    assert "Traceback" not in err
    assert sentence in err


def test_the_data_folder_may_stand_before_the_command(data, capsys):
    assert run(capsys, "--data", data, "--now", NOW, "check")[0] == 0
