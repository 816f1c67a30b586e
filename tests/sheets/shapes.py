"""Shapes of parts and the tracks of a bit's centre along them. Points are complex, in mm."""

import cmath
import itertools
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, pi, sin, tan, tau
from typing import NamedTuple, Protocol


class Seg(NamedTuple):
    """A line, or an arc that turns by `sweep` radians (left is positive) about `centre`."""

    a: complex
    b: complex
    centre: complex = 0j
    sweep: float = 0.0


class Frame(NamedTuple):
    """Where a shape is laid: mirrored across its x axis first, then turned, then moved."""

    at: complex = 0j
    turn: complex = 1 + 0j
    mirrored: bool = False

    def place(self, point: complex) -> complex:
        """Gives the sheet's point of a shape's point."""
        return self.at + self.turn * (point.conjugate() if self.mirrored else point)


def measure_seg(seg: Seg) -> float:
    """Gives a segment's length in mm."""
    return abs(seg.sweep) * abs(seg.a - seg.centre) if seg.sweep else abs(seg.b - seg.a)


def find_point(seg: Seg, s: float) -> complex:
    """Gives the point after `s` mm of a segment."""
    share = s / (measure_seg(seg) or 1.0)
    if seg.sweep:
        return seg.centre + (seg.a - seg.centre) * cmath.exp(1j * seg.sweep * share)
    return seg.a + (seg.b - seg.a) * share


def cut_seg(seg: Seg, s0: float, s1: float) -> Seg:
    """Gives the piece of a segment between two lengths."""
    length = measure_seg(seg)
    a = seg.a if s0 <= 1e-9 else find_point(seg, s0)
    b = seg.b if s1 >= length - 1e-9 else find_point(seg, s1)
    return Seg(a, b, seg.centre, seg.sweep * (s1 - s0) / length if length else 0.0)


def place_seg(seg: Seg, frame: Frame) -> Seg:
    """Lays a segment on the sheet."""
    sweep = -seg.sweep if frame.mirrored else seg.sweep
    centre = frame.place(seg.centre) if seg.sweep else 0j
    return Seg(frame.place(seg.a), frame.place(seg.b), centre, sweep)


def reverse_seg(seg: Seg) -> Seg:
    """Gives a segment run the other way."""
    return Seg(seg.b, seg.a, seg.centre, -seg.sweep)


class Track:
    """Segments one after the other, closed or open."""

    def __init__(self, segs: Sequence[Seg], *, closed: bool) -> None:
        self.segs = [s for s in segs if measure_seg(s) > 1e-7]
        self.closed = closed
        self.ends = [0.0]
        for seg in self.segs:
            self.ends.append(self.ends[-1] + measure_seg(seg))
        self.length = self.ends[-1]

    def find(self, s: float) -> complex:
        """Gives the point after `s` mm; a closed track goes round again."""
        if self.closed:
            s %= self.length
        k = min(max(bisect_left(self.ends, s) - 1, 0), len(self.segs) - 1)
        return find_point(self.segs[k], min(s, self.ends[k + 1]) - self.ends[k])

    def heading(self, s: float) -> complex:
        """Gives the direction at `s` mm, of length 1."""
        step = self.find(s + 1e-4) - self.find(s) if s < self.length - 1e-4 or self.closed else 0j
        step = step or self.find(s) - self.find(s - 1e-4)
        return step / abs(step)

    def take(self, s0: float, s1: float) -> list[Seg]:
        """Gives the segments between two lengths; of a closed track also past its end."""
        taken: list[Seg] = []
        count = len(self.segs)
        lap = int(s0 / self.length) * self.length if self.closed else 0.0
        k = max(bisect_right(self.ends, s0 - lap) - 1, 0)
        while k < count or self.closed:
            if k == count:
                k, lap = 0, lap + self.length
            begin, end = lap + self.ends[k], lap + self.ends[k + 1]
            if begin > s1 - 1e-7:
                break
            low, high = max(s0, begin), min(s1, end)
            if high - low > 1e-7:
                whole = high - low > end - begin - 1e-9
                seg = self.segs[k]
                taken.append(seg if whole else cut_seg(seg, low - begin, high - begin))
            k += 1
        return taken

    def begin_at(self, s: float) -> "Track":
        """Gives the closed track begun `s` mm further."""
        return Track(self.take(s % self.length, s % self.length + self.length), closed=True)

    def reverse(self) -> "Track":
        """Gives the track run the other way."""
        return Track([reverse_seg(s) for s in reversed(self.segs)], closed=self.closed)

    def place(self, frame: Frame) -> "Track":
        """Lays the track on the sheet."""
        return Track([place_seg(s, frame) for s in self.segs], closed=self.closed)

    def area(self) -> float:
        """Gives the area inside a closed track in mm²: positive when it runs to the left."""
        area = 0.0
        for seg in self.segs:
            area += (seg.a.conjugate() * seg.b).imag / 2
            if seg.sweep:
                area += abs(seg.a - seg.centre) ** 2 * (seg.sweep - sin(seg.sweep)) / 2
        return area

    def bounds(self) -> tuple[float, float, float, float]:
        """Gives the least x, least y, greatest x and greatest y."""
        points = [p for s in self.segs for p in (s.a, s.b)]
        for seg in self.segs:
            points += find_extremes(seg)
        xs, ys = [p.real for p in points], [p.imag for p in points]
        return min(xs), min(ys), max(xs), max(ys)


