"""A reasoned correction of a count: which spot, how many are really there.

`hand.work` holds `about` (the key of a part, a rack place, a lot or a batch) and `spot` (the
chosen row). The rule asks for a supervisor and for a reason card.
"""

from typing import NamedTuple

from station.floor.office.state import chosen, pressed, row_of
from station.queries.underway import list_waiting
from station.shop.acts import good, refuse
from station.shop.codes import Code
from station.shop.facts import Batch, Lot, Part, RackPlace
from station.shop.moves import NO_PIECES, SHEET, Held, head, tail
from station.shop.places import kind_of
from station.shop.rooms import Do, Hand, Input, Number, Took, plain_do
from station.shop.views import View
from station.shop.words import Say, say

NO_BATCH = "00000"  # pieces that lay there before the books began
MOST = 6  # spots on the screen


class Spots(NamedTuple):
    """What is counted, in words, and where it lies by the book."""

    words: Say
    held: tuple[Held, ...]


def start(hand: Hand, view: View) -> Took:
    """Opens it for what is chosen, or asks what is counted."""
    fact = chosen(hand, view)
    about = fact.key if isinstance(fact, Part | RackPlace | Lot) else ""
    if batch := hand.work.get("batch"):
        about = f"batch/{batch}"
    opened = hand.with_work(ask="count", about=about, spot=None)
    return _asked(opened, view)


def _asked(hand: Hand, view: View) -> Took:
    """Says what is asked next: what, which spot, how many."""
    found = spots(hand, view)
    if found is None:
        return Took(
            hand,
            good(
                say("What was counted?"),
                say("Scan a part, a rack place, a lot or a traveller."),
            ),
        )
    if len(found.held) == 1:
        return _spot(hand, 0, view)
    if not found.held:
        return Took(
            hand.with_work(about=""),
            refuse(say("{what}: none by the book", what=found.words), say("Scan its rack place.")),
        )
    return Took(hand, good(found.words, say("Touch the place that was counted.")))


def handle_input(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """A card that says what was counted, a row that says where, a number that says how many."""
    if isinstance(given, Number):
        return _number(hand, given, view)
    if isinstance(given, Code) and given.kind in ("part", "rack", "lot", "batch"):
        return _asked(hand.with_work(about=f"{given.kind}/{given.number}", spot=None), view)
    row = row_of(pressed(given))
    return _spot(hand, row, view) if row is not None else None


def spots(hand: Hand, view: View) -> Spots | None:
    """Where the thing in hand lies by the book; None: nothing was said yet."""
    about = str(hand.work.get("about", ""))
    kind, number = head(about), tail(about)
    if kind == "part" and (part := view.get(Part, number)):
        return Spots(say("{name}", name=part.name), _of_part(part, view)[:MOST])
    if kind == "rack" and (rack := view.get(RackPlace, number)):
        return Spots(say("Rack {name}", name=rack.name), _of_rack(rack, view)[:MOST])
    if kind == "lot" and view.get(Lot, number):
        held = view.stock(place="store", batch=number) or (Held("store", number, SHEET, 0),)
        return Spots(say("Lot {id}", id=number), held)
    if kind == "batch" and view.get(Batch, number):
        lying = (h for h in view.stock(batch=number) if h.part not in NO_PIECES)
        held = tuple(h for h in lying if kind_of(h.place).counted)
        return Spots(say("Batch {id}", id=number), held[:MOST])
    return None


def _of_rack(rack: RackPlace, view: View) -> tuple[Held, ...]:
    """By batch; a place that is empty by the book may hold pieces of no batch."""
    place = f"rack/{rack.id}"
    return view.stock(place=place) or (Held(place, NO_BATCH, rack.part, 0),)


def _of_part(part: Part, view: View) -> tuple[Held, ...]:
    """On the rack, at trimming, to be made good, at popping."""
    rack = view.get(RackPlace, part.rack)
    on_rack = _of_rack(rack, view) if rack else ()
    return tuple(h for h in (*on_rack, *list_waiting(view)) if h.part == part.id)


def spot_of(hand: Hand, view: View) -> Held | None:
    """The chosen spot."""
    found, row = spots(hand, view), hand.work.get("spot")
    if found is None or not isinstance(row, int) or row >= len(found.held):
        return None
    return found.held[row]


def _spot(hand: Hand, row: int, view: View) -> Took:
    found = spots(hand, view)
    if found is None or row >= len(found.held):
        return Took(hand, refuse(say("There is nothing in that row"), say("Touch a row.")))
    return Took(
        hand.with_work(spot=row),
        good(
            say("{n} there by the book", n=found.held[row].qty),
            say("How many did you count?"),
        ),
    )


def _number(hand: Hand, given: Number, view: View) -> Do | Took:
    spot = spot_of(hand, view)
    if spot is None:
        return Took(hand, refuse(say("Where was it counted?"), say("Touch the place first.")))
    if given.whole is None:
        return Took(
            hand, refuse(say("{text} is no count", text=given.text), say("Enter a whole number."))
        )
    args = {"part": spot.part, "place": spot.place, "batch": spot.batch, "counted": given.whole}
    after = hand.with_work(ask=None, about=None, spot=None, batch=None)
    return plain_do("correct_count", str(hand.work["about"]), args, after)
