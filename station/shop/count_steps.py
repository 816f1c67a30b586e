"""The dialogue of counting by exception, as popping and trimming share it.

`parts` is what lies here of the batch in hand: part → pieces.
"""

from collections.abc import Mapping, Sequence

from station.shop import counting
from station.shop.acts import Answer, good, notice, refuse
from station.shop.faces import Asked
from station.shop.facts import Part, Reason
from station.shop.moves import head, tail
from station.shop.rooms import Hand, Number, Took
from station.shop.views import View
from station.shop.words import Say, plain, say, several

FIRST_REASON = "spoiled/01"  # what “one more” counts before a reason is scanned
Parts = Mapping[str, int]
Where = Mapping[str, Mapping[str, Sequence[str]]]  # part → counter → zones in words
NOWHERE: Where = {}


def name(view: View, part: str) -> str:
    """A part's name, or its number where it is not known."""
    found = view.get(Part, part)
    return found.name if found else part


def names(view: View, parts: Parts) -> str:
    """What lies here, in words: "24 HC-300 and 96 ST-200"."""
    return several([f"{plain(n)} {name(view, part)}" for part, n in list(parts.items())[:3]])


def choose(hand: Hand, part: str, parts: Parts, view: View) -> Took:
    """The part that the next counts go to."""
    if part not in parts:
        return Took(
            hand,
            refuse(
                say("{part} is not in batch {batch}", part=name(view, part), batch=hand.subject),
                say("Here: {parts}.", parts=several([name(view, p) for p in parts])),
            ),
        )
    return Took(
        counting.choose(hand, part),
        good(
            say("{part}: {count} here", part=name(view, part), count=parts[part]),
            say("Scan a reason, or enter how many."),
        ),
    )


def chosen(hand: Hand, parts: Parts) -> str:
    """The chosen part, where it lies here."""
    part = str(hand.work.get("part", ""))
    return part if part in parts else ""


def no_part(parts: Parts, view: View) -> Answer:
    """Said when a count comes before its part."""
    here = several([name(view, p) for p in parts])
    return refuse(say("Which part?"), say("Touch its row first: {parts}.", parts=here))


def reason(hand: Hand, number: str, parts: Parts, view: View) -> Took | None:
    """A reason card counts one piece spoiled or to rework for it."""
    found = view.get(Reason, number)
    if found is None or found.use not in ("spoiled", "rework"):
        return None
    return count(hand, f"{found.use}/{number}", parts, view, by=1)


def count(
    hand: Hand, counter: str, parts: Parts, view: View, *, by: int = 0, exact: int | None = None
) -> Took:
    """Counts on the chosen part's counter, never beyond what is here."""
    part = chosen(hand, parts)
    if not part:
        return Took(hand, no_part(parts, view))
    wanted = counting.count_of(hand, counter) + by if exact is None else exact
    most = counting.room_for(hand, counter, parts)
    if not 0 <= wanted <= most:
        return Took(
            hand,
            refuse(
                say("At most {most} of them {most|is|are} left", most=most), say("Count again.")
            ),
        )
    return Took(
        counting.counted(hand, counter, wanted),
        notice(
            say(
                "{part}: {count} {what}",
                part=name(view, part),
                count=wanted,
                what=words(view, counter),
            ),
            say("A number sets how many."),
        ),
    )


def words(view: View, counter: str) -> str:
    """A counter in words."""
    found = view.get(Reason, tail(counter)) if tail(counter) else None
    if found is None:
        return counter
    return found.words if found.use == "spoiled" else f"to rework, {found.words}"


def number(hand: Hand, given: Number, parts: Parts, view: View) -> Took:
    """A number sets the last counter, or how many go on."""
    part, wanted = chosen(hand, parts), given.whole
    if not part:
        return Took(hand, no_part(parts, view))
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
    return count(hand, str(counter), parts, view, exact=wanted)


def some(hand: Hand, parts: Parts, view: View) -> Took:
    """Asks how many go on now."""
    asking, part = hand.with_work(asks="some"), chosen(hand, parts)
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
            say("Only some of it"), say("How many {part} are good now?", part=name(view, part))
        ),
    )


def _set_some(hand: Hand, wanted: int, parts: Parts, view: View) -> Took:
    part = chosen(hand, parts)
    left = parts[part] - sum(counting.counts_of(hand).get(part, {}).values())
    if wanted > left:
        return Took(
            hand, refuse(say("{left} {left|is|are} left here", left=left), say("Count again."))
        )
    part_counts = {**counting.good_of(hand), part: wanted}
    return Took(
        hand.with_work(good=part_counts, asks=None),
        good(
            say("{count} {part} {count|goes|go} on now", count=wanted, part=name(view, part)),
            say("Confirm it; the rest stays here."),
        ),
    )


def figures(hand: Hand, parts: Parts) -> dict[str, dict[str, int]]:
    """The count as it stands, every figure said: part → counter → pieces, good too.

    A number that was said stays as said, though fewer lie here by now: the rule refuses it.
    """
    counts, said = counting.counts_of(hand), counting.good_of(hand)
    lost = {part: 0 for part in (*counts, *said) if part not in parts}
    whole = {}
    for t in counting.tally(hand, {**parts, **lost}):
        row = {"good": said.get(t.part, t.good), **counts.get(t.part, {})}
        whole[t.part] = {c: n for c, n in row.items() if n > 0}
    return whole


def has_rework(parts: Mapping[str, Mapping[str, int]]) -> bool:
    """Whether anything goes to rework."""
    return any(head(c) == "rework" for row in parts.values() for c in row)


def faults_line(hand: Hand, view: View, where: Where = NOWHERE) -> Say:
    """What is wrong so far in one line, with where on the sheet: "3 × torn, top right"."""
    found = [
        ", ".join([f"{plain(n)} × {words(view, counter)}", *where.get(part, {}).get(counter, ())])
        for part, row in counting.counts_of(hand).items()
        for counter, n in row.items()
    ]
    return say("{faults}", faults="; ".join(found)) if found else Say()


def asked(hand: Hand) -> tuple[Asked, ...]:
    """The question how many go on, while it is open."""
    if hand.work.get("asks") != "some":
        return ()
    return (
        Asked(
            question=say("How many are good now?"),
            typed=hand.digits,
            unit=say("{n|part|parts}", n=hand.digits),
        ),
    )
