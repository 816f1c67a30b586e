"""Counting by exception, as popping and trimming do it: all is good but what is said.

A counter is ``missing``, ``spoiled/<reason>`` or ``rework/<reason>``. `parts` is what lies here
of the batch in hand: part → pieces.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal, NamedTuple, Self

from station.queries.stock import name_part, take_in_order
from station.shop.acts import Answer, good, notice, question, refuse
from station.shop.counts import Counts, sum_by_fate
from station.shop.facts import Reason
from station.shop.first_facts import say_reason
from station.shop.moves import Held, Move, move, tail
from station.shop.rooms import Hand, Number, Took, Work
from station.shop.views import View
from station.shop.words import Say, name_first, plain, say, several, together

Parts = Mapping[str, int]
Where = Mapping[str, Mapping[str, Sequence[str]]]  # part → counter → zones in words
NOWHERE: Where = {}
NAMED = 3  # parts that a sentence names
NOTHING = refuse(say("Nothing of it is counted"), say("Scan a reason, or enter how many."))
Mark = tuple[float, float]  # x, y on the sheet, mm
Marks = tuple[Mark, ...]


@dataclass(frozen=True, kw_only=True)
class CountingWork(Work):
    """Holds what was said of the batch in hand so far."""

    part: str = ""  # chosen last, with `counter`: a number, one more or one less goes to them
    counter: str = ""
    counts: Counts = field(default_factory=dict)  # the exceptions: part → counter → pieces
    good: dict[str, int] = field(default_factory=dict)  # of these parts only so many go on
    asks: Literal["", "some", "size"] = ""  # a number says how many go on, or is a reading
    marks: dict[str, dict[str, Marks]] = field(default_factory=dict)  # where counted pieces lay
    seen: dict[str, int] = field(default_factory=dict)  # lay here when it was picked up
    open: str = ""  # a number that was refused or asked about, and not put right yet
    reasons: int = 0  # the page of reasons that is open

    def disarm(self) -> Self:
        """Gives the counts without the counter that the next number would set."""
        return replace(self, counter="", asks="")

    def tell_counted(self, view: View) -> Say:
        """Tells the exceptions so far, how many go on where only some do, and what is open."""
        told = [name_faults(self.counts, view)] if any(self.counts.values()) else []
        told += [
            say("{count} {part} go on", count=n, part=name_part(view, part))
            for part, n in self.good.items()
        ]
        told += [say("{number}, not put right", number=self.open)] if self.open else []
        return together(told)


CountingHand = Hand[CountingWork]


class Tally(NamedTuple):
    """Holds one part's count: what is here, what goes on, and the exceptions by kind."""

    part: str
    here: int
    good: int
    spoiled: int
    missing: int
    rework: int

    @property
    def stays(self) -> int:
        """Counts the pieces that were not counted yet and stay."""
        return self.here - self.good - self.spoiled - self.missing - self.rework


# --- the count in the hand


def let_go_of_other(hand: CountingHand, batch: str) -> CountingHand:
    """Lets go of the batch in hand where the paper of another one was refused.

    The next number or reading may be of the other one's pieces. What was counted stays in hand.
    """
    counted = hand.work.counts or hand.work.good
    return hand if counted or hand.subject in ("", batch) else hand.empty()


def set_part(hand: CountingHand, part: str) -> CountingHand:
    """Sets the part that the next counts go to."""
    return replace(hand, work=replace(hand.work, part=part, counter="", open=""))


def set_counter(hand: CountingHand, part: str, counter: str) -> CountingHand:
    """Sets the part and the counter that the next counts go to."""
    return replace(hand, work=replace(hand.work, part=part, counter=counter, asks=""))


def set_count(hand: CountingHand, counter: str, count: int) -> CountingHand:
    """Sets the chosen part's counter to so many pieces; zero takes it away."""
    work, part = hand.work, hand.work.part
    row = {c: n for c, n in {**work.counts.get(part, {}), counter: count}.items() if n > 0}
    counts = {p: r for p, r in {**work.counts, part: row}.items() if r}
    after = replace(hand, work=replace(work, counts=counts, counter=counter, asks="", open=""))
    return set_marks(after, get_marks(after)[:count])


