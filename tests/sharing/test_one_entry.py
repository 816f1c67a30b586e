"""An entry that is pushed alone is refused, kept and answered as `append` does it.

Two shops on one server get the same, honest, bent and forged: one by `append`, as a page of one,
the other by `append_one`. Whatever comes of it must be the same, and so must all that is kept.
"""

import contextlib
import copy
import json
import sqlite3
from itertools import product
from random import Random

import psycopg
import pytest

from tests.ledger.kept import HERE
from tests.sharing.shop import found
from tests.sharing.test_push import body_of

pytestmark = pytest.mark.slow  # asks a whole server

AT = "%s::bigint, %s::bytea, %s::integer, %s::text[]"
PAGE, ONE = f"{AT}, ARRAY[%s::text], ARRAY[%s::text], ARRAY[%s::text]", f"{AT}, %s, %s, %s"
ALONE = "SELECT outcome, number, digest, format FROM shop.{}({})"
AMONG_MANY = "CALL shop.{}({}, NULL, NULL, NULL, NULL)"
WAYS = (
    (ALONE.format("append", PAGE), AMONG_MANY.format("append_and_settle", PAGE)),
    (ALONE.format("append_one", ONE), AMONG_MANY.format("append_one_and_settle", ONE)),
)
KEPT = "SELECT number, id, verdict, writes, body, digest, pushed_by FROM shop.entry ORDER BY 1"
ODD = (
    None, True, 0, 1.50, 1e3, -7, "", "x", "a/b", "st:at", 'quo"te', "back\\slash", "½ 板", "\0",
    "\u003a", [], {}, [[]], [None], ["a", ["b"], {"c": 1}], {"id": 1}, "2", "3", "shop/shop",
    "station/2", "station/3", "worker/01", "reason/9", "stationery/1", "batch/00412",
)  # fmt: skip


class Two:
    """Two shops that are asked the same, each in its own way."""

    def __init__(self, server):
        self.shops = [found(server) for _ in WAYS]
        self.links = {n: [shop.station(n) for shop in self.shops] for n in ("2", "3")}

    def close(self):
        for link in (link for links in self.links.values() for link in links):
            link.close()
        for shop in self.shops:
            shop.server.drop(shop.database)

    def admin(self, statement):
        for shop in self.shops:
            with shop.admin() as admin:
                admin.execute(statement)

    def push(self, station, *given, many=False):
        """Pushes in both ways; gives what came of it, which is the same."""
        told = [
            self.told(link, way[many], given)
            for link, way in zip(self.links[station], WAYS, strict=True)
        ]
        assert told[0] == told[1], given
        return told[0]

    def told(self, link, way, given):
        try:
            return link.execute(way, given).fetchone()
        except psycopg.Error as error:
            return error.sqlstate, str(error.diag.message_primary)

    def head(self, back=0):
        """Gives number and digest of the newest entry, or of one so far before it."""
        with self.shops[0].admin() as admin:
            rows = admin.execute("SELECT number, digest FROM shop.site").fetchall()
            if back:
                asked = "SELECT number, digest FROM shop.entry WHERE number = %s"
                rows = admin.execute(asked, (rows[0][0] - back,)).fetchall() or [(0, b"")]
        return rows[0]

    def newest(self):
        """Lists what the newest entry wrote."""
        with self.shops[0].admin() as admin:
            asked = "SELECT writes FROM shop.entry ORDER BY number DESC LIMIT 1"
            rows = admin.execute(asked).fetchall()
        return rows[0][0] if rows else []

    def kept(self, shop):
        """Lists what a shop keeps; names of what is written in no order."""
        with shop.admin() as admin:
            site = admin.execute("SELECT number, digest, held_by FROM shop.site").fetchall()
            rows = admin.execute(KEPT).fetchall()
        return site, [
            (*row[:3], sorted(row[3]), *row[4:6], row[6].rpartition("_")[2]) for row in rows
        ]

    def same(self):
        one, other = map(self.kept, self.shops)
        assert one == other
        return len(one[1])


@pytest.fixture(scope="module")
def two(server):
    made = Two(server)
    yield made
    made.close()


@pytest.fixture(scope="module")
def bodies():
    """Acts as a shop has kept them."""
    kept = sqlite3.connect(":memory:")
    kept.executescript((HERE / "shop.sql").read_text(encoding="utf-8"))
    return [json.loads(text) for (text,) in kept.execute("SELECT body FROM entry")]


