"""The tables of a station's file and the statements on them: the only SQL of the program.

SQLAlchemy Core defines them here, and nothing loads this module while a station runs:
``python -m resources.statements`` compiles every statement into ``statements.py``, which
runs on the driver's own connection. Core's execution on the recording path takes twice the
time, and loading SQLAlchemy alone took half of the time until a station was ready for a scan.
"""

from collections.abc import Iterable

from sqlalchemy import (
    Column,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    bindparam,
    delete,
    func,
    insert,
    literal_column,
    select,
    update,
)
from sqlalchemy.dialects import sqlite
from sqlalchemy.dialects.sqlite import insert as upsert
from sqlalchemy.schema import CreateIndex, CreateTable, DropTable
from sqlalchemy.sql.expression import BindParameter, ClauseElement, ColumnElement, Select

FORMAT = 1  # of entries: raised when an older program could no longer apply them
LAYOUT = 3  # of what is derived: raised with its tables, which an older file then gets anew

_DIALECT = sqlite.dialect(paramstyle="qmark")
meta = MetaData()


def _text(name: str, *, null: bool = False, key: bool = False) -> "Column[str]":
    return Column(name, Text, nullable=null, primary_key=key)


entry = Table(
    "entry",
    meta,
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("id", Text, nullable=False, unique=True),
    _text("at"),
    _text("kind"),
    _text("subject"),
    _text("verdict"),  # empty: it holds; else why it needs a look
    _text("body"),
    Column("digest", LargeBinary, nullable=False),
    sqlite_strict=True,
)
Index("entry_subject", entry.c.subject, entry.c.number, entry.c.kind)
Index("entry_at", entry.c.at)

pending = Table(
    "pending",
    meta,
    Column("seq", Integer, primary_key=True),
    Column("id", Text, nullable=False, unique=True),
    _text("subject"),
    _text("reads"),
    _text("body"),
    sqlite_strict=True,
)

balance = Table(
    "balance",
    meta,
    _text("batch", key=True),
    _text("part", key=True),
    _text("place", key=True),
    Column("qty", Integer, nullable=False),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)
Index("balance_place", balance.c.place, balance.c.part)

fact = Table(
    "fact",
    meta,
    _text("key", key=True),
    _text("body"),
    _text("shelf", null=True),
    _text("rank"),
    _text("entry"),  # id of the act that set it
    sqlite_strict=True,
)
Index("fact_shelf", fact.c.shelf, fact.c.rank, sqlite_where=fact.c.shelf.is_not(None))

tally = Table(
    "tally",
    meta,
    _text("hour", key=True),
    _text("frm", key=True),
    _text("to", key=True),
    _text("part", key=True),
    _text("router", key=True),  # that cut the pieces; empty: not known, or several
    _text("reason", key=True),  # why they were spoiled
    Column("qty", Integer, nullable=False),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)

reading = Table(
    "reading",
    meta,
    _text("subject", key=True),  # a reading has a row for each thing that it is found under
    _text("kind", key=True),
    _text("at", key=True),
    _text("entry", key=True),  # id of the act that it was taken at
    Column("n", Integer, primary_key=True, autoincrement=False),  # which of that act's
    _text("body"),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)

closing = Table(
    "closing",
    meta,
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("digest", LargeBinary, nullable=False),
    _text("at"),
    Column("books", LargeBinary, nullable=False),
    sqlite_strict=True,
)

local = Table("local", meta, _text("key", key=True), _text("value"), sqlite_strict=True)

_derived = (balance, fact, tally, reading)
DERIVED = tuple(table.name for table in _derived)


def sql(statement: ClauseElement) -> str:
    """The statement as one line of text, its values as question marks in their order."""
    return " ".join(str(statement.compile(dialect=_DIALECT)).split())


def _creation(tables: Iterable[Table]) -> tuple[str, ...]:
    """What makes tables with their indexes."""
    made, indexes = list(tables), list[Index]()
    for table in made:
        indexes += table.indexes
    indexes.sort(key=lambda index: str(index.name))
    return (*(sql(CreateTable(t)) for t in made), *(sql(CreateIndex(i)) for i in indexes))


def _summing(table: Table) -> str:
    """Adds to the row's quantity, making the row when there is none."""
    adding = upsert(table)
    return sql(
        adding.on_conflict_do_update(
            index_elements=list(table.primary_key.columns),
            set_={"qty": table.c.qty + adding.excluded.qty},
        )
    )


