"""Acts that are not shared yet, decided again on top of what others have shared meanwhile.

What still holds is kept with its new states before. What does not hold any more has
physically happened all the same: it keeps its place, without moves, as something that
needs a look. Nothing scanned is ever dropped.
"""

import json
import logging
from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

import msgspec

from station.ledger import effects, statements
from station.ledger.codec import Body, answer_of, lay_say, read_body, write_body
from station.ledger.faults import OwnBug
from station.ledger.history import Decided, History, pending_row, rule_for
from station.ledger.numbers import TAKE_BLOCK, TAKING
from station.ledger.undo import decide_undo
from station.shop.acts import Answer, attention
from station.shop.facts import Concern
from station.shop.moves import Move
from station.shop.views import Rules
from station.shop.words import say

log = logging.getLogger(__name__)
CHOICES = ("counted again", "left as it is")


class Waiting(NamedTuple):
    """An act in `pending`."""

    seq: int
    id: str
    reads: frozenset[str]
    text: str

    @property
    def body(self) -> Body:
        """What it holds."""
        return read_body(self.text)


class Turned(NamedTuple):
    """An act that was answered well here and does not hold in the shop any more."""

    id: str
    answer: Answer


def waiting(history: History, limit: int = -1) -> list[Waiting]:
    """The acts in `pending`, oldest first; all where no limit is said."""
    rows = history.store.rows(statements.FIRST_PENDING, (limit,))
    return [
        Waiting(seq, id_, frozenset(json.loads(reads)), text)
        for seq, id_, _, reads, _, text in rows
    ]


def undo_all(history: History, acts: Iterable[Waiting]) -> None:
    """Takes pending acts and their effects out of the tables, the newest first.

    None of them may be seen while one is decided again: it would read itself.
    """
    for act in reversed(list(acts)):
        effects.unapply(history.store.connection, act.body)
        history.store.run(statements.DROP_PENDING, (act.seq,))
    history.reader.forget()


def decide_again(history: History, rules: Rules, acts: Iterable[Waiting]) -> list[Turned]:
    """Decides the acts anew, in order, and writes them down; gives those that turned."""
    turned = []
    for act in acts:
        was = act.body
        now, reads = _again(history, rules, was)
        if now.verdict and not was.verdict:
            turned.append(Turned(act.id, answer_of(now)))
        row = pending_row(act.seq, now, write_body(now), reads)
        history.store.run(statements.ADD_PENDING, row)
    return turned


def _again(history: History, rules: Rules, was: Body) -> tuple[Body, frozenset[str]]:
    """One act as it is decided now, its effects carried out, and what was read for it."""
    run = history.store.run
    if not was.verdict:
        run("SAVEPOINT one")
        try:
            decided = _decided(history, rules, was)
            body = decided.body
            if body and _same(body.moves, was.moves):
                _carry_out(history, body)
                run("RELEASE one")
                return body, frozenset(decided.reads)
            was = _looked_at(was, decided.answer)
        except (OwnBug, ArithmeticError, LookupError, TypeError, ValueError, AssertionError):
            log.exception("Cannot be decided again: %r", was.act)
            was = _looked_at(was, attention(say("It could not be decided again")))
        run("ROLLBACK TO one")
        run("RELEASE one")
        history.reader.forget()
    kept = msgspec.structs.replace(was, sets=history.changes((_concern(was),)))
    _carry_out(history, kept)
    return kept, frozenset()


def _decided(history: History, rules: Rules, was: Body) -> Decided:
    """What the rule says now."""
    if was.reverses:
        return decide_undo(history, was.reverses, was.act)
    rule = TAKE_BLOCK if was.act.kind == TAKING else rule_for(rules, was.act.kind)
    return history.decide(was.act, rule)


def _carry_out(history: History, body: Body) -> None:
    history.carry_out(body)
    for change in body.sets:
        history.reader.took(change.key, None, None)


def _same(now: Iterable[Move], was: Iterable[Move]) -> bool:
    """Whether the same pieces go the same way; out of which batch may differ: it is assumed."""
    return _ways(now) == _ways(was)


def _ways(moves: Iterable[Move]) -> Counter[tuple[str, str, str]]:
    ways: Counter[tuple[str, str, str]] = Counter()
    for m in moves:
        ways[m.part, m.frm.place, m.to.place] += m.qty
    return ways


def _looked_at(was: Body, answer: Answer) -> Body:
    """The act as something that needs a look: said what stands against it, nothing moved."""
    said = answer.said if answer.refused or not answer.moves else OTHERWISE
    return Body(
        act=was.act,
        tone="attention",
        said=lay_say(said),
        do=lay_say(answer.do if answer.refused else say("Count again.")),
        verdict=str(said) or str(OTHERWISE),
        wanted=was.moves,
        reverses="",
    )


OTHERWISE = say("Others have been at the same pieces meanwhile")


def _concern(body: Body) -> Concern:
    """What the supervisor finds under "Needs a look"."""
    act, counted = body.act, sum(m.qty for m in body.wanted)
    said = answer_of(body).said
    return Concern(
        id=act.id,
        what="meanwhile",
        text=say(
            "Station {station}, worker {worker}, {act}: {n} {n|piece|pieces} not counted, "
            "for when it was shared: {why}",
            station=act.station,
            worker=act.worker or "?",
            act=act.kind.replace("_", " "),
            n=counted,
            why=said,
        ),
        since=act.at,
        about=act.subject,
        choices=CHOICES,
    )
