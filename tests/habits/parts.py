"""Parts by their true measures, and the ways a bit of any width cuts them."""

from dataclasses import dataclass
from functools import cache
from math import sqrt

from shapely import LineString, Polygon, area, get_parts, unary_union
from shapely import Point as Dot

from tests.habits.loops import Loop, Point, draw_points, join, make_box, make_ring, move


@dataclass(frozen=True)
class Hole:
    """A hole about a place: round of so many mm, or a box, its corners plain or dog-boned."""

    x: float
    y: float
    width: float
    length: float = 0.0
    bones: bool = False

    def draw(self, bit: float) -> Loop:
        """Gives the bit's way inside."""
        if not self.length:
            return make_ring(self.width - bit, self.x, self.y)
        loop = make_box(self.width - bit, self.length - bit)
        if self.bones:
            poke = bit / 2 * (1 - 1 / sqrt(2))
            points = [loop[0].start]
            for step in loop[:-1]:
                x, y = step.end
                deep = (x + poke * (1 if x > 0 else -1), y + poke * (1 if y > 0 else -1))
                points += [step.end, deep, step.end]
            loop = join([*points, loop[-1].end])
        return move(loop, self.x, self.y)


@dataclass(frozen=True)
class Shape:
    """A part about zero in mm: a box with rounded corners, or round where it has no length.

    Strokes are open ways of the bit's middle cut right through, from outside the edge or in it;
    shallow ones are cut to their depth (above zero) alone.
    """

    width: float
    length: float = 0.0
    corner: float = 0.0
    holes: tuple[Hole, ...] = ()
    drills: tuple[Point, ...] = ()
    strokes: tuple[tuple[Point, ...], ...] = ()
    shallow: tuple[tuple[Point, ...], ...] = ()
    depth: float = 2.0
    rolled: bool = False

    def draw_outline(self, bit: float) -> Loop:
        """Gives the bit's way outside, turning left."""
        if not self.length:
            return make_ring(self.width + bit)
        corner = self.corner + bit / 2 if self.corner or self.rolled else 0.0
        return make_box(self.width + bit, self.length + bit, corner)

    @cache  # noqa: B019 (a few shapes, drawn hundreds of times, live as long as the tests)
    def measure_area(self, bit: float, drill: float = 0.0) -> float:
        """Gives what is left in mm², from what the bit sweeps."""
        way = self.draw_outline(bit)
        body = Polygon(draw_points(way)).difference(_sweep(draw_points(way), bit))
        gone = [_sweep(draw_points(hole.draw(bit)), bit) for hole in self.holes]
        gone += [Polygon(draw_points(hole.draw(bit))) for hole in self.holes]
        gone += [Dot(p).buffer((drill or bit) / 2, quad_segs=256) for p in self.drills]
        gone += [_sweep(list(points), bit) for points in self.strokes]
        return float(max(area(get_parts(body.difference(unary_union(gone))))))


def _sweep(points: list[Point], bit: float) -> Polygon:
    return LineString(points).buffer(bit / 2, quad_segs=256)
