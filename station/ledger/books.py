"""The derived tables in memory, taken on entry by entry.

An entry that does not fit what came before it is left out, and something that needs a look
stands in its place: at every station alike, for nothing counts but the entries in order.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from station.ledger.codec import Body, Change, State, lift_say, state_of
from station.ledger.effects import (
    ReadingKey,
    SpotKey,
    TallyKey,
    TallyRow,
    net,
    reading_rows,
    tally_rows,
)
from station.ledger.sound import LEFT_OUT
from station.shop.conflicts import left_out
from station.shop.moves import Move
from station.shop.places import balances
from station.shop.words import Say, say

FactRow = tuple[str, str | None, str, str]  # text, shelf, rank, id of the act that set it


NOTHING = Say()


class Books:
    """Balances, facts, tallies and readings after the entries taken in so far."""

    def __init__(self) -> None:
        self.balance: dict[SpotKey, int] = {}
        self.fact: dict[str, FactRow] = {}
        self.tally: dict[TallyKey, int] = {}
        self.reading: dict[ReadingKey, str] = {}

    def take(self, body: Body, why: Say = NOTHING, *, trusted: bool = False) -> Say:
        """Takes an entry in; returns why it is left out, if it is. Never fails on content.

        Where it is `trusted`, what came before has gaps and nothing is held against it.
        """
        spots = self._after(body.moves)
        why = why or (NOTHING if trusted else self._unfit(body, spots))
        if why:
            self.carry_out(instead(body, why))
        else:
            self._carry_out(body, spots)
        return why

    def carry_out(self, body: Body) -> None:
        """Takes an entry in as it is."""
        self._carry_out(body, self._after(body.moves))

    def _carry_out(self, body: Body, spots: Mapping[SpotKey, int]) -> None:
        id_ = body.act.id
        for change in body.sets:
            self.set_fact(change.key, row_of(change.after, id_))
        self.set_spots(spots)
        self.count(tally_rows(body))
        if body.readings:
            self.reading.update((row[:-1], row[-1]) for row in reading_rows(body))

    def _after(self, moves: Iterable[Move]) -> dict[SpotKey, int]:
        """The pieces at all spots that moves touch, after these."""
        spots, here, find = dict[SpotKey, int](), self.balance.get, self._find
        for part, qty, (place, batch), (to_place, to_batch) in moves:
            for key, more in (
                ((batch, part, place), -qty),
                ((to_batch, part, to_place), qty),
            ):
                now = spots.get(key)
                if now is None and (now := here(key)) is None:
                    now = find(key)
                spots[key] = now + more
        return spots

    def _find(self, _key: SpotKey) -> int:
        """Finds the pieces at a spot that is not in `balance`."""
        return 0

    def set_spots(self, spots: Mapping[SpotKey, int]) -> None:
        """Sets the pieces at spots; none are no row."""
        for key, qty in spots.items():
            if qty:
                self.balance[key] = qty
            else:
                self.balance.pop(key, None)

    def row(self, key: str) -> FactRow | None:
        """A fact as it is kept."""
        return self.fact.get(key)

    def set_fact(self, key: str, row: FactRow | None) -> None:
        """Sets a fact; None: it is gone."""
        if row is None:
            self.fact.pop(key, None)
        else:
            self.fact[key] = row

    def count(self, rows: Iterable[TallyRow]) -> None:
        """Counts pieces under an hour; a sum that comes to nothing is no row."""
        tally = self.tally
        for row in rows:
            key = row[:-1]
            if total := tally.get(key, 0) + row[-1]:
                tally[key] = total
            else:
                tally.pop(key, None)

    def table(self, name: str) -> dict[Any, Any]:
        """A derived table by name: from its key to the rest of the row."""
        named: dict[str, dict[Any, Any]] = {
            "balance": self.balance,
            "fact": self.fact,
            "tally": self.tally,
            "reading": self.reading,
        }
        return named[name]

    def rows(self, name: str) -> Iterator[tuple[object, ...]]:
        """The rows of a derived table."""
        if name == "fact":
            return ((key, *rest) for key, rest in self.fact.items())
        return ((*key, last) for key, last in self.table(name).items())

    def differing(self, name: str, found: Iterable[tuple[Any, ...]]) -> list[str]:
        """The keys of rows that are not as derived. Uses the books up: they are large."""
        left = self.table(name)
        wrong = []
        for row in found:
            key, rest = (row[0], row[1:]) if name == "fact" else (row[:-1], row[-1])
            if left.pop(key, None) != rest:
                wrong.append(key)
        return sorted(k if isinstance(k, str) else "/".join(map(str, k)) for k in (*wrong, *left))

    def unfit(self, body: Body) -> Say:
        """Why an entry does not fit what came before; nothing when it does.

        A state is known by who set it: the same text from two programs may differ in a blank.
        """
        return self._unfit(body, self._after(body.moves))

    def _unfit(self, body: Body, spots: Mapping[SpotKey, int]) -> Say:
        for change in body.sets:
            now, before = self.row(change.key), change.before
            if (now[3] if now else None) != (before.entry if before else None):
                return say("the state before of {key} is another", key=change.key)
        for key, left in spots.items():
            if left < 0 and not balances(key[2]) and net(body.moves).get(key, 0) < 0:
                batch, part, place = key
                return say(
                    "{n} of {part} too many leave {place} ({batch})",
                    n=-left,
                    part=part,
                    place=place,
                    batch=batch,
                )
        return NOTHING


def instead(body: Body, why: Say) -> Body:
    """What stands for an entry that is left out: only that it needs a look."""
    act, said = body.act, lift_say(body.said)
    concern = left_out(act, said, why, body.moves)
    return Body(
        act=replace(act, kind=LEFT_OUT, subject=""),
        tone="stop",
        sets=(Change(concern.key, None, state_of(concern)),),
    )


def row_of(state: State | None, id: str) -> FactRow | None:
    """A fact's state as it is kept."""
    if state is None:
        return None
    return (bytes(state.body).decode(), state.shelf, state.rank, state.entry or id)
