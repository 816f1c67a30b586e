"""Finds the cheapest way to send pieces: which containers, which service, in one pack or two.

What a way costs is the container's price and the postage. Postage goes by the greater of the mass
and the volume that a service counts for it. The rules of a stack are those of
`station.packs.choose`, and none of them is let go here.
"""

import math
import operator
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from heapq import heapify, heappop, heappush
from itertools import islice, product
from typing import NamedTuple

from station.packs.every_way import EveryWay
from station.packs.messages import (
    NEAR,
    PackAnswer,
    PackLayer,
    PackMailer,
    PackPart,
)
from station.packs.one_layer import MANY_PIECES, TooManyWaysError
from station.packs.stack import (
    FEW_PARTS,
    Layers,
    Patience,
    StackAsk,
    find_stack,
    has_between,
    list_levels,
)

Counts = tuple[int, ...]  # pieces of each part, in the order of the parts
SHARES = (0.0, 0.25, 0.5, 0.75, 1.0)  # of a part's pieces, that are tried in the first of two
MOST_SHARED = 4  # parts that are dealt in all shares
MOST_SPLITS = 24  # ways to make two packs of one that are tried
WORK = 6000  # rooms that are filled for one pack of few parts, before only a few ways are tried
MOST_KINDS = 256  # ways to take some of a pack's pieces, up to which every stack is tried
MOST_WAYS = 10000  # that are tried for one problem of so few pieces
FEW_WORK = 5000  # the same for so few pieces that every way is tried before
MANY_WORK = 8000


class ShipPart(NamedTuple):
    """A part that is sent, with the mass of one piece in g."""

    part: PackPart
    mass_g: float


class ShipContainer(NamedTuple):
    """What is packed in, with what it needs of room beside the stack, and its price."""

    inside: PackMailer
    allowance_mm: float
    price: float


class ShipService(NamedTuple):
    """A way to send a parcel: limits in mm (None: no limit), and prices by billed g, rising."""

    name: str
    length_mm: float | None
    width_mm: float | None
    thick_mm: float | None
    length_girth_mm: float | None
    divisor: float | None  # cm³ that count as a kg
    steps: tuple[tuple[float, float], ...]  # up to so many g, price

    def list_offers(self, container: PackMailer, mass: float) -> list[tuple[float, float]]:
        """Lists how thick a parcel of a mass may be, in mm, for which price, rising."""
        length, width = container.length_mm, container.width_mm
        high = container.thick_mm
        box = container.kind == "box"
        girth = 2 * (width + (high if box else 0.0))
        limits = (
            (length, self.length_mm),
            (width, self.width_mm),
            (high if box else 0.0, self.thick_mm),
            (length + girth, self.length_girth_mm),
        )
        if any(most is not None and size > most + NEAR for size, most in limits):
            return []
        if not box and self.thick_mm is not None:
            high = min(high, self.thick_mm)
        offers = []
        for to, price in self.steps:
            if mass > to + NEAR:
                continue
            most = high
            if self.divisor:
                most = to * self.divisor / (length * width)  # mm³ a cm³ and g a kg: 1000 each
                if box and most < container.thick_mm - NEAR:
                    continue
            offers.append((min(high, most), price))
            if offers[-1][0] >= high - NEAR:
                break
        return offers


@dataclass(frozen=True, kw_only=True)
class ShipProblem:
    """What is sent, in which containers, by which services, in how many packs at most."""

    parts: tuple[ShipPart, ...]
    containers: tuple[ShipContainer, ...]
    services: tuple[ShipService, ...]
    most_packs: int = 1


@dataclass(frozen=True, kw_only=True)
class ShipPack:
    """One pack: the container, the service, how the pieces lie, its mass and cost."""

    container: str
    service: str
    layers: tuple[PackLayer, ...]
    mass_g: float
    cost: float

    @property
    def size_mm(self) -> tuple[float, float, float]:
        """Length, width and thickness of the stack."""
        return PackAnswer(layers=self.layers).size_mm


