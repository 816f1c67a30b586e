"""What a desk keeps through a power cut: the hand, and a question not answered yet."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

import msgspec

from station.ledger.codec import lay_say, lift_say
from station.shop.rooms import Do, Hand
from station.shop.words import Say

SENTENCES = ("said", "next")  # of a question; kept with their values, to be translated


@dataclass(frozen=True, kw_only=True)
class Waiting:
    """An act that was asked back: it is done once the answer comes.

    `asks` is ``sure``, ``supervisor``, ``pin`` or ``reason``. `code` is the scan that asked,
    `at` when: the same scan again means yes, but a trigger pulled twice within a moment is
    no answer. `args` is what is known so far; `said` and `next` stand on the screen. `then` is
    the approved act that goes on once the PIN it asked for is chosen.
    """

    do: Do
    asks: str
    code: str = ""
    args: Mapping[str, object] = field(default_factory=dict)
    approver: str = ""
    tries: int = 0
    at: str = ""
    said: Say = Say()
    next: Say = Say()
    then: Do | None = None


@dataclass(frozen=True, kw_only=True)
class Draft:
    """The hand and the open question.

    `last` is this station's newest entry, for undo, and `after` what was held when it was
    made: where more is held now, or the station stands elsewhere, undo asks for that first.
    """

    hand: Hand
    waiting: Waiting | None = None
    last: str = ""
    after: str = ""

    def with_hand(self, hand: Hand) -> "Draft":
        """The same draft with another hand and no open question."""
        return replace(self, hand=hand, waiting=None)


def held(hand: Hand) -> str:
    """Area, subject and the room's own work, as text."""
    work = {k: v for k, v in hand.work.items() if not k.startswith("any")}
    return json.dumps([hand.area, hand.subject, work], sort_keys=True, default=dict)


def write(draft: Draft) -> str:
    """The draft as JSON text for the ledger's local table."""
    raw = msgspec.to_builtins(draft, enc_hook=dict)
    if draft.waiting:
        raw["waiting"] |= {n: lay_say(getattr(draft.waiting, n)) for n in SENTENCES}
    return msgspec.json.encode(raw).decode()


def read(text: str) -> Draft | None:
    """The draft from its text; None when there is none or an older program wrote it."""
    try:
        raw = json.loads(text)
        waiting = raw["waiting"]
        return Draft(
            hand=Hand(**raw["hand"]),
            waiting=_waiting(waiting) if waiting else None,
            last=raw["last"],
            after=raw["after"],
        )
    except (ValueError, TypeError, KeyError):
        return None


def _waiting(raw: dict[str, Any]) -> Waiting:
    """The open question from JSON; Do is a list there."""
    do, then = raw.pop("do"), raw.pop("then", None)
    raw |= {name: lift_say(raw[name]) for name in SENTENCES}
    return Waiting(do=_do(do), then=_do(then) if then else None, **raw)


def _do(raw: list[Any]) -> Do:
    kind, subject, args, after, numbers = raw
    return Do(kind, subject, args, Hand(**after), tuple(numbers))
