"""Days of chance, counted again from their exported history alone."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from station.shop.rooms import Hand
from station.shop.words import say
from tests.recount.__main__ import STEPS, count_day, kind_of
from tests.recount.books import Books, read_all
from tests.recount.census import Census, list_figures
from tests.recount.read import Said, Shown
from tests.recount.rules import Look
from tests.recount.screens import compare_block

HERE = Path(__file__).resolve().parent
BARRED = ("station.queries", "station.floor", "station.planning")
TENTH = 5  # days on every run of the tests
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


def test_every_figure_is_counted_or_left_out_for_a_reason():
    part, typed = Said(say("{n} pieces of it", n=3)), Said("3 pieces of it")
    shown = Shown("cards", "Anew", [(part, typed)])
    census = Census()
    for cell, figure in list_figures("popping", shown):
        census.note(Books(), figure, counted=cell == (0, 0))
    assert list(census.counted) == ["popping, cards 'Anew', 1: {n} pieces of it"]
    assert list(census.left) == ["popping, cards 'Anew', 2: # pieces of it"]


def test_a_figure_that_a_screen_says_wrongly_is_told():
    hand = Hand(area="today", work=None)
    look = Look(read_all(()), hand, "2026-11-25T10:00:00", "", (), {})
    shown = Shown("table", "Needs a look", [("3 orders are late",)])
    (wrong,) = compare_block(look, shown).told
    assert "'3 orders are late' stands there, counted []" in wrong


# A tenth of the fifty days that `python -m tests.recount` plays.
DAYS = (*((n, STEPS) for n in range(1, TENTH)), (0, STEPS // 2))


@pytest.mark.slow
@pytest.mark.parametrize(("n", "steps"), DAYS, ids=[f"{kind_of(n)[0]} {n}" for n, _ in DAYS])
def test_a_day_is_counted_again(n, steps):
    recount = count_day(kind_of(n)[1], n + 3, steps)
    assert recount.wrong == []
    assert recount.census.counted.total() > 1000
    assert recount.census.example == {}, "neither counted nor left out for a reason"
