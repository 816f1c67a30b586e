"""Asks what came back from a customer: a part, or of which pack, order or product it is.

What came back with one pack is taken part by part, for each is looked at with a paper of its own;
the pack stays open until the last of it is taken, or it is left.
"""

from dataclasses import replace

from station.floor.anywhere.acts import TakeReturn
from station.queries.returns import count_gone, find_what_left
from station.queries.stock import name_part
from station.shop.acts import Answer, question, refuse
from station.shop.codes import Code
from station.shop.facts import KINDS, Part
from station.shop.moves import head, tail
from station.shop.rooms import Aside, Do, Hand, Took, Work
from station.shop.views import View, by_part
from station.shop.words import Say, say

SCANNED = ("part", "product", "order", "pack")  # of codes that say what came back
TYPED = ("order", "pack", "part")  # of these a number may be typed as it is printed
CALLED: dict[str, Say] = {
    "product": say("product"),
    "order": say("order"),
    "pack": say("pack"),
}


def list_back(hand: Hand[Work], view: View) -> dict[str, int]:
    """Lists the parts that may come back of what is open, and how many of each."""
    subject = hand.aside.subject
    return {part: n for part, n in count_gone(view, subject).items() if n} if subject else {}


def asks_what(hand: Hand[Work]) -> bool:
    """Says whether it is still open what came back."""
    aside = hand.aside
    return aside.what == TakeReturn.kind and not aside.part and not aside.subject


def list_away(view: View) -> list[tuple[Part, int]]:
    """Lists the parts that left, by name, and how many of each are away."""
    gone = by_part(view.stock(place="shipped"))
    away = [(part, n) for name, n in gone.items() if n > 0 and (part := view.get(Part, name))]
    return sorted(away, key=lambda found: found[0].name)


def take_number(hand: Hand[Work], text: str, view: View) -> Took:
    """Takes what came back by a number that was typed: of an order, a pack or a part."""
    for kind in TYPED:
        if view.get(KINDS[kind], text):
            return take_thing(hand, Code(kind, text), view)
    said = say("This shop knows no order, pack or part {number}", number=text)
    return Took(hand, refuse(said, say("Type it as it stands on the label or the card.")))


def take_thing(hand: Hand[Work], code: Code, view: View) -> Took:
    """Takes what was scanned: a part of what is open, else what came back."""
    if code.kind == "part" and code.number in list_back(hand, view):
        return ask_returned(replace(hand, aside=replace(hand.aside, part=code.number)), view)
    if code.kind == "part" and head(hand.aside.subject) not in ("", "part"):
        return Took(hand, _refuse_other_part(hand, code, view))
    subject = find_what_left(view, f"{code.kind}/{code.number}")
    if not subject:
        return Took(hand, _refuse_unknown(code))
    opened = replace(hand, aside=replace(hand.aside, subject=subject, part=""))
    back = list_back(opened, view)
    if not back:
        return Took(hand, _refuse_nothing(subject, view))
    if len(back) == 1:
        opened = replace(opened, aside=replace(opened.aside, part=next(iter(back))))
    return ask_returned(opened, view)


def ask_returned(hand: Hand[Work], view: View) -> Took:
    """Asks what came back, which part of it, and how many of that."""
    subject, part = hand.aside.subject, view.get(Part, hand.aside.part)
    if part is None and subject:
        said = say("What came back of {what}?", what=name_subject(subject, view))
        return Took(hand, question(said, say("Scan a part's card, or touch its row.")))
    if part is None:
        do = say("Scan the pack's label or a card, touch a row, or type its number.")
        return Took(hand, question(say("What came back?"), do))
    gone = list_back(hand, view).get(part.id, 0)
    said = say("{part} came back; {n} {n|is|are} away by the book", part=part.name, n=gone)
    return Took(hand, question(said, say("How many, spoiled ones too? Trimming sorts them.")))


def name_subject(subject: str, view: View) -> Say:
    """Names what came back."""
    kind, number = head(subject), tail(subject)
    if kind == "part":
        return say("{part}", part=name_part(view, number))
    return say("{kind} {number}", kind=CALLED[kind], number=number)


def take_count(hand: Hand[Work], count: int, view: View) -> Do:
    """Takes so many of the part back; what is open stays open while more of it may come."""
    part, subject = hand.aside.part, hand.aside.subject
    back = list_back(hand, view)
    back[part] = back.get(part, 0) - count
    more = head(subject) != "part" and any(n > 0 for n in back.values())
    rest = replace(hand.aside, part="") if more else Aside()
    args = TakeReturn(quantity=count, part="" if head(subject) == "part" else part)
    return Do(subject, args, replace(hand, aside=rest), ("batch",))


def _refuse_other_part(hand: Hand[Work], code: Code, view: View) -> Answer:
    """Refuses a part that did not leave with what is open."""
    what = name_subject(hand.aside.subject, view)
    said = say("No {part} of {what} is away", part=name_part(view, code.number), what=what)
    return refuse(said, say("Scan one of its parts; or leave it, then scan this part alone."))


def _refuse_unknown(code: Code) -> Answer:
    if code.kind == "order":
        said = say("No pack of order {order} has left", order=code.number)
        return refuse(said, say("Look at the label of the pack."))
    said = say("This shop knows no {kind} {number}", kind=Say(code.kind), number=code.number)
    return refuse(said, say("Look at the card. The office enters what is new."))


def _refuse_nothing(subject: str, view: View) -> Answer:
    said = say("Nothing of {what} is away by the book", what=name_subject(subject, view))
    return refuse(said, say("Scan what it came with, or count it at its rack place."))
