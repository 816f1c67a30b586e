"""``python -m tests.raster N [SEED]``: reads N sheets of 600 × 400 mm, and cuts them in cells.

The cells are 0.1 mm wide and know the strokes as they were planned, not the text; what comes
apart there must be the pieces that the program reads: as many, with their tabs, their areas
within half a cell all along their edges.
"""

import sys

from station.cutting.geometry.rings import area_of, perimeter_of
from station.cutting.model import Analysis, Piece, Setting
from station.cutting.report import analyse_program, read_program
from tests.measured import note
from tests.sheets.making import make_draft, write_draft
from tests.sheets.raster import LoosePart, cut_draft
from tests.sheets.truth import WrittenSheet

CELL = 0.1
LEAST_MM2 = 2.0  # by which two areas may always differ


def read(sheet: WrittenSheet) -> Analysis:
    """Reads a written sheet."""
    setting = Setting(
        thickness_mm=sheet.thickness,
        sheet=sheet.size,
        zero="face" if sheet.zero == "top" else "spoilboard",
        origin="lower-left",
        spindle_mm=sheet.bit,
    )
    return analyse_program(read_program(sheet.text.encode(), setting), setting)


def compare(seed: int, cell: float = CELL) -> list[str]:
    """Tells how what is read of a clean sheet differs from what is cut in cells."""
    draft = make_draft(seed, small=True)
    found = read(write_draft(seed, draft))
    free = cut_draft(draft, cell)
    told = []
    for piece in found.pieces:
        said, near = compare_piece(piece, free, cell)
        told += [said] if said else []
        if near:
            free.remove(near)
    parts = len(draft.laying.parts)
    if not parts <= len(found.pieces) <= parts + draft.laying.rest:
        told.append(f"{len(found.pieces)} pieces, not {parts}")
    total = found.parts_mm2 + found.waste_mm2 + found.skeleton_mm2 + found.kerf_mm2
    whole = draft.size[0] * draft.size[1]
    return [*told, f"{total:.3f} mm² in all, not {whole:g}"] if abs(total - whole) > 0.01 else told


def compare_piece(
    piece: Piece, free: list[LoosePart], cell: float
) -> tuple[str, LoosePart | None]:
    """Tells how a piece differs from what comes loose at its place; and what that is."""
    middle = complex(*(piece.outline.min(axis=0) + piece.outline.max(axis=0)) / 2)
    rings = (piece.outline, *piece.holes)
    area = 2 * abs(area_of(piece.outline)) - sum(abs(area_of(ring)) for ring in rings)
    near = min(
        free, key=lambda p: abs(p.middle - middle) + 0.01 * abs(p.area - area), default=None
    )
    if near is None or abs(near.middle - middle) > 3 * cell:
        return f"nothing comes loose at {middle:.1f}", None
    slack = LEAST_MM2 + cell / 2 * sum(perimeter_of(ring) for ring in rings)
    if abs(near.area - area) > slack:
        return f"{area:.1f} mm², not {near.area:.1f}, at {middle:.1f}", near
    if near.tabs != len(piece.tabs):
        return f"{len(piece.tabs)} tabs, not {near.tabs}, at {middle:.1f}", near
    return "", near


def main(words: list[str]) -> int:
    """Runs the command."""
    numbers = [int(word) for word in words]
    count, first = (numbers + [100, 60_000][len(numbers) :])[:2]
    wrong = 0
    for seed in range(first, first + count):
        told = compare(seed)
        wrong += bool(told)
        for line in told:
            print(f"{seed}: {line}", flush=True)
    print(f"{count - wrong} of {count} sheets are read as they are cut in cells")
    note("sheets not read as they are cut in cells", f"{wrong} of {count}", "none")
    return min(wrong, 1)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
