"""Says what codes mean at Shop today: all that needs a look, and how one thing is settled."""

from dataclasses import replace

from station.floor.today.acts import SettleConcern
from station.floor.today.work import TodayHand, TodayWork
from station.queries.shortage import list_blocking
from station.shop.acts import good, notice, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Concern
from station.shop.rooms import Do, Input, Took
from station.shop.views import View
from station.shop.words import say

ROWS = 6  # of what needs a look on one page
MOST = 200  # that are looked through


def handle_input(hand: TodayHand, given: Input, view: View) -> Do | Took | None:
    """Takes one input: a row chooses a concern, or how the one in hand is settled."""
    if not isinstance(given, Code) or given.kind != "button":
        return None
    card = BY_NUMBER.get(given.number)
    name = card.name if card else ""
    if name == "show_concerns":
        return _show_concerns(hand, view)
    if name == "show_flow":
        return Took(hand.empty(), good(say("The day so far"), say("Touch what needs a look.")))
    if name in ("next_page", "back_page") and not hand.subject:
        page = max(0, hand.work.page + (1 if name == "next_page" else -1))
        after = replace(hand, work=replace(hand.work, page=page))
        return Took(after, good(say("Page {page}", page=page + 1)))
    if name == "settle":
        return _settle_only_way(hand, view)
    if name.startswith("row_"):
        row = int(name[4:]) - 1
        return (
            _settle_concern(hand, row, view) if hand.subject else _choose_concern(hand, row, view)
        )
    return None


def list_open(view: View) -> tuple[Concern, ...]:
    """Lists all that needs a look, oldest first."""
    return view.shelf(Concern, "open", MOST)


def _show_concerns(hand: TodayHand, view: View) -> Took:
    count = len(list_open(view)) + len(list_blocking(view, hand.now))
    return Took(
        replace(hand, subject="", work=TodayWork(shown="concerns")),
        good(
            say("{n} {n|thing needs|things need} a look", n=count),
            say("Touch one to see what happened.") if count else say("All is well."),
        ),
    )


def _choose_concern(hand: TodayHand, row: int, view: View) -> Took:
    found, place = list_open(view), hand.work.page * ROWS + row
    if place >= len(found):
        return Took(hand, refuse(say("There is no row {row}", row=row + 1), say("Choose a row.")))
    chosen = found[place]
    return Took(
        replace(hand, subject=chosen.id),
        notice(
            say("{text}", text=chosen.text),
            say("Choose how it is settled."),
        ),
    )


def _settle_only_way(hand: TodayHand, view: View) -> Do | Took:
    """Settles it the one way there is; where there are several, one must be chosen."""
    concern = view.get(Concern, hand.subject)
    if concern is None:
        return Took(hand, refuse(say("Nothing is chosen"), say("Touch what needs a look.")))
    if len(concern.choices) > 1:
        return Took(
            hand, refuse(say("It can be settled in several ways"), say("Touch one of them."))
        )
    return _settle_concern(hand, 0, view)


def _settle_concern(hand: TodayHand, row: int, view: View) -> Do | Took:
    """Settles it the way of a row; the rule asks for a supervisor and for a reason."""
    concern = view.get(Concern, hand.subject)
    if concern is None or row >= len(concern.choices):
        return Took(hand, refuse(say("That is no choice here"), say("Choose a row.")))
    return Do(concern.key, SettleConcern(how=concern.choices[row]), replace(hand, subject=""))
