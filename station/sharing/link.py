"""The shop's database over the network: one connection, made anew when it is lost.

Nothing here waits without an end: connecting, every statement and every answer have their
time, also where the network swallows everything without a word.
"""

import json
import logging
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime
from threading import Lock
from typing import Any, TypeVar

import psycopg
from psycopg.abc import PQGen
from psycopg.generators import execute
from psycopg.pq import ExecStatus, Format
from psycopg.pq.abc import PGconn, PGresult

from station.ledger.closing import Closing
from station.ledger.effects import list_text
from station.ledger.shop_link import (
    Away,
    Behind,
    Head,
    HistoryDiffers,
    NoShop,
    Outcome,
    Pushed,
    Refused,
    SharedEntry,
    SharedRow,
    TooOld,
)
from station.ledger.statements import LAYOUT
from station.sharing.address import Address

log = logging.getLogger(__name__)
R = TypeVar("R")
Values = Sequence[object] | Mapping[str, object]

CONNECTING = 3  # seconds for each host
PATIENCE = 5.0  # seconds for an answer
# The server gives up before the station does: what is given up is seldom done later.
OURS = {
    "connect_timeout": str(CONNECTING),
    "application_name": "station",
    "target_session_attrs": "read-write",  # of several hosts the one that takes pushes
    "client_encoding": "utf8",
    # A push that is a CALL would be planned anew each time.
    "options": "-c statement_timeout=4s -c lock_timeout=2s -c plan_cache_mode=force_generic_plan",
}
ALIVE = {
    "keepalives_idle": "5",
    "keepalives_interval": "2",
    "keepalives_count": "3",
    "tcp_user_timeout": "8000",
}

# What a database has that is brought up to date.
IS_THERE = (
    "SELECT to_regproc('shop.settle') IS NOT NULL, to_regproc('shop.append_one') IS NOT NULL,"
    " to_regproc('shop.append') IS NOT NULL,"
    " EXISTS (SELECT FROM pg_proc WHERE oid = to_regproc('shop.append')"
    " AND 'plan_cache_mode=force_generic_plan' = ANY (proconfig)),"
    " EXISTS (SELECT FROM pg_proc WHERE oid = to_regproc('shop.append_one')"
    " AND 'plan_cache_mode=force_generic_plan' <> ALL (proconfig))"
)
# A database that is not brought up to date yet has fewer columns: it tells which it has.
HEAD = (
    "SELECT id, epoch, number, digest, format,"
    " extract(epoch FROM clock_timestamp())::float8,"
    " to_jsonb(s)::text, there.* FROM shop.site s, ({is_there}) there"
)
HEAD = HEAD.format(is_there=IS_THERE)
# No more than 8 MB at once but for one entry, whatever somebody may have pushed. Numbers are
# dense, so a range bounds what is read: behind a LIMIT a server that has no statistics of the
# table yet sorted all of it for each page.
PULL = (
    "SELECT number, id, verdict, body, digest FROM ("
    " SELECT *, sum(octet_length(body)) OVER (ORDER BY number) - octet_length(body) AS before"
    " FROM shop.entry"
    " WHERE site = (SELECT id FROM shop.site) AND number > %s AND number <= %s"
    ") e WHERE before < 8388608 AND {settled} ORDER BY number"
)
PULL_OF_BEFORE, PULL = PULL.format(settled="true"), PULL.format(settled="(SELECT shop.settle())")
# What a push says is counted. One entry's texts go as bytes with their length, as the digest does.
AT = "$1::bigint, $2::bytea, $3::integer, $4::text[]"
TEXT, BYTES = Format.TEXT, Format.BINARY
LISTS_AS, ONE_AS = (TEXT, BYTES, *[TEXT] * 6), (TEXT, BYTES, TEXT, TEXT, *[BYTES] * 4)
ROWS, ROW = f"{AT}, $5::text[], $6::text[], $7::text[]", f"{AT}, $5::text, $6::text, $7::text"
ROW_AS_ROWS = f"{AT}, ARRAY[$5::text], ARRAY[$6::text], ARRAY[$7::text]"
# Who is alone waits for the disk in its own commit. Among many it is faster to let the site's row
# go first, as the procedure does.
ALONE = "SELECT outcome, number, digest, format FROM shop.{}({})"
AMONG_MANY = "CALL shop.{}({}, NULL::text, NULL::bigint, NULL::bytea, NULL::integer)"
PUSH_ALONE, PUSH = ALONE.format("append", ROWS), AMONG_MANY.format("append_and_settle", ROWS)
PUSH_ONE_ALONE = ALONE.format("append_one", ROW)
PUSH_ONE = AMONG_MANY.format("append_one_and_settle", ROW)
PUSH_OF_BEFORE = ALONE.format("push", f"{AT}, $5::text[], $6::text[], $8::text[], $7::text[]")
PUSH_ONE_OF_BEFORE = ALONE.format(
    "push", f"{AT}, ARRAY[$5::text], ARRAY[$6::text], ARRAY[$8::text], ARRAY[$7::text]"
)
CUT_OFF = "SELECT shop.cut_off()"
# What is asked instead where something of `IS_THERE` is not.
OF_BEFORE: tuple[dict[str, str], ...] = (
    {PULL: PULL_OF_BEFORE},
    {
        PUSH_ONE: AMONG_MANY.format("append_and_settle", ROW_AS_ROWS),
        PUSH_ONE_ALONE: ALONE.format("append", ROW_AS_ROWS),
    },
    {
        **dict.fromkeys((PUSH, PUSH_ALONE), PUSH_OF_BEFORE),
        **dict.fromkeys((PUSH_ONE, PUSH_ONE_ALONE), PUSH_ONE_OF_BEFORE),
    },
    {},
    {},
)

