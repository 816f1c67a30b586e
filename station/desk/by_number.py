"""Takes a number that is typed from a paper, where no count is asked for, as a touch on its card.

Only one that is written as it stands there is taken: 00006 is a batch, 6 is none.
"""

from typing import Any

from station.queries.settings import find_worker
from station.shop.codes import Code, Unread
from station.shop.facts import KINDS, Batch
from station.shop.rooms import Hand, Input, Number
from station.shop.views import View

# what is picked up at a work area by its number, with free hands
PICKED_UP = {
    "loading": ("batch",),
    "popping": ("batch",),
    "trimming": ("batch",),
    "packing": ("order", "pack"),
    "cart": ("cart", "pack"),
}
WITH_WORK = {
    "cart": ("pack",)
}  # what is taken so with work in hand: no number means a count there
PAGES = ("", "find")  # nothing is open beside the work but an answer


def read_number(hand: Hand[Any], given: Input | Unread, view: View) -> Code | None:
    """Reads what was typed as the number of a badge or of what is picked up; else nothing."""
    if not isinstance(given, Number | Unread):
        return None
    text = given.text.strip()
    if not hand.worker:
        return Code("worker", text) if find_worker(view, text) else None
    if hand.digits or hand.aside.what not in PAGES:
        return None
    for kind in (PICKED_UP if hand.is_free else WITH_WORK).get(hand.area, ()):
        if fact := view.get(KINDS[kind], text):
            return Code(kind, text, fact.copy if isinstance(fact, Batch) else "")
    return None


def takes_numbers(hand: Hand[Any]) -> bool:
    """Whether something may be picked up here by its number."""
    return hand.area in (PICKED_UP if hand.is_free else WITH_WORK)
