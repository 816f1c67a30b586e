"""Closed loops that a path cuts through the sheet, and where tabs interrupt them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from station.cutting.geometry.edge import measures
from station.cutting.geometry.moves import apart
from station.cutting.geometry.rings import (
    CHORD_MM,
    MOST_CHORDS,
    area_of,
    centroid_of,
    tidy,
)
from station.cutting.geometry.walk import BRIDGE, EDGE, Edges, walk
from station.cutting.model import RAPID, Bools, Floats, Ints, Moves, Ring

LEAST_MM2 = 0.05


@dataclass(frozen=True)
class Loop:
    """A closed path of the bit's centre, cut through for `through_mm` of its length."""

    edges: Edges
    ring: Ring  # counter-clockwise
    area: float
    length: float
    through_mm: float
    tool: int
    line: int
    forward: bool  # its edges run counter-clockwise
    others: tuple[Loop, ...] = ()  # further laps over the same loop


def find_loops(moves: Moves, flat: Floats, face: float, through_z: float) -> list[Loop]:
    """All closed loops with a cut-through part, each once."""
    chosen = _through_chains(moves, face, through_z)
    if not len(chosen):
        return []
    found = (_loop(moves, edges) for edges in _walked(moves, flat, chosen, through_z))
    return _each_once([loop for loop in found if loop is not None])


def _through_chains(moves: Moves, face: float, through_z: float) -> Ints:
    """Moves of every unbroken run of cuts in the sheet that goes through it somewhere."""
    z = moves.points[:, 2]
    inside = (moves.kind != RAPID) & (np.minimum(z[:-1], z[1:]) < face - 0.01)
    starts = inside & ~np.concatenate(([False], inside[:-1]))
    run = np.cumsum(starts)
    deep = inside & (np.maximum(z[:-1], z[1:]) <= through_z)
    deep_runs = np.zeros(int(run[-1]) + 1 if len(run) else 1, dtype=bool)
    deep_runs[run[deep]] = True
    return np.flatnonzero(inside & deep_runs[run])


def _walked(moves: Moves, flat: Floats, chosen: Ints, through_z: float) -> Iterator[Edges]:
    """The edges of each loop that the chosen moves close."""
    most = 2 * len(chosen) + 2  # each move, and a bridge before it
    stack, kept = np.empty(most, EDGE), np.empty(most, EDGE)
    px, py = np.empty(most), np.empty(most)
    chain, stops = np.empty(most, np.int64), np.empty(most, np.int64)
    heads = np.zeros(1 << most.bit_length(), np.int64)
    x, y, z = apart(moves.points)
    c0, c1 = apart(moves.centre)
    count = walk(chosen, x, y, z, moves.kind, moves.plane, c0, c1, moves.sweep, flat,
                    moves.tool, through_z, stack, px, py, chain, heads, kept, stops)  # fmt: skip
    begin = 0
    for stop in stops[:count].tolist():
        yield kept[begin:stop]
        begin = stop


def _loop(moves: Moves, edges: Edges) -> Loop | None:
    """A loop of its edges; None where it holds hardly anything."""
    drawn = ring_of(edges)
    ring = tidy(drawn)
    if len(ring) < 3 or area_of(ring) < LEAST_MM2:
        return None
    first = int(edges["move"][np.argmax(edges["move"] != BRIDGE)])
    cut = float(edges["length"][edges["through"] > 0].sum())
    line, tool = int(moves.line[first]), int(moves.tool[first])
    area, around = measures(ring)[:2]
    return Loop(edges, ring, area, around, cut, tool, line, area_of(drawn) > 0)


def ring_of(edges: Edges) -> Ring:
    """The corners of a loop, arcs as fine chords."""
    sweep = edges["sweep"]
    if not sweep.any():
        return np.column_stack((edges["x1"], edges["y1"]))
    spoke = edges["x0"] - edges["cx"] + 1j * (edges["y0"] - edges["cy"])
    reach = np.maximum(np.abs(spoke), CHORD_MM)
    widest = np.maximum(2 * np.arccos(np.maximum(1 - CHORD_MM / reach, 0.5)), 1e-6)
    chords = np.clip(np.ceil(np.abs(sweep) / widest / 4) * 4, 4, MOST_CHORDS)
    count = np.where(sweep == 0, 1, chords).astype(np.int64)
    edge = np.repeat(np.arange(len(edges)), count)
    step = np.arange(len(edge)) - np.repeat(np.cumsum(count) - count, count) + 1
    turned = spoke[edge] * np.exp(1j * sweep[edge] * step / count[edge])
    points = turned + edges["cx"][edge] + 1j * edges["cy"][edge]
    straight = sweep[edge] == 0
    points[straight] = (edges["x1"] + 1j * edges["y1"])[edge[straight]]
    return np.column_stack((points.real, points.imag))


def _each_once(loops: list[Loop]) -> list[Loop]:
    """Of laps over the same loop the one that is cut through most."""
    kept: list[Loop] = []
    places: dict[tuple[int, int], list[int]] = {}
    for loop in loops:
        x, y = centroid_of(loop.ring)
        cell = (round(x), round(y))
        near = [
            i
            for dx in (-1, 0, 1)
            for dy in (-1, 0, 1)
            for i in places.get((cell[0] + dx, cell[1] + dy), ())
        ]
        same = next((i for i in near if _same(kept[i], loop)), None)
        if same is None:
            places.setdefault(cell, []).append(len(kept))
            kept.append(loop)
        else:
            kept[same] = _deepest(kept[same], loop)
    return kept


def _deepest(one: Loop, other: Loop) -> Loop:
    best, rest = (other, one) if other.through_mm > one.through_mm else (one, other)
    laps = (*one.others, replace(rest, others=()))
    return replace(best, others=laps, line=min(one.line, other.line))


def _same(one: Loop, other: Loop) -> bool:
    return (
        abs(one.area - other.area) < 0.002 * one.area + 0.05
        and abs(one.length - other.length) < 0.002 * one.length + 0.02
        and bool(np.abs(one.ring.min(axis=0) - other.ring.min(axis=0)).max() < 0.05)
    )


def cut_moves(moves: Moves, flat: Floats, through_z: float) -> Bools:
    """Moves at feed that go through the sheet along their whole length."""
    z = moves.points[:, 2]
    deep = np.maximum(z[:-1], z[1:]) <= through_z
    return np.asarray((moves.kind != RAPID) & deep & (flat > 1e-9))