def find_cheapest(problem: ShipProblem) -> tuple[ShipPack, ...]:
    """Finds the cheapest packs that were found; none where nothing fits."""
    finder = _Finder(problem)
    every = tuple(p.part.pieces for p in problem.parts)
    if not any(every):
        return ()
    one = finder.pack(every, math.inf, again=True)
    best: tuple[ShipPack, ...] = (one,) if one else ()
    if problem.most_packs < 2 or (best and 2 * finder.least >= _cost(best) - NEAR):
        return best
    finder.rest(1 if best else 2)
    splits = finder.list_splits(every, most=_cost(best) if best else math.inf)
    for at_least, first, rest in islice(splits, finder.most_splits):
        most = _cost(best) if best else math.inf
        if at_least >= most - NEAR or finder.is_tired:
            break
        one = finder.pack(first, most - finder.bound(rest))
        other = finder.pack(rest, most - one.cost) if one else None
        if one and other:
            best = (one, other)
    return best


def find_lower_bound(problem: ShipProblem) -> float | None:
    """Finds a cost that no way is below: of one pack by mass and room, of two by their prices."""
    finder = _Finder(problem)
    every = tuple(p.part.pieces for p in problem.parts)
    least = finder.bound(every)
    if problem.most_packs > 1:
        least = min(least, finder.bound_two(every))
    return None if math.isinf(least) else least


def _cost(packs: Sequence[ShipPack]) -> float:
    return sum(p.cost for p in packs)


class Target(NamedTuple):
    """What a pack could cost: in a container, if the stack is no higher than `most_mm`."""

    cost: float
    container: int
    most_mm: float


class Rate(NamedTuple):
    """Which parts lie in a container, and what it costs with pieces of so many g at most."""

    takes: list[bool]
    tops_g: list[float]
    prices: list[float]


