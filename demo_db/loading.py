"""A day at a router of the demo shop: sheets, first-offs, bits, stops, spoiled sheets."""

from collections import deque
from collections.abc import Generator
from datetime import datetime

from demo_db.hands import BOSS, Done, Hands, Process, Who
from demo_db.machines import large_bit, small_bit
from demo_db.parts import THICKNESS
from station.floor.loading.acts import (
    BreakBit,
    ChangeBit,
    EndSheet,
    EndStop,
    ReadNotice,
    Rehome,
    ReportStop,
    Resurface,
    SetZero,
    SpoilSheet,
    StartDay,
    StartSheet,
    TakeBatch,
)
from station.floor.office.acts import ReceiveLot, SetFact
from station.floor.shared.first_offs import CheckFirstOff, MeasureFirstOff
from station.floor.shared.queue import AddSheet
from station.queries.batches import find_revision
from station.queries.first_offs import find_in_the_way, find_unsettled, list_sizes
from station.shop.acts import Args
from station.shop.facts import Batch, Bed, Bit, BitUse, FirstOff, Lot, Notice, Revision, Router
from station.shop.moves import BOARD, SHEET, WEAR
from station.shop.plain import to_plain
from station.shop.views import total

TICKS = ("held_down", "bit", "file", "zero")
LOADERS = {"1": Who("02", "1"), "2": Who("02", "1"), "3": Who("02", "1"),
           "4": Who("03", "2"), "5": Who("03", "2")}  # fmt: skip
BIT_BROKE = "11"
# a fault that costs a sheet, its share of all sheets, the stop's reason, the sheet's reason
CLAMPED = (("bit", 0.010, "31", BIT_BROKE), ("moved", 0.008, "32", "12"),
           ("fault", 0.003, "34", "15"))  # fmt: skip
VACUUM = (("vacuum", 0.010, "32", "13"), ("bit", 0.008, "31", BIT_BROKE),
          ("fault", 0.003, "34", "15"))  # fmt: skip
STOPS = ("31", "33", "33", "36", "35", "36", "33", "36")
RESTART = ("bit_out", "bed_clear", "sheet_held", "zero", "nobody_near")
LOT_SIZE = 80


