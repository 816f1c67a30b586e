"""Fills one layer with pieces that lie flat: blocks of equal pieces, turned where it helps.

A layer is filled from a corner: the first part that fits is laid in rows, and what is left
beside and above that block is filled in the same way. At the first block every way is tried
and the one that takes most is kept; below it only the one that leaves the largest rest.
"""

from collections.abc import Sequence
from typing import NamedTuple

from station.packs.messages import NEAR, PackLayer, PackPart, PackPile

Room = tuple[float, float, float, float]  # x, y, length, width
Rests = tuple[Room, Room]  # the larger one first


# a grid of piles of one part: part, x, y, piles across and along, length and width of a pile
Block = tuple[int, float, float, int, int, float, float]
Way = tuple[Block, Rests]


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
        self._order = [
            (part, min(parts[part][1:3]) - NEAR, _turn(parts[part]), parts[part].small)
            for part in order
            if self._each[part]
        ]
        self._volumes = [p.length_mm * p.width_mm * p.thick_mm for p in parts]
        self._least = min((least for _, least, _, _ in self._order), default=0.0)
        self._inner = inner
        self.height = height
        self.rooms = 0  # that were filled: how much work it was

    def fill(self, room: Room, left: list[int], *, widely: bool = True) -> Filled:
        """Fills a room; `widely`: every way of its first block is tried."""
        best = Filled(0.0, left, [])
        if not widely:
            way = self._find_way(room, left)
            return self._lay(way, left) if way else best
        for block in self._find_blocks(room, left):
            for rests in self._list_rests(room, block):
                filled = self._lay((block, rests), left)
                if not any(filled.left):
                    return filled
                if filled.volume > best.volume:
                    best = filled
        return best

    def _lay(self, way: Way, left: list[int]) -> Filled:
        """Lays a block, then fills the rests of its room, the larger one first."""
        after, blocks, least = list(left), [], self._least
        rooms: list[Room] = []
        found: Way | None = way
        while True:
            if found:
                block, (larger, smaller) = found
                part, _, _, across, along, _, _ = block
                after[part] -= min(after[part], across * along * self._each[part])
                blocks.append(block)
                rooms += (smaller, larger)
            if not rooms:
                break
            room = rooms.pop()
            small = room[2] < least or room[3] < least
            found = None if small else self._find_way(room, after)
            self.rooms += small
        took = zip(self._volumes, left, after, strict=True)
        return Filled(sum([v * (n - m) for v, n, m in took]), after, blocks)

    def _find_way(self, room: Room, left: list[int]) -> Way | None:
        """Finds the block with most piles, cut so that the largest rest is left; None: no part
        fits in the room.
        """
        blocks = self._find_blocks(room, left)
        if not blocks:
            return None
        _, _, long, wide = room
        gap, best, upright, most, largest = self._gap, blocks[0], True, -1, -1.0
        for block in blocks:
            _, _, _, across, along, length, width = block
            if across * along < most:
                continue
            dx, dy = across * (length + gap), along * (width + gap)
            rest_x, rest_y = long - dx, wide - dy
            if rest_x < 0:
                rest_x = 0.0
            if rest_y < 0:
                rest_y = 0.0
            side, level = rest_x * wide, long * rest_y
            side, level = max(side, (dx - gap) * rest_y), max(level, rest_x * (dy - gap))
            rest = max(side, level)
            if across * along > most or rest > largest:
                best, upright, most, largest = block, side >= level, across * along, rest
        return best, _cut_rests(room, best, gap)[not upright]

    def _list_rests(self, room: Room, block: Block) -> tuple[Rests, ...]:
        """Lists the cuts of what a block leaves; one where the other can hold no more than it."""
        _, _, _, across, along, length, width = block
        cuts = _cut_rests(room, block, self._gap)
        if room[3] - along * (width + self._gap) < self._least:
            return cuts[:1]
        if room[2] - across * (length + self._gap) < self._least:
            return cuts[1:]
        return cuts

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
        gap, short = self._gap, min(room[2], room[3])
        for part, least, ways, small in self._order:
            if not left[part] or short < least:
                continue
            x, y, long, wide = room
            if small and self._inner:
                long, wide = min(long, self._inner[0] - x), min(wide, self._inner[1] - y)
                if wide < least or long < least:
                    continue
            piles, blocks = -(-left[part] // self._each[part]), []
            for length, width in ways:
                most_x = int((long + gap + NEAR) // (length + gap))
                most_y = int((wide + gap + NEAR) // (width + gap))
                if most_x and most_y:
                    a, b = min(most_x, piles), min(most_y, piles)
                    rows, columns = (a, min(most_y, piles // a)), (min(most_x, piles // b), b)
                    blocks.append((part, x, y, *rows, length, width))
                    if rows != columns:
                        blocks.append((part, x, y, *columns, length, width))
            if blocks:
                return blocks
        return []


def _cut_rests(room: Room, block: Block, gap: float) -> tuple[Rests, Rests]:
    """Cuts what is left beside and above a block in two ways, the larger rest first."""
    x, y, length, width = room
    dx = block[3] * (block[5] + gap)
    dy = block[4] * (block[6] + gap)
    rest_x, rest_y = max(length - dx, 0.0), max(width - dy, 0.0)
    upright = ((x + dx, y, rest_x, width), (x, y + dy, dx - gap, rest_y))
    level = ((x, y + dy, length, rest_y), (x + dx, y, rest_x, dy - gap))
    return (
        upright if rest_x * width >= (dx - gap) * rest_y else upright[::-1],
        level if length * rest_y >= rest_x * (dy - gap) else level[::-1],
    )


def _turn(part: PackPart) -> tuple[tuple[float, float], ...]:
    """Gives a part's length and width as it may lie: both ways round."""
    sizes = ((part.length_mm, part.width_mm), (part.width_mm, part.length_mm))
    return sizes[:1] if part.length_mm == part.width_mm else sizes