CLOSING = (
    "SELECT number, digest, length(books) FROM shop.closing"
    " WHERE format = %s ORDER BY number DESC LIMIT 1"
)
CLOSING_PIECE = (
    "SELECT substring(books FROM %s::integer FOR %s::integer) FROM shop.closing WHERE number = %s"
)
# What the driver says where a server shows that it knows no password, or no right certificate.
UNPROVED = (
    "channel binding", "certificate verify failed", "server certificate", "root certificate",
    "server did not complete authentication", "incorrect server signature", "malformed SCRAM",
    "over a non-SSL connection",  # a proof that TLS alone can give, offered without it
)  # fmt: skip
# What `push` says where it takes no entry for whose it is, by its own codes.
REFUSALS = {
    "SH001": "The shop's database takes no act of another station from this PC.",
    "SH002": "The shop's database takes people, PINs, reasons and settings from the office alone.",
    "SH003": (
        "This station held sharing up and is cut off for a minute. If this PC did nothing of the "
        "kind, its password is in wrong hands: tell who owns the database."
    ),
}
PIECE = 2**20  # bytes of a closing that come at once: each piece has its time
# No table, no schema, no row for the site: what a database without a shop says to a station.
NOTHING_THERE = (
    psycopg.errors.UndefinedTable,
    psycopg.errors.InvalidSchemaName,
    psycopg.errors.NoDataFound,
)


class Patient(psycopg.Connection[Any]):
    """A connection that waits so long for an answer and no longer."""

    patience = PATIENCE

    def wait(self, gen: PQGen[R], interval: float = 0.1, timeout: float | None = None) -> R:
        """Runs what the driver asks for until it is there or the time is up."""
        return super().wait(gen, interval, self.patience if timeout is None else timeout)


def connect(address: Address, role: str, password: str) -> Patient:
    """A connection whose statements are each a transaction of their own."""
    options: dict[str, Any] = {**address.options, **ALIVE, **OURS}
    return Patient.connect(**options, user=role, password=password, autocommit=True)


