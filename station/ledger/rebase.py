"""Acts that are not shared yet, decided again on top of what others have shared meanwhile.

What still holds is kept with its new states before. What does not hold any more has
physically happened all the same: it keeps its place, without moves, as something that
needs a look. Nothing scanned is ever dropped.
"""

import logging
from collections import Counter
from collections.abc import Generator, Iterable, Sequence
from dataclasses import fields, replace
from functools import lru_cache
from typing import NamedTuple, TypeVar

import msgspec

from station.ledger import effects, statements
from station.ledger.codec import (
    Body,
    Change,
    answer_of,
    lay_say,
    lift_say,
    read_act,
    read_body,
    state_of,
    write_body,
    written,
)
from station.ledger.faults import OwnBug
from station.ledger.history import Decided, History, pending_row, rule_for
from station.ledger.numbers import TAKE_BLOCK, TAKING, given_to, spent_by
from station.ledger.undo import decide_undo
from station.shop.acts import ActAgain, Answer, attention, refuse
from station.shop.conflicts import BOTH, no_longer
from station.shop.facts import Batch
from station.shop.views import Rules
from station.shop.words import Say, say

T = TypeVar("T")
_NAMES = msgspec.json.Decoder(frozenset[str])
MOST_KEPT = 8192  # acts of which is at hand what they read and wrote
BODIES = 64  # acts that are at hand whole: of thousands the collector of cycles would take long
log = logging.getLogger(__name__)


class Waiting(NamedTuple):
    """An act in `pending`."""

    seq: int
    id: str
    names: str  # of what was read for it, as they are kept
    text: str

    @property
    def reads(self) -> frozenset[str]:
        """The names of all that was read for it."""
        return _read_names(self.names)

    @property
    def body(self) -> Body:
        """What it holds."""
        return _read_kept(self.text)

    @property
    def marks(self) -> frozenset[str]:
        """The facts and spots that it changes."""
        return _marks_of(self.text)

    @property
    def writes(self) -> frozenset[str]:
        """The names of all that it changed."""
        return _writes_of(self.text)


# A station that was cut off for long asks this of the same acts for each page that it takes in.
_read_kept = lru_cache(maxsize=BODIES)(read_body)
_read_names = lru_cache(maxsize=MOST_KEPT)(_NAMES.decode)


@lru_cache(maxsize=MOST_KEPT)
def _marks_of(text: str) -> frozenset[str]:
    return frozenset(effects.marks(_read_kept(text)))


@lru_cache(maxsize=MOST_KEPT)
def _writes_of(text: str) -> frozenset[str]:
    return frozenset(effects.writes(_read_kept(text)))


class Fallen(NamedTuple):
    """What an act that turned had changed, and why it turned."""

    marks: set[str]
    said: Say


class Turned(NamedTuple):
    """An act that was answered well here and does not hold in the shop any more."""

    id: str
    answer: Answer


def waiting(history: History, limit: int = -1) -> list[Waiting]:
    """The acts in `pending`, oldest first; all where no limit is said.

    All of them are held until a row is written: of thousands the reading takes long.
    """
    store = history.store
    if limit < 0 and history.waits[0] == store.written:
        return history.waits[1]
    rows = store.rows(statements.FIRST_PENDING, (limit,))
    found = [Waiting(seq, id_, names, text) for seq, id_, _, names, text in rows]
    if limit < 0 and store.settled is not None:  # else it may be rolled back
        history.waits = (store.written, found)
    return found


def run_out(steps: Generator[None, None, T]) -> T:
    """Does at once what may be left standing; gives what it comes to."""
    while True:
        try:
            next(steps)
        except StopIteration as done:
            come: T = done.value
            return come


def decide_again(
    history: History, rules: Rules, acts: Sequence[Waiting]
) -> Generator[None, None, list[Turned]]:
    """Decides the acts anew, in order, once they are undone; gives those that turned.

    It may be left standing behind each of them.
    """
    deciding = Deciding(history, rules)
    deciding.hide(acts)
    try:
        for act in acts:
            deciding.decide(act)
            yield
    finally:
        deciding.hide(())
    return deciding.turned


class Deciding:
    """Decides acts anew, one after the other; notes those that `turned`.

    An act that turned is never decided again: a person may have settled it already. What stood
    on one that turned tells of that one: a pack that was never closed is on no cart.
    """

    def __init__(self, history: History, rules: Rules) -> None:
        self._history, self._rules = history, rules
        self._fallen: list[Fallen] = []
        self.turned: list[Turned] = []

    def hide(self, acts: Iterable[Waiting]) -> None:
        """Hides acts that are undone: none of them is read for one before it."""
        self._history.reader.hidden = {act.id for act in acts}

    def decide(self, act: Waiting) -> Waiting:
        """Decides an act that is undone, the next one in order; gives it as it waits now."""
        history, was = self._history, act.body
        now, reads = _again(history, self._rules, was, self._fallen)
        if now.verdict and not was.verdict:
            self.turned.append(Turned(act.id, answer_of(now)))
            self._fallen.append(Fallen(effects.marks(was), lift_say(now.said)))
        row = pending_row(act.seq, now, write_body(now), reads)
        if (row[-2], row[-1]) != (act.names, act.text):
            history.store.run(statements.DROP_PENDING, (act.seq,))
            history.store.run(statements.ADD_PENDING, row)
        history.reader.hidden.discard(act.id)
        return Waiting(act.seq, act.id, *row[-2:])


