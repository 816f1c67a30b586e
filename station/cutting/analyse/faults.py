"""What could go wrong with what is cut out: tabs, skins, loose pieces, cuts into parts."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely

from station.cutting.geometry.faces import SKELETON
from station.cutting.geometry.pieces import PART, Sheet
from station.cutting.geometry.rings import area_of
from station.cutting.geometry.strokes import Levels, Shapes
from station.cutting.geometry.tabs import WIDEST_GAP_MM, find_cut_at
from station.cutting.model import KNOW, LOOK, Floats, Ints, Piece, Problem, Setting

SMALL_MM2 = 600.0  # a loose piece below this flies: common practice, no source
LEAST_WIDE_MM, LOW_TAB_MM = 1.0, 0.5  # a thinner tab breaks while it is cut: the same
RIND = 0.1  # of an outline with a skin all around, that is cut through at most
MOST_SKINS = 0.6  # of the pieces: so many have a skin where it is meant, notches or not
ABOVE_SKIN_MM = 0.3  # a tab is higher than a skin by as much
HELD = 0.995  # of an outline: a piece of which more is cut through comes loose
OPEN_SHARE = 0.1  # of a contour's length that may lie between its ends
HELD_SHARE = 0.5  # of what a contour goes around, that is part
WHOLE_SHARE = 0.5  # of a contour's way, that is cut through
CROSS_MM = 0.5  # contours that overlap by twice as much cut into each other's parts
DEEP_SHARE = 0.55  # of the thickness: a cut in the waste that is deeper was meant to part it
LONG_MM = 60.0  # a shorter cut that frees nothing is a mark or a hole for a screw


def find_faults(
    sheet: Sheet, pieces: Sequence[Piece], levels: Levels, setting: Setting
) -> list[Problem]:
    """Finds what could go wrong with the pieces of a sheet, in the order of the file."""
    found = [
        *_check_lost_tabs(sheet),
        *_check_low_tabs(pieces),
        *_check_skins(sheet, pieces),
        *_check_ramps(sheet, levels),
        *_check_gouges(sheet),
        *_check_gouges_in_skins(sheet),
        *_check_strokes_across(sheet),
        *_check_late_cuts(sheet, pieces),
        *_check_unfreed(sheet, levels),
        *_check_idle_cuts(sheet),
    ]
    for piece in pieces:
        if is_loose(piece):
            found += _tell_loose(piece, setting)
    return sorted(found, key=lambda p: (p.line, p.kind))


def _tell_loose(piece: Piece, setting: Setting) -> list[Problem]:
    """Tells of a piece that nothing holds; a vacuum holds all but the small ones."""
    found = []
    router = setting.router
    if router is None or router.bed != "vacuum":
        text = "This piece has no tabs and comes loose while it is cut."
        found.append(_note_piece(piece, "no-tabs", text, KNOW if router is None else LOOK))
    if is_small(piece):
        text = "This piece is small and loose; it may fly off."
        found.append(_note_piece(piece, "small-piece", text, KNOW if router is None else LOOK))
    return found


def is_loose(piece: Piece) -> bool:
    """Tells whether nothing holds a piece once it is cut."""
    return not piece.tabs and not piece.skin_mm and piece.covered > HELD


def is_small(piece: Piece) -> bool:
    """Tells whether a piece flies once nothing holds it."""
    return area_of(piece.outline) - sum(abs(area_of(h)) for h in piece.holes) < SMALL_MM2


def _note_piece(piece: Piece, kind: str, text: str, grade: str = "") -> Problem:
    """Makes a problem of a whole piece."""
    x, y = piece.outline.mean(axis=0)
    return Problem(piece.line, kind, text, at=(float(x), float(y)), graded=grade)


def _find_line(sheet: Sheet, position: int) -> int:
    """Finds the line of the file that a cut stands on."""
    return int(sheet.cuts.moves.line[sheet.cuts.index[position]])


def _check_lost_tabs(sheet: Sheet) -> list[Problem]:
    """Tells of tabs that the bit's own width or another cut takes away."""
    found = []
    for tab in sheet.lost:
        line, lifted = _find_line(sheet, tab.cut), _find_line(sheet, tab.lifted)
        text = (
            "The bit's own width cuts this tab through."
            if tab.cut == tab.lifted
            else f"The tab that line {lifted} leaves is cut through here."
        )
        found.append(Problem(line, "tab-cut-through", text, at=tab.place))
    return found


def _check_low_tabs(pieces: Sequence[Piece]) -> list[Problem]:
    """Tells of tabs that are too thin or too low to hold."""
    found = []
    for tab in (tab for piece in pieces for tab in piece.tabs):
        if tab.width_mm < LEAST_WIDE_MM or tab.height_mm < LOW_TAB_MM:
            text = (
                f"This tab is too thin to hold: {tab.width_mm:.1f} mm wide and"
                f" {tab.height_mm:.1f} mm high."
            )
            found.append(Problem(tab.line, "thin-tab", text, at=(tab.x_mm, tab.y_mm)))
    return found


def _check_skins(sheet: Sheet, pieces: Sequence[Piece]) -> list[Problem]:
    """Tells of pieces that a skin holds; one that is not all around, or beside tabs, or on few
    pieces alone, is not meant.
    """
    skins = [n for n, piece in enumerate(pieces) if piece.skin_mm]
    few, most = 2 * len(skins) < len(pieces), len(skins) > MOST_SKINS * len(pieces)
    found = []
    for n in skins:
        piece = pieces[n]
        text = f"A skin of {piece.skin_mm:.2f} mm holds this piece."
        tabs = any(tab.height_mm > piece.skin_mm + ABOVE_SKIN_MM for tab in piece.tabs)
        if few or tabs or (piece.covered > RIND and not most):
            face = sheet.of_piece[n]
            along = (sheet.closed.left == face) | (sheet.closed.right == face)
            first = int(sheet.closed.stretches.first[along & sheet.skins].min())
            x, y = piece.outline.mean(axis=0)
            text = f"This piece is not cut through: up to {piece.skin_mm:.2f} mm is left."
            number = _find_line(sheet, first)
            found.append(Problem(number, "uncut", text, at=(float(x), float(y))))
        else:
            found.append(_note_piece(piece, "skin", text))
    return found


