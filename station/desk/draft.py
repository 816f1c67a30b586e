"""What a desk keeps through a power cut: the hand, an open question, and counts laid aside."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from typing import Any

import msgspec

from station.ledger.codec import lay_say, lift_say
from station.shop.acts import Args, add_known, plain_of
from station.shop.rooms import Aside, Do, Hand, Room, Work
from station.shop.words import Say

# of a hand, besides its work and what is open beside it
KEPT = ("area", "router", "facing", "bench", "worker", "station", "subject", "digits")


@dataclass(frozen=True, kw_only=True)
class OpenQuestion:
    """An act that was asked back: it is done once the answer comes.

    `asks` is ``sure``, ``supervisor``, ``pin`` or ``reason``. `code` is the scan that asked,
    `at` when: the same scan again means yes, but a trigger pulled twice within a moment is
    no answer. `known` is what was found out so far; `said` and `next` stand on the screen. `then`
    is the approved act that goes on once the PIN it asked for is chosen. `uses` are those that a
    reason may have; none: any that an act commonly asks for.
    """

    do: Do
    asks: str
    code: str = ""
    known: Args = Args()
    approver: str = ""
    at: str = ""
    said: Say = Say()
    next: Say = Say()
    then: Do | None = None
    uses: tuple[str, ...] = ()

    def knowing(self, found: Args) -> "OpenQuestion":
        """The same act with more known."""
        return replace(self, known=add_known(self.known, found))


@dataclass(frozen=True, kw_only=True)
class LaidAside:
    """Work in which something was counted, left for other work; `by` are who counted.

    `comes_back`: as soon as its area is shown again, for only the area was left; else when its
    paper is picked up again.
    """

    hand: Hand[Any]
    by: tuple[str, ...] = ()
    comes_back: bool = False


@dataclass(frozen=True, kw_only=True)
class Draft:
    """The hand and the open question.

    `last` is this station's newest entry, for undo, and `after` what was held when it was
    made, or given back: where more is held now, or the station stands elsewhere, undo asks for
    that first. `depth` is how many acts can be taken back one by one (`desk/steps.py`).
    `counted_by` are the workers who counted what is in hand, `aside` what else was counted here.
    `spare` are numbers taken for acts that were not recorded, by kind: the next act has them.
    """

    hand: Hand[Any]
    waiting: OpenQuestion | None = None
    last: str = ""
    after: str = ""
    depth: int = 0
    counted_by: tuple[str, ...] = ()
    aside: tuple[LaidAside, ...] = ()
    spare: tuple[tuple[str, str], ...] = ()

    def with_hand(self, hand: Hand[Any]) -> "Draft":
        """The same draft with another hand and no open question."""
        return replace(self, hand=hand, waiting=None)


def held(hand: Hand[Any]) -> str:
    """Area, subject and the room's own work, as text."""
    return json.dumps([hand.area, hand.subject, _lay(hand.work)], sort_keys=True)


def write(draft: Draft) -> str:
    """The draft as JSON text for the ledger's local table."""
    waiting = draft.waiting
    raw = {
        "hand": _lay_hand(draft.hand),
        "waiting": _lay_waiting(waiting) if waiting else None,
        "last": draft.last,
        "after": draft.after,
        "depth": draft.depth,
        "counted_by": draft.counted_by,
        "aside": [[_lay_hand(a.hand), a.by, a.comes_back] for a in draft.aside],
        **({"spare": draft.spare} if draft.spare else {}),
    }
    return msgspec.json.encode(raw).decode()


def write_hand(hand: Hand[Any]) -> str:
    """A hand as JSON text, without what holds for this moment only."""
    return msgspec.json.encode(_lay_hand(hand)).decode()


def read_hand(text: str, rooms: Mapping[str, Room]) -> Hand[Any]:
    """Reads a hand that `write_hand` wrote, maybe in an older program."""
    return _Reading(rooms).hand(json.loads(text))


def _lay_waiting(waiting: OpenQuestion) -> dict[str, object]:
    return {
        "do": _lay_do(waiting.do),
        "asks": waiting.asks,
        "code": waiting.code,
        "args": plain_of(waiting.known),
        "approver": waiting.approver,
        "at": waiting.at,
        "said": lay_say(waiting.said),
        "next": lay_say(waiting.next),
        "then": _lay_do(waiting.then) if waiting.then else None,
        "uses": waiting.uses,
    }


def _lay_do(do: Do) -> list[object]:
    return [do.kind, do.subject, dict(plain_of(do.args)), _lay_hand(do.after), do.numbers]


