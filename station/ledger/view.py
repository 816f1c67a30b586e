"""The shop as rules, dialogues and faces read it, straight from the derived tables."""

from collections.abc import Callable, Iterable
from typing import Any, NamedTuple, overload

import msgspec

from station.ledger import statements
from station.ledger.cache import MOVED, RECORDED, Answered, CachedReads
from station.ledger.codec import (
    Body,
    State,
    lift_say,
    past_of,
    read_body,
    read_fact,
    read_reading,
)
from station.ledger.faults import ReadsWrong
from station.ledger.store import Store
from station.shop.acts import Args
from station.shop.facts import Fact
from station.shop.moves import Held
from station.shop.views import A, F, Noted, Passed, Past, Rules, T, Told, View

CACHED = 20_000  # facts held decoded before the cache starts anew
NOT_SHARED = 1 << 40  # the number of what waits in `pending` begins here, behind every entry


class KeptFact(NamedTuple):
    """A fact's state, and the fact once it was decoded."""

    state: State
    fact: Fact | None


class Reader:
    """Reads the tables; facts decoded once are held by key and the entry that set them."""

    def __init__(self, store: Store, rules: Rules) -> None:
        self.office: tuple[str, ...] = ()  # its stations; none: every one
        self.shared = False  # whether acts may stand in `pending`, behind the history
        self.begins = ""  # when this PC's history begins; empty where all of it is here
        self._store, self._rows, self._rules = store, store.rows, rules
        self._kept: dict[str, KeptFact] = {}
        self._before: dict[str, KeptFact] = {}  # from before a transaction that takes news in
        self._aside: dict[str, KeptFact] = {}  # of one that stands open
        self._changed: set[str] | None = set()  # facts that it set anew; None: any
        self.hidden: set[str] = set()  # acts in `pending` that are decided again later
        self.held = CachedReads(store)

    def state(self, key: str) -> State | None:
        """A fact as it stands, of whatever kind."""
        if key in self._kept:
            return self._kept[key].state
        rows = self._rows(statements.FACT, (key,))
        return self._keep(rows[0]).state if rows else None

    def fact(self, kind: type[F], key: str) -> F | None:
        """A fact by its key."""
        return self._decode(kind, key) if self.state(key) else None

    def facts(self, kind: type[F]) -> tuple[F, ...]:
        """All facts of a kind by key."""
        span = (f"{kind.kind}/", f"{kind.kind}0")  # 0 stands next after the slash
        return self._all(kind, self._rows(statements.FACTS, span))

    def shelf(self, kind: type[F], name: str, limit: int) -> tuple[F, ...]:
        """Facts on a shelf by rank."""
        shelf = f"{kind.kind}/{name}"
        return self.held.shelf(
            shelf, limit, lambda: self._all(kind, self._rows(statements.SHELF, (shelf, limit)))
        )

    def stock(self, batch: str, place: str) -> tuple[Held, ...]:
        """Pieces above zero, oldest batch first."""
        return self.held.stock((batch, place), lambda: self._stock(batch, place))

    def _stock(self, batch: str, place: str) -> tuple[Held, ...]:
        if batch and place:
            rows = self._rows(statements.STOCK_AT, (batch, place))
        elif batch:
            rows = self._rows(statements.STOCK_BATCH, (batch,))
        elif place:
            rows = self._rows(statements.STOCK_PLACE, (place,))
        else:
            raise ReadsWrong("stock() needs a batch or a place")
        return tuple(map(Held._make, rows))

    def body(self, id: str) -> Body | None:
        """An entry's body by its act's id."""
        rows = self._rows(statements.BODY_BY_ID, (id,))
        if not rows and self.shared and id not in self.hidden:
            rows = self._rows(statements.PENDING_BY_ID, (id,))
        return self._body(rows[0][0]) if rows else None

    def _body(self, text: str) -> Body:
        try:
            return read_body(text)
        except msgspec.DecodeError as error:
            raise self._store.spoilt() from error

    def past(self, id: str) -> Past[Any] | None:
        """An entry by its act's id."""
        body = self.body(id)
        return self.past_of(body) if body else None

    def last(self, subject: str, kind: type[Args] | str) -> Past[Any] | None:
        """The newest entry about a subject."""
        name = kind if isinstance(kind, str) else kind.kind
        body = self._last(subject, name)
        past = self.past_of(body) if body else None
        fits = isinstance(kind, str) or (past and isinstance(past.act.args, kind))
        return past if fits else None

    def _last(self, subject: str, kind: str) -> Body | None:
        if self.shared and (mine := self._pending(subject, kind)):
            return mine
        rows = (
            self._rows(statements.LAST_OF_KIND, (subject, kind))
            if kind
            else self._rows(statements.LAST, (subject,))
        )
        return self._body(rows[0][0]) if rows else None

    def _pending(self, subject: str, kind: str) -> Body | None:
        """The newest act about a subject that is not shared yet."""
        bodies = (self._body(r[0]) for r in self._rows(statements.PENDING_ABOUT, (subject,)))
        seen = (b for b in bodies if b.act.id not in self.hidden)
        return next((b for b in seen if not kind or b.act.kind == kind), None)

    def told(self, subject: str, limit: int) -> tuple[Told, ...]:
        """The newest entries about a subject, or about anything, as the strip told them."""
        rows: list[tuple[int, str]] = []
        if self.shared:
            waits = self._newest(
                statements.PENDING_TOLD_ABOUT, statements.PENDING_TOLD, subject, limit
            )
            rows += [(NOT_SHARED + seq, text) for seq, text in waits]
        if (left := limit - len(rows)) > 0:
            rows += self._newest(statements.TOLD_ABOUT, statements.TOLD, subject, left)
        bodies = ((number, self._body(text)) for number, text in rows)
        return tuple(self._told(number, body) for number, body in bodies if not body.verdict)

    def _newest(self, about: str, every: str, subject: str, limit: int) -> list[tuple[int, str]]:
        return self._rows(about, (subject, limit)) if subject else self._rows(every, (limit,))

    def _told(self, number: int, body: Body) -> Told:
        act = body.act
        said, undone = lift_say(body.said), self.undone(act.id)
        return Told(number, act.id, act.at, act.worker, act.subject, said, undone, act.station)

    def passed(self, since: str, until: str) -> tuple[Passed, ...]:
        """Sums of moves by hour."""
        return tuple(map(Passed._make, self._rows(statements.TALLY, (since, until))))

    def series(self, subject: str, kind: str, since: str) -> tuple[Noted, ...]:
        """Readings by time."""
        rows = self._rows(statements.SERIES, (subject, kind, since))
        try:
            return tuple(Noted(at, entry, read_reading(text)) for at, entry, text in rows)
        except msgspec.DecodeError as error:
            raise self._store.spoilt() from error

    def past_of(self, body: Body) -> Past[Any]:
        """A body as a rule sees it."""
        try:
            return past_of(body, self._rules, undone=self.undone(body.act.id))
        except msgspec.DecodeError as error:
            raise self._store.spoilt() from error

    def undone(self, id: str) -> bool:
        """Whether an entry was taken back."""
        return self.state(f"undone/{id}") is not None

    def answer(self, name: str, work_out: Callable[[View], Any]) -> Answered:
        """What a question works out, with all that it read; held until some of it changes."""

        def work() -> Answered:
            view = AskingView(self)
            return Answered(work_out(view), view.reads)

        return self.held.once(name, work)

    def took(self, key: str, state: State | None, fact: Fact | None) -> None:
        """Holds a fact as it was just written."""
        if state is None:
            self._kept.pop(key, None)
        else:
            self._kept[key] = KeptFact(state, fact)

    def forget(self, keys: Iterable[str] | None = None) -> None:
        """Holds these facts no longer, or none: they were rolled back or came from elsewhere."""
        if keys is None:
            self._kept.clear()
            self._changed = None
            return
        for key in keys:
            self._kept.pop(key, None)
            if self._changed is not None:
                self._changed.add(key)

    def set_out(self) -> None:
        """News is taken in: what is held from before is for those who ask in between."""
        self._before, self._kept, self._changed = self._kept, {}, set()
        self.held.set_out()

    def put_aside(self) -> None:
        """Puts aside what is held of a transaction that stands open."""
        self._kept, self._aside = self._before, self._kept

    def take_back(self) -> None:
        """Holds again what was put aside."""
        self._kept, self._aside = self._aside, {}

    def drop_aside(self) -> None:
        """Drops what was put aside: it was rolled back."""
        self._aside = {}

    def come_in(self) -> None:
        """News is in: what it did not set anew is held as before."""
        if self._changed is not None:
            left = {k: kept for k, kept in self._before.items() if k not in self._changed}
            self._kept = left | self._kept
        self._before, self._changed = {}, set()
        self.held.come_in()

    def _all(self, kind: type[F], rows: list[tuple[str, ...]]) -> tuple[F, ...]:
        for row in rows:
            held = self._kept.get(row[0])
            if held is None or held.state.entry != row[4]:
                self._keep(row)
        return tuple(self._decode(kind, row[0], row) for row in rows)

    def _keep(self, row: tuple[str, ...]) -> KeptFact:
        if len(self._kept) > CACHED:
            self._kept.clear()
        key, body, shelf, rank, entry = row
        kept = KeptFact(State(msgspec.Raw(body), shelf, rank, entry), None)
        self._kept[key] = kept
        return kept

    def _decode(self, kind: type[F], key: str, row: tuple[str, ...] | None = None) -> F:
        kept = self._kept.get(key)
        if kept is None:  # the cache was started anew while a long list was read
            assert row is not None
            kept = self._keep(row)
        if isinstance(kept.fact, kind):
            return kept.fact
        try:
            fact = read_fact(kind, kept.state.body)
        except msgspec.DecodeError as error:
            raise self._store.spoilt() from error
        self._kept[key] = KeptFact(kept.state, fact)
        return fact


