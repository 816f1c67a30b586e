"""Finds the cheapest way to send pieces: which containers, which service, in one pack or two.

What a way costs is the container's price and the postage. Postage goes by the greater of the mass
and the volume that a service counts for it. The rules of a stack are those of
`station.packs.choose`, and none of them is let go here.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from typing import NamedTuple

from station.packs.choose import has_between, is_steady, lay_ways
from station.packs.messages import (
    NEAR,
    PackAnswer,
    PackLayer,
    PackMailer,
    PackPart,
    PackPile,
    PackProblem,
)

Counts = tuple[int, ...]  # pieces of each part, in the order of the parts
SHARES = (0.0, 0.25, 0.5, 0.75, 1.0)  # of a part's pieces, that are tried in the first of two
MOST_SPLITS = 150  # ways to make two packs of one that are tried


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

    def find_price(self, container: PackMailer, thick: float, mass: float) -> float | None:
        """Finds what a parcel costs; None: the service does not take it."""
        length, width = container.length_mm, container.width_mm
        girth = 2 * (width + (thick if container.kind == "box" else 0.0))
        limits = (
            (length, self.length_mm),
            (width, self.width_mm),
            (thick, self.thick_mm),
            (length + girth, self.length_girth_mm),
        )
        if any(most is not None and size > most + NEAR for size, most in limits):
            return None
        billed = mass
        if self.divisor:
            billed = max(mass, length * width * thick / self.divisor)  # mm³ a cm³: 1000 each
        return next((price for to, price in self.steps if billed <= to + NEAR), None)


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
    one = finder.pack(every)
    best: tuple[ShipPack, ...] = (one,) if one else ()
    if problem.most_packs < 2:
        return best
    for first in _list_splits(every):
        if best and 2 * finder.least >= _cost(best) - NEAR:
            break
        rest = tuple(a - b for a, b in zip(every, first, strict=True))
        one = finder.pack(first)
        if one is None or (best and one.cost + finder.least >= _cost(best) - NEAR):
            continue
        other = finder.pack(rest)
        if other and (not best or one.cost + other.cost < _cost(best) - NEAR):
            best = (one, other)
    return best


def _cost(packs: Sequence[ShipPack]) -> float:
    return sum(p.cost for p in packs)


def _list_splits(every: Counts) -> Iterator[Counts]:
    """Lists what may go into the first of two packs, each way once."""
    tried: set[Counts] = set()
    for shares in product(SHARES, repeat=len(every)):
        first = tuple(round(n * share) for n, share in zip(every, shares, strict=True))
        rest = tuple(a - b for a, b in zip(every, first, strict=True))
        if first in tried or rest in tried or not any(first) or not any(rest):
            continue
        if len(tried) >= MOST_SPLITS:
            return
        tried.add(first)
        yield first


class _Finder:
    """Finds the cheapest pack for so many pieces of each part, each question once."""

    def __init__(self, problem: ShipProblem) -> None:
        self._problem = problem
        self.pack = lru_cache(maxsize=None)(self._pack)
        self._large = sum(p.part.pieces for p in problem.parts if not p.part.small) > 1
        self._containers = sorted(problem.containers, key=lambda c: c.price)
        steps = [price for s in problem.services for _, price in s.steps]
        self._postage = min(steps, default=0.0)
        prices = [c.price for c in problem.containers]
        self.least = min(prices, default=0.0) + self._postage  # no pack costs less

    def _pack(self, counts: Counts) -> ShipPack | None:
        best: ShipPack | None = None
        for container in self._containers:
            if best and container.price + self._least_postage(counts, container) >= best.cost:
                continue
            for layers in self._lay(counts, container):
                pack = self._send(counts, container, layers)
                if pack and (best is None or pack.cost < best.cost - NEAR):
                    best = pack
        return best

    def _least_postage(self, counts: Counts, container: ShipContainer) -> float:
        """The postage of such a mass in a parcel of no thickness: no way to lay it costs less."""
        prices = [
            price
            for s in self._problem.services
            if (price := s.find_price(container.inside, 0.0, self._weigh(counts, container)))
            is not None
        ]
        return min(prices, default=self._postage)

    def _weigh(self, counts: Counts, container: ShipContainer) -> float:
        pieces = zip(self._problem.parts, counts, strict=True)
        return container.inside.mass_g + sum(p.mass_g * n for p, n in pieces)

    def _lay(self, counts: Counts, container: ShipContainer) -> Iterator[tuple[PackLayer, ...]]:
        """Lays the pieces in every way that is tried and keeps the rules."""
        parts = [
            p.part._replace(pieces=n)
            for p, n in zip(self._problem.parts, counts, strict=True)
            if n
        ]
        between = self._large and any(p.small for p in parts)
        if between and not has_between(parts):
            return  # small parts need larger ones of the order around them in their own pack
        asked = PackProblem(
            parts=tuple(parts), mailers=(container.inside,), allowance_mm=container.allowance_mm
        )
        for laid in lay_ways(asked, parts, container.inside, between=between):
            layers = _lower(laid, {p.name: p.thick_mm for p in parts})
            if not is_steady(layers):
                continue
            length, width, thick = PackAnswer(layers=layers).size_mm
            if thick > container.inside.thick_mm + NEAR:
                continue
            if container.inside.takes_lying(length, width, thick, container.allowance_mm):
                yield _to_corner(layers)
            elif container.inside.takes_lying(width, length, thick, container.allowance_mm):
                yield _to_corner(_turn(layers))

    def _send(
        self, counts: Counts, container: ShipContainer, layers: tuple[PackLayer, ...]
    ) -> ShipPack | None:
        """Sends a pack by the cheapest service that takes it."""
        inside = container.inside
        mass = self._weigh(counts, container)
        thick = inside.thick_mm if inside.kind == "box" else PackAnswer(layers=layers).size_mm[2]
        prices = [
            (price, s.name)
            for s in self._problem.services
            if (price := s.find_price(inside, thick, mass)) is not None
        ]
        if not prices:
            return None
        postage, service = min(prices)
        return ShipPack(
            container=inside.name,
            service=service,
            layers=layers,
            mass_g=mass,
            cost=container.price + postage,
        )


def _lower(layers: Sequence[PackLayer], thick: dict[str, float]) -> tuple[PackLayer, ...]:
    """Gives layers the height of their highest pile."""
    return tuple(
        layer._replace(height_mm=max(p.pieces * thick[p.part] for p in layer.piles))
        for layer in layers
    )


def _turn(layers: Sequence[PackLayer]) -> tuple[PackLayer, ...]:
    """Turns a stack by a quarter: what lay along lies across."""
    return tuple(
        layer._replace(
            piles=tuple(
                PackPile(p.part, p.y_mm, p.x_mm, p.width_mm, p.length_mm, p.pieces)
                for p in layer.piles
            )
        )
        for layer in layers
    )


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
