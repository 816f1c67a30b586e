"""Asks the program what a written sheet is. This is the only file here that knows the program."""

from station.cutting.geometry.rings import find_rectangle
from station.cutting.model import Analysis, Piece, Ring, Setting, ShapeFound
from station.cutting.report import analyse_program, read_program
from tests.sheets.truth import Found, FoundGroup, FoundProblem

# The program's kinds of problem, by those of `faults.KINDS`
KINDS = {
    "tab-cut-through": "tab cut",
    "thin-tab": "thin tab",
    "too-deep": "too deep",
    "rapid-in-sheet": "rapid low",
    "spindle-off": "spindle off",
    "late-inside": "late inside",
    "plunge-fast": "plunge fast",
    "pass-deep": "pass deep",
    "change-low": "change low",
    "thickness": "other thickness",
    "block-deleted": "skipped",
}


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
        spindle_mm=bit_in_spindle,
    )
    program = read_program(text.encode(), setting)
    if program.refused:
        return Found(problems=[FoundProblem(str(program.refused), None)])
    analysis = analyse_program(program, setting)
    return Found(
        [
            _describe_group(analysis, shape, pieces)
            for shape in analysis.shapes
            for pieces in _split_mirrored(analysis, shape)
        ],
        [
            FoundProblem(KINDS.get(p.kind, p.kind), p.line or None, p.grade)
            for p in analysis.problems
        ],
    )


def _split_mirrored(analysis: Analysis, shape: ShapeFound) -> list[list[Piece]]:
    """Splits equal pieces: what is cut through is one part with its mirror image, here not."""
    pieces = [analysis.pieces[i] for i in shape.pieces]
    sides = [[p for p in pieces if p.mirrored is side] for side in (False, True)]
    return [side for side in sides if side]


def _describe_group(analysis: Analysis, shape: ShapeFound, pieces: list[Piece]) -> FoundGroup:
    """Describes equal pieces as the truth does."""
    bits = [bit.diameter_mm for bit in analysis.bits]
    slots = sum(_is_slot(hole, bits) for hole in pieces[0].holes)
    return FoundGroup(
        count=len(pieces),
        width=shape.width_mm,
        height=shape.length_mm,
        n_holes=len(pieces[0].holes) - slots,
        n_slots=slots,
        n_pockets=len(pieces[0].hollows),
        tabs=tuple(len(p.tabs) for p in pieces),
        places=tuple(_find_middle(p) for p in pieces),
    )


def _find_middle(piece: Piece) -> complex:
    """Finds the middle of a piece's box."""
    return complex(*(piece.outline.min(axis=0) + piece.outline.max(axis=0)) / 2)


def _is_slot(hole: Ring, bits: list[float]) -> bool:
    """Whether a hole is a slot of one stroke: as wide as a bit, and longer."""
    width, length, _ = find_rectangle(hole)
    return length > width + 0.5 and any(abs(width - bit) < 0.05 for bit in bits)
