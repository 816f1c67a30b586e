"""Who may do what in the shop's database: an owner that nobody logs in as, one role a station.

A station may read and push, nothing else. A card's role may do one thing, once: set the
password of its station's role.
"""

from dataclasses import dataclass
from datetime import timedelta
from hashlib import sha256
from secrets import choice
from typing import Any

from psycopg import Connection, sql

VALID = timedelta(days=2)  # a card printed on a Friday still joins on the Sunday
# Thirty-two signs that no reader takes for each other; 16 of them are 80 bits.
SIGNS = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"
SIGNS_OF_CODE = 16

# What PostgreSQL lets everybody write with besides tables: large objects, marks in its log.
WRITING = [
    *("lo_creat", "lo_create", "lo_from_bytea", "lo_put", "lowrite"),
    *("lo_truncate", "lo_truncate64", "pg_logical_emit_message"),
]
# One statement for each thing that everybody can still write with in this database.
STILL_OPEN = """
SELECT format('REVOKE EXECUTE ON FUNCTION %%s FROM PUBLIC',
    string_agg(oid::regprocedure::text, ', ' ORDER BY oid::regprocedure::text))
FROM pg_proc
WHERE pronamespace = 'pg_catalog'::regnamespace AND proname = ANY (%s)
    AND has_function_privilege('public', oid, 'EXECUTE')
HAVING count(*) > 0
UNION ALL
SELECT format('REVOKE CREATE ON SCHEMA %%I FROM PUBLIC', nspname)
FROM pg_namespace WHERE has_schema_privilege('public', oid, 'CREATE')
UNION ALL
SELECT format('REVOKE CREATE, TEMPORARY ON DATABASE %%I FROM PUBLIC', datname)
FROM pg_database
WHERE datname = current_database() AND has_database_privilege('public', oid, 'CREATE, TEMPORARY')
"""

Session = Connection[Any]


@dataclass(frozen=True)
class Names:
    """The names of a site's roles. They stand for a whole server, so the site is in them."""

    site: str

    @property
    def owner(self) -> str:
        """Owns the tables and functions."""
        return f"shop_owner_{self.site}"

    @property
    def stations(self) -> str:
        """The group of all stations."""
        return f"shop_stations_{self.site}"

    @property
    def cards(self) -> str:
        """The group of all join cards."""
        return f"shop_cards_{self.site}"

    def station(self, number: str) -> str:
        """One station's own role."""
        return f"shop_station_{self.site}_{number}"


@dataclass(frozen=True)
class IssuedCard:
    """A join card: which station it makes, its one-time code, until when (shop-local)."""

    station: str
    code: str
    until: str

    @property
    def shown(self) -> str:
        """The code in groups of four, as it is printed."""
        return "-".join(self.code[n : n + 4] for n in range(0, len(self.code), 4))


def new_code() -> str:
    """A one-time code."""
    return "".join(choice(SIGNS) for _ in range(SIGNS_OF_CODE))


def tidy_code(typed: str) -> str:
    """A code as it was made, however it was typed."""
    return "".join(char for char in typed.upper() if char in SIGNS)


def card_role(code: str) -> str:
    """The role that a code opens: known from the code alone, and telling nothing of it."""
    return f"shop_card_{sha256(code.encode()).hexdigest()[:24]}"


def exists(admin: Session, role: str) -> bool:
    """Whether there is such a role."""
    return admin.execute("SELECT FROM pg_roles WHERE rolname = %s", (role,)).rowcount > 0


def make_owner(admin: Session, names: Names, database: str) -> None:
    """The owner, the two groups, the schema; what everybody may do by default is taken away."""
    if not exists(admin, names.owner):
        run(admin, "CREATE ROLE {} NOLOGIN CREATEROLE", names.owner)
        if not _all_powerful(admin):
            run(admin, "GRANT {} TO CURRENT_USER", names.owner)
    run(admin, "CREATE SCHEMA IF NOT EXISTS shop AUTHORIZATION {}", names.owner)
    run(admin, "REVOKE ALL ON DATABASE {} FROM PUBLIC", database)
    shut(admin)
    for group in (names.stations, names.cards):
        if not exists(admin, group):
            as_owner(admin, names, "CREATE ROLE {} NOLOGIN", group)
        run(admin, "GRANT CONNECT ON DATABASE {} TO {}", database, group)


def shut(admin: Session) -> None:
    """Takes away what everybody can write with. Of what is not the admin's own, as functions
    are a superuser's, the server only warns; `still_open` tells.
    """
    for statement in still_open(admin):
        admin.execute(statement.encode())


def still_open(admin: Session) -> list[str]:
    """The statements that close what everybody can write with in this database; none: closed."""
    return [str(row[0]) for row in admin.execute(STILL_OPEN, (WRITING,)).fetchall()]


def make_station(admin: Session, names: Names, number: str) -> str:
    """One station's role, which cannot log in before it has joined; gives its name."""
    role = names.station(number)
    if not exists(admin, role):
        as_owner(admin, names, "CREATE ROLE {} NOLOGIN CONNECTION LIMIT 4", role)
        as_owner(admin, names, "GRANT {} TO {}", names.stations, role)
        as_owner(admin, names, "GRANT {} TO {}", role, names.owner)  # so that it may cut it off
    as_owner(
        admin,
        names,
        "INSERT INTO shop.station (number, role) VALUES ({number}, {role}) ON CONFLICT DO NOTHING",
        number=number,
        role=role,
    )
    return role


def make_card(admin: Session, names: Names, number: str) -> IssuedCard:
    """A new card for a station; an older one is void."""
    code = new_code()
    role = card_role(code)
    row = admin.execute(
        "SELECT card, clock_timestamp() + %s FROM shop.station WHERE number = %s",
        (VALID, number),
    ).fetchone()
    assert row
    old, ends = row
    until = ends.isoformat(sep=" ")
    if old:
        as_owner(admin, names, "DROP ROLE IF EXISTS {}", str(old))
    as_owner(
        admin,
        names,
        "CREATE ROLE {} LOGIN CONNECTION LIMIT 2 PASSWORD {proof} VALID UNTIL {until}",
        role,
        proof=verifier(admin, role, code),
        until=until,
    )
    as_owner(admin, names, "GRANT {} TO {}", names.cards, role)
    as_owner(
        admin,
        names,
        "UPDATE shop.station SET card = {role}, expires = {until} WHERE number = {number}",
        role=role,
        until=until,
        number=number,
    )
    here = ends.astimezone().replace(tzinfo=None)  # as the clocks of this shop show it
    return IssuedCard(number, code, here.isoformat(timespec="seconds"))


def verifier(session: Session, role: str, password: str) -> str:
    """What the server keeps to check a password: the password cannot be had from it."""
    made = session.pgconn.encrypt_password(password.encode(), role.encode(), b"scram-sha-256")
    return made.decode()


def as_owner(admin: Session, names: Names, statement: str, *who: str, **values: object) -> None:
    """One statement as the owner, so that what it makes is the owner's."""
    run(admin, "SET LOCAL ROLE {}", names.owner)
    run(admin, statement, *who, **values)
    admin.execute("RESET ROLE")


def run(admin: Session, statement: str, *names: str, **values: object) -> None:
    """One statement with names and values written in safely."""
    text = sql.SQL(statement).format(
        *map(sql.Identifier, names), **{k: sql.Literal(v) for k, v in values.items()}
    )
    admin.execute(text)


def _all_powerful(admin: Session) -> bool:
    row = admin.execute("SELECT rolsuper FROM pg_roles WHERE rolname = current_user").fetchone()
    return bool(row and row[0])
