"""What a pack should weigh, how far it may be off, and which single missing piece would show.

A piece weighs what the book says, times one and how far its part and its lot are off; pieces of a
lot differ a little besides. All of these are taken as normal. Each weighed pack tells something of
the parts and lots in it, so that the next is known better (a Kalman filter).
"""

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

SCALE_G = 1.0  # scale and mailer (k = 1): common practice, no source


class Heap(NamedTuple):
    """Pieces of one part and lot: what one weighs by the book, g; the share that it may be off.

    `share` is of the part alone, besides what its lot is off; 0: it is known.
    """

    part: str
    lot: str
    pieces: int
    grams: float
    share: float = 0.0


class WeighedPack(NamedTuple):
    """A pack that was weighed: what was in it, and what it weighed without its mailer, g."""

    heaps: tuple[Heap, ...]
    grams: float


class Expected(NamedTuple):
    """What heaps should weigh together, g; how far that may be off (k = 1); the tolerance."""

    grams: float
    spread: float
    tolerance: float


class Known:
    """What weighed packs tell of parts and lots: how far each is off, and how sure that is."""

    def __init__(self, lot_share: float, within: float) -> None:
        """Knows nothing yet: the shares that lots, and pieces of a lot, may be off."""
        self._lot_share, self._within = lot_share, within
        self._at: dict[str, int] = {}
        self._off: list[float] = []  # share that it is off
        self._with: list[list[float]] = []  # covariance

    def learn(self, pack: WeighedPack) -> None:
        """Learns from one weighed pack."""
        way = self._weigh_each(pack.heaps)
        pulled = [sum(w * row[at] for at, w in way.items()) for row in self._with]
        spread = sum(w * pulled[at] for at, w in way.items()) + self._measure_noise(pack.heaps)
        if spread <= 0:
            return
        miss = pack.grams - self._sum_up(pack.heaps, way)
        gain = [p / spread for p in pulled]
        self._off = [off + g * miss for off, g in zip(self._off, gain, strict=True)]
        for row, g in zip(self._with, gain, strict=True):
            row[:] = [value - g * p for value, p in zip(row, pulled, strict=True)]

    def learn_all(self, packs: Iterable[WeighedPack]) -> None:
        """Learns from weighed packs, the oldest first."""
        for pack in packs:
            self.learn(pack)

    def expect(self, heaps: tuple[Heap, ...], alarms: float) -> Expected:
        """Tells what heaps should weigh; `alarms`: the share of right packs that are doubted."""
        way = self._weigh_each(heaps)
        spread = math.sqrt(self._measure_spread(way) + self._measure_noise(heaps))
        return Expected(self._sum_up(heaps, way), spread, find_deviate(alarms) * spread)

    def tell_chance(self, heaps: tuple[Heap, ...], missing: int, alarms: float) -> float:
        """Tells the chance that a pack without one piece of a heap, by its place, is doubted."""
        whole = self.expect(heaps, alarms)
        heap = heaps[missing]
        less = (*heaps[:missing], heap._replace(pieces=heap.pieces - 1), *heaps[missing + 1 :])
        without = self.expect(less, alarms)
        if without.spread <= 0:
            return 1.0
        low = (whole.grams - whole.tolerance - without.grams) / without.spread
        high = (whole.grams + whole.tolerance - without.grams) / without.spread
        return 1.0 - (_below(high) - _below(low))

    def _weigh_each(self, heaps: tuple[Heap, ...]) -> dict[int, float]:
        """Weighs what each unknown share acts on, g, by its place; new ones get a place."""
        way: dict[int, float] = {}
        for heap in heaps:
            mass = heap.pieces * heap.grams
            lot = f"lot/{heap.lot}"
            for name, share in ((lot, self._lot_share), (f"part/{heap.part}", heap.share)):
                if share > 0:
                    at = self._place(name, share)
                    way[at] = way.get(at, 0.0) + mass
        return way

    def _place(self, name: str, share: float) -> int:
        """Finds the place of an unknown share; a new one may be off by so much."""
        if name not in self._at:
            self._at[name] = len(self._off)
            self._off.append(0.0)
            for row in self._with:
                row.append(0.0)
            self._with.append([0.0] * len(self._with) + [share * share])
        return self._at[name]

    def _sum_up(self, heaps: tuple[Heap, ...], way: dict[int, float]) -> float:
        off = sum(w * self._off[at] for at, w in way.items())
        return sum(h.pieces * h.grams for h in heaps) + off

    def _measure_spread(self, way: dict[int, float]) -> float:
        return max(0.0, sum(
            w * sum(v * self._with[at][other] for other, v in way.items()) for at, w in way.items()
        ))  # fmt: skip

    def _measure_noise(self, heaps: tuple[Heap, ...]) -> float:
        """Measures how far pieces of a lot and the scale are off, g²."""
        return SCALE_G**2 + sum(h.pieces * (self._within * h.grams) ** 2 for h in heaps)


@lru_cache(maxsize=64)
def find_deviate(alarms: float) -> float:
    """Finds how many deviations so large a share of all lies beyond, on both sides together."""
    low, high = 0.0, 10.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if 2 * (1 - _below(middle)) > alarms else (low, middle)
    return high


def _below(deviate: float) -> float:
    return 0.5 * (1.0 + math.erf(deviate / math.sqrt(2.0)))
