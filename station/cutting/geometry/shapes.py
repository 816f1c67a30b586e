"""Which pieces are of one shape, whatever their turn or mirror image.

Shapes are compared by their complex moments about the centre of area: turning a shape by
φ multiplies each by a power of e^{iφ}, mirroring conjugates it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from station.cutting.compiled import compile_entry, compile_inner
from station.cutting.geometry.rings import area_of, centroid_of, find_rectangle, perimeter_of
from station.cutting.model import Floats, Ints, Piece, Ring, ShapeFound
from station.shop.facts import Part

Complexes = npt.NDArray[np.complex128]
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
TOLERANCE = 0.002


@compile_inner
def _add_moments(sums: Complexes, point: complex, weight: float) -> None:
    """Adds the moments of one point, in the order of ORDERS."""
    r2 = point.real * point.real + point.imag * point.imag
    z2, mass = point * point, complex(weight)
    sums[0] += mass * z2
    sums[1] += mass * r2
    sums[2] += mass * z2 * point
    sums[3] += mass * r2 * point
    sums[4] += mass * z2 * z2
    sums[5] += mass * r2 * z2
    sums[6] += mass * r2 * r2
    sums[7] += mass * z2 * z2 * point
    sums[8] += mass * r2 * z2 * point
    sums[9] += mass * r2 * r2 * point


@compile_entry("void(c16[::1], i8[::1], f8[::1], c16, f8, c16[::1])")
def sum_moments(
    z: Complexes, stops: Ints, sides: Floats, centre: complex, scale: float, sums: Complexes
) -> None:
    """Adds up the moments of rings about a centre, in units of `scale`.

    Rings stand behind one another in `z` and end at `stops`; each counts by its side, 1 or -1.
    """
    base, begin = -centre / scale, 0
    for ring in range(len(stops)):
        b = z[stops[ring] - 1] / scale
        for i in range(begin, stops[ring]):
            a, b = b, z[i] / scale
            area = (a.real * b.imag - a.imag * b.real) / 2 * sides[ring]
            for k in range(len(RULE)):
                _add_moments(sums, base + RULE[k, 0] * a + RULE[k, 1] * b, RULE[k, 2] * area)
        begin = stops[ring]


@dataclass(frozen=True)
class Fingerprint:
    """Holds what identifies a shape: sizes, and moments scaled to one."""

    width: float
    length: float
    area: float
    perimeter: float
    holes: int
    moments: Complexes


def take_fingerprint(outline: Ring, holes: Sequence[Ring]) -> Fingerprint:
    """Takes a shape's fingerprint; holes count against the area and the moments."""
    width, length, _ = find_rectangle(outline)
    area = abs(area_of(outline)) - sum(abs(area_of(h)) for h in holes)
    around = perimeter_of(outline) + sum(perimeter_of(h) for h in holes)
    return Fingerprint(width, length, area, around, len(holes), _find_moments(outline, holes))


def _find_moments(outline: Ring, holes: Sequence[Ring]) -> Complexes:
    """Finds the moments of an outline less its holes, about the centre of area, scaled to one."""
    rings = (outline, *holes)
    areas = np.array([area_of(ring) for ring in rings])
    base = outline[0]
    sides = np.sign(areas)
    sides[1:] *= -1
    weights = np.abs(areas) * np.array([1.0] + [-1.0] * len(holes))
    total = weights.sum()
    if total <= 0:
        return np.zeros(len(SPIN), np.complex128)
    centres = np.array([centroid_of(ring) - base for ring in rings])
    middle = complex(*(weights[:, None] * centres).sum(axis=0)) / total
    points = np.concatenate(rings) - base
    sums = np.zeros(len(SPIN), np.complex128)
    scale = float(np.sqrt(total))
    stops = np.cumsum([len(ring) for ring in rings])
    sum_moments(points[:, 0] + 1j * points[:, 1], stops, sides, middle, scale, sums)
    return sums


def find_turn(one: Fingerprint, other: Fingerprint) -> tuple[float, bool] | None:
    """Finds by which angle `other` is turned from `one` (radians), and whether it is mirrored."""
    if not _is_alike(one, other):
        return None
    for mirrored in (False, True):
        base = np.conj(one.moments) if mirrored else one.moments
        angle = _find_angle(base, other.moments)
        if angle is not None:
            return angle, mirrored
    return None