def get_marks(hand: CountingHand) -> Marks:
    """Gets the places on the sheet of what the chosen part's last counter counts."""
    return hand.work.marks.get(hand.work.part, {}).get(hand.work.counter, ())


def set_marks(hand: CountingHand, marks: Marks) -> CountingHand:
    """Marks the chosen part's last counter at these places; none takes them away."""
    work, part = hand.work, hand.work.part
    row = {**work.marks.get(part, {}), work.counter: marks}
    every = {**work.marks, part: {c: m for c, m in row.items() if m}}
    return replace(hand, work=replace(work, marks={p: r for p, r in every.items() if r}))


def find_part(hand: CountingHand, parts: Parts) -> str:
    """Finds the chosen part, where it lies here; else nothing."""
    return hand.work.part if hand.work.part in parts else ""


def count_chosen(hand: CountingHand, counter: str) -> int:
    """Counts the chosen part's pieces on a counter."""
    return hand.work.counts.get(hand.work.part, {}).get(counter, 0)


def count_room(hand: CountingHand, counter: str, parts: Parts) -> int:
    """Counts the most that a counter of the chosen part can be set to."""
    row = hand.work.counts.get(hand.work.part, {})
    return parts.get(hand.work.part, 0) - sum(n for c, n in row.items() if c != counter)


def tally_parts(hand: CountingHand, parts: Parts) -> tuple[Tally, ...]:
    """Tallies every part that is here."""
    counts, some = hand.work.counts, hand.work.good
    return tuple(_tally_part(part, n, counts.get(part, {}), some) for part, n in parts.items())


def _tally_part(part: str, here: int, row: Parts, some: Parts) -> Tally:
    sums = sum_by_fate(row)
    rest = max(0, here - sum(sums.values()))
    good = min(rest, some[part]) if part in some else (0 if some else rest)
    return Tally(part, here, good, sums["spoiled"], sums["missing"], sums["rework"])


def list_figures(hand: CountingHand, parts: Parts) -> Counts:
    """Lists the count as it stands, every figure said: part → counter → pieces, good too.

    A number that was said stays as said, though fewer lie here by now: the rule refuses it.
    """
    counts, said = hand.work.counts, hand.work.good
    lost = {part: 0 for part in (*counts, *said) if part not in parts}
    whole = {}
    for t in tally_parts(hand, {**parts, **lost}):
        row = {"good": said.get(t.part, t.good), **counts.get(t.part, {})}
        whole[t.part] = {c: n for c, n in row.items() if n > 0}
    return whole


# --- what an input does to it


def choose_part(hand: CountingHand, part: str, parts: Parts, view: View) -> Took:
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


def count_reason(hand: CountingHand, number: str, parts: Parts, view: View) -> Took | None:
    """Counts one piece spoiled or to rework for a reason card."""
    found = view.get(Reason, number)
    if found is None or found.use not in ("spoiled", "rework"):
        return None
    return count_pieces(hand, f"{found.use}/{number}", parts, view, by=1)


def count_pieces(
    hand: CountingHand,
    counter: str,
    parts: Parts,
    view: View,
    *,
    by: int = 0,
    exact: int | None = None,
) -> Took:
    """Counts on the chosen part's counter, never beyond what is here."""
    part = find_part(hand, parts)
    if not part:
        return Took(hand, refuse_without_part(parts, view))
    counted, most = count_chosen(hand, counter), count_room(hand, counter, parts)
    wanted = counted + by if exact is None else exact
    if exact is None and by > 0 and counted == most > 0:
        wanted = counted  # no more can be: it is only chosen, for a number to set it
    if wanted < 0 and exact is None and most and not counted:
        return Took(hand, NOTHING)
    if not 0 <= wanted <= most:
        return _refuse_count(hand, counter, most, exact)
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


