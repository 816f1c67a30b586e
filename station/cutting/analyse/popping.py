"""Which pieces may fly off, and in which order the others are popped out of the sheet."""

from __future__ import annotations

from station.cutting.analyse.piece_problems import is_small
from station.cutting.geometry.rings import centroid_of
from station.cutting.model import Analysis


def find_flying_pieces(analysis: Analysis) -> list[int]:
    """Finds pieces, by index, that come loose on a clamped bed and are small enough to fly."""
    return [
        index
        for index, piece in enumerate(analysis.pieces)
        if not piece.tabs and is_small(piece, analysis.small_mm2)
    ]


def order_for_popping(analysis: Analysis) -> list[int]:
    """Orders pieces, by index, as hands reach them: small before large, then row by row."""
    centres = [centroid_of(piece.outline) for piece in analysis.pieces]

    def rank_piece(index: int) -> tuple[bool, int, float]:
        """Ranks a piece for sorting."""
        x, y = centres[index]
        small = analysis.shapes[analysis.pieces[index].shape].area_mm2 < 4 * analysis.small_mm2
        return (not small, int(y // 200), float(x))

    return sorted(range(len(centres)), key=rank_piece)
