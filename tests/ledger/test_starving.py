"""Hundreds of acts wait, and others go on writing what all of them read: they are shared all the
same, group by group.

Time here is made: each act that is undone or decided again takes a millisecond, and a step comes
each 25 ms, as beside a screen.
"""

import time
from dataclasses import replace
from random import Random
from types import SimpleNamespace

import pytest

from station.ledger import absorb
from station.ledger.talk import exchange
from station.sharing import loop as loop_of_station
from station.sharing.loop import Loop
from station.shop.acts import good
from station.shop.facts import Batch
from station.shop.words import say
from tests.ledger.stations import Station, same
from tests.ledger.toy import EVERY, act, new_batch, toy_rule
from tests.simulate.shop import MemoryShop

WAITING = 400
TICK, WORK, WRITTEN_EVERY = 0.025, 0.001, 0.3  # seconds
MOST = 40  # times that others may write before all is shared: twelve seconds


class MadeTime:
    """A clock that goes on with each act that is worked on, and with each step."""

    def __init__(self) -> None:
        self.now = 0.0

    def work(self) -> float:
        """An act was worked on."""
        self.now += WORK
        return self.now


@pytest.fixture
def made(monkeypatch):
    clock = MadeTime()
    monkeypatch.setattr(absorb, "perf_counter", clock.work)
    read = SimpleNamespace(perf_counter=lambda: clock.now, monotonic=time.monotonic)
    monkeypatch.setattr(loop_of_station, "time", read)
    monkeypatch.setattr(loop_of_station, "random", Random(1))
    return clock


@pytest.fixture
def two(tmp_path):
    """Station 1 was cut off while hundreds of acts were done there, on ten batches."""
    shop = MemoryShop()
    a, b = (Station(tmp_path / n, n, shop) for n in "12")
    for station in (a, b, a, b):
        station.ledger.hurry(on=True)
        station.share()
    a.link.cut = True
    b.rules["all"] = toy_rule(EVERY, touch_all)
    for n in range(WAITING):
        a.ledger.record(act(f"mine{n}", batch=f"{n % 10:05d}"))
    write_all(b, 0)
    a.link.cut = False
    return a, b


def touch_all(_act, view):
    """A sheet more of each of the ten batches."""
    batches = [view.get(Batch, f"{n:05d}") or new_batch(f"{n:05d}") for n in range(10)]
    return good(say("All"), sets=tuple(replace(b, cut=b.cut + 1) for b in batches))


def write_all(b, number):
    """Another station writes what all that waits has read."""
    b.ledger.record(replace(act(f"all{number}", "all"), station="2"))
    for _ in range(2):
        b.share()


def shared_by_steps(a, b, made, scan=lambda _: None):
    """Steps until all that waited is shared; gives how often others wrote meanwhile."""
    loop, entries, written = Loop(a.ledger, lambda: a.link, clock=lambda: made.now), [], 0
    while sum(e.id.startswith("mine") for e in entries) < WAITING and written < MOST:
        began = made.now
        loop.step()
        while loop._asking and loop._news.empty():  # the network takes less than a tick
            time.sleep(0.0001)
        made.now = max(made.now, began + TICK)
        if made.now // WRITTEN_EVERY > written:
            written += 1
            write_all(b, written)
        scan(made.now)
        entries = a.link.shop.entries
    loop.close()
    return written


def hold(a, b):
    """All is shared once, nothing is lost, and both hold the same."""
    for station in (a, b, a, b):
        station.share()
    ids = [e.id for e in a.link.shop.entries]
    assert len(ids) == len(set(ids))
    assert {f"mine{n}" for n in range(WAITING)} <= set(ids)
    mine = [id_ for id_ in ids if id_.startswith("mine")]
    assert mine == [f"mine{n}" for n in range(WAITING)]
    assert not a.ledger.not_shared()
    assert same(a, b)
    assert a.ledger.check() == []


@pytest.mark.slow
def test_all_is_shared_while_others_write_what_it_read(two, made):
    a, b = two
    assert shared_by_steps(a, b, made) < MOST
    hold(a, b)


