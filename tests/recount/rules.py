"""What a rule of the recount is given, and what it gives."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from re import Match
from typing import Any, Literal, NamedTuple, TypeVar

from station.shop.rooms import Hand
from tests.recount.books import Books
from tests.recount.read import Row, Shown

Hands = Hand[object]
T = TypeVar("T")


class Look(NamedTuple):
    """The books, the hand that the screen is shown to, the time, and what else is shown."""

    books: Books
    hand: Hands
    now: str
    where: str  # what stands over the screen: the router, the bench
    face: tuple[Shown, ...]
    known: dict[str, Any]  # what was worked out of this face

    def once(self, name: str, work: Callable[[], T]) -> T:
        """What was worked out of this face, or else is worked out now."""
        if name not in self.known:
            self.known[name] = work()
        found: T = self.known[name]
        return found

    def find(self, kind: str, title: str = "") -> Shown | None:
        """Another block of the same screen."""
        return next((s for s in self.face if s.kind == kind and s.title.startswith(title)), None)


@dataclass(frozen=True)
class At:
    """A text that is looked at: the whole look, its block, its row, what was read in it."""

    look: Look
    shown: Shown
    row: Row
    k: int  # its column
    found: Match[str]

    @property
    def books(self) -> Books:
        """The books."""
        return self.look.books

    def __getitem__(self, n: int) -> str:
        """The n-th group of what was read."""
        found: str = self.found[n]
        return found


class Rule(NamedTuple):
    """Which block (patterns of its kind and title), which text, and what may stand there.

    None says that the rule does not know this one. `of`: a text in a row, or the title as read.
    """

    kind: str
    title: str
    says: str
    count: Callable[[At], str | Iterable[str] | None]
    of: Literal["row", "title"] = "row"