def _is_alike(one: Fingerprint, other: Fingerprint) -> bool:
    """Tells whether sizes and holes of two shapes are equal but for rounding."""
    near = max(0.06, 3e-4 * one.length)
    return (
        one.holes == other.holes
        and abs(one.width - other.width) < near
        and abs(one.length - other.length) < near
        and abs(one.area - other.area) < 0.002 * one.area + 0.05
        and abs(one.perimeter - other.perimeter) < 0.004 * one.perimeter + 0.05
    )


def _find_angle(base: Complexes, turned: Complexes) -> float | None:
    """Finds the turn that takes one set of moments to another; None when there is none."""
    scale = np.maximum(np.abs(base), 0.02)
    spun = np.flatnonzero((SPIN > 0) & (np.abs(base) > 1e-3))
    if not len(spun):
        return 0.0 if (np.abs(base - turned) / scale < 0.02).all() else None
    lead = spun[np.argmax(np.abs(base[spun]))]
    k = int(SPIN[lead])
    first = float(np.angle(turned[lead] / base[lead])) / k if abs(turned[lead]) > 0 else 0.0
    best, best_off = None, 0.02
    for step in range(k):
        angle = first + 2 * np.pi * step / k
        off = float((np.abs(base * np.exp(1j * SPIN * angle) - turned) / scale).max())
        if off < best_off:
            best, best_off = angle, off
    return best


def group_pieces(
    pieces: Sequence[Piece], known: Mapping[str, Part]
) -> tuple[list[Piece], list[ShapeFound]]:
    """Gives each piece its shape, turn and mirror; shapes in the order they are first met."""
    shapes: list[ShapeFound] = []
    prints: list[Fingerprint] = []
    names = {
        key: take_fingerprint(
            np.array(part.shape.outline), [np.array(h) for h in part.shape.holes]
        )
        for key, part in known.items()
        if part.shape and len(part.shape.outline) > 2
    }
    placed: list[Piece] = []
    buckets: dict[tuple[int, int], list[int]] = {}
    for number, piece in enumerate(pieces):
        mine = take_fingerprint(piece.outline, piece.holes)
        index, angle, mirrored = _find_shape(mine, prints, buckets)
        if index == len(shapes):
            key = next((k for k, p in names.items() if find_turn(p, mine)), None)
            shape, mine, angle, mirrored = _add_shape(index, piece, mine, key, known, names)
            shapes.append(shape)
            prints.append(mine)
            buckets.setdefault(_pick_bucket(mine), []).append(index)
        found = shapes[index]
        shapes[index] = replace(
            found, pieces=(*found.pieces, number), mirrored=found.mirrored + mirrored
        )
        turn = _round_turn(float(np.degrees(angle)) + 180 * mirrored)
        placed.append(replace(piece, shape=index, turn_deg=turn, mirrored=mirrored))
    return placed, shapes


def _round_turn(degrees: float) -> float:
    """Gives a turn from 0 to 360; one that is a quarter but for rounding is a quarter."""
    quarter = round(degrees / 90) * 90
    return (quarter if abs(degrees - quarter) < 0.02 else degrees) % 360


def _pick_bucket(mine: Fingerprint) -> tuple[int, int]:
    """Picks the bucket of shapes of about this size."""
    return round(mine.width), round(mine.length)


def _find_shape(
    mine: Fingerprint, prints: list[Fingerprint], buckets: dict[tuple[int, int], list[int]]
) -> tuple[int, float, bool]:
    """Finds the shape of a fingerprint, with turn and mirror; else the index after the last."""
    w, h = _pick_bucket(mine)
    for dw in (0, -1, 1):
        for dh in (0, -1, 1):
            for index in buckets.get((w + dw, h + dh), ()):
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
    else:
        angle, mirrored = find_rectangle(piece.outline)[2], False
        outline = turn_ring(piece.outline, -angle)
        holes = tuple(turn_ring(h, -angle) for h in piece.holes)
    shape = ShapeFound(index, name, key, mine.width, mine.length, mine.area, mine.perimeter,
                       (), 0, outline, holes)  # fmt: skip
    mine = names[key] if key is not None else take_fingerprint(outline, holes)
    return shape, mine, angle, mirrored


def turn_ring(ring: Ring, angle: float) -> Ring:
    """Turns a ring about 0, 0, counter-clockwise, radians."""
    c, s = np.cos(angle), np.sin(angle)
    return np.asarray(ring @ np.array([[c, s], [-s, c]]))
