"""A reasoned correction of a count: which spot, how many are really there.

A rack place is counted as a whole, as on the floor; the rules ask what they ask there.
"""

from dataclasses import replace
from typing import NamedTuple

from station.floor.office.acts import CorrectCount
from station.floor.office.lists import (
    find_chosen,
    list_cards,
    make_face,
    name_fact,
    name_press,
    read_row,
)
from station.floor.office.work import Counting, OfficeHand
from station.floor.shared.no_row import NO_ROW
from station.floor.shared.recounts import RecountPlace
from station.queries.stock import list_on_rack, name_place
from station.queries.underway import list_waiting
from station.shop.acts import good, refuse
from station.shop.cards import button
from station.shop.codes import Code
from station.shop.faces import Asked, Cell, Face, Hint, Row, Table
from station.shop.facts import Batch, Lot, Part, RackPlace
from station.shop.moves import NO_PIECES, SHEET, Held, head, tail
from station.shop.places import kind_of
from station.shop.rooms import Do, Input, Number, Took
from station.shop.views import View, total
from station.shop.words import Say, say

MOST = 6  # spots on the screen


class Spots(NamedTuple):
    """Tells what is counted, in words, and where it lies by the book."""

    words: Say
    held: tuple[Held, ...]


def ask_count(hand: OfficeHand, view: View) -> Took:
    """Asks for a new count of what is chosen, or what is counted."""
    fact = find_chosen(hand, view)
    about = fact.key if isinstance(fact, Part | RackPlace | Lot) else ""
    if hand.work.batch:
        about = f"batch/{hand.work.batch}"
    return _ask_next(_hold(hand, Counting(about=about)), view)


def _hold(hand: OfficeHand, counting: Counting) -> OfficeHand:
    return replace(hand, work=replace(hand.work, ask="count", counting=counting))


def _ask_next(hand: OfficeHand, view: View) -> Took:
    """Asks what is still missing: what, which spot, how many."""
    found = find_spots(hand, view)
    if found is None:
        do = say("Scan a part, a rack place, a lot or a traveller.")
        return Took(hand, good(say("What was counted?"), do))
    if len(found.held) == 1:
        return _choose_spot(hand, 0, view)
    if not found.held:
        return Took(
            _hold(hand, replace(hand.work.counting, about="")),
            refuse(say("{what}: none by the book", what=found.words), say("Scan its rack place.")),
        )
    return Took(hand, good(found.words, say("Touch the place that was counted.")))


def handle_input(hand: OfficeHand, given: Input, view: View) -> Do | Took | None:
    """Takes a card that says what, a row that says where, a number that says how many."""
    if isinstance(given, Number):
        return _take_number(hand, given, view)
    if isinstance(given, Code) and given.kind in ("part", "rack", "lot", "batch"):
        return _ask_next(_hold(hand, Counting(about=f"{given.kind}/{given.number}")), view)
    row = read_row(name_press(given))
    return _choose_spot(hand, row, view) if row is not None else None


def find_spots(hand: OfficeHand, view: View) -> Spots | None:
    """Finds where the thing in hand lies by the book; None: nothing was said yet."""
    kind, number = head(hand.work.counting.about), tail(hand.work.counting.about)
    if kind == "part" and (part := view.get(Part, number)):
        return Spots(say("{name}", name=part.name), _list_of_part(part, view)[:MOST])
    if kind == "rack" and (rack := view.get(RackPlace, number)):
        return Spots(say("Rack {name}", name=rack.name), _list_of_rack(rack, view)[:MOST])
    if kind == "lot" and view.get(Lot, number):
        held = view.stock(place="store", batch=number) or (Held("store", number, SHEET, 0),)
        return Spots(say("Lot {id}", id=number), held)
    if kind == "batch" and view.get(Batch, number):
        lying = (h for h in view.stock(batch=number) if h.part not in NO_PIECES)
        held = tuple(h for h in lying if kind_of(h.place).counted)
        return Spots(say("Batch {id}", id=number), held[:MOST])
    return None


def _list_of_rack(rack: RackPlace, view: View) -> tuple[Held, ...]:
    """Lists a rack place: its part as a whole, what else the book has there by batch."""
    part = view.get(Part, rack.part)
    lying = view.stock(place=f"rack/{rack.id}")
    if part is None or part.rack != rack.id:
        return lying
    whole = Held(f"rack/{rack.id}", "", part.id, total(list_on_rack(view, part)))
    return (whole, *(h for h in lying if h.part != part.id))


def _list_of_part(part: Part, view: View) -> tuple[Held, ...]:
    """Lists what lies on the rack, at trimming, to be made good, at popping."""
    rack = view.get(RackPlace, part.rack)
    on_rack = _list_of_rack(rack, view) if rack else ()
    return tuple(h for h in (*on_rack, *list_waiting(view)) if h.part == part.id)


def find_spot(hand: OfficeHand, view: View) -> Held | None:
    """Finds the chosen spot."""
    found, row = find_spots(hand, view), hand.work.counting.spot
    return found.held[row] if found and row is not None and row < len(found.held) else None


def _choose_spot(hand: OfficeHand, row: int, view: View) -> Took:
    found = find_spots(hand, view)
    if found is None or row >= len(found.held):
        return Took(hand, NO_ROW)
    return Took(
        _hold(hand, replace(hand.work.counting, spot=row)),
        good(say("{n} there by the book", n=found.held[row].qty), say("How many did you count?")),
    )


def _take_number(hand: OfficeHand, given: Number, view: View) -> Do | Took:
    spot = find_spot(hand, view)
    if spot is None:
        return Took(hand, refuse(say("Where was it counted?"), say("Touch the place first.")))
    if given.whole is None:
        return Took(
            hand, refuse(say("{text} is no count", text=given.text), say("Enter a whole number."))
        )
    after = replace(hand, work=replace(hand.work, ask="", counting=Counting(), batch=""))
    if not spot.batch:  # a rack place, counted as a whole
        return Do(f"part/{spot.part}", RecountPlace(part=spot.part, counted=given.whole), after)
    args = CorrectCount(part=spot.part, place=spot.place, batch=spot.batch, counted=given.whole)
    return Do(hand.work.counting.about, args, after)


# --- its screen


def show_count(hand: OfficeHand, view: View) -> Face:
    """Shows where the thing lies by the book; then asks for the number that was counted."""
    found, spot = find_spots(hand, view), find_spot(hand, view)
    if found is None:
        note = say("Scan a part, a rack place, a lot or a traveller; or touch a part.")
        hint = Hint(title=say("What was counted?"), note=note)
        return make_face(hand, hint, list_cards(Part, view))
    rows = tuple(
        Row(
            title=name_place(view, held.place),
            note=_say_whose(view, held),
            cells=(Cell(text=say("{n}", n=held.qty), bold=True),),
            code=button(f"row_{n}"),
            selected=held == spot,
        )
        for n, held in enumerate(found.held, 1)
    )
    table = Table(columns=(say("place"), say("by the book")), rows=rows, title=found.words)
    if spot is None:
        return make_face(hand, table)
    pad = Asked(question=say("How many did you count?"), typed=hand.digits)
    note = say("Who counted and why is kept; a supervisor sees it under Needs a look.")
    hint = Hint(title=say("The book is set right"), note=note)
    return make_face(hand, table, side=(pad, hint))


def _say_whose(view: View, held: Held) -> Say:
    if head(held.place) == "store":
        return say("sheets of this lot")
    if not held.batch:
        return say("{part}, all batches together", part=name_fact(Part, held.part, view))
    return say("{part}, batch {batch}", part=name_fact(Part, held.part, view), batch=held.batch)