class PostgresLink:
    """The shop's database as one station's own role. Calls take turns."""

    def __init__(self, address: Address, role: str, password: Callable[[], str]) -> None:
        self.address, self.role = address, role
        self._password = password
        self._connection: Patient | None = None
        self._cursor: psycopg.Cursor[Any]
        self._instead: dict[str, str] = {}
        self._prepared: dict[str, bytes] = {}  # pushes that this connection knows, by its names
        self._is_alone = False  # nobody had written anything when this station pushed last
        self._turn = Lock()

    def head(self) -> Head:
        """Where the shared history ends. Raises Away."""
        row = self._ask(HEAD, ())
        if not row:
            raise NoShop(empty(self.address))
        known, told, there = row[0][:6], json.loads(row[0][6]), row[0][7:]
        self._note_what_is_there(*there)
        held = told.get("held_by") or "", read_time(told.get("held_at") or "")
        office = tuple(told.get("office") or ())
        return Head._make((*known, office, held, not all(there)))

    def pull(self, after: int, limit: int) -> list[SharedEntry]:
        """Entries in order from behind a number. Raises Away."""
        return list(map(SharedEntry._make, self._ask(PULL, (after, after + limit))))

    def push(
        self,
        head: int,
        digest: bytes,
        format: int,
        reads: Sequence[str],
        rows: Sequence[SharedRow],
    ) -> Outcome:
        """Appends rows if nothing that was read has been written since `head`. Raises Away."""
        at = (b"%d" % head, digest, b"%d" % format, write_array(reads).encode())
        if len(rows) == 1:
            ((id_, verdict, writes, body),) = rows
            texts = [id_, verdict, body, list_text(writes)]
            asked, formats = PUSH_ONE_ALONE if self._is_alone else PUSH_ONE, ONE_AS
        else:
            lists = [[r.id for r in rows], [r.verdict for r in rows], [r.body for r in rows]]
            texts = [write_array(each) for each in (*lists, [list_text(r.writes) for r in rows])]
            asked, formats = PUSH_ALONE if self._is_alone else PUSH, LISTS_AS
        given = (*at, *[text.encode() for text in texts])
        outcome = _outcome(*self._in_turn(lambda: self._push_by(asked, given, formats)))
        self._is_alone = isinstance(outcome, Pushed) and outcome.number == head + len(rows)
        return outcome

    def closing(self) -> Closing | None:
        """The newest closing with all that this program derives, or None. Raises Away.

        One that is changed while its pieces come is noticed by its seal.
        """
        for number, digest, length in self._ask(CLOSING, (LAYOUT,)):
            starts = range(1, length + 1, PIECE)
            pieces = [self._ask(CLOSING_PIECE, (start, PIECE, number)) for start in starts]
            return Closing(number, digest, b"".join(row[0] for rows in pieces for row in rows))
        return None

    def close(self) -> None:
        """Closes the connection."""
        with self._turn:
            self._drop()

    def _ask(self, statement: str, values: Values) -> list[tuple[Any, ...]]:
        """The rows of one statement."""
        return self._in_turn(lambda: self._run(statement, values))

    def _in_turn(self, run: Callable[[], R]) -> R:
        """What one statement gives when its turn comes; whatever goes wrong ends the connection.

        One that was open before and is found dead is made anew once: a push that had come
        through all the same is found by its ids.
        """
        with self._turn:
            used = self._connection is not None
            try:
                try:
                    return run()
                except psycopg.OperationalError as error:
                    if isinstance(error, psycopg.errors.LockNotAvailable) and self._cut_off():
                        return run()
                    if not used or self._alive():
                        raise
                    self._drop()
                    return run()
            except psycopg.Error as error:
                self._drop()
                raise _away(error, self.address) from error
            except BaseException:
                self._drop()
                raise

    def _run(self, statement: str, values: Values) -> list[tuple[Any, ...]]:
        cursor = self._open()
        asked = self._instead.get(statement, statement)
        return cursor.execute(asked, values, prepare=True).fetchall()

    def _push_by(
        self, statement: str, values: Sequence[bytes], formats: Sequence[Format]
    ) -> tuple[str, int, bytes, int]:
        """What a push answered. The driver is asked for nothing but to send it and to wait: to
        find out anew each time how to write and read values took it longer than all the rest.
        """
        self._open()
        asked = self._instead.get(statement, statement)
        if (name := self._prepared.get(asked)) is None:
            name = b"push %d" % len(self._prepared)
            self._send(lambda server: server.send_prepare(name, asked.encode()))
            self._prepared[asked] = name
        count = 8 if "$8" in asked else 7
        given = name, values[:count], formats[:count], BYTES
        told = self._send(lambda server: server.send_query_prepared(*given))
        outcome, number, link, least = (told.get_value(0, n) or b"" for n in range(4))
        return outcome.decode(), int.from_bytes(number), link, int.from_bytes(least)

    def _send(self, send: Callable[[PGconn], None]) -> PGresult:
        """What the server answers to what is sent. Raises psycopg.Error where that is an error."""
        assert self._connection
        send(self._connection.pgconn)
        told: PGresult
        (told,) = self._connection.wait(execute(self._connection.pgconn))
        if told.status not in (ExecStatus.TUPLES_OK, ExecStatus.COMMAND_OK):
            raise psycopg.errors.error_from_result(told)
        return told

    def _cut_off(self) -> bool:
        """Cuts off who holds everybody's sharing up, where there is one; tells whether it did."""
        try:
            ((held,),) = self._run(CUT_OFF, ())
        except psycopg.errors.UndefinedFunction:  # a database that is not brought up to date yet
            return False
        if held:
            log.warning("station %s held sharing up and was cut off", held)
        return bool(held)

    def _alive(self) -> bool:
        """Whether the connection still stands: then the server was slow, not gone."""
        return self._connection is not None and not self._connection.closed

    def _open(self) -> psycopg.Cursor[Any]:
        if self._connection is None or self._connection.closed:
            self._connection = connect(self.address, self.role, self._password())
            self._prepared = {}
            # one for the whole connection: with a new one for each statement the driver learns
            # anew how to write and read values
            self._cursor = self._connection.cursor(binary=True)
            (there,) = self._cursor.execute(IS_THERE).fetchall()
            self._note_what_is_there(*there)
        return self._cursor

    def _note_what_is_there(self, *there: bool) -> None:
        lacks = [old for old, has in zip(OF_BEFORE, there, strict=True) if not has]
        self._instead = dict(pair for statements in lacks for pair in statements.items())

    def _drop(self) -> None:
        if self._connection is not None:
            self._connection.close()
            self._connection = None