def _refuse_count(hand: CountingHand, counter: str, most: int, exact: int | None) -> Took:
    """Refuses more than is here; an `exact` number stays open until it is put right.

    It leaves no other counter waiting for the next number.
    """
    armed = hand.work.counter if hand.work.counter == counter else ""
    left_open = str(exact) if exact is not None else hand.work.open
    said = refuse(say("At most {most} of them {most|is|are} left", most=most), say("Count again."))
    if exact is None and not most:
        said = refuse(say("All of them are counted already"), say("Take one back with “−” first."))
    after = replace(hand.work, counter=armed, asks="", open=left_open)
    return Took(replace(hand, work=after), said)


def refuse_open(hand: CountingHand) -> Answer | None:
    """Refuses to go on while a number is not put right; None: none is open."""
    if not hand.work.open:
        return None
    return refuse(
        say("{number} was not taken", number=hand.work.open),
        say("Enter it right, or touch what it was for; then go on."),
    )


def take_number(hand: CountingHand, given: Number, parts: Parts, view: View) -> Took:
    """Sets the last counter to a number, or how many go on."""
    part, wanted = find_part(hand, parts), given.whole
    if not part:
        return Took(hand, refuse_without_part(parts, view))
    if wanted is None:
        return Took(
            hand, refuse(say("{text} is no count", text=given.text), say("Enter a whole number."))
        )
    if hand.work.asks == "some":
        return _set_some(hand, wanted, parts, view)
    if not hand.work.counter:
        return Took(
            hand, refuse(say("How many of what?"), say("Scan a reason or “Missing” first."))
        )
    return count_pieces(hand, hand.work.counter, parts, view, exact=wanted)


def ask_some(hand: CountingHand, parts: Parts, view: View) -> Took:
    """Asks how many go on now."""
    asking = replace(hand, work=replace(hand.work, asks="some"))
    part = find_part(hand, parts)
    if not part:
        return Took(
            asking,
            question(
                say("Only some of it: which part?"), say("Touch its row, then enter how many.")
            ),
        )
    return Took(
        asking,
        question(
            say("Only some of it"),
            say("How many {part} are good now?", part=name_part(view, part)),
        ),
    )


def _set_some(hand: CountingHand, wanted: int, parts: Parts, view: View) -> Took:
    part = find_part(hand, parts)
    left = parts[part] - sum(hand.work.counts.get(part, {}).values())
    if wanted > left:
        return Took(
            hand, refuse(say("{left} {left|is|are} left here", left=left), say("Count again."))
        )
    work = replace(hand.work, good={**hand.work.good, part: wanted}, asks="")
    return Took(
        replace(hand, work=work),
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
    return name_first([f"{plain(n)} {name_part(view, p)}" for p, n in parts.items()], NAMED)


def name_counter(view: View, counter: str) -> Say | str:
    """Names a counter."""
    found = view.get(Reason, tail(counter)) if tail(counter) else None
    if found is None:
        return Say(counter)
    spoiled = found.use == "spoiled"
    words = say_reason(found)
    return words if spoiled else say("to rework, {reason}", reason=words)


def list_faults(sums: Mapping[str, int]) -> list[Say]:
    """Lists how many pieces are not good, by what becomes of them: "3 spoiled", "1 missing"."""
    told = {
        "spoiled": say("{n} spoiled", n=sums.get("spoiled", 0)),
        "rework": say("{n} rework", n=sums.get("rework", 0)),
        "missing": say("{n} missing", n=sums.get("missing", 0)),
    }
    return [told[kind] for kind, n in sums.items() if n and kind != "good"]


def name_faults(counts: Counts, view: View, where: Where = NOWHERE) -> Say:
    """Names what is wrong so far, with where on the sheet: "3 × torn, top right"; or nothing."""
    found = Say()
    for part, row in counts.items():
        for counter, n in row.items():
            fault = say("{n} × {what}", n=n, what=name_counter(view, counter))
            for zone in where.get(part, {}).get(counter, ()):
                fault = say("{fault}, {zone}", fault=fault, zone=Say(zone))
            found = say("{first}; {next}", first=found, next=fault) if found else fault
    return found
