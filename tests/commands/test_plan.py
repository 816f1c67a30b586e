"""``station plan``: the shop's plan as JSON, and problems from a file."""

import json

import pytest

from station.commands.common import CommandError
from station.commands.main import main
from station.commands.plan import describe_plan, solve_problem
from station.planning.think import run
from tests.planning.small import TODAY, YESTERDAY, file, part, queued, shop


def problem(tmp_path, **fields):
    path = tmp_path / "problem.json"
    path.write_text(json.dumps({"files": [], "need": {}, **fields}))
    return path


FILES = [
    {"name": "x", "minutes": 20, "makes": {"a": 10}},
    {"name": "y", "minutes": 35, "fixed": 5, "makes": {"a": 40, "b": 4}},
]


def test_sheets_that_cover_a_need(tmp_path):
    # 40 a: four of x take 80; one of y 35 and 5 once, with 4 b beyond need that cost 2 each: 48
    asked = problem(tmp_path, files=FILES, need={"a": 40, "z": 3}, over_cost=2)
    found = solve_problem(asked, 2.0)
    assert found["sheets"] == [{"cut_file": "y", "count": 1}]
    assert found["uncovered"] == [{"part": "z", "quantity": 3}]
    assert (found["objective"], found["lower_bound"]) == (48.0, pytest.approx(48.0, abs=1e-6))


def test_loss_is_counted_as_a_chance(tmp_path):
    # 24 good of 0.97 with 0.95 take 26, COMPUTED (binomial): three sheets of 10
    asked = problem(tmp_path, files=FILES[:1], need={"a": 24, "z": 1}, good={"a": 0.97, "z": 0.9},
                    certainty=0.95)  # fmt: skip
    found = solve_problem(asked, 2.0)
    assert found["sheets"] == [{"cut_file": "x", "count": 3}]
    assert found["uncovered"] == [{"part": "z", "quantity": 2}]


def test_what_can_be_meant_is_taken_as_it_is_written(tmp_path):
    # whole numbers with a point; none of a part on a sheet; a chance of 0 where nothing is needed;
    # what is sure without loss; a mark at the front, as some editors write it
    made = [{"name": "x", "minutes": 1.5, "makes": {"a": 4.0, "b": 0}}]
    asked = problem(tmp_path, files=made, need={"a": 8.0, "b": 2, "c": 0}, good={"a": 1, "c": 0},
                    certainty=1)  # fmt: skip
    asked.write_bytes(b"\xef\xbb\xbf" + asked.read_bytes())
    found = solve_problem(asked, 1.0)
    assert found["sheets"] == [{"cut_file": "x", "count": 2}]
    assert found["uncovered"] == [{"part": "b", "quantity": 2}]
    assert found["objective"] == 3.0


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        ({"need": {"a": -1}}, "nobody needs less"),
        ({"need": {"a": 10**12}}, "more than 10,000,000 pieces of a part cannot be planned"),
        ({"files": [{"name": "f", "minutes": 1, "makes": {"a": 10**30}}]}, "more than 10,000,000"),
        ({"need": {"a": 9999}, "good": {"a": 1e-6}, "certainty": 0.9}, "a: its chance is too low"),
        ({"files": [FILES[0], FILES[0]]}, "two files have one name"),
        ({"need": {"a": 1.5}}, "pieces come whole"),
        ({"need": {"a": 3}, "good": {"a": 0}, "certainty": 0.9}, "a: its chance is too low"),
        ({"need": {"a": 3}, "good": {"a": 0.99}, "certainty": 1}, "a: its chance is too low"),
        ({"files": [{"name": "x", "minutes": 1, "makes": {"a": -2}}]}, "less than no pieces"),
        ({"files": [{"name": "x", "minutes": -1, "makes": {"a": 1}}]}, "never below zero"),
        ({"good": {"a": 1.5}}, "1 at most"),
        ({"certainty": 1.2}, "1 at most"),
        ({"files": [{"name": "x", "minutes": 1e300, "makes": {"a": 1}}]}, "more than 1,000,000,0"),
        ({"over_cost": 1e13}, "more than 1,000,000,000,000 minutes"),
        ({"need": 7}, "no problem of sheets"),
    ],
)
def test_what_cannot_be_meant_is_told_in_a_sentence(tmp_path, fields, says, capsys):
    path = problem(tmp_path, **fields)
    with pytest.raises(CommandError, match=says):
        solve_problem(path, 1.0)
    assert main(["plan", "--problem", str(path), "--json"]) != 0
    told = capsys.readouterr()
    assert (told.out, told.err.count("\n")) == ("", 1)


@pytest.mark.parametrize("seconds", ["0", "-1", "nan", "inf"])
def test_seconds_that_are_none(tmp_path, seconds, capsys):
    path = problem(tmp_path)
    assert main(["plan", "--problem", str(path), "--json", "--seconds", seconds]) != 0
    told = capsys.readouterr()
    assert (told.out, told.err.count("\n")) == ("", 1)


def test_a_file_that_is_not_there(tmp_path):
    with pytest.raises(CommandError, match="cannot be read"):
        solve_problem(tmp_path / "none.json", 1.0)


def test_the_shops_plan_as_one_object():
    asked = shop(part("a", [(30, YESTERDAY), (10, TODAY)], free=5), part("z", [(2, TODAY)]),
                 part("y", mark=9), part("b", free=200, use=(20,) * 30),
                 files=(file("A", {"a": 20}),),
                 queue=(queued("00646", "A", {"b": 20}),))  # fmt: skip
    told = describe_plan(asked, run(asked, lambda _stage, _share: None))
    assert told["blocked"][0] == {
        "part": "a", "wanted": 40, "there": 5, "under_way": 0, "orders": 2, "late": 1,
        "release": {"cut_file": "A", "router": "1", "sheets": 2, "certainty": 1.0},
    }  # fmt: skip
    assert told["need"][0] == {"part": "a", "quantity": 35, "why": "orders"}
    assert told["uncovered"] == [{"part": "z", "quantity": 2}, {"part": "y", "quantity": 9}]
    # three routers, 20 min a sheet, 5 to load it: COMPUTED, finite-source queue
    assert told["tending"]["one_can_tend"] == 5.0
    assert told["tending"]["people"][0] == {
        "people": 1, "idle": 0.451, "running": 0.732, "waiting": 0.254,
    }  # fmt: skip
    assert told["service"]["set"] == 0.95
    assert told["take_back"] == [{"batch": "00646", "days": 10.0}]
    assert told["sheets"] == [{"cut_file": "A", "count": 2, "reason": "2 orders wait for a"}]
    json.dumps(told)
