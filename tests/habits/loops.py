"""Closed ways of a bit as lines and arcs, turned, mirrored, moved and cut to any length."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise
from math import atan2, ceil, cos, hypot, pi, sin

Point = tuple[float, float]


@dataclass(frozen=True)
class Step:
    """Goes from one point to another in mm: straight, or about a centre, turning left or right."""

    start: Point
    end: Point
    centre: Point | None = None
    left: bool = True

    @property
    def radius(self) -> float:
        """Gives the arc's radius in mm."""
        assert self.centre
        return hypot(self.start[0] - self.centre[0], self.start[1] - self.centre[1])

    @property
    def turn(self) -> float:
        """Gives the angle in radians that the arc turns, above zero."""
        assert self.centre
        ends, (x, y) = (self.start, self.end), self.centre
        a, b = (atan2(p[1] - y, p[0] - x) for p in ends)
        return ((b - a) if self.left else (a - b)) % (2 * pi) or 2 * pi

    @property
    def length(self) -> float:
        """Gives the length in mm."""
        if self.centre:
            return self.radius * self.turn
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    def find_point(self, along: float) -> Point:
        """Gives the point so many mm along."""
        if along <= 0 or along >= self.length:
            return self.start if along <= 0 else self.end
        if not self.centre:
            t = along / self.length
            (ax, ay), (bx, by) = self.start, self.end
            return ax + (bx - ax) * t, ay + (by - ay) * t
        angle = atan2(self.start[1] - self.centre[1], self.start[0] - self.centre[0])
        angle += along / self.radius * (1 if self.left else -1)
        return self.centre[0] + self.radius * cos(angle), self.centre[1] + self.radius * sin(angle)

    def cut(self, a: float, b: float) -> "Step":
        """Gives what lies between two lengths along."""
        return replace(self, start=self.find_point(a), end=self.find_point(b))


Loop = tuple[Step, ...]


def join(points: Iterable[Point]) -> Loop:
    """Joins points by straight steps."""
    found = list(points)
    return tuple(Step(a, b) for a, b in pairwise(found))


def make_box(width: float, length: float, corner: float = 0.0) -> Loop:
    """Makes a box about zero, turning left, from the middle of its lower side."""
    x, y, c = width / 2, length / 2, corner
    if not c:
        return join([(0, -y), (x, -y), (x, y), (-x, y), (-x, -y), (0, -y)])
    steps = []
    here: Point = (0.0, -y)
    corners = [(x - c, -y + c), (x - c, y - c), (-x + c, y - c), (-x + c, -y + c)]
    spokes = [(0, -c), (c, 0), (0, c), (-c, 0), (0, -c)]
    for (cx, cy), ((ax, ay), (bx, by)) in zip(corners, pairwise(spokes), strict=True):
        steps.append(Step(here, (cx + ax, cy + ay)))
        steps.append(Step((cx + ax, cy + ay), (cx + bx, cy + by), (cx, cy)))
        here = (cx + bx, cy + by)
    steps.append(Step(here, (0.0, -y)))
    return tuple(s for s in steps if s.length > 1e-9)


def make_ring(diameter: float, x: float = 0.0, y: float = 0.0) -> Loop:
    """Makes a circle of two halves, turning left."""
    r = diameter / 2
    return Step((x + r, y), (x - r, y), (x, y)), Step((x - r, y), (x + r, y), (x, y))


def turn_round(loop: Loop) -> Loop:
    """Gives the way backwards."""
    return tuple(replace(s, start=s.end, end=s.start, left=not s.left) for s in reversed(loop))


def move(loop: Loop, x: float, y: float, angle: float = 0.0, *, mirror: bool = False) -> Loop:
    """Mirrors, turns (radians) and moves a way (mm)."""

    def put(p: Point) -> Point:
        px, py = (-p[0] if mirror else p[0]), p[1]
        return x + px * cos(angle) - py * sin(angle), y + px * sin(angle) + py * cos(angle)

    return tuple(
        Step(put(s.start), put(s.end), put(s.centre) if s.centre else None, s.left != mirror)
        for s in loop
    )


def measure(loop: Loop) -> float:
    """Gives the length in mm."""
    return sum(s.length for s in loop)


def cut_out(loop: Loop, a: float, b: float) -> Loop:
    """Gives the way between two lengths along; beyond the end it goes round again."""
    whole, found, lap = measure(loop), [], 0.0
    while lap > a:
        lap -= whole
    while lap < b - 1e-9:
        for step in loop:
            low, high = max(a - lap, 0.0), min(b - lap, step.length)
            if high - low > 1e-9:
                found.append(step.cut(low, high))
            lap += step.length
    return tuple(found)


def draw_points(loop: Loop, degrees: float = 0.25) -> list[Point]:
    """Gives points so close that chords hardly differ from arcs."""
    points = [loop[0].start]
    for s in loop:
        n = ceil(s.turn * 180 / pi / degrees) if s.centre else 1
        points += [s.find_point(s.length * i / n) for i in range(1, n + 1)]
    return points
