"""What a controller does under G41 and G42: it moves the path sideways by the bit's radius.

It rolls around outer corners and turns where the moved ways cross at inner ones. The first move
leads to the side of the next, the first one after G40 back (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, fields, replace

import numpy as np

from station.cutting.model import CCW, CW, LINE, RAPID, XY, Moves, Program

FLAT_MM = 1e-9  # a move that goes no further stays where it is along the sheet
SMOOTH = 1e-6  # sine of a corner that is none
LEFT, OFF = 41, 40


@dataclass(frozen=True)
class Way:
    """Holds the way of a move along the sheet as complex numbers, mm; no sweep: it is straight."""

    move: int
    start: complex
    end: complex
    centre: complex = 0j
    sweep: float = 0.0

    def find_heading(self, place: complex) -> complex:
        """Finds which way it goes at a place on it, as a unit."""
        along = self.end - self.start
        way = 1j * np.sign(self.sweep) * (place - self.centre) if self.sweep else along
        return complex(way / abs(way))

    def move_aside(self, left: float) -> Way | None:
        """Gives the way so far to its left; None: it turns about less than that."""
        if self.sweep and np.sign(self.sweep) * left >= abs(self.start - self.centre) - FLAT_MM:
            return None
        start, end = (p + 1j * left * self.find_heading(p) for p in (self.start, self.end))
        return replace(self, start=start, end=end)

    def measure_turn(self, start: complex, end: complex) -> float:
        """Measures how far it turns between two places on it, about as far as it did."""
        if not self.sweep:
            return 0.0
        turn = float(np.angle((end - self.centre) / (start - self.centre)))
        return turn + 2 * np.pi * round((self.sweep - turn) / (2 * np.pi))


@dataclass
class ShiftedPath:
    """Holds what is changed of a path: by move where it ends, and how far it turns there; and ways
    to be put in before moves.
    """

    ends: dict[int, complex] = field(default_factory=dict)
    turns: dict[int, float] = field(default_factory=dict)
    before: dict[int, Way] = field(default_factory=dict)


def compensate(program: Program, bit_mm: Mapping[int, float]) -> Program:
    """Moves a program's path sideways where G41 and G42 say so; `bit_mm`: diameters by number."""
    moves = program.moves
    if not program.sides or not len(moves):
        return program
    shifted = ShiftedPath()
    stops = [*(side.move for side in program.sides[1:]), len(moves)]
    for side, stop in zip(program.sides, stops, strict=True):
        if side.side != OFF and side.move < stop:
            radius = bit_mm.get(int(moves.tool[side.move]), 0.0) / 2
            radius = side.radius_mm if side.radius_mm is not None else radius
            ways = _list_ways(moves, side.move, stop)
            _shift(ways, radius if side.side == LEFT else -radius, moves, shifted)
            _keep_aside(moves, side.move, stop, shifted)
    return _put_together(program, shifted)


def _list_ways(moves: Moves, first: int, stop: int) -> list[Way]:
    """Lists the ways of moves that go along the sheet."""
    place = moves.points[first : stop + 1, 0] + 1j * moves.points[first : stop + 1, 1]
    ways = []
    for n in range(stop - first):
        i = first + n
        bent = moves.kind[i] >= CW and moves.plane[i] == XY
        if bent:
            centre = complex(*moves.centre[i].tolist())
            ways.append(Way(i, complex(place[n]), complex(place[n + 1]), centre,
                            float(moves.sweep[i])))  # fmt: skip
        elif abs(place[n + 1] - place[n]) > FLAT_MM:
            ways.append(Way(i, complex(place[n]), complex(place[n + 1])))
    return ways


def _shift(ways: Sequence[Way], left: float, moves: Moves, shifted: ShiftedPath) -> None:
    """Moves all ways but the first aside; that one leads to the second."""
    aside = [(way, moved) for way in ways[1:] if (moved := way.move_aside(left)) is not None]
    if ways:
        into = aside[0][1].start if aside else ways[0].end
        shifted.ends[ways[0].move], shifted.turns[ways[0].move] = into, 0.0
    start = aside[0][1].start if aside else 0j
    for n, (way, moved) in enumerate(aside):
        end, after = moved.end, moved.end
        if n + 1 < len(aside):
            end, after = _turn_corner((way, moved), aside[n + 1], left, moves, shifted)
        shifted.ends[way.move] = end
        shifted.turns[way.move] = moved.measure_turn(start, end)
        start = after


