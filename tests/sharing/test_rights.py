"""What a station's own role can do over TCP: read, and push. Nothing else; its owner neither."""

import os
import re
import subprocess

import psycopg
import pytest

from station.sharing import membership, roles, secret
from station.sharing.address import Address
from tests.server import ADMIN, PASSWORD, programs
from tests.sharing import manual
from tests.sharing.shop import found
from tests.sharing.test_commands import data, station, url
from tests.sharing.test_push import push

pytestmark = pytest.mark.slow

__all__ = ["data"]  # the fixture

REFUSED = [
    "UPDATE shop.entry SET body = ''",
    "UPDATE shop.entry SET body = '' WHERE false",
    "DELETE FROM shop.entry",
    "TRUNCATE shop.entry",
    "INSERT INTO shop.entry VALUES ('s', 9, 'x', '', '{}', '{}', '', 'me', now())",
    "UPDATE shop.site SET number = 0",
    "DELETE FROM shop.site",
    "INSERT INTO shop.site (id, format) VALUES ('x', 1)",
    "SELECT * FROM shop.site FOR UPDATE",
    "SELECT * FROM shop.site FOR KEY SHARE",
    "DO $$ BEGIN LOCK TABLE shop.entry IN SHARE MODE; END $$",
    "INSERT INTO shop.closing VALUES (1, '', 1, '')",
    "UPDATE shop.closing SET books = ''",
    "DELETE FROM shop.closing",
    "TRUNCATE shop.closing",
    "SELECT * FROM shop.station",
    "SELECT * FROM shop.join('x')",
    "SELECT shop.read_body('{}')",
    "SELECT shop.written('{}')",
    "SELECT shop.judge('', '{}', '', true, true)",
    "ALTER TABLE shop.entry DISABLE TRIGGER kept",
    "DROP TABLE shop.entry",
    "DROP FUNCTION shop.never CASCADE",
    "CREATE TABLE shop.x ()",
    "CREATE TABLE public.x ()",
    "CREATE TEMP TABLE x ()",
    "CREATE SCHEMA x",
    "CREATE ROLE x",
    "SET session_replication_role = replica",
    "COPY shop.entry FROM PROGRAM 'true'",
    "COPY shop.entry FROM STDIN",
    "COPY (SELECT 1) TO PROGRAM 'true'",
    "COPY shop.entry TO '/nowhere'",
    "SELECT pg_read_file('PG_VERSION')",
    "SELECT pg_ls_dir('.')",
    "SELECT lo_create(0)",
    "SELECT lo_creat(0)",
    "SELECT lo_from_bytea(0, 'x')",
    "SELECT lo_put(1, 0, 'x')",
    "SELECT lowrite(0, 'x')",
    "SELECT lo_truncate(0, 0)",
    "SELECT lo_truncate64(0, 0)",
    "SELECT lo_import('PG_VERSION')",
    "SELECT pg_logical_emit_message(false, 'x', 'x')",
    "SELECT pg_logical_emit_message(true, 'x', 'x'::bytea)",
    "SELECT rolpassword FROM pg_authid",
    "SELECT * FROM pg_shadow",
    "CREATE FUNCTION pg_temp.f() RETURNS int LANGUAGE sql AS 'SELECT 1'",
    "CREATE VIEW pg_temp.v AS SELECT 1",
    "CREATE TYPE pg_temp.t AS (a int)",
    "CREATE VIEW shop.v AS SELECT 1",
    "CREATE INDEX ON shop.entry (id)",
    "CREATE RULE r AS ON INSERT TO shop.entry DO INSTEAD NOTHING",
    "CREATE TRIGGER t BEFORE INSERT ON shop.entry EXECUTE FUNCTION shop.never()",
    "CREATE DATABASE x",
    "CREATE EXTENSION lo",
    "ALTER SYSTEM SET fsync = off",
    "ALTER FUNCTION shop.never() SECURITY DEFINER",
    "REINDEX TABLE shop.entry",
    "MERGE INTO shop.entry USING shop.site ON true WHEN MATCHED THEN DELETE",
    "WITH gone AS (DELETE FROM shop.entry RETURNING 1) SELECT * FROM gone",
    "EXPLAIN ANALYZE DELETE FROM shop.entry",
    "SET SESSION AUTHORIZATION postgres",
    "ALTER ROLE CURRENT_USER SUPERUSER",
    "ALTER ROLE CURRENT_USER CREATEROLE",
    "ALTER ROLE CURRENT_USER SET session_replication_role = replica",
]


@pytest.mark.parametrize("statement", REFUSED)
def test_a_station_may_only_read_and_push(shop, statement):
    with shop.station() as link, pytest.raises(psycopg.errors.InsufficientPrivilege):
        link.execute(statement)


