"""What a stolen station password can do: nothing but what its own station may.

The thief has the password alone and speaks SQL, with time-outs of its own choosing.
"""

import json
import sqlite3
import threading
import time
from dataclasses import replace
from datetime import datetime

import psycopg
import pytest

from station.ledger.codec import Body, Change, State, read_body, state_of, write_body
from station.ledger.effects import writes
from station.shop.facts import Batch, Concern, Shop, Worker
from station.shop.facts import Station as Told
from station.shop.moves import move
from station.shop.readings import Reading
from station.shop.times import count_seconds
from tests.ledger.kept import HERE
from tests.ledger.toy import act
from tests.sharing.test_push import PUSH, at, numbers
from tests.sharing.two import Station, healed

pytestmark = pytest.mark.slow  # asks a whole server

THIEF = "3"


@pytest.fixture
def two(tmp_path, shop):
    """The thief's station and an honest one, which has cut six pieces."""
    stations = [Station(tmp_path, shop, n) for n in ("2", THIEF)]
    stations[0].do("honest")
    healed(*stations)
    yield stations
    for station in stations:
        station.close()


def forged(id="forged", station=THIEF, **given):
    """The body of an act that a thief writes down."""
    made = replace(act(id, "pop"), station=station, args=_raw({}))
    return Body(act=made, tone="good", **given)


def _raw(args):
    import msgspec  # noqa: PLC0415 - here alone

    return msgspec.Raw(json.dumps(args).encode())


def push(link, body, *, claims=None, head=None):
    """Pushes as the thief, with its own claim of what the act writes; gives the outcome."""
    number, digest = head or at(link)
    claimed = json.dumps(writes(body) if claims is None else claims)
    given = (number, digest, 1, [], [body.act.id], [""], [claimed], [write_body(body)])
    return link.execute(PUSH, given).fetchone()[0]


def refused(shop, body, match, **given):
    before = numbers(shop)
    with shop.station(THIEF) as link, pytest.raises(psycopg.Error, match=match):
        push(link, body, **given)
    assert numbers(shop) == before


PIECES = (move("014", 6, "cut", "popping/1", "00412"),)


@pytest.mark.parametrize("station", ["2", "1", "", "33"])
def test_it_forges_no_act_of_another_station(shop, two, station):
    refused(shop, forged(station=station, moves=PIECES), "another station")


def test_what_its_own_station_may_goes_on(shop, two):
    with shop.station(THIEF) as link:
        assert push(link, forged(moves=PIECES)) == "pushed"
    healed(*two)


def test_it_hides_no_station_behind_a_second_name(shop, two):
    """Of two values of one name the reader of a body takes the last, and so may the server."""
    text = write_body(forged(moves=PIECES))
    for twice in (
        text.replace('"station":"3"', '"station":"2","station":"3"'),
        text.replace('"station":"3"', '"station":"3","station":"2"'),
        text.replace('"station":"3"', '"station":"3","st\\u0061tion":"2"'),
        text.replace('"tone"', '"act":{"id":"forged","station":"3"},"tone"'),
    ):
        assert twice != text
        with shop.station(THIEF) as link, pytest.raises(psycopg.Error, match="twice"):
            link.execute(PUSH, (*at(link), 1, [], ["forged"], [""], ["[]"], [twice]))


def test_an_id_that_is_not_the_act_s_is_refused(shop, two):
    text = write_body(forged())
    with shop.station(THIEF) as link, pytest.raises(psycopg.Error, match="another act"):
        link.execute(PUSH, (*at(link), 1, [], ["other"], [""], ["[]"], [text]))


@pytest.mark.parametrize("claims", [[], ["act/forged"], ["no/such"]])
def test_an_entry_that_hides_what_it_writes_voids_no_honest_act(shop, two, claims):
    honest, _ = two
    batch = honest.ledger.view.get(Batch, "00412")
    state = honest.ledger._history.reader.state("batch/00412")
    body = forged(sets=(Change(batch.key, state, state_of(replace(batch, cut=9))),))
    honest.do("later")
    offer = honest.ledger.offer()
    with shop.station(THIEF) as link:
        push(link, body, claims=claims)
    outcome = honest.link.push(*offer.head, offer.format, offer.reads, offer.rows)
    assert type(outcome).__name__ == "Behind"
    healed(*two)
    later = next(e for e in honest.ledger.entries() if e.id == "later")
    assert later.kind == "cut"
    assert not list(honest.ledger.facts(Concern))


