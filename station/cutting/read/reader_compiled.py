"""Reads a whole cut file: plain lines compiled, odd ones by the slow reader."""

from __future__ import annotations

from typing import Any

import numba
import numpy as np
import numpy.typing as npt

from station.cutting.compiled import entry, inner
from station.cutting.model import (
    MOST_OF_A_KIND,
    Cancelled,
    Moves,
    Pause,
    Program,
    Progress,
    Setting,
)
from station.cutting.read.controller_compiled import (
    CHUNK,
    MOVES,
    NOTES,
    PAUSE_KINDS,
    PAUSES,
    RECORD,
    Record,
    Row,
    hand_over,
    record_of,
    sentence,
    take_back,
)
from station.cutting.read.controller_plain import Machine
from station.cutting.read.cycles_plain import BACK_BORE, MOST_REPEATS
from station.cutting.read.dialects import dialect_of
from station.cutting.read.execute_compiled import obey
from station.cutting.read.line_compiled import NEWLINE, RETURN, scan
from station.cutting.read.reader_plain import Taker, finish, look_up
from station.cutting.read.text import (
    LINE_LETTERS,
    LONGEST,
    MARK,
    messages,
    no_plain_text,
    quoted,
    stretched,
    too_long,
    units_of,
)

SHORT = 24  # after fewer plain lines than this, more than one line is read slowly
MOST_SLOW = 512
NAMES = {
    "kind": "kind", "plane": "planes", "sweep": "sweep", "feed": "rate", "minutes": "fixed",
    "tool": "bit", "rpm": "turns", "line": "lines", "sure": "sure", "exact": "exactly",
}  # fmt: skip
TYPES: dict[str, type[np.generic]] = {
    **dict.fromkeys(("kind", "plane"), np.uint8),
    **dict.fromkeys(("tool", "line"), np.int32),
    **dict.fromkeys(("sure", "exact"), np.bool_),
}
DONE, ODD, FULL = range(3)
MOVES_ROOM, PAUSES_ROOM, NOTES_ROOM = 8, MOST_REPEATS + 2, 8  # a line's; cycles' moves aside


