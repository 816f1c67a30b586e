"""The reasons that a counting screen offers, page by page, so that touch reaches every one."""

from dataclasses import replace

from station.floor.shared.counting import CountingHand
from station.queries.settings import list_reasons
from station.shop.acts import notice
from station.shop.cards import button
from station.shop.codes import write
from station.shop.faces import Entry
from station.shop.facts import Reason
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

    It is the first one offered whose fact says so, else the first one of the use.
    """
    offered = [r for r in list_offered(view, area) if r.use == use]
    usual = next((r for r in offered if area in r.usual_at), offered[0] if offered else None)
    return f"{use}/{usual.id}" if usual else use


def find_first(view: View) -> str:
    """Finds what “one more” counts before a reason is touched: the shop's first for spoiled."""
    known = list_reasons(view, "spoiled")
    return f"spoiled/{known[0].id}" if known else "spoiled"


def list_entries(
    hand: CountingHand, view: View, area: str, room: int, also: tuple[Entry, ...] = ()
) -> tuple[Entry, ...]:
    """Lists the cards of the page that is open, `room` to a page, and the one that turns it.

    `also` are cards of the area's own: they come behind the reasons that it shows first.
    """
    offered = list_offered(view, area)
    cards = [Entry(big=r.words, code=write("reason", r.id)) for r in offered]
    usual = sum(area in r.first_at for r in offered)
    cards[usual:usual] = also
    pages = max(1, -(-len(cards) // room))
    first = hand.work.reasons % pages * room
    shown = tuple(cards[first : first + room])
    return (*shown, Entry(big=say("more reasons"), code=button(TURN))) if pages > 1 else shown


def turn_page(hand: CountingHand) -> Took:
    """Turns to the next page of reasons; behind the last one stands the first again."""
    turned = replace(hand, work=replace(hand.work, reasons=hand.work.reasons + 1))
    return Took(turned, notice(say("More reasons"), say("Touch the one that fits.")))
