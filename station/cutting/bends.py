"""Arcs of a stretch of plain lines, all at once: centres, turns, radii that disagree."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from station.cutting.machine import FULL, REPORT_INCH, REPORT_MM, radii_differ
from station.cutting.model import CCW, CW, Bools, Floats, Ints

if TYPE_CHECKING:
    from station.cutting.modal import Run

MOST = 1000


@dataclass(frozen=True)
class Bends:
    """Arcs by row of their run. `faulty` ones are left to the slow reader."""

    rows: Ints
    centre: Floats
    sweep: Floats
    faulty: Bools
    remarks: tuple[tuple[int, str], ...]


def bends(run: Run, arcs: Ints) -> Bends:
    """Works out the arcs at rows `arcs` of a run."""
    lines = run.rows[arcs]
    first, given_i = _by_line(run, "I", lines)
    second, given_j = _by_line(run, "J", lines)
    radius, given_r = _by_line(run, "R", lines)
    start, end = run.starts[arcs, :2], run.ends[arcs, :2]
    chord = np.hypot(*(end - start).T)
    centre = start + np.column_stack((first, second))
    faulty = ~(given_i | given_j | given_r) | (given_r & ((chord <= 1e-9) | (radius == 0)))
    remarks: list[tuple[int, str]] = []
    by_radius = np.flatnonzero(given_r & ~faulty)
    if len(by_radius):
        centre[by_radius], apart = _centres(
            run.kind[arcs[by_radius]], start[by_radius], end[by_radius], radius[by_radius]
        )
        for i in np.flatnonzero(apart > REPORT_MM)[:MOST].tolist():
            text = f"The arc's ends lie {apart[i]:.4f} mm further apart than its radius reaches."
            remarks.append((int(arcs[by_radius[i]]), text))
    first_r, last_r = np.hypot(*(start - centre).T), np.hypot(*(end - centre).T)
    faulty |= ~given_r & (np.minimum(first_r, last_r) <= FULL)
    off = np.abs(first_r - last_r)
    allowed = (REPORT_MM if run.state.scale == 1.0 else REPORT_INCH) + 1e-9
    apart_ones = np.flatnonzero((off > allowed) & ~given_r)[:MOST].tolist()
    remarks += [(int(arcs[i]), radii_differ(float(off[i]))) for i in apart_ones]
    sweep = _sweeps(run.kind[arcs], start - centre, end - centre, chord)
    return Bends(arcs, centre, sweep, faulty, tuple(sorted(remarks)))


def _by_line(run: Run, letter: str, lines: Ints) -> tuple[Floats, Bools]:
    """A letter's values on given lines (0 where there is none), in mm, and where it stands."""
    where, values = run.words[letter]
    by_line, given = np.zeros(run.count), np.zeros(run.count, dtype=bool)
    by_line[where] = values * run.state.scale
    given[where] = True
    return by_line[lines], given[lines]


def _centres(kind: np.ndarray, start: Floats, end: Floats, radius: Floats
             ) -> tuple[Floats, Floats]:  # fmt: skip
    """Centres for radius words, and by how much the ends lie too far apart."""
    step = end - start
    chord = np.hypot(step[:, 0], step[:, 1])
    height = np.sqrt(np.maximum(0.0, radius * radius - chord * chord / 4))
    sign = np.where((kind == CCW) == (radius > 0), 1.0, -1.0)
    across = np.column_stack((-step[:, 1], step[:, 0])) * (sign * height / chord)[:, None]
    return (start + end) / 2 + across, np.maximum(0.0, chord - 2 * np.abs(radius))


def _sweeps(kind: np.ndarray, spoke: Floats, other: Floats, chord: Floats) -> Floats:
    first = np.arctan2(spoke[:, 1], spoke[:, 0])
    last = np.arctan2(other[:, 1], other[:, 0])
    sweep = np.mod(last - first, 2 * np.pi)
    clockwise, whole = kind == CW, chord <= FULL
    sweep = np.where(clockwise & (sweep > 0), sweep - 2 * np.pi, sweep)
    return np.where(whole, np.where(clockwise, -2 * np.pi, 2 * np.pi), sweep)
