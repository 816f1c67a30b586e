"""Shop today: the day at a glance, all that needs a look, and how one thing is settled.

`hand.subject` is the concern in hand; `hand.work` holds `shown` (``concerns``, or nothing: the
day) and `page`.
"""

from dataclasses import replace

from station.floor.today.acts import SettleConcern
from station.shop.acts import good, notice, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Concern
from station.shop.rooms import Do, Hand, Input, Took
from station.shop.views import View
from station.shop.words import say

ROWS = 6  # of what needs a look on one page
MOST = 200  # that are looked through


def handle_input(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """A row chooses a concern; with one in hand, a row chooses how it is settled."""
    if not isinstance(given, Code) or given.kind != "button":
        return None
    card = BY_NUMBER.get(given.number)
    name = card.name if card else ""
    if name == "show_concerns":
        return _show_concerns(hand, view)
    if name == "show_flow":
        return Took(hand.empty(), good(say("The day so far"), say("Touch what needs a look.")))
    if name in ("next_page", "back_page") and not hand.subject:
        page = max(0, page_of(hand) + (1 if name == "next_page" else -1))
        return Took(hand.with_work(page=page), good(say("Page {page}", page=page + 1)))
    if name == "settle":
        return _settle_it(hand, view)
    if name.startswith("row_"):
        row = int(name[4:]) - 1
        return _settle(hand, row, view) if hand.subject else _choose(hand, row, view)
    return None


def page_of(hand: Hand) -> int:
    """The page of the list that is shown, from 0."""
    page = hand.work.get("page", 0)
    return page if isinstance(page, int) else 0


def open_ones(view: View) -> tuple[Concern, ...]:
    """All that needs a look, oldest first."""
    return view.shelf(Concern, "open", MOST)


def _show_concerns(hand: Hand, view: View) -> Took:
    count = len(open_ones(view))
    return Took(
        replace(hand, subject="").with_work(shown="concerns", page=0),
        good(
            say("{n} {n|thing needs|things need} a look", n=count),
            say("Touch one to see what happened.") if count else say("All is well."),
        ),
    )


def _choose(hand: Hand, row: int, view: View) -> Took:
    found, place = open_ones(view), page_of(hand) * ROWS + row
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


def _settle_it(hand: Hand, view: View) -> Do | Took:
    """The one way there is; where there are several, one must be chosen."""
    concern = view.get(Concern, hand.subject)
    if concern is None:
        return Took(hand, refuse(say("Nothing is chosen"), say("Touch what needs a look.")))
    if len(concern.choices) > 1:
        return Took(
            hand, refuse(say("It can be settled in several ways"), say("Touch one of them."))
        )
    return _settle(hand, 0, view)


def _settle(hand: Hand, row: int, view: View) -> Do | Took:
    """The rule asks for a supervisor and for a reason."""
    concern = view.get(Concern, hand.subject)
    if concern is None or row >= len(concern.choices):
        return Took(hand, refuse(say("That is no choice here"), say("Choose a row.")))
    return Do(concern.key, SettleConcern(how=concern.choices[row]), replace(hand, subject=""))
