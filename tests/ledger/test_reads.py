"""What was read and what was written bear the same names: the ground of sharing."""

from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from station.ledger.codec import read_body
from station.ledger.effects import writes
from station.ledger.view import NotingView
from station.shop.acts import Answer
from station.shop.facts import Batch, Worker
from station.shop.readings import MINUTES
from station.shop.views import View
from tests.ledger import toy
from tests.ledger.test_undo import PLACES, answers, holds
from tests.ledger.toy import EVERY, act, opened

READS: list[Callable[[View], object]] = [
    *(lambda v, n=n: v.get(Worker, n) for n in "123"),
    *(lambda v, n=n: v.get(Batch, n) for n in "12"),
    *(lambda v, n=n: v.stock(batch=n) for n in "12"),
    *(lambda v, p=p: v.stock(place=p) for p in PLACES),
    *(lambda v, p=p: v.stock(batch="1", place=p) for p in PLACES),
    *(lambda v, s=s: v.shelf(Batch, s) for s in ("queue/", "cut", "cancelled")),
    lambda v: v.shelf(Worker, "all"),
    lambda v: v.shelf(Worker, "all", limit=1),
    lambda v: v.last("batch/00412"),
    lambda v: v.last("batch/00412", "given"),
    lambda v: v.last("batch/9"),
    *(lambda v, n=n: v.past(f"a{n}") for n in range(4)),
    *(lambda v, s=s: v.series(s, "size/A") for s in ("part/1", "router/1", "router/2")),
    lambda v: v.series("router/1", MINUTES),
]


def noted(ledger, read) -> tuple[set[str], object]:
    view = NotingView(ledger._history.reader, EVERY)
    found = read(view)
    return view.reads, found


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.lists(st.one_of(answers, st.integers(0, 5)), min_size=2, max_size=8))
@pytest.mark.slow
def test_an_entry_that_changes_what_was_read_names_it(tmp_path_factory, work):
    laid: dict[str, Answer] = {}
    ledger = opened(tmp_path_factory.mktemp("reads"), given=toy.given(laid))
    ledger._store.run("PRAGMA synchronous=OFF")
    for n, step in enumerate(work):
        before = [noted(ledger, read) for read in READS]
        if isinstance(step, int):
            done = ledger.undo(f"a{step}", act(f"u{n}", "undo", batch="elsewhere"))
        elif holds(ledger, step):
            laid[f"a{n}"] = step
            done = ledger.record(act(f"a{n}", "given"))
        else:
            continue
        if done.entry is None:
            continue
        newest = "SELECT body FROM entry ORDER BY number DESC LIMIT 1"
        written = set(writes(read_body(ledger._store.run(newest).fetchone()[0])))
        for (names, found), read in zip(before, READS, strict=True):
            if noted(ledger, read)[1] != found:
                assert names & written, (names, written)
    ledger.close()
