"""Where pieces are and how they move: double-entry bookkeeping for the shop.

A spot is a place and the batch that the pieces belong to. Every count is the sum of
moves into a spot less the moves out of it; nothing appears or vanishes in between, for
each move names both ends. Counters that wear are moves too (bit metres, in millimetres).

Places are short texts, such as ``trimming`` or ``rack/014``; their kinds, and what is true of
each, stand in `station.shop.places`. Some balance the books: things come from there without
having been brought. These may go below zero; no other place ever does.
"""

from functools import lru_cache
from typing import NamedTuple

SHEET = "sheet"  # the unit moved for a whole sheet of material
WEAR = "mm"  # the unit moved for a bit's wear, in millimetres of cut
BOARD = "pass"  # the unit moved for a sheet cut through into a spoilboard
SUPPLY = "supply"  # the unit moved for a mailer, a label, a tenth of a metre of wrap
NO_PIECES = frozenset({SHEET, WEAR, BOARD, SUPPLY})  # what is moved and is no piece of a part


class Spot(NamedTuple):
    """A place and the batch whose pieces lie there; for sheets the lot, for wear the router."""

    place: str
    batch: str


class Move(NamedTuple):
    """So many of one part from one spot to another; `qty` is above zero."""

    part: str
    qty: int
    frm: Spot
    to: Spot

    def back(self) -> "Move":
        """The same move the other way."""
        return Move(self.part, self.qty, self.to, self.frm)


class Held(NamedTuple):
    """So many of one part at one spot: a line of what the view finds in stock."""

    place: str
    batch: str
    part: str
    qty: int


@lru_cache(maxsize=8192)  # a shop has far fewer places, and each move asks for two
def head(place: str) -> str:
    """The kind of a place: ``popping/4`` is ``popping``."""
    return place.partition("/")[0]


def tail(place: str) -> str:
    """What stands behind the slash: ``rack/014`` is ``014``."""
    return place.partition("/")[2]


def move(part: str, qty: int, frm: str, to: str, batch: str, to_batch: str = "") -> Move:
    """A move of one batch's pieces, or between two batches when `to_batch` is given."""
    return Move(part, qty, Spot(frm, batch), Spot(to, to_batch or batch))
