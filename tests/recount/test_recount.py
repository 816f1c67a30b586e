"""Days of chance, counted again from their exported history alone."""

import json
import subprocess
import sys
from collections import Counter
from functools import partial
from pathlib import Path

import pytest

from tests.recount.__main__ import count_day
from tests.recount.books import read_all
from tests.recount.days import demo_day, small_day, wide_day

HERE = Path(__file__).resolve().parent
BARRED = ("station.queries", "station.floor", "station.planning")
LIST = "import sys, {}; print(*sys.modules)"


def loaded(names: str) -> set[str]:
    """The modules that are loaded where these are imported, in a process of its own."""
    done = subprocess.run(
        [sys.executable, "-c", LIST.format(names)], capture_output=True, text=True, check=True
    )
    return set(done.stdout.split())


def counting() -> str:
    """The modules that count: all but those that play a day and hold screens beside."""
    playing = ("__init__", "__main__", "check", "days", "wide", "test_recount")
    return ", ".join(
        f"tests.recount.{file.stem}" for file in HERE.glob("*.py") if file.stem not in playing
    )


def barred(modules: set[str]) -> list[str]:
    """Those of the modules that the recount may not know."""
    return sorted(m for m in modules if m.startswith(BARRED))


@pytest.mark.slow
def test_what_counts_again_knows_nothing_of_how_the_program_counts():
    assert barred(loaded(counting())) == []


@pytest.mark.slow
def test_a_look_at_the_programs_own_counts_would_be_seen():
    assert barred(loaded(f"{counting()}, station.queries.stock")) != []


def test_what_was_taken_back_does_not_count_until_that_is_taken_back():
    def body(id: str, frm: str, to: str, **more: object) -> str:
        move = ["014", 5, [frm, "00001"], [to, "00001"]]
        act = {"id": id, "kind": "x", "at": "2026-11-25T10:00:00"}
        return json.dumps({"act": act, "moves": [move], **more})

    way = ("popping", "trimming")
    done = body("a", "popping/1", "trimming")
    undone = body("b", "trimming", "popping/1", reverses="a")
    again = body("c", "popping/1", "trimming", reverses="b", restores=True)
    sums = [
        (books.moved("2026", "9999", way), books.count(place="trimming"))
        for books in map(read_all, ([done], [done, undone], [done, undone, again]))
    ]
    assert sums == [(5, 5), (0, 0), (5, 5)]


@pytest.mark.slow
@pytest.mark.parametrize(
    ("make", "steps"),
    [(small_day, 60), (partial(demo_day, midnight=True), 45), (wide_day, 15)],
    ids=["small", "midnight", "wide"],
)
def test_a_day_is_counted_again(make, steps):
    recount = count_day(make, 3, steps)
    assert recount.wrong == []
    assert recount.figures > 100
    assert isinstance(recount.not_read, Counter)
