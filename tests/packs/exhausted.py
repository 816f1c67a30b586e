"""Tries every way to pack a few pieces: which containers, which services, how they lie.

Written from the page that says what ``station pack`` is asked, without the program's own search.
Pieces in a layer are pushed together towards a corner, as far as they go; layers lie on each other
at that corner. So it does not try layers that are spread for the sake of a wider base.
"""

import math
from collections.abc import Iterator
from functools import lru_cache
from itertools import permutations, product
from typing import NamedTuple

from station.commands.pack import ContainerOfProblem, PackingProblem, ServiceOfProblem

NEAR = 1e-6
MOST_PLACED = 60_000  # ways to lay a layer that are tried before it is given up

Counts = tuple[int, ...]
Size = tuple[float, float]
Rect = tuple[float, float, float, float]  # x, y, and where it ends


class Pile(NamedTuple):
    """So many pieces of a part on each other: how it is seen from above, and how high it is."""

    long: float
    wide: float
    small: bool
    high: float


Layer = tuple[Pile, ...]


class TooManyWaysError(Exception):
    """Says that a layer can be laid in more ways than are tried."""


class Exhausted:
    """Tries every way to pack one problem."""

    def __init__(self, problem: PackingProblem) -> None:
        self._problem = problem
        self._large = sum(p.count for p in problem.parts if not p.small)
        self._pack = lru_cache(maxsize=None)(self._find_cheapest)

    def find_cost(self) -> float | None:
        """Finds the lowest cost; None: nothing fits. Raises TooManyWaysError."""
        every = tuple(p.count for p in self._problem.parts)
        costs = [self._pack(every)]
        if self._problem.max_packs == 2:
            for first in product(*(range(n + 1) for n in every)):
                rest = tuple(a - b for a, b in zip(every, first, strict=True))
                if any(first) and any(rest) and first <= rest:
                    costs.append(self._pack(first) + self._pack(rest))
        least = min(costs)
        return None if math.isinf(least) else least

    def _find_cheapest(self, counts: Counts) -> float:
        """Finds the lowest cost of one pack; infinite: nothing takes it."""
        pieces = zip(self._problem.parts, counts, strict=True)
        mass = sum(p.mass * n for p, n in pieces)
        stacks = sorted({(_measure(stack), stack) for stack in self._list_stacks(counts)})
        least = math.inf
        for c in self._problem.containers:
            for high, stack in stacks:  # a higher one is never cheaper in the same container
                cost = min(
                    (c.price + price_parcel(s, c, mass + c.mass, high)
                     for s in self._problem.services), default=math.inf
                )  # fmt: skip
                if cost >= least:
                    break
                if self._takes(c, stack, high):
                    least = cost
                    break
        return least

    def _list_stacks(self, counts: Counts) -> Iterator[tuple[Layer, ...]]:
        """Lists every way to deal pieces into piles, and piles into layers."""
        each = [list(_split(n)) for n in counts]
        for splits in product(*each):
            piles = [
                Pile(p.length, p.width, p.small, n * p.thickness)
                for p, split in zip(self._problem.parts, splits, strict=True)
                for n in split
            ]
            yield from _deal(piles)

    def _takes(self, container: ContainerOfProblem, stack: tuple[Layer, ...], high: float) -> bool:
        """Tells whether a container closes over a stack that keeps both rules."""
        room = find_room(container, high)
        if high > container.thickness + NEAR or min(room) <= 0:
            return False
        if self._large > 1 and any(pile.small for layer in stack for pile in layer):
            return _takes_between(stack, room, high)
        if not all(fits(layer, room, room) for layer in stack):
            return False
        return any(_list_bases(layer, room, high) for layer in stack)


def _takes_between(stack: tuple[Layer, ...], room: Size, high: float) -> bool:
    """Tells whether small piles lie between two layers of large ones, within the box of both."""
    ends = [n for n, layer in enumerate(stack) if not any(pile.small for pile in layer)]
    for first, last in permutations(ends, 2):
        others = [layer for n, layer in enumerate(stack) if n not in (first, last)]
        bases, tops = _list_bases(stack[first], room, high), _list_bases(stack[last], room, 0.0)
        inners = {(min(a[0], b[0]), min(a[1], b[1])) for a, b in product(bases, tops)}
        if any(all(fits(layer, room, inner) for layer in others) for inner in inners):
            return True
    return False