class OpenView:
    """The view for dialogues and faces."""

    def __init__(self, reader: Reader) -> None:
        self._reader = reader

    def get(self, kind: type[F], id: str) -> F | None:
        """The fact of this kind and id, or None."""
        return self._reader.fact(kind, f"{kind.kind}/{id}")

    def stock(self, *, batch: str = "", place: str = "") -> tuple[Held, ...]:
        """Pieces above zero of a batch, at a place, or both; oldest batch first."""
        return self._reader.stock(batch, place)

    def shelf(self, kind: type[F], name: str, limit: int = 50) -> tuple[F, ...]:
        """Facts on a shelf in the order of their rank."""
        return self._reader.shelf(kind, name, limit)

    def once(self, name: str, work_out: Callable[[View], T]) -> T:
        """What a question works out, held until what it read changes."""
        found: T = self._reader.answer(name, work_out).value
        return found

    def past(self, id: str) -> Past[Any] | None:
        """An entry of the history by its act's id."""
        return self._reader.past(id)

    def passed(self, since: str, until: str) -> tuple[Passed, ...]:
        """Sums of moves by hour, from hour `since` up to and including hour `until`."""
        return self._reader.passed(since, until)

    def series(self, subject: str, kind: str, since: str = "") -> tuple[Noted, ...]:
        """Readings of one kind by time, of a thing or of what came from it."""
        return self._reader.series(subject, kind, since)

    @overload
    def last(self, subject: str, kind: type[A]) -> Past[A] | None: ...
    @overload
    def last(self, subject: str, kind: str = "") -> Past[Any] | None: ...
    def last(self, subject: str, kind: type[Args] | str = "") -> Past[Any] | None:
        """The newest entry about a subject (of one kind of act, where given)."""
        return self._reader.last(subject, kind)

    def told(self, subject: str, limit: int) -> tuple[Told, ...]:
        """The newest entries about a subject (empty: about anything), the newest first."""
        return self._reader.told(subject, limit)

    def begins(self) -> str:
        """When this PC's history begins; empty where all of it is here."""
        return self._reader.begins

    def office(self) -> tuple[str, ...]:
        """The stations of the office; none: every one."""
        return self._reader.office


