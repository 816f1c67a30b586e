"""Whether an entry from elsewhere can be taken in: nothing in it may stop or bend this station.

An entry that is no sound one keeps its place in the chain, and only needs a look. Every
station comes to the same judgement, for it rests on the entry's id and text alone.
"""

from collections.abc import Callable
from dataclasses import fields
from typing import Annotated, Any

import msgspec

from station.ledger.codec import Body, State, lift_say, plain_args, read_body, read_fact
from station.shop.acts import Act
from station.shop.facts import KINDS, Fact
from station.shop.facts.about import LONGEST
from station.shop.fitting import find_fitting
from station.shop.limits import LONGEST_SENTENCE, find_unfit
from station.shop.moves import NO_PIECES, Move, Spot
from station.shop.times import is_time
from station.shop.words import Say, say

LEFT_OUT = "left-out"  # the kind under which an entry without effects is kept; nobody reads it
MOST = 1_000_000_000  # of anything in one move: sums stay whole numbers of 64 bits
MOST_PIECES = 999_999  # of a part in one move: as many as can be typed
MOST_HELD = 5000
LONGEST_NAME = 200  # characters of an id, a place, the key of what an act is about
# Key, shelf and text of states that can be read, and whether their values were judged as well:
# a state after is soon a state before. One text may be read as several kinds, and be wrong as one.
_fine: dict[tuple[str, str | None, bytes], bool] = {}
_fine_words: set[tuple[str, ...]] = set()  # sentences found sound: template and names
# The fields that may hold a sentence: one that cannot be written out would stop a screen.
_SENTENCES = {
    kind.kind: tuple(f.name for f in fields(kind) if "Say" in str(f.type))
    for kind in KINDS.values()
}


_Name = Annotated[str, msgspec.Meta(max_length=LONGEST_NAME)]


class _Spot(Spot):
    __slots__ = ()
    place: _Name
    batch: _Name


class _Move(Move):
    __slots__ = ()
    part: _Name
    qty: Annotated[int, msgspec.Meta(gt=0, le=MOST_PIECES)]
    frm: _Spot
    to: _Spot


class _Narrow(Body, frozen=True):
    """A body in whose moves nothing can be wrong: the decoder judges them as it reads them."""

    moves: tuple[_Move, ...] = ()
    wanted: tuple[_Move, ...] = ()


_read_narrow = msgspec.json.Decoder(_Narrow).decode


def taken_in(id: str, text: str, at: str = "") -> tuple[Body, Say]:
    """An entry's body, and why it is left out: nothing when it is sound.

    `at` is the time of the entry before, for one that has none of its own.
    """
    try:
        body = _read(text)
        why = _wrong(body, id)
    except Exception:  # noqa: BLE001 - whatever was pushed, this station goes on
        return _blank(id, at), say("it cannot be read")
    return (_blank(id, at), why) if why else (body, why)


def _read(text: str) -> Body:
    """Reads a body; one with a move that cannot be, or none can be read of, as any other."""
    try:
        return _read_narrow(text)
    except msgspec.ValidationError:
        return read_body(text)


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
    names = [act.id, act.kind, act.worker, act.station, act.subject, body.router, body.reverses]
    if not isinstance(body, _Narrow):
        names += (name for m in (*body.moves, *body.wanted) for name in (m.part, *m.frm, *m.to))
    return max(map(len, names)) > LONGEST_NAME


def _bad_move(body: Body, _id: str) -> bool:
    if isinstance(body, _Narrow):
        return False
    return not all(can_move(m.part, m.qty) for m in (*body.moves, *body.wanted))


def can_move(part: str, qty: int) -> bool:
    """Tells whether so many of a part can be moved at once; of wear it may be more."""
    return 0 < qty <= (MOST if part in NO_PIECES else MOST_PIECES)


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
        state = change.after
        if state is None or _fine.get(named := (change.key, state.shelf, bytes(state.body))):
            continue
        kind = KINDS.get(change.key.partition("/")[0])
        if kind is not None and (why := find_unfit(read_fact(kind, named[2]))):
            return why
        _hold(*named, judged=True)
    return Say()


def readable(key: str, state: State) -> bool:
    """Whether a fact can be read as what its key says, and stands on a shelf of its kind."""
    shelf, text = state.shelf, bytes(state.body)
    if (key, shelf, text) in _fine:
        return True
    name = key.partition("/")[0]
    if shelf is not None and not shelf.startswith(f"{name}/"):
        return False
    kind = KINDS.get(name)
    if kind is None:
        return True  # a newer program's: nobody here reads it
    fitting = key == f"{name}/{find_fitting(kind, text)}"
    if not fitting and not _is_read(kind, key, text):
        return False
    _hold(key, shelf, text, judged=fitting)
    return True


def _hold(key: str, shelf: str | None, text: bytes, *, judged: bool) -> None:
    if len(_fine) > MOST_HELD:
        _fine.clear()
    _fine[key, shelf, text] = judged


def _is_read(kind: type[Fact], key: str, text: bytes) -> bool:
    """Whether a fact can be read as what its key says; raises where its words cannot be said."""
    fact = read_fact(kind, text)
    if fact.key != key:
        return False
    for field in _SENTENCES[kind.kind]:
        str(getattr(fact, field))
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
