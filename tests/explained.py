"""Whether every cut through a sheet is explained: it bounds what comes off, or it is told.

A second calculation: the path is walked point by point with plain trigonometry, and each point is
measured against the edges that the analysis gives; it shares no code with what found them.
"""

from collections.abc import Iterator

import numpy as np
import numpy.typing as npt

from station.cutting.model import Analysis

Points = npt.NDArray[np.complex128]

STEP_MM = 2.0  # between two points
NEAR_MM = 0.2  # an edge lies half a bit's width from its cut, as near as that
THROUGH_MM = 0.05  # above the sheet's bottom a cut still goes through
LONG_MM = 60.0  # a shorter one is a mark or a lead
SOME = 0.1  # of a cut that bounds something: the rest are leads, and ways between tabs
TELLS = ("frees-nothing", "gouge", "uncut", "twice", "outside-sheet", "across-edge", "thickness",
         "tab-cut-through", "bit-wide", "late-inside")  # fmt: skip


def measure_unexplained(found: Analysis) -> float:
    """Measures the cuts through the sheet that bound nothing, mm; 0 where any is told."""
    if any(problem.kind in TELLS for problem in found.problems):
        return 0.0
    edges = list_edges(found)
    total = 0.0
    for points, radius, length in walk_cuts(found):
        if length < LONG_MM:
            continue
        if not len(edges) or (measure_to(points, edges) > radius + NEAR_MM).mean() > 1 - SOME:
            total += length
    return total


def list_edges(found: Analysis) -> npt.NDArray[np.complex128]:
    """Lists the edges of all that comes off: rows of a start and an end."""
    rings = [ring for piece in found.pieces for ring in (piece.outline, *piece.holes)]
    rows = []
    for ring in (*rings, *found.slugs):
        corners = ring[:, 0] + 1j * ring[:, 1]
        rows.append(np.column_stack((corners, np.roll(corners, -1))))
    return np.concatenate(rows) if rows else np.zeros((0, 2), dtype=complex)


def walk_cuts(found: Analysis) -> Iterator[tuple[Points, float, float]]:
    """Walks each unbroken run of cuts through the sheet: its points, half its bit, its length."""
    moves = found.program.moves
    through = found.face_z - found.thickness_mm + THROUGH_MM
    wide = {bit.number: bit.diameter_mm for bit in found.bits}
    z = moves.points[:, 2]
    deep = (moves.kind > 0) & moves.sure & (np.maximum(z[:-1], z[1:]) <= through)
    held: list[Points] = []
    for i in range(len(moves)):
        if deep[i]:
            held.append(walk_move(found, i))
        last = i + 1 == len(moves) or not deep[i + 1] or moves.tool[i + 1] != moves.tool[i]
        if held and last:
            points = np.concatenate(held)
            yield points, wide[int(moves.tool[i])] / 2, float(np.abs(np.diff(points)).sum())
            held = []


def walk_move(found: Analysis, i: int) -> Points:
    """Gives points along one move, seen from above."""
    moves = found.program.moves
    start, end = complex(*moves.points[i, :2]), complex(*moves.points[i + 1, :2])
    bent = moves.kind[i] > 1 and moves.plane[i] == 17
    centre = complex(*moves.centre[i])
    way = abs(moves.sweep[i]) * abs(start - centre) if bent else abs(end - start)
    share = np.linspace(0, 1, 2 + int(way / STEP_MM))
    if bent:
        return np.asarray(centre + (start - centre) * np.exp(1j * moves.sweep[i] * share))
    return np.asarray(start + (end - start) * share)


def measure_to(points: Points, edges: npt.NDArray[np.complex128]) -> npt.NDArray[np.float64]:
    """Measures how far each point lies from the nearest edge, mm."""
    found = np.empty(len(points))
    start, way = edges[:, 0], edges[:, 1] - edges[:, 0]
    size = np.maximum(np.abs(way) ** 2, 1e-18)
    for n, point in enumerate(points):
        away = point - start
        share = np.clip((away * way.conjugate()).real / size, 0, 1)
        found[n] = np.abs(away - share * way).min()
    return found
