"""Decides on marks and purchases. What else is decided here are acts of the office."""

from dataclasses import replace
from itertools import count

from station.floor.plan.acts import Bought, NotePurchases, SetMark
from station.floor.shared.approval import ask_supervisor
from station.shop.acts import Act, Answer, good, notice, refuse
from station.shop.facts import BitSize, Fact, Part, Purchase
from station.shop.views import Rule, Rules, View, by_kind
from station.shop.words import say

MOST = 999_999  # pieces


def set_mark(act: Act[SetMark], view: View) -> Answer:
    """Sets the mark of a part."""
    if asked := ask_supervisor(act):
        return asked
    part, mark = view.get(Part, act.subject.partition("/")[2]), act.args.mark
    if part is None:
        return refuse(say("There is no such part"), say("Touch one that stands here."))
    if not 0 <= mark <= MOST:
        return refuse(say("{n} is no mark", n=mark), say("Set it in the office."))
    if part.mark == mark:
        return notice(say("{part}: the mark is {n} already", part=part.name, n=mark),
                      say("Go on here."))  # fmt: skip
    return good(
        say("{part}: mark {before} → {after}", part=part.name, before=part.mark, after=mark),
        say("Below it more is cut. Undo takes it back."),
        sets=(replace(part, mark=mark),),
    )


def note_purchases(act: Act[NotePurchases], view: View) -> Answer:
    """Notes what is ordered: it is on its way."""
    if asked := ask_supervisor(act):
        return asked
    rows, day = act.args.rows, act.at[:10].replace("-", "")
    if not rows or any(row.quantity < 1 for row in rows):
        return refuse(say("Nothing is ordered"), say("Go on here."))
    free = (n for n in count(1) if view.get(Purchase, f"{day}-{n}") is None)
    noted: list[Fact] = []
    for row in rows:
        thing = row.id
        if not thing:
            size = _enter_size(view, row, f"{day}-{len(noted) + 1}")
            noted.append(size)
            thing = size.id
        noted.append(
            Purchase(
                id=f"{day}-{next(free)}",
                material=thing if row.of == "material" else "",
                bit_size=thing if row.of == "bit_size" else "",
                mailer=thing if row.of == "mailer" else "",
                quantity=row.quantity,
                expected=row.expected,
            )
        )
    return good(
        say("{n} {n|thing is|things are} on {n|its|their} way", n=len(rows)),
        say("What is received, entered or counted beyond the book counts as come."),
        sets=tuple(noted),
    )


def _enter_size(view: View, row: Bought, number: str) -> BitSize:
    """Enters a bit size that is bought for the first time."""
    known = view.get(BitSize, number)
    return known or BitSize(
        id=number, name=f"{row.diameter_mm:g} mm bit", diameter_mm=row.diameter_mm
    )


RULES: Rules = by_kind(
    Rule(args=SetMark, reads=frozenset({Part}), decide=set_mark),
    Rule(args=NotePurchases, reads=frozenset({BitSize, Purchase}), decide=note_purchases),
)
