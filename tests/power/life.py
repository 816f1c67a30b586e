"""A station's day on a disk that loses its power, again and again; what must hold after each."""

from collections import Counter
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

from station.ledger import store
from station.ledger.faults import Fault
from station.ledger.ledger import Ledger
from station.ledger.supply import NoNumbers
from tests.ledger.stations import Station
from tests.ledger.toy import act
from tests.power.disks import PowerDisk
from tests.power.layer import under
from tests.simulate.shop import MemoryShop

SMALL_LOG = 60_000  # bytes of log from which a checkpoint is forced, so that it is
START, LONGEST = 60, 900  # calls of the disk until the power goes
EARLY = 0.15  # of the cuts come while a file is made or opened


class Broken(AssertionError):  # noqa: N818 - what must hold is broken
    """What must hold does not."""


@dataclass
class Tally:
    """What happened in one life."""

    cuts: int = 0
    inside: int = 0  # cuts that came while an act was being recorded
    acked: int = 0
    lost: int = 0  # acknowledged and gone
    damaged: int = 0  # files that were not whole
    at: Counter[str] = field(default_factory=Counter)  # what was being done


class Life:
    """One station from its first start on; `careless` is the control: it never waits for the disk.

    `shared`: it shares with a shop, where another station works too.
    """

    def __init__(self, folder: Path, seed: int, *, careless: bool = False) -> None:
        self.chance = Random(seed)
        self.careless, self.shared = careless, not careless and self.chance.random() < 0.5
        self.folder, self.tally = folder / "disk", Tally()
        self.folder.mkdir()
        self.shop = MemoryShop()
        self.other = Station(folder / "other", "2", self.shop) if self.shared else None
        self.acked: list[str] = []
        self.numbers: list[str] = []
        self.kept: dict[str, set[str]] = {}  # local values: what may be there
        self.doing, self.open_act, self.count = "start", "", 0

    def run(self) -> Tally:
        """One to four power cuts; raises Broken."""
        for _ in range(self.chance.randint(1, 4)):
            self._until_cut()
            if self.careless:
                self._look_carelessly()
                break
            self._look()
        self.tally.acked = len(self.acked)
        return self.tally

    def _until_cut(self) -> None:
        """Works until the power goes."""
        early = self.chance.random() < EARLY
        cut_at = self.chance.randint(1, START if early else LONGEST)
        disk = PowerDisk(self.folder, self.chance, cut_at)
        self.station, self.doing, self.open_act = None, "start", ""
        was, store.LARGEST_LOG = store.LARGEST_LOG, SMALL_LOG
        try:
            with under(disk), suppress(Fault):
                self._open()
                while True:
                    self._something()
            if not disk.off:
                raise Broken(f"refused while the disk worked, at {self.doing}")
        finally:
            store.LARGEST_LOG = was
            if self.station:
                self.station.ledger._store.connection.close()
        disk.cut()
        self.tally.cuts += 1
        self.tally.inside += bool(self.open_act)
        self.tally.at[self.doing] += 1

    def _open(self) -> None:
        path = self.folder / "shop.station"
        self.station = One(path, self.shop, shared=self.shared)
        if self.careless:
            self.station.ledger.hurry(on=True)

    def _something(self) -> None:
        todo = self.chance.choices(list(CHANCES), CHANCES.values())[0]
        self.doing = todo
        getattr(self, f"_{todo}")()

    # --- what a station does

    def _new(self, kind: str) -> str:
        self.count += 1
        self.open_act = f"{kind}-{self.count}"
        return self.open_act

    def _acked(self, id: str) -> None:
        self.acked.append(id)
        self.open_act = ""

    def _cut(self) -> None:
        name = self._new("cut")
        self._record(name, batch=f"{self.chance.randrange(9):05d}")

    def _number(self) -> None:
        if self.shared:
            self.station.ledger.ask_ahead()
        try:
            number = self.station.ledger.take_number("batch")
        except NoNumbers:  # the shop has not given any yet
            return
        name = self._new("cut")
        if number in self.numbers:
            raise Broken(f"batch {number} is given twice")
        self._record(name, batch=number)
        self.numbers.append(number)

    def _record(self, id: str, batch: str) -> None:
        self.kept.setdefault("draft", {""}).add(f"draft after {id}")
        given = act(id, batch=batch, qty=1 + self.count % 9)
        done = self.station.ledger.record(given, f"draft after {id}")
        if done.entry != id:
            raise Broken(f"not recorded: {id}: {done.answer.said}")
        self.kept["draft"] = {f"draft after {id}"}
        self._acked(id)

    def _pop(self) -> None:
        name = self._new("pop")
        batch = f"{self.chance.randrange(9):05d}"
        done = self.station.ledger.record(act(name, "pop", batch=batch))
        self.open_act = ""
        if done.entry:
            self._acked(name)

    def _undo(self) -> None:
        if not self.acked:
            return
        name = self._new("undo")
        done = self.station.ledger.undo(self.acked[-1], act(name, "undo"))
        self.open_act = ""
        if done.entry:
            self._acked(name)

    def _local(self) -> None:
        self.count += 1
        value = f"area {self.count}"
        self.kept.setdefault("area", {""}).add(value)
        self.station.ledger.set_local("area", value)
        self.kept["area"] = {value}

    def _idle(self) -> None:
        self.station.ledger.idle()

    def _share(self) -> None:
        if self.other is None:
            return
        self.count += 1
        other = self.other.ledger
        for n in range(self.chance.randrange(4)):
            there = act(f"there-{self.count}-{n}", batch=f"{self.chance.randrange(9):05d}")
            other.record(there if self.chance.random() < 0.8 else act(there.id, "pop"))
        self.other.share()
        self.station.share()

    def _restart(self) -> None:
        self.station.ledger.close()
        self._open()

    def _rebuild(self) -> None:
        self.station.ledger.rebuild()

    def _backup(self) -> None:
        self.station.ledger.backup(self.folder / "copy.backup")

    # --- what must hold

    def _look(self) -> None:
        """After the cut, with the real files."""
        last = self.open_act
        self._open_again()
        ledger = self.station.ledger
        ids = Counter(e.id for e in ledger.entries())
        self._hold(self._lost(ids), "acknowledged and lost")
        self._hold(ledger.check(), "not sound")
        done = {e.id for e in ledger.entries() if e.kind in ("cut", "pop", "undo")}
        strange = [i for i in done - {*self.acked, last} if not i.startswith("there")]
        self._hold(strange, "never done")
        self._hold([i for i, n in ids.items() if n > 1], "twice")
        for key, values in self.kept.items():
            found = ledger.draft() if key == "draft" else ledger.local(key) or ""
            self._hold([found] if found not in values else [], f"{key} is none of {values}")
            self.kept[key] = {found}
        self._next_scan(last)
        ledger.close()

    def _look_carelessly(self) -> None:
        """The control: how much is lost, and whether the file is whole."""
        ids: Counter[str] = Counter()
        try:
            self._open_again()
            ids.update(e.id for e in self.station.ledger.entries())
            whole = not self.station.ledger.check()
            self.station.ledger.close()
        except Exception:  # noqa: BLE001 - a spoilt file may say anything
            whole = False
        self._lost(ids)
        self.tally.damaged += not whole

    def _lost(self, ids: Counter[str]) -> list[str]:
        lost = [i for i in self.acked if i not in ids]
        self.tally.lost += len(lost)
        return lost

    def _open_again(self) -> None:
        self.station = One(self.folder / "shop.station", self.shop, shared=self.shared)

    def _hold(self, wrong: object, words: str) -> None:
        if wrong:
            raise Broken(f"{words}: {wrong} (cut at {self.doing}, cut {self.tally.cuts})")

    def _next_scan(self, last: str) -> None:
        """What was being recorded is scanned again, and something new, and all is shared."""
        ledger = self.station.ledger
        if last and ledger.view.past(last):  # it got there before the power went
            self._hold(ledger.record(act(last, "cut")).entry != last, "not known again")
            self.acked.append(last)
        again = last if last.startswith("cut") and last not in self.acked else ""
        for name in filter(None, (again, self._new("cut"))):
            self._record(name, batch="00001")
        ids = Counter(e.id for e in self.station.ledger.entries())
        self._hold([i for i in self.acked[-2:] if ids[i] != 1], "not there once")
        if self.other is not None:
            self._hold(self.station.share() != "shared", "does not share")
            self.other.share()
            self.station.share()
            mine, theirs = (
                [(e.id, e.kind) for e in s.ledger.entries()] for s in (self.station, self.other)
            )
            self._hold(mine != theirs, "the stations differ")
        self._hold(self.station.ledger.check(), "not sound after the next scan")


class One(Station):
    """The station of a life; it need not share."""

    def __init__(self, path: Path, shop: MemoryShop, *, shared: bool) -> None:
        self.may_share = shared
        super().__init__(path.parent, "1", shop)

    def open(self) -> None:
        self.ledger = Ledger(self.path, self.rules, station=self.number)
        if self.may_share and not self.ledger.shared:
            self.ledger.share_with(self.shop.site)


CHANCES = {
    "cut": 50,
    "number": 6,
    "pop": 10,
    "undo": 6,
    "local": 6,
    "idle": 12,
    "share": 12,
    "restart": 3,
    "rebuild": 1,
    "backup": 1,
}
