"""A push lets the site's row go before the disk has it, and yet nobody is told sooner.

The server is stopped as by a power cut: what of its log stands in memory alone is lost.
"""

import threading
import time

import pytest

from station.ledger.shop_link import Away, Pushed, SharedRow
from station.sharing import link as links
from station.sharing.link import PostgresLink
from tests.server import AT_ONCE, Server
from tests.sharing.shop import found
from tests.sharing.test_link import link_of
from tests.sharing.test_push import body_of, chained, numbers, push

pytestmark = pytest.mark.slow  # asks a whole server

STATIONS = ("2", "3", "4")


@pytest.fixture
def falling():
    """A server of its own, for it is stopped at once."""
    server = Server()
    yield server
    server.remove()


def row(id, station="2"):
    return SharedRow(id, "", (), body_of(id, station))


def push_on(link, station, told, ready):
    """Pushes one act after the other until the shop is away; notes what was acknowledged."""
    head, n = (0, b""), 0
    ready.wait()
    try:
        while n < 5000:
            done = link.push(*head, 1, [], [row(f"{station}-{n}", station)])
            assert isinstance(done, Pushed)
            told.append(f"{station}-{n}")
            head, n = (done.number, done.digest), n + 1
    except Away:
        pass


def pull_on(link, seen, ready):
    """Pulls until the shop is away; notes what was seen."""
    ready.wait()
    try:
        while True:
            for entry in link.pull(len(seen), 500):
                seen.append((entry.id, entry.digest))
    except Away:
        pass


def cut_while_pushing(server, shop):
    """What was acknowledged, what another had seen, and what is there after a power cut."""
    told, seen, ready = [], [], threading.Barrier(len(STATIONS) + 2)
    work = [
        threading.Thread(target=push_on, args=(link_of(shop, n), n, told, ready)) for n in STATIONS
    ]
    work.append(threading.Thread(target=pull_on, args=(link_of(shop, "9"), seen, ready)))
    for thread in work:
        thread.start()
    ready.wait()
    time.sleep(0.4)
    server.stop(AT_ONCE)
    for thread in work:
        thread.join()
    server.start()
    with shop.admin() as admin:
        asked = "SELECT number, id, body, digest FROM shop.entry ORDER BY number"
        there = admin.execute(asked).fetchall()
        ((number, digest),) = admin.execute("SELECT number, digest FROM shop.site").fetchall()
    assert [r[0] for r in there] == list(range(1, len(there) + 1))
    assert (number, digest) == (len(there), chained(*(r[1:3] for r in there)))
    return told, seen, [(r[1], bytes(r[3])) for r in there]


def let_lie(shop):
    """Nobody writes the log but who waits for it."""
    with shop.admin() as admin:
        admin.execute("ALTER SYSTEM SET wal_writer_delay = '10s'")
        admin.execute("SELECT pg_reload_conf()")


def test_what_was_acknowledged_or_seen_is_there_after_a_power_cut(falling):
    shop = found(falling)
    let_lie(shop)
    told, seen, there = cut_while_pushing(falling, shop)
    assert len(told) > 10
    assert set(told) <= {id_ for id_, _ in there}
    assert seen == there[: len(seen)]


def test_without_waiting_it_would_not_be(falling, monkeypatch):
    """The control: neither who pushes nor who pulls waits for the disk."""
    monkeypatch.setattr(links, "PUSH_ONE_ALONE", links.PUSH_ONE)
    shop = found(falling)
    let_lie(shop)
    with shop.admin() as admin:
        waits = "CREATE OR REPLACE FUNCTION shop.settle() RETURNS boolean LANGUAGE sql AS "
        admin.execute(f"{waits} 'SELECT true'")
    told, seen, there = cut_while_pushing(falling, shop)
    assert not set(told) <= {id_ for id_, _ in there}
    assert seen != there[: len(seen)]


@pytest.mark.parametrize("pulled", [True, False])
def test_who_pulls_waits_for_what_others_have_not_waited_for(falling, pulled):
    shop = found(falling)
    let_lie(shop)
    other = link_of(shop, "3")
    assert other.pull(0, 10) == []
    with shop.station("2") as hasty:
        hasty.execute("SET synchronous_commit = off")
        assert push(hasty)[0] == "pushed"
        if pulled:
            assert [entry.id for entry in other.pull(0, 10)] == ["a"]
        falling.stop(AT_ONCE)
    falling.start()
    assert numbers(shop) == ([1] if pulled else [])


def test_the_row_is_free_while_the_disk_is_waited_for(shop):
    one, two, three = (link_of(shop, number) for number in "234")
    head = link_of(shop).push(0, b"", 1, [], [row("a")])
    done, mark = [], shop.names.station("2")
    with shop.admin() as admin, admin.transaction():
        admin.execute("SELECT FROM shop.mark WHERE role = %s FOR UPDATE", (mark,))
        waits = threading.Thread(
            target=lambda: done.append(one.push(head.number, head.digest, 1, [], [row("b")]))
        )
        waits.start()
        until = time.monotonic() + 1.5
        while not (seen := two.pull(1, 10)) and time.monotonic() < until:
            time.sleep(0.01)
        assert [entry.id for entry in seen] == ["b"]
        assert three.push(2, seen[0].digest, 1, [], [row("c", "4")]).number == 3
        assert not done  # it does not know yet, for the disk might not have it
    waits.join()
    assert done == [Pushed(2, seen[0].digest)]


def test_who_is_alone_waits_for_the_disk_in_its_own_commit(shop, monkeypatch):
    asked, push_by = [], PostgresLink._push_by

    def noted(link, statement, *given):
        asked.append(statement)
        return push_by(link, statement, *given)

    monkeypatch.setattr(PostgresLink, "_push_by", noted)
    one, two = link_of(shop), link_of(shop, "3")
    first = one.push(0, b"", 1, [], [row("a")])
    second = one.push(*first, 1, [], [row("b")])
    two.push(*second, 1, [], [row("c", "3")])
    assert one.push(*second, 1, [], [row("d")]).number == 4
    assert one.push(*second, 1, [], [row("e")]).number == 5
    alone, among_others = links.PUSH_ONE_ALONE, links.PUSH_ONE
    assert asked == [among_others, alone, among_others, alone, among_others]


@pytest.mark.parametrize("step", "123456")
def test_a_database_of_before_is_asked_as_before_and_told(server, step):
    shop = found(server, step=step)
    one, two = link_of(shop), link_of(shop, "3")
    assert one.head().is_old
    first = one.push(0, b"", 1, [], [row("a")._replace(writes=("claimed",))])
    second = one.push(*first, 1, [], [row("b")])
    assert one.push(*second, 1, [], [row("c"), row("d")]).number == 4
    assert [entry.id for entry in two.pull(0, 10)] == ["a", "b", "c", "d"]
    with shop.admin() as admin:
        ((writes,),) = admin.execute("SELECT writes FROM shop.entry WHERE number = 1").fetchall()
    assert sorted(writes) == (["claimed"] if step == "1" else ["about/", "act/a", "w"])


def test_a_database_of_now_is_told_from_one_of_before(shop):
    assert not link_of(shop).head().is_old


def test_a_refusal_comes_through_and_leaves_nothing_behind(shop):
    link = link_of(shop)
    with pytest.raises(Away):
        link.push(0, b"", 1, [], [row("a", "3")])
    assert link.push(0, b"", 1, [], [row("a")]).number == 1
