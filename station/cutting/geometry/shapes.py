"""Which pieces are of one shape, whatever their turn or mirror image.

Shapes are compared by their complex moments about the centre of area: turning a shape by
φ multiplies each by a power of e^{iφ}, mirroring conjugates it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.rings import (
    area_of,
    centroid_of,
    find_rectangle,
    measure_ring,
    measure_round,
    perimeter_of,
)
from station.cutting.model import Complexes, Floats, Hollow, Ints, Piece, Ring, ShapeFound
from station.shop.facts import Part, Shape

# moments z^p · conj(z)^q
ORDERS = tuple((p, q) for n in range(2, 6) for p in range(n, -1, -1) if p >= (q := n - p))
SPIN = np.array([p - q for p, q in ORDERS])  # how often each turns with its shape
# 7-point rule on a triangle, exact to degree 5 (a standard quadrature)
_A, _B = (6 - 15**0.5) / 21, (6 + 15**0.5) / 21
_WA, _WB = (155 - 15**0.5) / 1200, (155 + 15**0.5) / 1200
RULE = np.array(
    [
        (1 / 3, 1 / 3, 9 / 40),
        *[(_A, _A, _WA), (1 - 2 * _A, _A, _WA), (_A, 1 - 2 * _A, _WA)],
        *[(_B, _B, _WB), (1 - 2 * _B, _B, _WB), (_B, 1 - 2 * _B, _WB)],
    ]
)
CORNER_MM, MOST_CORNERS = 0.02, 40  # of an outline, that are compared one by one
BUCKET_SHARE = 0.01  # of a perimeter, by which shapes of neighbouring buckets differ
SIZE_MM = 0.1  # by which sizes of equal parts differ, where arcs come as chords
TIE_SHARE = 0.001  # of its area, by which the smallest rectangles around equal parts differ
PLACE_MM = 0.15  # how far corners, holes and hollows of equal parts may lie apart
ROUGH_SHARE = 0.15  # of an outline's corners may lie twice as far apart: where its cut met itself
MOST_CORNER_TURNS = 24
DEPTH_MM = 0.05
LEAN_MM2, LEAN_SHARE = 1.5, 0.1
HOLLOW_WEIGHT = 0.5


@compile_inner
def _stretch(value: complex, times: float) -> complex:
    """Gives so many times a complex number: two products, where complex ones take four."""
    return complex(value.real * times, value.imag * times)


@compile_entry("void(c16[::1], i8[::1], f8[::1], c16, f8, c16[::1])")
def sum_moments(
    z: Complexes, stops: Ints, sides: Floats, centre: complex, scale: float, sums: Complexes
) -> None:
    """Adds up the moments of rings about a centre, in units of `scale` and the order of ORDERS.

    Rings stand behind one another in `z` and end at `stops`; each counts by its side, 1 or -1.
    """
    base, begin = -centre / scale, 0
    s20, s30, s21, s40, s31, s50, s41, s32 = 0j, 0j, 0j, 0j, 0j, 0j, 0j, 0j
    s11, s22 = 0.0, 0.0
    for ring in range(len(stops)):
        b = z[stops[ring] - 1] / scale
        for i in range(begin, stops[ring]):
            a, b = b, z[i] / scale
            area = (a.real * b.imag - a.imag * b.real) / 2 * sides[ring]
            for k in range(len(RULE)):
                z1, mass = base + RULE[k, 0] * a + RULE[k, 1] * b, RULE[k, 2] * area
                r2, z2 = z1.real * z1.real + z1.imag * z1.imag, z1 * z1
                m20, m11 = _stretch(z2, mass), mass * r2
                m40, m31, m22 = m20 * z2, _stretch(z2, m11), m11 * r2
                s20, s11, s30, s21 = s20 + m20, s11 + m11, s30 + m20 * z1, s21 + _stretch(z1, m11)
                s40, s31, s22, s50 = s40 + m40, s31 + m31, s22 + m22, s50 + m40 * z1
                s41, s32 = s41 + m31 * z1, s32 + _stretch(z1, m22)
        begin = stops[ring]
    sums[0], sums[1], sums[2], sums[3], sums[4] = s20, s11, s30, s21, s40
    sums[5], sums[6], sums[7], sums[8], sums[9] = s31, s22, s50, s41, s32


@dataclass(frozen=True)
class Fingerprint:
    """Holds what identifies a shape: sizes, moments scaled to one, and what lies where in it.

    `corners` and `marks` (holes and hollows) are told from the centre of area. `leans` tell
    which way each mark is longer, and by how much: they turn twice as a mark turns once, mm².
    """

    width: float
    length: float
    area: float
    perimeter: float
    moments: Complexes
    corners: Complexes
    marks: Complexes
    leans: Complexes
    weights: Floats  # (n, 3) depth (0: through), area, length around of each mark, as a curve

    @property
    def turns_over(self) -> bool:
        """Tells whether its mirror image is the same part: everything is cut through."""
        return not self.weights[:, 0].any()


def take_fingerprint(
    outline: Ring, holes: Sequence[Ring], hollows: Sequence[Hollow] = ()
) -> Fingerprint:
    """Takes a shape's fingerprint; holes count against the area and the moments."""
    width, length, _ = find_rectangle(outline)
    area = abs(area_of(outline)) - sum(abs(area_of(h)) for h in holes)
    around = perimeter_of(outline) + sum(perimeter_of(h) for h in holes)
    middle, moments = _find_moments(outline, holes, [h.outline for h in hollows])
    ring = outline[:, 0] + 1j * outline[:, 1] - middle
    edge = shapely.linearrings(np.column_stack((ring.real, ring.imag)))
    corners = shapely.get_coordinates(shapely.simplify(edge, CORNER_MM, preserve_topology=False))
    marks = [*holes, *(h.outline for h in hollows)]
    weights = [(0.0, *measure_round(h)) for h in holes]
    for h in hollows:
        sizes = [measure_round(ring) for ring in (h.outline, *h.islands)]
        left = 2 * sizes[0][0] - sum(area for area, _ in sizes)
        weights.append((h.depth_mm, left, sum(around for _, around in sizes)))
    return Fingerprint(
        width, length, area, around, moments, corners[:-1, 0] + 1j * corners[:-1, 1],
        np.array([complex(*centroid_of(ring)) - middle for ring in marks], np.complex128),
        np.array([_measure_lean(ring) for ring in marks], np.complex128),
        np.array(weights).reshape(-1, 3),
    )  # fmt: skip


