"""Counting by exception, as popping and trimming do it: all is good but what is said.

In the hand's work: `counts` is part → counter → pieces, where a counter is ``missing``,
``spoiled/<reason>`` or ``rework/<reason>``; `part` and `counter` are the ones chosen last,
which a number, one more or one less goes to; `good` is part → pieces where only some go
on; `marks` is part → counter → places on the sheet (x, y in mm) where these pieces lay;
`seen` is part → pieces that lay here when the work was picked up; `asks` is ``some`` while a
number says how many go on.

`parts` is what lies here of the batch in hand: part → pieces.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from station.queries.stock import name_part, take_in_order
from station.shop.acts import Answer, good, notice, refuse
from station.shop.counts import Counts, sum_by_fate
from station.shop.facts import Reason
from station.shop.moves import Held, Move, move, tail
from station.shop.rooms import Hand, Number, Took
from station.shop.views import View
from station.shop.words import Say, plain, say, several

Parts = Mapping[str, int]
Where = Mapping[str, Mapping[str, Sequence[str]]]  # part → counter → zones in words
NOWHERE: Where = {}
Mark = tuple[float, float]  # x, y on the sheet, mm
Marks = dict[str, dict[str, list[Mark]]]


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


# --- the count in the hand


def read_exceptions(hand: Hand) -> Counts:
    """Reads the exceptions counted so far."""
    raw = hand.work.get("counts")
    if not isinstance(raw, Mapping):
        return {}
    return {str(p): {str(c): int(n) for c, n in row.items()} for p, row in raw.items()}


def read_good(hand: Hand) -> dict[str, int]:
    """Reads how many go on, for parts of which only some do."""
    raw = hand.work.get("good")
    return {str(k): int(v) for k, v in raw.items()} if isinstance(raw, Mapping) else {}


def read_marks(hand: Hand) -> Marks:
    """Reads where on the sheet the exceptions lay, as marked so far."""
    raw = hand.work.get("marks")
    if not isinstance(raw, Mapping):
        return {}
    return {
        str(part): {str(c): [(float(x), float(y)) for x, y in spots] for c, spots in row.items()}
        for part, row in raw.items()
    }


def set_part(hand: Hand, part: str) -> Hand:
    """Sets the part that the next counts go to."""
    return hand.with_work(part=part, counter=None)


def set_count(hand: Hand, counter: str, count: int) -> Hand:
    """Sets the chosen part's counter to so many pieces; zero takes it away."""
    part, counts = str(hand.work.get("part", "")), read_exceptions(hand)
    row = {**counts.get(part, {}), counter: count}
    counts[part] = {c: n for c, n in row.items() if n > 0}
    after = hand.with_work(counts=counts, counter=counter)
    marks = read_marks(hand).get(part, {}).get(counter, [])
    return set_marks(after, marks[:count]) if len(marks) > count else after


def set_marks(hand: Hand, marks: list[Mark]) -> Hand:
    """Marks the chosen part's last counter at these places; none takes them away."""
    part, counter = str(hand.work.get("part", "")), str(hand.work.get("counter", ""))
    every = read_marks(hand)
    row = {**every.get(part, {}), counter: marks}
    every[part] = {c: m for c, m in row.items() if m}
    return hand.with_work(marks={p: r for p, r in every.items() if r} or None)


def find_part(hand: Hand, parts: Parts) -> str:
    """Finds the chosen part, where it lies here; else nothing."""
    part = str(hand.work.get("part", ""))
    return part if part in parts else ""


def count_chosen(hand: Hand, counter: str) -> int:
    """Counts the chosen part's pieces on a counter."""
    return read_exceptions(hand).get(str(hand.work.get("part", "")), {}).get(counter, 0)


def count_room(hand: Hand, counter: str, parts: Parts) -> int:
    """Counts the most that a counter of the chosen part can be set to."""
    part = str(hand.work.get("part", ""))
    others = sum(n for c, n in read_exceptions(hand).get(part, {}).items() if c != counter)
    return parts.get(part, 0) - others


def tally_parts(hand: Hand, parts: Parts) -> tuple[Tally, ...]:
    """Tallies every part that is here."""
    counts, some = read_exceptions(hand), read_good(hand)
    return tuple(_tally(part, n, counts.get(part, {}), some) for part, n in parts.items())


def _tally(part: str, here: int, row: Parts, some: Parts) -> Tally:
    sums = sum_by_fate(row)
    rest = max(0, here - sum(sums.values()))
    good = min(rest, some[part]) if part in some else (0 if some else rest)
    return Tally(part, here, good, sums["spoiled"], sums["missing"], sums["rework"])


def list_figures(hand: Hand, parts: Parts) -> Counts:
    """Lists the count as it stands, every figure said: part → counter → pieces, good too.

    A number that was said stays as said, though fewer lie here by now: the rule refuses it.
    """
    counts, said = read_exceptions(hand), read_good(hand)
    lost = {part: 0 for part in (*counts, *said) if part not in parts}
    whole = {}
    for t in tally_parts(hand, {**parts, **lost}):
        row = {"good": said.get(t.part, t.good), **counts.get(t.part, {})}
        whole[t.part] = {c: n for c, n in row.items() if n > 0}
    return whole


# --- what an input does to it


