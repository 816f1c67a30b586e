"""Lists out of the history: entries, counts by hour, the flow of pieces."""

from collections.abc import Iterator
from typing import Any, NamedTuple

from station.ledger import effects, statements
from station.ledger.closing import begin_of
from station.ledger.codec import Body, lift_say, read_body, read_brief, write_body
from station.ledger.sound import taken_in
from station.ledger.store import Store
from station.ledger.view import Reader
from station.shop.moves import head
from station.shop.views import Past
from station.shop.words import Say


class HistoryEntry(NamedTuple):
    """An entry of the history; `number` counts from 1 without gaps."""

    number: int
    id: str
    past: Past[Any]
    at: str
    worker: str
    kind: str
    said: Say
    reverses: str  # id of the entry that it takes back, or empty


class MovedPieces(NamedTuple):
    """One move: when, between which kinds of place, how many of which part."""

    at: str
    frm: str
    to: str
    qty: int
    part: str


class Chained(NamedTuple):
    """An entry with its place in the chain; `writes` are the names of what it changed."""

    number: int
    id: str
    verdict: str
    writes: list[str]
    body: str
    digest: bytes


def entries(store: Store, reader: Reader, after: int, subject: str) -> Iterator[HistoryEntry]:
    """Entries in order, read in pages so that recording may go on in between."""
    while page := _page(store, after, subject):
        for number, text in page:
            yield _entry(number, read_body(text), reader)
        after = page[-1][0]
    newest = store.rows(statements.NEWEST) or [begin_of(store)]
    for number, body in enumerate(_waiting(store), newest[0][0] + 1):
        if number > after and (not subject or body.act.subject == subject):
            yield _entry(number, body, reader)


def _entry(number: int, body: Body, reader: Reader) -> HistoryEntry:
    act = body.act
    said = lift_say(body.said)
    past = reader.past_of(body)
    return HistoryEntry(number, act.id, past, act.at, act.worker, act.kind, said, body.reverses)


def _waiting(store: Store) -> Iterator[Body]:
    """The acts that are not shared yet: they come after all entries."""
    return (read_body(text) for (text,) in store.rows(statements.PENDING))


def _page(store: Store, after: int, subject: str) -> list[tuple[int, str]]:
    if subject:
        return store.rows(statements.ENTRIES_ABOUT, (subject, after))
    return store.rows(statements.ENTRIES, (after,))


def chain(store: Store, after: int) -> Iterator[Chained]:
    """Entries as they are shared, in order, from behind a number."""
    while page := store.rows(statements.SHARED, (after,)):
        for number, id_, verdict, text, link in page:
            yield Chained(number, id_, verdict, effects.writes(taken_in(id_, text)[0]), text, link)
        after = page[-1][0]


def holds(store: Store, number: int, link: bytes) -> bool:
    """Whether this history has the digest at this number; the empty one before the first."""
    rows = store.rows(statements.LINK, (number,))
    return bool(rows[0][0] == link) if rows else begin_of(store)[:2] == (number, link)


def flow(store: Store, reader: Reader, since: str, until: str) -> list[MovedPieces]:
    """Moves from one time to before another, in order; an entry taken back has moved nothing."""
    moves = []
    rows = store.rows(statements.BETWEEN, (since, until))
    mine = ((b.act.id, b.act.at, write_body(b)) for b in _waiting(store))
    for entry_id, at, text in (*rows, *(m for m in mine if since <= m[1] < until)):
        brief = read_brief(text)
        if brief.moves and not brief.reverses and not reader.undone(entry_id):
            moves += [
                MovedPieces(at, head(m.frm.place), head(m.to.place), m.qty, m.part)
                for m in brief.moves
            ]
    return moves
