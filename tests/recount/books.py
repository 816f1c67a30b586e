"""The books as a stranger would keep them: each exported entry read, its moves added up."""

import json
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any, TypeVar

from station.ledger.codec import lift_say, read_fact
from station.shop.facts import KINDS, Fact

F = TypeVar("F", bound=Fact)
T = TypeVar("T")
NO_PIECES = ("sheet", "mm", "pass", "supply")  # sheets, a bit's wear, board passes, mailers
UNDO = "undo"


@dataclass(frozen=True)
class Move:
    """So many of a part from a place and batch to another."""

    part: str
    qty: int
    frm: str
    frm_batch: str
    to: str
    to_batch: str

    @property
    def heads(self) -> tuple[str, str]:
        """The kinds of place that it goes between."""
        return self.frm.partition("/")[0], self.to.partition("/")[0]


@dataclass(frozen=True)
class Entry:
    """What one entry says: who did what when, what moved, which facts stand since."""

    id: str
    kind: str
    at: str
    worker: str
    station: str
    subject: str
    args: dict[str, Any]
    moves: tuple[Move, ...]
    sets: tuple[tuple[str, Fact | None], ...]  # key, the fact since; None: it is gone
    readings: tuple[dict[str, Any], ...] = ()
    reverses: str = ""
    router: str = ""
    verdict: str = ""
    said: str = ""  # in the strip

    def after(self, kind: type[F]) -> Iterator[F]:
        """The facts of a kind that it set."""
        return (fact for _, fact in self.sets if isinstance(fact, kind))


@dataclass
class Books:
    """Pieces by place, batch and part; facts by key; all entries, and which were taken back."""

    at: dict[str, Counter[tuple[str, str]]] = field(default_factory=dict)  # by place: batch, part
    heads: dict[str, set[str]] = field(default_factory=dict)  # the places of each kind
    facts: dict[str, Fact] = field(default_factory=dict)
    entries: list[Entry] = field(default_factory=list)
    by_id: dict[str, Entry] = field(default_factory=dict)
    reversed_by: dict[str, str] = field(default_factory=dict)  # newest entry that took it back
    worked_out: dict[Any, Any] = field(default_factory=dict)  # what was asked since the last entry

    def take(self, body: str) -> None:
        """Takes one exported entry in."""
        entry = read_entry(json.loads(body))
        self.worked_out.clear()
        self.entries.append(entry)
        self.by_id[entry.id] = entry
        if entry.reverses:
            self.reversed_by[entry.reverses] = entry.id
        for m in entry.moves:
            self._add(m.frm, m.frm_batch, m.part, -m.qty)
            self._add(m.to, m.to_batch, m.part, m.qty)
        for key, after in entry.sets:
            if after is None:
                self.facts.pop(key, None)
            else:
                self.facts[key] = after

    def _add(self, place: str, batch: str, part: str, qty: int) -> None:
        lies = self.at.setdefault(place, Counter())
        self.heads.setdefault(place.partition("/")[0], set()).add(place)
        lies[batch, part] += qty
        if not lies[batch, part]:
            del lies[batch, part]

    # --- what is asked of them

    def get(self, kind: type[F], id: str) -> F | None:
        """A fact by its number."""
        found = self.facts.get(f"{kind.kind}/{id}")
        return found if isinstance(found, kind) else None

    def all(self, kind: type[F]) -> list[F]:
        """All facts of a kind, by number."""
        found = (fact for fact in self.facts.values() if isinstance(fact, kind))
        return self.once(f"all {kind.kind}", lambda: sorted(found, key=lambda fact: fact.id))

    def count(self, *, place: str = "", head: str = "", batch: str = "", part: str = "") -> int:
        """Counts pieces at a place, or at every place of a kind; of a batch and part if named."""
        return sum(n for _, _, _, n in self.lying(place=place, head=head, batch=batch, part=part))

    def lying(
        self, *, place: str = "", head: str = "", batch: str = "", part: str = ""
    ) -> Iterator[tuple[str, str, str, int]]:
        """Place, batch, part and how many, of pieces that really lie there; no sheets, no wear."""
        every = sorted(self.heads.get(head, ())) if head else self.at
        for at in (place,) if place else every:
            for (of, what), n in self.at.get(at, {}).items():
                if n <= 0 or what in NO_PIECES:
                    continue
                if (not batch or of == batch) and (not part or what == part):
                    yield at, of, what, n

    def once(self, name: str, work: Callable[[], T]) -> T:
        """What was worked out since the last entry, or else is worked out now."""
        if name not in self.worked_out:
            self.worked_out[name] = work()
        found: T = self.worked_out[name]
        return found

    def sheets(self, place: str, lot: str) -> int:
        """Counts whole sheets of a lot at a place."""
        return self.at.get(place, Counter())[lot, "sheet"]

    def counts(self, id: str) -> bool:
        """Says whether an entry counts: nothing that counts has taken it back."""
        by = self.reversed_by.get(id)
        return by is None or not self.counts(by)

    def done(self, since: str = "", until: str = "9999") -> Iterator[Entry]:
        """Acts that count between two times, taking back left out: what it took counts no more."""
        return (
            e
            for e in self.entries
            if since <= e.at <= until and not e.reverses and self.counts(e.id)
        )

    def moved(self, since: str, until: str, heads: tuple[str, str]) -> int:
        """Counts pieces that went from one kind of place to another, in acts that count."""

        def add() -> int:
            moves = (m for e in self.done(since, until) for m in e.moves)
            return sum(m.qty for m in moves if m.heads == heads and m.part not in NO_PIECES)

        return self.once(f"moved {since} {heads}", add)  # nothing is done after now

    def moved_until(self, since: str, until: str, heads: tuple[str, str]) -> int:
        """Counts the same up to a time that is not now."""
        moves = (m for e in self.done(since, until) for m in e.moves)
        return sum(m.qty for m in moves if m.heads == heads and m.part not in NO_PIECES)


def read_entry(body: dict[str, Any]) -> Entry:
    """An entry from its JSON."""
    act = body["act"]
    return Entry(
        id=act["id"],
        kind=act["kind"],
        at=act["at"],
        worker=act.get("worker", ""),
        station=act.get("station", ""),
        subject=act.get("subject", ""),
        args=act.get("args") or {},
        moves=tuple(Move(p, n, *frm, *to) for p, n, frm, to in body.get("moves", ())),
        sets=tuple((key, _fact(key, new)) for key, _, new in body.get("sets", ())),
        readings=tuple(body.get("readings", ())),
        reverses=body.get("reverses", ""),
        router=body.get("router", ""),
        verdict=body.get("verdict", ""),
        said=str(lift_say(body.get("said"))),
    )  # fmt: skip


def _fact(key: str, state: list[Any] | None) -> Fact | None:
    kind = KINDS.get(key.partition("/")[0])
    return read_fact(kind, json.dumps(state[0])) if state and kind else None


def read_all(bodies: Iterable[str]) -> Books:
    """The books after all exported entries."""
    books = Books()
    for body in bodies:
        books.take(body)
    return books