def find_extremes(seg: Seg) -> list[complex]:
    """Gives the points of an arc that lie furthest along an axis."""
    if not seg.sweep:
        return []
    radius, begin = abs(seg.a - seg.centre), cmath.phase(seg.a - seg.centre)
    low, high = sorted((begin, begin + seg.sweep))
    turns = range(-8, 9)
    return [seg.centre + cmath.rect(radius, k * pi / 2) for k in turns if low < k * pi / 2 < high]


class Outline(Protocol):
    """A closed shape that a bit can follow at a distance."""

    def trace(self, offset: float, *, rolled: bool = False) -> Track:
        """Gives its track, `offset` mm outside (inside when negative), running to the left."""
        ...

    def as_cut(self, bit: float, *, inside: bool) -> Track:
        """Gives the edge that a round bit of this diameter leaves of it."""
        ...


@dataclass(frozen=True)
class Disc:
    """A circle."""

    radius: float
    centre: complex = 0j

    def trace(self, offset: float, *, rolled: bool = False) -> Track:
        """Gives the circle about it, begun at its right."""
        start = self.centre + self.radius + offset
        return Track([Seg(start, start, self.centre, tau)], closed=True)

    def as_cut(self, bit: float, *, inside: bool) -> Track:
        """Gives itself."""
        return self.trace(0.0)


@dataclass(frozen=True)
class Rounded:
    """A polygon, its corners running to the left, each with a radius (0 is sharp)."""

    corners: tuple[complex, ...]
    radii: tuple[float, ...]

    def trace(self, offset: float, *, rolled: bool = False) -> Track:
        """Gives its offset; `rolled` goes round sharp corners in an arc."""
        corners, radii = [], []
        for k, corner in enumerate(self.corners):
            u = corner - self.corners[k - 1]
            v = self.corners[(k + 1) % len(self.corners)] - corner
            u, v = u / abs(u), v / abs(v)
            convex = (u.conjugate() * v).imag > 0
            n, m = -1j * u, -1j * v
            corners.append(corner + offset * (n + m) / (1 + (n.conjugate() * m).real))
            grown = offset if convex else -offset
            round_it = self.radii[k] > 0 or (rolled and grown > 0)
            radii.append(max(self.radii[k] + grown, 0.0) if round_it else 0.0)
        return Track(round_corners(corners, radii), closed=True)

    def as_cut(self, bit: float, *, inside: bool) -> Track:
        """Gives it with no inner corner tighter than the bit."""
        radii = []
        for k, corner in enumerate(self.corners):
            u = corner - self.corners[k - 1]
            v = self.corners[(k + 1) % len(self.corners)] - corner
            convex = (u.conjugate() * v).imag > 0
            tight = convex == inside
            radii.append(max(self.radii[k], bit / 2) if tight else self.radii[k])
        return Rounded(self.corners, tuple(radii)).trace(0.0)


def round_corners(corners: Sequence[complex], radii: Sequence[float]) -> list[Seg]:
    """Gives a polygon's lines, and the arc of each corner that has a radius."""
    segs: list[Seg] = []
    ends: list[tuple[complex, complex, complex, float]] = []
    for k, corner in enumerate(corners):
        u, v = corner - corners[k - 1], corners[(k + 1) % len(corners)] - corner
        u, v = u / abs(u), v / abs(v)
        bend = cmath.phase(v / u)
        back = radii[k] * tan(abs(bend) / 2)
        side = 1j if bend > 0 else -1j
        ends.append(
            (corner - u * back, corner + v * back, corner - u * back + u * side * radii[k], bend)
        )
    for k, (a, b, centre, bend) in enumerate(ends):
        if radii[k] > 0:
            segs.append(Seg(a, b, centre, bend))
        segs.append(Seg(b, ends[(k + 1) % len(ends)][0]))
    return segs


@dataclass(frozen=True)
class Blob:
    """A smooth line about a point: its radius swells by waves (how many, how much, where)."""

    radius: float
    waves: tuple[tuple[int, float, float], ...]
    points: int = 60

    def trace(self, offset: float, *, rolled: bool = False) -> Track:
        """Gives its chords, moved outwards."""
        ring = [self._find(tau * k / self.points, offset) for k in range(self.points)]
        return Track([Seg(ring[k - 1], ring[k]) for k in range(self.points)], closed=True)

    def _find(self, angle: float, offset: float) -> complex:
        r = self.radius * (1 + sum(a * cos(n * angle + p) for n, a, p in self.waves))
        dr = self.radius * sum(-a * n * sin(n * angle + p) for n, a, p in self.waves)
        ray = cmath.exp(1j * angle)
        ahead = ray * (dr + 1j * r)
        return r * ray - 1j * offset * ahead / abs(ahead)

    def as_cut(self, bit: float, *, inside: bool) -> Track:
        """Gives itself: it bends less than a bit."""
        return self.trace(0.0)


def make_box(width: float, height: float, radius: float = 0.0, at: complex = 0j) -> Rounded:
    """Gives a rectangle about a point."""
    w, h = width / 2, height / 2
    corners = tuple(
        at + c for c in (complex(-w, -h), complex(w, -h), complex(w, h), complex(-w, h))
    )
    return Rounded(corners, (radius,) * 4)


def make_line(*points: complex) -> Track:
    """Gives an open track through points."""
    pairs = itertools.pairwise(points)
    return Track([Seg(a, b) for a, b in pairs], closed=False)
