"""Acts that wait are decided again and shared group by group, while more comes in.

Where others go on writing what hundreds of waiting acts have read, all of them are never decided
on the newest history at once. So here the oldest may be shared as soon as they are decided, while
the rest is still undone. A scan puts all of it off as ever; what was shared by then comes back as
acts do whose reply was lost.
"""

from collections import deque
from collections.abc import Generator, Sequence

from station.ledger import rebase
from station.ledger.absorb import (
    AT_ONCE,
    Absorbing,
    Steps,
    check_chain,
    find_touched,
    find_turned,
    lay_under,
    share_own,
    take_apart,
)
from station.ledger.history import History
from station.ledger.rebase import Deciding, Waiting
from station.ledger.shop_link import SharedEntry
from station.ledger.statements import DROP_PENDING
from station.shop.views import Rules


class AbsorbingByGroups(Absorbing):
    """Takes entries in as `Absorbing` does, and those that come before all is decided again."""

    def __init__(self, history: History, rules: Rules, entries: Sequence[SharedEntry]) -> None:
        self.known: frozenset[str] = frozenset()  # ids of the acts that waited when it began
        self._done: list[Waiting] = []  # acts that stand on all entries that are in, in order
        self._undone: deque[Waiting] = deque()  # those behind them
        self._fresh = list(entries)  # entries that are not in yet
        super().__init__(history, rules, entries)

    def grow(self, entries: Sequence[SharedEntry]) -> None:
        """Takes more entries in. Raises HistoryBroken where they do not follow."""
        check_chain(self.entries[-1].number, self.entries[-1].digest, entries)
        self.entries = (*self.entries, *entries)
        self._fresh += entries

    def list_ready(self, limit: int) -> list[Waiting]:
        """Lists the oldest acts that stand on all entries: they may be shared behind these."""
        return [] if self._fresh else self._done[:limit]

    def _begin(self, *, trusted: bool) -> Steps:
        assert not trusted
        return self._take_by_groups()

    def _take_by_groups(self) -> Steps:
        self._done = list(rebase.waiting(self._history))
        self.known = frozenset(act.id for act in self._done)
        yield
        deciding = Deciding(self._history, self._rules)
        try:
            while self._fresh or self._undone:
                if self._fresh:
                    yield from self._take_fresh(deciding)
                else:
                    self._done.append(deciding.decide(self._undone.popleft()))
                yield
        finally:
            deciding.hide(())
        return deciding.turned

    def _take_fresh(self, deciding: Deciding) -> Generator[None, None, None]:
        """Puts the first of the entries that came under all that waits."""
        history, entries = self._history, self._fresh[:AT_ONCE]
        done, self._done = self._done, []
        own = share_own(history, done, entries)
        done, rest = done[own:], entries[own:]
        if rest:
            come = yield from take_apart(history, rest)
            hit = done if (yield from find_touched(done, [body for body, _ in come])) else []
            yield from lay_under(history, hit, rest, come)
            self._undone.extendleft(reversed(hit))
            done = done[len(hit) :]
            deciding.turned += find_turned(self._undone, come)
            self._drop_shared({entry.id for entry in rest})
            deciding.hide(self._undone)
        self._done = done
        del self._fresh[: len(entries)]

    def _drop_shared(self, ids: set[str]) -> None:
        """Drops the undone acts that came as entries."""
        for act in self._undone:
            if act.id in ids:
                self._history.store.run(DROP_PENDING, (act.seq,))
        self._undone = deque(act for act in self._undone if act.id not in ids)
