"""One run: stations at work, faults by chance, then all is healed and held to the invariants."""

import shutil
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

from station.ledger.codec import Body, plain_args, read_act, read_body
from station.ledger.ledger import Ledger
from station.ledger.numbers import BLOCK, TAKE_BLOCK, TAKING
from station.ledger.sound import LEFT_OUT
from station.ledger.statements import DERIVED
from station.shop.facts import Concern, Order, Pack
from station.shop.places import balances
from tests.simulate.founded import ALONE, STATIONS, Founded
from tests.simulate.station import SimStation

STEPS = 260
ROUNDS = 60  # until all is shared once nothing is broken any more
FEWEST = 3  # of a block of 20 numbers print, whichever block it is
FAULTS = {  # and how likely each is, when there is one
    "cut": 2, "deaf": 2, "full": 1, "mend": 6, "crash": 3, "again": 2, "spent": 1, "image": 1,
    "old disk": 0.5, "new PC": 0.3, "old shop": 0.4,
}  # fmt: skip
STILL = 4  # rounds in which nothing moves any more: then that is how it ends


@dataclass(frozen=True)
class Tally:
    """What a run came to: acts, those somebody was before in, those lost; faults, and the
    acts that were shared in the end, by name."""

    acts: int = 0
    contested: int = 0
    lost: int = 0
    faults: Counter[str] = field(default_factory=Counter)
    kinds: Counter[str] = field(default_factory=Counter)

    def __add__(self, more: "Tally") -> "Tally":
        return Tally(
            self.acts + more.acts,
            self.contested + more.contested,
            self.lost + more.lost,
            self.faults + more.faults,
            self.kinds + more.kinds,
        )


