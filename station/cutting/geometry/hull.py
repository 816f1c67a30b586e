"""Convex hulls and moments of outlines, compiled."""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt

from station.cutting.compiled import entry, inner
from station.cutting.model import Floats, Ints

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


@inner
def _half(x: Floats, y: Floats, order: Ints, kept: Ints, first: int) -> int:
    """One side of the hull, behind what is kept already; where it ends."""
    end = first
    for i in order:
        while end > first + 1:
            a, b = kept[end - 2], kept[end - 1]
            if (x[b] - x[a]) * (y[i] - y[a]) - (y[b] - y[a]) * (x[i] - x[a]) > 0:
                break
            end -= 1
        kept[end] = i
        end += 1
    return end - 1


@entry("i8(f8[::1], f8[::1], i8[::1], i8[::1], i8[::1])")
def hull(x: Floats, y: Floats, order: Ints, back: Ints, kept: Ints) -> int:
    """The corners of the convex hull, counter-clockwise, into `kept`; how many there are.

    `order` are the points by x, then y; `back` the same backward.
    """
    return _half(x, y, back, kept, _half(x, y, order, kept, 0))


@entry("void(f8[::1], f8[::1], f8[::1], f8[::1], f8[::1])")
def boxes(x: Floats, y: Floats, angles: Floats, wide: Floats, high: Floats) -> None:
    """How far points reach along and across each angle."""
    for k in range(len(angles)):
        c, s = math.cos(angles[k]), math.sin(angles[k])
        left = under = math.inf
        right = over = -math.inf
        for i in range(len(x)):
            u, v = x[i] * c + y[i] * s, y[i] * c - x[i] * s
            left, right = min(left, u), max(right, u)
            under, over = min(under, v), max(over, v)
        wide[k], high[k] = right - left, over - under


@entry("void(f8[::1], f8[::1], f8[::1], f8[::1])")
def touches(x: Floats, y: Floats, angles: Floats, found: Floats) -> None:
    """How much of a ring's edge runs along or across each angle."""
    for k in range(len(angles)):
        c, s, found[k] = math.cos(angles[k]), math.sin(angles[k]), 0.0
        x0, y0 = x[-1], y[-1]
        for i in range(len(x)):
            dx, dy = x[i] - x0, y[i] - y0
            size2 = dx * dx + dy * dy
            if 2 * abs((dx * c + dy * s) * (dy * c - dx * s)) < 1e-4 * size2:
                found[k] += math.sqrt(size2)
            x0, y0 = x[i], y[i]


@inner
def _add(sums: Complexes, point: complex, weight: float) -> None:
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


@entry("void(c16[::1], i8[::1], f8[::1], c16, f8, c16[::1])")
def moments(z: Complexes, stops: Ints, sides: Floats, centre: complex, scale: float,
            sums: Complexes) -> None:  # fmt: skip
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
                _add(sums, base + RULE[k, 0] * a + RULE[k, 1] * b, RULE[k, 2] * area)
        begin = stops[ring]