def read_fast(
    data: bytes,
    setting: Setting,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """The program of a cut file's text; equal to what reading line by line gives."""
    units = units_of(data, setting)
    machine = Machine(dialect_of(setting.dialect), units.scale)
    reader = Reader(machine, data)
    while not reader.over:
        look_up(reader.start / max(1, len(data)), progress, cancelled)
        reader.chunk()
    if progress:
        progress(1.0)
    ended, row = machine.state.ended or reader.taker.marks > 0, reader.record[0]
    mentions = stretched(
        data, ended=ended, gaps=bool(row["gaps"]), long=int(row["long"]), high=bool(row["high"])
    )
    mentions += messages(data) if row["says"] else []
    moves, refused = reader.columns.moves(), reader.taker.refused
    return finish(machine, moves, reader.lines, units, refused, mentions)


class Reader:
    """A text on its way through the compiled reader, a chunk of whole lines at a time."""

    def __init__(self, machine: Machine, data: bytes) -> None:
        self.machine, self.taker, self.data = machine, Taker(machine), data
        self.record = record_of(machine)
        self.lines = data.count(b"\n") + 1
        if b"\r" in data:
            self.lines += data.count(b"\r") - data.count(b"\r\n")
        self.columns = Columns(self.lines)
        self.start = len(MARK) if data.startswith(MARK) else 0  # of the chunk
        self.slow = 1
        self.taker.refused = no_plain_text(data)
        self.over = bool(self.taker.refused)

    def chunk(self) -> None:
        """Reads the next whole lines."""
        size = self._size()
        row = self.record[0]
        row["text"][:size] = np.frombuffer(self.data, np.uint8, size, self.start)
        row["text"][size] = RETURN  # ends the last line of a file that has no end
        row["byte"] = 0
        while row["byte"] < size and not self.over:
            line = int(row["line"])
            run(self.record, size)
            self._fetch()
            if row["why"] == ODD:
                self._slowly(int(row["line"]) - line, size)
        self.start += int(row["byte"])
        self.over = self.over or self.start >= len(self.data)

    def _size(self) -> int:
        """Bytes up to the last line end in reach; without one, up to the end of the line."""
        start, far = self.start, self.start + CHUNK
        if far >= len(self.data):
            return len(self.data) - start
        found = max(self.data.rfind(b"\n", start, far), self.data.rfind(b"\r", start, far - 1))
        return found + 1 - start if found >= 0 else CHUNK

    def _fetch(self) -> None:
        """Takes moves, pauses and notes over from the record."""
        row, machine = self.record[0], self.machine
        before = self.columns.count
        self.columns.fetch(self.record)
        for move, kind, seconds, line in row["pause"][: row["pauses"]].tolist():
            name = PAUSE_KINDS[int(kind)]
            machine.path.pauses.append(Pause(before + int(move), name, seconds, int(line)))
        for line, byte, which, value, x, y in row["note"][: row["notes"]].tolist():
            kind, text = sentence(int(which), value)
            if machine.told.get(kind, 0) < MOST_OF_A_KIND:
                machine.line, machine.source = int(line), quoted(self._line(int(byte))[0])
                machine.state.at = [x, y, 0.0]
            machine.problem(kind, text)
        row["pauses"] = row["notes"] = 0
        self._count()

    def _count(self) -> None:
        """Ends the reading of a file with more moves than are taken."""
        self.machine.written = self.columns.count
        self.taker.refused = self.taker.refused or too_long(self.columns.count)
        self.over = bool(self.taker.refused)

    def _line(self, byte: int) -> tuple[str, int]:
        """The line at a byte of the chunk, and where the next begins."""
        start = self.start + byte
        end = self.data.find(b"\n", start)
        end = len(self.data) if end < 0 else end
        early = self.data.find(b"\r", start, end)
        end = end if early < 0 else early
        after = end + 2 if self.data[end : end + 2] == b"\r\n" else end + 1
        text = self.data[start : min(end, start + LONGEST + 1)].decode("latin-1")
        return text, after - self.start

    def _slowly(self, plain: int, size: int) -> None:
        """Reads an odd line, and some after it where few were plain before it."""
        row, machine = self.record[0], self.machine
        self.slow = 1 if plain >= SHORT else min(self.slow * 2, MOST_SLOW)
        take_back(machine, self.record)
        at, number = int(row["byte"]), int(row["line"])
        for _ in range(self.slow):
            text, at = self._line(at)
            self.over = self.taker.take(number, text)
            if len(text) > LINE_LETTERS and not row["long"]:
                row["long"] = number
            row["says"] |= "(" in text
            number += 1
            if self.over or at >= size:
                break
        row["byte"], row["line"] = at, number
        block = machine.close_block()
        if block is not None:
            self.columns.add(block)
        hand_over(machine, self.record)


class Columns:
    """Room for so many moves; each coordinate stands in one piece of memory."""

    def __init__(self, room: int) -> None:
        self.count, self.room = 0, max(room, 16)
        self._make()

    def _make(self) -> None:
        self.rest: dict[str, npt.NDArray[Any]] = {
            name: np.empty(self.room, TYPES.get(name, np.float64)) for name in NAMES
        }
        self.points = np.empty((3, self.room + 1))
        self.points[:, 0] = 0.0
        self.centre = np.empty((2, self.room))

    def _fit(self, more: int) -> None:
        if self.count + more <= self.room:
            return
        old = self.moves()
        self.room = max(self.room + self.room // 2, self.count + more)
        self._make()
        self.points[:, : self.count + 1] = old.points.T
        self.centre[:, : self.count] = old.centre.T
        for name, column in self.rest.items():
            column[: self.count] = getattr(old, name)

    def fetch(self, record: Record) -> None:
        """Adds the moves that the compiled reader has written into its record."""
        row = record[0]
        more = int(row["moves"])
        self._fit(more)
        a, b = self.count, self.count + more
        for axis, name in enumerate(("x", "y", "z")):
            self.points[axis, a + 1 : b + 1] = row[name][:more]
        for axis, name in enumerate(("c0", "c1")):
            self.centre[axis, a:b] = row[name][:more]
        for name, field in NAMES.items():
            self.rest[name][a:b] = row[field][:more]
        self.count, row["moves"] = b, 0

    def add(self, block: Moves) -> None:
        """Adds a block whose points are ends only."""
        more = len(block)
        self._fit(more)
        a, b = self.count, self.count + more
        self.points[:, a + 1 : b + 1] = block.points.T
        self.centre[:, a:b] = block.centre.T
        for name, column in self.rest.items():
            column[a:b] = getattr(block, name)
        self.count = b

    def moves(self) -> Moves:
        """The path so far, as views."""
        n = self.count
        rest = {name: column[:n] for name, column in self.rest.items()}
        return Moves(points=self.points[:, : n + 1].T, centre=self.centre[:, :n].T, **rest)


@inner
def _letters(s: Row, after: int) -> int:
    """How many letters the line at hand has, without what ends it."""
    while s.byte < after and s.text[after - 1] in (NEWLINE, RETURN):
        after -= 1
    return after - s.byte


@entry(numba.void(numba.from_dtype(RECORD)[::1], numba.int64))
def run(record: Record, stop: int) -> None:
    """Runs the lines in the record's text until byte `stop`, where one ends.

    ``why`` says whether a line is odd or a table full. Such a line is left as if never begun.
    """
    s: Row = record[0]
    s.why, s.need = DONE, 0
    while s.byte < stop:
        if (
            s.moves > MOVES - MOVES_ROOM
            or s.pauses > PAUSES - PAUSES_ROOM
            or s.notes > NOTES - NOTES_ROOM
        ):
            s.why = FULL
            return
        after = scan(s.byte, s)
        if s.odd or s.motion == BACK_BORE or after - s.byte > LONGEST:
            s.why = ODD
            return
        if after - s.byte > LINE_LETTERS and not s.long:
            s.long = s.line if _letters(s, after) > LINE_LETTERS else 0
        if s.worded and not (s.deleted and s.skip_deleted):
            paused, noted = s.pauses, s.notes
            obey(s)
            if s.need:
                s.why, s.pauses, s.notes = FULL, paused, noted
                return
        s.byte = after
        s.line += 1
