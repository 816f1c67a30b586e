"""Decides on marks and purchases. What else is decided here are acts of the office."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import count

from station.floor.plan.acts import Bought, CutSooner, NotePurchases, SetMark
from station.floor.shared.approval import ask_supervisor
from station.queries.buying import find_bit_size
from station.shop.acts import Act, Answer, good, notice, refuse
from station.shop.facts import Batch, BitSize, Fact, Part, Purchase
from station.shop.views import Rule, Rules, View, by_kind
from station.shop.words import length, moment, say

MOST = 999_999  # pieces


def set_mark(act: Act[SetMark], view: View) -> Answer:
    """Sets the mark of a part."""
    if asked := ask_supervisor(act):
        return asked
    part, mark = view.get(Part, act.subject.partition("/")[2]), act.args.mark
    if part is None:
        return refuse(say("There is no such part"), say("Touch one that stands here."))
    if not 0 <= mark <= MOST:
        return refuse(say("{n} is no minimum", n=mark), say("Set it in the office."))
    if part.mark == mark:
        return notice(say("{part}: the minimum is {n} already", part=part.name, n=mark),
                      say("Go on here."))  # fmt: skip
    return good(
        say("{part}: minimum {before} → {after}", part=part.name, before=part.mark, after=mark),
        say("Below it more is cut. Undo takes it back."),
        sets=(replace(part, mark=mark),),
    )


def cut_sooner(act: Act[CutSooner], view: View) -> Answer:
    """Brings a queued batch forward in its router's queue."""
    if asked := ask_supervisor(act):
        return asked
    batch, due = view.get(Batch, act.subject.partition("/")[2]), act.args.due
    if batch is None or batch.state != "queued" or not due:
        return refuse(say("No such batch waits in a queue"), say("Touch one that stands here."))
    if batch.due and batch.due <= due:
        return notice(say("Batch {batch} is due as early already", batch=batch.id),
                      say("Go on here."))  # fmt: skip
    return good(
        say("Batch {batch} is due {due}", batch=batch.id, due=moment(due)),
        say("Its router takes it sooner. Undo takes it back."),
        sets=(replace(batch, due=due),),
    )


def note_purchases(act: Act[NotePurchases], view: View) -> Answer:
    """Notes what is ordered: it is on its way."""
    if asked := ask_supervisor(act):
        return asked
    rows = act.args.rows
    if not rows or any(row.quantity < 1 for row in rows):
        return refuse(say("Nothing is ordered"), say("Go on here."))
    sizes = _enter_sizes(act, view)
    numbers = _list_free(act, view, Purchase)
    return good(
        say("{n} {n|thing is|things are} on {n|its|their} way", n=len(rows)),
        say("What is received, entered or counted beyond the book counts as come."),
        sets=(
            *(size for size in sizes.values() if view.get(BitSize, size.id) is None),
            *(_make_purchase(row, next(numbers), sizes) for row in rows),
        ),
    )


def _enter_sizes(act: Act[NotePurchases], view: View) -> dict[float, BitSize]:
    """Finds the bit sizes that rows have no number of, by diameter; those unknown are entered."""
    sizes: dict[float, BitSize] = {}
    numbers = _list_free(act, view, BitSize)
    for row in act.args.rows:
        mm = row.diameter_mm
        if not row.id and mm not in sizes:
            known = find_bit_size(view, mm)
            name = str(say("{size} mm bit", size=length(mm)))
            sizes[mm] = known or BitSize(id=next(numbers), name=name, diameter_mm=mm)
    return sizes


def _list_free(act: Act[NotePurchases], view: View, kind: type[Fact]) -> Iterator[str]:
    """Lists numbers that no fact of a kind has: the day, and how many of it."""
    day = act.at[:10].replace("-", "")
    return (f"{day}-{n}" for n in count(1) if view.get(kind, f"{day}-{n}") is None)


def _make_purchase(row: Bought, number: str, sizes: Mapping[float, BitSize]) -> Purchase:
    thing = row.id or sizes[row.diameter_mm].id
    return Purchase(
        id=number,
        material=thing if row.of == "material" else "",
        bit_size=thing if row.of == "bit_size" else "",
        mailer=thing if row.of == "mailer" else "",
        quantity=row.quantity,
        expected=row.expected,
    )


RULES: Rules = by_kind(
    Rule(args=SetMark, reads=frozenset({Part}), decide=set_mark),
    Rule(args=CutSooner, reads=frozenset({Batch}), decide=cut_sooner),
    Rule(args=NotePurchases, reads=frozenset({BitSize, Purchase}), decide=note_purchases),
)
