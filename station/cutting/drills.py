"""G81 in a stretch of plain lines: every hole at once."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import TYPE_CHECKING

import numpy as np

from station.cutting.model import LINE, RAPID, Floats, Ints, Moves

if TYPE_CHECKING:
    from station.cutting.modal import Run

DRILL = 81
Events = tuple[Ints, Floats]


@dataclass(frozen=True)
class Drills:
    """The holes of a run. `heights` are what its lines say of Z, in the file's units."""

    run: Run
    rows: Ints  # rows of the run that drill
    clear: Floats
    bottom: Floats
    heights: Events
    faults: Ints  # lines that are not plain
    sticky: dict[str, float]

    def too_low(self, start_z: Floats) -> Ints:
        """Lines that begin below their clear height; the slow reader takes them."""
        return self.run.rows[self.rows[start_z[self.rows] < self.clear]]

    def written(self, block: Moves, starts: Floats) -> Moves:
        """The block with each hole as the moves it stands for."""
        count = len(block)
        times = np.ones(count, dtype=np.int64)
        times[self.rows] = 4
        index = np.repeat(np.arange(count), times)
        step = np.arange(len(index)) - np.repeat(np.cumsum(times) - times, times)
        out = {f.name: getattr(block, f.name)[index] for f in fields(block)}
        hole = np.zeros(count, dtype=np.int64)
        hole[self.rows] = np.arange(len(self.rows))
        drilled = times[index] == 4
        which = hole[index]
        z = out["points"][:, 2]
        over = starts[index, 2]
        levels = (over, self.clear[which], self.bottom[which], z.copy())
        keep = np.ones(len(index), dtype=bool)
        across = (starts[index, :2] != out["points"][:, :2]).any(axis=1)
        for n, level in enumerate(levels):
            mine = drilled & (step == n)
            z[mine] = level[mine]
            moved = across if n == 0 else level != levels[n - 1]
            keep &= ~mine | moved
            out["kind"][mine] = LINE if n == 2 else RAPID
            out["feed"][mine] = out["feed"][mine] if n == 2 else 0.0
        return Moves(**{name: column[keep] for name, column in out.items()})


def drills(run: Run) -> Drills:
    """Works out the holes of a run."""
    state = run.state
    drilling = run.motion == DRILL
    before = state.motion == DRILL
    begins = drilling & ~np.concatenate(([before], drilling[:-1]))
    began = np.maximum.accumulate(np.where(begins, np.arange(run.count), -1))
    rows = np.flatnonzero(run.kind == DRILL)
    lines = run.rows[rows]
    r_line, r = _sticky(run, "R", drilling)
    z_line, z = _sticky(run, "Z", drilling)
    offset = state.offset(2)
    clear, bottom = r[lines] * state.scale + offset, z[lines] * state.scale + offset
    wrong = (r_line[lines] < began[lines]) | (z_line[lines] < began[lines])
    wrong |= np.isnan(clear) | np.isnan(bottom) | (clear < bottom) | (run.feed[lines] <= 0)
    sticky = {"G": float(DRILL), "R": float(r[-1] * state.scale), "Z": float(z[-1] * state.scale)}
    near = run.back_to[lines] == 99
    return Drills(run, rows, clear, bottom, _heights(run, drilling, lines[near], r[lines[near]]),
                  lines[wrong], sticky)  # fmt: skip


def _sticky(run: Run, letter: str, drilling: np.ndarray) -> tuple[Ints, Floats]:
    """By line: where the cycle's word was last said (-1: before the run), and its value."""
    lines, values = run.words[letter]
    mine = drilling[lines]
    lines, values = lines[mine], values[mine]
    held = run.state.sticky.get(letter)
    known = run.state.motion == DRILL and held is not None
    said = np.full(run.count, -2 if not known else -1, dtype=np.int64)
    said[lines] = lines
    by_line = np.full(run.count, np.nan)
    by_line[lines] = values
    said = np.maximum.accumulate(said)
    start = np.nan if held is None else held / run.state.scale
    return said, np.where(said >= 0, by_line[np.maximum(said, 0)], start)


def _heights(run: Run, drilling: np.ndarray, near: Ints, clear: Floats) -> Events:
    """Z words of plain moves, and R where a hole is left at R, in the order of lines."""
    lines, values = run.words["Z"]
    plain = ~drilling[lines]
    lines = np.concatenate((lines[plain], near))
    values = np.concatenate((values[plain], clear))
    order = np.argsort(lines, kind="stable")
    return lines[order], values[order]
