"""Between the shop's words and the text that is kept.

An entry's body is JSON text: the act, what was said, moves, and facts set anew with the
state before. A fact's state carries its shelf, so effects are applied, undone and rebuilt
without knowing its kind. Unknown fields are passed over: an old program reads what a
newer one wrote.

The arguments of an act stand in a body as they are kept, and are read as what their kind says
(`read_act`) when a rule asks for them.
"""

import hashlib
from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

import msgspec

from station.ledger.faults import ArgsWrong, EffectsWrong
from station.ledger.unknown_states import read_newer
from station.shop.acts import Act, Answer, Args, Tone, UnreadArgs, with_args
from station.shop.facts import KINDS, Fact
from station.shop.moves import Move
from station.shop.readings import Reading
from station.shop.views import F, Past, Rules, Written
from station.shop.words import Say


class State(msgspec.Struct, frozen=True, array_like=True):
    """A fact as it stands: its text, its shelf (with the kind) and rank, who set it.

    `entry` is the id of the act that set it; empty in an entry's body means that entry.
    """

    body: msgspec.Raw
    shelf: str | None
    rank: str
    entry: str = ""


class Change(msgspec.Struct, frozen=True, array_like=True):
    """A fact set anew: its key, the state before (None: new) and after (None: gone)."""

    key: str
    before: State | None
    after: State | None


KeptAct = Act[msgspec.Raw]  # its arguments as they are kept


class Body(msgspec.Struct, frozen=True, omit_defaults=True):
    """All that an entry holds. `reverses` is the id of the entry that it takes back.

    `reversed_at` is when what was taken back in the end was done, and `restores` that this
    takes a taking back back: what was done then counts again.

    `router` is the one that cut what is moved, for the sums by hour. `readings` are what was
    measured or seen; of what is taken back they are named again, and count no more.

    `verdict` is empty, or why the act did not hold any more when it was shared: then its
    moves are not made, and stand in `wanted`.
    """

    act: KeptAct
    tone: Tone
    said: Any = ()
    do: Any = ()
    moves: tuple[Move, ...] = ()
    sets: tuple[Change, ...] = ()
    prints: tuple[tuple[str, str], ...] = ()
    router: str = ""
    readings: tuple[Reading, ...] = ()
    reverses: str = ""
    reversed_at: str = ""
    restores: bool = False
    verdict: str = ""
    wanted: tuple[Move, ...] = ()


class Brief(msgspec.Struct, frozen=True):
    """The part of a body that counting needs."""

    moves: tuple[Move, ...] = ()
    reverses: str = ""


_write = msgspec.json.Encoder().encode
_read_body = msgspec.json.Decoder(Body).decode
_read_plain = msgspec.json.Decoder(dict[str, Any]).decode
read_reading = msgspec.json.Decoder(Reading).decode
read_brief = msgspec.json.Decoder(Brief).decode


def digest(before: bytes, id: str, body: str) -> bytes:
    """The chain's digest of an entry over the one before it, its id and its body."""
    return hashlib.sha256(before + f"{id}\n{body}".encode()).digest()


_decoders: dict[type[Fact], msgspec.json.Decoder[Any]] = {}
_sentences: dict[str, tuple[str, ...]] = {}  # by kind of fact: fields that may hold one


def read_fact(kind: type[F], body: str | bytes | msgspec.Raw) -> F:
    """A fact from its text; a state that only a newer program knows stays as it is."""
    decoder = _decoders.get(kind)
    if decoder is None:
        decoder = _decoders[kind] = msgspec.json.Decoder(kind)
    text = bytes(body) if isinstance(body, msgspec.Raw) else body
    try:
        fact: F = decoder.decode(text)
    except msgspec.ValidationError:
        fact = read_newer(kind, text)  # raises as well where it is not only a newer one
    return _mend_sentences(fact)


def _mend_sentences(fact: F) -> F:
    """A fact whose sentences have their inner sentences again; in its text they are lists."""
    whole: dict[str, Any] = {}
    for name in _list_sentences(type(fact)):
        words = getattr(fact, name)
        if isinstance(words, Say) and any(map(_is_sentence, words.values.values())):
            whole[name] = _mend_sentence(words)
    return replace(fact, **whole) if whole else fact


def _list_sentences(kind: type[Fact]) -> tuple[str, ...]:
    """The fields of a kind that may hold a sentence."""
    if kind.kind not in _sentences:
        named = (field.name for field in fields(kind) if "Say" in str(field.type))
        _sentences[kind.kind] = tuple(named)
    return _sentences[kind.kind]


def _is_sentence(value: object) -> bool:
    match value:
        case [str(), dict()]:
            return True
    return False


def _mend_sentence(words: Say) -> Say:
    values = {
        name: _mend_sentence(Say(*value)) if _is_sentence(value) else value  # type: ignore[misc]
        for name, value in words.values.items()
    }
    return words._replace(values=values)


def write_fact(fact: Fact) -> bytes:
    """A fact as text. Raises EffectsWrong when it could not be read back."""
    try:
        text = _write(fact)
        read_fact(type(fact), text)
    except (TypeError, msgspec.MsgspecError) as error:
        raise EffectsWrong(f"{fact.key} cannot be kept: {error}") from error
    return text


