"""The derived tables worked out in memory from the entries alone: what a rebuild writes."""

from collections.abc import Iterable, Iterator
from typing import Any, TypeVar

from station.ledger import statements
from station.ledger.codec import Body, Change, State, read_body
from station.ledger.effects import net, tally_rows
from station.ledger.sound import taken_in
from station.ledger.store import Store
from station.shop.moves import balancing

K = TypeVar("K")


class Books:
    """Balances, facts and tallies after the entries taken in so far."""

    def __init__(self) -> None:
        self.balance: dict[tuple[str, str, str], int] = {}
        self.fact: dict[str, tuple[str, str | None, str, str]] = {}
        self.tally: dict[tuple[str, str, str, str], int] = {}

    def take(self, body: Body) -> list[str]:
        """Takes an entry in; returns what does not hold in it. Never fails on content."""
        wrong = [why for change in body.sets if (why := self._set(body.act.id, change))]
        for key, change in net(body.moves).items():
            left = self.balance.get(key, 0) + change
            _put(self.balance, key, left)
            if left < 0 and change < 0 and not balancing(key[2]):
                wrong.append(f"{-left} of {key[1]} too many leave {key[2]} ({key[0]})")
        for hour, frm, to, part, qty in tally_rows(body):
            counted = (hour, frm, to, part)
            _put(self.tally, counted, self.tally.get(counted, 0) + qty)
        return wrong

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

    def _set(self, entry: str, change: Change) -> str:
        before = _row(change.before, "") if change.before else None
        right = self.fact.get(change.key) == before
        if change.after is None:
            self.fact.pop(change.key, None)
        else:
            self.fact[change.key] = _row(change.after, entry)
        return "" if right else f"the state before of {change.key} is another"


def bodies(store: Store) -> Iterator[Body]:
    """Every entry's body in order, those not shared yet last."""
    after = 0
    while page := store.run(statements.CHAIN, (after,)).fetchall():
        after = page[-1][0]
        yield from (taken_in(row[1], row[2]) for row in page)
    yield from (read_body(text) for (text,) in store.run(statements.PENDING).fetchall())


def derive(all_bodies: Iterable[Body]) -> Books:
    """The books after these entries."""
    books = Books()
    for body in all_bodies:
        books.take(body)
    return books


def rebuild(store: Store) -> None:
    """Writes the derived tables anew from the history, in one transaction."""
    with store.writing() as connection:
        books = derive(bodies(store))
        for table in statements.DERIVED:
            connection.execute(statements.EMPTY[table])
            connection.executemany(statements.FILL[table], books.rows(table))


def _put(sums: dict[K, int], key: K, qty: int) -> None:
    """Sets a sum; one that comes to nothing is no row."""
    if qty:
        sums[key] = qty
    else:
        sums.pop(key, None)


def _row(state: State, entry: str) -> tuple[str, str | None, str, str]:
    return (bytes(state.body).decode(), state.shelf, state.rank, state.entry or entry)