@pytest.fixture
def database(server):
    """One that was there before, and open as those from before PostgreSQL 15 are."""
    name = server.new_database()
    with server.connect() as admin:
        admin.execute(f"CREATE ROLE owner_of_{name} LOGIN CREATEROLE PASSWORD 'o'")
    with server.connect(name) as admin:
        admin.execute("GRANT CREATE ON SCHEMA public TO PUBLIC")
    return name


def as_superuser(server, database, lines):
    """The step of the server's page with the lines that were printed; gives what it says."""
    step = re.search("`sudo -u postgres (psql) shop`", manual.read())
    where = {"PGHOST": "127.0.0.1", "PGPORT": str(server.port), "PGUSER": ADMIN}
    done = subprocess.run(
        [programs() / step[1], database],
        input="\n".join(lines),
        env=os.environ | where | {"PGPASSWORD": PASSWORD},
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout.split("\n")[:-1], done.stderr


def not_refused(server, database, data):
    """What of REFUSED this PC's station may do nonetheless."""
    mine = membership.of(data)
    done = []
    with server.connect(database, mine.role, secret.read(data, mine.account)) as link:
        for statement in REFUSED:
            try:
                link.execute(statement)
            except psycopg.errors.InsufficientPrivilege:
                continue
            except psycopg.Error:
                pass  # refused for another reason: it might be done another time
            done.append(statement)
    return done


@pytest.mark.parametrize(
    ("right", "closed"),
    [
        ("ALTER DATABASE {0} OWNER TO owner_of_{0}", "functions"),
        ("GRANT CREATE ON DATABASE {0} TO owner_of_{0}", "functions, temporary, public"),
    ],
    ids=["the database is its own", "a database of somebody else"],
)
def test_what_an_owner_cannot_close_is_told_and_a_superuser_closes_it(
    server, database, data, right, closed
):
    with server.connect() as admin:
        admin.execute(right.format(database))
    owner = Address("127.0.0.1", server.port, database, f"owner_of_{database}")

    def told(*given):
        done = station(data, *given, typed="o")
        assert (done.returncode, done.stderr) == (0, "")
        return re.findall("^(?:REVOKE|A station can).*", done.stdout, re.MULTILINE)

    sentence, *lines = told("share", url(owner), "--stations", "0")
    assert sentence.endswith(f"let one run this in the database {database}.")
    still = not_refused(server, database, data)
    assert {"SELECT lo_create(0)", "SELECT pg_logical_emit_message(false, 'x', 'x')"} < {*still}
    assert ("CREATE TEMP TABLE x ()" in still) == ("temporary" in closed)
    assert ("CREATE TABLE public.x ()" in still) == ("public" in closed)
    assert len(lines) == len(closed.split(", "))
    assert told("update-shop", url(owner)) == [sentence, *lines]
    assert as_superuser(server, database, lines) == (["REVOKE"] * len(lines), "")
    assert not_refused(server, database, data) == []
    assert told("share", url(owner), "--stations", "0") == []
    assert station(data, "check").returncode == 0


def test_a_station_does_not_become_the_owner_or_another(shop):
    shop.station("3").close()
    with shop.station() as link:
        for role in (shop.names.owner, shop.names.station("3"), "postgres"):
            with pytest.raises(psycopg.errors.InsufficientPrivilege):
                link.execute(f'SET ROLE "{role}"')
        with pytest.raises(psycopg.errors.InsufficientPrivilege):
            link.execute(f"ALTER ROLE \"{shop.names.station('3')}\" PASSWORD 'mine'")


def test_what_a_station_grants_or_tidies_has_no_effect(shop):
    """The server only warns of these."""
    rights = "SELECT relacl::text FROM pg_class WHERE oid = 'shop.entry'::regclass"
    with shop.station() as link:
        before = link.execute(rights).fetchall()
        for statement in ("GRANT ALL ON shop.entry TO PUBLIC", "VACUUM FULL shop.entry"):
            link.execute(statement)
        assert link.execute(rights).fetchall() == before
        with pytest.raises(psycopg.errors.InsufficientPrivilege):
            link.execute("DELETE FROM shop.entry")


def test_a_station_sees_nothing_of_what_others_do_and_ends_nobody(shop):
    with shop.admin() as admin, shop.station() as link:
        mine = admin.execute("SELECT pg_backend_pid()").fetchone()
        seen = "SELECT query FROM pg_stat_activity WHERE usename <> current_user"
        assert {row[0] for row in link.execute(seen).fetchall()} <= {"<insufficient privilege>"}
        with pytest.raises(psycopg.errors.InsufficientPrivilege):
            link.execute("SELECT pg_terminate_backend(%s)", mine)


def test_a_station_comes_into_no_other_shop_s_database(shop, server):
    other = found(server)
    shop.station().close()
    with pytest.raises(psycopg.OperationalError, match="permission denied"):
        server.connect(other.database, shop.names.station("2"), shop.passwords["2"])


def test_a_search_path_bends_no_push_and_no_name(shop):
    with shop.station() as link:
        link.execute("SET search_path = pg_temp, public")
        link.execute("SET application_name = 'shop_station_9'")
        link.execute("SET standard_conforming_strings = off")
        link.execute("SET row_security = off")
        assert push(link)[:2] == ("pushed", 1)
        assert link.execute("SELECT pushed_by FROM shop.entry").fetchall() == [
            (shop.names.station("2"),)
        ]


def test_a_push_waits_for_no_second_commit(shop):
    """Prepared and left open it would lock every other station out."""
    with shop.station() as link:
        link.execute("BEGIN")
        push(link)
        with pytest.raises(psycopg.errors.ObjectNotInPrerequisiteState):
            link.execute("PREPARE TRANSACTION 'left open'")


@pytest.mark.parametrize("who", ["the owner", "who set it up"])
@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE shop.entry SET body = ''",
        "DELETE FROM shop.entry",
        "TRUNCATE shop.entry",
        "DELETE FROM shop.site",
    ],
)
def test_not_even_the_owner_changes_what_was_written(shop, who, statement):
    with shop.admin() as admin:
        if who == "the owner":
            admin.execute(f'SET ROLE "{shop.names.owner}"')
        else:
            admin.execute("SET session_replication_role = replica")
        with pytest.raises(psycopg.errors.InsufficientPrivilege, match="never changed"):
            admin.execute(statement)