def bent(body, chance):
    """Gives a body with something else at a place anywhere in it, or without what is there."""
    body = copy.deepcopy(body)
    where = body
    while True:
        keys = list(where) if isinstance(where, dict) else list(range(len(where)))
        if not keys:
            return body
        key = chance.choice(keys)
        if isinstance(where[key], dict | list) and chance.random() < 0.8:
            where = where[key]
        elif chance.random() < 0.1:
            del where[key]
            return body
        else:
            where[key] = copy.deepcopy(chance.choice(ODD))
            return body


def told_twice(text, chance):
    """Gives a text with one of its parts said once more, or in disguise, or spaced, or cut."""
    how = chance.randrange(7)
    if how == 0:
        return text.replace('"id"', '"id":"other","id"', 1)
    if how == 1:
        return text.replace('"act"', '"act":{"station":"3"},"act"', 1)
    if how == 2:
        return text.replace('"station"', '"station":"2","st\\u0061tion"', 1)
    if how == 3:
        return text.replace(":", " :\n", 3)
    if how == 4:
        return text[: chance.randrange(len(text))]
    if how == 5:
        return text.replace('"tone"', '"x":{"y":1,"y":2},"tone"', 1)
    return text.replace("{", '{"said ":"' + "x:," * chance.choice((1, 3000)) + '",', 1)


def an_entry(bodies, number, chance):
    """Gives the station that pushes, id and body of an entry that may be anything."""
    station = chance.choice("2223")
    body = copy.deepcopy(chance.choice(bodies))
    id_ = f"{station}-{number}"
    body["act"] |= {"id": id_, "station": station}
    if chance.random() < 0.4:
        body["act"]["station"] = chance.choice(("1", "2", "3", "", "33"))
    for _ in range(chance.choice((0, 0, 0, 1, 1, 3))):
        body = bent(body, chance)
    text = json.dumps(body, separators=(",", ":"), ensure_ascii=chance.random() < 0.2)
    if chance.random() < 0.2:
        text = told_twice(text, chance)
    if chance.random() < 0.05:
        id_ = chance.choice(("", "x" * 81, "2-1", "½" * 60, None, id_ + "\n"))
    return station, id_, text


def an_entry_s_place(two, chance):
    """Gives a head, its digest, a format and what was read, as they may be or not."""
    number, link = two.head(chance.choice((0, 0, 0, 1, 2, 7, 30)))
    reads = chance.choice(([], ["no/such"], two.newest(), ["x", *two.newest()[1:]], None, [None]))
    if chance.random() < 0.1:
        elsewhere = (number, b"another"), (number + 1, link), (0, b""), (-1, b"")
        number, link = chance.choice((*elsewhere, (None, link), (1, None)))
    return number, link, chance.choice((1, 1, 1, 1, 1, 2, 0, None)), reads


SETTINGS = (
    "UPDATE shop.site SET office = '{2}'",
    "UPDATE shop.site SET office = '{}'",
    "UPDATE shop.site SET put_back_at = now()",
    "UPDATE shop.site SET put_back_at = NULL",
    "UPDATE shop.site SET held_by = '3', held_at = now()",
    "UPDATE shop.site SET held_by = '3', held_at = now() - interval '2 min'",
    "UPDATE shop.site SET held_by = NULL, held_at = NULL",
    "UPDATE shop.site SET format = 2",
    *["UPDATE shop.site SET format = 1, held_by = NULL"] * 4,
)


@pytest.mark.parametrize("seed", range(3))
def test_whatever_is_pushed_is_answered_and_kept_the_same(two, bodies, seed):
    chance, came = Random(seed), {}
    two.admin(SETTINGS[-1])
    for number in range(300):
        if chance.random() < 0.08:
            two.admin(chance.choice(SETTINGS))
        station, id_, text = an_entry(bodies, f"{seed}-{number}", chance)
        verdict = chance.choice(("", "", "", "", "why", "x" * 4000, "x" * 4001, None))
        place = an_entry_s_place(two, chance)
        told = two.push(station, *place, id_, verdict, text, many=chance.random() < 0.3)
        came[told[0]] = came.get(told[0], 0) + 1
    two.same()
    assert came["pushed"] > 20
    assert {"behind", "differs", "22000", "SH001"} <= set(came)


KEYS = ("shop/shop", "worker/01", "reason/9", "station/2", "station/3", "stationery/1", "batch/1")
SAID = (
    {}, {"readings": []}, {"readings": [{"subject": "part/1", "kind": "x"}]}, {"sets": None},
    {"sets": {}}, {"moves": 1}, {"moves": [["1", 1, ["a", None], [None, "b"]]]}, {"x": "\\u003a"},
    {"sets": [["x", 0, ["", "shelf"]], ["x", [0, 5], [0, [1]]], [None], [["x"]], []]},
)  # fmt: skip


