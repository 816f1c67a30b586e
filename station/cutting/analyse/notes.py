"""Problems as they are noted of a cut or of a whole piece."""

from __future__ import annotations

from station.cutting.geometry.strokes import Cuts
from station.cutting.model import Piece, Problem
from station.shop.words import Say


def find_line(cuts: Cuts, position: int) -> int:
    """Finds the line of the file that a cut stands on."""
    return int(cuts.moves.line[cuts.index[position]])


def note_cut(cuts: Cuts, position: int, kind: str, text: Say) -> Problem:
    """Makes a problem of one cut, where it begins."""
    x, y = cuts.moves.points[cuts.index[position], :2].tolist()
    return Problem(find_line(cuts, position), kind, text, at=(x, y))


def note_piece(piece: Piece, kind: str, text: Say, *, line: int = 0, graded: str = "") -> Problem:
    """Makes a problem of a whole piece, at the line of its outline where none is given."""
    x, y = piece.outline.mean(axis=0)
    return Problem(line or piece.line, kind, text, at=(float(x), float(y)), graded=graded)
