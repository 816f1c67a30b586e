"""What the push function does, seen from SQL alone."""

import hashlib
import json
import threading

import psycopg
import pytest

from tests.sharing.shop import found

pytestmark = pytest.mark.slow  # asks a whole server

LIST = "%s::text[]"
PUSH = f"SELECT * FROM shop.push(%s, %s, %s, {LIST}, {LIST}, {LIST}, {LIST}, {LIST})"
APPEND = f"SELECT * FROM shop.append(%s, %s, %s, {LIST}, {LIST}, {LIST}, {LIST})"  # as it is now
APPEND_ONE = f"SELECT * FROM shop.append_one(%s, %s, %s, {LIST}, %s, %s, %s)"  # so is one entry


def body_of(id, station="2", **more):
    """The smallest body that a station may push: it writes a fact `w`."""
    return json.dumps({"act": {"id": id, "station": station}, "sets": [["w", None, None]], **more})


def push(
    link, head=0, digest=b"", *, format=1, reads=(), ids=("a",), body=None, verdict="",
):  # fmt: skip
    station = link.info.user.rpartition("_")[2]
    bodies = [body_of(id_, station) if body is None else body for id_ in ids]
    rows = (list(ids), [verdict] * len(ids), ["[]"] * len(ids), bodies)
    return link.execute(PUSH, (head, digest, format, list(reads), *rows)).fetchone()


def chained(*entries, link=b""):
    for id_, body in entries:
        link = hashlib.sha256(link + f"{id_}\n{body}".encode()).digest()
    return link


def numbers(shop):
    with shop.station() as link:
        return [r[0] for r in link.execute("SELECT number FROM shop.entry ORDER BY 1").fetchall()]


BOTH = chained(*((id_, body_of(id_)) for id_ in "ab"))


def test_entries_are_dense_and_chained(shop):
    with shop.station() as link:
        assert push(link, ids=("a", "b"))[:3] == (
            "pushed",
            2,
            BOTH,
        )
        found = link.execute("SELECT number, id, pushed_by FROM shop.entry ORDER BY 1").fetchall()
    role = shop.names.station("2")
    assert found == [(1, "a", role), (2, "b", role)]


def test_the_chain_is_over_the_bytes_of_the_text_as_on_the_station(shop):
    body = body_of("a", said="×\0 ½ 板")
    assert "\\u0000" in body
    body = body.replace("\\u00d7", "×")
    with shop.station() as link:
        assert push(link, body=body)[2] == chained(("a", body))


@pytest.mark.parametrize(
    ("reads", "outcome"),
    [((), "pushed"), (("other",), "pushed"), (("w",), "behind"), (("other", "w"), "behind")],
)
def test_only_what_was_read_and_written_since_is_in_the_way(shop, reads, outcome):
    with shop.station() as link:
        push(link)
        assert push(link, ids=("b",), reads=reads)[0] == outcome
    assert numbers(shop) == ([1, 2] if outcome == "pushed" else [1])


def test_what_was_written_before_my_head_is_not_in_the_way(shop):
    with shop.station() as link:
        _, number, digest, _ = push(link)
        assert push(link, number, digest, ids=("b",), reads=("w",))[0] == "pushed"


def test_the_same_id_again_is_not_taken(shop):
    with shop.station() as link:
        push(link)
        assert push(link, reads=())[0] == "behind"
    assert numbers(shop) == [1]


@pytest.mark.parametrize(
    ("head", "digest"), [(1, b"another"), (2, b""), (1, b""), (0, b"not empty"), (-1, b"")]
)
def test_another_history_is_told(shop, head, digest):
    with shop.station() as link:
        push(link)
        assert push(link, head, digest, ids=("b",))[0] == "differs"


def test_an_old_program_is_told(shop):
    with shop.station() as link:
        assert push(link, format=0)[0] == "too old"
    assert numbers(shop) == []


def test_far_behind_pulls_first(shop):
    with shop.station() as link:
        for n in range(2):
            push(link, *at(link), ids=[f"{n}-{k}" for k in range(600)])
        assert push(link, ids=("late",))[0] == "behind"


def test_who_is_behind_reads_what_is_new_alone(shop):
    """Once the server knows how long the history is, it must not read all of it for a push."""
    behind, read = 10, "SELECT seq_tup_read FROM pg_stat_user_tables WHERE relname = 'entry'"
    with shop.station() as link:
        for n in range(3):
            push(link, *at(link), ids=[f"{n}-{k}" for k in range(1000)])
        head = at(link)
        with shop.admin() as admin:
            admin.execute("ANALYZE shop.entry")
            ((before,),) = admin.execute(read).fetchall()
        for n in range(behind):
            assert push(link, *head, ids=(f"late {n}",), reads=("nothing",))[0] == "pushed"
    with shop.admin() as admin:
        ((after,),) = admin.execute(read).fetchall()
    assert after == before


TABLES = "SELECT 'shop.' || tablename FROM pg_tables WHERE schemaname = 'shop'"


