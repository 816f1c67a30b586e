"""Writing the history: one act, one entry, all of its effects or nothing."""

import logging
from collections.abc import Mapping
from collections.abc import Set as AbstractSet
from contextlib import suppress
from typing import Any, NamedTuple

from station.ledger import closing, effects, statements
from station.ledger.codec import (
    Body,
    Change,
    KeptAct,
    State,
    answer_of,
    digest,
    keep_act,
    keep_reading,
    lay_say,
    read_body,
    state_of,
    write_body,
)
from station.ledger.faults import EffectsWrong, Fault, OwnBug, UnknownAct
from station.ledger.last_recorded import Newest
from station.ledger.sound import MOST_PIECES, can_move
from station.ledger.store import Store
from station.ledger.view import NotingView, Reader
from station.shop.acts import Act, Answer, SetPin, refuse
from station.shop.facts import Fact, Gone
from station.shop.limits import find_unfit
from station.shop.moves import Move
from station.shop.office import is_of_office, refuse_elsewhere
from station.shop.times import FIRST, LAST
from station.shop.views import Rule, Rules
from station.shop.words import Say, say

log = logging.getLogger(__name__)
SHOP = "shop"  # local: the site that this station shares with
OFFICE = "office"  # local: the numbers of its stations, with blanks between; none: every one
UNSURE = refuse(
    say("That cannot be made sure now: the shop's database does not answer"),
    say("Go on with what is yours already, or try again later."),
)
NO_SUCH_YEAR = refuse(
    say("This PC's clock is wrong: nothing was counted"),
    say("Set the PC's date, then do it again."),
)


class Recorded(NamedTuple):
    """What became of an act: the answer, its entry's id (None: refused) and its moves.

    `certain`: it only counts once the shop has said so (`Ledger.verdict`).
    """

    answer: Answer
    entry: str | None
    moves: tuple[Move, ...]
    certain: bool = False


class Decided(NamedTuple):
    """What a rule says: the answer, the body to be kept (None: refused), what was read."""

    answer: Answer
    body: Body | None
    reads: AbstractSet[str]


PendingRow = tuple[int | None, str, str, str, str]


def pending_row(seq: int | None, body: Body, text: str, reads: AbstractSet[str]) -> PendingRow:
    """The row of an act that is not shared yet.

    What the effects rest on counts as read too: a state before, a spot that is taken from.
    """
    names = sorted({*reads, *effects.rests_on(body)})
    return (seq, body.act.id, body.act.subject, effects.list_text(names), text)