class NotingView:
    """The view for one decision: notes every read and holds the rule to the kinds it lists.

    The names of reads and of writes (`effects.writes`) are the same: whatever changes what
    was read carries a name that was noted.
    """

    def __init__(self, reader: Reader, allowed: frozenset[type[Fact]]) -> None:
        self._reader = reader
        self._allowed = allowed
        self.reads: set[str] = set()

    def get(self, kind: type[F], id: str) -> F | None:
        """The fact of this kind and id, or None."""
        self._check(kind)
        key = f"{kind.kind}/{id}"
        self.reads.add(key)
        return self._reader.fact(kind, key)

    def stock(self, *, batch: str = "", place: str = "") -> tuple[Held, ...]:
        """Pieces above zero of a batch, at a place, or both; oldest batch first."""
        if batch and place:
            self.reads.add(f"at/{place}/{batch}")
        else:
            self.reads.add(f"stock/{batch}" if batch else f"place/{place}")
        return self._reader.stock(batch, place)

    def shelf(self, kind: type[F], name: str, limit: int = 50) -> tuple[F, ...]:
        """Facts on a shelf in the order of their rank."""
        self._check(kind)
        self.reads.add(f"shelf/{kind.kind}/{name}")
        return self._reader.shelf(kind, name, limit)

    def once(self, _name: str, work_out: Callable[[View], T]) -> T:
        """Works it out anew, so that every read is noted."""
        return work_out(self)

    def past(self, id: str) -> Past[Any] | None:
        """An entry of the history by its act's id."""
        self.reads.update((f"act/{id}", f"undone/{id}"))
        return self._reader.past(id)

    def passed(self, since: str, until: str) -> tuple[Passed, ...]:
        """For faces only: what a decision depends on must have a name."""
        raise ReadsWrong(f"A rule reads the flow from {since} to {until}: that is for faces")

    def series(self, subject: str, kind: str, since: str = "") -> tuple[Noted, ...]:
        """Readings of one kind by time, of a thing or of what came from it."""
        self.reads.add(f"series/{subject}/{kind}")
        return self._reader.series(subject, kind, since)

    @overload
    def last(self, subject: str, kind: type[A]) -> Past[A] | None: ...
    @overload
    def last(self, subject: str, kind: str = "") -> Past[Any] | None: ...
    def last(self, subject: str, kind: type[Args] | str = "") -> Past[Any] | None:
        """The newest entry about a subject (of one kind of act, where given)."""
        self.reads.add(f"about/{subject}")
        return self._reader.last(subject, kind)

    def told(self, subject: str, limit: int) -> tuple[Told, ...]:
        """For faces only: what a decision depends on must have a name."""
        raise ReadsWrong(f"A rule reads {limit} entries about {subject}: that is for faces")

    def begins(self) -> str:
        """When this PC's history begins; empty where all of it is here."""
        return self._reader.begins

    def office(self) -> tuple[str, ...]:
        """For dialogues and faces only: the ledger holds each act against it."""
        raise ReadsWrong("A rule asks which stations are the office's: the ledger does")

    def _check(self, kind: type[Fact]) -> None:
        if kind not in self._allowed:
            raise ReadsWrong(f"A rule reads {kind.kind} but does not list it")


class AskingView(NotingView):
    """The view for a question whose answer is held: every kind may be read, and faces' reads."""

    def __init__(self, reader: Reader) -> None:
        super().__init__(reader, frozenset())

    def once(self, name: str, work_out: Callable[[View], T]) -> T:
        """What another question works out: all that it read counts as read here too."""
        found = self._reader.answer(name, work_out)
        self.reads |= found.reads
        value: T = found.value
        return value

    def passed(self, since: str, until: str) -> tuple[Passed, ...]:
        """Sums of moves by hour: any move may change them."""
        self.reads.add(MOVED)
        return self._reader.passed(since, until)

    def told(self, subject: str, limit: int) -> tuple[Told, ...]:
        """The newest entries: any entry may change them."""
        self.reads.add(RECORDED)
        return self._reader.told(subject, limit)

    def _check(self, kind: type[Fact]) -> None:
        """Any kind may be read."""
