"""What is said to an input that means nothing, and an answer as the text station writes it."""

import json
from collections.abc import Iterable
from typing import Any

from station.desk.by_number import takes_numbers
from station.shop.acts import Answer, good, notice, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Unread
from station.shop.moves import Move
from station.shop.rooms import Dropped, Hand, Input, Number, Point, Typed, Weighed
from station.shop.words import Say, mass, say

NOBODY = refuse(say("Nobody is signed in here"), say("Scan your badge first."))
NO_MORE_THOUGHT = notice(
    say("Looking is stopped"), say("What stands here is as old as its time says.")
)
THOUGHT_ANEW = good(say("It is looked at anew"), say("Go on here: nothing waits for it."))


def tell_gone(worker: str) -> Answer:
    """One sentence for what a worker does who does not work here."""
    return refuse(say("Worker {id} does not work here", id=worker), say("Scan your own badge."))


def unread(given: Unread) -> Answer:
    """One sentence for a text that is no code of ours."""
    if given.why == "check":
        said = say("That is no code of this shop, or was read wrong")
        do = say("Scan it again. Typed by hand, it needs its last character too.")
        return refuse(said, do)
    return refuse(say("That is no code of this shop"), say("Scan one of our cards or travellers."))


def meaningless(given: Input, hand: Hand[Any]) -> Answer:
    """A code of ours that has no meaning here and now."""
    if isinstance(given, Number) and given.whole is not None and takes_numbers(hand):
        said = say("Number {n} is not known here", n=given.text.strip())
        do = say("Type the whole number from its paper, zeros too, or scan it.")
        return refuse(said, do)
    if isinstance(given, Number):
        return refuse(say("No number is asked for now"), say("Pick up your work first."))
    if isinstance(given, Weighed):
        said = say("{g} g on the scale: nothing is weighed here now", g=mass(given.grams))
        return notice(said, say("Take an order in hand first."))
    if isinstance(given, Typed):
        return refuse(say("No text is asked for now"), say("Choose a field first."))
    if isinstance(given, Dropped):
        said = say("Files are taken in at the office")
        return refuse(said, say("Choose “{office}”, then drop it again.", office=say("Office")))
    if isinstance(given, Point):
        return notice(say("Nothing is marked on the sheet now"), say("Choose a part first."))
    if given.kind == "button":
        card = BY_NUMBER.get(given.number)
        words = Say(card.words) if card else given.number
        return refuse(
            say("“{words}” does nothing here now", words=words),
            say("Choose another.") if hand.subject else say("Pick up your work first."),
        )
    return refuse(
        say("That {kind} is not for this step", kind=Say(given.kind)),
        say("Look at the screen for what comes next."),
    )


def line(answer: Answer, entry: str | None, moves: Iterable[Move]) -> str:
    """One JSON line for the text station: level, happened, next, entry and moves."""
    return json.dumps(
        {
            "level": answer.tone,
            "happened": str(answer.said),
            "next": str(answer.do),
            "entry": entry,
            "moves": [
                {
                    "part": m.part,
                    "batch": m.frm.batch,
                    "to_batch": m.to.batch,
                    "from": m.frm.place,
                    "to": m.to.place,
                    "quantity": m.qty,
                }
                for m in moves
            ],
        },
        ensure_ascii=False,
    )
