"""Lists every figure that a day shows: counted again, or not and why."""

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from tests.recount.books import Books
from tests.recount.read import FIGURE, Said, Shown
from tests.recount.reasons import find_reason

Cells = set[tuple[int, int]]  # row and column; the title is row -1


class Figure(NamedTuple):
    """A text with a figure: what it is, in words without their values, and what it says."""

    name: str
    text: str


class Census:
    """How often each figure was shown: counted again, excused by a reason, or left."""

    def __init__(self) -> None:
        self.counted: Counter[str] = Counter()
        self.excused: Counter[tuple[str, str]] = Counter()  # name, reason
        self.left: Counter[str] = Counter()
        self.example: dict[str, str] = {}

    def note(self, books: Books, figure: Figure, *, counted: bool) -> None:
        """Notes one figure."""
        if counted:
            self.counted[figure.name] += 1
        elif reason := find_reason(books, figure.name, figure.text):
            self.excused[figure.name, reason] += 1
        else:
            self.left[figure.name] += 1
            self.example.setdefault(figure.name, figure.text)

    def add(self, other: "Census") -> None:
        """Adds what another day showed."""
        self.counted += other.counted
        self.excused += other.excused
        self.left += other.left
        self.example |= other.example

    def tell_share(self) -> str:
        """Says how many of the figures that are no setting, name or typed text were counted."""
        counted, left = self.counted.total(), self.left.total()
        share = counted / max(1, counted + left)
        return (
            f"{counted} figures counted again, {self.excused.total()} that nobody can count, "
            f"{left} left: {share:.2%} of what can be counted"
        )

    def tell_all(self) -> Iterator[str]:
        """A line for each figure: how often it was shown, and what became of it."""
        yield from (f"counted again ({n}): {name}" for name, n in sorted(self.counted.items()))
        for (name, reason), n in sorted(self.excused.items()):
            yield f"not counted, {reason} ({n}): {name}"
        for name, n in self.left.most_common():
            yield f"LEFT ({n}): {name} - {self.example[name]!r}"


def list_figures(area: str, shown: Shown) -> Iterator[tuple[tuple[int, int], Figure]]:
    """Every figure of a block with its row and column."""
    about = f"{area}, {shown.kind} {shown.title!r}"
    if FIGURE.search(shown.whole):
        yield (-1, 0), Figure(f"{about}, its title", shown.whole)
    for n, row in enumerate(shown.rows):
        for k, text in enumerate(row):
            if FIGURE.search(text):
                words = text.template if isinstance(text, Said) else FIGURE.sub("#", text)
                yield (n, k), Figure(f"{about}, {k + 1}: {words}", text)
