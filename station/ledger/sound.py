"""Whether an entry from elsewhere can be taken in: nothing in it may stop or bend this station.

An entry that is no sound one keeps its place in the chain and does nothing. Every station
comes to the same judgement, for it rests on the entry's id and text alone.
"""

import re
from dataclasses import fields

import msgspec

from station.ledger.codec import Body, Change, lift_say, read_body, read_fact
from station.shop.acts import Act
from station.shop.facts import KINDS

UNREADABLE = "unreadable"
MOST = 1_000_000_000  # of anything in one move
MOST_HELD = 5000
# Facts found sound, by key and text: a state after is soon a state before.
_fine: set[tuple[str, bytes]] = set()
# The fields that may hold a sentence: one that cannot be written out would stop a screen.
_SENTENCES = {
    kind.kind: tuple(f.name for f in fields(kind) if "Say" in str(f.type))
    for kind in KINDS.values()
}
_TIME = re.compile(r"(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d)?")


def taken_in(id: str, text: str) -> Body:
    """The entry's body when it is sound, else one without any effects."""
    try:
        body = read_body(text)
        if _sound(id, body):
            return body
    except (msgspec.MsgspecError, ValueError, TypeError, LookupError, AttributeError):
        pass  # whatever it is, it is no entry of this program's
    return Body(act=Act(id=id, kind=UNREADABLE, at=""), tone="stop", verdict=UNREADABLE)


def _sound(id: str, body: Body) -> bool:
    act = body.act
    return (
        act.id == id
        and act.kind != UNREADABLE
        and all(_TIME.fullmatch(at) for at in (act.at, body.reversed_at))
        and all(0 < m.qty <= MOST for m in (*body.moves, *body.wanted))
        and len({c.key for c in body.sets}) == len(body.sets)
        and all(map(_readable, body.sets))
        and all(str(lift_say(said)) is not None for said in (body.said, body.do))
    )


def _readable(change: Change) -> bool:
    """Whether the fact can be read as what its key says; of a kind yet unknown it may be."""
    kind = KINDS.get(change.key.partition("/")[0])
    if kind is None:
        return True
    for state in (change.before, change.after):
        if state is None:
            continue
        text = bytes(state.body)
        if (change.key, text) in _fine:
            continue
        fact = read_fact(kind, text)
        if fact.key != change.key:
            return False
        for name in _SENTENCES[kind.kind]:
            str(getattr(fact, name))
        if len(_fine) > MOST_HELD:
            _fine.clear()
        _fine.add((change.key, text))
    return True
