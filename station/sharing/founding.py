"""A shop's database is founded: made by who owns the server, once, and again without harm."""

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from secrets import token_hex
from typing import Any

import psycopg

from station.ledger.closing import Begin
from station.ledger.faults import Fault
from station.ledger.history import SHOP
from station.ledger.ledger import Ledger
from station.ledger.statements import FORMAT
from station.sharing import closings, roles, schema, secret
from station.sharing.address import Address
from station.sharing.link import CONNECTING, set_up_wrong
from station.sharing.membership import Membership, new_password
from station.sharing.roles import IssuedCard, Names, Session

ASKED_FIRST = "postgres"  # the database that every server has
STATION = re.compile(r"[1-9][0-9]{0,2}")  # a station's number
OLDEST = 150000  # PostgreSQL 15


class NotShared(Fault):
    """The database could not be made the shop's; the text says why."""


def share(
    folder: Path, ledger: Ledger, address: Address, password: str, stations: int
) -> list[IssuedCard]:
    """Makes the database the shop's, brings this PC's history along, gives the join cards.

    Done again, it makes what is missing and new cards for the stations that have not joined.
    Raises NotShared.
    """
    with opened(address, password, make=True) as admin:
        names = _names(admin, ledger)
        _found(admin, lambda: _session(address, password), names, address.database, ledger.station)
        _bring(admin, names, ledger)
        _join_here(admin, names, folder, replace(address, user=""), ledger.station)
        if not ledger.shared:
            ledger.share_with(names.site)
        return _cards(admin, names, stations, ledger.station)


def card_again(address: Address, password: str, station: str) -> IssuedCard:
    """A new card for a station whose PC is a new one. Raises NotShared."""
    if not STATION.fullmatch(station):
        raise NotShared(f"{station} is no station's number: they are 1, 2, 3 …")
    with opened(address, password) as admin, admin.transaction():
        names = Names(_site_of(admin))
        roles.make_station(admin, names, station)
        return roles.make_card(admin, names, station)


def update(address: Address, password: str) -> None:
    """Brings the shop's database up to what this program knows. Raises NotShared."""
    with opened(address, password) as admin:
        names = Names(_site_of(admin))
        schema.up_to_date(lambda: _session(address, password), names)
        roles.shut(admin)


def left_open(address: Address, password: str) -> list[str]:
    """The statements for a superuser that close what the owner could not. Raises NotShared."""
    with opened(address, password) as admin:
        return roles.still_open(admin)


def put_back(address: Address, password: str) -> int:
    """The owner confirms that an older day was put back: every station shares again what is
    missing. Gives the number of the last entry that is there. Raises NotShared.
    """
    update(address, password)  # what was put back may be of an older program
    with opened(address, password) as admin, admin.transaction():
        names = Names(_site_of(admin))
        again = "UPDATE shop.site SET epoch = epoch + 1, put_back_at = clock_timestamp()"
        roles.as_owner(admin, names, again)
        return int(admin.execute("SELECT number FROM shop.site").fetchall()[0][0])


def close(address: Address, password: str, now: str, tell: Callable[[str], None]) -> Begin:
    """Makes a closing for PCs to come; gives the entry behind which it stands.

    Raises NotShared, or ChainBroken.
    """
    with opened(address, password) as admin:
        return closings.make(admin, Names(_site_of(admin)), now, tell)


def name_office(address: Address, password: str, stations: Sequence[str]) -> None:
    """Names the stations where people, PINs, reasons and settings are changed, and no other.

    Raises NotShared.
    """
    with opened(address, password) as admin:
        names = Names(_site_of(admin))
        known = {
            str(row[0]) for row in admin.execute("SELECT number FROM shop.station").fetchall()
        }
        if strange := [number for number in stations if number not in known]:
            raise NotShared(f"There is no station {strange[0]}. Name stations as 1,3.")
        with admin.transaction():
            office = "UPDATE shop.site SET office = {office}"
            roles.as_owner(admin, names, office, office=list(stations))


def read_office(address: Address, password: str) -> list[str]:
    """Reads which stations those are; none: every one. Raises NotShared."""
    with opened(address, password) as admin:
        _site_of(admin)
        return list(admin.execute("SELECT office FROM shop.site").fetchall()[0][0])


def block(address: Address, password: str, station: str) -> None:
    """A station's password was stolen: it does not come in any more. Raises NotShared."""
    with opened(address, password) as admin:
        names = Names(_site_of(admin))
        role = names.station(station)
        if not roles.exists(admin, role):
            raise NotShared(f"There is no station {station}.")
        with admin.transaction():
            roles.as_owner(admin, names, "ALTER ROLE {} NOLOGIN PASSWORD NULL", role)
        admin.execute(
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE usename = %s", (role,)
        )


@contextmanager
def opened(address: Address, password: str, *, make: bool = False) -> Iterator[Session]:
    """A session of who owns the server; `make`: the database is made where there is none.

    Raises NotShared, also for what the server refuses inside it.
    """
    try:
        with _admin(address, password, make=make) as admin:
            yield admin
    except psycopg.errors.InsufficientPrivilege as error:
        raise NotShared(
            f"{address.user} may not do this on the server: {_first_line(error)}. "
            "It takes a role that may create roles, and this database or a new one."
        ) from error
    except psycopg.Error as error:
        raise NotShared(f"The server did not take it: {_first_line(error)}.") from error


def _admin(address: Address, password: str, *, make: bool) -> Session:
    """The session itself, each statement its own transaction."""
    try:
        admin = _session(address, password)
    except psycopg.OperationalError as error:
        if "does not exist" not in str(error) or "database" not in str(error):
            raise NotShared(_why_not_in(error, address)) from None
        if not make:
            raise NotShared(f"There is no database {address.database} on that server.") from None
        _make_database(address, password)
        admin = _session(address, password)
    admin.autocommit = True
    if admin.info.server_version < OLDEST:
        admin.close()
        raise NotShared("That server is too old: it takes PostgreSQL 15 or newer.")
    return admin


