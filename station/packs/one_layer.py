"""Lays pieces in one layer in every way: each at an end of the lowest place that is left.

The ways are counted, so that the same question has the same answer; where they get too many,
`TooManyWaysError` says so.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from station.packs.layers import LayerFilling
from station.packs.messages import NEAR, PackLayer, PackPart, PackPile

Counts = tuple[int, ...]  # pieces, or piles, of each part
Rect = tuple[int, float, float, float, float]  # part, x, y, length, width
Laid = tuple[Rect, ...]
Place = tuple[float, float, float]  # x, y, length
Sky = tuple[Place, ...]  # where a layer is filled up to, from one side to the other
Size = tuple[float, float]
MOST_FILLED = 150  # places of one layer that are filled, before pieces are said not to lie in it
LEAST_WAYS = 200  # for one search
MANY_PIECES = 7  # from so many on, a layer is tried in blocks too


class TooManyWaysError(Exception):
    """Says that there are more ways than may be tried."""


class LayerRoom(NamedTuple):
    """What a layer lies in, from a corner: its size, and of the part for small pieces."""

    long: float
    wide: float
    inner_long: float
    inner_wide: float

    def holds(self, other: "LayerRoom") -> bool:
        """Tells whether all that lies in the other room lies in this one."""
        return all(a >= b - NEAR for a, b in zip(self, other, strict=True))


class LayerWays:
    """Lays pieces of these parts in one layer; `left`: the ways that may still be tried.

    `sure`: whether this search tried every way of each layer that it said pieces not to lie in.
    """

    def __init__(self, parts: Sequence[PackPart], ways: int) -> None:
        self.parts, self.left, self.sure = parts, ways, True
        self.thick = [p.thick_mm for p in parts]
        self.area = [p.length_mm * p.width_mm for p in parts]
        self._order = sorted(range(len(parts)), key=lambda n: -self.area[n])
        self._sizes = [_turn(p) for p in parts]
        self._fit: dict[Counts, list[tuple[LayerRoom, Laid]]] = {}
        self._unfit: dict[Counts, list[LayerRoom]] = {}
        self.stop = 0

    def begin_search(self) -> None:
        """Grants one search half of the ways that are left."""
        self.stop, self.sure = self.left - max(self.left // 2, LEAST_WAYS), True

    def list_heights(self, counts: Counts, most: float) -> list[float]:
        """Lists heights that a layer of these pieces can have, rising."""
        there = [(t, n) for t, n in zip(self.thick, counts, strict=True) if n]
        least = max(t for t, _ in there)
        if min(self.thick) == max(self.thick):  # two layers are as good as one of twice that
            return [least] if least <= most + NEAR else []
        highs = {round(t * k, 6) for t, n in there for k in range(1, n + 1)}
        return sorted(h for h in highs if least - NEAR <= h <= most + NEAR)

    def count_piles(self, counts: Counts, high: float) -> Counts:
        """Counts the piles that so many pieces make in a layer of a height."""
        each = zip(counts, self.thick, strict=True)
        return tuple(-(-n // int((high + NEAR) // t)) if n else 0 for n, t in each)

    def lay(self, counts: Counts, room: LayerRoom, high: float) -> Laid | None:
        """Lays pieces in one layer of a height; None: they do not lie in it."""
        piles = self.count_piles(counts, high)
        for fit, laid in self._fit.get(piles, ()):
            if room.holds(fit):
                return laid
        if any(unfit.holds(room) for unfit in self._unfit.get(piles, ())):
            return None
        found = next(self.list_ways(piles, room), None) or self._lay_blocks(counts, room, high)
        if found is None:
            self._unfit.setdefault(piles, []).append(room)
        else:
            self._fit.setdefault(piles, []).append((room, found))
        return found

    def _lay_blocks(self, counts: Counts, room: LayerRoom, high: float) -> Laid | None:
        """Lays pieces in blocks of equal ones; None: not found. For many it is often enough."""
        if sum(counts) < MANY_PIECES:
            return None
        filling = LayerFilling(self.parts, self._order, high, 0.0, room[2:])
        filled = filling.fill((0.0, 0.0, room.long, room.wide), list(counts))
        self.left -= filling.rooms
        if any(filled.left):
            return None
        numbers = {part.name: n for n, part in enumerate(self.parts)}
        piles = filling.list_piles(filled.blocks, counts).piles
        return tuple((numbers[p.part], p.x_mm, p.y_mm, p.length_mm, p.width_mm) for p in piles)

    def list_ways(self, piles: Counts, room: LayerRoom) -> Iterator[Laid]:
        """Lists the ways in which piles lie in a room."""
        area = self.measure_area(piles)
        if area <= room.long * room.wide + NEAR:
            yield from _Filling(self, room).fill(((0.0, 0.0, room.long),), piles, area)

    def find_boxes(self, piles: Counts, room: LayerRoom) -> dict[Size, Laid]:
        """Finds the boxes that piles in a room can have round them, half covered; a way for each.

        Raises TooManyWaysError.
        """
        area = self.measure_area(piles)
        if area > room.long * room.wide + NEAR:
            return {}
        boxing = _Boxing(self, room, 2 * area)
        boxing.fill_all(((0.0, 0.0, room.long),), piles, area, (0.0, 0.0), ())
        return boxing.found

    def list_places(self, place: Place, left: Counts, room: LayerRoom) -> Iterator[Rect]:
        """Lists the piles that lie at an end of a place, turned either way."""
        x, y, long = place
        for n in self._order:
            if not left[n]:
                continue
            most = room[2:] if self.parts[n].small else room[:2]
            for length, width in self._sizes[n]:
                if length > long + NEAR or y + width > most[1] + NEAR:
                    continue
                if x + length <= most[0] + NEAR:
                    yield (n, x, y, length, width)
                at = x + long - length
                whole = long >= room.long - NEAR  # there its other end is the same, mirrored
                if not whole and at > x + NEAR and at + length <= most[0] + NEAR:
                    yield (n, at, y, length, width)

    def make_layer(self, counts: Counts, high: float, laid: Laid) -> PackLayer:
        """Makes a layer of pieces: as many on each other as its height takes."""
        left, piles, tall = list(counts), [], 0.0
        for n, x, y, length, width in laid:
            pieces = min(left[n], int((high + NEAR) // self.thick[n]))
            left[n] -= pieces
            tall = max(tall, pieces * self.thick[n])
            piles.append(PackPile(self.parts[n].name, x, y, length, width, pieces))
        return PackLayer(tall, tuple(piles))

    def measure_area(self, counts: Counts) -> float:
        """Measures pieces or piles from above, in mm²."""
        return sum([n * area for n, area in zip(counts, self.area, strict=True)])

    def find_first(self, counts: Counts) -> int:
        """Finds the largest part of which there is a piece."""
        return next(n for n in self._order if counts[n])


class _Filling:
    """Fills one room with piles."""

    def __init__(self, ways: LayerWays, room: LayerRoom) -> None:
        self.ways, self.room = ways, room
        self._seen: set[tuple[Sky, Counts, Size]] = set()
        self._enough = ways.left - MOST_FILLED

    def fill(self, sky: Sky, left: Counts, area: float) -> Iterator[Laid]:
        """Fills the lowest place of what is filled so far: at either end, or leaves it empty."""
        if area <= NEAR:
            yield ()
        if area <= NEAR or self.is_done(sky, left, area, (0.0, 0.0)):
            return
        at = _find_lowest(sky)
        for rect in self.ways.list_places(sky[at], left, self.room):
            part = rect[0]
            after = (*left[:part], left[part] - 1, *left[part + 1 :])
            rest = area - self.ways.area[part]
            for others in self.fill(_raise(sky, at, rect), after, rest):
                yield (rect, *others)
        if len(sky) > 1:
            yield from self.fill(_leave(sky, at), left, area)

    def is_done(self, sky: Sky, left: Counts, area: float, box: Size) -> bool:
        """Tells whether nothing new can come of it. Raises TooManyWaysError."""
        key = sky, left, box
        if key in self._seen:
            return True
        self._seen.add(key)
        ways = self.ways
        ways.left -= 1
        if ways.left < ways.stop:
            raise TooManyWaysError
        if ways.left < self._enough:
            ways.sure = False
            return True
        return area > sum([(self.room.wide - y) * long for _, y, long in sky]) + NEAR


class _Boxing(_Filling):
    """Fills one room with piles in every way, for the boxes round them of `most` mm² at most."""

    def __init__(self, ways: LayerWays, room: LayerRoom, most: float) -> None:
        super().__init__(ways, room)
        self._most = most + NEAR
        self.found: dict[Size, Laid] = {}

    def fill_all(self, sky: Sky, left: Counts, area: float, box: Size, laid: Laid) -> None:
        """Fills on from what is `laid`, in a box so far, and notes each box that is full."""
        if area <= NEAR:
            self.found[box] = laid
        if area <= NEAR or self.is_done(sky, left, area, box):
            return
        at = _find_lowest(sky)
        for rect in self.ways.list_places(sky[at], left, self.room):
            part, x, y, length, width = rect
            wider = max(box[0], x + length), max(box[1], y + width)
            if wider[0] * wider[1] > self._most:
                continue
            after = (*left[:part], left[part] - 1, *left[part + 1 :])
            rest = area - self.ways.area[part]
            self.fill_all(_raise(sky, at, rect), after, rest, wider, (*laid, rect))
        if len(sky) > 1:
            self.fill_all(_leave(sky, at), left, area, box, laid)


def _find_lowest(sky: Sky) -> int:
    """Finds the lowest place of what is filled, the first of equal ones."""
    heights = [y for _, y, _ in sky]
    return heights.index(min(heights))


def _turn(part: PackPart) -> tuple[Size, ...]:
    """Gives a part's length and width as it may lie: both ways round."""
    sizes = ((part.length_mm, part.width_mm), (part.width_mm, part.length_mm))
    return sizes[:1] if part.length_mm == part.width_mm else sizes


def _raise(sky: Sky, at: int, rect: Rect) -> Sky:
    """Raises what is filled by a rectangle at one end of a place."""
    x, y, long = sky[at]
    _, left, _, length, width = rect
    new = [(left, y + width, length)]
    if left > x + NEAR:
        new.insert(0, (x, y, left - x))
    if x + long > left + length + NEAR:
        new.append((left + length, y, x + long - left - length))
    return _join((*sky[:at], *new, *sky[at + 1 :]))


def _leave(sky: Sky, at: int) -> Sky:
    """Leaves a place empty, up to the lower of its neighbours."""
    x, _, long = sky[at]
    high = min(sky[n][1] for n in (at - 1, at + 1) if 0 <= n < len(sky))
    return _join((*sky[:at], (x, high, long), *sky[at + 1 :]))


def _join(sky: Sky) -> Sky:
    """Joins neighbours of the same height."""
    joined: list[Place] = []
    for x, y, long in sky:
        if joined and abs(joined[-1][1] - y) < NEAR:
            joined[-1] = (joined[-1][0], joined[-1][1], joined[-1][2] + long)
        else:
            joined.append((x, y, long))
    return tuple(joined)
