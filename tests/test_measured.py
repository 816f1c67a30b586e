"""Only commands write the page of what was measured."""

import json
import re
import subprocess
import sys

import pytest

from tests import measured
from tests.measured import Row, lay_page, merge, read_page, write_speed


@pytest.fixture(autouse=True)
def nobody_asks(monkeypatch):
    """Keeps what these tests note from the page that their own run may be measured for."""
    monkeypatch.delenv(measured.INTO, raising=False)


def row(what, command="python -m tests.kill 2"):
    return Row(what, "1", "–", command, "2026-11-29", "abc1234")


def test_the_page_is_as_a_command_lays_it_out():
    text = measured.PAGE.read_text(encoding="utf-8")
    assert lay_page(read_page(text)) == text
    assert len(read_page(text)) > 50


def test_rows_take_the_place_of_what_the_same_command_wrote():
    old = [row("a", "python -m tests.bench record"), row("b"), row("c", "python -m tests.many")]
    new = [row("b, measured anew"), row("more of it")]
    assert merge(old, new) == [old[0], *new, old[2]]
    assert merge(old[:1], new) == [old[0], *new]


def test_no_row_stands_twice():
    rows = read_page(measured.PAGE.read_text(encoding="utf-8"))
    assert [row for row in rows if rows.count(row) > 1] == []


def test_what_one_run_notes_twice_stands_once():
    assert merge([row("b")], [row("a"), row("a"), row("b")]) == [row("a"), row("b")]


def test_the_readme_tells_the_speeds_of_the_page():
    readme = measured.README.read_text(encoding="utf-8")
    rows = read_page(measured.PAGE.read_text(encoding="utf-8"))
    assert write_speed(readme, rows) == readme
    names = re.findall(r"\{(.+?)\}", measured.SPEED)
    some = [row(name)._replace(figure="15.24 ms; **missed**") for name in names]
    window = row("first window over a bare window")._replace(figure="1.45 × (1.40–1.52)")
    said = write_speed(readme, [*some, window])
    assert "15 ms for the slowest of a hundred" in said
    assert "a first window 1.45 times a bare one" in said
    assert write_speed(readme, some[1:]) == readme  # one is missing: nothing is made up


def test_a_figure_is_noted_where_somebody_asks(tmp_path, monkeypatch):
    measured.note("nobody asks", "1")
    monkeypatch.setenv(measured.INTO, str(tmp_path / "noted"))
    measured.note("a walk", "7 s", "≤ 9 s")
    assert json.loads((tmp_path / "noted").read_text("utf-8")) == ["a walk", "7 s", "≤ 9 s", ""]


def test_a_command_writes_its_rows(tmp_path, monkeypatch):
    page = tmp_path / "measured.md"
    page.write_text(lay_page([row("a sheet", "python -m tests.bench record")]), encoding="utf-8")
    monkeypatch.setattr(measured, "PAGE", page)
    monkeypatch.setattr(measured, "README", tmp_path / "README.md")
    measured.README.write_text("# Ours", encoding="utf-8")
    monkeypatch.setattr(measured, "HOME", tmp_path)
    monkeypatch.setattr(measured, "commit", lambda: "abc1234+")
    monkeypatch.setattr(sys, "argv", ["measured", "replay", "01"])

    def run(command, *, env, **_more):
        monkeypatch.setenv(measured.INTO, env[measured.INTO])
        assert command[1:] == ["-m", "tests.replay", "01"]
        measured.note("days in the shop", "1 of 1", "all")
        return 0

    monkeypatch.setattr(subprocess, "call", run)
    assert measured.main() == 0
    first, second = read_page(page.read_text(encoding="utf-8"))
    assert first.what == "a sheet"
    assert second[:4] == ("days in the shop", "1 of 1", "all", "python -m tests.replay 01")
    assert second.commit == "abc1234+"
