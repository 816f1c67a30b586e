"""Whether the file is sound: the chain of digests, the balances, the derived tables."""

from contextlib import suppress

from station.ledger import statements
from station.ledger.books import Books
from station.ledger.closing import ClosingWrong, begin_of, books_of
from station.ledger.codec import Body, digest, read_body
from station.ledger.log_file import kept_log_of
from station.ledger.sound import LEFT_OUT, taken_in
from station.ledger.store import MENDED, Store
from station.shop.words import say

MOST = 20  # problems named; one broken thing must not fill the screen


def check(store: Store) -> list[str]:
    """All that is not sound, a sentence each, twenty at most. Empty: the file is sound.

    What is not leaves a mark, and the next start mends it. Raises Damaged where something
    cannot be read at all.
    """
    try:
        with store.faults():
            problems = _problems(store)[:MOST]
    except (ArithmeticError, LookupError, TypeError, ValueError) as error:
        raise store.spoilt() from error  # in the place of a spoilt page may stand anything
    if problems:
        store.suspect()
    else:
        with suppress(OSError):
            kept_log_of(store.path).unlink(missing_ok=True)
    return problems


def _problems(store: Store) -> list[str]:
    problems = _pages(store)
    try:
        books, wrong = _history(store)
        problems += wrong + _tables(store, books)
    except ClosingWrong as fault:
        problems.append(str(fault))
    return problems


def _pages(store: Store) -> list[str]:
    rows = store.run(f"PRAGMA integrity_check({MOST})").fetchall()
    return [f"The file: {' '.join(row[0].split())}" for row in rows if row[0] != "ok"]


def _history(store: Store) -> tuple[Books, list[str]]:
    """The books after all entries, and what does not hold in them."""
    books, problems, (last, link, at) = books_of(store), list[str](), begin_of(store)
    while page := store.run(statements.CHAIN, (last,)).fetchall():
        for number, id_, text, digest_, *columns in page:
            if not isinstance(id_, str):
                raise TypeError(f"entry {number} has no id")
            if number <= last:
                raise ValueError(f"entry {number} stands behind {last}")
            body, why = taken_in(id_, text, at)
            at = body.act.at
            wrong = [] if number == last + 1 else [f"an entry before it is missing ({last + 1})"]
            link = digest(link, id_, text)
            if link != digest_:
                wrong.append("its digest does not match")
                link = digest_
            why = books.take(body, why)
            if columns[1] != LEFT_OUT:  # else it was found out when it came, and needs a look
                wrong += _columns(body, id_, columns) + ([str(why)] if why else [])
            problems += [f"Entry {number}: {why}" for why in wrong[: MOST - len(problems)]]
            last = number
    for (text,) in store.run(statements.PENDING).fetchall():
        body = read_body(text)
        if not store.values.get(MENDED) and (why := books.unfit(body)):
            problems.append(f"Not shared yet: {why}")
        books.carry_out(body)
    return books, problems


def _columns(body: Body, id_: str, columns: list[str]) -> list[str]:
    """Whether the columns beside the body say what it says."""
    act = body.act
    same = (*columns, id_) == (act.at, act.kind, act.subject, act.id)
    return [] if same else ["its columns differ"]


def _tables(store: Store, books: Books) -> list[str]:
    """Where a derived table is not what the history says."""
    problems = []
    for table in statements.DERIVED:
        keys = books.differing(table, store.run(statements.ALL_ROWS[table]))
        if keys:
            first = ", ".join(keys[:3])
            words = say(
                "The table {table} differs in {n} {n|row|rows}: {first}",
                table=table,
                n=len(keys),
                first=first,
            )
            problems.append(str(words))
    return problems
