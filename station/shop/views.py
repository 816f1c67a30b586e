"""What rules may know, and what a rule is."""

from collections.abc import Callable, Iterable
from typing import NamedTuple, Protocol, TypeVar

from station.shop.acts import Act, Answer
from station.shop.facts import Fact
from station.shop.moves import Held, Move

F = TypeVar("F", bound=Fact)


class Written(NamedTuple):
    """A fact as one entry set it: its key, the state before (None: new) and after."""

    key: str
    before: Fact | None
    after: Fact | None


class Past(NamedTuple):
    """An entry of the history as a rule sees it: the act and its effects."""

    act: Act
    moves: tuple[Move, ...]
    sets: tuple[Written, ...]
    undone: bool  # another entry has taken it back


class Passed(NamedTuple):
    """Pieces of one part that went from one kind of place to another within an hour."""

    hour: str  # "2026-11-25T10"
    frm: str  # head of the place: "popping"
    to: str
    part: str
    qty: int


class View(Protocol):
    """The shop as a rule or a face reads it. Every read is noted by the ledger."""

    def get(self, kind: type[F], id: str) -> F | None:
        """The fact of this kind and id, or None."""

    def stock(self, *, batch: str = "", place: str = "") -> tuple[Held, ...]:
        """Pieces above zero of a batch, at a place, or both; oldest batch first.

        One of the two must be given; `place` is a whole place (``rack/014``).
        """

    def shelf(self, kind: type[F], name: str, limit: int = 50) -> tuple[F, ...]:
        """Facts on a shelf in the order of their rank."""

    def past(self, id: str) -> Past | None:
        """An entry of the history by its act's id."""

    def passed(self, since: str, until: str) -> tuple[Passed, ...]:
        """Sums of moves by hour, from hour `since` up to and including hour `until`.

        For faces only: no rule depends on it.
        """

    def last(self, subject: str, kind: str = "") -> Past | None:
        """The newest entry about a subject (of one act kind, where given)."""

    def begins(self) -> str:
        """When this PC's history begins; empty where all of it is here.

        For words alone: an entry that `past` and `last` do not find may be an older one.
        """


class Rule(NamedTuple):
    """A pure decision: the kinds of fact that it may read, and the function."""

    reads: frozenset[type[Fact]]
    decide: Callable[[Act, View], Answer]


Rules = dict[str, Rule]


def total(held: Iterable[Held], *, place: str = "", part: str = "") -> int:
    """Pieces among `held`, of one kind of place and one part where given."""
    return sum(
        h.qty
        for h in held
        if (not place or h.place.partition("/")[0] == place) and (not part or h.part == part)
    )


def by_batch(held: Iterable[Held]) -> dict[str, int]:
    """Pieces of each batch among `held`, in the order they come."""
    counts: dict[str, int] = {}
    for h in held:
        counts[h.batch] = counts.get(h.batch, 0) + h.qty
    return counts


def by_part(held: Iterable[Held]) -> dict[str, int]:
    """Pieces of each part among `held`, in the order they come."""
    counts: dict[str, int] = {}
    for h in held:
        counts[h.part] = counts.get(h.part, 0) + h.qty
    return counts
