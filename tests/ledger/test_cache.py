"""What was read is held until it changes: never longer, and not while it may be rolled back."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from station.ledger.view import NotingView, OpenView, Reader
from station.shop.acts import Answer
from station.shop.facts import Batch
from tests.ledger import toy
from tests.ledger.test_reads import READS
from tests.ledger.test_undo import answers, holds
from tests.ledger.toy import EVERY, act, opened


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.lists(st.one_of(answers, st.integers(0, 5)), min_size=2, max_size=8))
@pytest.mark.slow
def test_what_is_held_is_what_would_be_read(tmp_path_factory, work):
    laid: dict[str, Answer] = {}
    ledger = opened(tmp_path_factory.mktemp("held"), given=toy.given(laid))
    ledger._store.run("PRAGMA synchronous=OFF")
    for n, step in enumerate(work):
        for number, read in enumerate(READS):
            ledger.view.once(f"{number}", read)
        if isinstance(step, int):
            ledger.undo(f"a{step}", act(f"u{n}", "undo", batch="elsewhere"))
        elif holds(ledger, step):
            laid[f"a{n}"] = step
            ledger.record(act(f"a{n}", "given"))
        anew = OpenView(Reader(ledger._store, ledger._history.rules))
        for number, read in enumerate(READS):
            assert read(ledger.view) == read(anew)
            assert ledger.view.once(f"{number}", read) == read(anew)
    ledger.close()


def test_what_another_way_wrote_is_read_anew(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a1"))
    assert [h.qty for h in ledger.view.stock(batch="00412")] == [6]
    ledger._store.run("UPDATE balance SET qty = 9 WHERE place = 'popping/1'")
    assert [h.qty for h in ledger.view.stock(batch="00412")] == [9]
    ledger.close()


def test_what_may_be_rolled_back_is_not_held(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a1"))
    run = ledger._store.run
    run("BEGIN")
    run("UPDATE balance SET qty = 9 WHERE place = 'popping/1'")
    assert [h.qty for h in ledger.view.stock(batch="00412")] == [9]
    assert ledger.view.once("qty", lambda _view: 9) == 9
    run("ROLLBACK")
    assert [h.qty for h in ledger.view.stock(batch="00412")] == [6]
    assert ledger.view.once("qty", lambda _view: 6) == 6
    ledger.close()


HOLDS = {  # by what is asked: whether the sheet that comes to popping leaves the answer as it is
    "another place": (lambda view: view.stock(place="rack/014"), True),
    "popping": (lambda view: view.stock(place="popping/1"), False),
    "the batch, by another question": (
        lambda view: view.once("its batch", lambda inner: inner.stock(batch="00412")), False),
    "what passed": (lambda view: view.passed("2026-11-25T00", "2026-11-25T23"), False),
    "what was told": (lambda view: view.told("", 3), False),
}  # fmt: skip


@pytest.mark.parametrize("name", HOLDS)
def test_an_answer_is_held_until_something_changes_that_it_read(tmp_path, name):
    ledger, asked = opened(tmp_path), []
    read, stays = HOLDS[name]

    def ask() -> object:
        return ledger.view.once(name, lambda view: (asked.append(name), read(view))[1])

    before = ask()
    assert (ask(), len(asked)) == (before, 1)
    ledger.set_local("hand", "a draft")
    assert (ask(), len(asked)) == (before, 1)
    ledger.record(act("a1"))
    assert (ask() == before, len(asked)) == (stays, 1 if stays else 2)
    ledger.undo("a1", act("u1", "undo"))
    ask()
    assert len(asked) == (1 if stays else 3)
    ledger.close()


def test_for_a_rule_it_is_worked_out_each_time_so_that_its_reads_are_noted(tmp_path):
    ledger = opened(tmp_path)
    ledger.view.once("cut", lambda view: view.shelf(Batch, "cut"))
    view = NotingView(ledger._history.reader, EVERY)
    view.once("cut", lambda view: view.shelf(Batch, "cut"))
    assert view.reads == {"shelf/batch/cut"}
    ledger.close()
