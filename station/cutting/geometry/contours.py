"""Contours: the ways that bits go around pieces, with the tabs that they jump over."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from shapely.ops import substring

from station.cutting.geometry.faces import NEAR_MM
from station.cutting.geometry.rings import contains_point, measure_ring
from station.cutting.geometry.stretches import Stretches
from station.cutting.geometry.strokes import CLOSE_MM, Lines, Shapes
from station.cutting.geometry.tabs import Closed
from station.cutting.model import Floats, Ints

FOLD_MM = 0.05  # how far apart the ways there and back may lie
BACK_SHARES = np.array([0.05, 0.15, 0.25, 0.35, 0.45])  # of a way, that may go back


@dataclass(frozen=True)
class Contours:
    """Holds contours: runs of cuts that jumps over tabs join. `of_run` numbers each run's."""

    of_run: dict[int, int]
    ways: dict[int, Floats]  # the points of each
    first: dict[int, int]  # where in the cuts each begins

    def encloses(self, contour: int, point: Floats) -> bool:
        """Tells whether a contour goes around a point."""
        return contains_point(self.ways[contour], point)


def join_runs(through: Lines, stretches: Stretches) -> Contours:
    """Joins runs that jumps over tabs go between to one contour."""
    runs = np.unique(np.concatenate((through.run, stretches.run, stretches.to_run)))
    of_run = {run: run for run in runs.tolist()}

    def find_root(run: int) -> int:
        while of_run[run] != run:
            run = of_run[run]
        return run

    for a, b in zip(stretches.run.tolist(), stretches.to_run.tolist(), strict=True):
        of_run[find_root(b)] = find_root(a)
    of_run = {run: find_root(run) for run in of_run}
    lines: dict[int, list[Floats]] = {}
    firsts: dict[int, int] = {}
    cut = set(through.run.tolist())
    for some in (through, stretches):
        rows = zip(some.shape, some.run.tolist(), some.first.tolist(), strict=True)
        for shape, run, first in rows:
            contour = of_run[run]
            firsts[contour] = min(first, firsts.get(contour, first))
            if some is through or run not in cut:
                lines.setdefault(contour, []).append(shapely.get_coordinates(shape))
    whole = {of_run[run] for run in cut}
    ways = {
        c: _unfold(np.concatenate(some if c in whole else _keep_joined(some)))
        for c, some in lines.items()
    }
    return Contours(of_run, ways, firsts)


def _unfold(way: Floats) -> Floats:
    """Gives the first half of a way that goes there and back, as around three sides of a part
    that shares the fourth: only one of both goes around it.
    """
    while len(way) > 2 and np.hypot(*(way[-1] - way[0])) < CLOSE_MM:
        area, around, _, _ = measure_ring(way)
        if abs(area) > FOLD_MM * around:
            break
        line = shapely.linestrings(way)
        long = float(shapely.length(line))
        if abs(area) > FOLD_MM * long or not _goes_back(line):
            break
        way = shapely.get_coordinates(substring(line, 0, long / 2))
    return way


def _goes_back(line: shapely.Geometry) -> bool:
    """Tells whether a line comes back the same way from its middle on."""
    shares = np.concatenate((BACK_SHARES, 1 - BACK_SHARES))
    there, back = shapely.line_interpolate_point(line, shares, normalized=True).reshape(2, -1)
    return bool(shapely.distance(there, back).max() < FOLD_MM)


def _keep_joined(ways: list[Floats]) -> list[Floats]:
    """Gives the ways that an earlier pass went over what is left, where they lie close together:
    those over tabs far apart go around nothing.
    """
    gaps = [float(np.hypot(*(b[0] - a[-1]))) for a, b in pairwise(ways)]
    around = sum(float(np.hypot(*np.diff(way, axis=0).T).sum()) for way in ways)
    return ways if sum(gaps) < around else [np.zeros((0, 2))]


def find_bounds(
    closed: Closed, through: Lines, contours: Contours
) -> tuple[dict[int, list[int]], tuple[Ints, Ints]]:
    """Finds the contours, and the cuts through the sheet, that run along each face's outline."""
    faces, stretches = closed.faces, closed.stretches
    lines = np.concatenate((through.shape, stretches.shape))
    radius = np.concatenate((through.radius, stretches.radius))
    runs = np.concatenate((through.run, stretches.run))
    bounds: dict[int, list[int]] = {face: [] for face in range(len(faces))}
    if not len(faces) or not len(lines):
        return bounds, (np.zeros(0, int), np.zeros(0, int))
    edges, lines = (
        shapely.simplify(some, NEAR_MM / 4, preserve_topology=False)
        for some in (shapely.get_exterior_ring(faces.ring), lines)
    )
    reach = float(radius.max()) + NEAR_MM
    face, line = shapely.STRtree(lines).query(edges, predicate="dwithin", distance=reach)
    if radius.max() - radius.min() > 1e-9:
        near = shapely.distance(edges[face], lines[line]) < radius[line] + NEAR_MM
        face, line = face[near], line[near]
    for f, run in zip(face.tolist(), runs[line].tolist(), strict=True):
        contour = contours.of_run[run]
        if contour not in bounds[f]:
            bounds[f].append(contour)
    own = line < len(through)
    return bounds, (face[own], line[own])


def find_enclosed(
    drawn: Shapes, contours: Contours, bounds: dict[int, list[int]]
) -> dict[tuple[int, int], bool]:
    """Tells of each contour and each face along it whether it goes around the face."""
    inner = shapely.get_coordinates(shapely.point_on_surface(drawn))
    return {(c, f): contours.encloses(c, inner[f]) for f, some in bounds.items() for c in some}


def find_first_cut(
    face: int, contours: Contours, bounds: list[int], around: Mapping[tuple[int, int], bool]
) -> int:
    """Finds where in the cuts the contour of a face begins."""
    own = [c for c in bounds if around[c, face]] or bounds
    return min((contours.first[c] for c in own), default=0)
