"""Closed outlines of straight edges and rounded corners, and their exact offsets.

A loop is a list of corners, counter-clockwise, each with the radius that rounds it. Moved
outward or inward by a bit's radius it is again such a loop: edges stay parallel, convex
corners gain the radius and concave ones lose it, so nothing is approximated.
"""

from collections.abc import Iterable, Iterator
from math import acos, atan2, ceil, cos, hypot, pi, sin, tan
from typing import NamedTuple

Point = tuple[float, float]
CHORD_MM = 0.05  # a drawn arc leaves its chords by no more


class Corner(NamedTuple):
    """A corner of a loop, mm, and the radius that rounds it."""

    x: float
    y: float
    r: float = 0.0


Corners = tuple[Corner, ...]


class Piece(NamedTuple):
    """A straight line or an arc of a path; `left` arcs turn counter-clockwise."""

    start: Point
    end: Point
    centre: Point | None = None
    left: bool = True


class OffsetError(ValueError):
    """The bit does not fit into a corner."""


def rectangle(x: float, y: float, length: float, width: float, r: float = 0.0) -> Corners:
    """A rectangle with its lower left at x, y; its corners rounded by `r`."""
    spots = ((x, y), (x + length, y), (x + length, y + width), (x, y + width))
    return tuple(Corner(a, b, r) for a, b in spots)


def circle(x: float, y: float, diameter: float) -> Corners:
    """A circle about x, y: a square rounded all the way."""
    half = diameter / 2
    return rectangle(x - half, y - half, diameter, diameter, half)


def _around(corners: Corners) -> Iterator[tuple[Corner, Point, Point]]:
    """Each corner with the directions in which it is reached and left."""
    for i, corner in enumerate(corners):
        before, after = corners[i - 1], corners[(i + 1) % len(corners)]
        yield corner, _direction(before, corner), _direction(corner, after)


def _direction(a: Corner, b: Corner) -> Point:
    length = hypot(b.x - a.x, b.y - a.y)
    return (b.x - a.x) / length, (b.y - a.y) / length


def offset(corners: Corners, by: float) -> Corners:
    """The loop moved outward by `by` mm, inward below zero.

    Raises OffsetError where a corner is too tight for it.
    """
    moved = []
    for corner, (ux, uy), (vx, vy) in _around(corners):
        nx, ny = uy + vy, -ux - vx  # the sum of both outward normals
        share = by / (1 + ux * vx + uy * vy)
        convex = ux * vy - uy * vx > 0
        radius = corner.r + by if convex else corner.r - by
        if radius < -1e-9:
            raise OffsetError(f"the corner at {corner.x:g}, {corner.y:g} is too tight")
        moved.append(Corner(corner.x + share * nx, corner.y + share * ny, max(radius, 0.0)))
    return tuple(moved)


def path(corners: Corners) -> tuple[Piece, ...]:
    """Lines and arcs around the loop, from the end of the first corner's arc."""
    bends = [_bend(*around) for around in _around(corners)]
    pieces: list[Piece] = []
    for i, bend in enumerate(bends):
        after = bends[(i + 1) % len(bends)]
        pieces += [Piece(bend.end, after.start), after]
    return tuple(p for p in pieces if hypot(p.end[0] - p.start[0], p.end[1] - p.start[1]) > 1e-6)


def _bend(corner: Corner, u: Point, v: Point) -> Piece:
    """The arc that rounds a corner (of no length where it is sharp)."""
    turn = atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1])
    reach = corner.r * tan(abs(turn) / 2)
    side = corner.r if turn > 0 else -corner.r
    start = (corner.x - u[0] * reach, corner.y - u[1] * reach)
    end = (corner.x + v[0] * reach, corner.y + v[1] * reach)
    return Piece(start, end, (start[0] - u[1] * side, start[1] + u[0] * side), left=turn > 0)


def reverse(pieces: Iterable[Piece]) -> tuple[Piece, ...]:
    """The same path the other way round."""
    return tuple(Piece(p.end, p.start, p.centre, not p.left) for p in reversed(tuple(pieces)))


def length(piece: Piece) -> float:
    """How long a line or an arc is, mm."""
    if piece.centre is None:
        return hypot(piece.end[0] - piece.start[0], piece.end[1] - piece.start[1])
    return abs(sweep(piece)) * radius(piece)


def radius(piece: Piece) -> float:
    """The radius of an arc, mm."""
    assert piece.centre is not None
    return hypot(piece.start[0] - piece.centre[0], piece.start[1] - piece.centre[1])


def sweep(piece: Piece) -> float:
    """The angle that an arc turns through, radians, above zero counter-clockwise."""
    assert piece.centre is not None
    cx, cy = piece.centre
    a = atan2(piece.start[1] - cy, piece.start[0] - cx)
    b = atan2(piece.end[1] - cy, piece.end[0] - cx)
    turned = (b - a) % (2 * pi)
    return turned if piece.left else turned - 2 * pi


def loop(corners: Corners) -> tuple[Point, ...]:
    """The loop as points, arcs as chords, for drawing."""
    points: list[Point] = []
    for piece in path(corners):
        points += _chords(piece)
    return tuple(points)


def _chords(piece: Piece) -> list[Point]:
    """The points after a piece's start, its end included, to 0.001 mm."""
    if piece.centre is None:
        return [_tidy(piece.end)]
    r, whole = radius(piece), sweep(piece)
    step = 2 * acos(max(0.0, 1 - CHORD_MM / r))
    count = max(1, ceil(abs(whole) / step))
    cx, cy = piece.centre
    start = atan2(piece.start[1] - cy, piece.start[0] - cx)
    angles = [start + whole * n / count for n in range(1, count)]
    return [*(_tidy((cx + r * cos(a), cy + r * sin(a))) for a in angles), _tidy(piece.end)]


def _tidy(point: Point) -> Point:
    return round(point[0], 3) + 0.0, round(point[1], 3) + 0.0


def turned(point: Point, turn_deg: float, box: Point) -> Point:
    """A point of a part after its turn by quarter turns; the box's lower left stays 0, 0."""
    x, y = point
    quarter = round(turn_deg / 90) % 4
    return ((x, y), (box[1] - y, x), (box[0] - x, box[1] - y), (y, box[0] - x))[quarter]