def _turn_corner(
    one: tuple[Way, Way], other: tuple[Way, Way], left: float, moves: Moves, shifted: ShiftedPath
) -> tuple[complex, complex]:
    """Finds where the way before a corner ends and the one after begins."""
    corner, (before, after) = one[0].end, (one[1], other[1])
    way, on = one[0].find_heading(corner), other[0].find_heading(other[0].start)
    turn = float(np.angle(on / way))
    if abs(np.sin(turn)) < SMOOTH and np.cos(turn) > 0:
        return before.end, before.end
    if np.sin(turn) * left > SMOOTH:
        places = _find_crossings(before, after)
        if places:
            place = min(places, key=lambda p: abs(p - corner))
            return place, place
        roll = Way(after.move, before.end, after.start)
    else:
        roll = Way(after.move, before.end, after.start, corner, turn)
    if moves.kind[after.move] == RAPID:
        return before.end, before.end
    shifted.before[after.move] = roll
    return before.end, after.start


def _find_crossings(one: Way, other: Way) -> list[complex]:
    """Finds where two ways cross, or would where they go on."""
    if one.sweep and other.sweep:
        away = other.centre - one.centre
        far, r, s = abs(away), abs(one.start - one.centre), abs(other.start - other.centre)
        share = (r * r - s * s + far * far) / (2 * far) if far else np.inf
        half = r * r - share * share
        middle, along = one.centre + share * away / (far or 1), 1j * away / (far or 1)
    elif one.sweep or other.sweep:
        line, arc = (other, one) if one.sweep else (one, other)
        along = line.find_heading(line.start)
        middle = line.start + along * ((arc.centre - line.start) * np.conj(along)).real
        half = abs(arc.start - arc.centre) ** 2 - abs(middle - arc.centre) ** 2
    else:
        u, v = one.find_heading(one.start), other.find_heading(other.start)
        cross = (np.conj(u) * v).imag
        ahead = (np.conj(other.start - one.start) * v).imag / cross if cross else np.inf
        return [one.start + ahead * u] if np.isfinite(ahead) else []
    if not 0 <= half < np.inf:
        return []
    return [complex(middle + way * along * np.sqrt(half)) for way in (1, -1)]


def _keep_aside(moves: Moves, first: int, stop: int, shifted: ShiftedPath) -> None:
    """Keeps moves that go up and down where the one before ended, until the way back."""
    place: complex | None = None
    for i in range(first, len(moves)):
        step = moves.points[i + 1, :2] - moves.points[i, :2]
        stays = moves.kind[i] <= LINE and float(np.hypot(*step)) <= FLAT_MM
        if i >= stop and not stays:
            if moves.kind[i] > LINE:  # its way back is straight
                shifted.turns[i], shifted.ends[i] = 0.0, complex(*moves.points[i + 1, :2])
            break
        if i in shifted.ends:
            place = shifted.ends[i]
        elif place is not None:
            shifted.ends[i] = place


def _put_together(program: Program, shifted: ShiftedPath) -> Program:
    """Makes the program of the shifted path."""
    moves, at = program.moves, np.array(sorted(shifted.before), dtype=np.int64)
    source = np.insert(np.arange(len(moves)), at, at)
    new = at + np.arange(len(at))
    own = np.setdiff1d(np.arange(len(source)), new)
    columns = {f.name: getattr(moves, f.name)[source] for f in fields(moves) if f.name != "points"}
    ends = moves.points[1:][source].copy()
    for i, end in shifted.ends.items():
        ends[own[i], :2] = end.real, end.imag
    for i, turn in shifted.turns.items():
        columns["sweep"][own[i]] = turn
        if not turn and columns["kind"][own[i]] >= CW:
            columns["kind"][own[i]] = LINE
    for n, i in zip(new.tolist(), at.tolist(), strict=True):
        way = shifted.before[i]
        ends[n] = way.end.real, way.end.imag, moves.points[i, 2]
        kind = (CCW if way.sweep > 0 else CW) if way.sweep else LINE
        columns["kind"][n], columns["plane"][n] = kind, XY
        columns["centre"][n] = way.centre.real, way.centre.imag
        columns["sweep"][n], columns["minutes"][n] = way.sweep, np.nan
    points = np.concatenate((moves.points[:1], ends))
    pauses = tuple(
        replace(p, move=p.move + int(np.searchsorted(at, p.move))) for p in program.pauses
    )
    return replace(program, moves=Moves(points=points, **columns), pauses=pauses, sides=())
