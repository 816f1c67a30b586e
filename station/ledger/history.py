"""Writing the history: one act, one entry, all of its effects or nothing."""

import logging
import sqlite3
from collections.abc import Mapping
from contextlib import suppress
from typing import NamedTuple

import msgspec

from station.ledger import effects, statements
from station.ledger.codec import (
    Body,
    Change,
    State,
    answer_of,
    digest,
    full_shelf,
    lay_say,
    write_body,
    write_fact,
)
from station.ledger.faults import EffectsWrong, OwnBug, UnknownAct
from station.ledger.store import Store
from station.ledger.view import NotingView, Reader
from station.shop.acts import Act, Answer
from station.shop.facts import Fact, Gone
from station.shop.moves import Move
from station.shop.views import Rule

log = logging.getLogger(__name__)


class Recorded(NamedTuple):
    """What became of an act: the answer, its entry's id (None: refused) and its moves."""

    answer: Answer
    entry: str | None
    moves: tuple[Move, ...]


class History:
    """The entries: decides, appends, derives."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.reader = Reader(store)
        self.reload()

    def reload(self) -> None:
        """Reads where the chain ends."""
        newest = self.store.run(statements.NEWEST).fetchone()
        self.number: int = newest[0] if newest else 0
        self.digest: bytes = newest[1] if newest else b""
        self.at: str = newest[2] if newest else ""
        self.reader.forget()

    def repeated(self, id: str) -> Recorded | None:
        """What was answered to this act when it was recorded before."""
        body = self.reader.body(id)
        return Recorded(answer_of(body), id, body.moves) if body else None

    def record(self, act: Act, rule: Rule, local: Mapping[str, str]) -> Recorded:
        """Decides on the act and writes its entry, and local values with it."""
        try:
            with self.store.faults():
                return self._record(act, rule, local)
        except OwnBug:
            log.exception("Not recorded: %r", act)
            raise

    def _record(self, act: Act, rule: Rule, local: Mapping[str, str]) -> Recorded:
        if again := self.repeated(act.id):
            return again
        answer = rule.decide(act, NotingView(self.reader, rule.reads))
        if answer.refused:
            return Recorded(answer, None, ())
        effects.check_moves(answer.moves)
        body = Body(
            act=act,
            tone=answer.tone,
            said=lay_say(answer.said),
            do=lay_say(answer.do),
            moves=answer.moves,
            sets=self._changes(answer.sets),
            prints=answer.prints,
        )
        self.append(body, answer.sets, local)
        return Recorded(answer, act.id, answer.moves)

    def append(self, body: Body, facts: tuple[Fact, ...], local: Mapping[str, str]) -> None:
        """Writes one entry with its effects in one transaction."""
        number, at = self.number + 1, body.act.at
        text = write_body(body)
        link = digest(self.digest, body.act.id, text)
        row = effects.entry_row(number, body, text, link)
        try:
            self._write(body, row, local)
        except BaseException:  # stopped at whatever point: ask the file where the chain ends
            with suppress(sqlite3.Error):
                self.reload()
            raise
        self.number, self.digest, self.at = number, link, at
        self._hold(body, facts)
        self.store.values.update(local)
        self.store.bound_log()

    def _write(self, body: Body, row: effects.EntryRow, local: Mapping[str, str]) -> None:
        act = body.act
        with self.store.writing() as connection:
            short = effects.apply_moves(connection, body.moves)
            if short:
                raise EffectsWrong(f"{act.kind} would leave less than nothing: {short}")
            effects.apply_sets(connection, act.id, body.sets)
            effects.apply_tally(connection, body)
            connection.execute(statements.ADD_ENTRY, row)
            for key, value in local.items():
                self.store.put(key, value)

    def _hold(self, body: Body, facts: tuple[Fact, ...]) -> None:
        """Keeps the facts as written at hand."""
        known = {fact.key: fact for fact in facts}
        for change in body.sets:
            state = change.after
            if state and not state.entry:
                state = State(state.body, state.shelf, state.rank, body.act.id)
            self.reader.took(change.key, state, known.get(change.key))

    def _changes(self, facts: tuple[Fact, ...]) -> tuple[Change, ...]:
        """The facts set anew, each with the state before."""
        changes = []
        for fact in facts:
            before = self.reader.state(fact.key)
            if isinstance(fact, Gone):
                changes.append(Change(fact.key, before, None))
                continue
            shelf, rank = full_shelf(fact)
            after = State(msgspec.Raw(write_fact(fact)), shelf, rank)
            changes.append(Change(fact.key, before, after))
        if len({c.key for c in changes}) != len(changes):
            raise EffectsWrong(f"One fact is set twice: {[c.key for c in changes]}")
        return tuple(changes)


def rule_for(rules: Mapping[str, Rule], kind: str) -> Rule:
    """The rule that decides on this kind of act."""
    rule = rules.get(kind)
    if rule is None:
        raise UnknownAct(f"No rule decides on {kind}")
    return rule
