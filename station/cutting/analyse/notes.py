"""Problems as they are noted of a cut or of a whole piece."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from station.cutting.geometry.strokes import Cuts
from station.cutting.model import KNOW, Piece, Problem
from station.shop.words import Say, length, say

ROUNDED_MM = 0.02  # by which an arc is off at most whose end and centre have two decimals
FINE_MM = 0.003  # the same with three decimals, in mm: as most files are written
FEW = 3  # arcs that are told one by one


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


def sum_up_arcs(problems: Sequence[Problem]) -> list[Problem]:
    """Tells once of many arcs that are off by no more than rounded coordinates bring about; where
    they have three decimals, it is only worth knowing.
    """
    problems = [replace(p, graded=KNOW) if _is_fine(p) else p for p in problems]
    rounded = [p for p in problems if p.kind == "arc-radii" and 0 < _read_off(p) <= ROUNDED_MM]
    if len(rounded) <= FEW:
        return problems
    text = say(
        "{count} {count|arc ends|arcs end} up to {off} mm off the circle, as figures with few "
        "decimals do. Some routers refuse that: write the file with more decimals.",
        count=len(rounded),
        off=length(max(map(_read_off, rounded)), 4),
    )
    worst = max(rounded, key=_read_off)
    once, left = replace(rounded[0], text=text, graded=worst.graded), {id(p) for p in rounded}
    return [once, *(p for p in problems if id(p) not in left)]


def _is_fine(problem: Problem) -> bool:
    """Tells whether an arc is off by no more than three decimals of a mm bring about."""
    return problem.kind == "arc-radii" and 0 < _read_off(problem) <= FINE_MM


def _read_off(problem: Problem) -> float:
    """Reads from its sentence by how many mm an arc is off; 0: it counts what is not listed."""
    off = problem.text.values.get("off", problem.text.values.get("apart"))
    return float(str(off.values["length"])) if isinstance(off, Say) else 0.0
