"""Stacks a few pieces in every way: which share a layer, which layers are the outer ones.

The lowest stack in a room is found from what lies in one layer together (`one_layer`). Outer
layers may be drawn apart as far as they still cover half of their box. That there is no stack is
as sure as these ways go.
"""

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import product
from typing import NamedTuple

from station.packs.messages import NEAR, PackLayer, PackPart
from station.packs.one_layer import (
    Counts,
    Laid,
    LayerRoom,
    LayerWays,
    Rect,
    Size,
    TooManyWaysError,
)

Layers = tuple[PackLayer, ...]
HALF = 0.5  # of its box, that an outer layer covers
MOST_BOXES = 12  # boxes of one outer layer that are tried


class Outer(NamedTuple):
    """An outer layer: which pieces, how high, the box round it, how they lie."""

    counts: Counts
    high: float
    box: Size
    laid: Laid


class EveryWay:
    """Tries every way to stack some of the pieces of these parts; `ways`: how many in all."""

    def __init__(self, parts: Sequence[PackPart], ways: int) -> None:
        self._ways = LayerWays(parts, ways)
        self._stacks: dict[tuple[LayerRoom, float], _Stacking] = {}
        self._outers = lru_cache(maxsize=None)(self._list_outers)

    @property
    def left(self) -> int:
        """The ways that may still be tried."""
        return self._ways.left

    def find_stack(
        self, counts: Counts, rooms: Sequence[tuple[float, float, float]], *, between: bool
    ) -> Layers | None:
        """Finds a stack in one of some rooms: height, length, width; each less wide and higher.

        `between`: small pieces lie between two layers of larger ones. None: there is no stack.
        Raises TooManyWaysError where that is not sure.
        """
        self._ways.begin_search()
        find = self._find_between if between else self._find_on_base
        most, need = rooms[-1][0], 0.0
        for high, long, wide in rooms:
            if need > high + NEAR:
                continue
            room = LayerRoom(long, wide, long, wide)
            need = self._stack_in(room, most).measure(counts)
            if need > most + NEAR:
                break
            if need <= high + NEAR and (found := find(counts, room, high, most)):
                return found
        if not self._ways.sure:
            raise TooManyWaysError
        return None

    def _find_on_base(
        self, counts: Counts, room: LayerRoom, high: float, most: float
    ) -> Layers | None:
        """Finds layers one of which carries the others: no side of it below `high`."""
        stacking = self._stack_in(room, most)
        layers = stacking.list_layers(counts)
        for n, layer in enumerate(layers):
            if min(layer.size_mm) >= high - NEAR and layer.covered >= HALF - NEAR:
                return (layer, *layers[:n], *layers[n + 1 :])
        for outer in self._list_bases(counts, room, high):
            rest = _subtract(counts, outer.counts)
            if outer.high + stacking.measure(rest) <= high + NEAR:
                return (self._lay_outer(outer), *stacking.list_layers(rest))
        return None

    def _find_between(
        self, counts: Counts, room: LayerRoom, high: float, most: float
    ) -> Layers | None:
        """Finds two layers of larger pieces, in the boxes of which the small ones lie."""
        anywhere = self._stack_in(room, most)
        tried: list[tuple[Counts, LayerRoom, float]] = []
        for bottom, top in self._list_pairs(counts, room, high):
            within = LayerRoom(room.long, room.wide, *_intersect(bottom, top))
            left = high - bottom.high - top.high
            rest = _subtract(_subtract(counts, bottom.counts), top.counts)
            if anywhere.measure(rest) > left + NEAR:
                continue
            if any(c == rest and r.holds(within) and h >= left - NEAR for c, r, h in tried):
                continue
            tried.append((rest, within, left))
            stacking = self._stack_in(within, most)
            if stacking.measure(rest) <= left + NEAR:
                layers = stacking.list_layers(rest)
                return (self._lay_outer(bottom), *layers, self._lay_outer(top))
        return None

    def _list_pairs(
        self, counts: Counts, room: LayerRoom, high: float
    ) -> Iterator[tuple[Outer, Outer]]:
        """Lists pairs of outer layers of larger pieces, between which each small one has room."""
        pieces = [(p, n) for p, n in zip(self._ways.parts, counts, strict=True) if n]
        longest = max(max(p[1:3]) for p, _ in pieces if p.small)
        widest = max(min(p[1:3]) for p, _ in pieces if p.small)
        large = tuple(0 if p.small else n for p, n in zip(self._ways.parts, counts, strict=True))
        for bottom in self._list_bases(large, room, high):
            if max(bottom.box) < longest - NEAR or min(bottom.box) < widest - NEAR:
                continue
            for top in self._list_bases(_subtract(large, bottom.counts), room, 0.0):
                inner = _intersect(bottom, top)
                if max(inner) < longest - NEAR or min(inner) < widest - NEAR:
                    continue
                if bottom.high + top.high <= high - NEAR:
                    yield bottom, top

    def _stack_in(self, room: LayerRoom, most: float) -> "_Stacking":
        key = (room, most)
        if key not in self._stacks:
            self._stacks[key] = _Stacking(self._ways, room, most)
        return self._stacks[key]

    def _lay_outer(self, outer: Outer) -> PackLayer:
        return self._ways.make_layer(outer.counts, outer.high, outer.laid)

    def _list_bases(self, counts: Counts, room: LayerRoom, least: float) -> Iterator[Outer]:
        """Lists layers of some of these pieces that carry: no side of the box below `least`."""
        for some in _list_some(counts):
            if self._ways.measure_area(some) / HALF >= least * least - NEAR:
                yield from self._outers(some, room, least)

    def _list_outers(self, some: Counts, room: LayerRoom, least: float) -> list[Outer]:
        """Lists the largest boxes that these pieces can have round them as an outer layer."""
        found: list[Outer] = []
        for high in self._ways.list_heights(some, math.inf):
            piles = self._ways.count_piles(some, high)
            most = self._ways.measure_area(piles) / HALF
            laid = self._ways.find_boxes(piles, room)
            boxes: dict[Size, Laid] = {}
            for box in sorted(laid, key=min, reverse=True)[:MOST_BOXES]:
                for wider in _draw_apart(laid[box], most, room, least):
                    boxes.setdefault(_measure_box(wider), wider)
            largest = [
                box
                for box in boxes
                if not any(o != box and o[0] >= box[0] and o[1] >= box[1] for o in boxes)
            ]
            by_size = sorted(largest, key=lambda box: -box[0] * box[1])[:MOST_BOXES]
            found += [Outer(some, high, box, boxes[box]) for box in by_size]
        return found


