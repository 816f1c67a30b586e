"""An act that was asked back, and what each input says to the question.

Pure: gives the act to run again with what is known now, the question as it stands after the
input, or None when the input was no answer to it.
"""

from dataclasses import replace
from datetime import datetime, timedelta
from typing import NamedTuple

from station.desk.common import Replied
from station.desk.draft import Draft, OpenQuestion
from station.desk.pin import agrees, hashed, is_easy
from station.desk.wrong_pins import WrongPins, count_minutes
from station.queries.settings import find_supervisor, find_worker
from station.shop.acts import BADGE_FIRST, Args, SetPin, add_known, question, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.rooms import Do, Input, Number
from station.shop.views import View
from station.shop.words import say

PIN_AT_ONCE = say("Enter your PIN; or another supervisor: scan your badge.")
A_MOMENT = timedelta(seconds=2)


class Again(NamedTuple):
    """The act runs again with what was asked known; `approver` gave a PIN for it."""

    waiting: OpenQuestion
    approver: str = ""


def answered(
    draft: Draft, given: Input, code: str, view: View, pins: WrongPins
) -> Again | Replied | None:
    """What an input says to the draft's open question; `code` is its text, tidied.

    `pins` are the wrong PINs at this PC so far; a reply bears them where they change.
    """
    waiting = draft.waiting
    assert waiting is not None
    if isinstance(given, Code):
        return _code(draft, waiting, given, code, view)
    if waiting.asks == "pin" and isinstance(given, Number):
        return _pin(draft, waiting, given.text, view, pins)
    if waiting.asks == "supervisor" and isinstance(given, Number):
        return _typed_supervisor(draft, waiting, given.text, view)
    if waiting.asks == "reason" and isinstance(given, Number):
        do = say("Scan or touch a reason, or leave it: then the number can be changed.")
        return Replied(draft, refuse(say("A reason is asked for, no number"), do))
    if waiting.asks == "new_pin" and isinstance(given, Number):
        return _new_pin(draft, waiting, given.text)
    return None


def _code(
    draft: Draft, waiting: OpenQuestion, given: Code, code: str, view: View
) -> Again | Replied | None:
    if waiting.asks == "sure":
        card = BY_NUMBER.get(given.number) if given.kind == "button" else None
        name = card.name if card else ""
        again = code == waiting.code and _a_moment_later(waiting.at, draft.hand.now)
        again = again and name != "enter"  # it may end another number: see `find_said_again`
        return _with(waiting, Args(sure=True)) if again or name == "yes" else None
    if waiting.asks == "reason" and given.kind == "reason":
        return _with(waiting, Args(reason=given.number))
    if waiting.asks in ("supervisor", "pin") and given.kind == "worker":
        return _approver(draft, waiting, given.number, view)
    return None


def ask_signed_in(question: OpenQuestion, worker: str, view: View) -> OpenQuestion:
    """Asks a supervisor who is signed in for the PIN at once: who it is, is known."""
    signed_in = find_supervisor(view, worker) if question.asks == "supervisor" else None
    if signed_in is None or not signed_in.pin:
        return question
    next_ = PIN_AT_ONCE if question.next == BADGE_FIRST else question.next
    return replace(question, asks="pin", approver=worker, next=next_)


def find_said_again(draft: Draft, do: Do) -> OpenQuestion | None:
    """Finds the open question that an act answers by being said again: the same number is sure."""
    waiting = draft.waiting
    if waiting is None or waiting.asks != "sure":
        return None
    same = (do.subject, do.args) == (waiting.do.subject, waiting.do.args)
    if not same or not _a_moment_later(waiting.at, draft.hand.now):
        return None
    return waiting.knowing(Args(sure=True))


def stands(waiting: OpenQuestion | None, given: Input) -> OpenQuestion | None:
    """The question after an input that was no answer: other work drops it, digits do not."""
    typing = isinstance(given, Code) and given.kind in ("button", "digit")
    return waiting if typing or isinstance(given, Number) else None


