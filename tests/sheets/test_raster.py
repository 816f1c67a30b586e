"""What is read of a sheet is what a cut in cells leaves of it; the command tries a hundred."""

from dataclasses import replace

import pytest

from tests.raster import compare, compare_piece, read
from tests.sheets.making import make_draft, write_draft
from tests.sheets.raster import cut_draft

CELL = 0.3773  # no size on the sheets is a multiple of it


@pytest.mark.parametrize("seed", [60000, 60058, 60072])
def test_what_is_read_comes_loose_in_cells(seed):
    assert compare(seed, CELL) == []


def test_what_differs_from_the_cells_is_told():
    draft = make_draft(60002, small=True)
    piece = read(write_draft(60002, draft)).pieces[0]
    free = cut_draft(draft, CELL)
    assert compare_piece(piece, free, CELL)[0] == ""
    other = replace(piece, outline=piece.outline * 1.05)
    assert "nothing comes loose" in compare_piece(other, free, CELL)[0]
    middle = (piece.outline.min(axis=0) + piece.outline.max(axis=0)) / 2
    other = replace(piece, outline=middle + (piece.outline - middle) * 1.05)
    assert "mm², not" in compare_piece(other, free, CELL)[0]
    other = replace(piece, tabs=())
    said = compare_piece(other, free, CELL)[0]
    assert ("tabs, not" in said) == bool(piece.tabs)