def _putting(table: Table) -> str:
    """Sets the row, whether it was there or not."""
    putting = upsert(table)
    others = [c.name for c in table.columns if not c.primary_key]
    return sql(
        putting.on_conflict_do_update(
            index_elements=list(table.primary_key.columns),
            set_={name: putting.excluded[name] for name in others},
        )
    )


def _first(rows: "Select[*tuple[object, ...]]", count: ColumnElement[int]) -> str:
    """The first so many rows; the offset is written out, or it would be a value too."""
    return sql(rows.limit(count).offset(_ZERO))


CREATION = _creation(meta.sorted_tables)  # makes an empty file a station's file
RENEWAL = (*(sql(DropTable(t, if_exists=True)) for t in _derived), *_creation(_derived))
CREATE_CLOSING = sql(CreateTable(closing))

_ZERO: ColumnElement[int] = literal_column("0")
_ONE: ColumnElement[int] = literal_column("1")
_PAGE: ColumnElement[int] = literal_column("1000")
_N: BindParameter[int] = bindparam("n")
_LISTED = select(func.json_each(bindparam("names")).table_valued("value").c.value)

_held = select(balance.c.place, balance.c.batch, balance.c.part, balance.c.qty)
_order = (balance.c.batch, balance.c.place, balance.c.part)
_above = balance.c.qty > _ZERO
_fact = select(fact.c.key, fact.c.body, fact.c.shelf, fact.c.rank, fact.c.entry)
_past = select(entry.c.number, entry.c.body)
_counts = entry.c.kind != literal_column("'left-out'")
_spot = (
    (balance.c.batch == bindparam("b")),
    (balance.c.part == bindparam("p")),
    (balance.c.place == bindparam("l")),
)

ADD_ENTRY = sql(insert(entry))
BODY_BY_ID = sql(select(entry.c.body).where(entry.c.id == bindparam("id"), _counts))
NUMBER_BY_ID = sql(select(entry.c.number).where(entry.c.id == bindparam("id")))
NEWEST = _first(
    select(entry.c.number, entry.c.digest, entry.c.at).order_by(entry.c.number.desc()), _ONE
)
ENTRIES = _first(_past.where(entry.c.number > _N, _counts).order_by(entry.c.number), _PAGE)
ENTRIES_ABOUT = _first(
    _past.where(entry.c.subject == bindparam("s"), entry.c.number > _N).order_by(entry.c.number),
    _PAGE,
)
_about = select(entry.c.body).where(entry.c.subject == bindparam("s"))
LAST = _first(_about.order_by(entry.c.number.desc()), _ONE)
LAST_OF_KIND = _first(
    _about.where(entry.c.kind == bindparam("k")).order_by(entry.c.number.desc()), _ONE
)
_told = select(entry.c.number, entry.c.body).where(_counts).order_by(entry.c.number.desc())
TOLD = _first(_told, _N)
TOLD_ABOUT = _first(_told.where(entry.c.subject == bindparam("s")), _N)
BETWEEN = sql(
    select(entry.c.id, entry.c.at, entry.c.body)
    .where(entry.c.at >= bindparam("a"), entry.c.at < bindparam("b"), _counts)
    .order_by(entry.c.at, entry.c.number)
)
_chained = select(
    entry.c.number,
    entry.c.id,
    entry.c.body,
    entry.c.digest,
    entry.c.at,
    entry.c.kind,
    entry.c.subject,
).order_by(entry.c.number)
CHAIN = _first(_chained.where(entry.c.number > _N), _PAGE)
CHAIN_FROM = _first(_chained.where(entry.c.number >= _N), _PAGE)
SHARED = _first(
    select(
        entry.c.number,
        entry.c.id,
        entry.c.verdict,
        entry.c.body,
        entry.c.digest,
    )
    .where(entry.c.number > _N)
    .order_by(entry.c.number),
    _PAGE,
)
LATELY = _first(
    select(entry.c.body).where(_counts).order_by(entry.c.number.desc()), literal_column("200")
)
AFTER = sql(select(entry.c.kind, entry.c.body).where(entry.c.number > _N).order_by(entry.c.number))
DROP_AFTER = sql(delete(entry).where(entry.c.number > _N))
DROP_UP_TO = sql(delete(entry).where(entry.c.number <= _N))
FIRST_SINCE = sql(select(func.min(entry.c.number)).where(entry.c.at >= bindparam("a")))
PLACE = sql(select(entry.c.number, entry.c.digest, entry.c.at).where(entry.c.number == _N))
LINK = sql(select(entry.c.digest).where(entry.c.number == _N))
PENDING = sql(select(pending.c.body).order_by(pending.c.seq))
ALL_PENDING = sql(select(pending).order_by(pending.c.seq))
ADD_PENDING = sql(insert(pending))
COUNT_PENDING = sql(select(func.count()).select_from(pending))
_waits = select(pending.c.seq, pending.c.body).order_by(pending.c.seq.desc())
PENDING_TOLD = _first(_waits, _N)
PENDING_TOLD_ABOUT = _first(_waits.where(pending.c.subject == bindparam("s")), _N)
PENDING_BY_ID = sql(select(pending.c.body).where(pending.c.id == bindparam("id")))
PENDING_ABOUT = sql(
    select(pending.c.body)
    .where(pending.c.subject == bindparam("s"))
    .order_by(pending.c.seq.desc())
)
FIRST_PENDING = _first(select(pending).order_by(pending.c.seq), _N)
LAST_PENDING = _first(select(pending).order_by(pending.c.seq.desc()), _N)
DROP_PENDING = sql(delete(pending).where(pending.c.seq == _N))

