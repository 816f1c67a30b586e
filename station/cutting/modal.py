"""Runs a stretch of plain lines at once: modes and positions carried forward in columns.

A line is plain when it holds only moves, feeds, speeds and words that change nothing.
Every other line, and every line on which something is out of order, is left to the slow
reader, which goes on from the same state.
"""

from __future__ import annotations

import numpy as np

from station.cutting.bends import Bends, bends
from station.cutting.drills import Drills, drills
from station.cutting.machine import Machine, State
from station.cutting.model import LINE, RAPID, XY, Bools, Floats, Ints, Moves
from station.cutting.slow import SYSTEMS
from station.cutting.words import Words

NONE = 80  # no motion mode
DRILL = 81
MOTIONS = (0, 1, 2, 3, 80, 81)
RETURNS = (98, 99)
QUIET_M = (7, 8, 9, 48, 49)
PLAIN_LETTERS = frozenset("NGMXYZIJRFS")
NO_LINES: Ints = np.zeros(0, dtype=np.int64)
NO_VALUES: Floats = np.zeros(0)

Events = tuple[Ints, Floats]


class Stretch:
    """A block's words by letter, each in the order of its lines."""

    def __init__(self, words: Words, first: int) -> None:
        self.words, self.first, self.count = words, first, words.count
        self.events: dict[str, Events] = {}
        for letter in np.flatnonzero(np.bincount(words.letter, minlength=1)).tolist():
            mine = np.flatnonzero(words.letter == letter)
            self.events[chr(letter)] = (words.line[mine], words.value[mine])
        self.hard = self._hard()
        self.codes = self._codes()

    def _hard(self) -> Bools:
        """Lines that are never plain, whatever the state."""
        hard = self.words.odd.copy()
        for letter, (lines, values) in self.events.items():
            if letter not in PLAIN_LETTERS:
                hard[lines] = True
            elif letter == "M":
                hard[lines[~np.isin(values, QUIET_M)]] = True
            elif letter != "G":
                hard[lines[1:][lines[1:] == lines[:-1]]] = True
            if letter in {"F", "S"}:
                hard[lines[values < 0]] = True
        return hard

    def _codes(self) -> Ints:
        """The G codes times ten; those that are no such number make their line hard."""
        lines, values = self.events.get("G", (NO_LINES, NO_VALUES))
        tenths = np.rint(values * 10)
        wrong = (np.abs(values * 10 - tenths) > 1e-9) | (tenths < 0) | (tenths > 999)
        self.hard[lines[wrong]] = True
        for some in (MOTIONS, RETURNS):
            mine = lines[np.isin(tenths, np.array(some) * 10)]
            self.hard[mine[1:][mine[1:] == mine[:-1]]] = True
        return np.clip(tenths, 0, 999).astype(np.int64)

    def part(self, letter: str, start: int, stop: int) -> Events:
        """A letter's words on lines `start` to before `stop`, lines counted from `start`."""
        lines, values = self.events.get(letter, (NO_LINES, NO_VALUES))
        a, b = np.searchsorted(lines, (start, stop))
        return lines[a:b] - start, values[a:b]


def quiet_codes(state: State) -> Bools:
    """G codes, times ten, that a plain line may hold: motions, and those that change nothing."""
    allowed = np.zeros(1000, dtype=bool)
    codes = [*MOTIONS, *RETURNS, 17, 94, 49, state.side]
    codes += [90 if state.absolute else 91, 21 if state.scale == 1.0 else 20]
    codes.append(61 if state.exact else 64)
    allowed[[round(code * 10) for code in (*codes, SYSTEMS[state.system - 1])]] = True
    return allowed


def run_plain(machine: Machine, stretch: Stretch, start: int) -> int:
    """Runs the plain lines from `start` on; the first line that was not run."""
    state = machine.state
    if state.plane != XY or state.inverse or state.motion not in {None, *MOTIONS}:
        return start
    hard = stretch.hard[start:]
    g_lines = stretch.events.get("G", (NO_LINES, NO_VALUES))[0]
    a = int(np.searchsorted(g_lines, start))
    loud = g_lines[a:][~quiet_codes(state)[stretch.codes[a:]]]
    stop = start + (int(np.argmax(hard)) if hard.any() else len(hard))
    if len(loud):
        stop = min(stop, int(loud[0]))
    while stop > start:
        run = Run(machine, stretch, start, stop)
        if run.fault is None:
            run.write()
            return stop
        stop = start + run.fault
    return start


