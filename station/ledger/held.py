"""What was read of stock and shelves, held until it changes.

A face is painted again every second, and at each scan, from books that hardly changed: of three
hundred rack places one has. What this station writes drops what it touches; any other change of
the file drops all of it, for the driver counts every row that is written.
"""

from collections.abc import Callable
from typing import Any, TypeVar

from station.ledger.codec import Body
from station.ledger.store import Store
from station.shop.moves import Held

MOST = 50_000  # places, batches and shelves before all is read anew

T = TypeVar("T")
StockKey = tuple[str, str]  # batch and place, one of them may be empty


class HeldReads:
    """Pieces by batch and place, facts by shelf and how many were asked for, answers by name."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._stock: dict[StockKey, tuple[Held, ...]] = {}
        self._shelves: dict[str, dict[int, tuple[Any, ...]]] = {}
        self._answers: dict[str, Any] = {}
        self._stamp = -1

    def once(self, name: str, work_out: Callable[[], T]) -> T:
        """What was worked out from the books, by its name, until anything in them changes."""
        if not self._is_settled():
            return work_out()
        if name not in self._answers:
            self._answers[name] = work_out()
        found: T = self._answers[name]
        return found

    def stock(self, key: StockKey, read: Callable[[], tuple[Held, ...]]) -> tuple[Held, ...]:
        """The pieces there as they were read; inside a transaction nothing is held."""
        if not self._is_settled():
            return read()
        found = self._stock.get(key)
        if found is None:
            found = self._stock[key] = read()
        return found

    def shelf(self, name: str, limit: int, read: Callable[[], tuple[Any, ...]]) -> tuple[Any, ...]:
        """The facts on a shelf as they were read; inside a transaction nothing is held."""
        if not self._is_settled():
            return read()
        asked = self._shelves.setdefault(name, {})
        found = asked.get(limit)
        if found is None:
            found = asked[limit] = read()
        return found

    def _is_settled(self) -> bool:
        """Says whether what is read now may be held; what is outdated is dropped before."""
        stamp = self._store.settled
        if stamp is not None:
            self._drop_before(stamp)
        return stamp is not None

    def drop_outdated(self) -> None:
        """Drops everything where the tables have changed since, or too much is held."""
        self._drop_before(self._store.written)

    def _drop_before(self, stamp: int) -> None:
        if stamp != self._stamp or len(self._stock) + len(self._shelves) > MOST:
            self._stock.clear()
            self._shelves.clear()
            self._answers.clear()
            self._stamp = stamp

    def drop_touched(self, body: Body) -> None:
        """Drops what an entry touched that was just written; all was up to date before it."""
        self._answers.clear()
        for moved in body.moves:
            for spot in (moved.frm, moved.to):
                for key in ((spot.batch, spot.place), (spot.batch, ""), ("", spot.place)):
                    self._stock.pop(key, None)
        for change in body.sets:
            for state in (change.before, change.after):
                if state and state.shelf:
                    self._shelves.pop(state.shelf, None)
        self._stamp = self._store.written
