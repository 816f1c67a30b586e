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
        for read in READS:
            read(ledger.view)
        if isinstance(step, int):
            ledger.undo(f"a{step}", act(f"u{n}", "undo", batch="elsewhere"))
        elif holds(ledger, step):
            laid[f"a{n}"] = step
            ledger.record(act(f"a{n}", "given"))
        anew = OpenView(Reader(ledger._store, ledger._history.rules))
        for read in READS:
            assert read(ledger.view) == read(anew)
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
    assert ledger.view.once("qty", lambda: 9) == 9
    run("ROLLBACK")
    assert [h.qty for h in ledger.view.stock(batch="00412")] == [6]
    assert ledger.view.once("qty", lambda: 6) == 6
    ledger.close()


@pytest.mark.parametrize("kept", [True, False], ids=["a draft", "an act"])
def test_an_answer_is_held_while_the_hand_changes_and_goes_with_an_act(tmp_path, *, kept):
    ledger, asked = opened(tmp_path), []

    def ask() -> int:
        return ledger.view.once("batches", lambda: asked.append(1) or len(asked))

    assert (ask(), ask()) == (1, 1)
    if kept:
        ledger.set_local("hand", "a draft")
    else:
        ledger.record(act("a1"))
    assert ask() == (1 if kept else 2)
    ledger.close()


def test_for_a_rule_it_is_worked_out_each_time_so_that_its_reads_are_noted(tmp_path):
    ledger = opened(tmp_path)
    ledger.view.once("cut", lambda: ledger.view.shelf(Batch, "cut"))
    view = NotingView(ledger._history.reader, EVERY)
    view.once("cut", lambda: view.shelf(Batch, "cut"))
    assert view.reads == {"shelf/batch/cut"}
    ledger.close()