def full_shelf(fact: Fact) -> tuple[str | None, str]:
    """The shelf with its kind, and the rank, as they are kept."""
    shelf = fact.shelf
    return (f"{fact.kind}/{shelf[0]}", shelf[1]) if shelf else (None, "")


def state_of(fact: Fact) -> State:
    """A fact as an entry sets it. Raises EffectsWrong when it could not be read back."""
    return State(msgspec.Raw(write_fact(fact)), *full_shelf(fact))


def keep_reading(reading: Reading) -> Reading:
    """The reading as an entry holds it. Raises EffectsWrong when it could not be read back."""
    try:
        kept = read_reading(_write(reading))
    except (TypeError, msgspec.MsgspecError) as error:
        raise EffectsWrong(f"{reading} cannot be kept: {error}") from error
    if not kept.is_sound:
        raise EffectsWrong(f"{reading} is no reading")
    return kept


def write_reading(reading: Reading) -> str:
    """A reading as text."""
    return _write(reading).decode()


def lay(value: object) -> object:
    """A value of a sentence as JSON; a sentence in a sentence keeps its shape."""
    if isinstance(value, Say):
        return {"say": value.template, "with": lay(dict(value.values))}
    if isinstance(value, Mapping):
        return {str(k): lay(v) for k, v in value.items()}
    if isinstance(value, list | tuple):
        return [lay(v) for v in value]
    return value


def lift(value: object) -> object:
    """A sentence's value back from JSON."""
    if isinstance(value, dict):
        if value.keys() == {"say", "with"}:
            return lift_say((value["say"], value["with"]))
        return {k: lift(v) for k, v in value.items()}
    return [lift(v) for v in value] if isinstance(value, list) else value


def lay_say(words: Say) -> object:
    """A sentence as template and values; nothing for an empty one."""
    if not words.template:
        return ()
    return (words.template, {k: lay(v) for k, v in words.values.items()})


def lift_say(kept: Any) -> Say:  # noqa: ANN401 - plain JSON
    """A sentence from its template and values; what is none, bent by hand, says nothing."""
    match kept:
        case [str(template), dict(values)]:
            return Say(template, {k: lift(v) for k, v in values.items()})
    return Say()


def keep_act(act: Act[Any]) -> KeptAct:
    """The act as an entry holds it. Raises EffectsWrong when it holds what JSON cannot."""
    try:
        return with_args(act, msgspec.Raw(_write(act.args)))
    except TypeError as error:
        raise EffectsWrong(f"The act {act.kind} cannot be kept: {error}") from error


def plain_args(act: KeptAct) -> dict[str, Any]:
    """The arguments of an act, of whatever kind. Raises DecodeError when they are none."""
    return _read_plain(_text_of(act))


def _text_of(act: KeptAct) -> msgspec.Raw | bytes:
    return act.args if isinstance(act.args, msgspec.Raw) else b"{}"  # none were written


def read_act(act: KeptAct, rules: Rules) -> Act[Any]:
    """The act with its arguments as its kind says. Raises ArgsWrong where they do not fit it."""
    rule = rules.get(act.kind)
    if rule is None:
        return with_args(act, UnreadArgs(kept=plain_args(act)))
    try:
        return with_args(act, _args_decoder(rule.args).decode(_text_of(act)))
    except msgspec.DecodeError as error:
        raise ArgsWrong(f"The arguments of {act.kind} do not fit: {error}") from error


_args_decoders: dict[type[Args], msgspec.json.Decoder[Any]] = {}


def _args_decoder(kind: type[Args]) -> msgspec.json.Decoder[Any]:
    if kind not in _args_decoders:
        _args_decoders[kind] = msgspec.json.Decoder(kind)
    return _args_decoders[kind]


def write_body(body: Body) -> str:
    """An entry's body as text."""
    return _write(body).decode()


def read_body(text: str) -> Body:
    """An entry's body from its text."""
    return _read_body(text)


def answer_of(body: Body) -> Answer:
    """The answer that was given when the entry was made."""
    sets = tuple(w.after for w in written(body) if w.after)
    return Answer(
        tone=body.tone,
        said=lift_say(body.said),
        do=lift_say(body.do),
        moves=body.moves,
        sets=sets,
        prints=body.prints,
        router=body.router,
        readings=body.readings,
    )


def past_of(body: Body, rules: Rules, *, undone: bool) -> Past[Any]:
    """The entry as a rule sees it; arguments that do not fit their kind are `UnreadArgs`."""
    try:
        act = read_act(body.act, rules)
    except ArgsWrong:
        act = with_args(body.act, UnreadArgs(kept=plain_args(body.act)))
    return Past(act, body.moves, written(body), undone)


def written(body: Body) -> tuple[Written, ...]:
    """The facts that an entry set, those of kinds that this program knows."""
    return tuple(
        Written(c.key, _fact_of(kind, c.before), _fact_of(kind, c.after))
        for c in body.sets
        if (kind := KINDS.get(c.key.partition("/")[0]))
    )


def _fact_of(kind: type[F], state: State | None) -> F | None:
    return read_fact(kind, state.body) if state else None