def write_array(texts: Iterable[str]) -> str:
    """Writes a list as the server reads one: the driver takes ten times as long for it."""
    escaped = [text.replace("\\", "\\\\").replace('"', '\\"') for text in texts]
    return "{" + ",".join([f'"{text}"' for text in escaped]) + "}"


def read_time(text: str) -> str:
    """Reads a time that the server wrote; gives it as the clocks of this shop show it."""
    if not text:
        return ""
    here = datetime.fromisoformat(text).astimezone().replace(tzinfo=None)
    return here.isoformat(timespec="seconds")


def _outcome(outcome: str, number: int, digest: bytes, format: int) -> Outcome:
    """What the function answered."""
    if outcome == "pushed":
        return Pushed(number, digest)
    if outcome == "too old":
        return TooOld(format)
    return Behind() if outcome == "behind" else HistoryDiffers()


def set_up_wrong(error: psycopg.Error, address: Address) -> str:
    """What whoever runs the server has to set up before anybody comes in; or nothing."""
    text = str(error)
    if "pg_hba.conf" in text:  # asked first: the server's sentence names SSL as well
        return (
            f"The server at {address} lets nobody into that database from this PC. "
            "Is its name right, and has pg_hba.conf a line for it? The README says how."
        )
    if "does not support SSL" in text or "SSL not in use" in text:
        return (
            f"The server at {address} does not encrypt, and the way there goes over a wire. "
            "Set up TLS on it first; the README says how."
        )
    if any(words in text for words in UNPROVED):
        return (
            f"The server at {address} does not prove that it is the shop's: somebody may stand "
            "in between. Nothing secret was sent. Ask who runs the server."
        )
    if "authentication method requirement" in text:
        return (
            f"The server at {address} asks for the password in a way that gives it away, or for "
            "none: nothing was answered. Whoever runs it sets scram-sha-256 in pg_hba.conf and "
            "password_encryption, then the password anew."
        )
    return ""


def empty(address: Address) -> str:
    """What is told where a database answers that has no shop in it."""
    return f"The database at {address} is empty: it is not the shop's. Ask who owns it."


def _away(error: psycopg.Error, address: Address) -> Away:
    """Why the database is not to be had, in a sentence."""
    text = str(error)
    if isinstance(error, psycopg.errors.InvalidPassword) or "authentication failed" in text:
        return Away(
            "The shop's database does not let this station in. "
            "Ask who owns it for a new join card."
        )
    if isinstance(error, NOTHING_THERE):
        return NoShop(empty(address))
    if told := REFUSALS.get(error.sqlstate or ""):
        log.error("the shop's database refused: %s", text)
        return Refused(told)
    if isinstance(error, psycopg.errors.LockNotAvailable):
        return Away("Somebody holds the shop's database up. It is tried again.")
    if why := set_up_wrong(error, address):
        return Away(why)
    if isinstance(error, psycopg.errors.DiskFull):
        log.error("the shop's database: %s", text)
        return Away(f"The disk of the server at {address} is full. Tell who runs it.")
    if f'database "{address.database}" does not exist' in text:
        return Away(f"There is no database {address.database} on the server at {address}.")
    if isinstance(error, psycopg.OperationalError | psycopg.InterfaceError):
        log.info("away: %s", text)
        return Away(f"The shop's database at {address} does not answer.")
    log.error("the shop's database refused: %s", text)
    return Away(f"The shop's database at {address} refused what was sent.")
