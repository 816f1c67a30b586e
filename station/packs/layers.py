"""Fills one layer with pieces that lie flat: blocks of equal pieces, turned where it helps.

A layer is filled from a corner: the first part that fits is laid in rows, and what is left
beside and above that block is filled in the same way. At the first block every way is tried
and the one that takes most is kept; below it only the one that leaves the largest rest.
"""

from collections.abc import Sequence
from typing import NamedTuple

from station.packs.messages import NEAR, PackLayer, PackPart, PackPile

Room = tuple[float, float, float, float]  # x, y, length, width
Rests = tuple[Room, ...]


class Block(NamedTuple):
    """A grid of piles of one part: `across` by `along` of a size, at x, y."""

    part: int
    x: float
    y: float
    across: int
    along: int
    length: float
    width: float


class Filled(NamedTuple):
    """A layer: what it takes in mm³, what is left of each part then, its blocks."""

    volume: float
    left: list[int]
    blocks: list[Block]


class LayerFilling:
    """Fills one layer of a height with the pieces that are left, the parts in the order given.

    `inner` is how far from the corner small parts may lie: length and width; None: anywhere.
    """

    def __init__(
        self,
        parts: Sequence[PackPart],
        order: Sequence[int],
        height: float,
        gap: float,
        inner: tuple[float, float] | None = None,
    ) -> None:
        self._parts = parts
        self._gap = gap
        self._each = [int((height + NEAR) // p.thick_mm) for p in parts]
        self._order = [part for part in order if self._each[part]]
        self._ways = [_turn(p) for p in parts]
        self._volumes = [p.length_mm * p.width_mm * p.thick_mm for p in parts]
        self._least = [min(p.length_mm, p.width_mm) - NEAR for p in parts]
        self._inner = inner
        self.height = height
        self.rooms = 0  # that were filled: how much work it was

    def fill(self, room: Room, left: list[int], *, widely: bool = True) -> Filled:
        """Fills a room; `widely`: every way of its first block is tried."""
        blocks = self._find_blocks(room, left)
        ways = [(block, rests) for block in blocks for rests in _cut_rests(room, block, self._gap)]
        if not widely and ways:
            ways = [max(ways, key=_rate_way)]
        done = [self._lay(*way, left) for way in ways]
        return max(done, key=lambda filled: filled.volume, default=Filled(0.0, left, []))

    def _lay(self, block: Block, rests: Rests, left: list[int]) -> Filled:
        """Lays a block, then fills the rests of its room, the larger one first."""
        after, blocks, rooms = list(left), [block], [*rests[::-1]]
        after[block.part] -= self._count(block, after)
        while rooms:
            room = rooms.pop()
            if room[2] > 0 and room[3] > 0 and (found := self._find_blocks(room, after)):
                ways = [(b, rest) for b in found for rest in _cut_rests(room, b, self._gap)]
                block, rests = max(ways, key=_rate_way)
                after[block.part] -= self._count(block, after)
                blocks.append(block)
                rooms += rests[::-1]
        took = zip(self._volumes, left, after, strict=True)
        return Filled(sum(v * (n - m) for v, n, m in took), after, blocks)

    def _count(self, block: Block, left: list[int]) -> int:
        """Counts the pieces of a block, of those that are left."""
        return min(left[block.part], block.across * block.along * self._each[block.part])

    def list_piles(self, blocks: Sequence[Block], left: Sequence[int]) -> PackLayer:
        """Lists the piles of blocks; the last pile of a part may be lower. `left`: before it."""
        there, piles, high = list(left), [], 0.0
        for part, x, y, across, along, length, width in blocks:
            for n in range(across * along):
                count = min(self._each[part], there[part])
                there[part] -= count
                at = (x + n % across * (length + self._gap), y + n // across * (width + self._gap))
                piles.append(PackPile(self._parts[part].name, *at, length, width, count))
                high = max(high, count * self._parts[part].thick_mm)
        return PackLayer(high, tuple(piles))

    def _find_blocks(self, room: Room, left: list[int]) -> list[Block]:
        """Finds the first part that still fits in the room, and the blocks it may lie in."""
        self.rooms += 1
        short = min(room[2], room[3])
        for part in self._order:
            pieces = left[part]
            if not pieces or short < self._least[part]:
                continue
            x, y, long, wide = room
            if self._inner and self._parts[part].small:
                long, wide = min(long, self._inner[0] - x), min(wide, self._inner[1] - y)
            least = self._least[part]
            if wide < least or long < least:
                continue
            piles, blocks = -(-pieces // self._each[part]), []
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


def _cut_rests(room: Room, block: Block, gap: float) -> tuple[Rests, Rests]:
    """Cuts what is left beside and above a block in two ways, the larger rest first."""
    x, y, length, width = room
    dx = block.across * (block.length + gap)
    dy = block.along * (block.width + gap)
    rest_x, rest_y = max(length - dx, 0.0), max(width - dy, 0.0)
    upright = ((x + dx, y, rest_x, width), (x, y + dy, dx - gap, rest_y))
    level = ((x, y + dy, length, rest_y), (x + dx, y, rest_x, dy - gap))
    return (
        upright if rest_x * width >= (dx - gap) * rest_y else upright[::-1],
        level if length * rest_y >= rest_x * (dy - gap) else level[::-1],
    )


def _rate_way(way: tuple[Block, Rests]) -> tuple[int, float]:
    """Rates a block by its piles, then by the largest rest that it leaves."""
    block, rests = way
    return (block.across * block.along, rests[0][2] * rests[0][3])


def _turn(part: PackPart) -> tuple[tuple[float, float], ...]:
    """Gives a part's length and width as it may lie: both ways round."""
    sizes = ((part.length_mm, part.width_mm), (part.width_mm, part.length_mm))
    return sizes[:1] if part.length_mm == part.width_mm else sizes
