"""The desk's own screens: who works here, and every question that is asked back.

Each can be answered by scanner, by touch and by keyboard: what a badge or a card would
say stands on the screen as something to touch.
"""

from dataclasses import replace
from typing import Any

from station.desk.concerned import concerned
from station.desk.draft import OpenQuestion
from station.queries.settings import list_reasons, list_supervisors, list_workers
from station.shop.acts import SetPin
from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import Asked, Cards, Entry, Face, Hint, Press, Text
from station.shop.facts import Reason, Worker
from station.shop.first_facts import say_reason
from station.shop.rooms import Hand
from station.shop.views import View
from station.shop.words import say

LEAVE = Press(label=say("Leave it"), code=button("put_down"))
MORE = Press(label=say("More"), code=button("menu"))
MOST = 8  # cards on a screen, each large enough to touch


def nobody(view: View, title: Text) -> Face:
    """Nobody is signed in: the badges, to scan or to touch."""
    return Face(
        title=title,
        main=(
            Hint(title=say("Scan your badge"), note=say("or touch your number")),
            Cards(title=say("Who works here?"), entries=_badges(list_workers(view))),
        ),
    )


def _badges(workers: tuple[Worker, ...]) -> tuple[Entry, ...]:
    return tuple(
        Entry(
            big=w.id, right=say("supervisor") if w.supervisor else "", code=write("worker", w.id)
        )
        for w in workers[:MOST]
    )


def question(hand: Hand[Any], waiting: OpenQuestion, view: View, title: Text) -> Face:
    """The open question, with its answers to touch."""
    asked = Hint(title=waiting.said, note=waiting.next, tone="attention")
    if waiting.asks == "sure":
        yes = Press(label=say("Yes, I am sure"), code=button("yes"), style="primary", wide=2)
        return Face(title=title, main=(asked, *concerned(waiting, view)), presses=(yes, LEAVE))
    if waiting.asks == "reason":
        return Face(
            title=title, main=(asked, _reasons(hand.area, waiting.uses, view)), presses=(LEAVE,)
        )
    if waiting.asks == "new_pin":
        setting = waiting.do.args
        once_more = isinstance(setting, SetPin) and setting.hash
        words = say("The same PIN once more") if once_more else say("The new PIN")
        new = Asked(question=words, typed="•" * len(hand.digits), whole=True)
        who = replace(asked, note="") if once_more else asked
        return Face(title=title, main=(who, new), presses=(LEAVE,))
    if waiting.asks == "pin":
        pin = Asked(
            question=say("PIN of supervisor {id}", id=waiting.approver),
            typed="•" * len(hand.digits),
            whole=True,
        )
        what = Hint(title=say("Enter your PIN"), note=waiting.said)
        others = tuple(w for w in list_supervisors(view) if w.id != waiting.approver)
        if not others:
            return Face(title=title, main=(what, pin), presses=(LEAVE,))
        badges = Cards(title=say("Or another supervisor"), entries=_badges(others))
        return Face(
            title=title, main=(what, pin), side=(badges,), presses=(LEAVE,), weights=(62, 0, 38)
        )
    badges = Cards(title=say("Which supervisor?"), entries=_badges(list_supervisors(view)))
    return Face(title=title, main=(asked, badges), presses=(LEAVE,))


def _reasons(area: str, uses: tuple[str, ...], view: View) -> Cards:
    """Reasons that an act asks back for; commonly those of a supervisor and of a correction."""
    uses = uses or ("overrule", "correct")
    found: list[Reason] = []
    for use in uses:
        offered = [r for r in list_reasons(view, use) if r.is_offered(area)]
        found += offered[: MOST // len(uses)]
    return Cards(
        title=say("Why?"),
        entries=tuple(Entry(big=say_reason(r), code=write("reason", r.id)) for r in found),
    )
