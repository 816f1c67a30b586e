"""Arcs that go the long way round, with G2 for G3: their neighbours meet them from behind."""

from __future__ import annotations

import numpy as np

from station.cutting.geometry.moves import Geometry
from station.cutting.model import CW, RAPID, XY, Complexes, Ints, Moves, Problem
from station.shop.words import say

LEAST_TURN, MOST_TURN = np.pi - 0.01, 2 * np.pi - 0.1  # radians: half a turn, and nearly a whole
BEHIND = -0.995  # cosine between the ways before and after where one turns right back
CUTS_MM = 0.01  # below the face, at least
PLACES = 2  # decimals of a mm: each pass comes to the same place


def find_turned_arcs(moves: Moves, geo: Geometry, face: float) -> list[Problem]:
    """Tells once a place of arcs of half a turn or more from whose ends both the neighbours turn
    right back: the other way round they would meet it smoothly.
    """
    turn = np.abs(moves.sweep)
    long = (moves.kind >= CW) & (turn > LEAST_TURN) & (turn < MOST_TURN) & (moves.plane == XY)
    arcs = np.flatnonzero(long & (geo.bottom < face - CUTS_MM))
    arcs = arcs[(arcs > 0) & (arcs < len(moves) - 1)]
    if not len(arcs):
        return []
    behind = np.ones(len(arcs), dtype=bool)
    for one, other in ((arcs - 1, arcs), (arcs, arcs + 1)):
        before, after = _find_way(moves, one, 1), _find_way(moves, other, 0)
        fed = (moves.kind[one] != RAPID) & (moves.kind[other] != RAPID)
        behind &= fed & ((before * np.conj(after)).real < BEHIND)
    places = moves.points[np.column_stack((arcs, arcs + 1)), :2].reshape(-1, 4).round(PLACES)
    _, once = np.unique(places[behind], axis=0, return_index=True)
    text = say("This arc goes the long way round: the cuts beside it meet it from behind. Is it "
               "G2 for G3, or G3 for G2?")  # fmt: skip
    return [
        Problem(int(moves.line[i]), "turned-arc", text, at=(x, y))
        for i in arcs[behind][np.sort(once)].tolist()
        for x, y in [moves.points[i, :2].tolist()]
    ]


def _find_way(moves: Moves, some: Ints, end: int) -> Complexes:
    """Finds which way moves go along the sheet at their start (0) or end (1); 0: none."""
    start, stop = (moves.points[some + k, 0] + 1j * moves.points[some + k, 1] for k in (0, 1))
    centre = moves.centre[some, 0] + 1j * moves.centre[some, 1]
    around = 1j * np.sign(moves.sweep[some]) * ((stop if end else start) - centre)
    bent = (moves.kind[some] >= CW) & (moves.plane[some] == XY)
    way = np.where(bent, around, stop - start)
    return np.asarray(way / np.maximum(np.abs(way), 1e-9))
