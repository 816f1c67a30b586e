"""Ways into or out of an outline that begin or end within the piece that it goes around."""

from __future__ import annotations

import numpy as np
import shapely

from station.cutting.analyse.notes import note_cut
from station.cutting.geometry.kinds import PART
from station.cutting.geometry.sheet import Sheet
from station.cutting.geometry.strokes import CLOSE_MM, find_cut_at
from station.cutting.model import Problem
from station.shop.words import length, say

ON_MM = 0.05  # of an outline: what lies so near runs along it
LEAST_MM = 2.0  # into a piece: a lap that overlaps its start a little beside it is none
MOST_SHARE = 0.35  # of a way, that is no lap
MOST_LOOKED_AT = 2000


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
    """Finds the cut of a contour that passes nearest to a place; its first where it is a skin."""
    of, runs = sheet.contours.of_run, sheet.through.run.tolist()
    own = [n for n, run in enumerate(runs) if of[run] == contour]
    if not own:
        return sheet.contours.first[contour]
    near = own[int(np.argmin(shapely.distance(sheet.through.shape[own], place)))]
    return find_cut_at(sheet.cuts, sheet.through, near, place)
