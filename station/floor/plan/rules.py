"""Decides on marks. What else is decided here are acts of the office: release, take back."""

from dataclasses import replace

from station.floor.plan.acts import SetMark
from station.floor.shared.approval import ask_supervisor
from station.shop.acts import Act, Answer, good, notice, refuse
from station.shop.facts import Part
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


RULES: Rules = by_kind(Rule(args=SetMark, reads=frozenset({Part}), decide=set_mark))
