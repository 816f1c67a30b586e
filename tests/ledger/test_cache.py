"""What was read is held until it changes: never longer, and not while it may be rolled back."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from station.ledger.talk import exchange
from station.ledger.view import NotingView, OpenView, Reader
from station.shop.acts import Answer
from station.shop.facts import Batch
from tests.ledger import toy
from tests.ledger.stations import Station
from tests.ledger.test_reads import READS
from tests.ledger.test_undo import answers, holds
from tests.ledger.toy import EVERY, act, opened
from tests.simulate.shop import MemoryShop


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


DEEDS = st.tuples(st.sampled_from("12"), answers, st.integers(0, 3))


@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.lists(DEEDS, min_size=3, max_size=6))
@pytest.mark.slow
def test_what_is_held_is_what_would_be_read_while_others_news_come(tmp_path_factory, deeds):
    """News is taken in by steps; some of them stand open while a face reads, and are put off."""
    laid: dict[str, Answer] = {}
    shop, folder = MemoryShop(), tmp_path_factory.mktemp("news")
    one, two = (Station(folder / n, n, shop, given=toy.given(laid)) for n in "12")
    for station in (one, two):
        station.ledger.hurry(on=True)
        station.share()
    for n, (number, answer, steps) in enumerate(deeds):
        station = one if number == "1" else two
        if holds(station.ledger, answer):
            laid[f"a{n}"] = answer
            station.ledger.record(replace(act(f"a{n}", "given"), station=number))
        two.share()
        news = exchange(one.link, one.ledger.offer())
        for _ in range(steps):
            if one.ledger.take_news_until(news, 0.0) is not None:
                break
            assert_held_is_read(one.ledger, aside=n % 2 == 0)
        else:
            one.share()
        assert_held_is_read(one.ledger)
    for station in (one, two):
        station.ledger.close()


def assert_held_is_read(ledger, *, aside=False):
    """What is held is the same as what is read; `aside`: and is looked at first."""
    held = [ledger.view.once(f"{n}", read) for n, read in enumerate(READS)] if aside else []
    reader = Reader(ledger._store, ledger._history.rules)
    reader.shared = ledger.shared
    anew = OpenView(reader)
    for number, read in enumerate(READS):
        if aside:
            assert held[number] == read(anew)
        assert read(ledger.view) == read(anew)
        assert ledger.view.once(f"{number}", read) == read(anew)


def test_news_drops_what_it_changed_and_leaves_the_rest(tmp_path):
    shop, asked = MemoryShop(), []
    one, two = (Station(tmp_path / n, n, shop) for n in "12")
    one.ledger.record(act("a1"))
    one.share()
    two.share()

    def ask(batch):
        def read(view):
            asked.append(batch)
            return view.stock(batch=batch), view.get(Batch, batch)

        return one.ledger.view.once(batch, read)

    first = ask("00412"), ask("00413")
    two.ledger.record(replace(act("b1", batch="00413"), station="2"))
    two.share()
    news = exchange(one.link, one.ledger.offer())
    while one.ledger.take_news_until(news, 0.0) is None:
        assert one.ledger.is_taking_in
        assert (ask("00412"), ask("00413")) == first  # as it was before, and nothing is put off
        assert one.ledger.is_taking_in
    assert asked == ["00412", "00413"]
    assert ask("00412") == first[0]
    assert [held.qty for held in ask("00413")[0]] == [6]
    assert asked == ["00412", "00413", "00413"]
    for station in (one, two):
        station.ledger.close()


@pytest.mark.parametrize("waits", [False, True])
def test_news_is_there_and_so_is_what_it_made_of_an_act_that_waits(tmp_path, waits):
    """Six are passed on here and wait to be shared when six more come: that needs a look."""
    shop = MemoryShop()
    one, two = (Station(tmp_path / n, n, shop) for n in "12")
    one.ledger.record(act("a1"))
    for station in (one, two, one):  # once more, to hear of the office
        station.share()
    two.ledger.record(replace(act("b1"), station="2"))
    two.share()
    if waits:
        one.ledger.record(act("p1", "pop"))

    def read():
        """Sheets by the batch and by its shelf, pieces at popping and trimming."""
        view, batch = one.ledger.view, "00412"
        places, cut = ("popping/1", "trimming"), view.get(Batch, batch).cut
        lying = [
            view.once(p, lambda inner, p=p: sum(h.qty for h in inner.stock(batch=batch, place=p)))
            for p in places
        ]
        on_shelf = [b.cut for b in view.shelf(Batch, "queue/1")]
        return cut, on_shelf, lying

    assert read() == (1, [1], [0, 6] if waits else [6, 0])
    one.ledger.take_news(exchange(one.link, one.ledger.offer()))
    assert read() == (2, [2], [12, 0])
    for station in (one, two):
        station.ledger.close()


def test_news_that_is_put_off_leaves_what_is_held(tmp_path):
    shop, asked = MemoryShop(), []
    one, two = (Station(tmp_path / n, n, shop) for n in "12")
    two.ledger.record(replace(act("b1"), station="2"))
    two.share()

    def ask():
        return one.ledger.view.once("rack", lambda v: (asked.append(1), v.stock(place="rack/1")))

    ask()
    news = exchange(one.link, one.ledger.offer())
    while one.ledger._store.written == one.ledger._store._began_at:
        assert one.ledger.take_news_until(news, 0.0) is None
    assert one.ledger.view.get(Batch, "00412") is None  # asks the file: news is put off
    assert not one.ledger.is_taking_in
    ask()
    assert asked == [1]
    for station in (one, two):
        station.ledger.close()


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