class _Stacking:
    """Finds how low pieces lie in layers in one room, no higher than `most`."""

    def __init__(self, ways: LayerWays, room: LayerRoom, most: float) -> None:
        self._ways, self._room, self._most = ways, room, most
        self._needs: dict[Counts, tuple[float, Counts]] = {}
        self._high = lru_cache(maxsize=None)(self._find_height)
        each = zip(ways.area, ways.thick, strict=True)
        self._share = [area * thick / (room.long * room.wide) for area, thick in each]

    def measure(self, counts: Counts) -> float:
        """Measures the lowest height of these pieces, in layers; infinite: above the most."""
        if not any(counts):
            return 0.0
        known = self._needs.get(counts)
        if known is None:
            known = self._needs[counts] = self._find_lowest(counts)
        return known[0]

    def list_layers(self, counts: Counts) -> list[PackLayer]:
        """Lists the layers of the lowest height, which was measured before."""
        layers = []
        while any(counts):
            some = self._needs[counts][1]
            high = self._high(some)
            laid = self._ways.lay(some, self._room, high) or ()
            layers.append(self._ways.make_layer(some, high, laid))
            counts = _subtract(counts, some)
        return layers

    def _find_lowest(self, counts: Counts) -> tuple[float, Counts]:
        """Finds the lowest height, and the pieces of the first layer."""
        best, chosen = math.inf, counts
        if self._find_least(counts) > self._most + NEAR:
            return best, chosen
        for some in self._grow(counts, self._ways.find_first(counts)):
            rest = _subtract(counts, some)
            high = self._high(some)
            if high + self._find_least(rest) >= min(best, self._most + NEAR):
                continue
            need = high + self.measure(rest)
            if need < best - NEAR and need <= self._most + NEAR:
                best, chosen = need, some
        return best, chosen

    def _find_least(self, counts: Counts) -> float:
        """Finds a height that these pieces are not below, by their volume."""
        return sum([n * share for n, share in zip(counts, self._share, strict=True)])

    def _grow(self, counts: Counts, first: int) -> Iterator[Counts]:
        """Lists what may lie in one layer with a piece of the first part, and no more as high."""
        one = tuple(1 if n == first else 0 for n in range(len(counts)))
        waiting = [(one, 0)]
        while waiting:
            some, at = waiting.pop()
            high, full = self._high(some), True
            for n, (there, piece) in enumerate(zip(counts, some, strict=True)):
                if piece < there:
                    more = (*some[:n], piece + 1, *some[n + 1 :])
                    with_it = self._high(more)
                    full = full and with_it > high
                    if n >= at and not math.isinf(with_it):
                        waiting.append((more, n))
            if full:
                yield some

    def _find_height(self, some: Counts) -> float:
        """Finds how low these pieces lie in one layer; infinite: they do not."""
        for high in self._ways.list_heights(some, self._most):
            if self._ways.lay(some, self._room, high) is not None:
                return high
        return math.inf