def _measure_lean(ring: Ring) -> complex:
    """Measures which way a ring is longer, as (length² - width²) / 12 of a rectangle, and at twice
    the angle of its length.
    """
    z = ring[:, 0] + 1j * ring[:, 1] - complex(*centroid_of(ring))
    before = np.roll(z, 1)
    size = (before.conj() * z).imag
    return complex((size * (before**2 + before * z + z**2)).sum() / (6 * size.sum()))


def _find_moments(
    outline: Ring, holes: Sequence[Ring], hollows: Sequence[Ring]
) -> tuple[complex, Complexes]:
    """Finds the centre of area of an outline less its holes, and its moments scaled to one.

    Hollows count for a part of a hole in the moments, so that they too tell a turn.
    """
    rings = (outline, *holes, *hollows)
    measured = np.array([measure_ring(ring) for ring in rings])
    base = outline[0]
    solid = 1 + len(holes)
    weights = np.abs(measured[:, 0]) * np.array([1.0] + [-1.0] * (len(rings) - 1))
    total = weights[:solid].sum()
    if total <= 0:
        return complex(*base), np.zeros(len(SPIN), np.complex128)
    centres = measured[:, 2:] - base
    middle = complex(*(weights[:solid, None] * centres[:solid]).sum(axis=0)) / total
    points = np.concatenate(rings) - base
    sums = np.zeros(len(SPIN), np.complex128)
    scale = float(np.sqrt(total))
    stops = np.cumsum([len(ring) for ring in rings])
    sides = np.sign(measured[:, 0]) * np.sign(weights)
    sides[solid:] *= HOLLOW_WEIGHT
    sum_moments(points[:, 0] + 1j * points[:, 1], stops, sides, middle, scale, sums)
    return middle + complex(*base), sums


def find_turn(one: Fingerprint, other: Fingerprint) -> tuple[float, bool] | None:
    """Finds by which angle `other` is turned from `one` (radians), and whether it is mirrored.

    None where anything that is cut differs. What is not cut through has no mirror image.
    """
    if not _is_alike(one, other):
        return None
    for mirrored in (False, True) if one.turns_over else (False,):
        base = np.conj(one.moments) if mirrored else one.moments
        for angle in _list_angles(base, other.moments):
            if _lies_alike(one, other, angle, mirrored=mirrored):
                return angle, mirrored
        # what rounding leaves of the moments of a square with four holes tells any turn
        for angle in _list_corner_angles(one, other, mirrored=mirrored):
            if _lies_alike(one, other, angle, mirrored=mirrored):
                return angle, mirrored
    return None