def _again(
    history: History, rules: Rules, was: Body, fallen: list[Fallen]
) -> tuple[Body, frozenset[str]]:
    """One act as it is decided now, its effects carried out, and what was read for it."""
    run = history.store.run
    if not was.verdict:
        run("SAVEPOINT one")
        try:
            decided = _decided(history, rules, was)
            twice = _find_twice(history, was, decided.body)
            body = None if twice else decided.body
            if body and _deed(body) == _deed(was):
                _carry_out(history, body)
                run("RELEASE one")
                return body, frozenset(decided.reads)
            answer = _tell_root(was, twice or decided.answer, fallen)
            was = _looked_at(was, answer, _first(history, was), twice=answer is twice)
        except (OwnBug, ArithmeticError, LookupError, TypeError, ValueError, AssertionError):
            log.exception("Cannot be decided again: %r", was.act)
            was = _looked_at(was, attention(say("It could not be decided again")))
        run("ROLLBACK TO one")
        run("RELEASE one")
        history.reader.forget()
    _carry_out(history, was)
    return was, frozenset()


def _tell_root(was: Body, answer: Answer, fallen: list[Fallen]) -> Answer:
    """Tells of what an act stood on, where that turned before it; else what its rule says."""
    stands_on = effects.rests_on(was)
    root = next((f.said for f in reversed(fallen) if not stands_on.isdisjoint(f.marks)), None)
    if root is None or not answer.refused or _is_done(answer) or str(answer.said) == str(root):
        return answer
    return refuse(root, say("It followed from that: see Needs a look."))


def _decided(history: History, rules: Rules, was: Body) -> Decided:
    """What the rule says now."""
    if was.reverses:
        return decide_undo(history, was.reverses, was.act)
    rule = TAKE_BLOCK if was.act.kind == TAKING else rule_for(rules, was.act.kind)
    read = read_act(was.act, {was.act.kind: rule})
    act = ActAgain(**{f.name: getattr(read, f.name) for f in fields(read)})
    return history.decide(act, rule, was.act)


def _find_twice(history: History, was: Body, now: Body | None) -> Answer | None:
    """Finds what another paper bears as well as the one of this act; None: nothing.

    A number: an older disk was put in, and it was handed out before that asked the shop. A copy
    letter: two stations have printed a lost traveller anew.
    """
    taken = (n for kind, n in given_to(was.act) if history.reader.state(f"{kind}/{n}") is not None)
    if number := next(taken, ""):
        said = say("Number {number} was given out twice", number=number)
        return refuse(said, say("Two papers bear it: give one of them another."))
    printed = _list_copies(was)
    if not printed or now is None or printed == _list_copies(now):
        return None
    batch, letter = next(iter(printed.items()))
    said = say("Copy {copy} of batch {batch} was printed twice", copy=letter, batch=batch)
    return refuse(said, say("Two papers bear it: give one of them another."))


def _list_copies(body: Body) -> dict[str, str]:
    """Lists the batches whose travellers an entry has printed anew, with the copy's letter."""
    facts = ((w.before, w.after) for w in written(body))
    return {
        after.id: after.copy
        for before, after in facts
        if isinstance(before, Batch) and isinstance(after, Batch) and before.copy != after.copy
    }


def _carry_out(history: History, body: Body) -> None:
    history.carry_out(body)
    for change in body.sets:
        history.reader.took(change.key, None, None)


def _deed(body: Body) -> tuple[object, ...]:
    """What a person did: which pieces went which way, and the papers that came out.

    Out of which batch may differ: the oldest is assumed.
    """
    ways: Counter[tuple[str, str, str]] = Counter()
    for m in body.moves:
        ways[m.part, m.frm.place, m.to.place] += m.qty
    return ways, body.prints


def _first(history: History, was: Body) -> tuple[str, Say]:
    """Who lately wrote at another station what the act stands on, and what was said to that."""
    stands_on = effects.rests_on(was)
    for (text,) in history.store.rows(statements.LATELY):
        body = read_body(text)
        if body.act.station != was.act.station and not stands_on.isdisjoint(effects.writes(body)):
            return body.act.id, lift_say(body.said)
    return "", Say()


def _looked_at(
    was: Body, answer: Answer, before: tuple[str, Say] = ("", Say()), *, twice: bool = False
) -> Body:
    """The act as something that needs a look: said what stands against it, nothing moved.

    Where the rule would do something else by now, that is said, and is what can be booked. Where
    it has nothing to do, for somebody has done the same, nobody has to look.
    """
    said, meant = answer.said, was.moves
    if not answer.refused and answer.moves:
        meant = answer.moves
    concern = no_longer(was.act, lift_say(was.said), said, meant, before, twice=twice)
    same = (_is_done(answer) and not was.moves) or _changes_nothing(answer)
    if same:
        concern = replace(concern, settled=BOTH, settled_at=was.act.at)
    by_itself = answer.refused or same
    return Body(
        act=was.act,
        tone="attention",
        said=lay_say(said),
        do=lay_say(answer.do if by_itself else say("A supervisor settles it: Needs a look.")),
        sets=tuple(Change(f.key, None, state_of(f)) for f in (concern, *spent_by(was.act))),
        verdict=str(said) or "it does not hold any more",
        wanted=was.moves,
    )


def _is_done(answer: Answer) -> bool:
    """Whether a rule has nothing to do, because it is so already."""
    return answer.refused and answer.tone == "attention" and not answer.asks


def _changes_nothing(answer: Answer) -> bool:
    """Whether a rule does it and nothing changes: a count that the book agrees with by now."""
    return not (answer.refused or answer.moves or answer.sets or answer.prints)