def test_the_server_works_out_what_an_act_writes_as_the_station_does(shop, two):
    honest, _ = two
    honest.do("more")
    honest.undo("more", "back")
    honest.do("on", "pop")
    healed(*two)
    with shop.station(THIEF) as link:
        rows = link.execute("SELECT writes, body FROM shop.entry").fetchall()
    assert len(rows) == 4
    for found, text in rows:
        assert sorted(found) == writes(read_body(text))


READ = [
    Reading(subject=subject, kind="size A", value=1.0, part="014", router=router, bit=router)
    for subject in ("part/014", "batch/00412")
    for router in ("", "1")
]


def test_so_it_does_of_an_act_that_writes_much(shop):
    """Acts as a shop has kept them, and more of all kinds than any of them holds."""
    kept = sqlite3.connect(":memory:")
    kept.executescript((HERE / "shop.sql").read_text(encoding="utf-8"))
    texts = [text for (text,) in kept.execute("SELECT body FROM entry")]
    for count in (1, 9, 300):
        moves = [move("014", 1, "cut", f"rack/A{n % 9}", f"{n:05d}") for n in range(count)]
        sets = [
            Change(f"batch/{n}", None if n % 2 else shelved(n), shelved(n // 2))
            for n in range(count)
        ]
        made = forged(moves=tuple(moves), sets=tuple(sets), readings=tuple(READ))
        texts.append(write_body(made))
    with shop.admin() as admin:
        for text in texts:
            asked = "SELECT shop.written(shop.read_body(%s))"
            ((found,),) = admin.execute(asked, (text,)).fetchall()
            assert sorted(found) == writes(read_body(text))


def shelved(n):
    """The state of a fact that stands on one of nine shelves."""
    return State(_raw({}), f"batch/{n % 9}", "")


PEOPLE = [
    Worker(id="01", supervisor=True, pin="$argon2id$mine"),
    Shop(id="shop", recount_limit=10**6),
]


@pytest.mark.parametrize("fact", PEOPLE, ids=lambda fact: fact.key)
def test_it_changes_no_pin_and_no_setting(shop, two, fact):
    with shop.admin() as admin:
        admin.execute("UPDATE shop.site SET office = '{2}'")
    state = two[0].ledger._history.reader.state(fact.key)
    refused(shop, forged(sets=(Change(fact.key, state, state_of(fact)),)), "office")


@pytest.mark.parametrize("number", ["2", THIEF])
def test_it_tells_of_no_other_station_how_it_is(shop, two, number):
    told = (Change(f"station/{number}", None, state_of(Told(id=number, trouble="x"))),)
    if number == THIEF:
        with shop.station(THIEF) as link:
            assert push(link, forged(sets=told)) == "pushed"
    else:
        refused(shop, forged(sets=told), "another station")


@pytest.mark.parametrize("how", ["idle", "at work", "a word now and then"])
def test_who_holds_sharing_up_is_cut_off(shop, two, how):
    honest, _ = two
    body = forged(moves=PIECES)
    thief = shop.station(THIEF)
    for name in ("statement_timeout", "idle_in_transaction_session_timeout", "lock_timeout"):
        thief.execute(f"SET {name} = 0")
    stop = threading.Event()

    def hold():
        try:
            thief.execute("BEGIN")
            push(thief, body)
            while not stop.wait(0.3):
                if how == "at work":
                    thief.execute("SELECT pg_sleep(60)")
                if how == "a word now and then":
                    thief.execute("SELECT 1")
        except psycopg.Error:
            pass

    holder = threading.Thread(target=hold)
    holder.start()
    try:
        time.sleep(0.5)
        honest.do("held up")
        began = time.monotonic()
        while honest.ledger.not_shared():
            honest.talk()
            assert time.monotonic() - began < 8, "held up"
    finally:
        stop.set()
        thief.close()
        holder.join(10)
    assert "forged" not in honest.ids()
    honest.share()
    held, held_at = honest.ledger.held
    assert held == THIEF
    assert 0 <= count_seconds(held_at, datetime.now().isoformat(timespec="seconds")) < 60
    with pytest.raises(psycopg.Error, match="held"), shop.station(THIEF) as again:
        push(again, body)
