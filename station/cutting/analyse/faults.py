"""What could go wrong with what is cut out: tabs, skins, loose pieces, cuts into parts."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely

from station.cutting.analyse.notes import find_line, note_piece
from station.cutting.analyse.uncut import find_uncut
from station.cutting.geometry.pieces import PART, Sheet
from station.cutting.geometry.rings import area_of
from station.cutting.geometry.strokes import Levels, Shapes
from station.cutting.geometry.tabs import find_cut_at
from station.cutting.model import KNOW, LOOK, Ints, Piece, Problem, Setting
from station.shop.facts import Shop

PARTED_MM2 = 300.0  # of an outline, that a cut across it leaves on each side at least
HELD = 0.995  # of an outline: a piece of which more is cut through comes loose
OPEN_SHARE = 0.1  # of a contour's length that may lie between its ends
HELD_SHARE = 0.5  # of what a contour goes around, that is part
WHOLE_SHARE = 0.5  # of a contour's way, that is cut through
CROSS_MM = 0.5  # contours that overlap by twice as much cut into each other's parts


def find_faults(
    sheet: Sheet, pieces: Sequence[Piece], levels: Levels, setting: Setting
) -> list[Problem]:
    """Finds what could go wrong with the pieces of a sheet, in the order of the file."""
    found = [
        *_check_lost_tabs(sheet),
        *_check_low_tabs(pieces, setting.shop),
        *find_uncut(sheet, pieces, levels),
        *_check_gouges(sheet),
        *_check_gouges_in_skins(sheet),
        *_check_strokes_across(sheet),
        *_check_late_cuts(sheet, pieces),
    ]
    for piece in pieces:
        if is_loose(piece):
            found += _tell_loose(piece, setting)
    return sorted(found, key=lambda p: (p.line, p.kind))


def _tell_loose(piece: Piece, setting: Setting) -> list[Problem]:
    """Tells of a piece that nothing holds; a vacuum holds all but the small ones."""
    found = []
    router = setting.router
    grade = KNOW if router is None else LOOK
    if router is None or router.bed != "vacuum":
        text = "This piece has no tabs and comes loose while it is cut."
        found.append(note_piece(piece, "no-tabs", text, graded=grade))
    if is_small(piece, setting.shop.small_piece_mm2):
        text = "This piece is small and loose; it may fly off."
        found.append(note_piece(piece, "small-piece", text, graded=grade))
    return found


def is_loose(piece: Piece) -> bool:
    """Tells whether nothing holds a piece once it is cut."""
    return not piece.tabs and not piece.skin_mm and piece.covered > HELD


def is_small(piece: Piece, small_mm2: float) -> bool:
    """Tells whether a piece flies once nothing holds it: it is smaller than that."""
    return area_of(piece.outline) - sum(abs(area_of(h)) for h in piece.holes) < small_mm2


def _check_lost_tabs(sheet: Sheet) -> list[Problem]:
    """Tells of tabs that the bit's own width or another cut takes away."""
    found = []
    for tab in sheet.lost:
        line, lifted = find_line(sheet.cuts, tab.cut), find_line(sheet.cuts, tab.lifted)
        text = (
            "The bit's own width cuts this tab through."
            if tab.cut == tab.lifted
            else f"The tab that line {lifted} leaves is cut through here."
        )
        found.append(Problem(line, "tab-cut-through", text, at=tab.place))
    return found


def _check_low_tabs(pieces: Sequence[Piece], shop: Shop) -> list[Problem]:
    """Tells of tabs that are thinner or lower than the shop takes for holding."""
    found = []
    for tab in (tab for piece in pieces for tab in piece.tabs):
        if tab.width_mm < shop.tab_width_mm or tab.height_mm < shop.tab_height_mm:
            text = (
                f"This tab is too thin to hold: {tab.width_mm:.1f} mm wide and"
                f" {tab.height_mm:.1f} mm high."
            )
            found.append(Problem(tab.line, "thin-tab", text, at=(tab.x_mm, tab.y_mm)))
    return found


