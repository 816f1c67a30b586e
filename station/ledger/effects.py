"""Effects: what an answer writes, whether it holds, and carrying it out in the tables."""

import sqlite3
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

import msgspec

from station.ledger import statements
from station.ledger.codec import Body, Change, write_reading
from station.ledger.faults import EffectsWrong
from station.shop.moves import Move, head
from station.shop.places import balances, find_reason_of

SpotKey = tuple[str, str, str]  # batch, part, place: as the balance table is keyed
TallyKey = tuple[str, str, str, str, str, str]  # hour, from, to, part, router, reason
ReadingKey = tuple[str, str, str, str, int]  # subject, kind, time, act, which of its readings
ReadingRow = tuple[str, str, str, str, int, str]
TallyRow = tuple[str, str, str, str, str, str, int]


class Short(NamedTuple):
    """A spot that would fall below zero."""

    batch: str
    part: str
    place: str
    qty: int


def net(moves: Iterable[Move]) -> dict[SpotKey, int]:
    """What the moves together add to each spot; spots that end as they were are left out."""
    sums: dict[SpotKey, int] = {}
    for part, qty, (place, batch), (to_place, to_batch) in moves:
        out, into = (batch, part, place), (to_batch, part, to_place)
        sums[out] = sums.get(out, 0) - qty
        sums[into] = sums.get(into, 0) + qty
    return {key: qty for key, qty in sums.items() if qty} if 0 in sums.values() else sums


def check_moves(moves: Iterable[Move]) -> None:
    """Raises EffectsWrong for a move of nothing or less, or of no whole number."""
    for m in moves:
        if type(m.qty) is not int or m.qty < 1:
            raise EffectsWrong(f"A move must take one piece or more: {m}")


def writes(body: Body) -> list[str]:
    """The names of all that the entry changed, as the view names what it read."""
    names = {f"act/{body.act.id}", f"about/{body.act.subject}"}
    for _, _, *spots in body.moves:
        for place, batch in spots:
            names.update((f"at/{place}/{batch}", f"stock/{batch}", f"place/{place}"))
    for change in body.sets:
        names.add(change.key)
        for state in (change.before, change.after):
            if state and state.shelf is not None:
                names.add(f"shelf/{state.shelf}")
    for reading in body.readings:
        names.update(f"series/{subject}/{reading.kind}" for subject in reading.subjects)
    return sorted(names)


def marks(body: Body) -> set[str]:
    """The facts and spots that the entry changes, one by one; balancing places come apart."""
    ends = (spot for m in body.moves for spot in (m.frm, m.to) if not balances(spot.place))
    return {f"at/{place}/{batch}" for place, batch in ends} | {c.key for c in body.sets}


def rests_on(body: Body) -> set[str]:
    """What the effects rest on, whatever the rule read: states before, and spots taken from."""
    spots = {f"at/{m.frm.place}/{m.frm.batch}" for m in body.moves if not balances(m.frm.place)}
    return spots | {change.key for change in body.sets}


_NAMES = msgspec.json.Encoder()
EntryRow = tuple[int, str, str, str, str, str, str, bytes]


def entry_row(number: int, body: Body, text: str, link: bytes) -> EntryRow:
    """The row of an entry: all but the digest follows from its body."""
    act = body.act
    return (number, act.id, act.at, act.kind, act.subject, body.verdict, text, link)


def list_text(names: Iterable[str]) -> str:
    """Names as they are kept: a JSON list."""
    return _NAMES.encode(list(names)).decode()


def apply_moves(connection: sqlite3.Connection, moves: Iterable[Move]) -> list[Short]:
    """Moves the pieces; returns the spots that fell below zero and may not."""
    short = []
    run = connection.execute
    for key, change in net(moves).items():
        row = run(statements.SPOT, key).fetchone()
        if row is None:
            run(statements.NEW_SPOT, (*key, change))
            qty = change
        elif qty := row[0] + change:
            run(statements.SET_SPOT, (qty, *key))
        else:
            run(statements.EMPTY_SPOT, key)
        if qty < 0 and change < 0 and not balances(key[2]):
            short.append(Short(*key, qty))
    return short


def apply_sets(connection: sqlite3.Connection, id: str, sets: Iterable[Change]) -> None:
    """Sets the facts as they are after the entry."""
    for key, state in ((c.key, c.after) for c in sets):
        if state is None:
            connection.execute(statements.DROP_FACT, (key,))
        else:
            row = (key, bytes(state.body).decode(), state.shelf, state.rank, state.entry or id)
            connection.execute(statements.PUT_FACT, row)


def tally_rows(body: Body) -> list[TallyRow]:
    """What the entry adds to the counts by hour; a reversal takes away what it reverses.

    Both count in the hour of what was done, and so does what takes a reversal back.
    """
    hour, router = body.reversed_at[:13] if body.reverses else body.act.at[:13], body.router
    if body.reverses and not body.restores:
        return [
            (hour, *_name_way(to.place, frm.place, part, router), -n)
            for part, n, frm, to in body.moves
        ]
    return [
        (hour, *_name_way(frm.place, to.place, part, router), n) for part, n, frm, to in body.moves
    ]


@lru_cache(maxsize=8192)  # a shop has far fewer, and every move of a long history passes
def _name_way(frm: str, to: str, part: str, router: str) -> tuple[str, str, str, str, str]:
    """From what kind of place to what other, which part, cut where, and why if it is spoiled."""
    return head(frm), head(to), part, router, find_reason_of(to) or find_reason_of(frm)


def apply_tally(connection: sqlite3.Connection, body: Body) -> None:
    """Counts the moves under their hour."""
    rows = tally_rows(body)
    connection.executemany(statements.ADD_TALLY, rows)
    if rows:  # what only adds comes to nothing where others took away more than was there
        connection.execute(statements.DROP_EMPTY_TALLY, (rows[0][0],))


def reading_rows(body: Body) -> list[ReadingRow]:
    """The readings of an entry, each under all that it is found under.

    A reversal adds none and takes none away: whether an act was taken back is a fact, and
    those of such an act are passed over when they are asked for.
    """
    if body.reverses or not body.readings:
        return []
    act = body.act
    return [
        (subject, reading.kind, act.at, act.id, n, text)
        for n, reading in enumerate(body.readings)
        for text in (write_reading(reading),)
        for subject in reading.subjects
    ]


def apply_readings(connection: sqlite3.Connection, body: Body) -> None:
    """Keeps the readings of an entry."""
    if rows := reading_rows(body):
        connection.executemany(statements.PUT_READING, rows)