def fill(events: Events, before: float, count: int) -> Floats:
    """A value by line, carried forward from where it is set."""
    lines, values = events
    if not len(lines):
        return np.full(count, before)
    steps = np.diff(np.concatenate(([0], lines, [count])))
    return np.repeat(np.concatenate(([before], values)), steps)


class Run:
    """Plain lines worked out. `fault` is the first line that is not plain after all."""

    def __init__(self, machine: Machine, stretch: Stretch, start: int, stop: int) -> None:
        self.machine, self.state = machine, machine.state
        self.first = stretch.first + start
        self.count = stop - start
        self.fault: int | None = None
        self.words = {c: stretch.part(c, start, stop) for c in "XYZIJRFS"}
        self._modes(stretch, start, stop)
        self._rows()
        if self.fault is None:
            self._work()

    def _modes(self, stretch: Stretch, start: int, stop: int) -> None:
        g_lines = stretch.events.get("G", (NO_LINES, NO_VALUES))[0]
        a, b = np.searchsorted(g_lines, (start, stop))
        lines, codes = g_lines[a:b] - start, stretch.codes[a:b] // 10
        back = codes >= 98
        self.back = (lines[back], codes[back].astype(float))
        moving = (codes <= 3) | (codes == NONE) | (codes == DRILL)
        self.said = (lines[moving], codes[moving].astype(float))
        motion = NONE if self.state.motion is None else self.state.motion
        self.motion = fill(self.said, float(motion), self.count).astype(np.uint8)

    def _rows(self) -> None:
        """Which lines move, and whether each may."""
        moves = np.zeros(self.count, dtype=bool)
        for letter in "XYZ":
            moves[self.words[letter][0]] = True
        drilling = self.motion == DRILL
        if drilling.any():
            explicit = self.said[0][self.said[1] == DRILL]
            self._blame(explicit[~moves[explicit]])
            if not self.state.absolute or self.state.side != 40 or self.machine.careful:
                self._blame(np.flatnonzero(drilling & moves))
        for letter in "IJ":
            lines = self.words[letter][0]
            bent = self.motion[lines]
            moves[lines[(bent == 2) | (bent == 3)]] = True
        self.rows = np.flatnonzero(moves)
        self.kind = self.motion[self.rows]
        self._blame(self.rows[self.kind == NONE])

    def _blame(self, lines: Ints) -> None:
        if len(lines):
            first = int(lines.min())
            self.fault = first if self.fault is None else min(self.fault, first)

    def _work(self) -> None:
        state, rows = self.state, self.rows
        self.feed = fill(self._scaled("F"), state.feed, self.count)
        self.rpm = fill(self.words["S"], state.rpm, self.count)
        self.back_to = fill(self.back, float(state.back_to), self.count)
        z_words = self.words["Z"]
        self.drill: Drills | None = None
        if (self.motion == DRILL).any():
            self.drill = drills(self)
            self._blame(self.drill.faults)
            z_words = self.drill.heights
        ends = [
            self._axis(0, self.words["X"]),
            self._axis(1, self.words["Y"]),
            self._axis(2, z_words),
        ]
        self.ends = np.stack([end[rows] for end in ends], axis=1)
        self.starts = np.concatenate(([state.at], self.ends[:-1])) if len(rows) else self.ends
        if self.drill is not None:
            self._blame(self.drill.too_low(self.starts[:, 2]))
        self.bends: Bends | None = None
        arcs = np.flatnonzero((self.kind == 2) | (self.kind == 3))
        if len(arcs):
            self.bends = bends(self, arcs)
            self._blame(rows[arcs[self.bends.faulty]])

    def _scaled(self, letter: str) -> Events:
        lines, values = self.words[letter]
        return lines, values if self.state.scale == 1.0 else values * self.state.scale

    def _axis(self, axis: int, words: Events) -> Floats:
        """Positions by line along one axis."""
        lines, values = words
        if self.state.scale != 1.0:
            values = values * self.state.scale
        here = self.state.at[axis]
        if self.state.absolute:
            offset = self.state.offset(axis)
            values = values + offset if offset else values
        else:
            values = np.cumsum(np.concatenate(([here], values)))[1:]
        return fill((lines, values), here, self.count)

    def write(self) -> None:
        """Puts the moves into the machine and brings its state up to the last line."""
        if len(self.rows):
            self._tell()
            self.machine.close_block()
            self.machine.add_block(self._block())
        self._carry_on()

    def _tell(self) -> None:
        rows, machine = self.rows, self.machine
        unfed = np.flatnonzero((self.kind != RAPID) & (self.feed[rows] <= 0))
        for row in unfed[:1000].tolist():
            self._problem(row, "no-feed", "This move has no feed.")
        machine.told["no-feed"] = machine.told.get("no-feed", 0) + max(0, len(unfed) - 1000)
        if self.bends is not None:
            for row, text in self.bends.remarks:
                self._problem(row, "arc-radii", text)

    def _problem(self, row: int, kind: str, text: str) -> None:
        machine = self.machine
        machine.line = self.first + int(self.rows[row])
        machine.source = machine.source_of(machine.line)
        machine.state.at = [float(v) for v in self.starts[row]]
        machine.problem(kind, text)

    def _block(self) -> Moves:
        rows, count, state = self.rows, len(self.rows), self.state
        centre, sweep = np.zeros((count, 2)), np.zeros(count)
        if self.bends is not None:
            centre[self.bends.rows], sweep[self.bends.rows] = self.bends.centre, self.bends.sweep
        feed = np.where(self.kind == RAPID, 0.0, self.feed[rows])
        block = Moves(
            points=self.ends,
            kind=self.kind,
            plane=np.full(count, XY, dtype=np.uint8),
            centre=centre,
            sweep=sweep,
            feed=feed,
            minutes=np.full(count, np.nan),
            tool=np.full(count, state.tool),
            rpm=self.rpm[rows] if state.turning else np.zeros(count),
            line=rows + self.first,
            sure=self._sure(),
            exact=np.full(count, state.exact),
        )
        if self.drill is None or not len(self.drill.rows):
            return block
        return self.drill.written(block, self.starts)

    def _sure(self) -> Bools:
        since = 0
        for axis, unsure in enumerate(self.state.unsure):
            if unsure:
                lines = self._known_lines(axis)
                since = max(since, int(lines[0]) if len(lines) else self.count)
        return np.asarray(self.rows >= since)

    def _known_lines(self, axis: int) -> Ints:
        """Lines after which a place along an axis is known again."""
        if not self.state.absolute:
            return NO_LINES
        lines = self.words["XYZ"[axis]][0]
        if axis == 2 and self.drill is not None:
            return np.union1d(lines, self.rows[self.kind == DRILL])
        return lines

    def _carry_on(self) -> None:
        state = self.state
        state.unsure = [
            unsure and not len(self._known_lines(axis)) for axis, unsure in enumerate(state.unsure)
        ]
        if len(self.rows):
            state.at = [float(v) for v in self.ends[-1]]
        if len(self.words["F"][0]):
            state.feed = float(self._scaled("F")[1][-1])
        if len(self.words["S"][0]):
            state.rpm = max(0.0, float(self.words["S"][1][-1]))
        if len(self.back[0]):
            state.back_to = int(self.back[1][-1])
        if len(self.said[0]):
            last = int(self.said[1][-1])
            state.motion = None if last == NONE else last
            if last != DRILL:
                state.sticky, state.series = {}, None
        if state.motion == DRILL and self.drill is not None:
            state.sticky = self.drill.sticky
        self.machine.now_feed = state.feed


__all__ = ["LINE", "Run", "Stretch", "run_plain"]