class History:
    """The entries: decides, appends, derives."""

    def __init__(self, store: Store, rules: Rules) -> None:
        self.store, self.rules = store, rules
        self.reader = Reader(store, rules)
        self.reached = False  # whether the shop answered when it was last asked
        self.waits: tuple[int, list[Any]] = (-1, [])  # `again.waiting`, at so many rows written
        self.share(shared=bool(store.values.get(SHOP)))
        self.reload()

    def share(self, *, shared: bool) -> None:
        """Whether acts wait in `pending` until the shop has them, or are entries at once."""
        self.shared = self.reader.shared = shared

    def reload(self) -> None:
        """Reads where the chain ends; nothing is held of what may have been rolled back."""
        self.reader.forget()
        begin = closing.begin_of(self.store)
        self.office = self.reader.office = tuple(self.store.values.get(OFFICE, "").split())
        rows = self.store.rows(statements.NEWEST)
        self.number, self.digest, self.at = closing.Begin(*rows[0]) if rows else begin
        self.reader.begins = begin.at

    def after_a_stop(self) -> None:
        """Stopped at whatever point: the file is asked where the chain ends, if it answers.

        Where it does not, the disk failed, and nothing was committed.
        """
        with suppress(Fault):
            self.reload()

    def repeated(self, id: str) -> Recorded | None:
        """What was answered to this act when it was recorded before."""
        body = self.reader.body(id)
        return Recorded(answer_of(body), id, body.moves) if body else None

    def record(self, act: Act[Any], rule: Rule[Any], local: Mapping[str, str]) -> Recorded:
        """Decides on the act and writes its entry, and local values with it."""
        try:
            with self.store.faults():
                return self._record(act, rule, local)
        except OwnBug:
            log.exception("Not recorded: %r", act)
            raise

    def _record(self, act: Act[Any], rule: Rule[Any], local: Mapping[str, str]) -> Recorded:
        if again := self.repeated(act.id):
            return again
        if has_wrong_year(act):
            return Recorded(NO_SUCH_YEAR, None, ())
        decided = self.decide(act, rule)
        if decided.body is None:
            return Recorded(decided.answer, None, ())
        certain = decided.answer.certain if self.shared else ""
        if certain == "needed" and not self.reached:
            return Recorded(UNSURE, None, ())
        self.append(decided.body, decided.answer.sets, local, decided.reads)
        return Recorded(decided.answer, act.id, decided.answer.moves, bool(certain))

    def decide(self, act: Act[Any], rule: Rule[Any], kept: KeptAct | None = None) -> Decided:
        """What the rule says to the act now; nothing is written.

        `kept` is the act as it is written down already.
        """
        view = NotingView(self.reader, rule.reads)
        elsewhere = act.station not in self.office if self.office else False
        if elsewhere and act.kind == SetPin.kind:  # before it is typed
            return Decided(refuse_elsewhere(self.office), None, view.reads)
        answer = rule.decide(act, view)
        if answer.refused:
            return Decided(answer, None, view.reads)
        effects.check_moves(answer.moves)
        body = Body(
            act=kept or keep_act(act),
            tone=answer.tone,
            said=lay_say(answer.said),
            do=lay_say(answer.do),
            moves=answer.moves,
            sets=self.changes(answer.sets),
            prints=answer.prints,
            router=answer.router,
            readings=tuple(map(keep_reading, answer.readings)),
        )
        if elsewhere and is_of_office(change.key for change in body.sets):
            return Decided(refuse_elsewhere(self.office), None, view.reads)
        if why := _find_unfit(answer):
            do = say("Nothing was counted. Look at what was entered, and do it again.")
            return Decided(refuse(why, do), None, view.reads)
        return Decided(answer, body, view.reads)

    def append(
        self,
        body: Body,
        facts: tuple[Fact, ...],
        local: Mapping[str, str],
        reads: AbstractSet[str] = frozenset(),
    ) -> None:
        """Writes one act with its effects in one transaction."""
        self.reader.held.drop_outdated()
        try:
            self._write(body, local, reads)
        except BaseException:
            self.after_a_stop()
            raise
        self.at = body.act.at
        known = {fact.key: fact for fact in facts}
        self.reader.held.took(body, known)
        self._hold(body, known)
        self.store.values.update(local)
        self._note(body)
        self.store.bound_log()

    def _note(self, body: Body) -> None:
        """Notes the act that was just written as the newest."""
        was, act = self.store.note.newest, body.act
        waiting, oldest = (was.pending + 1, was.oldest or act.at) if self.shared else (0, "")
        self.store.note.write(Newest(self.number, act.id, act.at, waiting, oldest))

    def note_newest(self) -> None:
        """Notes what is newest now, after more than one act of this station."""
        (count,) = self.store.rows(statements.COUNT_PENDING)[0]
        rows = self.store.rows(statements.CHAIN_FROM, (self.number,))
        id_, at = (rows[0][1], self.at) if rows else ("", "")
        oldest = ""
        if count:
            first, last = (
                read_body(self.store.rows(statement, (1,))[0][4]).act
                for statement in (statements.FIRST_PENDING, statements.LAST_PENDING)
            )
            id_, at, oldest = last.id, last.at, first.at
        self.store.note.write(Newest(self.number, id_, at, count, oldest))

    def _write(self, body: Body, local: Mapping[str, str], reads: AbstractSet[str]) -> None:
        text = write_body(body)
        link = b"" if self.shared else digest(self.digest, body.act.id, text)
        with self.store.writing() as connection:
            self.carry_out(body)
            if self.shared:
                connection.execute(statements.ADD_PENDING, pending_row(None, body, text, reads))
            else:
                row = effects.entry_row(self.number + 1, body, text, link)
                connection.execute(statements.ADD_ENTRY, row)
            for key, value in local.items():
                self.store.put(key, value)

        if not self.shared:
            self.number, self.digest = self.number + 1, link

    def carry_out(self, body: Body) -> None:
        """Makes the effects in the tables. Raises EffectsWrong where they do not hold."""
        connection = self.store.connection
        short = effects.apply_moves(connection, body.moves)
        if short:
            raise EffectsWrong(f"{body.act.kind} would leave less than nothing: {short}")
        effects.apply_sets(connection, body.act.id, body.sets)
        effects.apply_tally(connection, body)
        effects.apply_readings(connection, body)

    def _hold(self, body: Body, known: Mapping[str, Fact]) -> None:
        """Keeps the facts as written at hand."""
        for change in body.sets:
            state = change.after
            if state and not state.entry:
                state = State(state.body, state.shelf, state.rank, body.act.id)
            self.reader.took(change.key, state, known.get(change.key))

    def changes(self, facts: tuple[Fact, ...]) -> tuple[Change, ...]:
        """The facts set anew, each with the state before."""
        changes = []
        for fact in facts:
            key = fact.key
            after = None if isinstance(fact, Gone) else state_of(fact)
            changes.append(Change(key, self.reader.state(key), after))
        if len({c.key for c in changes}) != len(changes):
            raise EffectsWrong(f"One fact is set twice: {[c.key for c in changes]}")
        return tuple(changes)


def _find_unfit(answer: Answer) -> Say:
    """Finds what in an answer no other station would take in; says nothing where there is none."""
    for move in answer.moves:
        if move.qty > MOST_PIECES and not can_move(move.part, move.qty):
            return say("{n} of {part} are too many", n=move.qty, part=move.part)
    found = (find_unfit(fact) for fact in answer.sets if not isinstance(fact, Gone))
    return next(filter(None, found), Say())


def has_wrong_year(act: Act[Any]) -> bool:
    """Tells whether an act is of a year that no other station would take in."""
    return not FIRST <= act.at[:4] <= LAST


def rule_for(rules: Rules, kind: str) -> Rule[Any]:
    """The rule that decides on this kind of act."""
    rule = rules.get(kind)
    if rule is None:
        raise UnknownAct(f"No rule decides on {kind}")
    return rule