def _check_gouges(sheet: Sheet) -> list[Problem]:
    """Tells of contours that cross another: one cuts into the other's part."""
    names = _list_whole_contours(sheet)
    lines = [shapely.linestrings(sheet.contours.ways[c]) for c in names]
    if len(names) < 2:
        return []
    one, other = shapely.STRtree(lines).query(lines, predicate="intersects")
    parts: dict[int, set[int]] = {}
    for (contour, face), inside in sheet.around.items():
        if inside and sheet.kinds[face] == PART:
            parts.setdefault(contour, set()).add(face)
    found = []
    for a, b in zip(one.tolist(), other.tolist(), strict=True):
        pair = names[a], names[b]
        later = sheet.contours.first[pair[0]] > sheet.contours.first[pair[1]]
        mine, others = (parts.get(c, set()) for c in pair)
        apart = bool(mine - others and others - mine)
        if later and (apart or mine ^ others) and _overlap(lines[a], lines[b]):
            if not apart and not all(_goes_around_part(sheet, lines[n]) for n in (a, b)):
                continue
            x, y = shapely.get_coordinates(lines[a].intersection(lines[b]))[0].tolist()
            position = _find_cut_near(sheet, pair[0], shapely.points(x, y))
            text = "This contour cuts into another part."
            found.append(Problem(find_line(sheet.cuts, position), "gouge", text, at=(x, y)))
    return found


def _check_gouges_in_skins(sheet: Sheet) -> list[Problem]:
    """Tells of laps that leave a skin and cross another outline: both go around a part."""
    skins = sheet.closed.stretches.pick(sheet.skins)
    names = _list_whole_contours(sheet)
    lines = [*skins.shape, *(shapely.linestrings(sheet.contours.ways[c]) for c in names)]
    first = [*skins.first.tolist(), *(sheet.contours.first[c] for c in names)]
    if not len(skins) or len(lines) < 2:
        return []
    around: dict[int, bool] = {}
    found = []
    one, other = shapely.STRtree(lines).query(lines, predicate="intersects")
    for a, b in zip(one.tolist(), other.tolist(), strict=True):
        if first[a] <= first[b] or min(a, b) >= len(skins):
            continue
        for n in (a, b):
            if n not in around:
                around[n] = _goes_around_part(sheet, lines[n])
        if around[a] and around[b] and _overlap(lines[a], lines[b]):
            x, y = shapely.get_coordinates(lines[a].intersection(lines[b]))[0].tolist()
            text = "This contour cuts into another part."
            found.append(Problem(find_line(sheet.cuts, first[a]), "gouge", text, at=(x, y)))
    return found


def _check_strokes_across(sheet: Sheet) -> list[Problem]:
    """Tells of open cuts that part what two outlines apart go around: no shared line does."""
    lines = {c: shapely.linestrings(w) for c, w in sheet.contours.ways.items() if len(w) > 1}
    around = [c for c, line in lines.items() if len(sheet.contours.ways[c]) > 2]
    around = [c for c in around if _goes_around_part(sheet, lines[c])]
    filled = [
        shapely.make_valid(shapely.polygons(shapely.get_coordinates(lines[c]))) for c in around
    ]
    tree, found = shapely.STRtree(filled), []
    for contour in lines.keys() - set(around):
        line = lines[contour]
        parted = [filled[n] for n in tree.query(line).tolist() if _parts(line, filled[n])]
        if len(parted) < 2 or not shapely.disjoint(parted[0], parted[1:]).any():
            continue
        inside = shapely.intersection(line, parted[0])
        if shapely.is_empty(inside):
            continue
        x, y = shapely.get_coordinates(shapely.point_on_surface(inside))[0].tolist()
        position = _find_cut_near(sheet, contour, shapely.points(x, y))
        text = "This cut goes across other parts."
        found.append(Problem(find_line(sheet.cuts, position), "gouge", text, at=(x, y)))
    return found


