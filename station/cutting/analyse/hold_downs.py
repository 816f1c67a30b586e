"""Where hold-downs may stand."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from station.cutting.geometry.moves import find_boxes
from station.cutting.geometry.rings import shift_values
from station.cutting.model import Analysis, Bools, Floats, Ints

GRID_MM = 10.0
BLOCK = 100_000  # moves that points are laid along at once


def find_hold_downs(
    analysis: Analysis, count: int, reach_mm: float, free: Bools | None = None
) -> list[tuple[float, float]]:
    """Finds up to `count` places (x, y on the sheet, mm) in waste, `reach_mm` from every cut.

    The first is where most room is; each next one as far from the others as can be. `free` are
    the cells of `find_free_cells`, where they are known.
    """
    free = find_free_cells(analysis, reach_mm) if free is None else free
    spots = np.argwhere(free) * GRID_MM + GRID_MM / 2
    if not len(spots) or count < 1:
        return []
    middle = np.array(analysis.sheet_mm) / 2
    chosen = [int(np.argmax(np.hypot(*(spots - middle).T)))]
    away = np.hypot(*(spots - spots[chosen[0]]).T)
    while len(chosen) < count and away.max() > 2 * reach_mm:
        chosen.append(int(np.argmax(away)))
        away = np.minimum(away, np.hypot(*(spots - spots[chosen[-1]]).T))
    return [(float(x), float(y)) for x, y in spots[chosen]]


def find_free_cells(analysis: Analysis, reach: float) -> Bools:
    """Finds cells of a grid over the sheet that lie in waste and that no low move comes near."""
    long, wide = (max(1, int(size / GRID_MM)) for size in analysis.sheet_mm)
    taken = np.zeros((long + 1, wide + 1), dtype=np.int64)
    bit = max((b.diameter_mm for b in analysis.bits), default=0.0) / 2
    for points in _sample_low_moves(analysis):
        _take_cells(taken, points - np.array(analysis.corner_mm), reach + bit)
    covered = taken.cumsum(axis=0).cumsum(axis=1)
    return np.asarray((covered[:long, :wide] == 0) & ~_find_piece_cells(analysis, long, wide))


def _take_cells(taken: Ints, points: Floats, span: float) -> None:
    """Adds a square around each point to what sums up to the cells that are taken."""
    most = [size - 1 for size in taken.shape]
    low = np.clip(np.floor((points - span) / GRID_MM).astype(int), 0, most)
    high = np.clip(np.ceil((points + span) / GRID_MM).astype(int), 0, most)
    for ends, sign in (((low[:, 0], low[:, 1]), 1), ((high[:, 0], high[:, 1]), 1),
                       ((low[:, 0], high[:, 1]), -1), ((high[:, 0], low[:, 1]), -1)):  # fmt: skip
        np.add.at(taken, ends, sign)


def _find_piece_cells(analysis: Analysis, long: int, wide: int) -> Bools:
    """Finds cells whose middle lies in a piece: a hold-down there would press on what is sold."""
    turns = np.zeros((long + 1, wide), dtype=np.int64)
    y = np.arange(wide) * GRID_MM + GRID_MM / 2
    for ring in (ring for piece in analysis.pieces for ring in (piece.outline, *piece.holes)):
        start = ring - np.array(analysis.corner_mm)
        end = shift_values(start)
        edge, row = np.nonzero((start[:, 1:] > y) != (end[:, 1:] > y))
        (x0, y0), (x1, y1) = start[edge].T, end[edge].T
        x = x0 + (y[row] - y0) * (x1 - x0) / (y1 - y0)
        cell = np.clip(np.ceil(x / GRID_MM - 0.5), 0, long).astype(int)
        np.add.at(turns, (cell, row), 1)
    return np.asarray(turns.cumsum(axis=0)[:long] % 2 == 1)


def _sample_low_moves(analysis: Analysis) -> Iterator[Floats]:
    """Lays points no further apart than the grid along moves that run low, block by block."""
    every = analysis.program.moves
    for first in range(0, len(every), BLOCK):
        moves = every.take_some(first, first + BLOCK)
        low, high = find_boxes(moves, np.arange(len(moves)))
        near = (low[:, 2] < analysis.face_z + 10.0) & moves.sure
        start, end = moves.points[:-1][near, :2], moves.points[1:][near, :2]
        step = end - start
        times = np.ceil(np.hypot(step[:, 0], step[:, 1]) / GRID_MM).astype(int) + 1
        index = np.repeat(np.arange(len(times)), times)
        part = (np.arange(len(index)) - np.repeat(np.cumsum(times) - times, times)) / times[index]
        yield start[index] + step[index] * part[:, None]
        yield end
        yield (low[near, :2] + high[near, :2]) / 2
