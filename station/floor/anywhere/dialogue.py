"""Says what codes mean for what belongs to no room: opened by a button, then asked for one by one.

While one is open, `hand.aside` names it (an act kind or ``handover``) and holds what was answered
so far; the room's own work stays as it was and goes on when the dialogue closes.
"""

from dataclasses import replace

from station.floor.anywhere.acts import (
    FindParts,
    HoldBatch,
    NewCopy,
    Recount,
    ReleaseHold,
    SplitBatch,
    TakeReturn,
)
from station.floor.anywhere.finding import (
    BATCHES,
    FIND,
    HISTORY,
    LISTS,
    find_code,
    stands_on_page,
    turn_page,
)
from station.floor.anywhere.handbook import HANDBOOK, open_chapter, open_handbook
from station.floor.anywhere.returning import (
    SCANNED,
    ask_returned,
    asks_what,
    take_count,
    take_number,
    take_thing,
)
from station.floor.shared.opening import OpenPack
from station.floor.shared.recounts import RecountPlace
from station.queries.routers import list_worn_bits
from station.queries.stock import list_on_rack
from station.queries.underway import list_waiting, list_with_paper
from station.shop.acts import Args, good, question, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code, read
from station.shop.facts import Batch, Pack, Part, RackPlace
from station.shop.handbook import read_chapters
from station.shop.moves import head
from station.shop.rooms import Aside, Do, Hand, Input, Number, Took, Work
from station.shop.views import View, by_batch, by_part, total
from station.shop.words import Say, say, several

OPENS = {  # by the name of the button: a kind of act, or what only shows or asks
    "split": SplitBatch.kind,
    "found": FindParts.kind,
    "recount": Recount.kind,
    "reprint": NewCopy.kind,
    "hold": HoldBatch.kind,
    "release": ReleaseHold.kind,
    "lost_paper": "lost_paper",
    "returned": TakeReturn.kind,
    "open_pack": OpenPack.kind,
    "handover": "handover",
    "care": "care",
    "menu": "menu",
    "batches": BATCHES,
    "history": HISTORY,
    HANDBOOK: HANDBOOK,
}
OF_BATCH: dict[str, Args] = {  # what is done once the batch is known
    args.kind: args for args in (NewCopy(), HoldBatch(), ReleaseHold())
}
OF_PART = ("lost_paper", TakeReturn.kind)  # they begin with a part
BATCH_AREAS = ("loading", "popping", "trimming")


def handle_input(hand: Hand[Work], given: Input, view: View) -> Do | Took | None:
    """Takes one input for a dialogue that is open, or the button that opens one."""
    card = (
        BY_NUMBER.get(given.number) if isinstance(given, Code) and given.kind == "button" else None
    )
    if card and card.name in OPENS:
        return _open_dialogue(hand, OPENS[card.name], view)
    what = hand.aside.what
    if card and what == HANDBOOK and (done := _turn_chapter(hand, card.name)):
        return done
    turns = what in (FIND, *LISTS) or asks_what(hand)
    if card and turns and card.name in ("next_page", "back_page"):
        return turn_page(hand, 1 if card.name == "next_page" else -1)
    if card and card.name == "print_page" and what in ("", "menu", "handover"):
        return _print_page(hand, what)
    if isinstance(given, Code) and what in ("", FIND, *LISTS):
        return _look_up(hand, given, view)
    if not what:
        return None
    if what == "handover":
        return Took(close_dialogue(hand), good(say("Handover closed"), say("Scan your work.")))
    if what == "care":
        return Took(close_dialogue(hand), good(say("Back to the work"), say("Scan your work.")))
    if what == "menu":
        return None
    return _take_answer(hand, what, given, view)


def _turn_chapter(hand: Hand[Work], name: str) -> Took | None:
    """Turns to another chapter of the handbook: the next one, or the one of a row."""
    if name in ("next_page", "back_page"):
        count, by = len(read_chapters()), 1 if name == "next_page" else -1
        return open_chapter(hand, (hand.aside.page + by) % count)
    return open_chapter(hand, int(name[4:]) - 1) if name.startswith("row_") else None


def _look_up(hand: Hand[Work], code: Code, view: View) -> Took | None:
    """Looks a code up: with free hands any, on an open page what stands there."""
    what = hand.aside.what
    if what in LISTS:
        return find_code(hand, code, view) if code.kind != "button" else None
    if what == FIND:
        return find_code(hand, code, view) if stands_on_page(hand, code, view) else None
    return find_code(hand, code, view) if hand.is_free else None


def _print_page(hand: Hand[Work], what: str) -> Took:
    """Prints the pick list of the order in hand at packing, else the handover sheet."""
    after = close_dialogue(hand) if what == "menu" else hand
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