def _lay_hand(hand: Hand[Any]) -> dict[str, object]:
    """The hand without what holds for this moment only."""
    plain = {name: getattr(hand, name) for name in KEPT}
    aside = {"aside": _lay(hand.aside)} if hand.aside.what else {}
    return {**plain, "work": _lay(hand.work), **aside}


def _lay(value: Work | Aside) -> dict[str, object]:
    """Work as plain values; what stands at its default is left out."""
    bare = type(value)()
    names = [f.name for f in fields(value) if getattr(value, f.name) != getattr(bare, f.name)]
    return {name: msgspec.to_builtins(getattr(value, name)) for name in names}


def read(text: str, rooms: Mapping[str, Room]) -> Draft | None:
    """The draft from its text; None when there is none, or it cannot be read."""
    try:
        raw = json.loads(text)
        reading = _Reading(rooms)
        return Draft(
            hand=reading.hand(raw["hand"]),
            waiting=reading.question(raw["waiting"]),
            last=raw["last"],
            after=reading.held(raw["after"]),
            depth=raw.get("depth", 0),
            counted_by=tuple(raw.get("counted_by", ())),
            aside=tuple(
                LaidAside(hand=reading.hand(hand), by=tuple(by), comes_back=back)
                for hand, by, back in raw.get("aside", ())
            ),
            spare=tuple((kind, number) for kind, number in raw.get("spare", ())),
        )
    except (ValueError, TypeError, KeyError, AttributeError):
        return None


class _Reading:
    """Drafts as this program and older ones wrote them, read for the rooms of today."""

    def __init__(self, rooms: Mapping[str, Room]) -> None:
        self._rooms = rooms
        self._rules = {k: rule for room in rooms.values() for k, rule in room.rules.items()}

    def question(self, raw: dict[str, Any] | None) -> OpenQuestion | None:
        """The open question; one about an act that this program does not know is dropped."""
        try:
            return self._question(raw) if raw else None
        except (KeyError, msgspec.ValidationError):
            return None

    def _question(self, raw: dict[str, Any]) -> OpenQuestion:
        known, then = raw["args"], raw.get("then")
        kind, subject, args, after, numbers = raw["do"]
        if "hash" in known:  # once the first entry of a new PIN stood here
            args = {**args, "hash": known["hash"]}
        return OpenQuestion(
            do=self._do([kind, subject, args, after, numbers]),
            asks=raw["asks"],
            code=raw["code"],
            known=msgspec.convert(known, Args),
            approver=raw["approver"],
            at=raw["at"],
            said=lift_say(raw["said"]),
            next=lift_say(raw["next"]),
            then=self._do(then) if then else None,
            uses=tuple(raw.get("uses", ())),
        )

    def _do(self, raw: list[Any]) -> Do:
        kind, subject, args, after, numbers = raw
        typed = msgspec.convert(args, self._rules[kind].args)
        return Do(subject, typed, self.hand(after), tuple(numbers))

    def hand(self, raw: dict[str, Any]) -> Hand[Any]:
        """The work in hand; work that the room cannot read is put down."""
        work, aside = _apart(raw["work"])
        plain = {name: raw[name] for name in KEPT if name in raw}
        aside = msgspec.convert(raw.get("aside", aside), Aside)
        try:
            return Hand(**plain, work=self._work(raw["area"], work), aside=aside)
        except msgspec.ValidationError:
            return Hand(**plain, work=self._rooms[raw["area"]].work()).empty()

    def _work(self, area: str, raw: dict[str, Any]) -> Work:
        work = self._rooms[area].work
        kept = {name: value for name, value in raw.items() if value is not None}
        return msgspec.convert(work.renamed(kept), work)

    def held(self, text: str) -> str:
        """What was held when the newest act was done, written as today."""
        if not text:
            return ""
        area, subject, work = json.loads(text)
        try:
            typed = self._work(area, _apart(work)[0])
        except msgspec.ValidationError:
            return text
        return held(Hand(area=area, subject=subject, work=typed))


def _apart(work: dict[str, Any]) -> tuple[dict[str, Any], dict[str, Any]]:
    """A room's work, and the dialogue that older programs kept in it, under ``any…``."""
    aside = {k.removeprefix("any_"): v for k, v in work.items() if k.startswith("any")}
    if "any" in aside:
        aside["what"] = aside.pop("any")
    return {k: v for k, v in work.items() if not k.startswith("any")}, aside
