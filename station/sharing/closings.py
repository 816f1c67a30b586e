"""Closings in the shop's database: made by who owns it, begun with by a PC that joins.

No station may write one, for a new PC believes it: the owner's command works it out from the
entries alone. Enough of them stay behind it that a new PC knows the last month entry by entry.
"""

from collections.abc import Callable, Iterator
from datetime import datetime, timedelta

from station.ledger.books import Books
from station.ledger.closing import Begin, Closing, ClosingWrong, close, opened
from station.ledger.codec import Body, digest
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.ledger.sound import taken_in
from station.ledger.statements import LAYOUT
from station.sharing import roles
from station.sharing.link import PostgresLink
from station.sharing.roles import Names, Session
from station.shop.words import Say

RECENT = timedelta(days=31)  # so much a new PC gets entry by entry
MOST_RECENT = 50_000  # entries, or it would not be ready within a minute
PAGE = 4000
TOLD = 100_000  # entries between two words of progress

# One that an older program made lacks some of what is derived by now.
NEWEST = "SELECT number, digest, books FROM shop.closing WHERE format = %s"
ENTRIES = (
    "SELECT number, id, body, digest FROM shop.entry"
    " WHERE site = (SELECT id FROM shop.site) AND number > %s ORDER BY number LIMIT %s"
)
WRITE = (
    "INSERT INTO shop.closing (number, digest, format, books) VALUES (%s, %s, %s, %s)"
    " ON CONFLICT (number) DO NOTHING"  # somebody made the same one at the same time
)


class ChainBroken(Fault):
    """The entries in the shop's database do not follow on each other."""

    def __init__(self, number: int) -> None:
        super().__init__(
            f"Entry {number} in the shop's database does not follow on the one before it. "
            "No closing was made; put a backup back that is whole."
        )


def make(admin: Session, names: Names, now: str, tell: Callable[[str], None]) -> Begin:
    """Makes a newer closing where there is one to make; gives where the newest stands.

    `now` is shop-local. Goes on from the closing before it. Raises ChainBroken.
    """
    since = (datetime.fromisoformat(now) - RECENT).isoformat(timespec="seconds")
    head = int(admin.execute("SELECT number FROM shop.site").fetchall()[0][0])
    before, books = _newest(admin)
    begin = before
    for entry, body, why in _entries(admin, begin):
        if entry.at >= since and entry.number > head - MOST_RECENT:
            break
        books.take(body, why)
        begin = entry
        if entry.number % TOLD == 0:
            tell(f"… {entry.number} of {head} entries read")
    if begin != before:
        _write(admin, names, close(books, begin))
    return begin


def begin_with(ledger: Ledger, link: PostgresLink) -> None:
    """Begins an empty history with the newest closing, where there is one.

    Raises ClosingWrong with nothing written, or Away.
    """
    closing = None if ledger.count() else link.closing()
    if closing is None:
        return
    there = link.pull(closing.number - 1, 1)
    if not there or (there[0].number, there[0].digest) != closing[:2]:
        raise ClosingWrong("it stands behind another entry")
    ledger.start_from(closing)


def _newest(admin: Session) -> tuple[Begin, Books]:
    """What there is to go on from; nothing where the closing does not hold."""
    for row in admin.execute(NEWEST, (LAYOUT,)).fetchall():
        there = admin.execute(ENTRIES, (row[0] - 1, 1)).fetchall()
        if there and (there[0][0], there[0][3]) == row[:2]:
            try:
                return opened(Closing(*row))
            except ClosingWrong:
                break
    return Begin(), Books()


def _entries(admin: Session, begin: Begin) -> Iterator[tuple[Begin, Body, Say]]:
    """Entries in order as every station judges them, the chain proved."""
    last, link, at = begin
    while page := admin.execute(ENTRIES, (last, PAGE)).fetchall():
        for number, id_, text, found in page:
            last, link = last + 1, digest(link, id_, text)
            if (number, found) != (last, link):
                raise ChainBroken(number)
            body, why = taken_in(id_, text, at)
            at = body.act.at
            yield Begin(number, link, at), body, why


def _write(admin: Session, names: Names, closing: Closing) -> None:
    """The closing in the place of those before it: they are no history, and can be made again."""
    with admin.transaction():
        roles.run(admin, "SET LOCAL ROLE {}", names.owner)
        admin.execute("DELETE FROM shop.closing")
        admin.execute(WRITE, (closing.number, closing.digest, LAYOUT, closing.books))
