"""What a screen shows of counting by exception, as popping and trimming share it."""

from station.floor.shared.counting import NOWHERE, CountingHand, Tally, Where, name_faults
from station.queries.revisions import find_as_cut
from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import Asked, Block, Cell, Listing, Press, Row, Table
from station.shop.facts import Batch, Part
from station.shop.views import View
from station.shop.words import Say, say, together

NOT_YET = say("Not yet: it waits")  # the batch is held


def build_table(came: Say, tallies: tuple[Tally, ...], hand: CountingHand, view: View) -> Table:
    """Builds the table of the parts in hand; `came` heads what is here of each.

    What stays is shown if any does.
    """
    some = any(t.stays for t in tallies)
    heads = (say("part"), came, say("good"), say("spoiled"), say("missing"), say("rework"))
    return Table(
        columns=(*heads, say("stays")) if some else heads,
        rows=tuple(_build_row(t, hand, view, some=some) for t in tallies),
    )


def _build_row(t: Tally, hand: CountingHand, view: View, *, some: bool) -> Row:
    part, code = view.get(Part, t.part), write("part", t.part)
    if part and (batch := view.get(Batch, hand.subject)):
        part = find_as_cut(view, part, batch)
    chosen = hand.work.part == t.part
    first = "" if chosen else f"{code}|"
    return Row(
        title=part.name if part else t.part,
        note=say("{words} · {tabs} {tabs|tab|tabs}", words=part.words if part else "",
                 tabs=part.tabs if part else 0),
        shape=part.shape if part else None,
        code=code,
        selected=chosen,
        cells=(
            Cell(text=say("{n}", n=t.here)),
            Cell(text=say("{n}", n=t.good), bold=True),
            Cell(text=say("{n}", n=t.spoiled), tone="stop" if t.spoiled else ""),
            Cell(text=say("{n}", n=t.missing), tone="attention" if t.missing else ""),
            Cell(text=say("{n}", n=t.rework), tone="attention" if t.rework else ""),
            *((Cell(text=say("{n}", n=t.stays), tone="quiet"),) if some else ()),
        ),
        counter=2,
        minus=first + button("fewer"),
        plus=first + button("more"),
    )  # fmt: skip


def build_faults(hand: CountingHand, view: View, where: Where = NOWHERE) -> tuple[Block, ...]:
    """Builds one line of what is wrong so far; nothing where all is good."""
    line = name_faults(hand.work.counts, view, where)
    return (Listing(title="", rows=(((Cell(text=line, tone="stop"),), ""),)),) if line else ()


def build_no_faults() -> tuple[Block, ...]:
    """Builds the line of faults before there are any, so that nothing under it moves then."""
    line = say("Nothing of it is wrong so far")
    return (Listing(title="", rows=(((Cell(text=line, tone="quiet"),), ""),)),)


def sum_up(tallies: tuple[Tally, ...]) -> Say:
    """Sums up what goes with the count as it stands: ``349 good, 3 spoiled and 2 missing``."""
    good, *wrong = _list_kinds(tallies)
    return together([good, *wrong])


def sum_up_in_short(tallies: tuple[Tally, ...]) -> Say:
    """Sums up in short, ``349 good, 3 spoiled``: several kinds of fault as "not good"."""
    good, *wrong = _list_kinds(tallies)
    if not wrong:
        return good
    most = say("{n} not good", n=sum(t.here - t.stays - t.good for t in tallies))
    return say("{first}, {next}", first=good, next=wrong[0] if len(wrong) == 1 else most)


def _list_kinds(tallies: tuple[Tally, ...]) -> list[Say]:
    """Lists how many are good, then how many of each fault that there is."""
    said = (
        (say("{n} good"), sum(t.good for t in tallies)),
        (say("{n} spoiled"), sum(t.spoiled for t in tallies)),
        (say("{n} missing"), sum(t.missing for t in tallies)),
        (say("{n} rework"), sum(t.rework for t in tallies)),
    )
    first, *wrong = (words._replace(values={"n": n}) for words, n in said)
    return [first, *(w for w in wrong if w.values["n"])]


def build_presses(done: Say, code: str, some: str, *, waits: bool = False) -> tuple[Press, ...]:
    """Builds the large button that ends the count, and the two ways beside it.

    It is no button to press while the batch waits.
    """
    label = NOT_YET if waits else done
    return (
        Press(label=label, code=button(code), style="off" if waits else "primary", wide=2),
        Press(label=say("Only some"), code=button(some)),
        Press(label=say("Leave it"), code=button("put_down")),
    )


def build_question(hand: CountingHand) -> tuple[Block, ...]:
    """Builds the question how many go on, while it is open."""
    if hand.work.asks != "some":
        return ()
    return (
        Asked(
            question=say("How many are good now?"),
            typed=hand.digits,
            unit=say("{n|part|parts}", n=hand.digits),
        ),
    )
