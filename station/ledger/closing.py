"""A closing: the books at one entry, so that a history can begin behind it.

Who has a closing needs no entry before it: the derived tables are rebuilt from the closing and
the entries behind it, and the chain of digests goes on from the closing's own.
"""

import hashlib
import zlib
from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

import msgspec

from station.ledger import statements
from station.ledger.books import Books
from station.ledger.codec import State, read_reading
from station.ledger.effects import ReadingRow, TallyKey
from station.ledger.faults import Fault
from station.ledger.sound import readable
from station.ledger.store import Store
from station.shop.places import balances

SEAL = 32  # bytes of digest before the books themselves
LARGEST = 2**31 - 1  # bytes of books once they are unpacked
_LARGEST_SUM = 2**62


class ClosingWrong(Fault):
    """A closing that does not hold; the text says why."""

    def __init__(self, why: str) -> None:
        super().__init__(f"The closing does not hold: {why}.")


class Begin(NamedTuple):
    """What a history begins behind: an entry's number, its digest, its time (shop-local)."""

    number: int = 0
    digest: bytes = b""
    at: str = ""


class Closing(NamedTuple):
    """An entry's number and digest, and the books right after it, packed and sealed."""

    number: int
    digest: bytes
    books: bytes


class _Sum(NamedTuple):
    """A row of the tally; older programs kept none of what stands behind the quantity."""

    hour: str
    frm: str
    to: str
    part: str
    qty: int
    router: str = ""
    reason: str = ""

    @property
    def key(self) -> TallyKey:
        """What is summed up."""
        return (self.hour, self.frm, self.to, self.part, self.router, self.reason)


class _Packed(msgspec.Struct, frozen=True, array_like=True):
    """The time of the entry, and the rows of the derived tables."""

    at: str
    balance: list[tuple[str, str, str, int]]
    fact: list[tuple[str, str, str | None, str, str]]
    tally: list[_Sum]
    reading: list[ReadingRow] = []  # older programs kept none


_decode = msgspec.msgpack.Decoder(_Packed).decode


def close(books: Books, begin: Begin) -> Closing:
    """The closing of books behind an entry."""
    rows = _Packed(
        begin.at,
        [(*key, qty) for key, qty in books.balance.items()],
        [(key, *row) for key, row in books.fact.items()],
        [_Sum(*key[:4], qty, *key[4:]) for key, qty in books.tally.items()],
        [(*key, text) for key, text in books.reading.items()],
    )
    packed = zlib.compress(msgspec.msgpack.encode(rows))
    return Closing(begin.number, begin.digest, _seal(begin.number, begin.digest, packed) + packed)


def opened(closing: Closing) -> tuple[Begin, Books]:
    """The books of a closing. Raises ClosingWrong where anything in it does not hold."""
    rows = _unpacked(closing)
    books = Books()
    books.balance.update((row[:3], row[3]) for row in rows.balance)
    books.fact.update((row[0], row[1:]) for row in rows.fact)
    books.tally.update((row.key, row.qty) for row in rows.tally)
    books.reading.update((row[:-1], row[-1]) for row in rows.reading)
    _check(rows, books)
    return Begin(closing.number, closing.digest, rows.at), books


def _seal(number: int, digest: bytes, packed: bytes) -> bytes:
    """The digest over all of a closing."""
    return hashlib.sha256(f"{number}\n".encode() + digest + packed).digest()


def _unpacked(closing: Closing) -> _Packed:
    number, digest, books = closing
    packed = books[SEAL:]
    if number < 1 or len(digest) != SEAL or _seal(number, digest, packed) != books[:SEAL]:
        raise ClosingWrong("its seal is broken")
    unpacking = zlib.decompressobj()
    try:
        raw = unpacking.decompress(packed, LARGEST)
        if not unpacking.eof:
            raise ClosingWrong("it is cut short")
        return _decode(raw)
    except (zlib.error, msgspec.MsgspecError) as error:
        raise ClosingWrong("it cannot be read") from error


def _check(rows: _Packed, books: Books) -> None:
    """Each row once, pieces balance and none are owed, every fact and reading can be read."""
    for name in statements.DERIVED:
        if len(books.table(name)) != len(getattr(rows, name)):
            raise ClosingWrong(f"the table {name} names one row twice")
    _check_pieces(rows.balance)
    if any(not row.qty or abs(row.qty) > _LARGEST_SUM for row in rows.tally):
        raise ClosingWrong("a count is none")
    _check_facts(rows.fact)
    _check_readings(rows.reading)


def _check_pieces(rows: Iterable[tuple[str, str, str, int]]) -> None:
    sums = Counter[str]()
    for _, part, place, qty in rows:
        sums[part] += qty
        if not qty or abs(qty) > _LARGEST_SUM or (qty < 0 and not balances(place)):
            raise ClosingWrong(f"{qty} of {part} lie at {place}")
    if open_ := [part for part, qty in sums.items() if qty]:
        raise ClosingWrong(f"the pieces of {open_[0]} do not balance")


def _check_facts(rows: Iterable[tuple[str, str, str | None, str, str]]) -> None:
    for key, text, shelf, rank, id_ in rows:
        try:
            sound = readable(key, State(msgspec.Raw(text.encode()), shelf, rank, id_))
        except Exception as error:
            raise ClosingWrong(f"the fact {key} cannot be read") from error
        if not sound:
            raise ClosingWrong(f"the fact {key} is no such fact")


def _check_readings(rows: Iterable[ReadingRow]) -> None:
    for subject, kind, at, _, _, text in rows:
        try:
            reading = read_reading(text)
        except msgspec.MsgspecError as error:
            raise ClosingWrong(f"a {kind} of {subject} cannot be read") from error
        if subject not in reading.subjects or kind != reading.kind or not reading.is_sound:
            raise ClosingWrong(f"what was read at {at} is no {kind} of {subject}")


def begin_of(store: Store) -> Begin:
    """What this history begins behind; the empty one where all of it is here."""
    rows = store.rows(statements.CLOSED_AT)
    return Begin(*rows[0]) if rows else Begin()


def books_of(store: Store) -> Books:
    """The books that this history begins with. Raises ClosingWrong."""
    begin = begin_of(store)
    if not begin.number:
        return Books()
    return opened(Closing(begin.number, begin.digest, packed_of(store)))[1]


def packed_of(store: Store) -> bytes:
    """The closing that this history begins with, as it is kept."""
    books: bytes = store.rows(statements.CLOSED_BOOKS)[0][0]
    return books


def keep(store: Store, begin: Begin, books: bytes) -> None:
    """Begins the history behind an entry, inside a transaction: what it holds is dropped."""
    store.run(statements.DROP_CLOSING)
    store.run(statements.PUT_CLOSING, (*begin, books))
    store.run(statements.DROP_UP_TO, (begin.number,))
