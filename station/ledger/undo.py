"""Taking an entry back: a reversing entry, refused once pieces or facts have gone on."""

from dataclasses import replace
from typing import Any

import msgspec

from station.ledger import effects, statements
from station.ledger.codec import (
    Body,
    Change,
    KeptAct,
    State,
    answer_of,
    keep_act,
    lay_say,
    lift_say,
    state_of,
)
from station.ledger.history import NO_SUCH_YEAR, Decided, History, Recorded, has_wrong_year
from station.ledger.numbers import TAKING, spent_by
from station.shop.acts import Act, Answer, good, refuse
from station.shop.beginning import not_here
from station.shop.office import is_of_office, refuse_elsewhere
from station.shop.places import balances
from station.shop.words import Say, say

_MEND = say("A recount or a correction mends it.")


def undo(history: History, id: str, act: Act[Any]) -> Recorded:
    """Appends the entry that takes `id` back, or says why not.

    Moves are swapped; facts go back to the state before, and to the entry that had set
    it, so that taking back several acts in turn works. That an entry was taken back is
    itself a fact, ``undone/<id>``: two stations cannot both do it.
    """
    if again := history.repeated(act.id):
        return again
    if has_wrong_year(act):
        return Recorded(NO_SUCH_YEAR, None, ())
    decided = decide_undo(history, id, keep_act(act))
    body = decided.body
    if body is None:
        return Recorded(decided.answer, None, ())
    history.append(body, (), {}, decided.reads)
    return Recorded(answer_of(body), act.id, body.moves)


def decide_undo(history: History, id: str, act: KeptAct) -> Decided:
    """The entry that takes `id` back as things stand now, or why not; nothing is written."""
    body = history.reader.body(id)
    if body is None:
        do = not_here(history.reader.begins) or _MEND
        return _no(id, say("There is nothing to take back"), do)
    if body.act.kind == TAKING:
        return _no(id, say("Numbers cannot be given back"), say("Go on with your work."))
    if history.reader.undone(id):
        return _no(id, say("That was taken back already"), say("Go on with your work."))
    if body.verdict:
        return _no(id, say("That was not counted, so it cannot be taken back"), _MEND)
    rule = history.rules.get(body.act.kind)
    if rule and rule.stays:
        return _no(id, say("That stays: it is not taken back here"), rule.stays)
    if why := _gone_on(history, body) or _set_since(history, body):
        return _no(id, why, _MEND)
    answer = good(say("Taken back: {what}", what=lift_say(body.said)), say("Scan your work."))
    reversal = _reversal(act, body, answer)
    office, keys = history.office, (change.key for change in reversal.sets)
    if office and act.station not in office and is_of_office(keys):
        return Decided(refuse_elsewhere(office), None, {f"act/{id}", f"undone/{id}"})
    return Decided(answer, reversal, {*effects.writes(body), f"undone/{id}"})


def _no(id: str, said: Say, do: Say) -> Decided:
    return Decided(refuse(said, do), None, {f"act/{id}", f"undone/{id}"})


def _gone_on(history: History, body: Body) -> Say | None:
    """Why the pieces cannot be moved back, if they cannot."""
    back = effects.net(m.back() for m in body.moves)
    for (batch, part, place), change in back.items():
        if change >= 0 or balances(place):
            continue
        rows = history.store.rows(statements.SPOT, (batch, part, place))
        if (rows[0][0] if rows else 0) + change < 0:
            return say("Its pieces have gone on, so it cannot be taken back")
    return None


def _set_since(history: History, body: Body) -> Say | None:
    """Why the facts cannot be put back, if they cannot."""
    for change in body.sets:
        now = history.reader.state(change.key)
        mine = (change.after.entry or body.act.id) if change.after else None
        if (now.entry if now else None) != mine:
            kind, _, number = change.key.partition("/")
            return say("The {kind} {id} has changed since", kind=kind, id=number)
    return None


def _reversal(act: KeptAct, body: Body, answer: Answer) -> Body:
    """The entry that reverses another."""
    own = body.act.id
    sets = [Change(c.key, _owned(c.after, own), c.before) for c in body.sets]
    spent = (Change(fact.key, None, state_of(fact)) for fact in spent_by(body.act))
    note = State(msgspec.Raw(b'{"id":' + msgspec.json.encode(own) + b"}"), None, "")
    return Body(
        act=replace(act, subject=body.act.subject),  # it is about what it takes back
        tone=answer.tone,
        said=lay_say(answer.said),
        do=lay_say(answer.do),
        moves=tuple(m.back() for m in reversed(body.moves)),
        sets=(*sets, Change(f"undone/{own}", None, note), *spent),
        router=body.router,
        readings=body.readings,
        reverses=own,
        reversed_at=body.reversed_at or body.act.at,
        restores=bool(body.reverses) and not body.restores,
    )


def _owned(state: State | None, id: str) -> State | None:
    """A state with the entry that set it written out."""
    return State(state.body, state.shelf, state.rank, state.entry or id) if state else None
