"""What was found in a cut file as the shop keeps it: a revision with its placements."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from station.cutting.geometry.rings import area_of, centroid_of
from station.cutting.model import Analysis, Floats, Piece, ShapeFound
from station.shop.facts import BitUse, Placed, Revision, Shape


def revision(
    analysis: Analysis,
    *,
    id: str,
    cut_file: str,
    letter: str,
    material: str,
    names: Mapping[int, str],
    digest: str = "",
    minutes: float | None = None,
) -> Revision:
    """The shop's record of a revision, its placements filled from the text.

    `names` gives a part id for each shape; shapes without one are left out. Without a
    router in the setting, `minutes` must be given or are those at programmed feeds.
    """
    shapes = [s for s in analysis.shapes if s.index in names]
    placed = [
        _placed(analysis, piece, names[piece.shape])
        for piece in analysis.pieces
        if piece.shape in names
    ]
    return Revision(
        id=id,
        cut_file=cut_file,
        letter=letter,
        material=material,
        minutes=round(_minutes(analysis) if minutes is None else minutes, 3),
        length_mm=analysis.sheet_mm[0],
        width_mm=analysis.sheet_mm[1],
        shapes=tuple((names[s.index], shape_of(analysis, s)) for s in shapes),
        placed=tuple(placed),
        bits=tuple(
            BitUse(number=b.number, diameter_mm=b.diameter_mm, cut_mm=round(b.cut_mm, 1))
            for b in analysis.bits
        ),
        digest=digest,
    )


def _minutes(analysis: Analysis) -> float:
    """Of the file on its router; without one, at the programmed feeds."""
    return (analysis.file_s or sum(b.seconds for b in analysis.bits)) / 60


def shape_of(analysis: Analysis, found: ShapeFound) -> Shape:
    """A found shape as the shop keeps it: thinned to 0.01 mm, lower left of its box at 0, 0."""
    low = found.outline.min(axis=0)
    piece = next((p for p in analysis.pieces if p.shape == found.index), None)
    tabs: list[tuple[float, float]] = []
    if piece is not None:
        for tab in piece.tabs:
            x, y = _back(piece, found, np.array([tab.x_mm, tab.y_mm]))
            tabs.append((round(x - float(low[0]), 2), round(y - float(low[1]), 2)))
    return Shape(
        outline=_loop(thin(found.outline) - low),
        holes=tuple(_loop(thin(h) - low) for h in found.holes),
        tabs=tuple(tabs),
    )


def _back(piece: Piece, found: ShapeFound, point: Floats) -> tuple[float, float]:
    """A point on the sheet in its shape's own frame: the turn taken back, then the mirror."""
    z = complex(*point) - complex(*middle(piece.outline, piece.holes))
    z *= np.exp(-1j * np.radians(piece.turn_deg))
    z = -z.conjugate() if piece.mirrored else z
    z += complex(*middle(found.outline, found.holes))
    return float(z.real), float(z.imag)


def middle(outline: Floats, holes: tuple[Floats, ...]) -> Floats:
    """Centre of area, holes taken off."""
    areas = [abs(area_of(outline)), *(-abs(area_of(h)) for h in holes)]
    centres = [centroid_of(outline), *(centroid_of(h) for h in holes)]
    return np.asarray(sum(a * c for a, c in zip(areas, centres, strict=True)) / sum(areas))


def _loop(ring: Floats) -> tuple[tuple[float, float], ...]:
    return tuple((round(float(x), 2), round(float(y), 2)) for x, y in ring)


def thin(ring: Floats, off: float = 0.01) -> Floats:
    """A ring with fewer corners, none further than `off` mm from what was left out."""
    keep = np.zeros(len(ring), dtype=bool)
    far = int(np.argmax(np.hypot(*(ring - ring[0]).T)))
    keep[[0, far]] = True
    closed = np.concatenate((ring, ring[:1]))
    work = [(0, far), (far, len(ring))]
    while work:
        a, b = work.pop()
        if b - a < 2:
            continue
        chord = closed[b] - closed[a]
        size = max(float(np.hypot(*chord)), 1e-12)
        rest = closed[a + 1 : b] - closed[a]
        away = np.abs(rest[:, 0] * chord[1] - rest[:, 1] * chord[0]) / size
        worst = int(np.argmax(away))
        if away[worst] > off:
            keep[a + 1 + worst] = True
            work += [(a, a + 1 + worst), (a + 1 + worst, b)]
    return ring[keep]


def _placed(analysis: Analysis, piece: Piece, part: str) -> Placed:
    low = piece.outline.min(axis=0) - np.array(analysis.corner_mm)
    corner = np.array(analysis.corner_mm)
    tabs = tuple(
        (round(t.x_mm - float(corner[0]), 2), round(t.y_mm - float(corner[1]), 2))
        for t in piece.tabs
    )
    return Placed(
        part=part,
        x_mm=round(float(low[0]), 3),
        y_mm=round(float(low[1]), 3),
        turn_deg=round(piece.turn_deg, 4) % 360,
        mirrored=piece.mirrored,
        tabs=tabs,
    )