def _parts(line: shapely.Geometry, filled: shapely.Geometry) -> bool:
    """Tells whether a line leaves more than one piece of what an outline goes around."""
    left = shapely.get_parts(shapely.difference(filled, shapely.buffer(line, CROSS_MM)))
    return int((shapely.area(left) > PARTED_MM2).sum()) > 1


def _goes_around_part(sheet: Sheet, line: shapely.Geometry) -> bool:
    """Tells whether a closed contour holds mostly part: two parts may have come off as one."""
    ends = shapely.get_coordinates(line)[[0, -1]]
    if np.hypot(*(ends[1] - ends[0])) > OPEN_SHARE * shapely.length(line):
        return False
    around = shapely.make_valid(shapely.polygons(shapely.get_coordinates(line)))
    parts = sheet.drawn[np.array([kind == PART for kind in sheet.kinds], dtype=bool)]
    inside = shapely.area(shapely.intersection(parts, around)).sum()
    return bool(inside > HELD_SHARE * shapely.area(around))


def _list_whole_contours(sheet: Sheet) -> list[int]:
    """Lists contours that are cut through most of their way, not only here and there on a lap."""
    cut: dict[int, float] = {}
    for run, length in zip(
        sheet.through.run.tolist(), shapely.length(sheet.through.shape).tolist(), strict=True
    ):
        contour = sheet.contours.of_run[run]
        cut[contour] = cut.get(contour, 0.0) + length
    return [
        contour
        for contour, way in sheet.contours.ways.items()
        if len(way) > 2
        and cut.get(contour, 0.0) > WHOLE_SHARE * shapely.length(shapely.linestrings(way))
    ]


def _overlap(one: shapely.Geometry, other: shapely.Geometry) -> bool:
    """Tells whether two contours overlap, and neither lies in the other."""
    a, b = (
        shapely.make_valid(shapely.polygons(shapely.get_coordinates(line)))
        for line in (one, other)
    )
    both, first, second = a.intersection(b), a.difference(b), b.difference(a)
    return not any(shapely.is_empty(shapely.buffer(g, -CROSS_MM)) for g in (both, first, second))


def _find_cut_near(sheet: Sheet, contour: int, place: shapely.Geometry) -> int:
    """Finds the cut of a contour that passes nearest to a place."""
    of = sheet.contours.of_run
    own = [n for n, run in enumerate(sheet.through.run.tolist()) if of[run] == contour]
    if not own:
        return sheet.contours.first[contour]
    near = own[int(np.argmin(shapely.distance(sheet.through.shape[own], place)))]
    return find_cut_at(sheet.cuts, sheet.through, near, place)


def _check_late_cuts(sheet: Sheet, pieces: Sequence[Piece]) -> list[Problem]:
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
    for n, inside in zip(ring[late].tolist(), cut[late].tolist(), strict=True):
        number = int(moves.line[first[inside]])
        if n in found and number >= found[n].line:
            continue
        x, y = shapely.get_coordinates(place[inside])[0].tolist()
        kind, text = "late-inside", "This is cut in a piece that is free already."
        if not is_loose(pieces[n]):
            kind, text = "outside-first", "The outline of this piece is cut before this."
        deep = inside < len(sheet.through) or inside >= len(place) - len(sheet.plunges)
        graded = "" if deep or kind == "late-inside" else KNOW  # a tab holds it well enough
        found[n] = Problem(number, kind, text, at=(x, y), graded=graded)
    return list(found.values())


def _list_cuts_within(sheet: Sheet) -> tuple[Shapes, Ints]:
    """Lists a place of each cut, of lines through the sheet, of shallow ones and of plunges, and
    the move that it begins with.
    """
    moves, index = sheet.cuts.moves, sheet.cuts.index
    lines = np.concatenate((sheet.through.shape, sheet.shallow.lines.shape))
    place = np.concatenate(
        (
            shapely.line_interpolate_point(lines, 0.5, normalized=True),
            shapely.points(moves.points[sheet.plunges, :2]),
        )
    )
    begin = (index[sheet.through.first], index[sheet.shallow.lines.first], sheet.plunges)
    return place, np.concatenate(begin)
