"""What rules may know, and what a rule is."""

from collections.abc import Callable, Iterable
from typing import Any, Generic, NamedTuple, Protocol, TypeVar, overload

from station.shop.acts import Act, Answer, Args
from station.shop.facts import Fact
from station.shop.moves import Held, Move
from station.shop.readings import Reading
from station.shop.words import Say

T = TypeVar("T")
F = TypeVar("F", bound=Fact)
A = TypeVar("A", bound=Args)
A_co = TypeVar("A_co", bound=Args, covariant=True)


class Written(NamedTuple):
    """A fact as one entry set it: its key, the state before (None: new) and after."""

    key: str
    before: Fact | None
    after: Fact | None


class Past(NamedTuple, Generic[A_co]):
    """An entry of the history as a rule sees it: the act and its effects."""

    act: Act[A_co]
    moves: tuple[Move, ...]
    sets: tuple[Written, ...]
    undone: bool  # another entry has taken it back


class Noted(NamedTuple):
    """A reading as the history has it: when it was taken, and the id of the act."""

    at: str
    act: str
    reading: Reading


class Told(NamedTuple):
    """An entry as the strip told it: its place in the history, who did it, what was said.

    What is not shared yet comes after all that is. `station` shared it: the shop's database
    takes no act from another one.
    """

    number: int
    act: str  # its id
    at: str
    worker: str
    subject: str
    said: Say
    undone: bool  # another entry has taken it back
    station: str = ""


class Passed(NamedTuple):
    """Pieces of one part that went from one kind of place to another within an hour.

    `router` is the one that cut them, as far as the rules say it; `reason` why they were spoiled.
    """

    hour: str  # "2026-11-25T10"
    frm: str  # head of the place: "popping"
    to: str
    part: str
    router: str
    reason: str
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

    def once(self, name: str, work_out: "Callable[[View], T]") -> T:
        """What a question works out through the view it is given, by its name.

        It is held until something changes that was read through that view. Neither the time of
        day nor anything else may matter to it. For a rule it is worked out each time.
        """

    def past(self, id: str) -> Past[Any] | None:
        """An entry of the history by its act's id."""

    def passed(self, since: str, until: str) -> tuple[Passed, ...]:
        """Sums of moves by hour, from hour `since` up to and including hour `until`.

        For faces only: no rule depends on it.
        """

    def series(self, subject: str, kind: str, since: str = "") -> tuple[Noted, ...]:
        """Readings of one kind by time, of a thing (``part/014``) or of what came from it.

        From the time `since` on; those of an act that was taken back are left out.
        """

    @overload
    def last(self, subject: str, kind: type[A]) -> Past[A] | None: ...
    @overload
    def last(self, subject: str, kind: str = "") -> Past[Any] | None: ...
    def last(self, subject: str, kind: type[Args] | str = "") -> Past[Any] | None:
        """The newest entry about a subject; of one kind of act, where its arguments are named.

        None as well where that one's arguments do not fit their kind.
        """

    def told(self, subject: str, limit: int) -> tuple[Told, ...]:
        """The newest entries about a subject (empty: about anything), the newest first.

        For faces only: no rule depends on it.
        """

    def begins(self) -> str:
        """When this PC's history begins; empty where all of it is here.

        For words alone: an entry that `past` and `last` do not find may be an older one.
        """

    def office(self) -> tuple[str, ...]:
        """The stations where people, PINs, reasons and settings are changed; none: every one.

        For dialogues and faces only.
        """


class Rule(NamedTuple, Generic[A]):
    """A pure decision on one kind of act: its arguments, the kinds of fact that it may read.

    Where `stays` is said, undo does not take the act back: it says what to do instead.
    """

    args: type[A]
    reads: frozenset[type[Fact]]
    decide: Callable[[Act[A], View], Answer]
    stays: Say = Say()


Rules = dict[str, Rule[Any]]


def by_kind(*rules: Rule[Any]) -> Rules:
    """A room's rules by the kind of act that each decides on."""
    table = {rule.args.kind: rule for rule in rules}
    assert all(table), "an act without a kind"
    assert len(table) == len(rules), "two rules decide on one kind of act"
    return table


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