class RouterDay:
    """One router through one day."""

    def __init__(self, hands: Hands, router: str, until: datetime | None = None) -> None:
        self.hands, self.router = hands, router
        self.until = until or hands.ends  # no sheet is started that would not be done by then
        self.who = LOADERS[router]

    def left(self) -> float:
        """Minutes until it stands free."""
        return (self.until - self.hands.at).total_seconds() / 60

    @property
    def bed(self) -> Bed:
        """The bed as it stands."""
        return self.hands.view.get(Bed, self.router) or Bed(id=self.router)

    def do(self, args: Args, subject: str = "", *, why: str = "") -> Done:
        """An act at this router, about it where nothing else is named."""
        return self.hands.do(self.who, subject or f"router/{self.router}", args, why=why)

    def run(self) -> Process:
        """Sheet after sheet, until none would be done before the day ends."""
        yield self.hands.minutes(1, 14)
        self.do(StartDay())
        yield self.hands.minutes(3, 8)
        if self._is_uneven():
            self.do(Resurface(sure=True))
            yield 15
        while self.left() > 15:
            batch = self._batch()
            if batch is None:
                yield self.hands.minutes(8, 14)
                continue
            revision = find_revision(self.hands.view, batch)
            if revision is None or self.left() < revision.minutes * 1.2 + 8:
                return
            yield from self._ready(revision)
            batch = self.hands.view.get(Batch, batch.id) or batch  # held if its first-off is wrong
            if not batch.holds:
                yield from self._sheet(batch.id, revision)

    def stand_still(self, reason: str) -> None:
        """The router stops now, for this reason, unless it stands still already."""
        if self.bed.state != "stopped":
            self.do(ReportStop(), why=reason)

    def keep_cutting(self, until: datetime) -> None:
        """A sheet lies on the bed that is not done at a time: the present one, or the next."""
        if self.bed.state == "stopped":
            self._run_on()
        bed = self.bed
        if bed.sheet:
            gone = (until - datetime.fromisoformat(bed.started)).total_seconds() - bed.paused_s
            if gone < bed.minutes * 60 - 90:
                return
            args = EndSheet(router=self.router, sheet=bed.sheet)
            self.do(args, f"slip/{bed.batch}-{bed.sheet}")
        batch = self._batch()
        revision = batch and find_revision(self.hands.view, batch)
        if batch and revision:
            deque(self._ready(revision), maxlen=0)
            self._start(batch, revision)

    def _run_on(self) -> None:
        """What the stop asks for is done, and the router runs on."""
        if self.bed.rehome:
            self.do(Rehome())
        self.do(EndStop(ticks=RESTART))

    def _batch(self) -> Batch | None:
        """The batch on the bed, or the next one of the queue."""
        view, bed = self.hands.view, self.bed
        batch = view.get(Batch, bed.batch) if bed.batch else None
        if batch and not batch.holds and batch.cut < batch.sheets:
            return batch
        for waiting in view.shelf(Batch, f"queue/{self.router}"):
            if not waiting.holds and waiting.cut < waiting.sheets:
                args = TakeBatch(router=self.router, copy=waiting.copy)
                taken = self.do(args, f"batch/{waiting.id}")
                return view.get(Batch, waiting.id) if taken.ok else None
        return None

    def _ready(self, revision: Revision) -> Process:
        """Everything that is due before a sheet."""
        hands = self.hands
        if hands.view.shelf(Notice, f"router/{self.router}"):
            self.do(ReadNotice())
            yield hands.minutes(0.5, 2)
        for use in revision.bits:
            yield from self._fit(use)
        if self.bed.rehome:
            yield hands.minutes(2, 4)
            self.do(Rehome())
        first = find_unsettled(self.bed)
        if first and first.state == "due":
            yield hands.minutes(2, 5)
            self._compare(first)
        if find_in_the_way(hands.view, self.bed, revision):
            self.do(SetZero())
        yield hands.minutes(3, 8)

    def _compare(self, first: FirstOff) -> None:
        """Every size of the first sheet is measured; now and then it is wrong."""
        if self.hands.fault("first-off", 0.008):
            self.do(CheckFirstOff(good=False, file=first.file))
            return
        for one in list_sizes(self.hands.view, first):
            size = one.size
            give = (size.high_mm - size.low_mm) / 8
            mm = round(self.hands.rng.gauss(size.nominal_mm, give), 2)
            within = min(size.high_mm, max(size.low_mm, mm))
            self.do(
                MeasureFirstOff(
                    file=first.file, part=one.part.id, size=size.name, reading_mm=within
                )
            )

    def _fit(self, use: BitUse) -> Process:
        """A sharp bit of the right size where it is not there."""
        view = self.hands.view
        router = view.get(Router, self.router)
        pocket = use.number if router and router.changer else 0
        bit = view.get(Bit, dict(self.bed.bits).get(pocket, ""))
        if bit and bit.state == "good" and bit.diameter_mm == use.diameter_mm:
            worn = total(view.stock(place=f"bit/{bit.id}"), part=WEAR) + use.cut_mm
            if worn <= bit.life_m * 1000:
                return
        yield self.hands.minutes(2, 5)
        new = self._new_bit(use.diameter_mm)
        changed = self.do(ChangeBit(bit=new, pocket=pocket))
        if changed.ok and bit and bit.state == "good":
            self._set(view.get(Bit, bit.id), state="worn")

    def _new_bit(self, diameter_mm: float) -> str:
        """A sharp one from the drawer, or a bought one."""
        view = self.hands.view
        fresh = (b for b in view.shelf(Bit, "good", 200) if b.diameter_mm == diameter_mm)
        for bit in fresh:
            if not view.stock(place=f"bit/{bit.id}"):
                return bit.id
        made = large_bit if diameter_mm > 4 else small_bit
        number = next(n for n in map(str, range(17, 99)) if view.get(Bit, n) is None)
        self._set(made(number))
        return number

    def _set(self, bit: Bit | None, **fields: object) -> None:
        """The office enters a bit or marks it."""
        if bit:
            value = {**to_plain(bit), **fields}
            self.hands.do(BOSS, bit.key, SetFact(of=bit.kind, value=value))

    def _sheet(self, batch: str, revision: Revision) -> Process:
        """One sheet on and off, or spoiled."""
        hands, known = self.hands, self.hands.view.get(Batch, batch)
        if known is None:
            return
        started = self._start(known, revision)
        if not started.ok:
            yield 10
            return
        if hands.chance(0.004):
            yield 0.4
            hands.undo(self.who, started, f"batch/{batch}")
            return
        minutes = self._takes(revision) * hands.rng.gauss(1.0, 0.02)
        part = hands.minutes(0.2, 0.8)
        yield minutes * part
        spoiled = yield from self._mishap(batch, revision, part)
        if spoiled:
            return
        yield minutes * (1 - part) + hands.minutes(0.3, 3)
        paper = hands.view.get(Batch, batch) or known  # its copy may be a new one by now
        args = EndSheet(router=self.router, sheet=self.bed.sheet, copy=paper.copy)
        self.do(args, f"slip/{batch}-{self.bed.sheet}")

    def _is_uneven(self) -> bool:
        """Whether the spoilboard has borne all the sheets that it should."""
        router = self.hands.view.get(Router, self.router)
        held = self.hands.view.stock(place=f"spoilboard/{self.router}")
        return router is not None and total(held, part=BOARD) >= router.flat_after

    def _takes(self, revision: Revision) -> float:
        """Minutes of a sheet as the router was set up; what the screen expects is learnt."""
        router = self.hands.view.get(Router, self.router)
        assert router is not None
        return revision.minutes * router.pace + router.extra_s / 60

    def _start(self, batch: Batch, revision: Revision) -> Done:
        args = StartSheet(
            router=self.router,
            copy=batch.copy,
            ticks=TICKS,
            lot=self._lot(revision.material),
            reading=self._reading(revision.material),
        )
        return self.do(args, batch.key, why="41")

    def _lot(self, material: str) -> str:
        """A lot with a sheet left, a new one where there is none."""
        view = self.hands.view
        for lot in view.shelf(Lot, material, 200):
            if total(view.stock(batch=lot.id, place="store"), part=SHEET):
                return lot.id
        number = self.hands.ledger.take_number("lot")
        args = ReceiveLot(material=material, sheets=LOT_SIZE)
        self.hands.do(BOSS, f"lot/{number}", args)
        return number

    def _reading(self, material: str) -> float:
        """The thickness as read; now and then out of its limits."""
        off = -0.75 if self.hands.fault("thickness", 0.004) else self.hands.rng.gauss(0, 0.04)
        return round(THICKNESS[material] + off, 2)

    def _mishap(self, batch: str, revision: Revision, part: float) -> Generator[float, None, bool]:
        """A bit breaks, a sheet moves, vacuum is lost, the router stops; True: sheet lost."""
        hands = self.hands
        for name, share, stop, why in VACUUM if self.router == "5" else CLAMPED:
            if hands.fault(name, share):
                yield from self._lost(batch, revision, part, stop, why)
                return True
        if hands.chance(0.04):
            self.do(ReportStop(), why=hands.rng.choice(STOPS))
            yield hands.minutes(3, 26)
            self._run_on()
        return False

    def _lost(self, batch: str, revision: Revision, part: float, stop: str, why: str) -> Process:
        """A stop, and the sheet is spoiled; one more is cut to make good."""
        hands = self.hands
        self.do(ReportStop(), why=stop)
        if why == BIT_BROKE:
            yield hands.minutes(0.5, 2)
            inside = [b for _, b in self.bed.bits]
            self.do(BreakBit(bit=inside[0]))
        yield hands.minutes(4, 18)
        survived = {p: int(n * part * hands.minutes(0.7, 1)) for p, n in revision.makes().items()}
        args = SpoilSheet(router=self.router, survived=survived)
        self.do(args, f"batch/{batch}", why=why)
        yield hands.minutes(1, 3)
        self._run_on()
        if hands.chance(0.7):
            self.do(AddSheet(router=self.router), f"batch/{batch}")