SPOT = sql(select(balance.c.qty).where(*_spot))
SPOTS_OF = sql(select(balance).where(balance.c.batch.in_(_LISTED)))
SET_SPOT = sql(update(balance).where(*_spot).values(qty=bindparam("q")))
NEW_SPOT = sql(insert(balance))
PUT_SPOT = _putting(balance)
EMPTY_SPOT = sql(delete(balance).where(*_spot))
STOCK_BATCH = sql(_held.where(balance.c.batch == bindparam("b"), _above).order_by(*_order))
STOCK_PLACE = sql(_held.where(balance.c.place == bindparam("l"), _above).order_by(*_order))
STOCK_AT = sql(
    _held.where(
        balance.c.batch == bindparam("b"), balance.c.place == bindparam("l"), _above
    ).order_by(*_order)
)
BALANCES = sql(_held.order_by(*_order))

FACT = sql(_fact.where(fact.c.key == bindparam("k")))
FACTS_OF = sql(_fact.where(fact.c.key.in_(_LISTED)))
FACTS = sql(
    _fact.where(fact.c.key > bindparam("a"), fact.c.key < bindparam("b")).order_by(fact.c.key)
)
SHELF = _first(_fact.where(fact.c.shelf == bindparam("s")).order_by(fact.c.rank, fact.c.key), _N)
PUT_FACT = _putting(fact)
DROP_FACT = sql(delete(fact).where(fact.c.key == bindparam("k")))

ADD_TALLY = _summing(tally)
DROP_EMPTY_TALLY = sql(delete(tally).where(tally.c.qty == _ZERO, tally.c.hour == bindparam("h")))
TALLY = sql(
    select(tally)
    .where(tally.c.hour >= bindparam("a"), tally.c.hour <= bindparam("b"))
    .order_by(*tally.primary_key.columns)
)

PUT_READING = _putting(reading)
DROP_READING = sql(delete(reading).where(*(c == bindparam(c.name) for c in reading.primary_key)))
_undone = literal_column("'undone/'", Text).concat(reading.c.entry)
SERIES = sql(
    select(reading.c.at, reading.c.entry, reading.c.body)
    .where(
        reading.c.subject == bindparam("s"),
        reading.c.kind == bindparam("k"),
        reading.c.at >= bindparam("a"),
        ~select(fact.c.key).where(fact.c.key == _undone).exists(),
    )
    .order_by(reading.c.at, reading.c.entry, reading.c.n)
)

CLOSED_AT = sql(select(closing.c.number, closing.c.digest, closing.c.at))
CLOSED_BOOKS = sql(select(closing.c.books))
PUT_CLOSING = sql(insert(closing))
DROP_CLOSING = sql(delete(closing))

LOCAL_ALL = sql(select(local))
PUT_LOCAL = _putting(local)
EVERY_CLOSING = sql(select(closing))
EVERY_ENTRY = sql(select(entry).order_by(entry.c.number))
ALL_ROWS = {table.name: sql(select(table)) for table in _derived}
DROP_LOCAL = sql(delete(local).where(local.c.key == bindparam("k")))
EMPTY = {table.name: sql(delete(table)) for table in _derived}
FILL = {table.name: sql(insert(table)) for table in _derived}
