"""The talk with the shop beside the work."""

import time

import pytest

from station.sharing.loop import Loop
from station.shop.facts import Batch
from station.window.sharing_words import describe_sharing
from tests.sharing.two import Station

pytestmark = pytest.mark.slow  # asks a whole server


@pytest.fixture
def pair(tmp_path, shop):
    stations = [Station(tmp_path, shop, n) for n in "23"]
    yield stations
    for station in stations:
        station.close()


def until(true, *loops, seconds=15.0):
    end = time.monotonic() + seconds
    while not true():
        for loop in loops:
            loop.step()
        time.sleep(0.005)
        assert time.monotonic() < end


def test_two_stations_share_by_themselves_and_the_loser_is_told(pair):
    one, two = pair
    told = []
    loops = [Loop(one.ledger, lambda: one.link), Loop(two.ledger, lambda: two.link, told.append)]
    one.do("a")
    until(lambda: two.ledger.view.get(Batch, "00412") is not None, *loops)
    one.do("x", "pop")
    loops[0].kick()
    until(lambda: not one.ledger.not_shared(), loops[0])
    two.do("y", "pop")
    until(lambda: told, *loops)
    assert (told[0].id, told[0].answer.tone) == ("y", "attention")
    for loop in loops:
        loop.close()


def test_a_link_that_cannot_be_opened_is_away_and_tried_again(pair):
    one, _ = pair
    tries = []

    def opened():
        tries.append(1)
        if len(tries) < 2:
            raise OSError("no driver")
        return one.link

    loop = Loop(one.ledger, opened)
    until(lambda: loop.state == "shared", loop)
    assert len(tries) == 2
    loop.close()


def test_the_second_pc_under_one_number_stops_and_is_told_to_join(pair):
    one, _ = pair
    loop = Loop(one.ledger, lambda: one.link)
    until(lambda: loop.state == "shared" and not one.ledger.not_shared(), loop)
    told = []
    loop.trouble = told.append
    one.ledger.set_local("twin", one.number)
    one.do("not shared any more")
    until(lambda: told, loop)
    for _ in range(5):
        loop.step()
    assert len(told) == 1
    assert "station join HOST" in str(told[0])
    assert loop.state == "twin"
    assert one.ledger.not_shared()
    words, well = describe_sharing(one.ledger, loop, "2026-11-25T12:42:00")
    assert str(words).startswith("Another PC works as this station: 1 not shared since")
    assert not well
    loop.close()


def test_once_closed_it_leaves_the_file_alone(pair):
    one, _ = pair
    loop = Loop(one.ledger, lambda: one.link)
    loop.close()
    one.ledger.close()
    loop.step()
    one.open()


def full(ledger, *, full):
    """The disk takes nothing more, or has room again."""
    ledger._store.run(f"PRAGMA max_page_count={1 if full else 2**30}")


def test_a_full_disk_is_told_and_sharing_goes_on_once_there_is_room(pair):
    one, two = pair
    loop = Loop(one.ledger, lambda: one.link)
    until(lambda: loop.state == "shared" and not one.ledger.not_shared(), loop)
    for n in range(40):
        two.do(f"m{n}", batch=f"{n:05d}")
    two.share()
    full(one.ledger, full=True)
    until(lambda: "full" in loop.why, loop)
    assert loop.state == "away"
    full(one.ledger, full=False)
    until(lambda: one.ledger.view.past("m39") and loop.state == "shared", loop)
    assert one.ledger.check() == []
    loop.close()


def test_an_offer_that_cannot_be_made_is_made_later(pair, monkeypatch):
    one, _ = pair
    loop = Loop(one.ledger, lambda: one.link)
    until(lambda: loop.state == "shared", loop)
    offer, tries = one.ledger.offer, []

    def fails():
        tries.append(1)
        if len(tries) < 2:
            raise ZeroDivisionError
        return offer()

    monkeypatch.setattr(one.ledger, "offer", fails)
    until(lambda: len(tries) > 1 and loop.state == "shared", loop)
    loop.close()
