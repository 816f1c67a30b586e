"""Takes a number or a name that is typed, where no count is asked for, as a touch on its card.

Only a number that is written as it stands there is taken: 00006 is a batch, 6 is none. A name is
taken wherever its card is.
"""

from typing import Any

from station.queries.settings import find_worker
from station.shop.codes import Code, Unread
from station.shop.facts import KINDS, Batch, Fact
from station.shop.rooms import Hand, Input, Number
from station.shop.views import View

Names = dict[str, tuple[str, str]]  # a name in small letters: the kind and number of its thing

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
NUMBERED = ("part", "rack")  # of packing: taken so where no count is written like it, 014
# that have a name and a card; what is named first counts where two have one name
NAMED = ("part", "rack", "product", "mailer", "cart", "router")
OTHERS = ("lot", "bit", "order", "pack", "cutfile")  # of shops whose numbers have letters
MOST = 10_000  # of a kind
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
    if isinstance(given, Number):
        return _read_part_number(hand, text, view)
    return None if hand.work.takes_text or hand.area == "office" else read_name(text, view)


def _read_part_number(hand: Hand[Any], text: str, view: View) -> Code | None:
    """Reads the number of a part or a rack place, with an order in hand."""
    if hand.area != "packing" or hand.is_free or len(text) < 2 or not text.startswith("0"):
        return None
    return next((Code(kind, text) for kind in NUMBERED if view.get(KINDS[kind], text)), None)


def read_name(text: str, view: View) -> Code | None:
    """Reads the name, or the number with letters, of something that has a card."""
    for kind in (*NAMED, *OTHERS):
        if view.get(KINDS[kind], text):
            return Code(kind, text)
    found = view.once("desk/names", _gather_names).get(_tidy(text))
    return Code(*found) if found else None


def _gather_names(view: View) -> Names:
    """Gathers the names of all that has a card."""
    names: Names = {}
    for kind in NAMED:
        for fact in view.shelf(KINDS[kind], "all", MOST):
            names.setdefault(_tidy(_name(fact)), (kind, fact.id))
    return names


def _name(fact: Fact) -> str:
    return str(getattr(fact, "name", ""))


def _tidy(name: str) -> str:
    """A rack place “C 14” is typed c14 as well."""
    return "".join(name.split()).casefold()


def takes_numbers(hand: Hand[Any]) -> bool:
    """Whether something may be picked up here by its number."""
    return hand.area in (PICKED_UP if hand.is_free else WITH_WORK)
