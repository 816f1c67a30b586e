"""The work areas of a station, in one table: whatever offers them is made from it.

That is the button and card of each, the menu “More”, the first run, ``station scan --area``,
``@area`` of the text station, the rooms that a desk is handed, and what is to be translated.
"""

from typing import NamedTuple

from station.shop.words import Say, say


class Area(NamedTuple):
    """A work area.

    Its `id` names its room's folder under `station/floor`, and is kept in histories and on PCs.
    """

    id: str
    title: Say  # over its screen, and at the first run
    number: int  # of its button and card: fixed for good, never used again
    words: Say  # on its button and card
    first: Say  # what begins work there, told to who has just signed in
    supervised: bool = False  # a supervisor's PIN opens it, until the screen is left alone


AREAS: tuple[Area, ...] = (
    Area("loading", say("Loading"), 18, say("Work at loading"),
         say("Scan the next traveller, or go on as the screen says.")),
    Area("popping", say("Popping"), 19, say("Work at popping"),
         say("Scan the slip of a sheet, or its traveller.")),
    Area("trimming", say("Trimming"), 20, say("Work at trimming"),
         say("Scan a slip or a traveller.")),
    Area("packing", say("Packing"), 21, say("Work at packing"),
         say("Scan an order, or touch it.")),
    Area("cart", say("Cart"), 22, say("Work at the cart"),
         say("Scan a cart, then its packs.")),
    Area("today", say("Shop today"), 23, say("Shop today"),
         say("Touch what needs a look, or scan any code.")),
    Area("plan", say("What to cut"), 27, say("What to cut"),
         say("Read what to cut next; a touched row tells why."), supervised=True),
    Area("office", say("Office"), 24, say("Office"),
         say("Touch a list, or what is still missing."), supervised=True),
)  # fmt: skip
ANYWHERE = "anywhere"  # the room of acts that belong to no work area
SUPERVISED = frozenset(area.id for area in AREAS if area.supervised)
BUTTON = "area_"  # and the area: the name of the button that takes a screen there


def find_first(area: str) -> Say:
    """Finds what begins work at an area; where it is none, that work is scanned."""
    return next((a.first for a in AREAS if a.id == area), say("Scan your work."))


def button_of(area: Area) -> str:
    """Names the button that takes a screen to a work area."""
    return f"{BUTTON}{area.id}"
