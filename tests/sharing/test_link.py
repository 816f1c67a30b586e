"""The link to the shop's database: what it brings, and how it takes a bad network."""

import re
import socket
import threading
import time
from dataclasses import replace

import psycopg
import pytest

from station.ledger.shop_link import (
    Away,
    Behind,
    HistoryDiffers,
    Pushed,
    SharedEntry,
    SharedRow,
    TooOld,
)
from station.sharing.address import Address
from station.sharing.link import PULL, PostgresLink
from tests.server import free_port
from tests.sharing.test_push import body_of, chained

pytestmark = pytest.mark.slow  # asks a whole server

ROW = SharedRow("a", "", (), body_of("a", said="½ ×"))


def row(id):
    return SharedRow(id, "", (), body_of(id))


def link_of(shop, number="2", port=0):
    shop.station(number).close()
    address = Address("127.0.0.1", port or shop.server.port, shop.database)
    return PostgresLink(address, shop.names.station(number), lambda: shop.passwords[number])


def test_what_is_pushed_is_pulled(shop):
    one, two = link_of(shop), link_of(shop, "3")
    digest = chained(("a", ROW.body))
    assert one.push(0, b"", 1, [], [ROW]) == Pushed(1, digest)
    assert two.pull(0, 10) == [SharedEntry(1, "a", "", ROW.body, digest)]
    assert two.pull(1, 10) == []
    head = two.head()
    assert head[:5] == (shop.names.site, 1, 1, digest, 1)
    assert abs(head.clock - time.time()) < 5


@pytest.mark.parametrize(
    ("head", "digest", "format", "reads", "outcome"),
    [
        (0, b"", 1, ["w"], Behind()),
        (0, b"", 0, [], TooOld(1)),
        (1, b"x", 1, [], HistoryDiffers()),
    ],
)
def test_what_became_of_a_push(shop, head, digest, format, reads, outcome):
    link = link_of(shop)
    link.push(0, b"", 1, [], [ROW])
    assert link.push(head, digest, format, reads, [row("b")]) == outcome


def test_pages_follow_each_other(shop):
    link = link_of(shop)
    link.push(0, b"", 1, [], [row(f"{n}") for n in range(7)])
    pages = [link.pull(after, 3) for after in (0, 3, 6)]
    assert [e.number for page in pages for e in page] == [1, 2, 3, 4, 5, 6, 7]


def test_a_page_reads_no_more_than_itself(shop):
    """A server knows nothing of a table that has just been filled, and guesses small."""
    with shop.admin() as admin:
        admin.execute(
            "INSERT INTO shop.entry SELECT id, n, n::text, '', '{}', repeat('x', 1000), '', 'me',"
            " now() FROM shop.site, generate_series(1, 9000) n"
        )
        lines = admin.execute("EXPLAIN (ANALYZE, TIMING OFF) " + PULL, (2000, 2500)).fetchall()
    read = [int(rows) for line in lines for rows in re.findall(r"actual rows=(\d+)", line[0])]
    assert max(read) == 500


def test_a_lost_connection_is_made_anew(shop):
    link = link_of(shop)
    link.head()
    with shop.admin() as admin:
        admin.execute(
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE usename = %s",
            (link.role,),
        )
    assert link.head().number == 0


def test_nobody_there_is_told(shop):
    with pytest.raises(Away, match="does not answer"):
        link_of(shop, port=free_port()).head()


def test_a_wrong_password_is_told(shop):
    link = link_of(shop)
    shop.passwords["2"] = "another"
    with pytest.raises(Away, match="new join card"):
        link.head()


def test_a_server_that_says_nothing_is_given_up(shop):
    with socket.create_server(("127.0.0.1", 0)) as silent:
        began = time.monotonic()
        with pytest.raises(Away):
            link_of(shop, port=silent.getsockname()[1]).head()
    assert time.monotonic() - began < 5


def test_an_answer_that_never_comes_is_given_up(shop):
    link = link_of(shop)
    link.head()
    assert link._connection
    link._connection.patience = 0.5
    with shop.admin() as admin, admin.transaction():
        admin.execute("UPDATE shop.site SET epoch = 1")
        began = time.monotonic()
        with pytest.raises(Away):
            link.push(0, b"", 1, [], [ROW])
    assert time.monotonic() - began < 2
    link.push(0, b"", 1, ["w"], [ROW])  # it may have been done after all: never twice
    assert [e.id for e in link.pull(0, 10)] == ["a"]


def test_what_the_database_refuses_is_away_and_not_for_ever(shop):
    link = link_of(shop)
    with pytest.raises(Away, match="refused what was sent"):
        link.push(0, b"", 1, [], [ROW._replace(id="")])
    assert link.push(0, b"", 1, [], [ROW]).number == 1


def test_a_database_that_is_not_there_is_no_server_that_does_not_answer(shop):
    link = link_of(shop)
    link.address = replace(link.address, database="none_such")
    with pytest.raises(Away, match="There is no database none_such on the server at"):
        link.head()


@pytest.mark.parametrize("rows", [[ROW], [ROW, ROW._replace(id="b")]])
@pytest.mark.parametrize("field", ["id", "verdict", "body", "reads"])
def test_a_text_that_the_server_cannot_hold_is_refused_not_cut(shop, rows, field):
    """A text with a zero in it would end there, where its length did not go along."""
    link, cut = link_of(shop), "x\0y"
    reads = [cut] if field == "reads" else []
    bent = [*rows[:-1], rows[-1]._replace(**{field: cut})] if field != "reads" else rows
    with pytest.raises(Away, match="refused what was sent"):
        link.push(0, b"", 1, reads, bent)
    assert link.head().number == 0


def test_a_server_s_full_disk_is_called_so(shop, monkeypatch):
    """It answered all the while, and the network was searched for what was wrong."""
    link = link_of(shop)

    def fill(*_given):
        raise psycopg.errors.DiskFull("could not extend file: No space left on device")

    monkeypatch.setattr(link, "_push_by", fill)
    with pytest.raises(Away, match=r"The disk of the server at .* is full"):
        link.push(0, b"", 1, [], [ROW])


def test_a_server_without_encryption_is_refused_over_a_wire(shop):
    local = Address("127.0.0.1", shop.server.port, shop.database, sslmode="require")
    shop.station().close()
    link = PostgresLink(local, shop.names.station("2"), lambda: shop.passwords["2"])
    with pytest.raises(Away):
        link.head()


def test_calls_from_two_threads_take_turns(shop):
    link = link_of(shop)
    found = []
    threads = [
        threading.Thread(target=lambda: found.extend(link.head().number for _ in range(20)))
        for _ in range(2)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert found == [0] * 40