def close_dialogue(hand: Hand[Work]) -> Hand[Work]:
    """Closes the dialogue; the room's work is as it was."""
    return replace(hand, aside=Aside())


def _add_answers(
    hand: Hand[Work],
    *,
    batch: str | None = None,
    part: str | None = None,
    place: str | None = None,
) -> Hand[Work]:
    """Adds answers to what is open; what is not given stays."""
    before = hand.aside
    answered = replace(
        before,
        batch=before.batch if batch is None else batch,
        part=before.part if part is None else part,
        place=before.place if place is None else place,
    )
    return replace(hand, aside=answered)


def _open_dialogue(hand: Hand[Work], what: str, view: View) -> Do | Took:
    fresh = replace(hand, aside=Aside(what=what))
    if what == BATCHES:
        return Took(fresh, good(say("The batches"), say("Touch one to see where it is.")))
    if what == HANDBOOK:
        return open_handbook(fresh)
    if what == HISTORY:
        return Took(fresh, good(say("What was done"), say("The newest stands first.")))
    if what == "handover":
        return Took(fresh, good(*describe_handover(view)))
    if what == "care":
        first = say("Local rules and the safety lead come first.")
        return Took(fresh, good(say("Take care"), first))
    if what == "menu":
        return Took(fresh, good(say("What else?"), say("Touch it, or leave it.")))
    if what == OpenPack.kind and hand.area != "packing":
        do = say("Scan its label there, then touch “Open it again”.")
        return Took(hand, refuse(say("A pack is opened at packing"), do))
    page = read(hand.aside.code) if hand.aside.what == FIND else None
    if isinstance(page, Code):
        return _begin_from_page(fresh, what, page, view)
    if hand.area in BATCH_AREAS and hand.subject and what not in OF_PART:
        fresh = _add_answers(fresh, batch=hand.subject)
    return _ask_next(fresh, what, view)


def _begin_from_page(hand: Hand[Work], what: str, page: Code, view: View) -> Do | Took:
    """Begins a dialogue with the thing whose page was open as its first answer."""
    return _take_answer(hand, what, page, view) or _ask_next(hand, what, view)


def _take_answer(hand: Hand[Work], what: str, given: Input, view: View) -> Do | Took | None:
    """Takes one answer in: a batch, a part, a rack place or a number."""
    if isinstance(given, Code) and what == TakeReturn.kind:
        return take_thing(hand, given, view) if given.kind in SCANNED else None
    if isinstance(given, Code) and what == OpenPack.kind:
        return _open_pack(hand, given, view)
    if isinstance(given, Code):
        if given.kind == "batch" and view.get(Batch, given.number):
            return _ask_next(_add_answers(hand, batch=given.number), what, view)
        if given.kind == "part" and view.get(Part, given.number):
            return _ask_next(_add_answers(hand, part=given.number), what, view)
        rack = view.get(RackPlace, given.number) if given.kind == "rack" else None
        if rack and what == Recount.kind:
            return _choose_rack(hand, rack, view)
        return None
    if isinstance(given, Number) and asks_what(hand):
        return take_number(hand, given.text, view)
    if isinstance(given, Number) and given.whole is not None:
        return _take_number(hand, what, given.whole, view)
    if isinstance(given, Number) and hand.aside.part:
        said = say("{text} is no count", text=given.text)
        return Took(hand, refuse(said, say("Enter a whole number.")))
    return None


def _open_pack(hand: Hand[Work], given: Code, view: View) -> Do | None:
    """Opens the pack whose label it is; its order is in hand then."""
    pack = view.get(Pack, given.number) if given.kind == "pack" else None
    return Do(pack.key, OpenPack(), replace(hand.empty(), subject=pack.order)) if pack else None


def _choose_rack(hand: Hand[Work], rack: RackPlace, view: View) -> Took:
    """Chooses a rack place to recount: all that lies in it, whatever batch it is of."""
    part = view.get(Part, rack.part)
    if part is None:
        said = say("Rack {name} is no part's place", name=rack.name)
        return Took(hand, refuse(said, say("The office gives it one first.")))
    filled = _add_answers(hand, batch="", part=part.id, place=f"rack/{rack.id}")
    book = total(list_on_rack(view, part))
    return Took(
        filled,
        good(
            say("{name}: {qty} {part} by the book", name=rack.name, qty=book, part=part.name),
            say("Enter how many lie there, all batches together."),
        ),
    )


