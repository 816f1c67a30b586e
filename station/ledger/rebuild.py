"""The derived tables worked out from the entries alone, from the closing on where there is one."""

import sqlite3
from collections.abc import Iterator

from station.ledger import closing, statements
from station.ledger.books import Books
from station.ledger.codec import Body, read_body
from station.ledger.sound import taken_in
from station.ledger.store import LAYOUT_NAME, Store
from station.shop.words import Say


def derived(store: Store) -> Books:
    """The books after all entries, and after the acts that are not shared yet."""
    books = closed(store)
    for (text,) in store.run(statements.PENDING).fetchall():
        books.carry_out(read_body(text))
    return books


def closed(store: Store, until: int | None = None) -> Books:
    """The books after the entries up to a number; after all where none is said."""
    books = closing.books_of(store)
    for number, body, why in _entries(store):
        if until is not None and number > until:
            break
        books.take(body, why)
    return books


def _entries(store: Store) -> Iterator[tuple[int, Body, Say]]:
    """Every entry in order, and why it cannot be read."""
    after, _, at = closing.begin_of(store)
    while page := store.run(statements.CHAIN, (after,)).fetchall():
        if page[-1][0] <= after:  # a spoilt page may give the same rows for ever
            raise store.spoilt()
        after = page[-1][0]
        for row in page:
            body, why = taken_in(row[1], row[2], at)
            at = body.act.at
            yield row[0], body, why


def rebuild(store: Store) -> None:
    """Writes the derived tables anew from the history, in one transaction.

    Those of an older program become those of this one.
    """
    with store.writing() as connection:
        books = derived(store)
        if store.is_older:
            store.renew_tables()
        fill(connection, books)
    store.values[LAYOUT_NAME] = str(statements.LAYOUT)


def fill(connection: sqlite3.Connection, books: Books) -> None:
    """Writes books as the derived tables, inside a transaction."""
    for table in statements.DERIVED:
        connection.execute(statements.EMPTY[table])
        connection.executemany(statements.FILL[table], books.rows(table))