def test_nobody_logs_in_as_the_owner_or_a_group(shop):
    with shop.admin() as admin:
        rows = admin.execute(
            "SELECT rolname FROM pg_roles WHERE rolname = ANY (%s) AND rolcanlogin",
            ([shop.names.owner, shop.names.stations, shop.names.cards],),
        ).fetchall()
    assert rows == []


def test_a_card_joins_once(shop):
    card = shop.card("2")
    shop.join(card)
    with pytest.raises(psycopg.OperationalError):
        shop.by_card(card)


def test_a_card_may_do_nothing_but_join(shop):
    with shop.by_card(shop.card("2")) as link:
        for statement in (*REFUSED, "SELECT * FROM shop.entry", "SELECT * FROM shop.site"):
            if "shop.join" not in statement:
                with pytest.raises(psycopg.errors.InsufficientPrivilege):
                    link.execute(statement)


def test_a_card_that_has_run_out_does_not_join(shop, monkeypatch):
    monkeypatch.setattr(roles, "VALID", -roles.VALID)
    with pytest.raises(psycopg.OperationalError):
        shop.by_card(shop.card("2"))


def test_a_card_open_past_its_time_does_not_join(shop):
    card = shop.card("2")
    with shop.by_card(card) as link:
        with shop.admin() as admin:
            admin.execute("UPDATE shop.station SET expires = now() - interval '1 s'")
        proof = roles.verifier(link, "x", "y")
        with pytest.raises(psycopg.errors.InvalidPassword):
            link.execute("SELECT * FROM shop.join(%s)", (proof,))


def test_a_new_card_makes_the_old_one_void(shop):
    old = shop.card("2")
    shop.card("2")
    with pytest.raises(psycopg.OperationalError):
        shop.by_card(old)


def test_a_station_that_joins_anew_has_a_new_password(shop):
    shop.station("2").close()
    before = shop.passwords.pop("2")
    with pytest.raises(psycopg.errors.DataException), shop.by_card(shop.card("2")) as link:
        link.execute("SELECT * FROM shop.join('in plain words')")
    role = shop.names.station("2")
    shop.server.connect(shop.database, role, before).close()
    shop.join(shop.card("2"), "another password")
    shop.server.connect(shop.database, role, "another password").close()
    with pytest.raises(psycopg.OperationalError, match="password authentication failed"):
        shop.server.connect(shop.database, role, before)


def test_no_password_and_no_code_is_in_the_servers_log(server, shop):
    with shop.admin() as admin:
        admin.execute("ALTER SYSTEM SET log_statement = 'all'")
        admin.execute("SELECT pg_reload_conf()")
    card = shop.card("2")
    shop.join(card)
    with shop.admin() as admin:
        admin.execute("ALTER SYSTEM RESET log_statement")
        admin.execute("SELECT pg_reload_conf()")
    assert "shop.join" in server.log()
    assert card.code not in server.log()
    assert "password of 2" not in server.log()
