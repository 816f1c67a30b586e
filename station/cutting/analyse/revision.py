"""What was found in a cut file as the shop keeps it: a revision with its placements."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from station.cutting.geometry.rings import area_of, centroid_of
from station.cutting.model import RAPID, Analysis, Floats, Piece, ShapeFound
from station.shop.facts import BitUse, Placed, Recess, Revision, Shape


def make_revision(
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
    """Makes the shop's record of a revision, its placements filled from the text.

    `names` gives a part id for each shape; shapes without one are left out. Without a
    router in the setting, `minutes` must be given or are those at programmed feeds.
    """
    if minutes is None:  # of the file on its router; without one, at the programmed feeds
        minutes = (analysis.file_s or sum(b.seconds for b in analysis.bits)) / 60
    shapes = [s for s in analysis.shapes if s.index in names]
    placed = [
        _make_placement(analysis, piece, names[piece.shape])
        for piece in (analysis.pieces[n] for n in order_cutting(analysis))
        if piece.shape in names
    ]
    return Revision(
        id=id,
        cut_file=cut_file,
        letter=letter,
        material=material,
        minutes=round(minutes, 3),
        length_mm=analysis.sheet_mm[0],
        width_mm=analysis.sheet_mm[1],
        shapes=tuple((names[s.index], make_shape(analysis, s)) for s in shapes),
        placed=tuple(placed),
        bits=_list_bits(analysis),
        digest=digest,
    )


def _list_bits(analysis: Analysis) -> tuple[BitUse, ...]:
    """Lists what each bit does, in the order in which they are put in."""
    first = _find_first_uses(analysis)
    return tuple(
        BitUse(number=b.number, diameter_mm=b.diameter_mm, cut_mm=round(b.cut_mm, 1))
        for b in sorted(analysis.bits, key=lambda b: first.get(b.number, 0))
    )


def _find_first_uses(analysis: Analysis) -> dict[int, int]:
    """Finds the first move of each bit: by hand they are put in in this order."""
    moves = analysis.program.moves
    feed = np.flatnonzero(moves.kind != RAPID)
    numbers, first = np.unique(moves.tool[feed], return_index=True)
    return {int(n): int(feed[i]) for n, i in zip(numbers, first, strict=True)}


def order_cutting(analysis: Analysis) -> list[int]:
    """Orders pieces, by index, as they are cut."""
    return sorted(range(len(analysis.pieces)), key=lambda n: analysis.pieces[n].line)


def make_shape(analysis: Analysis, found: ShapeFound) -> Shape:
    """Makes the shape that the shop keeps: thinned to 0.01 mm, lower left of its box at 0, 0."""
    low = found.outline.min(axis=0)
    piece = next((p for p in analysis.pieces if p.shape == found.index), None)
    tabs: list[tuple[float, float]] = []
    if piece is not None:
        for tab in piece.tabs:
            x, y = _turn_back(piece, found, np.array([tab.x_mm, tab.y_mm]))
            tabs.append((round(x - float(low[0]), 2), round(y - float(low[1]), 2)))
    return Shape(
        outline=_round_corners(thin_ring(found.outline) - low),
        holes=tuple(_round_corners(thin_ring(h) - low) for h in found.holes),
        tabs=tuple(tabs),
        recesses=tuple(
            Recess(
                depth_mm=hollow.depth_mm,
                outline=_round_corners(thin_ring(hollow.outline) - low),
                islands=tuple(_round_corners(thin_ring(i) - low) for i in hollow.islands),
            )
            for hollow in found.hollows
        ),
    )


def _turn_back(piece: Piece, found: ShapeFound, point: Floats) -> tuple[float, float]:
    """Brings a point on the sheet to its shape's own frame: turned back, then mirrored back."""
    z = complex(*point) - complex(*find_middle(piece.outline, piece.holes))
    z *= np.exp(-1j * np.radians(piece.turn_deg))
    z = -z.conjugate() if piece.mirrored else z
    z += complex(*find_middle(found.outline, found.holes))
    return float(z.real), float(z.imag)


def find_middle(outline: Floats, holes: tuple[Floats, ...]) -> Floats:
    """Finds the centre of area, holes taken off."""
    areas = [abs(area_of(outline)), *(-abs(area_of(h)) for h in holes)]
    centres = [centroid_of(outline), *(centroid_of(h) for h in holes)]
    return np.asarray(sum(a * c for a, c in zip(areas, centres, strict=True)) / sum(areas))


def _round_corners(ring: Floats) -> tuple[tuple[float, float], ...]:
    """Rounds a ring's corners to 0.01 mm."""
    return tuple((round(float(x), 2), round(float(y), 2)) for x, y in ring)


def thin_ring(ring: Floats, off: float = 0.01) -> Floats:
    """Leaves out corners of a ring that lie no further than `off` mm from what stays."""
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


def _make_placement(analysis: Analysis, piece: Piece, part: str) -> Placed:
    """Makes the placement of a piece: its lower left corner, turn and tabs on the sheet."""
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
