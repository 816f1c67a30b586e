"""What could go wrong with what is cut out: tabs, skins, loose pieces."""

from __future__ import annotations

from collections.abc import Sequence

from station.cutting.geometry.pieces import Sheet
from station.cutting.geometry.rings import area_of
from station.cutting.model import Piece, Problem, Setting

SMALL_MM2 = 600.0  # a loose piece below this flies: common practice, no source
LEAST_WIDE_MM, LOW_TAB_MM = 1.0, 0.3  # a thinner tab breaks while it is cut: the same
HELD = 0.995  # of an outline: a piece of which more is cut through comes loose


def find_faults(sheet: Sheet, pieces: Sequence[Piece], setting: Setting) -> list[Problem]:
    """Finds what could go wrong with the pieces of a sheet, in the order of the file."""
    found = [*_check_lost_tabs(sheet), *_check_low_tabs(pieces), *_check_skins(pieces)]
    clamped = setting.router is None or setting.router.bed != "vacuum"
    for piece in pieces:
        if is_loose(piece):
            if clamped:
                text = "This piece has no tabs and comes loose while it is cut."
                found.append(_note_piece(piece, "no-tabs", text))
            if is_small(piece):  # on any bed: a vacuum hardly holds it either
                text = "This piece is small and loose; it may fly off."
                found.append(_note_piece(piece, "small-piece", text))
    return sorted(found, key=lambda p: (p.line, p.kind))


def is_loose(piece: Piece) -> bool:
    """Tells whether nothing holds a piece once it is cut."""
    return not piece.tabs and not piece.skin_mm and piece.covered > HELD


def is_small(piece: Piece) -> bool:
    """Tells whether a piece flies once nothing holds it."""
    return area_of(piece.outline) - sum(abs(area_of(h)) for h in piece.holes) < SMALL_MM2


def _note_piece(piece: Piece, kind: str, text: str) -> Problem:
    """Makes a problem of a whole piece."""
    x, y = piece.outline.mean(axis=0)
    return Problem(piece.line, kind, text, at=(float(x), float(y)))


def _check_lost_tabs(sheet: Sheet) -> list[Problem]:
    """Tells of tabs that the bit's own width or another cut takes away."""
    moves, index = sheet.cuts.moves, sheet.cuts.index
    found = []
    for tab in sheet.lost:
        line, lifted = int(moves.line[index[tab.cut]]), int(moves.line[index[tab.lifted]])
        own = tab.cut == tab.lifted
        text = (
            "The bit's own width cuts this tab through."
            if own
            else f"The tab that line {lifted} leaves is cut through here."
        )
        found.append(Problem(line, "tab-cut-through", text, at=tab.place))
    return found


def _check_low_tabs(pieces: Sequence[Piece]) -> list[Problem]:
    """Tells of tabs that are too thin or too low to hold."""
    text = "This tab is too thin to hold: {width:.1f} mm wide and {height:.1f} mm high."
    return [
        Problem(tab.line, "tab-thin", text.format(width=tab.width_mm, height=tab.height_mm),
                at=(tab.x_mm, tab.y_mm))
        for piece in pieces
        for tab in piece.tabs
        if tab.width_mm < LEAST_WIDE_MM or tab.height_mm < LOW_TAB_MM
    ]  # fmt: skip


def _check_skins(pieces: Sequence[Piece]) -> list[Problem]:
    """Tells of pieces that a skin holds all around."""
    return [
        _note_piece(piece, "skin", f"A skin of {piece.skin_mm:.2f} mm holds this piece.")
        for piece in pieces
        if piece.skin_mm
    ]