def _check_ramps(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Tells of runs that go through but leave a long ramp: a spiral without a level lap."""
    some = sheet.closed.stretches
    long = shapely.length(some.shape) > WIDEST_GAP_MM
    long &= sheet.cuts.run_low[some.run] <= levels.through
    found = []
    for n in np.flatnonzero(long).tolist():
        left = float(some.top[n] - levels.bottom)
        text = f"This lap does not go through everywhere: up to {left:.2f} mm is left."
        x, y = shapely.get_coordinates(some.shape[n])[0].tolist()
        found.append(Problem(_find_line(sheet, int(some.first[n])), "uncut", text, at=(x, y)))
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
            found.append(Problem(_find_line(sheet, position), "gouge", text, at=(x, y)))
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
            found.append(Problem(_find_line(sheet, first[a]), "gouge", text, at=(x, y)))
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
        found.append(Problem(_find_line(sheet, position), "gouge", text, at=(x, y)))
    return found


def _parts(line: shapely.Geometry, filled: shapely.Geometry) -> bool:
    """Tells whether a line leaves more than one piece of what an outline goes around."""
    left = shapely.get_parts(shapely.difference(filled, shapely.buffer(line, CROSS_MM)))
    return int((shapely.area(left) > SMALL_MM2 / 2).sum()) > 1


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


def _check_unfreed(sheet: Sheet, levels: Levels) -> list[Problem]:
    """Tells of deep cuts in the waste that part nothing: they leave too much."""
    lines, cuts = sheet.shallow.lines, sheet.cuts
    if not len(lines):
        return []
    left = cuts.run_low[lines.run] - levels.bottom
    deep = (left < (1 - DEEP_SHARE) * levels.thickness) & (shapely.length(lines.shape) > LONG_MM)
    index = np.flatnonzero(deep)
    middle = shapely.line_interpolate_point(lines.shape[index], 0.5, normalized=True)
    face = sheet.closed.faces.find_at(shapely.get_coordinates(middle))
    spared = [
        f < 0 or sheet.kinds[f] != PART or _rips(sheet, n, f)
        for n, f in zip(index.tolist(), face.tolist(), strict=True)
    ]
    index = index[np.array(spared, dtype=bool)]
    deepest: dict[tuple[int, ...], int] = {}
    for n in index.tolist():
        key = tuple(np.round(shapely.bounds(lines.shape[n])).astype(int).tolist())
        best = deepest.get(key)
        if best is None or cuts.run_low[lines.run[n]] < cuts.run_low[lines.run[best]]:
            deepest[key] = n
    return [_tell_unfreed(sheet, n, float(left[n])) for n in _keep_one_a_run(lines.run, deepest)]


def _rips(sheet: Sheet, line: int, face: int) -> bool:
    """Tells whether a line would rip a strip of the sheet: it runs from edge to edge of it."""
    faces = sheet.closed.faces
    if faces.around[face] != SKELETON:
        return False
    x0, y0, x1, y1 = shapely.bounds(faces.ring[face]).tolist()
    longest = max(x1 - x0, y1 - y0)
    return bool(shapely.length(sheet.shallow.lines.shape[line]) > HELD * longest)


def _keep_one_a_run(run: Ints, lines: dict[tuple[int, ...], int]) -> list[int]:
    """Keeps the first line of each run."""
    first: dict[int, int] = {}
    for n in sorted(lines.values()):
        first.setdefault(int(run[n]), n)
    return list(first.values())


def _tell_unfreed(sheet: Sheet, line: int, left: float) -> Problem:
    """Makes the problem of a cut that leaves too much to part anything."""
    at: Floats = shapely.get_coordinates(sheet.shallow.lines.shape[line])[0]
    text = f"This cut leaves {left:.2f} mm and frees nothing."
    number = _find_line(sheet, int(sheet.shallow.lines.first[line]))
    return Problem(number, "uncut", text, at=(float(at[0]), float(at[1])))


def _check_idle_cuts(sheet: Sheet) -> list[Problem]:
    """Tells of cuts through the sheet that bound no part and no hole of one."""
    lines, faces = sheet.through, sheet.closed.faces
    if not len(lines) or not len(faces.kerfs):
        return []
    kerf = np.full(len(lines), -1)
    of, at = shapely.STRtree(faces.kerfs).query(lines.shape, predicate="intersects")
    kerf[of] = at
    holds = np.zeros(len(faces.kerfs), dtype=bool)
    real = np.flatnonzero(~faces.dust)
    holds[faces.around[real][faces.around[real] >= 0]] = True
    holds |= faces.home >= 0
    strips = bool((faces.around < 0).any())
    idle = [
        n
        for n in np.flatnonzero(shapely.length(lines.shape) > LONG_MM).tolist()
        if kerf[n] >= 0 and not holds[kerf[n]] and not strips
    ]
    if not idle:
        return []
    x, y = shapely.get_coordinates(lines.shape[idle[0]])[0].tolist()
    count, long = len(idle), float(shapely.length(lines.shape[idle]).sum())
    text = f"{count} cuts through the sheet, {long:.0f} mm, free nothing."
    number = _find_line(sheet, int(lines.first[idle[0]]))
    return [Problem(number, "frees-nothing", text, at=(x, y))]