def _is_alike(one: Fingerprint, other: Fingerprint) -> bool:
    """Tells whether sizes and holes of two shapes are equal but for rounding, and for which of
    several rectangles around them is taken, where these are almost as small.
    """
    around, around2 = one.width * one.length, other.width * other.length
    near = SIZE_MM * (one.width + one.length) + TIE_SHARE * around
    return (
        len(one.marks) == len(other.marks)
        and abs(around - around2) < near
        and abs(one.area - other.area) < SIZE_MM / 5 * one.perimeter + 0.05
        and abs(one.perimeter - other.perimeter) < 0.002 * one.perimeter + 0.05
    )


def _lies_alike(one: Fingerprint, other: Fingerprint, angle: float, *, mirrored: bool) -> bool:
    """Tells whether the corners, holes and hollows of two shapes lie alike after a turn."""
    near = max(PLACE_MM, 3e-4 * one.length)
    turn = np.exp(1j * angle)
    corners = other.corners / turn
    corners = np.conj(corners) if mirrored else corners
    if not _reach_alike(one, other, corners):
        return False
    some = corners[:: -(-len(corners) // MOST_CORNERS)]
    off = measure_off(some, one.corners)
    if (off > 2 * near).any() or np.mean(off > near) > ROUGH_SHARE:
        return False
    if not len(one.marks):
        return True
    marks = (np.conj(one.marks) if mirrored else one.marks) * turn
    slack = np.array([DEPTH_MM, 0.05, 0.05]) + 0.01 * one.weights * [0, 1, 1]
    same = np.abs(marks[:, None] - other.marks[None]) < near
    same &= (np.abs(one.weights[:, None] - other.weights[None]) < slack[:, None]).all(axis=2)
    leans = (np.conj(one.leans) if mirrored else one.leans) * turn**2
    same &= np.abs(leans[:, None] - other.leans) < LEAN_MM2 + LEAN_SHARE * np.abs(leans)[:, None]
    return bool(same.any(axis=1).all() and same.any(axis=0).all())


def _reach_alike(one: Fingerprint, other: Fingerprint, corners: Complexes) -> bool:
    """Tells whether two shapes reach as far each way, `corners` being those of the other, turned
    to the first; where their rectangles are alike, they do.
    """
    near = max(SIZE_MM, 3e-4 * one.length)
    if max(abs(one.width - other.width), abs(one.length - other.length)) < near:
        return True
    ways = np.exp(1j * np.pi / 8 * np.arange(8))[:, None]
    wide, wide2 = (np.ptp((some * ways).real, axis=1) for some in (one.corners, corners))
    return bool((np.abs(wide - wide2) < near).all())


@compile_entry("f8[::1](c16[:], c16[::1])")
def measure_off(points: Complexes, ring: Complexes) -> Floats:
    """Measures how far points lie from a ring's edges."""
    least = np.full(len(points), math.inf)
    for k in range(len(ring)):
        a, b = ring[k], ring[k + 1 if k < len(ring) - 1 else 0]
        x, y = b.real - a.real, b.imag - a.imag
        size = max(x * x + y * y, 1e-18)
        for n in range(len(points)):
            u, v = points[n].real - a.real, points[n].imag - a.imag
            share = min(max((u * x + v * y) / size, 0.0), 1.0)
            u, v = u - share * x, v - share * y
            least[n] = min(least[n], u * u + v * v)
    return np.asarray(np.sqrt(least))


def _list_angles(base: Complexes, turned: Complexes) -> list[float]:
    """Lists the turns that take one set of moments to another, the best first."""
    scale = np.maximum(np.abs(base), 0.02)
    spun = np.flatnonzero((SPIN > 0) & (np.abs(base) > 1e-3))
    if not len(spun):
        return []
    lead = spun[np.argmax(np.abs(base[spun]))]
    k = int(SPIN[lead])
    first = float(np.angle(turned[lead] / base[lead])) / k if abs(turned[lead]) > 0 else 0.0
    angles = first + 2 * np.pi * np.arange(k) / k
    off = np.abs(base * np.exp(1j * np.outer(angles, SPIN)) - turned) / scale
    worst = off.max(axis=1)
    return [float(angles[n]) for n in np.argsort(worst) if worst[n] < 0.02]


def _list_corner_angles(one: Fingerprint, other: Fingerprint, *, mirrored: bool) -> list[float]:
    """Lists the turns that take the furthest hole or corner to one as far: of shapes whose
    moments tell no turn, as of a hexagon.
    """
    angles: list[float] = []
    for mine, theirs in ((one.marks, other.marks), (one.corners, other.corners)):
        points = np.conj(mine) if mirrored else mine
        far = np.abs(points)
        if not len(points) or far.max() < 1.0:
            continue
        lead = points[np.argmax(far)]
        ends = theirs[np.abs(np.abs(theirs) - abs(lead)) < PLACE_MM][:MOST_CORNER_TURNS]
        angles += [float(a) for a in np.angle(ends / lead)]
    return angles


def group_pieces(
    pieces: Sequence[Piece], known: Mapping[str, Part]
) -> tuple[list[Piece], list[ShapeFound]]:
    """Gives each piece its shape, turn and mirror; shapes in the order they are first met."""
    shapes: list[ShapeFound] = []
    prints: list[Fingerprint] = []
    names = {
        key: take_fingerprint(
            np.array(part.shape.outline),
            [np.array(h) for h in part.shape.holes],
            _read_hollows(part.shape),
        )
        for key, part in known.items()
        if part.shape and len(part.shape.outline) > 2
    }
    placed: list[Piece] = []
    members: list[list[int]] = []  # of each shape
    buckets: dict[tuple[int, int], list[int]] = {}
    for number, piece in enumerate(pieces):
        mine = take_fingerprint(piece.outline, piece.holes, piece.hollows)
        index, angle, mirrored = _find_shape(mine, prints, buckets)
        if index == len(shapes):
            key = next((k for k, p in names.items() if find_turn(p, mine)), None)
            shape, mine, angle, mirrored = _add_shape(index, piece, mine, key, known, names)
            shapes.append(shape)
            members.append([])
            prints.append(mine)
            buckets.setdefault(_pick_bucket(mine), []).append(index)
        members[index].append(number)
        turn = _round_turn(float(np.degrees(angle)) + 180 * mirrored)
        placed.append(replace(piece, shape=index, turn_deg=turn, mirrored=mirrored))
    return placed, [
        replace(shape, pieces=tuple(own), mirrored=sum(placed[n].mirrored for n in own))
        for shape, own in zip(shapes, members, strict=True)
    ]


def _read_hollows(shape: Shape) -> tuple[Hollow, ...]:
    """Gives the hollows of a shape that the shop keeps."""
    return tuple(
        Hollow(h.depth_mm, np.array(h.outline), tuple(np.array(i) for i in h.islands))
        for h in shape.recesses
    )


def _round_turn(degrees: float) -> float:
    """Gives a turn from 0 to 360; one that is a quarter but for rounding is a quarter."""
    quarter = round(degrees / 90) * 90
    return (quarter if abs(degrees - quarter) < 0.02 else degrees) % 360


def _pick_bucket(mine: Fingerprint) -> tuple[int, int]:
    """Picks the bucket of shapes of about this area and perimeter: the rectangle around may differ
    where two are almost as small.
    """
    around = math.log(max(mine.perimeter, 1.0))
    return round(math.sqrt(max(mine.area, 0.0))), round(around / BUCKET_SHARE)


def _find_shape(
    mine: Fingerprint, prints: list[Fingerprint], buckets: dict[tuple[int, int], list[int]]
) -> tuple[int, float, bool]:
    """Finds the shape of a fingerprint, with turn and mirror; else the index after the last."""
    area, around = _pick_bucket(mine)
    for more in (0, -1, 1):
        for longer in (0, -1, 1):
            for index in buckets.get((area + more, around + longer), ()):
                found = find_turn(prints[index], mine)
                if found:
                    return index, found[0], found[1]
    return len(prints), 0.0, False


def _add_shape(
    index: int,
    piece: Piece,
    mine: Fingerprint,
    key: str | None,
    known: Mapping[str, Part],
    names: Mapping[str, Fingerprint],
) -> tuple[ShapeFound, Fingerprint, float, bool]:
    """Makes a shape met for the first time, its length along x; a known part lends its outline."""
    name = None
    if key is not None:
        part = known[key]
        assert part.shape is not None
        name = part.name
        angle, mirrored = find_turn(names[key], mine) or (0.0, False)
        outline = np.array(part.shape.outline)
        holes = tuple(np.array(h) for h in part.shape.holes)
        hollows = _read_hollows(part.shape)
    else:
        angle, mirrored = find_rectangle(piece.outline)[2], False
        outline = turn_ring(piece.outline, -angle)
        holes = tuple(turn_ring(h, -angle) for h in piece.holes)
        hollows = tuple(
            Hollow(
                h.depth_mm,
                turn_ring(h.outline, -angle),
                tuple(turn_ring(i, -angle) for i in h.islands),
            )
            for h in piece.hollows
        )
    shape = ShapeFound(index, name, key, mine.width, mine.length, mine.area, mine.perimeter,
                       (), 0, outline, holes, hollows)  # fmt: skip
    mine = names[key] if key is not None else take_fingerprint(outline, holes, hollows)
    return shape, mine, angle, mirrored


def turn_ring(ring: Ring, angle: float) -> Ring:
    """Turns a ring about 0, 0, counter-clockwise, radians."""
    c, s = np.cos(angle), np.sin(angle)
    return np.asarray(ring @ np.array([[c, s], [-s, c]]))
