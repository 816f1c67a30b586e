"""The kinds of place, and what is true of each: the one table of them.

A place is a short text, a kind and often a number behind a slash: ``rack/014``. What moves
between places is told in `station.shop.moves`.
"""

from functools import lru_cache
from typing import NamedTuple

from station.shop.moves import head, tail
from station.shop.words import Say, say


class PlaceKind(NamedTuple):
    """What is true of every place of one kind.

    words: for a person; ``{number}`` is what stands behind the slash. Without it a place of
        this kind is a whole one: there is one of them.
    area: the work area where work waits on what lies there; empty: none does.
    paper: a batch's pieces lie there with its traveller.
    before_rack: pieces there may still come onto the rack, found ones too.
    good: pieces that were counted good go there.
    onward: pieces go on there, which those of a held batch may not.
    reason: what stands behind its slash is why pieces ended there.
    counted: what lies there may be counted again in the office.
    balances: it balances the books: things come from there without having been brought, so
        it may go below zero. No other place ever does.
    """

    words: Say
    area: str = ""
    paper: bool = False
    before_rack: bool = False
    good: bool = False
    onward: bool = False
    reason: bool = False
    counted: bool = False
    balances: bool = False

    @property
    def whole(self) -> bool:
        """Whether there is one place of this kind, without a number."""
        return "{number}" not in self.words.template


KINDS: dict[str, PlaceKind] = {
    # sheets
    "store": PlaceKind(say("sheet store"), counted=True),
    "bed": PlaceKind(say("bed of router {number}")),
    "between": PlaceKind(say("between two runs")),
    # pieces on their way
    "popping": PlaceKind(
        say("popping, sheet {number}"), area="popping", paper=True, before_rack=True, counted=True
    ),
    "trimming": PlaceKind(
        say("trimming"),
        area="trimming",
        paper=True,
        before_rack=True,
        good=True,
        onward=True,
        counted=True,
    ),
    "rework": PlaceKind(
        say("rework"), area="trimming", paper=True, before_rack=True, counted=True
    ),
    "held": PlaceKind(say("kept apart"), paper=True, before_rack=True, counted=True),
    "rack": PlaceKind(say("rack {number}"), good=True, onward=True, counted=True),
    "packing": PlaceKind(say("open pack of order {number}"), good=True, onward=True),
    "pack": PlaceKind(say("pack {number}"), onward=True),
    "cart": PlaceKind(say("cart {number}"), onward=True),
    "shipped": PlaceKind(say("shipped"), onward=True),
    "supplies": PlaceKind(say("packing supplies")),
    # what wears
    "bit": PlaceKind(say("bit {number}")),
    "spoilboard": PlaceKind(say("spoilboard of router {number}")),
    # where things come from or end
    "cut": PlaceKind(say("cut"), balances=True),
    "bought": PlaceKind(say("bought"), balances=True),
    "wear": PlaceKind(say("wear"), balances=True),
    "found": PlaceKind(say("found"), balances=True),
    "recount": PlaceKind(say("counted again"), balances=True),
    "used": PlaceKind(say("used up")),
    "spoiled": PlaceKind(say("spoiled ({number})"), reason=True),
    "missing": PlaceKind(say("missing"), before_rack=True),
}
UNKNOWN = PlaceKind(Say())  # written by another program
BALANCING = frozenset(name for name, kind in KINDS.items() if kind.balances)


def kind_of(place: str) -> PlaceKind:
    """Gives the kind of a place."""
    return KINDS.get(head(place), UNKNOWN)


@lru_cache(maxsize=8192)  # as `head`: each move from where things come from asks it
def balances(place: str) -> bool:
    """Says whether a place balances the books and so may go below zero."""
    return head(place) in BALANCING


def find_reason_of(place: str) -> str:
    """Finds why pieces ended at a place, as its name says it; else nothing."""
    return tail(place) if kind_of(place).reason else ""


def areas_of(area: str) -> tuple[str, ...]:
    """Gives the kinds of place whose work waits in a work area."""
    return tuple(name for name, kind in KINDS.items() if kind.area == area)


def place_words(place: str) -> Say:
    """Gives a place in words for a person."""
    kind = kind_of(place)
    if kind is UNKNOWN or kind.whole == bool(tail(place)):
        return say("{place}", place=place)
    return kind.words._replace(values={"number": tail(place)} if tail(place) else {})
