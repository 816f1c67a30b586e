"""A shop's days, from the bed to the pack, and what its record shows each morning."""

from collections import Counter
from dataclasses import dataclass, field, replace
from math import inf
from random import Random

import numpy as np

from tests.shops.shop import AN_ORDER, DAY, Order, Shop

STEPS = ("cut", "popping", "trimming")
STEP_MINUTES = 30  # packing looks at the rack so often
SPOILED, STOPPED, RECOUNTED = 0.01, 0.015, 0.03  # of sheets; of routers' and of parts' days


@dataclass
class Batch:
    name: str
    file: str
    router: str
    sheets: int  # still to be cut
    due: float
    released: int  # the day
    begun: bool = False


@dataclass
class Load:
    """The pieces of one sheet on their way from the bed to the rack."""

    batch: Batch
    nth: int  # of its file
    pieces: Counter[str]
    ready: float  # minute of the day that it came
    left: float = -1.0  # minutes of work still to do here; below zero: not begun


@dataclass
class Floor:
    """What stands and lies in the shop. `day` is the one whose morning it is."""

    shop: Shop
    marks: dict[str, int]
    day: int = 0
    rack: Counter[str] = field(default_factory=Counter)
    queues: dict[str, list[Batch]] = field(default_factory=dict)
    popping: list[Load] = field(default_factory=list)
    trimming: list[Load] = field(default_factory=list)
    open: list[Order] = field(default_factory=list)
    packed: dict[str, float] = field(default_factory=dict)  # when, in minutes of work
    stopped: set[str] = field(default_factory=set)
    cut: Counter[str] = field(default_factory=Counter)  # sheets, by file
    good: dict[str, Counter[str]] = field(default_factory=lambda: {s: Counter() for s in STEPS})
    gone: dict[str, Counter[str]] = field(default_factory=lambda: {s: Counter() for s in STEPS})
    use: list[Counter[str]] = field(default_factory=list)  # pieces packed, day by day
    orders: list[int] = field(default_factory=list)  # packed, day by day
    through: list[Counter[str]] = field(default_factory=list)  # pieces by step, day by day
    took: list[tuple[float, bool]] = field(default_factory=list)  # days to the rack; for an order
    released: int = 0  # batches so far

    def wake(self) -> None:
        """The morning: orders that came, routers that stand, counts that turn out short."""
        chance = Random(f"{self.shop.seed} {self.day}")
        self.open += [o for o in self.shop.orders if o.comes == self.day]
        self.open.sort(key=lambda o: (o.due, o.name))
        self.stopped = {r for r in self.shop.routers if chance.random() < STOPPED}
        for part in self.shop.parts:
            if chance.random() < RECOUNTED:
                self.rack[part] -= round(self.rack[part] * chance.uniform(0, 0.04))

    def release(self, file: str, sheets: int, router: str, due: float) -> None:
        """Sheets into a router's queue, which goes by due time; what is begun goes on."""
        queue = self.queues[router]
        queue.append(Batch(f"B{self.released}", file, router, sheets, due, self.day))
        self.released += 1
        self._order(queue)

    def take_back(self, batch: Batch) -> None:
        self.queues[batch.router].remove(batch)

    def bring_forward(self, name: str, due: float) -> None:
        """A queued batch to its place by a new due time."""
        batch = next((b for b in self.list_queued() if b.name == name), None)
        if batch:
            batch.due = due
            self._order(self.queues[batch.router])

    @staticmethod
    def _order(queue: list[Batch]) -> None:
        queue.sort(key=lambda b: (not b.begun, b.due))

    def work(self) -> None:
        """The day, to its end."""
        self.through.append(Counter())
        packed = len(self.packed)
        popping = [load for router in self.shop.routers for load in self._run(router)]
        trimming = self._pass(self.popping, popping, "popping")
        racked = self._pass(self.trimming, trimming, "trimming")
        self._pack(racked)
        self.orders.append(len(self.packed) - packed)
        self.day += 1

    def _run(self, router: str) -> list[Load]:
        """Cuts what is queued; a sheet that the day is too short for waits until morning."""
        now, queue, loads = 0.0, self.queues[router], []
        while queue and router not in self.stopped:
            batch = queue[0]
            now += self.shop.files[batch.file].minutes[router]
            if now > DAY:
                break
            batch.begun, batch.sheets = True, batch.sheets - 1
            if not batch.sheets:
                queue.pop(0)
            loads.append(self._cut_sheet(batch, now))
        return loads

    def _cut_sheet(self, batch: Batch, now: float) -> Load:
        """One sheet; its luck hangs on its file and number alone, whoever had it cut."""
        nth, file = self.cut[batch.file], self.shop.files[batch.file]
        self.cut[batch.file] += 1
        luck = np.random.default_rng((self.shop.seed, int(file.name[1:]), nth))
        spoiled, pieces = luck.random() < SPOILED, Counter()
        for part, n in file.makes.items():
            lost = n if spoiled else int(luck.binomial(n, self.shop.lost[part][0]))
            self._count("cut", part, n - lost, lost)
            pieces[part] = n - lost
        return Load(batch, nth, pieces, now)

    def _pass(self, waiting: list[Load], come: list[Load], step: str) -> list[Load]:
        """Works through what waits and what comes; gives what is done, each with its minute."""
        waiting += sorted(come, key=lambda load: load.ready)
        hands = max(1, round(self.shop.people[step] / DAY))
        each = self.shop.handling[step] * hands * DAY / self.shop.people[step]
        free, done, begun = [0.0] * hands, [], []
        while waiting and (begins := max(min(free), waiting[0].ready)) < DAY:
            load = waiting.pop(0)
            if load.left < 0:
                load.left = each * load.pieces.total()
            ends = begins + load.left
            free[free.index(min(free))] = ends
            if ends > DAY:
                load.left = ends - DAY
                begun.append(load)
            else:
                done.append(self._lose(load, step, ends))
        waiting[:0] = begun
        for load in waiting:
            load.ready = 0.0
        return done

    def _lose(self, load: Load, step: str, ends: float) -> Load:
        file = int(load.batch.file[1:])
        luck = np.random.default_rng((self.shop.seed, file, load.nth, STEPS.index(step)))
        for part, n in load.pieces.items():
            lost = int(luck.binomial(n, self.shop.lost[part][STEPS.index(step)]))
            self._count(step, part, n - lost, lost)
            load.pieces[part] = n - lost
        return replace(load, ready=ends, left=-1.0)

    def _count(self, step: str, part: str, good: int, lost: int) -> None:
        self.through[-1][step] += good + lost
        self.good[step][part] += good
        self.gone[step][part] += lost

    def _pack(self, racked: list[Load]) -> None:
        """Packs what the rack has all of, the earliest due first; those before keep theirs."""
        used: Counter[str] = Counter()
        left = 0.0  # minutes of work that the packers still have in this step
        arrive = sorted(racked, key=lambda load: load.ready)
        for now in range(0, DAY, STEP_MINUTES):
            while arrive and arrive[0].ready <= now:
                self._rack(arrive.pop(0))
            left = min(0.0, left) + self.shop.people["packing"] * STEP_MINUTES / DAY
            left = self._pack_step(now + STEP_MINUTES, left, used)
        for load in arrive:
            self._rack(load)
        self.use.append(used)

    def _pack_step(self, now: int, left: float, used: Counter[str]) -> float:
        spoken_for: Counter[str] = Counter()
        for order in list(self.open):
            if left <= 0:
                break
            there = all(self.rack[p] - spoken_for[p] >= n for p, n in order.wants.items())
            if not there:
                spoken_for.update(order.wants)
                continue
            left -= AN_ORDER + self.shop.handling["packing"] * sum(order.wants.values())
            self.rack.subtract(order.wants)
            used.update(order.wants)
            self.open.remove(order)
            self.packed[order.name] = self.day * DAY + now
        return left

    def _rack(self, load: Load) -> None:
        self.rack.update(load.pieces)
        batch = load.batch
        if not batch.sheets:
            took = self.day + load.ready / DAY - batch.released
            self.took.append((took, batch.due < inf))

    # --- what the record shows

    def list_queued(self) -> list[Batch]:
        return [batch for queue in self.queues.values() for batch in queue]

    def count_queued(self, part: str) -> int:
        return sum(
            b.sheets * self.shop.files[b.file].makes.get(part, 0) for b in self.list_queued()
        )

    def count_under_way(self, part: str) -> int:
        """Pieces that are to be cut or on their way to the rack; what will be lost counts too."""
        on_way = sum(load.pieces[part] for load in self.popping + self.trimming)
        return on_way + self.count_queued(part)

    def count_wanted(self, part: str) -> int:
        return sum(order.wants.get(part, 0) for order in self.open)

    def count_ahead(self, router: str) -> float:
        """Minutes that a router's queue takes."""
        return sum(b.sheets * self.shop.files[b.file].minutes[router] for b in self.queues[router])


def open_shop(shop: Shop) -> Floor:
    """The first morning: about a mark and a half on the rack, nothing under way."""
    chance = Random(f"rack {shop.seed}")
    start = {
        p: round(max(shop.marks[p], shop.a_day[p]) * chance.uniform(0.8, 2)) for p in shop.parts
    }
    return Floor(shop, dict(shop.marks), rack=Counter(start), queues={r: [] for r in shop.routers})
