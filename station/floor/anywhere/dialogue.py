"""The dialogues that belong to no room: opened by a button, then asked for one thing each.

While one is open, `hand.aside` names it (an act kind or ``handover``) and holds what was answered
so far; the room's own work stays as it was and goes on when the dialogue closes.
"""

from dataclasses import replace

from station.queries.routers import list_worn_bits
from station.queries.underway import list_waiting, list_with_paper
from station.shop.acts import good, notice, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.facts import Batch, Part, RackPlace
from station.shop.rooms import Aside, Do, Hand, Input, Number, Took, plain_do
from station.shop.views import View, by_batch, by_part, total
from station.shop.words import Say, say, several

OPENS = {
    "split": "split_batch",
    "found": "find_parts",
    "recount": "recount",
    "reprint": "new_copy",
    "hold": "hold_batch",
    "release": "release_hold",
    "lost_paper": "lost_paper",
    "handover": "handover",
    "menu": "menu",
}
BATCH_AREAS = ("loading", "popping", "trimming")


def handle_input(hand: Hand, given: Input, view: View) -> Do | Took | None:
    """One input for a dialogue that is open, or the button that opens one."""
    card = (
        BY_NUMBER.get(given.number) if isinstance(given, Code) and given.kind == "button" else None
    )
    if card and card.name in OPENS:
        return _open(hand, OPENS[card.name], view)
    what = hand.aside.what
    if card and card.name == "print_page" and what in ("", "menu", "handover"):
        return _printed(hand, what)
    if not what:
        return None
    if what == "handover":
        return Took(close(hand), good(say("Handover closed"), say("Scan your work.")))
    if what == "menu":
        return None
    return _fill(hand, what, given, view)


def _printed(hand: Hand, what: str) -> Took:
    """The pick list of the order in hand at packing, else the handover sheet."""
    after = close(hand) if what == "menu" else hand
    if hand.area == "packing" and hand.subject and what != "handover":
        printed = good(
            say("The pick list of order {order} is printed", order=hand.subject),
            say("Take it along the rack; scan each part there."),
            prints=(("pick_list", hand.subject),),
        )
        return Took(after, printed)
    printed = good(
        say("The handover sheet is printed"),
        say("Sign it, both of you."),
        prints=(("handover", hand.worker),),
    )
    return Took(after, printed)


def close(hand: Hand) -> Hand:
    """The hand with the dialogue gone and the room's work as it was."""
    return replace(hand, aside=Aside())


def _answered(hand: Hand, **answers: str) -> Hand:
    """The hand with more of the dialogue answered."""
    return replace(hand, aside=replace(hand.aside, **answers))


def _open(hand: Hand, what: str, view: View) -> Do | Took:
    fresh = replace(hand, aside=Aside(what=what))
    if what == "handover":
        return Took(fresh, good(*handover(view)))
    if what == "menu":
        return Took(fresh, good(say("What else?"), say("Touch it, or leave it.")))
    if hand.area in BATCH_AREAS and hand.subject and what != "lost_paper":
        fresh = _answered(fresh, batch=hand.subject)
    return _go_on(fresh, what, view)


def _fill(hand: Hand, what: str, given: Input, view: View) -> Do | Took | None:
    """Takes one answer in: a batch, a part, a rack place or a number."""
    if isinstance(given, Code):
        if given.kind == "batch" and view.get(Batch, given.number):
            return _go_on(_answered(hand, batch=given.number), what, view)
        if given.kind == "part" and view.get(Part, given.number):
            return _go_on(_answered(hand, part=given.number), what, view)
        rack = view.get(RackPlace, given.number) if given.kind == "rack" else None
        if rack and what == "recount":
            return _rack(hand, rack, view)
        return None
    if isinstance(given, Number) and given.whole is not None:
        return _number(hand, what, given.whole, view)
    return None


def _rack(hand: Hand, rack: RackPlace, view: View) -> Took:
    """A recount of a rack place is booked on its oldest batch."""
    lying = view.stock(place=f"rack/{rack.id}")
    if not lying:
        return Took(
            hand,
            refuse(
                say("Nothing lies in {name} by the book", name=rack.name),
                say("Correct it in the office."),
            ),
        )
    oldest = lying[0]
    filled = _answered(hand, batch=oldest.batch, part=oldest.part, place=oldest.place)
    return Took(
        filled,
        good(
            say(
                "{name}: batch {batch}, {qty} by the book",
                name=rack.name,
                batch=oldest.batch,
                qty=oldest.qty,
            ),
            say("Enter how many of that batch are there."),
        ),
    )


