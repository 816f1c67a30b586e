"""Join cards: each makes one PC a station of the shop, once and for a short time.

The host is not on it, so that a card found on a bench opens nothing by itself.
"""

from collections.abc import Iterable
from typing import NamedTuple

from station.papers.page import Page, say_moment
from station.shop.words import say

HIGH = 92.0  # mm of one card; three on an A4 page, two on an A5


class JoinCard(NamedTuple):
    """What stands on a card: `code` as it is typed, `shown` in groups, `until` an ISO time.

    `behind` is typed behind the host's name, where the database is not at its usual place.
    """

    station: str
    behind: str
    code: str
    shown: str
    until: str


STEPS = (
    say("At the new PC type:  station join"),
    say(
        "Type the name of the PC or server that holds the shop's database. It is not on this card."
    ),
    say("Type the code, or scan it."),
    say("Throw this card away: it works once."),
)


def make_join_cards(cards: Iterable[JoinCard], *, paper: str = "A4") -> Page:
    """Makes the cards with lines to cut along."""
    page = Page.make(paper, say("Join cards"))
    down = max(1, int((page.height - 12) // HIGH))
    for n, card in enumerate(cards):
        if n and not n % down:
            page.turn_page()
        _draw_card(page, card, 6 + n % down * HIGH)
    return page


def _draw_card(page: Page, card: JoinCard, top: float) -> None:
    wide = page.width - 12
    page.draw_box(6, top, wide, HIGH, line=0.15, dash=True)
    page.draw_text(
        12, top + 11, say("Station {station} joins the shop", station=card.station), 18, bold=True
    )
    page.draw_text(12, top + 18, say("Valid once, until {time}.", time=say_moment(card.until)), 11)
    y = top + 26
    for n, words in enumerate(STEPS, 1):
        page.draw_text(12, y, f"{n}", 11, bold=True)
        y = page.draw_wrapped(18, y, wide - 18, words, 11) + 6
    if card.behind:
        behind = say("Type {behind} behind the name, without a blank.", behind=card.behind)
        page.draw_text(12, y, behind, 11)
    page.draw_code(12, top + HIGH - 27, card.code, height=14, size=14, words=card.shown)
