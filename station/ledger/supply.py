"""The numbers that one station hands out: from its own block, and from spare ones.

On a single PC the next block is taken when it is wanted. Where stations share, a block is
only this station's once the shop has it; so a spare one is asked for ahead, and where none
is left and the shop is away, no number is handed out at all: none is ever given twice.
"""

from collections.abc import Callable
from datetime import datetime

from station.ledger import statements
from station.ledger.codec import read_body, read_fact
from station.ledger.faults import Fault
from station.ledger.history import History
from station.ledger.numbers import (
    BLOCK,
    LEAP,
    LEAPING,
    TAKE_BLOCK,
    TAKING,
    WIDTHS,
    Block,
    TakeNumbers,
    block_taken,
)
from station.shop.acts import Act
from station.shop.facts import Numbers

ASKED, SPARE, OWN = "asked/", "spare/", "numbers/"  # local: by kind of number


class NoNumbers(Fault):
    """No number is left that is this station's alone."""

    def __init__(self, kind: str) -> None:
        super().__init__(
            f"No {kind} numbers are left here. New ones are being asked of the shop: "
            "do it again in a moment. While the shop is away, do it at another station."
        )


class Supply:
    """Hands out numbers. `handed` are local values that the next commit writes down."""

    def __init__(
        self, history: History, station: str, ids: Callable[[], str], handed: dict[str, str]
    ) -> None:
        self._history, self._station, self._ids = history, station, ids
        self._handed = handed

    def take(self, kind: str) -> str:
        """The next number that prints and is not taken. Raises NoNumbers."""
        if kind not in WIDTHS:
            raise ValueError(f"Codes of kind {kind} are not numbered")
        block = Block(kind, self._value(OWN + kind))
        while (number := block.take(self._history.reader)) is None:
            block = self._next(block)
        self._handed[block.key] = block.kept()
        return number

    def ask_ahead(self) -> None:
        """Asks for a spare block of what papers are made of, where there is none."""
        for kind in LEAPING:
            if not self._value(SPARE + kind) and not self._value(ASKED + kind):
                self._ask(kind)

    def settle(self) -> dict[str, str]:
        """The local values that follow from asked blocks that the shop has given by now."""
        found: dict[str, str] = {}
        for key, id_ in self._history.store.values.items():
            if key.startswith(ASKED) and id_ and (block := self._given(id_)):
                kind = key.removeprefix(ASKED)
                found |= {key: "", SPARE + kind: block}
        return found

    def give_up(self) -> dict[str, str]:
        """The local values after which no number from before is handed out any more.

        The file or the shop's database is an older one: others may have the same numbers.
        """
        kept = {*self._history.store.values, *self._handed}
        return {k: "" for k in kept if k.startswith((OWN, SPARE, ASKED))}

    def _value(self, key: str) -> str:
        held = self._handed.get(key)
        return self._history.store.values.get(key, "") if held is None else held

    def _next(self, used: Block) -> Block:
        if not self._history.shared:
            self._record(used.kind)
            return block_taken(self._history.reader, used.kind)
        spare = self._value(SPARE + used.kind)
        if spare:
            self._handed[SPARE + used.kind] = ""
        if not self._value(ASKED + used.kind):
            self._ask(used.kind)
        if not spare:
            raise NoNumbers(used.kind)
        return Block(used.kind, spare)

    def _ask(self, kind: str) -> None:
        self._record(kind, asked=True)

    def _record(self, kind: str, *, asked: bool = False) -> None:
        at = self._history.at or datetime.now().isoformat(timespec="seconds")
        leaping = (self._history.store.values.get(LEAP) or "").split(",")
        leap = kind in leaping
        act = Act(
            id=self._ids(),
            kind=TAKING,
            at=at,
            station=self._station,
            subject=f"numbers/{kind}",
            args=TakeNumbers(of=kind, leap=leap),
        )
        local = {LEAP: ",".join(k for k in leaping if k != kind)} if leap else {}
        if asked:
            local |= {ASKED + kind: act.id}
        self._history.record(act, TAKE_BLOCK, local)

    def _given(self, id: str) -> str:
        """The block of an act that the shop has; empty while it waits."""
        rows = self._history.store.rows(statements.BODY_BY_ID, (id,))
        if not rows:
            return ""
        after = read_body(rows[0][0]).sets[0].after
        assert after
        end = read_fact(Numbers, after.body).next
        return f"{end - BLOCK},{end}"
