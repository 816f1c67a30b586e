"""Counting by exception, as popping and trimming do it: all is good but what is said.

In the hand's work: `counts` is part → counter → pieces, where a counter is ``missing``,
``spoiled/<reason>`` or ``rework/<reason>``; `part` and `counter` are the ones chosen last,
which a number, one more or one less goes to; `good` is part → pieces where only some go
on; `marks` is part → counter → places on the sheet (x, y in mm) where these pieces lay;
`seen` is part → pieces that lay here when the work was picked up; `asks` is ``some`` while a
number says how many go on.
"""

from collections.abc import Mapping
from typing import NamedTuple

from station.shop.moves import Held, Move, head, move
from station.shop.rooms import Hand

Counts = dict[str, dict[str, int]]
Spot = tuple[float, float]  # x, y on the sheet, mm
Marks = dict[str, dict[str, list[Spot]]]


class Tally(NamedTuple):
    """One part's count: what is here, what goes on, and the exceptions by kind."""

    part: str
    here: int
    good: int
    spoiled: int
    missing: int
    rework: int

    @property
    def stays(self) -> int:
        """Pieces that were not counted yet and stay."""
        return self.here - self.good - self.spoiled - self.missing - self.rework


def counts_of(hand: Hand) -> Counts:
    """The exceptions counted so far."""
    raw = hand.work.get("counts")
    if not isinstance(raw, Mapping):
        return {}
    return {str(p): {str(c): int(n) for c, n in row.items()} for p, row in raw.items()}


def marks_of(hand: Hand) -> Marks:
    """Where on the sheet the exceptions lay, as marked so far."""
    raw = hand.work.get("marks")
    if not isinstance(raw, Mapping):
        return {}
    return {
        str(part): {str(c): [(float(x), float(y)) for x, y in spots] for c, spots in row.items()}
        for part, row in raw.items()
    }


def marked(hand: Hand, spots: list[Spot]) -> Hand:
    """The chosen part's last counter marked at these places; none takes them away."""
    part, counter = str(hand.work.get("part", "")), str(hand.work.get("counter", ""))
    marks = marks_of(hand)
    row = {**marks.get(part, {}), counter: spots}
    marks[part] = {c: s for c, s in row.items() if s}
    return hand.with_work(marks={p: r for p, r in marks.items() if r} or None)


def good_of(hand: Hand) -> dict[str, int]:
    """How many go on, for parts of which only some do."""
    raw = hand.work.get("good")
    return {str(k): int(v) for k, v in raw.items()} if isinstance(raw, Mapping) else {}


def tally(hand: Hand, here: Mapping[str, int]) -> tuple[Tally, ...]:
    """The count of every part that is here."""
    counts, some = counts_of(hand), good_of(hand)
    return tuple(_tally(part, n, counts.get(part, {}), some) for part, n in here.items())


def _tally(part: str, here: int, row: Mapping[str, int], some: Mapping[str, int]) -> Tally:
    sums = {"spoiled": 0, "missing": 0, "rework": 0}
    for counter, count in row.items():
        sums[head(counter)] += count
    rest = max(0, here - sum(sums.values()))
    good = min(rest, some[part]) if part in some else (0 if some else rest)
    return Tally(part, here, good, sums["spoiled"], sums["missing"], sums["rework"])


def choose(hand: Hand, part: str) -> Hand:
    """The part that the next counts go to."""
    return hand.with_work(part=part, counter=None)


def counted(hand: Hand, counter: str, count: int) -> Hand:
    """The chosen part's counter set to so many pieces; zero takes it away."""
    part, counts = str(hand.work.get("part", "")), counts_of(hand)
    row = {**counts.get(part, {}), counter: count}
    counts[part] = {c: n for c, n in row.items() if n > 0}
    after = hand.with_work(counts=counts, counter=counter)
    spots = marks_of(hand).get(part, {}).get(counter, [])
    return marked(after, spots[:count]) if len(spots) > count else after


def count_of(hand: Hand, counter: str) -> int:
    """The chosen part's pieces on a counter."""
    return counts_of(hand).get(str(hand.work.get("part", "")), {}).get(counter, 0)


def room_for(hand: Hand, counter: str, here: Mapping[str, int]) -> int:
    """The most that a counter of the chosen part can be set to."""
    part = str(hand.work.get("part", ""))
    others = sum(n for c, n in counts_of(hand).get(part, {}).items() if c != counter)
    return here.get(part, 0) - others


class Taken(NamedTuple):
    """Pieces taken from spots in order: the moves, and what was left over at the end."""

    moves: tuple[Move, ...]
    lacking: int


def draw(spots: list[list[object]], part: str, qty: int, to: str, to_batch: str = "") -> Taken:
    """Moves `qty` pieces of a part from `spots` ([place, batch, part, left] rows) onward.

    The rows' `left` is drawn down, so that the next call goes on where this one ended.
    """
    moves: list[Move] = []
    for spot in spots:
        place, batch, here, left = str(spot[0]), str(spot[1]), spot[2], int(str(spot[3]))
        if here != part or left <= 0 or qty <= 0:
            continue
        some = min(left, qty)
        moves.append(move(part, some, place, to, batch, to_batch))
        spot[3], qty = left - some, qty - some
    return Taken(tuple(moves), qty)


def spots_of(held: tuple[Held, ...]) -> list[list[object]]:
    """Rows for `draw`."""
    return [[h.place, h.batch, h.part, h.qty] for h in held]


def countable(counter: object, count: object) -> bool:
    """Whether this is a counter of ours with a count above zero."""
    kinds = ("good", "spoiled", "missing", "rework")
    return head(str(counter)) in kinds and type(count) is int and count > 0


def counts_from(value: object) -> Counts:
    """An act's counts, part → counter → pieces, whatever is not a count left out."""
    if not isinstance(value, Mapping):
        return {}
    return {
        str(part): {str(c): n for c, n in row.items() if countable(c, n)}
        for part, row in value.items()
        if isinstance(row, Mapping)
    }
