"""Shop today: choose what needs a look, then how it is settled."""

from dataclasses import replace

from station.shop.acts import notice, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Concern, Reason
from station.shop.rooms import Do, Hand, Input, Took
from station.shop.views import View
from station.shop.words import say


def step(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """A row chooses a concern; with one in hand, a row chooses how it is settled."""
    if not isinstance(given, Code):
        return None
    card = BY_NUMBER.get(given.number) if given.kind == "button" else None
    if given.kind == "reason" and hand.subject:
        reason = view.get(Reason, given.number)
        words = reason.words if reason else ""
        return Took(
            hand.with_work(why=words),
            notice(say("Reason: {words}", words=words), say("Now choose how it is settled.")),
        )
    if card is None or not card.name.startswith("row_"):
        return None
    row = int(card.name[4:]) - 1
    return _settle(hand, row, view) if hand.subject else _choose(hand, row, view)


def _choose(hand: Hand, row: int, view: View) -> Took:
    open_ones = view.shelf(Concern, "open", 9)
    if row >= len(open_ones):
        return Took(hand, refuse(say("There is no row {row}", row=row + 1), say("Choose a row.")))
    chosen = open_ones[row]
    return Took(
        replace(hand, subject=chosen.id),
        notice(
            say("{text}", text=chosen.text),
            say("Choose how it is settled."),
        ),
    )


def _settle(hand: Hand, row: int, view: View) -> Do | Took:
    concern = view.get(Concern, hand.subject)
    if concern is None or row >= len(concern.choices):
        return Took(hand.empty(), refuse(say("That is no choice here"), say("Choose a row.")))
    args = {"how": concern.choices[row], "why": hand.work.get("why", "")}
    return Do("settle_concern", concern.key, args, hand.empty())
