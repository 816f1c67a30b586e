"""One run: stations at work, faults by chance, then all is healed and held to the invariants."""

import shutil
from collections import Counter
from copy import deepcopy
from pathlib import Path
from random import Random
from typing import NamedTuple

from station.ledger.codec import Body, read_body
from station.ledger.ledger import Ledger
from station.ledger.numbers import TAKE_BLOCK, TAKING
from station.shop.facts import Concern, Order, Pack
from station.shop.moves import balancing
from tests.simulate.founded import STATIONS, Founded
from tests.simulate.station import SimStation

STEPS = 260
ROUNDS = 60  # until all is shared once nothing is broken any more


class Tally(NamedTuple):
    """What a run came to: acts, those somebody was before in, those lost, faults by name."""

    acts: int
    contested: int
    lost: int
    faults: Counter[str]


class World:
    """All stations of one seed."""

    def __init__(self, founded: Founded, folder: Path, seed: int) -> None:
        self.random = Random(seed)
        self.shop = deepcopy(founded.shop)
        self.faults: Counter[str] = Counter()
        self.images: dict[str, tuple[bytes, int]] = {}
        self.gone: set[str] = set()  # acknowledged, and then every copy was destroyed
        self.stations = []
        for number in STATIONS:
            path = folder / f"{number}.db"
            for left in folder.glob(f"{number}.db*"):
                left.unlink()
            shutil.copyfile(founded.folder / f"{number}.db", path)
            random = Random(self.random.getrandbits(64))
            self.stations.append(SimStation(number, path, self.shop, founded.rules, random))
        self.minute = 0

    def run(self) -> Tally:
        """Works, breaks, heals; raises AssertionError where an invariant does not hold."""
        try:
            for _ in range(STEPS):
                self._step()
            self._heal()
            self._hold()
        finally:
            for station in self.stations:
                station.ledger.close()
        acts = sum(s.recorded for s in self.stations)
        contested = len(set().union(*(s.contested for s in self.stations)))
        lost = sum(s.turned for s in self.stations)
        return Tally(acts, contested, lost, self.faults)

    def _step(self) -> None:
        station, dice = self.random.choice(self.stations), self.random.random()
        self._tick(station)
        if dice < 0.55:
            station.work()
        elif dice < 0.93:
            station.talk()
        else:
            self._break(station)

    def _tick(self, station: SimStation) -> None:
        """A minute goes by; the third station's clock is a day behind."""
        self.minute += 1
        day = 24 if station.number == "3" else 25
        hour, minute = divmod(8 * 60 + self.minute, 60)
        station.clock.pin(f"2026-11-{day}T{hour % 24:02d}:{minute:02d}:00")

    # --- faults

    def _break(self, station: SimStation) -> None:
        kind = self.random.choices(
            ("cut", "deaf", "mend", "crash", "again", "image", "old disk", "old shop"),
            (2, 2, 5, 3, 2, 1, 0.5, 0.4),
        )[0]
        self.faults[kind] += 1
        if kind in ("cut", "deaf", "mend"):
            station.link.cut, station.link.deaf = kind == "cut", kind == "deaf"
        elif kind == "crash":
            station.crash(self.random.choice((0, 1, 10, 40, 100, 200)))
        elif kind == "again":
            station.again()
        elif kind == "image":
            self.images[station.number] = (station.image(), len(station.acked))
        elif kind == "old disk" and station.number in self.images:
            self._old_disk(station)
        elif kind == "old shop":
            self._old_shop()

    def _old_disk(self, station: SimStation) -> None:
        """What only this disk knew is lost with it; nothing else is."""
        image, _ = self.images[station.number]
        before = station.ids()
        station.restore(image)
        self._forget(before)

    def _old_shop(self) -> None:
        """A backup from before is put back, and its owner says so."""
        before = {e.id for e in self.shop.entries}
        least = len(self.shop.entries) - self.random.randrange(1, 6)
        self.shop.put_back(max(least, 20))
        self.shop.epoch += 1
        self._forget(before)

    def _forget(self, ids: set[str]) -> None:
        """Of these ids, those that nobody has any more cannot be asked for."""
        left = {e.id for e in self.shop.entries}.union(*(s.ids() for s in self.stations))
        self.gone |= ids - left

    # --- in the end

    def _heal(self) -> None:
        for station in self.stations:
            station.link.cut = station.link.deaf = False
        for _ in range(ROUNDS):
            for station in self.stations:
                for _ in range(3):
                    station.talk()
        waiting = {s.number: len(s.pending()) for s in self.stations}
        heads = {s.ledger._history.number for s in self.stations}
        assert not any(waiting.values()), f"not shared in the end: {waiting}"
        assert heads == {len(self.shop.entries)}, "a station is behind in the end"

    def _hold(self) -> None:
        """The six invariants."""
        ids = [e.id for e in self.shop.entries]
        acked = set().union(*(s.acked for s in self.stations))
        assert acked - self.gone <= set(ids), "an acknowledged act is missing"
        assert len(ids) == len(set(ids)), "an id is there twice"
        books = [_tables(s) for s in self.stations]
        assert all(b == books[0] for b in books), "the stations differ"
        self._pieces()
        self._given_once()
        if not self.faults["old shop"]:  # what is shared once more need not be decided again
            self._in_order()
        problems = self.stations[0].ledger.check()  # the others hold the very same
        assert problems == [], problems

    def _pieces(self) -> None:
        sums: Counter[str] = Counter()
        for held in self.stations[0].ledger.balances():
            sums[held.part] += held.qty
            assert held.qty >= 0 or balancing(held.place), f"less than nothing: {held}"
        assert not any(sums.values()), "pieces do not balance"

    def _given_once(self) -> None:
        """No order is packed twice, no number was given to two acts, what is lost is shown."""
        ledger = self.stations[0].ledger
        packs = Counter(p.order for p in ledger.facts(Pack) if p.state != "opened")
        assert max(packs.values(), default=0) <= 1, f"an order was packed twice: {packs}"
        numbers: Counter[tuple[str, str]] = Counter()
        for entry in self.shop.entries:
            body = read_body(entry.body)
            given = body.act.args.get("numbers")
            numbers.update(given.items() if isinstance(given, dict) else ())
            if entry.verdict:
                assert ledger.view.get(Concern, entry.id), "a lost act is shown nowhere"
        assert max(numbers.values(), default=0) <= 1, f"a number was given twice: {numbers}"
        assert all(o.state != "packed" or not o.claimed for o in ledger.facts(Order))

    def _in_order(self) -> None:
        """One PC alone, given all acts in their order, comes to the very same shop."""
        path = self.stations[0].path.with_name("alone.db")
        for left in path.parent.glob("alone.db*"):
            left.unlink()
        alone = Ledger(path, self.stations[0].rules)
        alone.hurry(on=True)
        for entry in self.shop.entries:
            body = read_body(entry.body)
            _record(alone, body)
            kept = alone._history.reader.body(entry.id)
            assert kept == body, f"decided otherwise in order: {entry.id} {body.act.kind}"
        alone.close()


def _record(alone: Ledger, body: Body) -> None:
    """The act of an entry, as a PC would do it that knows all before it."""
    act = body.act
    if body.verdict:
        alone._history.append(body, (), {})
    elif body.reverses:
        alone.undo(body.reverses, act)
    elif act.kind == TAKING:
        alone._history.record(act, TAKE_BLOCK, {})
    else:
        alone.record(act)


def _tables(station: SimStation) -> list[list[tuple[object, ...]]]:
    run = station.ledger._store.run
    return [
        run(f"SELECT * FROM {table} ORDER BY 1, 2, 3, 4").fetchall()
        for table in ("entry", "balance", "fact", "tally")
    ]