def count_plans_of_pushes_behind(server, shop, way, pushes=10):
    """How often the server plans in pushes by one who is behind; it writes each into its log."""
    with shop.station("3") as link:
        for n in range(3):
            push(link, *at(link), ids=[f"{n}-{k}" for k in range(1000)])
        head = at(link)
        push(link, *head, ids=("another",))
    with shop.admin() as admin:
        admin.execute("ANALYZE shop.entry")
        for (table,) in admin.execute(TABLES).fetchall():  # else the server does so in between
            admin.execute(f"ALTER TABLE {table} SET (autovacuum_enabled = off)")
        admin.execute(f"ALTER ROLE {shop.names.station('3')} SET log_planner_stats = on")
    with shop.station("3") as link:
        for n in range(2 * pushes):
            if n == pushes:  # all that is planned once for a connection has been planned
                before = server.log().count("PLANNER STATISTICS")
            row = (f"{n}", "", body_of(f"{n}", "3"))
            rows = row if way is APPEND_ONE else [[value] for value in row]
            told = link.execute(way, (*head, 1, [], *rows), prepare=True)
            assert told.fetchone()[0] == "pushed"
    return server.log().count("PLANNER STATISTICS") - before


@pytest.mark.parametrize(
    ("step", "way", "planned"), [("head", APPEND, 0), ("head", APPEND_ONE, 0), ("4", APPEND, 10)]
)
def test_who_is_behind_has_nothing_planned_anew(server, step, way, planned):
    """As it was in a database of before: that takes longer than the push, and all wait for it."""
    shop = found(server, step=step)
    assert count_plans_of_pushes_behind(server, shop, way) == planned
    server.drop(shop.database)


def at(link):
    return link.execute("SELECT number, digest FROM shop.site").fetchone()


@pytest.mark.parametrize(
    "wrong",
    [
        {"ids": ()},
        {"ids": ("",)},
        {"ids": ("x" * 81,)},
        {"ids": ("a", "a")},
        {"body": "no json"},
        {"body": "[]"},
        {"body": '{"act": "a"}'},
        {"body": '{"act": {"id": "a", "station": "2"}, "sets": 1}'},
        {"body": '{"act": {"id": "a", "station": "2"}, "sets": null}'},
        {"body": '{"act": {"id": "a", "station": "2"}, "moves": {}}'},
        {"body": '{"act": {"id": "a", "station": "2"}, "readings": 1}'},
        {"body": '{"act": {"id": "a", "station": "2"}, "router": {"x": 1, "x": 2}}'},
        {"body": '{"act": {"id": "a", "station": "2"}, "said": "\\u003a", "do": 1, "do": 2}'},
        {"body": "x" * (16 * 2**20 + 1)},
        {"verdict": "x" * 4001},
        {"body": "\0"},
        {"body": "\ud800"},
        {"ids": [f"{n}" for n in range(1001)]},
    ],
)
def test_what_is_no_entry_is_refused_whole(shop, wrong):
    with shop.station() as link, pytest.raises((psycopg.Error, UnicodeError)):
        push(link, **wrong)
    assert numbers(shop) == []


def test_lists_of_other_lengths_are_refused(shop):
    with shop.station() as link, pytest.raises(psycopg.errors.DataException):
        link.execute(PUSH, (0, b"", 1, [], ["a"], [""], ["[]", "[]"], ["{}"]))


def test_a_snapshot_from_before_the_lock_is_refused(shop):
    with shop.station() as link:
        link.execute("BEGIN ISOLATION LEVEL REPEATABLE READ")
        with pytest.raises(psycopg.errors.ActiveSqlTransaction):
            push(link)


def test_pushes_at_once_leave_no_hole_and_readers_see_a_prefix(shop):
    stations = [str(n) for n in range(2, 8)]
    for number in stations:
        shop.station(number).close()
    stop, seen = threading.Event(), []

    def read():
        with shop.station("2") as link:
            while not stop.is_set():
                rows = link.execute("SELECT number FROM shop.entry ORDER BY 1").fetchall()
                seen.append([r[0] for r in rows] == list(range(1, len(rows) + 1)))

    def write(number):
        with shop.station(number) as link:
            for n in range(20):
                while push(link, *at(link), ids=(f"{number}-{n}",), reads=())[0] != "pushed":
                    pass

    reader = threading.Thread(target=read)
    writers = [threading.Thread(target=write, args=(n,)) for n in stations]
    reader.start()
    for thread in writers:
        thread.start()
    for thread in writers:
        thread.join()
    stop.set()
    reader.join()
    assert all(seen)
    assert numbers(shop) == list(range(1, 121))


def test_two_shops_stand_on_one_server(server):
    one, two = found(server, "one"), found(server, "two")
    with one.station() as link:
        push(link)
    assert numbers(two) == []
    with pytest.raises(psycopg.OperationalError):
        server.connect(two.database, one.names.station("2"), one.passwords["2"])