def _ask_next(hand: Hand[Work], what: str, view: View) -> Do | Took:
    """Asks for what is still missing, or does it."""
    if what == "lost_paper":
        return _ask_lost(hand, view)
    if what == TakeReturn.kind:
        return ask_returned(hand, view)
    if what == OpenPack.kind:
        do = say("Scan its label, or touch it.")
        return Took(hand, question(say("Which pack is opened again?"), do))
    batch = hand.aside.batch
    if not batch:
        return Took(hand, question(ASKS[what], say("Scan its traveller or touch its row.")))
    if what in OF_BATCH:
        return Do(f"batch/{batch}", OF_BATCH[what], close_dialogue(hand))
    parts = list_choices(hand, what, view)
    if not parts:
        return Took(
            close_dialogue(hand),
            refuse(
                say("Batch {batch} has none here", batch=batch), say("Check the batch number.")
            ),
        )
    if len(parts) == 1:
        hand = _add_answers(hand, part=next(iter(parts)))
    part = view.get(Part, hand.aside.part)
    if part is None or part.id not in parts:
        return Took(
            hand,
            question(
                say("Which part of batch {batch}?", batch=batch),
                say("Touch its row or scan its card."),
            ),
        )
    return Took(
        hand,
        question(
            say("{count} {part} there by the book", count=parts[part.id], part=part.name),
            HOW_MANY[what],
        ),
    )


ASKS: dict[str, Say] = {
    SplitBatch.kind: say("Which batch is split?"),
    FindParts.kind: say("Which batch were they missing from?"),
    Recount.kind: say("Which batch is counted again?"),
    NewCopy.kind: say("Which batch needs a new copy?"),
    HoldBatch.kind: say("Which batch is held?"),
    ReleaseHold.kind: say("Which batch may go on?"),
}
HOW_MANY: dict[str, Say] = {
    SplitBatch.kind: say("How many are split off?"),
    FindParts.kind: say("How many were found?"),
    Recount.kind: say("How many did you count?"),
}


def list_choices(hand: Hand[Work], what: str, view: View) -> dict[str, int]:
    """Lists the parts that can be chosen now, and how many the book has."""
    batch = hand.aside.batch
    if what == FindParts.kind:
        return by_part(view.stock(batch=batch, place="missing"))
    return by_part(list_with_paper(view, batch, hand.area))


def _take_number(hand: Hand[Work], what: str, count: int, view: View) -> Do | Took | None:
    batch, part = hand.aside.batch, hand.aside.part
    if head(hand.aside.place) == "rack":
        return Do(f"part/{part}", RecountPlace(part=part, counted=count), close_dialogue(hand))
    if what == TakeReturn.kind and part:
        return take_count(hand, count, view)
    if not batch or not part or what not in HOW_MANY:
        return None
    subject, area, after = f"batch/{batch}", hand.area, close_dialogue(hand)
    if what == Recount.kind:
        place = _find_place(view, batch, part, area)
        return Do(subject, Recount(part=part, place=place, counted=count), after)
    if what == FindParts.kind:
        return Do(subject, FindParts(part=part, quantity=count, area=area), after)
    return Do(subject, SplitBatch(part=part, quantity=count, area=area), after, ("batch",))


def _find_place(view: View, batch: str, part: str, area: str) -> str:
    """Finds the one place where a batch's pieces of a part lie in this area."""
    here = (*list_with_paper(view, batch, area), *list_with_paper(view, batch))
    return next((h.place for h in here if h.part == part), "")


def _ask_lost(hand: Hand[Work], view: View) -> Do | Took:
    """Asks which batches loose parts without a traveller could be of."""
    part = view.get(Part, hand.aside.part)
    if part is None:
        return Took(hand, question(say("What part lies there?"), say("Scan the part's card.")))
    found = list_candidates(view, part.id)
    batch = hand.aside.batch
    if batch in found:
        return Do(f"batch/{batch}", NewCopy(), close_dialogue(hand))
    if not found:
        return Took(
            close_dialogue(hand),
            refuse(
                say("No batch with {part} is under way", part=part.name),
                say("Show them to the supervisor."),
            ),
        )
    return Took(
        _add_answers(hand, batch=""),
        question(
            say("Batches that could be theirs: {count}", count=len(found)),
            say("Compare, then touch the right one."),
        ),
    )


def list_candidates(view: View, part: str) -> dict[str, int]:
    """Lists the batches whose pieces of a part lie at popping, trimming or rework: how many."""
    return by_batch(h for h in list_waiting(view) if h.part == part)


def describe_handover(view: View) -> tuple[Say, Say]:
    """Says what waits in each area, and which bits near their end."""
    popping, trimming = (total(list_waiting(view, area)) for area in ("popping", "trimming"))
    worn = [f"{b.id} at {share:.0%}".replace("%", " %") for b, share in list_worn_bits(view)]
    said = say("{popping} in popping, {trimming} in trimming", popping=popping, trimming=trimming)
    return said, (
        say("Bit {bits} of its life.", bits=several(worn)) if worn else say("All bits good.")
    )
