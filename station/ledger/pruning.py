"""Old entries leave a station's file: their closing takes their place."""

from contextlib import suppress

from station.ledger import closing, statements
from station.ledger.faults import Fault
from station.ledger.rebuild import closed
from station.ledger.store import Store


def older_than(store: Store, time: str) -> tuple[int, bytes]:
    """The last entry, with its digest, before the first of this time or later.

    Nothing older is there: the entry that the history begins behind.
    """
    first = store.rows(statements.FIRST_SINCE, (time,))[0][0]
    newest = store.rows(statements.NEWEST) or [closing.begin_of(store)]
    number = newest[0][0] if first is None else first - 1
    rows = store.rows(statements.LINK, (number,))
    return (number, rows[0][0]) if rows else closing.begin_of(store)[:2]


def drop_until(store: Store, number: int) -> None:
    """Drops the entries up to a number and gives the room back, where the disk has room for
    doing so: until then the file uses it itself. Raises ClosingWrong.
    """
    with store.faults():
        _, link, at = store.rows(statements.PLACE, (number,))[0]
        begin = closing.Begin(number, link, at)
        made = closing.close(closed(store, number), begin)
    with store.writing():
        closing.keep(store, begin, made.books)
    with suppress(Fault), store.faults():
        store.run("VACUUM")