class World:
    """All stations of one seed."""

    def __init__(self, founded: Founded, folder: Path, seed: int) -> None:
        self.founded, self.random = founded, Random(seed)
        self.shop = founded.shop.copy()
        self.faults, self.kinds = Counter[str](), Counter[str]()
        self.images: dict[str, tuple[bytes, int]] = {}
        self.given: set[tuple[str, str]] = set()  # all numbers that acts were given, by kind
        self.gone: set[str] = set()  # acknowledged, and then every copy was destroyed
        self.stations = []
        for number in STATIONS:
            path = _fresh(founded, folder / f"{number}.db")
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
        contested = len(set().union(*(s.contested.intersection(s.acked) for s in self.stations)))
        lost = sum(s.turned for s in self.stations)
        return Tally(acts, contested, lost, self.faults, self.kinds)

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
        kind = self.random.choices(list(FAULTS), list(FAULTS.values()))[0]
        self.faults[kind] += 1
        if kind in ("cut", "deaf", "mend"):
            station.link.cut, station.link.deaf = kind == "cut", kind == "deaf"
            station.fill(full=False)
        elif kind == "full":
            station.fill(full=True)
        elif kind == "crash":
            station.crash(self.random.choice((0, 1, 10, 40, 100, 200)))
        elif kind == "again":
            station.again()
        elif kind == "spent":
            station.spend(self.random.randrange(BLOCK))
        elif kind == "image":
            self.images[station.number] = (station.image(), len(station.acked))
        elif kind == "old disk" and station.number in self.images:
            self._old_disk(station)
        elif kind == "new PC":
            self._new_pc(station)
        elif kind == "old shop":
            self._old_shop()

    def _old_disk(self, station: SimStation) -> None:
        """What only this disk knew is lost with it; nothing else is."""
        image, _ = self.images[station.number]
        before = station.ids()
        station.restore(image)
        self._forget(before)

    def _new_pc(self, station: SimStation) -> None:
        """What only the old PC knew is lost with it; a network that was cut is whole again."""
        before, head = station.ids(), len(self.shop.entries)
        number = self.random.randrange(head + 1) if self.random.random() < 0.5 else 0
        station.link.cut = station.link.deaf = False
        station.replace(self.shop.closing(number) if number else None)
        self._forget(before)

    def _old_shop(self) -> None:
        """A backup from before is put back, and its owner says so."""
        before = {e.id for e in self.shop.entries}
        least = len(self.shop.entries) - self.random.randrange(1, 6)
        begins = max(s.ledger.begins()[0] for s in self.stations)  # older than that is too old
        self.shop.put_back(max(least, 20, begins))
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
            station.fill(full=False)
        rounds = still = 0
        while rounds < ROUNDS and still < STILL:
            before = self._shared()
            for station in self.stations:
                for _ in range(3):
                    station.talk()
            rounds, still = rounds + 1, still + 1 if self._shared() == before else 0
        waiting, heads = zip(*self._shared(), strict=True)
        assert not any(waiting), f"not shared in the end: {waiting}"
        assert set(heads) == {len(self.shop.entries)}, "a station is behind in the end"

    def _shared(self) -> list[tuple[int, int]]:
        """What waits at each station, and how far its history goes."""
        return [(s.ledger.not_shared(), s.ledger._history.number) for s in self.stations]

    def _hold(self) -> None:
        """The six invariants."""
        ids = [e.id for e in self.shop.entries]
        acked = set().union(*(s.acked for s in self.stations))
        assert acked - self.gone <= set(ids), "an acknowledged act is missing"
        assert len(ids) == len(set(ids)), "an id is there twice"
        begin = max(s.ledger.begins()[0] for s in self.stations)
        books = [_tables(s, begin) for s in self.stations]
        assert all(b == books[0] for b in books), "the stations differ"
        self._pieces()
        self._given_once()
        if not self.faults["old shop"]:  # what is shared once more need not be decided again
            self._in_order()
        for station in self.stations:  # one is enough of those that hold the very same
            if station is self.stations[0] or station.ledger.begins()[0]:
                problems = station.ledger.check()
                assert problems == [], problems
        self._still_at_work()

    def _pieces(self) -> None:
        sums: Counter[str] = Counter()
        for held in self.stations[0].ledger.balances():
            sums[held.part] += held.qty
            assert held.qty >= 0 or balances(held.place), f"less than nothing: {held}"
        assert not any(sums.values()), "pieces do not balance"

    def _given_once(self) -> None:
        """No order is packed twice, no number was given to two acts, what is lost is shown."""
        ledger = self.stations[0].ledger
        packs = Counter(p.order for p in ledger.facts(Pack) if p.state != "opened")
        assert max(packs.values(), default=0) <= 1, f"an order was packed twice: {packs}"
        numbers: Counter[tuple[str, str]] = Counter()
        left_out = ledger._store.run("SELECT id FROM entry WHERE kind = ?", (LEFT_OUT,)).fetchall()
        assert not left_out, f"an entry of a sound station is left out: {left_out}"
        for entry in self.shop.entries:
            body = read_body(entry.body)
            self.kinds[body.act.kind] += 1
            given = plain_args(body.act).get("numbers")
            counts = not entry.verdict and not ledger._history.reader.undone(entry.id)
            names = given.items() if isinstance(given, dict) else ()
            self.given.update(names)
            numbers.update(names if counts else ())
            if entry.verdict:
                assert ledger.view.get(Concern, entry.id), "a lost act is shown nowhere"
        assert max(numbers.values(), default=0) <= 1, f"a number was given twice: {numbers}"
        assert all(o.state != "packed" or not o.claimed for o in ledger.facts(Order))

    def _still_at_work(self) -> None:
        """Each station has numbers that no other has, and shows what needs a look."""
        held = [s.spend(2 * BLOCK) for s in self.stations]
        assert all(len(n) > FEWEST for n in held), "a station is left without numbers"
        every = Counter(number for numbers in held for number in numbers)
        assert max(every.values()) == 1, f"two stations hold the same numbers: {held}"
        again = every.keys() & {number for kind, number in self.given if kind == "batch"}
        assert not again, f"numbers that papers bore once are handed out again: {again}"
        for scan in ("@area today", "button show_concerns", "button row_1"):
            self.stations[0].send(scan)
            assert self.stations[0].desk.face()

    def _in_order(self) -> None:
        """One PC alone, given all acts in their order, comes to the very same shop."""
        alone = Ledger(
            _fresh(self.founded, self.stations[0].path.with_name(ALONE)), self.founded.rules
        )
        alone.hurry(on=True)
        for entry in self.shop.entries[alone.count() :]:
            body = read_body(entry.body)
            decided_again(alone, body)
            kept = alone._history.reader.body(entry.id)
            assert kept == body, f"decided otherwise in order: {entry.id} {body.act.kind}"
        alone.close()


def _fresh(founded: Founded, path: Path) -> Path:
    """The founded file of this name, and nothing left of another run."""
    for left in path.parent.glob(f"{path.name}*"):
        left.unlink()
    shutil.copyfile(founded.folder / path.name, path)
    return path


def decided_again(alone: Ledger, body: Body) -> None:
    """The act of an entry, as a PC would do it that knows all before it."""
    act = body.act
    if body.verdict:
        alone._history.append(body, (), {})
    elif body.reverses:
        alone.undo(body.reverses, act)
    elif act.kind == TAKING:
        alone._history.record(read_act(act, {TAKING: TAKE_BLOCK}), TAKE_BLOCK, {})
    else:
        alone.record(read_act(act, alone.rules))


def _tables(station: SimStation, begin: int) -> list[list[tuple[object, ...]]]:
    """The entries behind a number, and all that is derived."""
    run = station.ledger._store.run
    derived = (f"SELECT * FROM {table} ORDER BY 1, 2, 3, 4" for table in DERIVED)
    entries = run("SELECT * FROM entry WHERE number > ? ORDER BY number", (begin,)).fetchall()
    return [entries, *(run(statement).fetchall() for statement in derived)]
