"""Whether an entry from elsewhere can be taken in: nothing in it may stop or bend this station.

An entry that is no sound one keeps its place in the chain, and only needs a look. Every
station comes to the same judgement, for it rests on the entry's id and text alone.
"""

from collections.abc import Callable
from dataclasses import fields
from datetime import datetime

from station.ledger.codec import Body, State, lift_say, read_body, read_fact
from station.shop.acts import Act
from station.shop.facts import KINDS
from station.shop.words import Say, say

LEFT_OUT = "left-out"  # the kind under which an entry without effects is kept; nobody reads it
MOST = 1_000_000_000  # of anything in one move: sums stay whole numbers of 64 bits
MOST_HELD = 5000
# Facts found sound, by key and text: a state after is soon a state before.
_fine: set[tuple[str, bytes]] = set()
# The fields that may hold a sentence: one that cannot be written out would stop a screen.
_SENTENCES = {
    kind.kind: tuple(f.name for f in fields(kind) if "Say" in str(f.type))
    for kind in KINDS.values()
}


def taken_in(id: str, text: str, at: str = "") -> tuple[Body, Say]:
    """An entry's body, and why it is left out: nothing when it is sound.

    `at` is the time of the entry before, for one that has none of its own.
    """
    try:
        body = read_body(text)
        why = next((say(words) for words, wrong in _WRONG if wrong(body, id)), Say())
    except Exception:  # noqa: BLE001 - whatever was pushed, this station goes on
        return _blank(id, at), say("it cannot be read")
    return (_blank(id, at), why) if why else (body, why)


def _blank(id: str, at: str) -> Body:
    return Body(act=Act(id=id, kind=LEFT_OUT, at=at), tone="stop")


def _other_id(body: Body, id: str) -> bool:
    return body.act.id != id or body.act.kind == LEFT_OUT


def _no_time(body: Body, _id: str) -> bool:
    times = filter(None, (body.act.at, body.reversed_at))
    return any(datetime.fromisoformat(t).isoformat(timespec="seconds") != t for t in times)


def _bad_move(body: Body, _id: str) -> bool:
    return any(not 0 < m.qty <= MOST for m in (*body.moves, *body.wanted))


def _twice(body: Body, _id: str) -> bool:
    return len({c.key for c in body.sets}) != len(body.sets)


def _bad_fact(body: Body, _id: str) -> bool:
    return any(
        state is not None and not readable(change.key, state)
        for change in body.sets
        for state in (change.before, change.after)
    )


def readable(key: str, state: State) -> bool:
    """Whether a fact can be read as what its key says, and stands on a shelf of its kind."""
    name = key.partition("/")[0]
    if state.shelf is not None and not state.shelf.startswith(f"{name}/"):
        return False
    kind = KINDS.get(name)
    if kind is None:
        return True  # a newer program's: nobody here reads it
    text = bytes(state.body)
    if (key, text) in _fine:
        return True
    fact = read_fact(kind, text)
    if fact.key != key:
        return False
    for field in _SENTENCES[name]:
        str(getattr(fact, field))
    if len(_fine) > MOST_HELD:
        _fine.clear()
    _fine.add((key, text))
    return True


def _bad_words(body: Body, _id: str) -> bool:
    str(lift_say(body.said)), str(lift_say(body.do))
    return False


_WRONG: tuple[tuple[str, Callable[[Body, str], bool]], ...] = (
    ("it bears another id", _other_id),
    ("its time is none", _no_time),
    ("it moves a number that cannot be", _bad_move),
    ("it sets one fact twice", _twice),
    ("a fact in it cannot be read", _bad_fact),
    ("its words cannot be read", _bad_words),
)
