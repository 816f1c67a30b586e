"""Lays pieces in a stack that one container takes: layers on layers, each filled by itself.

The stack is not higher than the shorter side of its first layer, which covers half of its box or
more; small parts lie between larger ones where there are two of these. A stack is sought for a
height: the higher it may be, the smaller is the room that a mailer leaves. The layer that fills
most of its own height is laid first; what may lie higher than one piece lies in piles. Where that
does not end within the height, the parts are taken in other orders, drawn by a fixed seed, so that
the same question has the same answer.
"""

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, islice, product
from typing import NamedTuple

from station.packs.layers import Filled, LayerFilling, Room
from station.packs.messages import NEAR, PackAnswer, PackLayer, PackMailer, PackPart

Layers = tuple[PackLayer, ...]
HALF = 0.5  # of its box, that a layer on the outside covers
Way = tuple[list[int], random.Random | None]  # order of the parts; chance: heights by chance too
LEAST_WORK = 12  # rooms for each part, and ten more, that are filled for a container at least
MOST_HEIGHTS = 20_000  # of a stack that are listed: those of real mailers are some hundred
MOST_DRAWN = 60  # orders that are drawn, however little work they are
AGAIN = 4  # heights that are tried one after another
MOST_TALL = 6  # heights of a layer that are tried
MOST_ENDS = 3  # pairs of outer layers that are tried, but for that of single pieces
FEW_PIECES = 12  # with more of them, no bases are drawn: they find one as they are laid
MOST_LAYERS = 1000  # of a stack that nothing takes: with more, equal ones are told as one
FEW_PARTS = 12  # with more of them, fewer ways are tried for each layer


class Base(NamedTuple):
    """The layers of larger parts at the ends: the layer, what is left, its box."""

    layer: PackLayer
    left: list[int]


@dataclass(frozen=True, kw_only=True)
class StackAsk:
    """Which pieces lie in which container, by which rules.

    `between`: small parts lie between larger ones. `steady`: no tower. `thorough`: layers at the
    ends are drawn by chance too, which takes longer.
    """

    parts: tuple[PackPart, ...]
    mailer: PackMailer
    allowance_mm: float = 0.0
    gap_mm: float = 0.0
    between: bool = False
    steady: bool = True
    thorough: bool = False

    @property
    def volume(self) -> float:
        """Measures all pieces, in mm³."""
        return sum(p.length_mm * p.width_mm * p.thick_mm * p.pieces for p in self.parts)


def has_between(parts: Sequence[PackPart]) -> bool:
    """Tells whether small pieces have larger ones to lie between."""
    large = sum(p.pieces for p in parts if not p.small)
    return large > 1 and any(p.small for p in parts if p.pieces)


def is_steady(layers: Layers) -> bool:
    """Tells whether a stack is no higher than its base is wide, on a base that is half covered."""
    thick = sum(layer.height_mm for layer in layers)
    return thick <= min(layers[0].size_mm) + NEAR and layers[0].covered >= HALF - NEAR


class Level(NamedTuple):
    """A height that a stack may have in a container, and the room that this leaves, in mm."""

    thick: float
    long: float
    wide: float


def list_levels(ask: StackAsk) -> Iterator[Level]:
    """Lists heights, rising, at which the container has room for all pieces, as far as their
    volume and their longest and widest sides tell. None: it takes them at no height.

    A stack's height is a sum of its pieces' thicknesses, so no others are listed.
    """
    longest = max(max(p[1:3]) for p in ask.parts)
    widest = max(min(p[1:3]) for p in ask.parts)
    volume = ask.volume
    thicks = tuple(sorted({p.thick_mm for p in ask.parts}))
    for level in _list_rooms(ask.mailer, ask.allowance_mm, thicks):
        thick, long, wide = level
        if long < longest - NEAR or wide < widest - NEAR or (ask.steady and thick > wide + NEAR):
            return  # a higher stack leaves less room still
        if thick * long * wide >= volume - NEAR:
            yield level


