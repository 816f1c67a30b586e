"""Lays pieces flat in layers on a room: blocks of equal pieces, turned where it helps.

A layer is filled from a corner: the largest part that fits is laid in rows, and what is left
beside and above that block is filled in the same way. At the first block every way is tried
and the one that covers most is taken; below it only the one that leaves the largest rest.
"""

import math
import operator
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from station.packs.messages import NEAR, PackLayer, PackPart, PackPile

Room = tuple[float, float, float, float]  # x, y, length, width


class Block(NamedTuple):
    """A grid of piles of one part: `across` by `along` of a size, at x, y."""

    part: int
    x: float
    y: float
    across: int
    along: int
    length: float
    width: float


Filled = tuple[float, list[int], list[Block]]  # mm² covered, what is left of each part, blocks


class LayerFilling:
    """Fills one layer of a height with the pieces that are left of each part."""

    def __init__(self, parts: Sequence[PackPart], height: float, gap: float) -> None:
        self._gap = gap
        self._each = [int((height + NEAR) // p.thick_mm) for p in parts]
        self._ways = [_turn(p) for p in parts]
        self._least = [min(p.length_mm, p.width_mm) - NEAR for p in parts]

    def fill(self, room: Room, left: list[int], *, widely: bool = True) -> Filled:
        """Fills a room; gives what it covers, what is left then, and the blocks."""
        blocks = self._find_blocks(room, left)
        if not blocks:
            return 0.0, left, []
        ways = [(block, self._cut_rests(room, block)) for block in blocks]
        each_cut = [(block, rests) for block, cuts in ways for rests in cuts]
        if not widely:
            best = max(each_cut, key=lambda w: (w[0].across * w[0].along, w[1][0][2] * w[1][0][3]))
            return self._lay(*best, left)
        return max((self._lay(*way, left) for way in each_cut), key=lambda done: done[0])

    def count_each(self, part: int) -> int:
        """Counts the pieces of a part that lie on each other in this layer."""
        return self._each[part]

    def _find_blocks(self, room: Room, left: list[int]) -> list[Block]:
        """Finds the first part that still fits in the room, and the blocks it may lie in."""
        x, y, long, wide = room
        for part, pieces in enumerate(left):
            each = self._each[part]
            if not pieces or not each or wide < self._least[part] or long < self._least[part]:
                continue
            piles, blocks = -(-pieces // each), []
            for length, width in self._ways[part]:
                most_x = int((long + self._gap + NEAR) // (length + self._gap))
                most_y = int((wide + self._gap + NEAR) // (width + self._gap))
                if most_x and most_y:
                    a, b = min(most_x, piles), min(most_y, piles)
                    rows, columns = (a, min(most_y, piles // a)), (min(most_x, piles // b), b)
                    grids = (rows,) if rows == columns else (rows, columns)
                    blocks += [Block(part, x, y, *grid, length, width) for grid in grids]
            if blocks:
                return blocks
        return []

    def _cut_rests(self, room: Room, block: Block) -> tuple[tuple[Room, ...], ...]:
        """Cuts what is left beside and above a block in two ways, the larger rest first."""
        x, y, length, width = room
        dx = block.across * (block.length + self._gap)
        dy = block.along * (block.width + self._gap)
        rest_x, rest_y = max(length - dx, 0.0), max(width - dy, 0.0)
        cuts = (
            ((x + dx, y, rest_x, width), (x, y + dy, dx - self._gap, rest_y)),
            ((x + dx, y, rest_x, dy - self._gap), (x, y + dy, length, rest_y)),
        )
        return tuple((a, b) if a[2] * a[3] >= b[2] * b[3] else (b, a) for a, b in cuts)

    def _lay(self, block: Block, rests: tuple[Room, ...], left: list[int]) -> Filled:
        """Lays a block, then fills the rests of its room."""
        after, piles = list(left), block.across * block.along
        after[block.part] = max(0, after[block.part] - piles * self._each[block.part])
        covered, blocks = piles * block.length * block.width, [block]
        for rest in rests:
            if rest[2] > 0 and rest[3] > 0:
                more, after, added = self.fill(rest, after, widely=False)
                covered += more
                blocks += added
        return covered, after, blocks


def _turn(part: PackPart) -> tuple[tuple[float, float], ...]:
    """Gives a part's length and width as it may lie: both ways round."""
    sizes = ((part.length_mm, part.width_mm), (part.width_mm, part.length_mm))
    return sizes[:1] if part.length_mm == part.width_mm else sizes


def _list_piles(
    parts: Sequence[PackPart],
    filling: LayerFilling,
    blocks: list[Block],
    left: list[int],
    gap: float,
) -> tuple[PackPile, ...]:
    """Lists the piles of the blocks of a layer; the last pile of a part may be lower."""
    there, piles = list(left), []
    for part, x, y, across, along, length, width in blocks:
        for n in range(across * along):
            count = min(filling.count_each(part), there[part])
            there[part] -= count
            at = (x + n % across * (length + gap), y + n // across * (width + gap))
            piles.append(PackPile(parts[part].name, *at, length, width, count))
    return tuple(piles)


def lay_layers(
    parts: Sequence[PackPart], length: float, width: float, gap: float, most: float = math.inf
) -> tuple[PackLayer, ...] | None:
    """Lays all pieces in layers on a room, the parts in the order given.

    A layer is as high as the first part that is left is thick; thinner ones lie in piles. None:
    one is too large, or they come out higher than `most`.
    """
    left, layers, room = [p.pieces for p in parts], [], most
    volumes = [p.length_mm * p.width_mm * p.thick_mm for p in parts]
    while any(left):
        if sum(map(operator.mul, volumes, left)) > (room + NEAR) * length * width:
            return None
        height = next(p.thick_mm for p, n in zip(parts, left, strict=True) if n)
        filling = LayerFilling(parts, height, gap)
        _, after, blocks = filling.fill((0.0, 0.0, length, width), left)
        if not blocks:
            return None
        layers.append(PackLayer(height, _list_piles(parts, filling, blocks, left, gap)))
        left, room = after, room - height
    return tuple(layers)


def lay_single(parts: Sequence[PackPart], gap: float) -> tuple[PackLayer, ...]:
    """Stacks the parts as narrow as they can: on the box of the longest and the widest."""
    length = max(max(p.length_mm, p.width_mm) for p in parts)
    width = max(min(p.length_mm, p.width_mm) for p in parts)
    layers = [lay_layers([part], length, width, gap) or () for part in parts]
    return tuple(layer for some in layers for layer in some)


def split_evenly(parts: Sequence[PackPart]) -> tuple[list[PackPart], list[PackPart]]:
    """Deals the pieces into two lots, in turn."""
    halves: tuple[list[PackPart], list[PackPart]] = ([], [])
    ends = [0]
    for part in parts:
        ends.append(ends[-1] + part.pieces)
    for part, (start, end) in zip(parts, pairwise(ends), strict=True):
        even = (end + 1) // 2 - (start + 1) // 2
        for half, count in zip(halves, (even, part.pieces - even), strict=True):
            if count:
                half.append(part._replace(pieces=count))
    return halves