def choose_part(hand: Hand, part: str, parts: Parts, view: View) -> Took:
    """Chooses the part that the next counts go to."""
    if part not in parts:
        return Took(
            hand,
            refuse(
                say("{part} is not in batch {batch}", part=name_part(view, part),
                    batch=hand.subject),
                say("Here: {parts}.", parts=several([name_part(view, p) for p in parts])),
            ),
        )  # fmt: skip
    return Took(
        set_part(hand, part),
        good(
            say("{part}: {count} here", part=name_part(view, part), count=parts[part]),
            say("Scan a reason, or enter how many."),
        ),
    )


def refuse_without_part(parts: Parts, view: View) -> Answer:
    """Refuses a count that comes before its part."""
    here = several([name_part(view, p) for p in parts])
    return refuse(say("Which part?"), say("Touch its row first: {parts}.", parts=here))


def count_reason(hand: Hand, number: str, parts: Parts, view: View) -> Took | None:
    """Counts one piece spoiled or to rework for a reason card."""
    found = view.get(Reason, number)
    if found is None or found.use not in ("spoiled", "rework"):
        return None
    return count_pieces(hand, f"{found.use}/{number}", parts, view, by=1)


def count_pieces(
    hand: Hand, counter: str, parts: Parts, view: View, *, by: int = 0, exact: int | None = None
) -> Took:
    """Counts on the chosen part's counter, never beyond what is here."""
    part = find_part(hand, parts)
    if not part:
        return Took(hand, refuse_without_part(parts, view))
    wanted = count_chosen(hand, counter) + by if exact is None else exact
    most = count_room(hand, counter, parts)
    if not 0 <= wanted <= most:
        return Took(
            hand,
            refuse(
                say("At most {most} of them {most|is|are} left", most=most), say("Count again.")
            ),
        )
    return Took(
        set_count(hand, counter, wanted),
        notice(
            say(
                "{part}: {count} {what}",
                part=name_part(view, part),
                count=wanted,
                what=name_counter(view, counter),
            ),
            say("A number sets how many."),
        ),
    )


def take_number(hand: Hand, given: Number, parts: Parts, view: View) -> Took:
    """Sets the last counter to a number, or how many go on."""
    part, wanted = find_part(hand, parts), given.whole
    if not part:
        return Took(hand, refuse_without_part(parts, view))
    if wanted is None:
        return Took(
            hand, refuse(say("{text} is no count", text=given.text), say("Enter a whole number."))
        )
    if hand.work.get("asks") == "some":
        return _set_some(hand, wanted, parts, view)
    counter = hand.work.get("counter")
    if not counter:
        return Took(
            hand, refuse(say("How many of what?"), say("Scan a reason or “Missing” first."))
        )
    return count_pieces(hand, str(counter), parts, view, exact=wanted)


def ask_some(hand: Hand, parts: Parts, view: View) -> Took:
    """Asks how many go on now."""
    asking, part = hand.with_work(asks="some"), find_part(hand, parts)
    if not part:
        return Took(
            asking,
            notice(
                say("Only some of it: which part?"), say("Touch its row, then enter how many.")
            ),
        )
    return Took(
        asking,
        notice(
            say("Only some of it"),
            say("How many {part} are good now?", part=name_part(view, part)),
        ),
    )


def _set_some(hand: Hand, wanted: int, parts: Parts, view: View) -> Took:
    part = find_part(hand, parts)
    left = parts[part] - sum(read_exceptions(hand).get(part, {}).values())
    if wanted > left:
        return Took(
            hand, refuse(say("{left} {left|is|are} left here", left=left), say("Count again."))
        )
    return Took(
        hand.with_work(good={**read_good(hand), part: wanted}, asks=None),
        good(
            say("{count} {part} {count|goes|go} on now", count=wanted, part=name_part(view, part)),
            say("Confirm it; the rest stays here."),
        ),
    )


# --- what the rules move


def draw_pieces(
    lying: list[Held], part: str, quantity: int, to: str, to_batch: str = ""
) -> tuple[Move, ...]:
    """Moves so many pieces of a part from what is `lying` here, and takes them off that list.

    So the next call goes on where this one ended. Fewer move where there are not so many.
    """
    mine = tuple(h for h in lying if h.part == part)
    moves = []
    for taken in take_in_order(mine, quantity):
        spot = next(n for n, h in enumerate(lying) if h[:3] == taken[:3])
        lying[spot] = lying[spot]._replace(qty=lying[spot].qty - taken.qty)
        moves.append(move(part, taken.qty, taken.place, to, taken.batch, to_batch))
    lying[:] = [h for h in lying if h.qty]
    return tuple(moves)


# --- in words


def name_parts(view: View, parts: Parts) -> str:
    """Names what lies here: "24 HC-300 and 96 ST-200"."""
    first = list(parts.items())[:3]
    return several([f"{plain(n)} {name_part(view, part)}" for part, n in first])


def name_counter(view: View, counter: str) -> str:
    """Names a counter."""
    found = view.get(Reason, tail(counter)) if tail(counter) else None
    if found is None:
        return counter
    return found.words if found.use == "spoiled" else f"to rework, {found.words}"


def name_faults(hand: Hand, view: View, where: Where = NOWHERE) -> Say:
    """Names what is wrong so far, with where on the sheet: "3 × torn, top right"; or nothing."""
    found = [
        ", ".join(
            [f"{plain(n)} × {name_counter(view, counter)}", *where.get(part, {}).get(counter, ())]
        )
        for part, row in read_exceptions(hand).items()
        for counter, n in row.items()
    ]
    return say("{faults}", faults="; ".join(found)) if found else Say()
