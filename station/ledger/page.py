"""The derived tables under one page of entries: read when needed, written once at the end.

Its tally is what is to be added, and so are its readings.
"""

import sqlite3
from collections.abc import Mapping, Sequence

from station.ledger import statements
from station.ledger.books import Books, FactRow, row_of
from station.ledger.codec import Body
from station.ledger.effects import ReadingKey, SpotKey, list_text, reading_rows, tally_rows
from station.ledger.store import Store


class HistoryPage(Books):
    """The books on top of a station's tables. A spot of nothing and a fact gone stay as such."""

    def __init__(self, store: Store) -> None:
        super().__init__()
        self._rows = store.rows
        self._spots: dict[SpotKey, int] = {}  # as they were found
        self._facts: dict[str, FactRow | None] = {}
        self._now: dict[str, FactRow | None] = {}
        self._gone: list[ReadingKey] = []  # readings of acts that were taken back
        self._whole: set[str] = set()  # batches whose spots are all known

    def prepare(self, bodies: Sequence[Body]) -> None:
        """Reads at once what entries are about: asking for each row took a sixth of the time."""
        moves = [move for body in bodies for move in body.moves]
        batches = {frm[1] for _, _, frm, _ in moves} | {to[1] for _, _, _, to in moves}
        keys = {change.key for body in bodies for change in body.sets}
        for batch, part, place, qty in self._rows(statements.SPOTS_OF, (list_text(batches),)):
            self._spots[batch, part, place] = qty
        facts = self._rows(statements.FACTS_OF, (list_text(keys),))
        self._facts = {**dict.fromkeys(keys), **{row[0]: row[1:] for row in facts}}
        self.balance, self._now, self._whole = dict(self._spots), dict(self._facts), batches

    def _find(self, key: SpotKey) -> int:
        rows = [] if key[0] in self._whole else self._rows(statements.SPOT, key)
        qty = self._spots[key] = rows[0][0] if rows else 0
        return qty

    def set_spots(self, spots: Mapping[SpotKey, int]) -> None:
        """Sets the pieces at spots."""
        self.balance.update(spots)

    def row(self, key: str) -> FactRow | None:
        """A fact as it is kept."""
        if key not in self._now:
            rows = self._rows(statements.FACT, (key,))
            self._facts[key] = self._now[key] = rows[0][1:] if rows else None
        return self._now[key]

    def set_fact(self, key: str, row: FactRow | None) -> None:
        """Sets a fact; None: it is gone."""
        self._now[key] = row

    def back(self, body: Body) -> None:
        """Takes a pending act back, newest first: facts are as before, pieces lie as before."""
        for change in body.sets:
            self.set_fact(change.key, row_of(change.before, ""))
        self.set_spots(self._after([move.back() for move in body.moves]))
        self.count((*row[:-1], -row[-1]) for row in tally_rows(body))
        self._gone += (row[:-1] for row in reading_rows(body))

    def touched(self) -> set[str]:
        """Keys of facts that are not as they were found."""
        return {k for k, row in self._now.items() if k not in self._facts or self._facts[k] != row}

    def write(self, connection: sqlite3.Connection) -> None:
        """Writes what is not as it was found."""
        found = self._spots
        spots = [(*k, qty) for k, qty in self.balance.items() if found.get(k) != qty]
        many = connection.executemany
        many(statements.PUT_SPOT, (spot for spot in spots if spot[3]))
        many(statements.EMPTY_SPOT, (spot[:3] for spot in spots if not spot[3]))
        facts = [(key, self._now[key]) for key in self.touched()]
        many(statements.PUT_FACT, ((key, *row) for key, row in facts if row))
        many(statements.DROP_FACT, ((key,) for key, row in facts if not row))
        many(statements.ADD_TALLY, ((*k, qty) for k, qty in self.tally.items()))
        hours = {key[0] for key in self.tally}
        many(statements.DROP_EMPTY_TALLY, ((hour,) for hour in hours))
        many(statements.DROP_READING, self._gone)
        many(statements.PUT_READING, ((*k, text) for k, text in self.reading.items()))