@lru_cache(maxsize=1024)
def _list_rooms(
    mailer: PackMailer, allowance: float, thicks: tuple[float, ...]
) -> tuple[Level, ...]:
    """Lists the heights that layers of these thicknesses can add up to, rising.

    Of a mailer that can't be, as high as a house, or of pieces as thin as nothing, not all.
    """
    each = [round(thick / NEAR) for thick in thicks]  # whole numbers: equal sums are one
    most, sums, new = int(mailer.thick_mm / NEAR) + 1, {0}, [0]
    while new and len(sums) < MOST_HEIGHTS:
        low = new.pop()
        for thick in each:
            if (high := low + thick) <= most and high not in sums:
                sums.add(high)
                new.append(high)
    levels = []
    for high in sorted(s for s in sums if s >= each[-1]):
        room = mailer.find_room(high * NEAR, allowance)
        if min(room) <= 0:
            break
        levels.append(Level(high * NEAR, max(room), min(room)))
    return tuple(levels)


class Patience:
    """How much work may go into finding a way, counted in rooms that are filled.

    It is counted, not timed, so that the same question has the same answer.
    """

    def __init__(self, rooms: int) -> None:
        self.left = rooms

    def grant(self, kinds: int) -> int:
        """Grants one search its share: a third of what is left, or what a few ways need."""
        return max(self.left // 3, LEAST_WORK * (10 + kinds))


def find_stack(
    ask: StackAsk, most: float, patience: Patience, *, again: bool = False
) -> Layers | None:
    """Finds how the pieces lie in the container, no higher than `most` mm; None: not found.

    From the lowest height that could do, and from the roomiest: where the pieces come out higher
    than the room was made for, they are laid anew in the room of that height. `again`: it was
    asked before, and other orders of the parts are tried.
    """
    levels = [level for level in list_levels(ask) if level.thick <= most + NEAR]
    if not levels:
        return None
    roomy = max(levels, key=lambda level: level.thick * level.long * level.wide)
    granted = patience.grant(len(ask.parts))
    stop = patience.left - granted
    patience.left -= 1  # so that even what is refused at once comes to an end
    fixed = _list_orders(ask.parts)
    starts = list(dict.fromkeys((levels[0], roomy)))
    ways = [(start, (order, None)) for start in starts for order in fixed]
    chance = random.Random(1 + again)  # noqa: S311 - orders to try, not secrets
    drawn = ((start, way) for way in _draw_orders(ask.parts, chance) for start in starts)
    for start, way in chain(() if again else ways, drawn):
        found = _rise(ask, levels, start, way, most, patience, granted)
        if found or patience.left <= stop:
            return found
    return None


def find_equal_layers(ask: StackAsk) -> Layers | None:
    """Finds layers that are all the same, as few as can be; None: of one part, of several
    thicknesses, between others, or not found.
    """
    thick = ask.parts[0].thick_mm
    if len(ask.parts) < 2 or ask.between or any(p.thick_mm != thick for p in ask.parts):
        return None
    times = math.gcd(*(p.pieces for p in ask.parts))
    for number in (n for n in range(2, times + 1) if times % n == 0):
        room = ask.mailer.find_room(number * thick, ask.allowance_mm)
        if min(room) <= 0 or number * thick > ask.mailer.thick_mm + NEAR:
            break
        each = [p.pieces // number for p in ask.parts]
        for order in _list_orders(ask.parts):
            filling = LayerFilling(ask.parts, order, thick, ask.gap_mm)
            filled = filling.fill((0.0, 0.0, *room), each)
            if any(filled.left):
                continue
            layers = (filling.list_piles(filled.blocks, each),) * number
            if settled := _settle(ask, layers, ask.mailer.thick_mm):
                return settled
    return None


def _rise(
    ask: StackAsk,
    levels: list[Level],
    start: Level,
    way: Way,
    most: float,
    patience: Patience,
    granted: int,
) -> Layers | None:
    """Lays the pieces in the room of a height, then of the height that they came to."""
    level: Level | None = start
    for _ in range(AGAIN):
        if level is None:
            break
        building, high = _Building(ask, level, levels[-1].thick, way, granted), 0.0
        found = None
        for layers in building.build():
            high = sum(layer.height_mm for layer in layers)
            found = _settle(ask, layers, most)
            if found:
                break
        patience.left -= building.rooms
        if found or not high:
            return found
        above = max(high, level.thick + NEAR)
        level = next((at for at in levels if at.thick >= above), None)
    return None


def lay_single(parts: Sequence[PackPart], gap: float) -> Layers:
    """Stacks the parts as narrow as they can: on the box of the longest and the widest.

    Where that is more layers than anybody counts, equal ones are told as one of high piles.
    """
    length = max(max(p[1:3]) for p in parts)
    width = max(min(p[1:3]) for p in parts)
    layers, left = [], [p.pieces for p in parts]
    order = sorted(range(len(parts)), key=lambda n: -parts[n].length_mm * parts[n].width_mm)
    for part in order:
        filling = LayerFilling(parts, [part], parts[part].thick_mm, gap)
        while left[part]:
            filled = filling.fill((0.0, 0.0, length, width), left)
            layer = filling.list_piles(filled.blocks, left)
            times = left[part] // (left[part] - filled.left[part])
            layers.append((layer, times))
            left[part] -= times * (left[part] - filled.left[part])
    if sum(times for _, times in layers) > MOST_LAYERS:
        return tuple(_heap_up(layer, times) for layer, times in layers)
    return tuple(layer for layer, times in layers for _ in range(times))


def _heap_up(layer: PackLayer, times: int) -> PackLayer:
    """Gives a layer that is so many times as high."""
    piles = tuple(pile._replace(pieces=pile.pieces * times) for pile in layer.piles)
    return PackLayer(layer.height_mm * times, piles)


def _settle(ask: StackAsk, layers: Layers, most: float) -> Layers | None:
    """Puts the layer that carries best at the bottom; None: a rule or the container is broken."""
    thick = sum(layer.height_mm for layer in layers)
    if thick > most + NEAR:
        return None
    if not ask.between:
        steady = [n for n, layer in enumerate(layers) if layer.covered >= HALF - NEAR]
        base = max(steady or range(len(layers)), key=lambda n: min(layers[n].size_mm))
        layers = (layers[base], *sorted((*layers[:base], *layers[base + 1 :]), key=_cover))
    if ask.steady and not is_steady(layers):
        return None
    length, width, _ = PackAnswer(layers=layers).size_mm
    lies = ask.mailer.takes_lying(length, width, thick, ask.allowance_mm)
    return layers if lies and thick <= ask.mailer.thick_mm + NEAR else None


def _cover(layer: PackLayer) -> float:
    return -sum(p.length_mm * p.width_mm for p in layer.piles)


def _split_layer(layer: PackLayer) -> Layers:
    """Splits a layer whose piles are all so many times the same into as many equal layers."""
    times = math.gcd(*(pile.pieces for pile in layer.piles))
    piles = tuple(pile._replace(pieces=pile.pieces // times) for pile in layer.piles)
    return (PackLayer(layer.height_mm / times, piles),) * times


def _list_orders(parts: Sequence[PackPart]) -> list[list[int]]:
    """Lists orders of the parts: by area, by thickness, by length."""
    area = [p.length_mm * p.width_mm for p in parts]
    keys = (
        [(-a, -p.thick_mm) for a, p in zip(area, parts, strict=True)],
        [(-p.thick_mm, -a) for a, p in zip(area, parts, strict=True)],
        [(-max(p[1:3]), -min(p[1:3])) for p in parts],
    )
    orders = [sorted(range(len(parts)), key=key.__getitem__) for key in keys]
    return [order for n, order in enumerate(orders) if order not in orders[:n]]


def _draw_orders(parts: Sequence[PackPart], chance: random.Random) -> Iterator[Way]:
    """Draws orders of the parts by chance, the larger ones rather first."""
    for _ in range(MOST_DRAWN):
        drawn = [p.length_mm * p.width_mm * chance.uniform(0.4, 1.6) for p in parts]
        yield sorted(range(len(parts)), key=lambda n: -drawn[n]), chance


class _Building:
    """Builds one stack in the room of a height, no higher than `most`, the parts in one order."""

    def __init__(
        self,
        ask: StackAsk,
        level: Level,
        most: float,
        way: Way,
        granted: int,
    ) -> None:
        self._granted = granted  # rooms that may be filled
        self._ask, self._parts, self._most = ask, ask.parts, most
        self._order, self._noise = way
        self.rooms = 0  # that were filled
        self._few = len(ask.parts) <= FEW_PARTS
        room = ask.mailer.find_room(level.thick, ask.allowance_mm)
        self._room = (0.0, 0.0, *room)
        self._area = room[0] * room[1]
        self._over = most - level.thick  # that it may come out higher than the room is made for
        self._each = [p.length_mm * p.width_mm * p.thick_mm for p in ask.parts]

    def build(self) -> Iterator[Layers]:
        """Builds the stack; more than one way where small parts lie between larger ones."""
        left = [p.pieces for p in self._parts]
        if not self._ask.between:
            yield from self._build_on_base(left)
            return
        ends: Iterator[tuple[Base, Base]] = islice(self._list_full_ends(left), MOST_ENDS)
        if self._noise and self._ask.thorough:
            ends = chain(ends, self._draw_ends(left))
        for bottom, top in chain(ends, self._list_single_ends(left)):
            inner = (
                min(bottom.layer.size_mm[0], top.layer.size_mm[0]),
                min(bottom.layer.size_mm[1], top.layer.size_mm[1]),
            )
            rest = self._most - bottom.layer.height_mm - top.layer.height_mm
            layers = self._pile_up(top.left, rest, inner)
            if self.rooms > self._granted:
                return
            if layers is not None:
                yield (bottom.layer, *layers, top.layer)

    def _build_on_base(self, left: list[int]) -> Iterator[Layers]:
        """Builds without small parts between; by chance first on a base of some pieces."""
        layers = self._pile_up(left, self._most)
        if layers is not None:
            yield layers
        if not self._ask.thorough or sum(left) > FEW_PIECES:
            return
        base = self._draw_end(left, left)
        if base:
            rest = self._pile_up(base.left, self._most - base.layer.height_mm)
            if rest is not None:
                yield (base.layer, *rest)

    def _pile_up(
        self, left: list[int], room: float, inner: tuple[float, float] | None = None
    ) -> Layers | None:
        """Lays layer on layer until nothing is left; None: that gets too high."""
        layers: list[PackLayer] = []
        fillings: dict[float, LayerFilling] = {}
        while any(left):
            if self.rooms > self._granted:
                return None
            volume = sum(n * each for n, each in zip(left, self._each, strict=True))
            if volume > (room + NEAR) * self._area:
                return None
            best, rated = None, (0.0, False, 0.0)
            for height in self._list_tall(left, room):
                if height not in fillings:
                    args = self._parts, self._order, height, self._ask.gap_mm, inner
                    fillings[height] = LayerFilling(*args)
                filling = fillings[height]
                before = filling.rooms
                filled = filling.fill(self._room, left, widely=self._few)
                self.rooms += filling.rooms - before
                rate = filled.volume / height
                if self._noise:
                    rate *= self._noise.uniform(0.85, 1.0)
                rating = (round(rate, 3), not any(filled.left), -height)
                if rating > rated and self._has_room(filled, room - height):
                    best, rated = (filling, filled), rating
                if not any(filled.left):
                    break  # a higher layer takes no more
            if best is None:
                return None
            filling, filled = best
            layer = filling.list_piles(filled.blocks, left)
            layers += _split_layer(layer)
            left, room = filled.left, room - layer.height_mm
        return tuple(layers)

    def _has_room(self, filled: Filled, room: float) -> bool:
        """Tells whether a layer takes anything, and leaves no piece thicker than a room."""
        parts = zip(self._parts, filled.left, strict=True)
        return bool(filled.blocks) and all(not n or p.thick_mm <= room + NEAR for p, n in parts)

    def _list_tall(self, left: list[int], room: float) -> list[float]:
        """Lists heights for the next layer: of one piece, of some, of all that the room is for."""
        thick = {p.thick_mm for p, n in zip(self._parts, left, strict=True) if n}
        low = room - self._over
        if low < min(thick) - NEAR:  # past what the room is for: as little as can be
            return [t for t in sorted(thick) if t <= room + NEAR]
        tall = {t * n for n in (1, 2) for t in thick}
        tall |= {(low + NEAR) // t * t for t in thick if t <= low + NEAR}
        tall |= {  # all of a part in one pile
            p.thick_mm * n for p, n in zip(self._parts, left, strict=True) if 0 < n < 7
        }
        fit = sorted(h for h in tall if h <= low + NEAR) or [min(thick)]
        if not self._few:
            return [h for h in fit if h in thick] or fit[:1]
        return fit if len(fit) <= MOST_TALL else [*fit[: MOST_TALL - 2], fit[-2], fit[-1]]

    def _list_full_ends(self, left: list[int]) -> Iterator[tuple[Base, Base]]:
        """Lists pairs of layers of larger parts, for the bottom and the top."""
        large = [n for n in self._order if not self._parts[n].small]
        tall = sorted({self._parts[n].thick_mm for n in large if left[n]}, reverse=True)
        for height, other in product(tall, tall):
            bottom = self._lay_end(large, height, left, self._keep_large(left))
            if bottom and not any(self._keep_large(bottom.left)):
                half = [(n + 1) // 2 for n in self._keep_large(left)]
                if sum(half) == sum(self._keep_large(left)):  # one of each: every second part
                    half = [n * (turn % 2) for turn, n in enumerate(half)]
                bottom = self._lay_end(large, height, left, half)
            if bottom is None:
                continue
            top = self._lay_end(large, other, bottom.left, self._keep_large(bottom.left))
            if top is not None:
                yield bottom, top

    def _draw_ends(self, left: list[int]) -> Iterator[tuple[Base, Base]]:
        """Draws pairs of layers of larger parts, for the bottom and the top."""
        for _ in range(MOST_ENDS):
            bottom = self._draw_end(left, self._keep_large(left))
            top = bottom and self._draw_end(bottom.left, self._keep_large(bottom.left))
            if bottom and top:
                yield bottom, top

    def _draw_end(self, left: list[int], of: list[int]) -> Base | None:
        """Draws pieces for a layer, one piece high; None: none, or it would not carry."""
        if not self._noise:
            return None
        only = [self._noise.randint(0, n) for n in of]
        if not any(only):
            only = of
        some = [p for p, n in zip(self._parts, only, strict=True) if n]
        if not some:
            return None
        tall = max(p.thick_mm for p in some)
        some += [p for p in self._parts if p.small and self._ask.between]
        room = (  # narrow, so that it covers more of the box round it
            self._noise.uniform(min(max(max(p[1:3]) for p in some), self._room[2]), self._room[2]),
            self._noise.uniform(min(max(min(p[1:3]) for p in some), self._room[3]), self._room[3]),
        )
        return self._lay_end(self._order, tall, left, only, (0.0, 0.0, *room))

    def _keep_large(self, left: list[int]) -> list[int]:
        return [0 if p.small else n for n, p in zip(left, self._parts, strict=True)]

    def _list_single_ends(self, left: list[int]) -> Iterator[tuple[Base, Base]]:
        """Lists the pair of the two largest pieces: all else lies between them."""
        by_area = sorted(
            (n for n, p in enumerate(self._parts) if left[n] and not p.small),
            key=lambda n: -self._parts[n].length_mm * self._parts[n].width_mm,
        )
        pieces = [n for n in by_area for _ in range(min(2, left[n]))][:2]
        if len(pieces) == 2:
            bottom = self._lay_one(pieces[0], left)
            yield bottom, self._lay_one(pieces[1], bottom.left)

    def _lay_one(self, part: int, left: list[int]) -> Base:
        one = [1 if n == part else 0 for n in range(len(left))]
        filling = LayerFilling(self._parts, [part], self._parts[part].thick_mm, self._ask.gap_mm)
        filled = filling.fill(self._room, one)
        after = [n - took for n, took in zip(left, one, strict=True)]
        return Base(filling.list_piles(filled.blocks, one), after)

    def _lay_end(
        self,
        large: list[int],
        height: float,
        left: list[int],
        only: list[int],
        room: Room | None = None,
    ) -> Base | None:
        """Lays a layer of larger parts, one piece high; None: it would not carry."""
        filling = LayerFilling(self._parts, large, height, self._ask.gap_mm)
        filled = filling.fill(room or self._room, only, widely=self._few)
        self.rooms += filling.rooms
        if not filled.blocks:
            return None
        layer = filling.list_piles(filled.blocks, only)
        took = [a - b for a, b in zip(only, filled.left, strict=True)]
        after = [n - t for n, t in zip(left, took, strict=True)]
        return Base(layer, after) if layer.covered >= HALF - NEAR else None