class _Finder:
    """Finds the cheapest pack for so many pieces of each part: what could cost least is tried
    first, and the first that takes the pieces is the answer.
    """

    def __init__(self, problem: ShipProblem) -> None:
        self._problem = problem
        self.bound = lru_cache(maxsize=None)(self._bound)
        self._stack = lru_cache(maxsize=None)(self._find_stack)
        self._targets = lru_cache(maxsize=None)(self._list_targets)
        self._every_way = EveryWay([p.part for p in problem.parts], MOST_WAYS)
        self._floor = lru_cache(maxsize=None)(self._find_floor)
        self._few = math.prod(p.part.pieces + 1 for p in problem.parts) <= MOST_KINDS
        self._rates = self._list_rates()
        self._work = FEW_WORK if self._few else WORK
        if len(problem.parts) > FEW_PARTS:
            self._work = MANY_WORK
        self._patience = Patience(self._work)
        self._sure: set[tuple[Counts, int, float]] = set()  # of which every way was tried
        self.most_splits = MOST_KINDS if self._few else MOST_SPLITS
        self._large = sum(p.part.pieces for p in problem.parts if not p.part.small) > 1
        steps = [price for s in problem.services for _, price in s.steps]
        prices = [c.price for c in problem.containers]
        self.least = min(prices, default=0.0) + min(steps, default=0.0)  # no pack costs less

    def pack(self, counts: Counts, below: float, *, again: bool = False) -> ShipPack | None:
        """Finds the cheapest pack that costs less than `below`; None: none was found.

        `again`: what was not found is looked for again, with the work that is left.
        """
        missed: list[Target] = []
        for target in self._targets(counts):
            if target.cost >= below - NEAR:
                break
            if layers := self._stack(counts, target.container, target.most_mm):
                found = self._send(counts, self._problem.containers[target.container], layers)
                return (self._look_again(counts, missed) if again else None) or found
            missed.append(target)
        return self._look_again(counts, missed) if again else None

    def _look_again(self, counts: Counts, missed: list[Target]) -> ShipPack | None:
        """Looks again for what could cost least and was not found, with the work that is left."""
        for target in missed:
            if self._patience.left <= 0:
                break
            container = self._problem.containers[target.container]
            ask = None if (counts, *target[1:]) in self._sure else self._ask(counts, container)
            if ask and (layers := find_stack(ask, target.most_mm, self._patience, again=True)):
                return self._send(counts, container, _to_corner(layers))
        return None

    def rest(self, times: int) -> None:
        """Allows the work of so many packs."""
        self._patience = Patience(times * self._work)

    @property
    def is_tired(self) -> bool:
        """Tells whether all its work was done, and half as much again."""
        return self._patience.left < -self._work // 2

    def _bound(self, counts: Counts) -> float:
        """Finds a cost that no pack of these pieces is below."""
        targets = self._targets(counts)
        return targets[0].cost if targets else math.inf

    def _list_targets(self, counts: Counts) -> list[Target]:
        """Lists what a pack of these pieces could cost, the cheapest first."""
        targets = []
        for n, container in enumerate(self._problem.containers):
            ask = self._ask(counts, container)
            if ask is None:
                return []
            lowest = next(list_levels(ask), None)
            if lowest is None:
                continue
            mass, high = self._weigh(counts, container), lowest.thick - 2 * NEAR
            offers = sorted(
                (container.price + price, -most)
                for service in self._problem.services
                for most, price in service.list_offers(container.inside, mass)
            )
            for cost, most in offers:
                if -most > high + NEAR:
                    high = -most
                    targets.append(Target(cost, n, high))
        return sorted(targets)

    def _weigh(self, counts: Counts, container: ShipContainer) -> float:
        pieces = zip(self._problem.parts, counts, strict=True)
        return container.inside.mass_g + sum(p.mass_g * n for p, n in pieces)

    def _ask(self, counts: Counts, container: ShipContainer) -> StackAsk | None:
        """Asks for a stack; None: small parts have no larger ones around them in this pack."""
        parts = tuple(
            p.part._replace(pieces=n)
            for p, n in zip(self._problem.parts, counts, strict=True)
            if n
        )
        between = self._large and any(p.small for p in parts)
        if between and not has_between(parts):
            return None
        return StackAsk(
            parts=parts,
            mailer=container.inside,
            allowance_mm=container.allowance_mm,
            between=between,
            thorough=True,
        )

    def _find_stack(
        self, counts: Counts, container: int, most: float
    ) -> tuple[PackLayer, ...] | None:
        ask = self._ask(counts, self._problem.containers[container])
        if ask is None:
            return None
        try:
            many = self._few and sum(counts) >= MANY_PIECES
            layers = find_stack(ask, most, Patience(0)) if many else None
            layers = layers or self._try_every_way(ask, counts, most)
            self._sure.add((counts, container, most))
        except TooManyWaysError:
            layers = find_stack(ask, most, self._patience)
        return _to_corner(layers) if layers else None

    def _try_every_way(self, ask: StackAsk, counts: Counts, most: float) -> Layers | None:
        """Lays a few pieces in every way; TooManyWaysError where that does not end."""
        if math.prod(n + 1 for n in counts) > MOST_KINDS:
            raise TooManyWaysError
        levels = [level for level in list_levels(ask) if level.thick <= most + NEAR]
        rooms = [
            (level.thick, *ask.mailer.find_room(level.thick, ask.allowance_mm)) for level in levels
        ]
        return self._every_way.find_stack(counts, rooms, between=ask.between) if rooms else None

    def bound_two(self, every: Counts) -> float:
        """Finds a cost that no two packs are below."""
        if not self._few:
            return 2 * self.least
        return next(self.list_splits(every, math.inf), (math.inf, (), ()))[0]

    def list_splits(self, every: Counts, most: float) -> Iterator[tuple[float, Counts, Counts]]:
        """Lists ways to deal the pieces into two packs, the fuller one first.

        What could cost least comes first, then what is shared most evenly.
        """
        waiting = []
        volumes = [
            p.part.length_mm * p.part.width_mm * p.part.thick_mm for p in self._problem.parts
        ]
        firsts = _list_every_first(every) if self._few else _list_firsts(self._problem, every)
        for first in firsts:
            rest = tuple(a - b for a, b in zip(every, first, strict=True))
            more = 0.0
            if not self._few:
                more = sum(v * (a - b) for v, a, b in zip(volumes, first, rest, strict=True))
            fuller, other = (first, rest) if more >= 0 else (rest, first)
            cost = self._floor(first) + self._floor(rest)
            waiting.append((cost, False, round(abs(more)), fuller, other))
        waiting = [split for split in waiting if split[0] < most - NEAR]
        heapify(waiting)
        while waiting:
            at_least, sure, more, fuller, other = heappop(waiting)
            if sure:
                yield at_least, fuller, other
            elif (bound := self.bound(fuller) + self.bound(other)) < most - NEAR:
                heappush(waiting, (bound, True, more, fuller, other))

    def _find_floor(self, counts: Counts) -> float:
        """Finds a cost that no pack is below by its mass, and by where its parts could lie."""
        mass = sum(p.mass_g * n for p, n in zip(self._problem.parts, counts, strict=True))
        there = [n for n, count in enumerate(counts) if count]
        least = math.inf
        for takes, tops, prices in self._rates:
            at = bisect_left(tops, mass - NEAR)
            if at < len(tops) and prices[at] < least and all(takes[n] for n in there):
                least = prices[at]
        return least

    def _list_rates(self) -> list[Rate]:
        """Lists for each container which parts lie in it, and what it costs by their mass."""
        steps = {to for s in self._problem.services for to, _ in s.steps}
        rates = []
        for c in self._problem.containers:
            takes = [c.inside.takes(*p.part[1:4], c.allowance_mm) for p in self._problem.parts]
            tops, prices = [], []
            for to in sorted(steps):
                offers = [o for s in self._problem.services for o in s.list_offers(c.inside, to)]
                if offers:
                    tops.append(to - c.inside.mass_g)
                    prices.append(c.price + min(price for _, price in offers))
            rates.append(Rate(takes, tops, prices))
        return rates

    def _send(
        self, counts: Counts, container: ShipContainer, layers: tuple[PackLayer, ...]
    ) -> ShipPack | None:
        """Sends a pack by the cheapest service that takes it."""
        inside = container.inside
        mass = self._weigh(counts, container)
        thick = PackAnswer(layers=layers).size_mm[2]
        postage, service = min(
            (price, s.name)
            for s in self._problem.services
            for most, price in s.list_offers(inside, mass)
            if thick <= most + NEAR
        )
        return ShipPack(
            container=inside.name,
            service=service,
            layers=layers,
            mass_g=mass,
            cost=container.price + postage,
        )


