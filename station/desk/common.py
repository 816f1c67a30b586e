"""Badges, digits and the buttons that mean the same in every room: the draft they leave.

Pure: each gives the next draft and what is said. The desk holds the draft and writes it down.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, NamedTuple

from station.desk.aside import tell_by
from station.desk.draft import Draft, held
from station.desk.replies import tell_gone
from station.desk.wrong_pins import WrongPins
from station.shop.acts import Answer, good, notice, question, refuse
from station.shop.areas import find_first
from station.shop.codes import Code
from station.shop.facts import Worker
from station.shop.rooms import Aside, Hand, Room
from station.shop.views import View
from station.shop.words import Say, figure, say

LONGEST_NUMBER = 9
# Questions whose digits are not shown; one who is asked for a badge may type the PIN at once.
SECRET = ("supervisor", "pin", "new_pin")


class Replied(NamedTuple):
    """The draft after an input, and the answer to it; the wrong PINs, where these changed."""

    draft: Draft
    answer: Answer
    pins: WrongPins | None = None


def in_every_room(
    code: Code, button: str, draft: Draft, view: View, counted: Say = Say()
) -> Replied | None:
    """What a badge, a digit or one of these buttons does. None: the room must say.

    `counted` tells what was counted in the work in hand and is not recorded yet.
    """
    if code.kind == "worker":
        return badge(draft, code.number, view, counted)
    if code.kind == "digit" or button == "point":
        return digit(draft, code.number if code.kind == "digit" else ".")
    if button == "put_down" and counted and not elsewhere(draft.hand):
        return put_counted_down(draft, counted)
    simple = BUTTONS.get(button)
    return simple(draft) if simple else None


def badge(draft: Draft, number: str, view: View, counted: Say = Say()) -> Replied:
    """Who works here from now on; the work in hand stays, and what is counted in it is told."""
    worker, hand = view.get(Worker, number), draft.hand
    if worker and not worker.active:
        return Replied(draft, tell_gone(number))
    if worker is None:
        return Replied(
            draft,
            refuse(
                say("There is no worker {id}", id=number), say("Ask the supervisor for a badge.")
            ),
        )
    stays = say("What is in hand stays here.")
    if counted:
        stays = say("{counted}. Go on from there.", counted=tell_by(counted, draft.counted_by))
    after = replace(draft, hand=replace(hand, worker=number))
    if hand.worker and hand.worker != number:
        took = say("Worker {new} takes over from {old}", new=number, old=hand.worker)
        return Replied(after, good(took, stays))
    welcome = stays if hand.subject or counted else find_first(hand.area)
    return Replied(after, good(say("Worker {id} is signed in", id=number), welcome))


def digit(draft: Draft, char: str) -> Replied:
    """One more digit of a number; those of a PIN are not shown."""
    digits = (draft.hand.digits + char)[-LONGEST_NUMBER:]
    secret = draft.waiting is not None and draft.waiting.asks in SECRET
    return Replied(
        replace(draft, hand=replace(draft.hand, digits=digits)),
        question(
            say("Number: {digits}", digits="•" * len(digits) if secret else figure(digits)),
            say("Touch OK when it is complete, or scan “That is it”."),
        ),
    )


def clear(draft: Draft) -> Replied:
    """The digits so far are dropped."""
    after = replace(draft, hand=replace(draft.hand, digits=""))
    return Replied(after, good(say("Number cleared"), say("Enter it again.")))


def put_down(draft: Draft) -> Replied:
    """A dialogue that is open is left and the room's work stays; else the work is put down."""
    if elsewhere(draft.hand):
        said = say("Left; nothing was changed")
        if draft.hand.aside.subject:  # of several parts, some may have been taken
            said = say("Left; what came back so far is kept")
        return Replied(
            draft.with_hand(replace(_room_only(draft.hand), digits="")),
            good(said, say("Go on with your work.")),
        )
    return Replied(
        draft.with_hand(draft.hand.empty()),
        good(say("Left; nothing was counted"), say("Scan the next piece of work.")),
    )


def leave_question(draft: Draft) -> Replied:
    """A question that is open is left: what it was asked about is not done, the work stays."""
    after = replace(draft, waiting=None, hand=replace(draft.hand, digits=""))
    return Replied(after, good(say("Left; nothing was changed"), say("Go on with your work.")))


def put_counted_down(draft: Draft, counted: Say) -> Replied:
    """The work is put down; the desk keeps what was counted in it for the next time."""
    return Replied(
        replace(draft.with_hand(draft.hand.empty()), counted_by=()),
        good(
            say("Left; {counted} so far is kept", counted=counted),
            say("Pick it up again to go on with it."),
        ),
    )


def sign_out(draft: Draft) -> Replied:
    """Nobody works here until the next badge; the work in hand stays."""
    return Replied(
        replace(draft, hand=replace(_room_only(draft.hand), worker="", digits="")),
        good(say("Signed out; what is in hand stays here"), say("Scan or touch your badge.")),
    )


def lock(draft: Draft) -> Replied:
    """Supervisor's work asks for a PIN again; the desk forgets who had opened the office."""
    return Replied(
        draft.with_hand(draft.hand.empty()),
        good(say("The office is locked"), say("Supervisor's work asks for a PIN again.")),
    )


BUTTONS: dict[str, Callable[[Draft], Replied]] = {
    "clear": clear,
    "lock": lock,
    "put_down": put_down,
    "sign_out": sign_out,
}


def elsewhere(hand: Hand[Any]) -> bool:
    """Whether a dialogue that belongs to no room is open."""
    return bool(hand.aside.what)


def _room_only(hand: Hand[Any]) -> Hand[Any]:
    """The hand with the dialogue gone and the room's work as it was."""
    return replace(hand, aside=Aside())


def before_undo(draft: Draft, rooms: Mapping[str, Room]) -> Answer | None:
    """What must be done before undo may take the newest act back; None: nothing.

    Whoever looks at other work, or has counted since, means that and not the older act.
    """
    area = json.loads(draft.after)[0] if draft.after else draft.hand.area
    if area != draft.hand.area:
        return refuse(
            say("The newest act of this station was at {area}", area=rooms[area].title),
            say("Work there again to take it back."),
        )
    hand = _room_only(draft.hand)
    if (hand.subject or hand.has_work) and draft.after not in ("", held(hand)):
        return refuse(
            say("What is in hand is not recorded yet"),
            say("Leave it first; then undo takes the newest act back."),
        )
    return None


def greeting(draft: Draft, counted: Say = Say(), *, resumed: bool) -> Answer:
    """The first words on the strip: what was left in hand, or how to begin.

    `counted` tells what was counted in it, and by whom.
    """
    if resumed and counted:
        return notice(
            say("Work was left in hand: {what}", what=draft.hand.subject),
            say("{counted}. Go on from there.", counted=counted),
        )
    if resumed:
        return notice(
            say(
                "Work was left in hand: {what}",
                what=draft.hand.subject or Say("see above"),
            ),
            say("Go on with it, or put it down. What was recorded stands."),
        )
    if not draft.hand.worker:
        return good(say("Nobody signed in"), say("Scan your badge to begin."))
    return good(say("Ready"), find_first(draft.hand.area))
