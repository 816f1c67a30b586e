"""Asks the program what a written sheet is. This is the only file here that knows the program."""

import numpy as np

from station.cutting.model import Analysis, Piece, Ring, Setting, ShapeFound
from station.cutting.report import analyse_program, read_program
from tests.sheets.truth import Found, FoundGroup, FoundProblem

# The program's kinds of problem, by those of `faults.KINDS`
KINDS = {
    "tab-cut-through": "tab cut",
    "tab-thin": "thin tab",
    "too-deep": "too deep",
    "rapid-in-sheet": "rapid low",
    "spindle-off": "spindle off",
}
SILENT = {"no-tabs", "chip-load", "small-piece", "skin"}  # told of a piece, and no fault of a file
SLOT = 1.6  # a hole this much longer than wide is a slot


def read_sheet(
    text: str,
    thickness: float,
    sheet_size: tuple[float, float],
    zero: str,
    bit_in_spindle: float | None,
) -> Found:
    """Reads one cut file.

    `zero` is "top" or "bed" (the spoilboard's face), X0 Y0 the sheet's lower left corner,
    `bit_in_spindle` the diameter in mm of the bit that is in as the file begins, None when
    only the file tells. Problems are named by the kinds of `faults.KINDS`.
    """
    setting = Setting(
        thickness_mm=thickness,
        sheet=sheet_size,
        zero="face" if zero == "top" else "spoilboard",
        origin="lower-left",
        bit_mm={-1: bit_in_spindle} if bit_in_spindle else {},
    )
    program = read_program(text.encode(), setting)
    if program.refused:
        return Found(problems=[FoundProblem(program.refused, None)])
    analysis = analyse_program(program, setting)
    return Found(
        [_describe_group(analysis, shape) for shape in analysis.shapes],
        [
            FoundProblem(
                KINDS.get(p.kind, p.kind), p.line or None, "know" if p.kind in SILENT else "look"
            )
            for p in analysis.problems
        ],
    )


def _describe_group(analysis: Analysis, shape: ShapeFound) -> FoundGroup:
    """Describes equal pieces as the truth does."""
    pieces = [analysis.pieces[i] for i in shape.pieces]
    slots = sum(_is_slot(hole) for hole in pieces[0].holes)
    return FoundGroup(
        count=len(pieces),
        width=shape.width_mm,
        height=shape.length_mm,
        n_holes=len(pieces[0].holes) - slots,
        n_slots=slots,
        n_pockets=0,
        tabs=tuple(len(p.tabs) for p in pieces),
        places=tuple(_find_middle(p) for p in pieces),
    )


def _find_middle(piece: Piece) -> complex:
    """Finds the middle of a piece's box."""
    return complex(*(piece.outline.min(axis=0) + piece.outline.max(axis=0)) / 2)


def _is_slot(hole: Ring) -> bool:
    """Whether a hole is a slot: longer than wide."""
    size = np.sort(hole.max(axis=0) - hole.min(axis=0))
    return bool(size[1] > SLOT * size[0])
