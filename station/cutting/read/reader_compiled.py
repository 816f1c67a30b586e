"""Reads a whole cut file: plain lines compiled, odd ones by the twin, `reader_plain.py`."""

from __future__ import annotations

from typing import Any

import numba
import numpy as np
import numpy.typing as npt

from station.cutting.compiled import compile_entry, compile_inner
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
    RecordRow,
    make_record,
    read_modes,
    tell_note,
    write_modes,
)
from station.cutting.read.controller_plain import Controller
from station.cutting.read.cycles_plain import BACK_BORE, MOST_REPEATS
from station.cutting.read.dialects import find_dialect
from station.cutting.read.execute_compiled import execute_line
from station.cutting.read.line_compiled import NEWLINE, RETURN, scan_line
from station.cutting.read.reader_plain import LineTaker, make_program, report_progress
from station.cutting.read.text import (
    LINE_LETTERS,
    LONGEST,
    MARK,
    find_messages,
    find_units,
    list_deviations,
    quote_line,
    refuse_length,
    refuse_no_text,
)

SHORT = 24  # after fewer plain lines than this, more than one line is read by the twin
MOST_ODD = 512
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


def read_compiled(
    data: bytes,
    setting: Setting,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Program:
    """Reads the program of a cut file's text; equal to what reading line by line gives."""
    units = find_units(data, setting)
    controller = Controller(find_dialect(setting.dialect), units.scale)
    reader = ChunkReader(controller, data)
    while not reader.over:
        report_progress(reader.start / max(1, len(data)), progress, cancelled)
        reader.read_chunk()
    if progress:
        progress(1.0)
    ended, row = controller.state.ended or reader.taker.marks > 0, reader.record[0]
    mentions = list_deviations(
        data, ended=ended, gaps=bool(row["gaps"]), long=int(row["long"]), high=bool(row["high"])
    )
    mentions += find_messages(data) if row["says"] else []
    moves, refused = reader.columns.view_moves(), reader.taker.refused
    return make_program(controller, moves, reader.lines, units, refused, mentions)


def _count_newlines(data: bytes) -> int:
    """Counts the newlines: so many that comparing all letters at once takes less than looking
    for one after another.
    """
    letters = np.frombuffer(data, np.uint8)
    chunks = (letters[at : at + CHUNK] for at in range(0, len(letters), CHUNK))
    return sum(int(np.count_nonzero(chunk == NEWLINE)) for chunk in chunks)


class ChunkReader:
    """Takes a text through the compiled reader, a chunk of whole lines at a time."""

    def __init__(self, controller: Controller, data: bytes) -> None:
        self.controller, self.taker, self.data = controller, LineTaker(controller), data
        self.record = make_record(controller)
        self.lines = _count_newlines(data) + 1
        if b"\r" in data:
            self.lines += data.count(b"\r") - data.count(b"\r\n")
        self.columns = MoveColumns(self.lines)
        self.start = len(MARK) if data.startswith(MARK) else 0  # of the chunk
        self.odd_lines = 1
        self.taker.refused = refuse_no_text(data)
        self.over = bool(self.taker.refused)

    def read_chunk(self) -> None:
        """Reads the next whole lines."""
        size = self._find_size()
        row = self.record[0]
        row["text"][:size] = np.frombuffer(self.data, np.uint8, size, self.start)
        row["text"][size] = RETURN  # ends the last line of a file that has no end
        row["byte"] = 0
        while row["byte"] < size and not self.over:
            line = int(row["line"])
            execute_lines(self.record, size)
            self._fetch_written()
            if row["why"] == ODD:
                self._read_odd_lines(int(row["line"]) - line, size)
        self.start += int(row["byte"])
        self.over = self.over or self.start >= len(self.data)

    def _find_size(self) -> int:
        """Counts the bytes up to the last line end in reach; without one, all in reach."""
        start, far = self.start, self.start + CHUNK
        if far >= len(self.data):
            return len(self.data) - start
        found = max(self.data.rfind(b"\n", start, far), self.data.rfind(b"\r", start, far - 1))
        return found + 1 - start if found >= 0 else CHUNK

    def _fetch_written(self) -> None:
        """Takes moves, pauses and notes over from the record."""
        row, controller = self.record[0], self.controller
        before = self.columns.count
        self.columns.fetch_moves(self.record)
        for move, kind, seconds, line in row["pause"][: row["pauses"]].tolist():
            name = PAUSE_KINDS[int(kind)]
            controller.path.pauses.append(Pause(before + int(move), name, seconds, int(line)))
        for line, byte, which, value, x, y in row["note"][: row["notes"]].tolist():
            kind, text = tell_note(int(which), value)
            if controller.told.get(kind, 0) < MOST_OF_A_KIND:
                controller.line, controller.source = (
                    int(line),
                    quote_line(self._find_line(int(byte))[0]),
                )
                controller.state.at = [x, y, 0.0]
            controller.note_problem(kind, text)
        row["pauses"] = row["notes"] = 0
        self.controller.written = self.columns.count
        self.taker.refused = self.taker.refused or refuse_length(self.columns.count)
        self.over = bool(self.taker.refused)

    def _find_line(self, byte: int) -> tuple[str, int]:
        """Finds the line at a byte of the chunk, and where the next begins."""
        start = self.start + byte
        end = self.data.find(b"\n", start)
        end = len(self.data) if end < 0 else end
        early = self.data.find(b"\r", start, end)
        end = end if early < 0 else early
        after = end + 2 if self.data[end : end + 2] == b"\r\n" else end + 1
        text = self.data[start : min(end, start + LONGEST + 1)].decode("latin-1")
        return text, after - self.start

    def _read_odd_lines(self, plain: int, size: int) -> None:
        """Reads an odd line, and some after it where few were plain before it."""
        row, controller = self.record[0], self.controller
        self.odd_lines = 1 if plain >= SHORT else min(self.odd_lines * 2, MOST_ODD)
        read_modes(controller, self.record)
        at, number = int(row["byte"]), int(row["line"])
        for _ in range(self.odd_lines):
            text, at = self._find_line(at)
            self.over = self.taker.take_line(number, text)
            if len(text) > LINE_LETTERS and not row["long"]:
                row["long"] = number
            row["says"] |= "(" in text
            number += 1
            if self.over or at >= size:
                break
        row["byte"], row["line"] = at, number
        block = controller.take_block()
        if block is not None:
            self.columns.add_block(block)
        write_modes(controller, self.record)


class MoveColumns:
    """Keeps room for so many moves; each coordinate stands in one piece of memory."""

    def __init__(self, room: int) -> None:
        self.count, self.room = 0, max(room, 16)
        self._make_room()

    def _make_room(self) -> None:
        """Makes empty columns."""
        self.rest: dict[str, npt.NDArray[Any]] = {
            name: np.empty(self.room, TYPES.get(name, np.float64)) for name in NAMES
        }
        self.points = np.empty((3, self.room + 1))
        self.points[:, 0] = 0.0
        self.centre = np.empty((2, self.room))

    def _grow_room(self, more: int) -> None:
        """Makes room for so many moves more."""
        if self.count + more <= self.room:
            return
        old = self.view_moves()
        self.room = max(self.room + self.room // 2, self.count + more)
        self._make_room()
        self.points[:, : self.count + 1] = old.points.T
        self.centre[:, : self.count] = old.centre.T
        for name, column in self.rest.items():
            column[: self.count] = getattr(old, name)

    def fetch_moves(self, record: Record) -> None:
        """Adds the moves that the compiled reader has written into its record."""
        row = record[0]
        more = int(row["moves"])
        self._grow_room(more)
        a, b = self.count, self.count + more
        for axis, name in enumerate(("x", "y", "z")):
            self.points[axis, a + 1 : b + 1] = row[name][:more]
        for axis, name in enumerate(("c0", "c1")):
            self.centre[axis, a:b] = row[name][:more]
        for name, field in NAMES.items():
            self.rest[name][a:b] = row[field][:more]
        self.count, row["moves"] = b, 0

    def add_block(self, block: Moves) -> None:
        """Adds a block whose points are ends only."""
        more = len(block)
        self._grow_room(more)
        a, b = self.count, self.count + more
        self.points[:, a + 1 : b + 1] = block.points.T
        self.centre[:, a:b] = block.centre.T
        for name, column in self.rest.items():
            column[a:b] = getattr(block, name)
        self.count = b

    def view_moves(self) -> Moves:
        """Gives the path so far, as views."""
        n = self.count
        rest = {name: column[:n] for name, column in self.rest.items()}
        return Moves(points=self.points[:, : n + 1].T, centre=self.centre[:, :n].T, **rest)


@compile_inner
def _count_letters(s: RecordRow, after: int) -> int:
    """Counts the letters of the line at hand, without what ends it."""
    while s.byte < after and s.text[after - 1] in (NEWLINE, RETURN):
        after -= 1
    return after - s.byte


@compile_entry(numba.void(numba.from_dtype(RECORD)[::1], numba.int64))
def execute_lines(record: Record, stop: int) -> None:
    """Executes the lines in the record's text until byte `stop`, where one ends.

    ``why`` says whether a line is odd or a table full. Such a line is left as if never begun.
    """
    s: RecordRow = record[0]
    s.why, s.need = DONE, 0
    while s.byte < stop:
        if (
            s.moves > MOVES - MOVES_ROOM
            or s.pauses > PAUSES - PAUSES_ROOM
            or s.notes > NOTES - NOTES_ROOM
        ):
            s.why = FULL
            return
        after = scan_line(s.byte, s)
        if s.odd or s.motion == BACK_BORE or after - s.byte > LONGEST:
            s.why = ODD
            return
        if after - s.byte > LINE_LETTERS and not s.long:
            s.long = s.line if _count_letters(s, after) > LINE_LETTERS else 0
        if s.worded and not (s.deleted and s.skip_deleted):
            paused, noted = s.pauses, s.notes
            execute_line(s)
            if s.need:
                s.why, s.pauses, s.notes = FULL, paused, noted
                return
        s.byte = after
        s.line += 1