@pytest.mark.parametrize("office", ["{}", "{2}", "{3}"])
def test_what_not_everybody_may_is_answered_the_same(two, office):
    two.admin(f"UPDATE shop.site SET office = '{office}', held_by = NULL, put_back_at = NULL")
    two.admin(SETTINGS[-1])
    for (key, station), whose in product(product(KEYS, "23"), "23"):
        id_ = f"{key} {station} {whose} {office}"
        text = body_of(id_, whose, sets=[["batch/1", None, None], [key, None, None]])
        two.push(station, *two.head(), 1, [], id_, "", text)
    two.same()


@pytest.mark.parametrize("said", SAID, ids=str)
def test_what_is_not_as_stations_write_it_is_answered_the_same(two, said):
    two.admin(SETTINGS[-1])
    id_ = f"odd {said}"[:80]
    text = body_of(id_, **said)
    for n, sent in enumerate(
        (
            text,
            text.replace('"station": "2"', '"station": "3", "station": "2"'),
            text.replace('"id"', '"said": "\\u003a", "do": 1, "do": 2, "id"'),
            text.replace('"id"', '"\\u0069d"'),
        )
    ):
        two.push("2", *two.head(), 1, [], id_, "", sent, many=n % 2 == 1)
    two.same()


@pytest.mark.parametrize("sent", ["another", "", 5, "other id", "x" * 80, "½" * 80, "x" * 81])
def test_an_id_is_answered_the_same(two, sent):
    """That of another act, and such as are too long, or no text in the body."""
    two.admin(SETTINGS[-1])
    for id_ in (str(sent), "other id"):
        two.push("2", *two.head(), 1, [], id_, "", body_of(sent))
    two.same()


def test_what_is_ordinary_goes_its_own_way(server, bodies):
    """Nearly all that a shop has kept, level with the history or behind it, without `append`."""
    shop = found(server)
    taken = 0
    with shop.station("2") as link, shop.admin() as admin:
        given = (0, b"", 1, [], "first", "", body_of("first"))
        begin = link.execute(WAYS[1][0], given).fetchone()[1:3]  # the very first goes by `append`
        admin.execute("ALTER FUNCTION shop.append RENAME TO gone")
        at = begin
        for n, body in enumerate(bodies):
            act = body["act"] | {"station": "2"}
            text = json.dumps(body | {"act": act}, ensure_ascii=False)
            place = begin if n % 2 else at
            with contextlib.suppress(psycopg.errors.UndefinedFunction):
                told = link.execute(WAYS[1][n % 3 == 0], (*place, 1, [], act["id"], "", text))
                at = told.fetchone()[1:3]
                taken += 1
    server.drop(shop.database)
    assert taken > 0.8 * len(bodies)


def test_all_that_a_shop_has_kept_is_taken_the_same(two, bodies):
    """Honest entries of one station, its office's among them, one after the other."""
    two.admin("UPDATE shop.site SET office = '{}', format = 1, held_by = NULL, put_back_at = NULL")
    for body in bodies:
        act = body["act"] | {"id": f"again {body['act']['id']}", "station": "2"}
        text = json.dumps(body | {"act": act}, separators=(",", ":"), ensure_ascii=False)
        told = two.push("2", *two.head(), 1, [], act["id"], "", text)
        assert told[0] == "pushed"
    two.same()


@pytest.mark.parametrize(("back", "many"), list(product((0, 1, 3), (False, True))))
def test_the_same_again_is_answered_the_same(two, back, many):
    two.admin("UPDATE shop.site SET format = 1, held_by = NULL, put_back_at = NULL")
    id_ = f"twice {back} {many}"
    given = (1, [], id_, "", body_of(id_))
    for n in range(3):
        two.push("2", *two.head(), 1, [], f"{id_}-{n}", "", body_of(f"{id_}-{n}"))
    assert two.push("2", *two.head(), *given)[0] == "pushed"
    told = two.push("2", *two.head(back), *given, many=many)[0]
    assert told == ("behind" if back else "23505")
    two.same()


def test_an_older_snapshot_is_refused_the_same(two):
    for link in two.links["2"]:
        link.execute("BEGIN ISOLATION LEVEL REPEATABLE READ")
    told = two.push("2", *two.head(), 1, [], "snapshot", "", body_of("snapshot"))
    for link in two.links["2"]:
        link.execute("ROLLBACK")
    assert told[0] == "25001"
    two.same()