def _subtract(counts: Counts, some: Counts) -> Counts:
    return tuple(a - b for a, b in zip(counts, some, strict=True))


def _intersect(bottom: Outer, top: Outer) -> Size:
    return min(bottom.box[0], top.box[0]), min(bottom.box[1], top.box[1])


def _list_some(counts: Counts) -> list[Counts]:
    """Lists some of these pieces in every way, the most first."""
    ways = product(*(range(n + 1) for n in counts))
    return sorted((way for way in ways if any(way)), key=sum, reverse=True)


def _measure_box(laid: Laid) -> Size:
    far = [x + long for _, x, _, long, _ in laid]
    return max(far), max([y + wide for _, _, y, _, wide in laid])


def _draw_apart(laid: Laid, most: float, room: LayerRoom, least: float) -> Iterator[Laid]:
    """Lists a layer, and it drawn apart along and across, in boxes of an area `most` at most.

    No side of a box is below `least`.
    """
    for first in (0, 1):
        way = laid
        for axis, most_here in ((first, False), (1 - first, True)):
            box = _measure_box(way)
            limit = min(room[axis], most / box[1 - axis])
            to = limit if most_here else min(limit, max(least, box[axis]))
            way = _spread(way, axis, to - box[axis])
        for one in (way, laid):
            box = _measure_box(one)
            if min(box) >= least - NEAR and box[0] * box[1] <= most + NEAR:
                yield one


def _spread(laid: Laid, axis: int, by: float) -> Laid:
    """Moves one rectangle, or all past a line, so that the box is larger; the same where none can.

    What lies at the near side stays there, or the box would not grow.
    """
    if by <= NEAR or len(laid) < 2:
        return laid
    at, size = 1 + axis, 3 + axis
    to = max(rect[at] + rect[size] for rect in laid) + by
    for n, rect in sorted(enumerate(laid), key=lambda each: -each[1][at] - each[1][size]):
        others = (*laid[:n], *laid[n + 1 :])
        moved = _move(rect, axis, to - rect[size] - rect[at])
        if min(r[at] for r in others) <= NEAR and not any(_overlap(moved, r) for r in others):
            return (*others, moved)
    for line in sorted({rect[at] for rect in laid if rect[at] > NEAR}, reverse=True):
        past = [rect[at] >= line - NEAR for rect in laid]
        if all(p or r[at] + r[size] <= line + NEAR for p, r in zip(past, laid, strict=True)):
            return tuple(_move(r, axis, by) if p else r for p, r in zip(past, laid, strict=True))
    return laid


def _overlap(a: Rect, b: Rect) -> bool:
    return (
        a[1] < b[1] + b[3] - NEAR and b[1] < a[1] + a[3] - NEAR
        and a[2] < b[2] + b[4] - NEAR and b[2] < a[2] + a[4] - NEAR
    )  # fmt: skip


def _move(rect: Rect, axis: int, by: float) -> Rect:
    n, x, y, length, width = rect
    return (n, x + by, y, length, width) if axis == 0 else (n, x, y + by, length, width)
