"""The derived tables in memory, taken on entry by entry.

An entry that does not fit what came before it is left out, and something that needs a look
stands in its place: at every station alike, for nothing counts but the entries in order.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Any

from station.ledger.codec import Body, Change, State, lift_say, state_of
from station.ledger.effects import SpotKey, net, tally_rows
from station.ledger.sound import LEFT_OUT
from station.shop.conflicts import left_out
from station.shop.moves import balancing
from station.shop.words import Say, say

FactRow = tuple[str, str | None, str, str]  # text, shelf, rank, id of the act that set it
TallyKey = tuple[str, str, str, str]


class Books:
    """Balances, facts and tallies after the entries taken in so far."""

    def __init__(self) -> None:
        self.balance: dict[SpotKey, int] = {}
        self.fact: dict[str, FactRow] = {}
        self.tally: dict[TallyKey, int] = {}

    def take(self, body: Body, why: Say = Say()) -> Say:
        """Takes an entry in; returns why it is left out, if it is. Never fails on content."""
        why = why or self.unfit(body)
        self.carry_out(instead(body, why) if why else body)
        return why

    def carry_out(self, body: Body) -> None:
        """Takes an entry in as it is."""
        for change in body.sets:
            self.set_fact(change.key, row_of(change.after, body.act.id))
        for key, more in net(body.moves).items():
            self.set_qty(key, self.qty(key) + more)
        for row in tally_rows(body):
            self.count(row[:4], row[4])

    def qty(self, key: SpotKey) -> int:
        """Pieces at a spot."""
        return self.balance.get(key, 0)

    def set_qty(self, key: SpotKey, qty: int) -> None:
        """Sets the pieces at a spot; none are no row."""
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

    def count(self, key: TallyKey, qty: int) -> None:
        """Counts pieces under an hour; a sum that comes to nothing is no row."""
        total = self.tally.get(key, 0) + qty
        if total:
            self.tally[key] = total
        else:
            self.tally.pop(key, None)

    def table(self, name: str) -> dict[Any, Any]:
        """A derived table by name: from its key to the rest of the row."""
        named: dict[str, dict[Any, Any]] = {
            "balance": self.balance,
            "fact": self.fact,
            "tally": self.tally,
        }
        return named[name]

    def rows(self, name: str) -> Iterator[tuple[object, ...]]:
        """The rows of a derived table."""
        if name == "fact":
            return ((key, *rest) for key, rest in self.fact.items())
        return ((*key, qty) for key, qty in self.table(name).items())

    def differing(self, name: str, found: Iterable[tuple[Any, ...]]) -> list[str]:
        """The keys of rows that are not as derived. Uses the books up: they are large."""
        left = self.table(name)
        wrong = []
        for row in found:
            key, rest = (row[0], row[1:]) if name == "fact" else (row[:-1], row[-1])
            if left.pop(key, None) != rest:
                wrong.append(key)
        return sorted(k if isinstance(k, str) else "/".join(k) for k in (*wrong, *left))

    def unfit(self, body: Body) -> Say:
        """Why an entry does not fit what came before; nothing when it does.

        A state is known by who set it: the same text from two programs may differ in a blank.
        """
        for key, before, _ in ((c.key, c.before, c.after) for c in body.sets):
            now = self.row(key)
            if (now[3] if now else None) != (before.entry if before else None):
                return say("the state before of {key} is another", key=key)
        for (batch, part, place), change in net(body.moves).items():
            if change < 0 and not balancing(place):
                left = self.qty((batch, part, place)) + change
                if left < 0:
                    return say(
                        "{n} of {part} too many leave {place} ({batch})",
                        n=-left,
                        part=part,
                        place=place,
                        batch=batch,
                    )
        return Say()


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