def _go_on(hand: Hand, what: str, view: View) -> Do | Took:
    """Asks for what is still missing, or does it."""
    if what == "lost_paper":
        return _lost(hand, view)
    batch = hand.aside.batch
    if not batch:
        return Took(hand, notice(ASKS[what], say("Scan its traveller or touch its row.")))
    if what in ("new_copy", "hold_batch", "release_hold"):
        return plain_do(what, f"batch/{batch}", {}, close(hand))
    parts = choices(hand, what, view)
    if not parts:
        return Took(
            close(hand),
            refuse(
                say("Batch {batch} has none here", batch=batch), say("Check the batch number.")
            ),
        )
    if len(parts) == 1:
        hand = _answered(hand, part=next(iter(parts)))
    part = view.get(Part, hand.aside.part)
    if part is None or part.id not in parts:
        return Took(
            hand,
            notice(
                say("Which part of batch {batch}?", batch=batch),
                say("Touch its row or scan its card."),
            ),
        )
    return Took(
        hand,
        notice(
            say("{count} {part} there by the book", count=parts[part.id], part=part.name),
            HOW_MANY[what],
        ),
    )


ASKS: dict[str, Say] = {
    "split_batch": say("Which batch is split?"),
    "find_parts": say("Which batch were they missing from?"),
    "recount": say("Which batch is counted again?"),
    "new_copy": say("Which batch needs a new copy?"),
    "hold_batch": say("Which batch is held?"),
    "release_hold": say("Which batch may go on?"),
}
HOW_MANY: dict[str, Say] = {
    "split_batch": say("How many are split off?"),
    "find_parts": say("How many were found?"),
    "recount": say("How many did you count?"),
}


def choices(hand: Hand, what: str, view: View) -> dict[str, int]:
    """The parts that can be chosen now, and how many the book has."""
    batch = hand.aside.batch
    if what == "find_parts":
        return by_part(view.stock(batch=batch, place="missing"))
    return by_part(list_with_paper(view, batch, hand.area))


def _number(hand: Hand, what: str, count: int, view: View) -> Do | Took | None:
    batch, part = hand.aside.batch, hand.aside.part
    if not batch or not part or what not in HOW_MANY:
        return None
    subject, area = f"batch/{batch}", hand.area
    if what == "recount":
        place = hand.aside.place or _place(view, batch, part, area)
        found = {"part": part, "place": place, "counted": count}
        return plain_do(what, subject, found, close(hand))
    args = {"part": part, "quantity": count, "area": area}
    numbers = ("batch",) if what == "split_batch" else ()
    after = close(hand)
    return plain_do(what, subject, args, after, numbers)


def _place(view: View, batch: str, part: str, area: str) -> str:
    """The one place where a batch's pieces of a part lie in this area."""
    here = (*list_with_paper(view, batch, area), *list_with_paper(view, batch))
    return next((h.place for h in here if h.part == part), "")


def _lost(hand: Hand, view: View) -> Do | Took:
    """Loose parts without a traveller: which batches could be theirs."""
    part = view.get(Part, hand.aside.part)
    if part is None:
        return Took(hand, notice(say("What part lies there?"), say("Scan the part's card.")))
    found = candidates(view, part.id)
    batch = hand.aside.batch
    if batch in found:
        return plain_do("new_copy", f"batch/{batch}", {}, close(hand))
    if not found:
        return Took(
            close(hand),
            refuse(
                say("No batch with {part} is under way", part=part.name),
                say("Show them to the supervisor."),
            ),
        )
    return Took(
        _answered(hand, batch=""),
        notice(
            say("Batches that could be theirs: {count}", count=len(found)),
            say("Compare, then touch the right one."),
        ),
    )


def candidates(view: View, part: str) -> dict[str, int]:
    """Batches whose pieces of a part lie at popping, trimming or rework: how many."""
    return by_batch(h for h in list_waiting(view) if h.part == part)


def handover(view: View) -> tuple[Say, Say]:
    """What waits in each area, and bits that near their end."""
    popping, trimming = (total(list_waiting(view, area)) for area in ("popping", "trimming"))
    worn = [f"{b.id} at {share:.0%}".replace("%", " %") for b, share in list_worn_bits(view)]
    said = say("{popping} in popping, {trimming} in trimming", popping=popping, trimming=trimming)
    return said, (
        say("Bit {bits} of its life.", bits=several(worn)) if worn else say("All bits good.")
    )