@pytest.mark.slow
def test_scans_meanwhile_put_it_off_and_nothing_is_lost(two, made):
    """What was shared by then is found again; a scan comes every second, on a batch of its own."""
    a, b = two
    scans = []

    def scan(now):
        if now > len(scans) + 1:
            done = a.ledger.record(act(f"scan{len(scans)}", batch=f"{90000 + len(scans)}"))
            scans.append(done.entry)

    assert shared_by_steps(a, b, made, scan) < MOST
    hold(a, b)
    assert len(scans) > 3
    assert set(scans) <= {e.id for e in a.link.shop.entries}


@pytest.mark.slow
def test_lost_replies_meanwhile_do_nothing_twice(two, made):
    """Every other second what is shared gets through, and no answer comes back."""
    a, b = two

    def lose(now):
        a.link.deaf = now % 2 > 1

    shared_by_steps(a, b, made, lose)
    a.link.deaf = False
    hold(a, b)


def test_an_act_that_turned_and_was_shared_ahead_is_told_though_a_scan_put_that_off(two):
    """It was nobody's news yet when the scan came."""
    a, b = two
    for station in (a, b, a, b):
        station.share()
    a.link.cut = True
    for n, kind in enumerate(("pop", "pop")):
        assert a.ledger.record(act(f"pop{n}", kind, batch=f"{n:05d}")).entry
    b.ledger.record(replace(act("before", "pop", batch="00000"), station="2"))
    b.share()
    a.link.cut = False
    news = exchange(a.link, a.ledger.offer())
    while not (ahead := a.ledger.offer_ahead()) or not ahead.rows:
        assert a.ledger.take_news_until(news, 0.0, by_groups=True) is None
    assert [bool(row.verdict) for row in ahead.rows] == [True]
    assert exchange(a.link, ahead).state == "shared"
    assert a.ledger.record(act("scan", batch="90000")).entry
    a.turned.clear()
    a.share()
    assert [(t.id, str(t.answer.said)) for t in a.turned] == [("pop0", "Nothing waits")]


def test_a_twins_act_among_what_comes_meanwhile_is_noticed(two):
    """Another PC works under this one's number; what it did comes while a page is half in."""
    a, b = two
    for station in (a, b, a, b):
        station.share()
    a.link.cut = True
    a.ledger.record(act("more", batch="00000"))
    write_all(b, 1)
    a.link.cut = False
    news = exchange(a.link, a.ledger.offer())
    while not (ahead := a.ledger.offer_ahead()) or not ahead.rows:
        assert a.ledger.take_news_until(news, 0.0, by_groups=True) is None
    b.ledger.record(act("twin's", batch="00000"))
    b.share()
    came = exchange(a.link, ahead)
    assert came.state == "behind"
    assert not a.ledger.take_more(came.entries)
    assert not a.ledger.has_twin
    a.share()
    assert a.ledger.has_twin


@pytest.mark.slow
def test_scans_while_much_arrives_are_not_held_up(tmp_path, made):
    """A station that comes late is behind at each word of its own: that is no starving.

    Taken in by groups, all that had come was begun anew with each scan, a hundred times, and then
    done in one step that held the screen.
    """
    shop = MemoryShop()
    a, b = (Station(tmp_path / n, n, shop) for n in "12")
    for station in (a, b):
        station.ledger.hurry(on=True)
        station.share()
    for n in range(6000):
        b.ledger.record(replace(act(f"other{n}", batch=f"{n % 10:05d}"), station="2"))
        if n % 500 == 499:
            b.share()
    loop, steps, scans = Loop(a.ledger, lambda: a.link, clock=lambda: made.now), [], 0
    while scans < 150 or a.ledger.not_shared():
        began = made.now
        loop.step()
        while loop._asking and loop._news.empty():  # the network takes less than a tick
            time.sleep(0.0001)
        steps.append(made.now - began)
        made.now = max(made.now, began + TICK)
        if scans < 150:
            a.ledger.record(act(f"scan{scans}", batch=f"{90000 + scans}"))
            scans += 1
            loop.kick()
    loop.close()
    assert max(steps) < 0.05
    for station in (a, b, a, b):
        station.share()
    assert same(a, b)
    assert a.ledger.check() == []
