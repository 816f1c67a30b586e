"""Pockets, grooves and engraving: where a piece is cut, but not through it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import shapely

from station.cutting.geometry.faces import widen_shapes
from station.cutting.geometry.rings import tidy_ring
from station.cutting.geometry.strokes import (
    LEVEL_MM,
    Cuts,
    Levels,
    Lines,
    Shapes,
    draw_lines,
    pick_among,
    pick_through,
)
from station.cutting.model import Bools, Floats, Hollow, Ints, Moves

MOST_MOVES, MOST_PASSES = 25_000, 8  # of what is cut less deep; more are not united
COARSE_CHORDS = 12
COARSE_MM = 0.01  # how far chords of their arcs may lie off
DEPTH_MM = 0.02  # depths that differ less are one
BEYOND_MM = 0.35  # a rough lap beside a fine one does not cut further beyond it
NARROW_MM = 0.1  # a hollow nowhere wider than that is none: it lies between two passes


@dataclass(frozen=True)
class ShallowCuts:
    """Holds what is cut less deep than through, as lines with their depth; `whole`: all of it."""

    lines: Lines
    depth: Ints  # in hundredths of a mm below the face
    whole: bool


@dataclass(frozen=True)
class Bores:
    """Holds holes that are drilled, not through: what the bit takes, with its depth."""

    shape: Shapes
    depth: Ints  # in steps of DEPTH_MM below the face


def find_bores(moves: Moves, drilled: Ints, radius: Floats, levels: Levels) -> Bores:
    """Finds what is drilled by moves down into the sheet; `radius`: of the bit in each."""
    deep = np.round((levels.face - moves.points[drilled + 1, 2]) / DEPTH_MM)
    place = np.column_stack((moves.points[drilled, :2].round(4), radius, deep))
    place = np.unique(place[radius > 0], axis=0)
    shape: Shapes = shapely.buffer(
        shapely.points(place[:, :2]), place[:, 2], quad_segs=COARSE_CHORDS
    )
    return Bores(shape, place[:, 3].astype(np.int64))


def find_shallow_cuts(
    cuts: Cuts, levels: Levels, kerfs: Shapes, ways: tuple[Shapes, Floats]
) -> ShallowCuts:
    """Finds what is cut into the sheet, not through it, nor where another cut goes through.

    `ways` are those of the bits that made `kerfs`, with the radius of each.
    """
    shallow = np.flatnonzero(~pick_through(cuts, levels))
    through = np.flatnonzero(pick_through(cuts, levels))
    if len(shallow) and len(through):
        taken = pick_among(cuts.ways[shallow], cuts.ways[through])
        shallow = shallow[~taken]
    whole = len(shallow) <= MOST_PASSES * MOST_MOVES
    if whole:
        shallow = _keep_deepest(cuts, shallow)
        whole = len(shallow) <= MOST_MOVES
    deep = levels.face - cuts.low
    deep /= DEPTH_MM
    level = np.round(deep, out=deep).astype(np.int64)
    lines = draw_lines(cuts, shallow if whole else shallow[:0], chord=COARSE_MM, by=level)
    if len(lines) and len(kerfs):
        inside, _ = shapely.STRtree(kerfs).query(lines.shape, predicate="within")
        keep = np.ones(len(lines), dtype=bool)
        keep[inside[~_pick_beyond(lines, inside, ways)]] = False
        lines = Lines(*(getattr(lines, name)[keep] for name in lines.__dataclass_fields__))
    return ShallowCuts(lines, level[lines.first], whole)


def _pick_beyond(lines: Lines, some: Ints, ways: tuple[Shapes, Floats]) -> Bools:
    """Picks of lines within cuts through the sheet those that cut beyond them all the same, as a
    rebate whose bit runs along an edge that is cut already.
    """
    shapes, radius = ways
    if not len(some) or not len(shapes):
        return np.zeros(len(some), dtype=bool)
    points = shapely.line_interpolate_point(
        lines.shape[some][:, None], np.array([0.25, 0.5, 0.75]), normalized=True
    )
    tree = shapely.STRtree(shapes)
    (_, line), away = tree.query_nearest(points.ravel(), return_distance=True, all_matches=False)
    reach = away - radius[line]
    beyond = reach.reshape(points.shape) + lines.radius[some][:, None]
    return np.asarray((beyond > BEYOND_MM).all(axis=1))


def _keep_deepest(cuts: Cuts, some: Ints) -> Ints:
    """Keeps of the cuts over one way, as of passes, those that no deeper one covers."""
    keys, level = cuts.ways[some], cuts.high[some] - cuts.low[some] < LEVEL_MM
    order = np.lexsort((np.where(level, cuts.low[some], np.inf), keys))
    new = np.append(True, np.diff(keys[order]) != 0)[: len(some)]
    deepest = cuts.high[some][order][new][np.cumsum(new) - 1]
    kept = np.ones(len(some), dtype=bool)
    kept[order] = new | (cuts.low[some][order] < deepest - LEVEL_MM)
    return some[kept]


def find_hollows(
    shallow: ShallowCuts, bores: Bores, faces: Mapping[int, shapely.Geometry]
) -> dict[int, list[Hollow]]:
    """Finds the hollows of each face, the deepest first; what is deeper is taken from the rest."""
    found: dict[int, list[Hollow]] = {}
    if not len(shallow.lines) + len(bores.shape) or not faces:
        return found
    names = list(faces)
    shapes = np.array([faces[name] for name in names], dtype=object)
    swept = widen_shapes(shallow.lines.shape, shallow.lines.radius, COARSE_CHORDS)
    swept = np.concatenate((swept, bores.shape))
    depth = np.concatenate((shallow.depth, bores.depth))
    face, line = shapely.STRtree(swept).query(shapes, predicate="intersects")
    order = np.argsort(face, kind="stable")
    face, line = face[order], line[order]
    for n in np.unique(face).tolist():
        some = line[np.searchsorted(face, n) : np.searchsorted(face, n, "right")]
        found[names[n]] = _sort_by_depth(shapes[n], swept[some], depth[some])
    return found


def _sort_by_depth(face: shapely.Geometry, swept: Shapes, depth: Ints) -> list[Hollow]:
    """Gives what is cut into a face at each depth, less what is deeper."""
    made: list[Hollow] = []
    deeper = None
    for level in np.unique(depth)[::-1].tolist():
        here = shapely.intersection(shapely.union_all(swept[depth == level]), face)
        rest = here if deeper is None else shapely.difference(here, deeper)
        deeper = here if deeper is None else shapely.union(deeper, here)
        for part in shapely.get_parts(rest):
            wide = shapely.get_type_id(part) == 3 and not shapely.is_empty(
                shapely.buffer(part, -NARROW_MM / 2)
            )
            if wide:
                made.append(_make_hollow(part, level * DEPTH_MM))
    return made


def _make_hollow(shape: shapely.Geometry, depth: float) -> Hollow:
    """Makes the hollow of a polygon."""
    rings = [tidy_ring(shapely.get_coordinates(r)[:-1]) for r in shapely.get_rings(shape)]
    return Hollow(round(depth, 3), rings[0], tuple(rings[1:]))
