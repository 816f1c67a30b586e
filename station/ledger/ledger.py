"""The ledger: one station's history, and all that is derived from it."""

from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path
from secrets import token_hex

from station.ledger import backup, books, check, reports, statements
from station.ledger.history import History, Recorded, rule_for
from station.ledger.numbers import LEAP, TAKE_BLOCK, TAKING, WIDTHS, Block, block_taken
from station.ledger.opening import open_sound
from station.ledger.reports import Chained, Entry, Flow
from station.ledger.undo import undo
from station.ledger.view import OpenView
from station.shop.acts import Act
from station.shop.moves import Held
from station.shop.views import F, Passed, Rules, View

__all__ = ["Entry", "Ledger", "Recorded"]

DRAFT = "draft"


def _random_id() -> str:
    return token_hex(8)


class Ledger:
    """The history in one file, held by this program alone.

    Opening creates the file when there is none. Raises a `faults.Fault` with a sentence
    for the person when the surroundings do not allow it.
    """

    def __init__(
        self, path: Path, rules: Rules, *, station: str = "1", ids: Callable[[], str] = _random_id
    ) -> None:
        self.path = path
        self.rules = rules
        self.station = station
        self._ids = ids
        self._store = open_sound(path)
        self._history = History(self._store)
        self._view = OpenView(self._history.reader)
        self._handed: dict[str, str] = {}  # local values to be written with the next commit

    @property
    def view(self) -> View:
        """The shop for dialogues and faces."""
        return self._view

    # --- recording

    def record(self, act: Act, draft: bytes | str | None = None) -> Recorded:
        """Decides on an act and records it, and the draft with it, in one transaction.

        A refusal records nothing. The same act again gives the same answer and no second
        entry. Raises a Fault with nothing recorded, or an OwnBug.
        """
        local = dict(self._handed)
        if draft is not None:
            local[DRAFT] = draft if isinstance(draft, str) else draft.decode()
        done = self._history.record(act, rule_for(self.rules, act.kind), local)
        kept = self._store.values
        self._handed = {k: v for k, v in self._handed.items() if kept.get(k) != v}
        return done

    def undo(self, id: str, act: Act) -> Recorded:
        """Takes an entry back by a reversing one, or answers why not."""
        with self._store.faults():
            return undo(self._history, id, act)

    def not_shared(self) -> int:
        """Acts that the shop's database has not taken yet; none on a single PC."""
        with self._store.faults():
            return int(self._store.run("SELECT COUNT(*) FROM pending").fetchone()[0])

    # --- what is this station's own

    def draft(self) -> str:
        """The work in hand as it was kept; empty at first."""
        return self._store.values.get(DRAFT, "")

    def keep(self, draft: str) -> None:
        """Keeps the work in hand through a power cut."""
        self.set_local(DRAFT, draft)

    def local(self, key: str) -> str | None:
        """A value that is this station's own."""
        return self._store.values.get(key)

    def set_local(self, key: str, value: str) -> None:
        """Sets a value that is this station's own; it is never shared."""
        self._write_local({key: value})

    def _write_local(self, changed: dict[str, str]) -> None:
        values = {**self._handed, **changed}
        with self._store.writing():
            for name, text in values.items():
                self._store.put(name, text)
        self._store.values.update(values)
        self._handed.clear()

    def take_number(self, kind: str) -> str:
        """The next number of a kind of code that prints and is not taken."""
        if kind not in WIDTHS:
            raise ValueError(f"Codes of kind {kind} are not numbered")
        key = f"numbers/{kind}"
        block = Block(kind, self._handed.get(key) or self.local(key))
        while (number := block.take(self._history.reader)) is None:
            block = self._next_block(block)
        self._handed[key] = block.kept()
        return number

    def _next_block(self, used: Block) -> Block:
        at = self._history.at or datetime.now().isoformat(timespec="seconds")
        leaping = (self.local(LEAP) or "").split(",")
        leap = used.kind in leaping
        act = Act(
            id=self._ids(),
            kind=TAKING,
            at=at,
            station=self.station,
            subject=f"numbers/{used.kind}",
            args={"kind": used.kind, "leap": leap},
        )
        local = {LEAP: ",".join(k for k in leaping if k != used.kind)} if leap else {}
        self._history.record(act, TAKE_BLOCK, local)
        return block_taken(self._history.reader, used.kind)

    # --- reading

    def facts(self, kind: type[F]) -> Iterator[F]:
        """All facts of a kind, by id."""
        return iter(self._history.reader.facts(kind))

    def balances(self) -> Iterator[Held]:
        """Every spot's quantity, the places that balance the books below zero."""
        return map(Held._make, self._store.rows(statements.BALANCES))

    def entries(self, *, after: int = 0, subject: str = "") -> Iterator[Entry]:
        """Entries in order, from behind a number, about one subject where given."""
        return reports.entries(self._store, self._history.reader, after, subject)

    def count(self) -> int:
        """How many entries there are."""
        return self._history.number

    def tally(self, since_hour: str, until_hour: str) -> list[Passed]:
        """Pieces moved by hour (``2026-11-25T10``, both ends included), place and part."""
        return list(self._view.passed(since_hour, until_hour))

    def flow(self, since: str, until: str) -> list[Flow]:
        """Moves between two times, what was taken back left out."""
        return reports.flow(self._store, self._history.reader, since, until)

    # --- sharing

    def chain(self, after: int) -> Iterator[Chained]:
        """Entries as they are shared, in order, from behind a number."""
        return reports.chain(self._store, after)

    def holds(self, number: int, digest: bytes) -> bool:
        """Whether this history has that digest at that number."""
        return reports.holds(self._store, number, digest)

    # --- care

    def check(self) -> list[str]:
        """What is not sound: digests, balances, derived tables. Empty: all is."""
        return check.check(self._store)

    def rebuild(self) -> None:
        """Derives every table anew from the history."""
        books.rebuild(self._store)
        self._history.reload()

    def backup(self, file: Path) -> None:
        """Writes the whole history into one file that can be restored."""
        backup.backup(self._store, file)

    @staticmethod
    def restore(file: Path, path: Path) -> None:
        """Puts a backup in the place of a station's file, which is set aside."""
        backup.restore(file, path)

    def idle(self) -> None:
        """Nothing is asked for now: moves the log into the file."""
        self._store.checkpoint()

    def hurry(self, *, on: bool) -> None:
        """Does not wait for the disk while a demo shop is built; never while people work."""
        self._store.run(f"PRAGMA synchronous={'OFF' if on else 'FULL'}")

    def close(self) -> None:
        """Closes the file."""
        if self._handed:
            self._write_local({})
        self._store.close()