def _session(address: Address, password: str) -> Session:
    options: dict[str, Any] = dict(address.options)
    return psycopg.connect(
        **options, user=address.user, password=password, connect_timeout=CONNECTING
    )


def _make_database(address: Address, password: str) -> None:
    try:
        with _session(replace(address, database=ASKED_FIRST), password) as first:
            first.autocommit = True
            make = "CREATE DATABASE {} ENCODING 'UTF8' TEMPLATE template0"
            roles.run(first, make, address.database)
    except psycopg.Error as error:
        raise NotShared(
            f"There is no database {address.database}, and it could not be made: "
            f"{_first_line(error)}."
        ) from None


def _why_not_in(error: psycopg.Error, address: Address) -> str:
    text = str(error)
    if "authentication failed" in text:
        return f"The server at {address} does not take this password for {address.user}."
    otherwise = f"The server at {address} does not answer. Are host and port right?"
    return set_up_wrong(error, address) or otherwise


def _names(admin: Session, ledger: Ledger) -> Names:
    """The site's names; the site is chosen before anything is made, so a second try fits."""
    found = _site_of(admin, missing="")
    ours = ledger.local(SHOP) or ledger.local("site") or ""
    if found and found != ours:
        raise NotShared(
            "This database holds another shop. To add this PC to it: station join. "
            "For a shop of its own, name another database."
        )
    if not ours:
        ours = token_hex(4)
        ledger.set_local("site", ours)
    return Names(ours)


def _site_of(admin: Session, missing: str | None = None) -> str:
    """The site whose database this is."""
    there = admin.execute("SELECT to_regclass('shop.site') IS NOT NULL").fetchone()
    row = admin.execute("SELECT id FROM shop.site").fetchone() if there and there[0] else None
    if row:
        return str(row[0])
    if missing is None:
        raise NotShared("This database is no shop's yet: station share makes it one.")
    return missing


def _found(
    admin: Session, session: Callable[[], Session], names: Names, database: str, here: str
) -> None:
    with admin.transaction():
        roles.make_owner(admin, names, database)
    schema.up_to_date(session, names)
    with admin.transaction():
        roles.as_owner(
            admin,
            names,
            "INSERT INTO shop.site (id, format, office) VALUES ({site}, {format}, {office})"
            " ON CONFLICT DO NOTHING",
            site=names.site,
            format=FORMAT,
            office=[here],
        )


def _bring(admin: Session, names: Names, ledger: Ledger) -> None:
    """Copies this PC's history behind what is there, which must be its beginning."""
    with admin.transaction():
        roles.run(admin, "SET LOCAL ROLE {}", names.owner)
        site = admin.execute("SELECT number, digest FROM shop.site FOR UPDATE").fetchone()
        assert site
        number, digest = site
        begins, _ = ledger.begins()
        if number < begins:
            raise NotShared(
                f"This PC's history begins behind entry {begins}, and this database ends at "
                f"{number}. Share from a PC that has all of it, or put a backup back."
            )
        if not ledger.holds(number, digest):
            raise NotShared(
                "The history in this database is not the beginning of this PC's. "
                "If the database was put back to an older day, open the station: it tells."
            )
        head = copy(admin, names.site, ledger.chain(number), f"station {ledger.station}")
        if head:
            admin.execute("UPDATE shop.site SET number = %s, digest = %s", head)


def copy(
    admin: Session,
    site: str,
    rows: Iterable[tuple[int, str, str, list[str], str, bytes]],
    by: str,
    table: str = "shop.entry",
) -> tuple[int, bytes] | None:
    """Copies entries as they are; gives the last one's number and digest."""
    head = None
    columns = "site, number, id, verdict, writes, body, digest, pushed_by, pushed_at"
    now = admin.execute("SELECT clock_timestamp()").fetchone()
    assert now
    with admin.cursor() as cursor, cursor.copy(f"COPY {table} ({columns}) FROM STDIN") as out:
        for number, id_, verdict, writes, body, digest in rows:
            out.write_row((site, number, id_, verdict, writes, body, digest, by, now[0]))
            head = number, digest
    return head


def _join_here(admin: Session, names: Names, folder: Path, address: Address, number: str) -> None:
    """Makes this PC a station as any other, by a role of its own; it needs no card."""
    membership = Membership(names.site, number, names.station(number), address)
    password = new_password()
    secret.keep(folder, membership.account, password)
    with admin.transaction():
        role = roles.make_station(admin, names, number)
        proof = roles.verifier(admin, role, password)
        roles.as_owner(admin, names, "ALTER ROLE {} LOGIN PASSWORD {proof}", role, proof=proof)
        roles.as_owner(
            admin,
            names,
            "UPDATE shop.station SET joined = clock_timestamp() WHERE number = {number}",
            number=number,
        )
    membership.keep(folder)


def _cards(admin: Session, names: Names, stations: int, here: str) -> list[IssuedCard]:
    """Cards for so many stations besides this one, those that have joined left out."""
    with admin.transaction():
        wanted = [str(n) for n in range(1, stations + 2) if str(n) != here][:stations]
        for number in wanted:
            roles.make_station(admin, names, number)
        rows = admin.execute("SELECT number FROM shop.station WHERE joined IS NULL").fetchall()
        waiting = {str(row[0]) for row in rows}
        return [roles.make_card(admin, names, n) for n in wanted if n in waiting]


def _first_line(error: psycopg.Error) -> str:
    return str(error).strip().splitlines()[0].removeprefix("ERROR:").strip()
