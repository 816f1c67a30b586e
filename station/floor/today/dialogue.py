"""Says what codes mean at Shop today: all that needs a look, and how one thing is settled."""

from dataclasses import replace

from station.floor.shared.no_row import NO_ROW
from station.floor.shared.settling import SettleConcern
from station.floor.today.work import TodayHand, TodayWork
from station.queries.looks import OPEN, Raised, list_alike, list_raised
from station.shop.acts import good, notice, question, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.conflicts import RENEW
from station.shop.facts import Concern
from station.shop.rooms import Do, Input, Took
from station.shop.views import View
from station.shop.words import say

ROWS = 6  # of what needs a look on one page


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
        pages = list_page(hand, view)[2]
        page = hand.work.page + (1 if name == "next_page" else -1)
        page = min(pages - 1, max(0, page))
        after = replace(hand, work=replace(hand.work, page=page))
        return Took(after, good(say("Page {page}", page=page + 1)))
    if name == "all_alike":
        return _choose_alike(hand, view)
    if name == "settle":
        return _settle_only_way(hand, view)
    if name.startswith("row_"):
        row = int(name[4:]) - 1
        return (
            _settle_concern(hand, row, view) if hand.subject else _choose_concern(hand, row, view)
        )
    return None


def list_open(view: View) -> tuple[Concern, ...]:
    """Lists all that waits to be settled, what stops first, then the newest."""
    found = view.shelf(Concern, "open", OPEN)
    stops = [c for c in reversed(found) if c.tone == "stop"]
    return (*stops, *(c for c in reversed(found) if c.tone != "stop"))


def count_all(view: View, now: str) -> int:
    """Counts all that needs a look."""
    return len(list_open(view)) + sum(raised.things for raised in list_raised(view, now))


def list_page(hand: TodayHand, view: View) -> tuple[tuple[Raised, ...], tuple[Concern, ...], int]:
    """Lists what stands on the page that is shown, and how many pages there are.

    What raises itself stands on the first page, above what waits to be settled.
    """
    raised, found, page = list_raised(view, hand.now), list_open(view), hand.work.page
    first = ROWS - len(raised)
    pages = 1 + max(0, -(-(len(found) - first) // ROWS))
    if page == 0:
        return raised, found[:first], pages
    start = first + (page - 1) * ROWS
    return (), found[start : start + ROWS], pages


def _show_concerns(hand: TodayHand, view: View) -> Took:
    count = count_all(view, hand.now)
    return Took(
        replace(hand, subject="", work=TodayWork(shown="concerns")),
        good(
            say("{n} {n|thing needs|things need} a look", n=count),
            say("Touch one to see what happened.") if count else say("All is well."),
        ),
    )


def _choose_concern(hand: TodayHand, row: int, view: View) -> Took:
    _, found, _ = list_page(hand, view)
    if row >= len(found):
        return Took(hand, NO_ROW)
    chosen = found[row]
    return Took(
        replace(hand, subject=chosen.id, work=replace(hand.work, together=False)),
        question(
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
    alike = list_alike(view, concern) if hand.work.together else (concern,)
    how = concern.choices[row]
    args = SettleConcern(how=how, others=tuple(c.id for c in alike[1:]))
    left = replace(hand, subject="", work=replace(hand.work, together=False))
    return Do(concern.key, args, left, ("batch",) if how == RENEW and concern.meant else ())


def _choose_alike(hand: TodayHand, view: View) -> Took:
    """Takes all like the concern in hand together; pressed again, it alone."""
    concern = view.get(Concern, hand.subject)
    if concern is None:
        return Took(hand, refuse(say("Nothing is chosen"), say("Touch what needs a look.")))
    together = not hand.work.together
    after = replace(hand, work=replace(hand.work, together=together))
    do = say("Choose how it is settled.")
    if not together:
        return Took(after, notice(say("It alone is settled"), do))
    n = len(list_alike(view, concern))
    return Took(after, notice(say("{n} like it are settled together", n=n), do))
