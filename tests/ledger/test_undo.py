from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from station.ledger.codec import Body
from station.ledger.effects import apply_tally
from station.shop.acts import Answer, good
from station.shop.facts import Batch, Gone, Worker
from station.shop.moves import Move, Spot, move
from station.shop.places import balances
from station.shop.readings import MINUTES, Reading
from station.shop.words import say
from tests.ledger import toy
from tests.ledger.toy import AT, act, opened, tables_of


def test_undo_brings_back_the_state_before(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    before = tables_of(ledger)
    ledger.record(act("b", at="2026-11-25T11:00:00"))
    done = ledger.undo("b", act("u", "undo", at="2026-11-25T12:00:00"))
    assert str(done.answer.said) == "Taken back: 6 cut, sheet 2"
    assert done.moves[0].frm.place == "popping/1"
    assert tables_of(ledger) == before
    assert ledger.view.past("b").undone
    assert not ledger.view.past("a").undone
    assert len(ledger.flow("2026", "2027")) == 1
    assert ledger.check() == []


def test_a_clock_of_a_year_that_none_can_be_in_takes_nothing_back(tmp_path):
    """It was recorded, called damaged at the next check, and mended away at the next start."""
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    done = ledger.undo("a", act("u", "undo", at="2200-01-01T00:00:00"))
    assert str(done.answer.said) == "This PC's clock is wrong: nothing was counted"
    assert done.entry is None
    assert ledger.check() == []


def test_acts_are_taken_back_in_turn(tmp_path):
    ledger = opened(tmp_path)
    for name in "abc":
        ledger.record(act(name))
    for name in "cba":
        assert ledger.undo(name, act(f"u{name}", "undo")).entry
    assert tables_of(ledger) == [[], [], [], []]
    assert ledger.check() == []


def test_an_undo_is_taken_back(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    before = tables_of(ledger)
    ledger.undo("a", act("u", "undo"))
    assert ledger.undo("u", act("v", "undo")).entry
    assert not ledger.view.past("a").undone
    assert tables_of(ledger)[0] == before[0]
    assert ledger.view.get(Batch, "00412").cut == 1
    assert len(ledger.flow("2026", "2027")) == 1
    assert ledger.check() == []
    assert ledger.undo("a", act("w", "undo")).entry
    assert ledger.check() == []


def test_taken_back_again_and_again_it_counts_once_or_not_at_all(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    counted = tables_of(ledger)[2]
    for n, (last, name) in enumerate(pairwise("abcdef")):
        later = act(name, "undo", at=f"2026-11-25T{11 + n}:00:00")
        assert ledger.undo(last, later).entry
        assert tables_of(ledger)[2] == (counted if n % 2 else [])
    assert ledger.check() == []


def test_what_comes_to_nothing_is_no_row(tmp_path):
    """Somebody's hand-made reversal can have taken away what was never there."""
    ledger = opened(tmp_path)
    moves = (move("014", 3, "cut", "popping/1", "00412"),)
    wrong = Body(act("u"), "good", reverses="x", reversed_at=AT, moves=(moves[0].back(),))
    for body in (wrong, Body(act("a"), "good", moves=moves)):
        apply_tally(ledger._store.connection, body)
    assert tables_of(ledger)[2] == []


def test_undo_is_refused_with_a_reason(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    ledger.record(act("p", "pop"))
    cases = {"a": "gone on", "zz": "nothing to take back"}
    for name, words in cases.items():
        done = ledger.undo(name, act(f"u{name}", "undo"))
        assert (done.entry, done.answer.tone, done.answer.refused) == (None, "stop", True)
        assert words in str(done.answer.said)
    assert ledger.undo("p", act("up", "undo")).entry
    assert "already" in str(ledger.undo("p", act("up2", "undo")).answer.said)
    ledger.record(act("b"))
    assert "changed since" in str(ledger.undo("a", act("ua2", "undo")).answer.said)
    assert ledger.count() == 4


def test_undo_again_by_the_same_act(tmp_path):
    ledger = opened(tmp_path)
    ledger.record(act("a"))
    first = ledger.undo("a", act("u", "undo"))
    assert ledger.undo("a", act("u", "undo")) == first
    assert ledger.count() == 2


def test_numbers_are_not_given_back(tmp_path):
    ledger = opened(tmp_path)
    ledger.take_number("batch")
    (entry,) = ledger.entries()
    assert ledger.undo(entry.id, act("u", "undo")).entry is None


PLACES = ("cut", "popping/1", "trimming", "rack/014", "spoiled/01", "found")
spots = st.builds(Spot, st.sampled_from(PLACES), st.sampled_from(("1", "2")))
moves = st.builds(Move, st.sampled_from(("014", "015")), st.integers(1, 4), spots, spots)
facts = st.one_of(
    st.builds(Worker, id=st.sampled_from("123"), active=st.booleans()),
    st.builds(
        Batch,
        id=st.sampled_from("12"),
        cut_file=st.just("1"),
        revision=st.just("A"),
        state=st.sampled_from(("queued", "cut", "cancelled")),
        due=st.sampled_from(("", "2026-11-26T10:00:00", "2026-11-27T10:00:00")),
    ),
    st.sampled_from("123").map(lambda n: Gone(id=n, gone=f"worker/{n}")),
)
readings = st.builds(
    Reading,
    subject=st.sampled_from(("part/1", "router/1")),
    kind=st.sampled_from(("size/A", MINUTES)),
    value=st.integers(1, 9),
    router=st.sampled_from(("", "1", "2")),
)
answers = st.builds(
    lambda m, f, router, r: replace(
        good(say("done"), moves=tuple(m), sets=tuple({x.key: x for x in f}.values())),
        router=router,
        readings=tuple(r),
    ),
    st.lists(moves, max_size=4),
    st.lists(facts, max_size=3),
    st.sampled_from(("", "1", "2")),
    st.lists(readings, max_size=3),
)
steps = st.lists(st.one_of(answers, st.integers(0, 30)), min_size=4, max_size=40)


def holds(ledger, answer: Answer) -> bool:
    """Whether no spot would fall below zero, reckoned apart from the ledger."""
    left = {(h.place, h.batch, h.part): h.qty for h in ledger.balances()}
    for m in answer.moves:
        for spot, sign in ((m.frm, -1), (m.to, 1)):
            key = (*spot, m.part)
            left[key] = left.get(key, 0) + sign * m.qty
    return all(q >= 0 or balances(place) for (place, _, _), q in left.items())


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(steps)
@pytest.mark.slow
def test_random_effects_rebuild_and_come_back(tmp_path_factory, work):
    """Whatever was recorded and taken back: balanced, sound, equal to a rebuild."""
    laid: dict[str, Answer] = {}
    ledger = opened(tmp_path_factory.mktemp("random"), given=toy.given(laid))
    ledger._store.run("PRAGMA synchronous=OFF")
    done: list[str] = []
    for n, step in enumerate(work):
        if isinstance(step, int):
            if done and ledger.undo(done[step % len(done)], act(f"u{n}", "undo")).entry:
                done.append(f"u{n}")
        elif holds(ledger, step):
            laid[f"a{n}"] = step
            before = tables_of(ledger)
            assert ledger.record(act(f"a{n}", "given")).entry
            assert ledger.undo(f"a{n}", act(f"b{n}", "undo")).entry
            assert tables_of(ledger) == before
            laid[f"c{n}"] = step
            ledger.record(act(f"c{n}", "given"))
            done.append(f"c{n}")
    assert ledger.check() == []
    assert sum(h.qty for h in ledger.balances()) == 0
    before = tables_of(ledger)
    ledger.rebuild()
    assert tables_of(ledger) == before
    ledger.close()
