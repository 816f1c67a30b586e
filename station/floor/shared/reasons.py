"""The reasons that a counting screen offers, page by page, so that touch reaches every one."""

from collections.abc import Mapping
from dataclasses import replace

from station.floor.shared.counting import CountingHand, Parts, count_pieces
from station.queries.settings import list_reasons
from station.shop.acts import question
from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import Entry
from station.shop.facts import Reason
from station.shop.first_facts import say_reason
from station.shop.rooms import Took
from station.shop.views import View
from station.shop.words import say

USES = ("spoiled", "rework")
TURN = "next_page"  # the card that turns the page


def list_offered(view: View, area: str) -> tuple[Reason, ...]:
    """Lists the reasons for which a work area counts pieces, the usual ones there first."""
    found = [r for use in USES for r in list_reasons(view, use) if r.is_offered(area)]
    return tuple(sorted(found, key=lambda r: (area not in r.first_at, USES.index(r.use), r.id)))


def find_usual(view: View, area: str, use: str) -> str:
    """Finds what a work area's own button for this use counts: ``spoiled/01``.

    It is the first one offered whose fact says so, else the first one of the use; what has no
    reasons, as what is missing, is counted as it is.
    """
    offered = [r for r in list_offered(view, area) if r.use == use]
    usual = next((r for r in offered if area in r.usual_at), offered[0] if offered else None)
    return f"{use}/{usual.id}" if usual else use


def find_counter(hand: CountingHand, view: View) -> str:
    """Finds what “one more” counts: as the last time, at first the shop's first for spoiled."""
    if hand.work.counter:
        return hand.work.counter
    known = list_reasons(view, "spoiled")
    return f"spoiled/{known[0].id}" if known else "spoiled"


def find_counted(hand: CountingHand, view: View) -> str:
    """Finds what “one less” takes back: of the last counter, else of the last that has any."""
    counter = find_counter(hand, view)
    row = hand.work.counts.get(hand.work.part, {})
    return counter if counter in row else next(reversed(row), counter)


def press_counter(
    hand: CountingHand, name: str, parts: Parts, view: View, own: Mapping[str, str]
) -> Took | None:
    """Takes a button that counts, or turns to more reasons; None: it does neither.

    `own` are the buttons that the area has for itself: what each counts, by its name.
    """
    if name in own:
        counter = find_usual(view, hand.area, own[name])
        return count_pieces(hand, counter, parts, view, by=1)
    if name in ("more", "fewer"):
        by = 1 if name == "more" else -1
        counter = find_counter(hand, view) if by > 0 else find_counted(hand, view)
        return count_pieces(hand, counter, parts, view, by=by)
    return _turn_page(hand) if name == TURN else None


def list_entries(
    hand: CountingHand, view: View, room: int, also: tuple[Entry, ...] = ()
) -> tuple[Entry, ...]:
    """Lists the cards of the page that is open, `room` to a page, and the one that turns it.

    `also` are cards of the area's own: they come behind the reasons that it shows first.
    """
    offered = list_offered(view, hand.area)
    cards = [Entry(big=say_reason(r), code=write("reason", r.id)) for r in offered]
    usual = sum(hand.area in r.first_at for r in offered)
    cards[usual:usual] = also
    pages = max(1, -(-len(cards) // room))
    first = hand.work.reasons % pages * room
    shown = tuple(cards[first : first + room])
    return (*shown, Entry(big=say("more reasons"), code=button(TURN))) if pages > 1 else shown


def _turn_page(hand: CountingHand) -> Took:
    """Turns to the next page of reasons; behind the last one stands the first again."""
    turned = replace(hand, work=replace(hand.work, reasons=hand.work.reasons + 1))
    return Took(turned, question(say("More reasons"), say("Touch the one that fits.")))
