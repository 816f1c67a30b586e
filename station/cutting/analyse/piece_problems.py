"""What could go wrong with what is cut out: tabs, skins, loose pieces, cuts into parts."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

import numpy as np
import shapely

from station.cutting.analyse.gouges import find_gouges
from station.cutting.analyse.notes import find_line, note_piece
from station.cutting.analyse.strays import find_stray_ends, find_stray_passes
from station.cutting.analyse.uncut import find_uncut
from station.cutting.geometry.kinds import SLUG
from station.cutting.geometry.rings import area_of
from station.cutting.geometry.sheet import Sheet
from station.cutting.geometry.strokes import Levels, Shapes
from station.cutting.model import KNOW, LOOK, Bools, Ints, Piece, Problem, Setting
from station.shop.facts import Shop
from station.shop.words import length, say

FORGOTTEN = 0.5  # of equal pieces: where so many have tabs, the others are to have some too
MANY_HELD = 2  # pieces beside a single one that nothing holds
HELD = 0.995  # of an outline: a piece of which more is cut through comes loose


def find_piece_problems(
    sheet: Sheet, pieces: Sequence[Piece], levels: Levels, setting: Setting
) -> list[Problem]:
    """Finds what could go wrong with the pieces of a sheet, in the order of the file."""
    loose = find_loose(sheet, pieces)
    found = [
        *_check_lost_tabs(sheet),
        *_check_low_tabs(pieces, setting.shop),
        *find_uncut(sheet, pieces, levels),
        *find_gouges(sheet),
        *find_stray_ends(sheet),
        *find_stray_passes(sheet),
        *_check_late_cuts(sheet, pieces, loose),
        *_check_late_parts(sheet, pieces),
        *_check_loose(pieces, loose, setting),
    ]
    return sorted(found, key=lambda p: (p.line, p.kind))


def _check_loose(pieces: Sequence[Piece], loose: Bools, setting: Setting) -> list[Problem]:
    """Tells of pieces that nothing holds; of one that is without tabs while others that are equal
    to it have some, or all others, whatever bed holds it: its tabs were forgotten.
    """
    alike = Counter(piece.shape for piece in pieces)
    held = Counter(p.shape for p, free in zip(pieces, loose, strict=True) if not free and p.tabs)
    alone = int(loose.sum()) == 1 and held.total() == len(pieces) - 1 >= MANY_HELD
    found = []
    for n in np.flatnonzero(loose).tolist():
        piece = pieces[n]
        found += _tell_loose(piece, setting)
        if piece.shape >= 0 and held[piece.shape] >= FORGOTTEN * alike[piece.shape]:
            text = say("This piece has no tabs, and others that are equal to it have.")
            found.append(note_piece(piece, "tabs-forgotten", text))
        elif alone:
            text = say("This piece has no tabs, and all others have.")
            found.append(note_piece(piece, "tabs-forgotten", text))
    return found


def _tell_loose(piece: Piece, setting: Setting) -> list[Problem]:
    """Tells of a piece that nothing holds; a vacuum holds all but the small ones."""
    found = []
    router = setting.router
    grade = KNOW if router is None else LOOK
    if router is None or router.bed != "vacuum":
        text = say("This piece has no tabs and comes loose while it is cut.")
        found.append(note_piece(piece, "no-tabs", text, graded=grade))
    if is_small(piece, setting.shop.small_piece_mm2):
        text = say("This piece is small and loose; it may fly off.")
        found.append(note_piece(piece, "small-piece", text, graded=grade))
    return found


def find_loose(sheet: Sheet, pieces: Sequence[Piece]) -> Bools:
    """Finds the pieces that nothing holds once they are cut: no tab, or only to the waste of
    their own windows.
    """
    left, right = sheet.closed.left, sheet.closed.right
    parent = sheet.closed.faces.parent
    loose = []
    for piece, face in zip(pieces, sheet.of_piece, strict=True):
        beside = np.concatenate((right[left == face], left[right == face]))
        within = beside >= 0
        within[within] = parent[beside[within]] == face
        loose.append(
            _is_bare(piece) or (bool(piece.tabs) and len(within) > 0 and bool(within.all()))
        )
    return np.array(loose, dtype=bool)


def _is_bare(piece: Piece) -> bool:
    """Tells whether a piece has no tab, no skin, and is cut through all around."""
    tabs = any(tab.style != "stub" for tab in piece.tabs)
    return not tabs and not piece.skin_mm and piece.covered > HELD


def is_small(piece: Piece, small_mm2: float) -> bool:
    """Tells whether a piece flies once nothing holds it: it is smaller than that."""
    return area_of(piece.outline) - sum(abs(area_of(h)) for h in piece.holes) < small_mm2


def _check_lost_tabs(sheet: Sheet) -> list[Problem]:
    """Tells of tabs that the bit's own width or another cut takes away."""
    found = []
    for tab in sheet.lost:
        line, lifted = find_line(sheet.cuts, tab.cut), find_line(sheet.cuts, tab.lifted)
        text = (
            say("The bit's own width cuts this tab through.")
            if tab.cut == tab.lifted
            else say("The tab that line {line} leaves is cut through here.", line=lifted)
        )
        found.append(Problem(line, "tab-cut-through", text, at=tab.place))
    return found


