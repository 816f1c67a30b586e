"""What was read of stock and shelves, and what was worked out of it, held until it changes.

A face is painted again every second, and at each scan, from books that hardly changed: of three
hundred rack places one has. What this station writes drops what it touches; any other change of
the file drops all of it, for the driver counts every row that is written.
"""

from collections.abc import Callable, Mapping
from collections.abc import Set as AbstractSet
from typing import Any, NamedTuple

from station.ledger.codec import Body, State
from station.ledger.effects import writes
from station.ledger.store import Store
from station.shop.facts import Fact
from station.shop.moves import Held

MOST = 50_000  # places, batches and shelves before all is read anew

MOVED, RECORDED = "moved", "recorded"  # read by what any move, or any entry, may change
StockKey = tuple[str, str]  # batch and place, one of them may be empty


class Answered(NamedTuple):
    """What a question worked out, and the names of all that it read."""

    value: Any
    reads: AbstractSet[str]


class CachedReads:
    """Pieces by batch and place, facts by shelf and how many were asked for, answers by name."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._stock: dict[StockKey, tuple[Held, ...]] = {}
        self._shelves: dict[str, dict[int, tuple[Any, ...]]] = {}
        self._answers: dict[str, Answered] = {}
        self._resting: dict[str, set[str]] = {}  # by what was read: the names of answers
        self._stamp = -1

    def once(self, name: str, work_out: Callable[[], Answered]) -> Answered:
        """What was worked out, by its name, until something changes that it read."""
        if not self._is_settled():
            return work_out()
        found = self._answers.get(name)
        if found is None:
            found = self._answers[name] = work_out()
            for read in found.reads:
                self._resting.setdefault(read, set()).add(name)
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
        held = len(self._stock) + len(self._shelves) + len(self._answers) + len(self._resting)
        if stamp != self._stamp or held > MOST:
            self._stock.clear()
            self._shelves.clear()
            self._answers.clear()
            self._resting.clear()
            self._stamp = stamp

    def drop_touched(self, body: Body, facts: Mapping[str, Fact]) -> None:
        """Drops what an entry touched that was just written; all was up to date before it.

        A fact that stays where it stands on its shelf is put in its own place there: of four
        hundred open orders one is begun, and the others need not be read again.
        """
        for name in (*writes(body), RECORDED, *((MOVED,) if body.moves else ())):
            for answer in self._resting.pop(name, ()):
                self._answers.pop(answer, None)
        for moved in body.moves:
            for spot in (moved.frm, moved.to):
                for key in ((spot.batch, spot.place), (spot.batch, ""), ("", spot.place)):
                    self._stock.pop(key, None)
        for change in body.sets:
            before, after, fact = change.before, change.after, facts.get(change.key)
            if fact and before and after and _stand_alike(before, after):
                self._put_in_place(after.shelf or "", fact)
                continue
            for state in (before, after):
                if state and state.shelf:
                    self._shelves.pop(state.shelf, None)
        self._stamp = self._store.written

    def _put_in_place(self, shelf: str, fact: Fact) -> None:
        asked = self._shelves.get(shelf, {})
        for limit, found in asked.items():
            asked[limit] = tuple(fact if f.id == fact.id else f for f in found)


def _stand_alike(one: State, other: State) -> bool:
    return (one.shelf, one.rank) == (other.shelf, other.rank)
