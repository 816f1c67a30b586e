"""What a desk keeps through a power cut: the hand, and a question not answered yet."""

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, replace

from station.shop.rooms import Do, Hand


@dataclass(frozen=True, kw_only=True)
class Waiting:
    """An act that was asked back: it is done once the answer comes.

    `asks` is ``sure``, ``supervisor``, ``pin`` or ``reason``; `code` is the scan that asked
    for it, for the same scan again means yes (a moment later: a trigger pulled twice is no answer); `args` what is known so far;
    `said` and `next` what was answered, for the screen.
    """

    do: Do
    asks: str
    code: str = ""
    args: Mapping[str, object] = field(default_factory=dict)
    approver: str = ""
    tries: int = 0
    at: str = ""
    said: str = ""
    next: str = ""


@dataclass(frozen=True, kw_only=True)
class Draft:
    """The hand and the open question; `last` is this station's newest entry, for undo."""

    hand: Hand
    waiting: Waiting | None = None
    last: str = ""

    def with_hand(self, hand: Hand) -> "Draft":
        """The same draft with another hand and no open question."""
        return replace(self, hand=hand, waiting=None)


def write(draft: Draft) -> str:
    """The draft as JSON text for the ledger's local table."""
    return json.dumps(asdict(draft), separators=(",", ":"), default=dict)


def read(text: str) -> Draft | None:
    """The draft from its text; None when there is none or an older program wrote it."""
    try:
        raw = json.loads(text)
        waiting = raw["waiting"]
        return Draft(
            hand=Hand(**raw["hand"]),
            waiting=_waiting(waiting) if waiting else None,
            last=raw["last"],
        )
    except (ValueError, TypeError, KeyError):
        return None


def _waiting(raw: dict[str, object]) -> Waiting:
    """The open question from JSON; Do is a tuple there."""
    kind, subject, args, after, numbers = raw.pop("do")  # type: ignore[misc]
    hand = Hand(**(after if isinstance(after, dict) else asdict(after)))
    return Waiting(do=Do(kind, subject, args, hand, tuple(numbers)), **raw)  # type: ignore[arg-type]