def _check_low_tabs(pieces: Sequence[Piece], shop: Shop) -> list[Problem]:
    """Tells of tabs that are thinner or lower than the shop takes for holding."""
    found = []
    for tab in (tab for piece in pieces for tab in piece.tabs if tab.style != "stub"):
        if tab.width_mm < shop.tab_width_mm or tab.height_mm < shop.tab_height_mm:
            text = say("This tab is too thin to hold: {wide} mm wide and {high} mm high.",
                       wide=length(tab.width_mm, 1), high=length(tab.height_mm, 1))  # fmt: skip
            found.append(Problem(tab.line, "thin-tab", text, at=(tab.x_mm, tab.y_mm)))
    return found


def _check_late_cuts(sheet: Sheet, pieces: Sequence[Piece], loose: Bools) -> list[Problem]:
    """Tells of cuts in pieces whose outline is cut already: free by then, or held by tabs."""
    face, line = sheet.edges
    if not pieces or not len(line):
        return []
    moves, index = sheet.cuts.moves, sheet.cuts.index
    freed = np.zeros(len(sheet.kinds), dtype=np.int64)
    np.maximum.at(freed, face, index[sheet.through.stop[line] - 1])
    place, first = _list_cuts_within(sheet)
    own = np.array(sheet.of_piece)
    ring, cut = shapely.STRtree(place).query(sheet.closed.faces.ring[own], predicate="contains")
    late = (first[cut] > freed[own[ring]]) & (freed[own[ring]] > 0)
    found: dict[int, Problem] = {}
    order = np.argsort(first[cut[late]], kind="stable")
    for n, inside in zip(ring[late][order].tolist(), cut[late][order].tolist(), strict=True):
        if n in found:
            continue
        number = int(moves.line[first[inside]])
        x, y = shapely.get_coordinates(place[inside])[0].tolist()
        kind, text = "late-inside", say("This is cut in a piece that is free already.")
        if not loose[n]:
            kind = "outside-first"
            text = say("The outline of this piece is cut before this.")
        deep = inside < len(sheet.through) or inside >= len(place) - len(sheet.plunges)
        graded = "" if deep or kind == "late-inside" else KNOW  # a tab holds it well enough
        found[n] = Problem(number, kind, text, at=(x, y), graded=graded)
    return list(found.values())


def _check_late_parts(sheet: Sheet, pieces: Sequence[Piece]) -> list[Problem]:
    """Tells of parts cut out of what has come loose from a hole before: only tabs between the
    hole and its waste would hold it.
    """
    closed, (face, line) = sheet.closed, sheet.edges
    parent = closed.faces.parent
    around = {int(parent[f]) for f in sheet.of_piece if parent[f] >= 0}
    found = []
    for slug in sorted(f for f in around if sheet.kinds[f] == SLUG):
        sides = np.concatenate(
            (closed.left[closed.right == slug], closed.right[closed.left == slug])
        )
        held = (sides < 0) | (parent[np.maximum(sides, 0)] != slug)
        own = [n for n, f in enumerate(sheet.of_piece) if parent[f] == slug]
        inner = np.isin(line, line[np.isin(face, [sheet.of_piece[n] for n in own])])
        outer = line[(face == slug) & ~inner]
        if held.any() or not len(outer):
            continue
        free = int(sheet.through.stop[outer].max()) - 1
        for n in own:
            if sheet.begins[n] > free:
                text = say("This is cut out of a piece that is free already.")
                found.append(note_piece(pieces[n], "late-inside", text))
    return found


def _list_cuts_within(sheet: Sheet) -> tuple[Shapes, Ints]:
    """Lists a place of each cut, of lines through the sheet, of shallow ones, of holes drilled in
    part and of plunges, and the move that it begins with.
    """
    moves, index = sheet.cuts.moves, sheet.cuts.index
    lines = np.concatenate((sheet.through.shape, sheet.shallow.lines.shape))
    place = np.concatenate(
        (
            shapely.line_interpolate_point(lines, 0.5, normalized=True),
            shapely.points(moves.points[sheet.drilled, :2]),
            shapely.points(moves.points[sheet.plunges, :2]),
        )
    )
    begin = (
        index[sheet.through.first],
        index[sheet.shallow.lines.first],
        sheet.drilled,
        sheet.plunges,
    )
    return place, np.concatenate(begin)