def _with(waiting: OpenQuestion, found: Args) -> Again:
    return Again(waiting.knowing(found))


def _a_moment_later(at: str, now: str) -> bool:
    """A trigger pulled twice is no second thought."""
    return not at or datetime.fromisoformat(now) - datetime.fromisoformat(at) >= A_MOMENT


def _approver(draft: Draft, waiting: OpenQuestion, number: str, view: View) -> Again | Replied:
    """The supervisor who is asked for the PIN; one who has none yet is asked for a new one."""
    worker = find_supervisor(view, number)
    if worker is None:
        return Replied(
            draft,
            refuse(
                say("Worker {id} is no supervisor", id=number),
                say("A supervisor's badge, or put it down."),
            ),
        )
    if not worker.pin:
        setting = Do(worker.key, SetPin(), draft.hand)
        known = waiting.knowing(Args(approved=number)).known
        then = waiting.do._replace(args=add_known(waiting.do.args, known))
        return Again(OpenQuestion(do=setting, asks="new_pin", then=then))
    return Replied(
        replace(draft, waiting=replace(waiting, asks="pin", approver=number)),
        question(say("Supervisor {id}", id=number), say("Enter your PIN.")),
    )


def _typed_supervisor(
    draft: Draft, waiting: OpenQuestion, text: str, view: View
) -> Again | Replied:
    """The supervisor whose number is typed where a badge is asked for."""
    if find_worker(view, text) is None:  # perhaps a PIN: it is not said back
        do = say("Scan a badge, touch it, or type its number; the PIN comes after.")
        return Replied(draft, refuse(say("No worker has that number"), do))
    return _approver(draft, waiting, text, view)


def _pin(
    draft: Draft, waiting: OpenQuestion, text: str, view: View, pins: WrongPins
) -> Again | Replied:
    """Compares a PIN, unless too many were wrong lately: then none is compared for a while."""
    now = draft.hand.now
    if left := pins.find_wait(now):
        do = say("Wait {m} min, then enter it.", m=count_minutes(left))
        answer = refuse(say("Too many wrong PINs"), do)
        return Replied(draft, answer, pins.start_waiting(now))
    worker = find_supervisor(view, waiting.approver)
    if worker and agrees(worker.pin, text):
        return _with(waiting, Args(approved=worker.id))._replace(approver=worker.id)
    wrong, said = pins.count_wrong(now), say("That PIN is not right")
    wait = wrong.find_wait(now)
    if not wait:
        return Replied(draft, refuse(said, say("Enter it again.")), wrong)
    # The question stays: what is typed next is no PIN in the form behind it.
    do = say("Wait {m} min, then enter it.", m=count_minutes(wait))
    return Replied(draft, refuse(said, do), wrong)


def _new_pin(draft: Draft, waiting: OpenQuestion, text: str) -> Again | Replied:
    """A new PIN, then the same once more; only its hash is kept."""
    setting = waiting.do.args
    if isinstance(setting, SetPin) and setting.hash:
        if agrees(setting.hash, text):
            return Again(waiting)
        forgotten = waiting.do._replace(args=SetPin())
        return Replied(
            replace(draft, waiting=replace(waiting, do=forgotten)),
            refuse(say("The two are not the same"), say("Enter the new PIN again.")),
        )
    if text.isdecimal() and is_easy(text):
        do = say("Enter digits that do not follow each other.")
        return Replied(draft, refuse(say("Anybody guesses that PIN"), do))
    try:
        once = waiting.do._replace(args=SetPin(hash=hashed(text)))
    except ValueError:
        return Replied(draft, refuse(say("A PIN has 4 to 8 digits"), say("Enter another.")))
    return Replied(
        replace(draft, waiting=replace(waiting, do=once)),
        question(say("Once more"), say("Enter the same PIN again.")),
    )
