"""Outlines that stray from their way: by a lead to the wrong side, or in one of their passes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import shapely

from station.cutting.analyse.notes import note_cut
from station.cutting.geometry.kinds import PART
from station.cutting.geometry.sheet import Sheet
from station.cutting.geometry.strokes import CLOSE_MM, Shapes, find_cut_at
from station.cutting.model import LINE, LOOK, Bools, Ints, Problem
from station.shop.words import length, say

ON_MM = 0.05  # of an outline: what lies so near runs along it
LEAST_MM = 2.0  # into a piece: a lap that overlaps its start a little beside it is none
MOST_SHARE = 0.35  # of a way, that is no lap
MOST_LOOKED_AT, PLACES = 2000, 40  # lines; places along a run where it is looked


def find_stray_ends(sheet: Sheet) -> list[Problem]:
    """Finds outlines of parts whose first or last way lies in the part: a lead to the wrong side.
    A slot is cut for itself, or on the way around.
    """
    found = []
    for contour in _list_suspects(sheet)[:MOST_LOOKED_AT]:
        line = shapely.linestrings(sheet.contours.ways[contour])
        deep = _find_stray_end(line)
        if deep is None:
            continue
        place, long = deep
        text = say("A way into or out of this outline cuts {long} mm into its own piece.",
                   long=length(long, 1))  # fmt: skip
        found.append(note_cut(sheet.cuts, _find_cut(sheet, contour, place), "gouge", text))
    return found


def find_stray_passes(sheet: Sheet) -> list[Problem]:
    """Finds passes of outlines that leave them for a while: a point that was lost or mistyped, a
    lead to the wrong side. All else of such a run lies where it is cut through.
    """
    lines = sheet.shallow.lines
    some = _list_parts_of_runs(sheet)[:MOST_LOOKED_AT]
    if not len(some) or not len(sheet.closed.faces.kerfs):
        return []
    within = _find_within(sheet, some)
    found: dict[int, Problem] = {}
    for n in [*within, *_list_parted(sheet, some)]:
        run = int(lines.run[n])
        if run not in found and _lies_in_kerfs(sheet, run):
            found[run] = _tell_pass(sheet, n, within.get(n, 0.0))
    return list(found.values())


def _list_parts_of_runs(sheet: Sheet) -> Ints:
    """Lists the shallow lines of runs that go elsewhere for most of their way."""
    lines, cuts = sheet.shallow.lines, sheet.cuts
    long = shapely.length(lines.shape)
    shallow = np.bincount(lines.run, weights=long, minlength=len(cuts.run_low))
    way = np.bincount(cuts.run, weights=cuts.flat, minlength=len(cuts.run_low))
    return np.flatnonzero((long > LEAST_MM) & (shallow < MOST_SHARE * way)[lines.run])


def _find_within(sheet: Sheet, some: Ints) -> dict[int, float]:
    """Finds the lines among some that lie in a piece, and how far they go there, mm."""
    shape, faces = sheet.shallow.lines.shape[some], sheet.drawn[list(sheet.of_piece)]
    if not len(faces):
        return {}
    face, line = shapely.STRtree(shape).query(faces, predicate="intersects")
    within = shapely.length(shapely.intersection(faces[face], shape[line]))
    far = within > LEAST_MM
    return dict(zip(some[line[far]].tolist(), within[far].tolist(), strict=True))


def _list_parted(sheet: Sheet, some: Ints) -> list[int]:
    """Lists the lines among some that begin and end where their run cuts through, and lie beside
    that.
    """
    lines = sheet.shallow.lines
    some = some[np.isin(lines.run[some], sheet.through.run)]
    shares = np.array([0.0, 0.5, 1.0])
    places = shapely.line_interpolate_point(lines.shape[some][:, None], shares, normalized=True)
    start, middle, end = _pick_in_kerfs(sheet, places.ravel()).reshape(places.shape).T
    return [int(n) for n in some[start & end & ~middle]]


def _pick_in_kerfs(sheet: Sheet, places: Shapes) -> Bools:
    """Picks the places where the sheet is cut through in the end."""
    inside = np.zeros(len(places), dtype=bool)
    inside[shapely.STRtree(sheet.closed.faces.kerfs).query(places, "intersects")[0]] = True
    return inside


def _lies_in_kerfs(sheet: Sheet, run: int) -> bool:
    """Tells whether a run goes where the sheet is cut through in the end for most of its way."""
    cuts = sheet.cuts
    first, stop = np.searchsorted(cuts.run, (run, run + 1))
    way = np.cumsum(cuts.flat[first:stop])
    at = np.searchsorted(way, (np.arange(PLACES) + 0.5) / PLACES * way[-1])
    index = cuts.index[first:stop][at]
    middle = (cuts.moves.points[index] + cuts.moves.points[index + 1])[:, :2] / 2
    straight = cuts.moves.kind[index] == LINE
    places = np.where(straight[:, None], middle, cuts.moves.points[index + 1][:, :2])
    return bool(_pick_in_kerfs(sheet, shapely.points(places)).mean() > 1 - MOST_SHARE)


def _tell_pass(sheet: Sheet, n: int, within_mm: float) -> Problem:
    """Tells of a pass that leaves its outline, into a piece or not, at a shallow line of it; else
    at the cut through the sheet of the same run that goes beside it.
    """
    lines, through = sheet.shallow.lines, sheet.through
    if within_mm:
        text = say("A pass leaves its outline here, {long} mm into the piece.",
                   long=length(within_mm, 1))  # fmt: skip
        kerfs = sheet.closed.faces.kerfs
        near = kerfs[shapely.intersects(kerfs, lines.shape[n])]
        beyond = shapely.difference(lines.shape[n], shapely.union_all(near))
        leaves = shapely.points(shapely.get_coordinates(beyond)[0])
        at = find_cut_at(sheet.cuts, lines, n, leaves)
        return note_cut(sheet.cuts, at, "gouge", text)
    place = shapely.line_interpolate_point(lines.shape[n], 0.5, normalized=True)
    own = np.flatnonzero(through.run == lines.run[n])
    at = int(lines.first[n])
    if len(own):
        near = int(own[np.argmin(shapely.distance(through.shape[own], place))])
        at = find_cut_at(sheet.cuts, through, near, place)
    text = say("The passes of this outline do not go the same way here.")
    return replace(note_cut(sheet.cuts, at, "gouge", text), graded=LOOK)


def _list_suspects(sheet: Sheet) -> list[int]:
    """Lists the contours around a part that do not end where they began, an end among the part:
    within its hull, where most leads are not.
    """
    ways = sheet.contours.ways
    pairs = [
        (contour, face)
        for (contour, face), goes in sheet.around.items()
        if goes
        and sheet.kinds[face] == PART
        and len(ways[contour]) > 2
        and np.hypot(*(ways[contour][0] - ways[contour][-1])) > CLOSE_MM
    ]
    if not pairs:
        return []
    hulls = shapely.convex_hull(sheet.closed.faces.ring[[face for _, face in pairs]])
    shapely.prepare(hulls)
    ends = np.array([[ways[c][0], ways[c][-1]] for c, _ in pairs])
    inside = shapely.contains(hulls[:, None], shapely.points(ends)).any(axis=1)
    return sorted({pairs[n][0] for n in np.flatnonzero(inside).tolist()})


def _find_stray_end(line: shapely.Geometry) -> tuple[shapely.Geometry, float] | None:
    """Finds the end of a way that lies within its lap, and how far the way there is."""
    noded = shapely.unary_union(line)
    laps = shapely.get_parts(shapely.polygonize([noded]))
    if not len(laps):
        return None
    lap = laps[int(np.argmax(shapely.area(laps)))]
    edge = shapely.get_exterior_ring(lap)
    total = float(shapely.length(line))
    for at in (0, -1):
        end = shapely.get_point(line, at)
        if not shapely.contains(lap, end):
            continue
        # from the end to where the way first meets the lap
        way = line if at == 0 else shapely.reverse(line)
        points = shapely.get_coordinates(way)
        on = np.flatnonzero(shapely.distance(shapely.points(points), edge) < ON_MM)
        if not len(on):
            continue
        long = float(np.hypot(*np.diff(points[: on[0] + 1], axis=0).T).sum())
        if LEAST_MM < long < MOST_SHARE * total and shapely.distance(end, edge) > LEAST_MM:
            return end, long
    return None


def _find_cut(sheet: Sheet, contour: int, place: shapely.Geometry) -> int:
    """Finds the cut of a contour that passes nearest to a place."""
    of, cuts = sheet.contours.of_run, sheet.cuts
    own = np.flatnonzero([of[run] == contour for run in sheet.through.run.tolist()])
    if len(own):
        near = int(own[np.argmin(shapely.distance(sheet.through.shape[own], place))])
        return find_cut_at(cuts, sheet.through, near, place)
    some = np.flatnonzero([of.get(run) == contour for run in cuts.run.tolist()])  # a skin
    ends = cuts.moves.points[cuts.index[some] + 1][:, :2] - shapely.get_coordinates(place)
    return int(some[np.argmin(np.hypot(*ends.T))])
