"""What was read of stock and shelves, and what was worked out of it, held until it changes.

A face is painted again every second, and at each scan, from books that hardly changed: of three
hundred rack places one has. What this station writes drops what it touches, and so does what comes
of other stations; any other change of the file drops all of it, for the driver counts every row
that is written.
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
        self._news: list[Body] | None = []  # entries that are being taken in; None: and more
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
        settled = self._store.settled
        self._drop_before(self._store.written if settled is None else settled)

    def _drop_before(self, stamp: int) -> None:
        if stamp != self._stamp or self._count() > MOST:
            self.drop_all()
            self._stamp = stamp

    def _count(self) -> int:
        return len(self._stock) + len(self._shelves) + len(self._answers) + len(self._resting)

    def drop_all(self) -> None:
        """Drops everything."""
        self._stock.clear()
        self._shelves.clear()
        self._answers.clear()
        self._resting.clear()

    def took(self, body: Body, facts: Mapping[str, Fact]) -> None:
        """Drops what an entry touched that was just written; all was up to date before it."""
        self._drop_touched(body, facts)
        self._stamp = self._store.written

    def set_out(self) -> None:
        """News is taken in: what is held stays for those who ask in between."""
        self.drop_outdated()
        self._news = []

    def touch(self, body: Body) -> None:
        """An entry was taken in."""
        if self._news is not None and self._count():
            self._news.append(body)

    def touch_all(self) -> None:
        """Anything may be other than it was, once the news is in."""
        self._news = None

    def come_in(self) -> None:
        """News is in: what it touched is dropped, and so are the answers that tell what is new."""
        if self._news is None:
            self.drop_all()
        for body in self._news or ():
            self._drop_touched(body, {})
        self._drop_resting_on(RECORDED)
        self._news, self._stamp = [], self._store.written

    def _drop_resting_on(self, name: str) -> None:
        """Drops the answers for which something was read."""
        for answer in self._resting.pop(name, ()):
            self._answers.pop(answer, None)

    def _drop_touched(self, body: Body, facts: Mapping[str, Fact]) -> None:
        """Drops what an entry touched.

        A fact that stays where it stands on its shelf is put in its own place there: of four
        hundred open orders one is begun, and the others need not be read again.
        """
        for name in (*writes(body), RECORDED, *((MOVED,) if body.moves else ())):
            self._drop_resting_on(name)
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

    def _put_in_place(self, shelf: str, fact: Fact) -> None:
        asked = self._shelves.get(shelf, {})
        for limit, found in asked.items():
            asked[limit] = tuple(fact if f.id == fact.id else f for f in found)


def _stand_alike(one: State, other: State) -> bool:
    return (one.shelf, one.rank) == (other.shelf, other.rank)
