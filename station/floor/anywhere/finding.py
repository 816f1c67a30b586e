"""Answers what any code means while the hands are free: nothing changes by asking.

The page stays open (`hand.aside.what` is ``find``) until work is scanned or it is left. What
stands on the page is looked at next; every other code is the room's, as if no page were open.
"""

from dataclasses import replace

from station.queries.things import AnswerLine, Thing
from station.queries.whereabouts import find_thing
from station.shop.acts import Answer, attention, good, refuse
from station.shop.areas import AREAS
from station.shop.cards import BY_NUMBER, ZONES
from station.shop.codes import Code, Unread, read
from station.shop.facts import Batch, Pack
from station.shop.rooms import Aside, Hand, Took, Work
from station.shop.views import View
from station.shop.words import Say, say

FIND = "find"
BATCHES = "batches"
HISTORY = "history"
LISTS = (BATCHES, HISTORY)
LINES = 6  # of each list on the page


def find_code(hand: Hand[Work], code: Code, view: View) -> Took:
    """Answers what a code means; a thing gets its page."""
    if code.kind == "button":
        return Took(hand, _tell_button(code))
    if code.kind == "zone":
        said = say("{zone} of the sheet", zone=Say(ZONES.get(code.number, "")))
        return Took(hand, good(said, say("Scan it at popping, when a fault is counted.")))
    thing = find_thing(view, code, hand.now)
    if thing is None or _is_void(code, view):
        return Took(hand, _refuse_unknown(code, view))
    page = Aside(what=FIND, code=str(code))
    tell = attention if _is_opened(code, view) else good
    return Took(replace(hand, aside=page), tell(thing.said, thing.next))


def _is_opened(code: Code, view: View) -> bool:
    """Says whether it is the label of a pack that was opened again: it does not count any more."""
    pack = view.get(Pack, code.number) if code.kind == "pack" else None
    return pack is not None and pack.state == "opened"


def _is_void(code: Code, view: View) -> bool:
    batch = view.get(Batch, code.number) if code.kind == "batch" and code.copy else None
    return batch is not None and code.copy != batch.copy and not code.sheet


def _refuse_unknown(code: Code, view: View) -> Answer:
    """Refuses a thing that the shop does not know, and a paper that does not count any more."""
    batch = view.get(Batch, code.number) if code.kind == "batch" else None
    if batch:
        return refuse(
            say("Void: see copy {copy}", copy=batch.copy),
            say("Throw this paper away. Nothing was counted."),
        )
    said = say("This shop knows no {kind} {number}", kind=Say(code.kind), number=code.number)
    return refuse(said, say("Look at the card. The office enters what is new."))


def _tell_button(code: Code) -> Answer:
    """Tells what the card of a button is for."""
    card = BY_NUMBER.get(code.number)
    if card is None:
        return refuse(say("There is no such card"), say("Print the cards anew."))
    area = next((a.title for a in AREAS if a.id == card.area), Say())
    words = Say(card.words)
    if not area:
        return good(say("“{words}”: nothing to do now", words=words), say("Scan your work first."))
    said = say("“{words}” is a card of {area}", words=words, area=area)
    return good(said, say("It is used with work in hand."))


def read_page(hand: Hand[Work], view: View) -> Thing | None:
    """Reads the thing whose page is open; None once the shop does not know it any more."""
    code = read(hand.aside.code)
    return None if isinstance(code, Unread) else find_thing(view, code, hand.now)


def stands_on_page(hand: Hand[Work], code: Code, view: View) -> bool:
    """Says whether a code is of one of the lines on the page that is open."""
    thing = read_page(hand, view) if hand.aside.what == FIND else None
    if thing is None:
        return False
    shown = (*cut_lines(thing.where), *cut_lines(thing.promised), *cut_lines(thing.origin))
    return str(code) in {line.code for line in shown}


def cut_lines(lines: tuple[AnswerLine, ...]) -> tuple[AnswerLine, ...]:
    """Cuts a list to what the page has room for; its last line tells how many more there are."""
    if len(lines) <= LINES:
        return lines
    return (*lines[: LINES - 1], AnswerLine(say("{n} more", n=len(lines) - LINES + 1)))


def turn_page(hand: Hand[Work], by: int) -> Took:
    """Turns to another page of a life, of the batches or of the history."""
    page = max(0, hand.aside.page + by)
    after = replace(hand, aside=replace(hand.aside, page=page))
    return Took(after, good(say("Page {page}", page=page + 1)))