def _list_every_first(every: Counts) -> list[Counts]:
    """Lists all that may go into the first of two packs, each way once."""
    firsts = product(*(range(n + 1) for n in every))
    return [f for f in firsts if any(f) and tuple(map(operator.sub, every, f)) >= f != every]


def _list_firsts(problem: ShipProblem, every: Counts) -> set[Counts]:
    """Lists what may go into the first of two packs, each way once.

    The same share of each part; each share of each where there are few parts; and the parts in
    some orders up to each mass at which postage rises.
    """
    some: set[Counts] = set()
    few = len(every) <= FEW_PARTS
    shares = list(product(SHARES, repeat=len(every))) if len(every) <= MOST_SHARED else []
    shares += [(share,) * len(every) for share in SHARES]
    for each in shares:
        some.add(tuple(round(n * share) for n, share in zip(every, each, strict=True)))
    rises = {
        to - c.inside.mass_g for s in problem.services for to, _ in s.steps
        for c in problem.containers
    }  # fmt: skip
    whole = sum(p.mass_g * n for p, n in zip(problem.parts, every, strict=True))
    masses = sorted({float(round(m)) for m in rises if 0 < m < whole} | {whole / 2})
    parts = [p.part for p in problem.parts]
    for key in (
        lambda n: -parts[n].length_mm * parts[n].width_mm,
        lambda n: -max(parts[n][1:3]),
        lambda n: -problem.parts[n].mass_g,
    ):
        order = sorted(range(len(every)), key=key)
        for mass in masses[:: max(1, len(masses) // (12 if few else 4))]:
            some.add(_take_up_to(problem, every, order, mass))
            some.add(_take_up_to(problem, every, order[::-1], mass))
    twins = {tuple(a - b for a, b in zip(every, first, strict=True)): first for first in some}
    return {
        first for first in some
        if any(first) and first != every and (first not in twins or first <= twins[first])
    }  # fmt: skip


def _take_up_to(problem: ShipProblem, every: Counts, order: Sequence[int], mass: float) -> Counts:
    """Takes pieces in an order of the parts, up to a mass in g."""
    took = [0] * len(every)
    for part in order:
        each = problem.parts[part].mass_g
        took[part] = min(every[part], int((mass + NEAR) // each)) if each > 0 else every[part]
        mass -= took[part] * each
    return tuple(took)


def _to_corner(layers: Sequence[PackLayer]) -> tuple[PackLayer, ...]:
    """Moves a stack so that the corner of the box round it is at 0, 0."""
    left = min(p.x_mm for layer in layers for p in layer.piles)
    low = min(p.y_mm for layer in layers for p in layer.piles)
    return tuple(
        layer._replace(
            piles=tuple(p._replace(x_mm=p.x_mm - left, y_mm=p.y_mm - low) for p in layer.piles)
        )
        for layer in layers
    )