def find_room(container: ContainerOfProblem, high: float) -> Size:
    """Finds how long and wide a stack so high may be in a container."""
    along = high if container.kind == "mailer" else 0.0
    around = 0.0 if container.kind == "box" else high
    flap = (container.flap or 0.0) if container.kind == "mailer" else 0.0
    more = container.allowance or 0.0
    return container.length - flap - along - more, container.width - around - more


def price_parcel(
    service: ServiceOfProblem, container: ContainerOfProblem, mass: float, high: float
) -> float:
    """Finds what a service takes for a parcel; infinite: it does not take it."""
    box = container.kind == "box"
    high = container.thickness if box else high
    girth = 2 * (container.width + (high if box else 0.0))
    for size, most in (
        (container.length, service.length),
        (container.width, service.width),
        (high, service.thickness),
        (container.length + girth, service.length_girth),
    ):
        if most is not None and size > most + NEAR:
            return math.inf
    billed = mass
    if service.divisor:
        billed = max(mass, container.length * container.width * high / service.divisor)
    return next((step.price for step in service.steps if billed <= step.to_g + NEAR), math.inf)


def _measure(stack: tuple[Layer, ...]) -> float:
    return round(sum(max(pile.high for pile in layer) for layer in stack), 6)


def _split(pieces: int, most: int | None = None) -> Iterator[tuple[int, ...]]:
    """Splits so many pieces into piles, each way once, the highest pile first."""
    if not pieces:
        yield ()
    for first in range(min(pieces, most or pieces), 0, -1):
        for rest in _split(pieces - first, first):
            yield (first, *rest)


def _deal(piles: list[Pile]) -> Iterator[tuple[Layer, ...]]:
    """Deals piles into layers, in every way."""
    if not piles:
        yield ()
        return
    for layers in _deal(piles[1:]):
        yield tuple(sorted(((piles[0],), *layers)))
        for n, layer in enumerate(layers):
            more = tuple(sorted((*layer, piles[0])))
            yield tuple(sorted((*layers[:n], more, *layers[n + 1 :])))


@lru_cache(maxsize=200_000)
def fits(layer: Layer, room: Size, inner: Size) -> bool:
    """Tells whether piles lie side by side in a room, small ones in its inner part."""
    return next(_lay_piles(layer, room, inner), None) is not None


@lru_cache(maxsize=200_000)
def _list_bases(layer: Layer, room: Size, high: float) -> frozenset[Size]:
    """Lists the boxes that piles can have round them, half covered, no side below a height."""
    area = sum(pile.long * pile.wide for pile in layer)
    return frozenset(
        size
        for size in _lay_piles(layer, room, room)
        if min(size) >= high - NEAR and 2 * area >= size[0] * size[1] - NEAR
    )


def _lay_piles(layer: Layer, room: Size, inner: Size) -> Iterator[Size]:
    """Lays piles in every way, each against the corner's sides or others; gives their boxes."""
    if sum(pile.long * pile.wide for pile in layer) > room[0] * room[1] + NEAR:
        return
    seen: set[tuple[frozenset[Rect], Layer]] = set()
    waiting: list[tuple[frozenset[Rect], Layer]] = [(frozenset(), layer)]
    while waiting:
        lying, left = waiting.pop()
        if not left:
            yield max(r[2] for r in lying), max(r[3] for r in lying)
            continue
        for n, pile in enumerate(left):
            if n and pile[:3] == left[n - 1][:3]:
                continue  # the same from above
            rest = left[:n] + left[n + 1 :]
            for rect in _list_places(pile, lying, inner if pile.small else room):
                way = (lying | {rect}, rest)
                if way not in seen:
                    seen.add(way)
                    waiting.append(way)
        if len(seen) > MOST_PLACED:
            raise TooManyWaysError


def _list_places(pile: Pile, lying: frozenset[Rect], room: Size) -> Iterator[Rect]:
    """Lists where a pile can lie beside others, turned either way."""
    for long, wide in {(pile.long, pile.wide), (pile.wide, pile.long)}:
        for x in {0.0, *(r[2] for r in lying)}:
            for y in {0.0, *(r[3] for r in lying)}:
                end = x + long, y + wide
                if end[0] > room[0] + NEAR or end[1] > room[1] + NEAR:
                    continue
                if all(
                    x >= r[2] - NEAR or end[0] <= r[0] + NEAR
                    or y >= r[3] - NEAR or end[1] <= r[1] + NEAR
                    for r in lying
                ):  # fmt: skip
                    yield x, y, *end
