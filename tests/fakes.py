"""A shop in memory for tests of rules and faces: the View protocol without a database."""

from collections import Counter
from dataclasses import dataclass, field

import msgspec

from station.shop.acts import Act, Answer, with_args
from station.shop.facts import Fact, Gone
from station.shop.moves import Held, Move, head
from station.shop.places import find_reason_of
from station.shop.views import F, Noted, Passed, Past, Rules, Told, Written
from station.shop.words import Say


def fit_args(act: Act, rules: Rules) -> Act:
    """The act with arguments that a test wrote as a dict, as its kind says."""
    kind = rules[act.kind].args
    if isinstance(act.args, kind):
        return act
    return with_args(act, msgspec.convert(msgspec.to_builtins(act.args), kind))


@dataclass
class FakeView:
    """Facts by key, pieces by (place, batch, part), and the entries so far."""

    facts: dict[str, Fact] = field(default_factory=dict)
    pieces: Counter[tuple[str, str, str]] = field(default_factory=Counter)
    entries: list[Past] = field(default_factory=list)
    routers: dict[str, str] = field(default_factory=dict)  # by act: that cut what it moved
    readings: list[Noted] = field(default_factory=list)
    beginning: str = ""
    named: tuple[str, ...] = ()  # the stations of the office
    sayings: dict[str, Say] = field(default_factory=dict)  # by act: what the strip told

    @classmethod
    def of(cls, *facts: Fact, moves: tuple[Move, ...] = ()) -> "FakeView":
        """A shop that knows these facts and has made these moves."""
        view = cls({f.key: f for f in facts})
        view._move(moves)
        return view

    def get(self, kind: type[F], id: str) -> F | None:
        found = self.facts.get(f"{kind.kind}/{id}")
        return found if isinstance(found, kind) else None

    def stock(self, *, batch: str = "", place: str = "") -> tuple[Held, ...]:
        return tuple(
            Held(p, b, part, qty)
            for (p, b, part), qty in sorted(self.pieces.items(), key=lambda i: (i[0][1], i[0]))
            if qty > 0 and (not batch or b == batch) and (not place or p == place)
        )

    def shelf(self, kind: type[F], name: str, limit: int = 50) -> tuple[F, ...]:
        on_it = [
            f
            for f in self.facts.values()
            if isinstance(f, kind) and f.shelf is not None and f.shelf[0] == name
        ]
        return tuple(sorted(on_it, key=lambda f: (f.shelf or ("", ""))[1])[:limit])

    def once(self, _name, work_out):
        return work_out(self)

    def past(self, id: str) -> Past | None:
        return next((e for e in self.entries if e.act.id == id), None)

    def passed(self, since: str, until: str) -> tuple[Passed, ...]:
        sums: Counter[tuple[str, ...]] = Counter()
        for entry in self.entries:
            hour, router = entry.act.at[:13], self.routers.get(entry.act.id, "")
            for m in entry.moves if since <= hour <= until else ():
                way = (head(m.frm.place), head(m.to.place))
                why = find_reason_of(m.to.place) or find_reason_of(m.frm.place)
                sums[hour, *way, m.part, router, why] += m.qty
        return tuple(Passed(*key, qty) for key, qty in sorted(sums.items()))

    def series(self, subject: str, kind: str, since: str = "") -> tuple[Noted, ...]:
        return tuple(
            noted
            for noted in self.readings
            if noted.at >= since
            and noted.reading.kind == kind
            and subject in noted.reading.subjects
        )

    def last(self, subject, kind=""):
        kind = kind if isinstance(kind, str) else kind.kind
        return next(
            (
                e
                for e in reversed(self.entries)
                if e.act.subject == subject and kind in ("", e.act.kind)
            ),
            None,
        )

    def told(self, subject: str, limit: int) -> tuple[Told, ...]:
        found = [
            Told(n, e.act.id, e.act.at, e.act.worker, e.act.subject,
                 self.sayings.get(e.act.id, Say()), e.undone)
            for n, e in enumerate(self.entries)
            if subject in ("", e.act.subject)
        ]  # fmt: skip
        return tuple(found[::-1][:limit])

    def begins(self) -> str:
        return self.beginning

    def office(self) -> tuple[str, ...]:
        return self.named

    def do(self, rules: Rules, act: Act) -> Answer:
        """Decides the act and, unless it is refused, takes its effects in."""
        act = fit_args(act, rules)
        answer = rules[act.kind].decide(act, self)
        if not answer.refused:
            self.apply(act, answer)
        return answer

    def apply(self, act: Act, answer: Answer) -> None:
        """Takes the effects of an answer in."""
        sets = []
        for fact in answer.sets:
            before = self.facts.pop(fact.key, None)
            if not isinstance(fact, Gone):
                self.facts[fact.key] = fact
            sets.append(Written(fact.key, before, None if isinstance(fact, Gone) else fact))
        self._move(answer.moves)
        self.routers[act.id] = answer.router
        self.sayings[act.id] = answer.said
        self.readings += [Noted(act.at, act.id, reading) for reading in answer.readings]
        self.entries.append(Past(act, answer.moves, tuple(sets), undone=False))

    def _move(self, moves: tuple[Move, ...]) -> None:
        for m in moves:
            assert m.qty > 0, m
            self.pieces[(m.frm.place, m.frm.batch, m.part)] -= m.qty
            self.pieces[(m.to.place, m.to.batch, m.part)] += m.qty
