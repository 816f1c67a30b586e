"""Whether an entry from elsewhere can be taken in: nothing in it may stop or bend this station.

An entry that is no sound one keeps its place in the chain, and only needs a look. Every
station comes to the same judgement, for it rests on the entry's id and text alone.
"""

from collections.abc import Callable
from dataclasses import fields
from typing import Any

import msgspec

from station.ledger.codec import Body, State, lift_say, plain_args, read_body, read_fact
from station.shop.acts import Act
from station.shop.facts import KINDS
from station.shop.facts.about import LONGEST
from station.shop.limits import LONGEST_SENTENCE, find_unfit
from station.shop.times import is_time
from station.shop.words import Say, say

LEFT_OUT = "left-out"  # the kind under which an entry without effects is kept; nobody reads it
MOST = 1_000_000_000  # of anything in one move: sums stay whole numbers of 64 bits
MOST_HELD = 5000
LONGEST_NAME = 200  # characters of an id, a place, the key of what an act is about
# States found sound, from text to key and shelf: a state after is soon a state before.
_fine: dict[bytes, tuple[str, str | None]] = {}
_fitting: set[bytes] = set()  # states whose values can be
_fine_words: set[tuple[str, ...]] = set()  # sentences found sound: template and names
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
        why = _wrong(body, id)
    except Exception:  # noqa: BLE001 - whatever was pushed, this station goes on
        return _blank(id, at), say("it cannot be read")
    return (_blank(id, at), why) if why else (body, why)


def _wrong(body: Body, id: str) -> Say:
    for words, wrong in _WRONG:
        if wrong(body, id):
            return say(words)
    return _wrong_value(body)


def _blank(id: str, at: str) -> Body:
    act = Act(id=id, kind=LEFT_OUT, at=at, args=msgspec.Raw(b"{}"))
    return Body(act=act, tone="stop")


def _other_id(body: Body, id: str) -> bool:
    return body.act.id != id or body.act.kind == LEFT_OUT


def _bad_args(body: Body, _id: str) -> bool:
    # Whether they fit their kind is not judged: kinds grow, and all stations must judge alike.
    plain_args(body.act)
    return False


def _no_time(body: Body, _id: str) -> bool:
    return _wrong_time(body.act.at) or _wrong_time(body.reversed_at)


def _wrong_time(at: str) -> bool:
    return at != "" and not is_time(at)


def _long_name(body: Body, _id: str) -> bool:
    act = body.act
    names = (act.id, act.kind, act.worker, act.station, act.subject, body.router, body.reverses)
    spots = (name for m in (*body.moves, *body.wanted) for name in (m.part, *m.frm, *m.to))
    return any(len(name) > LONGEST_NAME for name in (*names, *spots))


def _bad_move(body: Body, _id: str) -> bool:
    # Plain loops here and below: every entry of a long history passes, five moves each.
    for _, qty, _, _ in body.moves:
        if not 0 < qty <= MOST:
            return True
    return any(not 0 < m.qty <= MOST for m in body.wanted)


def _twice(body: Body, _id: str) -> bool:
    return len(body.sets) > 1 and len({c.key for c in body.sets}) != len(body.sets)


def _bad_fact(body: Body, _id: str) -> bool:
    for change in body.sets:
        for state in (change.before, change.after):
            if state is not None and not readable(change.key, state):
                return True
    return False


def _wrong_value(body: Body) -> Say:
    """Says which field of a fact that it sets holds what cannot be; nothing where none does."""
    for change in body.sets:
        kind, state = KINDS.get(change.key.partition("/")[0]), change.after
        if kind is None or state is None or (text := bytes(state.body)) in _fitting:
            continue
        if why := find_unfit(read_fact(kind, text)):
            return why
        if len(_fitting) > MOST_HELD:
            _fitting.clear()
        _fitting.add(text)
    return Say()


def readable(key: str, state: State) -> bool:
    """Whether a fact can be read as what its key says, and stands on a shelf of its kind."""
    text, named = bytes(state.body), (key, state.shelf)
    if _fine.get(text) == named:
        return True
    name = key.partition("/")[0]
    if state.shelf is not None and not state.shelf.startswith(f"{name}/"):
        return False
    kind = KINDS.get(name)
    if kind is None:
        return True  # a newer program's: nobody here reads it
    fact = read_fact(kind, text)
    if fact.key != key:
        return False
    for field in _SENTENCES[name]:
        str(getattr(fact, field))
    if len(_fine) > MOST_HELD:
        _fine.clear()
    _fine[text] = named
    return True


def _bad_reading(body: Body, _id: str) -> bool:
    return any(not reading.is_sound for reading in body.readings)


def _bad_words(body: Body, _id: str) -> bool:
    for kept in (body.said, body.do):
        if kept:
            _written_out(*kept)
    return False


def _written_out(template: str, values: dict[str, Any]) -> None:
    """Raises where a sentence cannot be written out; what its plain values are does not matter."""
    names = (template, *values)
    plain = all(type(v) in (str, int) for v in values.values())
    if plain and names in _fine_words and sum(len(str(v)) for v in values.values()) < LONGEST:
        return
    if len(str(lift_say((template, values)))) > LONGEST_SENTENCE:
        raise ValueError(template[:LONGEST])
    if len(_fine_words) > MOST_HELD:
        _fine_words.clear()
    _fine_words.add(names)


_WRONG: tuple[tuple[str, Callable[[Body, str], bool]], ...] = (
    ("it bears another id", _other_id),
    ("its arguments cannot be read", _bad_args),
    ("its time is none", _no_time),
    ("a name in it is too long", _long_name),
    ("it moves a number that cannot be", _bad_move),
    ("it sets one fact twice", _twice),
    ("a fact in it cannot be read", _bad_fact),
    ("a reading in it cannot be", _bad_reading),
    ("its words cannot be read", _bad_words),
)
